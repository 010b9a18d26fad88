//! Straight-arm holds: moment at the shoulders, lean of the arms, moment at the elbows.
//!
//! Front lever, back lever and planche have the same moment at the same shape: the hands carry only a vertical resultant, so
//! the weight of everything but the arms is all that the shoulders resist. They differ in which muscles do it, so a strength
//! in one says nothing of the others. Origin: the shoulders; x runs along the trunk toward the feet, trunk level. Rigid
//! segments at rest: no gliding shoulder blades, no angle-dependent strength.

use super::posture::{Leg, Posture};
use super::quantity::{Angle, GRAVITY, Length, Moment};
use super::segments::{ANKLE_ALONG_FOOT, Segments};
use crate::units::Mass;

/// Load carried beside the body's own: ankle weights, a belt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extra {
    /// At the ankles, both together.
    pub ankles: Mass,
    /// At the belt; below zero: a hand or band that lifts there.
    pub waist: Mass,
}

impl Extra {
    /// Nothing.
    pub const NONE: Extra = Extra {
        ankles: Mass::ZERO,
        waist: Mass::ZERO,
    };

    fn kg(self) -> f64 {
        self.ankles.kg() + self.waist.kg()
    }
}

/// A shape held by a body of given height and mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lever<'a> {
    segments: &'a Segments,
    posture: Posture,
    height: f64,
    mass: f64,
    extra: Extra,
}

/// Shoulder moment ÷ (weight × height): what the shape alone asks. 0.238 for the full shape of a man, 0.223 of a woman.
pub fn shape_number(segments: &Segments, posture: &Posture) -> f64 {
    let trunk = &segments.trunk;
    let legs: f64 = posture
        .legs
        .iter()
        .map(|leg| leg_moment(segments, posture, leg).0)
        .sum();
    let upper = trunk.mass * trunk.centre * trunk.length * posture.chord
        - segments.head_mass * segments.head_beyond_shoulder;
    (upper + legs) * posture.tilt.cos()
}

/// Mass × distance of one leg, and where its ankle is.
fn leg_moment(segments: &Segments, posture: &Posture, leg: &Leg) -> (f64, f64) {
    let spread = posture.apart.cos();
    let thigh = leg.hip.cos() * spread;
    let shank = (leg.hip.degrees() - leg.knee.degrees()).to_radians().cos() * spread;
    let hip = segments.trunk.length * posture.chord;
    let knee = hip + segments.thigh.length * thigh;
    let ankle = knee + segments.shank.length * shank;
    let foot = ankle + (segments.foot.centre - ANKLE_ALONG_FOOT) * segments.foot.length * shank;
    let moment = segments.thigh.mass * (hip + segments.thigh.centre * segments.thigh.length * thigh)
        + segments.shank.mass * (knee + segments.shank.centre * segments.shank.length * shank)
        + segments.foot.mass * foot;
    (moment, ankle)
}

impl<'a> Lever<'a> {
    /// `posture` held by a body of these segments, `height` and `mass`.
    pub fn new(segments: &'a Segments, posture: Posture, height: Length, mass: Mass) -> Self {
        Self {
            segments,
            posture,
            height: height.metres(),
            mass: mass.kg(),
            extra: Extra::NONE,
        }
    }

    /// The same with load at ankles and belt.
    pub fn with(self, extra: Extra) -> Self {
        Self { extra, ..self }
    }

    /// Moment at both shoulders together, from the body's side.
    pub fn shoulder_moment(&self) -> Moment {
        let ankles: f64 = self
            .posture
            .legs
            .iter()
            .map(|leg| leg_moment(self.segments, &self.posture, leg).1 / 2.0)
            .sum();
        let belt = self.segments.waist * self.posture.chord;
        let extra = self.extra.ankles.kg() * ankles + self.extra.waist.kg() * belt;
        let body = self.mass * shape_number(self.segments, &self.posture);
        Moment::from_newton_metres(GRAVITY * self.height * (body + extra * self.posture.tilt.cos()))
    }

    /// How far footward of the shoulders the hands are, in balance: below a bar, or over the floor on parallettes.
    pub fn hands(&self) -> Length {
        let carried = self.weight() - self.arms_centre() * self.arms_weight();
        Length::from_metres(self.shoulder_moment().newton_metres() / carried)
    }

