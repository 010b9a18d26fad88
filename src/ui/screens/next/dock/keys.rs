//! Keys of the dock: hand, reps, reserve, seconds, the scale field.

use crate::report::numbers::counted;
use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, letters};
use crate::ui::screens::next::state::{Held, NextState};
use crate::ui::screens::next::words::number;
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::views::{CardView, NextView, Prescription};
use crate::ui::widgets::{self, State, dock_key, key_cap};
use crate::units::Rail;
use egui::{
    Align2, FontSelection, Rect, Response, Role, Sense, Stroke, StrokeKind, TextEdit, Ui, WidgetInfo, pos2,
    vec2,
};

use super::Size;

pub(super) struct Row {
    pub(super) x: f32,
    pub(super) y: f32,
    pub(super) right: f32,
    pub(super) size: Size,
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
pub(super) fn hands(ui: &mut Ui, row: &mut Row, view: &NextView, card: &CardView, actions: &mut Actions) {
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
        width * crate::ui::screens::ladders::many(rails.len()),
    );
    ui.painter().rect(
        rect,
        RADIUS_CHIP,
        *theme.raised,
        Stroke::new(1.0, *theme.edge),
        StrokeKind::Inside,
    );
    for (nth, rail) in rails.iter().enumerate() {
        let x = rect.left() + width * crate::ui::screens::ladders::many(nth);
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

pub(super) fn letter(rail: Rail) -> &'static str {
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
pub(super) fn rep_keys(
    ui: &mut Ui,
    row: &mut Row,
    card: &CardView,
    work: &Prescription,
    state: &mut NextState,
) {
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
        let title = counted(reps, "rep");
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

pub(super) fn reserve_keys(
    ui: &mut Ui,
    row: &mut Row,
    card: &CardView,
    state: &mut NextState,
    actions: &mut Actions,
) {
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
pub(super) fn hold_keys(
    ui: &mut Ui,
    row: &mut Row,
    card: &CardView,
    state: &mut NextState,
    actions: &mut Actions,
) {
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
pub(super) fn scale_field(
    ui: &mut Ui,
    row: &mut Row,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
) {
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
        .hint_text(egui::RichText::new(hint).font(Face::Label.at(30.0)))
        .align(egui::Align2::LEFT_CENTER);
    let response = ui.put(rect.shrink2(vec2(14.0, 8.0)), edit);
    let response = response.accessible_name(format!("Bodyweight in {}", view.unit));
    if response.lost_focus() && ui.input(|input| input.key_pressed(egui::Key::Enter)) {
        actions.ask(Action::LogSet);
    }
}
