//! Pain at the rung's joints. The 0 to 10 scale with a zone that allows work: pain monitoring, Thomeé 1997 and Silbernagel
//! et al. 2007 (from memory); the bounds and days here: common practice, no source.

use rungwright::catalogue::Site;
use rungwright::coaching::Verdict;
use rungwright::units::Side;

use crate::support::{Ago, Athlete, Phrase, Said, TODAY, athlete};
use crate::{fair_sets, good_sets, lifter};

fn trained() -> Athlete {
    lifter().did(2.days_ago(), good_sets())
}

#[test]
fn pain_of_two_changes_nothing_and_of_three_stops_progress() {
    assert_eq!(
        trained().hurt(TODAY, Site::Elbow, 2).advice().in_short(),
        "add-load top-of-range"
    );
    assert_eq!(
        trained().hurt(TODAY, Site::Elbow, 3).advice().in_short(),
        "repeat pain-cap"
    );
}

#[test]
fn pain_of_five_allows_work_and_of_six_none() {
    assert_eq!(
        trained().hurt(TODAY, Site::Elbow, 5).advice().in_short(),
        "repeat pain-cap"
    );
    let stopped = trained().hurt(TODAY, Site::Elbow, 6).advice();
    assert_eq!(stopped.in_short(), "pause pain-stop");
    assert_eq!(stopped.prescription, None);
}

#[test]
fn mild_pain_counts_for_six_days_and_not_on_the_seventh() {
    let of = |days: i32| {
        trained()
            .hurt(days.days_ago(), Site::Shoulder, 5)
            .advice()
            .in_short()
    };
    assert_eq!(of(6), "repeat pain-cap");
    assert_eq!(of(7), "add-load top-of-range");
}

#[test]
fn strong_pain_counts_for_twenty_seven_days_and_not_on_the_twenty_eighth() {
    let of = |days: i32| {
        trained()
            .hurt(days.days_ago(), Site::Shoulder, 6)
            .advice()
            .in_short()
    };
    assert_eq!(of(27), "pause pain-stop");
    assert_eq!(of(28), "add-load top-of-range");
}

#[test]
fn the_latest_report_of_a_joint_counts_and_of_one_day_the_worse() {
    let eased = trained()
        .hurt(9.days_ago(), Site::Elbow, 7)
        .hurt(TODAY, Site::Elbow, 1);
    assert_eq!(eased.advice().verdict, Verdict::AddLoad);
    let twice = trained().hurt(TODAY, Site::Elbow, 7).hurt(TODAY, Site::Elbow, 1);
    assert_eq!(twice.advice().verdict, Verdict::Pause);
    let elsewhere = trained()
        .hurt(9.days_ago(), Site::Elbow, 7)
        .hurt(TODAY, Site::Shoulder, 1);
    assert_eq!(elsewhere.advice().verdict, Verdict::Pause);
}

#[test]
fn only_the_rungs_joints_count_and_the_back_always() {
    assert_eq!(
        trained().hurt(TODAY, Site::Knee, 9).advice().verdict,
        Verdict::AddLoad
    );
    assert_eq!(
        trained().hurt(TODAY, Site::Back, 9).advice().verdict,
        Verdict::Pause
    );
}

#[test]
fn a_side_hurts_alone_unless_it_is_not_told_or_both_hands_work_as_one() {
    let squat = || {
        athlete().placed_on("pistol-squat", "box-45", 30.days_ago()).did(
            2.days_ago(),
            3.sets_of(6)
                .leaving(2.0)
                .left()
                .then(3.sets_of(6).leaving(2.0).right()),
        )
    };
    let verdicts = |athlete: Athlete| {
        let (left, right) = athlete.left_and_right();
        (left.verdict, right.verdict)
    };
    let right = verdicts(squat().hurt_on(TODAY, Site::Knee, Some(Side::Right), 7));
    assert_eq!(right, (Verdict::Repeat, Verdict::Pause));
    let untold = verdicts(squat().hurt(TODAY, Site::Knee, 7));
    assert_eq!(untold, (Verdict::Pause, Verdict::Pause));
    let both_hands = athlete()
        .weighing(80.0)
        .placed_on("one-arm-pull-up", "two-arm", 30.days_ago())
        .did(2.days_ago(), 3.sets_of(5).leaving(1.0))
        .hurt_on(TODAY, Site::Elbow, Some(Side::Right), 7);
    assert_eq!(verdicts(both_hands), (Verdict::Pause, Verdict::Pause));
}

