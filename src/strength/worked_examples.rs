//! Worked examples of the filter's definition, 4 decimals. First day, pull-up, 80 kg bodyweight unless said.

use chrono::{Days, NaiveDate};

use super::goal::{first_week, weekly};
use super::state::{BIAS, ENDURANCE, LEVEL, LOSS, READINESS, State, TREND};
use super::weights::Weights;
use super::*;
use crate::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share, SystemLoad};

fn close(what: &str, said: f64, expected: f64) {
    // Half of the last of the four decimals that the examples give.
    assert!(
        (said - expected).abs() <= 0.500_001e-4,
        "{what}: {said} is not {expected}"
    );
}

fn all_close(what: &str, said: &[f64], expected: &[f64]) {
    assert_eq!(said.len(), expected.len(), "{what}");
    for (s, e) in said.iter().zip(expected) {
        close(what, *s, *e);
    }
}

fn set(added: f64, reps: u16, rir: Option<f64>, outcome: Outcome) -> Attempt {
    Attempt {
        side: None,
        bodyweight: Some(Bodyweight::new(Mass::from_kg(80.0))),
        share: Share::WHOLE,
        added: Added::new(Mass::from_kg(added)),
        effort: Effort::Reps(Reps::try_from(reps).unwrap()),
        left: rir.map(|rir| Given::rir(rir).unwrap()),
        outcome,
    }
}

fn done(added: f64, reps: u16, rir: f64) -> Attempt {
    set(added, reps, Some(rir), Outcome::Done)
}

fn on_day(day: u64, attempts: &[Attempt]) -> TrainingDay {
    TrainingDay {
        date: first() + Days::new(day),
        attempts: attempts.to_vec(),
    }
}

fn first() -> NaiveDate {
    NaiveDate::from_ymd_opt(2024, 1, 1).unwrap()
}

fn filter() -> Filter {
    Filter::new(Prior::of("pull-up", Share::WHOLE), Tuning::published())
}

fn kg(kg: f64) -> SystemLoad {
    SystemLoad::new(Mass::from_kg(kg))
}

#[test]
fn example_1_the_reps_curve() {
    let curve = Curve::new(0.35, -f64::ln(7.5));
    let (g, slope) = curve.log_ratio(5.0);
    all_close("E1", &[g, slope, curve.reps(0.2)], &[0.1212, 0.0297, 7.6946]);
}

#[test]
fn example_2_what_a_report_and_a_habit_say_of_the_reserve() {
    let tuning = Tuning::published();
    let two = Weights::reported(2.0, 0.95, &tuning).of;
    all_close(
        "report 2",
        &two[..6],
        &[0.0, 0.0482, 0.3267, 0.3352, 0.2047, 0.1115],
    );
    let none = Weights::reported(0.0, 0.95, &tuning).of;
    all_close("report 0", &none[..4], &[1.7140, 0.4741, 0.1760, 0.0705]);
    let habit = Weights::habit(1.5, tuning.habit_spread, says::Standing::Any, &tuning).of;
    all_close("habit", &habit[..4], &[0.1768, 0.2364, 0.2364, 0.1768]);
}

#[test]
fn example_3_a_week_of_a_cut_and_six_weeks_off() {
    let tuning = Tuning::published();
    let start = State::prior(
        training::Start {
            level: f64::ln(80.0 * 1.45),
            level_sd: 0.18,
            endurance: -f64::ln(7.5),
        },
        &tuning,
    );
    let mut week = start.clone();
    week.pass(7.0, f64::ln(79.0 / 80.0), &tuning);
    let sd = |s: &State, i: usize| s.cov[i][i].sqrt();
    all_close(
        "a week",
        &[
            week.mean[LEVEL],
            week.mean[TREND],
            sd(&week, LEVEL),
            sd(&week, TREND),
            1e6 * week.cov[LEVEL][TREND],
        ],
        &[4.7498, 0.0006, 0.1801, 0.0015, 2.1295],
    );
    let mut off = start;
    off.pass(42.0, 0.0, &tuning);
    all_close(
        "42 days off",
        &[
            off.mean[LEVEL],
            off.mean[LOSS],
            off.strength(0.0),
            off.strength_var(0.0).sqrt(),
        ],
        &[4.7548, 0.0400, 4.7148, 0.1807],
    );
}

