//! `strength`: beliefs of a day.

use serde_json::Value;

use crate::kit::Home;
use crate::pull_ups;

fn home() -> Home {
    let home = Home::new();
    home.import(&pull_ups());
    home
}

fn rows(home: &Home, args: &[&str]) -> Vec<Value> {
    let all = [&["strength", "--format", "json"], args].concat();
    serde_json::from_str(&home.answer(&all)).unwrap()
}

#[test]
fn it_gives_the_one_rep_max_on_system_load_with_nested_bands() {
    let home = home();
    let rows = rows(&home, &["--on", "2026-03-01"]);
    assert_eq!(rows.len(), 1);
    let row = &rows[0];
    let names: Vec<&String> = row.as_object().unwrap().keys().collect();
    assert_eq!(
        names,
        [
            "athlete",
            "movement",
            "side",
            "on",
            "system_1rm_kg",
            "log_sd",
            "low50",
            "high50",
            "low80",
            "high80",
            "low95",
            "high95",
            "trend_pct_week",
            "bodyweight_kg",
            "added_1rm_kg",
            "suspects"
        ]
    );
    assert_eq!(
        (
            row["athlete"].as_str(),
            row["movement"].as_str(),
            row["side"].as_str(),
            row["on"].as_str()
        ),
        (Some("Ana"), Some("pull-up"), Some(""), Some("2026-03-01"))
    );
    let number = |name: &str| row[name].as_f64().unwrap();
    let ends = [
        "low95",
        "low80",
        "low50",
        "system_1rm_kg",
        "high50",
        "high80",
        "high95",
    ]
    .map(number);
    assert!(ends.is_sorted(), "{ends:?}");
    // 100 kg for five with two left, and reserve is under-reported by about one (Halperin 2022): eight in all. The published
    // formulas then give 124 to 133 kg (Brzycki 1993, Epley 1985, Mayhew 1992, Wathan 1994), Lombardi 1989 123.
    assert!((120.0..136.0).contains(&number("system_1rm_kg")), "{row}");
    assert!((number("added_1rm_kg") - (number("system_1rm_kg") - 80.0)).abs() < 1e-6);
    // Standard normal quantile of 0.9, as in any table: 1.2816.
    let log_half_width = (number("high80") / number("low80")).ln() / 2.0;
    assert!((log_half_width / number("log_sd") - 1.2816).abs() < 0.001);
}

#[test]
fn a_slip_is_listed_with_its_record_and_amending_it_takes_it_off() {
    let home = home();
    let before = rows(&home, &["--on", "2026-03-01"]);
    let suspects = before[0]["suspects"].as_array().unwrap();
    assert_eq!(suspects.len(), 1);
    assert_eq!(suspects[0]["date"], "2026-02-24");
    assert!(suspects[0]["probability"].as_f64().unwrap() > 0.9);
    let id = suspects[0]["id"].as_str().unwrap();
    home.answer(&["amend", id, "--reps", "5"]);
    let after = rows(&home, &["--on", "2026-03-01"]);
    assert_eq!(after[0]["suspects"].as_array().unwrap().len(), 0);
}

#[test]
fn people_read_units_ranges_and_no_promise() {
    let home = home();
    let text = home.answer(&["strength", "--athlete", "Ana", "--on", "2026-03-01"]);
    for said in [
        "Ana\n",
        "about ",
        "kg in all",
        "at 80 kg",
        "80 %: ",
        "sessions",
        "looks like a typo",
        "× 5 would fit",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    for promise in ["will", "guarantee", "sure"] {
        assert!(!text.contains(promise), "{promise}: {text}");
    }
}

#[test]
fn a_spreadsheet_gets_the_same_columns() {
    let text = home().answer(&["strength", "--on", "2026-03-01", "--format", "csv"]);
    let mut lines = text.split("\r\n");
    assert!(
        lines
            .next()
            .unwrap()
            .starts_with("athlete,movement,side,on,system_1rm_kg,log_sd,low50")
    );
    assert!(lines.next().unwrap().starts_with("Ana,pull-up,,2026-03-01,"));
}

#[test]
fn nothing_earlier_gives_no_row_and_a_stranger_is_a_problem() {
    let home = home();
    assert!(rows(&home, &["--on", "2026-01-01"]).is_empty());
    let text = home.answer(&["strength", "--on", "2026-01-01"]);
    assert!(text.contains("no estimate yet"), "{text}");
    let ran = home.run(&["strength", "--athlete", "Bob"]);
    assert_eq!(ran.code, 1, "{}", ran.err);
}
