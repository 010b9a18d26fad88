//! A life by the advice: on each training day the next step is asked, done as well as the body can that day, and logged.

use chrono::{Days, NaiveDate, NaiveTime};

use crate::catalogue::{Amount, Catalogue, Rung};
use crate::coaching::advice::{Asked, NextStep, Prescription};
use crate::coaching::{Finding, PlatesOnHand, next_steps};
use crate::logbook::record::{Fact, Load, Placed, Set};
use crate::logbook::{Id, Log, Record, Written};
use crate::timeline::Timeline;
use crate::units::{Effort, Given, Mass, Outcome, Rail, Reps, Seconds, Side, Typed, Unit};

use super::strength::{asks, meets, to_failure};

/// The demo's device name.
pub const DEVICE: &str = "demo";

/// From this level on the demo's people can do what a next rung asks beside the ladder. Made up.
const ENTRY_LEVEL: f64 = 0.6;

/// What they squat for eights, of their bodyweight. Made up.
const SQUAT: f64 = 0.8;
/// What they turn out at the elbow, kg. Made up.
const HANDLE_KG: f64 = 4.0;

/// How somebody logs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Habit {
    /// Reserve with every set.
    LogsReserve,
    /// Never a reserve.
    LogsNone,
}

/// One invented body and its year.
#[derive(Debug)]
pub struct Life<'c> {
    catalogue: &'c Catalogue,
    plates: &'c PlatesOnHand,
    /// The log so far.
    pub log: Log,
    /// Bodyweight today, kg.
    pub bodyweight_kg: f64,
    /// The unit that the athlete types in.
    pub unit: Unit,
    /// What they log of reserve.
    pub habit: Habit,
    chance: oorandom::Rand64,
    written: u32,
    beside: u32,
}

impl<'c> Life<'c> {
    /// A life that begins with a name.
    pub fn new(catalogue: &'c Catalogue, plates: &'c PlatesOnHand, name: &str, seed: u64) -> Self {
        let log = Log {
            name: name.to_owned(),
            folder: String::new(),
            records: Vec::new(),
        };
        let chance = oorandom::Rand64::new(u128::from(seed));
        Self {
            catalogue,
            plates,
            log,
            bodyweight_kg: 75.0,
            unit: Unit::Kg,
            habit: Habit::LogsReserve,
            chance,
            written: 0,
            beside: 0,
        }
    }

    /// A number from −1 to 1, likelier near 0.
    pub fn wobble(&mut self) -> f64 {
        self.chance.rand_float() + self.chance.rand_float() - 1.0
    }

    /// Writes one record at the day's end.
    pub fn write(&mut self, date: NaiveDate, what: Fact) {
        self.written += 1;
        let random = u128::from(self.chance.rand_u64()) ^ (u128::from(self.written) << 64);
        self.write_as(date, random, what);
    }

    /// Writes a set of other work, which takes nothing from the chance that ladders are climbed by.
    fn write_beside(&mut self, date: NaiveDate, set: Set) {
        self.beside += 1;
        let own = xxhash_rust::xxh3::xxh3_64(self.log.name.as_bytes());
        self.write_as(
            date,
            u128::from(own) | (u128::from(self.beside) << 64),
            Fact::Set(set),
        );
    }

    fn write_as(&mut self, date: NaiveDate, random: u128, what: Fact) {
        let nth = self
            .log
            .records
            .iter()
            .rev()
            .take_while(|record| record.at.date() == date)
            .count();
        let midnight = date.and_time(NaiveTime::MIN).and_utc().timestamp_millis();
        let id = Id::from_parts(u64::try_from(midnight).unwrap_or(0), random);
        let nth = u32::try_from(nth).unwrap_or(u32::MAX);
        self.log.records.push(Record {
            id,
            rev: 0,
            dev: DEVICE.to_owned(),
            at: Written::day(date),
            nth,
            what,
        });
    }

    /// A mass in the athlete's unit, as a scale or a plate shows it.
    pub fn typed(&self, kg: f64, step: f64) -> Option<Typed> {
        let value = Mass::from_kg(kg).in_unit(self.unit);
        Typed::new((value / step).round() * step, self.unit).ok()
    }

    /// A weigh-in, to the tenth, with half a kilo of daily jitter.
    pub fn weigh_in(&mut self, date: NaiveDate) {
        let kg = self.bodyweight_kg + 0.5 * self.wobble();
        if let Some(bodyweight) = self.typed(kg, 0.1).and_then(tenths) {
            self.write(
                date,
                Fact::WeighIn {
                    bodyweight,
                    note: None,
                },
            );
        }
    }

