//! On a real disk: what is saved is there, once, whoever else writes; a batch arrives whole; journals only grow.

use std::fs;
use std::time::Duration;

use crate::help::*;
use rungwright::logbook::record::Fact;
use rungwright::logbook::{Conflict, Logbook, Writer};

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
            whose: None,
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
