//! One movement of one athlete's log as the filter reads it.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::logbook::record::Id;
use crate::timeline::{LoggedSet, Timeline, WeighIns};
use crate::units::{Added, Bodyweight, Mass, Outcome, Share, Side};

use super::{Basis, Believed, Kept, Suspect};
use crate::strength::{Attempt, Belief, DayRead, Filter, History, LinkKind, Prior, TrainingDay, Tuning};

/// Which record a set of a [`TrainingDay`] is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetAt {
    /// Its id.
    pub id: Id,
    /// Its side.
    pub side: Option<Side>,
    /// The bodyweight it counts with everywhere but in the filter, which doubts odd ones by itself.
    pub bodyweight: Option<Bodyweight>,
}

/// The training days of one movement, both sides together, and which record each set is.
///
/// Sets of the plain form count: belt load or measured help, or nothing at all. Sets with help that nobody measured, with broken
/// form, or of a rung that the catalogue doesn't know say nothing about a load. What can't be (system load up to 5 kg, over 60
/// repetitions) is dropped by the filter, and a bodyweight that jumps is doubted by it, so both come as logged.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    movement: String,
    share: Share,
    days: Vec<TrainingDay>,
    sets: Vec<Vec<SetAt>>,
    /// Beliefs begin after this day: before it nobody had ever stood on a scale.
    weighed: Option<NaiveDate>,
}

/// Stands for a bodyweight where none of it is lifted and none was ever logged; cancels out of every load.
const ANY_BODYWEIGHT: Bodyweight = Bodyweight::new(Mass::from_kg(70.0));

impl Series {
    /// Every movement of the log that has a system load, in order of id.
    pub fn all(timeline: &Timeline<'_>) -> Vec<Series> {
        let mut by_movement: BTreeMap<&str, Vec<&LoggedSet<'_>>> = BTreeMap::new();
        for set in timeline.sets.iter().filter(|set| says_something(set)) {
            if let Some(movement) = set.movement {
                by_movement.entry(&movement.id).or_default().push(set);
            }
        }
        by_movement
            .into_values()
            .filter_map(|sets| Self::gather(&sets, timeline, |set| set.added))
            .collect()
    }

    /// One movement of the log; none where it has no system load or no set.
    pub fn of(timeline: &Timeline<'_>, movement: &str) -> Option<Series> {
        let is_it = |set: &&LoggedSet<'_>| set.movement.is_some_and(|known| known.id == movement);
        let sets: Vec<&LoggedSet<'_>> = timeline
            .sets
            .iter()
            .filter(is_it)
            .filter(|set| says_something(set))
            .collect();
        Self::gather(&sets, timeline, |set| set.added)
    }

