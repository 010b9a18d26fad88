//! The dock: hand, reps or seconds, reserve, the main button that says exactly what it writes, and the rest clock.

use egui::{
    Align2, FontSelection, Rect, Response, Role, Sense, Stroke, StrokeKind, TextEdit, Ui, WidgetInfo, pos2,
    vec2,
};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::views::{Asked, CardView, NextView, Prescription};
use crate::ui::widgets::{self, RestTrack, State, clock_words, dock_key, key_cap, rest_track};
use crate::units::{Outcome, Rail};

use super::state::{Held, NextState};
use super::words::{done_words, log_title, number};

/// Sizes of the dock's parts.
#[derive(Clone, Copy)]
struct Size {
    key: egui::Vec2,
    gap: f32,
    between: f32,
    label: f32,
}

impl Size {
    fn of(wide: bool) -> Self {
        if wide {
            Self {
                key: vec2(54.0, 64.0),
                gap: 6.0,
                between: 20.0,
                label: 22.0,
            }
        } else {
            Self {
                key: vec2(46.0, 52.0),
                gap: 6.0,
                between: 12.0,
                label: 20.0,
            }
        }
    }
}

/// Height of the dock: one row, or two where the width doesn't carry it.
pub(super) fn height(width: f32, wide: bool) -> f32 {
    let row = Size::of(wide).key.y + Size::of(wide).label;
    if width >= 860.0 {
        row + if wide { 49.0 } else { 44.0 }
    } else {
        2.0 * row + 34.0
    }
}

/// Draws the dock.
pub(super) fn dock_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
    wide: bool,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let size = Size::of(wide);
    let margin = if wide { 20.0 } else { 12.0 };
    let two_rows = rect.width() < 860.0;
    let row_top = rect.top() + if wide { 24.0 } else { 14.0 };
    let mut row = Row {
        x: rect.left() + margin,
        y: row_top,
        right: rect.right() - margin,
        size,
    };
    let Some(card) = view.card(state.card) else { return };
    hands(ui, &mut row, view, card, actions);
    match &card.asked {
        Asked::WeighInFirst(_) => scale_field(ui, &mut row, view, state, actions),
        Asked::Pause(_) => {}
        Asked::Work(work) if work.measure.is_hold() => hold_keys(ui, &mut row, card, state, actions),
        Asked::Work(work) => {
            rep_keys(ui, &mut row, card, work, state);
            reserve_keys(ui, &mut row, card, state, actions);
        }
    }
    if two_rows {
        row = Row {
            x: rect.left() + margin,
            y: row_top + size.key.y + size.label + 6.0,
            ..row
        };
    }
    let rest_width = if wide { 206.0 } else { 128.0 };
    let main = Rect::from_min_max(
        pos2(row.x, row.y + size.label),
        pos2(
            row.right - rest_width - size.between,
            row.y + size.label + size.key.y,
        ),
    );
    main_button(ui, main, card, state, actions, &theme);
    let rest = Rect::from_min_max(
        pos2(row.right - rest_width, row.y - 6.0),
        pos2(row.right, main.bottom() + 8.0),
    );
    rest_ui(ui, rest, card, state, actions, wide);
}

struct Row {
    x: f32,
    y: f32,
    right: f32,
    size: Size,
}

impl Row {
    /// A group of keys `width` wide with a label over it; returns where the keys go.
    fn group(&mut self, ui: &mut Ui, label: &str, caps: &[&str], width: f32) -> Rect {
        let theme = Theme::of(ui);
        let at = pos2(self.x, self.y + self.size.label / 2.0 - 3.0);
        let painter = ui.painter();
        let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
        let mut x = letters(painter, at, Align2::LEFT_CENTER, label, ink).right() + 8.0;
        for cap in caps.iter().filter(|_| self.size.key.x > 50.0) {
            let width = widgets::key_cap_width(painter, cap, &theme);
            if x + width > self.x + width.max(self.size.key.x * 4.0) {
                break;
            }
            x = key_cap(
                painter,
                pos2(x, at.y),
                Align2::LEFT_CENTER,
                cap,
                *theme.ink2,
                &theme,
            )
            .right()
                + 3.0;
        }
        let rect = Rect::from_min_size(
            pos2(self.x, self.y + self.size.label),
            vec2(width, self.size.key.y),
        );
        self.x = rect.right() + self.size.between;
        rect
    }
}