#[test]
fn the_first_day_after_strong_pain_is_lighter_and_a_set_shorter() {
    let eased = |trained: i32| {
        lifter()
            .did(trained.days_ago(), good_sets())
            .hurt(5.days_ago(), Site::Elbow, 6)
            .hurt(TODAY, Site::Elbow, 2)
            .advice()
    };
    let first = eased(5);
    assert_eq!(first.in_short(), "back-off after-pain");
    // 0.95 × 90 = 85.5 kg: 5 kg on the belt.
    assert_eq!((first.belt(), first.work().sets), (5.0, 2));
    assert_eq!(eased(4).in_short(), "add-load top-of-range");
}

#[test]
fn strong_pain_of_four_weeks_ago_asks_for_no_lighter_day() {
    let hurt = |days: i32| {
        lifter()
            .did((days + 1).days_ago(), good_sets())
            .hurt(days.days_ago(), Site::Elbow, 6)
            .hurt(TODAY, Site::Elbow, 1)
            .advice()
            .rules()
            .contains(&"after-pain")
    };
    assert!(hurt(27));
    assert!(!hurt(28));
}

#[test]
fn who_hurts_does_not_begin() {
    let begin = |score: u8| lifter().hurt(TODAY, Site::Elbow, score).advice();
    assert_eq!(begin(2).in_short(), "begin placed");
    assert_eq!(begin(3).in_short(), "pause pain-cap");
    assert_eq!(begin(3).prescription, None);
}

#[test]
fn behind_a_stale_weigh_in_who_hurts_does_not_begin_either() {
    let advice = athlete()
        .placed_on("weighted-pull-up", "plus-25", 9.days_ago())
        .hurt(TODAY, Site::Elbow, 3)
        .advice();
    assert_eq!(
        (advice.verdict, advice.behind),
        (Verdict::WeighInFirst, Verdict::Pause)
    );
    assert_eq!(advice.prescription, None);
}

#[test]
fn mild_pain_takes_one_set_away_and_only_joins_a_repeat() {
    let short = lifter().did(2.days_ago(), 2.sets_of(5).with(10.0).leaving(1.0));
    let advice = short.hurt(TODAY, Site::Elbow, 4).advice();
    assert_eq!(advice.rules(), ["sets-short", "pain-cap"]);
    assert_eq!(advice.work().sets, 2);
}

#[test]
fn a_set_is_taken_away_once_however_many_ask_for_it() {
    let both = lifter()
        .did(20.days_ago(), fair_sets())
        .hurt(TODAY, Site::Elbow, 4)
        .advice();
    assert_eq!(both.in_short(), "back-off layoff-short");
    assert_eq!(both.work().sets, 2);
}

#[test]
fn pain_that_was_there_two_to_four_weeks_ago_belongs_to_a_professional() {
    let since = |days: i32| {
        trained()
            .hurt(days.days_ago(), Site::Elbow, 3)
            .hurt(TODAY, Site::Elbow, 3)
            .advice()
            .warns("pain-professional")
    };
    assert!(!since(13));
    assert!(since(14));
    assert!(since(28));
    assert!(!since(29));
}

#[test]
fn a_pause_belongs_to_a_professional_and_mild_or_new_pain_does_not() {
    assert!(
        trained()
            .hurt(TODAY, Site::Elbow, 6)
            .advice()
            .warns("pain-professional")
    );
    assert!(
        !trained()
            .hurt(TODAY, Site::Elbow, 5)
            .advice()
            .warns("pain-professional")
    );
    let eased = trained()
        .hurt(20.days_ago(), Site::Elbow, 3)
        .hurt(TODAY, Site::Elbow, 2);
    assert!(!eased.advice().warns("pain-professional"));
    let elsewhere = trained()
        .hurt(20.days_ago(), Site::Shoulder, 3)
        .hurt(TODAY, Site::Elbow, 3);
    assert!(!elsewhere.advice().warns("pain-professional"));
}
