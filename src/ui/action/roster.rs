//! Actions of the roster.

use egui::Key;

use crate::ui::keys::Chord;

use crate::ui::views::Need;

use super::{Action, Row, digit, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = (0..=7).map(need).collect();
    rows.extend([
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
            "By name, ladder or need.",
            &[Chord::plain(Key::Slash)],
        ),
        row(
            Action::PageUpRows,
            "Lines far above",
            "Goes 25 lines up.",
            &[Chord::plain(Key::PageUp)],
        ),
        row(
            Action::PageDownRows,
            "Lines far below",
            "Goes 25 lines down.",
            &[Chord::plain(Key::PageDown)],
        ),
        row(
            Action::MarkRow,
            "Mark",
            "Marks the athlete for the sheet, or takes the mark away.",
            &[Chord::plain(Key::X)],
        ),
        row(
            Action::MarkShown,
            "Mark all shown",
            "Marks everybody who passes the filter, or takes their marks away.",
            &[Chord::shift(Key::X)],
        ),
        row(
            Action::TonightsSheet,
            "Sheet for tonight",
            "A PDF of what the marked athletes do, to print.",
            &[Chord::plain(Key::S)],
        ),
        row(
            Action::TypeResults,
            "Type results",
            "What the marked athletes did, in one table.",
            &[Chord::plain(Key::T)],
        ),
        row(
            Action::ProgressReport,
            "Report of progress",
            "A PDF of the chosen athlete's last twelve weeks, to hand over.",
            &[Chord::plain(Key::R)],
        ),
        row(
            Action::NewAthlete,
            "New athlete",
            "Name, ladder, bodyweight.",
            &[Chord::plain(Key::A)],
        ),
        row(
            Action::EditAthlete,
            "Rename or archive",
            "Another name, off the roster, or back on it.",
            &[Chord::plain(Key::E)],
        ),
        row(
            Action::NoteRow,
            "Note",
            "A remark about the chosen athlete.",
            &[Chord::plain(Key::N)],
        ),
    ]);
    rows
}

/// One need, or with 0 all of them.
fn need(nth: u8) -> Row {
    let need = usize::from(nth).checked_sub(1).and_then(|nth| Need::ALL.get(nth));
    let title = need.map_or_else(
        || "Every need".to_owned(),
        |need| format!("Only: {}", need.title()),
    );
    row(
        Action::NeedOnly(nth),
        &title,
        "Shows only these athletes; once more shows everyone.",
        &[Chord::plain(digit(nth))],
    )
}
