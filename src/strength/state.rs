//! The numbers of the belief, their covariance, and what time does to them.

use super::Tuning;
use super::training::Start;

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
/// Change of log strength for a change of log bodyweight.
pub(super) const SLOPE: usize = 8;
/// Half of the log strength by which the right side is ahead of the left.
pub(super) const AHEAD: usize = 9;
/// Shape of the reps curve: 0 exponential, 1 hyperbolic.
pub(super) const SHAPE: usize = 10;
/// How many numbers there are.
pub(super) const N: usize = 11;

/// A vector over the state.
pub(super) type Vector = [f64; N];

/// A Gaussian over the state.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct State {
    pub(super) mean: Vector,
    pub(super) cov: [Vector; N],
}

impl State {
    /// Before the first set.
    pub(super) fn prior(start: Start, tuning: &Tuning) -> Self {
        let mut mean = [0.0; N];
        mean[LEVEL] = start.level;
        mean[TREND] = tuning.trend_mean;
        mean[ENDURANCE] = start.endurance;
        mean[BIAS] = tuning.bias_mean;
        mean[FATIGUE] = tuning.fatigue_mean;
        mean[HABIT] = tuning.habit_mean;
        mean[SLOPE] = tuning.bodyweight_slope;
        mean[SHAPE] = tuning.curve_shape;
        let mut cov = [[0.0; N]; N];
        for (index, sd) in [
            (LEVEL, start.level_sd),
            (TREND, tuning.trend_sd),
            (ENDURANCE, tuning.endurance_sd),
            (BIAS, tuning.bias_sd),
            (FATIGUE, tuning.fatigue_sd),
            (HABIT, tuning.habit_sd),
            (SLOPE, tuning.slope_sd_kept),
            (AHEAD, tuning.ahead_sd),
            (SHAPE, tuning.curve_shape_sd),
        ] {
            cov[index][index] = sd * sd;
        }
        let novice = -tuning.novice_trend * start.level_sd * tuning.trend_sd;
        cov[LEVEL][TREND] = novice;
        cov[TREND][LEVEL] = novice;
        Self { mean, cov }
    }

    /// Log 1RM at average readiness, `side` being −1 left, 1 right, 0 both.
    pub(super) fn strength(&self, side: f64) -> f64 {
        strength(&self.mean, side)
    }

    /// Covariance of [`State::strength`] with every number.
    pub(super) fn strength_cov(&self, side: f64) -> Vector {
        std::array::from_fn(|i| strength(&self.cov[i], side))
    }

    /// Variance of [`State::strength`].
    pub(super) fn strength_var(&self, side: f64) -> f64 {
        strength(&self.strength_cov(side), side).max(0.0)
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
        self.cov[LEVEL][LEVEL] += tuning.forecast_walk * tuning.forecast_walk * days / 7.0;
    }

    fn move_on(&mut self, days: f64, trained: f64, lost: f64, gained: f64, tuning: &Tuning) {
        let tau = tuning.trend_weeks;
        let keep = libm::exp(-trained / tau);
        let reach = tau * (1.0 - keep);
        let regain = libm::exp(-7.0 * trained / tuning.regain_days);
        let m = &mut self.mean;
        let usual = tuning.trend_mean;
        m[LEVEL] += usual * (trained - reach) + reach * m[TREND] + m[SLOPE] * gained;
        m[TREND] = usual + keep * (m[TREND] - usual);
        m[LOSS] = m[LOSS] * regain + tuning.layoff_loss * lost;

        let p = &mut self.cov;
        p[LEVEL] = std::array::from_fn(|i| p[LEVEL][i] + reach * p[TREND][i] + gained * p[SLOPE][i]);
        p[TREND] = p[TREND].map(|c| c * keep);
        p[LOSS] = p[LOSS].map(|c| c * regain);
        for row in p.iter_mut() {
            row[LEVEL] += reach * row[TREND] + gained * row[SLOPE];
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
        p[AHEAD][AHEAD] += square(tuning.ahead_walk) * days / 7.0;
    }

    fn scale(&mut self, index: usize, factor: f64) {
        self.mean[index] *= factor;
        for i in 0..N {
            self.cov[index][i] *= factor;
            self.cov[i][index] *= factor;
        }
    }

    /// A new day, `days` after the last: of readiness a part lasts, the rest is new; the habit falls back toward what is usual.
    pub(super) fn wake(&mut self, days: f64, day_var: f64, tuning: &Tuning) {
        let lasting = if tuning.readiness_days > 0.0 {
            tuning.readiness_kept * libm::exp(-days / tuning.readiness_days)
        } else {
            0.0
        };
        self.scale(READINESS, lasting);
        self.cov[READINESS][READINESS] += day_var * (1.0 - lasting * lasting);
        let keep = tuning.habit_keep;
        let habit = tuning.habit_mean + keep * (self.mean[HABIT] - tuning.habit_mean);
        self.scale(HABIT, keep);
        self.mean[HABIT] = habit;
        self.cov[HABIT][HABIT] += tuning.habit_day_sd * tuning.habit_day_sd;
    }
}

/// Means back into what can be, where readiness is known to a variance.
pub(super) fn clamp(mean: &mut Vector, readiness_var: f64) {
    let ready = 3.0 * readiness_var.max(0.0).sqrt() + 0.06;
    for (index, low, high) in [
        (READINESS, -ready, ready),
        (FATIGUE, 0.0, 0.03),
        (BIAS, -1.0, 3.5),
        (HABIT, 0.0, 6.0),
        (LOSS, 0.0, 0.4),
        (ENDURANCE, -4.0, 0.7),
        (SHAPE, 0.05, 2.5),
        (SLOPE, -0.5, 1.2),
        (AHEAD, -0.3, 0.3),
    ] {
        mean[index] = mean[index].clamp(low, high);
    }
}

/// Strength on a side, of a vector over the state: the trained level less what a layoff took, `side` being −1 left, 1 right,
/// 0 both.
pub(super) fn strength(v: &Vector, side: f64) -> f64 {
    v[LEVEL] - v[LOSS] + side * v[AHEAD]
}
