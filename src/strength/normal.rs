//! The normal distribution: the same bits on every machine, since `libm` is plain code.

/// 1 / √(2π).
const PEAK: f64 = 0.398_942_280_401_432_7;

/// Density of the standard normal.
pub(super) fn pdf(z: f64) -> f64 {
    PEAK * libm::exp(-0.5 * z * z)
}

/// Distribution function of the standard normal. Beyond ±8.5 it is 0 or 1 to 1e-17.
pub(super) fn cdf(z: f64) -> f64 {
    if z > 8.5 {
        1.0
    } else if z < -8.5 {
        0.0
    } else {
        0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2)
    }
}
