//! What a judged day was: test, missed, form, short, low, top, or in the range. The first that fits. Common practice, no source.

use rungwright::coaching::judge::Went;

use crate::kit::{last_day, last_day_on_belt};
use crate::lifter;
use crate::support::{Ago, Phrase, Session, Sets, TODAY, athlete, one_set, reps};

/// A day on the belt rung: 3 × 4–6, 1 in reserve.
fn went(session: impl Into<Session>) -> Went {
    last_day_on_belt(&lifter().did(TODAY, session)).went
}

/// At 90 kg in all, under the standard's load.
fn at_90(sets: Sets) -> Sets {
    sets.with(10.0)
}

#[test]
fn one_set_of_more_than_the_top_and_the_reserve_is_a_test() {
    // 6 + 1.
    assert_eq!(went(at_90(one_set(8))), Went::Test);
    assert_eq!(went(at_90(one_set(7))), Went::Short);
    assert_eq!(went(at_90(2.sets_of(8))), Went::Short);
    assert_eq!(went(at_90(one_set(8)).out_of_form()), Went::Form);
    assert_eq!(went(at_90(one_set(8)).failed()), Went::Test);
    assert!(Went::Test.is_top());
}

#[test]
fn only_a_rung_with_load_counted_in_repetitions_is_tested_by_one_set() {
    let knees = athlete()
        .placed_on("toes-to-bar", "knees", 9.days_ago())
        .did(TODAY, one_set(20));
    assert_eq!(last_day(&knees, "toes-to-bar", "knees").went, Went::Short);
}

#[test]
fn a_set_that_failed_under_the_range_makes_a_missed_day() {
    let with = |count: u16| went(at_90(2.sets_of(5)).then(at_90(one_set(count)).failed()));
    assert_eq!(with(3), Went::Missed);
    // In the range, but a failed set left nothing.
    assert_eq!(with(4), Went::Low);
}

#[test]
fn a_miss_goes_before_lost_form_and_lost_form_before_a_set_too_few() {
    let lost = || at_90(one_set(5)).out_of_form();
    assert_eq!(went(lost().then(at_90(one_set(3)).failed())), Went::Missed);
    assert_eq!(went(lost().then(at_90(one_set(3)))), Went::Form);
    assert_eq!(went(lost().then(at_90(2.sets_of(5)))), Went::Form);
}

#[test]
fn two_sets_of_three_are_short_and_so_is_one_stopped_under_the_range() {
    assert_eq!(went(at_90(2.sets_of(5))), Went::Short);
    assert_eq!(went(at_90(reps([5, 5, 3]))), Went::Short);
    assert_eq!(went(at_90(reps([5, 5, 4]))), Went::In);
}

#[test]
fn the_lowest_logged_reserve_makes_a_day_low() {
    let last = |left: f64| {
        went(
            at_90(2.sets_of(6))
                .leaving(2.0)
                .then(at_90(one_set(6)).leaving(left)),
        )
    };
    assert_eq!(last(0.5), Went::Low);
    assert_eq!(last(1.0), Went::Top);
}

#[test]
fn a_day_at_the_top_needs_its_reserve_logged_or_done() {
    assert_eq!(went(at_90(3.sets_of(6)).leaving(1.0)), Went::Top);
    assert_eq!(
        went(at_90(2.sets_of(6)).then(at_90(one_set(6)).leaving(1.0))),
        Went::Top
    );
    assert_eq!(went(at_90(3.sets_of(6))), Went::TopUnlogged);
    assert_eq!(went(at_90(3.sets_of(7))), Went::Top);
    assert_eq!(went(at_90(reps([7, 7, 6]))), Went::TopUnlogged);
    assert_eq!(went(at_90(reps([6, 6, 5])).leaving(1.0)), Went::In);
}

#[test]
fn where_no_reserve_is_asked_the_top_is_the_top() {
    let lowered = athlete()
        .placed_on("nordic-curl", "negative", 9.days_ago())
        .did(TODAY, 3.sets_of(6));
    assert_eq!(last_day(&lowered, "nordic-curl", "negative").went, Went::Top);
}

#[test]
fn a_day_that_meets_the_standard_is_never_missed() {
    // Plus-50 asks 4 sets; its standard is 3 × 4 at 120 kg in all. The fourth set fails under 3.
    let day = |belt: f64| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", "plus-50", 9.days_ago())
            .did(
                TODAY,
                3.sets_of(4)
                    .with(belt)
                    .leaving(1.0)
                    .then(one_set(2).with(belt).failed()),
            );
        last_day(&athlete, "weighted-pull-up", "plus-50").went
    };
    assert_eq!(day(40.0), Went::In);
    assert_eq!(day(39.0), Went::Missed);
}
