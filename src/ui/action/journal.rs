//! Actions of the journal, and of one of its records in full.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

/// While the list is shown.
pub(super) fn rows() -> Vec<Row> {
    let mut rows = vec![
        row(
            Action::RowUp,
            "Record above",
            "Chooses the next newer one.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::RowDown,
            "Record below",
            "Chooses the next older one.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::PageUpRows,
            "Records far above",
            "Goes a page up.",
            &[Chord::plain(Key::PageUp)],
        ),
        row(
            Action::PageDownRows,
            "Records far below",
            "Goes a page down.",
            &[Chord::plain(Key::PageDown)],
        ),
        row(
            Action::FirstRow,
            "Newest record",
            "Goes to the top.",
            &[Chord::plain(Key::Home)],
        ),
        row(
            Action::LastRow,
            "Oldest record",
            "Goes to the end.",
            &[Chord::plain(Key::End)],
        ),
        row(
            Action::FilterRecords,
            "Filter",
            "By movement, kind, date or a word of the note.",
            &[Chord::plain(Key::Slash)],
        ),
        row(
            Action::OpenRow,
            "Look at the record",
            "All of it: as written, what it counts as, what it said before.",
            &[Chord::plain(Key::Enter)],
        ),
        row(
            Action::NoteRow,
            "Note",
            "Writes a remark of today.",
            &[Chord::plain(Key::N)],
        ),
    ];
    rows.extend(of_a_record());
    rows
}

/// While one record is shown in full.
pub(super) fn of_a_record() -> Vec<Row> {
    vec![
        row(
            Action::AmendRecord,
            "Amend",
            "The record says something else from now on; what it said stays on record.",
            &[Chord::plain(Key::E)],
        ),
        row(
            Action::RetractRecord,
            "Retract",
            "The record counts nowhere from now on; it stays on record.",
            &[Chord::plain(Key::R)],
        ),
        row(
            Action::RestoreRecord,
            "Restore",
            "A retracted record counts again.",
            &[Chord::plain(Key::B)],
        ),
    ]
}
