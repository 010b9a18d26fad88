//! `forecast`: a range of dates for each goal.

use serde_json::Value;

use crate::kit::Home;
use crate::pull_ups;

fn home() -> Home {
    let home = Home::new();
    home.import(&pull_ups());
    home
}

fn rows(home: &Home) -> Vec<Value> {
    let all = [
        "forecast",
        "--athlete",
        "Ana",
        "--on",
        "2026-03-01",
        "--format",
        "json",
    ];
    serde_json::from_str(&home.answer(&all)).unwrap()
}

#[test]
fn a_goal_gets_dates_in_order_and_a_chance_within_a_year() {
    let home = home();
    home.log(&["--goal", "weighted-pull-up/plus-50", "--at", "2026-02-01"]);
    let rows = rows(&home);
    assert_eq!(rows.len(), 1);
    let row = &rows[0];
    let names: Vec<&String> = row.as_object().unwrap().keys().collect();
    assert_eq!(
        names,
        [
            "athlete",
            "ladder",
            "rung",
            "side",
            "soonest",
            "median",
            "latest",
            "chance_in_a_year"
        ]
    );
    assert_eq!(
        (row["ladder"].as_str(), row["rung"].as_str(), row["side"].as_str()),
        (Some("weighted-pull-up"), Some("plus-50"), Some(""))
    );
    let dates: Vec<&str> = ["soonest", "median", "latest"]
        .iter()
        .filter_map(|name| row[*name].as_str())
        .collect();
    assert!(
        dates.is_sorted() && dates.iter().all(|date| *date >= "2026-03-01"),
        "{row}"
    );
    let chance = row["chance_in_a_year"].as_f64().unwrap();
    assert!((0.0..=1.0).contains(&chance));
}

#[test]
fn a_nearer_goal_comes_sooner() {
    let home = home();
    home.log(&["--goal", "weighted-pull-up/plus-25", "--at", "2026-02-01"]);
    home.log(&["--goal", "weighted-pull-up/plus-100", "--at", "2026-02-01"]);
    let rows = rows(&home);
    let rungs: Vec<&str> = rows.iter().map(|row| row["rung"].as_str().unwrap()).collect();
    assert_eq!(rungs, ["plus-25", "plus-100"]);
    let chance = |row: &Value| row["chance_in_a_year"].as_f64().unwrap();
    assert!(chance(&rows[0]) > chance(&rows[1]));
    // 80 kg, 1RM near 128 kg: twice the bodyweight is 160 kg, and nobody gains a quarter within two years of training like that.
    assert!(rows[1]["median"].is_null(), "{}", rows[1]);
}

#[test]
fn without_a_goal_it_is_the_end_of_each_ladder_on_each_side() {
    let home = home();
    home.log(&["--place", "one-arm-pull-up/two-arm", "--at", "2026-02-01"]);
    home.log(&["--place", "weighted-dip", "--at", "2026-02-01"]);
    let rows = rows(&home);
    let who: Vec<String> = rows
        .iter()
        .map(|row| {
            format!(
                "{} {} {}",
                row["ladder"].as_str().unwrap(),
                row["rung"].as_str().unwrap(),
                row["side"].as_str().unwrap()
            )
        })
        .collect();
    assert_eq!(
        who,
        [
            "one-arm-pull-up one-arm-plus L",
            "one-arm-pull-up one-arm-plus R",
            "weighted-dip plus-125 "
        ]
    );
    assert!(
        rows[0]["chance_in_a_year"].is_number(),
        "pull-ups on both arms tell of one arm"
    );
    assert!(rows[2]["chance_in_a_year"].is_null(), "nobody dipped");
}

#[test]
fn people_read_a_range_and_a_condition() {
    let home = home();
    home.log(&["--goal", "weighted-pull-up/plus-50", "--at", "2026-02-01"]);
    let text = home.answer(&["forecast", "--athlete", "Ana", "--on", "2026-03-01"]);
    for said in ["Ana\n", "chance within a year", "if training goes on as now"] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert_eq!(home.run(&["forecast"]).code, 2);
    assert_eq!(home.run(&["forecast", "--athlete", "Bob"]).code, 1);
}

#[test]
fn where_the_hang_lies_below_the_forecast_is_said_to_be_of_the_pull_alone() {
    let home = Home::new();
    let mut rows = "athlete,date,movement,side,bodyweight_kg,added_kg,reps,hold_s,rir,ladder\n".to_owned();
    rows.push_str("Ben,2026-01-01,,,,,,,,one-arm-pull-up\n");
    for day in 10..28 {
        rows.push_str(&format!("Ben,2026-02-{day},pull-up,,75,70,3,,1,\n"));
    }
    rows.push_str("Ben,2026-02-26,one-arm-hang,L,75,,,4,0,\n");
    home.import(&rows);
    let said = home.answer(&["forecast", "--athlete", "Ben", "--on", "2026-03-01"]);
    assert_eq!(said.matches("by pull alone: ").count(), 1, "{said}");
}
