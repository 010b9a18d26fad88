//! Promises of the logbook on a real disk: what is saved is there, what is read is untouched.

mod storage_help;

use rungwright::logbook::{Logbook, Trouble};
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
