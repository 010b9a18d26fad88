//! A session built from a budget of sets: which of today's prescriptions, in which order, how many sets of each, and why.
//!
//! What is chosen first: what is spaced enough before what loads a joint that still rests, then what the week lacks most, then
//! what was trained longest ago. What is done first: straight-arm work and balance, while you are fresh, then the heavy lifts,
//! then trunk, grip and single joints. The weaker side begins. All of it is common practice, no source; what each piece of work
//! is, is the next step's own prescription, and never more of it.

use crate::catalogue::{Catalogue, Movement, Muscle};
use crate::coaching::{NextStep, PlatesOnHand, Prescription, Verdict};
use crate::timeline::{Form, Timeline};
use crate::units::{Rail, Side};

use super::muscles::INDIRECT;
use super::order::{Stage, blocks, stage};
use super::session::{Built, Left, LeftOut, Part, Why};
use super::{Status, Trained};

/// A joint is not loaded on so many days running. Common practice, no source.
const MOST_RUNNING: usize = 2;

/// A ladder that may be trained today.
pub(super) struct Candidate<'a> {
    pub(super) ladder: &'a str,
    pub(super) parts: Vec<Part>,
    pub(super) movement: Option<&'a Movement>,
    rests: Option<Why>,
    ago: Option<i64>,
}

/// Builds today's session from `steps`, the advice as the day began, and `week`, the week of the timeline's day so far.
pub fn build<'a>(
    steps: &'a [NextStep],
    (timeline, catalogue, plates): (&Timeline<'_>, &'a Catalogue, &PlatesOnHand),
    week: &Trained<'_>,
    budget: u16,
) -> Built {
    let mut left_out = Vec::new();
    let mut open: Vec<Candidate<'a>> = Vec::new();
    for rails in steps.chunk_by(|a, b| a.ladder == b.ladder) {
        open.extend(candidate(rails, timeline, catalogue, week, &mut left_out));
    }
    let mut so_far: Vec<(Muscle, f64)> = week
        .groups
        .iter()
        .map(|group| (group.muscle, group.sets()))
        .collect();
    let mut chosen: Vec<(Candidate<'a>, Vec<Why>)> = Vec::new();
    let mut room = budget;
    while let Some(at) = best(&open, &so_far, week) {
        let mut candidate = open.swap_remove(at);
        let leave = |why| LeftOut {
            ladder: candidate.ladder.to_owned(),
            rail: Rail::Both,
            why,
        };
        if let Some(muscle) = full(&candidate, &so_far, week) {
            left_out.push(leave(Left::Enough(muscle)));
            continue;
        }
        let Some(short) = fit(&mut candidate.parts, room) else {
            left_out.push(leave(Left::NoRoom));
            continue;
        };
        let mut why = reasons(&candidate, &so_far, week);
        if short {
            why.push(Why::Short);
        }
        room -= candidate.parts.iter().map(|part| part.sets).sum::<u16>();
        add(&candidate, &mut so_far);
        chosen.push((candidate, why));
    }
    chosen.sort_by_key(|(candidate, _)| stage(candidate.movement));
    Built {
        budget,
        blocks: blocks(chosen, plates),
        left_out,
    }
}

/// What a ladder's rails ask today; what is not done goes to `left_out`.
fn candidate<'a>(
    rails: &'a [NextStep],
    timeline: &Timeline<'_>,
    catalogue: &'a Catalogue,
    week: &Trained<'_>,
    left_out: &mut Vec<LeftOut>,
) -> Option<Candidate<'a>> {
    let ladder = catalogue.ladder(&rails.first()?.ladder)?;
    let mut parts = Vec::new();
    for step in rails {
        match part(step, timeline, catalogue, week) {
            Ok(part) => parts.push(part),
            Err(why) => left_out.push(LeftOut {
                ladder: step.ladder.clone(),
                rail: step.rail,
                why,
            }),
        }
    }
    // Both rails left out for one reason are one line.
    if let [.., a, b] = left_out.as_mut_slice()
        && a.ladder == b.ladder
        && a.why == b.why
    {
        a.rail = Rail::Both;
        left_out.pop();
    }
    let height = |part: &Part| {
        ladder
            .rung(&part.work.rung)
            .map_or(0, |rung| ladder.half_rungs(rung))
    };
    let load = |part: &Part| match &part.work.load {
        Some(load) => load.system.kg(),
        None => part.work.asked.lo(),
    };
    parts.sort_by(|a, b| height(a).cmp(&height(b)).then(load(a).total_cmp(&load(b))));
    let movement = parts
        .first()
        .and_then(|part| catalogue.movement(&part.work.movement));
    let ago = parts
        .iter()
        .filter_map(|part| days_ago(&part.work.movement, timeline))
        .min();
    let rests = parts
        .iter()
        .find_map(|part| still_rests(part.rail, movement, week));
    (!parts.is_empty()).then_some(Candidate {
        ladder: &ladder.id,
        parts,
        movement,
        rests,
        ago,
    })
}

