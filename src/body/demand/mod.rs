//! How strong one must be for each rung, on its ladder's own scale: 1.00 is the goal.
//!
//! A demand that the ladder's file states holds, with what it rests on; physics stands beside it where it can and says when the
//! two disagree. Where the file is silent the demand is computed: levers by their shoulder moment; the one-arm ladders on the
//! one-arm scale; push-ups and rows by the load on the working hand; loads by ratio × (30 + reps + reserve). Where nothing can
//! be computed and nothing is stated there is no demand, and the rung says so.

mod check;
mod lever;
mod need;
mod reps;
mod words;

pub use check::{warnings, warnings_of};
pub use need::Scale;
pub use words::How;

use self::need::Asked;
use super::band::{Band, Status};
use super::quantity::{Angle, Moment};
use super::{Body, Fact, hand_share};
use crate::catalogue::{BodyShare, Catalogue, Given, Help, Ladder, Rung};
use crate::units::{Assistance, Mass, SystemLoad};

/// How far a demand that a file states may be off, each side, where nothing was computed beside it: an assumption.
const STATED_SPREAD: f64 = 0.15;

/// Help as the athlete has measured it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Measured {
    /// What the athlete's band takes off at the sticking point.
    pub band: Option<Assistance>,
}

/// What one rung asks of one body.
#[derive(Debug, Clone, PartialEq)]
pub struct RungDemand {
    /// The rung's id.
    pub rung: String,
    /// How strong one must be, 1.00 = the goal; none where it is neither stated nor computed.
    pub demand: Option<Band>,
    /// What the demand rests on.
    pub status: Status,
    /// The demand that the file states.
    pub stated: Option<Given>,
    /// What physics says, where it can.
    pub computed: Option<Computed>,
    /// Moment at both shoulders together, N·m, with the band of shape, table and unknown height.
    pub moment: Option<Band>,
    /// Moment at one elbow.
    pub elbow: Option<Moment>,
    /// Lean of the arms from the vertical on a gripped bar, or a planche lean's.
    pub lean: Option<Angle>,
    /// Part of bodyweight in both hands (or on the legs).
    pub share: Option<f64>,
    /// Load in all: share × bodyweight, or the standard's ratio × bodyweight, or what help leaves.
    pub system: Option<SystemLoad>,
    /// Facts of the body that would narrow these numbers.
    pub narrowed_by: Vec<Fact>,
}

/// A demand by physics, with how it came about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Computed {
    /// The demand and its band.
    pub demand: Band,
    /// What it rests on.
    pub status: Status,
    /// The steps, for a sentence.
    pub how: How,
}

impl RungDemand {
    /// How the demand came about, in one or two sentences with the numbers.
    pub fn text(&self) -> String {
        words::explain(self)
    }

    /// Whether the stated demand lies outside what was computed, and its source does not say why it holds ("… holds: …").
    pub fn needs_a_reason(&self) -> bool {
        let explained = |given: &Given| given.source.to_lowercase().contains("holds");
        self.disagrees() && !self.stated.as_ref().is_some_and(explained)
    }

    /// Whether the stated demand lies outside what was computed.
    pub fn disagrees(&self) -> bool {
        match (&self.stated, &self.computed) {
            (Some(given), Some(computed)) => !computed.demand.contains(given.demand.value()),
            _ => false,
        }
    }
}

/// The rung that is the goal: the one on the main line whose stated demand is 1, else the last of the main line.
pub fn goal(ladder: &Ladder) -> Option<&Rung> {
    let is_one = |rung: &&Rung| {
        rung.demand
            .as_ref()
            .is_some_and(|given| given.demand.value() == 1.0)
    };
    let stated = ladder.main_line().rev().find(is_one);
    stated.or_else(|| ladder.main_line().next_back())
}

/// The demand of every rung of `ladder` for `body`, in the ladder's order.
pub fn demands(ladder: &Ladder, catalogue: &Catalogue, body: &Body) -> Vec<RungDemand> {
    demands_with(ladder, catalogue, body, Measured::default())
}

/// As [`demands`], with help as the athlete has measured it.
pub fn demands_with(
    ladder: &Ladder,
    catalogue: &Catalogue,
    body: &Body,
    measured: Measured,
) -> Vec<RungDemand> {
    let goal = goal(ladder);
    let scale = Scale::of(goal, catalogue);
    let ask = |rung| Asked::new(rung, catalogue, body, measured);
    let goal_asked = goal.map(ask);
    let goal_need = goal_asked.as_ref().and_then(|asked| scale.need(asked));
    let of = |rung| {
        let asked = ask(rung);
        let is_goal = goal.is_some_and(|goal| std::ptr::eq(goal, rung));
        let computed = if is_goal {
            Some(words::goal(&asked, scale))
        } else {
            let goal = goal_asked.as_ref().zip(goal_need);
            goal.and_then(|(goal, need)| scale.demand(&asked, goal, need))
        };
        rung_demand(&asked, scale, computed)
    };
    ladder.rungs.iter().map(of).collect()
}

