//! Rows on straps: the part of bodyweight in both hands by how far the body leans from the upright.

use super::band::{Band, Status};
use super::push_up::{shifted, spread};
use super::quantity::{Angle, Length};
use super::segments::Segments;

/// Part of bodyweight in the straps at rest, arms straight, feet under the anchor: Melrose & Dawes 2015, J Athl Enhancement
/// (40 subjects); lean from the vertical in degrees, share.
pub const MELROSE_DAWES: [(f64, f64); 4] = [(30.0, 0.3744), (45.0, 0.5288), (60.0, 0.6808), (75.0, 0.7938)];

/// Height of the straps' anchor over the feet in the model, m: an assumption without source, the study's text gives none here.
/// 1.8 would fit its values a little better, 2.5 a little worse; the measured values hold where there are any.
const ANCHOR: f64 = 2.0;

/// Twice the largest standard deviation that was printed (2.14 %), and a little for other gear: an assumption.
const SPREAD: f64 = 0.05;

/// The model's share: a straight body turning at the heels, arms and straps in one line to an anchor over the feet.
pub fn model(segments: &Segments, height: Length, lean: Angle) -> f64 {
    let shoulder = (1.0 - segments.shoulder_below_vertex) * height.metres();
    // The arms point at the anchor, so their mass hangs about at the shoulders.
    let arms_hanging =
        segments.arms_mass() * segments.arms_centre(segments.arm_to_grip()) * segments.arm_to_grip();
    let centre = (segments.standing_centre() + arms_hanging) * height.metres();
    let line = (shoulder * lean.sin()).hypot(ANCHOR - shoulder * lean.cos());
    centre * line / (shoulder * ANCHOR)
}

/// The share in both hands: measured at 30°, 45°, 60°, 75°; between and beyond, the model shifted to meet them.
pub fn share(segments: &Segments, height: Length, lean: Angle) -> (Band, Status) {
    let degrees = lean.degrees();
    let share = shifted(&MELROSE_DAWES, degrees, |angle| {
        model(segments, height, Angle::from_degrees(angle))
    });
    let measured = MELROSE_DAWES.iter().any(|(angle, _)| *angle == degrees);
    let status = if measured {
        Status::Published
    } else {
        Status::Derived
    };
    (spread(share, SPREAD), status)
}
