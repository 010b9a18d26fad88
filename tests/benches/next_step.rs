//! How long the next step takes: everybody of a gym of 36, from a logbook that is read already; and an import of 100,000 rows.

#![allow(missing_docs, clippy::unwrap_used)]

use std::fmt::Write as _;

use chrono::NaiveDate;
use divan::Bencher;
use rungwright::catalogue::Catalogue;
use rungwright::coaching::PlatesOnHand;
use rungwright::coaching::{next_step, outlook};
use rungwright::demo::{Plan, gym};
use rungwright::logbook::exchange::{Import, Options};
use rungwright::logbook::writer::LOCK_WAIT;
use rungwright::logbook::{Log, Machine, Places, Writer, disk};
use rungwright::units::{Mass, Unit};

fn main() {
    divan::main();
}

fn on() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 11, 25).unwrap()
}

/// A gym's logs and its plates.
fn gym_of_36() -> (Vec<Log>, PlatesOnHand) {
    let gym = gym(&Plan {
        athletes: 36,
        years: 1,
        seed: 1,
        on: on(),
    });
    let plates = PlatesOnHand::new(&gym.plates, Mass::ZERO);
    let logs: Vec<Log> = gym
        .athletes
        .into_iter()
        .map(|(name, mut records)| {
            records.sort_by(Log::order);
            Log {
                folder: name.clone(),
                name,
                records,
            }
        })
        .collect();
    (logs, plates)
}

#[divan::bench]
fn next_for_36_athletes(bencher: Bencher<'_, '_>) {
    let (logs, plates) = gym_of_36();
    bencher.bench(|| next_step::of_all(&logs, Catalogue::shipped(), &plates, on()));
}

/// The same with what beliefs add: a year of sets through the filter.
#[divan::bench]
fn next_for_36_athletes_with_chances(bencher: Bencher<'_, '_>) {
    let (logs, plates) = gym_of_36();
    bencher.bench(|| outlook::of_all(&logs, Catalogue::shipped(), &plates, on()));
}

/// A spreadsheet of 36 athletes' sets, `rows` in all.
fn spreadsheet(rows: usize) -> String {
    let mut text = String::from("athlete,date,movement,bodyweight_kg,added_kg,reps,rir,ladder,rung\n");
    let first = NaiveDate::from_ymd_opt(2023, 1, 2).unwrap();
    for row in 0..rows {
        let (athlete, session) = (row % 36, row / 36 / 4);
        let date = first + chrono::Days::new(u64::try_from(session).unwrap());
        let (added, reps) = (session % 30, 4 + row / 36 % 3);
        let _infallible = writeln!(
            text,
            "Athlete {athlete},{date},pull-up,{}.{},{added},{reps},1,weighted-pull-up,plus-25",
            70 + athlete,
            session % 10
        );
    }
    text
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn import_of_100_000_rows_durable(bencher: Bencher<'_, '_>) {
    let text = spreadsheet(100_000);
    bencher
        .with_inputs(|| tempfile::tempdir().unwrap())
        .bench_values(|folder| {
            let machine = Machine::with(disk::RealDisk, Places::inside(&folder.path().join("home")));
            let options = Options::default();
            let import = Import {
                file: "sets.csv",
                options: &options,
                catalogue: Catalogue::shipped(),
                device: "bench",
                known: &|_| false,
            };
            let sheet = import.read(text.as_bytes()).unwrap();
            assert_eq!(sheet.bad_rows, 0);
            let now = on().and_hms_opt(12, 0, 0).unwrap().and_utc();
            let (mut writer, _) = Writer::lock(
                &machine,
                &folder.path().join("book"),
                "bench".to_owned(),
                now,
                LOCK_WAIT,
            )
            .unwrap();
            writer.ensure_settings(Unit::Kg).unwrap();
            let batch = sheet
                .rows
                .into_iter()
                .map(|row| (row.athlete, row.records))
                .collect();
            writer.commit(batch).unwrap();
            folder
        });
}
