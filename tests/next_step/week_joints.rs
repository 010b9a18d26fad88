//! Joints loaded on following days, and until when they rest. 48 h: Magnusson et al. 2010; 72 h for lowering and straight-arm
//! work: common practice, no source.

use rungwright::catalogue::{Catalogue, Joint, Site};
use rungwright::coaching::week::{Close, Rested, Trained, Week};
use rungwright::report::week as words;
use rungwright::units::{Rail, Side};

use crate::support::{Ago, Athlete, Day, Phrase, TODAY, athlete};

fn close_on(athlete: &Athlete, day: Day, joint: Joint) -> Vec<Close> {
    athlete.timeline_on(day, |timeline| {
        let trained = Trained::of(timeline, Catalogue::shipped(), Week::of(day.date()));
        trained
            .close
            .into_iter()
            .filter(|close| close.joint == joint)
            .collect()
    })
}

fn close(athlete: &Athlete, joint: Joint) -> Vec<Close> {
    close_on(athlete, TODAY, joint)
}

fn resting(athlete: &Athlete, joint: Joint) -> Option<Rested> {
    athlete.timeline_on(TODAY, |timeline| {
        let trained = Trained::of(timeline, Catalogue::shipped(), Week::of(TODAY.date()));
        trained.resting.into_iter().find(|rested| rested.joint == joint)
    })
}

/// Pull-ups on these days; 4 days ago was Monday, today is Friday.
fn pulled(days: &[i32]) -> Athlete {
    athlete().did_each(
        days.iter().map(|days| days.days_ago()),
        3.sets_of(6).leaving(2.0).of("pull-up"),
    )
}

/// Straight-arm work on these days.
fn levered(days: &[i32]) -> Athlete {
    athlete()
        .placed_on("front-lever", "tuck", 60.days_ago())
        .did_each(days.iter().map(|days| days.days_ago()), 4.holds_of(12))
}

#[test]
fn the_day_after_is_too_near_and_the_day_after_next_is_not() {
    let found = close(&pulled(&[4, 3]), Joint::Elbow);
    assert_eq!(found.len(), 1);
    let days: Vec<_> = found[0].days.clone();
    assert_eq!(days, [(4.days_ago().date(), 3), (3.days_ago().date(), 3)]);
    assert_eq!((found[0].running(), found[0].rail), (2, Rail::Both));
    assert!(close(&pulled(&[4, 2]), Joint::Elbow).is_empty());
}

#[test]
fn straight_arm_work_asks_three_days() {
    assert_eq!(close(&levered(&[4, 2]), Joint::Elbow).len(), 1);
    assert!(close(&levered(&[4, 1]), Joint::Elbow).is_empty());
    // Between a lever and a pull-up the usual two days are enough.
    let mixed = levered(&[4]).did(2.days_ago(), 3.sets_of(6).of("pull-up"));
    assert!(close(&mixed, Joint::Elbow).is_empty());
}

#[test]
fn lowering_on_one_arm_asks_three_days_also_without_a_rung() {
    let lowered = athlete().did_each(
        [4.days_ago(), 2.days_ago()],
        2.holds_of(5).left().of("one-arm-negative"),
    );
    let found = close(&lowered, Joint::Elbow);
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].rail, found[0].strains), (Rail::Left, true));
}

#[test]
fn an_easy_day_loads_no_joint() {
    let athlete = pulled(&[4]).did(3.days_ago(), 3.sets_of(6).leaving(6.0).of("pull-up"));
    assert!(close(&athlete, Joint::Elbow).is_empty());
}

#[test]
fn a_row_of_days_reaches_over_sunday() {
    // Saturday, Sunday, Monday.
    let found = close(&pulled(&[6, 5, 4]), Joint::Shoulder);
    assert_eq!(found[0].running(), 3);
    assert_eq!(found[0].days[0].0, 6.days_ago().date());
    // It ended on Sunday: nothing of this week.
    assert!(close(&pulled(&[6, 5]), Joint::Shoulder).is_empty());
    // And the week before tells its own part of it.
    assert_eq!(
        close_on(&pulled(&[6, 5, 4]), 5.days_ago(), Joint::Shoulder)[0].running(),
        2
    );
}

