//! A slider for a bodyweight: a track, a handle with the value beneath, and a mark for today. Pointer and screen reader move it;
//! keys are the place's own.

use egui::{Align2, Painter, Rect, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};

use crate::ui::pen::{Ink, letters, width_of};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};

use super::{focus_ring, key_cap, key_cap_width};

/// The keys of both places that have a slider.
const KEYS: [&str; 2] = ["[", "]"];

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
        let id = ui.scope_id().with(("slider", self.title));
        let response = ui.interact(rect, id, Sense::click_and_drag());
        response
            .widget_info(|| WidgetInfo::slider(true, self.value, format!("{} {}", self.title, self.words)));
        if !self.how.is_empty() && !response.dragged() {
            if response.has_focus() {
                response.show_tooltip_text(self.how);
            } else {
                super::hinted(response.clone(), self.how);
            }
        }
        self.paint(ui.painter(), rect, response.has_focus(), &Theme::of(ui));
        let moved = response.dragged() || response.clicked();
        let pointer = response.interact_pointer_pos().filter(|_| moved)?;
        let share = f64::from((pointer.x - rect.left()) / rect.width().max(1.0)).clamp(0.0, 1.0);
        let [low, high] = self.ends;
        Some(low + share * (high - low))
    }

    #[allow(clippy::cast_possible_truncation, reason = "a place on the screen")]
    fn x(&self, rect: Rect, value: f64) -> f32 {
        let [low, high] = self.ends;
        rect.left() + rect.width() * (((value - low) / (high - low)) as f32).clamp(0.0, 1.0)
    }

    fn paint(&self, painter: &Painter, rect: Rect, has_focus: bool, theme: &Theme) {
        let y = rect.center().y;
        let solid = self.from.map_or(rect.left(), |from| self.x(rect, from));
        painter.hline(rect.left()..=solid, y, Stroke::new(2.0, *theme.line));
        painter.hline(solid..=rect.right(), y, Stroke::new(4.0, *theme.edge));
        let handle = Rect::from_center_size(pos2(self.x(rect, self.value), y), vec2(28.0, 30.0));
        let taken = self.words_below(painter, rect, handle.center().x, theme);
        if let Some((today, words)) = self.today {
            let at = self.x(rect, today);
            painter.vline(at, y - 9.0..=y + 9.0, Stroke::new(2.0, *theme.ink));
            today_below(painter, rect, at, words, &taken, theme);
        }
        painter.rect_filled(handle, RADIUS_CHIP, *theme.ember);
        for side in [-4.0, 4.0] {
            painter.vline(
                handle.center().x + side,
                y - 6.0..=y + 6.0,
                Stroke::new(2.0, *theme.on_ember),
            );
        }
        if has_focus {
            focus_ring(painter, handle, RADIUS_CHIP, theme);
        }
    }

    /// The value below the handle, and the title at the left or, where the value is in its way, at the value's right.
    fn words_below(&self, painter: &Painter, rect: Rect, handle: f32, theme: &Theme) -> [Rect; 2] {
        let below = |x: f32| pos2(x, rect.bottom() + 3.0);
        let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ember);
        let value = letters(painter, below(handle), Align2::CENTER_TOP, self.words, strong);
        let ink = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
        let width = width_of(painter, self.title, ink);
        let left = if rect.left() + width + 10.0 < value.left() {
            rect.left()
        } else {
            (value.right() + 12.0).min(rect.right() - width)
        };
        let mut title = letters(painter, below(left), Align2::LEFT_TOP, self.title, ink);
        let caps = KEYS
            .map(|key| key_cap_width(painter, key, theme) + 3.0)
            .iter()
            .sum::<f32>();
        let until = if left < value.left() {
            value.left()
        } else {
            rect.right()
        };
        if title.right() + 8.0 + caps + 8.0 < until {
            for key in KEYS {
                let gap = if title.right() > left + width { 3.0 } else { 8.0 };
                let at = title.right_center() + vec2(gap, 0.0);
                title = title.union(key_cap(painter, at, Align2::LEFT_CENTER, key, *theme.ink2, theme));
            }
        }
        [value, title]
    }
}

/// Today's value in words below its mark, where no other words are in its way.
fn today_below(painter: &Painter, rect: Rect, at: f32, words: &str, taken: &[Rect], theme: &Theme) {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let width = width_of(painter, words, quiet);
    let leftmost = rect.left() + width / 2.0;
    let centre = at.clamp(leftmost, (rect.right() - width / 2.0).max(leftmost));
    let room = Rect::from_center_size(pos2(centre, rect.bottom() + 14.0), vec2(width + 12.0, 18.0));
    if !taken.iter().any(|taken| room.intersects(*taken)) {
        let top = pos2(centre, rect.bottom() + 4.0);
        letters(painter, top, Align2::CENTER_TOP, words, quiet);
    }
}
