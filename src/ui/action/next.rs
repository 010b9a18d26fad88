//! Actions of Next.

use egui::Key;

use crate::report::numbers::counted;
use crate::ui::keys::Chord;
use crate::units::Rail;

use super::{Action, Row, digit, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = [Rail::Left, Rail::Right, Rail::Both].map(hand).into();
    rows.extend((0..=9).map(amount));
    rows.extend((0..=9).map(reserve));
    rows.extend([
        row(
            Action::LogSet,
            "Log the set",
            "Writes what the main button says.",
            &[Chord::plain(Key::Enter)],
        ),
        row(
            Action::Missed,
            "Missed",
            "One more was tried and failed.",
            &[Chord::plain(Key::M)],
        ),
        row(
            Action::FormNotKept,
            "Standard not kept",
            "The reps were done, but not as the movement asks.",
            &[Chord::plain(Key::F)],
        ),
        row(
            Action::RestClock,
            "Rest clock",
            "Starts or stops it.",
            &[Chord::plain(Key::Space)],
        ),
        row(
            Action::HoldClock,
            "Hold clock",
            "Counts 3-2-1, then runs; any key stops it.",
            &[Chord::plain(Key::H)],
        ),
        row(
            Action::Pain,
            "Report pain",
            "Where, and how much of 10.",
            &[Chord::plain(Key::P)],
        ),
        row(
            Action::WeighIn,
            "Weigh in",
            "Writes today's bodyweight.",
            &[Chord::plain(Key::K)],
        ),
        row(
            Action::UndoSet,
            "Undo",
            "Takes back the newest record.",
            &[Chord::plain(Key::U)],
        ),
        row(
            Action::Note,
            "Add a note",
            "To the next set, or by itself.",
            &[Chord::plain(Key::N)],
        ),
        row(
            Action::Why,
            "Why, first card",
            "Every reason in full, with its rule.",
            &[Chord::plain(Key::W)],
        ),
        row(
            Action::WhyOther,
            "Why, second card",
            "Every reason in full, with its rule.",
            &[Chord::plain(Key::V)],
        ),
        row(
            Action::WhyNext,
            "Why, third card",
            "Every reason in full, with its rule.",
            &[Chord::plain(Key::X)],
        ),
        row(
            Action::WarmUp,
            "Warm-up",
            "Shows the steps, or ticks the next one.",
            &[Chord::plain(Key::Q)],
        ),
        row(
            Action::AtTheBar,
            "At the bar",
            "Next in letters that are read from three metres.",
            &[Chord::plain(Key::F11)],
        ),
    ]);
    rows
}

fn hand(rail: Rail) -> Row {
    let (title, key) = match rail {
        Rail::Left => ("Log the left hand", Key::L),
        Rail::Right => ("Log the right hand", Key::R),
        Rail::Both => ("Log both hands", Key::B),
    };
    row(
        Action::Hand(rail),
        title,
        "The dock logs for this hand.",
        &[Chord::plain(key)],
    )
}

fn amount(n: u8) -> Row {
    row(
        Action::Amount(n),
        &counted(n, "rep"),
        "Digits within a second join: 1, 2 is 12.",
        &[Chord::plain(digit(n))],
    )
}

fn reserve(n: u8) -> Row {
    let title = format!("{n} in reserve");
    row(
        Action::Reserve(n),
        &title,
        "Repetitions in reserve at the set's end.",
        &[Chord::shift(digit(n))],
    )
}