#[test]
fn example_4_a_first_day_of_one_or_two_sets() {
    let days: [(&str, Vec<Attempt>, [f64; 6]); 5] = [
        (
            "a",
            vec![set(20.0, 5, None, Outcome::Missed)],
            [115.6046, 0.0585, -1.9688, 0.9500, 0.0, 0.0051],
        ),
        (
            "b",
            vec![done(20.0, 5, 2.0)],
            [125.5463, 0.0865, -1.9968, 0.9277, 0.0008, 0.0028],
        ),
        (
            "c",
            vec![set(20.0, 5, None, Outcome::Done)],
            [121.5667, 0.0948, -2.0149, 0.9500, 0.0005, 0.0216],
        ),
        (
            "d",
            vec![set(50.0, 0, None, Outcome::Missed)],
            [107.2214, 0.1779, -2.0148, 0.9500, -0.0008, 0.0034],
        ),
        (
            "e",
            vec![done(30.0, 3, 1.0), done(30.0, 3, 0.0)],
            [123.2665, 0.0564, -1.9666, 1.0165, 0.0006, 0.0004],
        ),
    ];
    for (name, sets, expected) in days {
        let mut filter = filter();
        let read = filter.learn(&on_day(0, &sets));
        let state = filter.state.unwrap();
        let said = [
            state.strength(0.0).exp(),
            1.35 * state.strength_var(0.0).sqrt(),
            state.mean[ENDURANCE],
            state.mean[BIAS],
            state.mean[READINESS],
            read.sets.last().copied().flatten().unwrap().outlier,
        ];
        all_close(name, &said, &expected);
    }
}

/// Example 5's log: days 0, 3, 7, 10 of three sets each, and day 14 with two typos.
fn example_5() -> (Filter, DayRead) {
    let mut filter = filter();
    let easy = [done(25.0, 5, 2.0), done(25.0, 5, 1.0), done(25.0, 5, 1.0)];
    for day in [0, 3, 7, 10] {
        filter.learn(&on_day(day, &easy));
    }
    let typos = [done(25.0, 5, 2.0), done(55.0, 5, 2.0), done(25.0, 55, 2.0)];
    let read = filter.learn(&on_day(14, &typos));
    (filter, read)
}

fn belief_of_example_5() -> Belief {
    example_5().0.belief(None, first() + Days::new(15)).unwrap()
}

#[test]
fn example_5_two_typos_are_seen_and_move_little() {
    let (filter, read) = example_5();
    let outliers: Vec<f64> = read.sets.iter().map(|set| set.unwrap().outlier).collect();
    all_close("outliers", &outliers, &[0.0007, 1.0, 1.0]);
    let belief = filter.belief(None, first() + Days::new(15)).unwrap();
    all_close(
        "belief",
        &[belief.one_rep_max().kg(), belief.log_sd(), belief.day_sd()],
        &[133.1660, 0.0524, 0.0175],
    );
}

#[test]
fn example_6_chances_and_expected_repetitions() {
    let belief = belief_of_example_5();
    let said = [
        belief.chance(kg(120.0)),
        belief.chance(kg(130.0)),
        belief.expected_reps(kg(105.0)),
        belief.chance_of_reps(kg(105.0), 6.0),
    ];
    all_close("E6", &said, &[0.9382, 0.6415, 7.0486, 0.8965]);
}

#[test]
fn example_7_eight_weeks_ahead_and_six_weeks_off() {
    let ahead = belief_of_example_5().after_training(56.0);
    let band = ahead.band(Coverage::Eighty);
    let said = [
        ahead.one_rep_max().kg(),
        ahead.log_sd(),
        band.low.kg(),
        band.high.kg(),
    ];
    all_close("8 weeks", &said, &[133.8192, 0.0570, 124.3869, 143.9667]);
    let off = example_5().0.belief(None, first() + Days::new(14 + 42)).unwrap();
    all_close(
        "42 days off",
        &[off.one_rep_max().kg(), off.log_sd()],
        &[128.0909, 0.0568],
    );
}

/// The first weeks with a chance of 20, 50 and 80 %; none: not in sight within two years.
fn weeks_to(belief: &Belief, goal: SystemLoad) -> [Option<u16>; 3] {
    let chances = weekly(|days| belief.after_training(days).chance_of_one_rep_max(goal));
    [0.2, 0.5, 0.8].map(|wanted| first_week(&chances, wanted))
}

#[test]
fn example_8_weeks_to_a_goal() {
    let belief = belief_of_example_5();
    let goal = kg(139.8243);
    assert_eq!(weeks_to(&belief, goal), [Some(5), Some(82), None]);
    let lighter = belief.at_bodyweight(Bodyweight::new(Mass::from_kg(76.0)));
    assert_eq!(weeks_to(&lighter, goal), [Some(19), None, None]);
}
