//! The order of things: rules, caps, sides, prescription. Everything else only answers.

use chrono::NaiveDate;
use rayon::prelude::*;

use crate::catalogue::{Catalogue, Ladder};
use crate::logbook::Log;
use crate::timeline::{Form, Timeline};

use super::advice::{NextStep, Prescription, Verdict};
use super::caps::{self, Capped};
use super::entry::{Named, begin_at};
use super::facts::{Facts, Known, system};
use super::finding::Finding;
use super::judge::Exposure;
use super::loads::PlatesOnHand;
use super::prescribe::{Ruling, bound_by_other, prescribe, target};
use super::rules::{ELSE, Found, READINESS, WORK};
use super::standing::{is_set_aside, joined, rails, rung_now};
use super::{care, prescribe, sides};

/// The next step of every rail of every ladder that the athlete is on, in order of ladder id, then left, right.
pub fn next_steps(timeline: &Timeline<'_>, catalogue: &Catalogue, plates: &PlatesOnHand) -> Vec<NextStep> {
    joined(timeline)
        .into_iter()
        .filter_map(|id| catalogue.ladder(id))
        .flat_map(|ladder| on_ladder(timeline, catalogue, ladder, plates))
        .collect()
}

/// The next steps of many athletes at once, in order of name; not of those who are archived.
pub fn of_all<'l>(
    logs: &'l [Log],
    catalogue: &'l Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
) -> Vec<NextStep> {
    of_each(logs, on, |log| {
        next_steps(&Timeline::new(log, catalogue, on), catalogue, plates)
    })
}

/// What `steps` says of each athlete, many at once, in order of name; of an archived one only when nobody else is asked for.
pub(super) fn of_each<'l>(
    logs: &'l [Log],
    on: NaiveDate,
    steps: impl Fn(&'l Log) -> Vec<NextStep> + Sync + Send,
) -> Vec<NextStep> {
    let mut steps: Vec<Vec<NextStep>> = logs
        .par_iter()
        .with_max_len(1)
        .filter(|log| logs.len() == 1 || !log.is_archived(on))
        .map(steps)
        .collect();
    steps.sort_by(|a, b| {
        let name = |steps: &[NextStep]| steps.first().map(|step| step.athlete.clone());
        name(a).cmp(&name(b))
    });
    steps.into_iter().flatten().collect()
}

/// One rail as far as it can be judged alone.
struct Judged<'t, 'a> {
    facts: Facts<'t, 'a>,
    readiness: Vec<Found>,
    work: Vec<Found>,
    caps: Vec<Capped>,
    /// After the caps of this rail alone, readiness aside.
    verdict: Verdict,
    /// Before any cap.
    uncapped: Verdict,
}

fn on_ladder<'t, 'a>(
    timeline: &'t Timeline<'a>,
    catalogue: &'a Catalogue,
    ladder: &'a Ladder,
    plates: &'t PlatesOnHand,
) -> Vec<NextStep> {
    let standing: Vec<_> = rails(ladder)
        .iter()
        .filter(|rail| !is_set_aside(timeline, ladder, **rail))
        .map(|rail| (*rail, rung_now(timeline, ladder, *rail)))
        .collect();
    let mut facts: Vec<Facts<'t, 'a>> = standing
        .iter()
        .filter_map(|(rail, stands)| {
            let other = standing.iter().find(|(other, _)| other != rail).copied();
            // Where records say where the rail stands, nobody asks where it would begin.
            let named = match stands {
                Some(standing) => Named {
                    rung: standing.rung,
                    met: false,
                    held: false,
                },
                None => begin_at(timeline, ladder, *rail, other)?,
            };
            Some(Facts::gather(
                timeline,
                ladder,
                *rail,
                *stands,
                named,
                (plates, catalogue),
            ))
        })
        .collect();
    if let [left, right] = facts.as_mut_slice()
        && left.rung.id == right.rung.id
    {
        (left.other_lowest, right.other_lowest) = (
            right.latest().map(Exposure::lowest),
            left.latest().map(Exposure::lowest),
        );
    }
    let judged: Vec<Judged<'t, 'a>> = facts.into_iter().filter_map(judge).collect();
    // A ladder has one rail or two.
    let other = |at: usize| judged.get(at ^ 1);
    judged
        .iter()
        .enumerate()
        .map(|(at, own)| advise(own, other(at)))
        .collect()
}

/// Asks every rule and the caps of this rail alone.
fn judge<'t, 'a>(facts: Facts<'t, 'a>) -> Option<Judged<'t, 'a>> {
    let readiness: Vec<Found> = READINESS.iter().filter_map(|rule| rule(&facts)).collect();
    let mut work: Vec<Found> = WORK.iter().filter_map(|rule| rule(&facts)).collect();
    if work.is_empty() {
        work.extend(ELSE(&facts));
    }
    let uncapped = softened(&facts, work.first()?);
    let mut verdict = if asks(&readiness, Verdict::Pause) {
        Verdict::Pause
    } else {
        uncapped
    };
    let mut caps = Vec::new();
    for cap in caps::ALONE {
        if let Some(capped) = cap(&facts, uncapped) {
            if let Some(turned) = capped.turns_to.filter(|_| verdict == uncapped) {
                verdict = turned;
            }
            caps.push(capped);
        }
    }
    Some(Judged {
        facts,
        readiness,
        work,
        caps,
        verdict,
        uncapped,
    })
}

fn asks(readiness: &[Found], verdict: Verdict) -> bool {
    readiness.iter().any(|found| found.verdict == verdict)
}

