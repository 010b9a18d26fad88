//! Actions of the roster.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    [
        row(
            Action::RowUp,
            "Line above",
            "Chooses it.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::RowDown,
            "Line below",
            "Chooses it.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::OpenRow,
            "Open",
            "Opens Next of the chosen athlete.",
            &[Chord::plain(Key::Enter)],
        ),
        row(
            Action::NextGroup,
            "Next group",
            "Goes to the next need.",
            &[Chord::plain(Key::G)],
        ),
        row(
            Action::FilterRoster,
            "Filter",
            "By name or ladder.",
            &[Chord::plain(Key::Slash)],
        ),
    ]
    .into()
}
