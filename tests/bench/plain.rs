//! What a spreadsheet would say: the best estimated one-rep max of the last 42 days.

use chrono::{Days, NaiveDate};
use rungwright::strength::TrainingDay;
use rungwright::units::{Effort, SystemLoad};

use crate::logs::{self, Series};

/// Days that a best counts for. Common practice, no source.
const DAYS: u64 = 42;
/// Repetitions beyond which no formula is believed (Mayhew 1995 and later reviews: up to about 10 to 12).
const MOST_REPS: f64 = 12.0;

/// Epley's formula, w(1 + R/30), a single being its own load, on system load in kg; R = repetitions done, a reported
/// reserve added or not.
pub fn best(days: &[TrainingDay], as_of: NaiveDate, with_reserve: bool) -> Option<f64> {
    let from = as_of.checked_sub_days(Days::new(DAYS))?;
    days.iter()
        .filter(|day| day.date >= from && day.date < as_of)
        .flat_map(|day| &day.attempts)
        .filter_map(|set| {
            let Effort::Reps(reps) = set.effort else {
                return None;
            };
            let load = SystemLoad::of(set.share, set.bodyweight?, set.added).kg();
            let left = set
                .left
                .filter(|_| with_reserve)
                .map_or(0.0, |left| left.reserve().reps());
            let all = f64::from(reps.count()) + left;
            let estimate = if all <= 1.0 {
                load
            } else {
                load * (1.0 + all / 30.0)
            };
            (reps.count() > 0 && all <= MOST_REPS).then_some(estimate)
        })
        .reduce(f64::max)
}

/// The days with the sets of the series' side only.
pub fn of_side(days: &[TrainingDay], key: &Series) -> Vec<TrainingDay> {
    let side = logs::side(&key.2);
    let mut own = days.to_vec();
    for day in &mut own {
        day.attempts.retain(|set| set.side.is_none() || set.side == side);
    }
    own
}
