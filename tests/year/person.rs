//! One invented person who does for a year what the advice says, as well as the body can that day.
//!
//! What was truly left in each set is known here even of somebody who never logs it.

use chrono::{Days, NaiveDate};
use rungwright::catalogue::{Amount, Catalogue, Ladder, Rung};
use rungwright::coaching::advice::{Asked, NextStep, Prescription, Verdict};
use rungwright::coaching::{Finding, PlatesOnHand, next_steps};
use rungwright::logbook::record::{Fact, Load, Placed, Set};
use rungwright::logbook::{Id, Log, Record, Settings, Written};
use rungwright::timeline::Timeline;
use rungwright::units::{Effort, Given, Mass, Outcome, Rail, Reps, Seconds, Typed, Unit};

use crate::body::limit;

/// What somebody sets out with.
#[derive(Debug, Clone, Copy)]
pub struct Start {
    /// The ladder climbed.
    pub ladder: &'static str,
    /// The rung placed on.
    pub rung: &'static str,
    /// One-rep max ÷ bodyweight, or the level on the ladder's scale.
    pub strength: f64,
    /// What the year adds to it, as a part.
    pub growth: f64,
    /// Whether reserve is logged.
    pub logs_reserve: bool,
    /// Which dice fall.
    pub seed: u64,
}

/// One rail's advice on one training day, and how it went.
#[derive(Debug, Clone)]
pub struct Session {
    /// Days since the year began.
    pub day: u64,
    /// The rail.
    pub rail: Rail,
    /// The verdict acted on.
    pub verdict: Verdict,
    /// The rule that decided.
    pub rule: &'static str,
    /// The rung trained.
    pub rung: String,
    /// How high it stands, in half rungs.
    pub height: usize,
    /// What was moved, ÷ the day's bodyweight; none without load.
    pub load: Option<f64>,
    /// Repetitions or seconds of all sets.
    pub in_all: f64,
    /// Fewest of a set.
    pub lowest: f64,
    /// What was truly left in the hardest set, repetitions; seconds on holds.
    pub left: f64,
    /// Whether a set failed under the range.
    pub missed: bool,
    /// True strength that day, wobble aside.
    pub strength: f64,
}

/// A person and their log.
pub struct Person {
    start: Start,
    log: Log,
    plates: PlatesOnHand,
    chance: oorandom::Rand64,
    /// Every session of the year, in order.
    pub sessions: Vec<Session>,
}

/// A gym's set: IWF discs and their change plates, one of each and two large ones more.
const DISCS: [f64; 12] = [25.0, 20.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.0, 1.0, 0.5];
const BODYWEIGHT_KG: f64 = 80.0;
/// The right has a little less.
const RIGHT: f64 = 0.97;

impl Person {
    /// Lives the year.
    pub fn live(start: Start) -> Person {
        let mut plates = Settings::fresh(Unit::Kg).plates;
        if !start.seed.is_multiple_of(2) {
            plates = DISCS
                .iter()
                .map(|kg| Typed::new(*kg, Unit::Kg).unwrap())
                .collect();
        }
        let mut person = Person {
            start,
            log: Log {
                name: "Ana".to_owned(),
                folder: "ana".to_owned(),
                records: Vec::new(),
            },
            plates: PlatesOnHand::new(&plates, Mass::ZERO),
            chance: oorandom::Rand64::new(u128::from(start.seed)),
            sessions: Vec::new(),
        };
        person.write(
            first_day(),
            Fact::Placement {
                ladder: start.ladder.to_owned(),
                side: None,
                rung: Placed::On(start.rung.to_owned()),
                why: None,
            },
        );
        for day in 0..364 {
            person.spend(day);
        }
        person
    }

    /// From −1 to 1, likelier near 0.
    fn wobble(&mut self) -> f64 {
        self.chance.rand_float() + self.chance.rand_float() - 1.0
    }

