//! What is believed of a set's reserve: a weight for each whole number of repetitions.

use super::Tuning;
use super::normal::cdf;
use super::says::{Says, Shown, Standing};

/// Reserves told apart when one was given or is a habit.
pub(super) const RESERVES: usize = 16;

/// The habit as it is believed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Habit {
    pub(super) mean: f64,
    pub(super) var: f64,
}

/// Weights of the reserves 0, 1, … and of any larger one.
pub(super) struct Weights {
    pub(super) of: [f64; RESERVES],
    pub(super) count: usize,
    pub(super) tail: f64,
}

/// β(j) = 1 − e^(−j/1.5): how much of the bias shows at a reserve of j. A.
pub(super) fn bias_shown(reserve: f64) -> f64 {
    1.0 - libm::exp(-reserve / 1.5)
}

/// β of the whole reserves, computed once.
pub(super) const SHOWN: [f64; RESERVES] = [
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
    pub(super) fn missed() -> Self {
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
    pub(super) fn spent(fewer: f64) -> Self {
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

    /// Weights of a set that the others tell of.
    pub(super) fn shown(shown: Shown) -> Self {
        let (parts, tail) = shown.parts();
        let mut of = [0.0; RESERVES];
        of[..10].copy_from_slice(&parts);
        Self { of, count: 10, tail }
    }

    /// How well a reserve goes with the sets around a reported one, as factors of at most 1; half believed (a square
    /// root), since reports were in part made in the light of the same.
    pub(super) fn expected(beside: Says, habit: Habit, tuning: &Tuning) -> Option<Self> {
        let mut weights = match beside {
            Says::Habit(standing) => {
                let var = tuning.habit_spread * tuning.habit_spread + habit.var.max(0.0);
                // A report with the one repetition more says by itself what that cost.
                let standing = match standing {
                    Standing::Raised => Standing::Repeated,
                    other => other,
                };
                Self::habit(habit.mean, var.sqrt(), standing, tuning)
            }
            Says::Shown(shown) => Self::shown(shown),
            Says::Spent(fewer) => Self::spent(fewer),
            _ => return None,
        };
        let most = weights.of.iter().copied().fold(1e-9, f64::max);
        for weight in &mut weights.of {
            *weight = (*weight / most).max(0.003).sqrt();
        }
        Some(weights)
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
    pub(super) fn habit(habit: f64, spread: f64, standing: Standing, tuning: &Tuning) -> Self {
        let (more, easy_share) = match standing {
            Standing::Any => (0.0, tuning.easy_share),
            Standing::Top => (tuning.habit_top, tuning.easy_share_top),
            Standing::Repeated => (tuning.habit_repeated, tuning.easy_share_repeated),
            Standing::Raised => (
                tuning.habit_repeated - tuning.raised_spends,
                tuning.easy_share_repeated,
            ),
        };
        let mut of = bell(habit + more, spread);
        if easy_share > 0.0 {
            let easy = bell(tuning.easy_mean, tuning.easy_sd);
            for (weight, easy) in of.iter_mut().zip(easy) {
                *weight += easy_share * (easy - *weight);
            }
        }
        for weight in &mut of {
            *weight = 0.975 * *weight + 0.0015;
        }
        Self {
            of,
            count: RESERVES,
            tail: 0.0015 + 0.05 * easy_share,
        }
    }

    /// The coefficient of Φ_{n+j}.
    pub(super) fn coefficient(&self, j: usize) -> f64 {
        let here = if j < self.count { self.of[j] } else { self.tail };
        if j == 0 { here } else { here - self.of[j - 1] }
    }
}

/// Whole reserves by a bell around `centre`, adding up to 1.
fn bell(centre: f64, spread: f64) -> [f64; RESERVES] {
    let mut of = [0.0; RESERVES];
    // Neighbours' ratios are in a fixed ratio themselves.
    let narrow = 1.0 / (spread * spread);
    let mut here = libm::exp(-0.5 * centre * centre * narrow);
    let mut ratio = libm::exp((centre - 0.5) * narrow);
    let bends = libm::exp(-narrow);
    for weight in &mut of {
        *weight = here;
        here *= ratio;
        ratio *= bends;
    }
    let sum: f64 = of.iter().sum();
    of.map(|weight| weight / sum.max(1e-300))
}
