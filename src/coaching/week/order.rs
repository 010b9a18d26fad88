//! In which order a session's work is done, and the warm-up before each piece.

use crate::catalogue::{Class, Movement, Pattern};
use crate::coaching::PlatesOnHand;
use crate::coaching::warm_up::{WarmUpStep, warm_up};

use super::budget::Candidate;
use super::session::{Block, Why};

/// When in a session something is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Stage {
    /// Straight arms and balance.
    Fresh,
    /// The heavy lifts.
    Heavy,
    /// Trunk, grip, single joints.
    Last,
}

pub(super) fn stage(movement: Option<&Movement>) -> Stage {
    let Some(movement) = movement else {
        return Stage::Heavy;
    };
    match (movement.pattern, movement.class) {
        (Pattern::StraightArmPull | Pattern::StraightArmPush, _) => Stage::Fresh,
        (Pattern::Core | Pattern::Grip, _) | (_, Class::Isolation) => Stage::Last,
        (Pattern::Hinge | Pattern::Squat, _) | (_, Class::Compound) => Stage::Heavy,
        (_, Class::Skill) => Stage::Fresh,
    }
}

/// The session with its warm-ups: getting warm once, and only the last step where the block before was of the same pattern.
pub(super) fn blocks(chosen: Vec<(Candidate<'_>, Vec<Why>)>, plates: &PlatesOnHand) -> Vec<Block> {
    let mut before: Option<Pattern> = None;
    let mut is_first = true;
    let mut blocks = Vec::new();
    for (candidate, why) in chosen {
        let pattern = candidate.movement.map(|movement| movement.pattern);
        let warm = pattern.is_some() && pattern == before;
        let heaviest = candidate.parts.last();
        let mut steps = heaviest.map_or_else(Vec::new, |part| {
            warm_up(&part.work, candidate.movement, plates, warm)
        });
        steps.retain(|step| is_first || *step != WarmUpStep::General);
        (before, is_first) = (pattern, false);
        blocks.push(Block {
            ladder: candidate.ladder.to_owned(),
            parts: candidate.parts,
            why,
            warm_up: steps,
        });
    }
    blocks
}
