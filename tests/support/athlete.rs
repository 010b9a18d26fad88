//! An athlete's log, told in sentences.

use chrono::NaiveDate;
use rungwright::catalogue::{Catalogue, Site};
use rungwright::coaching::{NextStep, PlatesOnHand, next_steps};
use rungwright::logbook::record::{Fact, PhaseKind, Placed, Sex};
use rungwright::logbook::{Id, Log, Record, Settings, Written};
use rungwright::timeline::Timeline;
use rungwright::units::{Mass, Side, Typed, Unit};

use super::day::{Day, TODAY};
use super::sets::Session;

/// An athlete and what they logged.
#[derive(Debug, Clone)]
pub struct Athlete {
    facts: Vec<(NaiveDate, Fact)>,
    steady: Option<Typed>,
    ladder: String,
    rung: Option<String>,
    plates: Vec<Typed>,
    gear: Mass,
}

/// Somebody of whom nothing is known, with a home gym's plates: 20 15 10 5 5 2.5 2.5 1.25 1.25 kg.
pub fn athlete() -> Athlete {
    Athlete {
        facts: Vec::new(),
        steady: None,
        ladder: String::new(),
        rung: None,
        plates: Settings::fresh(Unit::Kg).plates,
        gear: Mass::ZERO,
    }
}

impl Athlete {
    fn on(mut self, day: Day, fact: Fact) -> Self {
        self.facts.push((day.date(), fact));
        self
    }

    /// Weighs so many kilograms all the time, and has weighed today.
    pub fn weighing(mut self, kg: f64) -> Self {
        self.steady = Some(Typed::new(kg, Unit::Kg).unwrap());
        self
    }

    /// A weigh-in, kg.
    pub fn weighed(self, day: Day, kg: f64) -> Self {
        let bodyweight = Typed::new(kg, Unit::Kg).unwrap();
        self.on(
            day,
            Fact::WeighIn {
                bodyweight,
                note: None,
            },
        )
    }

    /// With just these plates, kg.
    pub fn with_plates(mut self, plates: &[f64]) -> Self {
        self.plates = plates
            .iter()
            .map(|kg| Typed::new(*kg, Unit::Kg).unwrap())
            .collect();
        self
    }

    /// With a carabiner and chain of so many kilograms.
    pub fn with_gear(mut self, kg: f64) -> Self {
        self.gear = Mass::from_kg(kg);
        self
    }

    /// Put on a rung, both sides.
    pub fn placed_on(self, ladder: &str, rung: &str, day: Day) -> Self {
        self.placed(ladder, None, Placed::On(rung.to_owned()), day)
    }

    /// One side put on a rung.
    pub fn placed_side_on(self, ladder: &str, side: Side, rung: &str, day: Day) -> Self {
        self.placed(ladder, Some(side), Placed::On(rung.to_owned()), day)
    }

    /// Joined to a ladder; the rules name the rung.
    pub fn joined(self, ladder: &str, day: Day) -> Self {
        self.placed(ladder, None, Placed::Joined, day)
    }

    /// A ladder, or one side of it, set aside.
    pub fn set_aside(self, ladder: &str, side: Option<Side>, day: Day) -> Self {
        self.placed(ladder, side, Placed::SetAside, day)
    }

    fn placed(mut self, ladder: &str, side: Option<Side>, rung: Placed, day: Day) -> Self {
        ladder.clone_into(&mut self.ladder);
        if let Placed::On(id) = &rung {
            self.rung = Some(id.clone());
        }
        self.on(
            day,
            Fact::Placement {
                ladder: ladder.to_owned(),
                side,
                rung,
                why: None,
            },
        )
    }

    /// Trained: sets are logged for the rung that the athlete was last put on, unless they say otherwise.
    pub fn did(mut self, day: Day, session: impl Into<Session>) -> Self {
        for sets in session.into().0 {
            let ladder = sets.ladder.clone().unwrap_or_else(|| self.ladder.clone());
            let rung = sets.rung.clone().or_else(|| self.rung.clone());
            let untagged = sets.untagged;
            for mut set in sets.into_sets() {
                if !untagged {
                    let rung = rung.clone().unwrap();
                    let known = Catalogue::shipped()
                        .ladder(&ladder)
                        .and_then(|ladder| ladder.rung(&rung))
                        .unwrap_or_else(|| panic!("no rung {ladder}/{rung}"));
                    set.movement = known.movement.as_str().into();
                    (set.ladder, set.rung) = (Some(ladder.as_str().into()), Some(rung.into()));
                }
                assert!(Catalogue::shipped().movement(&set.movement).is_some());
                self = self.on(day, Fact::Set(set));
            }
        }
        self
    }

