//! Strength as a belief: a filter over all sets that gives the one-rep max on system load with an honest interval.
//!
//! One [`Filter`] for an athlete, movement and side reads [`TrainingDay`]s in time order and keeps a Gaussian over eight
//! numbers: level, trend, endurance, bias of reported reserve, what a layoff took, readiness of the day, fatigue per hard
//! set, and the reserve that is habit. Pure: no clock, no disk, no randomness; the same days give the same bits.

mod belief;
mod bodyweight;
mod curve;
mod day;
mod filter;
mod goal;
mod normal;
mod set;
mod state;
mod training;
mod tuning;
mod weights;
#[cfg(test)]
mod worked_examples;

pub use belief::{Band, Belief, Coverage};
pub use curve::Curve;
pub use day::DayRead;
pub use filter::Filter;
pub use goal::GoalWeeks;
pub use training::{Attempt, Prior, TrainingDay};
pub use tuning::{Outlier, Tuning};

use chrono::{Datelike, NaiveDate};

/// Days since a fixed date.
fn day_number(date: NaiveDate) -> i64 {
    i64::from(date.num_days_from_ce())
}
