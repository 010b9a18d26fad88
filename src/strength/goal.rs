//! When a load comes within reach: a range of weeks, never a date.

use crate::units::SystemLoad;

use super::Belief;
use super::curve::Curve;
use super::state::{ENDURANCE, SHAPE};

/// Weeks until the 1RM is at least a goal with 20, 50 and 80 % chance; none: not in sight within two years.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GoalWeeks {
    /// First week with a chance of 20 %: early.
    pub early: Option<u16>,
    /// First week with a chance of 50 %.
    pub even: Option<u16>,
    /// First week with a chance of 80 %: late.
    pub late: Option<u16>,
}

/// Weeks that are looked ahead.
const HORIZON: u16 = 104;

impl Belief {
    /// The weeks of training after which `load` is likely to be within the 1RM.
    pub fn weeks_to(&self, load: SystemLoad) -> GoalWeeks {
        let chances = weekly(|days| self.after_training(days).chance_of_one_rep_max(load));
        GoalWeeks {
            early: first_week(&chances, 0.2),
            even: first_week(&chances, 0.5),
            late: first_week(&chances, 0.8),
        }
    }

    /// The 1RM of somebody with this endurance who does `reps` to failure at `load`.
    pub fn one_rep_max_for(&self, load: SystemLoad, reps: f64) -> SystemLoad {
        let curve = Curve::new(self.state.mean[SHAPE], self.state.mean[ENDURANCE]);
        load.times(libm::exp(curve.log_ratio(reps.max(1.0)).0))
    }
}

/// What the chance is after each week that is looked ahead, the present day first.
pub(super) fn weekly(chance_after: impl Fn(f64) -> f64) -> Vec<f64> {
    (0..=HORIZON)
        .map(|week| chance_after(7.0 * f64::from(week)))
        .collect()
}

/// The first week with at least the chance that is wanted.
pub(super) fn first_week(chances: &[f64], wanted: f64) -> Option<u16> {
    (0..)
        .zip(chances)
        .find(|(_, chance)| **chance >= wanted)
        .map(|(week, _)| week)
}
