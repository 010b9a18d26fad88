//! The filter over a whole log: today's set costs one day's work, an amended one a replay from the snapshot before it.

use chrono::{Datelike, NaiveDate};

use crate::units::Side;

use super::{Belief, DayRead, Filter, Prior, TrainingDay, Tuning};

/// All days of one movement, what the filter thought of them, and snapshots to replay from.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    days: Vec<TrainingDay>,
    reads: Vec<DayRead>,
    /// The filter before the day of this index: the first of each month, the first of all at 0, and the latest.
    snapshots: Vec<(usize, Filter)>,
    filter: Filter,
}

impl History {
    /// A history without a day.
    pub fn new(prior: Prior, tuning: Tuning) -> Self {
        let filter = Filter::new(prior, tuning);
        Self {
            days: Vec::new(),
            reads: Vec::new(),
            snapshots: vec![(0, filter.clone())],
            filter,
        }
    }

    /// Makes `days`, in time order, the log; what has not changed is not read again. Returns how many days were read.
    ///
    /// The result has the same bits as reading all of `days` anew.
    pub fn update(&mut self, days: &[TrainingDay]) -> usize {
        let same = self
            .days
            .iter()
            .zip(days)
            .take_while(|(old, new)| old == new)
            .count();
        let start = if same == self.days.len() {
            same
        } else {
            self.rewind(same)
        };
        let news = days.get(start..).unwrap_or_default();
        for day in news {
            self.read(day);
        }
        news.len()
    }

    /// Goes back to the last snapshot at or before the day of this index; returns the index it stands before.
    fn rewind(&mut self, index: usize) -> usize {
        self.snapshots.retain(|(at, _)| *at == 0 || *at <= index);
        let Some((at, filter)) = self.snapshots.last() else {
            return 0;
        };
        self.filter = filter.clone();
        self.days.truncate(*at);
        self.reads.truncate(*at);
        *at
    }

    fn read(&mut self, day: &TrainingDay) {
        let at = self.days.len();
        if at > 0 {
            // So that one more set on the latest day costs that day's work only.
            if self
                .snapshots
                .last()
                .is_some_and(|(last, _)| !self.opens_month(*last))
            {
                self.snapshots.pop();
            }
            self.snapshots.push((at, self.filter.clone()));
        }
        self.reads.push(self.filter.learn(day));
        self.days.push(day.clone());
    }

    /// Whether the day of this index is the first of its month.
    fn opens_month(&self, index: usize) -> bool {
        let month = |index: usize| {
            self.days
                .get(index)
                .map(|day| (day.date.year(), day.date.month()))
        };
        index == 0 || month(index) != month(index - 1)
    }

    /// What the filter thought of each day.
    pub fn reads(&self) -> &[DayRead] {
        &self.reads
    }

    /// The belief of `side` on `date` from days strictly before it; none without a record of that side by then.
    pub fn belief(&self, side: Option<Side>, date: NaiveDate) -> Option<Belief> {
        let before = self.days.partition_point(|day| day.date < date);
        if before == self.days.len() {
            return self.filter.belief(side, date);
        }
        let (at, filter) = self.snapshots.iter().rev().find(|(at, _)| *at <= before)?;
        let mut filter = filter.clone();
        for day in self.days.get(*at..before)? {
            filter.learn(day);
        }
        filter.belief(side, date)
    }
}
