//! Joints loaded on following days, and until when they rest.
//!
//! A day's work asks 48 h until the same joint is loaded again (Magnusson et al. 2010: a tendon's collagen turns over for days
//! after a session), lowering, straight-arm, one-arm and palms-up work near the limit 72 h (common practice, no source), as the
//! next step spaces its rungs. Days are calendar days: 48 h are the day after next.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDate};

use crate::catalogue::{Catalogue, Help, Joint, Pattern};
use crate::coaching::care::{days_apart, strains};
use crate::coaching::facts::still_counts;
use crate::timeline::{Form, LoggedSet, Pain, Timeline};
use crate::units::{Rail, Side};

use super::muscles::trains;
use super::{Week, hard, in_days};

/// A row of loaded days is followed back so many weeks before the week that is shown.
const WEEKS_BACK: u32 = 6;

/// Hard sets that loaded one joint of one side, day by day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JointLine<'a> {
    /// The joint.
    pub joint: Joint,
    /// The side.
    pub side: Side,
    /// What each day did to it, Monday first.
    pub days: Vec<Load<'a>>,
}

/// A joint that was loaded on days too near each other.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Close {
    /// The joint.
    pub joint: Joint,
    /// Its side; both where the days are the same.
    pub rail: Rail,
    /// The days in order, at least two, with hard sets; the first may lie before the week.
    pub days: Vec<(NaiveDate, u32)>,
    /// Whether it is work that asks 72 h.
    pub strains: bool,
    /// The first day on which it is rested.
    pub rested_from: NaiveDate,
    /// The latest report of pain there that still counts.
    pub pain: Option<Pain>,
}

impl Close {
    /// Days running at its end: 3 for Sunday, Monday and Tuesday.
    pub fn running(&self) -> usize {
        let gaps = self.days.windows(2).rev();
        1 + gaps
            .take_while(|pair| matches!(pair, [(a, _), (b, _)] if (*b - *a).num_days() == 1))
            .count()
    }
}

/// A joint that still rests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rested {
    /// The joint.
    pub joint: Joint,
    /// Its side; both where they are rested on the same day.
    pub rail: Rail,
    /// The first day on which it is rested.
    pub from: NaiveDate,
    /// Whether the work asked 72 h.
    pub strains: bool,
    /// The last day on which it was loaded.
    pub last: NaiveDate,
    /// The day before today whose rest isn't over: to load it today is too soon.
    pub too_soon_after: Option<NaiveDate>,
    /// On so many days running it was loaded, the last of them yesterday.
    pub running_before: usize,
}

/// What one day did to a joint.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Load<'a> {
    /// Hard sets.
    pub sets: u32,
    /// Whether the work asks 72 h.
    pub strains: bool,
    /// Titles of the movements, in order.
    pub movements: Vec<&'a str>,
}

/// The loaded days of every joint and side, as far back as a row of days reaches into the week.
pub(super) struct Loads<'t, 'a> {
    timeline: &'t Timeline<'a>,
    week: Week,
    of: BTreeMap<(Joint, Side), BTreeMap<NaiveDate, Load<'a>>>,
}

impl<'t, 'a> Loads<'t, 'a> {
    pub fn gather(timeline: &'t Timeline<'a>, catalogue: &Catalogue, week: Week) -> Self {
        let mut of: BTreeMap<(Joint, Side), BTreeMap<NaiveDate, Load<'a>>> = BTreeMap::new();
        let oldest = week.earlier(WEEKS_BACK).monday();
        for set in in_days(&timeline.sets, oldest, week.sunday()) {
            if !hard::is_hard(set) {
                continue;
            }
            let Some(movement) = set.movement else { continue };
            let strains = strains_a_tendon(set, catalogue);
            for side in [Side::Left, Side::Right]
                .into_iter()
                .filter(|side| trains(set, *side))
            {
                for joint in &movement.joints {
                    let days = of.entry((*joint, side)).or_default();
                    let load = days.entry(set.date).or_default();
                    load.sets += 1;
                    load.strains |= strains;
                    if !load.movements.contains(&movement.title.as_str()) {
                        load.movements.push(&movement.title);
                    }
                }
            }
        }
        Self { timeline, week, of }
    }

    fn each(&self) -> impl Iterator<Item = (Joint, Side, &BTreeMap<NaiveDate, Load<'a>>)> {
        self.of.iter().map(|((joint, side), days)| (*joint, *side, days))
    }

