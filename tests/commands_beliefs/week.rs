//! `week`: hard sets of each muscle group in the ISO week of a day.

use serde_json::Value;

use crate::kit::Home;

/// Four sets of dips and three of triceps extensions in the week of Monday 23 November 2026, and one of dips on the Sunday
/// before; Ben has a pull-up too easy to count.
const WEEK: &str = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,sets\n\
    Ana,2026-11-22,dip,70,,8,2,1\n\
    Ana,2026-11-23,dip,70,,8,2,4\n\
    Ana,2026-11-24,triceps-extension,70,15,12,1,3\n\
    Ben,2026-11-25,pull-up,80,,3,6,1\n";

fn home() -> Home {
    let home = Home::new();
    home.import(WEEK);
    home
}

fn rows(home: &Home, args: &[&str]) -> Vec<Value> {
    let all = [&["week", "--format", "json"], args].concat();
    serde_json::from_str(&home.answer(&all)).unwrap()
}

fn row<'r>(rows: &'r [Value], athlete: &str, group: &str) -> &'r Value {
    let found = rows
        .iter()
        .find(|row| row["athlete"] == athlete && row["group"] == group);
    found.unwrap_or_else(|| panic!("{athlete} {group}"))
}

#[test]
fn it_counts_whole_and_half_sets_of_the_week() {
    let rows = rows(&home(), &["--on", "2026-11-26"]);
    let keys: Vec<&String> = rows[0].as_object().unwrap().keys().collect();
    let asked = [
        "athlete", "week", "group", "direct", "indirect", "sets", "low", "high", "status",
    ];
    assert_eq!(keys, asked);
    assert!(rows.iter().all(|row| row["week"] == "2026-W48"));
    let names: Vec<(&str, &str)> = rows
        .iter()
        .map(|row| (row["athlete"].as_str().unwrap(), row["group"].as_str().unwrap()))
        .collect();
    assert!(names.is_sorted(), "{names:?}");
    // Half for indirect sets: Pelland et al. 2024; worked by hand.
    let numbers = |group: &str| {
        let row = row(&rows, "Ana", group);
        (
            row["direct"].as_u64().unwrap(),
            row["indirect"].as_u64().unwrap(),
            row["sets"].as_f64().unwrap(),
        )
    };
    assert_eq!(numbers("chest"), (4, 0, 4.0));
    assert_eq!(numbers("triceps"), (7, 0, 7.0));
    assert_eq!(numbers("front-delts"), (0, 4, 2.0));
    let chest = row(&rows, "Ana", "chest");
    assert_eq!(
        (&chest["low"], &chest["high"], &chest["status"]),
        (&8.into(), &20.into(), &"below".into())
    );
    assert_eq!(row(&rows, "Ana", "calves")["status"], Value::Null);
    assert_eq!(row(&rows, "Ben", "lats")["sets"], 0);
    assert_eq!(row(&rows, "Ben", "lats")["status"], Value::Null);
}

#[test]
fn the_week_is_that_of_the_day_by_iso_8601() {
    let home = home();
    let chest = |on: &str| {
        let rows = rows(&home, &["--athlete", "Ana", "--on", on]);
        let row = row(&rows, "Ana", "chest");
        (
            row["week"].as_str().unwrap().to_owned(),
            row["sets"].as_f64().unwrap(),
        )
    };
    assert_eq!(chest("2026-11-22"), ("2026-W47".to_owned(), 1.0));
    assert_eq!(chest("2026-11-23"), ("2026-W48".to_owned(), 4.0));
    assert_eq!(chest("2026-11-29"), ("2026-W48".to_owned(), 4.0));
    assert_eq!(chest("2026-11-30"), ("2026-W49".to_owned(), 0.0));
    // 2026 has a week 53 (its 1 January is a Thursday; RFC 5545).
    assert_eq!(chest("2027-01-03").0, "2026-W53");
    assert_eq!(chest("2027-01-04").0, "2027-W01");
}

#[test]
fn people_read_what_counts_and_which_joints_had_no_day_off() {
    let text = home().answer(&["week", "--athlete", "Ana", "--on", "2026-11-26"]);
    for said in [
        "Ana\n",
        "2026-W48, Mon 23 – Sun 29 Nov 2026: 7 hard sets",
        "0–4 in reserve, or not logged, counts as hard",
        "Chest",
        "4 below",
        "no source",
        "Elbows: loaded Sun 22, Mon 23 and Tue 24 Nov, 3 days running.",
        "licensed practitioners",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[test]
fn a_spreadsheet_gets_the_same_columns() {
    let text = home().answer(&["week", "--on", "2026-11-26", "--format", "csv"]);
    let mut lines = text.split("\r\n");
    assert_eq!(
        lines.next(),
        Some("athlete,week,group,direct,indirect,sets,low,high,status")
    );
    assert_eq!(lines.next(), Some("Ana,2026-W48,abs,0,0,0,8,20,"));
    assert!(text.contains("Ana,2026-W48,front-delts,0,4,2,8,20,below\r\n"));
}

#[test]
fn an_empty_logbook_is_no_problem_and_a_stranger_is_one() {
    let home = home();
    std::fs::create_dir(home.path("empty")).unwrap();
    let empty = home.path("empty");
    let empty = empty.to_str().unwrap();
    assert_eq!(
        home.answer(&["week", "--logbook", empty, "--format", "json"]),
        "[]\n"
    );
    assert!(
        home.answer(&["week", "--logbook", empty])
            .contains("Nobody is in this logbook yet")
    );
    let ran = home.run(&["week", "--athlete", "Bob"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert_eq!(home.run(&["week", "--on", "2026-13-01"]).code, 2);
    assert_eq!(
        home.run(&["week", "--logbook", home.path("nowhere").to_str().unwrap()])
            .code,
        1
    );
}

#[test]
fn whoever_left_is_not_asked_about_but_by_name() {
    let home = home();
    home.answer(&[
        "log",
        "--athlete",
        "Ben",
        "--phase",
        "archived",
        "--at",
        "2026-11-25",
    ]);
    assert!(
        rows(&home, &["--on", "2026-11-26"])
            .iter()
            .all(|row| row["athlete"] == "Ana")
    );
    assert_eq!(rows(&home, &["--athlete", "Ben", "--on", "2026-11-26"]).len(), 16);
}
