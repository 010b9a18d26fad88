//! Time away and lighter weeks. Strength falls with time off (Bosquet et al. 2013), little in two weeks (McMaster et al.
//! 2013); bounds and cuts are common practice, no source.

use rungwright::logbook::record::PhaseKind;

use crate::support::{Ago, Phrase, Said, TODAY, athlete};
use crate::{fair_sets, good_sets, lifter};

/// 110 kg in all, so that every cut can be hung.
fn away(days: i32) -> rungwright::coaching::NextStep {
    lifter()
        .did(days.days_ago(), 3.sets_of(5).with(30.0).leaving(1.0))
        .advice()
}

#[test]
fn fourteen_days_away_are_none_and_fifteen_cost_five_percent() {
    assert!(!away(14).gives("layoff-short"));
    let short = away(15);
    assert_eq!(short.in_short(), "back-off layoff-short");
    // 0.95 × 110 = 104.5: 23.75 kg hang, 25 would be too much.
    assert_eq!((short.belt(), short.work().sets), (23.75, 2));
}

#[test]
fn twenty_eight_days_away_are_short_and_twenty_nine_long() {
    assert_eq!(away(28).in_short(), "back-off layoff-short");
    let long = away(29);
    assert_eq!(long.in_short(), "back-off layoff-long");
    // 0.90 × 110 = 99.
    assert_eq!((long.belt(), long.work().sets), (18.75, 2));
}

#[test]
fn eighty_four_days_away_are_long_and_eighty_five_cost_a_rung_or_fifteen_percent() {
    assert_eq!(away(84).in_short(), "back-off layoff-long");
    let gone = away(85);
    // The rung below is the same movement, so the load goes down: 0.85 × 110 = 93.5.
    assert_eq!(gone.in_short(), "back-off layoff-step");
    assert_eq!((gone.belt(), gone.work().sets), (12.5, 2));
}

#[test]
fn where_the_cut_needs_help_nobody_ever_logged_the_rung_goes_down() {
    // 0.85 × 94.2 = 80.07 kg is a belt of nothing at 80 kg, 0.85 × 94.1 = 79.99 kg would need help.
    let away = |belt: f64, helped: bool| {
        let athlete = if helped {
            lifter().did(99.days_ago(), 1.sets_of(5).with(-10.0).of("dip"))
        } else {
            lifter()
        };
        athlete
            .did(90.days_ago(), 3.sets_of(5).with(belt).leaving(1.0))
            .advice()
    };
    assert_eq!(away(14.2, false).in_short(), "back-off layoff-step");
    let lower = away(14.1, false);
    assert_eq!(lower.in_short(), "step-back layoff-step");
    assert_eq!(lower.next_rung.as_deref(), Some("bodyweight"));
    assert_eq!(lower.work().load, None);
    assert_eq!(away(14.1, true).in_short(), "back-off layoff-step");
}

/// The second rung of a ladder without load.
fn away_unloaded(rung: &str, days: i32) -> rungwright::coaching::NextStep {
    athlete()
        .placed_on("toes-to-bar", rung, 100.days_ago())
        .did(days.days_ago(), 3.sets_of(9).leaving(2.0))
        .advice()
}

#[test]
fn without_load_a_short_layoff_costs_a_set_and_a_long_one_a_rung() {
    assert!(!away_unloaded("level", 14).gives("layoff-short"));
    let short = away_unloaded("level", 15);
    assert_eq!(
        (short.in_short(), short.work().sets),
        ("back-off layoff-short".to_owned(), 2)
    );
    assert_eq!(away_unloaded("level", 28).in_short(), "back-off layoff-short");
    let long = away_unloaded("level", 29);
    assert_eq!(long.in_short(), "step-back layoff-long");
    assert_eq!(
        (long.next_rung.as_deref(), long.work().rung.as_str()),
        (Some("knees"), "knees")
    );
    assert_eq!(away_unloaded("level", 85).in_short(), "step-back layoff-step");
}

#[test]
fn on_the_lowest_rung_there_is_no_step_back() {
    let long = away_unloaded("knees", 29);
    assert_eq!(long.in_short(), "back-off layoff-long");
    assert_eq!((long.next_rung.as_deref(), long.work().sets), (None, 2));
    assert_eq!(away_unloaded("knees", 85).in_short(), "back-off layoff-step");
}

#[test]
fn a_light_day_ends_a_layoff_too() {
    let athlete = lifter()
        .did(20.days_ago(), good_sets())
        .began(11.days_ago(), PhaseKind::Deload)
        .did(10.days_ago(), fair_sets());
    assert!(!athlete.advice().gives("layoff-short"));
}

#[test]
fn in_a_deload_everything_is_repeated_with_half_the_sets_rounded_up() {
    let deload = |days: i32| {
        lifter()
            .did(8.days_ago(), good_sets())
            .began(days.days_ago(), PhaseKind::Deload)
            .advice()
    };
    let running = deload(6);
    assert_eq!(running.in_short(), "repeat deload");
    assert_eq!((running.belt(), running.work().sets), (10.0, 2));
    let over = deload(7);
    assert_eq!(
        (over.in_short(), over.work().sets),
        ("add-load top-of-range".to_owned(), 3)
    );
    assert_eq!(deload(0).verdict, running.verdict);
}

#[test]
fn a_layoff_goes_before_a_deload_and_the_sets_are_one_fewer_then_half() {
    let advice = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-50", 100.days_ago())
        .did(20.days_ago(), 4.sets_of(4).with(30.0).leaving(1.0))
        .began(TODAY, PhaseKind::Deload)
        .advice();
    assert_eq!(advice.in_short(), "back-off layoff-short");
    // Four, one fewer, half of three rounded up.
    assert_eq!(advice.work().sets, 2);
}
