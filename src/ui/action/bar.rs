//! Actions at the bar.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    [
        row(
            Action::LeaveBar,
            "Leave the bar view",
            "Back to Next.",
            &[Chord::plain(Key::F11)],
        ),
        row(
            Action::BarMore,
            "One more",
            "Changes the reps or seconds that are logged.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::BarFewer,
            "One fewer",
            "Changes the reps or seconds that are logged.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::BarMissed,
            "Missed",
            "One more was tried and failed.",
            &[Chord::plain(Key::M)],
        ),
        row(
            Action::BarUndo,
            "Undo",
            "Takes back the newest record.",
            &[Chord::plain(Key::Backspace)],
        ),
    ]
    .into()
}
