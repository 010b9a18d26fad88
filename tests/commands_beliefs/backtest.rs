//! `backtest`: beliefs of past dates beside the rows that ask for them.

use crate::kit::Home;
use crate::pull_ups;

fn home() -> Home {
    let home = Home::new();
    home.import(&pull_ups());
    home
}

const HEADER: &str = "athlete,movement,side,as_of,on,system_kg";
const ADDED: &str = "system_1rm_kg,log_sd,low50,high50,low80,high80,low95,high95,chance";

fn ask(home: &Home, points: &str) -> Vec<String> {
    let file = home.file("points.csv", points);
    let text = home.answer(&["backtest", "--points", &file]);
    text.split_terminator("\r\n").map(str::to_owned).collect()
}

fn numbers(line: &str) -> Vec<f64> {
    line.rsplit(',')
        .take(9)
        .map(|cell| cell.parse().unwrap())
        .collect()
}

#[test]
fn each_row_comes_back_byte_for_byte_with_the_answer_behind() {
    let home = home();
    let rows = [
        "Ana,pull_up,,2026-02-10,2026-02-10,110.50",
        "\"Ana\",\"Pull-Up\",,2026-02-10,2026-02-10,110.50",
        "Ana,pull-up,,2026-01-20,2026-01-20,+110",
    ];
    let lines = ask(&home, &format!("{HEADER}\n\n{}\n", rows.join("\n")));
    assert_eq!(lines[0], format!("{HEADER},{ADDED}"));
    assert_eq!(lines.len(), 4);
    for (line, row) in lines[1..].iter().zip(rows) {
        assert!(line.starts_with(&format!("{row},")), "{line}");
        assert_eq!(numbers(line).len(), 9);
    }
    assert_eq!(numbers(&lines[1]), numbers(&lines[2]));
}

#[test]
fn a_further_column_and_windows_line_ends_are_kept() {
    let home = home();
    let lines = ask(
        &home,
        "note,athlete,movement,side,as_of,on\r\n\"a, b\",Ana,pull-up,,2026-02-10,2026-02-10\r\n",
    );
    assert_eq!(lines[0], format!("note,athlete,movement,side,as_of,on,{ADDED}"));
    assert!(lines[1].starts_with("\"a, b\",Ana,pull-up,,2026-02-10,2026-02-10,"));
    assert!(
        lines[1].ends_with(','),
        "no load was asked, so there is no chance: {}",
        lines[1]
    );
}

#[test]
fn only_strictly_earlier_records_count() {
    let home = home();
    let point = |day: &str| format!("{HEADER}\nAna,pull-up,,{day},{day},110\n");
    let before = ask(&home, &point("2026-02-10"));
    home.log(&[
        "--movement",
        "pull-up",
        "--added",
        "60kg",
        "--reps",
        "5",
        "--bodyweight",
        "80kg",
        "--at",
        "2026-02-10",
    ]);
    assert_eq!(ask(&home, &point("2026-02-10")), before);
    assert_ne!(ask(&home, &point("2026-02-11")), before);
    let first = ask(&home, &point("2026-01-01"));
    assert!(first[1].ends_with(",110,,,,,,,,,"), "{}", first[1]);
}

#[test]
fn a_later_day_is_a_forecast_that_widens() {
    let home = home();
    let lines = ask(
        &home,
        &format!(
            "{HEADER}\nAna,pull-up,,2026-02-10,2026-02-10,110\nAna,pull-up,,2026-02-10,2026-04-07,110\n"
        ),
    );
    let sd = |line: &str| numbers(line)[7];
    assert!(sd(&lines[2]) > sd(&lines[1]));
}

#[test]
fn it_says_what_strength_said_on_that_day() {
    let home = home();
    let lines = ask(&home, &format!("{HEADER}\nAna,pull-up,,2026-02-10,2026-02-10,\n"));
    let strength = home.answer(&["strength", "--on", "2026-02-10", "--format", "json"]);
    let rows: Vec<serde_json::Value> = serde_json::from_str(&strength).unwrap();
    let cells: Vec<&str> = lines[1].split(',').collect();
    for (column, name) in [(6, "system_1rm_kg"), (7, "log_sd"), (12, "low95")] {
        let told = rows[0][name].as_f64().unwrap();
        assert!(
            (cells[column].parse::<f64>().unwrap() - told).abs() < 1e-8,
            "{name}"
        );
    }
}

#[test]
fn a_bad_row_is_told_with_its_place_and_keeps_the_others() {
    let home = home();
    let file = home.file(
        "points.csv",
        &format!("{HEADER}\nAna,pull-up,,2026-02-10,2026-02-10,\nAna,pul-up,,2026-02-10,2026-02-10,\nAna,pull-up,,yesterday,2026-02-10,\nAna,pull-up,,2026-02-10,2026-02-09,\nBob,pull-up,,2026-02-10,2026-02-10,\n"),
    );
    let ran = home.run(&["backtest", "--points", &file]);
    assert_eq!(ran.code, 1);
    let lines: Vec<&str> = ran.out.split_terminator("\r\n").collect();
    assert_eq!(lines.len(), 6);
    assert!(!lines[1].ends_with(",,,,,,,,,,") && lines[2].ends_with(",,,,,,,,,,"));
    for said in [
        "points.csv:3:5: unknown movement \"pul-up\"",
        "pull-up?",
        "points.csv:4:",
        "points.csv:5:",
        "no athlete \"Bob\"",
    ] {
        assert!(ran.err.contains(said), "{said}: {}", ran.err);
    }
}

#[test]
fn a_file_without_a_header_or_with_an_answers_column_is_refused() {
    let home = home();
    for (text, said) in [
        ("", "no header"),
        ("athlete,movement,side,as_of\n", "no column on"),
        (
            "athlete,movement,side,as_of,on,chance\n",
            "the answer adds the column \"chance\"",
        ),
        ("athlete,movement,side,as_of,on,on\n", "a second column \"on\""),
    ] {
        let file = home.file("points.csv", text);
        let ran = home.run(&["backtest", "--points", &file]);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{text:?}");
        assert!(ran.err.contains(said), "{said}: {}", ran.err);
    }
    let missing = home.run(&["backtest", "--points", "nowhere.csv"]);
    assert_eq!(missing.code, 1);
    assert_eq!(home.run(&["backtest"]).code, 2);
}
