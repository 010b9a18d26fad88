//! Checks against something outside the project.

use rungwright::coaching::{Finding, Verdict};
use rungwright::timeline::{best_e1rm, epley};
use rungwright::units::{Mass, SystemLoad};

use crate::support::{Ago, Phrase, TODAY, athlete, one_set};

fn load(kg: f64) -> SystemLoad {
    SystemLoad::new(Mass::from_kg(kg))
}

#[test]
fn a_single_is_estimated_by_epley() {
    // Epley, Poundage chart, Boyd Epley Workout, 1985: w × (1 + r / 30). Percentages of the one-rep max by it, as reprinted in
    // LeSuer et al., J Strength Cond Res 1997;11(4):211–213 (formula); numbers by plain arithmetic.
    for (reps, single) in [
        (2.0, 106.6667),
        (3.0, 110.0),
        (5.0, 116.6667),
        (8.0, 126.6667),
        (10.0, 133.3333),
        (12.0, 140.0),
    ] {
        assert!((epley(load(100.0), reps).kg() - single).abs() < 1e-4, "{reps}");
    }
    // A single that was done is what it is; the formula would add a thirtieth.
    assert_eq!(epley(load(100.0), 1.0).kg(), 100.0);
}

#[test]
fn a_pull_ups_single_is_estimated_from_all_that_is_moved() {
    // Johnson et al., J Strength Cond Res 2009;23(3):1022–1028: bodyweight and belt together; arithmetic by Epley's formula.
    // (Epley of the belt alone would say 23.3 kg for 20 kg × 5, far under what can be hung.)
    for (bodyweight, belt, reps, single_belt) in [
        (80.0, 20.0, 5, 36.6667),
        (75.0, 40.0, 3, 51.5),
        (70.0, 0.0, 12, 28.0),
        (70.0, -15.0, 6, -4.0),
    ] {
        let athlete = athlete()
            .weighing(bodyweight)
            .placed_on("weighted-pull-up", "plus-25", 9.days_ago())
            .did(3.days_ago(), one_set(reps).with(belt));
        let best = athlete.timeline_on(TODAY, |timeline| best_e1rm(&timeline.sets).unwrap().kg());
        assert!(
            (best - bodyweight - single_belt).abs() < 1e-3,
            "{bodyweight} {belt} × {reps}"
        );
    }
}

#[test]
fn a_step_of_load_is_two_to_ten_percent() {
    // American College of Sports Medicine, position stand: Progression models in resistance training for healthy adults, Med
    // Sci Sports Exerc 2009;41(3):687–708: "2–10 % increase in load be applied when the individual can perform the current
    // workload for one to two repetitions over the desired number". Here of all that is moved, over a gym's bodies and belts.
    let mut steps = 0;
    for bodyweight in [45.0, 60.0, 72.5, 80.0, 95.0, 120.0] {
        for belt in [0.0, 2.5, 5.0, 10.0, 15.0, 22.5, 30.0] {
            let advice = athlete()
                .weighing(bodyweight)
                .placed_on("weighted-pull-up", "plus-50", 60.days_ago())
                .did(3.days_ago(), 4.sets_of(5).with(belt).leaving(1.0))
                .advice();
            let step = match advice.reasons.first() {
                Some(Finding::TopOfRange { work_kg, load_kg, .. }) if advice.verdict == Verdict::AddLoad => {
                    assert!((work_kg - bodyweight - belt).abs() < 1e-9);
                    load_kg / work_kg
                }
                _ => continue,
            };
            assert!(
                (1.02 - 1e-9..=1.10 + 1e-9).contains(&step),
                "{bodyweight} + {belt}: {step}"
            );
            steps += 1;
        }
    }
    assert!(steps >= 35, "only {steps} of 42 found a step");
}
