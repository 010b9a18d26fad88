//! How fast the logbook is: lines read by the set reader and by RON, a logbook opened, a batch saved, one set logged.
//!
//! `cargo bench --bench logbook`; with RUNGWRIGHT_MEMORY set it only opens 100,000 sets and prints the memory used.

#![allow(
    missing_docs,
    clippy::print_stdout,
    clippy::unwrap_used,
    clippy::cast_possible_truncation
)]

use std::io::Write as _;
use std::path::PathBuf;
use std::time::Duration;

use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::journal::{self, Form};
use rungwright::logbook::record::{Fact, Id, Load, Record, Set};
use rungwright::logbook::{Logbook, Machine, Name, Places, Writer, Written, line};
use rungwright::units::{Effort, Given, Outcome, Reps, Typed, Unit};

const ROWS: usize = 100_000;
const ATHLETES: usize = 36;

fn main() {
    if std::env::var_os("RUNGWRIGHT_MEMORY").is_some() {
        return memory();
    }
    divan::main();
}

fn record(number: usize) -> Record {
    let day = number % 28 + 1;
    let month = number / 28 % 12 + 1;
    Record {
        id: Id::from_parts(1_700_000_000_000 + number as u64, (number as u128) << 40 | 0x5bd1),
        rev: 0,
        dev: "k3n8q0zt".to_owned(),
        at: Written::parse(&format!("2025-{month:02}-{day:02}")).unwrap(),
        nth: (number % 30) as u32,
        what: Fact::Set(Set {
            movement: "pull-up".into(),
            side: None,
            load: Some(Load::Added(
                Typed::new((number % 33) as f64 * 1.25, Unit::Kg).unwrap(),
            )),
            effort: Effort::Reps(Reps::try_from((number % 9 + 1) as u16).unwrap()),
            left: Some(Given::rir((number % 4) as f64).unwrap()),
            outcome: Outcome::Done,
            bodyweight: number
                .is_multiple_of(10)
                .then(|| Typed::new(78.5, Unit::Kg).unwrap()),
            ladder: Some("weighted-pull-up".into()),
            rung: Some("plus-25".into()),
            note: None,
        }),
    }
}

fn batch(rows: usize, athletes: usize) -> Vec<(Name, Vec<Record>)> {
    (0..athletes)
        .map(|n| {
            let name = Name::parse(&format!("Athlete {n}")).unwrap();
            let records = (0..rows / athletes + 1)
                .map(|row| record(row * athletes + n))
                .collect();
            (name, records)
        })
        .collect()
}

struct Gym {
    folder: tempfile::TempDir,
    machine: Machine,
}

impl Gym {
    fn new() -> Self {
        // In the working folder: a RAM disk would flush for nothing.
        let folder = tempfile::tempdir_in(".").unwrap();
        let machine = Machine::with(RealDisk, Places::inside(&folder.path().join("home")));
        Self { folder, machine }
    }

    fn root(&self) -> PathBuf {
        self.folder.path().join("logbook")
    }

    fn filled(rows: usize, athletes: usize) -> Self {
        let gym = Self::new();
        gym.writer().commit(batch(rows, athletes)).unwrap();
        gym
    }

    fn writer(&self) -> Writer {
        let now = "2026-03-18T12:00:00Z".parse().unwrap();
        let device = "k3n8q0zt".to_owned();
        Writer::lock(&self.machine, &self.root(), device, now, Duration::from_secs(10))
            .unwrap()
            .0
    }
}

fn lines() -> String {
    (0..ROWS).map(|n| line::write(&record(n)) + "\n").collect()
}

#[divan::bench(sample_count = 10)]
fn journal_of_100_000_sets(bencher: divan::Bencher) {
    let text = lines();
    bencher.bench(|| journal::read("j", text.as_bytes(), Form::Journal).entries.len());
}

#[divan::bench(sample_count = 10)]
fn set_reader_on_one_core(bencher: divan::Bencher) {
    let text = lines();
    bencher.bench(|| {
        text.lines()
            .filter(|text| line::read(text).record.is_some())
            .count()
    });
}

#[divan::bench(sample_count = 10)]
fn ron_on_one_core(bencher: divan::Bencher) {
    // A space more than the set reader takes sends every line to RON.
    let text: String = (0..ROWS)
        .map(|n| {
            let line = line::write(&record(n));
            line::sealed(line::split_checksum(&line).0.replace("rev: ", "rev:  ")) + "\n"
        })
        .collect();
    bencher.bench(|| {
        text.lines()
            .filter(|text| line::read(text).record.is_some())
            .count()
    });
}

#[divan::bench(sample_count = 10)]
fn writing_lines_on_one_core(bencher: divan::Bencher) {
    let records: Vec<Record> = (0..ROWS).map(record).collect();
    bencher.bench(|| {
        records
            .iter()
            .map(|record| line::write(record).len())
            .sum::<usize>()
    });
}

#[divan::bench(sample_count = 10)]
fn opening_100_000_sets_of_36_athletes(bencher: divan::Bencher) {
    let gym = Gym::filled(ROWS, ATHLETES);
    bencher.bench(|| Logbook::open(&gym.machine, &gym.root()).unwrap().0.logs.len());
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn saving_100_000_rows_of_36_athletes(bencher: divan::Bencher) {
    bencher
        .with_inputs(|| (Gym::new(), batch(ROWS, ATHLETES)))
        .bench_values(|(gym, batch)| gym.writer().commit(batch).unwrap().added.len());
}

#[divan::bench(sample_count = 50, sample_size = 1)]
fn one_set_into_500_athletes(bencher: divan::Bencher) {
    let gym = Gym::filled(50_000, 500);
    let mut number = ROWS;
    let name = Name::parse("Athlete 250").unwrap();
    bencher.bench_local(|| {
        number += 1_000;
        gym.writer().append(&name, &[record(number)]).unwrap().added.len()
    });
}

#[divan::bench(sample_count = 50, sample_size = 1)]
fn one_plain_append_and_flush(bencher: divan::Bencher) {
    let gym = Gym::new();
    let line = line::write(&record(1)) + "\n";
    let path = gym.folder.path().join("plain");
    bencher.bench_local(|| {
        let mut file = std::fs::OpenOptions::new()
            .append(true)
            .create(true)
            .open(&path)
            .unwrap();
        file.write_all(line.as_bytes()).unwrap();
        file.sync_all().unwrap();
    });
}

/// Peak memory of opening, in a process that did not also write.
fn memory() {
    if let Some(folder) = std::env::var_os("RUNGWRIGHT_MEMORY_OF") {
        let folder = PathBuf::from(folder);
        let machine = Machine::with(RealDisk, Places::inside(&folder.join("home")));
        let (logbook, _) = Logbook::open(&machine, &folder.join("logbook")).unwrap();
        let status = std::fs::read_to_string("/proc/self/status").unwrap();
        let peak = status
            .lines()
            .find(|line| line.starts_with("VmHWM"))
            .unwrap_or_default();
        let records: usize = logbook.logs.iter().map(|log| log.records.len()).sum();
        println!("{records} records, {peak}");
        return;
    }
    let gym = Gym::filled(ROWS, ATHLETES);
    let myself = std::env::current_exe().unwrap();
    let mut opening = std::process::Command::new(myself);
    opening.env("RUNGWRIGHT_MEMORY_OF", gym.folder.path());
    opening.status().unwrap();
}
