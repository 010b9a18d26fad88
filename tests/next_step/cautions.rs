//! What to mind beside the work (pain is told in `pain`, odd sets in `odd_sets`). Bounds are common practice, no source; 48 hours apart: Magnusson et al. 2010; loss of 0.7 % a week: Garthe et al. 2011.

use rungwright::logbook::record::PhaseKind;

use crate::support::{Ago, Athlete, Phrase, Said, Sets, TODAY, athlete, one_set};
use crate::{fair_sets, lifter};

fn knees(days: i32) -> rungwright::coaching::NextStep {
    athlete()
        .placed_on("toes-to-bar", "knees", 60.days_ago())
        .did(days.days_ago(), 3.sets_of(9).leaving(2.0))
        .advice()
}

#[test]
fn two_days_lie_between_sessions() {
    assert!(knees(0).warns("spacing"));
    let yesterday = knees(1);
    assert!(yesterday.warns("spacing"));
    assert_eq!(yesterday.not_before, Some(TODAY.date() + chrono::Days::new(1)));
    let before = knees(2);
    assert!(!before.warns("spacing"));
    assert_eq!(before.not_before, None);
}

#[test]
fn three_days_lie_between_sessions_that_load_tendons_near_their_limits() {
    // Straight arms; lowering; elbows; palms toward the face.
    for (ladder, rung) in [
        ("front-lever", "tuck"),
        ("nordic-curl", "negative"),
        ("one-arm-pull-up", "one-arm"),
        ("one-arm-chin-up", "fingers-2"),
    ] {
        let trained = |days: i32| {
            let sets = if ladder == "front-lever" {
                4.holds_of(15)
            } else {
                4.sets_of(3)
            };
            let athlete = athlete().weighing(80.0).placed_on(ladder, rung, 60.days_ago());
            let both = sets.clone().left().then(sets.clone().right());
            let athlete = match ladder {
                "front-lever" | "nordic-curl" => athlete.did(days.days_ago(), sets),
                _ => athlete.did(days.days_ago(), both),
            };
            athlete
                .steps(TODAY)
                .iter()
                .all(|step| step.warns("spacing") && step.not_before.is_some())
        };
        assert!(trained(2), "{ladder}");
        assert!(!trained(3), "{ladder}");
    }
}

#[test]
fn a_missed_set_with_reserve_contradicts_itself_for_four_weeks() {
    let logged = |days: i32, left: f64| {
        lifter()
            .did(days.days_ago(), one_set(4).with(10.0).leaving(left).failed())
            .did(2.days_ago(), fair_sets())
            .advice()
            .warns("contradictory-log")
    };
    assert!(logged(28, 1.0));
    assert!(!logged(29, 1.0));
    assert!(!logged(28, 0.5));
}

#[test]
fn an_odd_weigh_in_is_pointed_at_while_it_is_the_latest() {
    let weighed = |last: f64| {
        let athlete = athlete().placed_on("toes-to-bar", "knees", TODAY);
        athlete
            .weighed(9.days_ago(), 80.0)
            .weighed(8.days_ago(), 180.0)
            .weighed(2.days_ago(), last)
    };
    let latest = athlete()
        .placed_on("toes-to-bar", "knees", TODAY)
        .weighed(9.days_ago(), 80.0)
        .weighed(8.days_ago(), 180.0);
    assert!(latest.advice().warns("weigh-in-odd"));
    assert!(!weighed(80.0).advice().warns("weigh-in-odd"));
}

#[test]
fn an_entry_not_met_is_told_on_the_rung_now_and_not_where_one_begins_without_a_record() {
    let placed = athlete().placed_on("front-lever", "tuck", TODAY);
    assert!(placed.advice().warns("entry-not-met"));
    let joined = athlete().joined("front-lever", TODAY);
    assert!(!joined.advice().warns("entry-not-met"));
}

#[test]
fn a_test_is_told_with_its_safety() {
    let easy = |left: f64| {
        let days = [12, 9, 6, 3].map(|days: i32| days.days_ago());
        lifter()
            .did_each(days, 3.sets_of(5).with(10.0).leaving(left))
            .advice()
            .warns("test-safety")
    };
    assert!(easy(3.0));
    assert!(!easy(1.0));
}

