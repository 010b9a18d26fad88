//! The belief of a one-rep max, as a lifter and a coach would check it.

#![allow(clippy::unwrap_used)] // a test's helpers may stop it

use chrono::{Days, NaiveDate};
use proptest::prelude::*;
use rungwright::strength::{
    Attempt, Coverage, Filter, History, Hold, HoldJoint, Holds, Prior, TrainingDay, Tuning,
};
use rungwright::units::{
    Added, Bodyweight, Demand, Effort, Given, KG_PER_LB, Mass, Outcome, Reps, Seconds, Share, Side,
    SystemLoad, Typed, Unit,
};

fn date(day: u64) -> NaiveDate {
    NaiveDate::from_ymd_opt(2024, 1, 1).unwrap() + Days::new(day)
}

fn attempt(body: f64, added: f64, reps: u16, rir: Option<f64>, outcome: Outcome) -> Attempt {
    Attempt {
        side: None,
        bodyweight: Some(Bodyweight::new(Mass::from_kg(body))),
        share: Share::WHOLE,
        added: Added::new(Mass::from_kg(added)),
        effort: Effort::Reps(Reps::try_from(reps).unwrap()),
        left: rir.map(|rir| Given::rir(rir).unwrap()),
        outcome,
    }
}

fn done(added: f64, reps: u16, rir: f64) -> Attempt {
    attempt(80.0, added, reps, Some(rir), Outcome::Done)
}

fn on(day: u64, attempts: Vec<Attempt>) -> TrainingDay {
    TrainingDay {
        date: date(day),
        attempts,
    }
}

fn pull_up() -> Filter {
    Filter::new(Prior::of("pull-up", Share::WHOLE), Tuning::default())
}

fn read(days: &[TrainingDay]) -> Filter {
    let mut filter = pull_up();
    for day in days {
        filter.learn(day);
    }
    filter
}

fn kg(kg: f64) -> SystemLoad {
    SystemLoad::new(Mass::from_kg(kg))
}

/// Eight weeks of two sessions a week around +25 kg × 5.
fn two_months() -> Vec<TrainingDay> {
    (0..16)
        .map(|n| {
            on(
                n * 4,
                vec![done(25.0, 5, 2.0), done(25.0, 5, 1.0), done(25.0, 5, 1.0)],
            )
        })
        .collect()
}

#[test]
fn nobody_is_judged_without_a_record() {
    assert!(pull_up().belief(None, date(0)).is_none());
}

#[test]
fn a_plus_thirty_kg_typo_is_seen_explained_and_moves_little() {
    let clean = two_months();
    let mut typed = clean.clone();
    typed[15].attempts[1] = done(25.0 / KG_PER_LB, 5, 1.0);
    let (right, mut wrong) = (read(&clean), read(&typed[..15]));
    let seen = wrong.learn(&typed[15]);
    let set = seen.sets[1].unwrap();
    assert!(set.looks_like_a_typo(), "{set:?}");
    let likely = set.likely.unwrap();
    assert!((likely.added.kg() - 25.0).abs() < 1e-9, "{likely:?}");
    let of = |filter: &Filter| filter.belief(None, date(62)).unwrap().one_rep_max().kg();
    assert!((of(&wrong) / of(&right) - 1.0).abs() < 0.015);
}

#[test]
fn a_doubled_digit_is_explained_by_the_single_one() {
    let mut days = two_months();
    days[15].attempts[2] = done(25.0, 55, 1.0);
    let seen = read(&days[..15]).learn(&days[15]);
    let likely = seen.sets[2].unwrap().likely.unwrap();
    assert_eq!(likely.effort, Effort::Reps(Reps::try_from(5).unwrap()));
}

#[test]
fn an_honest_session_holds_no_typo() {
    let days = two_months();
    let seen = read(&days[..15]).learn(&days[15]);
    assert!(seen.sets.iter().all(|set| !set.unwrap().looks_like_a_typo()));
}

#[test]
fn a_bodyweight_in_pounds_is_doubted_once() {
    let mut days = two_months();
    for set in &mut days[10].attempts {
        set.bodyweight = Some(Bodyweight::new(Mass::from_kg(80.0 / KG_PER_LB)));
    }
    let mut filter = read(&days[..10]);
    assert!(filter.learn(&days[10]).bodyweight_doubted);
    assert!(!filter.learn(&days[11]).bodyweight_doubted);
}

