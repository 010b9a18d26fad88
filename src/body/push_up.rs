//! Push-ups: the part of bodyweight in both hands, for any height of hands or feet, on toes or knees.
//!
//! Measured values hold where they exist; between them the rigid-body model gives the shape of the curve. Values at rest:
//! moving peaks reach 0.80 (women) to 0.98 (men) of bodyweight (Mier 2014).

use super::band::{Band, Status};
use super::quantity::Length;
use super::segments::Segments;

/// How hands and feet stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stand {
    /// Height of the hands over the height of the feet (or knees).
    pub hands_over_feet: Length,
    /// What the body turns on.
    pub pivot: Pivot,
}

/// What the body turns on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pivot {
    /// The toes.
    Toes,
    /// The knees, shanks lying on the floor.
    Knees,
}

/// Which way straight arms point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arms {
    /// Straight down.
    Vertical,
    /// At right angles to the body.
    Square,
}

/// Stature that the heights of ankle and knee over the ground and of the palm belong to, m (de Leva's men).
const REFERENCE_HEIGHT: f64 = 1.741;
/// Ankle over the ground on the toes, m: an assumption without source.
const ANKLE_OVER_TOES: f64 = 0.12;
/// Knee over the ground, kneeling, m: an assumption without source.
const KNEE_OVER_GROUND: f64 = 0.05;
/// From the wrist's centre to the ground under a flat palm, m: an assumption without source.
const PALM: f64 = 0.02;
/// At the bottom the hands stand so far footward of the shoulders, m. Chosen after seeing the bottom values of Suprak and Mier
/// (0 would give 0.70 where 0.70–0.75 was measured), so it describes and does not predict.
const HANDS_AT_BOTTOM: f64 = 0.10;
/// Data sets differ by .05 for the same exercise; the model's errors are of the same size.
const MEASURED_SPREAD: f64 = 0.05;

/// Hands' share, measured by Ebben et al. 2011, JSCR 25:2891–2894, mean while moving (23 subjects): height of hands over feet in
/// m, share. The ±0.3048 m values are read in secondary texts only.
pub const EBBEN: [(f64, f64); 5] = [
    (-0.6096, 0.74),
    (-0.3048, 0.70),
    (0.0, 0.64),
    (0.3048, 0.55),
    (0.6096, 0.41),
];
/// On the knees, the same study (value from secondary texts).
pub const EBBEN_KNEES: f64 = 0.49;

/// Lengths and masses from the pivot to the shoulder, for a height.
struct Beam {
    /// Pivot to shoulder, m.
    length: f64,
    /// Mass fraction × distance from the pivot of everything but the arms, m.
    moment: f64,
    /// Pivot over the ground, m.
    pivot_height: f64,
    /// Shoulder to the ground under the palm, m.
    arm: f64,
    /// Mass fraction of both arms.
    arms: f64,
    /// Centre of the arms, fraction of `arm`.
    arms_centre: f64,
}

impl Beam {
    fn new(segments: &Segments, height: Length, pivot: Pivot) -> Self {
        let height = height.metres();
        let scale = height / REFERENCE_HEIGHT;
        let (shank, pivot_height) = match pivot {
            Pivot::Toes => (segments.shank.length, ANKLE_OVER_TOES),
            Pivot::Knees => (0.0, KNEE_OVER_GROUND),
        };
        let hip = shank + segments.thigh.length;
        let shoulder = hip + segments.trunk.length;
        let shanks = match pivot {
            Pivot::Toes => segments.shank.mass * shank * (1.0 - segments.shank.centre),
            Pivot::Knees => 0.0,
        };
        let thighs = segments.thigh.mass * (hip - segments.thigh.length * segments.thigh.centre);
        let trunk = segments.trunk.mass * (shoulder - segments.trunk.length * segments.trunk.centre);
        let head = segments.head_mass * (shoulder + segments.head_beyond_shoulder);
        let palm = PALM / REFERENCE_HEIGHT;
        let arm = segments.arm_to_wrist() + palm;
        Self {
            length: shoulder * height,
            moment: (2.0 * (shanks + thighs) + trunk + head) * height,
            pivot_height: pivot_height * scale,
            arm: arm * height,
            arms: segments.arms_mass(),
            arms_centre: segments.arms_centre(arm),
        }
    }

