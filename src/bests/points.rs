//! Every set of a rail as a point: bodyweight against load, as a scatter shows it and a fit reads it.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::logbook::record::Id;
use crate::timeline::{LoggedSet, Timeline, believed_reps};
use crate::units::{Added, Bodyweight, Side, SystemLoad};

use super::Formula;
use super::records::{can_be_a_best, moves_nothing};

/// A movement and, where sides are apart, the side.
pub type RailOf<'a> = (&'a str, Option<Side>);

/// A set on its day.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    /// The record.
    pub id: Id,
    /// The day.
    pub date: NaiveDate,
    /// Bodyweight then.
    pub bodyweight: Option<Bodyweight>,
    /// All that was moved.
    pub system: SystemLoad,
    /// What hung from the belt.
    pub added: Added,
    /// Repetitions done.
    pub reps: f64,
    /// Whether another repetition was tried and failed.
    pub missed: bool,
    /// Estimated one-rep max, where the formula is believed.
    pub one_rep_max: Option<SystemLoad>,
    /// Looks like a slip of the finger.
    pub doubted: bool,
}

/// Every set of repetitions with a system load, by movement and side, in order of time.
pub fn points<'a>(timeline: &Timeline<'a>, formula: Formula) -> BTreeMap<RailOf<'a>, Vec<Point>> {
    let mut rails: BTreeMap<RailOf<'a>, Vec<Point>> = BTreeMap::new();
    for (set, doubted) in timeline.sets.iter().zip(timeline.doubted()) {
        if let Some((movement, point)) = set.movement.zip(point(set, doubted, formula)) {
            rails.entry((&movement.id, set.side())).or_default().push(point);
        }
    }
    rails
}

fn point(set: &LoggedSet<'_>, doubted: bool, formula: Formula) -> Option<Point> {
    let plain = can_be_a_best(set) && set.is_reps() && !moves_nothing(set);
    let system = set.system.filter(|_| plain)?;
    Some(Point {
        id: set.id,
        date: set.date,
        bodyweight: set.bodyweight,
        system,
        added: set.added,
        reps: set.amount,
        missed: set.failed(),
        one_rep_max: believed_reps(set).map(|reps| formula.one_rep_max(system, reps)),
        doubted,
    })
}
