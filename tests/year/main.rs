//! A year by the advice: invented people do what they are told, and nobody is led in circles.
//!
//! Strength rises slowly, days differ by up to 3 %, bodyweight jitters by half a kilo, reserve is logged honestly or never.
//! What is asked of the advice is common practice, no source; so is the made-up body.

// A helper that panics fails its test, as it should; the sentence it prints is for whoever reads the run.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::print_stdout)]

mod body;
mod laws;
mod person;

use laws::{dead_ends, flip_flops, hardness, sinking_loads};
use person::{Person, Start};

/// Each start with and without logged reserve, with a slow and a quick year, by several dice.
fn lives(ladder: &'static str, rung: &'static str, strength: f64, years: [f64; 2]) -> Vec<(Start, Person)> {
    let mut lives = Vec::new();
    for logs_reserve in [true, false] {
        for growth in years {
            for seed in 1..=2 {
                let start = Start {
                    ladder,
                    rung,
                    strength,
                    growth,
                    logs_reserve,
                    seed,
                };
                lives.push((start, Person::live(start)));
            }
        }
    }
    lives
}

/// Holds every law for each of the lives, and prints how hard the sets were.
fn hold(ladder: &'static str, rung: &'static str, strength: f64, years: [f64; 2]) {
    let mut wrong: Vec<String> = Vec::new();
    for (start, person) in lives(ladder, rung, strength, years) {
        for what in LAWS.iter().flat_map(|law| law(&person)) {
            wrong.push(format!("{start:?}: {what}"));
        }
        let hard = hardness(&person);
        let habit = if start.logs_reserve { "logs" } else { "never logs" };
        println!(
            "{ladder}, {:.0} % a year, {habit} reserve: {hard}",
            100.0 * start.growth
        );
        // Most days.
        if hard.fitting < 0.6 {
            wrong.push(format!("{start:?}: {hard}"));
        }
        if std::env::var_os("RUNGWRIGHT_SHOW_YEAR").is_some() {
            for session in &person.sessions {
                println!("{session:?}");
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// A slow year and a quick one, as parts of strength.
const YEARS: [f64; 2] = [0.10, 0.35];

type Law = fn(&Person) -> Vec<String>;

const LAWS: [Law; 3] = [dead_ends, flip_flops, sinking_loads];

#[test]
fn a_year_of_weighted_pull_ups() {
    hold("weighted-pull-up", "plus-25", 1.38, YEARS);
}

#[test]
fn a_year_of_weighted_dips() {
    hold("weighted-dip", "plus-25", 1.45, YEARS);
}

#[test]
fn a_year_of_pistol_squats_on_two_rails() {
    hold("pistol-squat", "box-30", 0.88, YEARS);
}

#[test]
fn a_year_toward_the_one_arm_pull_up_on_two_rails() {
    hold("one-arm-pull-up", "two-arm", 0.64, YEARS);
}

#[test]
fn a_year_toward_the_handstand_push_up_without_load() {
    hold("handstand-push-up", "negative", 0.8, YEARS);
}

#[test]
fn a_year_toward_the_one_arm_push_up_on_two_rails_without_load() {
    hold("one-arm-push-up", "hands-60", 0.64, YEARS);
}

#[test]
fn a_year_of_levers_held_without_load() {
    hold("front-lever", "tuck", 0.55, YEARS);
}

// What the rules do not yet hold, kept in sight instead of loosened. `cargo test --test year -- --ignored`
// shows it.

/// The ladder states 0.40 → 0.70 of the goal from knees to level: who just passes the one can't do the other once. A fall asks
/// only two repetitions more below, so the next try comes long before it can succeed.
#[test]
#[ignore = "a fall adds two repetitions whatever the gap, so a wide gap is tried again and again"]
fn a_year_before_a_gap_as_wide_as_knees_to_level() {
    hold("toes-to-bar", "knees", 0.42, YEARS);
}

/// The same with a smaller gap: 0.50 → 0.65.
#[test]
#[ignore = "a fall adds two repetitions whatever the gap, so a wide gap is tried again and again"]
fn a_year_before_a_gap_as_wide_as_pike_to_raised_pike() {
    hold("handstand-push-up", "pike", 0.5, YEARS);
}

/// Who can just do five at bodyweight and honestly leaves 0 where 2 is asked is told to repeat it for months.
#[test]
#[ignore = "too little reserve is repeated without end: no rule backs off from it"]
fn a_year_that_begins_with_too_little_reserve() {
    hold("weighted-pull-up", "assisted", 1.17, [0.20, 0.25]);
}
