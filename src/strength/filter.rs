//! The filter of one athlete, movement and side, between two training days.

use chrono::NaiveDate;

use super::Tuning;
use super::belief::Belief;
use super::bodyweight::Trend;
use super::state::State;
use super::training::Prior;

/// All that is believed so far. Cloning one is a snapshot.
#[derive(Debug, Clone, PartialEq)]
pub struct Filter {
    pub(super) tuning: Tuning,
    pub(super) prior: Prior,
    pub(super) state: Option<State>,
    pub(super) trend: Option<Trend>,
    pub(super) last_day: Option<i64>,
    pub(super) days: u32,
    /// Variance of readiness, as learnt.
    pub(super) day_var: f64,
    /// Variance that the day's weigh-in brings.
    pub(super) weighing_var: f64,
    /// How much recent days were called typos.
    pub(super) alarm: f64,
}

impl Filter {
    /// A filter that has seen nothing.
    pub fn new(prior: Prior, tuning: Tuning) -> Self {
        Self {
            day_var: tuning.day_sd * tuning.day_sd,
            tuning,
            prior,
            state: None,
            trend: None,
            last_day: None,
            days: 0,
            weighing_var: 0.0,
            alarm: 0.0,
        }
    }

    /// The belief on `today`, from days before it; none without a record.
    pub fn belief(&self, today: NaiveDate) -> Option<Belief> {
        let mut state = self.state.clone()?;
        #[allow(clippy::cast_precision_loss)] // days of a logbook are far below 2^52
        let gap = (super::day_number(today) - self.last_day?).max(0) as f64;
        state.pass(gap, 0.0, &self.tuning);
        Some(Belief::new(state, self))
    }
}
