//! The constants of the filter, so that two settings can be measured against each other.
//!
//! Status of a constant: C1 confirmed in the cited study, A assumption, T tuned on simulated logs (no real athlete's
//! log was used). All strengths are natural logarithms, so 0.01 is about 1 %.

use serde::{Deserialize, Serialize};

/// Chance and flatness of a typo: a set is one with probability `share`, and is then as likely as `flat`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Outlier {
    /// Share of sets of this kind that are not what they say. T.
    pub share: f64,
    /// Likelihood of such a set. T.
    pub flat: f64,
}

/// Constants of the filter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tuning {
    /// Sd of the log 1RM before the first set, around bodyweight × k. T; Muñoz-López 2017 saw 0.34 / 1.5 (C1).
    pub level_sd: f64,
    /// Mean trend of the log 1RM per week. T.
    pub trend_mean: f64,
    /// Sd of the trend per week. T.
    pub trend_sd: f64,
    /// Weeks in which a trend falls back to its mean by a factor e. A.
    pub trend_weeks: f64,
    /// Random walk of the log 1RM, sd for one week. T.
    pub level_walk: f64,
    /// Sd of the log endurance before the first set. Nuzzo 2024: such a spread exists (C1); its size T.
    pub endurance_sd: f64,
    /// Random walk of the log endurance, sd for one year. T.
    pub endurance_walk: f64,
    /// Repetitions by which the reserve is under-reported far from failure. Halperin 2022: 0.95 (C1).
    pub bias_mean: f64,
    /// Sd of that bias between athletes, repetitions. A.
    pub bias_sd: f64,
    /// Log capacity lost by a hard set. T.
    pub fatigue_mean: f64,
    /// Sd of that loss between athletes. A.
    pub fatigue_sd: f64,
    /// Repetitions in reserve in the day's hardest set when none is given. T.
    pub habit_mean: f64,
    /// Sd of the habit before the first day, repetitions. A.
    pub habit_sd: f64,
    /// Part of the habit's deviation that the next day keeps. T.
    pub habit_keep: f64,
    /// Sd by which the habit differs from day to day, repetitions. T.
    pub habit_day_sd: f64,
    /// Sd of the reserve around the habit, repetitions. T.
    pub habit_spread: f64,
    /// Shape of the reps curve: 0 exponential, 1 hyperbolic. A.
    pub curve_shape: f64,
    /// Change of the log 1RM for a change of log bodyweight. A, between 0 and 0.67 (Jaric 2002, C1).
    pub bodyweight_slope: f64,
    /// Sd of that slope. A.
    pub bodyweight_slope_sd: f64,
    /// Days without training that cost nothing. A.
    pub layoff_grace_days: f64,
    /// Log strength lost in a week of layoff after the grace. A.
    pub layoff_loss: f64,
    /// Sd of that loss, per week. A.
    pub layoff_loss_sd: f64,
    /// Days in which what a layoff took comes back by a factor e. A.
    pub regain_days: f64,
    /// Relative sd of a bodyweight within a day. A.
    pub weighing_sd: f64,
    /// Sd of a day's readiness before anything is known. T.
    pub day_sd: f64,
    /// The smallest sd of readiness. T.
    pub day_sd_low: f64,
    /// The largest sd of readiness. T.
    pub day_sd_high: f64,
    /// Days that the sd of readiness at the start counts for. T.
    pub day_sd_weight: f64,
    /// Sd of a single set's log capacity. T.
    pub set_sd: f64,
    /// Relative sd of the repetitions to failure within a day. Mitter 2022: 0.7 reps at 90 %, 1.1 at 70 % (C1).
    pub reps_cv: f64,
    /// Sd of a report of no reserve, repetitions. Hackett 2017: errors grow with distance (C1); size T.
    pub report_sd: f64,
    /// Growth of that sd with each repetition left. T.
    pub report_sd_slope: f64,
    /// How much oftener a set reported at 0 was cut short by failing than planned so. T.
    pub zero_factor: f64,
    /// Typos among missed sets.
    pub missed: Outlier,
    /// Typos among sets with a reserve.
    pub reported: Outlier,
    /// Typos among the days' hardest sets without a reserve.
    pub hardest: Outlier,
    /// Typos among all other sets.
    pub other: Outlier,
    /// Sd of the bodyweight slope between athletes, learnt; 0 leaves only the noise of `bodyweight_slope_sd`. T.
    pub slope_sd_kept: f64,
    /// Sd of half the log difference between the sides; 0 where sides are read apart. T.
    pub ahead_sd: f64,
    /// Random walk of half the difference, sd for one week. T.
    pub ahead_walk: f64,
    /// Sd of the curve's shape between athletes. T.
    pub curve_shape_sd: f64,
    /// Correlation by which who starts weak for their bodyweight gains faster. T; Latella 2020 saw such (C1).
    pub novice_trend: f64,
    /// Part of readiness that lasts beyond the day. T.
    pub readiness_kept: f64,
    /// Days in which that part falls by a factor e. T.
    pub readiness_days: f64,
    /// Share of days that are easy on purpose, with many repetitions left. T.
    pub easy_share: f64,
    /// Repetitions left in the hardest set of an easy day. T.
    pub easy_mean: f64,
    /// Sd of those. T.
    pub easy_sd: f64,
    /// Whether a habit's reserve teaches the reps curve too.
    pub habit_teaches: bool,
    /// Standard deviation of recent counts, repetitions, under which sets say nothing of the reps curve. A.
    pub least_wobble: f64,
    /// Sd added where nobody reports a reserve or misses: all then stands on a habit. T.
    pub silence_sd: f64,
    /// Days in which a report or a miss is forgotten there by a factor e. A.
    pub silence_days: f64,
    /// Power of that silence by which the added sd grows. T.
    pub silence_power: f64,
    /// Weight that the days' mean starts with is at most so many days, so that it keeps learning. T.
    pub day_sd_memory: f64,
    /// Whether a day counts there only as far as its readiness is known.
    pub day_sd_by_information: bool,
    /// Longest step of one set, in sds of the belief. Keeps absurd logs finite; A.
    pub longest_step: f64,
    /// The same of a set that looks like a typo. A.
    pub longest_step_doubted: f64,
    /// Part of a variance by which one set may make it grow. Keeps absurd logs finite; A.
    pub most_growth: f64,
    /// Whether a first day far from the guess draws and widens it, and movements differ in spread.
    pub start_widens: bool,
    /// Part of the distance between the guess and the first day that the guess's sd is at least. T.
    pub start_reach: f64,
    /// The guess lies no further than this from the first day, on the log scale. T.
    pub start_grace: f64,
    /// Share of days without report or miss that is taken for granted before the first day. T.
    pub start_silence: f64,
    /// Part of a day's variance that the belief itself is wider by. T.
    pub day_share: f64,
    /// Whether a set without report after a missed one of as many repetitions counts as all but spent.
    pub spent_after_miss: bool,
    /// Whether the sets around one without report tell how near to failure it was.
    pub reads_patterns: bool,
    /// Repetitions that a single hardest set leaves beyond the habit. T.
    pub habit_top: f64,
    /// Repetitions that the last of equal sets leaves beyond the habit. T.
    pub habit_repeated: f64,
    /// Repetitions by which a set raised by one over its equals leaves fewer than they: less than 1, so that it never asks for
    /// less strength. A.
    pub raised_spends: f64,
    /// Share of easy days among those with a single hardest set. T.
    pub easy_share_top: f64,
    /// Share of easy days among those with equal sets. T.
    pub easy_share_repeated: f64,
    /// Whether a report is averaged over the bias in closed form, and read in the light of the sets around it.
    pub exact_bias: bool,
    /// Repetitions by which a habit leaves more where nobody ever reports or misses than where everybody does. T.
    pub habit_silence: f64,
    /// Whether a set that asks for more strength of the moment never lowers the level, nor the other way round, and one more
    /// repetition in the newest set never lowers what is told.
    pub keeps_sense: bool,
    /// Factor on the sd of the belief before the third training day. T.
    pub first_days_widen: f64,
    /// Whether both sides of a movement share one belief.
    pub sides_together: bool,
    /// Random walk of the log 1RM that a forecast has beyond that of the level, sd for one week. T.
    pub forecast_walk: f64,
    /// Factor on the sd of the belief, for what the model leaves out. T.
    pub widen: f64,
}

