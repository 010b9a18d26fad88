//! The normal distribution: the same bits on every machine, since `libm` is plain code.
//!
//! A set asks for it up to a hundred times, so that it comes from a short table and the Taylor series around the nearest
//! entry: within 1e-12 of `libm::erfc`, at a fraction of its cost.

use std::sync::LazyLock;

/// 1 / √(2π).
const PEAK: f64 = 0.398_942_280_401_432_7;
/// Entries for one sd.
const DENSITY: f64 = 64.0;
/// Entries: from 0 to 8.5 sds.
const ENTRIES: usize = 545;
/// Beyond it the distribution function is 0 or 1 to 1e-17.
const FAR: f64 = 8.5;

/// Chance of more than so many sds, and the density there.
static TABLE: LazyLock<[(f64, f64); ENTRIES]> = LazyLock::new(|| {
    let mut z = -1.0 / DENSITY;
    std::array::from_fn(|_| {
        z += 1.0 / DENSITY;
        (
            0.5 * libm::erfc(z * std::f64::consts::FRAC_1_SQRT_2),
            PEAK * libm::exp(-0.5 * z * z),
        )
    })
});

/// Distribution function and density of the standard normal.
pub(super) fn cdf_and_pdf(z: f64) -> (f64, f64) {
    let (up, far) = (z > 0.0, z.abs());
    if far >= FAR || far.is_nan() {
        return (f64::from(u8::from(up)), 0.0);
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 544
    let nearest = (far * DENSITY + 0.5) as u16;
    let Some((above, dense)) = TABLE.get(usize::from(nearest)) else {
        return (f64::from(u8::from(up)), 0.0);
    };
    let z0 = f64::from(nearest) * (1.0 / DENSITY);
    let d = far - z0;
    let (s, d2) = (z0 * z0, d * d);
    // Short sums side by side instead of one long chain: each step of a chain waits for the one before.
    let falls = d
        * ((1.0 - z0 * (0.5 * d))
            + d2 * ((s - 1.0) * (1.0 / 6.0)
                + d * (z0 * (3.0 - s) * (1.0 / 24.0))
                + d2 * ((s * (s - 6.0) + 3.0) * (1.0 / 120.0))));
    let above = above - dense * falls;
    let u = -d * (z0 + 0.5 * d);
    let u2 = u * u;
    let here = (1.0 + u) + u2 * ((0.5 + u * (1.0 / 6.0)) + u2 * (1.0 / 24.0 + u * (1.0 / 120.0)));
    (if up { 1.0 - above } else { above }, dense * here)
}

/// Distribution function of the standard normal.
pub(super) fn cdf(z: f64) -> f64 {
    cdf_and_pdf(z).0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_the_normal_distribution() {
        // Reference: erfc of the C library's port `libm`, and the density's closed form.
        for n in -9000..=9000 {
            let z = f64::from(n) / 1000.0;
            let (cdf, pdf) = cdf_and_pdf(z);
            let exact = 0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2);
            assert!((cdf - exact).abs() < 1e-12, "{z}: {cdf} is not {exact}");
            let exact = PEAK * libm::exp(-0.5 * z * z);
            assert!((pdf - exact).abs() < 1e-10, "{z}: {pdf} is not {exact}");
        }
    }

    #[test]
    fn it_only_rises_and_its_sides_add_up_to_one() {
        let mut last = 0.0;
        for n in -85_000..=85_000 {
            let z = f64::from(n) / 10_000.0;
            assert!(cdf(z) >= last - 1e-15, "{z}");
            assert!((cdf(z) + cdf(-z) - 1.0).abs() < 1e-15, "{z}");
            last = cdf(z);
        }
    }
}
