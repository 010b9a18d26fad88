//! Ages, forms, sides: which records count at all. Common practice, no source.

use rungwright::units::Side;

use crate::support::{Ago, Phrase, Said, TODAY, athlete, one_set};
use crate::{good_sets, lifter, standard_sets};

#[test]
fn what_comes_after_the_day_asked_about_does_not_exist() {
    let athlete = lifter()
        .weighed(9.days_ago(), 80.0)
        .did(9.days_ago(), good_sets())
        .did(3.days_ago(), standard_sets());
    assert_eq!(
        athlete.advice_on(4.days_ago()).in_short(),
        "add-load top-of-range"
    );
    assert_eq!(athlete.advice_on(3.days_ago()).rule(), "one-more-day");
}

#[test]
fn a_placement_of_a_year_holds_and_of_a_day_more_does_not() {
    let placed = |days: i32| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", "plus-25", days.days_ago());
        let advice = athlete.advice();
        (advice.rung.clone(), advice.in_short())
    };
    assert_eq!(placed(365), ("plus-25".to_owned(), "begin placed".to_owned()));
    assert_eq!(placed(366), ("assisted".to_owned(), "begin no-record".to_owned()));
}

#[test]
fn a_day_of_a_year_ago_is_a_layoff_and_of_a_day_more_is_forgotten() {
    let trained = |days: i32| {
        athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", "plus-25", 400.days_ago())
            .did(days.days_ago(), good_sets())
            .advice()
            .in_short()
    };
    assert_eq!(trained(365), "step-back layoff-step");
    assert_eq!(trained(366), "begin no-record");
}

#[test]
fn an_entry_logged_a_year_ago_holds_and_a_day_more_ago_does_not() {
    let hung = |days: i32| {
        athlete()
            .weighing(80.0)
            .placed_on("one-arm-pull-up", "two-arm", 100.days_ago())
            .did(days.days_ago(), seconds_hung(10))
            .did_each([9.days_ago(), 2.days_ago()], 3.sets_of(6).leaving(1.0))
            .left_and_right()
            .0
            .in_short()
    };
    assert_eq!(hung(365), "step-up standard-met");
    assert_eq!(hung(366), "repeat entry-missing");
}

fn seconds_hung(length: u16) -> crate::support::Session {
    let hang = |sets: crate::support::Sets| sets.of("one-arm-hang");
    hang(1.holds_of(length))
        .left()
        .then(hang(1.holds_of(length)).right())
}

#[test]
fn sets_of_one_form_count_for_its_rung_whatever_they_were_logged_for() {
    let plain = |sets: crate::support::Sets| lifter().did(2.days_ago(), sets).advice().in_short();
    let sets = || 3.sets_of(6).with(10.0).leaving(1.0);
    assert_eq!(plain(sets().of("pull-up")), "add-load top-of-range");
    assert_eq!(
        plain(sets().on_ladder("one-arm-pull-up", "two-arm")),
        "add-load top-of-range"
    );
    assert_eq!(plain(sets().on_ladder("first-pull-up", "band")), "begin placed");
    assert_eq!(plain(sets().of("chin-up")), "begin placed");
}

#[test]
fn a_sided_set_without_side_counts_for_no_rail() {
    let placed = || athlete().placed_on("pistol-squat", "box-45", 30.days_ago());
    let (left, right) = placed().did(2.days_ago(), 3.sets_of(6)).left_and_right();
    assert_eq!((left.rule(), right.rule()), ("placed", "placed"));
    let (left, right) = placed().did(2.days_ago(), 3.sets_of(6).left()).left_and_right();
    assert_eq!((left.gives("in-range"), right.rule()), (true, "placed"));
}

#[test]
fn two_hand_sets_count_for_both_rails() {
    let (left, right) = athlete()
        .weighing(80.0)
        .placed_on("one-arm-pull-up", "two-arm", 30.days_ago())
        .did(2.days_ago(), 3.sets_of(5).leaving(1.0))
        .left_and_right();
    assert_eq!((left.rule(), right.rule()), ("in-range", "in-range"));
}

#[test]
fn a_ladder_is_joined_by_a_placement_or_by_a_set_that_names_it() {
    assert!(
        athlete()
            .did(TODAY, one_set(5).of("pull-up"))
            .next_steps_on(TODAY)
            .is_empty()
    );
    let joined = athlete()
        .did(TODAY, one_set(5).of_for("pull-up", "weighted-pull-up"))
        .next_steps_on(TODAY);
    assert_eq!(joined.len(), 1);
}

#[test]
fn a_rail_set_aside_has_no_row_until_it_is_placed_or_trained_again() {
    let aside = || {
        athlete()
            .placed_on("pistol-squat", "box-45", 30.days_ago())
            .set_aside("pistol-squat", Some(Side::Left), 10.days_ago())
    };
    let sides = |athlete: crate::support::Athlete| -> String {
        athlete
            .steps(TODAY)
            .iter()
            .map(|step| step.rail.letter())
            .collect()
    };
    let squat = || 3.sets_of(6).left();
    assert_eq!(sides(aside()), "R");
    assert_eq!(sides(aside().did(10.days_ago(), squat())), "R");
    assert_eq!(sides(aside().did(9.days_ago(), squat())), "LR");
    assert_eq!(sides(aside().did(9.days_ago(), squat().of("pistol-squat"))), "R");
    assert_eq!(
        sides(aside().placed_side_on("pistol-squat", Side::Left, "box-45", 10.days_ago())),
        "LR"
    );
}
