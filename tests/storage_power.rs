//! Promises P1 to P6 and P11 on a disk that loses power or fails at every single operation.

// Helpers outside a #[test] may panic as tests do; the numbers here are small.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

mod storage_help;

use std::path::{Path, PathBuf};
use std::time::Duration;

use rungwright::logbook::record::{Fact, Id, Record};
use rungwright::logbook::{Logbook, Machine, Places, Settings, Trouble, Writer};
use rungwright::problem::{Problem, Severity};
use rungwright::units::Unit;
use storage_help::model::{Fault, ModelDisk, Unflushed};
use storage_help::*;

const LOGBOOK: &str = "/gym/logbook";

fn machine(disk: &ModelDisk) -> Machine {
    Machine::with(disk.clone(), Places::inside(Path::new("/home")))
}

fn lock(disk: &ModelDisk) -> Result<Writer, Trouble> {
    let root = PathBuf::from(LOGBOOK);
    Writer::lock(&machine(disk), &root, "mill".to_owned(), noon(), Duration::ZERO).map(|(writer, _)| writer)
}

fn read(disk: &ModelDisk) -> (Vec<Record>, Vec<Problem>) {
    match Logbook::open(&machine(disk), Path::new(LOGBOOK)) {
        Ok((logbook, problems)) => {
            let records = logbook.logs.into_iter().flat_map(|log| log.records).collect();
            (records, problems)
        }
        Err(Trouble::Missing { .. }) => (Vec::new(), Vec::new()),
        Err(other) => panic!("{other}"),
    }
}

fn ids(disk: &ModelDisk) -> Vec<Id> {
    read(disk).0.iter().map(|record| record.id).collect()
}

/// One command a step, each with a writer of its own, as the command line does it.
const STEPS: usize = 6;

