//! W, the load that all of a day's sets carried, the sets that are judged, and light days. Common practice, no source.

use rungwright::logbook::record::PhaseKind;

use crate::kit::{Judged, last_day, last_day_on_belt};
use crate::support::{Ago, Athlete, Phrase, Said, Session, TODAY, athlete, one_set, reps};
use crate::{fair_sets, good_sets, lifter};

/// A day on the belt rung (3 × 4–6), without any before.
fn day(session: impl Into<Session>) -> Judged {
    last_day_on_belt(&lifter().did(2.days_ago(), session))
}

/// The same after a full day at 90 kg in all, `days` before it.
fn day_after(days: i32, session: impl Into<Session>) -> Judged {
    let athlete = lifter()
        .did((2 + days).days_ago(), fair_sets())
        .did(2.days_ago(), session);
    last_day_on_belt(&athlete)
}

#[test]
fn straight_sets_are_their_own_work_load() {
    assert_eq!(day(fair_sets()).work_kg, Some(90.0));
}

#[test]
fn a_top_set_with_back_offs_is_the_third_heaviest_of_three_asked() {
    let session = one_set(4)
        .with(20.0)
        .then(one_set(5).with(14.0))
        .then(2.sets_of(5).with(12.0));
    assert_eq!(day(session).work_kg, Some(92.0));
}

#[test]
fn sets_within_ten_percent_of_the_heaviest_are_work_and_lighter_ones_are_not() {
    let backed_off = |belt: f64| day(one_set(5).with(20.0).then(2.sets_of(6).with(belt)));
    assert_eq!(backed_off(10.0).work_kg, Some(90.0));
    assert_eq!(backed_off(9.9).work_kg, Some(100.0));
}

#[test]
fn a_ramp_is_judged_by_its_top() {
    let ramp = reps([8]).with(-20.0).then(one_set(5)).then(one_set(5).with(15.0));
    let day = day(ramp);
    assert_eq!((day.work_kg, day.amounts), (Some(95.0), vec![5.0]));
}

#[test]
fn a_failed_set_is_work_up_to_ten_percent_over_the_last_load() {
    // 1.10 × 90 = 99 kg in all.
    let tried = |belt: f64| day_after(4, one_set(3).with(belt).failed().then(2.sets_of(5))).work_kg;
    assert_eq!(tried(19.0), Some(99.0));
    assert_eq!(tried(19.1), Some(80.0));
}

#[test]
fn without_an_earlier_day_a_failed_set_is_work_only_when_nothing_else_is() {
    assert_eq!(
        day(one_set(3).with(19.0).failed().then(2.sets_of(5))).work_kg,
        Some(80.0)
    );
    assert_eq!(day(one_set(3).with(19.0).failed()).work_kg, Some(99.0));
    assert_eq!(
        day(one_set(0).with(19.0).failed().then(one_set(1).with(5.0))).work_kg,
        Some(85.0)
    );
    assert_eq!(day(one_set(0).with(19.0).failed()).work_kg, Some(99.0));
}

#[test]
fn sets_from_ninety_nine_percent_of_the_work_load_are_judged() {
    // A fourth set, so that the three at 100 kg make the work load; 0.99 × 100 = 99.
    let beside = |belt: f64| day(3.sets_of(5).with(20.0).then(one_set(6).with(belt))).amounts;
    assert_eq!(beside(19.0), [6.0, 5.0, 5.0]);
    assert_eq!(beside(18.9), [5.0, 5.0, 5.0]);
}

#[test]
fn a_set_over_the_work_load_is_judged_only_when_it_reaches_the_range() {
    // 1.01 × 90 = 90.9. The try at 95 kg failed under 4.
    let tried = |belt: f64, count: u16| {
        let session = one_set(count).with(belt).failed().then(2.sets_of(5).with(10.0));
        day(session).amounts
    };
    assert_eq!(tried(10.9, 3), [5.0, 5.0, 3.0]);
    assert_eq!(tried(11.0, 3), [5.0, 5.0]);
    assert_eq!(tried(11.0, 4), [5.0, 5.0, 4.0]);
}

#[test]
fn the_best_sets_are_judged_as_many_as_are_asked() {
    let five = reps([4, 6, 5, 5, 3]).with(10.0);
    assert_eq!(day(five).amounts, [6.0, 5.0, 5.0]);
    let shape = athlete()
        .placed_on("toes-to-bar", "knees", 9.days_ago())
        .did(TODAY, reps([7, 12, 9, 10]));
    assert_eq!(
        last_day(&shape, "toes-to-bar", "knees").amounts,
        [12.0, 10.0, 9.0]
    );
}

#[test]
fn of_equal_sets_the_one_that_left_more_is_judged() {
    let session = one_set(5)
        .with(10.0)
        .leaving(0.0)
        .then(3.sets_of(5).with(10.0).leaving(1.0));
    assert_eq!(day(session).went, rungwright::coaching::judge::Went::In);
}

#[test]
fn a_day_under_ninety_percent_of_the_last_load_is_light() {
    // 0.90 × 90 = 81 kg in all.
    assert!(!day_after(4, 3.sets_of(5).with(1.0)).light);
    assert!(day_after(4, 3.sets_of(5).with(0.9)).light);
}

#[test]
fn after_two_weeks_a_lighter_day_is_no_light_day_any_more() {
    assert!(day_after(14, 3.sets_of(5)).light);
    assert!(!day_after(15, 3.sets_of(5)).light);
}

#[test]
fn a_lighter_day_is_light_only_after_one_that_reached_the_range_and_was_not_missed() {
    let after = |session: Session| {
        let athlete = lifter()
            .did(6.days_ago(), session)
            .did(2.days_ago(), 3.sets_of(5));
        last_day_on_belt(&athlete).light
    };
    assert!(after(one_set(4).with(10.0).then(2.sets_of(3).with(10.0))));
    assert!(!after(3.sets_of(3).with(10.0).into()));
    assert!(!after(
        one_set(4).with(10.0).then(2.sets_of(3).with(10.0).failed())
    ));
}

#[test]
fn a_max_attempt_is_far_over_the_last_load_with_one_or_two_repetitions() {
    // 1.10 × 90 = 99 kg in all.
    assert!(!day_after(4, one_set(2).with(19.0)).light);
    assert!(day_after(4, one_set(2).with(19.1)).light);
    assert!(!day_after(4, one_set(3).with(19.1)).light);
    assert!(!day_after(4, one_set(2).with(19.1).then(2.sets_of(5).with(10.0))).light);
}

#[test]
fn a_deload_lasts_its_first_day_and_six_more() {
    let trained = |days_after: i32| {
        let athlete = lifter()
            .began(9.days_ago(), PhaseKind::Deload)
            .did((9 - days_after).days_ago(), fair_sets());
        last_day_on_belt(&athlete).light
    };
    assert!(trained(0));
    assert!(trained(6));
    assert!(!trained(7));
}

#[test]
fn a_light_day_is_never_judged() {
    let athlete: Athlete = lifter()
        .did(6.days_ago(), good_sets())
        .did(2.days_ago(), 3.sets_of(4));
    assert_eq!(athlete.advice().in_short(), "add-load top-of-range");
    let only = lifter()
        .began(9.days_ago(), PhaseKind::Deload)
        .did(4.days_ago(), fair_sets());
    assert_eq!(only.advice().in_short(), "repeat light-only");
    assert_eq!(only.advice().work().load, None);
}
