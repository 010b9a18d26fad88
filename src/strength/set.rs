//! One set moves the belief: assumed-density filtering of a signed sum of normal distribution functions.
//!
//! Gaussian times probit moments as in Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), section 3.9,
//! with each threshold keeping its own slope in endurance.

use super::likelihood::{Column, Likelihood, MOMENT, Square, THETA, Y};
use super::says::Says;
use super::state::{
    AHEAD, BIAS, ENDURANCE, FATIGUE, HABIT, LEVEL, LOSS, N, READINESS, SHAPE, State, Vector, clamp, strength,
};
use super::terms::Terms;
use super::tuning::{Outlier, Tuning};
use super::weights::Habit;

/// A set as the filter sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Observed {
    /// Log of the system load in kg.
    pub(super) log_load: f64,
    /// Repetitions done.
    pub(super) reps: f64,
    /// Repetitions that one of reserve stands for.
    pub(super) unit: f64,
    /// What it says of the reserve.
    pub(super) says: Says,
    /// What it would say had nothing been reported.
    pub(super) beside: Says,
    /// Repetitions that a habit leaves more of than usual.
    pub(super) more_left: f64,
    /// Hard sets done before it on the day.
    pub(super) hard_sets: f64,
    /// −1 left, 1 right, 0 both.
    pub(super) side: f64,
}

/// Probability from which a set looks like a typo: more likely not what it says than so.
pub(super) const LIKELY_TYPO: f64 = 0.5;

impl Observed {
    fn outlier(&self, tuning: &Tuning) -> Outlier {
        match self.says {
            // A single that failed may be anything from a slip to a wrong plate. T.
            Says::Missed if self.reps < 0.5 => Outlier {
                flat: 0.30,
                ..tuning.missed
            },
            Says::Missed | Says::Spent(_) => tuning.missed,
            Says::Reported(_) => tuning.reported,
            Says::Habit(_) | Says::Shown(_) => tuning.hardest,
            Says::AtLeast => tuning.other,
        }
    }

    /// Which number the weights of the reserve turn with.
    fn turns_with(&self) -> usize {
        if matches!(self.says, Says::Habit(_)) {
            HABIT
        } else {
            BIAS
        }
    }

    /// Strength of the moment, of a vector over the state.
    fn moment(&self, v: &Vector) -> f64 {
        v[LEVEL] - v[LOSS] + self.side * v[AHEAD] + v[READINESS] - self.hard_sets * v[FATIGUE]
    }

    /// Log 1RM of the moment ÷ load.
    pub(super) fn spare(&self, state: &State) -> f64 {
        self.moment(&state.mean) - self.log_load
    }
}

/// How likely the set is, were it what it says.
pub(super) fn likelihood_of(state: &State, set: &Observed, tuning: &Tuning) -> f64 {
    let reading = Reading::of(state, set, false, tuning);
    Likelihood::of(state, set, &reading.q, &reading.terms, tuning).value
}

/// Moves the belief by one set; returns the probability that the set is not what it says.
pub(super) fn learn(state: &mut State, set: &Observed, wobbles: bool, tuning: &Tuning) -> f64 {
    Reading::of(state, set, wobbles, tuning).learn(state, set, tuning)
}

/// What the belief before a set reads it with, whatever its count.
struct Reading {
    /// P·∂y.
    columns: [Vector; Y],
    q: Square,
    terms: Terms,
    keep_curve: bool,
}

/// Which way a count draws the belief.
struct Pull {
    likelihood: Likelihood,
    outlier: f64,
    scale: f64,
    gradient: Column,
}

impl Reading {
    fn of(state: &State, set: &Observed, wobbles: bool, tuning: &Tuning) -> Self {
        let theta = set.turns_with();
        let columns: [Vector; Y] = [
            std::array::from_fn(|i| set.moment(&state.cov[i])),
            std::array::from_fn(|i| state.cov[i][ENDURANCE]),
            std::array::from_fn(|i| state.cov[i][SHAPE]),
            std::array::from_fn(|i| state.cov[i][theta]),
        ];
        let q: Square = columns.map(|column| {
            [
                set.moment(&column),
                column[ENDURANCE],
                column[SHAPE],
                column[theta],
            ]
        });
        let sd = q[THETA][THETA].max(0.0).sqrt().max(1e-6);
        let mean = state.mean[theta] + if theta == HABIT { set.more_left } else { 0.0 };
        let habit = Habit {
            mean: state.mean[HABIT] + set.more_left,
            var: state.cov[HABIT][HABIT],
        };
        Self {
            columns,
            q,
            terms: Terms::of(set.says, mean, sd, set.beside, habit, tuning),
            // One count again and again is likelier the steeper the curve, which says nothing about the curve.
            keep_curve: !wobbles || matches!(set.says, Says::Habit(_)) && !tuning.habit_teaches,
        }
    }

