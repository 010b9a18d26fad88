//! Where to begin: placed, or by what is logged. Common practice, no source.

use rungwright::coaching::NextStep;
use rungwright::units::Side;

use crate::lifter;
use crate::support::{Ago, Athlete, Phrase, Said, Sets, athlete, one_set};

fn at(advice: &NextStep) -> (&str, &str) {
    (&advice.rung, advice.rule())
}

fn joined() -> Athlete {
    athlete()
        .weighing(80.0)
        .joined("weighted-pull-up", 100.days_ago())
}

/// Sets of long ago, so that the rail stands nowhere: without a placement it begins.
fn long_ago(athlete: Athlete, sets: Sets) -> Athlete {
    athlete.did_each([60.days_ago(), 57.days_ago()], sets)
}

#[test]
fn a_placement_is_where_to_begin_until_the_rung_is_trained() {
    assert_eq!(lifter().advice().in_short(), "begin placed");
    let trained = lifter().did(2.days_ago(), one_set(5));
    assert_eq!(trained.advice().in_short(), "repeat sets-short");
}

#[test]
fn who_logged_nothing_begins_at_the_first_rung() {
    assert_eq!(at(&joined().advice()), ("assisted", "no-record"));
}

#[test]
fn the_highest_rung_with_its_entry_and_its_standard_not_met_is_named() {
    let pulled = |sets: Sets| long_ago(joined(), sets.of("pull-up")).advice();
    // Assisted: 3 × 5 at bodyweight, 2 in reserve. Bodyweight: 3 × 8. Plus-25: 3 × 5 at 100 kg.
    assert_eq!(pulled(3.sets_of(4)).rung, "assisted");
    assert_eq!(pulled(3.sets_of(5)).rung, "bodyweight");
    assert_eq!(pulled(3.sets_of(7)).rung, "bodyweight");
    assert_eq!(pulled(3.sets_of(8)).rung, "plus-25");
    assert_eq!(pulled(3.sets_of(5).with(20.0)).rung, "plus-50");
}

#[test]
fn a_standard_is_met_by_two_days_two_days_apart_within_a_year() {
    let on = |first: i32, second: i32| {
        joined()
            .did_each([first.days_ago(), second.days_ago()], 3.sets_of(5).of("pull-up"))
            .advice()
            .rung
    };
    assert_eq!(on(60, 58), "bodyweight");
    assert_eq!(on(60, 59), "assisted");
    assert_eq!(on(365, 60), "bodyweight");
    assert_eq!(on(366, 60), "assisted");
}

#[test]
fn a_higher_rungs_standard_counts_for_all_below_it() {
    // Passed 3 × 5 at 100 kg, never 3 × 8 at bodyweight.
    let advice = long_ago(joined(), 3.sets_of(5).with(20.0).of("pull-up")).advice();
    assert_eq!(at(&advice), ("plus-50", "no-record"));
}

#[test]
fn who_met_every_standard_begins_at_the_last_rung() {
    let advice = long_ago(joined(), 3.sets_of(1).with(80.0).of("pull-up")).advice();
    assert_eq!(at(&advice), ("plus-100", "no-record"));
}

#[test]
fn the_asked_hang_lets_in_and_one_never_tried_is_to_be_tried() {
    let strong = |hang: Option<u16>| {
        let athlete = athlete().weighing(80.0).joined("one-arm-pull-up", 100.days_ago());
        let athlete = long_ago(athlete, 3.sets_of(6).of("pull-up"));
        let athlete = match hang {
            Some(length) => long_ago(athlete, 1.holds_of(length).of("one-arm-hang").left()),
            None => athlete,
        };
        athlete.left_and_right()
    };
    let (untried, _) = strong(None);
    assert_eq!(at(&untried), ("two-arm", "no-record"));
    assert!(untried.gives("entry-untested"));
    let (too_short, right) = strong(Some(9));
    assert_eq!(at(&too_short), ("two-arm", "no-record"));
    assert!(!too_short.gives("entry-untested") && right.gives("entry-untested"));
    let (long, _) = strong(Some(10));
    // The right has not hung: the left begins no higher.
    assert_eq!(at(&long), ("two-arm", "no-record"));
}

#[test]
fn where_a_rail_begins_is_said_as_it_came_about() {
    use rungwright::coaching::Finding;
    use rungwright::coaching::finding::Begins;
    let why = |advice: &NextStep| match advice.reasons.first() {
        Some(Finding::NoRecord { begins }) => *begins,
        other => panic!("{other:?}"),
    };
    let pulled = |sets: Sets| long_ago(joined(), sets.of("pull-up")).advice();
    assert_eq!(why(&joined().advice()), Begins::First);
    assert_eq!(why(&pulled(3.sets_of(5))), Begins::Entered);
    // Every standard is met: nobody may say that the named rung's is not.
    assert_eq!(why(&pulled(3.sets_of(1).with(80.0))), Begins::Met);
    // Only the left has done split squats on two days: alone it would begin one rung higher.
    let split = athlete().joined("pistol-squat", 100.days_ago());
    let (left, right) = long_ago(split, 3.sets_of(12).of("split-squat").left()).left_and_right();
    assert_eq!((why(&left), why(&right)), (Begins::BesideOther, Begins::First));
}

#[test]
fn a_rail_begins_no_higher_than_the_other_stands_or_would_begin() {
    let split = || {
        long_ago(
            athlete().joined("pistol-squat", 100.days_ago()),
            3.sets_of(12).of("split-squat").left(),
        )
    };
    let (left, right) = split().left_and_right();
    assert_eq!((left.rung.as_str(), right.rung.as_str()), ("split", "split"));
    let placed = split().placed_side_on("pistol-squat", Side::Right, "box-30", 30.days_ago());
    assert_eq!(placed.left_and_right().0.rung, "box-45");
    let low = split().placed_side_on("pistol-squat", Side::Right, "split", 30.days_ago());
    assert_eq!(low.left_and_right().0.rung, "split");
}

#[test]
fn a_rail_that_begins_has_passed_on_no_day() {
    let advice = long_ago(joined(), 3.sets_of(5).of("pull-up")).advice();
    assert_eq!(advice.passed_on, []);
}

#[test]
fn a_minor_is_named_no_rung_that_is_passed_over() {
    // Every rung of the front lever asks straight arms; the first is never passed over.
    let levers = |born: &str| {
        let athlete = athlete().born(born).joined("front-lever", 100.days_ago());
        long_ago(athlete, 3.holds_of(5).of("front-lever")).advice().rung
    };
    assert_eq!(levers("2000-01-01"), "full");
    assert_eq!(levers("2012-01-01"), "tuck");
}
