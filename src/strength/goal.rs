//! When a load comes within reach: a range of weeks, never a date.

use crate::units::SystemLoad;

use super::Belief;

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
        let chances: Vec<f64> = (0..=HORIZON)
            .map(|week| {
                self.after_training(7.0 * f64::from(week))
                    .chance_of_one_rep_max(load)
            })
            .collect();
        let first = |wanted: f64| {
            (0..)
                .zip(&chances)
                .find(|(_, chance)| **chance >= wanted)
                .map(|(week, _)| week)
        };
        GoalWeeks {
            early: first(0.2),
            even: first(0.5),
            late: first(0.8),
        }
    }
}
