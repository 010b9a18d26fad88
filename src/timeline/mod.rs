//! The timeline: an athlete's log as the rules see it on a given day.
//!
//! Each set has that day's bodyweight and its system load; odd weigh-ins and odd sets are marked, not dropped. Records
//! after `on` don't exist here. Days are calendar days as written; ages are days before `on`.

mod bodyweight;
mod kin;
mod line;
mod odd;
mod reports;
mod sets;

use chrono::{Days, NaiveDate};

use crate::body::{Body, Counted};
use crate::catalogue::{Catalogue, Help, Ladder, Movement};
use crate::logbook::record::{Fact, Placed};
use crate::logbook::{Log, Person, Written};
use crate::units::{Assistance, Bodyweight, Rail, Share, Side};

pub use bodyweight::{TREND_DAYS, TREND_SPAN, TREND_WINDOW, Trend, WeighDay, WeighIns};
use kin::Kin;
#[cfg(test)]
pub(crate) use line::LINNERUD;
pub use line::{Line, least_squares};
pub use odd::{believed_reps, best_e1rm, epley};
pub use reports::{Pain, Phases};
use sets::Lifter;
pub use sets::{Form, LoggedSet, Tag};

/// How long a record is evidence, days. Common practice, no source.
pub const EVIDENCE_DAYS: i64 = 365;

/// An athlete's log on a given day.
#[derive(Debug, Clone)]
pub struct Timeline<'a> {
    /// The day that is asked about.
    pub on: NaiveDate,
    /// The athlete's name.
    pub name: &'a str,
    /// Birth date, sex, height.
    pub person: Person,
    /// Every weigh-in day up to `on`.
    pub weigh_ins: WeighIns,
    /// Every set up to `on`, in order.
    pub sets: Vec<LoggedSet<'a>>,
    /// Every pain report up to `on`, in order.
    pub pains: Vec<Pain>,
    /// Phases up to `on`.
    pub phases: Phases,
    /// Placements up to `on`, in order.
    pub placements: Vec<Placement<'a>>,
    /// Rungs to reach as set up to `on`, in order; the latest word on a rung counts.
    pub goals: Vec<Goal<'a>>,
    /// The first day that is still evidence.
    oldest: Option<NaiveDate>,
    kin: Kin<'a>,
    lifter: Lifter,
}

/// A rung that the athlete wants to reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Goal<'a> {
    /// The day on which it was set.
    pub date: NaiveDate,
    /// The ladder's id.
    pub ladder: &'a str,
    /// The rung's id.
    pub rung: &'a str,
    /// By when, if they said.
    pub by: Option<NaiveDate>,
}

/// A rail put somewhere.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placement<'a> {
    /// The day.
    pub date: NaiveDate,
    /// Its place among all records of the log, to tell what came later on one day.
    pub order: usize,
    /// The ladder's id.
    pub ladder: &'a str,
    /// The side; none for both.
    pub side: Option<Side>,
    /// Where to.
    pub rung: &'a Placed,
}

impl<'a> Timeline<'a> {
    /// The log as it stands on `on`, the whole body counted: what standards and next steps are written on.
    pub fn new(log: &'a Log, catalogue: &'a Catalogue, on: NaiveDate) -> Self {
        Self::counting(log, catalogue, on, Counted::Whole)
    }