    /// Lean of the arms from the vertical, gripping; none where no lean of the arms can balance the load.
    pub fn lean(&self) -> Option<Angle> {
        let arm = self.segments.arm_to_grip() * self.height;
        lean_of(self.hands().metres() / arm)
    }

    /// Lean of the arms from the vertical on flat palms, the wrist so far footward of the pressure under the hand (0: over it;
    /// more with the fingers toward the head).
    pub fn lean_on_palms(&self, wrist_footward: Length) -> Option<Angle> {
        let arm = self.segments.arm_to_wrist() * self.height;
        let per_metre =
            self.segments.arms_moment_without_hands() / self.segments.arm_to_wrist() * self.mass * GRAVITY;
        let hands = 2.0 * self.segments.hand_mass * self.mass * GRAVITY;
        let away = wrist_footward.metres();
        let pressure =
            (self.shoulder_moment().newton_metres() + per_metre * away) / (self.weight() - per_metre - hands);
        lean_of((pressure + away) / arm)
    }

    /// Moment at one straight elbow, gripping. Planche and back lever press it toward over-extension, the front lever bends it.
    pub fn elbow_moment(&self) -> Option<Moment> {
        let sin = self.lean()?.sin();
        let segments = self.segments;
        let hands = self.hands().metres();
        let elbow = segments.upper_arm.length * self.height * sin;
        let forearm = elbow + segments.forearm.centre * segments.forearm.length * self.height * sin;
        let weight_of = |fraction: f64| 2.0 * fraction * self.mass * GRAVITY;
        let both = self.weight() * (hands - elbow)
            - weight_of(segments.forearm.mass) * (forearm - elbow)
            - weight_of(segments.hand_mass) * (hands - elbow);
        Some(Moment::from_newton_metres(both / 2.0))
    }

    /// The mass in both hands that asks the same of the shoulders with the arms held out level.
    pub fn same_in_hands(&self) -> Mass {
        let arm = self.segments.arm_to_grip() * self.height;
        let arms = self.arms_centre() * self.arms_weight() / GRAVITY;
        Mass::from_kg(self.shoulder_moment().newton_metres() / (GRAVITY * arm) - arms)
    }

    fn weight(&self) -> f64 {
        (self.mass + self.extra.kg()) * GRAVITY
    }

    fn arms_weight(&self) -> f64 {
        self.segments.arms_mass() * self.mass * GRAVITY
    }

    fn arms_centre(&self) -> f64 {
        self.segments.arms_centre(self.segments.arm_to_grip())
    }
}

fn lean_of(sine: f64) -> Option<Angle> {
    (-1.0..=1.0)
        .contains(&sine)
        .then(|| Angle::from_radians(sine.asin()))
}

/// Shoulder moment of a planche lean, feet on the floor and arms so far past the vertical, as a part of the full planche's:
/// 0 upright over the hands, 1 where the feet lift by themselves. Straight body, level, turning over the toes.
pub fn planche_lean(segments: &Segments, lean: Angle) -> f64 {
    let full = shape_number(segments, &Posture::FULL);
    let toes = segments.trunk.length + segments.hip_to_ankle();
    let arms = segments.arms_mass();
    let centre = segments.arms_centre(segments.arm_to_grip());
    let hands = segments.arm_to_grip() * lean.sin();
    let body_about_toes = (1.0 - arms) * toes - full;
    let carried = (body_about_toes + arms * (toes - centre * hands)) / (toes - hands);
    (carried - centre * arms) * hands / full
}

/// The lean at which a planche lean asks `part` (0 to 1) of the full planche's moment.
pub fn lean_for(segments: &Segments, part: f64) -> Angle {
    let hands = shape_number(segments, &Posture::FULL)
        / (1.0 - segments.arms_mass() * segments.arms_centre(segments.arm_to_grip()));
    let mut low = 0.0;
    let mut high = (hands / segments.arm_to_grip()).min(1.0).asin().to_degrees();
    // 40 halvings of at most 90° leave less than a billionth of a degree.
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if planche_lean(segments, Angle::from_degrees(middle)) < part {
            low = middle;
        } else {
            high = middle;
        }
    }
    Angle::from_degrees(f64::midpoint(low, high))
}
