//! Where a rung stands on its ladder, and which is above and below.

use super::names::fold;
use super::{Ladder, Rung, Way};

impl Ladder {
    /// The rung of this name as a person writes it; case, spaces, `-` and `_` make no difference.
    pub fn rung_by_name(&self, name: &str) -> Option<&Rung> {
        self.rung(name).or_else(|| {
            let folded = fold(name);
            self.rungs.iter().find(|rung| fold(&rung.id) == folded)
        })
    }

    /// The place of a main rung, from 0 at the ground; none for a branch.
    pub fn main_index(&self, id: &str) -> Option<usize> {
        self.main_line().position(|rung| rung.id == id)
    }

    /// How high a rung stands, in half rungs: twice its place on the main line; a branch half a rung above the one it leaves.
    pub fn half_rungs(&self, rung: &Rung) -> usize {
        match &rung.way {
            Way::Main => self.main_index(&rung.id).unwrap_or(0) * 2,
            Way::Branch { from, .. } => self.main_index(from).unwrap_or(0) * 2 + 1,
        }
    }

    /// The rung that this one leads to: the next of the main line, or where the branch joins it.
    pub fn above(&self, rung: &Rung) -> Option<&Rung> {
        match &rung.way {
            Way::Main => self.main_line().nth(self.main_index(&rung.id)? + 1),
            Way::Branch { to, .. } => self.rung(to),
        }
    }

    /// The rung to fall back to: the one the file names, else the one before it on the main line, or where the branch leaves it.
    pub fn below(&self, rung: &Rung) -> Option<&Rung> {
        match (&rung.fall_back, &rung.way) {
            (Some(id), _) => self.rung(id),
            (None, Way::Main) => self.main_line().nth(self.main_index(&rung.id)?.checked_sub(1)?),
            (None, Way::Branch { from, .. }) => self.rung(from),
        }
    }
}
