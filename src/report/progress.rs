//! One athlete's progress over a period, to hand over: where the hands were and are, strength over time, bests, bodyweight,
//! and what comes next.

mod bests;
mod strength;

use chrono::{Days, NaiveDate};

use crate::catalogue::{Catalogue, Ladder};
use crate::coaching::next_step::next_steps;
use crate::coaching::progress::progress;
use crate::coaching::standing::{Standing, is_set_aside, joined, rails, rung_now};
use crate::coaching::{NextStep, PlatesOnHand, Verdict};
use crate::logbook::{Log, Logbook};
use crate::timeline::Timeline;
use crate::units::{Rail, Unit};

use super::advice::prescription;
use super::numbers::{about, counted};
use super::words::Words;

use bests::best_lines;
pub use strength::{Band, Strength};

/// A period that nobody named: twelve weeks, the length of many training studies. Common practice, no source.
const USUAL_DAYS: u64 = 84;

/// The report.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The logbook's name.
    pub gym: String,
    /// The athlete's name.
    pub name: String,
    /// The first day of the period.
    pub from: NaiveDate,
    /// Its last day.
    pub on: NaiveDate,
    /// The unit that people here think in.
    pub unit: Unit,
    /// The period in a few sentences.
    pub summary: Vec<String>,
    /// Ladders, by id.
    pub ladders: Vec<LadderProgress>,
    /// Strength over time, the movement trained most first.
    pub strengths: Vec<Strength>,
    /// Bests now, and as they were at the start.
    pub bests: Vec<BestLine>,
    /// Weigh-in days of the period, kg; odd ones left out.
    pub weighed: Vec<(NaiveDate, f64)>,
    /// What comes next, a paragraph a rail.
    pub next: Vec<NextLine>,
    /// What to mind, each once.
    pub care: Vec<String>,
}

/// One ladder over the period.
#[derive(Debug, Clone, PartialEq)]
pub struct LadderProgress {
    /// Its title.
    pub title: String,
    /// Its main rungs' titles, from the ground up.
    pub rungs: Vec<String>,
    /// Its rails.
    pub rails: Vec<RailProgress>,
}

/// One rail over the period.
#[derive(Debug, Clone, PartialEq)]
pub struct RailProgress {
    /// Which.
    pub rail: Rail,
    /// Where it stood at the start: half rungs from the ground, and the rung's title; none where nothing said so.
    pub then: Option<(usize, String)>,
    /// Where it stands now.
    pub now: Option<(usize, String)>,
    /// Rungs whose standard was met in the period: title and day.
    pub passed: Vec<(String, NaiveDate)>,
}

/// One best.
#[derive(Debug, Clone, PartialEq)]
pub struct BestLine {
    /// "Pull-up, left".
    pub what: String,
    /// "best of 5 reps", "e1RM".
    pub measure: String,
    /// "+22.5 kg, 100.5 kg in all".
    pub value: String,
    /// "12 Nov 2026 at 78 kg".
    pub when: String,
    /// What it was at the start; none where there was nothing yet.
    pub then: Option<String>,
    /// Whether it was set in the period.
    pub is_new: bool,
}

/// What comes next on one rail.
#[derive(Debug, Clone, PartialEq)]
pub struct NextLine {
    /// The rail.
    pub rail: Rail,
    /// "One-arm pull-up, left: Two-finger help".
    pub title: String,
    /// The verdict.
    pub verdict: Verdict,
    /// "3 × 4–6, 1 in reserve, +17.5 kg (15 + 2.5), rest 3–5 min".
    pub work: Option<String>,
    /// Why.
    pub why: String,
}

