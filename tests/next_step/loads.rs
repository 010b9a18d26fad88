//! What to do today: the load, the sets, the range. Common practice, no source.

use rungwright::coaching::{NextStep, Verdict};

use crate::support::{Ago, Athlete, Day, Phrase, Said, Sets, TODAY, athlete, one_set};
use crate::{fair_sets, good_sets, lifter, standard_sets};

/// Weighed 80 kg when it trained, and so much today.
fn now_weighing(kg: f64, sets: Sets) -> Athlete {
    athlete()
        .placed_on("weighted-pull-up", "plus-25", 60.days_ago())
        .weighed(3.days_ago(), 80.0)
        .did(3.days_ago(), sets)
        .weighed(TODAY, kg)
}

#[test]
fn a_days_bodyweight_moves_no_plate_within_four_percent_of_the_work_load() {
    // 90 kg in all; 4 % of it are 3.6 kg.
    let belt = |kg: f64| now_weighing(kg, fair_sets()).advice().belt();
    assert_eq!(belt(83.6), 10.0);
    assert_eq!(belt(76.4), 10.0);
    // Beyond that the loadable nearest to 90 kg: 6.25 and 13.75 kg hang.
    assert_eq!(belt(83.61), 6.25);
    assert_eq!(belt(76.39), 13.75);
}

#[test]
fn a_belt_that_cannot_be_hung_any_more_becomes_the_nearest_of_two_the_lighter() {
    let with = |plates: &[f64]| {
        lifter()
            .did(3.days_ago(), fair_sets())
            .with_plates(plates)
            .advice()
            .belt()
    };
    assert_eq!(with(&[8.75, 11.25]), 8.75);
    assert_eq!(with(&[8.75, 11.0]), 11.0);
    assert_eq!(with(&[]), 0.0);
}

#[test]
fn added_load_is_reckoned_from_what_was_moved_not_from_the_belt() {
    // Two kilos lighter, so 91.8 kg in all need 13.8 kg.
    let lighter = now_weighing(78.0, good_sets()).advice();
    assert_eq!(
        (lighter.in_short().as_str(), lighter.belt()),
        ("add-load top-of-range", 15.0)
    );
    // Four kilos heavier: 91.8 − 84 = 7.8.
    assert_eq!(now_weighing(84.0, good_sets()).advice().belt(), 8.75);
}

#[test]
fn a_back_off_takes_the_heaviest_load_at_or_under_its_cut() {
    let missed = |plates: &[f64]| {
        lifter()
            .with_plates(plates)
            .did_each([6.days_ago(), 3.days_ago()], 3.sets_of(3).with(20.0).failed())
            .advice()
    };
    // 0.95 × 100 = 95.
    assert_eq!(missed(&[15.0]).belt(), 15.0);
    assert_eq!(missed(&[15.01]).belt(), 0.0);
    assert_eq!(missed(&[15.01, 14.0]).belt(), 14.0);
}

#[test]
fn a_rung_begins_with_the_load_of_the_standard_below_it() {
    let begin = |ladder: &str, rung: &str| {
        let advice = athlete()
            .weighing(80.0)
            .placed_on(ladder, rung, 3.days_ago())
            .advice();
        advice.work().load.as_ref().map(|load| load.added.kg())
    };
    // 1.25 × 80 = 100 kg in all.
    assert_eq!(begin("weighted-pull-up", "plus-50"), Some(20.0));
    assert_eq!(begin("weighted-pull-up", "plus-25"), Some(0.0));
    // The first rung has none below, and a box squat is another form.
    assert_eq!(begin("weighted-pull-up", "assisted"), None);
    assert_eq!(begin("first-pull-up", "strict"), None);
    assert_eq!(begin("toes-to-bar", "level"), None);
}

#[test]
fn beginning_takes_the_highest_load_under_the_standards() {
    // 1.25 × 75 = 93.75: 18.75 kg; with 20 kg alone only bodyweight.
    let begin = |plates: &[f64]| {
        let athlete = athlete().weighing(75.0).with_plates(plates);
        athlete
            .placed_on("weighted-pull-up", "plus-50", TODAY)
            .advice()
            .belt()
    };
    assert_eq!(begin(&[15.0, 2.5, 1.25]), 18.75);
    assert_eq!(begin(&[20.0]), 0.0);
}

#[test]
fn a_step_up_on_the_same_movement_keeps_the_belt_and_to_another_names_no_load() {
    let up = lifter()
        .did_each([6.days_ago(), 3.days_ago()], standard_sets())
        .advice();
    assert_eq!(
        (up.next_rung.as_deref(), up.belt(), up.work().sets),
        (Some("plus-50"), 20.0, 4)
    );
    assert_eq!(up.range(), (3.0, Some(5.0)));
    let hang = |sets: Sets| sets.of("one-arm-hang");
    let (left, _) = athlete()
        .weighing(80.0)
        .placed_on("one-arm-pull-up", "two-arm", 60.days_ago())
        .did(
            9.days_ago(),
            hang(1.holds_of(10)).left().then(hang(1.holds_of(10)).right()),
        )
        .did_each([6.days_ago(), 3.days_ago()], 3.sets_of(6).leaving(1.0))
        .left_and_right();
    assert_eq!(
        (left.next_rung.as_deref(), &left.work().load),
        (Some("fingers-3"), &None)
    );
}