    fn pull(&self, state: &State, set: &Observed, tuning: &Tuning) -> Pull {
        let likelihood = Likelihood::of(state, set, &self.q, &self.terms, tuning);
        let Outlier { share, flat } = set.outlier(tuning);
        let z = likelihood.value.max(1e-12);
        let outlier = share * flat / ((1.0 - share) * z + share * flat);
        let scale = (1.0 - outlier) / z;
        let mut gradient = likelihood.gradient.map(|g| g * scale);
        let length = steps(&self.q, &gradient);
        let longest = if outlier >= LIKELY_TYPO {
            tuning.longest_step_doubted
        } else {
            tuning.longest_step
        };
        if length > longest {
            gradient = gradient.map(|g| g * longest / length);
        }
        Pull {
            likelihood,
            outlier,
            scale,
            gradient,
        }
    }

    /// Mean += U G.
    fn mean(&self, state: &State, set: &Observed, pull: &Pull, tuning: &Tuning) -> Vector {
        let mut mean = state.mean;
        for i in (0..N).filter(|i| !self.considers(*i)) {
            mean[i] += (0..Y).map(|k| self.columns[k][i] * pull.gradient[k]).sum::<f64>();
        }
        let moved = strength(&mean, set.side) - state.strength(set.side);
        if tuning.keeps_sense && moved * pull.gradient[MOMENT] < 0.0 {
            // Endurance or bias took the credit, and more than all of it.
            mean[LEVEL] -= moved;
        }
        mean
    }

    /// With `keep_curve` endurance and shape are only considered, since a habit says nothing about them: their means stay
    /// and their variances do not shrink.
    fn considers(&self, index: usize) -> bool {
        self.keep_curve && (index == ENDURANCE || index == SHAPE)
    }

    /// Moves the belief by the set; returns the probability that it is not what it says.
    fn learn(&self, state: &mut State, set: &Observed, tuning: &Tuning) -> f64 {
        let pull = self.pull(state, set, tuning);
        let m: Square = std::array::from_fn(|i| {
            std::array::from_fn(|j| {
                pull.likelihood.curvature[i][j] * pull.scale + pull.gradient[i] * pull.gradient[j]
            })
        });
        state.mean = self.mean(state, set, &pull, tuning);
        self.spread(state, &m, safe_step(&self.q, &m, tuning.most_growth));
        clamp(&mut state.mean, state.cov[READINESS][READINESS]);
        pull.outlier
    }

    /// P −= t·U M Uᵀ.
    fn spread(&self, state: &mut State, m: &Square, step: f64) {
        let columns = &self.columns;
        for i in 0..N {
            let row: Column = std::array::from_fn(|b| (0..Y).map(|a| columns[a][i] * m[a][b]).sum());
            for j in (0..N).take(i + 1) {
                let mut change: f64 = (0..Y).map(|b| row[b] * columns[b][j]).sum();
                if i == j && self.considers(i) {
                    change = change.min(0.0);
                }
                let value = state.cov[i][j] - step * change;
                state.cov[i][j] = value;
                state.cov[j][i] = value;
            }
        }
    }
}

/// How many sds of the belief a gradient moves it by.
fn steps(q: &Square, g: &Column) -> f64 {
    let along = |i: usize| (0..Y).map(|j| q[i][j] * g[j]).sum::<f64>();
    (0..Y).map(|i| g[i] * along(i)).sum::<f64>().max(0.0).sqrt()
}

/// The largest step of 1, 0.6, 0.36, … that leaves a covariance: 0.98·Q − t·Q M Q must keep a Cholesky factor. And
/// none that makes a variance grow by more than `most_growth` times itself.
fn safe_step(q: &Square, m: &Square, most_growth: f64) -> f64 {
    let qmq = product(&product(q, m), q);
    let mut step: f64 = 1.0;
    for i in 0..Y {
        if -qmq[i][i] * step > most_growth * q[i][i] {
            step = most_growth * q[i][i] / -qmq[i][i];
        }
    }
    for _ in 0..12 {
        let mut left: Square =
            std::array::from_fn(|i| std::array::from_fn(|j| 0.98 * q[i][j] - step * qmq[i][j]));
        for (i, row) in left.iter_mut().enumerate() {
            row[i] += 1e-6 * q[i][i] + 1e-15;
        }
        if has_cholesky(&left) {
            break;
        }
        step *= 0.6;
    }
    step
}

fn product(a: &Square, b: &Square) -> Square {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..Y).map(|k| a[i][k] * b[k][j]).sum()))
}

fn has_cholesky(a: &Square) -> bool {
    let mut l = [[0.0; Y]; Y];
    for i in 0..Y {
        for j in 0..=i {
            let rest = a[i][j] - (0..j).map(|k| l[i][k] * l[j][k]).sum::<f64>();
            if i == j {
                if rest <= 0.0 || !rest.is_finite() {
                    return false;
                }
                l[i][i] = rest.sqrt();
            } else {
                l[i][j] = rest / l[j][j];
            }
        }
    }
    true
}
