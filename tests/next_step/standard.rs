//! The standard of a rung, met on a day, and the rung passed. Common practice, no source; fewer
//! reps with more load by Epley (Boyd Epley Workout, 1985): load × (30 + reps) is the same for sets as hard.

use crate::kit::{last_day, last_day_on_belt};
use crate::support::{Ago, Athlete, Day, Phrase, Said, Session, Sets, TODAY, athlete, one_set, reps};
use crate::{fair_sets, lifter, standard_sets};

fn meets(session: impl Into<Session>) -> bool {
    last_day_on_belt(&lifter().did(TODAY, session)).meets
}

#[test]
fn ten_grams_under_the_standards_load_are_forgiven_and_twenty_are_not() {
    // 1.25 × 80 = 100 kg in all.
    assert!(meets(3.sets_of(5).with(19.99)));
    assert!(!meets(3.sets_of(5).with(19.98)));
    // 1.1 × 100 = 110 kg in all, a ratio that no binary number has.
    let muscle_ups = |belt: f64| {
        let athlete = athlete()
            .weighing(100.0)
            .placed_on("muscle-up", "weighted", 9.days_ago())
            .did(TODAY, 3.sets_of(2).with(belt));
        last_day(&athlete, "muscle-up", "weighted").meets
    };
    assert!(muscle_ups(9.99));
    assert!(!muscle_ups(9.98));
}

#[test]
fn the_asked_reserve_is_part_of_the_standard_and_an_unlogged_one_counts() {
    assert!(meets(3.sets_of(5).with(20.0).leaving(1.0)));
    assert!(!meets(3.sets_of(5).with(20.0).leaving(0.5)));
    assert!(meets(3.sets_of(5).with(20.0)));
    assert!(!meets(3.sets_of(5).with(20.0).failed()));
    assert!(!meets(3.sets_of(5).with(20.0).leaving(3.0).out_of_form()));
}

#[test]
fn a_failed_set_meets_a_standard_that_asks_no_reserve() {
    let singles = |sets: Sets| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("one-arm-pull-up", "one-arm", 9.days_ago())
            .did(TODAY, sets.left());
        athlete.left_and_right().0.passed_on.len()
    };
    assert_eq!(singles(3.sets_of(1).failed()), 1);
    assert_eq!(singles(3.sets_of(1).out_of_form()), 0);
}

#[test]
fn the_standards_sets_are_looked_for_among_all_of_the_day() {
    let among = one_set(8)
        .then(2.sets_of(5).with(20.0))
        .then(reps([3, 5]).with(20.0));
    assert!(meets(among));
    assert!(!meets(one_set(8).then(2.sets_of(5).with(20.0))));
    assert!(!meets(reps([5, 5, 4]).with(20.0)));
}

#[test]
fn a_heavier_set_may_have_fewer_repetitions_but_not_under_three() {
    // 100 × (30 + 5) / (30 + 3) = 106.061 kg in all; here nothing is forgiven.
    assert!(meets(3.sets_of(3).with(26.07)));
    assert!(!meets(3.sets_of(3).with(26.06)));
    assert!(!meets(3.sets_of(2).with(60.0)));
}

#[test]
fn where_the_range_begins_under_three_a_heavier_set_may_have_as_few() {
    // Standard 3 × 3 at 140 kg in all, range from 2: 140 × 33 / 32 = 144.375.
    let two = |belt: f64| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", "plus-75", 9.days_ago())
            .did(TODAY, 3.sets_of(2).with(belt));
        last_day(&athlete, "weighted-pull-up", "plus-75").meets
    };
    assert!(two(64.375));
    assert!(!two(64.37));
}

#[test]
fn a_lighter_set_meets_it_with_no_number_of_repetitions() {
    assert!(!meets(3.sets_of(20).with(15.0)));
}

#[test]
fn a_heavier_hold_may_not_be_shorter() {
    let hung = |belt: f64, seconds: u16| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("one-arm-hang", "one-arm", 9.days_ago())
            .did(TODAY, 3.holds_of(seconds).with(belt).left());
        athlete.left_and_right().0.passed_on.len()
    };
    assert_eq!(hung(0.0, 20), 1);
    assert_eq!(hung(20.0, 19), 0);
}

/// Days that meet the standard (`S`) or not (`f` fair, `m` missed), oldest first, two days apart, the last two days ago.
fn days(story: &str) -> Athlete {
    let count = i32::try_from(story.len()).unwrap();
    story.chars().zip(1..).fold(lifter(), |athlete, (kind, nth)| {
        let day = (2 * (count - nth + 1)).days_ago();
        athlete.did(
            day,
            match kind {
                'S' => standard_sets(),
                'm' => 3.sets_of(3).with(20.0).failed(),
                _ => 3.sets_of(4).with(20.0).leaving(1.0),
            },
        )
    })
}

