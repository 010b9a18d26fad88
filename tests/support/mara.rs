//! An invented lifter over two cuts and a gain, for whoever tells her story.

use std::fmt::Write;

use chrono::{Days, NaiveDate};

/// Mara, 172 cm. Weeks and bodyweight at their ends, kg: hold, cut, hold, gain, hold, cut.
const PHASES: [(u16, f64, f64); 6] = [
    (6, 82.0, 82.0),
    (20, 82.0, 76.0),
    (8, 76.0, 76.0),
    (30, 76.0, 84.0),
    (6, 84.0, 84.0),
    (18, 84.0, 78.0),
];

fn first_day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2024, 1, 8).unwrap()
}

/// A Monday.
pub fn day(week: u64) -> NaiveDate {
    first_day() + Days::new(7 * week)
}

/// Bodyweight in each week.
fn bodyweights() -> Vec<f64> {
    PHASES
        .iter()
        .flat_map(|(weeks, from, to)| {
            (0..*weeks).map(move |week| from + (to - from) * f64::from(week) / f64::from(*weeks))
        })
        .collect()
}

/// Her true one-rep max at the dip: 150 kg in all at 80 kg, 0.6 % for each percent of bodyweight, a slow gain by training.
pub fn one_rep_max(week: usize, bodyweight: f64) -> f64 {
    150.0 * (bodyweight / 80.0).powf(0.6) * (0.0002 * f64::from(u16::try_from(week).unwrap())).exp()
}

/// A spreadsheet of two sessions a week: a heavy set of three, a lighter one of five, reserve 1; a single every sixth week.
pub fn sheet() -> String {
    let mut text = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,height_cm,sex,born\n".to_owned();
    text.push_str("Mara,2024-01-08,,82,,,,172,female,1994-05-02\n");
    for (week, bodyweight) in bodyweights().into_iter().enumerate() {
        let max = one_rep_max(week, bodyweight);
        let monday = day(week as u64);
        let mut set = |date: NaiveDate, load: f64, reps: u8, rir: &str| {
            // Her smallest disc weighs 0.25 kg.
            let added = ((load - bodyweight) / 0.25).floor() * 0.25;
            writeln!(text, "Mara,{date},dip,{bodyweight:.1},{added},{reps},{rir},,,").unwrap();
        };
        set(monday, max / (1.0 + 4.0 / 30.0), 3, "1");
        set(monday + Days::new(3), max / (1.0 + 6.0 / 30.0), 5, "1");
        if week % 6 == 5 {
            set(monday + Days::new(3), max * 0.99, 1, "0");
        }
    }
    text
}