    /// Share in the hands with straight arms.
    fn top(&self, hands_over_feet: f64, arms: Arms) -> f64 {
        let drop = hands_over_feet - self.pivot_height;
        // drop = length·sin(incline) − arm·cos(tilt); solved in closed form for either way that the arms point.
        let incline = match arms {
            Arms::Vertical => ((drop + self.arm) / self.length).clamp(-1.0, 1.0).asin(),
            Arms::Square => {
                let sum = self.length.hypot(self.arm);
                (drop / sum).clamp(-1.0, 1.0).asin() + self.arm.atan2(self.length)
            }
        };
        let tilt = match arms {
            Arms::Vertical => 0.0,
            Arms::Square => incline,
        };
        let shoulder = self.length * incline.cos();
        let centre =
            self.moment * incline.cos() + self.arms * (shoulder + self.arms_centre * self.arm * tilt.sin());
        // A hand pushing along a tilted arm from a box also pushes the body back toward the feet.
        centre / (shoulder + self.arm * tilt.sin() + hands_over_feet * tilt.tan())
    }

    /// Share in the hands at the bottom, body level.
    fn bottom(&self) -> f64 {
        let carried = self.moment + self.arms * (self.length - HANDS_AT_BOTTOM / 2.0);
        carried / (self.length - HANDS_AT_BOTTOM)
    }
}

/// The model's share with straight arms.
pub fn model(segments: &Segments, height: Length, stand: Stand, arms: Arms) -> f64 {
    Beam::new(segments, height, stand.pivot).top(stand.hands_over_feet.metres(), arms)
}

/// The model's share at the bottom of a push-up on the floor.
pub fn model_bottom(segments: &Segments, height: Length, pivot: Pivot) -> f64 {
    Beam::new(segments, height, pivot).bottom()
}

/// The share in both hands: measured where measured, else the model shifted to meet the measured values on both sides; beyond
/// them the nearest shift.
pub fn share(segments: &Segments, height: Length, stand: Stand) -> (Band, Status) {
    let beam = Beam::new(segments, height, stand.pivot);
    let over = stand.hands_over_feet.metres();
    let share = match stand.pivot {
        Pivot::Knees if over == 0.0 => EBBEN_KNEES,
        Pivot::Knees => beam.top(over, Arms::Square) + EBBEN_KNEES - beam.top(0.0, Arms::Square),
        Pivot::Toes => shifted(&EBBEN, over, |height| beam.top(height, Arms::Square)),
    };
    let measured = match stand.pivot {
        Pivot::Knees => over == 0.0,
        Pivot::Toes => EBBEN.iter().any(|(height, _)| *height == over),
    };
    let status = if measured {
        Status::Published
    } else {
        Status::Derived
    };
    (spread(share, MEASURED_SPREAD), status)
}

/// A share from 0.05 to 1 with so much to each side; neither end reaches nothing.
pub(super) fn spread(share: f64, spread: f64) -> Band {
    let share = share.clamp(0.05, 1.0);
    Band::new(share, (share - spread).max(share / 2.0), share + spread)
}

/// `model` at `x`, shifted by what was measured beside it; the shift runs linearly from one measured point to the next.
pub(super) fn shifted(measured: &[(f64, f64)], x: f64, model: impl Fn(f64) -> f64) -> f64 {
    let shift = |point: &(f64, f64)| point.1 - model(point.0);
    let below = measured.iter().rev().find(|point| point.0 <= x);
    let above = measured.iter().find(|point| point.0 >= x);
    match (below, above) {
        (Some(low), Some(high)) if low.0 == high.0 => low.1,
        (Some(low), Some(high)) => {
            let part = (x - low.0) / (high.0 - low.0);
            model(x) + shift(low) * (1.0 - part) + shift(high) * part
        }
        (Some(end), None) | (None, Some(end)) => model(x) + shift(end),
        (None, None) => model(x),
    }
}