/// Left, right, both: one is chosen.
fn hands(ui: &mut Ui, row: &mut Row, view: &NextView, card: &CardView, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let rails: Vec<Rail> = [Rail::Left, Rail::Right, Rail::Both]
        .into_iter()
        .filter(|rail| view.cards().any(|card| card.rail == *rail))
        .collect();
    if rails.len() < 2 && view.cards().count() < 2 {
        return;
    }
    let width = if row.size.key.x > 50.0 { 58.0 } else { 47.5 };
    let caps: Vec<&str> = rails.iter().map(|rail| letter(*rail)).collect();
    let rect = row.group(
        ui,
        "Hand",
        &caps,
        width * super::super::ladders::many(rails.len()),
    );
    ui.painter().rect(
        rect,
        RADIUS_CHIP,
        *theme.raised,
        Stroke::new(1.0, *theme.edge),
        StrokeKind::Inside,
    );
    for (nth, rail) in rails.iter().enumerate() {
        let x = rect.left() + width * super::super::ladders::many(nth);
        let key = Rect::from_min_size(pos2(x, rect.top()), vec2(width, rect.height()));
        let title = match rail {
            Rail::Left => "Left",
            Rail::Right => "Right",
            Rail::Both => "Both",
        };
        let chosen = card.rail == *rail;
        if chosen {
            ui.painter()
                .rect_filled(key.shrink(1.0), RADIUS_CHIP - 1.0, theme.rail_wash(*rail));
            let foot = Rect::from_min_max(
                pos2(key.left() + 1.0, key.bottom() - 5.0),
                key.max - vec2(1.0, 1.0),
            );
            ui.painter().rect_filled(foot, 0.0, theme.rail(*rail));
        } else if nth > 0 {
            ui.painter()
                .vline(key.left(), key.y_range(), Stroke::new(1.0, *theme.line));
        }
        let response = widgets::press_chosen(ui, key, &format!("{title} hand"), chosen);
        let colour = if *rail == Rail::Both {
            *theme.ink
        } else {
            theme.rail(*rail)
        };
        let centre = key.center();
        letters(
            ui.painter(),
            centre - vec2(0.0, 9.0),
            Align2::CENTER_CENTER,
            letter(*rail),
            Ink::new(Face::Number, 22.0, colour),
        );
        letters(
            ui.painter(),
            centre + vec2(0.0, 14.0),
            Align2::CENTER_CENTER,
            title,
            Ink::new(Face::Text, size::SMALL, *theme.ink),
        );
        if response.has_focus() {
            widgets::focus_ring(ui.painter(), key, RADIUS_CHIP, &theme);
        }
        if response.clicked() {
            actions.ask(Action::Hand(*rail));
        }
    }
}

fn letter(rail: Rail) -> &'static str {
    match rail {
        Rail::Left => "L",
        Rail::Right => "R",
        Rail::Both => "B",
    }
}

fn key_at(ui: &mut Ui, rect: Rect, number: &str, title: &str, chosen: bool) -> Response {
    let theme = Theme::of(ui);
    let response = widgets::press_chosen(ui, rect, title, chosen);
    dock_key(ui.painter(), rect, number, chosen, State::of(&response), &theme);
    response
}

/// Places of `count` keys in a group.
fn places(rect: Rect, size: Size, count: u8) -> impl Iterator<Item = Rect> {
    (0..count).map(move |nth| {
        Rect::from_min_size(
            rect.min + vec2(f32::from(nth) * (size.key.x + size.gap), 0.0),
            size.key,
        )
    })
}

fn group_width(size: Size, count: u8) -> f32 {
    f32::from(count) * (size.key.x + size.gap) - size.gap
}

