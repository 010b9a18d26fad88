//! Repeat, add reps, add load, test. The step of 2 to 10 % once one or two repetitions over the goal can be done: American
//! College of Sports Medicine, position stand, Med Sci Sports Exerc 2009;41(3):687–708; here taken of system load. The rest
//! is common practice, no source.

use rungwright::coaching::NextStep;

use crate::support::{Ago, Phrase, Said, Session, Sets, athlete, one_set, reps};
use crate::{fair_sets, good_sets, lifter, standard_sets};

fn after(session: impl Into<Session>) -> NextStep {
    lifter().did(3.days_ago(), session).advice()
}

#[test]
fn lost_form_a_set_too_few_and_too_little_reserve_are_repeated() {
    let lost = fair_sets().then(one_set(6).with(10.0).out_of_form());
    assert_eq!(after(lost).in_short(), "repeat form-miss");
    assert_eq!(after(2.sets_of(6).with(10.0)).in_short(), "repeat sets-short");
    assert_eq!(
        after(3.sets_of(6).with(10.0).leaving(0.5)).in_short(),
        "repeat reserve-short"
    );
    assert_eq!(after(good_sets()).in_short(), "add-load top-of-range");
}

#[test]
fn a_standard_met_once_is_asked_once_more() {
    let advice = after(standard_sets());
    assert_eq!(advice.in_short(), "repeat one-more-day");
    assert_eq!(advice.belt(), 20.0);
}

#[test]
fn in_the_range_the_next_thing_is_a_repetition() {
    let advice = after(reps([6, 5, 4]).with(10.0).leaving(1.0));
    assert_eq!(advice.in_short(), "add-reps in-range");
    assert_eq!((advice.range(), advice.belt()), ((5.0, Some(6.0)), 10.0));
}

/// All sets at the top with this reserve, 90 kg in all, and these plates on hand.
fn at_top_with(plates: &[f64], sets: Sets) -> NextStep {
    let mut on_hand = vec![10.0];
    on_hand.extend(plates);
    lifter()
        .with_plates(&on_hand)
        .did(3.days_ago(), sets.with(10.0))
        .advice()
}

#[test]
fn the_step_is_two_percent_at_least_and_ten_at_most() {
    let sixes = || 3.sets_of(6).leaving(1.0);
    // Of 90 kg: 91.8 to 99 kg in all.
    let least = at_top_with(&[1.8], sixes());
    assert_eq!(
        (least.in_short().as_str(), least.belt()),
        ("add-load top-of-range", 11.8)
    );
    let less = at_top_with(&[1.79], sixes());
    assert_eq!(
        (less.in_short().as_str(), less.belt()),
        ("add-reps no-step-in-band", 10.0)
    );
    let most = at_top_with(&[9.0], sixes());
    assert_eq!(
        (most.in_short().as_str(), most.belt()),
        ("add-load top-of-range", 19.0)
    );
    assert_eq!(
        at_top_with(&[9.01], sixes()).in_short(),
        "add-reps no-step-in-band"
    );
}

#[test]
fn the_lowest_load_of_the_step_is_taken() {
    let advice = at_top_with(&[8.0, 5.0, 2.5], 3.sets_of(6).leaving(1.0));
    assert_eq!(advice.belt(), 12.5);
}

#[test]
fn without_a_step_one_or_two_repetitions_more_are_asked() {
    let advice = at_top_with(&[], 3.sets_of(6).leaving(1.0));
    assert_eq!(advice.range(), (7.0, Some(8.0)));
}

#[test]
fn a_coarser_step_is_taken_when_the_repetitions_done_carry_it() {
    // Epley: 90 × (30 + 8 + 1) = 3510 ≥ X × (30 + 4 + 1) up to X = 100.28 kg.
    let eights = || 3.sets_of(8).leaving(1.0);
    let carried = at_top_with(&[20.28], eights());
    assert_eq!(
        (carried.in_short().as_str(), carried.belt()),
        ("add-load coarse-step", 20.28)
    );
    assert_eq!(
        at_top_with(&[20.29], eights()).in_short(),
        "add-reps no-step-in-band"
    );
    // Reserve that nobody logged is none: 90 × 38 = 3420 carries 97.7 kg, which is no coarse step at all.
    assert_eq!(
        at_top_with(&[20.28], 3.sets_of(8)).in_short(),
        "add-reps no-step-in-band"
    );
    // The lowest set and the lowest reserve decide.
    assert_eq!(
        at_top_with(&[20.28], reps([9, 9, 7]).leaving(1.0)).in_short(),
        "add-reps no-step-in-band"
    );
}

#[test]
fn holds_take_no_coarse_step() {
    let held = |plates: &[f64]| {
        athlete()
            .weighing(80.0)
            .with_plates(plates)
            .placed_on("one-arm-hang", "one-arm-plus", 60.days_ago())
            .did(
                3.days_ago(),
                3.holds_of(60)
                    .with(10.0)
                    .left()
                    .then(3.holds_of(60).with(10.0).right()),
            )
            .left_and_right()
            .0
            .in_short()
    };
    // The standard asks 92 kg in all; 90 kg is under it.
    assert_eq!(held(&[10.0, 5.0]), "add-load top-of-range");
    assert_eq!(held(&[10.0, 20.0]), "add-reps no-step-in-band");
}

