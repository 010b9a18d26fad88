//! The header: tabs of movements, the last bodyweight, copy and save.

use egui::{Pos2, Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::heading;
use crate::ui::screens::strength::title;
use crate::ui::theme::{Face, Theme};
use crate::ui::views::TotalsView;
use crate::ui::widgets::{Button, Choices};

use super::state::TotalsState;

pub(super) fn header_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &TotalsView,
    state: &TotalsState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Totals");
    let plain = Ink::new(Face::Label, 15.0, *theme.ink2);
    let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
    let body = match &state.said {
        Some(said) => Line::new(said, strong),
        None => Line::phrase(&view.bodyweight, plain, strong),
    };
    let body = body.on_one_line(ui.painter(), f32::INFINITY);
    let buttons = button_row(ui, room, view, actions);
    // What was just said is seen in any window: tabs make room for it.
    let said = state.said.as_ref().map_or(0.0, |_| body.size().x + 32.0);
    let tabs_room = room.with_max_x(buttons - said);
    if view.lifts.is_empty() {
        return;
    }
    let right = tabs(
        ui,
        pos2(tabs_room.left() + 6.0, room.center().y - 17.0),
        tabs_room.width() - 12.0,
        view,
        actions,
    );
    let at = pos2(
        buttons - 16.0 - body.size().x,
        room.center().y - body.size().y / 2.0,
    );
    if at.x > right + 16.0 {
        named_galley(ui, at, body);
    }
}

/// Copy and save, at the right; returns where they begin.
fn button_row(ui: &mut Ui, room: Rect, view: &TotalsView, actions: &mut Actions) -> f32 {
    let theme = Theme::of(ui);
    let mut right = room.right();
    if view.open.is_none() || room.width() < 480.0 {
        return right;
    }
    let strength = title(super::strength(view));
    for (title, action) in [
        ("Save picture", Action::SavePicture),
        ("Copy CSV", Action::CopyPoints),
        (strength.as_str(), Action::StrengthOverTime),
    ] {
        let keys = action.key();
        let button = Button::plain(title).key(if room.width() > 1000.0 { &keys } else { "" });
        let width = button.width(ui.painter(), &theme);
        let place = Rect::from_min_size(pos2(right - width, room.center().y - 17.0), vec2(width, 34.0));
        if crate::ui::widgets::hinted(button.show(ui, place), keys).clicked() {
            actions.ask(action);
        }
        right = place.left() - 8.0;
    }
    right
}

/// Tabs of movements in the header; returns where they end.
fn tabs(ui: &mut Ui, at: Pos2, room: f32, view: &TotalsView, actions: &mut Actions) -> f32 {
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
