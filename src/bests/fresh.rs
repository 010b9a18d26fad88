//! New bests, the moment they stand: what the log holds now that it did not hold before.
//!
//! A doubted set is announced when something confirms it, not before.

use chrono::NaiveDate;

use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::logbook::Log;
use crate::logbook::record::{Fact, Id, Record};
use crate::timeline::Timeline;
use crate::units::{Added, Bodyweight, Side, SystemLoad};

use super::records::{Best, Kind, Size, undoubted};
use super::{Formula, ROUNDING};

/// A set that became a best.
#[derive(Debug, Clone, PartialEq)]
pub struct NewBest {
    /// The set that was it, or that confirmed it.
    pub set: Id,
    /// The movement's id.
    pub movement: String,
    /// The side, for a movement whose sides are apart.
    pub side: Option<Side>,
    /// For how many repetitions at least, or how long.
    pub size: Size,
    /// By which measures, in their order.
    pub kinds: Vec<Kind>,
    /// What the first of them was before.
    pub before: Option<f64>,
    /// Its value now.
    pub value: f64,
    /// The day of the set.
    pub date: NaiveDate,
    /// Bodyweight then.
    pub bodyweight: Option<Bodyweight>,
    /// What hung from the belt.
    pub added: Added,
    /// All that was moved.
    pub system: Option<SystemLoad>,
}

/// New bests that the set of this id brought to `log`, a confirmed older one too.
pub fn new_bests_by(
    log: &Log,
    catalogue: &Catalogue,
    counted: Counted,
    formula: Formula,
    set: Id,
) -> Vec<NewBest> {
    let Some(on) = log.records.last().map(|record| record.at.date()) else {
        return Vec::new();
    };
    let movement = log
        .records
        .iter()
        .find(|record| record.id == set)
        .and_then(movement_of);
    // Sets of other movements hold other bests; only what they weighed counts here.
    let matters = |record: &&Record| match &record.what {
        Fact::Set(other) => Some(other.movement.as_str()) == movement || other.bodyweight.is_some(),
        Fact::WeighIn { .. } | Fact::Profile { .. } => true,
        _ => false,
    };
    let of_movement = |counts: &dyn Fn(&Record) -> bool| Log {
        name: log.name.clone(),
        folder: log.folder.clone(),
        records: log
            .records
            .iter()
            .filter(|record| matters(record) && counts(record))
            .cloned()
            .collect(),
    };
    let (with, without) = (of_movement(&|_| true), of_movement(&|record| record.id != set));
    let before = Timeline::counting(&without, catalogue, on, counted);
    let after = Timeline::counting(&with, catalogue, on, counted);
    let mut new = new_bests(&before, &after, formula);
    new.retain(|best| Some(best.movement.as_str()) == movement);
    new
}

fn movement_of(record: &Record) -> Option<&str> {
    match &record.what {
        Fact::Set(set) => Some(&set.movement),
        _ => None,
    }
}

/// The bests that each set of the timeline's day was when it was logged, or confirmed.
pub fn new_bests_today(timeline: &Timeline<'_>, formula: Formula) -> Vec<NewBest> {
    let today = timeline.sets.iter().filter(|set| set.date == timeline.on);
    today
        .flat_map(|set| {
            let movement = set.set.movement.as_str();
            let until = |order: usize| {
                timeline.with_only(|other| other.set.movement == movement && other.order < order)
            };
            let mut new = new_bests(&until(set.order), &until(set.order + 1), formula);
            new.iter_mut().for_each(|best| best.set = set.id);
            new
        })
        .collect()
}

/// Bests of `after` that beat those of `before`: of each measure the one for the most repetitions, measures of one set
/// together. A rail's first sets beat nothing.
pub fn new_bests(before: &Timeline<'_>, after: &Timeline<'_>, formula: Formula) -> Vec<NewBest> {
    let (old, new) = (undoubted(before, formula), undoubted(after, formula));
    let mut found: Vec<NewBest> = Vec::new();
    for best in &new {
        let same_rail = |other: &&Best<'_>| other.movement == best.movement && other.side == best.side;
        if !matches!(best.size, Size::Reps(_)) || !old.iter().any(|other| same_rail(&other)) {
            continue;
        }
        let was = old
            .iter()
            .filter(same_rail)
            .find(|other| other.kind == best.kind && other.size == best.size);
        let beats = was.is_none_or(|was| best.value > was.value * (1.0 + ROUNDING));
        let for_more = |other: &Best<'_>| {
            same_rail(&other) && other.kind == best.kind && other.id == best.id && more(other.size, best.size)
        };
        if beats && !new.iter().any(for_more) {
            take(&mut found, best, was.map(|was| was.value));
        }
    }
    found
}

fn more(one: Size, other: Size) -> bool {
    matches!((one, other), (Size::Reps(one), Size::Reps(other)) if one > other)
}

fn take(found: &mut Vec<NewBest>, best: &Best<'_>, before: Option<f64>) {
    let same = found.iter_mut().find(|known| {
        known.movement == best.movement
            && known.side == best.side
            && known.size == best.size
            && known.date == best.date
            && known.system == best.system
            && known.added == best.added
    });
    match same {
        Some(known) => known.kinds.push(best.kind),
        None => found.push(NewBest {
            set: best.id,
            movement: best.movement.to_owned(),
            side: best.side,
            size: best.size,
            kinds: vec![best.kind],
            before,
            value: best.value,
            date: best.date,
            bodyweight: best.bodyweight,
            added: best.added,
            system: best.system,
        }),
    }
}
