//! `what-if`: who gets an answer, and what moves it.

use serde_json::Value;

use crate::kit::{Home, saved};

/// Nine weeks of pull-ups while bodyweight goes from 84 to 76 kg; the last set's id is given.
fn nine_weeks(born: &str, height: &str) -> (Home, String) {
    let home = Home::new();
    let mut text = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,height_cm,born\n".to_owned();
    text.push_str(&format!("Ana,2026-01-05,,84,,,,{height},{born}\n"));
    for week in 0..9u32 {
        let date =
            chrono::NaiveDate::from_ymd_opt(2026, 1, 5).unwrap() + chrono::Days::new(7 * u64::from(week));
        let body = 84.0 - f64::from(week);
        text.push_str(&format!(
            "Ana,{date},pull-up,{body},{},5,1,,\n",
            20.0 + f64::from(week) * 0.5
        ));
    }
    home.import(&text);
    let id = saved(&home.answer(&[
        "log",
        "--athlete",
        "Ana",
        "--movement",
        "pull-up",
        "--reps",
        "5",
        "--added",
        "25kg",
        "--bodyweight",
        "76kg",
        "--rir",
        "1",
        "--at",
        "2026-03-09",
    ]));
    (home, id)
}

fn ask(home: &Home, more: &[&str]) -> crate::kit::Ran {
    let args = [
        "what-if",
        "--athlete",
        "Ana",
        "--movement",
        "pull-up",
        "--on",
        "2026-03-11",
    ];
    home.run(&[&args[..], more].concat())
}

