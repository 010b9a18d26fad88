//! A calendar week: hard sets of a muscle group against their range.

use chrono::{Datelike, NaiveDate};
use rungwright::catalogue::{Catalogue, Muscle};
use rungwright::coaching::week::{Group, Status, Trained, Week};

use crate::support::{Ago, Athlete, Day, Phrase, Sets, TODAY, athlete, one_set};

/// Monday to Friday of the week that is asked about; today is Friday 20 March 2026.
const MONDAY: fn() -> Day = || 4.days_ago();

fn date(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// What the week says of one group.
struct Said {
    direct: u32,
    indirect: u32,
    sets: f64,
    range: (f64, f64),
    status: Option<Status>,
}

fn group_on(athlete: &Athlete, day: Day, muscle: Muscle) -> Said {
    athlete.timeline_on(day, |timeline| {
        let trained = Trained::of(timeline, Catalogue::shipped(), Week::of(day.date()));
        let group: &Group<'_> = trained
            .groups
            .iter()
            .find(|group| group.muscle == muscle)
            .unwrap();
        Said {
            direct: group.direct,
            indirect: group.indirect,
            sets: group.sets(),
            range: (group.range.low, group.range.high),
            status: group.status(),
        }
    })
}

fn group(athlete: &Athlete, muscle: Muscle) -> Said {
    group_on(athlete, TODAY, muscle)
}

/// Sets of pull-ups for the lats on Monday.
fn lats(sets: Sets) -> f64 {
    group(&athlete().did(MONDAY(), sets.of("pull-up")), Muscle::Lats).sets
}

/// So many sets of pull-ups, each kept two in reserve or gone to failure.
fn pulled(kept: i32, failed: i32) -> Said {
    let athlete = athlete()
        .did(MONDAY(), kept.sets_of(6).leaving(2.0).of("pull-up"))
        .did(TODAY, failed.sets_of(6).failed().of("pull-up"));
    group(&athlete, Muscle::Lats)
}

#[test]
fn a_week_has_the_name_that_iso_8601_gives_it() {
    // ISO 8601, RFC 5545 section 3.3.10: Monday first, week 1 holds the year's first Thursday. Worked by hand from that rule.
    for (day, name) in [
        ("2012-12-31", "2013-W01"),
        ("2016-01-03", "2015-W53"),
        ("2019-12-30", "2020-W01"),
        ("2020-12-31", "2020-W53"),
        ("2021-01-03", "2020-W53"),
        ("2022-12-31", "2022-W52"),
        ("2023-01-01", "2022-W52"),
        ("2023-01-02", "2023-W01"),
        ("2024-02-29", "2024-W09"),
        ("2024-12-30", "2025-W01"),
        ("2026-12-31", "2026-W53"),
        ("2027-01-03", "2026-W53"),
        ("2027-01-04", "2027-W01"),
    ] {
        assert_eq!(Week::of(date(day)).name(), name, "{day}");
    }
}

#[test]
fn a_week_53_comes_only_in_the_years_that_have_one() {
    // RFC 5545: 1 January is a Thursday, or a Wednesday of a leap year.
    let years = (2000..=2040).filter(|year| {
        // 28 December lies in the year's last week.
        let last = NaiveDate::from_ymd_opt(*year, 12, 28).unwrap();
        Week::of(last).name().ends_with("W53")
    });
    assert_eq!(
        years.collect::<Vec<_>>(),
        [2004, 2009, 2015, 2020, 2026, 2032, 2037]
    );
}

#[test]
fn every_day_lies_in_the_week_of_its_monday() {
    let mut day = date("2019-12-20");
    while day < date("2028-01-10") {
        let week = Week::of(day);
        assert!(week.contains(day));
        assert_eq!(week.monday().weekday(), chrono::Weekday::Mon);
        assert_eq!((week.sunday() - week.monday()).num_days(), 6);
        assert_eq!(week.days().count(), 7);
        assert_eq!(Week::of(week.sunday()), week);
        assert_eq!(week.earlier(1).sunday().succ_opt(), Some(week.monday()));
        day = day.succ_opt().unwrap();
    }
}

#[test]
fn sunday_ends_a_week_and_monday_begins_the_next() {
    let athlete = athlete()
        .did(5.days_ago(), 3.sets_of(6).of("pull-up"))
        .did(MONDAY(), 2.sets_of(6).of("pull-up"));
    assert_eq!(group(&athlete, Muscle::Lats).sets, 2.0);
    assert_eq!(group_on(&athlete, 5.days_ago(), Muscle::Lats).sets, 3.0);
}

#[test]
fn what_comes_after_the_day_does_not_exist() {
    let athlete = athlete()
        .did(MONDAY(), 2.sets_of(6).of("pull-up"))
        .did(TODAY, 3.sets_of(6).of("pull-up"));
    assert_eq!(group_on(&athlete, 1.days_ago(), Muscle::Lats).sets, 2.0);
    assert_eq!(group(&athlete, Muscle::Lats).sets, 5.0);
}

#[test]
fn an_indirect_set_counts_half() {
    // Pelland et al. 2024 weigh indirect sets by 0.5; the example is worked by hand from that: dips train the chest and the
    // triceps directly, the front of the shoulder along the way.
    let athlete = athlete()
        .did(MONDAY(), 4.sets_of(8).leaving(2.0).of("dip"))
        .did(TODAY, 3.sets_of(12).leaving(1.0).of("triceps-extension"));
    let chest = group(&athlete, Muscle::Chest);
    assert_eq!((chest.direct, chest.indirect, chest.sets), (4, 0, 4.0));
    let front = group(&athlete, Muscle::FrontDelts);
    assert_eq!((front.direct, front.indirect, front.sets), (0, 4, 2.0));
    let triceps = group(&athlete, Muscle::Triceps);
    assert_eq!((triceps.direct, triceps.indirect, triceps.sets), (7, 0, 7.0));
}

#[test]
fn up_to_four_in_reserve_a_set_is_hard() {
    // No cut is published that everybody uses; 4 or 5 is what studies of volume mostly take in (from memory).
    assert_eq!(lats(3.sets_of(6).leaving(4.0)), 3.0);
    assert_eq!(lats(3.sets_of(6).leaving(4.5)), 0.0);
    assert_eq!(lats(3.sets_of(6).leaving(0.0)), 3.0);
}

#[test]
fn a_set_without_a_reserve_counts_and_a_failed_one_had_none() {
    assert_eq!(lats(3.sets_of(6)), 3.0);
    // Failed with five in reserve contradicts itself: the failure holds.
    assert_eq!(lats(3.sets_of(6).leaving(5.0).failed()), 3.0);
}

#[test]
fn work_out_of_form_loads_the_muscle_all_the_same() {
    assert_eq!(lats(3.sets_of(6).leaving(1.0).out_of_form()), 3.0);
    assert_eq!(lats(3.sets_of(6).leaving(6.0).out_of_form()), 0.0);
}

#[test]
fn where_nothing_moved_there_was_no_set() {
    assert_eq!(lats(one_set(0).failed()), 0.0);
    assert_eq!(lats(one_set(1).failed()), 1.0);
    // A band or counterweight of all the bodyweight leaves nothing to lift.
    let helped = |kg: f64| {
        let athlete = athlete()
            .weighing(80.0)
            .did(MONDAY(), 2.sets_of(5).with(-kg).of("pull-up"));
        group(&athlete, Muscle::Lats).sets
    };
    assert_eq!((helped(80.0), helped(79.0)), (0.0, 2.0));
}

#[test]
fn a_slip_of_the_load_leaves_the_set_a_set() {
    let athlete = athlete()
        .weighing(80.0)
        .did_each(
            [30.days_ago(), 23.days_ago(), 16.days_ago()],
            3.sets_of(5).with(10.0).leaving(1.0).of("pull-up"),
        )
        .did(MONDAY(), 1.sets_of(5).with(100.0).leaving(1.0).of("pull-up"));
    assert!(athlete.timeline_on(TODAY, |timeline| timeline.sets.last().unwrap().odd));
    assert_eq!(group(&athlete, Muscle::Lats).sets, 1.0);
}

#[test]
fn the_range_depends_on_how_hard_the_sets_were() {
    // 8–20 with 1–3 in reserve, 4–10 to failure: common practice, no source.
    assert_eq!(pulled(4, 0).range, (8.0, 20.0));
    assert_eq!(pulled(0, 4).range, (4.0, 10.0));
    // Most, not half.
    assert_eq!(pulled(3, 3).range, (8.0, 20.0));
    assert_eq!(pulled(3, 4).range, (4.0, 10.0));
    // Nobody said how hard: as with something in reserve.
    let unsaid = athlete().did(MONDAY(), 4.sets_of(6).of("pull-up"));
    assert_eq!(group(&unsaid, Muscle::Lats).range, (8.0, 20.0));
}

#[test]
fn both_ends_of_a_range_belong_to_it() {
    let status = |kept, failed| pulled(kept, failed).status;
    assert_eq!(status(7, 0), Some(Status::Below));
    assert_eq!(status(8, 0), Some(Status::Within));
    assert_eq!(status(20, 0), Some(Status::Within));
    assert_eq!(status(21, 0), Some(Status::Above));
    assert_eq!(status(0, 3), Some(Status::Below));
    assert_eq!(status(0, 4), Some(Status::Within));
    assert_eq!(status(0, 10), Some(Status::Within));
    assert_eq!(status(0, 11), Some(Status::Above));
}

#[test]
fn half_a_set_decides_too() {
    // Biceps get half of each pull-up: 15 give 7.5, 16 give 8.
    let biceps = |sets: i32| {
        let athlete = athlete().did(MONDAY(), sets.sets_of(6).leaving(2.0).of("pull-up"));
        group(&athlete, Muscle::Biceps).status
    };
    assert_eq!(biceps(15), Some(Status::Below));
    assert_eq!(biceps(16), Some(Status::Within));
}

#[test]
fn nothing_is_said_of_what_nobody_trains() {
    let athlete = athlete().did(MONDAY(), 3.sets_of(6).of("pull-up"));
    let calves = group(&athlete, Muscle::Calves);
    assert_eq!((calves.sets, calves.status), (0.0, None));
    assert_eq!(group_on(&athlete, 14.days_ago(), Muscle::Lats).status, None);
}

#[test]
fn each_side_is_counted_by_itself() {
    let sets = |left: i32, right: i32| {
        let athlete = athlete()
            .did(MONDAY(), left.sets_of(4).left().of("one-arm-row"))
            .did(MONDAY(), right.sets_of(4).right().of("one-arm-row"));
        group(&athlete, Muscle::UpperBack).sets
    };
    // Three for each arm are three for the back, not six.
    assert_eq!(sets(3, 3), 3.0);
    // The side with more is shown.
    assert_eq!((sets(3, 2), sets(2, 3), sets(0, 4)), (3.0, 3.0, 4.0));
    // Without a side they were done with both.
    let unsaid = athlete().did(MONDAY(), 3.sets_of(8).of("split-squat"));
    assert_eq!(group(&unsaid, Muscle::Quads).sets, 3.0);
    // Work of both hands adds to each.
    let both = athlete()
        .did(MONDAY(), 2.sets_of(4).left().of("one-arm-row"))
        .did(TODAY, 3.sets_of(8).of("row"));
    assert_eq!(group(&both, Muscle::UpperBack).sets, 5.0);
}

#[test]
fn holds_count_like_any_set() {
    let athlete = athlete().did(MONDAY(), 4.holds_of(10).of("front-lever"));
    let lats = group(&athlete, Muscle::Lats);
    assert_eq!((lats.direct, lats.status), (4, Some(Status::Below)));
}

#[test]
fn each_movement_of_the_catalogue_gives_its_groups_what_the_table_says() {
    for movement in Catalogue::shipped().movements() {
        let sets = match movement.measure {
            rungwright::units::Measure::Reps => 2.sets_of(5),
            rungwright::units::Measure::Hold => 2.holds_of(5),
        };
        let athlete = athlete().did(MONDAY(), sets.of(&movement.id));
        for muscle in Muscle::ALL {
            let expected = if movement.direct.contains(&muscle) {
                2.0
            } else if movement.indirect.contains(&muscle) {
                1.0
            } else {
                0.0
            };
            assert_eq!(
                group(&athlete, muscle).sets,
                expected,
                "{} {muscle:?}",
                movement.id
            );
        }
    }
}
