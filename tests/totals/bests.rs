//! Bests: which set holds which record, and since when.
//!
//! The numbers are our own; bodyweight^0.67 is Jaric's scaling of strength (Sports Med 2002;32(10):615–631).

use crate::support::{Ago, Athlete, Day, Phrase, Sets, TODAY, athlete, one_set};
use proptest::prelude::*;
use rungwright::bests::{Best, Formula, Kind, Size, bests};
use rungwright::units::{Bodyweight, Side, Unit};

/// What the bests of an athlete are today, seen by `see`.
fn seen<T>(athlete: &Athlete, see: impl FnOnce(&[Best<'_>]) -> T) -> T {
    athlete.timeline_on(TODAY, |timeline| see(&bests(timeline, Formula::Epley)))
}

/// A best as (value to the thousandth, its day, the bodyweight then).
type Held = (f64, chrono::NaiveDate, Option<f64>);

fn held(athlete: &Athlete, movement: &str, kind: Kind, size: Size) -> Option<Held> {
    seen(athlete, |bests| {
        let mut found = bests
            .iter()
            .filter(|best| (best.movement, best.kind, best.size) == (movement, kind, size));
        let best = found.next()?;
        assert!(found.next().is_none(), "one best of a kind");
        Some((
            (best.value * 1e3).round() / 1e3,
            best.date,
            best.bodyweight.map(Bodyweight::kg),
        ))
    })
}

fn dips(kg: f64, bodyweight: f64) -> Sets {
    one_set(1).of("dip").with(kg).at_bodyweight(bodyweight)
}

fn pull_ups(reps: u16, kg: f64) -> Sets {
    one_set(reps).of("pull-up").with(kg)
}

#[test]
fn four_dips_at_four_bodyweights_win_one_measure_each() {
    let athlete = athlete()
        .did(900.days_ago(), dips(40.0, 100.0))
        .did(700.days_ago(), dips(54.0, 85.0))
        .did(400.days_ago(), dips(43.0, 55.0))
        .did(100.days_ago(), dips(53.0, 70.0));
    let single = |kind| held(&athlete, "dip", kind, Size::Reps(1)).unwrap();
    assert_eq!(single(Kind::System), (140.0, 900.days_ago().date(), Some(100.0)));
    assert_eq!(single(Kind::Added), (54.0, 700.days_ago().date(), Some(85.0)));
    assert_eq!(single(Kind::Ratio), (1.782, 400.days_ago().date(), Some(55.0)));
    // 123 kg / 70^0.67 = 123 / 17.2270; the next best is 139 kg / 85^0.67 = 7.085.
    assert_eq!(
        single(Kind::SizeAdjusted),
        (7.140, 100.days_ago().date(), Some(70.0))
    );
}

#[test]
fn a_set_of_eight_is_the_best_of_at_least_five_until_a_heavier_five() {
    let one = athlete().weighing(80.0).did(9.days_ago(), pull_ups(8, 10.0));
    let of = |athlete: &Athlete, reps| held(athlete, "pull-up", Kind::System, Size::Reps(reps));
    for reps in 1..=8 {
        assert_eq!(of(&one, reps).unwrap().0, 90.0, "{reps} or more");
    }
    assert_eq!(of(&one, 9), None);
    let two = one.did(5.days_ago(), pull_ups(5, 20.0));
    assert_eq!(of(&two, 5).unwrap().0, 100.0);
    assert_eq!(of(&two, 6).unwrap().0, 90.0);
}

#[test]
fn more_than_twelve_repetitions_are_a_best_of_twelve() {
    let athlete = athlete().weighing(80.0).did(9.days_ago(), pull_ups(20, 0.0));
    assert!(held(&athlete, "pull-up", Kind::System, Size::Reps(12)).is_some());
    assert!(held(&athlete, "pull-up", Kind::System, Size::Reps(13)).is_none());
}

#[test]
fn of_equal_sets_the_earliest_holds_the_best() {
    let day =
        |athlete: &Athlete| held(athlete, "pull-up", Kind::System, Size::Reps(5)).map(|(_, date, _)| date);
    let tied = athlete()
        .weighing(80.0)
        .did(9.days_ago(), pull_ups(5, 20.0))
        .did(5.days_ago(), pull_ups(5, 20.0));
    assert_eq!(day(&tied), Some(9.days_ago().date()));
    let in_pounds = athlete()
        .weighing(80.0)
        .did(9.days_ago(), one_set(5).of("pull-up").with_typed(45.0, Unit::Lb))
        .did(5.days_ago(), pull_ups(5, 45.0 * 0.453_592_37));
    assert_eq!(
        day(&in_pounds),
        Some(9.days_ago().date()),
        "a rounding is no new best"
    );
}

#[test]
fn without_a_bodyweight_only_the_belt_is_known() {
    let athlete = athlete().did(9.days_ago(), pull_ups(5, 20.0));
    seen(&athlete, |bests| {
        assert_eq!(bests.len(), 5, "at least one to five repetitions");
        for best in bests {
            assert_eq!((best.kind, best.value), (Kind::Added, 20.0));
            assert_eq!((best.bodyweight, best.system), (None, None));
        }
    });
}

#[test]
fn nothing_moved_is_no_best_whether_somebody_stood_on_a_scale_or_not() {
    // A back squat moves the bar alone: without one it is nothing, at any bodyweight.
    let squats = |athlete: Athlete, kg: f64| {
        let athlete = athlete.did(9.days_ago(), one_set(5).of("back-squat").with(kg));
        seen(&athlete, |bests| bests.len())
    };
    assert_eq!(squats(athlete().weighing(80.0), 0.0), 0);
    assert_eq!(squats(athlete(), 0.0), 0);
    assert_eq!(squats(athlete(), 60.0), 5);
}

#[test]
fn a_missed_set_counts_as_far_as_it_went_and_one_out_of_form_never() {
    let of_four = |sets: Sets| {
        let athlete = athlete().weighing(80.0).did(9.days_ago(), sets);
        held(&athlete, "pull-up", Kind::System, Size::Reps(4)).is_some()
    };
    assert!(of_four(pull_ups(4, 20.0).failed()));
    assert!(!of_four(pull_ups(3, 20.0).failed()));
    assert!(!of_four(pull_ups(4, 20.0).out_of_form()));
}

#[test]
fn help_that_nobody_measured_makes_no_best() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("first-pull-up", "band", 9.days_ago())
        .did(9.days_ago(), 3.sets_of(8));
    seen(&athlete, |bests| assert_eq!(bests, []));
}

#[test]
fn sides_hold_their_own_bests_and_a_set_without_side_none() {
    let one_arm = |count| one_set(count).of("one-arm-row");
    let athlete = athlete()
        .weighing(80.0)
        .did(9.days_ago(), one_arm(5).left())
        .did(8.days_ago(), one_arm(8).right())
        .did(7.days_ago(), one_arm(12));
    seen(&athlete, |bests| {
        let most = |side| {
            let of_side = bests
                .iter()
                .filter(|best| best.side == side && best.kind == Kind::System);
            of_side.count()
        };
        assert_eq!(most(Some(Side::Left)), 5);
        assert_eq!(most(Some(Side::Right)), 8);
        assert_eq!(most(None), 0);
    });
}

#[test]
fn the_longest_hold_is_the_best_and_of_equal_ones_the_heaviest() {
    let hang = |seconds: u16, kg: f64| 1.holds_of(seconds).of("dead-hang").with(kg);
    let athlete = athlete()
        .weighing(80.0)
        .did(9.days_ago(), hang(30, 20.0))
        .did(8.days_ago(), hang(45, 0.0))
        .did(7.days_ago(), hang(45, 5.0));
    let longest = held(&athlete, "dead-hang", Kind::System, Size::Hold(45.0)).unwrap();
    assert_eq!((longest.0, longest.1), (85.0, 7.days_ago().date()));
    assert_eq!(held(&athlete, "dead-hang", Kind::System, Size::Hold(30.0)), None);
}

#[test]
fn a_load_far_above_all_before_it_stands_and_is_doubted() {
    let usual = |athlete: Athlete| athlete.did_each([9, 8, 7].map(Ago::days_ago), pull_ups(5, 10.0));
    let slip = usual(athlete().weighing(80.0)).did(5.days_ago(), pull_ups(5, 100.0));
    seen(&slip, |bests| {
        let five = bests.iter().find(|best| best.size == Size::Reps(5)).unwrap();
        assert_eq!((five.value, five.doubted), (180.0, true));
    });
    let confirmed = slip.did(3.days_ago(), pull_ups(5, 100.0));
    seen(&confirmed, |bests| {
        assert!(bests.iter().all(|best| !best.doubted))
    });
}

#[test]
fn the_estimate_takes_logged_reserve_up_to_five_and_twelve_repetitions_in_all() {
    let max = |sets: Sets| {
        let athlete = athlete().weighing(80.0).did(9.days_ago(), sets);
        held(&athlete, "pull-up", Kind::OneRepMax, Size::Estimate).map(|(value, ..)| value)
    };
    // Epley: load × (1 + repetitions / 30).
    assert_eq!(max(pull_ups(5, 20.0)), Some(116.667));
    assert_eq!(max(pull_ups(5, 20.0).leaving(2.0)), Some(123.333));
    assert_eq!(max(pull_ups(5, 20.0).leaving(5.0)), Some(133.333));
    assert_eq!(max(pull_ups(5, 20.0).leaving(5.5)), None);
    assert_eq!(max(pull_ups(9, 20.0).leaving(3.0)), Some(140.0));
    assert_eq!(max(pull_ups(9, 20.0).leaving(4.0)), None);
    assert_eq!(max(pull_ups(1, 20.0)), Some(100.0), "a single is what it was");
    assert_eq!(max(pull_ups(5, 20.0).leaving(2.0).failed()), Some(116.667));
}

/// A day within the last year and a set that can be logged on it.
fn days_and_sets() -> impl Strategy<Value = Vec<(i32, u16, u16)>> {
    prop::collection::vec((1..300, 1_u16..=12, 0_u16..120), 1..12)
}

fn trained(sets: &[(i32, u16, u16)], unit: Unit) -> Athlete {
    let per_kg = |kg: f64| if unit == Unit::Kg { kg } else { kg / 0.453_592_37 };
    sets.iter()
        .fold(athlete().weighing(80.0), |athlete, &(day, reps, quarters)| {
            let belt = per_kg(f64::from(quarters) / 4.0);
            athlete.did(day.days_ago(), one_set(reps).of("dip").with_typed(belt, unit))
        })
}

/// Every best as (kind, size, value, day), in order.
fn all(athlete: &Athlete) -> Vec<(Kind, Size, f64, chrono::NaiveDate)> {
    seen(athlete, |bests| {
        let row = |best: &Best<'_>| (best.kind, best.size, best.value, best.date);
        bests.iter().map(row).collect()
    })
}

proptest! {
    #[test]
    fn a_log_in_pounds_has_the_bests_of_the_same_log_in_kilograms(sets in days_and_sets()) {
        let (kg, lb) = (all(&trained(&sets, Unit::Kg)), all(&trained(&sets, Unit::Lb)));
        prop_assert_eq!(kg.len(), lb.len());
        for (one, other) in kg.into_iter().zip(lb) {
            prop_assert_eq!((one.0, one.1, one.3), (other.0, other.1, other.3));
            prop_assert!((one.2 - other.2).abs() <= 1e-9 * one.2.abs().max(1.0));
        }
    }

    #[test]
    fn a_worse_set_changes_no_best(
        sets in days_and_sets(), worse_than in any::<prop::sample::Index>(), fewer in 0_u16..3, lighter in 0_u16..9, day in 0_i32..300,
    ) {
        let before = trained(&sets, Unit::Kg);
        let (first, reps, quarters) = sets[worse_than.index(sets.len())];
        // Not before the set that it is worse than: of equals the earliest holds the best.
        let day: Day = day.min(first - 1).days_ago();
        let belt = f64::from(quarters.saturating_sub(lighter)) / 4.0;
        let after = before.clone().did(day, one_set(reps.saturating_sub(fewer).max(1)).of("dip").with(belt));
        prop_assert_eq!(all(&before), all(&after));
    }
}