/// On a rung without load, so that nothing but the person is cautioned of.
fn person() -> Athlete {
    athlete().placed_on("toes-to-bar", "knees", 60.days_ago())
}

#[test]
fn a_minor_is_supervised_until_eighteen() {
    // Faigenbaum et al. 2009: qualified supervision.
    assert!(person().born("2008-03-21").advice().warns("minor"));
    assert!(!person().born("2008-03-20").advice().warns("minor"));
    assert!(!person().advice().warns("minor"));
}

#[test]
fn an_adult_under_a_body_mass_index_of_eighteen_and_a_half_is_told() {
    // World Health Organization's bound for adults: 18.5 × 1.8² = 59.94 kg.
    let weighs = |kg: f64| person().tall(180.0).weighing(kg);
    assert!(weighs(59.9).advice().warns("underweight"));
    assert!(!weighs(60.0).advice().warns("underweight"));
    assert!(!weighs(59.9).born("2010-01-01").advice().warns("underweight"));
}

#[test]
fn a_cut_is_refused_to_minors_and_to_the_underweight() {
    let cut = |athlete: Athlete| {
        athlete
            .began(9.days_ago(), PhaseKind::Cut)
            .advice()
            .warns("cut-refused")
    };
    assert!(cut(person().born("2010-01-01")));
    assert!(cut(person().tall(180.0).weighing(59.0)));
    assert!(!cut(person().tall(180.0).weighing(80.0)));
    let gain = person().born("2010-01-01").began(9.days_ago(), PhaseKind::Gain);
    assert!(!gain.advice().warns("cut-refused"));
    let over = person()
        .born("2010-01-01")
        .began(9.days_ago(), PhaseKind::Cut)
        .began(2.days_ago(), PhaseKind::Hold);
    assert!(!over.advice().warns("cut-refused"));
    let deload = person()
        .born("2010-01-01")
        .began(9.days_ago(), PhaseKind::Cut)
        .began(2.days_ago(), PhaseKind::Deload);
    assert!(deload.advice().warns("cut-refused"), "a deload ends no cut");
}

/// Weighed on these days, losing so much of a steady 80 kg a week.
fn losing(percent_a_week: f64, days: &[i32]) -> bool {
    let weighed = |days: i32| 80.0 + 80.0 * percent_a_week / 100.0 * f64::from(days) / 7.0;
    let athlete = days.iter().fold(person(), |athlete, &days| {
        athlete.weighed(days.days_ago(), weighed(days))
    });
    athlete.advice().warns("cut-fast")
}

#[test]
fn a_loss_of_more_than_seven_tenths_of_a_percent_a_week_is_fast() {
    // Percent of the mean of the weigh-ins, which is a little over 80 kg.
    assert!(losing(0.72, &[21, 14, 7, 0]));
    assert!(!losing(0.70, &[21, 14, 7, 0]));
}

#[test]
fn a_trend_needs_four_days_that_span_two_of_the_last_four_weeks() {
    assert!(losing(1.0, &[14, 10, 5, 0]));
    assert!(!losing(1.0, &[13, 10, 5, 0]));
    assert!(!losing(1.0, &[14, 5, 0]));
    assert!(losing(1.0, &[28, 20, 12, 4]));
    assert!(!losing(1.0, &[29, 20, 12, 4]));
}

#[test]
fn a_cut_of_half_a_year_is_long() {
    let since = |days: i32| person().began(days.days_ago(), PhaseKind::Cut);
    assert!(!since(182).advice().warns("cut-long"));
    assert!(since(183).advice().warns("cut-long"));
    // Said again it runs on; ended and begun anew it does not.
    assert!(
        since(183)
            .began(9.days_ago(), PhaseKind::Cut)
            .advice()
            .warns("cut-long")
    );
    let anew = since(183)
        .began(20.days_ago(), PhaseKind::Hold)
        .began(9.days_ago(), PhaseKind::Cut);
    assert!(!anew.advice().warns("cut-long"));
}

#[test]
fn a_rungs_own_cautions_are_told() {
    let belt = |rung: &str, sets: Sets| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", rung, 60.days_ago());
        athlete.did(3.days_ago(), sets).advice().warns("belt")
    };
    assert!(belt("plus-50", 4.sets_of(4).with(30.0)));
    assert!(!belt("plus-25", 3.sets_of(4).with(10.0)));
}
