//! What a rung asks before it is set against the goal: the scale of a ladder, and the strength on it.

use super::super::band::{Band, Status};
use super::super::hold::{ENDURANCE_SPREAD, Endurance};
use super::super::{Body, hand_share, one_arm};
use super::reps::Count;
use super::words::{How, Strength};
use super::{Computed, Measured, lever};
use crate::catalogue::{BodyShare, Catalogue, Help, Ladder, Movement, Pattern, Rung, Sides};
use crate::units::Measure;

/// Ladders to these goals stand on the one-arm scale.
const ONE_ARM_GOALS: [&str; 2] = ["one-arm-pull-up", "one-arm-chin-up"];
/// Both hands on the one-arm scale.
const TWO_HANDS: [&str; 2] = ["pull-up", "chin-up"];
/// An even way down on one arm, in seconds.
const NEGATIVE: &str = "one-arm-negative";
/// Chin over the bar on one arm, in seconds.
const LOCK_OFF: &str = "one-arm-lock-off";
/// One arm works, the other is straight.
const ARCHERS: [&str; 3] = ["archer-pull-up", "archer-push-up", "archer-row"];

/// A rung with all that its demand is computed from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked<'a> {
    pub rung: &'a Rung,
    pub movement: Option<&'a Movement>,
    pub body: &'a Body,
    pub measured: Measured,
}

impl<'a> Asked<'a> {
    pub fn new(rung: &'a Rung, catalogue: &'a Catalogue, body: &'a Body, measured: Measured) -> Self {
        Self {
            rung,
            movement: catalogue.movement(&rung.movement),
            body,
            measured,
        }
    }

    /// Part of bodyweight that the measured band takes, if it leaves anything to lift at its strongest.
    pub fn band_part(&self) -> Option<f64> {
        let part = self.measured.band?.kg() / self.body.mass()?.kg();
        (0.0..0.75).contains(&part).then_some(part)
    }

    fn ratio(&self) -> f64 {
        self.rung.standard.ratio.unwrap_or(1.0)
    }

    fn is_sided(&self) -> bool {
        self.movement
            .is_some_and(|movement| movement.sides == Sides::Apart)
    }
}

/// What a ladder's demands are measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Shoulder moment of the goal's shape.
    Lever,
    /// One-arm one-rep max ÷ bodyweight.
    OneArm,
    /// Load on the working hand.
    Hand,
    /// Strength of the grip, seconds included.
    Hang,
    /// System load of one movement.
    Load,
}

/// Strength for one repetition (or for the whole hold), in the scale's own unit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Need {
    /// Beside the share.
    factor: Band,
    /// Part of bodyweight in both hands; 1 where the scale counts the whole body.
    share: Band,
    status: Status,
    by: Strength,
}

impl Scale {
    /// The scale of a ladder.
    pub fn of_ladder(ladder: &Ladder, catalogue: &Catalogue) -> Scale {
        Scale::of(super::goal(ladder), catalogue)
    }

    /// The scale of a ladder with this goal.
    pub(super) fn of(goal: Option<&Rung>, catalogue: &Catalogue) -> Scale {
        let Some(movement) = goal.and_then(|goal| catalogue.movement(&goal.movement)) else {
            return Scale::Load;
        };
        match (movement.share, movement.pattern) {
            (BodyShare::Lever, _) => Scale::Lever,
            _ if ONE_ARM_GOALS.contains(&movement.id.as_str()) => Scale::OneArm,
            (BodyShare::PushUp { .. }, _) | (BodyShare::Fraction(_), Pattern::HorizontalPull) => Scale::Hand,
            (BodyShare::Whole, Pattern::Grip) if movement.measure == Measure::Hold => Scale::Hang,
            _ => Scale::Load,
        }
    }

    /// What `asked` needs on this scale; none where physics has nothing to say.
    pub(super) fn need(self, asked: &Asked) -> Option<Need> {
        let (strength, status, by) = match self {
            Scale::Lever => (WHOLE, Status::Derived, Strength::Shape),
            Scale::OneArm => one_arm_need(asked)?,
            Scale::Hand => return hand_need(asked),
            Scale::Hang => hang_need(asked)?,
            Scale::Load => load_need(asked)?,
        };
        Need::checked(strength, WHOLE, status, by)
    }

    /// The demand of `asked` against the goal; none where physics has nothing to say.
    pub(super) fn demand(self, asked: &Asked, goal: &Asked, goal_need: Need) -> Option<Computed> {
        if self == Scale::Lever {
            return lever::demand(asked);
        }
        if self == Scale::Load && asked.rung.movement != goal.rung.movement {
            return None;
        }
        let need = self.need(asked)?;
        let (count, goal_count) = (Count::of(asked.rung), Count::of(goal.rung));
        let reps = count.over(goal_count);
        let demand = Band::product(&[need.over(goal_need), reps]);
        Some(Computed {
            demand,
            status: need.status,
            how: How::Strength {
                by: need.by,
                strength: need.strength(),
                count,
                goal: goal_need.strength(),
                goal_count,
            },
        })
    }
}

impl Need {
    /// None where the numbers of a file lead to no strength at all.
    fn checked(factor: Band, share: Band, status: Status, by: Strength) -> Option<Need> {
        let sound = [factor, share]
            .iter()
            .all(|band| band.low() > 0.0 && band.high().is_finite());
        sound.then_some(Need {
            factor,
            share,
            status,
            by,
        })
    }

    fn strength(self) -> f64 {
        self.factor.centre() * self.share.centre()
    }