impl Tuning {
    /// The filter as it was first published for this project; later settings are measured against it.
    pub fn published() -> Self {
        Self {
            level_sd: 0.18,
            trend_mean: 0.0006,
            trend_sd: 0.0015,
            trend_weeks: 9.0,
            level_walk: 0.0042,
            endurance_sd: 0.22,
            endurance_walk: 0.085,
            bias_mean: 0.95,
            bias_sd: 0.6,
            fatigue_mean: 0.0075,
            fatigue_sd: 0.003,
            habit_mean: 1.5,
            habit_sd: 0.7,
            habit_keep: 0.5,
            habit_day_sd: 1.2,
            habit_spread: 1.85,
            curve_shape: 0.35,
            bodyweight_slope: 0.35,
            bodyweight_slope_sd: 0.18,
            layoff_grace_days: 14.0,
            layoff_loss: 0.010,
            layoff_loss_sd: 0.003,
            regain_days: 24.0,
            weighing_sd: 0.006,
            day_sd: 0.018,
            day_sd_low: 0.012,
            day_sd_high: 0.06,
            day_sd_weight: 10.0,
            set_sd: 0.017,
            reps_cv: 0.05,
            report_sd: 0.30,
            report_sd_slope: 0.28,
            zero_factor: 1.8,
            missed: Outlier {
                share: 0.008,
                flat: 0.04,
            },
            reported: Outlier {
                share: 0.008,
                flat: 0.02,
            },
            hardest: Outlier {
                share: 0.04,
                flat: 0.03,
            },
            other: Outlier {
                share: 0.04,
                flat: 0.5,
            },
            slope_sd_kept: 0.0,
            ahead_sd: 0.0,
            ahead_walk: 0.0,
            curve_shape_sd: 0.0,
            novice_trend: 0.0,
            readiness_kept: 0.0,
            readiness_days: 0.0,
            easy_share: 0.0,
            easy_mean: 8.0,
            easy_sd: 3.5,
            habit_teaches: false,
            least_wobble: 0.0,
            silence_sd: 0.0,
            silence_days: 15.0,
            silence_power: 4.0,
            day_sd_memory: 60.0,
            day_share: 0.0,
            day_sd_by_information: false,
            longest_step: 1e9,
            longest_step_doubted: 1e9,
            start_widens: false,
            start_reach: 0.5,
            start_grace: 0.0,
            start_silence: 0.5,
            most_growth: 1e9,
            spent_after_miss: false,
            reads_patterns: false,
            first_days_widen: 1.0,
            keeps_sense: false,
            exact_bias: false,
            habit_silence: 0.0,
            habit_top: 0.0,
            habit_repeated: 0.0,
            raised_spends: 0.0,
            easy_share_top: 0.0,
            easy_share_repeated: 0.0,
            sides_together: false,
            forecast_walk: 0.0,
            widen: 1.35,
        }
    }
}