#[test]
fn sides_are_told_apart() {
    let left = athlete().did_each(
        [4.days_ago(), 3.days_ago()],
        3.sets_of(3).left().of("one-arm-pull-up"),
    );
    assert_eq!(close(&left, Joint::Elbow)[0].rail, Rail::Left);
    let in_turn = athlete()
        .did(4.days_ago(), 3.sets_of(3).left().of("one-arm-row"))
        .did(3.days_ago(), 3.sets_of(3).right().of("one-arm-row"));
    assert!(close(&in_turn, Joint::Elbow).is_empty());
    // Legs are another joint than arms.
    let turns = pulled(&[4]).did(3.days_ago(), 3.sets_of(8).of("back-squat"));
    assert!(close(&turns, Joint::Knee).is_empty() && close(&turns, Joint::Elbow).is_empty());
}

#[test]
fn a_joint_rests_two_days_or_three() {
    assert_eq!(
        resting(&pulled(&[0]), Joint::Elbow).unwrap().from,
        chrono::NaiveDate::from_ymd_opt(2026, 3, 22).unwrap()
    );
    assert_eq!(
        resting(&levered(&[0]), Joint::Elbow).unwrap().from,
        chrono::NaiveDate::from_ymd_opt(2026, 3, 23).unwrap()
    );
    assert!(resting(&pulled(&[1]), Joint::Elbow).is_some());
    assert!(resting(&pulled(&[2]), Joint::Elbow).is_none());
    assert!(resting(&levered(&[2]), Joint::Elbow).is_some());
    assert!(resting(&levered(&[3]), Joint::Elbow).is_none());
    // What an easier day follows still rests by the harder one.
    let after = levered(&[1]).did(TODAY, 2.sets_of(6).of("pull-up"));
    assert_eq!(
        resting(&after, Joint::Elbow).unwrap().from,
        chrono::NaiveDate::from_ymd_opt(2026, 3, 22).unwrap()
    );
}

#[test]
fn pain_at_the_joint_is_said_with_it_and_a_strong_one_belongs_to_a_professional() {
    let said = |athlete: &Athlete| {
        let found = close(athlete, Joint::Elbow);
        words::close(&found, TODAY.date())
            .into_iter()
            .map(|(strong, rest)| strong + &rest)
            .collect::<String>()
    };
    let running = pulled(&[2, 1]);
    assert!(
        said(&running).starts_with("Elbows: loaded Wed 18 and Thu 19 Mar, 2 days running."),
        "{}",
        said(&running)
    );
    assert!(
        said(&running).contains("Leave free until Sat 21 Mar: 48 h"),
        "{}",
        said(&running)
    );
    assert!(!said(&running).contains("Pain"));
    let little = said(
        &running
            .clone()
            .hurt_on(1.days_ago(), Site::Elbow, Some(Side::Right), 2),
    );
    assert!(
        little.contains("Right elbow") && little.contains("Left elbow"),
        "{little}"
    );
    assert!(little.contains("Pain 2 of 10 on Thu 19 Mar."), "{little}");
    assert!(!little.contains("professional"), "{little}");
    // From 3 nothing harder, from 6 no work: as the next step's rules have it.
    assert!(said(&running.clone().hurt(1.days_ago(), Site::Elbow, 3)).contains("Nothing harder"));
    assert!(said(&running.clone().hurt(1.days_ago(), Site::Elbow, 5)).contains("Nothing harder"));
    assert!(said(&running.clone().hurt(1.days_ago(), Site::Elbow, 6)).contains("licensed professional"));
    // An old report, or one elsewhere, is not.
    assert!(!said(&running.clone().hurt(7.days_ago(), Site::Elbow, 2)).contains("Pain"));
    assert!(!said(&running.hurt(1.days_ago(), Site::Knee, 6)).contains("Pain"));
}

#[test]
fn joints_with_the_same_days_are_said_together() {
    let athlete = pulled(&[4, 3]);
    let all = athlete.timeline_on(TODAY, |timeline| {
        Trained::of(timeline, Catalogue::shipped(), Week::of(TODAY.date())).close
    });
    let said = words::close(&all, TODAY.date());
    assert_eq!(said.len(), 1);
    assert_eq!(
        said[0].0,
        "Elbows and shoulders: loaded Mon 16 and Tue 17 Mar, 2 days running."
    );
    assert_eq!(said[0].1, " Next time leave 48 h after a day of work.");
}
