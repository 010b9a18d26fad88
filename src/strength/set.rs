//! One set moves the belief: assumed-density filtering of a signed sum of normal distribution functions.
//!
//! Gaussian times probit moments as in Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), section 3.9,
//! with each threshold keeping its own slope in endurance.

use super::curve::{Curve, steepness_at_80};
use super::normal::{cdf, pdf};
use super::state::{BIAS, ENDURANCE, FATIGUE, HABIT, LEVEL, LOSS, N, READINESS, State, Vector};
use super::tuning::{Outlier, Tuning};
use super::weights::{Says, Terms};

/// A set as the filter sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Observed {
    /// Log of the system load in kg.
    pub(super) log_load: f64,
    /// Repetitions done.
    pub(super) reps: f64,
    /// What it says of the reserve.
    pub(super) says: Says,
    /// Hard sets done before it on the day.
    pub(super) hard_sets: f64,
}

/// What came of a set.
#[derive(Debug, Clone, Copy)]
pub(super) struct Moved {
    /// Probability that the set is not what it says.
    pub(super) outlier: f64,
}

/// Coefficients smaller than this change nothing that is shown.
const NOTHING: f64 = 1e-9;

type Three = [f64; 3];

/// Likelihood of a set, its gradient, and minus its second derivatives, in (strength of the moment, endurance, bias or habit).
struct Likelihood {
    value: f64,
    gradient: Three,
    curvature: [Three; 3],
}

impl Observed {
    fn outlier(&self, tuning: &Tuning) -> Outlier {
        match self.says {
            // A single that failed may be anything from a slip to a wrong plate. T.
            Says::Missed if self.reps < 0.5 => Outlier {
                flat: 0.30,
                ..tuning.missed
            },
            Says::Missed => tuning.missed,
            Says::Reported(_) => tuning.reported,
            Says::Habit => tuning.hardest,
            Says::AtLeast => tuning.other,
        }
    }

    /// Which number the weights of the reserve turn with.
    fn turns_with(&self) -> usize {
        if matches!(self.says, Says::Habit) {
            HABIT
        } else {
            BIAS
        }
    }
}

/// P·∂y for the strength of the moment, which sums several numbers of the state.
fn column_of_moment(state: &State, hard_sets: f64) -> Vector {
    let mut column = [0.0; N];
    for (entry, row) in column.iter_mut().zip(&state.cov) {
        *entry = row[LEVEL] - row[LOSS] + row[READINESS] - hard_sets * row[FATIGUE];
    }
    column
}

fn moment(v: &Vector, hard_sets: f64) -> f64 {
    v[LEVEL] - v[LOSS] + v[READINESS] - hard_sets * v[FATIGUE]
}

/// Log capacity of the moment after `hard_sets`.
pub(super) fn capacity(state: &State, hard_sets: f64) -> f64 {
    moment(&state.mean, hard_sets)
}

/// Moves the belief by one set.
pub(super) fn learn(state: &mut State, set: &Observed, tuning: &Tuning) -> Moved {
    let theta = set.turns_with();
    let columns: [Vector; 3] = [
        column_of_moment(state, set.hard_sets),
        std::array::from_fn(|i| state.cov[i][ENDURANCE]),
        std::array::from_fn(|i| state.cov[i][theta]),
    ];
    let q: [Three; 3] = std::array::from_fn(|k| {
        [
            moment(&columns[k], set.hard_sets),
            columns[k][ENDURANCE],
            columns[k][theta],
        ]
    });
    let sd = q[2][2].max(0.0).sqrt().max(1e-6);
    let terms = Terms::of(set.says, state.mean[theta], sd, tuning);
    let likelihood = likelihood(state, set, &q, &terms, tuning);

    let Outlier { share, flat } = set.outlier(tuning);
    let z = likelihood.value.max(1e-12);
    let outlier = share * flat / ((1.0 - share) * z + share * flat);
    let scale = (1.0 - outlier) / z;
    let gradient = likelihood.gradient.map(|g| g * scale);
    let mut m = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in 0..3 {
            m[i][j] = likelihood.curvature[i][j] * scale + gradient[i] * gradient[j];
        }
    }
    let step = safe_step(&q, &m);
    apply(
        state,
        &columns,
        &gradient,
        &m,
        step,
        matches!(set.says, Says::Habit),
    );
    state.clamp();
    Moved { outlier }
}

