//! Sets with that day's bodyweight and system load, and the form that tells which rungs they count for.

use chrono::NaiveDate;

use crate::body::{Body, Counted, counted_share};
use crate::catalogue::{Catalogue, Help, Ladder, Movement, Rung};
use crate::logbook::Record;
use crate::logbook::record::{Id, Load, Set};
use crate::units::{Added, Bodyweight, Measure, Outcome, Rail, Share, Side, SystemLoad};

use super::WeighIns;

/// What a set was a set of: the movement, and the help that is not plain. Sets of one form count for the same rungs.
#[derive(Debug, Clone, Copy, Eq)]
pub struct Form<'a> {
    /// The movement's id.
    pub movement: &'a str,
    /// The help; none for a plain form (belt or measured load, bodyweight, untagged).
    pub help: Option<&'a Help>,
}

impl PartialEq for Form<'_> {
    #[inline]
    fn eq(&self, other: &Self) -> bool {
        // Forms are compared set by set. Most are equal because they lie in one place, or differ in length.
        let same = std::ptr::eq(self.movement, other.movement) || self.movement == other.movement;
        same && match (self.help, other.help) {
            (Some(own), Some(others)) => std::ptr::eq(own, others) || own == others,
            (own, others) => own.is_none() == others.is_none(),
        }
    }
}

impl<'a> Form<'a> {
    /// The form that a rung asks.
    pub fn of(rung: &'a Rung) -> Self {
        let help = match &rung.help {
            Help::Added | Help::Plain => None,
            other => Some(other),
        };
        Self {
            movement: &rung.movement,
            help,
        }
    }

    /// The plain form of a movement.
    pub fn plain(movement: &'a str) -> Self {
        Self { movement, help: None }
    }
}

/// The rung that a set was logged for.
#[derive(Debug, Clone, Copy)]
pub struct Tag<'a> {
    /// The ladder.
    pub ladder: &'a Ladder,
    /// The rung.
    pub rung: &'a Rung,
    /// How high the rung stands on its ladder, in half rungs.
    pub height: usize,
}

impl Tag<'_> {
    /// Whether it is for this ladder. Ladders of one catalogue are told apart by where they lie.
    pub fn is_on(&self, ladder: &Ladder) -> bool {
        std::ptr::eq(self.ladder, ladder)
    }
}

/// One set on its day.
#[derive(Debug, Clone)]
pub struct LoggedSet<'a> {
    /// The record's id.
    pub id: Id,
    /// Its place among all records of the log.
    pub order: usize,
    /// The day.
    pub date: NaiveDate,
    /// The set as logged.
    pub set: &'a Set,
    /// The movement, if the catalogue knows it.
    pub movement: Option<&'a Movement>,
    /// Its form; none where the rung it was logged for is not known here, so that nobody can say what helped.
    pub form: Option<Form<'a>>,
    /// The rung it was logged for.
    pub tag: Option<Tag<'a>>,
    /// Belt load (below zero: help).
    pub added: Added,
    /// That day's bodyweight: its own if it was weighed then, else the day's.
    pub bodyweight: Option<Bodyweight>,
    /// The part of bodyweight that it lifted; none where no system load is defined.
    pub share: Option<Share>,
    /// All that was moved; none where bodyweight or share is unknown.
    pub system: Option<SystemLoad>,
    /// Reps or seconds.
    pub amount: f64,
    /// Reserve as logged, in repetitions.
    pub reserve: Option<f64>,
    /// Looks like a slip; counts in no rule.
    pub odd: bool,
}

impl LoggedSet<'_> {
    /// Whether it counts for `rail`: a two-hand set for each, a sided one for its side, a sided one without side for none.
    pub fn counts_for(&self, rail: Rail) -> bool {
        match (self.is_sided(), self.set.side) {
            (true, None) => false,
            (true, side) => rail.touched_by(side),
            (false, _) => true,
        }
    }

    /// Whether its movement trains the sides apart.
    pub fn is_sided(&self) -> bool {
        self.movement.map_or(self.set.side.is_some(), Movement::is_sided)
    }

    /// The side that it is a record for.
    pub fn side(&self) -> Option<Side> {
        self.set.side
    }

    /// Whether the last try failed.
    pub fn failed(&self) -> bool {
        self.set.outcome == Outcome::Missed
    }

    /// Whether the movement's standard was not kept.
    pub fn broke_form(&self) -> bool {
        self.set.outcome == Outcome::Form
    }

    /// Reserve as the rules take it: a failed set had none, an unlogged one is unknown.
    pub fn known_reserve(&self) -> Option<f64> {
        if self.failed() { Some(0.0) } else { self.reserve }
    }

    /// Whether it is counted in repetitions.
    pub fn is_reps(&self) -> bool {
        self.set.effort.measure() == Measure::Reps
    }
}

