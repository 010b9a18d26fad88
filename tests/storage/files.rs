//! Which files are read, which are left alone, and what is said of the rest; no name or link leads out of the logbook.

use std::fs;
use std::time::Duration;

use crate::help::*;
use rungwright::logbook::{Logbook, Settings, Trouble, WholeFile, line};
use rungwright::problem::Severity;
use rungwright::units::Unit;

#[test]
fn a_folder_with_other_things_in_it_is_not_written_to() {
    let gym = Gym::new();
    std::fs::create_dir(gym.logbook()).unwrap();
    std::fs::write(gym.logbook().join("thesis.txt"), "important").unwrap();
    assert!(matches!(gym.try_writer("mill"), Err(Trouble::NotALogbook { .. })));
    assert_eq!(tree(&gym.logbook()).len(), 1);
}

#[test]
fn conflict_copies_of_sync_tools_are_read_and_double_nothing() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let journal = gym.journal("ana", "mill");
    let old = fs::read(&journal).unwrap();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(2, 18, 5)])
        .unwrap();
    for copy in [
        "journal-mill.sync-conflict-20260318-120000-ABCDEFG.ron",
        "journal-mill (conflicted copy 2026-03-18).ron",
        "journal-mill (1).ron",
    ] {
        fs::write(journal.with_file_name(copy), &old).unwrap();
    }
    // What is hidden, half-copied or set aside is not.
    for other in [
        ".journal-mill.ron",
        "~journal-mill.ron",
        "journal-mill.ron~",
        "journal-mill.torn-x-1.ron",
    ] {
        let extra = line::write(&pull_ups(99, 18, 5)) + "\n";
        fs::write(journal.with_file_name(other), extra).unwrap();
    }
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    let ids: Vec<_> = logbook.logs[0].records.iter().map(|record| record.id).collect();
    assert_eq!(ids.len(), 3);
    assert!(!ids.contains(&id(99)));
    assert!(
        problems
            .iter()
            .all(|problem| problem.severity == Severity::Warning),
        "{problems:?}"
    );
}

#[test]
fn two_machines_that_make_the_same_athlete_make_files_that_join_without_conflict() {
    let (mill, desk) = (Gym::new(), Gym::new());
    for (gym, device) in [(&mill, "mill"), (&desk, "desk")] {
        let mut writer = gym.writer(device);
        writer.ensure_settings(Unit::Kg).unwrap();
        let mut set = pull_ups(1, 18, 5);
        set.dev = device.to_owned();
        writer
            .commit(vec![(name("Zoë Müller"), vec![set, pull_ups(2, 18, 4)])])
            .unwrap();
    }
    for (file, bytes) in tree(&desk.logbook()) {
        let there = mill.logbook().join(&file);
        assert!(
            !there.exists() || fs::read(&there).unwrap() == bytes,
            "{file} differs"
        );
        fs::write(there, bytes).unwrap();
    }
    let (logbook, problems) = Logbook::open(&mill.machine, &mill.logbook()).unwrap();
    assert_eq!(problems, []);
    assert_eq!((logbook.logs.len(), logbook.logs[0].records.len()), (1, 3));
}

#[test]
fn settings_of_a_newer_format_are_read_and_refused_for_writing() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    fs::write(
        gym.logbook().join("logbook.ron"),
        "(format: 2, unit: lb, moons: 3)",
    )
    .unwrap();
    let before = tree(&gym.logbook());
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert_eq!(
        (logbook.logs[0].records.len(), logbook.settings.unit),
        (2, Unit::Lb)
    );
    assert!(
        problems
            .iter()
            .all(|problem| problem.severity == Severity::Damage)
    );
    assert!(matches!(
        gym.try_writer("mill"),
        Err(Trouble::NewerFormat { format: 2, .. })
    ));
    fs::write(gym.logbook().join("logbook.ron"), "(format: 1, unit").unwrap();
    assert!(matches!(
        gym.try_writer("mill"),
        Err(Trouble::UnreadSettings { .. })
    ));
    assert_eq!(tree(&gym.logbook()).len(), before.len());
}

#[test]
fn a_replaced_settings_file_leaves_its_earlier_version_in_the_state_folder() {
    let gym = Gym::new();
    let mut writer = gym.writer("mill");
    assert!(writer.ensure_settings(Unit::Lb).unwrap());
    assert!(!writer.ensure_settings(Unit::Kg).unwrap());
    let old = fs::read(gym.logbook().join("logbook.ron")).unwrap();
    writer
        .write_settings(&Settings {
            name: Some("Bar club".to_owned()),
            ..Settings::fresh(Unit::Lb)
        })
        .unwrap();
    let kept = tree(&gym.machine.places().state);
    assert!(
        kept.iter()
            .any(|(file, bytes)| file.starts_with("earlier") && *bytes == old),
        "{:?}",
        kept.keys()
    );
}

