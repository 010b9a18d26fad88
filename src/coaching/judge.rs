//! A day on a rung, judged: its work load, which sets count, and how it went.

use chrono::NaiveDate;

use crate::catalogue::{Help, Rung};
use crate::timeline::{Form, LoggedSet, Timeline};
use crate::units::{Rail, SystemLoad};

use super::GRACE_KG;

/// Sets within so much of the day's heaviest are its work. Common practice, no source.
const WORK_BAND: f64 = 0.90;
/// A failed set up to so many times the last work load was meant as work. Common practice, no source.
const MEANT_AS_WORK: f64 = 1.10;
/// Sets at so much of the work load or more are judged. Common practice, no source.
const JUDGED_FROM: f64 = 0.99;
/// Sets over so many times the work load are judged only when they reach the range. Common practice, no source.
const JUDGED_TO: f64 = 1.01;
/// Under so much of the last work load a day is a light one. Common practice, no source.
const LIGHT_BELOW: f64 = 0.90;
/// A light day is told from a change of plan only within so many days. Common practice, no source.
const LIGHT_WITHIN_DAYS: i64 = 14;
/// Over so many times the last work load, with few reps, a day is a max attempt. Common practice, no source.
const ATTEMPT_ABOVE: f64 = 1.10;
/// At most so many reps make a max attempt. Common practice, no source.
pub(crate) const ATTEMPT_REPS: f64 = 2.0;
/// Grace on a standard's load, kg: a scale's last digit. Common practice, no source.
const STANDARD_GRACE_KG: f64 = 0.01;
/// A heavier set may have fewer reps than the standard, but not fewer than this. Common practice, no source.
const FEWEST_HEAVIER_REPS: f64 = 3.0;
/// Repetitions per doubling in Epley's formula: load × (30 + reps) is the same for sets as hard. Boyd Epley Workout, 1985.
pub(crate) const EPLEY_REPS: f64 = 30.0;

/// How a judged day went: the first that fits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Went {
    /// One set, well over the range, where several are asked: a test. Judged as top.
    Test,
    /// A set failed under the range.
    Missed,
    /// A set did not keep the movement's standard.
    Form,
    /// Too few sets, or one stopped under the range.
    Short,
    /// Less in reserve than asked.
    Low,
    /// All at the top of the range, and the reserve is known to be there.
    Top,
    /// All at the top of the range, reserve not logged.
    TopUnlogged,
    /// In the range.
    In,
}

impl Went {
    /// At the top of the range with the asked reserve.
    pub fn is_top(self) -> bool {
        matches!(self, Went::Top | Went::Test)
    }
}

/// Whether a load is as much as was asked, to a scale's last digit.
pub(crate) fn is_about(load: SystemLoad, asked_kg: f64) -> bool {
    load.kg() >= asked_kg - STANDARD_GRACE_KG - GRACE_KG
}

/// The rung's demands on a day, with what falls from above have added.
#[derive(Debug, Clone, Copy)]
pub struct Measure<'a> {
    /// The rung.
    pub rung: &'a Rung,
    /// Reps or seconds that falls have added to the top of the range and to the standard.
    pub extra: f64,
}

impl<'a> Measure<'a> {
    /// The rung as it is written.
    pub fn plain(rung: &'a Rung) -> Self {
        Self { rung, extra: 0.0 }
    }

    /// Whether the load decides on this rung.
    pub fn is_loaded(self) -> bool {
        self.rung.help == Help::Added
    }

    /// Lower end of the range.
    pub fn lo(self) -> f64 {
        self.rung.work.range.lo()
    }

    /// Upper end of the range.
    pub fn hi(self) -> f64 {
        self.rung.work.range.hi() + self.extra
    }

    /// Whether it is counted in repetitions.
    pub fn is_reps(self) -> bool {
        !self.rung.work.range.is_hold()
    }

    /// Sets asked.
    pub fn sets(self) -> usize {
        usize::from(self.rung.work.sets)
    }

    /// Reserve asked, repetitions; 0 where none is asked.
    pub fn asked(self) -> f64 {
        self.rung.work.reserve.map_or(0.0, |reserve| reserve.reps())
    }

    /// What each set of the standard must reach.
    pub fn reach(self) -> f64 {
        self.rung.standard.reach + self.extra
    }

