//! The column beside the cards: warm-up, today's records, what comes after.

use egui::{Align2, Rect, Role, Ui, WidgetInfo, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, Pen, letters};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::NextView;
use crate::ui::widgets::{self, State, hand_disc, key_cap, tick_box};
use crate::units::Rail;

use super::state::NextState;

/// Draws the three cards of the column.
pub(super) fn side_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let width = rect.width();
    let mut y = rect.top();
    let mut card = |ui: &mut Ui, write: &mut dyn FnMut(&mut Pen<'_>), last: bool| {
        let needs = Pen::measure(ui, width - 34.0, |pen| write(pen)) + 30.0;
        let room = rect.bottom() - y;
        let height = if last {
            room.max(0.0)
        } else {
            needs.min(room.max(0.0))
        };
        if height < 60.0 {
            return;
        }
        let place = Rect::from_min_size(pos2(rect.left(), y), vec2(width, height));
        widgets::card(ui.painter(), place, None, &theme);
        let mut child = ui.new_child(egui::UiBuilder::new().max_rect(place));
        child.shrink_clip_rect(place);
        let inside = place.shrink2(vec2(17.0, 14.0));
        if needs > height {
            // More than fits: it scrolls, and nothing is cut without a sign of it.
            let mut child = child.new_child(egui::UiBuilder::new().max_rect(place.shrink2(vec2(4.0, 12.0))));
            child.shrink_clip_rect(place.shrink2(vec2(4.0, 12.0)));
            egui::ScrollArea::vertical()
                .id_salt(("beside", last))
                .auto_shrink(false)
                .show(&mut child, |ui| {
                    let top = ui.cursor().top();
                    let area =
                        Rect::from_min_size(pos2(inside.left(), top), vec2(inside.width(), needs - 30.0));
                    write(&mut Pen::new(ui, area));
                    ui.advance_cursor_after_rect(area);
                });
        } else {
            write(&mut Pen::new(&mut child, inside));
        }
        y = place.bottom() + 15.0;
    };
    if !view.warm_up.is_empty() {
        card(ui, &mut |pen| warm_up(pen, view, state), false);
    }
    let has_after = !view.after.is_empty() || view.after_note.is_some();
    card(ui, &mut |pen| logged(pen, view, actions), !has_after);
    if has_after {
        card(ui, &mut |pen| after(pen, view), true);
    }
}

/// A card's title with the key or word at its right.
fn title(pen: &mut Pen<'_>, text: &str, cap: Option<&str>) -> Rect {
    let theme = Theme::of(pen.ui);
    let rect = pen.write(Line::new(text, Ink::new(Face::LabelStrong, 17.0, *theme.ink)));
    if let Some(cap) = cap.filter(|_| !pen.measuring) {
        key_cap(
            pen.ui.painter(),
            pos2(pen.right, rect.center().y),
            Align2::RIGHT_CENTER,
            cap,
            *theme.ink2,
            &theme,
        );
    }
    pen.gap(6.0);
    pen.rule(*theme.line);
    rect
}

/// Steps to tick.
pub(super) fn warm_up(pen: &mut Pen<'_>, view: &NextView, state: &mut NextState) {
    let theme = Theme::of(pen.ui);
    title(pen, "Warm-up", Some("Q"));
    for (nth, step) in view.warm_up.iter().enumerate() {
        let height = if step.with.is_some() { 44.0 } else { 33.0 };
        let Some(rect) = pen.room(height) else {
            pen.gap(1.0);
            continue;
        };
        let ticked = state.warmed.contains(&nth);
        let id = pen.ui.scope_id().with(("warm-up", nth));
        let response = pen.ui.interact(rect, id, egui::Sense::click());
        response.widget_info(|| {
            WidgetInfo::selected(
                Role::CheckBox,
                true,
                ticked,
                format!("{} {}", step.what, step.count),
            )
        });
        if response.clicked() && !state.warmed.remove(&nth) {
            state.warmed.insert(nth);
        }
        if response.has_focus() {
            // Beside the box and the count, not through them.
            let around = rect.expand2(vec2(3.0, -3.0));
            widgets::focus_ring(pen.ui.painter(), around, 4.0, &theme);
        }
        let painter = pen.ui.painter();
        let square = Rect::from_center_size(pos2(rect.left() + 9.0, rect.center().y), vec2(18.0, 18.0));
        tick_box(painter, square, ticked, State::of(&response), &theme);
        let ink = if ticked {
            Ink::new(Face::Label, 15.0, *theme.ink3)
        } else {
            Ink::new(Face::LabelStrong, 15.0, *theme.ink)
        };
        let lift = if step.with.is_some() { 9.0 } else { 0.0 };
        let what = Line::new(&step.what, ink).squeezed(painter, rect.width() - 76.0);
        let at = pos2(rect.left() + 28.0, rect.center().y - lift - what.size().y / 2.0);
        painter.galley(at, what, ink.colour);
        if let Some(with) = &step.with {
            let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
            letters(
                painter,
                pos2(rect.left() + 28.0, rect.center().y + 10.0),
                Align2::LEFT_CENTER,
                with,
                quiet,
            );
        }
        letters(
            painter,
            rect.right_center(),
            Align2::RIGHT_CENTER,
            &step.count,
            Ink {
                face: Face::LabelStrong,
                ..ink
            },
        );
        pen.rule(*theme.line);
    }
    if let Some(note) = &view.warm_up_note {
        pen.gap(8.0);
        pen.write(Line::new(note, Ink::new(Face::Label, size::TABLE, *theme.ink2)));
    }
}

