//! Left against right: the stronger side waits. No threshold is proven (Bishop 2020); one repetition or two seconds, and
//! everything else here, is common practice, no source.

use rungwright::catalogue::Site;
use rungwright::coaching::NextStep;
use rungwright::units::Side;

use crate::support::{Ago, Athlete, Phrase, Said, Sets, TODAY, athlete};

/// Both on a rung of the pistol squat; split squats and box squats carry no load, pistols do.
fn squatter(rung: &str) -> Athlete {
    athlete()
        .weighing(80.0)
        .placed_on("pistol-squat", rung, 60.days_ago())
}

/// Left and right did this three days ago.
fn did(athlete: Athlete, left: Sets, right: Sets) -> Athlete {
    athlete.did(3.days_ago(), left.left().then(right.right()))
}

fn short((left, right): (NextStep, NextStep)) -> (String, String) {
    (left.in_short(), right.in_short())
}

fn pair(left: &str, right: &str) -> (String, String) {
    (left.to_owned(), right.to_owned())
}

#[test]
fn the_side_on_a_higher_rung_waits_and_the_lower_one_is_free() {
    let apart = squatter("split").placed_side_on("pistol-squat", Side::Left, "box-45", 50.days_ago());
    let apart = apart
        .did(3.days_ago(), 3.sets_of(6).leaving(2.0).left().on("box-45"))
        .did(3.days_ago(), 3.sets_of(9).leaving(2.0).right().on("split"));
    let (left, right) = apart.left_and_right();
    assert_eq!(left.rules(), ["side-wait", "in-range"]);
    assert_eq!(right.in_short(), "add-reps in-range");
}

#[test]
fn a_branch_stands_half_a_rung_above_the_one_it_leaves() {
    let against = |rung: &str| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("one-arm-pull-up", "band", 60.days_ago())
            .placed_side_on("one-arm-pull-up", Side::Right, rung, 59.days_ago());
        let athlete = athlete.did(3.days_ago(), 4.sets_of(4).leaving(1.0).left().on("band"));
        let right = if rung == "two-arm" {
            3.sets_of(5)
        } else {
            4.sets_of(3).right()
        };
        short(
            athlete
                .did(3.days_ago(), right.leaving(1.0).on(rung))
                .left_and_right(),
        )
    };
    assert_eq!(against("two-arm"), pair("repeat side-wait", "add-reps in-range"));
    assert_eq!(
        against("fingers-3"),
        pair("add-reps in-range", "repeat side-wait")
    );
}

#[test]
fn on_one_rung_one_percent_more_load_is_ahead() {
    // 1.01 × 80 = 80.8 kg in all.
    let carrying = |belt: f64| {
        let four = |belt: f64| 3.sets_of(4).with(belt).leaving(1.0);
        short(did(squatter("pistol"), four(belt), four(0.0)).left_and_right())
    };
    assert_eq!(carrying(0.8), pair("add-reps in-range", "add-reps in-range"));
    assert_eq!(carrying(0.9), pair("repeat side-wait", "add-reps in-range"));
}

#[test]
fn a_side_with_a_judged_day_is_ahead_of_one_without() {
    let (left, right) = squatter("pistol")
        .did(3.days_ago(), 3.sets_of(4).leaving(1.0).left())
        .left_and_right();
    assert_eq!(
        (left.in_short(), right.in_short()),
        pair("repeat side-wait", "begin placed")
    );
}

#[test]
fn a_level_side_waits_while_the_other_pauses_backs_off_or_steps_back() {
    let four = || 3.sets_of(4).leaving(1.0);
    let hurt = did(squatter("pistol"), four(), four()).hurt_on(TODAY, Site::Knee, Some(Side::Right), 6);
    assert_eq!(
        short(hurt.left_and_right()),
        pair("repeat side-wait", "pause pain-stop")
    );
    let missed = squatter("pistol").did(6.days_ago(), 3.sets_of(2).failed().right());
    let missed = did(missed, four(), 3.sets_of(2).failed());
    assert_eq!(
        short(missed.left_and_right()),
        pair("repeat side-wait", "back-off missed-twice")
    );
    let once = did(squatter("pistol"), four(), 3.sets_of(2).failed());
    // Four against two: the left does more than one repetition more.
    assert_eq!(
        short(once.left_and_right()),
        pair("repeat side-wait", "repeat missed-once")
    );
    let form = did(squatter("pistol"), four(), four().out_of_form());
    assert_eq!(
        short(form.left_and_right()),
        pair("add-reps in-range", "repeat form-miss")
    );
}

/// Split squats on two days: standard 3 × 12, 2 in reserve.
fn split(left: u16, right: u16) -> (String, String) {
    let of = |count: u16| 3.sets_of(count).leaving(2.0);
    let athlete = did(squatter("split"), of(left), of(right));
    short(
        athlete
            .did(6.days_ago(), of(12).left().then(of(12).right()))
            .left_and_right(),
    )
}

#[test]
fn both_sides_step_up_together() {
    assert_eq!(
        split(12, 12),
        pair("step-up standard-met", "step-up standard-met")
    );
    let one = did(
        squatter("split"),
        3.sets_of(12).leaving(2.0),
        3.sets_of(11).leaving(2.0),
    );
    let one = one.did(
        6.days_ago(),
        3.sets_of(12)
            .leaving(2.0)
            .left()
            .then(3.sets_of(11).leaving(2.0).right()),
    );
    assert_eq!(
        short(one.left_and_right()),
        pair("repeat side-wait", "add-reps in-range")
    );
}

