//! Actions of the Workshop. Those with a function key or Ctrl hold in the text too.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    vec![
        row(
            Action::NextMistake,
            "Next mistake",
            "Goes to its line.",
            &[Chord::plain(Key::F4)],
        ),
        row(
            Action::MendMistake,
            "Mend the mistake",
            "Writes what is meant, where no person has to decide.",
            &[Chord::plain(Key::F8)],
        ),
        row(
            Action::SaveText,
            "Save and check",
            "Writes the file; a mistake in it takes no ladder away.",
            &[Chord::ctrl(Key::S)],
        ),
        row(
            Action::OpenRow,
            "Into the text",
            "Esc leaves it.",
            &[Chord::plain(Key::Enter)],
        ),
        row(
            Action::RowUp,
            "File above",
            "Opens it.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::RowDown,
            "File below",
            "Opens it.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::OtherLadder,
            "Other ladder",
            "Opens another file.",
            &[Chord::plain(Key::O)],
        ),
        row(
            Action::FoldRungs,
            "Fold rungs, or unfold",
            "One line a rung.",
            &[Chord::plain(Key::Z)],
        ),
        row(
            Action::TurnBody,
            "Demands for any body, or the athlete",
            "Whose body the drawing is computed for.",
            &[Chord::plain(Key::D)],
        ),
        row(
            Action::TextOrLadder,
            "Text or ladder",
            "In a narrow window: shows the other one.",
            &[Chord::plain(Key::V)],
        ),
        super::ladders::up(),
        super::ladders::down(),
        row(
            Action::NewLadder,
            "New ladder",
            "Begins with three sound rungs.",
            &[Chord::plain(Key::N)],
        ),
        row(
            Action::CopyLadder,
            "Copy to an own one",
            "Of the same id: it replaces the shipped one in this logbook.",
            &[Chord::plain(Key::C)],
        ),
        row(
            Action::ThrowAway,
            "Back to what is saved",
            "Throws away what was typed since.",
            &[Chord::plain(Key::X)],
        ),
        row(
            Action::DeleteLadder,
            "Delete this file",
            "Asks first; it goes to the earlier versions.",
            &[Chord::plain(Key::Delete)],
        ),
    ]
}