    /// Sets of one movement whose load the caller knows better: what `added` says stands for the belt.
    pub(in crate::strength) fn with_loads(
        timeline: &Timeline<'_>,
        is_it: impl Fn(&LoggedSet<'_>) -> bool,
        added: impl Fn(&LoggedSet<'_>) -> Added,
    ) -> Option<Series> {
        let counts = |set: &&LoggedSet<'_>| set.is_reps() && set.set.outcome != Outcome::Form && is_it(set);
        let sets: Vec<&LoggedSet<'_>> = timeline.sets.iter().filter(counts).collect();
        Self::gather(&sets, timeline, added)
    }

    fn gather(
        sets: &[&LoggedSet<'_>],
        timeline: &Timeline<'_>,
        added: impl Fn(&LoggedSet<'_>) -> Added,
    ) -> Option<Series> {
        let movement = sets.first()?.movement?;
        let mut series = Series {
            movement: movement.id.clone(),
            share: timeline.share(movement, None)?,
            days: Vec::new(),
            sets: Vec::new(),
            weighed: None,
        };
        let weigh_ins = &timeline.weigh_ins;
        let weighed = weigh_ins.days().first().map(|day| day.date);
        if series.share != Share::OUTSIDE {
            series.weighed = Some(weighed?);
        }
        let mut before: Option<NaiveDate> = None;
        for day in sets.chunk_by(|a, b| a.date == b.date) {
            let Some(first) = day.first() else { continue };
            let known = day_bodyweight(weigh_ins, first.date, before)
                .or_else(|| (series.share == Share::OUTSIDE && before.is_none()).then_some(ANY_BODYWEIGHT));
            let attempts = day.iter().map(|set| Attempt {
                side: set.set.side,
                bodyweight: set
                    .set
                    .bodyweight
                    .map(|typed| Bodyweight::new(typed.mass()))
                    .or(known),
                share: series.share,
                added: added(set),
                effort: set.set.effort,
                left: set.set.left,
                outcome: set.set.outcome,
            });
            series.days.push(TrainingDay {
                date: first.date,
                attempts: attempts.collect(),
            });
            let at = day.iter().map(|set| SetAt {
                id: set.id,
                side: set.set.side,
                bodyweight: set.bodyweight,
            });
            series.sets.push(at.collect());
            before = Some(first.date);
        }
        Some(series)
    }

    /// The movement's id.
    pub fn movement(&self) -> &str {
        &self.movement
    }

    /// The part of the body that it lifts.
    pub fn share(&self) -> Share {
        self.share
    }

    /// Its days in order, and for each the records of its sets in order.
    pub fn days(&self) -> impl Iterator<Item = (&TrainingDay, &[SetAt])> {
        self.days.iter().zip(self.sets.iter().map(Vec::as_slice))
    }

    /// The sides that its sets name: none, left, right.
    pub fn sides(&self) -> Vec<Option<Side>> {
        [None, Some(Side::Left), Some(Side::Right)]
            .into_iter()
            .filter(|side| self.sets.iter().flatten().any(|set| set.side == *side))
            .collect()
    }

    /// Calls `answer` once for each of `dates`, which come in order of time, with what was known on its morning: the sets of
    /// days strictly before. Each set is read once, whatever the number of dates.
    pub fn on_each(&self, dates: &[NaiveDate], mut answer: impl FnMut(&Standpoint<'_>)) {
        let mut filter = self.filter();
        let mut ahead = self.days.iter().peekable();
        for date in dates {
            while let Some(day) = ahead.next_if(|day| day.date < *date) {
                filter.learn(day);
            }
            answer(&Standpoint {
                filter: &filter,
                date: *date,
                known: self.weighed.is_none_or(|weighed| weighed < *date),
            });
        }
    }

    /// The belief of a side on a date from the sets of days before, and which these are.
    pub(in crate::strength) fn belief(
        &self,
        side: Option<Side>,
        date: NaiveDate,
        kept: &Kept,
        what: Option<LinkKind>,
    ) -> Option<(Belief, Basis)> {
        kept.read(self, what, |history| self.belief_in(history, side, date))
    }

    fn belief_in(&self, history: &History, side: Option<Side>, date: NaiveDate) -> Option<(Belief, Basis)> {
        if self.weighed.is_some_and(|weighed| weighed >= date) {
            return None;
        }
        let belief = history.belief(side, date)?;
        let before = self.days.partition_point(|day| day.date < date);
        let reads = history.reads().get(..before)?;
        let basis = Basis::of(self, side, reads, &belief)?;
        Some((belief, basis))
    }

    /// The beliefs of all sides on the timeline's day, with the sets that look like typos.
    pub(in crate::strength) fn believed(&self, timeline: &Timeline<'_>, kept: &Kept) -> Vec<Believed> {
        kept.read(self, None, |history| {
            let known = self.sides().into_iter().filter_map(|side| {
                let (belief, basis) = self.belief_in(history, side, timeline.on)?;
                Some(Believed {
                    movement: self.movement.clone(),
                    side,
                    share: self.share,
                    belief,
                    bodyweight: timeline.bodyweight(),
                    basis,
                    suspects: self.suspects(history.reads(), side),
                })
            });
            known.collect()
        })
    }

    /// Its days, in order.
    pub(super) fn training_days(&self) -> &[TrainingDay] {
        &self.days
    }

    /// What is believed before the first day.
    pub(super) fn prior(&self) -> Prior {
        Prior::of(&self.movement, self.share)
    }

    fn filter(&self) -> Filter {
        Filter::new(self.prior(), Tuning::default())
    }

    fn suspects(&self, reads: &[DayRead], side: Option<Side>) -> Vec<Suspect> {
        let mut found = Vec::new();
        for ((day, sets), read) in self.days().zip(reads) {
            for (set, read) in sets.iter().zip(&read.sets) {
                if let Some(read) = read.filter(|read| set.side == side && read.looks_like_a_typo()) {
                    found.push(Suspect {
                        id: set.id,
                        date: day.date,
                        probability: read.outlier,
                        likely: read.likely,
                    });
                }
            }
        }
        found
    }
}

/// A date, and all that was known by then.
#[derive(Debug)]
pub struct Standpoint<'f> {
    filter: &'f Filter,
    date: NaiveDate,
    known: bool,
}

impl Standpoint<'_> {
    /// The belief of a side; none without an earlier record of it.
    pub fn belief(&self, side: Option<Side>) -> Option<Belief> {
        self.filter.belief(side, self.date).filter(|_| self.known)
    }
}

/// Whether a set says something about a load: the plain form, in repetitions, the movement's standard kept.
fn says_something(set: &LoggedSet<'_>) -> bool {
    let plain = set.form.is_some_and(|form| form.help.is_none());
    plain && set.is_reps() && set.set.outcome != Outcome::Form
}

/// The bodyweight of a training day whose sets give none: that day's weigh-ins as logged, else the latest since the training
/// day `before`; on a first day also an earlier one, else the first after. Where there is none, the filter keeps its trend.
fn day_bodyweight(weigh_ins: &WeighIns, date: NaiveDate, before: Option<NaiveDate>) -> Option<Bodyweight> {
    let days = weigh_ins.days();
    let until = days.partition_point(|day| day.date <= date);
    let latest = until.checked_sub(1).and_then(|at| days.get(at));
    match (latest, before) {
        (Some(day), Some(before)) => (day.date > before).then_some(day.mean),
        (Some(day), None) => Some(day.mean),
        (None, Some(_)) => None,
        (None, None) => days.first().map(|day| day.mean),
    }
}
