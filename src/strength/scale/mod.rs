//! Strength on a ladder's own scale of demand (1.00 = the goal), so that every rung can be compared with it.
//!
//! On the one-arm ladders every kind of evidence stands on one scale, the one-arm one-rep max as a part of bodyweight
//! ([`crate::body::one_arm`]): weighted pull-ups on both arms, help of fingers, pulley or band, slow ways down, lock-offs, and
//! what one hand can hang from. The pulling kinds are put together by their precision; the hang bounds what the pull can use.
//! When one link lies clearly below the others, [`RailBelief::weakest`] names it. On other ladders one movement, or the holds
//! of the ladder, carry the scale. Everything is an estimate; where a factor is an assumption its band says so.

mod forecast;
mod holds;
mod movement;
mod one_arm;
mod reach;
mod weakest;

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::NaiveDate;

use crate::body::demand::Scale;
use crate::body::{Body, RungDemand, demands};
use crate::catalogue::{Catalogue, Ladder, Rung};
use crate::timeline::Timeline;
use crate::units::{Rail, Side};

use super::{Basis, Belief, Believed, Kept, Series};

pub use forecast::Forecast;
pub use reach::Reach;
pub use weakest::Weakest;

/// A kind of evidence about the strength that a ladder asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LinkKind {
    /// Pull-ups on both arms with load.
    TwoArms,
    /// One arm, with load or over a pulley.
    OneArm,
    /// One arm, fingers of the other hand helping.
    Fingers,
    /// One arm, a measured band helping.
    Band,
    /// The slow way down on one arm.
    Negative,
    /// Chin held over the bar on one arm.
    LockOff,
    /// Hanging from one arm.
    Hang,
    /// The movement of the goal, or of the highest rung that is trained.
    Movement,
    /// Holds of the ladder's shapes.
    Shapes,
}

/// What a link was read from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadFrom {
    /// A one-rep max on system load, as a part of bodyweight.
    OneRepMax {
        /// System load ÷ bodyweight.
        ratio: f64,
    },
    /// The best hold of the last weeks.
    Hold {
        /// Seconds.
        seconds: f64,
        /// Its day.
        date: NaiveDate,
    },
    /// All holds of the ladder.
    Holds,
}

/// One kind of evidence on the ladder's scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    /// Which.
    pub kind: LinkKind,
    /// What it says.
    pub reach: Reach,
    /// It shows that much or more: nobody tried for the most.
    pub at_least: bool,
    /// The day of the latest set that it stands on.
    pub last: NaiveDate,
    /// What it was read from.
    pub from: ReadFrom,
    /// The sets that it stands on; none where it is the one hold that [`ReadFrom`] names.
    pub basis: Option<Basis>,
}

/// What is believed of one rail on its ladder's scale.
#[derive(Debug, Clone, PartialEq)]
pub struct RailBelief {
    /// The rail.
    pub rail: Rail,
    /// All pulling (or pushing, or holding) evidence together.
    pub reach: Reach,
    /// Each kind of evidence.
    pub links: Vec<Link>,
    /// The link that lies clearly below the others.
    pub weakest: Option<Weakest>,
    /// The day of the latest set that it stands on.
    pub last: NaiveDate,
    /// What moves it into the future: the most precise belief behind it.
    mover: Option<Belief>,
}

impl RailBelief {
    /// The strength after so many days of training; as wide again as the belief that moves it.
    pub fn after_training(&self, days: f64) -> Reach {
        match &self.mover {
            Some(now) => self.reach.moved(now, &now.after_training(days)),
            None => self.reach,
        }
    }

    /// Whether anything can be said of later days.
    pub fn has_forecast(&self) -> bool {
        self.mover.is_some()
    }

    /// Whether the hang lies clearly below the rest, so that what is said of the pull is not yet said of the hand.
    pub fn grip_lies_below(&self) -> bool {
        self.weakest.is_some_and(|weakest| weakest.kind == LinkKind::Hang)
    }

