//! The one main button, and how the set ended.

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters, width_of};
use crate::ui::screens::next::state::NextState;
use crate::ui::screens::next::words::{done_words, log_title};
use crate::ui::theme::{Face, RADIUS_CHIP, Theme, size};
use crate::ui::views::{Asked, CardView};
use crate::ui::widgets::{self, key_cap, key_cap_width};
use crate::units::Outcome;
use egui::{Align2, Rect, Ui, pos2, vec2};

/// The one main button.
pub(super) fn main_button(
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
    let (detail, enabled) = match state.read_only {
        true => (widgets::LOOK_ONLY.to_owned(), false),
        false => (detail, enabled),
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
    let words = head.size().x.max(foot.size().x);
    let cap = key_cap_width(ui.painter(), "Enter", theme);
    if enabled && matches!(card.asked, Asked::Work(_)) && words + cap + 48.0 <= rect.width() {
        let at = rect.right_center() - vec2(16.0, 0.0);
        key_cap(ui.painter(), at, Align2::RIGHT_CENTER, "Enter", text, theme);
    }
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
    let y = button.top() - 14.0;
    let mut x = button.left();
    for (key, words, short, action, outcome) in [
        ("M", "missed", "missed", Action::Missed, Outcome::Missed),
        (
            "F",
            "standard not kept",
            "form",
            Action::FormNotKept,
            Outcome::Form,
        ),
    ] {
        let on = state.outcome == outcome;
        let ink = Ink::new(
            if on { Face::LabelStrong } else { Face::Label },
            size::TABLE,
            if on { *theme.plum } else { *theme.ink2 },
        );
        let room = |words: &str| width_of(ui.painter(), words, ink) + 34.0;
        let fits = x - 3.0 + room(words) <= button.right() + 4.0;
        let words = if fits { words } else { short };
        let width = room(words);
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