/// Reps: the asked range and what surrounds it; the last key goes on to more.
fn rep_keys(ui: &mut Ui, row: &mut Row, card: &CardView, work: &Prescription, state: &mut NextState) {
    let size = row.size;
    let count: u8 = if size.key.x > 50.0 { 5 } else { 4 };
    let rect = row.group(ui, "Reps", &["0–9"], group_width(size, count));
    let chosen = state.amount_for(card);
    let shown = u16::from(count) - 1;
    let usual = first_key(work.measure.range().0, chosen, shown);
    let from = state.keys_from.unwrap_or(usual);
    for (nth, place) in (0u16..).zip(places(rect, size, count)) {
        if nth == shown {
            if key_at(ui, place, "…", "More reps", false).clicked() {
                state.keys_from = Some(if from + shown > 30 { 1 } else { from + shown });
            }
            continue;
        }
        let reps = from + nth;
        let title = format!("{reps} reps");
        if key_at(
            ui,
            place,
            &reps.to_string(),
            &title,
            (chosen - f64::from(reps)).abs() < 0.01,
        )
        .clicked()
        {
            state.amount = Some(f64::from(reps));
        }
    }
}

/// The number on the first key, so that both the range's start and the chosen number show.
fn first_key(lo: u16, chosen: f64, shown: u16) -> u16 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to 0..=999"
    )]
    let chosen = chosen.clamp(0.0, 999.0) as u16;
    let first = lo.max(1).min(chosen.max(1));
    if chosen >= first + shown {
        chosen + 1 - shown
    } else {
        first
    }
}

fn reserve_keys(ui: &mut Ui, row: &mut Row, card: &CardView, state: &mut NextState, actions: &mut Actions) {
    let size = row.size;
    let count: u8 = if size.key.x > 50.0 { 4 } else { 3 };
    let rect = row.group(ui, "In reserve", &["Shift", "0–9"], group_width(size, count));
    let chosen = state.reserve_for(card);
    for (nth, place) in (0u8..).zip(places(rect, size, count)) {
        let last = nth == count - 1;
        let label = if last && nth == 3 {
            "3+".to_owned()
        } else {
            nth.to_string()
        };
        let is_chosen = chosen.is_some_and(|chosen| {
            if last {
                chosen >= f64::from(nth)
            } else {
                chosen.floor() == f64::from(nth)
            }
        });
        if key_at(ui, place, &label, &format!("{label} in reserve"), is_chosen).clicked() {
            actions.ask(Action::Reserve(nth));
        }
    }
}

/// Seconds: fewer, the number, more; and the hold clock.
fn hold_keys(ui: &mut Ui, row: &mut Row, card: &CardView, state: &mut NextState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let size = row.size;
    let rect = row.group(ui, "Seconds held", &["0–9"], group_width(size, 5));
    let seconds = state.amount_for(card);
    let places: Vec<Rect> = places(rect, size, 5).collect();
    for (nth, by) in [(0, -5.0), (1, -1.0), (3, 1.0), (4, 5.0)] {
        let sign = if by < 0.0 { "−" } else { "+" };
        let label = format!("{sign}{}", number(f64::abs(by)));
        if key_at(ui, places[nth], &label, &format!("{label} seconds"), false).clicked() {
            state.amount = Some((seconds + by).clamp(1.0, 999.0));
        }
    }
    dock_key(
        ui.painter(),
        places[2],
        &number(seconds),
        true,
        State::default(),
        &theme,
    );
    let response = ui.interact(places[2], ui.scope_id().with("seconds"), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("{} seconds", number(seconds))));
    let rect = row.group(ui, "Hold clock", &["H"], group_width(size, 2));
    let (title, number) = match state.holding() {
        None => ("Start the hold clock".to_owned(), "3-2-1".to_owned()),
        Some(left) if left < 0.0 => ("Counting in".to_owned(), format!("{:.0}", (-left).ceil())),
        Some(held) => ("Stop and log".to_owned(), format!("{:.0} s", held.floor())),
    };
    if key_at(ui, rect, &number, &title, state.held != Held::No).clicked() {
        actions.ask(Action::HoldClock);
    }
}

