//! A class on the real logbook: results saved and taken back as one, kept while they are typed, people renamed and archived.

use std::path::Path;

use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::gym::GymDeed;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::*;

use crate::shelf::{again, machine, shelf_named, started, wait};

fn done(shelf: &mut Shelf, deed: GymDeed) {
    let done = shelf.perform(Deed::Gym(deed));
    assert!(matches!(done, Done::Ok(_)), "{done:?}");
}

/// Ana Brook and Bo Lund, both on the ladder to the weighted pull-up.
fn two(home: &Path) -> Shelf {
    let mut shelf = started(home);
    done(
        &mut shelf,
        GymDeed::NewAthlete {
            name: "Bo Lund".into(),
            ladder: Some("weighted-pull-up".into()),
            bodyweight: Some(81.0),
        },
    );
    shelf
}

fn names(shelf: &Shelf) -> Vec<String> {
    let mut names: Vec<String> = shelf.roster().lines.into_iter().map(|line| line.name).collect();
    names.sort();
    names
}

fn key(shelf: &Shelf, name: &str) -> String {
    let lines = shelf.roster().lines;
    let line = lines.into_iter().find(|line| line.name == name);
    line.unwrap().athlete
}

/// Both with one set of their first row, as a class.
fn results(shelf: &mut Shelf) -> Vec<ClassResult> {
    let class = shelf
        .roster()
        .lines
        .into_iter()
        .map(|line| line.athlete)
        .collect();
    done(shelf, GymDeed::ShowClass(class));
    let of = |athlete: ClassAthlete| {
        let row = &athlete.rows[0];
        let set = ClassSet {
            ladder: row.ladder.clone(),
            rung: row.rung.clone(),
            rail: row.rail,
            load: None,
            amount: 4.0,
            is_hold: row.is_hold,
            reserve: None,
            outcome: rungwright::units::Outcome::Done,
        };
        ClassResult {
            athlete: athlete.athlete.clone(),
            weighs: Some(80.0),
            pain: String::new(),
            sets: vec![set],
        }
    };
    shelf.class().athletes.into_iter().map(of).collect()
}

/// How many records each has of today.
fn of_today(shelf: &mut Shelf) -> Vec<usize> {
    ["Ana Brook", "Bo Lund"]
        .map(|name| {
            shelf.perform(Deed::ChooseAthlete(key(shelf, name)));
            shelf.next().logged.len()
        })
        .to_vec()
}

#[test]
fn a_class_is_taken_back_by_one_undo_whoever_is_open() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = two(home.path());
    let before = of_today(&mut shelf);
    let results = results(&mut shelf);
    done(&mut shelf, GymDeed::LogClass(results));
    let Done::Ok(Some(words)) = shelf.perform(Deed::Undo) else {
        panic!("not undone")
    };
    assert_eq!(words, "Taken back: 4 records of 2 athletes.");
    assert_eq!(of_today(&mut shelf), before);
    drop(shelf);
    assert_eq!(of_today(&mut again(home.path())), before, "on disk too");
}

#[test]
fn after_something_else_was_written_undo_takes_that_back_first_and_then_the_class() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = two(home.path());
    let before = of_today(&mut shelf);
    let results = results(&mut shelf);
    done(&mut shelf, GymDeed::LogClass(results));
    shelf.perform(Deed::Note("left early".into()));
    assert_eq!(shelf.perform(Deed::Undo), Done::Ok(None));
    let with_class: Vec<usize> = before.iter().map(|count| count + 2).collect();
    assert_eq!(of_today(&mut shelf), with_class);
    shelf.perform(Deed::Undo);
    assert_eq!(of_today(&mut shelf), before);
}

#[test]
fn what_is_typed_outlives_the_window_until_it_is_saved() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = two(home.path());
    let results = results(&mut shelf);
    let row = shelf.class().athletes[0].rows[0].key();
    let cell = |athlete: &ClassResult, text: &str| TypedCell {
        athlete: athlete.athlete.clone(),
        at: TypedAt::Set(row.clone(), 0),
        text: text.into(),
    };
    let typed = TypedClass {
        cells: vec![cell(&results[0], "5 1"), cell(&results[1], "4 m")],
    };
    let keep = GymDeed::KeepTyped {
        typed: typed.clone(),
        leaves: false,
    };
    done(&mut shelf, keep);
    drop(shelf);
    let mut shelf = again(home.path());
    let Some(Banner::Unsaved(words)) = shelf.frame().banner else {
        panic!("nothing is said")
    };
    assert!(
        words.starts_with("2 sets of 2 athletes typed and not saved yet."),
        "{words}"
    );
    assert_eq!(shelf.class().typed, typed);
    assert_eq!(shelf.gym().typed.len(), 2);
    done(&mut shelf, GymDeed::LogClass(results));
    assert_eq!(shelf.frame().banner, None);
    drop(shelf);
    let shelf = again(home.path());
    assert_eq!((shelf.class().typed, shelf.frame().banner), Default::default());
}

