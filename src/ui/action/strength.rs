//! Actions while strength over time is open, and the one that opens it.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

/// Opens it, on Ladders and on Totals.
pub(super) fn opens() -> Row {
    row(
        Action::StrengthOverTime,
        "Strength over time",
        "Plots what was believed, and every set.",
        &[Chord::plain(Key::T)],
    )
}

pub(super) fn rows() -> Vec<Row> {
    vec![
        earlier(),
        later(),
        row(
            Action::MendSet,
            "Mend the set that looks like a typo",
            "Writes the load and repetitions that would fit.",
            &[Chord::plain(Key::M)],
        ),
        row(
            Action::StrengthOverTime,
            "Close strength over time",
            "Back to the place beneath.",
            &[Chord::plain(Key::T)],
        ),
    ]
}

/// Walks along a plot; Totals has one too.
pub(super) fn earlier() -> Row {
    row(
        Action::PointBack,
        "Earlier set",
        "Reads the set before on the plot.",
        &[Chord::plain(Key::ArrowLeft)],
    )
}

/// As [`earlier`].
pub(super) fn later() -> Row {
    row(
        Action::PointOn,
        "Later set",
        "Reads the set after on the plot.",
        &[Chord::plain(Key::ArrowRight)],
    )
}
