//! Trend and forecast never contradict each other: a heading is a promise to neither side, so it is checked on any log.

use proptest::prelude::*;
use rungwright::strength::{Believed, Heading, beliefs};

use crate::support::{Ago, Athlete, TODAY, athlete, reps};

/// Two sets of five a session, `gap` days apart; the belt starts at `start` kg and moves by `steps`; the last was `away` days ago.
fn climb(start: f64, gap: i32, steps: &[f64], away: i32, left: Option<f64>) -> Athlete {
    let sessions = i32::try_from(steps.len()).unwrap();
    let mut load = start;
    (0..).zip(steps).fold(athlete(), |athlete, (nth, step)| {
        load += step;
        let sets = reps([5, 5]).with(load).at_bodyweight(80.0).of("pull-up");
        let sets = match left {
            Some(left) => sets.leaving(left),
            None => sets,
        };
        athlete.did((away + gap * (sessions - 1 - nth)).days_ago(), sets)
    })
}

fn today(athlete: &Athlete) -> Believed {
    athlete.timeline_on(TODAY, beliefs).remove(0)
}

#[test]
fn who_adds_at_every_session_is_rising_and_who_takes_off_is_falling() {
    assert_eq!(
        today(&climb(0.0, 3, &[1.25; 24], 1, Some(1.0))).heading(),
        Heading::Rising
    );
    assert_eq!(
        today(&climb(60.0, 3, &[-1.0; 60], 1, Some(1.0))).heading(),
        Heading::Falling
    );
    assert_eq!(
        today(&climb(20.0, 3, &[0.0; 24], 1, Some(1.0))).heading(),
        Heading::Unclear
    );
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 80, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_screen_says_falling_and_a_goal_soon_or_rising_and_less_ahead(
        gap in 2i32..8,
        slope in -1.5..1.5f64,
        wobble in prop::collection::vec(-2.0..2.0f64, 6..30),
        away in 1i32..90,
        left in prop::option::of(0u8..4),
    ) {
        let steps: Vec<f64> = wobble.iter().map(|wobble| slope + wobble).collect();
        let believed = today(&climb(30.0, gap, &steps, away, left.map(f64::from)));
        let now = believed.belief.one_rep_max();
        let after: Vec<_> = (1..=8u8)
            .map(|week| believed.belief.after_training(7.0 * f64::from(week)))
            .collect();
        let each_week: Vec<_> = after.iter().map(|belief| belief.one_rep_max()).collect();
        match believed.heading() {
            Heading::Rising => prop_assert!(each_week.iter().all(|later| *later > now), "{each_week:?}"),
            Heading::Falling => {
                prop_assert!(each_week.iter().all(|later| *later < now), "{each_week:?}");
                let goal = now.times(1.001);
                prop_assert!(after.iter().all(|belief| belief.chance_of_one_rep_max(goal) < 0.5));
            }
            Heading::Unclear => {}
        }
    }
}
