//! Every single operation fails, once or for good: nothing is called saved that is not, and nothing is missing quietly.
use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::help::model::{Fault, ModelDisk, Unflushed};
use crate::help::steps::*;
use crate::help::*;
use rungwright::logbook::record::Fact;
use rungwright::logbook::{Logbook, Trouble, Writer, Written};
use rungwright::problem::Severity;

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
fn somebody_whose_first_set_could_not_be_saved_is_nobody_yet_and_gets_their_own_folder_later() {
    let people = |disk: &ModelDisk| -> Vec<(String, String)> {
        match Logbook::open(&machine(disk), Path::new(LOGBOOK)) {
            Ok((logbook, _)) => {
                let of = |log: rungwright::logbook::Log| (log.name, log.folder);
                logbook.logs.into_iter().map(of).collect()
            }
            Err(Trouble::Missing { .. }) => Vec::new(),
            Err(other) => panic!("{other}"),
        }
    };
    let bea = name("Bea");
    let first_set = |disk: &ModelDisk| {
        let mut writer = lock(disk)?;
        let at = Written::day(pull_ups(1, 1, 5).at.date());
        writer.add(&bea, &at, |_| vec![pull_ups(1, 1, 5)])
    };
    let just_bea = [("Bea".to_owned(), bea.folder())];
    let whole = fresh();
    first_set(&whole).unwrap();
    for plan in [Fault::Once as fn(usize) -> Fault, Fault::From] {
        for fails in 1..=whole.steps() {
            let disk = fresh();
            disk.plan(plan(fails));
            let saved = first_set(&disk).is_ok();
            disk.plan(Fault::None);
            let context = format!("{:?}\n{}", plan(fails), disk.log().join("\n"));
            // Where a flush and the taking back both failed, the whole record may be there, and is hers.
            let there = people(&disk);
            assert!(there.is_empty() || there == just_bea, "{there:?}: {context}");
            assert!(!saved || there == just_bea, "{there:?}: {context}");
            if !saved {
                first_set(&disk).unwrap_or_else(|error| panic!("{error}: {context}"));
            }
            assert_eq!(people(&disk), just_bea, "{context}");
        }
    }
}

#[test]
fn where_nothing_can_be_written_the_file_that_was_to_be_written_is_told() {
    let disk = fresh();
    lock(&disk)
        .unwrap()
        .append(&name("ana"), &[pull_ups(1, 1, 5)])
        .unwrap();
    let write = |n| lock(&disk)?.append(&name("ana"), &[pull_ups(n, 1, 5)]);
    disk.plan(Fault::None);
    let before = disk.log().len();
    write(2).unwrap();
    let log = disk.log();
    let removal = log.iter().skip(before).find(|line| line.contains("remove "));
    let removal = removal
        .and_then(|line| line.split(' ').next()?.parse().ok())
        .unwrap();
    disk.plan(Fault::From(removal));
    let error = write(3).unwrap_err().to_string();
    assert!(
        error.contains("athletes/ana/journal-mill.ron: not saved"),
        "{error}"
    );
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
