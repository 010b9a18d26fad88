//! The rest clock of the dock: who may go, in words.

use crate::ui::action::{Action, Actions};
use crate::ui::pen::{Ink, Line, letters};
use crate::ui::screens::next::state::NextState;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::CardView;
use crate::ui::widgets::{self, RestTrack, clock_words, key_cap, rest_track};
use crate::units::Rail;
use egui::{Align2, Rect, Ui, pos2};

use super::keys::letter;

/// The rest clock: who may go, in words.
pub(super) fn rest_ui(
    ui: &mut Ui,
    rect: Rect,
    card: &CardView,
    state: &NextState,
    actions: &mut Actions,
    wide: bool,
) {
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