/// A step back becomes a back-off on the lowest rung, and where the rung below is the same movement with less load —
/// unless the lighter load would need help that the athlete never used.
fn softened(facts: &Facts<'_, '_>, found: &Found) -> Verdict {
    if found.verdict != Verdict::StepBack {
        return found.verdict;
    }
    let Some(below) = facts.below else {
        return Verdict::BackOff;
    };
    if Form::of(below) != Form::of(facts.rung) {
        return Verdict::StepBack;
    }
    let lighter = prescribe::work(facts).map(|(kg, _)| system(kg * found.cut));
    let needs_help = lighter
        .zip(facts.loadable(true))
        .is_some_and(|(load, loadable)| loadable.needs_help(load));
    if needs_help && !facts.ever_helped() {
        Verdict::StepBack
    } else {
        Verdict::BackOff
    }
}

fn ruling<'r>(judged: &'r Judged<'_, '_>, decided: &'r Found, verdict: Verdict) -> Ruling<'r> {
    Ruling {
        verdict,
        decided: &decided.finding,
        eased: judged.work.iter().any(|found| {
            matches!(
                found.finding,
                Finding::LayoffShort { .. }
                    | Finding::LayoffLong { .. }
                    | Finding::LayoffStep { .. }
                    | Finding::AfterPain { .. }
            )
        }),
        cut: decided.cut,
        sore: judged
            .caps
            .iter()
            .any(|capped| matches!(capped.finding, Finding::PainCap { .. })),
        not_above: None,
    }
}

/// The verdict after the other side has been looked at.
fn after_sides(own: &Judged<'_, '_>, other: Option<&Judged<'_, '_>>) -> (Verdict, Option<Capped>) {
    let waits = other
        .and_then(|other| sides::wait((&own.facts, own.uncapped), (&other.facts, other.verdict)))
        .filter(|_| own.verdict != Verdict::Pause);
    let verdict = match waits.as_ref().and_then(|capped| capped.turns_to) {
        Some(turned) if own.verdict == own.uncapped => turned,
        _ => own.verdict,
    };
    (verdict, waits)
}

fn advise(own: &Judged<'_, '_>, other: Option<&Judged<'_, '_>>) -> NextStep {
    let facts = &own.facts;
    let (behind, waits) = after_sides(own, other);
    let excused = facts.timeline.is_minor() || facts.timeline.is_underweight();
    let verdict = if behind == Verdict::Pause && asks(&own.readiness, Verdict::Pause) {
        Verdict::Pause
    } else if asks(&own.readiness, Verdict::WeighInFirst) && !excused {
        Verdict::WeighInFirst
    } else {
        behind
    };
    let target = target(facts, behind);
    let only_waits = own.verdict == own.uncapped
        && own.uncapped.is_forward()
        && matches!(&waits, Some(capped) if matches!(capped.finding, Finding::SideWait { .. }));
    let prescription = prescription(own, behind, other.filter(|_| only_waits));
    let next_rung = matches!(verdict, Verdict::StepUp | Verdict::StepBack).then(|| target.id.clone());
    NextStep {
        athlete: facts.timeline.name.to_owned(),
        ladder: facts.ladder.id.clone(),
        rail: facts.rail,
        rung: facts.rung.id.clone(),
        next_rung,
        verdict,
        behind,
        prescription: prescription.filter(|_| verdict != Verdict::Pause),
        reasons: reasons(own, waits, verdict),
        cautions: care::notes(facts, verdict, behind, target),
        passed_on: if facts.known == Known::No {
            Vec::new()
        } else {
            facts.passed_on()
        },
        not_before: care::not_before(facts),
        days_without_standard: facts.judged().rev().take_while(|day| !day.meets).count(),
        chance: None,
        expected_reps: None,
    }
}

/// What is asked today; of a side that only waits for `other`, no more than of that one.
fn prescription(
    own: &Judged<'_, '_>,
    verdict: Verdict,
    other: Option<&Judged<'_, '_>>,
) -> Option<Prescription> {
    let mut own_ruling = ruling(own, own.work.first()?, verdict);
    if let Some((other, decided)) = other.and_then(|other| Some((other, other.work.first()?))) {
        let (verdict, _) = after_sides(other, Some(own));
        own_ruling.not_above = bound_by_other(&own.facts, &other.facts, &ruling(other, decided, verdict));
    }
    prescribe(&own.facts, &own_ruling)
}

/// What decided first, then the rest in the rules' order: readiness that decided, the cap that turned, rules, other caps.
fn reasons(own: &Judged<'_, '_>, waits: Option<Capped>, verdict: Verdict) -> Vec<Finding> {
    let mut first = Vec::new();
    let mut rest = Vec::new();
    let hurts = asks(&own.readiness, Verdict::Pause);
    for found in &own.readiness {
        if hurts || found.verdict == verdict {
            first.push(found.finding.clone());
        } else {
            rest.push(found.finding.clone());
        }
    }
    let mut caps: Vec<Capped> = own.caps.clone();
    caps.extend(waits);
    let turned = caps
        .iter()
        .position(|capped| capped.turns_to.is_some())
        .filter(|_| !hurts);
    if let Some(at) = turned {
        first.push(caps.remove(at).finding);
    }
    // A stale weigh-in that does not decide (a minor's) comes after what did.
    let mut work = own.work.iter().map(|found| found.finding.clone());
    if turned.is_none() {
        first.extend(work.next());
    }
    first.extend(rest);
    first.extend(work);
    first.extend(caps.into_iter().map(|capped| capped.finding));
    first
}
