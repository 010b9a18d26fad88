//! Coefficients of a set's likelihood, and how they turn with the athlete's bias or habit.
//!
//! A set of n repetitions has likelihood Σ q_j [Φ_{n+j} − Φ_{n+j+1}] + q_∞ Φ_{n+J}: q_j weighs a reserve of j, Φ_k is the
//! chance that k repetitions could be done. Collected by Φ_k that is a signed sum with one coefficient a threshold.

use super::Tuning;
use super::normal::cdf_and_pdf;
use super::says::Says;
use super::weights::{Habit, RESERVES, SHOWN, Weights};

/// Thresholds at most: one more than reserves.
pub(super) const TERMS: usize = RESERVES + 1;
/// Larger reserves weigh less than this where it ends. T: from 2e-3 to 12e-3 CRPS stays within 0.1 %; more saves time.
const NOTHING: f64 = 6e-3;

/// Coefficients of Φ_n, Φ_{n+1}, …: value, first and second derivative with respect to the bias or habit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Terms {
    pub(super) count: usize,
    pub(super) value: [f64; TERMS],
    pub(super) slope: [f64; TERMS],
    pub(super) bend: [f64; TERMS],
}

impl Terms {
    fn plain(weights: &Weights) -> Self {
        let mut terms = Self::empty(weights.count + 1);
        for j in 0..terms.count {
            terms.value[j] = weights.coefficient(j);
        }
        terms
    }

    fn empty(count: usize) -> Self {
        Self {
            count,
            value: [0.0; TERMS],
            slope: [0.0; TERMS],
            bend: [0.0; TERMS],
        }
    }

    /// The terms of a set, where bias or habit is `mean` ± `sd`.
    pub(super) fn of(says: Says, mean: f64, sd: f64, beside: Says, habit: Habit, tuning: &Tuning) -> Self {
        let spread = tuning.habit_spread;
        match says {
            Says::Missed => Self::plain(&Weights::missed()),
            Says::Spent(fewer) => Self::plain(&Weights::spent(fewer)),
            Says::Shown(shown) => Self::plain(&Weights::shown(shown)),
            Says::AtLeast => {
                let mut terms = Self::empty(1);
                terms.value[0] = 1.0;
                terms
            }
            Says::Reported(report) if tuning.exact_bias => {
                Self::reported(report, mean, sd, Weights::expected(beside, habit, tuning), tuning)
            }
            Says::Reported(report) => {
                let at = |theta: f64| Weights::reported(report, theta, tuning);
                Self::spread(&at(mean), &at(mean + sd), &at(mean - sd), sd)
            }
            Says::Habit(standing) => {
                let at = |theta: f64| Weights::habit(theta, spread, standing, tuning);
                Self::spread(&at(mean), &at(mean + sd), &at(mean - sd), sd)
            }
        }
    }

    /// The terms of a report, averaged over a normal bias in closed form: a normal with its mean moved by the bias stays
    /// one, only wider.
    fn reported(report: f64, mean: f64, sd: f64, expected: Option<Weights>, tuning: &Tuning) -> Self {
        let far = report >= 7.0;
        let mut terms = Self::empty(RESERVES + 1);
        let mut last = [0.0; 3];
        let mut reserve = 0.0;
        for (j, shown) in SHOWN.into_iter().enumerate() {
            let noise = (tuning.report_sd + tuning.report_sd_slope * reserve).min(2.0);
            let wide = 1.0 / (noise * noise + shown * shown * sd * sd).sqrt();
            let centre = reserve - mean * shown;
            let by = shown * wide;
            let at = |edge: f64| {
                let z = (edge - centre) * wide;
                let (below, dense) = cdf_and_pdf(z);
                [below, dense * by, -z * dense * by * by]
            };
            let above = if far { [1.0, 0.0, 0.0] } else { at(report + 0.5) };
            let below = if report > 0.0 { at(report - 0.5) } else { [0.0; 3] };
            let mut factor = expected.as_ref().map_or(1.0, |expected| expected.of[j]);
            if j == 0 {
                factor *= tuning.zero_factor;
            }
            let here: [f64; 3] = std::array::from_fn(|i| factor * (above[i] - below[i]));
            terms.set(j, &here, &last);
            last = here;
            reserve += 1.0;
            if above[0] < NOTHING {
                terms.count = j + 2;
                terms.set(j + 1, &[0.0; 3], &last);
                return terms;
            }
        }
        let tail = if far {
            expected
                .as_ref()
                .map_or(1.0, |expected| expected.of[RESERVES - 1])
        } else {
            0.0
        };
        terms.set(RESERVES, &[tail, 0.0, 0.0], &last);
        terms
    }

    fn set(&mut self, j: usize, here: &[f64; 3], last: &[f64; 3]) {
        self.value[j] = here[0] - last[0];
        self.slope[j] = here[1] - last[1];
        self.bend[j] = here[2] - last[2];
    }

    /// Mean, slope and bend from the weights at the mean and one sd to either side.
    fn spread(mid: &Weights, up: &Weights, down: &Weights, sd: f64) -> Self {
        let mut terms = Self::empty(mid.count + 1);
        for j in 0..terms.count {
            let (q, above, below) = (mid.coefficient(j), up.coefficient(j), down.coefficient(j));
            terms.value[j] = 0.5 * (above + below);
            terms.slope[j] = (above - below) / (2.0 * sd);
            terms.bend[j] = (above - 2.0 * q + below) / (sd * sd);
        }
        terms
    }
}
