//! The whole gym: every member's life, in order, and the gym's own ladder.

use chrono::{Datelike, NaiveDate};
use rayon::prelude::*;

use crate::catalogue::{Catalogue, Help, OwnFile};
use crate::coaching::PlatesOnHand;
use crate::logbook::record::{Fact, Load, Placed, Set};
use crate::logbook::{Record, Settings, Written};
use crate::units::{Effort, Given, Mass, Outcome, Reps, Seconds, Typed, Unit};

use super::cast::{Act, Block, Member, Scale, Session, twelve};
use super::crowd::another;
use super::life::{Life, ago};

/// What to make.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plan {
    /// How many athletes; twelve by default.
    pub athletes: usize,
    /// How many years of training; one by default.
    pub years: u32,
    /// Seed of all chance.
    pub seed: u64,
    /// The day that it is shown for.
    pub on: NaiveDate,
}

/// The demo gym's content.
#[derive(Debug)]
pub struct Gym {
    /// Each athlete's name and records, in order.
    pub athletes: Vec<(String, Vec<Record>)>,
    /// The gym's own ladders: file name and text.
    pub ladders: Vec<(&'static str, &'static str)>,
    /// The plates on hand.
    pub plates: Vec<Typed>,
}

/// The gym's own ladder.
const OWN_LADDER: &str = include_str!("ring-dip.ron");

/// The gym of `plan`.
pub fn gym(plan: &Plan) -> Gym {
    let own = OwnFile::new("ladders/ring-dip.ron", OWN_LADDER);
    let (catalogue, _sound) = Catalogue::shipped().with_own(&[own]);
    let plates = Settings::fresh(Unit::Kg).plates;
    let rack = PlatesOnHand::new(&plates, Mass::ZERO);
    let mut chance = oorandom::Rand64::new(u128::from(plan.seed));
    let mut members = twelve();
    members.truncate(plan.athletes);
    for number in 0..plan.athletes.saturating_sub(members.len()) {
        members.push(another(number, &mut chance));
    }
    let seeds: Vec<u64> = members.iter().map(|_| chance.rand_u64()).collect();
    let athletes = members
        .par_iter()
        .zip(&seeds)
        .map(|(member, seed)| (member.name.clone(), live(plan, &catalogue, &rack, member, *seed)))
        .collect();
    Gym {
        athletes,
        ladders: vec![("ring-dip.ron", OWN_LADDER)],
        plates,
    }
}

fn live(plan: &Plan, catalogue: &Catalogue, rack: &PlatesOnHand, member: &Member, seed: u64) -> Vec<Record> {
    let mut life = Life::new(catalogue, rack, &member.name, seed);
    life.unit = member.unit;
    life.habit = member.habit;
    let days = u64::from(plan.years.clamp(1, 20)) * 365;
    let first = ago(plan.on, days);
    life.bodyweight_kg = member.weights.0;
    life.write(
        first,
        Fact::Profile {
            name: Some(member.name.clone()),
            born: born(plan.on, member.age),
            sex: member.sex,
            height_cm: member.height_cm,
        },
    );
    for (ladder, ..) in &member.climbs {
        life.place(first, ladder, Placed::Joined);
    }
    for days_ago in (0..=days).rev() {
        day(&mut life, plan, member, days, days_ago);
    }
    life.log.records
}

/// One day of a life.
fn day(life: &mut Life<'_>, plan: &Plan, member: &Member, days: u64, days_ago: u64) {
    let date = ago(plan.on, days_ago);
    let gone = part(days - days_ago, days);
    life.bodyweight_kg = member.weights.0 + (member.weights.1 - member.weights.0) * gone;
    if let Some((kind, _)) = member.phase.filter(|(_, began)| *began == days_ago) {
        life.write(date, Fact::Phase { kind, note: None });
    }
    let weekday = (days - days_ago) % 7;
    let steps_on = match member.scale {
        Scale::Weekly => true,
        Scale::Lapsed => days_ago > 20,
        Scale::Never => false,
    };
    if steps_on && weekday == 1 {
        life.weigh_in(date);
    }
    // Today's session is still ahead; two weeks in summer are holidays.
    let away = (days - days_ago) % 365 >= 180 && (days - days_ago) % 365 < 196;
    let block = member.block.as_ref().filter(|block| days_ago <= block.days_ago);
    if let Some(block) = block.filter(|block| days_ago == block.days_ago) {
        changes_work(life, date, member, block);
    }
    if days_ago > 0 && !away {
        let climbs = member.climbs.iter().map(|(ladder, (left, right), growth)| {
            let grown = 1.0 + growth * gone * f64::from(plan.years.max(1)).sqrt();
            (*ladder, (left * grown, right * grown))
        });
        let given = block.map(|block| {
            block.work.iter().map(|(ladder, rung, (left, right))| {
                let asked = life.level(ladder, rung);
                (*ladder, (left * asked, right * asked))
            })
        });
        let work: Vec<(&str, (f64, f64))> = match given {
            Some(given) => given.collect(),
            None => climbs.collect(),
        };
        for (at, (ladder, strength)) in work.into_iter().enumerate() {
            let trains = if at == 0 {
                [0, 2, 4].contains(&weekday)
            } else {
                [1, 5].contains(&weekday)
            };
            if trains {
                life.train(date, ladder, strength);
            }
        }
        if weekday == 2 {
            for _ in 0..3 {
                life.extra(date, "row", 10);
            }
        }
        life.rest_of_the_body(date, weekday);
    }
    for scene in member.script.iter().filter(|scene| scene.days_ago == days_ago) {
        act(life, date, &scene.act);
    }
}