    /// The log as it stands on `on`, with that part of the body in every system load.
    pub fn counting(log: &'a Log, catalogue: &'a Catalogue, on: NaiveDate, counted: Counted) -> Self {
        let until = log.records.partition_point(|record| record.at.date() <= on);
        let records = log.records.get(..until).unwrap_or_default();
        let (mut weighed, mut sets) = (Vec::new(), Vec::with_capacity(records.len()));
        let (mut pains, mut placements, mut goals) = (Vec::new(), Vec::new(), Vec::new());
        let (mut phases, mut person) = (Phases::default(), Person::default());
        // One look at each record: a year of them is more memory than a cache holds.
        for (order, record) in records.iter().enumerate() {
            let date = record.at.date();
            match &record.what {
                Fact::Set(set) => {
                    weighed.extend(set.bodyweight.map(|typed| (date, typed)));
                    sets.push((order, record, set));
                }
                Fact::WeighIn { bodyweight, .. } => weighed.push((date, *bodyweight)),
                Fact::Pain {
                    site, side, score, ..
                } => {
                    pains.push(Pain {
                        date,
                        site: *site,
                        side: *side,
                        score: *score,
                    });
                }
                Fact::Phase { kind, .. } => phases.add(*kind, date),
                Fact::Placement {
                    ladder, side, rung, ..
                } => {
                    placements.push(Placement {
                        date,
                        order,
                        ladder,
                        side: *side,
                        rung,
                    });
                }
                Fact::Goal { ladder, rung, by, .. } => {
                    goals.retain(|goal: &Goal<'_>| goal.ladder != ladder || goal.rung != rung);
                    goals.push(Goal {
                        date,
                        ladder,
                        rung,
                        by: by.as_ref().map(Written::date),
                    });
                }
                other => person.learn(other),
            }
        }
        // Who somebody is holds for every day, before it was said too.
        let later = log.records.get(until..).unwrap_or_default();
        later.iter().for_each(|record| person.learn(&record.what));
        let weigh_ins = WeighIns::gather(weighed);
        let body = Body::of(&person, None, on).unwrap_or(Body::unknown_body());
        let lifter = Lifter { body, counted };
        let mut sets = sets::gather(&sets, catalogue, &weigh_ins, &lifter);
        let kin = Kin::of(&sets);
        let oldest = on.checked_sub_days(Days::new(EVIDENCE_DAYS.unsigned_abs()));
        let recent = sets.partition_point(|set| oldest.is_some_and(|oldest| set.date < oldest));
        odd::mark(&mut sets, &kin, recent);
        Self {
            on,
            name: &log.name,
            person,
            weigh_ins,
            sets,
            pains,
            phases,
            placements,
            goals,
            oldest,
            kin,
            lifter,
        }
    }

    /// The same log and day with only those sets.
    pub fn with_only(&self, kept: impl Fn(&LoggedSet<'a>) -> bool) -> Self {
        let sets: Vec<LoggedSet<'a>> = self.sets.iter().filter(|set| kept(set)).cloned().collect();
        Self {
            on: self.on,
            name: self.name,
            person: self.person,
            weigh_ins: self.weigh_ins.clone(),
            oldest: self.oldest,
            kin: Kin::of(&sets),
            sets,
            pains: self.pains.clone(),
            phases: self.phases.clone(),
            placements: self.placements.clone(),
            goals: self.goals.clone(),
            lifter: self.lifter,
        }
    }

    /// The share of bodyweight that `movement` with a rung's `help` lifts; none where no system load is defined.
    pub fn share(&self, movement: &Movement, help: Option<&Help>) -> Option<Share> {
        self.lifter.share(movement, help)
    }

    /// What the athlete's band takes off, as last logged on a band rung of this ladder.
    pub fn measured_band(&self, ladder: &Ladder) -> Option<Assistance> {
        let on_band = |set: &&LoggedSet<'_>| {
            let tag = set.tag.filter(|tag| tag.is_on(ladder));
            tag.is_some_and(|tag| tag.rung.help == Help::Band) && !set.odd
        };
        self.sets
            .iter()
            .rev()
            .filter(on_band)
            .find_map(|set| set.added.assistance())
    }

    /// Days from `date` to the day asked about.
    pub fn age(&self, date: NaiveDate) -> i64 {
        (self.on - date).num_days()
    }

    /// Sets that are still evidence and not odd, in order.
    pub fn evidence(&self) -> impl DoubleEndedIterator<Item = &LoggedSet<'a>> + Clone {
        self.sets.iter().filter(|set| self.is_evidence(set))
    }

    /// The sets of `form` that are evidence for `rail` and not odd, in order.
    pub fn of_form(&self, form: Form<'_>, rail: Rail) -> impl DoubleEndedIterator<Item = &LoggedSet<'a>> {
        let places = self.kin.of_form(form).into_iter();
        places
            .filter_map(|at| self.sets.get(at))
            .filter(move |set| set.counts_for(rail) && self.is_evidence(set))
    }

    /// Every set that was logged for `ladder`, in order, odd and old ones too.
    pub fn on_ladder(&self, ladder: &Ladder) -> impl DoubleEndedIterator<Item = &LoggedSet<'a>> {
        let places = self.kin.on_ladder(ladder).iter();
        places.filter_map(|&at| self.sets.get(at))
    }

    /// The ladders that sets were logged for, in order of the first.
    pub fn ladders(&self) -> impl Iterator<Item = &'a Ladder> {
        self.kin.ladders.iter().map(|(ladder, _)| *ladder)
    }

    /// Whether a set is evidence: not odd, and not too old.
    pub fn is_evidence(&self, set: &LoggedSet<'_>) -> bool {
        !set.odd && self.oldest.is_none_or(|oldest| set.date >= oldest)
    }

    /// Which of [`Timeline::sets`] look like a slip, judged over the whole log: a record may be older than a year.
    pub fn doubted(&self) -> Vec<bool> {
        let mut sets = self.sets.clone();
        // A set without any load known can't be odd; it keeps what it was told at the start.
        sets.iter_mut()
            .for_each(|set| set.odd = set.odd && set.system.is_none());
        odd::mark(&mut sets, &self.kin, 0);
        sets.iter().map(|set| set.odd && set.system.is_some()).collect()
    }

    /// Today's bodyweight: the mean of today's weigh-ins, else of the latest day before.
    pub fn bodyweight(&self) -> Option<Bodyweight> {
        self.weigh_ins.on(self.on)
    }

    /// Whole years of age, if the birth date is known.
    pub fn years(&self) -> Option<u32> {
        self.person.born.and_then(|born| self.on.years_since(born))
    }

    /// Whether the athlete is known to be under 18. An unknown birth date counts as adult.
    pub fn is_minor(&self) -> bool {
        match self.person.born {
            Some(born) => self.on.years_since(born).is_none_or(|years| years < 18),
            None => false,
        }
    }

    /// Body mass index, kg/m², of today's bodyweight, where height is known.
    pub fn bmi(&self) -> Option<f64> {
        let height = self.person.height?.metres();
        Some(self.bodyweight()?.kg() / (height * height))
    }

    /// Whether an adult lies below the healthy range: BMI under 18.5 (World Health Organization's adult classes).
    pub fn is_underweight(&self) -> bool {
        !self.is_minor() && self.bmi().is_some_and(|bmi| bmi < LOWEST_HEALTHY_BMI)
    }
}

/// Lower end of the healthy range of the body mass index for adults, kg/m² (World Health Organization; from memory).
pub const LOWEST_HEALTHY_BMI: f64 = 18.5;
