//! A slider for a bodyweight: a track, a handle with the value beneath, and a mark for today. Pointer and screen reader move it;
//! keys are the place's own.

use egui::{Align2, Rect, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};

use super::focus_ring;

/// A slider between two ends.
pub struct Slider<'a> {
    /// What it asks: `What if I weigh`.
    pub title: &'a str,
    /// Values at the left and at the right end.
    pub ends: [f64; 2],
    /// Where it stands.
    pub value: f64,
    /// The value in words, with its unit.
    pub words: &'a str,
    /// Today's value, and its words.
    pub today: Option<(f64, &'a str)>,
    /// Values below are refused: the track is hollow there.
    pub from: Option<f64>,
    /// What the answer rests on, for hover and focus; empty where it stands beside the slider.
    pub how: &'a str,
}

impl Slider<'_> {
    /// Shows it with its track across the middle of `rect`; words stand below. Returns the value that the pointer asks for.
    pub fn show(&self, ui: &mut Ui, rect: Rect) -> Option<f64> {
        let theme = Theme::of(ui);
        let [low, high] = self.ends;
        let y = rect.center().y;
        #[allow(clippy::cast_possible_truncation, reason = "a place on the screen")]
        let x =
            |value: f64| rect.left() + rect.width() * (((value - low) / (high - low)) as f32).clamp(0.0, 1.0);
        let response = ui.interact(
            rect,
            ui.scope_id().with(("slider", self.title)),
            Sense::click_and_drag(),
        );
        response
            .widget_info(|| WidgetInfo::slider(true, self.value, format!("{} {}", self.title, self.words)));
        if !self.how.is_empty() && !response.dragged() {
            if response.has_focus() {
                response.show_tooltip_text(self.how);
            } else {
                super::hinted(response.clone(), self.how);
            }
        }
        let painter = ui.painter();
        let solid = self.from.map_or(rect.left(), x);
        painter.hline(rect.left()..=solid, y, Stroke::new(2.0, *theme.line));
        painter.hline(solid..=rect.right(), y, Stroke::new(4.0, *theme.edge));
        let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
        let handle = Rect::from_center_size(pos2(x(self.value), y), vec2(28.0, 30.0));
        let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ember);
        let value = letters(
            painter,
            pos2(handle.center().x, rect.bottom() + 3.0),
            Align2::CENTER_TOP,
            self.words,
            strong,
        );
        let title = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
        let width = crate::ui::pen::Line::new(self.title, title)
            .on_one_line(painter, f32::INFINITY)
            .size()
            .x;
        let title_left = if rect.left() + width + 10.0 < value.left() {
            rect.left()
        } else {
            (value.right() + 12.0).min(rect.right() - width)
        };
        let title = letters(
            painter,
            pos2(title_left, rect.bottom() + 3.0),
            Align2::LEFT_TOP,
            self.title,
            title,
        );
        if let Some((today, words)) = self.today {
            let at = x(today);
            painter.vline(at, y - 9.0..=y + 9.0, Stroke::new(2.0, *theme.ink));
            let width = crate::ui::pen::Line::new(words, quiet)
                .on_one_line(painter, f32::INFINITY)
                .size()
                .x;
            let centre = at.clamp(
                rect.left() + width / 2.0,
                (rect.right() - width / 2.0).max(rect.left() + width / 2.0),
            );
            let words_rect =
                Rect::from_center_size(pos2(centre, rect.bottom() + 14.0), vec2(width + 12.0, 18.0));
            if !words_rect.intersects(value) && !words_rect.intersects(title) {
                letters(
                    painter,
                    pos2(centre, rect.bottom() + 4.0),
                    Align2::CENTER_TOP,
                    words,
                    quiet,
                );
            }
        }
        painter.rect_filled(handle, RADIUS_CHIP, *theme.ember);
        for side in [-4.0, 4.0] {
            painter.vline(
                handle.center().x + side,
                y - 6.0..=y + 6.0,
                Stroke::new(2.0, *theme.on_ember),
            );
        }
        if response.has_focus() {
            focus_ring(painter, handle, RADIUS_CHIP, &theme);
        }
        let moved = response.dragged() || response.clicked();
        let pointer = response.interact_pointer_pos().filter(|_| moved)?;
        let share = f64::from((pointer.x - rect.left()) / rect.width().max(1.0)).clamp(0.0, 1.0);
        Some(low + share * (high - low))
    }
}