fn row(home: &Home, bodyweight: &str) -> Value {
    let ran = ask(home, &["--bodyweight", bodyweight, "--format", "json"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    let rows: Vec<Value> = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(rows.len(), 1);
    rows[0].clone()
}

#[test]
fn an_answer_holds_together() {
    let (home, _) = nine_weeks("1990-02-03", "178");
    let row = row(&home, "80kg");
    let number = |key: &str| row[key].as_f64().unwrap();
    assert_eq!(
        (
            row["athlete"].as_str(),
            row["movement"].as_str(),
            row["side"].as_str()
        ),
        (Some("Ana"), Some("pull-up"), Some(""))
    );
    assert!((number("added_kg") - (number("system_kg") - 80.0)).abs() < 1e-6);
    assert!((number("ratio") - number("system_kg") / 80.0).abs() < 1e-6);
    assert!((number("size_adjusted") - number("system_kg") / 80f64.powf(0.67)).abs() < 1e-6);
    assert!(number("low80") < number("system_kg") && number("system_kg") < number("high80"));
    assert!(number("slope_low80") <= number("slope") && number("slope") <= number("slope_high80"));
    assert!(number("sets") >= 9.0);
    // Nothing changes at today's bodyweight but the interval's own words.
    let wide = |bodyweight: &str| {
        let row = self::row(&home, bodyweight);
        row["high80"].as_f64().unwrap() / row["low80"].as_f64().unwrap()
    };
    assert!(
        wide("76kg") < wide("84kg") && wide("84kg") < wide("95kg"),
        "farther away is less sure"
    );
}

#[test]
fn minors_and_bodyweights_below_the_healthy_range_get_a_reason_instead() {
    let (home, _) = nine_weeks("2010-06-01", "178");
    let ran = ask(&home, &["--bodyweight", "80kg"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert!(ran.err.contains("under 18"), "{}", ran.err);
    let (home, _) = nine_weeks("1990-02-03", "178");
    // World Health Organization: adults from 18.5 kg/m²; 18.5 × 1.78² = 58.62 kg, so 58.7 is the first tenth that is answered.
    let ran = ask(&home, &["--bodyweight", "58kg", "--format", "json"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert!(
        ran.err.contains("18.3") && ran.err.contains("58.7 kg"),
        "{}",
        ran.err
    );
    assert_eq!(ask(&home, &["--bodyweight", "58.7kg"]).code, 0);
}

#[test]
fn an_unknown_height_is_answered_with_a_caution_and_an_unknown_age_is_an_adults() {
    let (home, _) = nine_weeks("", "");
    let ran = ask(&home, &["--bodyweight", "50kg"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(
        ran.err
            .contains("No height is logged, so nobody can say whether 50 kg is a healthy bodyweight."),
        "{}",
        ran.err
    );
}

#[test]
fn what_cannot_be_asked_says_why() {
    let (home, _) = nine_weeks("1990-02-03", "178");
    for bad in ["80", "heavy", "0kg", "-5kg", "1e3kg", "9999kg"] {
        assert_eq!(ask(&home, &["--bodyweight", bad]).code, 2, "{bad}");
    }
    let movement = |name: &str| {
        home.run(&[
            "what-if",
            "--athlete",
            "Ana",
            "--movement",
            name,
            "--bodyweight",
            "80kg",
            "--on",
            "2026-03-11",
        ])
    };
    let ran = movement("front-lever");
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("no system load"), "{}", ran.err);
    let ran = movement("back-squat");
    assert_eq!(ran.code, 1);
    assert!(
        ran.err.contains("bodyweight is no part of its load"),
        "{}",
        ran.err
    );
    let ran = movement("dip");
    assert_eq!(ran.code, 1);
    assert!(
        ran.err.contains("no set of repetitions is logged yet"),
        "{}",
        ran.err
    );
    assert!(movement("pul-up").err.contains("did you mean pull-up?"));
}

#[test]
fn both_sides_of_a_sided_movement_are_answered() {
    let home = Home::new();
    home.import(
        "athlete,date,movement,side,bodyweight_kg,reps,rir\nAna,2026-03-01,one-arm-row,L,70,5,1\nAna,2026-03-01,one-arm-row,R,70,7,1\n",
    );
    let ran = home.run(&[
        "what-if",
        "--athlete",
        "Ana",
        "--movement",
        "one-arm-row",
        "--bodyweight",
        "68kg",
        "--on",
        "2026-03-05",
        "--format",
        "json",
    ]);
    let rows: Vec<Value> = serde_json::from_str(&ran.out).unwrap();
    let sides: Vec<&str> = rows.iter().map(|row| row["side"].as_str().unwrap()).collect();
    assert_eq!(sides, ["L", "R"], "{}", ran.err);
    assert!(rows[1]["system_kg"].as_f64() > rows[0]["system_kg"].as_f64());
}

#[test]
fn retracting_amending_and_confirming_change_every_number_at_once() {
    let (home, id) = nine_weeks("1990-02-03", "178");
    let best = |home: &Home| {
        let out = home.answer(&["totals", "--on", "2026-03-11", "--format", "json"]);
        let rows: Vec<Value> = serde_json::from_str(&out).unwrap();
        rows.into_iter()
            .find(|row| row["kind"] == "added" && row["reps"] == 5)
            .unwrap()
    };
    let before = row(&home, "80kg");
    assert_eq!(best(&home)["value"].as_f64(), Some(25.0));
    // Its bodyweight amended: the ratio of the best and the belief move.
    home.answer(&["amend", &id, "--bodyweight", "78kg"]);
    assert_eq!(best(&home)["system_kg"].as_f64(), Some(103.0));
    let amended = row(&home, "80kg");
    assert!(amended["system_kg"] != before["system_kg"]);
    // Retracted: the next best stands, the fit has one set less.
    home.answer(&["retract", &id]);
    assert_eq!(best(&home)["value"].as_f64(), Some(24.0));
    let retracted = row(&home, "80kg");
    assert_eq!(
        retracted["sets"].as_u64().unwrap() + 1,
        before["sets"].as_u64().unwrap()
    );
    assert!(retracted["system_kg"].as_f64() < before["system_kg"].as_f64());
    // Restored: everything is as it was, once its bodyweight is too.
    home.answer(&["restore", &id]);
    home.answer(&["amend", &id, "--bodyweight", "76kg"]);
    assert_eq!(row(&home, "80kg"), before);
}

#[test]
fn a_doubted_best_stands_marked_and_counts_in_the_fit_once_it_is_confirmed() {
    let (home, _) = nine_weeks("1990-02-03", "178");
    let doubted = |home: &Home| {
        let out = home.answer(&["totals", "--on", "2026-03-11", "--format", "json"]);
        let rows: Vec<Value> = serde_json::from_str(&out).unwrap();
        let row = rows
            .into_iter()
            .find(|row| row["kind"] == "added" && row["reps"] == 1)
            .unwrap();
        (row["value"].as_f64().unwrap(), row["doubted"].as_bool().unwrap())
    };
    let sets = row(&home, "80kg")["sets"].as_u64().unwrap();
    let slip = [
        "--movement",
        "pull-up",
        "--reps",
        "5",
        "--added",
        "70kg",
        "--bodyweight",
        "76kg",
    ];
    let log = |at: &str| home.run(&[&["log", "--athlete", "Ana", "--at", at], &slip[..]].concat());
    let ran = log("2026-03-09");
    assert!(
        !ran.err.contains("New best"),
        "a doubted set is not announced: {}",
        ran.err
    );
    assert_eq!(doubted(&home), (70.0, true));
    assert_eq!(
        row(&home, "80kg")["sets"].as_u64(),
        Some(sets),
        "and counts in no fit"
    );
    // Another day with nearly the load: both count, and both are announced.
    let ran = log("2026-03-10");
    assert!(
        ran.err
            .contains("New best for 5 reps, Pull-up: 146 kg in all, +70 kg at 76 kg"),
        "{}",
        ran.err
    );
    assert_eq!(doubted(&home), (70.0, false));
    assert_eq!(row(&home, "80kg")["sets"].as_u64(), Some(sets + 2));
}

#[test]
fn a_new_best_is_said_when_it_is_logged_and_only_then() {
    let (home, _) = nine_weeks("1990-02-03", "178");
    let log = |added: &str, reps: &str, at: &str| {
        let said = [
            "log",
            "--athlete",
            "Ana",
            "--movement",
            "pull-up",
            "--bodyweight",
            "76kg",
            "--rir",
            "1",
        ];
        let ran = home.run(&[&said[..], &["--added", added, "--reps", reps, "--at", at]].concat());
        assert!(
            ran.out.starts_with("saved ") && ran.out.lines().count() == 1,
            "stdout is for programs: {}",
            ran.out
        );
        ran.err
    };
    assert_eq!(
        log("10kg", "3", "2026-03-10"),
        "",
        "lighter and fewer: nothing new"
    );
    let said = log("27.5kg", "3", "2026-03-10");
    assert!(
        said.contains("New best for 3 reps, Pull-up: 103.5 kg in all, +27.5 kg at 76 kg"),
        "{said}"
    );
    assert_eq!(
        log("27.5kg", "3", "2026-03-10"),
        "",
        "the same again is no new best"
    );
    // The first set of a movement beats nothing.
    let first = home.run(&[
        "log",
        "--athlete",
        "Ana",
        "--movement",
        "dip",
        "--reps",
        "5",
        "--bodyweight",
        "76kg",
        "--at",
        "2026-03-10",
    ]);
    assert_eq!(first.err, "");
}
