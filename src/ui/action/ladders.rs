//! Actions of Ladders.

use egui::Key;

use crate::ui::keys::Chord;

use super::{Action, Row, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = [
        row(
            Action::RungUp,
            "Rung above",
            "Chooses it.",
            &[Chord::plain(Key::ArrowUp)],
        ),
        row(
            Action::RungDown,
            "Rung below",
            "Chooses it.",
            &[Chord::plain(Key::ArrowDown)],
        ),
        row(
            Action::BesideLeft,
            "Branch beside",
            "Goes from a rung to a branch that joins there.",
            &[Chord::plain(Key::ArrowLeft)],
        ),
        row(
            Action::BesideRight,
            "Back to the main line",
            "Goes from a branch to the rung it joins.",
            &[Chord::plain(Key::ArrowRight)],
        ),
        up(),
        down(),
        row(
            Action::HandsToMiddle,
            "Hands to the middle",
            "Scrolls so that both hands show.",
            &[Chord::plain(Key::H)],
        ),
        row(
            Action::PlaceHand,
            "Place a hand here",
            "Puts a hand on the chosen rung.",
            &[Chord::plain(Key::P)],
        ),
        row(
            Action::SetAside,
            "Set a rail aside",
            "No advice for it until it is placed again.",
            &[Chord::plain(Key::A)],
        ),
        row(
            Action::OtherLadder,
            "Other ladder",
            "Opens or joins another ladder.",
            &[Chord::plain(Key::O)],
        ),
        row(
            Action::EditLadder,
            "Edit this ladder",
            "Opens its text in the Workshop.",
            &[Chord::plain(Key::E)],
        ),
        super::strength::opens(),
    ]
    .into();
    rows.extend(super::totals::slider());
    rows
}

/// Scrolls a ladder; the Workshop draws one too.
pub(super) fn up() -> Row {
    row(
        Action::PageUp,
        "Higher part",
        "Scrolls a long ladder up.",
        &[Chord::plain(Key::PageUp)],
    )
}

/// As [`up`].
pub(super) fn down() -> Row {
    row(
        Action::PageDown,
        "Lower part",
        "Scrolls a long ladder down.",
        &[Chord::plain(Key::PageDown)],
    )
}
