//! The demo gym: everything there is to see shows, on any day, the same every time; and its own ladder is sound.

#![allow(clippy::unwrap_used)] // a test's helpers may stop it

use std::collections::BTreeSet;

use chrono::{Datelike, NaiveDate};
use rungwright::catalogue::{Catalogue, OwnFile};
use rungwright::coaching::next_step::of_all;
use rungwright::coaching::roster::{Need, roster};
use rungwright::coaching::{NextStep, PlatesOnHand, Verdict};
use rungwright::demo::{Gym, Plan, gym};
use rungwright::logbook::record::{Fact, Load, PhaseKind};
use rungwright::logbook::{Log, Record};
use rungwright::units::{Mass, Rail, Unit};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn shown_for(on: NaiveDate, seed: u64) -> Gym {
    gym(&Plan {
        athletes: 12,
        years: 1,
        seed,
        on,
    })
}

/// The gym as commands read it: its catalogue, its logs in order, its plates.
fn opened(gym: Gym) -> (Catalogue, Vec<Log>, PlatesOnHand) {
    let own: Vec<OwnFile> = gym
        .ladders
        .iter()
        .map(|(file, text)| OwnFile::new(*file, *text))
        .collect();
    let (catalogue, problems) = Catalogue::shipped().with_own(&own);
    assert_eq!(problems, []);
    let plates = PlatesOnHand::new(&gym.plates, Mass::ZERO);
    let logs = gym
        .athletes
        .into_iter()
        .map(|(name, mut records)| {
            records.sort_by(Log::order);
            Log {
                folder: name.clone(),
                name,
                records,
            }
        })
        .collect();
    (catalogue, logs, plates)
}

fn advice(gym: Gym, on: NaiveDate) -> Vec<NextStep> {
    let (catalogue, logs, plates) = opened(gym);
    of_all(&logs, &catalogue, &plates, on)
}

fn roster_needs(gym: Gym, on: NaiveDate) -> Vec<Need> {
    let (catalogue, logs, plates) = opened(gym);
    roster(&logs, &catalogue, &plates, on)
        .iter()
        .map(|line| line.need)
        .collect()
}

fn facts(gym: &Gym) -> impl Iterator<Item = &Record> {
    gym.athletes.iter().flat_map(|(_, records)| records)
}

#[test]
fn every_verdict_shows_whatever_day_the_gym_is_shown_for() {
    // A leap day, and a year's last day long ago.
    for on in ["2024-02-29", "1999-12-31"] {
        let on = day(on);
        let seen: BTreeSet<Verdict> = advice(shown_for(on, 1), on)
            .iter()
            .map(|step| step.verdict)
            .collect();
        let missing: Vec<&Verdict> = Verdict::ALL
            .iter()
            .filter(|verdict| !seen.contains(verdict))
            .collect();
        assert!(missing.is_empty(), "{on}: {missing:?}");
    }
}

#[test]
fn another_seed_makes_other_days_and_the_same_verdicts_to_see() {
    let on = day("2026-11-25");
    let seen: BTreeSet<Verdict> = advice(shown_for(on, 77), on)
        .iter()
        .map(|step| step.verdict)
        .collect();
    assert_eq!(seen.len(), Verdict::ALL.len(), "{seen:?}");
}

#[test]
fn a_coach_finds_every_need_and_most_people_simply_going_on() {
    let on = day("2026-11-25");
    let gym = gym(&Plan {
        athletes: 36,
        years: 1,
        seed: 1,
        on,
    });
    let needs = roster_needs(gym, on);
    let count = |need: Need| needs.iter().filter(|own| **own == need).count();
    for need in Need::ALL {
        assert!(count(need) > 0, "{need:?} shows");
    }
    assert!(count(Need::Stuck) <= 10, "{} of 36 stuck", count(Need::Stuck));
    assert!(
        count(Need::GoingOn) >= 10,
        "{} of 36 going on",
        count(Need::GoingOn)
    );
}

#[test]
fn the_same_plan_gives_the_same_records() {
    let on = day("2026-11-25");
    let few = || {
        gym(&Plan {
            athletes: 2,
            years: 1,
            seed: 1,
            on,
        })
    };
    let (one, two) = (few(), few());
    assert_eq!(one.athletes, two.athletes);
}

#[test]
fn the_gym_has_both_units_cuts_and_gains_sides_holds_pain_and_a_minor() {
    let on = day("2026-11-25");
    let gym = shown_for(on, 1);
    assert_eq!(gym.athletes.len(), 12);
    let typed = |unit: Unit| {
        facts(&gym).any(|record| match &record.what {
            Fact::Set(set) => matches!(set.load, Some(Load::Added(typed)) if typed.unit() == unit),
            _ => false,
        })
    };
    assert!(typed(Unit::Kg) && typed(Unit::Lb));
    let phase = |kind: PhaseKind| {
        facts(&gym).any(|record| matches!(record.what, Fact::Phase { kind: own, .. } if own == kind))
    };
    assert!(phase(PhaseKind::Cut) && phase(PhaseKind::Gain));
    assert!(facts(&gym).any(|record| matches!(record.what, Fact::Pain { score, .. } if score >= 6)));
    let minor = |record: &Record| match &record.what {
        Fact::Profile { born: Some(born), .. } => on.years_since(born.date()).unwrap() < 18,
        _ => false,
    };
    assert!(facts(&gym).any(minor));
    let never_weighed = |records: &[Record]| {
        !records
            .iter()
            .any(|record| matches!(record.what, Fact::WeighIn { .. }))
    };
    assert_eq!(
        gym.athletes
            .iter()
            .filter(|(_, records)| never_weighed(records))
            .count(),
        1
    );
    let steps = advice(gym, on);
    assert!(
        steps.iter().any(|step| step.ladder == "ring-dip"),
        "somebody climbs the gym's own ladder"
    );
    let rungs = |rail: Rail| -> Vec<&str> {
        steps
            .iter()
            .filter(|step| step.rail == rail)
            .map(|step| step.rung.as_str())
            .collect()
    };
    assert_ne!(rungs(Rail::Left), rungs(Rail::Right), "some sides stand apart");
    let doubts = |step: &&NextStep| step.cautions.iter().any(|note| note.rule() == "check-entry");
    assert!(
        steps.iter().any(|step| doubts(&step)),
        "a slip of the finger is pointed at"
    );
}

#[test]
fn about_thirty_sets_a_week_an_athlete_for_a_year() {
    let gym = shown_for(day("2026-11-25"), 1);
    let of = |records: &[Record]| {
        let is_set = |record: &&Record| matches!(record.what, Fact::Set(_));
        records.iter().filter(is_set).count()
    };
    for (name, records) in &gym.athletes {
        let sets = of(records);
        assert!(
            (52 * 20..=52 * 50).contains(&sets),
            "{name}: {sets} sets in a year"
        );
        assert!(records.iter().all(|record| record.at.date().year() >= 2025));
    }
    let sets: usize = gym.athletes.iter().map(|(_, records)| of(records)).sum();
    let a_week = sets / gym.athletes.len() / 52;
    assert!((26..=34).contains(&a_week), "{a_week} sets a week an athlete");
}
