//! Movements and ladders back to RON, as a person would write them: what is the default is left out.

use ron::extensions::Extensions;
use ron::ser::PrettyConfig;

use super::build;
use super::check::Movements;
use super::raw::{RawBranch, RawEntry, RawLadder, RawRung, RawStandard, RawWork};
use crate::catalogue::{Amount, Entry, Ladder, Movement, Rung, Way};
use crate::units::Reserve;

/// A ladder as text that reads back as the same ladder.
pub(in crate::catalogue) fn ladder_text(ladder: &Ladder, movements: &Movements) -> String {
    text(&raw_of(ladder, movements), 3)
}

/// Movements as text that reads back as the same movements.
pub(in crate::catalogue) fn movements_text(movements: &[Movement]) -> String {
    text(movements, 2)
}

/// `depth` levels get a line for each value; what is deeper stays in one line.
fn text<T: serde::Serialize + ?Sized>(value: &T, depth: usize) -> String {
    let pretty = PrettyConfig::new().depth_limit(depth).new_line("\n");
    let written = ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME)
        .to_string_pretty(value, pretty);
    // These types hold only numbers, texts and choices: writing them into a string has no way to fail.
    written.map(|text| text + "\n").unwrap_or_default()
}

/// A checked ladder as its file would write it.
pub(in crate::catalogue) fn raw_of(ladder: &Ladder, movements: &Movements) -> RawLadder {
    RawLadder {
        id: ladder.id.clone(),
        title: ladder.title.clone(),
        goal: ladder.goal.clone(),
        sides: ladder.sides,
        sources: ladder.sources.clone(),
        cautions: ladder.cautions.clone(),
        rungs: ladder.rungs.iter().map(|one| rung(one, movements)).collect(),
    }
}

fn rung(rung: &Rung, movements: &Movements) -> RawRung {
    let work = work(rung, movements);
    RawRung {
        id: rung.id.clone(),
        title: rung.title.clone(),
        branch: match &rung.way {
            Way::Main => None,
            Way::Branch { from, to } => Some(RawBranch {
                from: from.clone(),
                to: to.clone(),
            }),
        },
        movement: rung.movement.clone(),
        help: rung.help.clone(),
        entry: rung.entry.iter().map(entry).collect(),
        standard: standard(rung, &work),
        work,
        demand: rung
            .demand
            .as_ref()
            .map(|given| (given.demand.value(), given.source.clone())),
        cautions: rung.cautions.clone(),
        companions: rung.companions.clone(),
        fall_back: rung.fall_back.clone(),
    }
}

fn entry(entry: &Entry) -> RawEntry {
    let (reps, seconds) = match entry.at_least {
        Amount::Reps(reps) => (Some(reps.count()), None),
        Amount::Seconds(seconds) => (None, Some(seconds.value())),
    };
    RawEntry {
        movement: entry.movement.clone(),
        reps,
        seconds,
        ratio: entry.ratio,
    }
}

fn work(rung: &Rung, movements: &Movements) -> RawWork {
    let work = &rung.work;
    let by_class = movements
        .get(&rung.movement)
        .map(|movement| movement.class.rest_secs());
    RawWork {
        sets: work.sets,
        range: work.range,
        reserve: work.reserve.map(Reserve::reps),
        rest_secs: Some(work.rest_secs).filter(|rest| Some(*rest) != by_class),
        exposures_a_week: Some(work.exposures_a_week).filter(|days| *days != build::EXPOSURES_A_WEEK),
    }
}

fn standard(rung: &Rung, work: &RawWork) -> RawStandard {
    let standard = &rung.standard;
    let silent = build::standard_of(&RawStandard::default(), work);
    RawStandard {
        sets: Some(standard.sets).filter(|sets| *sets != silent.sets),
        reach: Some(standard.reach).filter(|reach| *reach != silent.reach),
        ratio: standard.ratio,
        days: Some(standard.days).filter(|days| *days != silent.days),
        days_apart: Some(standard.days_apart).filter(|days| *days != silent.days_apart),
        side_gap: Some(standard.side_gap).filter(|gap| *gap != silent.side_gap),
    }
}
