//! Bodyweight of a day, odd weigh-ins, stale weigh-ins. Common practice, no source.

use rungwright::catalogue::Catalogue;
use rungwright::coaching::Verdict;
use rungwright::coaching::session::session_steps;

use crate::support::{Ago, Athlete, Phrase, Said, Sets, TODAY, athlete};
use crate::{fair_sets, good_sets};

/// On the belt rung, having trained two days ago; weigh-ins are told by the test.
fn unweighed() -> Athlete {
    athlete()
        .placed_on("weighted-pull-up", "plus-25", 100.days_ago())
        .did(2.days_ago(), good_sets())
}

fn today(athlete: &Athlete) -> f64 {
    athlete.timeline_on(TODAY, |timeline| timeline.bodyweight().unwrap().kg())
}

#[test]
fn a_weigh_in_of_fourteen_days_is_fresh_and_of_fifteen_is_stale() {
    let of = |days: i32| unweighed().weighed(days.days_ago(), 80.0).advice();
    assert_eq!(of(14).in_short(), "add-load top-of-range");
    assert_eq!(of(15).in_short(), "weigh-in-first weigh-in-stale");
}

#[test]
fn who_never_weighed_is_asked_to_and_gets_no_load() {
    let advice = unweighed().advice();
    assert_eq!(advice.in_short(), "weigh-in-first weigh-in-stale");
    assert_eq!(advice.work().load, None);
}

#[test]
fn behind_a_stale_weigh_in_stands_what_follows_it() {
    let advice = unweighed().weighed(15.days_ago(), 80.0).advice();
    assert_eq!(advice.behind, Verdict::AddLoad);
    assert!(advice.gives("top-of-range"));
    assert_eq!(advice.belt(), 12.5);
    let sore = unweighed()
        .weighed(15.days_ago(), 80.0)
        .hurt(TODAY, rungwright::catalogue::Site::Elbow, 4)
        .advice();
    assert_eq!(
        (sore.verdict, sore.behind),
        (Verdict::WeighInFirst, Verdict::Repeat)
    );
    assert_eq!(sore.rules(), ["weigh-in-stale", "pain-cap", "top-of-range"]);
}

#[test]
fn a_bodyweight_logged_with_the_first_set_of_the_day_serves_the_session() {
    let session = |today: Sets| {
        let athlete = unweighed().did(TODAY, today);
        let now = athlete.next_steps_on(TODAY);
        let (log, plates) = (athlete.log(), athlete.plates());
        athlete.timeline_on(TODAY, |timeline| {
            session_steps(&log, timeline, Catalogue::shipped(), &plates, &now)
        })
    };
    let verdict = |today: Sets| session(today)[0].verdict;
    assert_eq!(verdict(1.sets_of(5)), Verdict::WeighInFirst);
    assert_eq!(verdict(1.sets_of(5).at_bodyweight(80.0)), Verdict::AddLoad);
}

#[test]
fn a_rung_without_load_needs_no_weigh_in() {
    let advice = athlete()
        .placed_on("toes-to-bar", "knees", 30.days_ago())
        .did(2.days_ago(), 3.sets_of(9).leaving(2.0))
        .advice();
    assert_eq!(advice.in_short(), "add-reps in-range");
}

#[test]
fn minors_and_underweight_adults_are_not_sent_to_the_scale() {
    let old = || unweighed().weighed(40.days_ago(), 50.0);
    let minor = old().born("2010-01-01").advice();
    assert_eq!(minor.verdict, Verdict::AddLoad);
    assert!(minor.gives("weigh-in-stale"));
    // Body mass index 50 / 1.65² = 18.4 and 50 / 1.64² = 18.6; 18.5 is the World Health Organization's bound.
    let lean = old().tall(165.0).advice();
    assert_eq!(
        (lean.verdict, lean.gives("weigh-in-stale")),
        (Verdict::AddLoad, true)
    );
    let healthy = old().tall(164.0).advice();
    assert_eq!(healthy.verdict, Verdict::WeighInFirst);
}

