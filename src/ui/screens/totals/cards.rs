//! The cards beside the plot: another bodyweight, and the bests.

use egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::coaching::what_if::There;
use crate::report::numbers::{about, counted, tenths};
use crate::report::totals as words;
use crate::ui::pen::{Ink, Line, Pen, letters, named_galley};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{BestView, LiftView};
use crate::ui::widgets;
use crate::units::Unit;

use super::plot::{parts, sign};
use super::state::TotalsState;

/// Repetitions that have a button; every number from 1 to 12 has a key.
const CHOICES: [u16; 6] = [1, 2, 3, 5, 8, 12];

/// The same words with numbers and their signs kept on one line.
pub(super) fn glued(words: &str) -> String {
    [" %", " kg", " lb", " ×", "× "]
        .into_iter()
        .fold(words.to_owned(), |words, part| {
            words.replace(part, &part.replace(' ', "\u{a0}"))
        })
}

pub(super) fn strong(theme: &Theme, size: f32) -> Ink {
    Ink::new(Face::LabelStrong, size, *theme.ink)
}

pub(super) fn quiet(theme: &Theme) -> Ink {
    Ink::new(Face::Label, size::TABLE, *theme.ink2)
}

/// Another bodyweight, or why nothing is said of it.
pub(super) fn what_if(pen: &mut Pen<'_>, lift: &LiftView, there: Option<&There>, unit: Unit) {
    let theme = Theme::of(pen.ui);
    let (Some(known), Some(there)) = (&lift.what_if, there) else {
        pen.write(Line::new("At another bodyweight", strong(&theme, 17.0)));
        let why = lift.no_what_if.as_deref().unwrap_or("Nothing is known yet.");
        pen.write(Line::new(why, Ink::new(Face::Label, 15.0, *theme.ink2)));
        return;
    };
    pen.write(Line::new(
        &format!("If you weigh {}", tenths(there.bodyweight.kg(), unit)),
        strong(&theme, 17.0),
    ));
    let top = pen.y;
    let (load, range) = words::system_there(there, unit);
    let big = Ink::new(
        Face::Number,
        if pen.width() > 300.0 { 36.0 } else { 28.0 },
        *theme.ink,
    );
    let after = Ink::new(Face::Label, size::BODY, *theme.ink2);
    pen.write(Line::new(&load, big).gap(10.0, &range, after).on_base());
    let (belt, range) = words::belt_there(there, unit);
    let plain = Ink::new(Face::Label, 15.0, *theme.ink);
    pen.write(Line::new(&belt, strong(&theme, 15.0)).and(
        &glued(&format!(" {range} · {}", words::measures_there(there))),
        plain,
    ));
    explain(pen, top, "what if", &lift.belief_how);
    pen.gap(6.0);
    let small = Ink::new(Face::Label, 15.0, *theme.ink2);
    pen.write(Line::new(&glued(&lift.fit_words), small));
    for caution in words::cautions_there(known, there, unit) {
        pen.gap(4.0);
        pen.write(Line::new(
            &glued(&caution),
            Ink::new(Face::Label, 15.0, *theme.plum),
        ));
    }
    if let Some(from) = known
        .healthy_from()
        .filter(|from| there.bodyweight.kg() < from.kg() + 0.05)
    {
        pen.gap(4.0);
        let words = format!(
            "Your healthy range starts at {}; nothing is said below it.",
            about(from.kg(), unit)
        );
        pen.write(Line::new(&words, Ink::new(Face::Label, 15.0, *theme.plum)));
    }
}

/// Says on hover and focus how what was written from `top` down to the pen came about.
pub(super) fn explain(pen: &mut Pen<'_>, top: f32, what: &str, how: &str) {
    if !pen.measuring && !how.is_empty() {
        let rect = Rect::from_min_max(pos2(pen.left, top), pos2(pen.right, pen.y));
        let id = pen.ui.scope_id().with(("how", what));
        widgets::explained(pen.ui, rect, id, how.to_owned());
    }
}

/// The four bests of these repetitions.
pub(super) fn bests(pen: &mut Pen<'_>, lift: &LiftView, state: &mut TotalsState) {
    let theme = Theme::of(pen.ui);
    let reps = state.reps();
    let wide = pen.width() > 300.0;
    let title = pen.write(Line::new("Bests", strong(&theme, 17.0)));
    if wide {
        pen.y = title.top() - 3.0;
    } else {
        pen.gap(4.0);
    }
    choices(pen, if wide { 62.0 } else { 0.0 }, state);
    let columns = columns(pen.right, wide);
    if let Some(head) = pen.room(22.0) {
        let names = ["value", "weighed", "added"];
        for (x, name) in columns.iter().zip(names) {
            letters(
                pen.ui.painter(),
                pos2(*x, head.center().y),
                Align2::RIGHT_CENTER,
                name,
                quiet(&theme),
            );
        }
    }
    let rows: Vec<&BestView> = lift.bests.iter().filter(|best| best.reps == reps).collect();
    if rows.is_empty() {
        pen.rule(*theme.line);
        pen.gap(6.0);
        pen.write(Line::new(
            &format!("No set of {reps} reps or more yet."),
            Ink::new(Face::Label, 15.0, *theme.ink2),
        ));
    }
    for best in rows {
        pen.rule(*theme.line);
        best_row(pen, best, &columns);
    }
    pen.rule(*theme.line);
    pen.gap(4.0);
    pen.write(Line::new(
        "Size-adjusted: system load ÷ bodyweight to the power 0.67.",
        quiet(&theme),
    ));
}

