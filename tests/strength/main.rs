//! The belief of a one-rep max, as a lifter and a coach would check it.

#![allow(clippy::unwrap_used)] // a test's helpers may stop it

mod belief;
mod laws;
mod typos;

use chrono::{Days, NaiveDate};
use rungwright::strength::{Attempt, Filter, Prior, TrainingDay, Tuning};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share, SystemLoad};

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
