//! Names and folders, the index in the cache, the device: the same answers without any of them.

use std::fs;

use crate::help::*;
use rungwright::logbook::record::Fact;
use rungwright::logbook::{Logbook, device, line};

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