/// The scale field of weigh-in-first.
fn scale_field(ui: &mut Ui, row: &mut Row, view: &NextView, state: &mut NextState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let rect = row.group(ui, &format!("Bodyweight, {}", view.unit), &[], 220.0);
    ui.painter().rect(
        rect,
        RADIUS_CHIP,
        *theme.raised,
        Stroke::new(1.5, *theme.ink),
        StrokeKind::Inside,
    );
    let hint = view.last_bodyweight.map_or_else(String::new, number);
    let edit = TextEdit::singleline(&mut state.weigh_in)
        .font(FontSelection::FontId(Face::Number.at(30.0)))
        .frame(egui::Frame::NONE)
        .hint_text(hint)
        .align(egui::Align2::LEFT_CENTER);
    let response = ui.put(rect.shrink2(vec2(14.0, 8.0)), edit);
    let response = response.accessible_name(format!("Bodyweight in {}", view.unit));
    if response.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter)) {
        actions.ask(Action::LogSet);
    }
}

/// The one main button.
fn main_button(
    ui: &mut Ui,
    rect: Rect,
    card: &CardView,
    state: &NextState,
    actions: &mut Actions,
    theme: &Theme,
) {
    let (title, detail, enabled) = match &card.asked {
        Asked::Pause(_) => ("No set today".to_owned(), "Pause: see the card".to_owned(), false),
        Asked::WeighInFirst(_) => ("Weigh in".to_owned(), "Enter writes it".to_owned(), true),
        Asked::Work(work) => {
            let words = done_words(
                state.amount_for(card),
                work.measure.is_hold(),
                state.reserve_for(card),
                state.outcome,
            );
            (log_title(card, work.done.len() + 1), words, true)
        }
    };
    outcome_marks(ui, rect, card, state, actions);
    let response = ui
        .add_enabled_ui(enabled, |ui| {
            widgets::press(ui, rect, &format!("{title}: {detail}"))
        })
        .inner;
    let (fill, text) = if enabled {
        (*theme.ember, *theme.on_ember)
    } else {
        (*theme.line, *theme.ink2)
    };
    let fill = match (response.is_pointer_button_down_on(), response.hovered()) {
        (true, _) => crate::ui::theme::fade(fill, *theme.ink, 0.2),
        (_, true) => crate::ui::theme::fade(fill, *theme.ink, 0.1),
        _ => fill,
    };
    ui.painter().rect_filled(rect, RADIUS_CHIP, fill);
    let big = if rect.height() > 60.0 { 21.0 } else { 17.0 };
    let head = Line::new(&title, Ink::new(Face::LabelStrong, big, text))
        .on_one_line(ui.painter(), rect.width() - 24.0);
    let foot =
        Line::new(&detail, Ink::new(Face::Label, 15.0, text)).on_one_line(ui.painter(), rect.width() - 24.0);
    let top = rect.center().y - (head.size().y + foot.size().y) / 2.0;
    let (left, below) = (rect.left() + 16.0, top + head.size().y);
    ui.painter()
        .galley(pos2(left.min(rect.left() + 16.0), top), head, text);
    ui.painter().galley(pos2(left, below), foot, text);
    if response.has_focus() {
        widgets::focus_ring(ui.painter(), rect, RADIUS_CHIP, theme);
    }
    if response.clicked() {
        actions.ask(Action::LogSet);
    }
}

