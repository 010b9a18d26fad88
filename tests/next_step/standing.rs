//! The rung now, the stay on it, and falls from above. Common practice, no source.

use rungwright::units::Side;

use crate::support::{Ago, Athlete, Phrase, Said, Session, Sets, TODAY, athlete, one_set, reps};
use crate::{lifter, standard_sets};

fn rung(athlete: &Athlete) -> String {
    athlete.advice().rung
}

#[test]
fn the_latest_placement_or_tagged_set_tells_the_rung() {
    let stepped = lifter().did(3.days_ago(), 3.sets_of(3).on("plus-50").with(30.0));
    assert_eq!(rung(&stepped), "plus-50");
    let placed_since = stepped.placed_on("weighted-pull-up", "bodyweight", 2.days_ago());
    assert_eq!(rung(&placed_since), "bodyweight");
}

#[test]
fn on_one_day_a_placement_goes_first_and_then_the_highest_set() {
    let two = one_set(3)
        .on("plus-50")
        .with(30.0)
        .then(one_set(5).on("bodyweight"));
    assert_eq!(rung(&lifter().did(3.days_ago(), two.clone())), "plus-50");
    let placed = lifter()
        .placed_on("weighted-pull-up", "plus-25", 3.days_ago())
        .did(3.days_ago(), two);
    assert_eq!(rung(&placed), "plus-25");
}

#[test]
fn a_set_without_one_repetition_moves_nothing() {
    let tried = |count: u16| lifter().did(3.days_ago(), one_set(count).on("plus-50").with(40.0).failed());
    assert_eq!(rung(&tried(0)), "plus-25");
    assert_eq!(rung(&tried(1)), "plus-50");
}

#[test]
fn sets_on_a_branch_move_nothing() {
    let athlete = athlete()
        .placed_on("muscle-up", "high-pull", 30.days_ago())
        .did(3.days_ago(), 4.sets_of(3).on("negative"));
    assert_eq!(rung(&athlete), "high-pull");
}

#[test]
fn on_the_branch_placed_at_they_renew_the_placement() {
    let trained = |days: i32| {
        let athlete = athlete()
            .placed_on("muscle-up", "negative", 500.days_ago())
            .did(days.days_ago(), 4.sets_of(3));
        rung(&athlete)
    };
    assert_eq!(trained(365), "negative");
    assert_eq!(trained(366), "high-pull");
    let never_placed = athlete()
        .joined("muscle-up", 500.days_ago())
        .did(3.days_ago(), 4.sets_of(3).on("negative"));
    assert_eq!(rung(&never_placed), "high-pull");
}

#[test]
fn a_rail_nobody_placed_stands_where_no_record_names_it_while_it_is_trained() {
    let trained = |days: i32| {
        athlete()
            .weighing(80.0)
            .joined("weighted-pull-up", 100.days_ago())
            .did(days.days_ago(), 3.sets_of(6).leaving(2.0).of("pull-up"))
            .advice()
            .rule()
    };
    assert_eq!(trained(28), "layoff-short");
    assert_eq!(trained(29), "no-record");
}

#[test]
fn the_stay_begins_after_the_last_day_on_another_rung() {
    // The standard of plus-25 done on a day logged for the rung below is no day of the stay.
    let first_on = |rung: &str| {
        lifter()
            .did(9.days_ago(), standard_sets().on(rung))
            .did(3.days_ago(), standard_sets())
            .advice()
            .in_short()
    };
    assert_eq!(first_on("bodyweight"), "repeat one-more-day");
    assert_eq!(first_on("plus-25"), "step-up standard-met");
}

#[test]
fn untagged_days_before_a_placement_are_days_of_the_stay() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-25", 5.days_ago())
        .did(9.days_ago(), standard_sets().of("pull-up"))
        .did(3.days_ago(), standard_sets());
    assert_eq!(athlete.advice().in_short(), "step-up standard-met");
}

/// On the knees-to-chest rung (3 × 8–12, 2 in reserve; no load), passed, a try of the rung above (3 × 6–10), and back.
fn came_back(tries: impl IntoIterator<Item = (i32, Sets)>) -> (String, (f64, Option<f64>)) {
    let twelve = || 3.sets_of(12).leaving(2.0);
    let passed = athlete()
        .placed_on("toes-to-bar", "knees", 60.days_ago())
        .did_each([40.days_ago(), 37.days_ago()], twelve());
    let tried = tries.into_iter().fold(passed, |athlete, (days, sets)| {
        athlete.did(days.days_ago(), sets.on("level"))
    });
    let advice = tried.did(3.days_ago(), twelve()).advice();
    (advice.in_short(), advice.range())
}

#[test]
fn a_fall_asks_two_more_of_the_rung_below() {
    assert_eq!(
        came_back([(9, one_set(5).failed())]),
        ("add-reps in-range".to_owned(), (13.0, Some(14.0)))
    );
    assert_eq!(came_back([(9, one_set(6).failed())]).0, "repeat one-more-day");
    assert_eq!(came_back([(9, one_set(5))]).0, "repeat one-more-day");
}

#[test]
fn who_tries_again_on_the_next_day_has_not_fallen() {
    let again = [(12, one_set(5).failed()), (9, one_set(6))];
    assert_eq!(came_back(again).0, "repeat one-more-day");
}

#[test]
fn each_fall_adds_two_more() {
    let knees = || 3.sets_of(8).leaving(2.0);
    let athlete = athlete()
        .placed_on("toes-to-bar", "knees", 60.days_ago())
        .did(30.days_ago(), one_set(5).on("level").failed())
        .did(27.days_ago(), knees())
        .did(9.days_ago(), one_set(5).on("level").failed())
        .did(6.days_ago(), knees());
    assert_eq!(athlete.advice().range(), (9.0, Some(16.0)));
}

#[test]
fn a_fall_of_more_than_a_year_ago_is_forgotten() {
    let fell = |days: i32| {
        athlete()
            .placed_on("toes-to-bar", "knees", 364.days_ago())
            .did(days.days_ago(), reps([0]).on("level").failed())
            .did(3.days_ago(), 3.sets_of(9).leaving(2.0))
            .advice()
            .range()
    };
    assert_eq!(fell(365), (10.0, Some(14.0)));
    assert_eq!(fell(366), (10.0, Some(12.0)));
}

#[test]
fn a_fall_on_one_side_asks_nothing_of_the_other() {
    let pair = |sets: Sets| -> Session { sets.clone().left().then(sets.right()) };
    let (left, right) = athlete()
        .placed_on("pistol-squat", "box-45", 60.days_ago())
        .did(9.days_ago(), reps([0]).on("box-30").failed().left())
        .did(3.days_ago(), pair(3.sets_of(6).leaving(2.0)))
        .left_and_right();
    assert_eq!((left.range().1, right.range().1), (Some(10.0), Some(8.0)));
    let placed = athlete().placed_side_on("pistol-squat", Side::Left, "box-45", TODAY);
    assert_eq!(placed.left_and_right().0.rung, "box-45");
}