    /// Whether a set has the standard's reps, load and reserve.
    fn is_met_by(self, set: &LoggedSet<'_>) -> bool {
        if set.broke_form() || set.known_reserve().is_some_and(|reserve| reserve < self.asked()) {
            return false;
        }
        let Some(ratio) = self.rung.standard.ratio else {
            return set.amount >= self.reach();
        };
        let Some((load, body)) = set.system.zip(set.bodyweight) else {
            return false;
        };
        let asked = ratio * body.kg();
        let plainly = set.amount >= self.reach() && is_about(load, asked);
        let heavier = self.is_loaded()
            && self.is_reps()
            && set.amount < self.reach()
            && set.amount >= self.lo().min(FEWEST_HEAVIER_REPS)
            && load.kg() * (EPLEY_REPS + set.amount) >= (asked - GRACE_KG) * (EPLEY_REPS + self.reach());
        plainly || heavier
    }

    /// Whether a day's sets meet the standard.
    pub fn is_met_on(self, sets: &[&LoggedSet<'_>]) -> bool {
        sets.iter().filter(|set| self.is_met_by(set)).count() >= usize::from(self.rung.standard.sets)
    }
}

/// A day of the stay with a set of the rung's form.
#[derive(Debug, Clone)]
pub struct Exposure<'t, 'a> {
    /// The day.
    pub date: NaiveDate,
    /// All its sets of the form.
    pub sets: Vec<&'t LoggedSet<'a>>,
    /// The work load and the set that made it; none where loads are not known.
    pub work: Option<(SystemLoad, &'t LoggedSet<'a>)>,
    /// A light day is never judged.
    pub light: bool,
    /// The sets that are judged.
    pub judged: Vec<&'t LoggedSet<'a>>,
    /// How it went.
    pub went: Went,
    /// Whether it meets the rung's standard.
    pub meets: bool,
}

impl Exposure<'_, '_> {
    /// Fewest reps or seconds of the judged sets.
    pub fn lowest(&self) -> f64 {
        self.judged
            .iter()
            .map(|set| set.amount)
            .fold(f64::INFINITY, f64::min)
    }

    /// Reps or seconds of the judged sets in all.
    pub fn in_all(&self) -> f64 {
        self.judged.iter().map(|set| set.amount).sum()
    }

    /// The lowest reserve that is known of the judged sets.
    pub fn lowest_reserve(&self) -> Option<f64> {
        self.judged
            .iter()
            .filter_map(|set| set.known_reserve())
            .reduce(f64::min)
    }

