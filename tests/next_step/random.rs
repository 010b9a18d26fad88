//! Laws that hold for every log: one verdict a rail, the same each time, sides that wait, loads that can be hung and stay in
//! their bounds, no step up without a pass, pounds or kilograms. Bounds: common practice, no
//! source; 2 to 10 %: American College of Sports Medicine, position stand 2009.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, TestRunner};
use rungwright::catalogue::Catalogue;
use rungwright::coaching::{Finding, NextStep, PlatesOnHand, Verdict, next_steps};
use rungwright::logbook::Log;
use rungwright::timeline::{Form, LoggedSet, Timeline};
use rungwright::units::{KG_PER_LB, Mass, Rail, Typed, Unit};

use crate::random_bounds::{hangs, rung_of, within_bounds, work_kg};
use crate::random_logs::{Told, told};
use crate::support::TODAY;

/// How many logs: some by default, many with RUNGWRIGHT_LONG_TESTS.
fn some() -> Config {
    let long = std::env::var_os("RUNGWRIGHT_LONG_TESTS").is_some();
    Config {
        failure_persistence: None,
        ..Config::with_cases(if long { 20_000 } else { 64 })
    }
}

fn plates(told: &Told) -> PlatesOnHand {
    let typed: Vec<Typed> = told
        .plates
        .iter()
        .map(|plate| Typed::new(*plate, Unit::Kg).unwrap())
        .collect();
    PlatesOnHand::new(&typed, Mass::from_kg(told.gear))
}

fn as_told(typed: Typed) -> Typed {
    typed
}

fn advice(told: &Told, log: &Log) -> Vec<NextStep> {
    let timeline = Timeline::new(log, Catalogue::shipped(), TODAY.date());
    next_steps(&timeline, Catalogue::shipped(), &plates(told))
}

