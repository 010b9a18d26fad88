//! The card of today's meet: which lifts, what was done, what is planned, the total of added loads, and its sheet.

use egui::{Rect, Role, Sense, WidgetInfo, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, Pen, named_galley};
use crate::ui::theme::{Face, RADIUS_BOX, Theme};
use crate::ui::views::{MeetChoice, MeetView};
use crate::ui::widgets::{Button, State, focus_ring, tick_box};
use crate::units::Unit;

use super::cards::{explain, glued, quiet, strong};

/// A meet of today.
pub(super) fn meet_card(pen: &mut Pen<'_>, view: &MeetView, unit: Unit, actions: &mut Actions) {
    let theme = Theme::of(pen.ui);
    pen.write_apart(
        Line::new("Meet today", strong(&theme, 17.0)),
        Line::new(&format!("added loads, {}", unit.sign()), quiet(&theme)),
    );
    pen.gap(4.0);
    let top = pen.y;
    row(pen, ["", "done", "1st", "2nd", "3rd"], Weight::Head);
    for lift in &view.lifts {
        pen.rule(*theme.line);
        let [one, two, three] = &lift.attempts;
        row(pen, [&lift.title, &lift.made, one, two, three], Weight::Line);
    }
    pen.rule(*theme.line);
    let [one, two, three] = &view.planned;
    row(pen, ["Total", &view.total, one, two, three], Weight::Total);
    explain(pen, top, "meet", &view.how);
    for note in &view.notes {
        pen.gap(4.0);
        pen.write(Line::new(&glued(note), Ink::new(Face::Label, 15.0, *theme.ink2)));
    }
    choices(pen, &view.choices, actions);
    buttons(pen, view.refused.is_none(), actions);
}

/// What can be done with it: a try is logged in any case, a sheet is there where something is planned.
fn buttons(pen: &mut Pen<'_>, has_sheet: bool, actions: &mut Actions) {
    let theme = Theme::of(pen.ui);
    pen.gap(8.0);
    let both = [
        ("Log a try", Action::LogTry),
        ("Sheet for the meet", Action::MeetSheet),
    ];
    let both = both
        .into_iter()
        .filter(|(_, action)| has_sheet || *action != Action::MeetSheet);
    let mut x = pen.left;
    let mut line = pen.room(34.0);
    for (title, action) in both {
        let key = action.key();
        let button = Button::plain(title).key(&key);
        let width = button.width(pen.ui.painter(), &theme).min(pen.width());
        if x + width > pen.right && x > pen.left {
            x = pen.left;
            pen.gap(6.0);
            line = pen.room(34.0);
        }
        if let Some(line) = line {
            let place = Rect::from_min_size(pos2(x, line.top()), vec2(width, 34.0));
            let response = button.show(pen.ui, place);
            if response.gained_focus() {
                response.scroll_to_me(None);
            }
            if response.clicked() {
                actions.ask(action);
            }
        }
        x += width + 8.0;
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Weight {
    Head,
    Line,
    Total,
}

/// A row of the table: a name, what was done, three attempts.
fn row(pen: &mut Pen<'_>, cells: [&str; 5], weight: Weight) {
    let theme = Theme::of(pen.ui);
    let right = pen.right;
    let step = if pen.width() > 300.0 { 66.0 } else { 50.0 };
    let columns = [right - 3.0 * step, right - 2.0 * step, right - step, right];
    let Some(rect) = pen.room(26.0) else { return };
    let ink = match weight {
        Weight::Head => quiet(&theme),
        Weight::Line => Ink::new(Face::Label, 15.0, *theme.ink),
        Weight::Total => strong(&theme, 15.0),
    };
    let painter = pen.ui.painter();
    let room = columns[0] - step + 4.0 - rect.left();
    let name = Line::new(cells[0], ink).squeezed(painter, room.max(36.0));
    let y = rect.center().y - name.size().y / 2.0;
    named_galley(pen.ui, pos2(rect.left(), y), name);
    for (nth, (x, text)) in columns.iter().zip(cells.into_iter().skip(1)).enumerate() {
        let is_done = nth == 0 && weight != Weight::Head;
        let ink = if is_done { strong(&theme, 15.0) } else { ink };
        let cell = Line::new(text, ink).squeezed(pen.ui.painter(), step - 5.0);
        named_galley(pen.ui, pos2(x - cell.size().x, y), cell);
    }
}

/// Which lifts are in it, each to be ticked; one at least stays.
fn choices(pen: &mut Pen<'_>, all: &[MeetChoice], actions: &mut Actions) {
    if all.len() < 2 {
        return;
    }
    let theme = Theme::of(pen.ui);
    pen.gap(6.0);
    let ink = Ink::new(Face::Label, 15.0, *theme.ink);
    let mut x = pen.left;
    let mut line = pen.room(26.0);
    for (nth, choice) in all.iter().enumerate() {
        let title = Line::new(&choice.title, ink).on_one_line(pen.ui.painter(), pen.width() - 30.0);
        let width = title.size().x + 26.0;
        if x + width > pen.right && x > pen.left {
            x = pen.left;
            line = pen.room(26.0);
        }
        if let Some(line) = line {
            let place = Rect::from_min_size(pos2(x, line.top()), vec2(width, 26.0));
            let id = pen.ui.scope_id().with(("in the meet", nth));
            let response = pen.ui.interact(place, id, Sense::click());
            let spoken = format!("{} in the meet", choice.title);
            response.widget_info(|| WidgetInfo::selected(Role::CheckBox, true, choice.chosen, &spoken));
            let square = Rect::from_min_size(place.left_center() - vec2(0.0, 9.0), vec2(18.0, 18.0));
            let painter = pen.ui.painter();
            tick_box(painter, square, choice.chosen, State::of(&response), &theme);
            painter.galley(
                pos2(square.right() + 6.0, place.center().y - title.size().y / 2.0),
                title,
                *theme.ink,
            );
            if response.gained_focus() {
                response.scroll_to_me(None);
            }
            if response.has_focus() {
                focus_ring(painter, place, RADIUS_BOX, &theme);
            }
            if response.clicked() {
                turn(all, nth, actions);
            }
        }
        x += width + 14.0;
    }
}

/// The meet over the ticked lifts with this one turned, unless none would be left.
fn turn(all: &[MeetChoice], turned: usize, actions: &mut Actions) {
    let ticked = all.iter().enumerate();
    let ticked = ticked.filter(|(nth, choice)| choice.chosen != (*nth == turned));
    let chosen: Vec<String> = ticked.map(|(_, choice)| choice.movement.clone()).collect();
    if !chosen.is_empty() {
        actions.write(Deed::MeetOver(chosen));
    }
}
