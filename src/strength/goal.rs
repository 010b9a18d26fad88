//! When a load comes within reach: a range of weeks, never a date.

use crate::units::SystemLoad;

use super::Belief;
use super::curve::Curve;
use super::state::{ENDURANCE, SHAPE};

/// Weeks that are looked ahead.
const HORIZON: u16 = 104;

impl Belief {
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
