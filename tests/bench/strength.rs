//! Cost of the strength belief: one athlete-year, 150 sessions of 12 sets; two of them, which cost twice as much; and one more
//! set today. `cargo bench --no-default-features --bench strength`.

#![allow(clippy::unwrap_used, missing_docs)]

use chrono::{Days, NaiveDate};
use rungwright::strength::{Attempt, Filter, History, Prior, TrainingDay, Tuning};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share};

fn main() {
    divan::main();
}

fn log(sessions: u64, reported: bool) -> Vec<TrainingDay> {
    let set = |session: u64, nth: u16| Attempt {
        side: None,
        bodyweight: Some(Bodyweight::new(Mass::from_kg(80.0))),
        share: Share::WHOLE,
        added: Added::new(Mass::from_kg(
            20.0 + 0.05 * f64::from(u16::try_from(session).unwrap()),
        )),
        effort: Effort::Reps(Reps::try_from(4 + nth % 3).unwrap()),
        left: reported.then(|| Given::rir(f64::from(nth % 4)).unwrap()),
        outcome: Outcome::Done,
    };
    let first = NaiveDate::from_ymd_opt(2024, 1, 1).unwrap();
    (0..sessions)
        .map(|n| TrainingDay {
            date: first + Days::new(n * 12 / 5),
            attempts: (0..12).map(|i| set(n, i)).collect(),
        })
        .collect()
}

#[divan::bench(args = [150, 300])]
fn every_set_reported(bencher: divan::Bencher, sessions: u64) {
    read(bencher, &log(sessions, true));
}

#[divan::bench(args = [150, 300])]
fn none_reported(bencher: divan::Bencher, sessions: u64) {
    read(bencher, &log(sessions, false));
}

fn read(bencher: divan::Bencher, days: &[TrainingDay]) {
    bencher.bench_local(|| {
        let mut filter = Filter::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
        days.iter().for_each(|day| {
            filter.learn(day);
        });
        filter
    });
}

/// The twelfth set of the last of 150 sessions joins the eleven before it.
#[divan::bench]
fn one_more_set_today(bencher: divan::Bencher) {
    let after = log(150, true);
    let mut before = after.clone();
    if let Some(today) = before.last_mut() {
        today.attempts.pop();
    }
    let mut history = History::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
    history.update(&before);
    bencher
        .with_inputs(|| history.clone())
        .bench_local_values(|mut history| {
            assert_eq!(history.update(&after), 1);
            history
        });
}
