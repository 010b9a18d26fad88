//! A session as it is built from a budget of sets: what to do in which order, what not, and why.

use chrono::NaiveDate;

use crate::catalogue::{Joint, Muscle};
use crate::coaching::Prescription;
use crate::coaching::warm_up::WarmUpStep;
use crate::units::Rail;

/// A session.
#[derive(Debug, Clone, PartialEq)]
pub struct Built {
    /// The sets that were to be used.
    pub budget: u16,
    /// What to do, in order.
    pub blocks: Vec<Block>,
    /// What is not done today, and why.
    pub left_out: Vec<LeftOut>,
}

impl Built {
    /// Sets in all.
    pub fn sets(&self) -> u16 {
        self.blocks.iter().map(Block::sets).sum()
    }
}

/// Work on one ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// The ladder's id.
    pub ladder: String,
    /// One part a rail, the weaker side first.
    pub parts: Vec<Part>,
    /// Why it is here, and at this place.
    pub why: Vec<Why>,
    /// What comes before its first set.
    pub warm_up: Vec<WarmUpStep>,
}

impl Block {
    /// Sets in all.
    pub fn sets(&self) -> u16 {
        self.parts.iter().map(|part| part.sets).sum()
    }
}

/// Work of one rail.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// The rail.
    pub rail: Rail,
    /// Sets today, at most what is prescribed.
    pub sets: u16,
    /// What is prescribed.
    pub work: Prescription,
    /// Whether a weigh-in comes first.
    pub weigh_in_first: bool,
}

/// Why a block is in the session, and where.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// The week lacks so many sets of this group up to its range; the one that lacks most.
    Lacks {
        /// The group.
        muscle: Muscle,
        /// Sets so far.
        sets: f64,
        /// The range's low end.
        low: f64,
    },
    /// Nothing is lacking, or the week is full: it is there because it was trained longest ago.
    LastTrained(Option<i64>),
    /// Straight arms and balance come first, while you are fresh.
    Fresh,
    /// A joint of it still rests: after what is spaced enough, and fewer sets rather than more.
    StillRests {
        /// The joint.
        joint: Joint,
        /// The side.
        rail: Rail,
        /// When it was loaded last.
        last: NaiveDate,
    },
    /// The budget ends here: fewer sets than prescribed.
    Short,
}

/// A ladder, or one rail of it, that is not trained today.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// The ladder's id.
    pub ladder: String,
    /// The rail; both where it holds for all of it.
    pub rail: Rail,
    /// Why.
    pub why: Left,
}

/// Why something is left out.
#[derive(Debug, Clone, PartialEq)]
pub enum Left {
    /// It hurts: no work on it.
    Pause,
    /// Spacing asks for a later day.
    NotBefore(NaiveDate),
    /// The joint would be loaded so many days running.
    Running {
        /// The joint.
        joint: Joint,
        /// The side.
        rail: Rail,
        /// With today.
        days: usize,
    },
    /// All its groups have had their week.
    Enough(Muscle),
    /// Everything that is asked today is done.
    Done,
    /// The budget is used up.
    NoRoom,
}
