//! Actions of first start.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    [
        row(
            Action::ChoiceUp,
            "Choice above",
            "Both hands move up.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::ChoiceDown,
            "Choice below",
            "Both hands move down.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::TakeChoice,
            "Take this",
            "Opens what the hands hold.",
            &[Chord::plain(Key::Enter)],
        ),
        row(
            Action::OpenDemo,
            "Open the demo gym",
            "Invented athletes in a folder of its own.",
            &[Chord::plain(Key::D)],
        ),
        row(
            Action::StartLogbook,
            "Start a logbook",
            "Name, unit, plates, first weigh-in.",
            &[Chord::plain(Key::N)],
        ),
        row(
            Action::OpenLogbook,
            "Open a logbook you have",
            "Pick its folder; nothing in it is changed.",
            &[Chord::plain(Key::O)],
        ),
        row(
            Action::ImportSheet,
            "Bring a spreadsheet",
            "Its rows are shown before anything is written.",
            &[Chord::plain(Key::I)],
        ),
        row(
            Action::MakeLogbook,
            "Make the logbook",
            "Once its name is there; what is left empty can come later.",
            &[Chord::ctrl(Key::Enter)],
        ),
    ]
    .into()
}
