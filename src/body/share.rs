//! The share of a body that a movement lifts, in its plain form and with a rung's help.

use super::band::{Band, Status};
use super::push_up::{self, Pivot, Stand};
use super::quantity::{Angle, Length};
use super::segments::Segments;
use super::{Body, row};
use crate::catalogue::{BodyShare, Help, Movement, Pattern};

/// The part of bodyweight that both hands (or the legs) carry at `movement` with `help`; none where no system load is defined.
pub fn hand_share(movement: &Movement, help: &Help, body: &Body) -> Option<(Band, Status)> {
    let segments = body.segments();
    match movement.share {
        BodyShare::Whole => Some((Band::exactly(1.0), Status::Published)),
        BodyShare::Outside => Some((Band::exactly(0.0), Status::Derived)),
        BodyShare::Lever | BodyShare::Unknown => None,
        BodyShare::Fraction(_)
            if let (Help::Lean(lean), Pattern::HorizontalPull) = (help, movement.pattern) =>
        {
            Some(row::share(
                segments,
                body.height(),
                Angle::from_degrees(f64::from(*lean)),
            ))
        }
        BodyShare::Fraction(share) => Some((Band::exactly(share), Status::Published)),
        BodyShare::PushUp {
            hands_cm,
            feet_cm,
            knees,
        } => {
            let raised = match help {
                Help::HandsRaised(cm) => f64::from(*cm),
                Help::FeetRaised(cm) => -f64::from(*cm),
                _ => 0.0,
            };
            let stand = Stand {
                hands_over_feet: Length::from_cm(hands_cm - feet_cm + raised),
                pivot: if knees { Pivot::Knees } else { Pivot::Toes },
            };
            Some(push_up::share(segments, body.height(), stand))
        }
    }
}

/// The part of the body that really moves in a pull-up or dip: all but hands and forearms (0.955 men, 0.961 women), at most all
/// but the hands (0.988). A refinement that no study states as one number; published practice counts the whole body.
pub fn moved_mass(segments: &Segments) -> Band {
    let without_hands = 1.0 - 2.0 * segments.hand_mass;
    let least = without_hands - 2.0 * segments.forearm.mass;
    Band::new(least, least, without_hands)
}