#[test]
fn the_top_without_logged_reserve_is_repeated_once_and_then_adds() {
    let sixes = |belt: f64| 3.sets_of(6).with(belt);
    assert_eq!(after(sixes(10.0)).in_short(), "repeat reserve-unlogged");
    let twice = |belt: f64| {
        lifter()
            .did(6.days_ago(), sixes(belt))
            .did(3.days_ago(), sixes(10.0))
            .advice()
    };
    assert_eq!(twice(10.0).in_short(), "add-load top-of-range");
    // 0.99 × 90 = 89.1 kg in all.
    assert_eq!(twice(9.1).in_short(), "add-load top-of-range");
    assert_eq!(twice(9.0).in_short(), "repeat reserve-unlogged");
    let after_top = lifter()
        .did(6.days_ago(), good_sets())
        .did(3.days_ago(), sixes(10.0));
    assert_eq!(after_top.advice().in_short(), "add-load top-of-range");
    let after_fair = lifter()
        .did(6.days_ago(), fair_sets())
        .did(3.days_ago(), sixes(10.0));
    assert_eq!(after_fair.advice().in_short(), "repeat reserve-unlogged");
}

#[test]
fn a_test_counts_as_the_top_and_adds_load() {
    assert_eq!(after(one_set(8).with(10.0)).in_short(), "add-load top-of-range");
}

#[test]
fn the_last_rung_without_load_is_repeated_at_its_top() {
    let toes = |days: &[i32], count: u16| {
        athlete()
            .placed_on("toes-to-bar", "toes", 60.days_ago())
            .did_each(
                days.iter().map(|days| days.days_ago()),
                3.sets_of(count).leaving(1.0),
            )
            .advice()
            .in_short()
    };
    assert_eq!(toes(&[6, 3], 8), "repeat last-rung");
    assert_eq!(toes(&[3], 8), "repeat one-more-day");
    assert_eq!(toes(&[6, 3], 7), "add-reps in-range");
}

#[test]
fn the_last_rung_with_load_goes_on_adding() {
    let advice = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-100", 60.days_ago())
        .did_each([6.days_ago(), 3.days_ago()], 4.sets_of(3).with(80.0).leaving(1.0))
        .with_plates(&[25.0, 25.0, 20.0, 10.0, 5.0, 2.5])
        .advice();
    assert_eq!(
        (advice.in_short().as_str(), advice.belt()),
        ("add-load top-of-range", 85.0)
    );
}

/// Days of fives at 90 kg that left so much in reserve, the last three days ago.
fn easy(days: &[i32], left: f64) -> crate::support::Athlete {
    let sets = 3.sets_of(5).with(10.0).leaving(left);
    lifter().did_each(days.iter().map(|days| days.days_ago()), sets)
}

#[test]
fn four_easy_days_in_six_weeks_ask_for_a_test_and_three_do_not() {
    let due = easy(&[12, 9, 6, 3], 3.0).advice();
    assert_eq!(due.in_short(), "test test-due");
    assert_eq!((due.work().sets, due.range(), due.belt()), (1, (4.0, None), 10.0));
    assert_eq!(due.work().reserve.unwrap().reps(), 1.0);
    assert_eq!(easy(&[9, 6, 3], 3.0).advice().in_short(), "add-reps in-range");
}

#[test]
fn a_test_looks_back_forty_two_days() {
    assert_eq!(easy(&[42, 9, 6, 3], 3.0).advice().rule(), "test-due");
    assert_eq!(easy(&[43, 9, 6, 3], 3.0).advice().rule(), "in-range");
    let hard =
        |days: i32| easy(&[12, 9, 6, 3], 3.0).did(days.days_ago(), one_set(5).leaving(1.0).of("pull-up"));
    assert_eq!(hard(42).advice().rule(), "in-range");
    assert_eq!(hard(43).advice().rule(), "test-due");
}

#[test]
fn a_hard_set_left_two_failed_or_had_two_repetitions_at_most() {
    assert_eq!(easy(&[12, 9, 6, 3], 2.5).advice().rule(), "test-due");
    assert_eq!(easy(&[12, 9, 6, 3], 2.0).advice().rule(), "in-range");
    let beside = |sets: Sets| {
        easy(&[12, 9, 6, 3], 3.0)
            .did(9.days_ago(), sets.of("pull-up"))
            .advice()
            .rule()
    };
    assert_eq!(beside(one_set(5).failed()), "in-range");
    assert_eq!(beside(one_set(2)), "in-range");
    assert_eq!(beside(one_set(3)), "test-due");
    assert_eq!(beside(one_set(5)), "test-due");
}

#[test]
fn a_day_of_one_judged_set_was_the_test() {
    let tested = |days: i32| {
        easy(&[12, 9, 6, 3], 3.0)
            .did(days.days_ago(), one_set(7).with(10.0).leaving(3.0))
            .advice()
            .rule()
    };
    assert_eq!(tested(42), "in-range");
    assert_eq!(tested(43), "test-due");
}

#[test]
fn without_load_nothing_is_tested() {
    let advice = athlete()
        .placed_on("toes-to-bar", "level", 60.days_ago())
        .did_each(
            [12, 9, 6, 3].map(|days: i32| days.days_ago()),
            3.sets_of(8).leaving(4.0),
        )
        .advice();
    assert_eq!(advice.in_short(), "add-reps in-range");
}

#[test]
fn later_rules_only_add_their_reasons() {
    let advice = lifter()
        .did(20.days_ago(), 2.sets_of(6).with(10.0).leaving(0.0))
        .advice();
    assert_eq!(advice.rules(), ["layoff-short", "sets-short"]);
}
