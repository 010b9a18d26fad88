//! The filter of one athlete, movement and side, between two training days.

use chrono::NaiveDate;

use super::Tuning;
use super::belief::Belief;
use super::bodyweight::Trend;
use super::newest::Newest;
use super::rows::sign;
use super::state::State;
use super::training::Prior;
use crate::units::Side;

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
    /// Training days of both sides at once, the left, the right.
    pub(super) days_of: [u32; 3],
    /// Days' worth of evidence in that variance.
    pub(super) day_learnt: f64,
    /// Share of recent training days without report or miss.
    pub(super) silence: f64,
    /// Mean and variance of recent counts of repetitions, done and left; none before the first.
    pub(super) counts: Option<(f64, f64)>,
    /// How much recent days were called typos.
    pub(super) alarm: f64,
    /// The last training day, so that what is told of it never falls for one more repetition.
    pub(super) newest: Option<Newest>,
}

impl Filter {
    /// A filter that has seen nothing.
    pub fn new(prior: Prior, tuning: Tuning) -> Self {
        Self {
            day_var: tuning.day_sd * tuning.day_sd,
            silence: tuning.start_silence,
            counts: None,
            tuning,
            prior,
            state: None,
            trend: None,
            last_day: None,
            days: 0,
            alarm: 0.0,
            day_learnt: 0.0,
            days_of: [0; 3],
            newest: None,
        }
    }

    /// The belief of `side` on `today`, from days before it; none without a record of that side.
    pub fn belief(&self, side: Option<Side>, today: NaiveDate) -> Option<Belief> {
        let mut state = self.state.clone()?;
        if let Some(newest) = &self.newest {
            newest.tell(&mut state, side);
        }
        let gap = super::days_between(self.last_day?, super::day_number(today));
        state.pass(gap, 0.0, &self.tuning);
        let days = match side {
            None => self.days,
            Some(Side::Left) => self.days_of[0] + self.days_of[1],
            Some(Side::Right) => self.days_of[0] + self.days_of[2],
        };
        (days > 0).then(|| Belief::new(state, sign(side), days, self))
    }
}