fn likelihood(state: &State, set: &Observed, q: &[Three; 3], terms: &Terms, tuning: &Tuning) -> Likelihood {
    let shape = tuning.curve_shape;
    let curve = Curve::steep(shape, steepness_at_80(shape) * libm::exp(state.mean[ENDURANCE]));
    let spare = moment(&state.mean, set.hard_sets) - set.log_load;
    let mut sum = Likelihood {
        value: 0.0,
        gradient: [0.0; 3],
        curvature: [[0.0; 3]; 3],
    };
    let mut k = set.reps;
    for j in 0..terms.count {
        let (c, c1, c2) = (terms.value[j], terms.slope[j], terms.bend[j]);
        if c.abs() >= NOTHING || c1.abs() >= NOTHING || c2.abs() >= NOTHING {
            if k < 0.5 {
                sum.value += c;
                sum.gradient[2] += c1;
                sum.curvature[2][2] -= c2;
            } else {
                let (g, slope) = curve.log_ratio(k);
                let a = -slope * (k - 1.0);
                let noise = tuning.set_sd * tuning.set_sd + (tuning.reps_cv * a) * (tuning.reps_cv * a);
                let var = q[0][0] + 2.0 * a * q[0][1] + a * a * q[1][1] + noise;
                let root = var.max(1e-12).sqrt();
                let z = (spare - g) / root;
                let (below, dense) = (cdf(z), pdf(z) / root);
                let turn = z * dense / root;
                sum.value += c * below;
                sum.gradient[0] += c * dense;
                sum.gradient[1] += a * c * dense;
                sum.gradient[2] += c1 * below;
                sum.curvature[0][0] += c * turn;
                sum.curvature[0][1] += a * c * turn;
                sum.curvature[1][1] += a * a * c * turn;
                sum.curvature[0][2] -= c1 * dense;
                sum.curvature[1][2] -= a * c1 * dense;
                sum.curvature[2][2] -= c2 * below;
            }
        }
        k += 1.0;
    }
    sum.curvature[1][0] = sum.curvature[0][1];
    sum.curvature[2][0] = sum.curvature[0][2];
    sum.curvature[2][1] = sum.curvature[1][2];
    sum
}

/// The largest step of 1, 0.6, 0.36, … that leaves a covariance: 0.98·Q − t·Q M Q must keep a Cholesky factor.
fn safe_step(q: &[Three; 3], m: &[Three; 3]) -> f64 {
    let qm = product(q, m);
    let qmq = product(&qm, q);
    let mut step = 1.0;
    for _ in 0..12 {
        let mut left = [[0.0; 3]; 3];
        for i in 0..3 {
            for j in 0..3 {
                left[i][j] = 0.98 * q[i][j] - step * qmq[i][j];
            }
            left[i][i] += 1e-6 * q[i][i] + 1e-15;
        }
        if has_cholesky(&left) {
            break;
        }
        step *= 0.6;
    }
    step
}

fn product(a: &[Three; 3], b: &[Three; 3]) -> [Three; 3] {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..3).map(|k| a[i][k] * b[k][j]).sum()))
}

fn has_cholesky(a: &[Three; 3]) -> bool {
    let mut l = [[0.0; 3]; 3];
    for i in 0..3 {
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

/// Mean += U G, P −= t·U M Uᵀ. A habit says nothing about endurance: with `keep_endurance` its mean stays and its
/// variance does not shrink.
fn apply(
    state: &mut State,
    columns: &[Vector; 3],
    g: &Three,
    m: &[Three; 3],
    step: f64,
    keep_endurance: bool,
) {
    let endurance = state.mean[ENDURANCE];
    for i in 0..N {
        state.mean[i] += columns[0][i] * g[0] + columns[1][i] * g[1] + columns[2][i] * g[2];
    }
    if keep_endurance {
        state.mean[ENDURANCE] = endurance;
    }
    for i in 0..N {
        let row: Three = std::array::from_fn(|b| (0..3).map(|a| columns[a][i] * m[a][b]).sum::<f64>());
        for j in 0..=i {
            let mut change = row[0] * columns[0][j] + row[1] * columns[1][j] + row[2] * columns[2][j];
            if keep_endurance && i == ENDURANCE && j == ENDURANCE {
                change = change.min(0.0);
            }
            let value = state.cov[i][j] - step * change;
            state.cov[i][j] = value;
            state.cov[j][i] = value;
        }
    }
}
