//! Holds: the same filter with seconds for repetitions and a shape's demand for the load. Rough: not simulated, not
//! measured against anybody; show ranges.
//!
//! Frey Law & Avin 2010 give T = b0 · I^b1 seconds at the part I of maximal strength. Moved so that a true maximum lasts
//! 3 s (assumption), ln(1/I) = ln(1 + (T − 3)/b0) / |b1|: the reps curve with shape |b1| and T − 2 for the repetitions.

use chrono::NaiveDate;

use crate::units::{Demand, Given, Outcome, Seconds, Side};

use super::Tuning;
use super::curve::Curve;
use super::day::{Day, DayRead};
use super::filter::Filter;
use super::normal::cdf;
use super::rows::{self, Row, sign};
use super::state::{ENDURANCE, State};
use super::training::{Prior, Start};

/// The joint whose endurance limits a hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HoldJoint {
    /// Levers, planche.
    Shoulder,
    /// Lock-offs.
    Elbow,
    /// Hangs.
    Grip,
}

impl HoldJoint {
    /// b0 (s) and |b1| of Frey Law & Avin 2010, table 2 (C1).
    fn endurance(self) -> (f64, f64) {
        match self {
            HoldJoint::Shoulder => (14.86, 1.83),
            HoldJoint::Elbow => (17.98, 2.21),
            HoldJoint::Grip => (33.55, 1.61),
        }
    }
}

/// One hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hold {
    /// The side, if one arm held.
    pub side: Option<Side>,
    /// Demand of the shape, 1 = the full shape.
    pub demand: Demand,
    /// How long.
    pub seconds: Seconds,
    /// What was left, if said; one stands for a sixth of the time held, at least a second.
    pub left: Option<Given>,
    /// How it ended.
    pub outcome: Outcome,
}

/// The belief about the shapes of one skill.
#[derive(Debug, Clone, PartialEq)]
pub struct Holds {
    filter: Filter,
}

/// What is believed of a hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoldBelief {
    /// Demand of the hardest shape that can be held 3 s: low, middle, high of the 80 % band.
    pub demand: [f64; 3],
    log_strength: f64,
    log_sd: f64,
    curve: Curve,
}

/// Seconds that a true maximum lasts. A.
const SHORTEST: f64 = 3.0;
/// Demand counts with this exponent on the strength scale: tucks are rounder and straddles less flat than drawn. A.
const EXPONENT: f64 = 2.0;
/// Seconds that a hold can last; longer ones say nothing of strength.
const LONGEST: f64 = 300.0;

impl Holds {
    /// A belief that has seen nothing: strength 1 (just holds the full shape 3 s), sd 0.5 on the log scale.
    pub fn new(joint: HoldJoint) -> Self {
        let (b0, b1) = joint.endurance();
        let mut tuning = Tuning {
            curve_shape: b1,
            curve_shape_sd: 0.0,
            ..Tuning::default()
        };
        tuning.novice_trend = 0.0;
        let reps_at_80 = 1.0 - SHORTEST + Curve::seconds_at_80(b0, b1, SHORTEST);
        Self {
            filter: Filter::new(
                Prior {
                    ratio: 1.0,
                    spread: 1.0,
                    reps_at_80,
                },
                tuning,
            ),
        }
    }

    /// Takes the holds of one date in the order done.
    pub fn learn(&mut self, date: NaiveDate, holds: &[Hold]) -> DayRead {
        let mut read = DayRead {
            bodyweight_doubted: false,
            sets: vec![None; holds.len()],
        };
        let rows: Vec<Row> = (0..)
            .zip(holds)
            .filter_map(|(nth, hold)| row(nth, hold))
            .collect();
        if !rows.is_empty() {
            let endurance = -libm::log(self.filter.prior.reps_at_80 - 1.0);
            let day = Day {
                number: super::day_number(date),
                rows,
                gained: 0.0,
                weighing_var: 0.0,
            };
            let start = Start {
                level: 0.0,
                level_sd: 0.5,
                endurance,
            };
            self.filter.take(&day, start, &mut read);
        }
        read
    }

    /// The belief of `side` on `today`; none without a hold of that side.
    pub fn belief(&self, side: Option<Side>, today: NaiveDate) -> Option<HoldBelief> {
        let belief = self.filter.belief(side, today)?;
        let state: &State = &belief.state;
        let (mean, sd) = (state.strength(sign(side)), belief.log_sd());
        let shape = |log: f64| libm::exp(log / EXPONENT);
        Some(HoldBelief {
            demand: [
                shape(mean - 1.281_55 * sd),
                shape(mean),
                shape(mean + 1.281_55 * sd),
            ],
            log_strength: mean,
            log_sd: sd,
            curve: Curve::new(self.filter.tuning.curve_shape, state.mean[ENDURANCE]),
        })
    }
}

fn row(nth: usize, hold: &Hold) -> Option<Row> {
    let seconds = hold.seconds.value();
    let long_enough = seconds >= SHORTEST;
    (seconds <= LONGEST).then_some(Row {
        nth,
        log_load: EXPONENT * libm::log(hold.demand.value()),
        reps: if long_enough {
            seconds + 1.0 - SHORTEST
        } else {
            0.0
        },
        unit: (seconds / 6.0).max(1.0),
        left: hold.left.map(rows::reserve),
        outcome: if long_enough {
            hold.outcome
        } else {
            Outcome::Missed
        },
        side: hold.side,
    })
}

impl HoldBelief {
    /// Seconds that a shape of this demand can be held: low, middle, high of the 80 % band; 0 where it can't.
    pub fn seconds(&self, demand: Demand) -> [f64; 3] {
        let load = EXPONENT * libm::log(demand.value());
        [-1.281_55, 0.0, 1.281_55].map(|z| {
            let reps = self.curve.reps(self.log_strength + z * self.log_sd - load);
            if reps < 1.0 { 0.0 } else { reps - 1.0 + SHORTEST }
        })
    }

    /// The chance to hold a shape of this demand for 3 s.
    pub fn chance(&self, demand: Demand) -> f64 {
        cdf((self.log_strength - EXPONENT * libm::log(demand.value())) / self.log_sd.max(1e-9))
    }
}
