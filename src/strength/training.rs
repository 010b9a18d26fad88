//! What the filter reads: training days of one movement in time order.

use chrono::NaiveDate;

use super::Tuning;
use super::curve::Curve;
use super::rows::Row;
use crate::units::{Added, Bodyweight, Effort, Given, Outcome, Share, Side};

/// The sets of one movement on one date, in the order done.
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
    /// The side that did it; none where both work as one.
    pub side: Option<Side>,
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
    /// Spread of the ratio between athletes, against that of a pull-up. Who trains muscle-ups at all lies close to what one
    /// asks. T.
    pub spread: f64,
}

/// Where a filter starts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Start {
    /// Log 1RM.
    pub(super) level: f64,
    /// Sd of the log 1RM.
    pub(super) level_sd: f64,
    /// Log endurance.
    pub(super) endurance: f64,
}

impl Prior {
    /// The prior of a movement by its id; `share` is the part of the body that it lifts.
    ///
    /// Pull-up: k Coyne 2015 (1.43) and Muñoz-López 2017 (1.5), R80 Johnson 2009 (8.1 men, 10.5 women), all C1. Dip: k
    /// Coyne 2015 (1.59), C1. All others are assumptions.
    pub fn of(movement: &str, share: Share) -> Self {
        let (ratio, reps_at_80, spread) = match movement {
            "pull-up" => (1.45, 8.5, 1.0),
            "chin-up" => (1.50, 8.8, 1.0),
            "dip" => (1.60, 9.6, 1.0),
            "muscle-up" => (1.20, 6.0, 0.65),
            "pistol-squat" => (1.32, 10.5, 0.8),
            // The mean trained man stands at 0.80 on the one-arm scale (leverage model from Muñoz-López 2017 and Pelayo-Tejo 2024).
            "one-arm-pull-up" | "one-arm-chin-up" => (0.80, 8.5, 1.0),
            _ => (1.40 * share.value(), 9.0, 1.0),
        };
        Self {
            ratio,
            reps_at_80,
            spread,
        }
    }

    /// Where the filter of somebody who weighs `kg` starts, on a first day of these rows. Where its hardest sets lie far from
    /// the guess they draw and widen it: who trains with help or far beyond the usual is no typo. Where nothing of the body
    /// is lifted they make the guess. Hardest: as if it left two repetitions.
    pub(super) fn start(&self, kg: f64, rows: &[Row], tuning: &Tuning) -> Start {
        let endurance = -libm::log((self.reps_at_80 - 1.0).max(0.1));
        let curve = Curve::new(tuning.curve_shape, endurance);
        let mut shown: Vec<f64> = rows
            .iter()
            .map(|row| row.log_load + curve.log_ratio(row.reps + 2.0).0)
            .collect();
        shown.sort_by(|a, b| b.total_cmp(a));
        let hardest = shown.first().copied().unwrap_or(f64::NEG_INFINITY);
        // One set alone may be a typo.
        let shown = shown.get(1).copied().unwrap_or(hardest);
        if self.ratio < 0.1 {
            return Start {
                level: hardest,
                level_sd: 0.3,
                endurance,
            };
        }
        let guess = libm::log(kg * self.ratio);
        if !tuning.start_widens {
            return Start {
                level: guess,
                level_sd: tuning.level_sd,
                endurance,
            };
        }
        let level = guess.clamp(shown - tuning.start_grace, shown + tuning.start_grace);
        let level_sd = (tuning.level_sd * self.spread).max(tuning.start_reach * (shown - guess).abs());
        Start {
            level,
            level_sd,
            endurance,
        }
    }
}
