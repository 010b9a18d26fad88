//! What must have been logged before a rung is tried, and where somebody without a record begins.

use crate::catalogue::{Entry, Ladder, Rung};
use crate::timeline::{Form, LoggedSet, Timeline};
use crate::units::Rail;

use super::judge::{Measure, by_day, is_about};
use super::standing::{Line, Standing};

/// Plain sets of the asked movement on its side.
fn plain_sets<'t, 'a>(
    timeline: &'t Timeline<'a>,
    entry: &'t Entry,
    rail: Rail,
) -> impl Iterator<Item = &'t LoggedSet<'a>> {
    timeline.of_form(Form::plain(&entry.movement), rail)
}

/// Whether so much has been logged in one set of the last 365 days; a missed set's completed reps count.
pub fn holds(timeline: &Timeline<'_>, entry: &Entry, rail: Rail) -> bool {
    plain_sets(timeline, entry, rail).any(|set| {
        let heavy_enough = entry.ratio.is_none_or(|ratio| {
            set.system
                .zip(set.bodyweight)
                .is_some_and(|(load, body)| is_about(load, ratio * body.kg()))
        });
        !set.broke_form() && set.amount >= entry.at_least.value() && heavy_enough
    })
}

/// Whether no set of the asked movement is logged at all.
pub fn is_untested(timeline: &Timeline<'_>, entry: &Entry, rail: Rail) -> bool {
    plain_sets(timeline, entry, rail).next().is_none()
}

/// The first entry condition of `rung` that does not hold.
pub fn missing<'r>(timeline: &Timeline<'_>, rung: &'r Rung, rail: Rail) -> Option<&'r Entry> {
    rung.entry.iter().find(|entry| !holds(timeline, entry, rail))
}

/// Where a rail without a record begins.
#[derive(Debug, Clone, Copy)]
pub struct Named<'a> {
    /// The rung.
    pub rung: &'a Rung,
    /// Whether its standard is met already.
    pub met: bool,
    /// Whether the rail would begin higher, were the other side there.
    pub held: bool,
}

/// The rung to begin at for this rail alone, at or below `limit` (in half rungs): the highest open main rung that is
/// first or has its entry, whose standard is not met; where all are met, the highest.
pub fn named<'a>(
    timeline: &Timeline<'a>,
    ladder: &'a Ladder,
    rail: Rail,
    limit: Option<usize>,
) -> Option<Named<'a>> {
    let mut met_above = false;
    let main: Vec<&Rung> = ladder.main_line().collect();
    let mut met = vec![false; main.len()];
    for (place, rung) in main.iter().enumerate().rev() {
        met_above = met_above || is_standard_met(timeline, rung, rail);
        if let Some(known) = met.get_mut(place) {
            *known = met_above;
        }
    }
    let is_met = |place: usize| met.get(place).copied().unwrap_or(false);
    let mut below: Option<usize> = None;
    let mut found: Option<Named<'a>> = None;
    for (place, rung) in Line::of(ladder, timeline).open() {
        let entered = below.is_none_or(|below| is_met(below) && missing(timeline, rung, rail).is_none());
        below = Some(place);
        if limit.is_some_and(|limit| ladder.half_rungs(rung) > limit) {
            break;
        }
        let candidate = Named {
            rung,
            met: is_met(place),
            held: false,
        };
        // An unmet standard goes before a met one; within either the highest.
        if entered && found.is_none_or(|found| found.met || !candidate.met) {
            found = Some(candidate);
        }
    }
    found
}

/// Whether the standard was met on two days, far enough apart, in the last 365. Falls don't count here.
fn is_standard_met(timeline: &Timeline<'_>, rung: &Rung, rail: Rail) -> bool {
    let measure = Measure::plain(rung);
    let days: Vec<chrono::NaiveDate> = by_day(timeline, Form::of(rung), rail)
        .into_iter()
        .filter(|(_, sets)| measure.is_met_on(sets))
        .map(|(date, _)| date)
        .collect();
    let apart = days
        .first()
        .zip(days.last())
        .map_or(0, |(first, last)| (*last - *first).num_days());
    days.len() >= usize::from(rung.standard.days) && apart >= i64::from(rung.standard.days_apart)
}

/// The rung that no-record names for `rail`, not above the other rail.
pub fn begin_at<'a>(
    timeline: &Timeline<'a>,
    ladder: &'a Ladder,
    rail: Rail,
    other: Option<(Rail, Option<Standing<'a>>)>,
) -> Option<Named<'a>> {
    let limit = other.and_then(|(other, standing)| {
        let rung = standing
            .map(|standing| standing.rung)
            .or_else(|| Some(named(timeline, ladder, other, None)?.rung))?;
        Some(ladder.half_rungs(rung))
    });
    let begins = named(timeline, ladder, rail, limit).or_else(|| {
        let first = ladder.main_line().next()?;
        Some(Named {
            rung: first,
            met: false,
            held: false,
        })
    })?;
    let alone = limit.and_then(|_| named(timeline, ladder, rail, None));
    let held = alone.is_some_and(|alone| ladder.half_rungs(alone.rung) > ladder.half_rungs(begins.rung));
    Some(Named { held, ..begins })
}
