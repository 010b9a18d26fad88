//! Cost of the strength belief: one athlete-year, 150 sessions of 12 sets. `cargo bench --no-default-features --bench strength`.

#![allow(clippy::unwrap_used, missing_docs)]

use chrono::{Days, NaiveDate};
use rungwright::strength::{Attempt, Filter, Prior, TrainingDay, Tuning};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share};

fn main() {
    divan::main();
}

fn year(reported: bool) -> Vec<TrainingDay> {
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
    (0..150)
        .map(|n| TrainingDay {
            date: first + Days::new(n * 12 / 5),
            attempts: (0..12).map(|i| set(n, i)).collect(),
        })
        .collect()
}

#[divan::bench(args = [true, false])]
fn athlete_year(bencher: divan::Bencher, every_set_reported: bool) {
    let days = year(every_set_reported);
    bencher.bench_local(|| {
        let mut filter = Filter::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
        days.iter().for_each(|day| {
            filter.learn(day);
        });
        filter
    });
}
