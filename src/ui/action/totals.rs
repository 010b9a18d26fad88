//! Actions of Totals.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, digit, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = [
        super::strength::earlier(),
        super::strength::later(),
        row(
            Action::PageUp,
            "Cards above",
            "Scrolls the cards beside the plot.",
            &[Chord::plain(Key::PageUp)],
        ),
        row(
            Action::PageDown,
            "Cards below",
            "Scrolls the cards beside the plot.",
            &[Chord::plain(Key::PageDown)],
        ),
        row(
            Action::NextLift,
            "Next movement",
            "Opens the next movement.",
            &[Chord::plain(Key::M)],
        ),
        super::strength::opens(),
        row(
            Action::CopyPoints,
            "Copy as CSV",
            "Puts every set of the plot on the clipboard.",
            &[Chord::plain(Key::C)],
        ),
        row(
            Action::SavePicture,
            "Save picture",
            "Writes the plot as a PNG file.",
            &[Chord::ctrl(Key::S)],
        ),
        row(
            Action::LogTry,
            "Log a try",
            "Writes one try of today's meet, of a squat too.",
            &[Chord::plain(Key::L)],
        ),
        row(
            Action::MeetSheet,
            "Sheet for the meet",
            "A PDF of today's meet with its attempts, to print and to write on.",
            &[Chord::plain(Key::S)],
        ),
    ]
    .into();
    rows.extend(slider());
    rows.extend((0..=9).map(|reps| {
        row(
            Action::LiftReps(reps),
            &format!("Bests for {reps} reps"),
            "Two digits in a second make 10 to 12.",
            &[Chord::plain(digit(reps))],
        )
    }));
    rows
}

/// The keys of a slider for bodyweight; Ladders has one too.
pub(super) fn slider() -> [Row; 4] {
    [
        row(
            Action::LessBodyweight,
            "A little lighter",
            "Asks about a bodyweight 0.1 lower.",
            &[Chord::plain(Key::OpenBracket)],
        ),
        row(
            Action::MoreBodyweight,
            "A little heavier",
            "Asks about a bodyweight 0.1 higher.",
            &[Chord::plain(Key::CloseBracket)],
        ),
        row(
            Action::MuchLessBodyweight,
            "Lighter",
            "Asks about a bodyweight 1 lower.",
            &[
                Chord::shift(Key::OpenBracket),
                Chord::plain(Key::OpenCurlyBracket),
            ],
        ),
        row(
            Action::MuchMoreBodyweight,
            "Heavier",
            "Asks about a bodyweight 1 higher.",
            &[
                Chord::shift(Key::CloseBracket),
                Chord::plain(Key::CloseCurlyBracket),
            ],
        ),
    ]
}
