//! The cards that are tables: two weights, and attempts.

use egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::ui::pen::{Ink, Line, Pen, letters, named_galley};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::two_rail::heights::{many, narrow};
use crate::ui::views::{AttemptView, LiftView, TwoWeightsView};

use super::cards::{explain, glued, quiet, strong};
use super::plot::parts;

/// The best single at two bodyweights.
pub(super) fn two_weights(pen: &mut Pen<'_>, view: &TwoWeightsView) {
    let theme = Theme::of(pen.ui);
    pen.write(Line::new("Same you, two weights", strong(&theme, 17.0)));
    pen.write(Line::new(&view.note, quiet(&theme)));
    let right = pen.right;
    let step = if pen.width() > 300.0 {
        [158.0, 76.0]
    } else {
        [126.0, 62.0]
    };
    let columns = [right - step[0], right - step[1], right];
    let row = |pen: &mut Pen<'_>, cells: [&str; 4], head: bool| {
        let Some(rect) = pen.room(26.0) else { return };
        let ink = if head {
            quiet(&theme)
        } else {
            Ink::new(Face::Label, 15.0, *theme.ink)
        };
        let name =
            Line::new(cells[0], ink).squeezed(pen.ui.painter(), (columns[0] - 60.0 - rect.left()).max(40.0));
        let y = rect.center().y - name.size().y / 2.0;
        named_galley(pen.ui, pos2(rect.left(), y), name);
        for (nth, x) in columns.iter().enumerate() {
            let ink = if nth == 2 && !head {
                strong(&theme, 15.0)
            } else {
                ink
            };
            let cell = Line::new(cells[nth + 1], ink).on_one_line(pen.ui.painter(), 90.0);
            named_galley(pen.ui, pos2(x - cell.size().x, y), cell);
        }
    };
    row(pen, ["", &view.heads[0], &view.heads[1], "change"], true);
    for cells in &view.rows {
        pen.rule(*theme.line);
        row(pen, [&cells[0], &cells[1], &cells[2], &cells[3]], false);
    }
}

/// Three attempts with their chances, and the warm-up before.
pub(super) fn attempts(pen: &mut Pen<'_>, lift: &LiftView) {
    let theme = Theme::of(pen.ui);
    let title = match lift.attempts.len() {
        0 => "Attempts",
        3 => "Three attempts, if you test today",
        _ => "Attempts, if you test today",
    };
    if lift.attempts.is_empty() {
        pen.write(Line::new(title, strong(&theme, 17.0)));
        pen.write(Line::new(
            &lift.attempts_note,
            Ink::new(Face::Label, 15.0, *theme.ink2),
        ));
        return;
    }
    pen.write_apart(
        Line::new(title, strong(&theme, 17.0)),
        Line::new(&lift.attempts_note, quiet(&theme)),
    );
    pen.gap(6.0);
    let top = pen.y;
    let width = parts(pen.width(), 3, 8.0);
    if let Some(rect) = pen.room(64.0) {
        for (nth, attempt) in lift.attempts.iter().enumerate() {
            let place =
                Rect::from_min_size(rect.min + vec2((width + 8.0) * many(nth), 0.0), vec2(width, 64.0));
            attempt_box(pen, place, nth, attempt);
        }
    }
    explain(pen, top, "attempts", &lift.attempts_how);
    pen.gap(6.0);
    pen.write(Line::new(&glued(&lift.hangs), quiet(&theme)));
    if !lift.warm_up.is_empty() {
        pen.write(Line::new(
            &glued(&format!("Before: {}", lift.warm_up.join(" · "))),
            quiet(&theme),
        ));
    }
    pen.write(Line::new(
        "Have a spotter and a safe way down. Chances are estimates, each for a fresh try.",
        quiet(&theme),
    ));
}

fn attempt_box(pen: &mut Pen<'_>, rect: Rect, nth: usize, attempt: &AttemptView) {
    let theme = Theme::of(pen.ui);
    let name = ["1st", "2nd", "3rd"].get(nth).copied().unwrap_or_default();
    let id = pen.ui.scope_id().with(("attempt", nth));
    let response = pen.ui.interact(rect, id, egui::Sense::hover());
    let spoken = format!(
        "{name} attempt {}, chance {}, {}",
        attempt.load, attempt.words, attempt.plates
    );
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &spoken));
    let painter = pen.ui.painter();
    painter.rect_stroke(
        rect,
        RADIUS_CHIP,
        Stroke::new(1.0, *theme.edge),
        StrokeKind::Inside,
    );
    let small = Ink::new(Face::Label, size::SMALL, *theme.ink2);
    let chance = if rect.width() > 100.0 {
        format!("chance {}", attempt.words)
    } else {
        attempt.words.clone()
    };
    letters(
        painter,
        rect.min + vec2(9.0, 12.0),
        Align2::LEFT_CENTER,
        name,
        small,
    );
    letters(
        painter,
        rect.right_top() + vec2(-9.0, 12.0),
        Align2::RIGHT_CENTER,
        &chance,
        small,
    );
    let load = Ink::new(
        Face::Number,
        if rect.width() > 90.0 { 21.0 } else { 16.0 },
        *theme.ink,
    );
    let load = Line::new(&attempt.load, load).squeezed(painter, rect.width() - 16.0);
    let at = rect.min + vec2(9.0, 34.0 - load.size().y / 2.0);
    painter.galley(at, load, *theme.ink);
    let bar = Rect::from_min_max(
        rect.left_bottom() + vec2(9.0, -12.0),
        rect.right_bottom() - vec2(9.0, 7.0),
    );
    painter.rect_filled(bar, 2.5, *theme.line);
    painter.rect_filled(
        bar.with_max_x(bar.left() + bar.width() * narrow(attempt.chance)),
        2.5,
        *theme.steel,
    );
}
