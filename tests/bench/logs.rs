//! Simulated logs as CSV: the sets that a filter may see, the points it has to answer, and the truth it is scored by.

use std::collections::BTreeMap;
use std::path::Path;

use chrono::{Datelike, NaiveDate};
use rungwright::strength::{Attempt, TrainingDay};
use rungwright::units::{Added, Bodyweight, Effort, Given, Mass, Outcome, Reps, Share, Side};

/// Athlete, movement as written, side as written.
pub type Series = (String, String, String);

/// All training days of each athlete and movement, both sides together.
#[derive(Debug, Default)]
pub struct Logs(BTreeMap<(String, String), Vec<TrainingDay>>);

impl Logs {
    /// The days that a series' belief reads: with `sides_together` those of both sides.
    pub fn days(&self, key: &Series, sides_together: bool) -> Vec<TrainingDay> {
        let mut days = self
            .0
            .get(&(key.0.clone(), key.1.clone()))
            .cloned()
            .unwrap_or_default();
        if !sides_together {
            for day in &mut days {
                day.attempts.retain(|attempt| attempt.side == side(&key.2));
                day.attempts.iter_mut().for_each(|attempt| attempt.side = None);
            }
            days.retain(|day| !day.attempts.is_empty());
        }
        days
    }
}

/// The side that a cell names.
pub fn side(written: &str) -> Option<Side> {
    match written {
        "L" => Some(Side::Left),
        "R" => Some(Side::Right),
        _ => None,
    }
}

/// A row of a CSV file by column name.
pub type Row = BTreeMap<String, String>;

/// All rows of a CSV file.
pub fn rows(path: &Path) -> Vec<Row> {
    let mut reader = csv::Reader::from_path(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    reader
        .deserialize()
        .map(|row| row.unwrap_or_else(|e| panic!("{}: {e}", path.display())))
        .collect()
}

/// The number in a column, if there is one.
pub fn number(row: &Row, column: &str) -> Option<f64> {
    row.get(column)?.parse().ok()
}

/// The date in a column.
pub fn date(row: &Row, column: &str) -> NaiveDate {
    row[column]
        .parse()
        .unwrap_or_else(|e| panic!("{column} {}: {e}", row[column]))
}

/// The series that a row belongs to.
pub fn series(row: &Row) -> Series {
    (
        row["athlete"].clone(),
        row["movement"].clone(),
        row["side"].clone(),
    )
}

/// The movement id that the project uses for a column's value.
pub fn movement_id(written: &str) -> String {
    written.replace('_', "-")
}

/// `sets.csv` as training days, order within a day kept.
pub fn sets(path: &Path) -> Logs {
    let mut logs = Logs::default();
    for row in rows(path) {
        let mass = |column: &str| number(&row, column).map(Mass::from_kg);
        let Some(reps) = row["reps"]
            .parse::<u16>()
            .ok()
            .and_then(|n| Reps::try_from(n).ok())
        else {
            continue;
        };
        let attempt = Attempt {
            side: side(&row["side"]),
            bodyweight: mass("bodyweight_kg").map(Bodyweight::new),
            share: Share::WHOLE,
            added: mass("added_kg").map_or(Added::NONE, Added::new),
            effort: Effort::Reps(reps),
            left: number(&row, "rir").and_then(|rir| Given::rir(rir).ok()),
            outcome: if row["outcome"] == "fail" {
                Outcome::Missed
            } else {
                Outcome::Done
            },
        };
        let day = date(&row, "date");
        let days = logs
            .0
            .entry((row["athlete"].clone(), row["movement"].clone()))
            .or_default();
        match days.last_mut() {
            Some(last) if last.date == day => last.attempts.push(attempt),
            _ => days.push(TrainingDay {
                date: day,
                attempts: vec![attempt],
            }),
        }
    }
    logs
}

/// What one point is scored by.
#[derive(Debug, Clone, Default)]
pub struct Target {
    /// Training days before it.
    pub days: usize,
    /// The latent 1RM of the day, kg.
    pub now: Option<f64>,
    /// The heaviest success of a test on the day, kg.
    pub test: Option<f64>,
    /// The latent 1RM of the day, kg, where one or two training days lie before it.
    pub first: Option<f64>,
    /// The latent 1RM 8 weeks after, kg.
    pub later: Option<f64>,
    /// Load of the first attempt planned for the day, kg, and whether it was made.
    pub attempt: Option<(f64, bool)>,
}

/// Weeks ahead that forecasts are scored at.
const HORIZON_DAYS: u64 = 56;

/// The points of a folder with their truth, by (as of, on).
pub fn targets(dir: &Path, logs: &Logs) -> BTreeMap<Series, BTreeMap<(NaiveDate, NaiveDate), Target>> {
    let first = logs
        .0
        .values()
        .filter_map(|days| days.first())
        .map(|day| day.date)
        .min()
        .unwrap_or_default();
    let monday = i64::from(
        first.num_days_from_ce() - i32::try_from(first.weekday().num_days_from_monday()).unwrap_or(0),
    );
    let mut all: BTreeMap<Series, BTreeMap<(NaiveDate, NaiveDate), Target>> = BTreeMap::new();
    let mut at = |most: usize, key: Series, as_of: NaiveDate, on: NaiveDate, set: &dyn Fn(&mut Target)| {
        let days = logs
            .days(&key, false)
            .iter()
            .filter(|day| day.date < as_of)
            .count();
        if (1..=most).contains(&days) {
            let target = all.entry(key).or_default().entry((as_of, on)).or_default();
            target.days = days;
            set(target);
        }
    };
    for row in rows(&dir.join("truth.csv")) {
        let on = date(&row, "date");
        let truth = number(&row, "true_1rm_system_kg");
        let test = row["kind"] == "test";
        let week = (i64::from(on.num_days_from_ce()) - monday).div_euclid(7);
        if test || week % 3 == 0 {
            at(usize::MAX, series(&row), on, on, &|t| {
                t.now = truth;
                if test {
                    t.test = number(&row, "tested_1rm_system_kg");
                }
            });
        }
        at(2, series(&row), on, on, &|t| t.first = truth);
        if test || week % 4 == 1 {
            let as_of = on - chrono::Days::new(HORIZON_DAYS);
            at(usize::MAX, series(&row), as_of, on, &|t| t.later = truth);
        }
    }
    for row in rows(&dir.join("attempts.csv"))
        .iter()
        .filter(|row| row["seq"] == "1")
    {
        let load = number(row, "bodyweight_kg").unwrap_or(0.0) + number(row, "added_kg").unwrap_or(0.0);
        let made = row["success"] == "1";
        at(
            usize::MAX,
            series(row),
            date(row, "date"),
            date(row, "date"),
            &|t| t.attempt = Some((load, made)),
        );
    }
    all
}
