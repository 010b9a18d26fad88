//! Quantities of the trade as types, so that a wrong sum does not compile.
//!
//! A mass that a person typed stays as typed ([`Typed`]); a calculation sees [`Mass`], kilograms inside. What hangs from
//! the belt ([`Added`]), what helps ([`Assistance`]), what the scale said ([`Bodyweight`]) and what was moved in all
//! ([`SystemLoad`]) are different types: only [`SystemLoad::of`] joins them, only [`SystemLoad::added_from`] goes back.

mod body;
mod effort;
mod mass;
pub mod rep_max;

pub use body::{Demand, Height, Share};
pub use effort::{Effort, Given, Measure, Outcome, Rail, Reps, Reserve, Seconds, Side};
pub use mass::{Added, Assistance, Bodyweight, KG_PER_LB, Mass, SystemLoad, Typed, Unit};

/// A value that no quantity of this kind can have, with the range that holds.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{what} {value} is outside {low} to {high}")]
pub struct OutOfRange {
    /// What was measured, in words ("reps", "bodyweight").
    pub what: &'static str,
    /// The value that was given, as written.
    pub value: String,
    /// The smallest value that holds, with its unit.
    pub low: &'static str,
    /// The largest value that holds, with its unit.
    pub high: &'static str,
}

impl OutOfRange {
    /// Says that `value` of `what` does not lie in `low` to `high`.
    pub(crate) fn new(
        what: &'static str,
        value: impl ToString,
        low: &'static str,
        high: &'static str,
    ) -> Self {
        Self {
            what,
            value: value.to_string(),
            low,
            high,
        }
    }
}