/// "Missed" and "standard not kept" over the main button.
fn outcome_marks(ui: &mut Ui, button: Rect, card: &CardView, state: &NextState, actions: &mut Actions) {
    if !matches!(card.asked, Asked::Work(_)) {
        return;
    }
    let theme = Theme::of(ui);
    let y = button.top() - 15.0;
    let mut x = button.left();
    for (key, words, action, outcome) in [
        ("M", "missed", Action::Missed, Outcome::Missed),
        ("F", "form", Action::FormNotKept, Outcome::Form),
    ] {
        let on = state.outcome == outcome;
        let ink = Ink::new(
            if on { Face::LabelStrong } else { Face::Label },
            size::TABLE,
            if on { *theme.plum } else { *theme.ink2 },
        );
        let width = Line::new(words, ink)
            .on_one_line(ui.painter(), f32::INFINITY)
            .size()
            .x
            + 34.0;
        let rect = Rect::from_min_size(pos2(x - 3.0, y - 12.0), vec2(width, 24.0));
        if rect.right() > button.right() + 4.0 {
            break;
        }
        let title = if outcome == Outcome::Missed {
            "Missed"
        } else {
            "Standard not kept"
        };
        let response = widgets::press_chosen(ui, rect, title, on);
        if response.has_focus() {
            widgets::focus_ring(ui.painter(), rect, RADIUS_CHIP, &theme);
        }
        let cap = key_cap(
            ui.painter(),
            pos2(x, y),
            Align2::LEFT_CENTER,
            key,
            ink.colour,
            &theme,
        );
        letters(
            ui.painter(),
            pos2(cap.right() + 6.0, y),
            Align2::LEFT_CENTER,
            words,
            ink,
        );
        if response.clicked() {
            actions.ask(action);
        }
        x = rect.right() + 10.0;
    }
}

/// The rest clock: who may go, in words.
fn rest_ui(ui: &mut Ui, rect: Rect, card: &CardView, state: &NextState, actions: &mut Actions, wide: bool) {
    let theme = Theme::of(ui);
    let asked = card
        .asked
        .prescription()
        .map_or((120, 180), |work| work.rest_secs);
    let track = RestTrack {
        passed: state.rested(),
        asked,
    };
    let words = ready_words(&track, card.rail);
    let response = widgets::press(
        ui,
        rect,
        &format!(
            "Rest clock, {} · {words}",
            clock_words(track.passed.unwrap_or(0.0))
        ),
    );
    if response.clicked() {
        actions.ask(Action::RestClock);
    }
    let label = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    letters(ui.painter(), rect.left_top(), Align2::LEFT_TOP, "Rest", label);
    if wide {
        key_cap(
            ui.painter(),
            rect.right_top(),
            Align2::RIGHT_TOP,
            "Space",
            *theme.ink2,
            &theme,
        );
    }
    let digits = if wide { size::CLOCK } else { 38.0 };
    let base = rect.bottom() - 22.0;
    let colour = if track.is_over() { *theme.ember } else { *theme.ink };
    let clock = Line::new(
        &clock_words(track.passed.unwrap_or(0.0)),
        Ink::new(Face::Number, digits, colour),
    )
    .on_one_line(ui.painter(), f32::INFINITY);
    let clock_rect = Rect::from_min_size(pos2(rect.left(), base - 8.0 - clock.size().y), clock.size());
    ui.painter().galley(clock_rect.min, clock, colour);
    let room = rect.right() - clock_rect.right() - 8.0;
    let line =
        Line::new(&words, Ink::new(Face::LabelStrong, 15.0, colour)).on_one_line(ui.painter(), room.max(1.0));
    if room > 60.0 {
        let at = pos2(
            rect.right() - line.size().x,
            clock_rect.bottom() - line.size().y - if wide { 9.0 } else { 4.0 },
        );
        ui.painter().galley(at, line, colour);
    }
    rest_track(
        ui.painter(),
        Rect::from_min_max(pos2(rect.left(), base - 4.0), pos2(rect.right(), base + 4.0)),
        track,
        &theme,
    );
}

/// `L ready in 1:08`, `L may go`.
fn ready_words(track: &RestTrack, rail: Rail) -> String {
    let who = if rail == Rail::Both { "" } else { letter(rail) };
    let said = match (track.passed, track.left_over()) {
        (None, _) => String::new(),
        (_, Some(left)) => format!("{who} ready in {}", clock_words(left.ceil())),
        (_, None) => format!("{who} may go"),
    };
    said.trim().to_owned()
}