    /// The work load in kg.
    pub fn work_kg(&self) -> Option<f64> {
        self.work.map(|(load, _)| load.kg())
    }
}

/// Sets of `form` on `rail`, day by day, in order.
pub fn by_day<'t, 'a>(
    timeline: &'t Timeline<'a>,
    form: Form<'_>,
    rail: Rail,
) -> Vec<(NaiveDate, Vec<&'t LoggedSet<'a>>)> {
    let mut days: Vec<(NaiveDate, Vec<&LoggedSet<'a>>)> = Vec::new();
    for set in timeline.of_form(form, rail) {
        match days.last_mut() {
            Some((date, sets)) if *date == set.date => sets.push(set),
            _ => days.push((set.date, vec![set])),
        }
    }
    days
}

/// Every exposure of the stay, the days after `after`, in order, judged.
pub fn exposures<'t, 'a>(
    timeline: &'t Timeline<'a>,
    measure: Measure<'_>,
    rail: Rail,
    after: Option<NaiveDate>,
) -> Vec<Exposure<'t, 'a>> {
    let mut judged: Vec<Exposure<'t, 'a>> = Vec::new();
    let mut last_full: Option<usize> = None;
    for (date, sets) in by_day(timeline, Form::of(measure.rung), rail) {
        if after.is_some_and(|after| date <= after) {
            continue;
        }
        let last = last_full.and_then(|at| judged.get(at));
        let exposure = exposure(timeline, measure, date, sets, last);
        if !exposure.light {
            last_full = Some(judged.len());
        }
        judged.push(exposure);
    }
    judged
}

fn exposure<'t, 'a>(
    timeline: &Timeline<'_>,
    measure: Measure<'_>,
    date: NaiveDate,
    sets: Vec<&'t LoggedSet<'a>>,
    last: Option<&Exposure<'t, 'a>>,
) -> Exposure<'t, 'a> {
    let work = if measure.is_loaded() {
        work_load(measure, &sets, last)
    } else {
        None
    };
    let judged = judged_sets(measure, &sets, work);
    let meets = measure.is_met_on(&sets);
    let went = went(measure, &judged, meets);
    let light = timeline.phases.in_deload(date) || is_light(measure, date, &sets, work, last);
    Exposure {
        date,
        sets,
        work,
        light,
        judged,
        went,
        meets,
    }
}

fn kg(set: &LoggedSet<'_>) -> f64 {
    set.system.map_or(0.0, SystemLoad::kg)
}

/// The work load: what all the asked sets carried, so that neither a ramp nor a top set is taken for the work.
fn work_load<'t, 'a>(
    measure: Measure<'_>,
    sets: &[&'t LoggedSet<'a>],
    last: Option<&Exposure<'_, '_>>,
) -> Option<(SystemLoad, &'t LoggedSet<'a>)> {
    let meant = last.and_then(Exposure::work_kg).map(|kg| kg * MEANT_AS_WORK);
    let worked = |set: &&LoggedSet<'_>| {
        set.amount >= measure.lo() || (set.failed() && meant.is_some_and(|meant| kg(set) <= meant + GRACE_KG))
    };
    let choose = |wanted: &dyn Fn(&&LoggedSet<'_>) -> bool| -> Vec<&'t LoggedSet<'a>> {
        sets.iter().copied().filter(|set| wanted(set)).collect()
    };
    let mut pool = choose(&worked);
    if pool.is_empty() {
        pool = choose(&|set| set.amount >= 1.0);
    }
    if pool.is_empty() {
        pool = sets.to_vec();
    }
    pool.sort_by(|a, b| kg(b).total_cmp(&kg(a)));
    let heaviest = kg(pool.first()?);
    pool.retain(|set| kg(set) >= heaviest * WORK_BAND - GRACE_KG);
    let set = pool.get(measure.sets().saturating_sub(1)).or(pool.last())?;
    Some((set.system?, set))
}

/// The best of the sets at the work load, as many as are asked.
fn judged_sets<'t, 'a>(
    measure: Measure<'_>,
    sets: &[&'t LoggedSet<'a>],
    work: Option<(SystemLoad, &'t LoggedSet<'a>)>,
) -> Vec<&'t LoggedSet<'a>> {
    let mut judged: Vec<&LoggedSet<'a>> = sets
        .iter()
        .copied()
        .filter(|set| {
            work.is_none_or(|(work, _)| {
                let above = kg(set) > work.kg() * JUDGED_TO + GRACE_KG;
                kg(set) >= work.kg() * JUDGED_FROM - GRACE_KG && (!above || set.amount >= measure.lo())
            })
        })
        .collect();
    let left = |set: &LoggedSet<'_>| set.known_reserve().unwrap_or(-1.0);
    judged.sort_by(|a, b| b.amount.total_cmp(&a.amount).then(left(b).total_cmp(&left(a))));
    judged.truncate(measure.sets());
    judged
}

fn went(measure: Measure<'_>, judged: &[&LoggedSet<'_>], meets: bool) -> Went {
    let (lo, hi, asked) = (measure.lo(), measure.hi(), measure.asked());
    if let ([set], true) = (
        judged,
        measure.is_loaded() && measure.is_reps() && measure.sets() > 1,
    ) && set.amount > hi + asked
        && !set.broke_form()
    {
        return Went::Test;
    }
    if !meets {
        if judged.iter().any(|set| set.failed() && set.amount < lo) {
            return Went::Missed;
        }
        if judged.iter().any(|set| set.broke_form()) {
            return Went::Form;
        }
        if judged.len() < measure.sets() || judged.iter().any(|set| set.amount < lo) {
            return Went::Short;
        }
        if judged
            .iter()
            .filter_map(|set| set.known_reserve())
            .any(|reserve| reserve < asked)
        {
            return Went::Low;
        }
    }
    let all_reach = |amount: f64| judged.iter().all(|set| set.amount >= amount);
    let logged = judged.iter().any(|set| set.known_reserve().is_some());
    match (all_reach(hi), logged || asked <= 0.0 || all_reach(hi + asked)) {
        (true, true) => Went::Top,
        (true, false) => Went::TopUnlogged,
        (false, _) => Went::In,
    }
}

/// Light by load: much lighter than the last full day, or a max attempt far above it.
fn is_light(
    measure: Measure<'_>,
    date: NaiveDate,
    sets: &[&LoggedSet<'_>],
    work: Option<(SystemLoad, &LoggedSet<'_>)>,
    last: Option<&Exposure<'_, '_>>,
) -> bool {
    let (Some((work, _)), Some(last)) = (work, last) else {
        return false;
    };
    let Some(before) = last.work_kg() else {
        return false;
    };
    let soon = (date - last.date).num_days() <= LIGHT_WITHIN_DAYS;
    let full = last.went != Went::Missed && last.sets.iter().any(|set| set.amount >= measure.lo());
    let much_lighter = soon && full && work.kg() < before * LIGHT_BELOW - GRACE_KG;
    let few = sets
        .iter()
        .all(|set| set.amount < measure.lo() && set.amount <= ATTEMPT_REPS);
    let attempt = measure.is_reps() && few && work.kg() > before * ATTEMPT_ABOVE + GRACE_KG;
    much_lighter || attempt
}
