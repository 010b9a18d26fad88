//! Around the work: warm-up and companions. Better single after a general and a specific warm-up: Abad et al. 2011; no better
//! sets: Ribeiro et al. 2014; the steps are common practice, no source.

use rungwright::catalogue::Catalogue;
use rungwright::coaching::Prescription;
use rungwright::coaching::warm_up::{Easy, WarmUpStep, warm_up};

use crate::lifter;
use crate::support::{Ago, Athlete, Phrase, Said, TODAY, athlete};

fn steps(athlete: &Athlete, warm: bool) -> Vec<WarmUpStep> {
    let work: Prescription = athlete.steps(TODAY).first().unwrap().work().clone();
    let movement = Catalogue::shipped().movement(&work.movement);
    warm_up(&work, movement, &athlete.plates(), warm)
}

/// The belts of the steps that carry a load, with their reps.
fn loads(steps: &[WarmUpStep]) -> Vec<(f64, u16)> {
    let load = |step: &WarmUpStep| match step {
        WarmUpStep::Load { load, reps } => Some((load.added.kg(), *reps)),
        _ => None,
    };
    steps.iter().filter_map(load).collect()
}

fn at(belt: f64) -> Athlete {
    lifter().did(3.days_ago(), 3.sets_of(5).with(belt).leaving(1.0))
}

#[test]
fn half_and_seven_tenths_of_the_load_come_first() {
    // 170 kg in all: 85 and 119 kg.
    let athlete = at(90.0).with_plates(&[50.0, 20.0, 20.0, 15.0, 2.5, 2.5, 1.25, 1.25]);
    assert_eq!(loads(&steps(&athlete, false)), [(5.0, 8), (38.75, 3)]);
    assert_eq!(steps(&athlete, false).first(), Some(&WarmUpStep::General));
}

#[test]
fn steps_under_bodyweight_are_rows_and_shoulder_blades_or_easy_repetitions() {
    // 90 kg in all: 45 and 63 kg.
    let pull = steps(&at(10.0), false);
    let easy = |easy, reps| WarmUpStep::Easy { easy, reps };
    assert_eq!(
        pull,
        [
            WarmUpStep::General,
            easy(Easy::Rows, (5, 8)),
            easy(Easy::ShoulderBlades, (3, 5))
        ]
    );
    let dip = athlete()
        .weighing(80.0)
        .placed_on("weighted-dip", "bodyweight", 60.days_ago())
        .did(3.days_ago(), 3.sets_of(7).leaving(2.0));
    // No easier movement leads up to a dip: both steps are a few easy ones, said once.
    assert_eq!(
        steps(&dip, false),
        [WarmUpStep::General, easy(Easy::Movement, (3, 5))]
    );
}

#[test]
fn a_step_of_just_bodyweight_is_done_without_a_belt() {
    // 0.70 × 114.3 = 80.01 kg, 0.70 × 114.2 = 79.94 kg.
    let third = |belt: f64| steps(&at(belt).with_plates(&[belt]), false).last().cloned();
    assert!(matches!(third(34.3), Some(WarmUpStep::Load { reps: 3, .. })));
    assert!(matches!(third(34.2), Some(WarmUpStep::Easy { .. })));
}

#[test]
fn singles_ask_one_step_more() {
    // 1 to 3 repetitions of 160 kg: 0.85 × 160 = 136 kg.
    let on = |rung: &str| {
        let athlete = athlete()
            .weighing(80.0)
            .with_plates(&[20.0, 20.0, 20.0, 10.0, 5.0, 5.0, 1.25])
            .placed_on("weighted-pull-up", rung, 60.days_ago())
            .did(3.days_ago(), 4.sets_of(2).with(80.0).failed());
        loads(&steps(&athlete, false))
    };
    assert_eq!(on("plus-100"), [(0.0, 8), (31.25, 3), (55.0, 1)]);
    assert_eq!(on("plus-75").len(), 2);
}

#[test]
fn within_twenty_minutes_of_a_heavier_set_only_the_last_step_is_left() {
    assert_eq!(steps(&at(10.0), true).len(), 1);
    assert_eq!(steps(&at(10.0), true).last(), steps(&at(10.0), false).last());
}

#[test]
fn a_hold_is_led_up_to_by_a_shorter_one() {
    let athlete = athlete().placed_on("front-lever", "tuck", TODAY);
    assert_eq!(
        steps(&athlete, false),
        [WarmUpStep::General, WarmUpStep::EasyHold { seconds: 5.0 }]
    );
}

#[test]
fn each_goal_has_its_companions() {
    // Common practice, no source.
    let beside = |ladder: &str, rung: &str| -> Vec<&str> {
        let rung = Catalogue::shipped()
            .ladder(ladder)
            .and_then(|ladder| ladder.rung(rung))
            .unwrap();
        rung.companions
            .iter()
            .map(|companion| companion.movement.as_str())
            .collect()
    };
    let one_arm = beside("one-arm-pull-up", "one-arm");
    for asked in [
        "one-arm-negative",
        "one-arm-lock-off",
        "one-arm-hang",
        "external-rotation",
    ] {
        assert!(one_arm.contains(&asked), "{asked}");
    }
    assert!(beside("weighted-dip", "plus-25").contains(&"ring-support"));
    assert!(beside("front-lever", "straddle").contains(&"front-lever-raise"));
    assert!(beside("planche", "straddle").contains(&"planche-lean"));
}
