//! What a set says of its reserve: by itself, and by the sets around it.
//!
//! A lifter who drops a repetition at the same load was near failure, one who repeats all as planned was not: where no
//! reserve is reported that tells more than a habit does.

use crate::units::Outcome;

use super::Tuning;
use super::rows::Row;

/// How much a set says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Says {
    /// One more was tried and failed.
    Missed,
    /// Done, with this reserve reported.
    Reported(f64),
    /// Done without a report, and the day's hardest: a habit's reserve was left.
    Habit(Standing),
    /// Done without a report, but the sets around it tell how near to failure it was.
    Shown(Shown),
    /// Done without a report, after one was missed at no more load; so many repetitions fewer than then.
    Spent(f64),
    /// Done without a report: at least these repetitions can be done.
    AtLeast,
}

/// Where a day's hardest set stands among the others of its side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Standing {
    /// Not told apart.
    Any,
    /// The first at its load, and none after it at that load.
    Top,
    /// The last of several with the same load and repetitions: all was done as planned.
    Repeated,
    /// One repetition more than all others at its load, light ones before it apart: but for that one, all was done as planned.
    Raised,
}

/// What the sets around one tell of its reserve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Shown {
    /// The next at no more load was missed.
    BeforeMiss,
    /// The day's hardest, with more repetitions than the one before, or the last before they fell.
    Pushed,
    /// The day's hardest, the first at its load or more than the one before, and followed by fewer.
    ThenFewer,
    /// So many repetitions fewer than the one before at the same load, and the day's last. Where more follow it says less.
    Fewer(u8),
}

impl Shown {
    /// Parts of such sets that left 0, 1, … repetitions, and any more. T: counted in simulated logs, seeds 410
    /// to 413, and rounded by hand.
    pub(super) fn parts(self) -> ([f64; 10], f64) {
        match self {
            Shown::BeforeMiss => (
                [0.70, 0.14, 0.07, 0.04, 0.02, 0.01, 0.005, 0.003, 0.002, 0.002],
                0.004,
            ),
            Shown::Pushed => (
                [0.39, 0.25, 0.17, 0.11, 0.05, 0.02, 0.01, 0.004, 0.002, 0.001],
                0.003,
            ),
            Shown::ThenFewer => (
                [0.27, 0.24, 0.23, 0.14, 0.07, 0.025, 0.01, 0.005, 0.003, 0.002],
                0.004,
            ),
            Shown::Fewer(..=1) => (
                [0.25, 0.18, 0.20, 0.17, 0.11, 0.05, 0.02, 0.01, 0.004, 0.003],
                0.005,
            ),
            Shown::Fewer(2) => (
                [0.10, 0.12, 0.21, 0.22, 0.17, 0.10, 0.05, 0.02, 0.005, 0.003],
                0.005,
            ),
            Shown::Fewer(3..) => ([0.03, 0.04, 0.13, 0.18, 0.20, 0.18, 0.11, 0.07, 0.04, 0.02], 0.02),
        }
    }
}

/// What the set at `index` says, where `hardest` are the hardest of the day.
pub(super) fn says(rows: &[Row], index: usize, hardest: &[Option<usize>; 3], tuning: &Tuning) -> Says {
    let Some(row) = rows.get(index) else {
        return Says::AtLeast;
    };
    if row.outcome == Outcome::Missed {
        return Says::Missed;
    }
    if let Some(left) = row.left {
        return Says::Reported(left);
    }
    without_report(rows, index, hardest, tuning)
}

/// What it would say had nothing been reported.
pub(super) fn without_report(
    rows: &[Row],
    index: usize,
    hardest: &[Option<usize>; 3],
    tuning: &Tuning,
) -> Says {
    let Some(row) = rows.get(index) else {
        return Says::AtLeast;
    };
    if let (Some(fewer), true) = (fewer_than_missed(&rows[..index], row), tuning.spent_after_miss) {
        return Says::Spent(fewer);
    }
    let hardest = hardest.contains(&Some(index));
    match (tuning.reads_patterns, hardest) {
        (true, _) => by_neighbours(rows, index, hardest),
        (false, true) => Says::Habit(Standing::Any),
        (false, false) => Says::AtLeast,
    }
}

/// What the sets of its side before and after a set tell of it.
fn by_neighbours(rows: &[Row], index: usize, hardest: bool) -> Says {
    let row = &rows[index];
    let last = rows[..index].iter().rev().find(|other| other.side == row.side);
    let next = rows[index + 1..].iter().find(|other| other.side == row.side);
    let same_load = |other: &&Row| row.is_at_load_of(other);
    let gained = last
        .filter(same_load)
        .map(|last| (row.reps - last.reps) / row.unit);
    let then = next
        .filter(same_load)
        .map(|next| (next.reps - row.reps) / row.unit);
    let missed_next = next.is_some_and(|next| {
        next.outcome == Outcome::Missed && next.log_load <= row.log_load + 1e-4 && next.reps <= row.reps
    });
    let fell = |by: Option<f64>| by.is_some_and(|by| by <= -0.5);
    let rose = gained.is_some_and(|by| by >= 0.5);
    match hardest {
        true if is_raised(rows, index) => Says::Habit(Standing::Raised),
        _ if missed_next => Says::Shown(Shown::BeforeMiss),
        false if follows_raised(rows, index) => Says::AtLeast,
        false => match gained {
            Some(by) if by <= -0.5 && next.is_none() => Says::Shown(Shown::Fewer(if by > -1.5 {
                1
            } else if by > -2.5 {
                2
            } else {
                3
            })),
            _ => Says::AtLeast,
        },
        true if fell(then) && (rose || gained.is_none()) => Says::Shown(Shown::ThenFewer),
        true if rose || fell(then) => Says::Shown(Shown::Pushed),
        true if gained.is_none() => Says::Habit(Standing::Top),
        true => Says::Habit(Standing::Repeated),
    }
}

/// Whether a set has one repetition more than all others of its side at its load, of which those before it may have
/// fewer, as warm-ups do.
fn is_raised(rows: &[Row], index: usize) -> bool {
    let row = &rows[index];
    let more = |other: &Row| (row.reps - other.reps) / row.unit;
    let others = || {
        rows.iter()
            .enumerate()
            .filter(|(at, other)| *at != index && row.is_at_load_of(other))
            .filter(|(at, other)| *at > index || other.outcome == Outcome::Missed || more(other) < 1.5)
    };
    let by_one = |other: &Row| other.outcome != Outcome::Missed && (more(other) - 1.0).abs() < 0.5;
    others().next().is_some() && others().all(|(_, other)| by_one(other))
}

/// Whether a set before it is raised over it and its equals. Only the first that could be is looked at: two are none.
fn follows_raised(rows: &[Row], index: usize) -> bool {
    let row = &rows[index];
    let is_one_more =
        |other: &Row| row.is_at_load_of(other) && ((other.reps - row.reps) / row.unit - 1.0).abs() < 0.5;
    let first = rows[..index].iter().position(is_one_more);
    first.is_some_and(|first| is_raised(rows, first))
}

/// By how many repetitions `row` falls short of the last set of its side that was missed at no more load; none if that
/// had fewer.
fn fewer_than_missed(before: &[Row], row: &Row) -> Option<f64> {
    let missed = before
        .iter()
        .rev()
        .find(|b| b.side == row.side && b.outcome == Outcome::Missed && b.log_load <= row.log_load + 1e-4)?;
    (row.reps <= missed.reps).then_some((missed.reps - row.reps) / row.unit)
}
