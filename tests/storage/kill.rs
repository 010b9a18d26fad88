//! With real processes: killed at any moment nothing called saved is lost and no lock is left; files are their owner's alone.
//!
//! The test starts itself as the process that writes; `RUNGWRIGHT_TEST_WRITER` tells it so.
#![cfg(unix)]
use std::io::{BufRead as _, BufReader, Write as _};
use std::os::unix::fs::PermissionsExt as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Duration;

use crate::help::*;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Logbook, Machine, Places, Writer};

const FOLDER: &str = "RUNGWRIGHT_TEST_WRITER";

fn machine(folder: &Path) -> Machine {
    Machine::with(RealDisk, Places::inside(&folder.join("home")))
}

fn logbook(folder: &Path) -> PathBuf {
    folder.join("logbook")
}

/// Writes sets one by one and batches now and then, until it is killed; each line on stdout is saved.
#[test]
fn a_process_that_writes_until_it_is_killed() {
    let Some(folder) = std::env::var_os(FOLDER).map(PathBuf::from) else {
        return;
    };
    let from: u128 = std::env::var("RUNGWRIGHT_TEST_FROM").unwrap().parse().unwrap();
    let mut stdout = std::io::stdout().lock();
    for n in (from..from + 2_000).step_by(10) {
        let lock = Writer::lock(
            &machine(&folder),
            &logbook(&folder),
            "mill".to_owned(),
            noon(),
            Duration::from_secs(10),
        );
        let mut writer = lock.unwrap().0;
        let one = writer.append(&name("ana"), &[pull_ups(n, 18, 5)]).unwrap().added;
        writeln!(stdout, "saved {}", one[0]).unwrap();
        let sets = |from: u128| vec![pull_ups(from, 18, 5), pull_ups(from + 1, 18, 5)];
        let batch = vec![(name("Bea"), sets(n + 1)), (name("Cid"), sets(n + 3))];
        for id in writer.commit(batch).unwrap().added {
            writeln!(stdout, "saved {id}").unwrap();
        }
        stdout.flush().unwrap();
    }
}

/// Kills by default a few times, 1,000 times with RUNGWRIGHT_LONG_TESTS.
#[test]
fn whatever_was_called_saved_is_there_after_a_kill_and_no_lock_is_left() {
    let rounds = if std::env::var_os("RUNGWRIGHT_LONG_TESTS").is_some() {
        1_000
    } else {
        12
    };
    let folder = tempfile::tempdir().unwrap();
    let mut saved = Vec::new();
    for round in 0..rounds {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args([
                "--exact",
                "kill::a_process_that_writes_until_it_is_killed",
                "--nocapture",
            ])
            .env(FOLDER, folder.path())
            .env("RUNGWRIGHT_TEST_FROM", (round * 10_000 + 1).to_string())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        // Another moment each round: after some lines, and some microseconds more.
        let wanted = 1 + round % 7;
        let mut seen = 0;
        while seen < wanted {
            let line = lines.next().unwrap().unwrap();
            seen += u128::from(line.contains("saved "));
            saved.extend(id_in(&line));
        }
        std::thread::sleep(Duration::from_micros(u64::try_from(round * 337 % 3_000).unwrap()));
        child.kill().unwrap();
        child.wait().unwrap();
        for line in lines.map_while(Result::ok) {
            saved.extend(id_in(&line));
        }
        let (after, _) = Logbook::open(&machine(folder.path()), &logbook(folder.path())).unwrap();
        let there: Vec<String> = after
            .logs
            .iter()
            .flat_map(|log| &log.records)
            .map(|record| record.id.to_string())
            .collect();
        for id in &saved {
            assert!(there.contains(id), "round {round}: {id} was called saved");
        }
        for log in after.logs.iter().filter(|log| log.name != "ana") {
            assert_eq!(log.records.len() % 2, 1, "{}: a batch was seen in part", log.name);
        }
        let lock = Writer::lock(
            &machine(folder.path()),
            &logbook(folder.path()),
            "mill".to_owned(),
            noon(),
            Duration::ZERO,
        );
        assert!(lock.is_ok(), "{:?}", lock.err());
    }
}

/// The id on a whole line that says "saved".
fn id_in(line: &str) -> Option<String> {
    let id = line.split("saved ").nth(1)?;
    (id.len() == 26).then(|| id.to_owned())
}

#[test]
fn files_are_their_owners_alone_under_any_umask() {
    for umask in ["000", "022", "077"] {
        let folder = tempfile::tempdir().unwrap();
        let status = Command::new("sh")
            .args([
                "-c",
                &format!("umask {umask}; exec \"$0\" --exact kill::a_process_that_writes_once"),
            ])
            .arg(std::env::current_exe().unwrap())
            .env("RUNGWRIGHT_TEST_ONCE", folder.path())
            .stdout(Stdio::null())
            .status()
            .unwrap();
        assert!(status.success());
        let mut seen = 0;
        check_modes(&folder.path().join("logbook"), &mut seen);
        check_modes(&folder.path().join("home"), &mut seen);
        assert!(seen > 8, "{seen} files and folders");
    }
}

#[test]
fn a_process_that_writes_once() {
    let Some(folder) = std::env::var_os("RUNGWRIGHT_TEST_ONCE").map(PathBuf::from) else {
        return;
    };
    let machine = machine(&folder);
    let lock = Writer::lock(
        &machine,
        &logbook(&folder),
        "mill".to_owned(),
        noon(),
        Duration::ZERO,
    );
    let mut writer = lock.unwrap().0;
    writer.ensure_settings(rungwright::units::Unit::Kg).unwrap();
    writer
        .commit(vec![(name("Ana"), vec![pull_ups(1, 18, 5), pull_ups(2, 18, 5)])])
        .unwrap();
    drop(writer);
    let renamed = name("Nobody");
    assert!(Logbook::open_athlete(&machine, &logbook(&folder), &renamed).is_err());
    rungwright::logbook::device::of_machine(&machine, 7).unwrap();
}

fn check_modes(path: &Path, seen: &mut usize) {
    let found = std::fs::symlink_metadata(path).unwrap();
    let wanted = if found.is_dir() { 0o700 } else { 0o600 };
    assert_eq!(found.permissions().mode() & 0o777, wanted, "{}", path.display());
    *seen += 1;
    if found.is_dir() {
        for entry in std::fs::read_dir(path).unwrap() {
            check_modes(&entry.unwrap().path(), seen);
        }
    }
}