/// The report of `log` from `from` (twelve weeks before, where none is named) to `on`.
pub fn report(
    book: &Logbook,
    log: &Log,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    from: Option<NaiveDate>,
    on: NaiveDate,
) -> Report {
    let usual = on.checked_sub_days(Days::new(USUAL_DAYS)).unwrap_or(on);
    let from = from.unwrap_or(usual).min(on);
    let unit = book.unit();
    let (then, now) = (
        Timeline::new(log, catalogue, from),
        Timeline::new(log, catalogue, on),
    );
    let steps = next_steps(&now, catalogue, plates);
    let weighed: Vec<(NaiveDate, f64)> = now
        .weigh_ins
        .days()
        .iter()
        .filter(|day| !day.odd && day.date >= from)
        .map(|day| (day.date, day.mean.kg()))
        .collect();
    let ladders: Vec<LadderProgress> = joined(&now)
        .into_iter()
        .filter_map(|id| catalogue.ladder(id))
        .filter_map(|ladder| of_ladder(ladder, &then, &now))
        .collect();
    let bests = best_lines(&then, &now, catalogue, unit);
    Report {
        gym: super::sheet::gym(book),
        name: log.name.clone(),
        from,
        on,
        unit,
        summary: summary(&now, from, &ladders, &bests, &weighed, unit),
        ladders,
        strengths: strength::strengths(&now, catalogue, from),
        bests,
        weighed,
        next: steps
            .iter()
            .map(|step| next_line(step, catalogue, unit))
            .collect(),
        care: care(&steps, catalogue, unit),
    }
}

fn of_ladder(ladder: &Ladder, then: &Timeline<'_>, now: &Timeline<'_>) -> Option<LadderProgress> {
    let place = |standing: Option<Standing<'_>>| {
        standing.map(|standing| (ladder.half_rungs(standing.rung), standing.rung.title.clone()))
    };
    let rails: Vec<RailProgress> = rails(ladder)
        .iter()
        .filter(|rail| !is_set_aside(now, ladder, **rail))
        .map(|rail| RailProgress {
            rail: *rail,
            then: place(rung_now(then, ladder, *rail)),
            now: place(rung_now(now, ladder, *rail)),
            passed: progress(now, ladder, *rail)
                .iter()
                .filter_map(|rung| Some((rung.rung.title.clone(), rung.passed_on()?)))
                .filter(|(_, date)| *date > then.on)
                .collect(),
        })
        .collect();
    let any = rails.iter().any(|rail| rail.now.is_some() || rail.then.is_some());
    any.then(|| LadderProgress {
        title: ladder.title.clone(),
        rungs: ladder.main_line().map(|rung| rung.title.clone()).collect(),
        rails,
    })
}

fn next_line(step: &NextStep, catalogue: &Catalogue, unit: Unit) -> NextLine {
    let words = Words::of(step, catalogue, unit);
    NextLine {
        rail: step.rail,
        title: words.step_title(step),
        verdict: step.verdict,
        work: step.prescription.as_ref().map(|work| prescription(work, unit)),
        why: step
            .reasons
            .first()
            .map_or_else(String::new, |found| words.reason(found, true)),
    }
}

fn care(steps: &[NextStep], catalogue: &Catalogue, unit: Unit) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for step in steps {
        let words = Words::of(step, catalogue, unit);
        for sentence in step.cautions.iter().map(|note| words.caution(note)) {
            if !said.contains(&sentence) {
                said.push(sentence);
            }
        }
    }
    said
}

fn summary(
    now: &Timeline<'_>,
    from: NaiveDate,
    ladders: &[LadderProgress],
    bests: &[BestLine],
    weighed: &[(NaiveDate, f64)],
    unit: Unit,
) -> Vec<String> {
    let sets: Vec<NaiveDate> = now
        .sets
        .iter()
        .map(|set| set.date)
        .filter(|date| *date >= from)
        .collect();
    let mut days = sets.clone();
    days.dedup();
    let mut said = vec![if sets.is_empty() {
        "No set was logged in this time.".to_owned()
    } else {
        format!(
            "{} on {}.",
            counted(sets.len(), "set"),
            counted(days.len(), "day")
        )
    }];
    let passed: usize = ladders
        .iter()
        .flat_map(|ladder| &ladder.rails)
        .map(|rail| rail.passed.len())
        .sum();
    if passed > 0 {
        said.push(format!("{} passed.", counted(passed, "rung")));
    }
    let new = bests.iter().filter(|best| best.is_new).count();
    if new > 0 {
        said.push(format!(
            "{} bests below are from this time.",
            number_of(new, bests.len())
        ));
    }
    if let (Some((first_day, first)), Some((last_day, last))) = (weighed.first(), weighed.last())
        && first_day != last_day
    {
        let from = first_day.format("%-d %b");
        let to = last_day.format("%-d %b");
        said.push(format!(
            "Bodyweight {} on {from}, {} on {to}.",
            about(*first, unit),
            about(*last, unit)
        ));
    }
    said
}

fn number_of(part: usize, whole: usize) -> String {
    if part == whole {
        "All".to_owned()
    } else {
        format!("{part} of {whole}")
    }
}
