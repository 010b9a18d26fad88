//! Sets that look like a slip of the finger. Epley's formula (Boyd Epley Workout, 1985): load × (1 + reps / 30); the bounds
//! are common practice, no source.

use crate::lifter;
use crate::support::{Ago, Athlete, Phrase, Said, Sets, TODAY, one_set};

/// So many earlier days, each with 105 kg in all for 5: an estimated best single of 122.5 kg.
fn known_for(days: i32) -> Athlete {
    let days = (0..days).map(|at| (30 - at).days_ago());
    lifter().did_each(days, 1.sets_of(5).with(25.0))
}

fn is_doubted(athlete: &Athlete) -> bool {
    athlete.timeline_on(TODAY, |timeline| timeline.sets.iter().any(|set| set.odd))
}

fn single(belt_kg: f64) -> Sets {
    one_set(1).with(belt_kg)
}

#[test]
fn a_load_over_one_hundred_and_fifteen_percent_of_the_best_single_is_doubted() {
    // 1.15 × 122.5 = 140.875 kg in all.
    assert!(!is_doubted(&known_for(3).did(2.days_ago(), single(60.875))));
    assert!(is_doubted(&known_for(3).did(2.days_ago(), single(60.88))));
}

#[test]
fn three_earlier_days_are_needed_to_doubt_a_set() {
    assert!(!is_doubted(&known_for(2).did(2.days_ago(), single(180.0))));
    assert!(is_doubted(&known_for(3).did(2.days_ago(), single(180.0))));
}

#[test]
fn another_day_at_ninety_seven_percent_of_it_confirms_it() {
    let another = |belt: f64| {
        known_for(3)
            .did(4.days_ago(), single(120.0))
            .did(2.days_ago(), one_set(1).with(belt))
    };
    let first_is_doubted = |athlete: Athlete| {
        athlete.timeline_on(TODAY, |timeline| {
            timeline.sets.iter().any(|set| set.odd && set.added.kg() == 120.0)
        })
    };
    // 0.97 × 200 = 194 kg in all.
    assert!(!first_is_doubted(another(114.0)));
    assert!(first_is_doubted(another(113.99)));
}

#[test]
fn the_same_day_confirms_nothing() {
    let athlete = known_for(3).did(2.days_ago(), single(120.0).then(single(120.0)));
    assert!(is_doubted(&athlete));
}

#[test]
fn a_try_that_gave_no_repetition_is_not_doubted() {
    assert!(!is_doubted(
        &known_for(3).did(2.days_ago(), one_set(0).with(180.0).failed())
    ));
}

#[test]
fn a_doubted_set_moves_no_load_and_is_pointed_at_for_four_weeks() {
    let slip = |days: i32| {
        lifter()
            .did_each(
                [50.days_ago(), 49.days_ago(), 48.days_ago()],
                1.sets_of(5).with(25.0),
            )
            .did(days.days_ago(), 3.sets_of(6).with(180.0).leaving(1.0))
            .did(2.days_ago(), 3.sets_of(5).with(25.0).leaving(1.0))
            .advice()
    };
    assert!(slip(28).load().system.kg() < 120.0);
    assert!(slip(28).warns("check-entry"));
    assert!(!slip(29).warns("check-entry"));
}

#[test]
fn kinds_of_help_and_sides_are_doubted_each_by_their_own_days() {
    let other_form = lifter()
        .did_each(
            [9.days_ago(), 8.days_ago(), 7.days_ago()],
            1.sets_of(5).with(25.0).on_ladder("first-pull-up", "band"),
        )
        .did(2.days_ago(), single(180.0));
    assert!(!is_doubted(&other_form));
}
