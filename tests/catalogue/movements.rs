//! The shipped movements are those of common practice (no source, but where a share is published), typed here once more in
//! another form, so that a slip in either shows.

use rungwright::catalogue::{BodyShare, Catalogue, Joint, Muscle, Pattern, Sides};
use rungwright::units::Measure;

use crate::shipped::rows;

/// Movements: id, pattern, sides, share, counted in, class, joints, whole sets, half sets.
const MOVEMENTS: &str = "
pull-up           | vertical pull     | together | whole   | reps | compound  | elbow shoulder               | lats upper-back    | biceps forearms
chin-up           | vertical pull     | together | whole   | reps | compound  | elbow shoulder               | lats biceps        | upper-back forearms
high-pull-up      | vertical pull     | together | whole   | reps | compound  | elbow shoulder               | lats upper-back    | biceps forearms
archer-pull-up    | vertical pull     | apart    | whole   | reps | compound  | elbow shoulder               | lats biceps        | upper-back forearms
one-arm-pull-up   | vertical pull     | apart    | whole   | reps | compound  | elbow shoulder fingers       | lats biceps        | upper-back forearms abs
one-arm-chin-up   | vertical pull     | apart    | whole   | reps | compound  | elbow shoulder fingers       | lats biceps        | upper-back forearms abs
one-arm-negative  | vertical pull     | apart    | whole   | hold | skill     | elbow shoulder fingers       | lats biceps        | upper-back forearms
one-arm-lock-off  | vertical pull     | apart    | whole   | hold | skill     | elbow shoulder fingers       | lats biceps        | upper-back forearms
muscle-up         | vertical pull     | together | whole   | reps | compound  | elbow shoulder wrist         | lats triceps       | chest biceps
ring-muscle-up    | vertical pull     | together | whole   | reps | compound  | elbow shoulder wrist         | lats triceps       | chest biceps
row               | horizontal pull   | together | 0.68    | reps | compound  | elbow shoulder               | upper-back rear-delts | lats biceps
archer-row        | horizontal pull   | apart    | 0.68    | reps | compound  | elbow shoulder               | upper-back rear-delts | lats biceps
one-arm-row       | horizontal pull   | apart    | 0.68    | reps | compound  | elbow shoulder               | upper-back rear-delts | lats biceps abs
dip               | vertical push     | together | whole   | reps | compound  | elbow shoulder               | chest triceps      | front-delts
ring-dip          | vertical push     | together | whole   | reps | compound  | elbow shoulder               | chest triceps      | front-delts
straight-bar-dip  | vertical push     | together | whole   | reps | compound  | elbow shoulder wrist         | chest triceps      | front-delts
pike-push-up      | vertical push     | together | unknown | reps | compound  | elbow shoulder wrist         | front-delts triceps | side-delts
handstand-push-up | vertical push     | together | whole   | reps | compound  | elbow shoulder wrist         | front-delts triceps | side-delts upper-back
handstand         | vertical push     | together | whole   | hold | skill     | shoulder wrist               | front-delts upper-back | side-delts
wall-handstand    | vertical push     | together | whole   | hold | skill     | shoulder wrist               | front-delts upper-back | side-delts
push-up           | horizontal push   | together | push-up | reps | compound  | elbow shoulder wrist         | chest triceps      | front-delts abs
archer-push-up    | horizontal push   | apart    | push-up | reps | compound  | elbow shoulder wrist         | chest triceps      | front-delts abs
one-arm-push-up   | horizontal push   | apart    | push-up | reps | compound  | elbow shoulder wrist         | chest triceps      | front-delts abs
support           | straight-arm push | together | whole   | hold | skill     | elbow shoulder               | triceps chest      | front-delts
ring-support      | straight-arm push | together | whole   | hold | skill     | elbow shoulder               | triceps chest      | front-delts
planche-lean      | straight-arm push | together | lever   | hold | skill     | elbow shoulder wrist         | front-delts        | chest biceps
planche           | straight-arm push | together | lever   | hold | skill     | elbow shoulder wrist         | front-delts        | chest biceps abs
skin-the-cat      | straight-arm pull | together | whole   | reps | skill     | elbow shoulder               | lats               | front-delts chest abs
front-lever       | straight-arm pull | together | lever   | hold | skill     | elbow shoulder               | lats               | rear-delts upper-back triceps abs
front-lever-raise | straight-arm pull | together | lever   | reps | skill     | elbow shoulder               | lats               | rear-delts upper-back triceps abs
back-lever        | straight-arm pull | together | lever   | hold | skill     | elbow shoulder               | front-delts        | chest biceps erectors
l-sit             | core              | together | unknown | hold | skill     | elbow shoulder hip wrist     | abs                | triceps quads
v-sit             | core              | together | unknown | hold | skill     | elbow shoulder hip wrist     | abs                | triceps quads
leg-raise         | core              | together | unknown | reps | compound  | fingers shoulder             | abs                | forearms quads
back-squat        | squat             | together | outside | reps | compound  | knee hip                     | quads glutes       | adductors erectors
split-squat       | squat             | apart    | whole   | reps | compound  | knee hip                     | quads glutes       | adductors
pistol-squat      | squat             | apart    | whole   | reps | compound  | knee hip ankle               | quads glutes       | adductors
nordic-curl       | hinge             | together | unknown | reps | skill     | knee                         | hamstrings         | glutes calves
dead-hang         | grip              | together | whole   | hold | skill     | fingers shoulder             | forearms           | lats
one-arm-hang      | grip              | apart    | whole   | hold | skill     | elbow shoulder fingers       | forearms           | lats
triceps-extension | vertical push     | together | outside | reps | isolation | elbow                        | triceps            |
external-rotation | horizontal pull   | apart    | outside | reps | isolation | shoulder                     |                    | rear-delts
";

