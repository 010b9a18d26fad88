//! Misses and stalls: back off before stepping back. Common practice, no source.

use rungwright::coaching::NextStep;

use crate::lifter;
use crate::support::{Ago, Athlete, Phrase, Said, Sets, athlete, reps};

/// Three failed sets under the range, at 110 kg in all.
fn missed() -> Sets {
    3.sets_of(3).with(30.0).failed()
}

fn after(days: &[(i32, Sets)]) -> NextStep {
    let told = days.iter().fold(lifter(), |athlete, (days, sets)| {
        athlete.did(days.days_ago(), sets.clone())
    });
    told.advice()
}

fn fair() -> Sets {
    3.sets_of(5).with(30.0).leaving(1.0)
}

#[test]
fn one_missed_day_is_repeated() {
    let once = after(&[(6, fair()), (3, missed())]);
    assert_eq!(once.in_short(), "repeat missed-once");
    assert_eq!((once.belt(), once.work().sets), (30.0, 3));
}

#[test]
fn two_missed_days_in_a_row_cost_five_percent() {
    let twice = after(&[(6, missed()), (3, missed())]);
    assert_eq!(twice.in_short(), "back-off missed-twice");
    // 0.95 × 110 = 104.5.
    assert_eq!((twice.belt(), twice.work().sets), (23.75, 3));
    let apart = after(&[(9, missed()), (6, fair()), (3, missed())]);
    assert_eq!(apart.in_short(), "repeat missed-once");
}

#[test]
fn the_second_pair_backs_off_again_and_the_third_goes_a_rung_or_ten_percent_down() {
    let three = after(&[(9, missed()), (6, missed()), (3, missed())]);
    assert_eq!(three.in_short(), "back-off missed-twice");
    let four = after(&[(12, missed()), (9, missed()), (6, missed()), (3, missed())]);
    assert_eq!(four.in_short(), "back-off missed-again");
    // The rung below is the same movement: 0.90 × 110 = 99.
    assert_eq!(four.belt(), 18.75);
}

#[test]
fn a_pair_counts_while_its_earlier_day_is_eighty_four_days_old_at_most() {
    let first_pair = |days: i32| {
        after(&[
            (days, missed()),
            (80, missed()),
            (70, fair()),
            (9, missed()),
            (6, missed()),
            (3, missed()),
        ])
        .rule()
    };
    assert_eq!(first_pair(84), "missed-again");
    assert_eq!(first_pair(85), "missed-twice");
}

#[test]
fn pairs_of_an_earlier_stay_do_not_count() {
    let again = lifter()
        .did_each([21.days_ago(), 18.days_ago(), 15.days_ago()], missed())
        .did(12.days_ago(), 3.sets_of(6).on("bodyweight"))
        .did_each([9.days_ago(), 6.days_ago()], missed())
        .advice();
    assert_eq!(again.in_short(), "back-off missed-twice");
}

/// Without load, on the rung above the lowest.
fn unloaded(rung: &str, days: &[i32]) -> NextStep {
    let days = days.iter().map(|days| days.days_ago());
    athlete()
        .placed_on("toes-to-bar", rung, 60.days_ago())
        .did_each(days, 3.sets_of(4).failed())
        .advice()
}

#[test]
fn without_load_the_first_pair_costs_a_set_and_the_second_a_rung() {
    let twice = unloaded("level", &[6, 3]);
    assert_eq!(
        (twice.in_short(), twice.work().sets),
        ("back-off missed-twice".to_owned(), 2)
    );
    let again = unloaded("level", &[9, 6, 3]);
    assert_eq!(again.in_short(), "step-back missed-again");
    assert_eq!(again.next_rung.as_deref(), Some("knees"));
}

#[test]
fn on_the_lowest_rung_a_step_back_is_a_set_fewer() {
    let again = unloaded("knees", &[9, 6, 3]);
    assert_eq!(
        (again.in_short(), again.work().sets),
        ("back-off missed-again".to_owned(), 2)
    );
}

