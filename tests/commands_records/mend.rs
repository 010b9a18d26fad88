//! `amend`, `retract`, `restore`: what a record says, and whether it counts.

use std::path::Path;

use crate::kit::{Home, saved};

/// The exported rows after the header and Ana's name, without their ids.
fn rows(home: &Home) -> Vec<String> {
    let export = home.answer(&["export"]);
    let bare = |row: &str| row[27..].trim_end_matches(',').to_owned();
    export
        .lines()
        .skip(1)
        .map(bare)
        .filter(|row| row.split(',').count() > 2)
        .collect()
}

fn a_set(home: &Home) -> String {
    home.log(&[
        "--movement",
        "pull-up",
        "--reps",
        "5",
        "--added",
        "20kg",
        "--rir",
        "2",
        "--at",
        "2026-03-18",
    ])
}

#[test]
fn each_value_takes_the_place_of_the_one_before_and_the_rest_stays() {
    let home = Home::new();
    let id = a_set(&home);
    assert_eq!(rows(&home), ["Ana,2026-03-18,pull-up,,,,20,,5,,2,,success"]);
    for (args, row) in [
        (
            &["--reps", "6"][..],
            "Ana,2026-03-18,pull-up,,,,20,,6,,2,,success",
        ),
        (
            &["--added", "45lb", "--rpe", "9"],
            "Ana,2026-03-18,pull-up,,,,,45,6,,,9,success",
        ),
        (
            &["--assist", "5kg", "--missed"],
            "Ana,2026-03-18,pull-up,,,,-5,,6,,,9,fail",
        ),
        (&["--missed="], "Ana,2026-03-18,pull-up,,,,-5,,6,,,9,success"),
        (
            &["--rpe", "", "--assist", ""],
            "Ana,2026-03-18,pull-up,,,,,,6,,,,success",
        ),
        (
            &["--movement", "dead-hang", "--hold-s", "40"],
            "Ana,2026-03-18,dead-hang,,,,,,,40,,,success",
        ),
        (
            &["--at", "2026-03-19T08:00"],
            "Ana,2026-03-19T08:00,dead-hang,,,,,,,40,,,success",
        ),
    ] {
        let ran = home.answer(&[&["amend", &id], args].concat());
        assert_eq!(saved(&ran), id, "the target's id is said");
        assert_eq!(rows(&home), [row]);
    }
}

#[test]
fn journals_only_grow_and_each_change_has_the_next_revision() {
    let home = Home::new();
    let id = a_set(&home);
    let mut before = home.lines();
    for (rev, args) in [
        &["amend", &id, "--reps", "6"][..],
        &["retract", &id, "--why", "double"],
        &["restore", &id],
        &["retract", &id],
    ]
    .iter()
    .enumerate()
    {
        home.answer(args);
        let after = home.lines();
        assert_eq!(after[..before.len()], before[..]);
        let line = after.last().unwrap();
        assert!(line.contains(&format!("rev: {}, ", rev + 1)), "{line}");
        before = after;
    }
    assert!(home.facts()[3].starts_with("Retract(") && home.facts()[3].contains("why: \"double\""));
}

#[test]
fn what_is_retracted_is_gone_until_it_is_restored_with_its_last_content() {
    let home = Home::new();
    let id = a_set(&home);
    home.answer(&["retract", &id]);
    assert!(rows(&home).is_empty());
    let amended = home.run(&["amend", &id, "--reps", "7"]);
    assert_eq!(amended.code, 0);
    assert!(amended.err.contains("once it is restored"), "{}", amended.err);
    assert!(rows(&home).is_empty());
    home.answer(&["restore", &id]);
    assert_eq!(rows(&home), ["Ana,2026-03-18,pull-up,,,,20,,7,,2,,success"]);
}

#[test]
fn other_kinds_are_amended_too() {
    let home = Home::new();
    for (args, amend, row) in [
        (
            &["--pain", "elbow=3", "--side", "L"][..],
            &["--pain", "wrist=5", "--side", ""][..],
            "wrist",
        ),
        (
            &["--place", "front-lever/tuck"],
            &["--place", "front-lever/none"],
            "front-lever,none",
        ),
        (&["--phase", "cut"], &["--phase", "hold"], "hold"),
        (
            &["--goal", "front-lever/full", "--by", "2027-01-01"],
            &["--by", ""],
            "front-lever/full",
        ),
        (
            &["--born", "1990-05-17"],
            &["--born", "1991-05-17", "--height", "180cm"],
            "180,,1991-05-17",
        ),
        (&["--bodyweight", "70kg"], &["--bodyweight", "171lb"], "171"),
        (&["--note", "one"], &["--note", "two"], "two"),
    ] {
        let home = Home::new();
        let id = home.log(args);
        home.answer(&[&["amend", &id], amend].concat());
        let rows = rows(&home);
        assert_eq!(rows.len(), 1);
        assert!(rows[0].ends_with(row), "{rows:?}");
    }
    let id = home.log(&[]);
    home.answer(&["amend", &id, "--rename", "Anna"]);
    assert!(home.answer(&["export"]).contains(&format!("{id},Anna,")));
}

