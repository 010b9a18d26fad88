//! A session from a budget of sets. Common practice, no source: what is spaced enough, then what lacks most; straight arms first;
//! the weaker side begins.

use rungwright::catalogue::{Catalogue, Muscle, Site};
use rungwright::coaching::warm_up::WarmUpStep;
use rungwright::coaching::week::{Built, Left, Trained, Week, Why, build};
use rungwright::units::Rail;

use crate::support::{Ago, Athlete, Phrase, TODAY, athlete};

fn session(athlete: &Athlete, budget: u16) -> Built {
    let steps = athlete.next_steps_on(TODAY);
    athlete.timeline_on(TODAY, |timeline| {
        let week = Trained::of(timeline, Catalogue::shipped(), Week::of(TODAY.date()));
        build(
            &steps,
            (timeline, Catalogue::shipped(), &athlete.plates()),
            &week,
            budget,
        )
    })
}

fn ladders(built: &Built) -> Vec<&str> {
    built.blocks.iter().map(|block| block.ladder.as_str()).collect()
}

fn left(built: &Built, ladder: &str) -> Option<Left> {
    built
        .left_out
        .iter()
        .find(|left| left.ladder == ladder)
        .map(|left| left.why.clone())
}

/// On three ladders, last trained long enough ago.
fn all_round() -> Athlete {
    athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
        .did(9.days_ago(), 3.sets_of(6).leaving(2.0))
        .placed_on("weighted-dip", "bodyweight", 60.days_ago())
        .did(8.days_ago(), 3.sets_of(8).leaving(2.0))
        .placed_on("front-lever", "tuck", 60.days_ago())
        .did(7.days_ago(), 4.holds_of(12))
}

#[test]
fn no_session_is_longer_than_its_budget_or_asks_more_than_the_next_step() {
    let athlete = all_round();
    let steps = athlete.next_steps_on(TODAY);
    for budget in 0..=20 {
        let built = session(&athlete, budget);
        assert!(built.sets() <= budget, "{budget}: {built:?}");
        for block in &built.blocks {
            for part in &block.parts {
                let step = steps
                    .iter()
                    .find(|step| step.ladder == block.ladder && step.rail == part.rail)
                    .unwrap();
                assert_eq!(Some(&part.work), step.prescription.as_ref());
                assert!((1..=part.work.sets).contains(&part.sets), "{budget}: {part:?}");
            }
        }
        // Every ladder is either in it, or told why not.
        assert_eq!(built.blocks.len() + built.left_out.len(), 3, "{budget}");
    }
    assert_eq!(session(&athlete, 20).sets(), 10);
}

#[test]
fn straight_arms_come_first_while_you_are_fresh() {
    let built = session(&all_round(), 12);
    assert_eq!(ladders(&built)[0], "front-lever");
    assert!(built.blocks[0].why.contains(&Why::Fresh));
    assert!(!built.blocks[1].why.contains(&Why::Fresh));
}

#[test]
fn what_the_week_lacks_most_is_chosen_first() {
    // The pulling groups have had eight sets this week, the pushing ones none.
    let athlete = all_round().did(4.days_ago(), 8.sets_of(8).leaving(2.0).of("row"));
    let built = session(&athlete, 3);
    assert_eq!(ladders(&built), ["weighted-dip"]);
    assert!(matches!(
        built.blocks[0].why[0],
        Why::Lacks {
            muscle: Muscle::Chest | Muscle::Triceps,
            sets: 0.0,
            low: 8.0
        }
    ));
    // And the other way round.
    let athlete = all_round().did(4.days_ago(), 8.sets_of(8).leaving(2.0).of("push-up"));
    assert_ne!(ladders(&session(&athlete, 3)), ["weighted-dip"]);
}

#[test]
fn a_group_that_has_had_its_week_gets_no_more() {
    let athlete = all_round().did(4.days_ago(), 20.sets_of(8).leaving(2.0).of("push-up"));
    assert!(matches!(
        left(&session(&athlete, 12), "weighted-dip"),
        Some(Left::Enough(_))
    ));
    let athlete = all_round().did(4.days_ago(), 19.sets_of(8).leaving(2.0).of("push-up"));
    assert!(ladders(&session(&athlete, 12)).contains(&"weighted-dip"));
}

#[test]
fn what_is_not_spaced_enough_waits() {
    let near = |days: i32| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-dip", "bodyweight", 60.days_ago())
            .did(days.days_ago(), 3.sets_of(8).leaving(2.0));
        left(&session(&athlete, 12), "weighted-dip")
    };
    let tomorrow = TODAY.date().succ_opt().unwrap();
    assert_eq!(near(1), Some(Left::NotBefore(tomorrow)));
    assert_eq!(near(2), None);
}

#[test]
fn a_joint_that_still_rests_comes_last_and_is_said() {
    // Dips yesterday loaded elbow and shoulder; pulling is spaced by its own rung.
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
        .did(4.days_ago(), 3.sets_of(6).leaving(2.0))
        .placed_on("pistol-squat", "split", 60.days_ago())
        .did(1.days_ago(), 3.sets_of(8).leaving(2.0).of("dip"));
    let built = session(&athlete, 12);
    let pull = built
        .blocks
        .iter()
        .find(|block| block.ladder == "weighted-pull-up")
        .unwrap();
    assert!(
        pull.why.iter().any(|why| matches!(why, Why::StillRests { .. })),
        "{pull:?}"
    );
    // With room for one only, the legs are trained.
    assert_eq!(ladders(&session(&athlete, 6)), ["pistol-squat"]);
}

