//! The roster's lines.

use crate::catalogue::Ladder;
use crate::coaching::caps::MILD_PAIN;
use crate::coaching::{NextStep, Verdict};
use crate::report::words::Words;
use crate::timeline::Pain;
use crate::ui::views::{LyingView, RosterLine, RosterView};
use crate::units::{Mass, Rail, Side, Unit};

use super::opened::{Athlete, Opened};
use super::say;

/// Everyone.
pub(super) fn view(opened: &Opened) -> RosterView {
    RosterView {
        lines: opened
            .athletes
            .iter()
            .map(|athlete| line(opened, athlete))
            .collect(),
    }
}

fn line(opened: &Opened, athlete: &Athlete) -> RosterLine {
    let unit = opened.book.unit();
    let shown = shown_ladder(&athlete.steps);
    let steps: Vec<&NextStep> = athlete
        .steps
        .iter()
        .filter(|step| Some(step.ladder.as_str()) == shown)
        .collect();
    let ladder = shown.and_then(|id| opened.catalogue.ladder(id));
    let rung = |step: &NextStep| Words::of(step, &opened.catalogue, unit).rung(&step.rung);
    let rungs: Vec<(Rail, String)> = steps.iter().map(|step| (step.rail, rung(step))).collect();
    let why = steps
        .iter()
        .filter_map(|step| {
            let first = step.reasons.first()?;
            let words = Words::of(step, &opened.catalogue, unit);
            Some((step.rail, words.reason(first, true)))
        })
        .collect();
    let worst = athlete.line.pains.iter().max_by_key(|pain| pain.score);
    let weighed = athlete.line.weighed;
    let days = weighed.map(|day| (opened.on - day.date).num_days());
    RosterLine {
        athlete: athlete.folder.clone(),
        name: athlete.line.athlete.clone(),
        need: athlete.line.need,
        glyph: ladder.map(|ladder| glyph(ladder, &steps)),
        ladder: ladder.map_or_else(|| "—".to_owned(), |ladder| ladder.title.clone()),
        rung: rungs_now(&rungs),
        verdicts: steps.iter().map(|step| (step.rail, step.verdict)).collect(),
        weighs: weighed.map_or_else(|| "—".to_owned(), |day| weighs(day.mean.mass(), unit)),
        weighed_ago: days.map_or_else(String::new, say::days_ago),
        weigh_in_is_old: athlete
            .steps
            .iter()
            .any(|step| step.verdict == Verdict::WeighInFirst),
        pain: worst.map(pain),
        pain_matters: worst.is_some_and(|pain| pain.score >= MILD_PAIN),
        last_set: athlete
            .line
            .last_set
            .map_or_else(|| "—".to_owned(), |date| say::short_date(date, opened.on)),
        why,
    }
}

/// `L Two fingers help, R One finger helps`; a rung that both hands are on is said once.
fn rungs_now(rungs: &[(Rail, String)]) -> String {
    match rungs {
        [(_, first), others @ ..] if others.iter().all(|(_, rung)| rung == first) => first.clone(),
        rungs => {
            let of = |(rail, rung): &(Rail, String)| format!("{}{rung}", say::side(*rail));
            rungs.iter().map(of).collect::<Vec<_>>().join(", ")
        }
    }
}

/// To the tenth always, so that a column of them lines up.
fn weighs(mass: Mass, unit: Unit) -> String {
    format!("{:.1} {}", mass.in_unit(unit), unit.sign())
}

/// `elbow R 6`.
pub(super) fn pain(pain: &Pain) -> String {
    match pain.side {
        Some(side) => format!("{} {} {}", pain.site.word(), Side::letter(side), pain.score),
        None => format!("{} {}", pain.site.word(), pain.score),
    }
}

/// The ladder whose verdict presses most, in the roster's order of needs; of equals the first.
fn shown_ladder(steps: &[NextStep]) -> Option<&str> {
    let presses = |step: &&NextStep| match step.verdict {
        Verdict::Pause => 0,
        Verdict::WeighInFirst => 1,
        Verdict::StepUp => 2,
        Verdict::BackOff | Verdict::StepBack => 3,
        Verdict::Test => 4,
        Verdict::Begin => 5,
        Verdict::AddLoad | Verdict::AddReps | Verdict::Repeat => 6,
    };
    Some(steps.iter().min_by_key(presses)?.ladder.as_str())
}

/// The main line lying, rungs evenly apart.
fn glyph(ladder: &Ladder, steps: &[&NextStep]) -> LyingView {
    let count = ladder.main_line().count();
    let share = |nth: usize| share(nth + 1, count + 1);
    let hand = |step: &&NextStep| {
        let rung = ladder.rung(&step.rung)?;
        // A branch lies half a rung above the one it leaves.
        Some((step.rail, half_share(ladder.half_rungs(rung) + 2, count + 1)))
    };
    let goal = crate::body::demand::goal(ladder)
        .and_then(|goal| ladder.main_index(&goal.id))
        .map_or(1.0, share);
    LyingView {
        hands: steps.iter().filter_map(hand).collect::<Vec<(Rail, f32)>>(),
        ticks: (0..count).map(share).collect(),
        goal,
    }
}

fn share(nth: usize, of: usize) -> f32 {
    half_share(2 * nth, of)
}

#[allow(clippy::cast_precision_loss, reason = "a count of rungs, 40 at most")]
fn half_share(halves: usize, of: usize) -> f32 {
    halves as f32 / (2 * of.max(1)) as f32
}
