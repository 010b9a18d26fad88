//! What the filter reads: training days of one movement, one side, in time order.

use chrono::NaiveDate;

use crate::units::{Added, Bodyweight, Effort, Given, Outcome, Share};

/// The sets of one movement and side on one date, in the order done.
#[derive(Debug, Clone, PartialEq)]
pub struct TrainingDay {
    /// The date.
    pub date: NaiveDate,
    /// The sets.
    pub attempts: Vec<Attempt>,
}

/// One set, in the parts of its load: the filter checks the bodyweight itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attempt {
    /// Bodyweight on that day, if known.
    pub bodyweight: Option<Bodyweight>,
    /// The share of it that the movement lifts.
    pub share: Share,
    /// What hung from the belt; below zero what helped.
    pub added: Added,
    /// Repetitions or seconds.
    pub effort: Effort,
    /// What was left, if said.
    pub left: Option<Given>,
    /// How it ended.
    pub outcome: Outcome,
}

/// What is taken for granted of somebody who has logged nothing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prior {
    /// 1RM on system load ÷ bodyweight.
    pub ratio: f64,
    /// Repetitions to failure at 80 % of the 1RM.
    pub reps_at_80: f64,
}

impl Prior {
    /// The prior of a movement by its id; `share` is the part of the body that it lifts.
    ///
    /// Pull-up: k Coyne 2015 (1.43) and Muñoz-López 2017 (1.5), R80 Johnson 2009 (8.1 men, 10.5 women), all C1. Dip: k
    /// Coyne 2015 (1.59), C1. All others are assumptions.
    pub fn of(movement: &str, share: Share) -> Self {
        let (ratio, reps_at_80) = match movement {
            "pull-up" => (1.45, 8.5),
            "chin-up" => (1.50, 8.8),
            "dip" => (1.60, 9.6),
            "muscle-up" => (1.20, 6.0),
            "pistol-squat" => (1.32, 10.5),
            _ => (1.40 * share.value(), 9.0),
        };
        Self { ratio, reps_at_80 }
    }
}
