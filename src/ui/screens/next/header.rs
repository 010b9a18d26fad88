//! The bar over Next: the day, bodyweight, phase, pain, and the weigh-in button.

use egui::{Align2, Pos2, Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{NextView, Phrase};
use crate::ui::widgets::{Button, key_cap};

use super::state::{NextState, Sheet};
use crate::ui::screens::heading;

pub(super) fn header_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
    wide: bool,
    compact: bool,
) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Next");
    let ink = Ink::new(Face::Label, size::BODY, *theme.ink2);
    let galley = Line::new(&view.day, ink).on_one_line(ui.painter(), room.width());
    let day = named_galley(
        ui,
        pos2(room.left(), room.center().y - galley.size().y / 2.0),
        galley,
    );
    let mut from_right = Placing {
        right: room.right(),
        left: day.right() + 16.0,
        y: room.center().y,
    };
    let button = Button::plain("Weigh in").key(if compact { "" } else { "K" });
    let width = button.width(ui.painter(), &theme);
    let place = Rect::from_min_size(
        pos2(room.right() - width, room.center().y - 18.0),
        vec2(width, 36.0),
    );
    if button.show_for_writing(ui, place, state.read_only) {
        actions.ask(Action::WeighIn);
    }
    from_right.right = place.left() - 20.0;
    if !wide {
        let button = Button::plain("Warm-up, sets");
        let width = button.width(ui.painter(), &theme);
        let place = Rect::from_min_size(
            pos2(from_right.right + 12.0 - width, room.center().y - 18.0),
            vec2(width, 36.0),
        );
        if place.left() > from_right.left {
            if button.show(ui, place).clicked() {
                state.sheet = Some(Sheet::Today);
            }
            from_right.right = place.left() - 16.0;
        }
    }
    pain_ui(ui, view, &mut from_right, actions);
    if let Some(phase) = view.phase.as_ref().filter(|_| wide) {
        from_right.phrase(ui, &Phrase::plain("Phase ").then_strong(phase));
    }
    let weight = if wide {
        &view.bodyweight
    } else {
        &view.bodyweight_short
    };
    from_right.phrase(ui, weight);
}

/// The worst pain of today, or an offer to report one.
fn pain_ui(ui: &mut Ui, view: &NextView, place: &mut Placing, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let phrase = match &view.pain {
        Some(pain) => Phrase::plain("Pain ").then_strong(pain),
        None => Phrase::plain("Report pain"),
    };
    let plain = Ink::new(Face::Label, size::BODY, *theme.ink2);
    let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
    let galley = Line::phrase(&phrase, plain, strong).on_one_line(ui.painter(), f32::INFINITY);
    let width = galley.size().x + 32.0;
    if place.right - width < place.left {
        return;
    }
    let rect = Rect::from_min_max(
        pos2(place.right - width, place.y - 14.0),
        pos2(place.right, place.y + 14.0),
    );
    let response = crate::ui::widgets::press(ui, rect, &phrase.text());
    ui.painter().galley(
        pos2(rect.left(), place.y - galley.size().y / 2.0),
        galley,
        *theme.ink2,
    );
    key_cap(
        ui.painter(),
        rect.right_center(),
        Align2::RIGHT_CENTER,
        "P",
        *theme.ink2,
        &theme,
    );
    if response.clicked() {
        actions.ask(Action::Pain);
    }
    place.right = rect.left() - 24.0;
}

/// Words that are placed from the right edge inward, as long as they fit.
struct Placing {
    right: f32,
    left: f32,
    y: f32,
}

impl Placing {
    fn phrase(&mut self, ui: &mut Ui, phrase: &Phrase) {
        let theme = Theme::of(ui);
        let plain = Ink::new(Face::Label, size::BODY, *theme.ink2);
        let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
        let galley = Line::phrase(phrase, plain, strong).on_one_line(ui.painter(), f32::INFINITY);
        if self.right - galley.size().x >= self.left {
            let at: Pos2 = pos2(self.right - galley.size().x, self.y - galley.size().y / 2.0);
            self.right = named_galley(ui, at, galley).left() - 24.0;
        }
    }
}