/// The coach sets aside what was climbed and gives the block's rungs.
fn changes_work(life: &mut Life<'_>, date: NaiveDate, member: &Member, block: &Block) {
    for (ladder, ..) in &member.climbs {
        if block.work.iter().all(|(given, ..)| given != ladder) {
            life.place(date, ladder, Placed::SetAside);
        }
    }
    for (ladder, rung, _) in &block.work {
        life.place(date, ladder, Placed::On((*rung).to_owned()));
    }
}

fn part(of: u64, all: u64) -> f64 {
    let number = |days: u64| u32::try_from(days).map_or(f64::MAX, f64::from);
    number(of) / number(all.max(1))
}

fn born(on: NaiveDate, age: u32) -> Option<Written> {
    // A few months past the birthday, on a day that every month has.
    let year = on.year() - i32::try_from(age).ok()?;
    let month = if on.month() > 3 { on.month() - 3 } else { 1 };
    let date = NaiveDate::from_ymd_opt(
        year,
        month,
        on.day().min(28).min(if on.month() > 3 { 28 } else { 1 }),
    )?;
    Some(Written::day(date))
}

fn act(life: &mut Life<'_>, date: NaiveDate, act: &Act) {
    match act {
        Act::Joins(ladder) => life.place(date, ladder, Placed::Joined),
        Act::Placed(ladder, rung) => life.place(date, ladder, Placed::On((*rung).to_owned())),
        Act::Hurts(site, side, score) => {
            life.write(
                date,
                Fact::Pain {
                    site: *site,
                    side: *side,
                    score: *score,
                    note: None,
                },
            );
        }
        Act::Says(text) => life.write(
            date,
            Fact::Note {
                text: (*text).to_owned(),
            },
        ),
        Act::Session(session) => session_sets(life, date, session),
    }
}

fn session_sets(life: &mut Life<'_>, date: NaiveDate, session: &Session) {
    let (ladder, rung) = session.rung;
    let Some(rung) = life.rung(ladder, rung) else {
        return;
    };
    let belt = session
        .ratio
        .map_or(0.0, |ratio| (ratio - 1.0) * life.bodyweight_kg);
    let step = if life.unit == Unit::Lb { 2.5 } else { 1.25 };
    let load = life
        .typed(belt, step)
        .filter(|typed| typed.value() > 0.0 && rung.help == Help::Added)
        .map(Load::Added);
    for (at, amount) in session.amounts.iter().enumerate() {
        let failed = at + session.missed >= session.amounts.len();
        let effort = if rung.work.range.is_hold() {
            Seconds::try_from(*amount).ok().map(Effort::Hold)
        } else {
            (0..=1000u16)
                .find(|reps| f64::from(*reps) >= *amount)
                .and_then(|reps| Reps::try_from(reps).ok())
                .map(Effort::Reps)
        };
        let Some(effort) = effort else { continue };
        let set = Set {
            movement: rung.movement.as_str().into(),
            side: session.side,
            load,
            effort,
            left: session
                .left
                .filter(|_| !failed)
                .and_then(|left| Given::rir(left).ok()),
            outcome: if failed { Outcome::Missed } else { Outcome::Done },
            bodyweight: None,
            ladder: Some(ladder.into()),
            rung: Some(rung.id.as_str().into()),
            note: None,
        };
        life.write(date, Fact::Set(set));
    }
}
