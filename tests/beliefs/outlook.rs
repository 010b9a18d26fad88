//! What beliefs add to the next step, and that they change nothing else.

use rungwright::catalogue::Catalogue;
use rungwright::coaching::{Finding, NextStep, outlook};
use rungwright::strength::Estimates;

use crate::support::{Ago, Athlete, Phrase, TODAY, athlete, one_set};

fn with_beliefs(athlete: &Athlete) -> Vec<NextStep> {
    athlete.timeline_on(TODAY, |timeline| {
        let mut steps = rungwright::coaching::next_steps(timeline, Catalogue::shipped(), &athlete.plates());
        outlook::add(&mut steps, &mut Estimates::new(timeline, Catalogue::shipped()));
        steps
    })
}

/// On the rung of a quarter of 80 kg, six sessions of sets of six with 10 kg.
fn lifter() -> Athlete {
    athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-25", 100.days_ago())
        .did_each(
            [20, 17, 13, 10, 6, 3].map(|days: i32| days.days_ago()),
            3.sets_of(6).with(10.0).leaving(1.0).at_bodyweight(80.0),
        )
}

#[test]
fn verdict_prescription_and_the_reason_that_decided_stay() {
    for athlete in [
        lifter(),
        lifter().did(2.days_ago(), one_set(1).with(60.0).failed()),
    ] {
        let plain = athlete.next_steps_on(TODAY);
        let with = with_beliefs(&athlete);
        assert_eq!(plain.len(), with.len());
        for (plain, with) in plain.iter().zip(&with) {
            assert_eq!(plain.verdict, with.verdict);
            assert_eq!(plain.prescription, with.prescription);
            assert_eq!(plain.cautions, with.cautions);
            assert_eq!(with.reasons[..plain.reasons.len()], plain.reasons[..]);
        }
    }
}

#[test]
fn the_chance_is_that_of_the_lowest_asked_with_the_reserve() {
    let athlete = lifter();
    let step = &with_beliefs(&athlete)[0];
    let work = step.prescription.as_ref().unwrap();
    let load = work.load.as_ref().unwrap().system;
    let belief = athlete.timeline_on(TODAY, |timeline| {
        rungwright::strength::belief_of(timeline, "pull-up", None)
            .unwrap()
            .belief
    });
    let reps = work.asked.lo() + work.reserve.unwrap().reps();
    assert_eq!(step.chance, Some(belief.chance_of_reps(load, reps)));
    let expected = step.expected_reps.unwrap();
    assert!(
        expected > work.asked.lo(),
        "six were done with one left: {expected}"
    );
    assert!((0.0..=1.0).contains(&step.chance.unwrap()));
}

#[test]
fn nothing_logged_gives_no_chance() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-25", 10.days_ago());
    let step = &with_beliefs(&athlete)[0];
    assert_eq!((step.chance, step.expected_reps), (None, None));
}

#[test]
fn a_step_forward_that_is_likelier_to_fail_says_so() {
    // All at the top with the reserve on one day, after weeks of missing at the same load.
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-25", 100.days_ago())
        .did_each(
            [24, 21, 17, 14, 10, 7].map(|days: i32| days.days_ago()),
            3.sets_of(3).with(15.0).failed().at_bodyweight(80.0),
        )
        .did(
            3.days_ago(),
            3.sets_of(6).with(15.0).leaving(1.0).at_bodyweight(80.0),
        );
    let step = &with_beliefs(&athlete)[0];
    let says = step
        .reasons
        .iter()
        .any(|found| matches!(found, Finding::LongShot { .. }));
    assert_eq!(
        says,
        step.verdict.is_forward() && step.chance.unwrap() < 0.5,
        "{step:?}"
    );
    assert!(step.verdict.is_forward(), "{:?}", step.verdict);
    assert!(says);
}

/// On the rung of three fingers, strong with both arms.
fn strong_on_three_fingers() -> Athlete {
    athlete()
        .weighing(80.0)
        .placed_on("one-arm-pull-up", "fingers-3", 60.days_ago())
        .did_each(
            [24, 21, 17, 14, 10, 7].map(|days: i32| days.days_ago()),
            3.sets_of(3)
                .with(75.0)
                .leaving(1.0)
                .at_bodyweight(80.0)
                .of("pull-up"),
        )
}

#[test]
fn what_holds_a_rail_back_joins_its_reasons_last() {
    let athlete = strong_on_three_fingers().did(
        4.days_ago(),
        2.holds_of(3).left().at_bodyweight(80.0).of("one-arm-hang"),
    );
    let steps = with_beliefs(&athlete);
    let rules: Vec<Vec<&str>> = steps
        .iter()
        .map(|step| step.reasons.iter().map(Finding::rule).collect())
        .collect();
    assert_eq!(rules[0].last(), Some(&"held-back"), "{rules:?}");
    assert!(
        !rules[1].contains(&"held-back"),
        "the right hand has not hung: {rules:?}"
    );
}

#[test]
fn who_fails_with_three_fingers_is_given_no_good_chance_with_them_however_strong_both_arms_are() {
    let strong = strong_on_three_fingers();
    let failed = strong
        .clone()
        .did(3.days_ago(), one_set(1).right().failed().at_bodyweight(80.0));
    let chance = |athlete: &Athlete| {
        let right = with_beliefs(athlete).remove(1);
        assert_eq!(right.prescription.unwrap().rung, "fingers-3");
        right.chance.unwrap()
    };
    assert!(chance(&strong) > 0.9, "{}", chance(&strong));
    assert!(chance(&failed) < 0.6, "{}", chance(&failed));
}
