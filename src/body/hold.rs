//! How long a hold lasts at a part of one's strength, and what a hold in one shape says of another.

use super::band::Band;
use crate::units::Seconds;

/// Endurance of a joint at rest under load: time = b0 · intensity^b1, seconds. Frey Law & Avin 2010, Ergonomics 53:109–129,
/// Table 2; fitted for intensities from 0.1 to 1, mostly over 0.25. People differ by 25–30 % at the same intensity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Endurance {
    b0: f64,
    b1: f64,
}

/// A hold shorter than this says nothing: the published curve gives even a full effort 15 to 35 s, which no true maximum lasts,
/// so the curve is shifted down to end here. An assumption without source; predictions of short holds hang on it.
pub const SHORTEST: f64 = 3.0;

impl Endurance {
    /// Ankle (Table 2).
    pub const ANKLE: Endurance = Endurance::new(34.71, -2.06);
    /// Trunk (Table 2).
    pub const TRUNK: Endurance = Endurance::new(22.69, -2.27);
    /// Hand and grip (Table 2; R² .748).
    pub const GRIP: Endurance = Endurance::new(33.55, -1.61);
    /// Elbow (Table 2; R² .915). Fits men, about a quarter short for women (Avin 2010).
    pub const ELBOW: Endurance = Endurance::new(17.98, -2.21);
    /// Knee (Table 2).
    pub const KNEE: Endurance = Endurance::new(19.38, -1.88);
    /// Shoulder (Table 2; R² .897).
    pub const SHOULDER: Endurance = Endurance::new(14.86, -1.83);
    /// All joints pooled (Table 2).
    pub const POOLED: Endurance = Endurance::new(21.92, -1.98);

    const fn new(b0: f64, b1: f64) -> Self {
        Self { b0, b1 }
    }

    /// Seconds at `intensity` (0 to 1 of the strongest effort), as published.
    pub fn published(self, intensity: f64) -> f64 {
        self.b0 * intensity.powf(self.b1)
    }

    /// Seconds at `intensity` on the shifted curve; none above 1, where the shape can't be held.
    pub fn time(self, intensity: f64) -> Option<f64> {
        (intensity > 0.0 && intensity <= 1.0).then(|| SHORTEST + self.b0 * (intensity.powf(self.b1) - 1.0))
    }

    /// The intensity at which a hold lasts so many seconds on the shifted curve; a shorter hold than [`SHORTEST`] counts as 1.
    pub fn intensity(self, seconds: f64) -> f64 {
        if seconds <= SHORTEST {
            1.0
        } else {
            ((seconds - SHORTEST) / self.b0 + 1.0).powf(1.0 / self.b1)
        }
    }
}

/// How steeply intensity follows the lever from shape to shape, until two shapes are logged: an assumption from common practice.
/// 1 is the bare lever, too hopeful; 1 to 3 is the range.
pub const STEEPNESS: Band = Band::new(2.0, 1.0, 3.0);

/// Spread of endurance between people at equal intensity, half of it each side: 25–30 % coefficient of variation (order of
/// magnitude published: 180 ± 51 s at 20 % of the knee's maximum).
pub const ENDURANCE_SPREAD: f64 = 0.28;

/// What a hold in one shape says of another: seconds, none where it can't be held yet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foreseen {
    /// With the central steepness.
    pub seconds: Option<f64>,
    /// At worst; none: perhaps not at all.
    pub low: Option<f64>,
    /// At best; none: not at all even then.
    pub high: Option<f64>,
}

/// How long a shape of demand `other` can be held by someone who holds one of demand `known` for `held`. Show the range, never
/// the single second.
pub fn at_another_shape(held: Seconds, known: f64, other: f64, steepness: Band) -> Foreseen {
    let intensity = Endurance::SHOULDER.intensity(held.value());
    let time = |power: f64| Endurance::SHOULDER.time(intensity * (other / known).powf(power));
    let ends = [time(steepness.low()), time(steepness.high())];
    let least = |a: Option<f64>, b: Option<f64>| Some(a?.min(b?));
    let most = |a: Option<f64>, b: Option<f64>| a.into_iter().chain(b).reduce(f64::max);
    Foreseen {
        seconds: time(steepness.centre()),
        low: least(ends[0], ends[1]).map(|seconds| seconds * (1.0 - ENDURANCE_SPREAD)),
        high: most(ends[0], ends[1]).map(|seconds| seconds * (1.0 + ENDURANCE_SPREAD)),
    }
}

