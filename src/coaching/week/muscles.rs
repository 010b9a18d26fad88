//! Hard sets a muscle group, fractional: a set counts whole for a group that it trains directly, half for one that it trains
//! along the way (Pelland et al. 2024: weighting indirect sets by 0.5 had the strongest evidence). Which movement trains what
//! is the table in `movements.ron` (common practice, no source).
//!
//! A set of one side trains that side's muscles only. Each side is counted by itself, and the side with more is shown; a set
//! of such a movement without a side was done with both, one after the other.

use chrono::NaiveDate;

use crate::catalogue::{Movement, Muscle};
use crate::timeline::LoggedSet;
use crate::units::Side;

use super::hard;

/// What a set gives to a group along the way (Pelland et al. 2024).
pub const INDIRECT: f64 = 0.5;
/// Sets a week where most go to failure. Common practice, no source.
const TO_FAILURE: Range = Range { low: 4.0, high: 10.0 };
/// Sets a week where most keep 1 to 3 repetitions in reserve, and where nobody said. Common practice, no source.
const IN_RESERVE: Range = Range { low: 8.0, high: 20.0 };

/// Hard sets a week that a group is meant to get, both ends included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// At least.
    pub low: f64,
    /// At most.
    pub high: f64,
}

/// Where the sets of a group lie against their range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Status {
    /// Fewer than the range.
    Below,
    /// Within it, ends included.
    Within,
    /// More.
    Above,
}

impl Status {
    /// The word that answers use.
    pub fn id(self) -> &'static str {
        match self {
            Status::Below => "below",
            Status::Within => "within",
            Status::Above => "above",
        }
    }
}

/// The hard sets of one muscle group in a week.
#[derive(Debug, Clone, PartialEq)]
pub struct Group<'a> {
    /// Which.
    pub muscle: Muscle,
    /// Whole sets.
    pub direct: u32,
    /// Sets that count half.
    pub indirect: u32,
    /// The side that is counted, where the sides differ, and the sets of the other.
    pub side: Option<(Side, f64)>,
    /// What it is meant to get, by how hard its sets were.
    pub range: Range,
    /// Whether most of its sets went to failure.
    pub to_failure: bool,
    /// Where the sets come from, in order of days.
    pub from: Vec<From<'a>>,
}

/// Sets of one movement on one day that count for a group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct From<'a> {
    /// The movement.
    pub movement: &'a Movement,
    /// The day.
    pub date: NaiveDate,
    /// Whether they count whole.
    pub direct: bool,
    /// How many.
    pub sets: u32,
}

impl Group<'_> {
    /// Sets in all: whole ones, and half of those along the way.
    pub fn sets(&self) -> f64 {
        f64::from(self.direct) + INDIRECT * f64::from(self.indirect)
    }

    /// Where it lies; none where no set trained it, because nobody said that it should be trained.
    pub fn status(&self) -> Option<Status> {
        let sets = self.sets();
        (sets > 0.0).then_some(if sets < self.range.low {
            Status::Below
        } else if sets <= self.range.high {
            Status::Within
        } else {
            Status::Above
        })
    }

    /// How many sets are missing to the low end of the range; 0 from there on.
    pub fn missing(&self) -> f64 {
        (self.range.low - self.sets()).max(0.0)
    }
}

/// Every group, with what `sets` gave it.
pub(super) fn groups<'a>(sets: &[LoggedSet<'a>]) -> Vec<Group<'a>> {
    Muscle::ALL.map(|muscle| group(sets, muscle)).into()
}

fn group<'a>(sets: &[LoggedSet<'a>], muscle: Muscle) -> Group<'a> {
    let [left, right] = [Side::Left, Side::Right].map(|side| of_side(sets, muscle, side));
    let more = left.sets().total_cmp(&right.sets());
    let (mut shown, side, other) = if more.is_lt() {
        (right, Side::Right, left.sets())
    } else {
        (left, Side::Left, right.sets())
    };
    shown.side = more.is_ne().then_some((side, other));
    shown
}

/// What one side's muscle got.
fn of_side<'a>(sets: &[LoggedSet<'a>], muscle: Muscle, side: Side) -> Group<'a> {
    let mut group = Group {
        muscle,
        direct: 0,
        indirect: 0,
        side: None,
        range: IN_RESERVE,
        to_failure: false,
        from: Vec::new(),
    };
    let mut failed = 0.0;
    for set in sets.iter().filter(|set| hard::is_hard(set) && trains(set, side)) {
        let Some(movement) = set.movement else { continue };
        let direct = movement.direct.contains(&muscle);
        if !direct && !movement.indirect.contains(&muscle) {
            continue;
        }
        let (count, weight) = if direct {
            (&mut group.direct, 1.0)
        } else {
            (&mut group.indirect, INDIRECT)
        };
        *count += 1;
        if hard::went_to_failure(set) {
            failed += weight;
        }
        let same = |from: &&mut From<'_>| from.movement.id == movement.id && from.date == set.date;
        match group.from.iter_mut().find(same) {
            Some(from) => from.sets += 1,
            None => group.from.push(From {
                movement,
                date: set.date,
                direct,
                sets: 1,
            }),
        }
    }
    group.to_failure = failed > group.sets() / 2.0;
    if group.to_failure {
        group.range = TO_FAILURE;
    }
    group
}

/// Whether a set trains this side: one of both hands does, and one whose side nobody logged.
pub(super) fn trains(set: &LoggedSet<'_>, side: Side) -> bool {
    !set.is_sided() || set.side().is_none_or(|logged| logged == side)
}