proptest! {
    #![proptest_config(some())]

    #[test]
    fn each_rail_has_exactly_one_verdict_and_the_same_each_time(told in told()) {
        let log = told.log(1, as_told);
        let steps = advice(&told, &log);
        let rails: BTreeSet<(&str, Rail)> = steps.iter().map(|step| (step.ladder.as_str(), step.rail)).collect();
        prop_assert_eq!(rails.len(), steps.len());
        for step in &steps {
            prop_assert!(!step.reasons.is_empty());
            prop_assert_eq!(step.prescription.is_none(), step.behind == Verdict::Pause);
            let moves = matches!(step.verdict, Verdict::StepUp | Verdict::StepBack);
            prop_assert_eq!(step.next_rung.is_some(), moves);
        }
        prop_assert_eq!(advice(&told, &log), steps);
    }

    #[test]
    fn sets_of_one_form_or_ladder_are_those_that_reading_the_whole_log_finds(told in told()) {
        let log = told.log(1, as_told);
        let timeline = Timeline::new(&log, Catalogue::shipped(), TODAY.date());
        let places = |sets: &mut dyn Iterator<Item = &LoggedSet<'_>>| sets.map(|set| set.order).collect::<Vec<usize>>();
        for ladder in Catalogue::shipped().ladders() {
            let mut tagged = timeline.sets.iter().filter(|set| set.tag.is_some_and(|tag| tag.is_on(ladder)));
            prop_assert_eq!(places(&mut timeline.on_ladder(ladder)), places(&mut tagged));
            for form in ladder.rungs.iter().map(Form::of) {
                for rail in [Rail::Left, Rail::Right, Rail::Both] {
                    let mut counting =
                        timeline.evidence().filter(|set| set.form == Some(form) && set.counts_for(rail));
                    prop_assert_eq!(places(&mut timeline.of_form(form, rail)), places(&mut counting));
                }
            }
        }
    }

    #[test]
    fn ids_and_the_order_in_which_records_came_change_nothing(told in told(), salt in 2_u64..) {
        let once = advice(&told, &told.log(1, as_told));
        prop_assert_eq!(advice(&told, &told.log(salt, as_told)), once);
    }

    #[test]
    fn pounds_and_kilograms_give_the_same_advice(told in told()) {
        let pounds = |typed: Typed| Typed::new(typed.value() / KG_PER_LB, Unit::Lb).unwrap();
        let kilograms = advice(&told, &told.log(1, as_told));
        let pounds = advice(&told, &told.log(1, pounds));
        prop_assert_eq!(kilograms.len(), pounds.len());
        for (one, other) in kilograms.iter().zip(&pounds) {
            prop_assert_eq!(in_words(one), in_words(other));
            let loads = |step: &NextStep| step.prescription.as_ref().and_then(|work| work.load.clone());
            if let (Some(one), Some(other)) = (loads(one), loads(other)) {
                prop_assert!((one.system.kg() - other.system.kg()).abs() < 1e-9);
                prop_assert!((one.added.kg() - other.added.kg()).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn loads_can_be_hung_and_stay_in_their_bounds(told in told()) {
        let log = told.log(1, as_told);
        let timeline = Timeline::new(&log, Catalogue::shipped(), TODAY.date());
        for step in advice(&told, &log) {
            hangs(&told, &step)?;
            within_bounds(&told, &timeline, &step)?;
        }
    }

    #[test]
    fn nobody_steps_up_without_a_logged_pass(told in told()) {
        let log = told.log(1, as_told);
        let timeline = Timeline::new(&log, Catalogue::shipped(), TODAY.date());
        for step in advice(&told, &log) {
            if step.behind == Verdict::StepUp {
                is_passed(&timeline, &step)?;
            }
        }
    }

    #[test]
    fn the_stronger_side_waits(told in told()) {
        let log = told.log(1, as_told);
        let timeline = Timeline::new(&log, Catalogue::shipped(), TODAY.date());
        let steps = advice(&told, &log);
        if let [left, right] = steps.as_slice() && left.ladder == right.ladder {
            waits(&timeline, left, right)?;
            waits(&timeline, right, left)?;
        }
    }
}

/// All that is said but its numbers.
fn in_words(step: &NextStep) -> impl PartialEq + std::fmt::Debug + use<> {
    let rules: Vec<&str> = step.reasons.iter().map(Finding::rule).collect();
    let cautions: Vec<&str> = step.cautions.iter().map(|note| note.rule()).collect();
    let work = step
        .prescription
        .as_ref()
        .map(|work| (work.rung.clone(), work.sets, work.asked));
    (
        (step.rail, step.rung.clone(), step.verdict, step.behind),
        rules,
        cautions,
        work,
    )
}

/// Looked up in the log itself: on each of the days told, as many sets as the standard asks, none out of form, each with as
/// many reps or seconds, or (fewer, heavier) at least three or the range's lower end.
fn is_passed(timeline: &Timeline<'_>, step: &NextStep) -> Result<(), TestCaseError> {
    let rung = rung_of(step);
    let days = &step.passed_on;
    prop_assert!(days.len() >= usize::from(rung.standard.days));
    let (first, last) = days.first().zip(days.last()).unwrap();
    prop_assert!((*last - *first).num_days() >= i64::from(rung.standard.days_apart));
    let least = match rung.standard.ratio {
        Some(_) if !rung.work.range.is_hold() => rung.standard.reach.min(3.0).min(rung.work.range.lo()),
        _ => rung.standard.reach,
    };
    for day in days {
        let sets = timeline.sets.iter().filter(|set| {
            let heavy = rung.standard.ratio.is_none_or(|ratio| {
                set.system
                    .zip(set.bodyweight)
                    .is_some_and(|(load, body)| load.kg() >= ratio * body.kg() - 0.011)
            });
            set.date == *day
                && set.form == Some(Form::of(rung))
                && (step.rail == Rail::Both || set.set.side.is_none_or(|side| step.rail.side() == Some(side)))
                && set.amount >= least
                && heavy
                && !set.broke_form()
        });
        prop_assert!(sets.count() >= usize::from(rung.standard.sets), "{day}");
    }
    Ok(())
}

fn waits(timeline: &Timeline<'_>, own: &NextStep, other: &NextStep) -> Result<(), TestCaseError> {
    if !own.behind.is_forward() {
        return Ok(());
    }
    let ladder = Catalogue::shipped().ladder(&own.ladder).unwrap();
    let height = |step: &NextStep| ladder.half_rungs(rung_of(step));
    prop_assert!(height(own) <= height(other), "the higher rung goes on");
    if own.rung != other.rung {
        return Ok(());
    }
    if own.behind == Verdict::StepUp {
        prop_assert_eq!(other.behind, Verdict::StepUp);
    }
    if let Some((one, two)) = work_kg(timeline, own).zip(work_kg(timeline, other)) {
        if own.behind != Verdict::StepUp {
            prop_assert!(one <= 1.01 * two + 1e-5, "the heavier side goes on");
        }
        let level = two <= 1.01 * one + 1e-5;
        let stopped = [
            Verdict::Pause,
            Verdict::Begin,
            Verdict::BackOff,
            Verdict::StepBack,
        ];
        prop_assert!(!(level && stopped.contains(&other.behind)));
        let held = other
            .reasons
            .iter()
            .any(|found| matches!(found.rule(), "side-gap" | "side-wait"));
        if level && own.behind == Verdict::AddLoad {
            prop_assert!(held || matches!(other.behind, Verdict::AddLoad | Verdict::StepUp));
        }
    }
    Ok(())
}

#[test]
fn random_logs_reach_every_verdict() {
    // Else the laws above would hold of nothing. The logs are the same in every run.
    let mut runner = TestRunner::deterministic();
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for _ in 0..400 {
        let told = told().new_tree(&mut runner).unwrap().current();
        for step in advice(&told, &told.log(1, as_told)) {
            *seen.entry(step.behind.id()).or_default() += 1;
            *seen.entry(step.verdict.id()).or_default() += usize::from(step.verdict == Verdict::WeighInFirst);
            for found in &step.reasons {
                *seen.entry(found.rule()).or_default() += 1;
            }
        }
    }
    for verdict in Verdict::ALL {
        assert!(
            seen.get(verdict.id()).is_some_and(|count| *count > 1),
            "{}: {seen:?}",
            verdict.id()
        );
    }
    for rule in [
        "side-gap",
        "side-wait",
        "minor-no-max",
        "tendon-time",
        "no-record",
    ] {
        assert!(seen.contains_key(rule), "{rule}: {seen:?}");
    }
}
