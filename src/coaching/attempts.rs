//! Three attempts for a test or a meet: the loads that the plates make, each with its chance from the belief.
//!
//! An opener that is as good as sure, a second that is likely, a third that is worth a try. The chances asked are common
//! practice of barbell sport, no source.

use crate::catalogue::{BodyShare, Class, Movement, Site};
use crate::strength::Belief;
use crate::timeline::Timeline;
use crate::units::{Rail, Reserve, Share, Side, SystemLoad};

use super::advice::{Asked, LoadToday, Prescription};
use super::caps::MILD_PAIN;
use super::facts::{pain_now, system};
use super::loads::{Loadable, PlatesOnHand};
use super::warm_up::{WarmUpStep, warm_up};

/// Least chance of the first attempt. Common practice, no source.
pub const OPENER: f64 = 0.90;
/// Chance of the second. Common practice, no source.
const SECOND: f64 = 0.70;
/// Chance of the third, the middle of 35 to 50 %. Common practice, no source.
const THIRD: f64 = 0.425;
/// Rest between attempts, seconds, at least and at most: over 2 min for strength (Grgic 2018); the range is common practice.
pub const REST_SECS: (u16, u16) = (300, 600);

/// One attempt.
#[derive(Debug, Clone, PartialEq)]
pub struct Attempt {
    /// What is moved, and the plates.
    pub load: LoadToday,
    /// The chance of one repetition with it, fresh.
    pub chance: f64,
}

/// Attempts and the warm-up before the first.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Lightest first: three, or fewer where the plates end.
    pub attempts: Vec<Attempt>,
    /// Steps before the first.
    pub warm_up: Vec<WarmUpStep>,
}

/// Why there are no attempts today.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoAttempts {
    /// Under 18: no maximal tests.
    Minor,
    /// A joint that the movement loads hurts too much for more than work: what the cap holds of tests holds of attempts.
    Hurts {
        /// Where.
        site: Site,
        /// How much, 3 to 10.
        score: u8,
        /// Days since it was reported.
        days: i64,
    },
    /// Nobody knows what the body weighs.
    NoWeighIn,
    /// No sets say how strong the athlete is, or the movement has no system load.
    NoBelief,
    /// Not even the lightest load there is has a chance of 90 %.
    NoneSure,
}

/// Today's attempts at `movement` on that side, from what is believed of it.
///
/// # Errors
/// Why there are none.
pub fn today(
    timeline: &Timeline<'_>,
    movement: &Movement,
    side: Option<Side>,
    belief: Option<&Belief>,
    plates: &PlatesOnHand,
) -> Result<Plan, NoAttempts> {
    if timeline.is_minor() {
        return Err(NoAttempts::Minor);
    }
    if let Some(pain) = pain_now(timeline, Some(movement), Rail::from(side))
        && pain.score >= MILD_PAIN
    {
        return Err(NoAttempts::Hurts {
            site: pain.site,
            score: pain.score,
            days: timeline.age(pain.date),
        });
    }
    let body = timeline.bodyweight().ok_or(NoAttempts::NoWeighIn)?;
    let known = timeline.share(movement, None).zip(belief);
    let (share, belief) = known.ok_or(NoAttempts::NoBelief)?;
    let helped = timeline.sets.iter().any(|set| set.added.kg() < 0.0);
    attempts(belief, movement, (share, body), plates, helped).ok_or(NoAttempts::NoneSure)
}

/// Three attempts at `movement` with today's body and plates; none where not even the lightest load there is has a chance of
/// 90 %.
pub fn attempts(
    belief: &Belief,
    movement: &Movement,
    (share, bodyweight): (Share, crate::units::Bodyweight),
    plates: &PlatesOnHand,
    with_help: bool,
) -> Option<Plan> {
    let bar = is_on_a_bar(movement).then(|| plates.on_a_bar());
    let plates = bar.as_ref().unwrap_or(plates);
    let loadable = plates.loadable(share, bodyweight, with_help);
    let opener = loadable.at_or_below(load_with(belief, OPENER))?;
    let chance = |load: &LoadToday| belief.chance(load.system);
    if chance(&opener) < OPENER - ROUNDING {
        return None;
    }
    let mut loads = vec![opener];
    for asked in [SECOND, THIRD] {
        let last = loads.last()?.system;
        let Some(next) = heavier(loadable, load_with(belief, asked), last) else {
            break;
        };
        loads.push(next);
    }
    let first = loads.first()?.clone();
    let attempts = loads
        .into_iter()
        .map(|load| Attempt {
            chance: chance(&load),
            load,
        })
        .collect();
    let single = Prescription {
        rung: String::new(),
        movement: movement.id.clone(),
        sets: 1,
        asked: Asked::Reps(1.0, Some(1.0)),
        reserve: Some(Reserve::NONE),
        rest_secs: REST_SECS,
        bodyweight: Some(bodyweight),
        load: Some(first),
    };
    Some(Plan {
        attempts,
        warm_up: warm_up(&single, Some(movement), plates, false),
    })
}

/// Whether the load is a bar's: a lift of large muscles that moves nothing of the body. Then the belt's plates say nothing.
pub fn is_on_a_bar(movement: &Movement) -> bool {
    movement.share == BodyShare::Outside && movement.class == Class::Compound
}

/// Room for rounding in a chance.
const ROUNDING: f64 = 1e-9;

/// The load nearest to `wanted` that is heavier than `last`, else the next heavier one.
fn heavier(loadable: Loadable<'_>, wanted: SystemLoad, last: SystemLoad) -> Option<LoadToday> {
    let near = loadable.nearest(wanted);
    near.filter(|load| load.system.kg() > last.kg() + super::GRACE_KG)
        .or_else(|| loadable.next_above(last))
}

/// The load that has this chance, by bisection: a chance falls as the load rises.
fn load_with(belief: &Belief, chance: f64) -> SystemLoad {
    let middle = belief.one_rep_max().kg();
    let (mut low, mut high) = (middle / 4.0, middle * 4.0);
    for _ in 0..60 {
        let half = f64::midpoint(low, high);
        if belief.chance(system(half)) >= chance {
            low = half
        } else {
            high = half
        }
    }
    system(low)
}
