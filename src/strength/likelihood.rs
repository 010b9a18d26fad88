//! How likely a set is, as a signed sum of normal distribution functions, and how that turns with what is believed.

use super::Tuning;
use super::curve::Curve;
use super::normal::cdf_and_pdf;
use super::set::Observed;
use super::state::{ENDURANCE, SHAPE, State};
use super::terms::{TERMS, Terms};

/// Coefficients smaller than this change nothing that is shown.
const NOTHING: f64 = 1e-9;

/// Numbers that a set's likelihood depends on.
pub(super) const Y: usize = 4;
/// Strength of the moment, of which the next three are apart.
pub(super) const MOMENT: usize = 0;
/// Endurance.
const CURVE: usize = 1;
/// Shape of the reps curve.
const BEND: usize = 2;
/// Bias or habit.
pub(super) const THETA: usize = 3;

pub(super) type Column = [f64; Y];
pub(super) type Square = [Column; Y];

/// Likelihood of a set, its gradient, and minus its second derivatives.
pub(super) struct Likelihood {
    pub(super) value: f64,
    pub(super) gradient: Column,
    pub(super) curvature: Square,
}

/// One term of the signed sum: so many repetitions could be done.
#[derive(Debug, Clone, Copy, Default)]
struct Threshold {
    /// Its coefficient, and how that turns with bias or habit.
    terms: [f64; 3],
    /// Slopes of what is spare in strength, endurance and shape.
    along: [f64; 3],
    /// 1 / sd of what is spare.
    narrow: f64,
    /// What is spare, in sds.
    z: f64,
}

impl Threshold {
    fn of(reps: f64, terms: [f64; 3], spare: f64, curve: &Curve, q: &Square, tuning: &Tuning) -> Self {
        let (ratio, slope) = curve.log_ratio(reps);
        let a = -slope * (reps - 1.0);
        let d = if q[BEND][BEND] > 0.0 {
            -curve.by_shape(reps, (ratio, slope))
        } else {
            0.0
        };
        let along = [1.0, a, d];
        let mut var = tuning.set_sd * tuning.set_sd + (tuning.reps_cv * a) * (tuning.reps_cv * a);
        for (i, x) in along.iter().enumerate() {
            var += x * (q[i][MOMENT] + a * q[i][CURVE] + d * q[i][BEND]);
        }
        let narrow = 1.0 / var.max(1e-12).sqrt();
        Self {
            terms,
            along,
            narrow,
            z: (spare - ratio) * narrow,
        }
    }
}

impl Likelihood {
    /// Of a set, where `q` is the covariance of the numbers it depends on.
    pub(super) fn of(state: &State, set: &Observed, q: &Square, terms: &Terms, tuning: &Tuning) -> Self {
        let curve = Curve::new(state.mean[SHAPE], state.mean[ENDURANCE]);
        let spare = set.spare(state);
        let mut sum = Self {
            value: 0.0,
            gradient: [0.0; Y],
            curvature: [[0.0; Y]; Y],
        };
        // All logarithms, roots and divisions before the first sum: so they overlap, which saves a sixth of the time.
        let mut thresholds = [Threshold::default(); TERMS];
        let mut used = 0;
        let mut reps = set.reps;
        for j in 0..terms.count {
            let (c, c1, c2) = (terms.value[j], terms.slope[j], terms.bend[j]);
            let k = reps;
            reps += set.unit;
            if c.abs() < NOTHING && c1.abs() < NOTHING && c2.abs() < NOTHING {
                continue;
            }
            if k < 0.5 {
                sum.value += c;
                sum.gradient[THETA] += c1;
                sum.curvature[THETA][THETA] -= c2;
                continue;
            }
            thresholds[used] = Threshold::of(k, [c, c1, c2], spare, &curve, q, tuning);
            used += 1;
        }
        for threshold in &thresholds[..used] {
            sum.add(threshold);
        }
        for i in 0..Y {
            for j in 0..i {
                let (here, there) = if i == THETA { (j, i) } else { (i, j) };
                sum.curvature[there][here] = sum.curvature[here][there];
            }
        }
        sum
    }

    fn add(&mut self, threshold: &Threshold) {
        let Threshold {
            terms: [c, c1, c2],
            along,
            narrow,
            z,
        } = *threshold;
        let (below, dense) = cdf_and_pdf(z);
        let dense = dense * narrow;
        let turn = c * z * dense * narrow;
        self.value += c * below;
        self.gradient[THETA] += c1 * below;
        self.curvature[THETA][THETA] -= c2 * below;
        for (i, x) in along.iter().enumerate() {
            self.gradient[i] += x * c * dense;
            self.curvature[i][THETA] -= x * c1 * dense;
            for (j, y) in along.iter().enumerate().take(i + 1) {
                self.curvature[i][j] += x * y * turn;
            }
        }
    }
}
