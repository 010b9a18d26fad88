//! Actions of Weigh-ins: its own, and those of the list that it shares with the journal.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, journal, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows = vec![
        row(
            Action::WeighIn,
            "Weigh in",
            "What the scale showed, today or on another day.",
            &[Chord::plain(Key::K)],
        ),
        row(
            Action::SetPhase,
            "Set the phase",
            "Hold, gain, a lighter week, or a cut.",
            &[Chord::plain(Key::F)],
        ),
    ];
    let is_shared = |(action, ..): &Row| !matches!(action, Action::FilterRecords | Action::NoteRow);
    rows.extend(journal::rows().into_iter().filter(is_shared));
    rows
}