    /// The same session on several days.
    pub fn did_each(self, days: impl IntoIterator<Item = Day>, session: impl Into<Session>) -> Self {
        let session = session.into();
        days.into_iter()
            .fold(self, |athlete, day| athlete.did(day, session.clone()))
    }

    /// A pain report, side not told.
    pub fn hurt(self, day: Day, site: Site, score: u8) -> Self {
        self.hurt_on(day, site, None, score)
    }

    /// A pain report on a side.
    pub fn hurt_on(self, day: Day, site: Site, side: Option<Side>, score: u8) -> Self {
        self.on(
            day,
            Fact::Pain {
                site,
                side,
                score,
                note: None,
            },
        )
    }

    /// A phase that begins.
    pub fn began(self, day: Day, kind: PhaseKind) -> Self {
        self.on(day, Fact::Phase { kind, note: None })
    }

    /// Born on a day, `YYYY-MM-DD`.
    pub fn born(self, date: &str) -> Self {
        let born = Some(Written::parse(date).unwrap());
        self.profile(born, None)
    }

    /// So many centimetres tall.
    pub fn tall(self, cm: f64) -> Self {
        self.profile(None, Some(cm))
    }

    fn profile(self, born: Option<Written>, height_cm: Option<f64>) -> Self {
        let sex: Option<Sex> = None;
        self.on(
            TODAY,
            Fact::Profile {
                name: None,
                born,
                sex,
                height_cm,
            },
        )
    }

    /// The log as the logbook would hand it over: in order of days, each day in the order told.
    pub fn log(&self) -> Log {
        let mut facts = self.facts.clone();
        if let Some(bodyweight) = self.steady {
            facts.push((
                TODAY.date(),
                Fact::WeighIn {
                    bodyweight,
                    note: None,
                },
            ));
        }
        let records = facts.into_iter().enumerate().map(|(at, (date, what))| Record {
            id: Id::from_parts(0, at as u128),
            rev: 0,
            dev: "test".to_owned(),
            at: Written::day(date),
            nth: at as u32,
            what,
        });
        let mut log = Log {
            name: "Ana".to_owned(),
            folder: "ana".to_owned(),
            records: records.collect(),
        };
        log.records.sort_by(Log::order);
        log
    }

    /// What the rules see of the log on a day.
    pub fn timeline_on<T>(&self, day: Day, see: impl FnOnce(&Timeline<'_>) -> T) -> T {
        let log = self.log();
        see(&Timeline::new(&log, Catalogue::shipped(), day.date()))
    }

    /// The plates on hand.
    pub fn plates(&self) -> PlatesOnHand {
        PlatesOnHand::new(&self.plates, self.gear)
    }

    /// Every next step of a day.
    pub fn next_steps_on(&self, day: Day) -> Vec<NextStep> {
        self.timeline_on(day, |timeline| {
            next_steps(timeline, Catalogue::shipped(), &self.plates())
        })
    }

    /// The next step today on the ladder last named, where both sides climb as one.
    pub fn advice(&self) -> NextStep {
        self.advice_on(TODAY)
    }

    /// The next step on an earlier day.
    pub fn advice_on(&self, day: Day) -> NextStep {
        let mut steps = self.steps(day);
        assert_eq!(steps.len(), 1, "one rail on {}", self.ladder);
        steps.remove(0)
    }

    /// The next steps of left and right on the ladder last named.
    pub fn left_and_right(&self) -> (NextStep, NextStep) {
        let mut steps = self.steps(TODAY);
        assert_eq!(steps.len(), 2, "two rails on {}", self.ladder);
        let right = steps.remove(1);
        (steps.remove(0), right)
    }

    /// The next steps of a day on the ladder last named.
    pub fn steps(&self, day: Day) -> Vec<NextStep> {
        let mut steps = self.next_steps_on(day);
        steps.retain(|step| step.ladder == self.ladder);
        steps
    }
}