/// The athlete's own steepness from the best holds in two shapes; none where the demands are equal or a hold is too short.
pub fn steepness(one: (Seconds, f64), other: (Seconds, f64)) -> Option<f64> {
    let intensity =
        |held: Seconds| (held.value() >= SHORTEST).then(|| Endurance::SHOULDER.intensity(held.value()));
    let fitted = (intensity(one.0)? / intensity(other.0)?).ln() / (one.1 / other.1).ln();
    fitted.is_finite().then_some(fitted)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn held(seconds: f64) -> Seconds {
        Seconds::try_from(seconds).unwrap()
    }

    #[test]
    fn the_published_curves_give_the_published_times() {
        // Frey Law & Avin 2010, Ergonomics 53:109–129: times at 30, 50, 70 and 90 % from the power model, to a tenth of a second.
        let table = [
            (Endurance::ANKLE, [414.6, 144.7, 72.4, 43.1]),
            (Endurance::TRUNK, [349.0, 109.4, 51.0, 28.8]),
            (Endurance::GRIP, [233.1, 102.4, 59.6, 39.8]),
            (Endurance::ELBOW, [257.2, 83.2, 39.5, 22.7]),
            (Endurance::KNEE, [186.4, 71.3, 37.9, 23.6]),
            (Endurance::SHOULDER, [134.6, 52.8, 28.5, 18.0]),
        ];
        for (curve, times) in table {
            for (intensity, seconds) in [0.3, 0.5, 0.7, 0.9].into_iter().zip(times) {
                let computed = curve.published(intensity);
                assert!((computed - seconds).abs() < 0.06, "{computed} is not {seconds}");
            }
        }
    }

    #[test]
    fn time_and_intensity_go_round() {
        for curve in [Endurance::SHOULDER, Endurance::ELBOW, Endurance::GRIP] {
            for seconds in [3.0, 4.5, 10.0, 60.0, 180.0] {
                let back = curve.time(curve.intensity(seconds)).unwrap();
                assert!((back - seconds).abs() < 1e-9);
            }
        }
        assert_eq!(Endurance::SHOULDER.time(1.01), None);
    }

    #[test]
    fn bare_lever_physics_turns_a_twenty_second_advanced_tuck_into_eight_seconds_of_full_lever() {
        // Independent computation: 7.7 s with steepness 1 and the men's advanced tuck at .766 of the full shape.
        let bare = at_another_shape(held(20.0), 0.766, 1.0, Band::exactly(1.0));
        assert!((bare.seconds.unwrap() - 7.7).abs() < 0.05);
        let usual = at_another_shape(held(20.0), 0.766, 1.0, STEEPNESS);
        assert_eq!(
            usual.seconds, None,
            "with the usual steepness it is not there yet"
        );
        assert_eq!(usual.low, None);
        assert!(usual.high.unwrap() > 7.7);
    }

    #[test]
    fn short_holds_answer_most_to_the_lever() {
        // Independent computation: d ln T / d ln demand at steepness 1. At 10 s they print −3.9, where the derivative of
        // their own curve, b1 (T − 3 + b0) ÷ T, is −4.0.
        for (seconds, slope) in [(4.5, -6.7), (6.0, -5.4), (10.0, -4.0), (26.0, -2.7)] {
            let step = 1e-6;
            let more = at_another_shape(held(seconds), 1.0, 1.0 + step, Band::exactly(1.0));
            let computed = (more.seconds.unwrap() / seconds).ln() / (1.0f64 + step).ln();
            assert!((computed - slope).abs() < 0.06, "{computed} is not {slope}");
        }
    }

    #[test]
    fn two_logged_shapes_give_back_the_steepness_that_made_them() {
        let longer = at_another_shape(held(8.0), 1.0, 0.766, Band::exactly(1.7));
        let fitted = steepness((held(longer.seconds.unwrap()), 0.766), (held(8.0), 1.0)).unwrap();
        assert!((fitted - 1.7).abs() < 1e-9);
        assert_eq!(steepness((held(8.0), 1.0), (held(9.0), 1.0)), None);
        assert_eq!(steepness((held(2.0), 0.8), (held(9.0), 1.0)), None);
    }

    #[test]
    fn one_hand_takes_twice_the_intensity_of_two() {
        // Independent computation: 103 s with both hands on the published grip curve, 72 s on the shifted one.
        assert!((Endurance::GRIP.published(0.5) - 102.4).abs() < 0.1);
        assert!((Endurance::GRIP.time(0.5).unwrap() - 72.0).abs() < 0.2);
    }
}