    fn write(&mut self, date: NaiveDate, what: Fact) {
        let nth = u32::try_from(self.log.records.len()).unwrap();
        self.log.records.push(Record {
            id: Id::from_parts(0, u128::from(nth)),
            rev: 0,
            dev: "test".to_owned(),
            at: Written::day(date),
            nth,
            what,
        });
    }

    fn ladder(&self) -> &'static Ladder {
        Catalogue::shipped().ladder(self.start.ladder).unwrap()
    }

    /// Weighs in on Mondays, trains on Mondays and Thursdays but for one in twelve.
    fn spend(&mut self, day: u64) {
        let date = first_day() + Days::new(day);
        if day.is_multiple_of(7) {
            self.weigh_in(date);
        }
        if matches!(day % 7, 0 | 3) && self.chance.rand_range(0..12) != 0 {
            self.train(day, date);
        }
    }

    /// Half a kilo up or down.
    fn weigh_in(&mut self, date: NaiveDate) {
        let kg = ((BODYWEIGHT_KG + 0.5 * self.wobble()) * 10.0).round() / 10.0;
        let bodyweight = Typed::new(kg, Unit::Kg).unwrap();
        self.write(
            date,
            Fact::WeighIn {
                bodyweight,
                note: None,
            },
        );
    }

    fn advice(&self, date: NaiveDate) -> Vec<NextStep> {
        let timeline = Timeline::new(&self.log, Catalogue::shipped(), date);
        let mut steps = next_steps(&timeline, Catalogue::shipped(), &self.plates);
        steps.retain(|step| step.ladder == self.start.ladder);
        steps
    }

    /// Asks once, before the first set. Where both hands work as one, one rail's sets are the other's too.
    fn train(&mut self, day: u64, date: NaiveDate) {
        let mut steps = self.advice(date);
        if steps.iter().any(|step| step.verdict == Verdict::WeighInFirst) {
            self.weigh_in(date);
            steps = self.advice(date);
        }
        let mut done: Option<String> = None;
        for step in steps {
            let ready = step.not_before.is_none_or(|first| first <= date);
            let Some(work) = step.prescription.clone().filter(|_| ready) else {
                continue;
            };
            self.try_entries(date, &step);
            let sided = Catalogue::shipped().movement(&work.movement).unwrap().is_sided();
            if !sided && done.as_ref() == Some(&work.rung) {
                continue;
            }
            done = Some(work.rung.clone());
            let year = f64::from(u32::try_from(day).unwrap()) / 364.0;
            let side = if step.rail == Rail::Right && sided {
                RIGHT
            } else {
                1.0
            };
            let strength = self.start.strength * (1.0 + self.start.growth * year) * side;
            self.work(day, date, &step, &work, strength);
        }
    }

    fn work(&mut self, day: u64, date: NaiveDate, step: &NextStep, work: &Prescription, strength: f64) {
        let ladder = self.ladder();
        let rung = ladder.rung(&work.rung).unwrap();
        let belt = work.load.as_ref().map_or(0.0, |load| load.added.kg());
        let load = 1.0 + belt / BODYWEIGHT_KG;
        let form = strength * (1.0 + 0.03 * self.wobble());
        let mut session = Session {
            day,
            rail: step.rail,
            verdict: step.verdict,
            rule: step.reasons.first().unwrap().rule(),
            rung: rung.id.clone(),
            height: ladder.half_rungs(rung),
            load: (rung.help == rungwright::catalogue::Help::Added).then_some(load),
            in_all: 0.0,
            lowest: f64::INFINITY,
            left: f64::INFINITY,
            missed: false,
            strength,
        };
        for nth in 0..usize::from(work.sets) {
            let limit = limit(ladder, rung, form, load, nth);
            let (amount, outcome) = done(work, rung, limit);
            session.in_all += amount;
            session.lowest = session.lowest.min(amount);
            session.left = session.left.min(limit - amount);
            session.missed |= outcome == Outcome::Missed;
            self.write(
                date,
                Fact::Set(self.set(step, work, belt, amount, outcome, limit)),
            );
        }
        self.sessions.push(session);
    }

    fn set(
        &self,
        step: &NextStep,
        work: &Prescription,
        belt: f64,
        amount: f64,
        outcome: Outcome,
        limit: f64,
    ) -> Set {
        let sided = Catalogue::shipped().movement(&work.movement).unwrap().is_sided();
        let left = (limit - amount).round().clamp(0.0, 10.0);
        let logs =
            self.start.logs_reserve && outcome == Outcome::Done && matches!(work.asked, Asked::Reps(..));
        Set {
            movement: work.movement.as_str().into(),
            side: step.rail.side().filter(|_| sided),
            load: (belt != 0.0).then(|| {
                let typed = Typed::new(belt.abs(), Unit::Kg).unwrap();
                if belt < 0.0 {
                    Load::Assistance(typed)
                } else {
                    Load::Added(typed)
                }
            }),
            effort: match work.asked {
                Asked::Reps(..) => Effort::Reps(Reps::try_from(whole(amount)).unwrap()),
                Asked::Hold(..) => Effort::Hold(Seconds::try_from(amount.max(1.0)).unwrap()),
            },
            left: logs.then(|| Given::rir(left).unwrap()),
            outcome,
            bodyweight: None,
            ladder: Some(step.ladder.as_str().into()),
            rung: Some(work.rung.as_str().into()),
            note: None,
        }
    }

    /// What a next rung asks beside the ladder is done the day that it is asked.
    fn try_entries(&mut self, date: NaiveDate, step: &NextStep) {
        for found in &step.reasons {
            let Finding::EntryMissing {
                movement,
                at_least,
                ratio,
                ..
            } = found
            else {
                continue;
            };
            let sided = Catalogue::shipped().movement(movement).unwrap().is_sided();
            let belt = ratio.map(|ratio| (ratio - 1.0) * BODYWEIGHT_KG + 1.0);
            let set = Set {
                movement: movement.as_str().into(),
                side: step.rail.side().filter(|_| sided),
                load: belt.map(|kg| Load::Added(Typed::new(kg, Unit::Kg).unwrap())),
                effort: match at_least {
                    Amount::Reps(reps) => Effort::Reps(*reps),
                    Amount::Seconds(seconds) => Effort::Hold(*seconds),
                },
                left: None,
                outcome: Outcome::Done,
                bodyweight: None,
                ladder: None,
                rung: None,
                note: None,
            };
            self.write(date, Fact::Set(set));
        }
    }
}

fn first_day() -> NaiveDate {
    // A Monday.
    NaiveDate::from_ymd_opt(2025, 3, 17).unwrap()
}

fn whole(amount: f64) -> u16 {
    (0..=1000_u16)
        .rev()
        .find(|count| f64::from(*count) <= amount)
        .unwrap_or(0)
}

/// What is done of a set that could go to `limit`: as much of the range as leaves the asked reserve, never under its lower
/// end unless the body gives out before. Where no reserve is asked, one is kept; a hold is ended a tenth before its limit.
fn done(work: &Prescription, rung: &Rung, limit: f64) -> (f64, Outcome) {
    let lo = rung.work.range.lo();
    let asked = work.asked.lo();
    let keep = match work.asked {
        Asked::Reps(..) => work.reserve.map_or(1.0, |reserve| reserve.reps()),
        Asked::Hold(..) => limit / 10.0,
    };
    let hi = work.asked.hi().unwrap_or_else(|| limit.floor().max(lo));
    let wanted = (limit - keep).floor().clamp(asked.min(lo), hi);
    if wanted <= limit {
        (wanted, Outcome::Done)
    } else {
        (limit.floor().max(0.0), Outcome::Missed)
    }
}
