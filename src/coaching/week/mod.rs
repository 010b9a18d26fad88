//! A calendar week of training: hard sets a muscle group against their range, joints loaded on following days, and a session
//! built from a budget of sets.
//!
//! What counts is stated in [`hard`], what a range is in [`muscles`], what is too near in [`joints`]. No number here changes a
//! verdict of the next step.

pub mod budget;
mod calendar;
pub mod hard;
pub mod joints;
pub mod muscles;
mod order;
mod session;

use chrono::NaiveDate;

use crate::catalogue::{Catalogue, Movement, Pattern};
use crate::timeline::{LoggedSet, Timeline};

pub use budget::build;
pub use calendar::Week;
pub use joints::{Close, JointLine, Load, Rested};
pub use muscles::{From, Group, Range, Status};
pub use session::{Block, Built, Left, LeftOut, Part, Why};

/// What somebody did in one week, as far as the timeline knows it.
#[derive(Debug, Clone, PartialEq)]
pub struct Trained<'a> {
    /// Which week.
    pub week: Week,
    /// Its seven days.
    pub days: Vec<Day>,
    /// Every muscle group, in the order of [`crate::catalogue::Muscle::ALL`].
    pub groups: Vec<Group<'a>>,
    /// Each joint and side that was loaded in the week, left before right.
    pub joints: Vec<JointLine<'a>>,
    /// Joints loaded on days that are too near each other.
    pub close: Vec<Close>,
    /// Joints that still rest on the timeline's day, where that lies in this week.
    pub resting: Vec<Rested>,
}

/// One day of the week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Day {
    /// Which.
    pub date: NaiveDate,
    /// Hard sets, each logged set once.
    pub hard: usize,
    /// Sets that were too easy to count.
    pub easy: usize,
    /// What they trained, most sets first.
    pub kinds: Vec<Kind>,
}

/// What a session is made of, in a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Pulling, vertical or horizontal.
    Pull,
    /// Pushing, vertical or horizontal.
    Push,
    /// Straight-arm work.
    StraightArm,
    /// Squat and hinge.
    Legs,
    /// The trunk.
    Trunk,
    /// Hanging.
    Grip,
}

impl Kind {
    /// What a movement is.
    pub fn of(movement: &Movement) -> Self {
        match movement.pattern {
            Pattern::VerticalPull | Pattern::HorizontalPull => Kind::Pull,
            Pattern::VerticalPush | Pattern::HorizontalPush => Kind::Push,
            Pattern::StraightArmPull | Pattern::StraightArmPush => Kind::StraightArm,
            Pattern::Squat | Pattern::Hinge => Kind::Legs,
            Pattern::Core => Kind::Trunk,
            Pattern::Grip => Kind::Grip,
        }
    }
}

impl<'a> Trained<'a> {
    /// The week as `timeline` knows it: days after the timeline's are empty.
    pub fn of(timeline: &Timeline<'a>, catalogue: &Catalogue, week: Week) -> Self {
        let of_week = in_days(&timeline.sets, week.monday(), week.sunday());
        let joints = joints::Loads::gather(timeline, catalogue, week);
        Self {
            week,
            days: week.days().map(|date| day(of_week, date)).collect(),
            groups: muscles::groups(of_week),
            joints: joints.lines(),
            close: joints.close(),
            resting: joints.resting(),
        }
    }

    /// Hard sets of the whole week, each logged set once.
    pub fn hard_sets(&self) -> usize {
        self.days.iter().map(|day| day.hard).sum()
    }
}

/// The sets from `first` to `last`, both included. Sets lie in order of days.
fn in_days<'s, 'a>(sets: &'s [LoggedSet<'a>], first: NaiveDate, last: NaiveDate) -> &'s [LoggedSet<'a>] {
    let from = sets.partition_point(|set| set.date < first);
    let until = sets.partition_point(|set| set.date <= last);
    sets.get(from..until).unwrap_or_default()
}

fn day(sets: &[LoggedSet<'_>], date: NaiveDate) -> Day {
    let sets = in_days(sets, date, date);
    let (hard, easy): (Vec<_>, Vec<_>) = sets
        .iter()
        .filter(|set| hard::was_done(set))
        .partition(|set| hard::is_hard(set));
    let mut kinds: Vec<(Kind, usize)> = Vec::new();
    for kind in hard.iter().filter_map(|set| set.movement).map(Kind::of) {
        match kinds.iter_mut().find(|(known, _)| *known == kind) {
            Some((_, count)) => *count += 1,
            None => kinds.push((kind, 1)),
        }
    }
    kinds.sort_by_key(|(kind, count)| (std::cmp::Reverse(*count), *kind));
    Day {
        date,
        hard: hard.len(),
        easy: easy.len(),
        kinds: kinds.into_iter().map(|(kind, _)| kind).collect(),
    }
}