#[test]
fn the_work_of_a_step_is_of_the_rung_stepped_to_and_so_are_its_cautions() {
    let up = lifter()
        .did_each([6.days_ago(), 3.days_ago()], standard_sets())
        .advice();
    assert!(up.warns("belt"));
    assert!(!lifter().did(3.days_ago(), standard_sets()).advice().warns("belt"));
}

#[test]
fn help_nobody_ever_logged_is_not_asked() {
    // Three kilos more of bodyweight: 80 kg in all would need help.
    let heavier = |athlete: Athlete| {
        athlete
            .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
            .weighed(3.days_ago(), 80.0)
            .did(3.days_ago(), 3.sets_of(6).leaving(2.0))
            .weighed(TODAY, 83.5)
            .advice()
            .belt()
    };
    assert_eq!(heavier(athlete()), 0.0);
    // Who has used help gets it: the belt of nothing is 4.4 % off, 3.75 kg help come nearest.
    assert_eq!(
        heavier(athlete().did(90.days_ago(), one_set(5).of("dip").with(-10.0))),
        -3.75
    );
}

#[test]
fn gear_counts_with_a_plate_on_it() {
    let advice = lifter().with_gear(1.5).did(3.days_ago(), good_sets()).advice();
    // 91.8 kg in all: 10 kg of plates and 1.5 of gear are 91.5, 1.25 more are enough.
    assert_eq!(advice.belt(), 12.75);
    let plates: Vec<f64> = advice.load().plates.iter().map(|plate| plate.value()).collect();
    assert_eq!(plates, [10.0, 1.25]);
}

#[test]
fn the_fewest_plates_hang_and_of_as_few_the_heaviest() {
    let hung = |plates: &[f64]| -> Vec<f64> {
        let advice = lifter()
            .with_plates(plates)
            .did(3.days_ago(), fair_sets())
            .advice();
        advice.load().plates.iter().map(|plate| plate.value()).collect()
    };
    assert_eq!(hung(&[5.0, 5.0, 10.0]), [10.0]);
    assert_eq!(hung(&[5.0, 5.0, 7.5, 2.5]), [7.5, 2.5]);
}

#[test]
fn a_day_of_ones_and_twos_is_brought_to_the_range_by_epley() {
    // Epley (Boyd Epley Workout, 1985): 110 × (30 + 2) / (30 + 4 + 1) = 100.57 kg in all; 20 kg come nearest.
    let doubles = |count: u16| {
        let advice = lifter()
            .did(3.days_ago(), 3.sets_of(count).with(30.0).leaving(1.0))
            .advice();
        assert_eq!(advice.verdict, Verdict::Repeat);
        advice.belt()
    };
    assert_eq!(doubles(2), 20.0);
    assert_eq!(doubles(3), 30.0);
    // A minor's reserve of two makes it lighter: 110 × 32 / 36 = 97.8.
    let minor = lifter()
        .born("2012-01-01")
        .did(3.days_ago(), 3.sets_of(2).with(30.0).leaving(1.0));
    assert_eq!(minor.advice().belt(), 17.5);
}

#[test]
fn to_add_repetitions_is_to_begin_one_over_the_lowest_and_never_above_the_range() {
    let range = |lowest: u16| {
        let sets = 2
            .sets_of(6)
            .with(10.0)
            .leaving(1.0)
            .then(one_set(lowest).with(10.0).leaving(1.0));
        lifter().did(3.days_ago(), sets).advice().range()
    };
    assert_eq!(range(4), (5.0, Some(6.0)));
    assert_eq!(range(5), (6.0, Some(6.0)));
    // Nine of 8 to 12 at no load; seconds count one by one too.
    let holds = athlete()
        .placed_on("front-lever", "tuck", 60.days_ago())
        .did(3.days_ago(), 4.holds_of(17));
    assert_eq!(holds.advice().range(), (18.0, Some(30.0)));
}

#[test]
fn a_repeat_asks_the_whole_range_and_holds_ask_no_reserve() {
    let advice = lifter().did(3.days_ago(), 2.sets_of(6).with(10.0)).advice();
    assert_eq!(advice.range(), (4.0, Some(6.0)));
    assert_eq!(advice.work().reserve.unwrap().reps(), 1.0);
    let holds = athlete().placed_on("front-lever", "tuck", TODAY).advice();
    assert_eq!(holds.work().reserve, None);
}

#[test]
fn rest_is_long_for_compounds_and_shorter_for_skills() {
    let rest = |ladder: &str, rung: &str| {
        athlete()
            .weighing(80.0)
            .placed_on(ladder, rung, TODAY)
            .advice()
            .work()
            .rest_secs
    };
    // Over two minutes: Grgic 2018; the ranges are common practice, no source.
    assert_eq!(rest("weighted-pull-up", "plus-25"), (180, 300));
    assert_eq!(rest("front-lever", "tuck"), (120, 240));
}

#[test]
fn a_test_of_a_hold_asks_no_reserve() {
    // A hold logs reserve here so that no set is hard.
    let easy = 3.holds_of(15).leaving(4.0);
    let days: Vec<Day> = [12, 9, 6, 3].map(|days: i32| days.days_ago()).to_vec();
    let (left, _): (NextStep, NextStep) = athlete()
        .weighing(80.0)
        .placed_on("one-arm-hang", "one-arm", 60.days_ago())
        .did_each(days, easy.clone().left().then(easy.right()))
        .left_and_right();
    assert_eq!(left.in_short(), "test test-due");
    assert_eq!(
        (left.work().sets, left.range(), left.work().reserve),
        (1, (10.0, None), None)
    );
}
