//! What an athlete climbs for: the rungs they set as goals, else the end of each ladder they are on.

use crate::catalogue::{Catalogue, Ladder, Rung};
use crate::timeline::Timeline;
use crate::units::Rail;

use super::standing::{is_set_aside, joined, rails};

/// A rung to reach, on one rail.
#[derive(Debug, Clone, Copy)]
pub struct Goal<'a> {
    /// The ladder.
    pub ladder: &'a Ladder,
    /// The rung.
    pub rung: &'a Rung,
    /// The rail.
    pub rail: Rail,
}

/// The goals in order of ladder id, place on the ladder, left, right. Without a goal set: the last main rung of each ladder. Rails
/// that are set aside have none.
pub fn goals<'a>(timeline: &Timeline<'_>, catalogue: &'a Catalogue) -> Vec<Goal<'a>> {
    let set = timeline.goals.iter().filter_map(|goal| {
        let ladder = catalogue.ladder(goal.ladder)?;
        Some((ladder, ladder.rung(goal.rung)?))
    });
    let mut rungs: Vec<(&Ladder, &Rung)> = set.collect();
    if rungs.is_empty() {
        let ladders = joined(timeline).into_iter().filter_map(|id| catalogue.ladder(id));
        rungs.extend(ladders.filter_map(|ladder| Some((ladder, ladder.main_line().next_back()?))));
    }
    rungs.sort_by(|(a, rung_a), (b, rung_b)| {
        (&a.id, a.half_rungs(rung_a)).cmp(&(&b.id, b.half_rungs(rung_b)))
    });
    rungs
        .into_iter()
        .flat_map(|(ladder, rung)| {
            rails(ladder).iter().map(move |rail| Goal {
                ladder,
                rung,
                rail: *rail,
            })
        })
        .filter(|goal| !is_set_aside(timeline, goal.ladder, goal.rail))
        .collect()
}