    /// Puts a rail on a rung.
    pub fn place(&mut self, date: NaiveDate, ladder: &str, rung: Placed) {
        self.write(
            date,
            Fact::Placement {
                ladder: ladder.to_owned(),
                side: None,
                rung,
                why: None,
            },
        );
    }

    /// Today's advice on one ladder.
    pub fn advice(&self, date: NaiveDate, ladder: &str) -> Vec<NextStep> {
        let timeline = Timeline::new(&self.log, self.catalogue, date);
        let mut steps = next_steps(&timeline, self.catalogue, self.plates);
        steps.retain(|step| step.ladder == ladder);
        steps
    }

    /// Trains each rail of `ladder` that may be trained today. `strength` gives what left and right have.
    pub fn train(&mut self, date: NaiveDate, ladder: &str, strength: (f64, f64)) {
        for step in self.advice(date, ladder) {
            let strength = if step.rail == Rail::Right {
                strength.1
            } else {
                strength.0
            };
            if step.not_before.is_none() {
                self.try_entries(date, &step, strength);
            }
            if let (Some(work), None) = (&step.prescription, step.not_before) {
                self.sets(date, &step, work, strength);
            }
        }
    }

    fn sets(&mut self, date: NaiveDate, step: &NextStep, work: &Prescription, strength: f64) {
        let Some(ladder) = self.catalogue.ladder(&step.ladder) else {
            return;
        };
        let Some(rung) = ladder.rung(&work.rung) else {
            return;
        };
        let added = work.load.as_ref().map_or(0.0, |load| load.added.kg());
        let load = 1.0 + added / self.bodyweight_kg;
        let day = 1.0 + 0.02 * self.wobble();
        for set in 0..usize::from(work.sets) {
            let limit = to_failure(asks(ladder, rung), rung, strength * day, load, set);
            let (amount, outcome, left) = outcome(work, rung, limit);
            let effort = match work.asked {
                Asked::Reps(..) => whole_reps(amount)
                    .and_then(|reps| Reps::try_from(reps).ok())
                    .map(Effort::Reps),
                Asked::Hold(..) => Seconds::try_from(amount.round()).ok().map(Effort::Hold),
            };
            let Some(effort) = effort else { continue };
            let left = left.filter(|_| self.habit == Habit::LogsReserve && outcome != Outcome::Missed);
            let left = left
                .filter(|_| rung.work.reserve.is_some())
                .and_then(|left| Given::rir(left).ok());
            let set = Set {
                movement: work.movement.as_str().into(),
                side: step.rail.side().filter(|_| {
                    self.catalogue
                        .movement(&work.movement)
                        .is_some_and(|m| m.is_sided())
                }),
                load: self.hung(work),
                effort,
                left,
                outcome,
                bodyweight: None,
                ladder: Some(step.ladder.as_str().into()),
                rung: Some(work.rung.as_str().into()),
                note: None,
            };
            self.write(date, Fact::Set(set));
        }
    }

    /// The prescription's load as it would be typed: the plates' own numbers.
    fn hung(&self, work: &Prescription) -> Option<Load> {
        let load = work.load.as_ref().filter(|load| load.added.kg() != 0.0)?;
        match load.added.assistance() {
            Some(help) => self.typed(help.kg(), 0.25).map(Load::Assistance),
            None => self.typed(load.added.kg(), 0.25).map(Load::Added),
        }
    }

    /// Does what the rung above asks and nobody has logged yet, if the body is near enough.
    fn try_entries(&mut self, date: NaiveDate, step: &NextStep, strength: f64) {
        for finding in &step.reasons {
            let (movement, at_least, ratio) = match finding {
                Finding::EntryUntested { movement, at_least } => (movement, *at_least, None),
                Finding::EntryMissing {
                    movement,
                    at_least,
                    ratio,
                    ..
                } => (movement, *at_least, *ratio),
                _ => continue,
            };
            let Some(movement) = self.catalogue.movement(movement) else {
                continue;
            };
            if strength < ENTRY_LEVEL {
                continue;
            }
            let effort = match at_least {
                Amount::Reps(reps) => Effort::Reps(reps),
                Amount::Seconds(seconds) => Effort::Hold(seconds),
            };
            let belt = ratio.map_or(0.0, |ratio| (ratio - 1.0) * self.bodyweight_kg + 1.25);
            let set = Set {
                movement: movement.id.as_str().into(),
                side: step.rail.side().filter(|_| movement.is_sided()),
                load: self
                    .typed(belt, 1.25)
                    .filter(|typed| typed.value() > 0.0)
                    .map(Load::Added),
                effort,
                left: Given::rir(1.0)
                    .ok()
                    .filter(|_| matches!(at_least, Amount::Reps(_))),
                outcome: Outcome::Done,
                bodyweight: None,
                ladder: None,
                rung: None,
                note: None,
            };
            self.write(date, Fact::Set(set));
        }
    }

