//! At the bar: one hand, its load and plates, and the reps or seconds in letters a third of the window high, for a person three
//! metres away. Any key or a press anywhere logs what is asked; nothing else is shown. Contrast is 7 or more everywhere.

use egui::{Align2, Rect, Role, Sense, Ui, WidgetInfo, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, Theme};
use crate::ui::views::{Asked, CardView, NextView, Prescription};
use crate::ui::widgets::{RestTrack, clock_words};
use crate::units::{Outcome, Rail};

use super::next::NextState;

/// Presses within so many seconds of the last are ignored, so that a second touch logs nothing twice.
const IGNORED_SECS: f64 = 1.0;

/// What the bar view remembers.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BarState {
    /// When something was last logged or started.
    pressed_at: Option<f64>,
}

/// Shows the bar view in the whole of `ui`.
pub fn bar_ui(
    ui: &mut Ui,
    view: &NextView,
    next: &mut NextState,
    state: &mut BarState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let response = ui.interact(whole, ui.scope_id().with("bar"), Sense::click());
    let Some(card) = view.card(next.card) else {
        letters(
            ui.painter(),
            whole.center(),
            Align2::CENTER_CENTER,
            "Nothing asked today",
            Ink::new(Face::LabelStrong, 40.0, *theme.ink),
        );
        return;
    };
    let words = spoken(card, next);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &words));
    let unit = (whole.height() / 9.0).min(whole.width() / 12.0);
    match &card.asked {
        Asked::Work(work) => {
            hand(ui, whole, card, work, unit);
            amount(ui, whole, work, next, card, unit);
            clock(ui, whole, work, next, unit);
            new_best(ui, whole, view, next, unit);
        }
        Asked::WeighInFirst(_) => centred(ui, whole, card, "Weigh in first", "Esc, then K", unit),
        Asked::Pause(_) => centred(ui, whole, card, "Pause", "No set today. Esc goes back.", unit),
    }
    if response.clicked() || any_key(ui) {
        press(view, next, state, actions);
    }
}

/// What a press does: log the set, or start or stop the hold.
fn press(view: &NextView, next: &mut NextState, state: &mut BarState, actions: &mut Actions) {
    if state.pressed_at.is_some_and(|at| next.now - at < IGNORED_SECS) {
        return;
    }
    state.pressed_at = Some(next.now);
    let is_hold = view
        .card(next.card)
        .and_then(|card| card.asked.prescription())
        .is_some_and(|work| work.measure.is_hold());
    actions.ask(if is_hold {
        Action::HoldClock
    } else {
        Action::LogSet
    });
}

/// Any key but modifiers, Tab, function and media keys, and those that have a meaning of their own here.
fn any_key(ui: &Ui) -> bool {
    use egui::Key;
    ui.input(|input| {
        input.events.iter().any(|event| match event {
            egui::Event::Key {
                key,
                pressed: true,
                repeat: false,
                modifiers,
                ..
            } => {
                let own = matches!(
                    key,
                    Key::Escape | Key::Tab | Key::ArrowUp | Key::ArrowDown | Key::M | Key::Backspace
                );
                let function = key.name().starts_with('F') && key.name().len() > 1;
                !own && !function && !modifiers.ctrl && !modifiers.alt && !modifiers.command
            }
            _ => false,
        })
    })
}

fn side_colour(rail: Rail, theme: &Theme) -> egui::Color32 {
    if rail == Rail::Both {
        *theme.ink
    } else {
        theme.rail(rail)
    }
}

/// A bar in the side's colour at its edge, the letter, the rung, the load.
fn hand(ui: &Ui, whole: Rect, card: &CardView, work: &Prescription, unit: f32) {
    let theme = Theme::of(ui);
    let painter = ui.painter();
    let width = unit * 0.45;
    let edges: &[f32] = match card.rail {
        Rail::Left => &[whole.left()],
        Rail::Right => &[whole.right() - width],
        Rail::Both => &[whole.left(), whole.right() - width],
    };
    for x in edges {
        let rect = Rect::from_min_size(pos2(*x, whole.top()), vec2(width, whole.height()));
        painter.rect_filled(rect, 0.0, side_colour(card.rail, &theme));
    }
    let name = match card.rail {
        Rail::Left => "L",
        Rail::Right => "R",
        Rail::Both => "",
    };
    let top = whole.top() + unit * 0.35;
    // The letter is as large as a shape; ink keeps its contrast at 7, the bar carries the colour.
    let letter = letters(
        painter,
        pos2(whole.center().x, top),
        Align2::CENTER_TOP,
        name,
        Ink::new(Face::Number, unit * 1.2, *theme.ink),
    );
    let below = if name.is_empty() { top } else { letter.bottom() };
    let title = Line::new(&work.title, Ink::new(Face::LabelStrong, unit * 0.5, *theme.ink))
        .on_one_line(painter, whole.width() - unit * 2.0);
    let at = pos2(whole.center().x - title.size().x / 2.0, below);
    let bottom = at.y + title.size().y;
    painter.galley(at, title, *theme.ink);
    let plates = work.belt.as_ref().map(|belt| belt.words.text());
    let load = [work.load.clone(), plates]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join("  ·  ");
    let load = Line::new(&load, Ink::new(Face::LabelStrong, unit * 0.55, *theme.ink))
        .on_one_line(painter, whole.width() - unit * 2.0);
    painter.galley(
        pos2(whole.center().x - load.size().x / 2.0, bottom),
        load,
        *theme.ink,
    );
}

