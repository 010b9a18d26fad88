//! Caps of one rail: minors and tendons (pain is told in `pain`). Supervision and technique first for the young: Faigenbaum
//! et al. 2009, the caps are this project's choice; tendons stiffen over weeks: Bohm et al. 2015, the days are common
//! practice, no source.

use rungwright::coaching::{NextStep, Verdict};

use crate::lifter;
use crate::support::{Ago, Athlete, Phrase, Said, TODAY, athlete, reps};

/// Eighteen today; a day later, seventeen.
const EIGHTEEN: &str = "2008-03-20";
const SEVENTEEN: &str = "2008-03-21";

#[test]
fn a_test_is_for_those_of_eighteen_and_over() {
    let easy = |born: &str| {
        let days = [12, 9, 6, 3].map(|days: i32| days.days_ago());
        lifter()
            .born(born)
            .did_each(days, 3.sets_of(5).with(10.0).leaving(3.0))
            .advice()
    };
    assert_eq!(easy(EIGHTEEN).in_short(), "test test-due");
    let young = easy(SEVENTEEN);
    assert_eq!(young.rules(), ["minor-no-max", "test-due"]);
    assert_eq!((young.verdict, young.work().sets), (Verdict::Repeat, 3));
}

#[test]
fn a_minor_is_asked_to_leave_two_at_least() {
    let left = |born: &str| {
        let advice = lifter()
            .born(born)
            .did(3.days_ago(), 3.sets_of(5).with(10.0).leaving(1.0))
            .advice();
        advice.work().reserve.unwrap().reps()
    };
    assert_eq!(left(EIGHTEEN), 1.0);
    assert_eq!(left(SEVENTEEN), 2.0);
    // Where none is asked, none is: 3 × 3–6 lowered.
    let lowered = athlete()
        .born(SEVENTEEN)
        .placed_on("nordic-curl", "negative", TODAY)
        .advice();
    assert_eq!(lowered.work().reserve, None);
}

/// On a rung of the handstand push-up: pike, raised pike, negative, wall, free.
fn on_handstand(born: &str, rung: &str) -> Athlete {
    athlete()
        .born(born)
        .did(5.days_ago(), 1.holds_of(30).of("wall-handstand"))
        .placed_on("handstand-push-up", rung, 60.days_ago())
}

#[test]
fn a_minor_steps_over_lowering_work() {
    let up = |born: &str| {
        let days = [6.days_ago(), 3.days_ago()];
        on_handstand(born, "pike-raised")
            .did_each(days, 3.sets_of(8).leaving(2.0))
            .advice()
    };
    let adult = up(EIGHTEEN);
    assert_eq!(
        (adult.next_rung.as_deref(), adult.gives("minor-no-max")),
        (Some("negative"), false)
    );
    let young = up(SEVENTEEN);
    assert_eq!(
        (young.next_rung.as_deref(), young.gives("minor-no-max")),
        (Some("wall"), true)
    );
    assert_eq!(young.in_short(), "step-up standard-met");
}

#[test]
fn a_minor_falls_back_over_it_too() {
    let down = |born: &str| {
        let days = [9, 6, 3].map(|days: i32| days.days_ago());
        on_handstand(born, "wall")
            .did_each(days, 3.sets_of(2).failed())
            .advice()
            .next_rung
    };
    assert_eq!(down(EIGHTEEN).as_deref(), Some("negative"));
    assert_eq!(down(SEVENTEEN).as_deref(), Some("pike-raised"));
}

#[test]
fn a_coachs_placement_of_a_minor_stands() {
    let advice = on_handstand(SEVENTEEN, "negative").advice();
    assert_eq!(
        (advice.rung.as_str(), advice.in_short()),
        ("negative", "begin placed".to_owned())
    );
}

#[test]
fn a_minor_at_the_last_open_rung_has_none_above() {
    // Every rung above the tuck asks straight arms.
    let advice = athlete()
        .born(SEVENTEEN)
        .weighing(60.0)
        .placed_on("front-lever", "tuck", 60.days_ago())
        .did_each([40.days_ago(), 6.days_ago(), 3.days_ago()], 4.holds_of(30))
        .advice();
    assert_eq!(advice.in_short(), "repeat last-rung");
    assert!(advice.gives("minor-no-max"));
}

/// A rung of the front lever or the toes-to-bar, its standard met long ago enough, first done so many days ago.
fn passed_since(ladder: &str, rung: &str, first: i32, sets: crate::support::Sets) -> NextStep {
    athlete()
        .placed_on(ladder, rung, 60.days_ago())
        .did_each([first.days_ago(), 6.days_ago(), 3.days_ago()], sets)
        .advice()
}

#[test]
fn a_straight_arm_rung_takes_twenty_eight_days() {
    let lever = |first: i32| passed_since("front-lever", "tuck", first, 4.holds_of(30));
    assert_eq!(lever(27).rules(), ["tendon-time", "standard-met"]);
    assert_eq!(lever(27).verdict, Verdict::Repeat);
    assert_eq!(lever(28).in_short(), "step-up standard-met");
}

#[test]
fn a_rung_that_lowers_or_asks_elbows_or_grip_takes_twenty_one_days() {
    let lowered = |first: i32| passed_since("nordic-curl", "negative", first, 3.sets_of(6));
    assert_eq!(lowered(20).in_short(), "repeat tendon-time");
    assert_eq!(lowered(21).in_short(), "step-up standard-met");
    let gripped = |rung: &str, ladder: &str, first: i32, count: u16| {
        let sets = || 4.sets_of(count).leaving(1.0);
        athlete()
            .weighing(80.0)
            .did(
                9.days_ago(),
                reps([5])
                    .of("pull-up")
                    .with(20.0)
                    .then(reps([5]).of("chin-up").with(20.0)),
            )
            .placed_on(ladder, rung, 60.days_ago())
            .did_each(
                [first.days_ago(), 6.days_ago(), 3.days_ago()],
                sets().left().then(sets().right()),
            )
            .left_and_right()
            .0
            .in_short()
    };
    for (ladder, rung) in [("one-arm-pull-up", "fingers-2"), ("one-arm-chin-up", "fingers-2")] {
        assert_eq!(gripped(rung, ladder, 20, 4), "repeat tendon-time", "{ladder}");
        assert_eq!(gripped(rung, ladder, 21, 4), "step-up standard-met", "{ladder}");
    }
}

#[test]
fn a_rung_without_such_tendons_takes_no_time() {
    let knees = passed_since("toes-to-bar", "knees", 6, 3.sets_of(12).leaving(2.0));
    assert_eq!(knees.in_short(), "step-up standard-met");
}

#[test]
fn tendon_time_holds_no_other_verdict() {
    let lever = passed_since("front-lever", "tuck", 9, 4.holds_of(20));
    assert_eq!(lever.in_short(), "add-reps in-range");
}

#[test]
fn pain_leads_before_tendon_time() {
    let lever = athlete()
        .placed_on("front-lever", "tuck", 60.days_ago())
        .did_each([6.days_ago(), 3.days_ago()], 4.holds_of(30))
        .hurt(TODAY, rungwright::catalogue::Site::Shoulder, 3)
        .advice();
    assert_eq!(lever.rules(), ["pain-cap", "standard-met", "tendon-time"]);
}