fn batch() -> Vec<(rungwright::logbook::Name, Vec<Record>)> {
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

const BATCH: [u128; 9] = [200, 201, 202, 300, 301, 302, 400, 401, 402];

/// Does step `n` and gives the ids that it says are saved.
fn step(disk: &ModelDisk, n: usize) -> Result<Vec<Id>, Trouble> {
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
fn run(disk: &ModelDisk) -> (Vec<Id>, Option<usize>) {
    let mut saved = Vec::new();
    for n in 0..STEPS {
        match step(disk, n) {
            Ok(ids) => saved.extend(ids),
            Err(_) => return (saved, Some(n)),
        }
    }
    (saved, None)
}

fn fresh() -> ModelDisk {
    let disk = ModelDisk::new();
    disk.plan(Fault::None);
    disk
}

fn operations() -> usize {
    let disk = fresh();
    assert_eq!(run(&disk).1, None);
    disk.steps()
}

fn assert_batch_is_whole(found: &[Id], context: &str) {
    let there = BATCH.iter().filter(|n| found.contains(&id(**n))).count();
    assert!(
        there == 0 || there == BATCH.len(),
        "{there} of the batch: {context}"
    );
}

/// What may become of unflushed bytes and names; each cut takes one in turn, with RUNGWRIGHT_LONG_TESTS every one.
fn ways(cut: usize) -> Vec<Unflushed> {
    let mut ways = vec![
        Unflushed::Lost,
        Unflushed::Kept,
        Unflushed::Halved,
        Unflushed::Zeroed,
    ];
    ways.extend([0x5555, 0xaaaa, 0x3333, 0x9249].map(Unflushed::Mixed));
    if std::env::var_os("RUNGWRIGHT_LONG_TESTS").is_some() {
        return ways;
    }
    vec![ways[cut % ways.len()]]
}

#[test]
fn after_a_power_cut_at_any_operation_everything_saved_is_there_and_the_next_command_works() {
    for cut in 1..=operations() {
        for way in ways(cut) {
            let disk = fresh();
            disk.plan(Fault::Cut(cut));
            let (saved, _) = run(&disk);
            let after = disk.reboot(way);
            let context = format!("cut at {cut}, {way:?}\n{}", disk.log().join("\n"));
            let found = ids(&after);
            for id in &saved {
                assert!(found.contains(id), "{id} lost: {context}");
            }
            assert_batch_is_whole(&found, &context);
            let before: Vec<_> = journals(&after);
            for n in 0..STEPS {
                step(&after, n).unwrap_or_else(|error| panic!("{error}: {context}"));
            }
            let (records, problems) = read(&after);
            assert!(
                problems
                    .iter()
                    .all(|problem| problem.severity == Severity::Warning),
                "{problems:?} {context}"
            );
            let mut found: Vec<Id> = records.iter().map(|record| record.id).collect();
            for wanted in [1, 2, 3].iter().chain(&BATCH) {
                let at = found.iter().position(|found| *found == id(*wanted));
                found.remove(at.unwrap_or_else(|| panic!("{wanted} missing: {context}")));
            }
            assert_eq!(found.len(), 3, "only the three names are left over: {context}");
            assert_grown(&after, &before, &context);
            assert!(
                after
                    .files()
                    .iter()
                    .filter(|file| file.starts_with(LOGBOOK))
                    .all(|file| { file.extension().is_some_and(|extension| extension == "ron") }),
                "{context}"
            );
        }
    }
}

#[test]
fn power_that_goes_again_while_the_next_command_mends_costs_nothing_either() {
    let mut second = 0;
    for cut in 1..=operations() {
        let disk = fresh();
        disk.plan(Fault::Cut(cut));
        let (saved, _) = run(&disk);
        let mut after = disk.reboot(ways(cut)[0]);
        // The second cut moves through the recovery as the first moves through the work.
        second = second % 97 + 13;
        after.plan(Fault::Cut(second));
        let _ = step(&after, 5);
        let context = format!("cut at {cut}, then {second}\n{}", after.log().join("\n"));
        after = after.reboot(ways(cut / 3)[0]);
        let found = ids(&after);
        for id in &saved {
            assert!(found.contains(id), "{id} lost: {context}");
        }
        assert_batch_is_whole(&found, &context);
        for n in 0..STEPS {
            step(&after, n).unwrap_or_else(|error| panic!("{error}: {context}"));
        }
        let found = ids(&after);
        assert!(
            [1, 2, 3].iter().chain(&BATCH).all(|n| found.contains(&id(*n))),
            "{context}"
        );
    }
}

#[test]
fn a_read_that_fails_is_said_and_never_gives_less_quietly() {
    let disk = fresh();
    assert_eq!(run(&disk).1, None);
    let whole = ids(&disk);
    disk.plan(Fault::None);
    read(&disk);
    for fails in 1..=disk.steps() {
        disk.plan(Fault::Once(fails));
        let Ok((logbook, problems)) = Logbook::open(&machine(&disk), Path::new(LOGBOOK)) else {
            continue;
        };
        let found = logbook.logs.iter().flat_map(|log| &log.records).count();
        let is_said = problems.iter().any(|problem| problem.severity == Severity::Error);
        assert!(
            found == whole.len() || is_said,
            "read {fails}: {found} of {}",
            whole.len()
        );
    }
}

/// Each journal with its whole lines.
fn journals(disk: &ModelDisk) -> Vec<(PathBuf, Vec<u8>)> {
    let is_journal = |file: &PathBuf| file.starts_with(format!("{LOGBOOK}/athletes"));
    disk.files()
        .into_iter()
        .filter(is_journal)
        .map(|file| {
            let mut bytes = disk.bytes(&file).unwrap();
            bytes.truncate(
                bytes
                    .iter()
                    .rposition(|byte| *byte == b'\n')
                    .map_or(0, |at| at + 1),
            );
            (file, bytes)
        })
        .collect()
}

fn assert_grown(disk: &ModelDisk, before: &[(PathBuf, Vec<u8>)], context: &str) {
    for (file, bytes) in before {
        let now = disk.bytes(file).unwrap_or_default();
        assert!(
            now.starts_with(bytes),
            "{} did not only grow: {context}",
            file.display()
        );
    }
}

#[test]
fn an_operation_that_fails_once_is_said_and_the_same_command_works_later() {
    for fails in 1..=operations() {
        let disk = fresh();
        disk.plan(Fault::Once(fails));
        let (mut saved, failed) = run(&disk);
        let context = format!("fails at {fails}\n{}", disk.log().join("\n"));
        let found = ids(&disk);
        assert_batch_is_whole(&found, &context);
        for id in &saved {
            assert!(found.contains(id), "{id} lost: {context}");
        }
        for n in failed.unwrap_or(STEPS)..STEPS {
            saved.extend(step(&disk, n).unwrap_or_else(|error| panic!("{error}: {context}")));
        }
        let after = disk.reboot(Unflushed::Lost);
        let found = ids(&after);
        for wanted in [1, 2, 3].iter().chain(&BATCH) {
            assert!(found.contains(&id(*wanted)), "{wanted} missing: {context}");
        }
    }
}

#[test]
fn on_a_full_disk_nothing_is_called_saved_that_is_not_and_space_makes_it_work_again() {
    for fails in 1..=operations() {
        let disk = fresh();
        disk.plan(Fault::From(fails));
        let (saved, failed) = run(&disk);
        let context = format!("full from {fails}\n{}", disk.log().join("\n"));
        disk.plan(Fault::None);
        let after = disk.reboot(Unflushed::Lost);
        let found = ids(&after);
        for id in &saved {
            assert!(found.contains(id), "{id} lost: {context}");
        }
        assert_batch_is_whole(&found, &context);
        for n in failed.unwrap_or(STEPS)..STEPS {
            step(&after, n).unwrap_or_else(|error| panic!("{error}: {context}"));
        }
        let found = ids(&after);
        for wanted in [1, 2, 3].iter().chain(&BATCH) {
            assert!(found.contains(&id(*wanted)), "{wanted} missing: {context}");
        }
    }
}

#[test]
fn a_failed_flush_is_never_believed_on_retry() {
    // One window that stays open, as the command line never does: it writes again to a fresh journal.
    let disk = fresh();
    let mut writer = lock(&disk).unwrap();
    writer.append(&name("ana"), &[pull_ups(1, 1, 5)]).unwrap();
    let lost = pull_ups(2, 1, 5);
    disk.plan(Fault::NextFlush);
    let error = writer
        .append(&name("ana"), std::slice::from_ref(&lost))
        .unwrap_err();
    assert!(error.to_string().contains("not saved"), "{error}");
    assert!(
        !ids(&disk).contains(&lost.id),
        "what is not saved is not shown as saved"
    );
    assert_eq!(
        writer
            .append(&name("ana"), std::slice::from_ref(&lost))
            .unwrap()
            .added,
        [lost.id]
    );
    writer.append(&name("ana"), &[pull_ups(3, 1, 5)]).unwrap();
    let fresh_journal = PathBuf::from(format!("{LOGBOOK}/athletes/ana/journal-mill.2.ron"));
    assert!(disk.files().contains(&fresh_journal), "{:?}", disk.files());
    let after = ids(&disk.reboot(Unflushed::Lost));
    assert!([1, 2, 3].iter().all(|n| after.contains(&id(*n))), "{after:?}");
    assert_eq!(
        disk.files()
            .iter()
            .filter(|file| file.starts_with(LOGBOOK))
            .count(),
        2
    );
}

#[test]
fn flushes_that_fail_twice_make_the_window_read_only() {
    let disk = fresh();
    let mut writer = lock(&disk).unwrap();
    writer.append(&name("ana"), &[pull_ups(1, 1, 5)]).unwrap();
    for _ in 0..2 {
        disk.plan(Fault::NextFlush);
        writer.append(&name("ana"), &[pull_ups(2, 1, 5)]).unwrap_err();
    }
    let error = writer.append(&name("ana"), &[pull_ups(5, 1, 5)]).unwrap_err();
    assert!(matches!(error, Trouble::ReadOnly { .. }), "{error}");
}

#[test]
fn a_journal_torn_at_any_byte_keeps_its_whole_lines_and_its_torn_bytes() {
    let disk = fresh();
    let mut writer = lock(&disk).unwrap();
    writer
        .append(&name("ana"), &[pull_ups(1, 1, 5), pull_ups(2, 1, 5)])
        .unwrap();
    drop(writer);
    let journal = PathBuf::from(format!("{LOGBOOK}/athletes/ana/journal-mill.ron"));
    let whole = disk.bytes(&journal).unwrap();
    for cut in 0..whole.len() {
        disk.put(&journal, &whole[..cut]);
        let torn = disk.reboot(Unflushed::Lost);
        let (before, problems) = read(&torn);
        let is_torn = cut > 0 && whole[cut - 1] != b'\n' && whole[cut] != b'\n';
        assert_eq!(problems.len(), usize::from(is_torn), "{cut}: {problems:?}");
        lock(&torn)
            .unwrap()
            .append(&name("ana"), &[note(9, "next day")])
            .unwrap();
        let (after, problems) = read(&torn);
        assert!(
            problems
                .iter()
                .all(|problem| problem.severity == Severity::Warning),
            "{cut}: {problems:?}"
        );
        for record in &before {
            assert!(after.contains(record), "{cut}");
        }
        assert!(
            after
                .iter()
                .any(|record| matches!(record.what, Fact::Note { .. }))
        );
        let aside = torn
            .files()
            .into_iter()
            .find(|file| file.to_string_lossy().contains(".torn-"));
        assert_eq!(aside.is_some(), is_torn, "{cut}");
        if let Some(aside) = aside {
            let start = whole[..cut]
                .iter()
                .rposition(|byte| *byte == b'\n')
                .map_or(0, |at| at + 1);
            assert_eq!(torn.bytes(&aside).unwrap(), &whole[start..cut]);
        }
    }
}

#[test]
fn another_machines_torn_journal_is_never_written() {
    let disk = fresh();
    lock(&disk)
        .unwrap()
        .append(&name("ana"), &[pull_ups(1, 1, 5)])
        .unwrap();
    let root = PathBuf::from(LOGBOOK);
    let desk = || {
        Writer::lock(&machine(&disk), &root, "desk".to_owned(), noon(), Duration::ZERO)
            .unwrap()
            .0
    };
    desk().append(&name("ana"), &[pull_ups(2, 1, 5)]).unwrap();
    let journal = PathBuf::from(format!("{LOGBOOK}/athletes/ana/journal-mill.ron"));
    let torn = disk.bytes(&journal).unwrap();
    let torn = &torn[..torn.len() - 20];
    disk.put(&journal, torn);
    desk().append(&name("ana"), &[pull_ups(3, 1, 5)]).unwrap();
    assert_eq!(disk.bytes(&journal).unwrap(), torn);
    assert_eq!(read(&disk).1.len(), 1);
}