#[test]
fn what_would_make_no_sound_record_is_refused() {
    let home = Home::new();
    let id = a_set(&home);
    let before = home.lines();
    for args in [
        &["--movement", ""][..],
        &["--movement", "pul-up"],
        &["--reps", "2000"],
        &["--reps", ""],
        &["--at", ""],
        &["--pain", "elbow=3"],
        &["--born", "1990-01-01"],
        &["--rename", "Bo"],
        &["--place", "front-lever"],
    ] {
        let ran = home.run(&[&["amend", &id], args].concat());
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
    }
    let note = home.log(&["--note", "x"]);
    assert_eq!(home.run(&["amend", &note, "--note", ""]).code, 2);
    assert_eq!(home.lines().len(), before.len() + 1);
}

#[test]
fn an_unknown_id_is_a_problem_and_makes_no_logbook() {
    const NOBODYS: &str = "01ARZ3NDEKTSV4RRFFQ69G5FAV";
    let home = Home::new();
    let all = [
        &["amend", NOBODYS, "--reps", "3"][..],
        &["retract", NOBODYS],
        &["restore", NOBODYS],
    ];
    for args in all {
        assert_eq!(home.run(args).code, 1);
        assert!(!home.logbook().exists());
    }
    let id = a_set(&home);
    for args in all {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""));
        assert!(ran.err.contains(NOBODYS), "{}", ran.err);
    }
    // Crockford's base 32 has no case (crockford.com/base32.html).
    assert_eq!(saved(&home.answer(&["retract", &id.to_lowercase()])), id);
}

#[test]
fn a_record_of_a_ladder_that_is_gone_can_be_amended_and_keeps_its_ladder() {
    let home = Home::new();
    home.log(&[]);
    let folder = home.logbook().join("ladders");
    std::fs::create_dir(&folder).unwrap();
    let shipped = include_str!("../../progressions/front-lever.ron");
    let own = shipped.replacen("\"front-lever\"", "\"my-lever\"", 1);
    std::fs::write(folder.join("my-lever.ron"), own).unwrap();
    let id = home.log(&[
        "--movement",
        "front-lever",
        "--hold-s",
        "10",
        "--ladder",
        "my-lever",
        "--rung",
        "tuck",
        "--at",
        "2026-03-18",
    ]);
    std::fs::remove_file(folder.join("my-lever.ron")).unwrap();
    home.answer(&["amend", &id, "--hold-s", "12"]);
    assert_eq!(
        rows(&home),
        ["Ana,2026-03-18,front-lever,,,,,,,12,,,success,my-lever,tuck"]
    );
    assert_eq!(home.run(&["amend", &id, "--ladder", "your-lever"]).code, 2);
}

/// Copies the journals of `from` to `to`, as a tool that keeps folders alike would.
fn sync(from: &Home, to: &Home) {
    fn copy(from: &Path, to: &Path) {
        std::fs::create_dir_all(to).unwrap();
        for entry in std::fs::read_dir(from).unwrap() {
            let entry = entry.unwrap();
            let target = to.join(entry.file_name());
            if entry.file_type().unwrap().is_dir() {
                copy(&entry.path(), &target);
            } else if !target.exists() || entry.metadata().unwrap().len() > target.metadata().unwrap().len() {
                std::fs::copy(entry.path(), target).unwrap();
            }
        }
    }
    copy(&from.logbook(), &to.logbook());
}

#[test]
fn two_devices_that_change_one_record_at_once_end_the_same_whatever_comes_first() {
    for (left, right, ends) in [
        (&["amend", "ID", "--reps", "6"][..], &["retract", "ID"][..], None),
        (
            &["amend", "ID", "--reps", "6"],
            &["amend", "ID", "--reps", "7"],
            // The same revision: the later device in the alphabet.
            Some("Ana,2026-03-18,pull-up,,,,20,,7,,2,,success"),
        ),
        (&["retract", "ID"], &["retract", "ID"], None),
    ] {
        let first = Home::new().on_device("alder");
        let id = a_set(&first);
        let second = Home::new().on_device("birch");
        sync(&first, &second);
        let with_id =
            |args: &[&str]| -> Vec<String> { args.iter().map(|arg| arg.replace("ID", &id)).collect() };
        for (home, args) in [(&first, left), (&second, right)] {
            let args = with_id(args);
            home.answer(&args.iter().map(String::as_str).collect::<Vec<_>>());
        }
        sync(&first, &second);
        sync(&second, &first);
        let export = first.answer(&["export"]);
        assert_eq!(export, second.answer(&["export"]));
        assert_eq!(rows(&first).first().map(String::as_str), ends);
        // A restoration that knows of both brings back the content that holds.
        second.answer(&["restore", &id]);
        sync(&second, &first);
        assert_eq!(rows(&first).len(), 1);
        assert_eq!(first.answer(&["export"]), second.answer(&["export"]));
    }
}
