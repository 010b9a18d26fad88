//! What beliefs add to `next`.

use serde_json::Value;

use crate::kit::Home;

/// Ana hangs 60 kg from the belt, and hangs from her left hand for only three seconds.
fn home() -> Home {
    let home = Home::new();
    let mut csv =
        "athlete,date,movement,side,bodyweight_kg,added_kg,reps,hold_s,rir,ladder,rung\n".to_owned();
    for day in [2, 5, 9, 12, 16, 19] {
        for _ in 0..3 {
            csv.push_str(&format!(
                "Ana,2026-03-{day:02},pull-up,,80,60,3,,1,weighted-pull-up,plus-75\n"
            ));
        }
    }
    csv.push_str("Ana,2026-03-19,one-arm-hang,L,80,,,3,,,\nAna,2026-03-19,,,,,,,,one-arm-pull-up,\n");
    home.import(&csv);
    home
}

#[test]
fn the_json_answer_has_the_chance_of_the_prescription() {
    let text = home().answer(&["next", "--on", "2026-03-22", "--format", "json"]);
    let rows: Vec<Value> = serde_json::from_str(&text).unwrap();
    let weighted = rows
        .iter()
        .find(|row| row["ladder"] == "weighted-pull-up")
        .unwrap();
    let chance = weighted["chance"].as_f64().unwrap();
    assert!((0.0..=1.0).contains(&chance));
}

#[test]
fn what_holds_back_is_named_with_both_ranges_and_what_trains_it() {
    let text = home().answer(&["next", "--on", "2026-03-22", "--format", "json"]);
    let rows: Vec<Value> = serde_json::from_str(&text).unwrap();
    let left = rows
        .iter()
        .find(|row| row["ladder"] == "one-arm-pull-up" && row["side"] == "L")
        .unwrap();
    let reason = left["reasons"]
        .as_array()
        .unwrap()
        .iter()
        .find(|reason| reason["rule"] == "held-back")
        .unwrap();
    let said = reason["text"].as_str().unwrap();
    for part in [
        "of the goal",
        "the hang only 0.",
        "grip",
        "one-arm hang trains it",
    ] {
        assert!(said.contains(part), "{part}: {said}");
    }
}

#[test]
fn people_read_chance_and_expected_repetitions() {
    let text = home().answer(&["next", "--on", "2026-03-22"]);
    for said in [
        "estimate",
        "chance 0.",
        "reps are expected of a fresh set to failure",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}
