//! The commands that estimate, asked as a person asks them: through the binary.

#![allow(clippy::unwrap_used, clippy::panic, dead_code)]

#[path = "../commands_records/kit.rs"]
mod kit;

mod backtest;
mod forecast;
mod next;
mod strength;
mod week;

/// Eight weeks of pull-ups at 80 kg, three sets of five with 20 kg and two in reserve each third day, and one slip: 55 for 5.
pub fn pull_ups() -> String {
    let mut csv = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir\n".to_owned();
    let first = chrono::NaiveDate::from_ymd_opt(2026, 1, 1).unwrap();
    for nth in 0..18 {
        let date = first + chrono::Days::new(3 * nth);
        for _ in 0..3 {
            csv.push_str(&format!("Ana,{date},pull-up,80,20,5,2\n"));
        }
    }
    csv.push_str("Ana,2026-02-24,pull-up,80,20,55,2\n");
    csv
}
