//! The share of a body that a movement lifts, in its plain form and with a rung's help.

use super::band::{Band, Status};
use super::push_up::{self, Pivot, Stand};
use super::quantity::{Angle, Length};
use super::segments::Segments;
use super::{Body, row};
use crate::catalogue::{BodyShare, Help, Movement, Pattern, Sides};
use crate::logbook::Settings;
use crate::units::Share;

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

/// Which part of the body a system load counts where the whole body hangs from the hands or stands on them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Counted {
    /// All of it: published practice (Johnson 2009, Coyne 2015), and what every standard of a ladder is written on.
    #[default]
    Whole,
    /// All but the working hands and forearms, which hardly move in a pull-up or dip: a refinement for comparing strength.
    Moved,
}

impl Counted {
    /// As the logbook's setting says.
    pub fn of(settings: &Settings) -> Self {
        if settings.moved_mass {
            Counted::Moved
        } else {
            Counted::Whole
        }
    }
}

/// The share of bodyweight in a system load of `movement` with a rung's `help` on this body; none where no load is defined.
pub fn counted_share(
    movement: &Movement,
    help: Option<&Help>,
    body: &Body,
    counted: Counted,
) -> Option<Share> {
    let moves_forearms_little = matches!(movement.pattern, Pattern::VerticalPull | Pattern::VerticalPush);
    match movement.share {
        BodyShare::Whole if counted == Counted::Moved && moves_forearms_little => {
            let hands = if movement.sides == Sides::Apart { 1.0 } else { 2.0 };
            Share::new(moved_mass(body.segments(), hands).centre()).ok()
        }
        BodyShare::PushUp { .. } | BodyShare::Fraction(_) => {
            let (share, _) = hand_share(movement, help.unwrap_or(&Help::Plain), body)?;
            Share::new(share.centre()).ok()
        }
        _ => movement.share(),
    }
}

/// The part of the body that really moves in a pull-up or dip on so many hands: all but those hands and forearms (two: 0.955
/// men, 0.961 women), at most all but the hands (0.988). A refinement that no study states as one number; published practice
/// counts the whole body.
pub fn moved_mass(segments: &Segments, hands: f64) -> Band {
    let without_hands = 1.0 - hands * segments.hand_mass;
    let least = without_hands - hands * segments.forearm.mass;
    Band::new(least, least, without_hands)
}