/// Reps or seconds, a third of the window high.
fn amount(ui: &Ui, whole: Rect, work: &Prescription, next: &NextState, card: &CardView, unit: f32) {
    let theme = Theme::of(ui);
    // Figures are about 0.7 of the type size high, so this makes them a third of the window.
    let size = unit * 4.3;
    let (text, unit_words) = match next.holding() {
        Some(left) if left < 0.0 => (format!("{:.0}", (-left).ceil()), "get ready"),
        Some(held) => (format!("{:.0}", held.floor()), "seconds held, any key stops"),
        None => {
            let words = match (work.measure.is_hold(), next.outcome) {
                (_, Outcome::Missed) => "then missed",
                (_, Outcome::Form) => "standard not kept",
                (true, _) => "seconds, any key starts 3-2-1",
                (false, _) => "reps, any key logs",
            };
            (super::next::number(next.amount_for(card)), words)
        }
    };
    let centre = whole.center() + vec2(0.0, unit * 0.65);
    letters(
        ui.painter(),
        centre,
        Align2::CENTER_CENTER,
        &text,
        Ink::new(Face::Number, size, *theme.ink),
    );
    let below = centre + vec2(0.0, unit * 1.95);
    letters(
        ui.painter(),
        below,
        Align2::CENTER_CENTER,
        unit_words,
        Ink::new(Face::Label, unit * 0.4, *theme.ink),
    );
}

/// The rest clock below; a solid block when rest is over.
fn clock(ui: &Ui, whole: Rect, work: &Prescription, next: &NextState, unit: f32) {
    let theme = Theme::of(ui);
    let track = RestTrack {
        passed: next.rested(),
        asked: work.rest_secs,
    };
    let Some(passed) = track.passed.filter(|_| next.holding().is_none()) else {
        return;
    };
    let at = pos2(whole.center().x, whole.bottom() - unit * 0.25);
    if track.is_over() {
        let words = format!("{}  go", clock_words(passed));
        let ink = Ink::new(Face::Number, unit * 1.1, *theme.bench);
        let galley = Line::new(&words, ink).on_one_line(ui.painter(), whole.width());
        let rect = Rect::from_center_size(at - vec2(0.0, unit * 0.6), galley.size() + vec2(unit, 0.0));
        ui.painter().rect_filled(rect, 8.0, *theme.ink);
        ui.painter()
            .galley(rect.center() - galley.size() / 2.0, galley, ink.colour);
    } else {
        letters(
            ui.painter(),
            at,
            Align2::CENTER_BOTTOM,
            &clock_words(passed),
            Ink::new(Face::Number, unit * 1.1, *theme.ink),
        );
    }
}

/// While the rest after it runs, what best the last set was.
fn new_best(ui: &mut Ui, whole: Rect, view: &NextView, next: &NextState, unit: f32) {
    let newest = view.logged.first().and_then(|line| line.best.as_deref());
    let Some(words) = newest.filter(|_| next.rested().is_some() && next.holding().is_none()) else {
        return;
    };
    let theme = Theme::of(ui);
    let ink = Ink::new(Face::LabelStrong, unit * 0.34, *theme.ink);
    let galley = Line::new(words, ink).wrapped(ui.painter(), whole.width() * 0.3);
    let at = pos2(
        whole.left() + unit * 0.8,
        whole.bottom() - unit * 0.4 - galley.size().y,
    );
    named_galley(ui, at, galley);
}

fn centred(ui: &Ui, whole: Rect, card: &CardView, words: &str, foot: &str, unit: f32) {
    let theme = Theme::of(ui);
    let heading = whole.center() - vec2(0.0, unit * 2.0);
    letters(
        ui.painter(),
        heading,
        Align2::CENTER_CENTER,
        &card.heading,
        Ink::new(Face::LabelStrong, unit * 0.6, *theme.ink),
    );
    letters(
        ui.painter(),
        whole.center(),
        Align2::CENTER_CENTER,
        words,
        Ink::new(Face::Number, unit * 1.5, *theme.ink),
    );
    let below = whole.center() + vec2(0.0, unit * 1.6);
    letters(
        ui.painter(),
        below,
        Align2::CENTER_CENTER,
        foot,
        Ink::new(Face::Label, unit * 0.45, *theme.ink),
    );
}

fn spoken(card: &CardView, next: &NextState) -> String {
    match &card.asked {
        Asked::Work(work) => {
            let load = work.load.as_deref().unwrap_or("no load");
            let amount = super::next::number(next.amount_for(card));
            format!(
                "At the bar: {}, {}, {load}, {amount} {}",
                card.heading,
                work.title,
                work.measure.unit()
            )
        }
        Asked::WeighInFirst(_) => format!("At the bar: {}, weigh in first", card.heading),
        Asked::Pause(_) => format!("At the bar: {}, pause", card.heading),
    }
}
