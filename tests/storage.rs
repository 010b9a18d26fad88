//! Promises of the logbook on a real disk: what is saved is there, what is read is untouched.

mod storage_help;

use std::fs;
use std::time::Duration;

use rungwright::logbook::record::Fact;
use rungwright::logbook::{Conflict, Logbook, Settings, Trouble, WholeFile, Writer, device, line};
use rungwright::problem::Severity;
use rungwright::units::Unit;
use storage_help::*;

#[test]
fn a_logged_set_is_there_the_next_time() {
    let gym = Gym::new();
    let saved = gym
        .writer("mill")
        .append(&name("Ana"), &[pull_ups(7, 18, 5)])
        .unwrap();
    assert_eq!(saved.added, [id(7)]);
    assert_eq!(saved.made, [name("Ana")]);
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert_eq!(problems, []);
    assert_eq!(logbook.logs.len(), 1);
    assert_eq!(logbook.logs[0].name, "Ana");
    assert!(logbook.logs[0].records.contains(&pull_ups(7, 18, 5)));
}

#[test]
fn a_batch_over_many_athletes_arrives_and_twice_adds_nothing() {
    let gym = Gym::new();
    let batch = || {
        (0..5u128)
            .map(|n| {
                (
                    name(&format!("Athlete {n}")),
                    vec![pull_ups(n * 10, 1, 5), pull_ups(n * 10 + 1, 1, 5)],
                )
            })
            .collect::<Vec<_>>()
    };
    assert_eq!(gym.writer("mill").commit(batch()).unwrap().added.len(), 10);
    let before = tree(&gym.logbook());
    let again = gym.writer("mill").commit(batch()).unwrap();
    assert_eq!((again.added.len(), again.already_there.len()), (0, 10));
    assert_eq!(tree(&gym.logbook()), before);
    assert!(before.keys().all(|file| file.ends_with(".ron")));
}

#[test]
fn an_unknown_athlete_is_said_with_the_nearest_names() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("Ana"), &[note(1, "hello")])
        .unwrap();
    let error = Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("Anna")).unwrap_err();
    assert_eq!(
        error.to_string(),
        "no athlete is called \"Anna\"; the nearest are \"Ana\""
    );
    let (logbook, _) = Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("Ana")).unwrap();
    assert_eq!(logbook.logs.len(), 1);
}

#[test]
fn a_folder_with_other_things_in_it_is_not_written_to() {
    let gym = Gym::new();
    std::fs::create_dir(gym.logbook()).unwrap();
    std::fs::write(gym.logbook().join("thesis.txt"), "important").unwrap();
    assert!(matches!(gym.try_writer("mill"), Err(Trouble::NotALogbook { .. })));
    assert_eq!(tree(&gym.logbook()).len(), 1);
}

#[test]
fn without_working_locks_nothing_is_written_and_that_is_said() {
    let gym = Gym::new();
    fs::create_dir_all(gym.machine.places().state.parent().unwrap()).unwrap();
    fs::write(&gym.machine.places().state, "no folder").unwrap();
    let error = gym.try_writer("mill").unwrap_err();
    assert!(
        error
            .to_string()
            .contains("no lock can be had here, so nothing was written"),
        "{error}"
    );
    assert!(!gym.logbook().exists());
}

#[test]
fn eight_writers_at_once_all_come_through() {
    let gym = Gym::new();
    std::thread::scope(|scope| {
        for writer in 0..8u128 {
            let gym = &gym;
            scope.spawn(move || {
                for n in 0..5 {
                    gym.writer("mill")
                        .append(&name("ana"), &[pull_ups(10 * writer + n + 1, 18, 5)])
                        .unwrap();
                }
            });
        }
    });
    let (logbook, problems) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert_eq!(problems, []);
    assert_eq!(logbook.logs[0].records.len(), 40 + 1);
}

#[test]
fn a_second_writer_hears_busy_after_its_wait_and_comes_through_when_the_first_is_gone() {
    let gym = Gym::new();
    let first = gym.writer("mill");
    let second = Writer::lock(
        &gym.machine,
        &gym.logbook(),
        "desk".to_owned(),
        noon(),
        Duration::from_millis(50),
    );
    assert!(second.unwrap_err().to_string().contains("busy"));
    drop(first);
    gym.writer("desk");
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
fn an_id_that_is_there_with_other_values_changes_nothing_and_is_named() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let before = tree(&gym.logbook());
    let saved = gym
        .writer("mill")
        .commit(vec![(name("ana"), vec![pull_ups(1, 18, 6)])])
        .unwrap();
    assert_eq!(
        saved.conflicting,
        [Conflict {
            athlete: name("ana"),
            record: pull_ups(1, 18, 6)
        }]
    );
    assert_eq!(tree(&gym.logbook()), before);
}

#[test]
fn a_retracted_set_stays_retracted_when_its_file_is_imported_again() {
    let gym = Gym::new();
    let file = || vec![(name("ana"), vec![pull_ups(1, 18, 5), pull_ups(2, 18, 5)])];
    gym.writer("mill").commit(file()).unwrap();
    let gone = fact(
        9,
        1,
        "mill",
        18,
        Fact::Retract {
            target: id(1),
            why: None,
        },
    );
    gym.writer("mill").append(&name("ana"), &[gone]).unwrap();
    let again = gym.writer("desk").commit(file()).unwrap();
    assert_eq!((again.added.len(), again.already_there.len()), (0, 2));
    let (logbook, _) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    assert!(!logbook.logs[0].records.contains(&pull_ups(1, 18, 5)));
    assert_eq!(logbook.histories[0].retracted.len(), 1);
}