/// What the catalogue says of a set. Sets mostly come in rows of the same, so the last answer is kept.
#[derive(Debug, Clone, Copy)]
struct Meant<'a> {
    set: &'a Set,
    movement: Option<&'a Movement>,
    tag: Option<Tag<'a>>,
    share: Option<Share>,
}

impl<'a> Meant<'a> {
    fn look_up(set: &'a Set, catalogue: &'a Catalogue, lifter: &Lifter) -> Self {
        let movement = catalogue.movement(&set.movement);
        let ladder = set.ladder.as_deref().and_then(|id| catalogue.ladder(id));
        let tag = ladder.zip(set.rung.as_deref()).and_then(|(ladder, id)| {
            let rung = ladder.rung(id)?;
            Some(Tag {
                ladder,
                rung,
                height: ladder.half_rungs(rung),
            })
        });
        let help = tag.map(|tag| &tag.rung.help);
        Self {
            set,
            movement,
            tag,
            share: movement.and_then(|movement| lifter.share(movement, help)),
        }
    }

    fn is_same(&self, set: &Set) -> bool {
        self.set.movement == set.movement && self.set.rung == set.rung && self.set.ladder == set.ladder
    }
}

/// What the scale says of a set's day.
#[derive(Debug, Clone, Copy)]
struct Today {
    date: NaiveDate,
    bodyweight: Option<Bodyweight>,
    /// Whether that day's weigh-ins look like a slip.
    is_odd: bool,
}

impl Today {
    fn look_up(date: NaiveDate, weigh_ins: &WeighIns) -> Self {
        Self {
            date,
            bodyweight: weigh_ins.on(date),
            is_odd: weigh_ins.is_odd_on(date),
        }
    }
}

/// Whose share of the body a movement lifts, and what of it counts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lifter {
    pub body: Body,
    pub counted: Counted,
}

impl Lifter {
    pub fn share(&self, movement: &Movement, help: Option<&Help>) -> Option<Share> {
        counted_share(movement, help, &self.body, self.counted)
    }
}

/// Sets with bodyweight and load; `sets` gives each one's place in the log, its record and itself, in order.
pub(super) fn gather<'a>(
    sets: &[(usize, &'a Record, &'a Set)],
    catalogue: &'a Catalogue,
    weigh_ins: &WeighIns,
    lifter: &Lifter,
) -> Vec<LoggedSet<'a>> {
    let mut last: Option<Meant<'a>> = None;
    let mut today: Option<Today> = None;
    sets.iter()
        .map(|&(order, record, set)| {
            let meant = last
                .filter(|last| last.is_same(set))
                .unwrap_or_else(|| Meant::look_up(set, catalogue, lifter));
            last = Some(meant);
            let date = record.at.date();
            let weighed = today
                .filter(|today| today.date == date)
                .unwrap_or_else(|| Today::look_up(date, weigh_ins));
            today = Some(weighed);
            logged(order, record, set, meant, weighed)
        })
        .collect()
}

#[inline] // a set is built where it will lie
fn logged<'a>(
    order: usize,
    record: &'a Record,
    set: &'a Set,
    Meant {
        movement, tag, share, ..
    }: Meant<'a>,
    today: Today,
) -> LoggedSet<'a> {
    let form = match (tag, &set.rung) {
        (Some(tag), _) => Some(Form::of(tag.rung)),
        (None, None) => Some(Form::plain(
            movement.map_or(set.movement.as_str(), |movement| &movement.id),
        )),
        (None, Some(_)) => None,
    };
    let own = set
        .bodyweight
        .filter(|_| !today.is_odd)
        .map(|typed| Bodyweight::new(typed.mass()));
    let bodyweight = own.or(today.bodyweight);
    let added = set
        .load
        .map_or(Added::NONE, |load: Load| Added::new(load.signed()));
    let system = share.and_then(|share| match bodyweight {
        Some(bodyweight) => Some(SystemLoad::of(share, bodyweight, added)),
        None => (share.value() == 0.0).then(|| SystemLoad::new(added.mass())),
    });
    LoggedSet {
        id: record.id,
        order,
        date: today.date,
        set,
        movement,
        form,
        tag,
        added,
        bodyweight,
        share,
        // A load at or below zero moves nothing: the set is kept and counts in no estimate, best or rule.
        odd: system.is_some_and(|load| load.kg() <= 0.0),
        system: system.filter(|load| load.kg() > 0.0),
        amount: set.effort.amount(),
        reserve: set.left.map(|left| left.reserve().reps()),
    }
}