    /// Day by day.
    pub fn lines(&self) -> Vec<JointLine<'a>> {
        self.each()
            .map(|(joint, side, days)| JointLine {
                joint,
                side,
                days: self
                    .week
                    .days()
                    .map(|date| days.get(&date).cloned().unwrap_or_default())
                    .collect(),
            })
            .filter(|line| line.days.iter().any(|load| load.sets > 0))
            .collect()
    }

    /// Rows of days that are too near each other and reach into the week.
    pub fn close(&self) -> Vec<Close> {
        let mut found: Vec<Close> = Vec::new();
        for (joint, side, days) in self.each() {
            for row in rows(days) {
                let Some(last) = row.last().filter(|(date, _)| *date >= self.week.monday()) else {
                    continue;
                };
                let close = Close {
                    joint,
                    rail: Rail::from(Some(side)),
                    days: row.iter().map(|(date, load)| (*date, load.sets)).collect(),
                    strains: row.iter().any(|(_, load)| load.strains),
                    rested_from: rested_from(days, last.0),
                    pain: self.pain(joint, side),
                };
                match found
                    .iter_mut()
                    .find(|other| other.is_the_same_but_for_the_side(&close))
                {
                    Some(other) => other.rail = Rail::Both,
                    None => found.push(close),
                }
            }
        }
        found
    }

    /// What still rests on the timeline's day, if that lies in the week.
    pub fn resting(&self) -> Vec<Rested> {
        let today = self.timeline.on;
        let mut found: Vec<Rested> = Vec::new();
        if !self.week.contains(today) {
            return found;
        }
        for (joint, side, days) in self.each() {
            let Some((last, load)) = days.iter().next_back() else {
                continue;
            };
            let from = rested_from(days, *last);
            if from <= today {
                continue;
            }
            let before = || days.range(..today).rev();
            let open =
                |(date, load): (&NaiveDate, &Load<'_>)| (rest_of(*date, load) > today).then_some(*date);
            let running = before()
                .zip(1..)
                .take_while(|((date, _), back)| (today - **date).num_days() == *back);
            let rested = Rested {
                joint,
                rail: Rail::from(Some(side)),
                from,
                strains: load.strains || (from - *last).num_days() > 2,
                last: *last,
                too_soon_after: before().find_map(open),
                running_before: running.count(),
            };
            let same = |other: &&mut Rested| {
                Rested {
                    rail: rested.rail,
                    ..**other
                } == rested
            };
            match found.iter_mut().find(same) {
                Some(other) => other.rail = Rail::Both,
                None => found.push(rested),
            }
        }
        found
    }

    /// The latest report there that still counts today; none for a week that is over.
    fn pain(&self, joint: Joint, side: Side) -> Option<Pain> {
        let timeline = self.timeline;
        let here = |pain: &&Pain| pain.site == joint.site() && pain.side.is_none_or(|hurt| hurt == side);
        let latest = timeline
            .pains
            .iter()
            .filter(here)
            .max_by_key(|pain| (pain.date, pain.score))?;
        let counts = still_counts(latest.score, timeline.age(latest.date));
        (counts && self.week.contains(timeline.on)).then_some(*latest)
    }
}

impl Close {
    fn is_the_same_but_for_the_side(&self, other: &Close) -> bool {
        Close {
            rail: self.rail,
            ..other.clone()
        } == *self
    }
}

/// Whether a set loads tendons near their limits: as its rung says, else as the rungs of its form say; lowering and straight
/// arms without a rung do.
fn strains_a_tendon(set: &LoggedSet<'_>, catalogue: &Catalogue) -> bool {
    if let Some(tag) = set.tag {
        return strains(tag.rung) || tag.rung.help == Help::Negative;
    }
    let Some(movement) = set.movement else {
        return false;
    };
    let mut of_form = catalogue
        .ladders()
        .flat_map(|ladder| &ladder.rungs)
        .filter(|rung| Form::of(rung) == Form::plain(&movement.id))
        .peekable();
    if of_form.peek().is_none() {
        return matches!(
            movement.pattern,
            Pattern::StraightArmPull | Pattern::StraightArmPush
        );
    }
    of_form.any(strains)
}

/// Loaded days in rows of two and more, each too near the one before: the very next day, or for work that strains on both days
/// also the day after.
fn rows<'d, 'a>(days: &'d BTreeMap<NaiveDate, Load<'a>>) -> Vec<Vec<(NaiveDate, &'d Load<'a>)>> {
    let mut rows: Vec<Vec<(NaiveDate, &Load<'_>)>> = Vec::new();
    for (date, load) in days {
        let is_near = |before: &(NaiveDate, &Load<'_>)| {
            let apart = days_apart(before.1.strains && load.strains);
            before
                .0
                .checked_add_days(Days::new(apart))
                .is_some_and(|rested| *date < rested)
        };
        match rows.last_mut() {
            Some(row) if row.last().is_some_and(is_near) => row.push((*date, load)),
            _ => rows.push(vec![(*date, load)]),
        }
    }
    rows.retain(|row| row.len() > 1);
    rows
}

/// The first day on which one day's work is spaced enough.
fn rest_of(date: NaiveDate, load: &Load<'_>) -> NaiveDate {
    date.checked_add_days(Days::new(days_apart(load.strains)))
        .unwrap_or(date)
}

/// The first day on which all work until `last` is spaced enough.
fn rested_from(days: &BTreeMap<NaiveDate, Load<'_>>, last: NaiveDate) -> NaiveDate {
    let latest = days.range(..=last).rev().take(3);
    latest
        .map(|(date, load)| rest_of(*date, load))
        .max()
        .unwrap_or(last)
}
