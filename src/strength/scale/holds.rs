//! Ladders of holds: every hold of the ladder's rungs feeds one belief. Rough: the shape that is really held is the largest
//! error, and nobody has measured these ladders.

use crate::catalogue::Ladder;
use crate::strength::{Coverage, Hold, HoldJoint, Holds};
use crate::timeline::LoggedSet;
use crate::units::{Demand, Effort, Rail};

use super::{Estimates, Found, Link, LinkKind, Reach, ReadFrom};

pub(super) fn links(estimates: &mut Estimates<'_, '_>, ladder: &Ladder, rail: Rail) -> Vec<Found> {
    found(estimates, ladder, rail).into_iter().collect()
}

fn found(estimates: &Estimates<'_, '_>, ladder: &Ladder, rail: Rail) -> Option<Found> {
    let timeline = estimates.timeline();
    let demands = estimates.demands(ladder);
    let hold = |set: &LoggedSet<'_>| -> Option<Hold> {
        let tag = set.tag.filter(|tag| tag.is_on(ladder))?;
        let Effort::Hold(seconds) = set.set.effort else {
            return None;
        };
        let asked = demands.iter().find(|demand| demand.rung == tag.rung.id)?.demand?;
        // A loaded rung's demand is at its own load.
        let load = match (tag.rung.standard.ratio, set.system, set.bodyweight) {
            (Some(ratio), Some(system), Some(body)) => system.ratio(body) / ratio,
            _ => 1.0,
        };
        Some(Hold {
            side: set.set.side,
            demand: Demand::new(asked.centre() * load).ok()?,
            seconds,
            left: set.set.left,
            outcome: set.set.outcome,
        })
    };
    let sets: Vec<(&LoggedSet<'_>, Hold)> = timeline
        .evidence()
        .filter(|set| set.date < timeline.on && !set.broke_form())
        .filter_map(|set| Some((set, hold(set)?)))
        .collect();
    let mut holds = Holds::new(joint(ladder));
    for day in sets.chunk_by(|(a, _), (b, _)| a.date == b.date) {
        let Some((first, _)) = day.first() else { continue };
        let each: Vec<Hold> = day.iter().map(|(_, hold)| *hold).collect();
        holds.learn(first.date, &each);
    }
    let side = rail.side();
    let last = sets.iter().rev().find(|(_, hold)| hold.side == side)?.0.date;
    let [low, middle, high] = holds.belief(side, timeline.on)?.demand;
    let sd = (libm::log(high) - libm::log(low)) / (2.0 * Coverage::Eighty.sds());
    Some(Found {
        link: Link {
            kind: LinkKind::Shapes,
            reach: Reach::new(middle, sd)?,
            at_least: false,
            last,
            from: ReadFrom::Holds,
        },
        belief: None,
    })
}

/// The joint that tires first: the hand in a hang, else the shoulder.
fn joint(ladder: &Ladder) -> HoldJoint {
    let hangs = |movement: &str| movement.ends_with("hang");
    if ladder.rungs.iter().all(|rung| hangs(&rung.movement)) {
        HoldJoint::Grip
    } else {
        HoldJoint::Shoulder
    }
}