/// Today's records, newest first, with undo.
pub(super) fn logged(pen: &mut Pen<'_>, view: &NextView, actions: &mut Actions) {
    let theme = Theme::of(pen.ui);
    let head = title(pen, "Logged today", None);
    if !pen.measuring {
        let rect = Rect::from_center_size(pos2(pen.right - 31.0, head.center().y), vec2(62.0, 26.0));
        let response = widgets::press(pen.ui, rect, "Undo");
        let painter = pen.ui.painter();
        key_cap(
            painter,
            rect.right_center(),
            Align2::RIGHT_CENTER,
            "U",
            *theme.ink2,
            &theme,
        );
        letters(
            painter,
            rect.left_center(),
            Align2::LEFT_CENTER,
            "undo",
            Ink::new(Face::Label, size::TABLE, *theme.ink2),
        );
        if response.clicked() {
            actions.write(Deed::Undo);
        }
    }
    if view.logged.is_empty() {
        pen.gap(8.0);
        pen.write(Line::new(
            "No sets yet today.",
            Ink::new(Face::Label, 15.0, *theme.ink2),
        ));
    }
    for line in &view.logged {
        let below = match (&line.doubt, &line.best) {
            (Some(doubt), _) => Some((doubt, *theme.plum)),
            (None, Some(best)) => Some((best, *theme.ember)),
            (None, None) => None,
        };
        if let Some(rect) = pen.room(32.0) {
            let middle = rect.top() + 16.0;
            let painter = pen.ui.painter();
            let quiet = Ink::new(Face::Label, 15.0, *theme.ink2);
            let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
            letters(
                painter,
                pos2(rect.left(), middle),
                Align2::LEFT_CENTER,
                &line.time,
                quiet,
            );
            let indent = match line.rail {
                Some(rail @ (Rail::Left | Rail::Right)) => {
                    hand_disc(painter, pos2(rect.left() + 56.0, middle), 10.0, rail, &theme);
                    76.0
                }
                _ => 46.0,
            };
            let result = letters(
                painter,
                pos2(rect.right(), middle),
                Align2::RIGHT_CENTER,
                &line.result,
                strong,
            );
            let ink = Ink::new(Face::Label, 15.0, *theme.ink);
            let what =
                Line::new(&line.what, ink).squeezed(painter, result.left() - rect.left() - indent - 8.0);
            let at = pos2(rect.left() + indent, middle - what.size().y / 2.0);
            painter.galley(at, what, *theme.ink);
            let spoken = below.map_or_else(String::new, |(words, _)| format!(". {words}"));
            let words = format!("{} {} {}{spoken}", line.time, line.what, line.result);
            let response = pen.ui.interact(
                rect,
                pen.ui.scope_id().with(("logged", &line.id)),
                egui::Sense::hover(),
            );
            response.widget_info(|| WidgetInfo::labeled(Role::ListItem, true, &words));
        }
        if let Some((words, colour)) = below {
            pen.write(Line::new(words, Ink::new(Face::LabelStrong, size::TABLE, colour)));
            pen.gap(4.0);
        }
        pen.rule(*theme.line);
    }
}

/// What comes after these cards.
fn after(pen: &mut Pen<'_>, view: &NextView) {
    let theme = Theme::of(pen.ui);
    title(pen, "After that", None);
    pen.gap(6.0);
    for (what, how_much) in &view.after {
        let left = Line::new(what, Ink::new(Face::Label, 15.0, *theme.ink));
        if how_much.is_empty() {
            pen.write(left);
        } else {
            pen.write_apart(
                left,
                Line::new(how_much, Ink::new(Face::LabelStrong, 15.0, *theme.ink)),
            );
        }
        pen.gap(2.0);
    }
    if let Some(note) = &view.after_note {
        pen.gap(4.0);
        pen.write(Line::new(note, Ink::new(Face::Label, 15.0, *theme.ink2)));
    }
}