    /// What a rung with fingers is asked of: all evidence together, but sets with fingers alone where they lie clearly below the
    /// rest, since who fails there is not helped by strong arms.
    pub fn reach_with_fingers(&self) -> Reach {
        let below = self.weakest.filter(|weakest| weakest.kind == LinkKind::Fingers);
        below.map_or(self.reach, |weakest| weakest.own)
    }

    /// What one kind of evidence says.
    pub fn link(&self, kind: LinkKind) -> Option<&Link> {
        self.links.iter().find(|link| link.kind == kind)
    }
}

/// The beliefs of one athlete, each movement's worked out when it is first asked.
#[derive(Debug)]
pub struct Estimates<'t, 'a> {
    timeline: &'t Timeline<'a>,
    catalogue: &'t Catalogue,
    known: BTreeMap<String, Vec<Believed>>,
    kept: Arc<Kept>,
}

impl<'t, 'a> Estimates<'t, 'a> {
    /// Nothing worked out yet.
    pub fn new(timeline: &'t Timeline<'a>, catalogue: &'t Catalogue) -> Self {
        Self::keeping(timeline, catalogue, Arc::default())
    }

    /// The same, reading only what has changed since `kept` was last asked about this athlete.
    pub fn keeping(timeline: &'t Timeline<'a>, catalogue: &'t Catalogue, kept: Arc<Kept>) -> Self {
        Self {
            timeline,
            catalogue,
            known: BTreeMap::new(),
            kept,
        }
    }

    /// The log that is asked.
    pub fn timeline(&self) -> &'t Timeline<'a> {
        self.timeline
    }

    /// The movements and ladders in force.
    pub fn catalogue(&self) -> &'t Catalogue {
        self.catalogue
    }

    /// The belief of a movement and side.
    pub fn of(&mut self, movement: &str, side: Option<Side>) -> Option<&Believed> {
        if !self.known.contains_key(movement) {
            let found = Series::of(self.timeline, movement)
                .map(|series| series.believed(self.timeline, &self.kept))
                .unwrap_or_default();
            self.known.insert(movement.to_owned(), found);
        }
        self.known
            .get(movement)?
            .iter()
            .find(|believed| believed.side == side)
    }

    /// What is believed of a rail on its ladder's scale; none without evidence of the last year.
    pub fn on_ladder(&mut self, ladder: &Ladder, rail: Rail) -> Option<RailBelief> {
        let links = match Scale::of_ladder(ladder, self.catalogue) {
            Scale::OneArm => one_arm::links(self, ladder, rail),
            _ if is_held(ladder) => holds::links(self, ladder, rail),
            _ => movement::links(self, ladder, rail),
        };
        let reach = reach::together(links.iter().map(|found| &found.link))?;
        let last = links.iter().map(|found| found.link.last).max()?;
        let mover = links
            .iter()
            .filter(|found| found.link.kind != LinkKind::Hang && found.belief.is_some())
            .min_by(|a, b| a.link.reach.log_sd().total_cmp(&b.link.reach.log_sd()))
            .and_then(|found| found.belief.clone());
        let links: Vec<Link> = links.into_iter().map(|found| found.link).collect();
        Some(RailBelief {
            rail,
            reach,
            weakest: weakest::weakest(&links),
            links,
            last,
            mover,
        })
    }

    /// What was read of the log so far.
    fn kept(&self) -> &Kept {
        &self.kept
    }

    /// The demands of a ladder's rungs for the athlete's body today.
    fn demands(&self, ladder: &Ladder) -> Vec<RungDemand> {
        let timeline = self.timeline;
        let body = Body::of(&timeline.person, timeline.bodyweight(), timeline.on);
        let body = body.unwrap_or_else(|_| Body::unknown_body());
        demands(ladder, self.catalogue, &body)
    }
}

/// A link with the belief behind it, where there is one.
struct Found {
    link: Link,
    belief: Option<Belief>,
}

/// Whether the goal is held for seconds.
fn is_held(ladder: &Ladder) -> bool {
    crate::body::demand::goal(ladder).is_some_and(|goal: &Rung| goal.work.range.is_hold())
}