#[test]
fn journals_only_grow_whatever_is_written() {
    let gym = Gym::new();
    let mut before: std::collections::BTreeMap<String, Vec<u8>> = std::collections::BTreeMap::new();
    for n in 1..20u128 {
        let record = match n % 4 {
            0 => fact(
                100 + n,
                1,
                "mill",
                18,
                Fact::Retract {
                    target: id(n - 1),
                    why: None,
                },
            ),
            1 => fact(
                100 + n,
                1,
                "mill",
                18,
                Fact::Restore {
                    target: id(n.max(2) - 1),
                },
            ),
            _ => pull_ups(n, 18, 5),
        };
        gym.writer("mill").append(&name("ana"), &[record]).unwrap();
        let now = tree(&gym.logbook());
        for (file, bytes) in &before {
            assert!(now[file].starts_with(bytes), "{file}");
        }
        before = now;
    }
}

#[test]
fn a_renamed_athlete_is_found_by_the_new_name_and_the_old_one_is_free() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let named = Fact::Profile {
        name: Some("Anna".to_owned()),
        born: None,
        sex: None,
        height_cm: None,
    };
    gym.writer("mill")
        .append(&name("ana"), &[fact(2, 0, "mill", 19, named)])
        .unwrap();
    for _ in 0..2 {
        // The second time by the index in the cache.
        let (logbook, _) = Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("Anna")).unwrap();
        assert_eq!(logbook.logs[0].folder, "ana");
    }
    assert!(Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("ana")).is_err());
    gym.writer("mill")
        .append(&name("Anna"), &[pull_ups(3, 20, 5)])
        .unwrap();
    let made = gym
        .writer("mill")
        .append(&name("ana"), &[pull_ups(4, 20, 5)])
        .unwrap();
    assert_eq!(made.made, [name("ana")]);
    let (logbook, _) = Logbook::open(&gym.machine, &gym.logbook()).unwrap();
    let folders: Vec<&str> = logbook.logs.iter().map(|log| log.folder.as_str()).collect();
    assert_eq!(folders[0], "ana");
    assert!(
        folders[1].starts_with("ana-") && folders[1].len() == 12,
        "{folders:?}"
    );
}

#[test]
fn a_lost_or_damaged_cache_changes_no_answer_and_holds_no_name() {
    let gym = Gym::new();
    gym.writer("mill")
        .append(&name("ana"), &[pull_ups(1, 18, 5)])
        .unwrap();
    let named = Fact::Profile {
        name: Some("Anna".to_owned()),
        born: None,
        sex: None,
        height_cm: None,
    };
    gym.writer("mill")
        .append(&name("ana"), &[fact(2, 0, "mill", 19, named)])
        .unwrap();
    let find = || {
        Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("Anna"))
            .unwrap()
            .0
            .logs[0]
            .records
            .len()
    };
    let expected = find();
    let cache = gym.machine.places().cache.clone();
    let index = fs::read_dir(&cache).unwrap().next().unwrap().unwrap().path();
    let text = fs::read_to_string(&index).unwrap();
    assert!(!text.to_lowercase().contains("ann") && !text.contains("ana"));
    for damage in ["", "rubbish", &text[..text.len() / 2], &text.replace('0', "1")] {
        fs::write(&index, damage).unwrap();
        assert_eq!(find(), expected);
    }
    fs::remove_dir_all(&cache).unwrap();
    fs::write(&cache, "a file where the cache belongs").unwrap();
    assert_eq!(find(), expected);
}

#[test]
fn an_athlete_without_a_name_goes_by_the_folders_and_loses_no_record() {
    let gym = Gym::new();
    let journal = gym.journal("by-hand", "mill");
    fs::create_dir_all(journal.parent().unwrap()).unwrap();
    fs::write(&journal, line::write(&pull_ups(1, 18, 5)) + "\n").unwrap();
    let (logbook, problems) = Logbook::open_athlete(&gym.machine, &gym.logbook(), &name("by-hand")).unwrap();
    assert_eq!(problems, []);
    assert_eq!(
        (logbook.logs[0].name.as_str(), logbook.logs[0].records.len()),
        ("by-hand", 1)
    );
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

#[test]
fn a_device_is_random_made_once_and_named_only_by_sound_names() {
    let gym = Gym::new();
    let made = device::of_machine(&gym.machine, 0x0123_4567_89ab_cdef).unwrap();
    assert_eq!(made.len(), 8);
    assert_eq!(
        device::of_machine(&gym.machine, 0xffff_ffff_ffff_ffff).unwrap(),
        made
    );
    assert!(device::named(&made).is_ok());
    for wrong in ["", "Mill", "mi ll", "../mill", "m.2", &"m".repeat(33)] {
        assert!(device::named(wrong).is_err(), "{wrong:?}");
    }
}
