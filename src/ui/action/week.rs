//! Actions of Week.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    vec![
        row(
            Action::EarlierWeek,
            "The week before",
            "Shows the calendar week before this one.",
            &[Chord::plain(Key::ArrowLeft)],
        ),
        row(
            Action::LaterWeek,
            "The week after",
            "Shows the calendar week after this one, up to today's.",
            &[Chord::plain(Key::ArrowRight)],
        ),
        row(
            Action::BuildSession,
            "Build a session",
            "Today's work from a number of sets: what, in which order, and why.",
            &[Chord::plain(Key::B)],
        ),
        row(
            Action::PageUp,
            "Scroll up",
            "Shows what is above.",
            &[Chord::plain(Key::PageUp)],
        ),
        row(
            Action::PageDown,
            "Scroll down",
            "Shows what is below.",
            &[Chord::plain(Key::PageDown)],
        ),
    ]
}
