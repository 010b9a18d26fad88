//! Days, told from the day that is asked about.

use chrono::{Days, NaiveDate};

/// A day, so many days before the one that is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Day(u64);

/// The day that is asked about, unless a test says otherwise.
pub const TODAY: Day = Day(0);

/// `3.days_ago()`.
pub trait Ago {
    /// So many days before the day that is asked about.
    fn days_ago(self) -> Day;
}

impl Ago for i32 {
    fn days_ago(self) -> Day {
        Day(self as u64)
    }
}

impl Day {
    /// On the calendar: today is 20 March 2026 throughout.
    pub fn date(self) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 3, 20).unwrap() - Days::new(self.0)
    }
}
