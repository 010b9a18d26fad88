//! The header: which week, the two buttons that turn it, what counts as hard, and the session.

use egui::{Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::heading;
use crate::ui::theme::{Face, Theme};
use crate::ui::views::WeekView;
use crate::ui::widgets::{Button, State, focus_ring, key_cap, press_chosen};

pub(super) fn header_ui(ui: &mut Ui, rect: Rect, view: &WeekView, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Week");
    if view.is_empty {
        return;
    }
    let button = Button::plain("Build a session").key("B");
    let width = button.width(ui.painter(), &theme);
    let place = Rect::from_min_size(
        pos2(room.right() - width, room.center().y - 17.0),
        vec2(width, 34.0),
    );
    let plain = Ink::new(Face::Label, 16.0, *theme.ink2);
    let quiet = Ink::new(Face::Label, 15.0, *theme.ink2);
    // The longest that fits: with the week's number, without it, squeezed.
    let long = format!("{} · {}", view.span, view.name);
    let room_left = place.left() - room.left() - 84.0;
    let whole = Line::new(&long, plain).on_one_line(ui.painter(), f32::INFINITY);
    let galley = if whole.size().x <= room_left {
        whole
    } else {
        Line::new(&view.span, plain).squeezed(ui.painter(), room_left)
    };
    let at = pos2(room.left(), room.center().y - galley.size().y / 2.0);
    let span = named_galley(ui, at, galley);
    let mut x = span.right() + 10.0;
    for (action, title, key, can) in [
        (Action::EarlierWeek, "The week before", "←", true),
        (Action::LaterWeek, "The week after", "→", view.back > 0),
    ] {
        let target = Rect::from_center_size(pos2(x + 14.0, room.center().y), vec2(26.0, 28.0));
        turn_ui(ui, target, (title, key, can), action, actions);
        x = target.right() + 2.0;
    }
    let hard = format!("{}; {}", view.hard, view.what_is_hard);
    let space = place.left() - 18.0 - x - 12.0;
    for words in [&hard, &view.hard] {
        let galley = Line::new(words, quiet).on_one_line(ui.painter(), f32::INFINITY);
        if galley.size().x <= space {
            let at = pos2(
                place.left() - 18.0 - galley.size().x,
                room.center().y - galley.size().y / 2.0,
            );
            named_galley(ui, at, galley);
            break;
        }
    }
    if button.show(ui, place).clicked() {
        actions.ask(Action::BuildSession);
    }
}

/// A key cap that is a button.
fn turn_ui(
    ui: &mut Ui,
    target: Rect,
    (title, key, can): (&str, &str, bool),
    action: Action,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    if !can {
        key_cap(
            ui.painter(),
            target.center(),
            egui::Align2::CENTER_CENTER,
            key,
            *theme.line,
            &theme,
        );
        return;
    }
    let response = press_chosen(ui, target, title, false);
    let state = State::of(&response);
    let ink = if state.hovered { *theme.ink } else { *theme.edge };
    key_cap(
        ui.painter(),
        target.center(),
        egui::Align2::CENTER_CENTER,
        key,
        ink,
        &theme,
    );
    if state.focused {
        focus_ring(ui.painter(), target.shrink(2.0), 4.0, &theme);
    }
    if crate::ui::widgets::hinted(response, title).clicked() {
        actions.ask(action);
    }
}