    /// This need over the goal's. A share that both have cancels with its error.
    fn over(self, goal: Need) -> Band {
        let shares = if self.share == goal.share {
            WHOLE
        } else {
            Band::product(&[self.share, goal.share.inverse()])
        };
        Band::product(&[self.factor, goal.factor.inverse(), shares])
    }
}

/// All of it, exactly.
const WHOLE: Band = Band::exactly(1.0);

type Parts = (Band, Status, Strength);

fn one_arm_need(asked: &Asked) -> Option<Parts> {
    let movement = asked.rung.movement.as_str();
    let seconds = asked.rung.standard.reach;
    if TWO_HANDS.contains(&movement) {
        let ratio = match &asked.rung.help {
            Help::Band => 1.0 - asked.band_part()?,
            Help::Added | Help::Plain => asked.ratio(),
            _ => return None,
        };
        let by = Strength::TwoHands {
            ratio,
            gain: one_arm::gain().centre(),
        };
        return Some((one_arm::two_hands(ratio), Status::Assumption, by));
    }
    match movement {
        NEGATIVE => Some((
            one_arm::negative(seconds),
            Status::Assumption,
            Strength::Negative { seconds },
        )),
        LOCK_OFF => Some((
            one_arm::lock_off(seconds),
            Status::Assumption,
            Strength::LockOff { seconds },
        )),
        _ if ARCHERS.contains(&movement) => {
            let band = one_arm::archer(asked.body.segments());
            let by = Strength::Archer { left: band.centre() };
            Some((band, Status::Derived, by))
        }
        _ if ONE_ARM_GOALS.contains(&movement) => one_hand(asked),
        _ => None,
    }
}

/// One hand's strict repetition with load, help or nothing.
fn one_hand(asked: &Asked) -> Option<Parts> {
    let ratio = asked.ratio();
    match &asked.rung.help {
        Help::Added if ratio < 1.0 => {
            let part = 1.0 - ratio;
            Some((
                one_arm::with_pulley(part),
                Status::Derived,
                Strength::Pulley { part },
            ))
        }
        Help::Added | Help::Plain => {
            Some((Band::exactly(ratio), Status::Derived, Strength::OneHand { ratio }))
        }
        Help::FingerHelp(fingers) => {
            let left = one_arm::with_fingers(*fingers)?;
            Some((left, Status::Assumption, Strength::Fingers { fingers: *fingers }))
        }
        Help::Band => {
            let part = asked.band_part()?;
            Some((
                one_arm::with_band(part),
                Status::Assumption,
                Strength::Band { part },
            ))
        }
        _ => None,
    }
}

/// What fingers or a measured band leave of bodyweight.
pub(super) fn help_left(asked: &Asked) -> Option<Band> {
    match &asked.rung.help {
        Help::FingerHelp(fingers) => one_arm::with_fingers(*fingers),
        Help::Band => asked.band_part().map(one_arm::with_band),
        _ => None,
    }
}

fn hand_need(asked: &Asked) -> Option<Need> {
    let movement = asked.movement?;
    let alike = match movement.share {
        BodyShare::PushUp { .. } => true,
        BodyShare::Fraction(_) => movement.pattern == Pattern::HorizontalPull,
        _ => false,
    };
    let plain = matches!(
        asked.rung.help,
        Help::Plain | Help::Added | Help::HandsRaised(_) | Help::FeetRaised(_) | Help::Lean(_)
    );
    let (share, _) = hand_share(movement, &asked.rung.help, asked.body).filter(|_| alike && plain)?;
    if ARCHERS.contains(&movement.id.as_str()) {
        let archer = one_arm::archer(asked.body.segments());
        let by = Strength::ArcherHand {
            share: share.centre(),
            left: archer.centre(),
        };
        return Need::checked(archer, share, Status::Assumption, by);
    }
    let hands = if asked.is_sided() { 1.0 } else { 2.0 };
    let by = Strength::Hand {
        share: share.centre(),
        hands,
    };
    Need::checked(Band::exactly(1.0 / hands), share, Status::Derived, by)
}

fn hang_need(asked: &Asked) -> Option<Parts> {
    let movement = asked.movement?;
    if movement.pattern != Pattern::Grip || movement.measure != Measure::Hold {
        return None;
    }
    let hands = if asked.is_sided() { 1.0 } else { 2.0 };
    let load = match &asked.rung.help {
        Help::FingerHelp(_) | Help::Band => help_left(asked)?,
        Help::Added | Help::Plain => Band::exactly(asked.ratio() / hands),
        _ => return None,
    };
    let seconds = asked.rung.standard.reach;
    let intensity = |factor: f64| Endurance::GRIP.intensity(seconds * factor);
    let kept_up = Band::new(
        intensity(1.0),
        intensity(1.0 + ENDURANCE_SPREAD),
        intensity(1.0 - ENDURANCE_SPREAD),
    );
    let by = Strength::Hang {
        load: load.centre(),
        seconds,
        kept_up: kept_up.centre(),
    };
    Some((Band::product(&[load, kept_up.inverse()]), Status::Assumption, by))
}

fn load_need(asked: &Asked) -> Option<Parts> {
    let movement = asked.movement?;
    let share = movement.share()?;
    if movement.measure != Measure::Reps {
        return None;
    }
    let ratio = match &asked.rung.help {
        Help::Added | Help::Plain => asked.rung.standard.ratio.unwrap_or(share.value()),
        Help::Band => asked.band_part().map(|part| share.value() * (1.0 - part))?,
        _ => return None,
    };
    (ratio > 0.0).then(|| (Band::exactly(ratio), Status::Derived, Strength::Ratio { ratio }))
}