#[test]
fn one_journal_that_cannot_be_read_costs_no_other_and_is_named() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let home = gym.journal("ana", "mill").parent().unwrap().to_owned();
    fs::create_dir(home.join("journal-folder.ron")).unwrap();
    fs::write(
        home.join("journal-binary.ron"),
        [0u8, 159, 146, 150, 10, 255, 254, 0],
    )
    .unwrap();
    #[cfg(unix)]
    std::os::unix::fs::symlink("/etc/hostname", home.join("journal-link.ron")).unwrap();
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert_eq!(logbook.logs[0].records.len(), 2);
    let named = |file: &str| {
        problems
            .iter()
            .any(|problem| problem.place.file.ends_with(file) && problem.severity == Severity::Error)
    };
    assert!(
        named("journal-folder.ron") && named("journal-binary.ron"),
        "{problems:?}"
    );
    #[cfg(unix)]
    assert!(named("journal-link.ron"), "{problems:?}");
}

#[cfg(unix)]
#[test]
fn no_link_leads_a_write_out_of_the_logbook() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let outside = gym.folder.path().join("outside");
    fs::create_dir(&outside).unwrap();
    fs::write(outside.join("file"), "mine").unwrap();
    std::os::unix::fs::symlink(&outside, gym.logbook().join("athletes/bea")).unwrap();
    std::os::unix::fs::symlink(outside.join("file"), gym.journal("ana", "desk")).unwrap();
    // The name's folder is taken by something that is no athlete's: another one is made.
    gym.writer("mill")
        .append(&name("bea"), &[pull_ups(2, 18, 5)])
        .unwrap();
    assert!(
        gym.writer("desk")
            .append(&name("ana"), &[pull_ups(3, 18, 5)])
            .is_err()
    );
    let ladder = WholeFile::Ladder("../outside/dip".to_owned());
    assert!(gym.writer("mill").write_whole(&ladder, "()").is_err());
    assert_eq!(tree(&outside).len(), 1);
    assert_eq!(fs::read(outside.join("file")).unwrap(), b"mine");
    fs::rename(gym.logbook().join("athletes"), gym.folder.path().join("moved")).unwrap();
    std::os::unix::fs::symlink(&outside, gym.logbook().join("athletes")).unwrap();
    assert!(
        gym.writer("mill")
            .append(&name("ana"), &[pull_ups(4, 18, 5)])
            .is_err()
    );
    assert_eq!(tree(&outside).len(), 1);
}

#[cfg(unix)]
#[test]
fn reading_leaves_every_byte_time_and_mode_as_it_was() {
    use std::os::unix::fs::MetadataExt;
    let gym = Gym::new();
    gym.writer("mill")
        .commit(vec![(name("ana"), vec![pull_ups(1, 18, 5), pull_ups(2, 18, 5)])])
        .unwrap();
    let files: Vec<_> = tree(&gym.logbook())
        .into_keys()
        .map(|file| gym.logbook().join(file))
        .collect();
    let marks = || -> Vec<_> {
        let of = |path: &std::path::PathBuf| {
            let found = fs::symlink_metadata(path).unwrap();
            (
                found.atime(),
                found.atime_nsec(),
                found.mtime_nsec(),
                found.ctime_nsec(),
                found.mode(),
            )
        };
        files.iter().map(of).collect()
    };
    let before = marks();
    std::thread::sleep(Duration::from_millis(20));
    Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("ana")).unwrap();
    assert_eq!(marks(), before);
}

#[test]
fn a_missing_logbook_is_said_and_an_empty_folder_is_an_empty_logbook() {
    let gym = Gym::new();
    assert!(matches!(
        Logbook::open(&gym.machine, &gym.logbook()),
        Err(Trouble::Missing { .. })
    ));
    fs::create_dir(gym.logbook()).unwrap();
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert_eq!(
        (logbook.logs.len(), problems.len(), logbook.has_settings),
        (0, 0, false)
    );
    fs::write(gym.folder.path().join("file"), "").unwrap();
    let file = gym.folder.path().join("file");
    assert!(matches!(
        Logbook::open(&gym.machine, &file),
        Err(Trouble::NoFolder { .. })
    ));
}