#[test]
fn a_day_weighs_the_mean_of_its_weigh_ins_those_of_sets_too() {
    let athlete = unweighed()
        .weighed(TODAY, 79.0)
        .weighed(TODAY, 80.0)
        .did(TODAY, fair_sets().at_bodyweight(81.0));
    // 79, 80 and three sets at 81: 402 / 5.
    assert_eq!(today(&athlete), 80.4);
}

#[test]
fn a_set_is_moved_by_its_own_bodyweight_the_days_the_last_or_the_first_after() {
    let weight_of = |athlete: Athlete| {
        athlete.timeline_on(TODAY, |timeline| {
            timeline.sets.last().unwrap().bodyweight.unwrap().kg()
        })
    };
    let ten_ago = |athlete: Athlete| weight_of(athlete.did(10.days_ago(), 1.sets_of(5)));
    let placed = || athlete().placed_on("weighted-pull-up", "plus-25", 100.days_ago());
    assert_eq!(
        ten_ago(placed().weighed(20.days_ago(), 80.0).weighed(9.days_ago(), 82.0)),
        80.0
    );
    assert_eq!(
        ten_ago(placed().weighed(20.days_ago(), 80.0).weighed(10.days_ago(), 82.0)),
        82.0
    );
    assert_eq!(
        ten_ago(placed().weighed(9.days_ago(), 82.0).weighed(8.days_ago(), 83.0)),
        82.0
    );
    let own = placed()
        .weighed(10.days_ago(), 80.0)
        .did(10.days_ago(), 1.sets_of(5).at_bodyweight(81.0));
    assert_eq!(weight_of(own), 81.0);
}

#[test]
fn a_week_lets_bodyweight_move_six_percent_and_no_more() {
    // 5 % and 1 % a week: 80 kg → 84.8 kg after 7 days.
    let after_a_week = |kg: f64| {
        let athlete = athlete().weighed(7.days_ago(), 80.0).weighed(TODAY, kg);
        today(&athlete)
    };
    assert_eq!(after_a_week(84.8), 84.8);
    assert_eq!(after_a_week(84.81), 80.0);
    assert_eq!(after_a_week(75.2), 75.2);
    assert_eq!(after_a_week(75.19), 80.0);
}

#[test]
fn a_jump_counts_when_the_very_next_weigh_in_lies_within_three_percent_of_it() {
    let next = |kg: f64| {
        let athlete = athlete()
            .weighed(9.days_ago(), 80.0)
            .weighed(8.days_ago(), 100.0)
            .weighed(7.days_ago(), kg);
        today(&athlete)
    };
    assert_eq!(next(103.0), 103.0);
    assert_eq!(next(103.01), 80.0);
    assert_eq!(next(97.0), 97.0);
    assert_eq!(next(96.99), 80.0);
}

#[test]
fn only_the_very_next_weigh_in_confirms_a_jump() {
    let athlete = athlete()
        .weighed(9.days_ago(), 80.0)
        .weighed(8.days_ago(), 100.0)
        .weighed(7.days_ago(), 80.0)
        .weighed(6.days_ago(), 100.0);
    assert_eq!(today(&athlete), 80.0);
}

#[test]
fn the_first_weigh_in_is_never_odd() {
    let athlete = athlete().weighed(9.days_ago(), 180.0).weighed(8.days_ago(), 80.0);
    assert_eq!(today(&athlete), 180.0);
}

#[test]
fn an_odd_weigh_in_is_neither_fresh_nor_the_weight_of_its_own_sets() {
    let slipped = unweighed()
        .weighed(20.days_ago(), 80.0)
        .did(TODAY, fair_sets().at_bodyweight(800.0));
    assert_eq!(slipped.advice().verdict, Verdict::WeighInFirst);
    let moved = slipped.timeline_on(TODAY, |timeline| {
        timeline.sets.last().unwrap().system.unwrap().kg()
    });
    assert_eq!(moved, 90.0);
}