/// Right edges of the columns: value, weighed and, where there is room, added.
fn columns(right: f32, wide: bool) -> Vec<f32> {
    if wide {
        vec![right - 142.0, right - 78.0, right]
    } else {
        vec![right - 64.0, right]
    }
}

fn choices(pen: &mut Pen<'_>, indent: f32, state: &mut TotalsState) {
    let Some(rect) = pen.room(30.0).map(|rect| rect.with_min_x(rect.left() + indent)) else {
        pen.gap(4.0);
        return;
    };
    let theme = Theme::of(pen.ui);
    let width = parts(rect.width(), CHOICES.len(), 3.0);
    for (nth, reps) in CHOICES.into_iter().enumerate() {
        let box_ = Rect::from_min_size(rect.min + vec2((width + 3.0) * many(nth), 0.0), vec2(width, 28.0));
        let title = reps.to_string();
        let chosen = reps == state.reps();
        let id = pen.ui.scope_id().with(("reps", reps));
        let response = pen.ui.interact(box_, id, egui::Sense::click());
        let spoken = counted(reps, "rep");
        response.widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, chosen, &spoken));
        let (fill, ink) = if chosen {
            (*theme.ink, *theme.raised)
        } else {
            (*theme.raised, *theme.ink)
        };
        let painter = pen.ui.painter();
        painter.rect(
            box_,
            RADIUS_CHIP,
            fill,
            Stroke::new(1.0, *theme.edge),
            StrokeKind::Inside,
        );
        let title = if nth == 0 { "1 rep" } else { &title };
        letters(
            painter,
            box_.center(),
            Align2::CENTER_CENTER,
            title,
            Ink::new(Face::LabelStrong, 15.0, ink),
        );
        if response.gained_focus() {
            response.scroll_to_me(None);
        }
        if response.has_focus() {
            crate::ui::widgets::focus_ring(painter, box_, RADIUS_CHIP, &theme);
        }
        if response.clicked() {
            state.reps = reps;
        }
    }
    pen.gap(4.0);
}

fn best_row(pen: &mut Pen<'_>, best: &BestView, columns: &[f32]) {
    let theme = Theme::of(pen.ui);
    let Some(rect) = pen.room(41.0) else { return };
    let first = columns.first().copied().unwrap_or(rect.right());
    sign(
        pen.ui.painter(),
        pos2(rect.left() + 11.0, rect.center().y),
        best.kind,
        7.5,
        &theme,
    );
    let (name_size, value_size) = if columns.len() > 2 {
        (15.0, 17.0)
    } else {
        (14.0, 15.0)
    };
    let value = Line::new(&best.value, strong(&theme, value_size)).on_one_line(pen.ui.painter(), 110.0);
    let room = first - value.size().x - 8.0 - rect.left() - 30.0;
    let title = crate::report::words::capital(best.title);
    let line = Line::new(&title, strong(&theme, name_size)).on_one_line(pen.ui.painter(), room.max(40.0));
    named_galley(pen.ui, rect.min + vec2(30.0, 1.0), line);
    let place = best
        .place
        .as_deref()
        .map_or(String::new(), |place| format!(" · {place} here"));
    let (note, colour) = if best.doubted {
        (format!("{} · doubted: check it", best.date), *theme.plum)
    } else {
        (format!("{}{place}", best.date), *theme.ink2)
    };
    let line = Line::new(&note, Ink::new(Face::Label, size::TABLE, colour))
        .on_one_line(pen.ui.painter(), rect.width() - 32.0);
    named_galley(pen.ui, rect.min + vec2(30.0, 20.0), line);
    let cells = [
        (&best.value, strong(&theme, value_size)),
        (&best.weighed, quiet(&theme)),
        (&best.added, quiet(&theme)),
    ];
    for (x, (text, ink)) in columns.iter().zip(cells) {
        let galley = Line::new(
            text,
            Ink {
                colour: *theme.ink,
                ..ink
            },
        )
        .on_one_line(pen.ui.painter(), 90.0);
        let at = pos2(x - galley.size().x, rect.top() + 12.0 - galley.size().y / 2.0);
        named_galley(pen.ui, at, galley);
    }
}
