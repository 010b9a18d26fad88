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

/// What the signed sum's terms need, computed before the first is added: so logarithms, roots and divisions overlap, which
/// saves a quarter of the time.
struct Thresholds {
    /// log(1RM / load) there.
    ratio: [f64; TERMS],
    /// Slopes of what is spare in endurance and shape.
    by_endurance: [f64; TERMS],
    by_shape: [f64; TERMS],
    /// 1 / sd of what is spare.
    narrow: [f64; TERMS],
}

impl Thresholds {
    fn of(first: f64, unit: f64, count: usize, curve: &Curve, q: &Square, tuning: &Tuning) -> Self {
        let bends = q[BEND][BEND] > 0.0;
        let mut t = Self {
            ratio: [0.0; TERMS],
            by_endurance: [0.0; TERMS],
            by_shape: [0.0; TERMS],
            narrow: [0.0; TERMS],
        };
        let mut reps = first;
        for j in 0..count {
            let (ratio, slope) = curve.log_ratio(reps);
            t.ratio[j] = ratio;
            t.by_endurance[j] = -slope * (reps - 1.0);
            t.by_shape[j] = if bends {
                -curve.by_shape(reps, (ratio, slope))
            } else {
                0.0
            };
            reps += unit;
        }
        for j in 0..count {
            let (a, d) = (t.by_endurance[j], t.by_shape[j]);
            let cv = tuning.reps_cv * a;
            let var = tuning.set_sd * tuning.set_sd
                + cv * cv
                + (q[MOMENT][MOMENT] + a * q[MOMENT][CURVE] + d * q[MOMENT][BEND])
                + a * (q[CURVE][MOMENT] + a * q[CURVE][CURVE] + d * q[CURVE][BEND])
                + d * (q[BEND][MOMENT] + a * q[BEND][CURVE] + d * q[BEND][BEND]);
            t.narrow[j] = 1.0 / var.max(1e-12).sqrt();
        }
        t
    }
}

impl Likelihood {
    /// Of a set, where `q` is the covariance of the numbers it depends on.
    pub(super) fn of(state: &State, set: &Observed, q: &Square, terms: &Terms, tuning: &Tuning) -> Self {
        let curve = Curve::new(state.mean[SHAPE], state.mean[ENDURANCE]);
        let spare = set.spare(state);
        let thresholds = Thresholds::of(set.reps, set.unit, terms.count, &curve, q, tuning);
        let mut sum = Self {
            value: 0.0,
            gradient: [0.0; Y],
            curvature: [[0.0; Y]; Y],
        };
        for n in 0..terms.count {
            let (c, c1, c2) = (terms.value[n], terms.slope[n], terms.bend[n]);
            if c.abs() < NOTHING && c1.abs() < NOTHING && c2.abs() < NOTHING {
                continue;
            }
            if n == 0 && set.reps < 0.5 {
                sum.value += c;
                sum.gradient[THETA] += c1;
                sum.curvature[THETA][THETA] -= c2;
                continue;
            }
            let along = [1.0, thresholds.by_endurance[n], thresholds.by_shape[n]];
            let narrow = thresholds.narrow[n];
            let z = (spare - thresholds.ratio[n]) * narrow;
            let (below, dense) = cdf_and_pdf(z);
            let dense = dense * narrow;
            let turn = c * z * dense * narrow;
            sum.value += c * below;
            sum.gradient[THETA] += c1 * below;
            sum.curvature[THETA][THETA] -= c2 * below;
            for (i, x) in along.iter().enumerate() {
                sum.gradient[i] += x * c * dense;
                sum.curvature[i][THETA] -= x * c1 * dense;
                for (j, y) in along.iter().enumerate().take(i + 1) {
                    sum.curvature[i][j] += x * y * turn;
                }
            }
        }
        for i in 0..Y {
            for j in 0..i {
                let (here, there) = if i == THETA { (j, i) } else { (i, j) };
                sum.curvature[there][here] = sum.curvature[here][there];
            }
        }
        sum
    }
}