#[test]
fn every_movement_is_the_table_s() {
    // Shares: row 0.68 is Melrose and Dawes 2015, straps at 60°; levers and push-ups have models; the rest is common
    // practice, no source.
    let spaced = |debug: String| {
        let mut words = String::new();
        for (at, c) in debug.chars().enumerate() {
            if c.is_ascii_uppercase() && at > 0 {
                words.push('-');
            }
            words.push(c.to_ascii_lowercase());
        }
        words
    };
    let pattern = |pattern: Pattern| match pattern {
        Pattern::VerticalPull => "vertical pull",
        Pattern::HorizontalPull => "horizontal pull",
        Pattern::VerticalPush => "vertical push",
        Pattern::HorizontalPush => "horizontal push",
        Pattern::StraightArmPull => "straight-arm pull",
        Pattern::StraightArmPush => "straight-arm push",
        Pattern::Squat => "squat",
        Pattern::Hinge => "hinge",
        Pattern::Core => "core",
        Pattern::Grip => "grip",
    };
    let share = |share: BodyShare| match share {
        BodyShare::Whole => "whole".to_owned(),
        BodyShare::Fraction(part) => part.to_string(),
        BodyShare::PushUp {
            hands_cm: 0.0,
            feet_cm: 0.0,
            knees: false,
        } => "push-up".to_owned(),
        BodyShare::PushUp { .. } => "raised push-up".to_owned(),
        BodyShare::Lever => "lever".to_owned(),
        BodyShare::Outside => "outside".to_owned(),
        BodyShare::Unknown => "unknown".to_owned(),
    };
    let muscles = |muscles: &[Muscle]| {
        let words: Vec<String> = muscles
            .iter()
            .map(|muscle| spaced(format!("{muscle:?}")))
            .collect();
        words.join(" ")
    };
    let joints = |joints: &[Joint]| {
        let words: Vec<String> = joints.iter().map(|joint| spaced(format!("{joint:?}"))).collect();
        words.join(" ")
    };
    let mut expected: Vec<Vec<&str>> = rows(MOVEMENTS).collect();
    expected.sort();
    let found: Vec<Vec<String>> = Catalogue::shipped()
        .movements()
        .map(|movement| {
            vec![
                movement.id.clone(),
                pattern(movement.pattern).to_owned(),
                if movement.sides == Sides::Apart {
                    "apart"
                } else {
                    "together"
                }
                .to_owned(),
                share(movement.share),
                if movement.measure == Measure::Hold {
                    "hold"
                } else {
                    "reps"
                }
                .to_owned(),
                spaced(format!("{:?}", movement.class)),
                joints(&movement.joints),
                muscles(&movement.direct),
                muscles(&movement.indirect),
            ]
        })
        .collect();
    assert_eq!(found, expected);
}
