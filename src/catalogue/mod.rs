//! Movements and ladders: what can be trained, and the ordered steps toward a skill.
//!
//! The shipped ones lie as RON in `progressions/` and are compiled in; a logbook's own add to them or replace one by id.
//! Invariant: a [`Catalogue`] holds only ladders that passed the check; a broken file is a list of problems beside it.

mod ladder;
mod movement;

use std::collections::BTreeMap;

pub use ladder::{
    Amount, Caution, Companion, Entry, Given, Help, Ladder, Range, Rung, Shape, Standard, Way, Work,
};
pub use movement::{BodyShare, Class, Joint, Movement, Muscle, Pattern, Sides, Site};

/// All movements and ladders that are in force.
#[derive(Debug, Clone, Default)]
pub struct Catalogue {
    movements: BTreeMap<String, Movement>,
    ladders: BTreeMap<String, Ladder>,
}

impl Catalogue {
    /// The movement with this id.
    pub fn movement(&self, id: &str) -> Option<&Movement> {
        self.movements.get(id)
    }

    /// The ladder with this id.
    pub fn ladder(&self, id: &str) -> Option<&Ladder> {
        self.ladders.get(id)
    }

    /// Every movement, by id.
    pub fn movements(&self) -> impl Iterator<Item = &Movement> {
        self.movements.values()
    }

    /// Every ladder, by id.
    pub fn ladders(&self) -> impl Iterator<Item = &Ladder> {
        self.ladders.values()
    }
}
