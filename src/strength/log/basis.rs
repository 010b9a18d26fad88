//! The sets that a belief stands on: how many, from when to when, and which of them say most of today.

use chrono::NaiveDate;

use crate::strength::{Belief, DayRead};
use crate::units::{Added, Effort, Outcome, Reserve, Side, SystemLoad};

use super::Series;

/// The sets behind a belief. All are of days before the one that is asked about.
#[derive(Debug, Clone, PartialEq)]
pub struct Basis {
    /// How many sets; those that can't be, and that the filter drops, are not among them.
    pub sets: usize,
    /// On how many days.
    pub days: usize,
    /// The first of them.
    pub first: NaiveDate,
    /// The last of them.
    pub last: NaiveDate,
    /// How many of the sets look like typos, and so count for little.
    pub doubted: usize,
    /// Sets of the other side: both sides of a movement share one belief.
    pub of_other_side: usize,
    /// The hardest set of each of the latest days, the latest first; none that looks like a typo.
    pub lately: Vec<Telling>,
}

/// A set as it was logged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Telling {
    /// Its day.
    pub date: NaiveDate,
    /// What hung from the belt.
    pub added: Added,
    /// What was done.
    pub effort: Effort,
    /// The reserve, where it was given.
    pub left: Option<Reserve>,
    /// Whether one more was tried and failed.
    pub missed: bool,
}

impl Basis {
    /// So many of the latest days are told, each by its hardest set.
    pub(in crate::strength) const LATELY: usize = 2;

    /// Of the days that `reads` tell of, the first of the series; none without a set of this side.
    pub(super) fn of(
        series: &Series,
        side: Option<Side>,
        reads: &[DayRead],
        belief: &Belief,
    ) -> Option<Self> {
        let mut days: Vec<(NaiveDate, usize, Option<Telling>)> = Vec::new();
        let (mut doubted, mut of_other_side) = (0, 0);
        for ((day, records), read) in series.days().zip(reads) {
            let mut hardest: Option<(f64, Telling)> = None;
            let mut count = 0;
            for ((attempt, record), read) in day.attempts.iter().zip(records).zip(&read.sets) {
                let Some(read) = read else { continue };
                if record.side != side {
                    of_other_side += usize::from(record.side.is_some() && side.is_some());
                    continue;
                }
                count += 1;
                if read.looks_like_a_typo() {
                    doubted += 1;
                    continue;
                }
                let left = attempt.left.map(|left| left.reserve());
                let reps = attempt.effort.amount() + left.map_or(0.0, Reserve::reps);
                let body = attempt.bodyweight.or(belief.bodyweight());
                let load = body.map(|body| SystemLoad::of(attempt.share, body, attempt.added));
                let asked = load.map_or(0.0, |load| belief.one_rep_max_for(load, reps).kg());
                let telling = Telling {
                    date: day.date,
                    added: attempt.added,
                    effort: attempt.effort,
                    left,
                    missed: attempt.outcome == Outcome::Missed,
                };
                // Ties to the later, as the filter takes a day's hardest.
                if hardest.is_none_or(|(most, _)| asked >= most) {
                    hardest = Some((asked, telling));
                }
            }
            if count > 0 {
                days.push((day.date, count, hardest.map(|(_, telling)| telling)));
            }
        }
        let lately = days
            .iter()
            .rev()
            .filter_map(|(_, _, told)| *told)
            .take(Self::LATELY);
        Some(Self {
            sets: days.iter().map(|(_, count, _)| count).sum(),
            days: days.len(),
            first: days.first()?.0,
            last: days.last()?.0,
            doubted,
            of_other_side,
            lately: lately.collect(),
        })
    }
}
