//! The cards beside the plot: another bodyweight, bests, two weights, attempts, a meet.

use egui::{Align2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::coaching::what_if::There;
use crate::report::numbers::about;
use crate::report::totals as words;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, Pen, letters, named_galley};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::two_rail::heights::{many, narrow};
use crate::ui::views::{AttemptView, BestView, LiftView, MeetView, TwoWeightsView};
use crate::ui::widgets::{Button, Choices};
use crate::units::Unit;

use super::plot::{parts, sign};
use super::state::TotalsState;

/// Repetitions that have a button; every number from 1 to 12 has a key.
const CHOICES: [u16; 6] = [1, 2, 3, 5, 8, 12];

/// The same words with numbers and their signs kept on one line.
fn glued(words: &str) -> String {
    [" %", " kg", " lb", " ×", "× "]
        .into_iter()
        .fold(words.to_owned(), |words, part| {
            words.replace(part, &part.replace(' ', "\u{a0}"))
        })
}

fn strong(theme: &Theme, size: f32) -> Ink {
    Ink::new(Face::LabelStrong, size, *theme.ink)
}

fn quiet(theme: &Theme) -> Ink {
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
        &format!("If you weigh {}", about(there.bodyweight.kg(), unit)),
        strong(&theme, 17.0),
    ));
    let (load, range) = words::system_there(there, unit);
    let big = Ink::new(
        Face::Number,
        if pen.width() > 300.0 { 36.0 } else { 28.0 },
        *theme.ink,
    );
    pen.write(Line::new(&load, big).gap(10.0, &range, Ink::new(Face::Label, size::BODY, *theme.ink2)));
    let (belt, range) = words::belt_there(there, unit);
    let plain = Ink::new(Face::Label, 15.0, *theme.ink);
    pen.write(Line::new(&belt, strong(&theme, 15.0)).and(
        &glued(&format!(" {range} · {}", words::measures_there(there))),
        plain,
    ));
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
        let spoken = if reps == 1 {
            "1 rep".to_owned()
        } else {
            format!("{reps} reps")
        };
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
    let title = super::capital(best.title);
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
        let name = Line::new(cells[0], ink)
            .on_one_line(pen.ui.painter(), (columns[0] - 60.0 - rect.left()).max(40.0));
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
    let title = if lift.attempts.is_empty() {
        "Attempts"
    } else {
        "Three attempts, if you test today"
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
    let width = parts(pen.width(), 3, 8.0);
    if let Some(rect) = pen.room(64.0) {
        for (nth, attempt) in lift.attempts.iter().enumerate() {
            let place =
                Rect::from_min_size(rect.min + vec2((width + 8.0) * many(nth), 0.0), vec2(width, 64.0));
            attempt_box(pen, place, nth, attempt);
        }
    }
    pen.gap(6.0);
    let plates: Vec<&str> = lift
        .attempts
        .iter()
        .map(|attempt| attempt.plates.as_str())
        .collect();
    pen.write(Line::new(
        &glued(&format!("Plates: {}", plates.join(" · "))),
        quiet(&theme),
    ));
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
    letters(
        painter,
        rect.min + vec2(9.0, 34.0),
        Align2::LEFT_CENTER,
        &attempt.load,
        load,
    );
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

/// A meet of today: what was done, what is planned, the total of added loads.
pub(super) fn meet(pen: &mut Pen<'_>, view: &MeetView) {
    let theme = Theme::of(pen.ui);
    pen.write_apart(
        Line::new("Meet today", strong(&theme, 17.0)),
        Line::new("added loads", quiet(&theme)),
    );
    pen.gap(4.0);
    let right = pen.right;
    let wide = pen.width() > 300.0;
    let step = if wide { 66.0 } else { 50.0 };
    let columns = [right - 3.0 * step, right - 2.0 * step, right - step, right];
    let row = |pen: &mut Pen<'_>, cells: [&str; 5], head: bool, bold: bool| {
        let Some(rect) = pen.room(26.0) else { return };
        let plain = if head {
            quiet(&theme)
        } else {
            Ink::new(Face::Label, 15.0, *theme.ink)
        };
        let ink = if bold { strong(&theme, 15.0) } else { plain };
        let name = Line::new(cells[0], ink).on_one_line(
            pen.ui.painter(),
            (columns[0] - step + 4.0 - rect.left()).max(36.0),
        );
        let y = rect.center().y - name.size().y / 2.0;
        named_galley(pen.ui, pos2(rect.left(), y), name);
        for (nth, x) in columns.iter().enumerate() {
            let ink = if nth == 0 && !head {
                strong(&theme, 15.0)
            } else {
                ink
            };
            let cell = Line::new(cells[nth + 1], ink).on_one_line(pen.ui.painter(), step + 6.0);
            named_galley(pen.ui, pos2(x - cell.size().x, y), cell);
        }
    };
    row(pen, ["", "done", "1st", "2nd", "3rd"], true, false);
    for lift in &view.lifts {
        pen.rule(*theme.line);
        let [one, two, three] = &lift.attempts;
        row(pen, [&lift.title, &lift.made, one, two, three], false, false);
    }
    pen.rule(*theme.line);
    let [one, two, three] = &view.planned;
    row(pen, ["Total", &view.total, one, two, three], false, true);
}

/// Tabs of movements in the header; returns where they end.
pub(super) fn tabs(
    ui: &mut egui::Ui,
    at: egui::Pos2,
    room: f32,
    view: &crate::ui::views::TotalsView,
    actions: &mut Actions,
) -> f32 {
    let chosen = view.open.as_ref().map_or(0, |lift| lift.nth);
    let titles: Vec<&str> = view.lifts.iter().map(|tab| tab.title.as_str()).collect();
    let theme = Theme::of(ui);
    let widths: Vec<f32> = titles
        .iter()
        .map(|title| Button::plain(title).width(ui.painter(), &theme) + 4.0)
        .collect();
    // As many as fit around the open one; M turns to the others.
    let mut shown = chosen..(chosen + 1).min(titles.len());
    let width =
        |shown: &std::ops::Range<usize>| widths.get(shown.clone()).unwrap_or_default().iter().sum::<f32>();
    loop {
        let more = [
            (shown.end < titles.len()).then(|| shown.start..shown.end + 1),
            (shown.start > 0).then(|| shown.start - 1..shown.end),
        ];
        match more.into_iter().flatten().find(|wider| width(wider) <= room) {
            Some(wider) => shown = wider,
            None => break,
        }
    }
    let few = titles.get(shown.clone()).unwrap_or_default();
    let choices = Choices {
        titles: few,
        chosen: chosen - shown.start,
    };
    let (rect, pressed) = choices.show(ui, at);
    let tab = pressed.and_then(|nth| view.lifts.get(shown.start + nth));
    if let Some(tab) = tab {
        actions.write(Deed::ShowLift(tab.movement.clone(), tab.side));
    }
    rect.right()
}
