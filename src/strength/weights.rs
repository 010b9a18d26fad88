//! What is believed of a set's reserve, and how that belief turns with the athlete's bias or habit.
//!
//! A set of n repetitions has likelihood Σ q_j [Φ_{n+j} − Φ_{n+j+1}] + q_∞ Φ_{n+J}: q_j weighs a reserve of j, Φ_k is the
//! chance that k repetitions could be done. Collected by Φ_k that is a signed sum with one coefficient a threshold.

use super::Tuning;
use super::normal::cdf;

/// Reserves told apart when one was given or is a habit.
const RESERVES: usize = 16;
/// Thresholds at most: one more than reserves.
pub(super) const TERMS: usize = RESERVES + 1;

/// How much a set says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Says {
    /// One more was tried and failed.
    Missed,
    /// Done, with this reserve reported.
    Reported(f64),
    /// Done without a report, and the day's hardest: a habit's reserve was left.
    Habit,
    /// Done without a report, after one was missed at no more load; so many repetitions fewer than then.
    Spent(f64),
    /// Done without a report: at least these repetitions can be done.
    AtLeast,
}

/// Coefficients of Φ_n, Φ_{n+1}, …: value, first and second derivative with respect to the bias or habit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Terms {
    pub(super) count: usize,
    pub(super) value: [f64; TERMS],
    pub(super) slope: [f64; TERMS],
    pub(super) bend: [f64; TERMS],
}

/// Weights of the reserves 0, 1, … and of any larger one.
pub(super) struct Weights {
    pub(super) of: [f64; RESERVES],
    count: usize,
    tail: f64,
}

/// β(j) = 1 − e^(−j/1.5): how much of the bias shows at a reserve of j. A.
pub(super) fn bias_shown(reserve: f64) -> f64 {
    1.0 - libm::exp(-reserve / 1.5)
}

/// β of the whole reserves, computed once.
const SHOWN: [f64; RESERVES] = [
    0.0,
    0.486582880967408,
    0.7364028618842733,
    0.8646647167633873,
    0.9305165487771985,
    0.9643260066527476,
    0.9816843611112658,
    0.9905964374485048,
    0.9951720500061686,
    0.9975212478233336,
    0.9987273661986602,
    0.9993466080201326,
    0.9996645373720975,
    0.9998277677440391,
    0.9999115730113401,
    0.9999546000702375,
];

impl Weights {
    /// Weights of a missed set. T: 1 % each for misses of grip or technique with up to 4 left.
    fn missed() -> Self {
        let mut of = [0.0; RESERVES];
        of[0] = 0.96;
        of[1..5].fill(0.01);
        Self {
            of,
            count: 5,
            tail: 0.0,
        }
    }

    /// Weights of a set after a missed one, `fewer` repetitions than that. T.
    fn spent(fewer: f64) -> Self {
        let mut of = [0.0; RESERVES];
        let near: [f64; 6] = if fewer < 2.5 {
            [0.76, 0.12, 0.06, 0.03, 0.02, 0.005]
        } else {
            [0.32, 0.20, 0.22, 0.14, 0.08, 0.03]
        };
        of[..6].copy_from_slice(&near);
        Self {
            of,
            count: 6,
            tail: 0.005,
        }
    }

    /// Weights when `report` repetitions in reserve were said by somebody who under-reports by `bias`.
    pub(super) fn reported(report: f64, bias: f64, tuning: &Tuning) -> Self {
        let mut of = [0.0; RESERVES];
        let far = report >= 7.0;
        for (j, weight) in of.iter_mut().enumerate() {
            let reserve = f64::from(u8::try_from(j).unwrap_or(u8::MAX));
            let sd = (tuning.report_sd + tuning.report_sd_slope * reserve).min(2.0);
            let centre = reserve - bias * SHOWN[j];
            let below = if report > 0.0 {
                cdf((report - 0.5 - centre) / sd)
            } else {
                0.0
            };
            let above = if far {
                1.0
            } else {
                cdf((report + 0.5 - centre) / sd)
            };
            *weight = above - below;
        }
        of[0] *= tuning.zero_factor;
        Self {
            of,
            count: RESERVES,
            tail: if far { 1.0 } else { 0.0 },
        }
    }

    /// Weights of a set without report whose reserve is a `habit`, unless the day was easy on purpose.
    pub(super) fn habit(habit: f64, tuning: &Tuning) -> Self {
        let mut of = bell(habit, tuning.habit_spread);
        if tuning.easy_share > 0.0 {
            let easy = bell(tuning.easy_mean, tuning.easy_sd);
            for (weight, easy) in of.iter_mut().zip(easy) {
                *weight += tuning.easy_share * (easy - *weight);
            }
        }
        for weight in &mut of {
            *weight = 0.975 * *weight + 0.0015;
        }
        Self {
            of,
            count: RESERVES,
            tail: 0.0015 + 0.05 * tuning.easy_share,
        }
    }

    /// The coefficient of Φ_{n+j}.
    fn coefficient(&self, j: usize) -> f64 {
        let here = if j < self.count { self.of[j] } else { self.tail };
        if j == 0 { here } else { here - self.of[j - 1] }
    }
}

/// Whole reserves by a bell around `centre`, adding up to 1.
fn bell(centre: f64, spread: f64) -> [f64; RESERVES] {
    let mut of = [0.0; RESERVES];
    let mut reserve = 0.0;
    for weight in &mut of {
        let z = (reserve - centre) / spread;
        *weight = libm::exp(-0.5 * z * z);
        reserve += 1.0;
    }
    let sum: f64 = of.iter().sum();
    of.map(|weight| weight / sum.max(1e-300))
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
    pub(super) fn of(says: Says, mean: f64, sd: f64, tuning: &Tuning) -> Self {
        let at = |theta: f64| match says {
            Says::Reported(report) => Weights::reported(report, theta, tuning),
            _ => Weights::habit(theta, tuning),
        };
        match says {
            Says::Missed => Self::plain(&Weights::missed()),
            Says::Spent(fewer) => Self::plain(&Weights::spent(fewer)),
            Says::AtLeast => {
                let mut terms = Self::empty(1);
                terms.value[0] = 1.0;
                terms
            }
            Says::Reported(_) | Says::Habit => Self::spread(&at(mean), &at(mean + sd), &at(mean - sd), sd),
        }
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
