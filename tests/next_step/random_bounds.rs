//! The bounds of a load: what can be hung, and how far off the work load it may lie.

use std::collections::BTreeMap;

use proptest::prelude::*;
use rungwright::catalogue::{Catalogue, Rung};
use rungwright::coaching::judge::{Measure, exposures};
use rungwright::coaching::standing::rung_now;
use rungwright::coaching::{Finding, NextStep, Verdict};
use rungwright::timeline::Timeline;

use crate::random_logs::Told;

/// The rung that a rail stands on.
pub fn rung_of(step: &NextStep) -> &'static Rung {
    Catalogue::shipped()
        .ladder(&step.ladder)
        .and_then(|ladder| ladder.rung(&step.rung))
        .unwrap()
}

/// W of the latest judged day of the stay, kg. Falls add nothing to a rung with load.
pub fn work_kg(timeline: &Timeline<'_>, step: &NextStep) -> Option<f64> {
    let ladder = Catalogue::shipped().ladder(&step.ladder).unwrap();
    let stands = rung_now(timeline, ladder, step.rail);
    let after = stands.and_then(|stands| stands.after);
    let days = exposures(timeline, Measure::plain(rung_of(step)), step.rail, after);
    days.iter()
        .rev()
        .find(|day| !day.light)
        .and_then(|day| day.work_kg())
}

/// The plates are on hand and make the load, gear and all; help only where some was ever logged.
pub fn hangs(told: &Told, step: &NextStep) -> Result<(), TestCaseError> {
    let Some(load) = step.prescription.as_ref().and_then(|work| work.load.as_ref()) else {
        return Ok(());
    };
    let mut rack: BTreeMap<i64, i32> = BTreeMap::new();
    #[allow(clippy::cast_possible_truncation)]
    let grams = |kg: f64| (kg * 1000.0).round() as i64;
    for plate in &told.plates {
        *rack.entry(grams(*plate)).or_default() += 1;
    }
    for plate in &load.plates {
        let left = rack.entry(grams(plate.mass().kg())).or_default();
        *left -= 1;
        prop_assert!(*left >= 0, "{} is not on hand", plate);
    }
    let gear = if load.plates.is_empty() { 0.0 } else { told.gear };
    let hung = load.plates.iter().map(|plate| plate.mass().kg()).sum::<f64>() + gear;
    prop_assert!((hung - load.added.kg().abs()).abs() < 1e-9);
    prop_assert!((load.system.kg() - load.bodyweight.kg() - load.added.kg()).abs() < 1e-9);
    let helped = told.facts.iter().any(|(_, fact)| {
        matches!(fact, rungwright::logbook::Fact::Set(set)
            if matches!(set.load, Some(rungwright::logbook::Load::Assistance(_))))
    });
    prop_assert!(helped || load.added.kg() >= 0.0, "help that was never used");
    Ok(())
}

/// Every load that can be hung today, kg in all: all sums of plates, up and down.
fn loadable(told: &Told, bodyweight_kg: f64) -> Vec<f64> {
    let mut sums = vec![(0.0, 0)];
    for plate in &told.plates {
        let longer: Vec<(f64, i32)> = sums.iter().map(|(sum, count)| (sum + plate, count + 1)).collect();
        sums.extend(longer);
    }
    let hung = |(sum, count): (f64, i32)| if count > 0 { sum + told.gear } else { sum };
    sums.into_iter()
        .flat_map(|sum| [bodyweight_kg + hung(sum), bodyweight_kg - hung(sum)])
        .filter(|kg| *kg > 0.0)
        .collect()
}

/// A load lies within what its verdict allows of W.
pub fn within_bounds(told: &Told, timeline: &Timeline<'_>, step: &NextStep) -> Result<(), TestCaseError> {
    let Some(load) = step.prescription.as_ref().and_then(|work| work.load.as_ref()) else {
        return Ok(());
    };
    let kg = load.system.kg();
    let Some(work) = work_kg(timeline, step) else {
        prop_assert_eq!(step.behind, Verdict::Begin, "a load without a judged day");
        return Ok(());
    };
    match step.behind {
        Verdict::AddLoad => match step
            .reasons
            .iter()
            .find(|found| matches!(found, Finding::TopOfRange { .. } | Finding::CoarseStep { .. }))
        {
            Some(Finding::TopOfRange { .. }) => {
                prop_assert!(
                    kg >= 1.02 * work - 1e-5 && kg <= 1.10 * work + 1e-5,
                    "{kg} of {work}"
                );
                let lower = loadable(told, load.bodyweight.kg())
                    .into_iter()
                    .filter(|other| {
                        *other >= 1.02 * work - 1e-6
                            && load.added.kg() >= 0.0
                            && *other >= load.bodyweight.kg() - 1e-6
                    })
                    .fold(f64::INFINITY, f64::min);
                prop_assert!(kg <= lower + 1e-5, "{lower} is enough, not {kg}");
            }
            Some(Finding::CoarseStep { lowest, reserve, .. }) => {
                let rung = rung_of(step);
                let asked = rung.work.reserve.map_or(0.0, |reserve| reserve.reps());
                prop_assert!(kg > 1.10 * work - 1e-5);
                prop_assert!(
                    work * (30.0 + lowest + reserve) >= kg * (30.0 + rung.work.range.lo() + asked) - 1e-3
                );
            }
            other => prop_assert!(false, "load added by {other:?}"),
        },
        Verdict::BackOff => {
            let lightest = loadable(told, load.bodyweight.kg())
                .into_iter()
                .fold(f64::INFINITY, f64::min);
            let spared = load.added.kg() == 0.0;
            prop_assert!(
                kg <= 0.95 * work + 1e-5 || spared || kg <= lightest + 1e-5,
                "{kg} of {work}"
            );
        }
        // Repeats, reps and tests: never more than 4 % over W, unless nothing nearer hangs.
        Verdict::Repeat | Verdict::AddReps | Verdict::Test | Verdict::StepUp if kg > 1.04 * work + 1e-5 => {
            let nearer = loadable(told, load.bodyweight.kg())
                .into_iter()
                .filter(|other| *other >= load.bodyweight.kg() - 1e-6)
                .any(|other| (other - work).abs() < (kg - work).abs() - 1e-5);
            prop_assert!(!nearer, "{kg} of {work}");
        }
        _ => {}
    }
    Ok(())
}
