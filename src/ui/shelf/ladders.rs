//! Ladders of the open athlete: rungs, hands and what each rung asks.

use crate::body::demand::{Measured, demands_with, goal};
use crate::body::{Body, RungDemand};
use crate::catalogue::{Catalogue, Ladder, Rung, Way};
use crate::coaching::progress::{Progress, progress};
use crate::coaching::standing::{is_set_aside, joined, rails, rung_now};
use crate::coaching::{NextStep, Verdict};
use crate::problem::Severity;
use crate::timeline::Timeline;
use crate::ui::views::{
    BranchView, CompanionView, HandView, LadderView, LaddersView, OtherLadder, RungState, RungView, Spot,
};
use crate::units::{Bodyweight, Rail};

use super::beliefs;
use super::opened::Opened;
use super::rung_sheet::{Sheets, sheet};
use super::{say, strength, what_if};

/// How many rungs the strip between two cards shows.
const STRIP: usize = 4;

/// Every ladder, the chosen or the first joined one open.
pub(super) fn view(opened: &Opened) -> LaddersView {
    let Some(log) = opened.open_log() else {
        return LaddersView::default();
    };
    let timeline = opened.timeline(log);
    let on = joined(&timeline);
    let open = opened
        .ladder
        .as_deref()
        .or_else(|| {
            on.iter()
                .copied()
                .find(|id| opened.catalogue.ladder(id).is_some())
        })
        .and_then(|id| opened.catalogue.ladder(id));
    let strength = open.map_or_else(Vec::new, |ladder| strength::views(opened, &timeline, ladder));
    let open = open.map(|ladder| ladder_view(opened, &timeline, ladder));
    let mut others: Vec<OtherLadder> = opened
        .catalogue
        .ladders()
        .map(|ladder| OtherLadder {
            id: ladder.id.clone(),
            title: ladder.title.clone(),
            joined: on.contains(ladder.id.as_str()),
            broken: None,
        })
        .collect();
    others.sort_by_key(|other| !other.joined);
    others.extend(broken(opened));
    LaddersView {
        open,
        others,
        strength,
    }
}

/// Ladder files that hold no ladder.
fn broken(opened: &Opened) -> Vec<OtherLadder> {
    let mut all: Vec<OtherLadder> = Vec::new();
    for problem in &opened.problems {
        let file = problem.place.file.as_str();
        let Some(name) = file
            .strip_prefix("ladders/")
            .filter(|_| problem.severity == Severity::Error)
        else {
            continue;
        };
        if all.iter().all(|other| other.id != file) {
            all.push(OtherLadder {
                id: file.to_owned(),
                title: name.trim_end_matches(".ron").to_owned(),
                joined: false,
                broken: Some(problem.to_string()),
            });
        }
    }
    all
}

/// One ladder with the athlete's hands on it.
pub(super) fn ladder_view(opened: &Opened, timeline: &Timeline<'_>, ladder: &Ladder) -> LadderView {
    let asked = what_if::asked(opened, timeline);
    let mut view = view_at(opened, timeline, ladder, asked.or(timeline.bodyweight()));
    view.what_if = what_if::view(opened, timeline, &view.beliefs);
    view
}