    /// A rung of the catalogue that this life knows.
    pub fn rung(&self, ladder: &str, rung: &str) -> Option<&'c Rung> {
        self.catalogue.ladder(ladder)?.rung(rung)
    }

    /// The strength, or level on the ladder's scale, that just meets a rung's standard.
    pub fn level(&self, ladder: &str, rung: &str) -> f64 {
        let Some(ladder) = self.catalogue.ladder(ladder) else {
            return 1.0;
        };
        ladder.rung(rung).map_or(1.0, |rung| meets(ladder, rung))
    }

    /// Work beside every ladder: squats with a bar, and the small muscles of the shoulder. No rule of a ladder asks for it.
    pub fn rest_of_the_body(&mut self, date: NaiveDate, weekday: u64) {
        if [0, 4].contains(&weekday) {
            let bar = self.typed(SQUAT * self.bodyweight_kg, 2.5);
            for _ in 0..3 {
                self.beside("back-squat", None, bar, 8, date);
            }
        }
        if [2, 4].contains(&weekday) {
            let handle = self.typed(HANDLE_KG, 1.0);
            for side in [Side::Left, Side::Left, Side::Right, Side::Right] {
                self.beside("external-rotation", Some(side), handle, 12, date);
            }
        }
    }

    fn beside(
        &mut self,
        movement: &str,
        side: Option<Side>,
        load: Option<Typed>,
        reps: u16,
        date: NaiveDate,
    ) {
        if let Some(set) = plain_set(movement, side, load, reps) {
            self.write_beside(date, set);
        }
    }

    /// A set outside every ladder; nobody says what was left.
    pub fn extra(&mut self, date: NaiveDate, movement: &str, reps: u16) {
        if let Some(set) = plain_set(movement, None, None, reps) {
            self.write(date, Fact::Set(set));
        }
    }
}

/// A set outside every ladder, done; nobody says what was left.
fn plain_set(movement: &str, side: Option<Side>, load: Option<Typed>, reps: u16) -> Option<Set> {
    Some(Set {
        movement: movement.into(),
        side,
        load: load.map(Load::Added),
        effort: Effort::Reps(Reps::try_from(reps).ok()?),
        left: None,
        outcome: Outcome::Done,
        bodyweight: None,
        ladder: None,
        rung: None,
        note: None,
    })
}

/// A typed number without the dust that scaling leaves ("79.30000000000001").
fn tenths(typed: Typed) -> Option<Typed> {
    Typed::new((typed.value() * 10.0).round() / 10.0, typed.unit()).ok()
}

fn whole_reps(amount: f64) -> Option<u16> {
    (0..=1000u16)
        .rev()
        .find(|reps| f64::from(*reps) <= amount.max(0.0))
}

/// What comes of a set when the body can do `limit`: reps or seconds, how it ended, what was left.
fn outcome(work: &Prescription, rung: &Rung, limit: f64) -> (f64, Outcome, Option<f64>) {
    let lo = rung.work.range.lo();
    let hi = work.asked.hi().unwrap_or(limit.floor().max(lo));
    let keep = work.reserve.map_or(0.0, crate::units::Reserve::reps);
    let can = limit.floor();
    let wanted = (limit - keep).floor().clamp(work.asked.lo().min(hi), hi);
    if wanted <= can {
        (
            wanted,
            Outcome::Done,
            Some((limit - wanted).round().clamp(0.0, 10.0)),
        )
    } else if can >= lo {
        (can, Outcome::Done, Some(0.0))
    } else {
        (can.max(1.0), Outcome::Missed, None)
    }
}

/// `days` before `on`.
pub fn ago(on: NaiveDate, days: u64) -> NaiveDate {
    on.checked_sub_days(Days::new(days)).unwrap_or(on)
}
