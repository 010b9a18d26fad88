//! The constants that the filter is used with.

use super::{Outlier, Tuning};

impl Default for Tuning {
    /// The filter as it is used. All that differs from [`Tuning::published`] was tuned on simulated logs (T), one constant
    /// at a time, on seeds 1 to 8, 400 to 405 and 501 to 506; what each idea bought stands in the module's documentation.
    fn default() -> Self {
        Self {
            level_sd: 0.1,
            trend_mean: 0.0006,
            level_walk: 0.00336,
            bias_mean: 0.754,
            bias_sd: 0.324,
            fatigue_mean: 0.00868,
            fatigue_sd: 0.00192,
            trend_weeks: 12.2,
            easy_sd: 2.07,
            habit_mean: 1.22,
            habit_keep: 0.72,
            habit_day_sd: 1.04,
            habit_spread: 1.1,
            curve_shape: 0.28,
            bodyweight_slope_sd: 0.0,
            layoff_loss_sd: 0.00347,
            day_sd: 0.02,
            day_sd_weight: 6.48,
            set_sd: 0.0138,
            reps_cv: 0.0116,
            report_sd: 0.24,
            zero_factor: 1.23,
            missed: Outlier {
                share: 0.01,
                flat: 0.13,
            },
            reported: Outlier {
                share: 0.0305,
                flat: 0.0763,
            },
            hardest: Outlier {
                share: 0.0556,
                flat: 0.03,
            },
            other: Outlier {
                share: 0.06,
                flat: 0.5,
            },
            slope_sd_kept: 0.18,
            ahead_sd: 0.025,
            ahead_walk: 0.00103,
            curve_shape_sd: 0.233,
            novice_trend: 0.512,
            readiness_kept: 0.0972,
            readiness_days: 8.0,
            easy_share: 0.17,
            silence_sd: 0.055,
            silence_power: 10.0,
            day_sd_memory: 20.0,
            day_sd_by_information: true,
            longest_step: 3.0,
            longest_step_doubted: 1.0,
            least_wobble: 0.75,
            most_growth: 0.05,
            day_share: 0.35,
            spent_after_miss: true,
            reads_patterns: true,
            first_days_widen: 1.2,
            keeps_sense: true,
            exact_bias: true,
            habit_silence: 1.5,
            habit_top: 0.156,
            habit_repeated: 0.694,
            raised_spends: 0.5,
            easy_share_top: 0.488,
            easy_share_repeated: 0.216,
            sides_together: true,
            widen: 1.09,
            forecast_walk: 0.003,
            start_widens: true,
            start_reach: 0.2,
            start_grace: 0.2,
            start_silence: 0.3,
            ..Self::published()
        }
    }
}
