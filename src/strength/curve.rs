//! The reps curve: how many repetitions to failure go with how heavy a load.
//!
//! Repetitions to failure R are continuous: R = 1 exactly at the day's 1RM, and floor(R) can be done. The curve passes
//! R80 repetitions at 80 % of the 1RM whatever its shape, which keeps endurance and shape apart.

/// The reps curve of one athlete at one endurance. All loads are log(1RM / load).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Curve {
    shape: f64,
    steepness: f64,
    /// Relative change of the steepness with the shape.
    bending: f64,
}

/// Below this the shape counts as exponential; the two forms then agree to 1e-6.
const EXPONENTIAL: f64 = 1e-6;

/// −ln 0.8.
const LOG_AT_80: f64 = 0.223_143_551_314_209_76;

/// Steepness of a curve with R80 = 2, (0.8^−λ − 1) / λ, and its relative change with the shape.
fn steepness_at_80(shape: f64) -> (f64, f64) {
    if shape.abs() < EXPONENTIAL {
        return (LOG_AT_80, 0.0);
    }
    let power = libm::exp(shape * LOG_AT_80);
    let steepness = (power - 1.0) / shape;
    let bending = if shape.abs() < 0.01 {
        0.0
    } else {
        (LOG_AT_80 * power - steepness) / (shape * steepness)
    };
    (steepness, bending)
}

impl Curve {
    /// Change of log(1RM / load) at `reps` with the shape, R80 being kept, where [`Curve::log_ratio`] is that and its slope.
    /// Only for shapes away from 0.
    pub(super) fn by_shape(&self, reps: f64, (log_ratio, slope): (f64, f64)) -> f64 {
        ((1.0 + self.shape * self.bending) * slope * (reps - 1.0) - log_ratio) / self.shape
    }

    /// The curve of `shape` λ for the log endurance l = −log(R80 − 1).
    pub fn new(shape: f64, endurance: f64) -> Self {
        let (at_80, bending) = steepness_at_80(shape);
        Self {
            shape,
            steepness: at_80 * libm::exp(endurance),
            bending,
        }
    }

    /// Seconds at 80 % of the strength that holds for `shortest`, where T = b0 · I^−b1 without that shift.
    pub(super) fn seconds_at_80(b0: f64, b1: f64, shortest: f64) -> f64 {
        shortest + b0 * (libm::pow(0.8, -b1) - 1.0)
    }

    /// log(1RM / load) at which `reps` to failure can be done, and its slope per repetition.
    pub fn log_ratio(&self, reps: f64) -> (f64, f64) {
        let z = self.steepness * (reps - 1.0);
        if self.shape.abs() < EXPONENTIAL {
            return (z, self.steepness);
        }
        let base = (1.0 + self.shape * z).max(1e-9);
        (libm::log(base) / self.shape, self.steepness / base)
    }

    /// Repetitions to failure at log(1RM / load) `log_ratio`; below 1 when the load is above the 1RM.
    pub fn reps(&self, log_ratio: f64) -> f64 {
        let z = if self.shape.abs() < EXPONENTIAL {
            log_ratio
        } else {
            (libm::exp(self.shape * log_ratio) - 1.0) / self.shape
        };
        1.0 + z / self.steepness
    }
}
