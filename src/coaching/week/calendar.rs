//! A week as ISO 8601 counts it: Monday first, week 1 holds the year's first Thursday.

use chrono::{Datelike, Days, NaiveDate};

/// Days of a week after its Monday.
const DAYS_AFTER_MONDAY: u64 = 6;

/// A calendar week, Monday to Sunday.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Week {
    monday: NaiveDate,
}

impl Week {
    /// The week that holds `date`.
    pub fn of(date: NaiveDate) -> Self {
        let since = u64::from(date.weekday().num_days_from_monday());
        Self {
            monday: date.checked_sub_days(Days::new(since)).unwrap_or(date),
        }
    }

    /// So many weeks earlier; the earliest that can be written where there is none.
    pub fn earlier(self, weeks: u32) -> Self {
        let days = Days::new(u64::from(weeks) * 7);
        Self {
            monday: self.monday.checked_sub_days(days).unwrap_or(self.monday),
        }
    }

    /// Its first day.
    pub fn monday(self) -> NaiveDate {
        self.monday
    }

    /// Its last day.
    pub fn sunday(self) -> NaiveDate {
        let days = Days::new(DAYS_AFTER_MONDAY);
        self.monday.checked_add_days(days).unwrap_or(self.monday)
    }

    /// Its days, in order.
    pub fn days(self) -> impl Iterator<Item = NaiveDate> {
        self.monday.iter_days().take(7)
    }

    /// Whether `date` is one of its days.
    pub fn contains(self, date: NaiveDate) -> bool {
        (self.monday..=self.sunday()).contains(&date)
    }

    /// Its name by ISO 8601: `2026-W48`. The year is the one that holds its Thursday.
    pub fn name(self) -> String {
        let week = self.monday.iso_week();
        format!("{:04}-W{:02}", week.year(), week.week())
    }
}