/// The same, with demands for this bodyweight.
fn view_at(
    opened: &Opened,
    timeline: &Timeline<'_>,
    ladder: &Ladder,
    bodyweight: Option<Bodyweight>,
) -> LadderView {
    let body = Body::of(&timeline.person, bodyweight, opened.on).unwrap_or_else(|_| Body::unknown_body());
    let measured = Measured {
        band: timeline.measured_band(ladder),
    };
    let demands = demands_with(ladder, &opened.catalogue, &body, measured);
    let steps: Vec<&NextStep> = opened
        .athlete()
        .map(|(_, athlete)| athlete.session.as_slice())
        .unwrap_or_default()
        .iter()
        .filter(|step| step.ladder == ladder.id)
        .collect();
    let climbs: Vec<(Rail, Vec<Progress<'_>>)> = rails(ladder)
        .iter()
        .map(|rail| (*rail, progress(timeline, ladder, *rail)))
        .collect();
    let beliefs = beliefs::of_ladder(opened, timeline, ladder);
    let sheets = Sheets {
        opened,
        timeline,
        ladder,
        climbs: &climbs,
        beliefs: &beliefs,
    };
    let goal = goal(ladder).map(|goal| goal.id.clone());
    let demand_of = |rung: &Rung| demands.iter().find(|demand| demand.rung == rung.id);
    let rungs: Vec<RungView> = ladder
        .main_line()
        .map(|rung| {
            let demand = demand_of(rung);
            let (status, status_is_now) = status(opened, rung, &climbs, &steps);
            RungView {
                id: rung.id.clone(),
                title: rung.title.clone(),
                standard: say::standard(rung),
                demand: demand.and_then(centre),
                is_goal: goal.as_deref() == Some(rung.id.as_str()),
                state: state(rung, &climbs),
                status,
                status_is_now,
                sheet: sheet(&sheets, rung, demand),
            }
        })
        .collect();
    let branches: Vec<BranchView> = ladder
        .rungs
        .iter()
        .filter_map(|rung| branch(&sheets, rung, demand_of(rung)))
        .collect();
    let hands = hands(timeline, ladder, &steps, !steps.is_empty());
    LadderView {
        id: ladder.id.clone(),
        title: ladder.title.clone(),
        subtitle: Catalogue::shipped()
            .ladder(&ladder.id)
            .is_none()
            .then(|| format!("own ladder, {} rungs", rungs.len())),
        sided: ladder.is_sided(),
        companions: companions(&opened.catalogue, ladder),
        rungs,
        branches,
        hands,
        beliefs: beliefs.bands,
        outlook: beliefs.outlook,
        set_aside: rails(ladder)
            .iter()
            .copied()
            .filter(|rail| is_set_aside(timeline, ladder, *rail))
            .collect(),
        broken: broken_now(opened, &ladder.id),
        what_if: None,
    }
}

/// What is wrong in a ladder's file, where its last good version is shown.
fn broken_now(opened: &Opened, id: &str) -> Option<String> {
    let file = opened.catalogue.origin(id)?;
    opened
        .problems
        .iter()
        .find(|problem| problem.severity == Severity::Error && problem.place.file == file)
        .map(|problem| format!("{}: {}.", say::place(&problem.place), problem.what))
}

fn centre(demand: &RungDemand) -> Option<f64> {
    demand.demand.map(crate::body::Band::centre)
}

/// The few rungs around the hands, from the one below the lower hand up.
pub(super) fn strip(opened: &Opened, timeline: &Timeline<'_>, ladder: &Ladder) -> LadderView {
    let mut view = view_at(opened, timeline, ladder, timeline.bodyweight());
    let index = |spot: Spot, branches: &[BranchView]| match spot {
        Spot::Ground => None,
        Spot::Rung(nth) => Some(nth),
        Spot::Branch(nth) => branches.get(nth).map(|branch| branch.from),
    };
    let lowest = view
        .hands
        .iter()
        .filter_map(|hand| index(hand.at, &view.branches))
        .min()
        .unwrap_or(0);
    let last_start = view.rungs.len().saturating_sub(STRIP);
    let from = lowest.saturating_sub(1).min(last_start);
    for hand in &mut view.hands {
        hand.at = match index(hand.at, &view.branches) {
            Some(nth) if nth >= from && nth - from < STRIP => Spot::Rung(nth - from),
            Some(nth) if nth >= from => Spot::Rung(STRIP - 1),
            _ => Spot::Ground,
        };
    }
    view.rungs = view.rungs.into_iter().skip(from).take(STRIP).collect();
    view.branches.clear();
    view.companions.clear();
    view
}

/// How far each rail is: left and right, or twice the same where both hands work as one.
fn state(rung: &Rung, climbs: &[(Rail, Vec<Progress<'_>>)]) -> [RungState; 2] {
    let of = |climb: &(Rail, Vec<Progress<'_>>)| {
        let Some(progress) = climb.1.iter().find(|progress| progress.rung.id == rung.id) else {
            return RungState::Open;
        };
        match (progress.passed, progress.met_on.len()) {
            (true, _) => RungState::Passed,
            (false, 0) => RungState::Open,
            (false, done) => RungState::WorkedOn {
                done: say::few(done),
                of: rung.standard.days.max(say::few(done)),
            },
        }
    };
    let left = climbs.first().map_or(RungState::Open, of);
    let right = climbs.get(1).map_or(left, of);
    [left, right]
}

/// `passed L May 2025, R Apr 2025`, or what is asked today.
fn status(
    opened: &Opened,
    rung: &Rung,
    climbs: &[(Rail, Vec<Progress<'_>>)],
    steps: &[&NextStep],
) -> (Option<String>, bool) {
    let asked: Vec<String> = steps
        .iter()
        .filter(|step| {
            step.prescription
                .as_ref()
                .map_or(step.rung == rung.id, |work| work.rung == rung.id)
        })
        .map(|step| {
            let what = match step.verdict {
                Verdict::StepUp => "next rung today",
                Verdict::StepBack => "step back today",
                Verdict::Pause => "pause",
                Verdict::WeighInFirst => "weigh in first",
                other => other.id(),
            };
            format!("{}{what}", say::side(step.rail))
        })
        .collect();
    if !asked.is_empty() {
        return (Some(asked.join(" · ")), true);
    }
    let passed: Vec<String> = climbs
        .iter()
        .filter_map(|(rail, climb)| {
            let progress = climb.iter().find(|progress| progress.rung.id == rung.id)?;
            let last = progress.met_on.last().filter(|_| progress.passed)?;
            Some(format!(
                "{}{}",
                say::side(*rail),
                say::short_date(*last, opened.on)
            ))
        })
        .collect();
    let words = (!passed.is_empty()).then(|| format!("passed {}", passed.join(", ")));
    (words, false)
}

fn branch(sheets: &Sheets<'_, '_>, rung: &Rung, demand: Option<&RungDemand>) -> Option<BranchView> {
    let Way::Branch { from, to } = &rung.way else {
        return None;
    };
    let work = format!("branch, {} × {}", rung.work.sets, say::range(rung.work.range));
    let centre = demand.and_then(centre);
    let line = match centre {
        Some(demand) => format!("{work} · {demand:.2}"),
        None => work,
    };
    let has_passed = |(_, climb): &(Rail, Vec<Progress<'_>>)| {
        climb
            .iter()
            .any(|progress| progress.rung.id == rung.id && progress.passed)
    };
    Some(BranchView {
        id: rung.id.clone(),
        title: rung.title.clone(),
        line,
        from: sheets.ladder.main_index(from)?,
        to: sheets.ladder.main_index(to)?,
        demand: centre,
        passed: sheets.climbs.iter().all(has_passed),
        sheet: sheet(sheets, rung, demand),
    })
}

/// Each companion once, beside the lowest rung that has it.
pub(super) fn companions(catalogue: &Catalogue, ladder: &Ladder) -> Vec<CompanionView> {
    let mut seen: Vec<&str> = Vec::new();
    ladder
        .main_line()
        .enumerate()
        .flat_map(|(beside, rung)| rung.companions.iter().map(move |companion| (beside, companion)))
        .filter(|(_, companion)| {
            let is_new = !seen.contains(&companion.movement.as_str());
            seen.push(&companion.movement);
            is_new
        })
        .map(|(beside, companion)| CompanionView {
            title: catalogue
                .movement(&companion.movement)
                .map_or_else(|| companion.movement.clone(), |movement| movement.title.clone()),
            line: companion.why.clone(),
            beside,
            demand: None,
            met: false,
        })
        .collect()
}

fn hands(timeline: &Timeline<'_>, ladder: &Ladder, steps: &[&NextStep], is_on: bool) -> Vec<HandView> {
    if !is_on {
        return Vec::new();
    }
    let spot = |rung: &Rung| match rung.way {
        Way::Main => ladder.main_index(&rung.id).map(Spot::Rung),
        Way::Branch { .. } => ladder
            .rungs
            .iter()
            .filter(|rung| rung.way != Way::Main)
            .position(|branch| branch.id == rung.id)
            .map(Spot::Branch),
    };
    rails(ladder)
        .iter()
        .copied()
        .filter(|rail| !is_set_aside(timeline, ladder, *rail))
        .map(|rail| HandView {
            rail,
            at: rung_now(timeline, ladder, rail)
                .and_then(|standing| spot(standing.rung))
                .unwrap_or(Spot::Ground),
            steps_up: steps
                .iter()
                .any(|step| step.rail == rail && step.verdict == Verdict::StepUp),
        })
        .collect()
}