#[test]
fn the_cut_that_needs_help_nobody_logged_is_bodyweight_and_a_set_fewer() {
    let at_bodyweight = |athlete: Athlete| {
        athlete
            .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
            .did_each([6.days_ago(), 3.days_ago()], 3.sets_of(4).failed())
            .advice()
    };
    let plain = at_bodyweight(athlete().weighing(80.0));
    assert_eq!(plain.in_short(), "back-off missed-twice");
    assert_eq!((plain.belt(), plain.work().sets), (0.0, 2));
    // With help once logged: 0.95 × 80 = 76, so 5 kg help.
    let helped = athlete()
        .weighing(80.0)
        .did(90.days_ago(), 1.sets_of(5).with(-20.0).of("dip"));
    let helped = at_bodyweight(helped);
    assert_eq!((helped.belt(), helped.work().sets), (-5.0, 3));
}

#[test]
fn where_every_cut_needs_help_nobody_logged_the_third_pair_goes_a_rung_down() {
    let days = [12, 9, 6, 3].map(|days: i32| days.days_ago());
    let advice = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
        .did_each(days, 3.sets_of(4).failed())
        .advice();
    assert_eq!(advice.in_short(), "step-back missed-again");
    assert_eq!(
        (advice.next_rung.as_deref(), &advice.work().load),
        (Some("assisted"), &None)
    );
}

/// Days of these repetitions in three sets at 90 kg, three days apart, the last three days ago.
fn days_of(sets: &[[u16; 3]]) -> Athlete {
    let count = i32::try_from(sets.len()).unwrap();
    sets.iter().zip(1..).fold(lifter(), |athlete, (sets, nth)| {
        let day = (3 * (count - nth + 1)).days_ago();
        athlete.did(day, reps(*sets).with(10.0).leaving(1.0))
    })
}

#[test]
fn six_days_without_a_repetition_more_are_a_stall_and_five_are_not() {
    let stalled = days_of(&[[5, 5, 5]; 6]).advice();
    assert_eq!(stalled.in_short(), "back-off stalled");
    assert_eq!((stalled.belt(), stalled.work().sets), (5.0, 3));
    assert_eq!(days_of(&[[5, 5, 5]; 5]).advice().in_short(), "add-reps in-range");
}

#[test]
fn one_repetition_more_in_the_last_four_days_is_no_stall() {
    let five = [5, 5, 5];
    let rule = |days: &[[u16; 3]]| days_of(days).advice().rule();
    assert_eq!(rule(&[five, five, [5, 5, 6], five, five, five]), "in-range");
    assert_eq!(rule(&[five, [5, 5, 6], [5, 5, 6], five, five, five]), "stalled");
    assert_eq!(rule(&[[5, 5, 6], five, five, [5, 5, 6], five, five]), "stalled");
}

#[test]
fn a_stall_is_told_within_one_percent_of_the_load() {
    // 0.99 × 90 = 89.1 kg in all.
    let first = |belt: f64| {
        let days = [15, 12, 9, 6, 3].map(|days: i32| days.days_ago());
        lifter()
            .did(18.days_ago(), 3.sets_of(5).with(belt).leaving(1.0))
            .did_each(days, 3.sets_of(5).with(10.0).leaving(1.0))
            .advice()
            .rule()
    };
    assert_eq!(first(9.1), "stalled");
    assert_eq!(first(9.0), "in-range");
    assert_eq!(first(10.9), "stalled");
    assert_eq!(first(11.0), "in-range");
}

#[test]
fn a_side_that_waits_for_fewer_repetitions_of_the_other_has_not_stalled() {
    let other = |count: u16| {
        let days = [18, 15, 12, 9, 6, 3].map(|days: i32| days.days_ago());
        let squats = |count: u16| 3.sets_of(count).leaving(1.0);
        athlete()
            .weighing(80.0)
            .placed_on("pistol-squat", "pistol", 60.days_ago())
            .did_each(
                days,
                squats(5).with(-2.0).left().then(squats(count).with(-2.0).right()),
            )
            .left_and_right()
            .0
            .gives("stalled")
    };
    assert!(other(4));
    assert!(!other(3));
}

#[test]
fn without_load_nothing_stalls() {
    let days = [18, 15, 12, 9, 6, 3].map(|days: i32| days.days_ago());
    let advice = athlete()
        .placed_on("toes-to-bar", "level", 60.days_ago())
        .did_each(days, 3.sets_of(8).leaving(1.0))
        .advice();
    assert_eq!(advice.in_short(), "add-reps in-range");
}