/// What is left of a rail's prescription, or why nothing of it is done today.
fn part(
    step: &NextStep,
    timeline: &Timeline<'_>,
    catalogue: &Catalogue,
    week: &Trained<'_>,
) -> Result<Part, Left> {
    let work = step.prescription.as_ref().ok_or(Left::Pause)?;
    if step.behind == Verdict::Pause {
        return Err(Left::Pause);
    }
    let sets = left_to_do(step, work, timeline, catalogue);
    if sets == 0 {
        return Err(Left::Done);
    }
    match keeps_out(step, catalogue.movement(&work.movement), week, sets < work.sets) {
        Some(why) => Err(why),
        None => Ok(Part {
            rail: step.rail,
            sets,
            work: work.clone(),
            weigh_in_first: step.verdict == Verdict::WeighInFirst,
        }),
    }
}

/// Sets of a prescription that are not done yet today.
fn left_to_do(step: &NextStep, work: &Prescription, timeline: &Timeline<'_>, catalogue: &Catalogue) -> u16 {
    let rung = catalogue
        .ladder(&step.ladder)
        .and_then(|ladder| ladder.rung(&work.rung));
    let Some(form) = rung.map(Form::of) else {
        return work.sets;
    };
    let today = timeline
        .sets
        .iter()
        .rev()
        .take_while(|set| set.date == timeline.on);
    let done = today
        .filter(|set| set.form == Some(form) && set.counts_for(step.rail))
        .count();
    work.sets.saturating_sub(u16::try_from(done).unwrap_or(u16::MAX))
}

/// Spacing that keeps a rail out today. What was begun today goes on.
fn keeps_out(step: &NextStep, movement: Option<&Movement>, week: &Trained<'_>, begun: bool) -> Option<Left> {
    if begun {
        return None;
    }
    if let Some(day) = step.not_before {
        return Some(Left::NotBefore(day));
    }
    let joints = &movement?.joints;
    let here = week
        .resting
        .iter()
        .filter(|rested| joints.contains(&rested.joint) && touches(rested.rail, step.rail));
    let longest = here.max_by_key(|rested| rested.running_before)?;
    let days = longest.running_before + 1;
    (days > MOST_RUNNING).then_some(Left::Running {
        joint: longest.joint,
        rail: longest.rail,
        days,
    })
}

fn touches(a: Rail, b: Rail) -> bool {
    a == Rail::Both || b == Rail::Both || a == b
}

/// A joint of the movement that was loaded before today and still rests.
fn still_rests(rail: Rail, movement: Option<&Movement>, week: &Trained<'_>) -> Option<Why> {
    let joints = &movement?.joints;
    let rested = week
        .resting
        .iter()
        .filter(|rested| joints.contains(&rested.joint) && touches(rested.rail, rail))
        .filter(|rested| rested.too_soon_after.is_some())
        .max_by_key(|rested| (rested.strains, rested.too_soon_after))?;
    Some(Why::StillRests {
        joint: rested.joint,
        rail: rested.rail,
        last: rested.too_soon_after?,
    })
}

fn days_ago(movement: &str, timeline: &Timeline<'_>) -> Option<i64> {
    let before = timeline.sets.iter().rev().filter(|set| set.date < timeline.on);
    let last = before
        .filter_map(|set| Some((set.movement?, set.date)))
        .find(|(known, _)| known.id == movement);
    last.map(|(_, date)| timeline.age(date))
}

/// What the next block should be: spaced enough, then lacking most, then longest ago, then by id.
fn best(open: &[Candidate<'_>], so_far: &[(Muscle, f64)], week: &Trained<'_>) -> Option<usize> {
    let rank = |candidate: &Candidate<'_>| {
        (
            candidate.rests.is_none(),
            need(candidate, so_far, week),
            candidate.ago.unwrap_or(i64::MAX),
        )
    };
    (0..open.len()).max_by(|a, b| {
        let (Some(a), Some(b)) = (open.get(*a), open.get(*b)) else {
            return std::cmp::Ordering::Equal;
        };
        let (one, other) = (rank(a), rank(b));
        one.0
            .cmp(&other.0)
            .then(one.1.total_cmp(&other.1))
            .then(one.2.cmp(&other.2))
            .then(b.ladder.cmp(a.ladder))
    })
}