#[test]
fn rows_that_cannot_be_are_left_out() {
    let mut days = two_months();
    let clean = read(&days);
    days[15]
        .attempts
        .push(attempt(80.0, -79.0, 5, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(15.0, 25.0, 5, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(80.0, 25.0, 61, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(80.0, 25.0, 0, None, Outcome::Done));
    let mut filter = read(&days[..15]);
    let seen = filter.learn(&days[15]);
    assert!(seen.sets[3..].iter().all(Option::is_none));
    assert_eq!(filter.belief(None, date(61)), clean.belief(None, date(61)));
}

#[test]
fn an_amended_set_replays_to_the_same_bits_as_a_fresh_reading() {
    let mut days = two_months();
    let mut history = History::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
    assert_eq!(history.update(&days), 16);
    assert_eq!(history.update(&days), 0);
    days.push(on(64, vec![done(25.0, 6, 1.0)]));
    assert_eq!(history.update(&days), 1, "today's set costs one day's work");
    days[16].attempts.push(done(25.0, 5, 1.0));
    assert_eq!(
        history.update(&days),
        1,
        "one more set today costs that day's work, too"
    );
    days[12].attempts[0] = done(25.0, 8, 0.0);
    let replayed = history.update(&days);
    assert!(
        (5..17).contains(&replayed),
        "from the month's snapshot, not from the start: {replayed}"
    );
    let fresh = read(&days);
    assert_eq!(history.belief(None, date(65)), fresh.belief(None, date(65)));
    assert_eq!(
        history.belief(None, date(30)),
        read(&days[..8]).belief(None, date(30))
    );
    assert_eq!(history.reads().len(), days.len());
    days.truncate(9);
    history.update(&days);
    assert_eq!(history.belief(None, date(65)), read(&days).belief(None, date(65)));
}

#[test]
fn who_starts_far_from_the_average_is_believed_from_the_first_day() {
    // Sets of five at 85 % of a known 1RM: five with about two left by the reps curve that the belief assumes (R80 8.5).
    for (ratio, left) in [
        (0.6, Some(2.0)),
        (0.8, None),
        (1.0, None),
        (2.6, None),
        (2.3, Some(2.0)),
    ] {
        let sets = |_| attempt(60.0, 60.0 * (0.85 * ratio - 1.0), 5, left, Outcome::Done);
        let mut filter = pull_up();
        let seen = filter.learn(&on(0, (0..3).map(sets).collect()));
        assert!(
            seen.sets.iter().flatten().all(|set| !set.looks_like_a_typo()),
            "{ratio}"
        );
        let believed = filter.belief(None, date(1)).unwrap().one_rep_max().kg() / 60.0;
        assert!(
            (believed / ratio - 1.0).abs() < 0.2,
            "{ratio} × bodyweight, believed {believed}"
        );
    }
}

#[test]
fn each_side_has_its_own_belief_and_lends_to_the_other() {
    let one_arm = |side: Side, reps: u16| Attempt {
        side: Some(side),
        ..done(-20.0, reps, 1.0)
    };
    let days: Vec<TrainingDay> = (0..10)
        .map(|n| on(4 * n, vec![one_arm(Side::Left, 4), one_arm(Side::Right, 5)]))
        .collect();
    let filter = read(&days);
    let left = filter.belief(Some(Side::Left), date(40)).unwrap();
    let right = filter.belief(Some(Side::Right), date(40)).unwrap();
    assert!(right.one_rep_max() > left.one_rep_max());
    let only: Vec<TrainingDay> = days
        .iter()
        .map(|day| TrainingDay {
            date: day.date,
            attempts: day.attempts[..1].to_vec(),
        })
        .collect();
    let alone = read(&only).belief(Some(Side::Left), date(40)).unwrap();
    assert!(left.log_sd() < alone.log_sd());
    assert!(read(&only).belief(Some(Side::Right), date(40)).is_none());
}

#[test]
fn six_weeks_off_cost_strength_and_certainty() {
    let filter = read(&two_months());
    let (then, later) = (
        filter.belief(None, date(61)).unwrap(),
        filter.belief(None, date(102)).unwrap(),
    );
    assert!(later.one_rep_max() < then.one_rep_max());
    assert!(later.log_sd() > then.log_sd());
}

#[test]
fn a_heavier_load_is_never_likelier() {
    let belief = read(&two_months()).belief(None, date(61)).unwrap();
    let chances: Vec<f64> = (60..200).map(|load| belief.chance(kg(f64::from(load)))).collect();
    assert!(chances.windows(2).all(|pair| pair[1] <= pair[0]));
    assert!(chances[0] <= 0.98 && chances[139] >= 0.0);
    let goal = belief.weeks_to(belief.one_rep_max().times(1.03));
    assert!(goal.early <= goal.even || goal.even.is_none());
}

#[test]
fn a_longer_lever_is_held_shorter() {
    let hold = |demand: f64, seconds: f64| Hold {
        side: None,
        demand: Demand::new(demand).unwrap(),
        seconds: Seconds::try_from(seconds).unwrap(),
        left: None,
        outcome: Outcome::Missed,
    };
    let mut holds = Holds::new(HoldJoint::Shoulder);
    for day in 0..6 {
        holds.learn(date(4 * day), &[hold(0.76, 12.0), hold(0.76, 10.0)]);
    }
    let belief = holds.belief(None, date(25)).unwrap();
    let [low, middle, high] = belief.seconds(Demand::new(0.76).unwrap());
    assert!(
        low <= middle && middle <= high && (8.0..16.0).contains(&middle),
        "{low} {middle} {high}"
    );
    let full = belief.seconds(Demand::new(1.0).unwrap());
    assert!(full[1] < middle);
    assert!(belief.chance(Demand::new(0.76).unwrap()) > belief.chance(Demand::new(1.0).unwrap()));
}

/// Bodyweight, added load, reps, half reserves, missed, side.
type AnySet = (f64, f64, u16, Option<u8>, bool, u8);
/// Days since the last, and the sets.
type AnyDay = (u64, Vec<AnySet>);

/// A training day of a log that may hold anything that the types allow.
fn any_day() -> impl Strategy<Value = AnyDay> {
    let set = (
        prop_oneof![40.0..120.0f64, 0.0..500.0f64],
        prop_oneof![-40.0..80.0f64, -500.0..2000.0f64],
        prop_oneof![0u16..15, 0u16..1000],
        prop::option::of(0u8..=20),
        any::<bool>(),
        0u8..3,
    );
    (0u64..60, prop::collection::vec(set, 1..8))
}

fn stays_finite(log: &[AnyDay]) -> Result<(), TestCaseError> {
    let mut filter = pull_up();
    let mut day = 0;
    for (gap, sets) in log {
        day += gap;
        let attempts = sets
            .iter()
            .map(|(body, added, reps, halves, missed, side)| Attempt {
                side: [None, Some(Side::Left), Some(Side::Right)][usize::from(*side)],
                left: halves.map(|h| Given::rir(f64::from(h) / 2.0).unwrap()),
                ..attempt(
                    *body,
                    *added,
                    *reps,
                    None,
                    if *missed { Outcome::Missed } else { Outcome::Done },
                )
            })
            .collect();
        filter.learn(&on(day, attempts));
        for side in [None, Some(Side::Left), Some(Side::Right)] {
            let Some(belief) = filter.belief(side, date(day + 3)) else {
                continue;
            };
            for belief in [belief.after_training(56.0), belief] {
                let rm = belief.one_rep_max();
                for coverage in [Coverage::Half, Coverage::Eighty, Coverage::NinetyFive] {
                    let band = belief.band(coverage);
                    prop_assert!(band.low <= rm && rm <= band.high, "{band:?} {rm:?}");
                    prop_assert!(band.low.kg() > 0.0 && band.high.kg().is_finite(), "{band:?}");
                }
                prop_assert!((0.0..=1.0).contains(&belief.chance(kg(100.0))));
                prop_assert!((0.0..=60.0).contains(&belief.expected_reps(kg(100.0))));
            }
        }
    }
    Ok(())
}

/// By how much one more repetition may lower the belief where the set is hardly a typo. Measured, no source.
const TRIFLE: f64 = 0.004;

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    // It can lower it: far more repetitions than before at a light load tell of endurance, and the heavy sets then of a lower 1RM; a
    // set far beyond belief may be a typo, one far below it an easy day, and the likelier either the less the set moves the
    // belief. That the level itself falls for more repetitions than expected is barred.
    #[test]
    fn one_more_repetition_lowers_the_belief_by_a_trifle_at_most(added in -5.0..60.0f64, reps in 1u16..20, rir in prop::option::of(0u8..5)) {
        let mut days = two_months();
        let mut last = |reps: u16| {
            days[15] = on(60, vec![attempt(80.0, added, reps, rir.map(f64::from), Outcome::Done)]);
            let mut filter = read(&days[..15]);
            let seen = filter.learn(&days[15]).sets[0].unwrap().outlier;
            (seen, filter.belief(None, date(61)).unwrap().one_rep_max().kg())
        };
        let ((_, fewer), (doubt, more)) = (last(reps), last(reps + 1));
        let bound = if doubt < 0.05 { TRIFLE } else { 0.06 };
        prop_assert!(more >= fewer * (1.0 - bound), "{reps} reps, {rir:?} left, {doubt}: {fewer} {more}");
    }

    #[test]
    fn one_more_set_hardly_ever_widens_the_belief(added in -40.0..60.0f64, reps in 0u16..20, rir in prop::option::of(0u8..5), silent: bool) {
        let mut days = two_months();
        if silent {
            days.iter_mut().flat_map(|day| &mut day.attempts).for_each(|set| set.left = None);
        }
        let before = read(&days).belief(None, date(62)).unwrap().log_sd();
        let missed = reps == 0;
        let outcome = if missed { Outcome::Missed } else { Outcome::Done };
        days.push(on(61, vec![attempt(80.0, added, reps, rir.filter(|_| !missed).map(f64::from), outcome)]));
        let after = read(&days).belief(None, date(62)).unwrap().log_sd();
        // One set may raise a variance by at most a twentieth of itself, an sd so by 2.5 %; the rest is the day's noise.
        prop_assert!(after <= before * 1.04, "{before} {after}");
    }

    #[test]
    fn a_missed_single_never_raises_the_belief(added in 0.0..90.0f64) {
        let mut days = two_months();
        let before = read(&days).belief(None, date(65)).unwrap().one_rep_max().kg();
        days.push(on(64, vec![attempt(80.0, added, 0, None, Outcome::Missed)]));
        let after = read(&days).belief(None, date(65)).unwrap().one_rep_max().kg();
        prop_assert!(after <= before * (1.0 + 1e-9), "{before} {after}");
    }

    #[test]
    fn pounds_and_kilograms_give_one_belief(added in 0i32..150, body in 100i32..260) {
        let typed = |value: i32| Typed::new(f64::from(value), Unit::Lb).unwrap().mass();
        let pounds = |reps: u16| Attempt {
            bodyweight: Some(Bodyweight::new(typed(body))),
            added: Added::new(typed(added)),
            ..done(0.0, reps, 1.0)
        };
        let kilos = |reps: u16| {
            attempt(f64::from(body) * KG_PER_LB, f64::from(added) * KG_PER_LB, reps, Some(1.0), Outcome::Done)
        };
        let of = |set: &dyn Fn(u16) -> Attempt| {
            let days: Vec<TrainingDay> = (0..4).map(|n| on(3 * n, vec![set(5), set(4)])).collect();
            read(&days).belief(None, date(12)).unwrap().one_rep_max().kg()
        };
        prop_assert!((of(&pounds) - of(&kilos)).abs() <= 1e-9);
    }

    #[test]
    fn absurd_logs_give_finite_beliefs_in_order(log in prop::collection::vec(any_day(), 1..25)) {
        stays_finite(&log)?;
    }
}

#[test]
#[ignore = "100,000 absurd logs: cargo test --release --test strength -- --ignored absurd"]
fn a_hundred_thousand_absurd_logs_give_finite_beliefs_in_order() {
    let config = ProptestConfig {
        cases: 100_000,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let mut runner = proptest::test_runner::TestRunner::new(config);
    runner
        .run(&prop::collection::vec(any_day(), 1..12), |log| stays_finite(&log))
        .unwrap();
}
