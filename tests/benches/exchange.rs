//! How long reading and writing a gym's spreadsheet takes: 100,000 rows of 36 athletes. Run: `cargo bench --bench exchange`.

#![allow(clippy::unwrap_used)]

use std::fmt::Write;

use chrono::{Days, NaiveDate};
use rungwright::catalogue::Catalogue;
use rungwright::logbook::Log;
use rungwright::logbook::exchange::{Import, Options, Sheet, write};

fn main() {
    divan::main();
}

fn gym() -> String {
    let start = NaiveDate::from_ymd_opt(2022, 1, 3).unwrap();
    let mut csv =
        "athlete,date,movement,side,bodyweight_kg,added_kg,reps,rir,outcome,ladder,rung,note\r\n".to_owned();
    for row in 0..100_000_u32 {
        let day = start + Days::new(u64::from(row / 100));
        let (athlete, load) = (row % 36, f64::from(row % 23) * 1.25);
        let (movement, ladder, rung) = match row % 3 {
            0 => ("dip", "weighted-dip", "plus-25"),
            1 => ("Pull Up", "weighted-pull-up", "plus-25"),
            _ => ("one-arm-pull-up", "one-arm-pull-up", "one-arm"),
        };
        let side = ["", "", "L"][(row % 3) as usize];
        let note = if row % 10 == 0 { "\"slow, deep\"" } else { "" };
        writeln!(
            csv,
            "Athlete {athlete},{day},{movement},{side},78.5,{load},{},1.5,,{ladder},{rung},{note}\r",
            row % 9 + 1
        )
        .unwrap();
    }
    csv
}

fn read(csv: &str) -> Sheet {
    let options = Options::default();
    let import = Import {
        file: "gym.csv",
        options: &options,
        catalogue: Catalogue::shipped(),
        device: "bench",
        known: &|_| false,
    };
    let sheet = import.read(csv.as_bytes()).unwrap();
    assert!(sheet.problems.is_empty(), "{}", sheet.problems);
    sheet
}

#[divan::bench(sample_count = 10)]
fn reading(bencher: divan::Bencher<'_, '_>) {
    let csv = gym();
    bencher.bench_local(|| read(&csv));
}

#[divan::bench(sample_count = 10)]
fn writing(bencher: divan::Bencher<'_, '_>) {
    let mut records: Vec<_> = read(&gym())
        .rows
        .into_iter()
        .flat_map(|row| row.records)
        .collect();
    records.sort_by(Log::order);
    let log = Log {
        name: "Gym".into(),
        folder: "gym".into(),
        records,
    };
    bencher.bench_local(|| write([&log]));
}