/// A group of a candidate's movement that lacks sets this week.
struct Lack {
    muscle: Muscle,
    /// Sets so far.
    sets: f64,
    /// The range's low end.
    low: f64,
    /// What a set of the candidate gives: 1, or [`INDIRECT`].
    weight: f64,
}

impl Lack {
    fn need(&self) -> f64 {
        self.weight * (self.low - self.sets)
    }
}

fn lacking(candidate: &Candidate<'_>, so_far: &[(Muscle, f64)], week: &Trained<'_>) -> Vec<Lack> {
    let Some(movement) = candidate.movement else {
        return Vec::new();
    };
    let direct = movement.direct.iter().map(|muscle| (*muscle, 1.0));
    let indirect = movement.indirect.iter().map(|muscle| (*muscle, INDIRECT));
    direct
        .chain(indirect)
        .filter_map(|(muscle, weight)| {
            let sets = sets_of(so_far, muscle);
            let low = week.groups.iter().find(|group| group.muscle == muscle)?.range.low;
            (sets < low).then_some(Lack {
                muscle,
                sets,
                low,
                weight,
            })
        })
        .collect()
}

fn sets_of(so_far: &[(Muscle, f64)], muscle: Muscle) -> f64 {
    so_far
        .iter()
        .find(|(known, _)| *known == muscle)
        .map_or(0.0, |(_, sets)| *sets)
}

/// How much the week lacks of what a candidate trains.
fn need(candidate: &Candidate<'_>, so_far: &[(Muscle, f64)], week: &Trained<'_>) -> f64 {
    lacking(candidate, so_far, week).iter().map(Lack::need).sum()
}

/// A group that has had its whole range, if every group that the candidate trains directly has.
fn full(candidate: &Candidate<'_>, so_far: &[(Muscle, f64)], week: &Trained<'_>) -> Option<Muscle> {
    let direct = &candidate.movement?.direct;
    let has_all = |muscle: &Muscle| {
        let group = week.groups.iter().find(|group| group.muscle == *muscle);
        group.is_some_and(|group| {
            sets_of(so_far, *muscle) >= group.range.high || group.status() == Some(Status::Above)
        })
    };
    direct
        .iter()
        .all(has_all)
        .then(|| direct.first().copied())
        .flatten()
}

/// Cuts the sets to what there is room for, the same for each side; whether they were cut. None where less than half of what is
/// prescribed would be left.
fn fit(parts: &mut [Part], room: u16) -> Option<bool> {
    let wanted: u16 = parts.iter().map(|part| part.sets).sum();
    if wanted <= room {
        return Some(false);
    }
    let each = room / u16::try_from(parts.len()).ok()?.max(1);
    let enough = parts
        .iter()
        .all(|part| each >= part.sets.min(part.work.sets.div_ceil(2)));
    if each == 0 || !enough {
        return None;
    }
    parts.iter_mut().for_each(|part| part.sets = part.sets.min(each));
    Some(true)
}

fn reasons(candidate: &Candidate<'_>, so_far: &[(Muscle, f64)], week: &Trained<'_>) -> Vec<Why> {
    let lacks = lacking(candidate, so_far, week).into_iter();
    let most = lacks.max_by(|a, b| a.need().total_cmp(&b.need()));
    let mut why = vec![match most {
        Some(Lack {
            muscle, sets, low, ..
        }) => Why::Lacks { muscle, sets, low },
        None => Why::LastTrained(candidate.ago),
    }];
    if stage(candidate.movement) == Stage::Fresh {
        why.push(Why::Fresh);
    }
    why.extend(candidate.rests.clone());
    why
}

/// Adds what a block gives to the week.
fn add(candidate: &Candidate<'_>, so_far: &mut [(Muscle, f64)]) {
    let Some(movement) = candidate.movement else {
        return;
    };
    // A set of each side is one set for the group.
    let of = |side: Side| -> u16 {
        let parts = candidate.parts.iter();
        parts
            .filter(|part| part.rail.side().is_none_or(|own| own == side))
            .map(|part| part.sets)
            .sum()
    };
    let sets = of(Side::Left).max(of(Side::Right));
    for (muscle, so_far) in so_far {
        if movement.direct.contains(muscle) {
            *so_far += f64::from(sets);
        } else if movement.indirect.contains(muscle) {
            *so_far += INDIRECT * f64::from(sets);
        }
    }
}