#[test]
fn no_joint_is_loaded_three_days_running() {
    let after = |days: &[i32]| {
        let athlete = athlete()
            .weighing(80.0)
            .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
            .did(5.days_ago(), 3.sets_of(6).leaving(2.0))
            .did_each(
                days.iter().map(|days| days.days_ago()),
                3.sets_of(8).leaving(2.0).of("dip"),
            );
        left(&session(&athlete, 12), "weighted-pull-up")
    };
    assert!(matches!(after(&[2, 1]), Some(Left::Running { days: 3, .. })));
    assert_eq!(after(&[1]), None);
    assert_eq!(after(&[3, 2]), None);
}

#[test]
fn what_hurts_is_left_out() {
    let athlete = all_round().hurt(TODAY, Site::Shoulder, 6);
    let built = session(&athlete, 12);
    assert!(built.blocks.is_empty());
    assert_eq!(left(&built, "front-lever"), Some(Left::Pause));
    assert!(
        !session(&all_round().hurt(TODAY, Site::Knee, 6), 12)
            .blocks
            .is_empty()
    );
}

#[test]
fn less_than_half_of_a_prescription_is_not_worth_its_warm_up() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-dip", "bodyweight", 60.days_ago())
        .did(4.days_ago(), 3.sets_of(8).leaving(2.0));
    assert_eq!(session(&athlete, 3).sets(), 3);
    let short = session(&athlete, 2);
    assert_eq!(short.sets(), 2);
    assert!(short.blocks[0].why.contains(&Why::Short));
    assert_eq!(left(&session(&athlete, 1), "weighted-dip"), Some(Left::NoRoom));
}

#[test]
fn both_sides_get_the_same_and_the_weaker_begins() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_side_on(
            "one-arm-pull-up",
            rungwright::units::Side::Left,
            "fingers-2",
            60.days_ago(),
        )
        .placed_side_on(
            "one-arm-pull-up",
            rungwright::units::Side::Right,
            "fingers-3",
            60.days_ago(),
        );
    let built = session(&athlete, 20);
    let rails: Vec<Rail> = built.blocks[0].parts.iter().map(|part| part.rail).collect();
    assert_eq!(rails, [Rail::Right, Rail::Left]);
    let short = session(&athlete, 5);
    let sets: Vec<u16> = short.blocks[0].parts.iter().map(|part| part.sets).collect();
    assert_eq!(sets, [2, 2]);
}

#[test]
fn what_is_done_today_is_not_asked_again() {
    let begun = |sets: i32| {
        let before = athlete()
            .weighing(80.0)
            .placed_on("weighted-dip", "bodyweight", 60.days_ago())
            .did(4.days_ago(), 3.sets_of(8).leaving(2.0));
        let steps = before.next_steps_on(TODAY);
        let after = before.did(TODAY, sets.sets_of(8).leaving(2.0));
        after.timeline_on(TODAY, |timeline| {
            let week = Trained::of(timeline, Catalogue::shipped(), Week::of(TODAY.date()));
            build(
                &steps,
                (timeline, Catalogue::shipped(), &after.plates()),
                &week,
                12,
            )
        })
    };
    assert_eq!(begun(0).sets(), 3);
    assert_eq!(begun(1).sets(), 2);
    assert_eq!(left(&begun(3), "weighted-dip"), Some(Left::Done));
}

#[test]
fn getting_warm_is_asked_once_and_a_similar_movement_needs_only_the_last_step() {
    let athlete = athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "bodyweight", 60.days_ago())
        .did(9.days_ago(), 3.sets_of(6).leaving(2.0))
        .placed_on("first-pull-up", "strict", 60.days_ago())
        .placed_on("weighted-dip", "bodyweight", 60.days_ago())
        .did(8.days_ago(), 3.sets_of(8).leaving(2.0));
    let built = session(&athlete, 20);
    let general = built
        .blocks
        .iter()
        .flat_map(|block| &block.warm_up)
        .filter(|step| **step == WarmUpStep::General);
    assert_eq!(general.count(), 1);
    assert_eq!(built.blocks[0].warm_up[0], WarmUpStep::General);
    for pair in built.blocks.windows(2) {
        let pattern = |at: usize| {
            let id = &pair[at].parts[0].work.movement;
            Catalogue::shipped().movement(id).unwrap().pattern
        };
        if pattern(0) == pattern(1) {
            assert!(pair[1].warm_up.len() <= 1, "{:?}", pair[1].warm_up);
        }
    }
}

#[test]
fn somebody_on_no_ladder_gets_no_session_and_no_error() {
    let nobody = session(&athlete(), 12);
    assert!(nobody.blocks.is_empty() && nobody.left_out.is_empty());
    let untagged = athlete().did(4.days_ago(), 3.sets_of(6).of("pull-up"));
    assert!(session(&untagged, 12).blocks.is_empty());
}
