//! From a checked raw ladder to the real one, with the defaults filled in.

use std::collections::BTreeMap;

use crate::catalogue::{Amount, Entry, Given, Ladder, Movement, Rung, Standard, Way, Work};
use crate::units::{Demand, Reps, Reserve, Seconds};

use super::raw::{RawEntry, RawLadder, RawRung, RawStandard, RawWork};

/// Days on which a standard must be met. Common practice, no source.
const DAYS: u8 = 2;
/// Days that the first and the last of them are apart, at least. Common practice, no source.
const DAYS_APART: u8 = 2;
/// Training days a week. Common practice, no source.
pub(super) const EXPOSURES_A_WEEK: u8 = 2;
/// Both sides within so many repetitions. Common practice, no source (Bishop 2020: no threshold is proven).
const SIDE_GAP_REPS: f64 = 1.0;
/// Both sides within so many seconds. Common practice, no source.
const SIDE_GAP_SECONDS: f64 = 2.0;

/// The ladder; none where a value is out of range, which the check has said before.
pub(super) fn ladder(raw: &RawLadder, movements: &BTreeMap<String, Movement>) -> Option<Ladder> {
    let (main, branches): (Vec<&RawRung>, Vec<&RawRung>) =
        raw.rungs.iter().partition(|rung| rung.branch.is_none());
    let rungs: Option<Vec<Rung>> = main
        .into_iter()
        .chain(branches)
        .map(|rung| self::rung(rung, movements))
        .collect();
    Some(Ladder {
        id: raw.id.clone(),
        title: raw.title.clone(),
        goal: raw.goal.clone(),
        sides: raw.sides,
        sources: raw.sources.clone(),
        cautions: raw.cautions.clone(),
        rungs: rungs?,
    })
}

fn rung(raw: &RawRung, movements: &BTreeMap<String, Movement>) -> Option<Rung> {
    let movement = movements.get(&raw.movement)?;
    let entry: Option<Vec<Entry>> = raw.entry.iter().map(entry).collect();
    let demand = match &raw.demand {
        None => None,
        Some((value, source)) => Some(Given {
            demand: Demand::new(*value).ok()?,
            source: source.clone(),
        }),
    };
    Some(Rung {
        id: raw.id.clone(),
        title: raw.title.clone(),
        movement: raw.movement.clone(),
        help: raw.help.clone(),
        entry: entry?,
        work: work(&raw.work, movement)?,
        standard: standard_of(&raw.standard, &raw.work),
        companions: raw.companions.clone(),
        way: match &raw.branch {
            None => Way::Main,
            Some(branch) => Way::Branch {
                from: branch.from.clone(),
                to: branch.to.clone(),
            },
        },
        demand,
        cautions: raw.cautions.clone(),
        fall_back: raw.fall_back.clone(),
    })
}

fn entry(raw: &RawEntry) -> Option<Entry> {
    let at_least = match (raw.reps, raw.seconds) {
        (Some(reps), None) => Amount::Reps(Reps::try_from(reps).ok()?),
        (None, Some(seconds)) => Amount::Seconds(Seconds::try_from(seconds).ok()?),
        _ => return None,
    };
    Some(Entry {
        movement: raw.movement.clone(),
        at_least,
        ratio: raw.ratio,
    })
}

fn work(raw: &RawWork, movement: &Movement) -> Option<Work> {
    let reserve = match raw.reserve {
        None => None,
        Some(reps) => Some(Reserve::new(reps).ok()?),
    };
    Some(Work {
        sets: raw.sets,
        range: raw.range,
        reserve,
        rest_secs: raw.rest_secs.unwrap_or(Work::rest_by(movement.class)),
        exposures_a_week: raw.exposures_a_week.unwrap_or(EXPOSURES_A_WEEK),
    })
}

/// The standard with its defaults filled in.
pub(in crate::catalogue) fn standard_of(raw: &RawStandard, work: &RawWork) -> Standard {
    Standard {
        sets: raw.sets.unwrap_or(work.sets),
        reach: raw.reach.unwrap_or(work.range.hi()),
        ratio: raw.ratio,
        days: raw.days.unwrap_or(DAYS),
        days_apart: raw.days_apart.unwrap_or(DAYS_APART),
        side_gap: raw.side_gap.unwrap_or(side_gap(work)),
    }
}

/// The gap between the sides that a silent file allows.
fn side_gap(work: &RawWork) -> f64 {
    if work.range.is_hold() {
        SIDE_GAP_SECONDS
    } else {
        SIDE_GAP_REPS
    }
}
