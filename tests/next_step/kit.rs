//! One day on a rung, as the rules judge it.

use rungwright::catalogue::Catalogue;
use rungwright::coaching::judge::{Measure, Went, exposures};
use rungwright::units::Rail;

use crate::support::{Athlete, TODAY};

/// The latest day on a rung, judged.
pub struct Judged {
    /// Work load, kg.
    pub work_kg: Option<f64>,
    /// Reps or seconds of the judged sets, best first.
    pub amounts: Vec<f64>,
    /// Never judged.
    pub light: bool,
    /// Its class.
    pub went: Went,
    /// Whether it meets the standard.
    pub meets: bool,
}

/// The athlete's latest day on `ladder`/`rung`, whatever rung they stand on.
pub fn last_day(athlete: &Athlete, ladder: &str, rung: &str) -> Judged {
    let rung = Catalogue::shipped()
        .ladder(ladder)
        .and_then(|ladder| ladder.rung(rung))
        .unwrap();
    athlete.timeline_on(TODAY, |timeline| {
        let days = exposures(timeline, Measure::plain(rung), Rail::Both, None);
        let day = days.last().unwrap();
        Judged {
            work_kg: day.work_kg().map(round),
            amounts: day.judged.iter().map(|set| set.amount).collect(),
            light: day.light,
            went: day.went,
            meets: day.meets,
        }
    })
}

/// The latest day on the rung of a quarter of the lifter on the belt.
pub fn last_day_on_belt(athlete: &Athlete) -> Judged {
    last_day(athlete, "weighted-pull-up", "plus-25")
}

/// Without the dust that 80 + 9.1 leaves.
fn round(kg: f64) -> f64 {
    (kg * 1e6).round() / 1e6
}
