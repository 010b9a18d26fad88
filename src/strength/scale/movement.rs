//! Ladders whose rungs are repetitions of one movement, or of easier ones on the way to it.

use crate::body::demand;
use crate::catalogue::{Help, Ladder, Rung};
use crate::units::{Mass, Rail, SystemLoad};

use super::{Estimates, Found, Link, LinkKind, Reach, ReadFrom};

/// How well an easier movement tells a harder one, on the log scale, where the ladder only states their demands. A.
const OTHER_MOVEMENT_SD: f64 = 0.10;

/// The goal's movement where it is trained, else the highest plain rung that is.
pub(super) fn links(estimates: &mut Estimates<'_, '_>, ladder: &Ladder, rail: Rail) -> Vec<Found> {
    let Some(goal) = demand::goal(ladder) else {
        return Vec::new();
    };
    let demands = estimates.demands(ladder);
    let plain = |rung: &&Rung| matches!(rung.help, Help::Added | Help::Plain) && !rung.work.range.is_hold();
    let below = ladder.main_line().rev().filter(plain);
    std::iter::once(goal)
        .filter(plain)
        .chain(below)
        .find_map(|rung| {
            let asked = demands.iter().find(|demand| demand.rung == rung.id)?.demand?;
            link(
                estimates,
                rung,
                asked.centre(),
                rail,
                rung.movement == goal.movement,
            )
        })
        .into_iter()
        .collect()
}

fn link(
    estimates: &mut Estimates<'_, '_>,
    rung: &Rung,
    asked: f64,
    rail: Rail,
    is_goals: bool,
) -> Option<Found> {
    let timeline = estimates.timeline();
    let movement = estimates.catalogue().movement(&rung.movement)?;
    let side = rail.side().filter(|_| movement.is_sided());
    let last = timeline
        .evidence()
        .rev()
        .find(|set| {
            set.date < timeline.on
                && set.set.side == side
                && set.movement.is_some_and(|known| known.id == movement.id)
        })?
        .date;
    let believed = estimates.of(&movement.id, side)?;
    let body = believed.bodyweight?;
    let share = rung.standard.ratio.unwrap_or(believed.share.value());
    let load = SystemLoad::new(Mass::from_kg(share * body.kg()));
    let count = rung.standard.reach + rung.work.reserve.map_or(0.0, |reserve| reserve.reps());
    let one_rep_max = believed.belief.one_rep_max();
    let ratio = one_rep_max.ratio(body);
    // By the athlete's own reps curve, as the forecast asks it: who is past the goal here is likely to reach it there.
    let centre = asked * one_rep_max.kg() / believed.belief.one_rep_max_for(load, count).kg();
    let other = if is_goals { 0.0 } else { OTHER_MOVEMENT_SD };
    let sd = believed.belief.log_sd();
    Some(Found {
        link: Link {
            kind: LinkKind::Movement,
            reach: Reach::new(centre, (sd * sd + other * other).sqrt())?,
            at_least: false,
            last,
            from: ReadFrom::OneRepMax { ratio },
            basis: Some(believed.basis.clone()),
        },
        belief: Some(believed.belief.clone()),
    })
}
