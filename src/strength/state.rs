//! The eight numbers of the belief, their covariance, and what time does to them.

use super::Tuning;

/// Log 1RM at the trained level.
pub(super) const LEVEL: usize = 0;
/// Trend of the level per week.
pub(super) const TREND: usize = 1;
/// Log endurance, −log(R80 − 1).
pub(super) const ENDURANCE: usize = 2;
/// Repetitions by which reserve is under-reported.
pub(super) const BIAS: usize = 3;
/// Log strength lost by a layoff, 0 or more.
pub(super) const LOSS: usize = 4;
/// Readiness of the day.
pub(super) const READINESS: usize = 5;
/// Log capacity lost per hard set.
pub(super) const FATIGUE: usize = 6;
/// Reserve of the day's hardest set when none is given.
pub(super) const HABIT: usize = 7;
/// How many numbers there are.
pub(super) const N: usize = 8;

/// A vector over the state.
pub(super) type Vector = [f64; N];

/// A Gaussian over the state.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct State {
    pub(super) mean: Vector,
    pub(super) cov: [Vector; N],
}

impl State {
    /// Before the first set of somebody whose 1RM is guessed at exp(`level`) and whose R80 at 1 + exp(−`endurance`).
    pub(super) fn prior(level: f64, endurance: f64, tuning: &Tuning) -> Self {
        let mut mean = [0.0; N];
        mean[LEVEL] = level;
        mean[TREND] = tuning.trend_mean;
        mean[ENDURANCE] = endurance;
        mean[BIAS] = tuning.bias_mean;
        mean[FATIGUE] = tuning.fatigue_mean;
        mean[HABIT] = tuning.habit_mean;
        let mut cov = [[0.0; N]; N];
        for (index, sd) in [
            (LEVEL, tuning.level_sd),
            (TREND, tuning.trend_sd),
            (ENDURANCE, tuning.endurance_sd),
            (BIAS, tuning.bias_sd),
            (FATIGUE, tuning.fatigue_sd),
            (HABIT, tuning.habit_sd),
        ] {
            cov[index][index] = sd * sd;
        }
        Self { mean, cov }
    }

    /// Log 1RM at average readiness: the trained level less what a layoff took.
    pub(super) fn strength(&self) -> f64 {
        self.mean[LEVEL] - self.mean[LOSS]
    }

    /// Variance of [`State::strength`].
    pub(super) fn strength_var(&self) -> f64 {
        let p = &self.cov;
        (p[LEVEL][LEVEL] + p[LOSS][LOSS] - 2.0 * p[LEVEL][LOSS]).max(0.0)
    }

    /// `days` pass to the next training day, the log bodyweight trend moving by `gained`: up to the grace they count as
    /// training, beyond it as a layoff.
    pub(super) fn pass(&mut self, days: f64, gained: f64, tuning: &Tuning) {
        let trained = days.min(tuning.layoff_grace_days) / 7.0;
        let lost = (days - tuning.layoff_grace_days).max(0.0) / 7.0;
        self.move_on(days, trained, lost, gained, tuning);
    }

    /// `days` pass in training, for a forecast.
    pub(super) fn pass_training(&mut self, days: f64, tuning: &Tuning) {
        self.move_on(days, days / 7.0, 0.0, 0.0, tuning);
    }

    fn move_on(&mut self, days: f64, trained: f64, lost: f64, gained: f64, tuning: &Tuning) {
        let tau = tuning.trend_weeks;
        let keep = libm::exp(-trained / tau);
        let reach = tau * (1.0 - keep);
        let regain = libm::exp(-7.0 * trained / tuning.regain_days);
        let m = &mut self.mean;
        m[LEVEL] +=
            tuning.trend_mean * (trained - reach) + reach * m[TREND] + tuning.bodyweight_slope * gained;
        m[TREND] = tuning.trend_mean + keep * (m[TREND] - tuning.trend_mean);
        m[LOSS] = m[LOSS] * regain + tuning.layoff_loss * lost;

        let p = &mut self.cov;
        for column in 0..N {
            p[LEVEL][column] += reach * p[TREND][column];
            p[TREND][column] *= keep;
            p[LOSS][column] *= regain;
        }
        for row in p.iter_mut() {
            row[LEVEL] += reach * row[TREND];
            row[TREND] *= keep;
            row[LOSS] *= regain;
        }
        let square = |x: f64| x * x;
        let trend = square(tuning.trend_sd);
        p[LEVEL][LEVEL] += trend * tau * (2.0 * trained - tau * (3.0 - 4.0 * keep + keep * keep))
            + square(tuning.level_walk) * days / 7.0
            + square(tuning.bodyweight_slope_sd * gained);
        let shared = trend * tau * square(1.0 - keep);
        p[LEVEL][TREND] += shared;
        p[TREND][LEVEL] += shared;
        p[TREND][TREND] += trend * (1.0 - keep * keep);
        p[LOSS][LOSS] += square(tuning.layoff_loss_sd * lost);
        p[ENDURANCE][ENDURANCE] += square(tuning.endurance_walk) * days / 365.0;
    }

    /// A new day: readiness is unknown again, the habit falls back toward its mean.
    pub(super) fn wake(&mut self, readiness_var: f64, tuning: &Tuning) {
        let keep = tuning.habit_keep;
        self.mean[READINESS] = 0.0;
        self.mean[HABIT] = tuning.habit_mean + keep * (self.mean[HABIT] - tuning.habit_mean);
        for i in 0..N {
            self.cov[READINESS][i] = 0.0;
            self.cov[i][READINESS] = 0.0;
            self.cov[HABIT][i] *= keep;
            self.cov[i][HABIT] *= keep;
        }
        self.cov[READINESS][READINESS] = readiness_var;
        self.cov[HABIT][HABIT] += tuning.habit_day_sd * tuning.habit_day_sd;
    }

    /// The means back into what can be.
    pub(super) fn clamp(&mut self) {
        let ready = 3.0 * self.cov[READINESS][READINESS].max(0.0).sqrt() + 0.06;
        let m = &mut self.mean;
        for (index, low, high) in [
            (READINESS, -ready, ready),
            (FATIGUE, 0.0, 0.03),
            (BIAS, -1.0, 3.5),
            (HABIT, 0.0, 6.0),
            (LOSS, 0.0, 0.4),
            (ENDURANCE, -4.0, 0.7),
        ] {
            m[index] = m[index].clamp(low, high);
        }
    }
}
