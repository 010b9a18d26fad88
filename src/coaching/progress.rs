//! How far a rail is on each rung: the days on which its standard was met, and whether that passes it.

use chrono::NaiveDate;

use crate::catalogue::{Ladder, Rung, Way};
use crate::timeline::{Form, LoggedSet, Timeline};
use crate::units::Rail;

use super::judge::{Measure, by_day};

/// How far one rail is on one rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Progress<'l> {
    /// The rung.
    pub rung: &'l Rung,
    /// The days of the last 365 on which the standard was met, in order.
    pub met_on: Vec<NaiveDate>,
    /// Whether that is often enough and far enough apart, here or on a higher rung of the main line.
    pub passed: bool,
}

impl Progress<'_> {
    /// The day on which the standard was met often enough and far enough apart, by this rung's own days alone.
    pub fn passed_on(&self) -> Option<NaiveDate> {
        let first = *self.met_on.first()?;
        let asked = usize::from(self.rung.standard.days.max(1));
        let apart = i64::from(self.rung.standard.days_apart);
        let enough = self.met_on.iter().enumerate().filter(|(nth, _)| nth + 1 >= asked);
        enough
            .map(|(_, date)| *date)
            .find(|date| (*date - first).num_days() >= apart)
    }
}

/// Every rung of `ladder`, in its order.
pub fn progress<'l>(timeline: &Timeline<'_>, ladder: &'l Ladder, rail: Rail) -> Vec<Progress<'l>> {
    let mut all: Vec<Progress<'l>> = ladder
        .rungs
        .iter()
        .map(|rung| one(timeline, rung, rail))
        .collect();
    let mut met_above = false;
    for progress in all
        .iter_mut()
        .rev()
        .filter(|progress| progress.rung.way == Way::Main)
    {
        met_above = met_above || progress.passed;
        progress.passed = met_above;
    }
    all
}

fn one<'l>(timeline: &Timeline<'_>, rung: &'l Rung, rail: Rail) -> Progress<'l> {
    let measure = Measure::plain(rung);
    let met_on: Vec<NaiveDate> = by_day(timeline, Form::of(rung), rail)
        .into_iter()
        .filter(|(_, sets)| measure.is_met_on(sets))
        .map(|(date, _)| date)
        .collect();
    let mut progress = Progress {
        rung,
        met_on,
        passed: false,
    };
    progress.passed = progress.passed_on().is_some();
    progress
}

/// The sets of `rung`'s form on the last day before `day` that has any.
pub fn last_time<'t, 'a>(
    timeline: &'t Timeline<'a>,
    rung: &Rung,
    rail: Rail,
    day: NaiveDate,
) -> Option<(NaiveDate, Vec<&'t LoggedSet<'a>>)> {
    by_day(timeline, Form::of(rung), rail)
        .into_iter()
        .rfind(|(date, _)| *date < day)
}
