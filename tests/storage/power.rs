//! What was called saved survives a power cut at any single operation, and a batch is seen whole or not at all.
use std::path::{Path, PathBuf};

use crate::help::model::{Fault, ModelDisk, Unflushed};
use crate::help::steps::*;
use crate::help::*;
use rungwright::logbook::record::Id;
use rungwright::logbook::whole_file::Replaced;
use rungwright::logbook::{Logbook, WholeFile};
use rungwright::problem::Severity;

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

/// A disk with a batch half way: saved by its pending file, not yet in every journal.
fn half_way() -> ModelDisk {
    for fails in 1.. {
        let disk = fresh();
        lock(&disk)
            .unwrap()
            .append(&name("ana"), &[pull_ups(1, 1, 5)])
            .unwrap();
        let mut writer = lock(&disk).unwrap();
        disk.plan(Fault::From(fails));
        let saved = writer.commit(batch());
        disk.plan(Fault::None);
        if saved.is_ok_and(|saved| !saved.notes.is_empty()) {
            return disk;
        }
    }
    unreachable!("some operation comes after the commit point")
}

#[test]
fn a_reader_meanwhile_sees_a_batch_whole_or_not_at_all() {
    let before: [fn() -> ModelDisk; 2] = [half_way, || {
        let disk = fresh();
        lock(&disk)
            .unwrap()
            .append(&name("ana"), &[pull_ups(1, 1, 5)])
            .unwrap();
        disk
    }];
    for before in before {
        for at in 1.. {
            let disk = before();
            let other = disk.clone();
            disk.meanwhile(at, move || {
                // Rolls forward what was half way; else it is the whole batch.
                lock(&other).unwrap().commit(batch()).unwrap();
            });
            let (logbook, problems) = Logbook::open(&machine(&disk), Path::new(LOGBOOK)).unwrap();
            let found: Vec<Id> = logbook
                .logs
                .iter()
                .flat_map(|log| &log.records)
                .map(|record| record.id)
                .collect();
            assert_batch_is_whole(&found, &format!("at {at}"));
            assert!(found.contains(&id(1)));
            assert_eq!(problems, [], "at {at}");
            if disk.steps() < at {
                break;
            }
        }
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
fn wherever_replacing_and_removing_a_ladder_is_cut_or_fails_each_of_its_texts_lies_somewhere() {
    let ladder = WholeFile::Ladder("dip".to_owned());
    let (one, two) = ("(one)", "(two)");
    for at in 1.. {
        for fault in [Fault::Cut(at), Fault::Once(at)] {
            let disk = fresh();
            lock(&disk).unwrap().write_whole(&ladder, one).unwrap();
            disk.plan(fault);
            let replaced =
                lock(&disk).and_then(|mut writer| writer.write_seen(&ladder, Some(one.as_bytes()), two));
            let is_replaced = replaced.is_ok_and(|came| came == Replaced::Done);
            if is_replaced {
                let _ = lock(&disk).and_then(|mut writer| writer.remove_seen(&ladder, two.as_bytes()));
            }
            for way in ways(at) {
                let after = disk.reboot(way);
                let lies = |text: &str| {
                    let mut files = after.files().into_iter();
                    files.any(|file| after.bytes(&file).is_some_and(|bytes| bytes == text.as_bytes()))
                };
                assert!(lies(one), "{fault:?}, {way:?}: the text before is gone");
                assert!(
                    lies(two) || !is_replaced,
                    "{fault:?}, {way:?}: what was saved is gone"
                );
            }
            if disk.steps() < at {
                return;
            }
        }
    }
}
