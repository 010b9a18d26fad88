//! A day's commands on a disk in memory, one after another, so that each can be cut or failed.

use std::path::{Path, PathBuf};
use std::time::Duration;

use rungwright::logbook::record::{Id, Record};
use rungwright::logbook::{Logbook, Machine, Name, Places, Settings, Trouble, Writer};
use rungwright::problem::Problem;
use rungwright::units::Unit;

use super::model::{Fault, ModelDisk};
use super::{id, name, noon, pull_ups};

pub const LOGBOOK: &str = "/gym/logbook";

pub fn machine(disk: &ModelDisk) -> Machine {
    Machine::with(disk.clone(), Places::inside(Path::new("/home")))
}

pub fn lock(disk: &ModelDisk) -> Result<Writer, Trouble> {
    let root = PathBuf::from(LOGBOOK);
    Writer::lock(&machine(disk), &root, "mill".to_owned(), noon(), Duration::ZERO).map(|(writer, _)| writer)
}

pub fn read(disk: &ModelDisk) -> (Vec<Record>, Vec<Problem>) {
    match Logbook::open(&machine(disk), Path::new(LOGBOOK)) {
        Ok((logbook, problems)) => {
            let records = logbook.logs.into_iter().flat_map(|log| log.records).collect();
            (records, problems)
        }
        Err(Trouble::Missing { .. }) => (Vec::new(), Vec::new()),
        Err(other) => panic!("{other}"),
    }
}

pub fn ids(disk: &ModelDisk) -> Vec<Id> {
    read(disk).0.iter().map(|record| record.id).collect()
}

/// One command a step, each with a writer of its own, as the command line does it.
pub const STEPS: usize = 6;

pub fn batch() -> Vec<(Name, Vec<Record>)> {
    ["ana", "Bea", "Cid"]
        .iter()
        .zip([200u128, 300, 400])
        .map(|(who, n)| {
            (
                name(who),
                vec![pull_ups(n, 2, 5), pull_ups(n + 1, 2, 4), pull_ups(n + 2, 2, 3)],
            )
        })
        .collect()
}

pub const BATCH: [u128; 9] = [200, 201, 202, 300, 301, 302, 400, 401, 402];

/// Does step `n` and gives the ids that it says are saved.
pub fn step(disk: &ModelDisk, n: usize) -> Result<Vec<Id>, Trouble> {
    let mut writer = lock(disk)?;
    match n {
        0 => writer.ensure_settings(Unit::Kg).map(|_| Vec::new()),
        1 => writer
            .append(&name("ana"), &[pull_ups(1, 1, 5)])
            .map(|saved| saved.added),
        2 => writer
            .append(&name("ana"), &[pull_ups(2, 1, 5)])
            .map(|saved| saved.added),
        3 => writer
            .commit(batch())
            .map(|saved| [saved.added, saved.already_there].concat()),
        4 => {
            let mut settings = Settings::fresh(Unit::Kg);
            settings.name = Some("Bar club".to_owned());
            writer.write_settings(&settings).map(|()| Vec::new())
        }
        _ => writer
            .append(&name("Bea"), &[pull_ups(3, 3, 5)])
            .map(|saved| saved.added),
    }
}

/// Runs the steps until one fails; what was acknowledged, and the step that failed.
pub fn run(disk: &ModelDisk) -> (Vec<Id>, Option<usize>) {
    let mut saved = Vec::new();
    for n in 0..STEPS {
        match step(disk, n) {
            Ok(ids) => saved.extend(ids),
            Err(_) => return (saved, Some(n)),
        }
    }
    (saved, None)
}

pub fn fresh() -> ModelDisk {
    let disk = ModelDisk::new();
    disk.plan(Fault::None);
    disk
}

pub fn operations() -> usize {
    let disk = fresh();
    assert_eq!(run(&disk).1, None);
    disk.steps()
}

pub fn assert_batch_is_whole(found: &[Id], context: &str) {
    let there = BATCH.iter().filter(|n| found.contains(&id(**n))).count();
    assert!(
        there == 0 || there == BATCH.len(),
        "{there} of the batch: {context}"
    );
}