#[test]
fn a_step_up_needs_both_sides_within_one_repetition() {
    assert_eq!(
        split(13, 12),
        pair("step-up standard-met", "step-up standard-met")
    );
    assert_eq!(split(14, 12), pair("repeat side-gap", "repeat side-gap"));
}

#[test]
fn a_hold_gap_of_two_seconds_is_level_and_of_three_is_not() {
    let held = |left: u16, right: u16| {
        let of = |left: u16, right: u16| 3.holds_of(left).left().then(3.holds_of(right).right());
        let athlete = athlete()
            .placed_on("one-arm-hang", "fingers-2", 60.days_ago())
            .did_each([24.days_ago(), 13.days_ago()], of(20, 20))
            .did(3.days_ago(), of(left, right));
        short(athlete.left_and_right())
    };
    assert_eq!(held(22, 20), pair("step-up standard-met", "step-up standard-met"));
    assert_eq!(held(23, 20), pair("repeat side-gap", "repeat side-gap"));
}

#[test]
fn a_step_up_on_one_rung_waits_even_for_a_side_that_carries_less() {
    let five = |belt: f64| 3.sets_of(5).with(belt).leaving(1.0);
    let athlete = did(squatter("pistol"), five(4.0), five(-4.0));
    let athlete = athlete.did(6.days_ago(), five(4.0).left().then(five(-4.0).right()));
    assert_eq!(
        short(athlete.left_and_right()),
        pair("repeat side-wait", "add-reps in-range")
    );
}

#[test]
fn load_is_added_on_both_sides_or_on_the_weaker() {
    let of = |count: u16, belt: f64| 3.sets_of(count).with(belt).leaving(1.0);
    let both = did(squatter("pistol"), of(6, -4.0), of(6, -4.0));
    assert_eq!(
        short(both.left_and_right()),
        pair("add-load top-of-range", "add-load top-of-range")
    );
    let one = did(squatter("pistol"), of(6, -4.0), of(5, -4.0));
    assert_eq!(
        short(one.left_and_right()),
        pair("repeat side-wait", "add-reps in-range")
    );
    let weaker = did(squatter("pistol"), of(6, -4.0), of(5, -2.0));
    assert_eq!(
        short(weaker.left_and_right()),
        pair("add-load top-of-range", "repeat side-wait")
    );
}

#[test]
fn what_a_cap_took_from_the_other_side_counts_as_not_done() {
    let of = |belt: f64| 3.sets_of(6).with(belt).leaving(1.0);
    let sore = did(squatter("pistol"), of(-4.0), of(-4.0)).hurt_on(TODAY, Site::Knee, Some(Side::Right), 3);
    let (left, right) = sore.left_and_right();
    assert_eq!(
        (left.in_short(), right.in_short()),
        pair("repeat side-wait", "repeat pain-cap")
    );
}

#[test]
fn repetitions_are_added_up_to_one_more_than_the_others() {
    let of = |left: u16, right: u16| {
        let sets = |count: u16| 3.sets_of(count).leaving(2.0);
        short(did(squatter("box-45"), sets(left), sets(right)).left_and_right())
    };
    assert_eq!(of(7, 6), pair("add-reps in-range", "add-reps in-range"));
    assert_eq!(of(7, 5), pair("repeat side-wait", "add-reps in-range"));
}

#[test]
fn seconds_are_added_up_to_two_more_than_the_others() {
    let of = |left: u16, right: u16| {
        let athlete = athlete().placed_on("one-arm-hang", "fingers-2", 60.days_ago());
        short(did(athlete, 3.holds_of(left), 3.holds_of(right)).left_and_right())
    };
    assert_eq!(of(15, 13), pair("add-reps in-range", "add-reps in-range"));
    assert_eq!(of(16, 13), pair("repeat side-wait", "add-reps in-range"));
}

#[test]
fn nobody_waits_for_a_side_set_aside() {
    let four = || 3.sets_of(4).leaving(1.0);
    let athlete = did(squatter("pistol"), four(), four())
        .hurt_on(TODAY, Site::Knee, Some(Side::Right), 7)
        .set_aside("pistol-squat", Some(Side::Right), TODAY);
    let steps = athlete.steps(TODAY);
    assert_eq!(steps.len(), 1);
    assert_eq!(steps.first().unwrap().in_short(), "add-reps in-range");
}

#[test]
fn a_waiting_side_carries_what_the_other_will_add_or_its_own_if_lower() {
    let of = |count: u16, belt: f64| 3.sets_of(count).with(belt).leaving(1.0);
    let plus = |left: Sets, right: Sets| did(squatter("pistol-plus"), left, right).left_and_right();
    // The right adds: of 90 kg the step begins at 91.8, so 12.5 kg hang.
    let (left, right) = plus(of(5, 20.0 - 0.1), of(6, 10.0));
    assert_eq!(
        (left.in_short(), right.in_short()),
        pair("repeat side-wait", "add-load top-of-range")
    );
    assert_eq!((left.belt(), right.belt()), (12.5, 12.5));
    // Its own is lower than what the right will add: 91.25 against 92.5.
    let (left, _) = plus(of(5, 11.25), of(6, 10.0));
    assert_eq!(
        (left.in_short().as_str(), left.belt()),
        ("repeat side-wait", 11.25)
    );
    // The right only adds repetitions: its load again.
    let (left, right) = plus(of(5, 15.0), of(4, 10.0));
    assert_eq!(
        (left.in_short(), right.in_short()),
        pair("repeat side-wait", "add-reps in-range")
    );
    assert_eq!((left.belt(), right.belt()), (10.0, 10.0));
}
