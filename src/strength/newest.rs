//! What is told after a training day: one more repetition in the newest set of a side lowers nothing of it.
//!
//! A day's sets are read together, so that one repetition more may speak for less: in eights that end in a ten, the eights
//! were nearer to failure than in eights that end in an eight. And far too many speak for less than many, since they look
//! like a slip. Whoever did more should see neither. So what is told after a set is at least what would be told
//! after each count from the expected one up to its own, or at most that of each from its own up to the expected one where it
//! falls short. The next day begins with what the sets said.

use super::curve::Curve;
use super::day::{Day, DayRead};
use super::filter::Filter;
use super::rows::{MOST_REPS, sign};
use super::state::{AHEAD, ENDURANCE, HABIT, LEVEL, LOSS, N, SHAPE, State, TREND, Vector};
use crate::units::{Outcome, Side};

/// A day of more sets of one movement is no session. What it says is told as it is, so that no log takes long. A.
const MOST_SETS: usize = 100;

/// The last training day, and what was believed before it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Newest {
    before: Box<Filter>,
    day: Day,
    bodyweight_kg: f64,
}

impl Newest {
    /// `day`, at a bodyweight of so many kg, which the filter is about to take.
    pub(super) fn of(before: Filter, day: Day, bodyweight_kg: f64) -> Self {
        Self {
            before: Box::new(before),
            day,
            bodyweight_kg,
        }
    }

    /// Makes of what the day's sets left what is told of a side. A newest set more likely a typo than not is left as it is.
    pub(super) fn tell(&self, state: &mut State, side: Option<Side>) {
        let rows = &self.day.rows;
        let Some(at) = rows.iter().rposition(|row| row.side == side) else {
            return;
        };
        let reps = rows[at].reps;
        if rows.len() > MOST_SETS || self.as_if(at, reps).1 {
            return;
        }
        let expected = self.expected(at);
        let (of, mut count): (fn(f64, f64) -> f64, f64) = if reps < expected {
            (f64::min, reps)
        } else {
            (f64::max, expected)
        };
        while count <= reps.max(expected) {
            let (mean, is_typo) = self.as_if(at, count);
            if !is_typo || count == expected {
                take(&mut state.mean, &mean, sign(side), of);
            }
            count += 1.0;
        }
    }

    /// What the day would leave, had its set at `at` that count, and whether that would look like a typo.
    fn as_if(&self, at: usize, reps: f64) -> (Vector, bool) {
        let mut filter = self.before.as_ref().clone();
        let mut day = self.day.clone();
        day.rows[at].reps = reps;
        let nth = day.rows[at].nth;
        let start = filter.prior.start(self.bodyweight_kg, &day.rows, &filter.tuning);
        let mut read = DayRead {
            bodyweight_doubted: false,
            sets: vec![None; nth + 1],
        };
        filter.take(&day, start, &mut read);
        let mean = filter.state.map_or([0.0; N], |state| state.mean);
        (mean, read.sets[nth].is_none_or(|set| set.looks_like_a_typo()))
    }

    /// The count to expect of the set at `at`, whatever its own: that of the one before it at its load, else as many as were
    /// believed to be possible, less the usual reserve. Nothing is expected of a first day.
    fn expected(&self, at: usize) -> f64 {
        let rows = &self.day.rows;
        let row = &rows[at];
        if let Some(equal) = rows[..at].iter().rev().find(|other| row.is_at_load_of(other)) {
            return equal.reps;
        }
        let Some(state) = &self.before.state else {
            return 1.0;
        };
        let curve = Curve::new(state.mean[SHAPE], state.mean[ENDURANCE]);
        let left = match row.outcome {
            Outcome::Missed => 0.0,
            _ => row.left.unwrap_or(state.mean[HABIT]),
        };
        let possible = curve.reps(state.strength(sign(row.side)) - row.log_load);
        (possible - left).round().clamp(1.0, f64::from(MOST_REPS))
    }
}

/// Takes of each number that belief and its trend are made of the smaller, or the larger, strength.
fn take(mean: &mut Vector, other: &Vector, side: f64, of: fn(f64, f64) -> f64) {
    for (i, sign) in [(LEVEL, 1.0), (TREND, 1.0), (LOSS, -1.0), (AHEAD, side)] {
        if sign != 0.0 {
            mean[i] = sign * of(sign * mean[i], sign * other[i]);
        }
    }
}
