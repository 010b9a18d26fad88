//! Ladders of holds: every hold of the ladder's rungs feeds one belief. Rough: the shape that is really held is the largest
//! error, and nobody has measured these ladders.

use crate::catalogue::Ladder;
use crate::strength::{Basis, Coverage, Hold, HoldJoint, Holds, Telling};
use crate::timeline::LoggedSet;
use crate::units::{Demand, Effort, Rail, Side};

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
    let basis = basis(&sets, side)?;
    let last = basis.last;
    let [low, middle, high] = holds.belief(side, timeline.on)?.demand;
    let sd = (libm::log(high) - libm::log(low)) / (2.0 * Coverage::Eighty.sds());
    Some(Found {
        link: Link {
            kind: LinkKind::Shapes,
            reach: Reach::new(middle, sd)?,
            at_least: false,
            last,
            from: ReadFrom::Holds,
            basis: Some(basis),
        },
        belief: None,
    })
}

/// How many holds on how many days, and the longest of each of the latest days.
fn basis(sets: &[(&LoggedSet<'_>, Hold)], side: Option<Side>) -> Option<Basis> {
    let own: Vec<_> = sets.iter().filter(|(_, hold)| hold.side == side).collect();
    let days: Vec<_> = own.chunk_by(|(a, _), (b, _)| a.date == b.date).collect();
    let longest = |day: &&[&(&LoggedSet<'_>, Hold)]| {
        let (set, hold) = day
            .iter()
            .max_by(|(_, a), (_, b)| a.seconds.value().total_cmp(&b.seconds.value()))?;
        Some(Telling {
            date: set.date,
            added: set.added,
            effort: Effort::Hold(hold.seconds),
            left: None,
            missed: set.failed(),
        })
    };
    Some(Basis {
        sets: own.len(),
        days: days.len(),
        first: own.first()?.0.date,
        last: own.last()?.0.date,
        doubted: 0,
        of_other_side: 0,
        lately: days
            .iter()
            .rev()
            .take(Basis::LATELY)
            .filter_map(longest)
            .collect(),
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
