//! The header: which ladder, other ladders, strength over time, and what is believed of each rail.

use egui::{Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::heading;
use crate::ui::screens::strength::title;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{LadderView, StrengthView};
use crate::ui::widgets::{Button, hand_disc};

pub(super) fn header_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &LadderView,
    strength: &[StrengthView],
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, &view.title);
    let key = Action::OtherLadder.key();
    let button = Button::plain("Other ladder").key(&key);
    let width = button.width(ui.painter(), &theme);
    let place = Rect::from_min_size(pos2(room.left() + 6.0, room.center().y - 17.0), vec2(width, 34.0));
    if button.show(ui, place).clicked() {
        actions.ask(Action::OtherLadder);
    }
    let key = Action::StrengthOverTime.key();
    let title = title(strength);
    let button = Button::plain(&title).key(&key);
    let width = button.width(ui.painter(), &theme);
    let place = Rect::from_min_size(pos2(place.right() + 8.0, place.top()), vec2(width, 34.0));
    if button.show(ui, place).clicked() {
        actions.ask(Action::StrengthOverTime);
    }
    let mut left = place.right() + 16.0;
    if let Some(subtitle) = &view.subtitle {
        let galley =
            Line::new(subtitle, Ink::new(Face::Label, 15.0, *theme.ink2)).on_one_line(ui.painter(), 240.0);
        left = named_galley(ui, pos2(left, room.center().y - galley.size().y / 2.0), galley).right() + 16.0;
    }
    outlook_ui(ui, Rect::from_min_max(pos2(left, room.top()), room.max), view);
}

/// Belief and forecast in words, a rail each, at the right; forecasts in smaller type, or left to the sheet, where they have no
/// room.
fn outlook_ui(ui: &mut Ui, room: Rect, view: &LadderView) {
    let theme = Theme::of(ui);
    let strong = Ink::new(Face::LabelStrong, 16.0, *theme.ink);
    let painter = ui.painter().clone();
    let words = |forecasts: Option<f32>| -> Vec<_> {
        let plain = |size| Ink::new(Face::Label, size, *theme.ink2);
        let blocks = view.outlook.iter().map(|outlook| {
            let belief =
                Line::phrase(&outlook.belief, plain(15.0), strong).on_one_line(&painter, f32::INFINITY);
            let forecast = outlook.forecast.as_deref().zip(forecasts);
            let forecast = forecast
                .map(|(words, size)| Line::new(words, plain(size)).on_one_line(&painter, f32::INFINITY));
            let longer = forecast.as_ref().map_or(0.0, |line| line.size().x);
            (outlook, belief.size().x.max(longer) + 28.0, belief, forecast)
        });
        blocks.collect()
    };
    // Both rails or none: one alone would read as if the other were unknown.
    let fits = |forecasts: &Option<f32>| {
        let widths = words(*forecasts)
            .iter()
            .map(|block| block.1 + BETWEEN)
            .sum::<f32>();
        widths - BETWEEN <= room.width()
    };
    let tries = [Some(15.0), Some(size::TABLE), None]
        .into_iter()
        .filter(|forecasts| forecasts.is_none() || room.height() > 50.0);
    let Some(forecasts) = tries.into_iter().find(fits) else {
        return;
    };
    let mut right = room.right();
    for (outlook, width, belief, forecast) in words(forecasts).into_iter().rev() {
        let left = right - width;
        let lines = if forecast.is_some() { 20.0 } else { 10.0 };
        let top = room.center().y - lines;
        let middle = pos2(left + 10.0, top + 10.0);
        hand_disc(ui.painter(), middle, 10.0, outlook.rail, &theme);
        named_galley(ui, pos2(left + 28.0, top), belief);
        if let Some(forecast) = forecast {
            named_galley(ui, pos2(left + 28.0, top + 20.0), forecast);
        }
        let block = Rect::from_min_size(pos2(left, top), vec2(width, 2.0 * lines));
        let id = ui.scope_id().with(("outlook", outlook.rail));
        crate::ui::widgets::explained(ui, block, id, outlook.how.clone());
        right = left - BETWEEN;
    }
}

/// Room between the words of two rails.
const BETWEEN: f32 = 24.0;
