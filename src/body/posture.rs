//! Body shapes of straight-arm holds: where hips, knees and legs are.

use super::quantity::Angle;
use crate::catalogue::Shape;

/// One leg: how far hip and knee are bent; 0° is straight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leg {
    /// Hip flexion.
    pub hip: Angle,
    /// Knee flexion.
    pub knee: Angle,
}

/// A shape of trunk and legs, arms apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Posture {
    /// Straight distance from shoulder to hip over the flat trunk's: 1 flat, less when the back is round.
    pub chord: f64,
    /// Both legs.
    pub legs: [Leg; 2],
    /// How far each leg is spread from the middle.
    pub apart: Angle,
    /// How far the line of the trunk is off the horizontal.
    pub tilt: Angle,
}

/// A rounded back shortens the trunk to this part. An assumption without source; 0.80 to 1.00 is the honest range.
const ROUNDED_CHORD: f64 = 0.90;

/// A leg tucked to the chest: hip 130°, knee 140°. An assumption without source.
const TUCKED: Leg = leg(130.0, 140.0);
/// A leg at 90° in hip and knee: the shape's definition.
const SQUARE: Leg = leg(90.0, 90.0);
/// A straight leg: the shape's definition.
const STRAIGHT: Leg = leg(0.0, 0.0);

const fn leg(hip: f64, knee: f64) -> Leg {
    Leg {
        hip: Angle::from_degrees(hip),
        knee: Angle::from_degrees(knee),
    }
}

const fn flat(one: Leg, other: Leg) -> Posture {
    Posture {
        chord: 1.0,
        legs: [one, other],
        apart: Angle::ZERO,
        tilt: Angle::ZERO,
    }
}

impl Posture {
    /// Knees to the chest, back round.
    pub const TUCK: Posture = flat(TUCKED, TUCKED).rounded(ROUNDED_CHORD);
    /// Knees to the chest, back flat.
    pub const FLAT_TUCK: Posture = flat(TUCKED, TUCKED);
    /// Hips and knees at 90°, back flat.
    pub const ADVANCED_TUCK: Posture = flat(SQUARE, SQUARE);
    /// One leg straight, the other tucked, back flat.
    pub const ONE_LEG: Posture = flat(STRAIGHT, TUCKED);
    /// One leg straight, the other at 90° in hip and knee.
    pub const ONE_LEG_SQUARE: Posture = flat(STRAIGHT, SQUARE);
    /// Legs straight, 45° to each side.
    pub const STRADDLE: Posture = Posture::straddle(45.0);
    /// Hips straight, knees at 90°.
    pub const HALF_LAY: Posture = flat(leg(0.0, 90.0), leg(0.0, 90.0));
    /// Legs straight and together.
    pub const FULL: Posture = flat(STRAIGHT, STRAIGHT);

    /// Legs straight, so many degrees to each side.
    pub const fn straddle(degrees_each_side: f64) -> Posture {
        Posture {
            apart: Angle::from_degrees(degrees_each_side),
            ..flat(STRAIGHT, STRAIGHT)
        }
    }

    /// The same with the trunk's chord shortened to `chord`.
    pub const fn rounded(self, chord: f64) -> Posture {
        Posture { chord, ..self }
    }

    /// The same with the trunk's line so far off the horizontal.
    pub const fn tilted(self, degrees: f64) -> Posture {
        Posture {
            tilt: Angle::from_degrees(degrees),
            ..self
        }
    }

    /// The posture that a ladder's shape stands for.
    pub const fn of(shape: Shape) -> Posture {
        match shape {
            Shape::Tuck => Posture::TUCK,
            Shape::AdvancedTuck => Posture::ADVANCED_TUCK,
            Shape::OneLeg => Posture::ONE_LEG,
            Shape::Straddle => Posture::STRADDLE,
            Shape::Level => Posture::FULL,
        }
    }

    /// The lightest and the heaviest body shape that still passes for this one; assumptions without source, a coach's eye:
    /// chord 0.80 to 1.00, hips 80° to 100°, the tucked leg a little tighter or at 90°, 60° to 30° apart, up to 20° of sag.
    pub const fn limits(shape: Shape) -> [Posture; 2] {
        match shape {
            Shape::Tuck => [Posture::TUCK.rounded(0.80), Posture::FLAT_TUCK],
            Shape::AdvancedTuck => [
                flat(leg(100.0, 90.0), leg(100.0, 90.0)),
                flat(leg(80.0, 90.0), leg(80.0, 90.0)),
            ],
            Shape::OneLeg => [flat(STRAIGHT, leg(135.0, 145.0)), Posture::ONE_LEG_SQUARE],
            Shape::Straddle => [Posture::straddle(60.0), Posture::straddle(30.0)],
            Shape::Level => [Posture::FULL.tilted(20.0), Posture::FULL],
        }
    }
}
