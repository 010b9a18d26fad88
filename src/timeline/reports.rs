//! Pain reports and phases.

use chrono::{Days, NaiveDate};

use crate::catalogue::{Joint, Movement, Site};
use crate::logbook::record::PhaseKind;
use crate::units::{Rail, Side};

/// One report of pain, 0 to 10.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pain {
    /// The day.
    pub date: NaiveDate,
    /// Where.
    pub site: Site,
    /// The side, if known.
    pub side: Option<Side>,
    /// How much, 0 to 10.
    pub score: u8,
}

impl Pain {
    /// Whether it touches a movement on `rail`: one of the movement's joints (the back counts for every movement), on
    /// this side, on a side not known, or at a movement that both hands do as one.
    pub fn touches(&self, movement: Option<&Movement>, rail: Rail) -> bool {
        let here = |joint: Joint| movement.is_some_and(|movement| movement.joints.contains(&joint));
        let both_hands = movement.is_some_and(|movement| !movement.is_sided());
        (both_hands || rail.touched_by(self.side)) && self.site.joint().is_none_or(here)
    }
}

/// A deload's length after its first day, days. A week: common practice, no source.
const DELOAD_DAYS_AFTER: u64 = 6;

/// Phases: deload weeks, and what bodyweight is meant to do.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Phases {
    deloads: Vec<NaiveDate>,
    /// Every change of the phase of bodyweight, in order.
    changes: Vec<(PhaseKind, NaiveDate)>,
    /// The phase of bodyweight in force, and the first day of its unbroken run.
    current: Option<(PhaseKind, NaiveDate)>,
}

impl Phases {
    /// Takes in the next phase, in order of time.
    pub(super) fn add(&mut self, kind: PhaseKind, date: NaiveDate) {
        match (kind, self.current) {
            (PhaseKind::Deload, _) => self.deloads.push(date),
            (kind, Some((running, _))) if kind == running => {}
            (kind, _) => {
                self.changes.push((kind, date));
                self.current = Some((kind, date));
            }
        }
    }

    /// Whether `date` lies in a deload.
    pub fn in_deload(&self, date: NaiveDate) -> bool {
        self.deloads.iter().any(|&first| {
            first <= date
                && first
                    .checked_add_days(Days::new(DELOAD_DAYS_AFTER))
                    .is_none_or(|last| date <= last)
        })
    }

    /// The first day of the cut that is in force.
    pub fn cut_since(&self) -> Option<NaiveDate> {
        self.current
            .filter(|(kind, _)| *kind == PhaseKind::Cut)
            .map(|(_, since)| since)
    }

    /// Each phase with its first and last day up to `on`: those of bodyweight, then deloads.
    pub fn spans(&self, on: NaiveDate) -> Vec<(PhaseKind, NaiveDate, NaiveDate)> {
        let ends = self.changes.iter().skip(1).map(|(_, date)| *date).chain([on]);
        let weight = self
            .changes
            .iter()
            .zip(ends)
            .map(|((kind, from), until)| (*kind, *from, until));
        let deloads = self.deloads.iter().map(|first| {
            let last = first.checked_add_days(Days::new(DELOAD_DAYS_AFTER)).unwrap_or(on);
            (PhaseKind::Deload, *first, last.min(on))
        });
        weight.chain(deloads).collect()
    }

    /// The phase of bodyweight in force and since when.
    pub fn current(&self) -> Option<(PhaseKind, NaiveDate)> {
        self.current
    }
}