#[test]
fn what_was_typed_on_another_day_is_told_and_not_mixed_into_today() {
    let home = tempfile::tempdir().unwrap();
    let shelf_of_today = two(home.path());
    drop(shelf_of_today);
    let drafts = home.path().join("state/drafts");
    let mut shelf = again(home.path());
    let typed = TypedClass {
        cells: vec![TypedCell {
            athlete: key(&shelf, "Bo Lund"),
            at: TypedAt::Weighs,
            text: "80.5".into(),
        }],
    };
    done(&mut shelf, GymDeed::KeepTyped { typed, leaves: true });
    drop(shelf);
    for file in std::fs::read_dir(&drafts).unwrap() {
        let path = file.unwrap().path();
        let day_before = path.to_str().unwrap().replace("2026-03-18", "2026-03-17");
        std::fs::rename(&path, day_before).unwrap();
    }
    let shelf = again(home.path());
    assert!(shelf.class().typed.cells.is_empty());
    let Some(Banner::Unsaved(words)) = shelf.frame().banner else {
        panic!("nothing is said")
    };
    assert!(
        words.contains("Tue 17 Mar") && words.contains("--on 2026-03-17"),
        "{words}"
    );
}

#[test]
fn a_draft_that_cannot_be_read_is_set_aside_and_not_written_over() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = two(home.path());
    let typed = TypedClass {
        cells: vec![TypedCell {
            athlete: key(&shelf, "Bo Lund"),
            at: TypedAt::Weighs,
            text: "80.5".into(),
        }],
    };
    let keep = |typed: &TypedClass| GymDeed::KeepTyped {
        typed: typed.clone(),
        leaves: true,
    };
    done(&mut shelf, keep(&typed));
    drop(shelf);
    let drafts = home.path().join("state/drafts");
    let path = std::fs::read_dir(&drafts)
        .unwrap()
        .next()
        .unwrap()
        .unwrap()
        .path();
    std::fs::write(&path, "(cells: [half a ").unwrap();
    let mut shelf = again(home.path());
    done(&mut shelf, keep(&typed));
    let aside = path.with_extension("damaged");
    assert_eq!(std::fs::read_to_string(&aside).unwrap(), "(cells: [half a ");
    assert_eq!(shelf.class().typed, typed);
    drop(shelf);
    // The system refuses to read it at all.
    std::fs::remove_file(&aside).unwrap();
    std::fs::remove_file(&path).unwrap();
    std::fs::create_dir(&path).unwrap();
    let mut shelf = again(home.path());
    done(&mut shelf, keep(&typed));
    assert!(aside.is_dir());
    drop(shelf);
    assert_eq!(again(home.path()).class().typed, typed);
}

#[test]
fn a_rename_and_an_archiving_are_records_and_each_is_taken_back_by_one_undo() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = two(home.path());
    let bo = key(&shelf, "Bo Lund");
    let rename = GymDeed::Rename {
        athlete: bo.clone(),
        name: "Bo Berg".into(),
    };
    done(&mut shelf, rename);
    assert_eq!(names(&shelf), ["Ana Brook", "Bo Berg"]);
    shelf.perform(Deed::Undo);
    assert_eq!(names(&shelf), ["Ana Brook", "Bo Lund"]);
    let archive = GymDeed::Archive {
        athlete: bo,
        archived: true,
    };
    done(&mut shelf, archive);
    assert_eq!(names(&shelf), ["Ana Brook"]);
    assert_eq!(shelf.gym().archived.len(), 1);
    shelf.perform(Deed::Undo);
    assert_eq!(names(&shelf), ["Ana Brook", "Bo Lund"]);
    drop(shelf);
    assert_eq!(names(&again(home.path())), ["Ana Brook", "Bo Lund"]);
}

#[test]
fn settings_say_from_which_machines_records_came_and_when_last() {
    let home = tempfile::tempdir().unwrap();
    drop(two(home.path()));
    let logbook = machine(home.path()).places().default_logbook();
    let mut other = shelf_named(home.path(), "desk").with(&logbook, None, false);
    wait(&mut other);
    other.perform(Deed::Note("from the other machine".into()));
    let machines = other.gym().machines;
    assert_eq!(machines.len(), 2, "{machines:?}");
    assert!(
        machines
            .iter()
            .any(|machine| machine.name == "desk, this machine")
    );
    assert!(
        machines
            .iter()
            .all(|machine| machine.words.ends_with("the last of 18 Mar 2026"))
    );
}
