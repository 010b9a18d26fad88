//! Strength over the period, as it was logged and as it is believed.

use std::collections::BTreeMap;

use chrono::{NaiveDate, TimeDelta};

use crate::catalogue::Catalogue;
use crate::strength::{Coverage, Series};
use crate::timeline::{LoggedSet, Timeline, best_e1rm};
use crate::units::Side;

use super::super::words::movement_on;

/// A movement is plotted once this many days give an estimate: fewer make no line.
const FEWEST_DAYS: usize = 3;
/// Most movements that are plotted: what fits on a page beside everything else.
const MOST: usize = 4;
/// A band has about so many corners.
const STEPS: i64 = 24;

/// Strength in one movement and side.
#[derive(Debug, Clone, PartialEq)]
pub struct Strength {
    /// "Pull-up", "One-arm pull-up, left".
    pub title: String,
    /// Each training day's best estimate from its own sets (Epley), kg of system load; true for a logged single.
    pub days: Vec<(NaiveDate, f64, bool)>,
    /// The belief, where there is one, in order of date.
    pub band: Vec<Band>,
}

/// The belief on one day, kg of system load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The day.
    pub date: NaiveDate,
    /// Lower end of the 80 % range.
    pub low: f64,
    /// The middle.
    pub middle: f64,
    /// Upper end of the 80 % range.
    pub high: f64,
}

/// The movements trained most in the period, with their days.
pub(super) fn strengths(now: &Timeline<'_>, catalogue: &Catalogue, from: NaiveDate) -> Vec<Strength> {
    let mut rails: BTreeMap<(&str, Option<Side>), Vec<&LoggedSet<'_>>> = BTreeMap::new();
    for set in now.sets.iter().filter(|set| set.date >= from && !set.odd) {
        let plain = set.form.is_some_and(|form| form.help.is_none());
        if let (Some(movement), true) = (set.movement, plain) {
            rails.entry((&movement.id, set.side())).or_default().push(set);
        }
    }
    let mut series: BTreeMap<&str, Option<Series>> = BTreeMap::new();
    for (movement, _) in rails.keys() {
        series
            .entry(movement)
            .or_insert_with(|| Series::of(now, movement));
    }
    let mut all: Vec<(usize, Strength)> = rails
        .into_iter()
        .filter_map(|((movement, side), sets)| {
            let days = days(&sets);
            let band = match series.get(movement) {
                Some(Some(series)) => band(series, side, from, now.on),
                _ => Vec::new(),
            };
            let plotted = days.len() >= FEWEST_DAYS;
            plotted.then(|| (sets.len(), strength(movement, side, (days, band), catalogue)))
        })
        .collect();
    all.sort_by_key(|(count, _)| std::cmp::Reverse(*count));
    all.into_iter().map(|(_, strength)| strength).take(MOST).collect()
}

fn days(sets: &[&LoggedSet<'_>]) -> Vec<(NaiveDate, f64, bool)> {
    let mut by_day: BTreeMap<NaiveDate, Vec<&LoggedSet<'_>>> = BTreeMap::new();
    for set in sets {
        by_day.entry(set.date).or_default().push(set);
    }
    by_day
        .into_iter()
        .filter_map(|(date, sets)| {
            let best = best_e1rm(sets.iter().copied())?.kg();
            let single = sets.iter().any(|set| {
                set.is_reps() && set.amount == 1.0 && set.system.is_some_and(|load| load.kg() >= best)
            });
            Some((date, best, single))
        })
        .collect()
}

fn strength(
    movement: &str,
    side: Option<Side>,
    (days, band): (Vec<(NaiveDate, f64, bool)>, Vec<Band>),
    catalogue: &Catalogue,
) -> Strength {
    let title = movement_on(catalogue, movement, side);
    Strength { title, days, band }
}

/// The belief about every fourth day of the period, and on its last.
fn band(series: &Series, side: Option<Side>, from: NaiveDate, on: NaiveDate) -> Vec<Band> {
    let days = (on - from).num_days().max(0);
    let step = (days / STEPS).max(1);
    let mut dates: Vec<NaiveDate> = (0..=days / step)
        .map(|nth| from + TimeDelta::days(nth * step))
        .collect();
    dates.push(on);
    dates.dedup();
    let mut bands = Vec::new();
    let mut at = dates.iter();
    series.on_each(&dates, |then| {
        let (Some(date), Some(belief)) = (at.next(), then.belief(side)) else {
            return;
        };
        let eighty = belief.band(Coverage::Eighty);
        bands.push(Band {
            date: *date,
            low: eighty.low.kg(),
            middle: belief.one_rep_max().kg(),
            high: eighty.high.kg(),
        });
    });
    bands
}