#[test]
fn a_rung_is_passed_on_two_days_of_the_last_four() {
    assert_eq!(days("S").advice().in_short(), "repeat one-more-day");
    assert_eq!(days("SS").advice().in_short(), "step-up standard-met");
    assert_eq!(days("SffS").advice().in_short(), "step-up standard-met");
    assert_eq!(days("SfffS").advice().in_short(), "repeat one-more-day");
    assert_eq!(days("SSff").advice().in_short(), "step-up standard-met");
    assert_eq!(days("SSfff").advice().rule(), "in-range");
}

#[test]
fn a_miss_today_holds_the_step_up_and_one_before_does_not() {
    assert_eq!(days("SSm").advice().in_short(), "repeat missed-once");
    assert_eq!(days("SSmf").advice().in_short(), "step-up standard-met");
}

#[test]
fn the_days_that_pass_a_rung_lie_two_days_apart() {
    let on = |first: Day, second: Day| {
        let athlete = lifter().did_each([first, second], standard_sets());
        athlete.advice().in_short()
    };
    assert_eq!(on(3.days_ago(), 2.days_ago()), "repeat one-more-day");
    assert_eq!(on(4.days_ago(), 2.days_ago()), "step-up standard-met");
}

#[test]
fn the_days_that_passed_it_are_told() {
    let advice = days("SfS").advice();
    assert_eq!(advice.passed_on, [6.days_ago().date(), 2.days_ago().date()]);
    assert_eq!(advice.next_rung.as_deref(), Some("plus-50"));
}

#[test]
fn days_before_a_fall_from_above_pass_nothing() {
    // A set of plus-50 with a repetition would move the rung; a try that gave none moves nothing.
    let fell = lifter()
        .did_each([16.days_ago(), 13.days_ago()], standard_sets())
        .did(10.days_ago(), one_set(0).on("plus-50").with(40.0).failed())
        .did(4.days_ago(), standard_sets())
        .did(1.days_ago(), fair_sets());
    assert_eq!(fell.advice().passed_on, [4.days_ago().date()]);
    // Nor does the day of the fall itself.
    let that_day = lifter()
        .did(
            10.days_ago(),
            standard_sets().then(one_set(0).on("plus-50").with(40.0).failed()),
        )
        .did(1.days_ago(), standard_sets());
    assert_eq!(that_day.advice().passed_on, [1.days_ago().date()]);
    let no_fall = lifter()
        .did_each([16.days_ago(), 13.days_ago()], standard_sets())
        .did(4.days_ago(), standard_sets())
        .did(1.days_ago(), fair_sets());
    assert_eq!(no_fall.advice().passed_on.len(), 3);
}

#[test]
fn a_passed_rung_whose_next_asks_something_unlogged_is_repeated() {
    let hung = |seconds: u16| {
        athlete()
            .weighing(80.0)
            .placed_on("one-arm-pull-up", "two-arm", 30.days_ago())
            .did_each([6.days_ago(), 3.days_ago()], 3.sets_of(6).leaving(1.0))
            .did(
                3.days_ago(),
                1.holds_of(seconds)
                    .of("one-arm-hang")
                    .left()
                    .then(1.holds_of(seconds).of("one-arm-hang").right()),
            )
            .left_and_right()
            .0
    };
    assert_eq!(hung(9).in_short(), "repeat entry-missing");
    assert_eq!(hung(10).in_short(), "step-up standard-met");
}

#[test]
fn an_entry_takes_the_repetitions_of_a_missed_set_and_none_out_of_form() {
    let pulled = |sets: Sets| {
        athlete()
            .weighing(80.0)
            .placed_on("front-lever", "tuck", 30.days_ago())
            .did(3.days_ago(), sets.of("pull-up"))
            .advice()
            .warns("entry-not-met")
    };
    assert!(!pulled(one_set(5)));
    assert!(pulled(one_set(4)));
    assert!(!pulled(one_set(5).failed()));
    assert!(pulled(one_set(5).out_of_form()));
}

#[test]
fn an_entry_may_ask_a_ratio_with_ten_grams_of_grace() {
    // One finger's help asks five pull-ups at 1.25 × bodyweight.
    let pulled = |belt: f64| {
        athlete()
            .weighing(80.0)
            .placed_on("one-arm-pull-up", "fingers-1", 30.days_ago())
            .did(3.days_ago(), one_set(5).of("pull-up").with(belt))
            .left_and_right()
            .0
            .warns("entry-not-met")
    };
    assert!(!pulled(19.99));
    assert!(pulled(19.98));
}
