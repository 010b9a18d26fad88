//! System loads use the measured shares of push-ups and rows; the moved mass is a setting for Totals alone.

use serde_json::Value;

use crate::kit::Home;

fn system(home: &Home, movement: &str) -> Vec<f64> {
    let rows: Vec<Value> =
        serde_json::from_str(&home.answer(&["totals", "--on", "2026-03-20", "--format", "json"])).unwrap();
    rows.iter()
        .filter(|row| row["movement"] == movement && row["kind"] == "system" && row["reps"] == 1)
        .map(|row| row["value"].as_f64().unwrap())
        .collect()
}

#[test]
fn a_push_up_lifts_what_was_measured_on_a_force_plate() {
    let home = Home::new();
    home.import("athlete,date,movement,bodyweight_kg,added_kg,reps\nAna,2026-03-01,push-up,75,10,8\nAna,2026-03-01,row,75,,8\n");
    // Ebben 2011: 64 % of bodyweight; Melrose & Dawes 2015, straps at 60°: 68 %.
    assert_eq!(system(&home, "push-up"), [58.0]);
    assert_eq!(system(&home, "row"), [51.0]);
}

#[test]
fn the_moved_mass_counts_in_totals_and_changes_no_next_step() {
    let home = Home::new();
    home.import(
        "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,ladder,rung,sex\n\
         Ana,2026-03-16,pull-up,80,20,5,1,weighted-pull-up,plus-25,male\n\
         Ana,2026-03-16,one-arm-chin-up,80,,1,,,,\n",
    );
    home.import("athlete,date,movement,side,bodyweight_kg,reps\nAna,2026-03-18,one-arm-chin-up,L,80,1\n");
    let steps = |home: &Home| home.answer(&["next", "--on", "2026-03-20", "--format", "json"]);
    let (whole, before) = (system(&home, "pull-up"), steps(&home));
    assert_eq!(whole, [100.0]);
    let settings = home.logbook().join("logbook.ron");
    let text = std::fs::read_to_string(&settings).unwrap();
    std::fs::write(
        &settings,
        text.replacen("unit: kg,", "unit: kg,\n    moved_mass: true,", 1),
    )
    .unwrap();
    // De Leva 1996, men: both hands and forearms are 2 × (0.61 + 1.62) % of the body, so 95.54 % of it moves; one arm 97.77 %.
    assert!((system(&home, "pull-up")[0] - (0.9554 * 80.0 + 20.0)).abs() < 1e-9);
    assert!((system(&home, "one-arm-chin-up")[0] - 0.9777 * 80.0).abs() < 1e-9);
    assert_eq!(steps(&home), before, "standards are written on the whole body");
}