/// Everything about one rung.
fn rung_demand(asked: &Asked, scale: Scale, computed: Option<Computed>) -> RungDemand {
    let stated = asked.rung.demand.clone();
    let demand = match (&stated, computed) {
        (Some(given), Some(computed)) => Some(computed.demand.around(given.demand.value())),
        (Some(given), None) => {
            let value = given.demand.value();
            Some(Band::new(
                value,
                value * (1.0 - STATED_SPREAD),
                value * (1.0 + STATED_SPREAD),
            ))
        }
        (None, computed) => computed.map(|computed| computed.demand),
    };
    let status = match (&stated, computed) {
        (Some(given), computed) if computed.is_none_or(|computed| computed.how != How::Goal) => {
            status_of(given)
        }
        (_, Some(computed)) => computed.status,
        (_, None) => Status::CommonPractice,
    };
    let held = asked
        .movement
        .filter(|movement| movement.share == BodyShare::Lever)
        .map(|_| lever::held(asked));
    let share = asked
        .movement
        .and_then(|movement| hand_share(movement, &asked.rung.help, asked.body));
    let system = system_ratio(asked, scale, share.map(|(share, _)| share.centre()))
        .zip(asked.body.mass())
        .map(|(ratio, mass)| SystemLoad::new(Mass::from_kg(ratio * mass.kg())));
    let narrowed_by = asked.body.unknown().filter(|fact| match (fact, &share) {
        _ if held.is_some() => true,
        (Fact::Mass, share) => share.is_some(),
        (_, Some((_, status))) => *status == Status::Derived,
        (_, None) => false,
    });
    RungDemand {
        rung: asked.rung.id.clone(),
        demand,
        status,
        computed,
        moment: held.as_ref().and_then(|held| held.moment),
        elbow: held.as_ref().and_then(|held| held.elbow),
        lean: held.as_ref().and_then(|held| held.lean),
        share: share.map(|(share, _)| share.centre()),
        system,
        narrowed_by: narrowed_by.collect(),
        stated,
    }
}

/// System load ÷ bodyweight of the rung's standard, where it has one and its help is known.
fn system_ratio(asked: &Asked, scale: Scale, share: Option<f64>) -> Option<f64> {
    let share = share?;
    match &asked.rung.help {
        Help::Added => Some(asked.rung.standard.ratio.unwrap_or(share)),
        Help::FingerHelp(_) | Help::Band => match scale {
            Scale::OneArm | Scale::Hang => need::help_left(asked).map(|left| share * left.centre()),
            _ => asked.band_part().map(|part| share * (1.0 - part)),
        },
        _ => Some(share),
    }
}

/// What a file's words say of its number; words that name nothing are common practice.
fn status_of(given: &Given) -> Status {
    let source = given.source.to_lowercase();
    let says = |word: &str| source.contains(word);
    if says("common practice") {
        Status::CommonPractice
    } else if says("assum") {
        Status::Assumption
    } else if ["derived", "computed", "leverage", "half"].into_iter().any(says) {
        Status::Derived
    } else if says("published") {
        Status::Published
    } else {
        Status::CommonPractice
    }
}

/// A main rung that asks less than the one below it.
#[derive(Debug, Clone, PartialEq)]
pub struct Fall {
    /// The rung below.
    pub below: String,
    /// The rung that asks less.
    pub rung: String,
    /// Both demands, in this order.
    pub demands: [f64; 2],
}

/// Where the demand falls along the main line of `ladder`.
pub fn falls(ladder: &Ladder, demands: &[RungDemand]) -> Vec<Fall> {
    let known: Vec<(&Rung, f64)> = ladder
        .main_line()
        .filter_map(|rung| {
            let asked = demands.iter().find(|demand| demand.rung == rung.id)?;
            Some((rung, asked.demand?.centre()))
        })
        .collect();
    let pairs = known.iter().zip(known.iter().skip(1));
    pairs
        .filter(|((_, below), (_, above))| above < below)
        .map(|((below, from), (rung, to))| Fall {
            below: below.id.clone(),
            rung: rung.id.clone(),
            demands: [*from, *to],
        })
        .collect()
}
