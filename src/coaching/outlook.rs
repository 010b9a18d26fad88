//! What beliefs add to a next step: the chance of its work, repetitions to expect, and what holds the rail back.
//!
//! Nothing here changes a verdict, a prescription or the reason that decided: a step stands on logged work.

use chrono::NaiveDate;

use crate::body::one_arm;
use crate::catalogue::{Catalogue, Help, Ladder, Rung};
use crate::logbook::Log;
use crate::strength::{Belief, Estimates, LinkKind};
use crate::timeline::Timeline;
use crate::units::{Mass, Rail, Reserve, SystemLoad};

use super::advice::{Asked, NextStep, Prescription};
use super::finding::Finding;
use super::held_back::{companion, held_back};
use super::judge::EPLEY_REPS;
use super::loads::PlatesOnHand;
use super::next_step::{next_steps, of_each};

/// A forward step is called a long shot below this chance: more likely not than so.
const LONG_SHOT: f64 = 0.5;
/// How much a day differs from the average one, on the log scale, where no belief has learnt it. An assumption without source.
const DAY_SD: f64 = 0.03;

/// Adds what beliefs say to the next steps of one athlete.
pub fn add(steps: &mut [NextStep], estimates: &mut Estimates<'_, '_>) {
    let catalogue = estimates.catalogue();
    for step in steps {
        let Some(ladder) = catalogue.ladder(&step.ladder) else {
            continue;
        };
        if let Some(work) = &step.prescription
            && let Some(rung) = ladder.rung(&work.rung)
            && let Some((chance, expected)) = outlook(estimates, ladder, rung, step.rail, work)
        {
            (step.chance, step.expected_reps) = (Some(chance), expected);
            if step.verdict.is_forward() && chance < LONG_SHOT {
                step.reasons.push(Finding::LongShot {
                    chance,
                    reps: work.asked.lo(),
                    expected,
                });
            }
        }
        let believed = has_companions(ladder)
            .then(|| estimates.on_ladder(ladder, step.rail))
            .flatten();
        let held = held_back(estimates.timeline(), ladder, step.rail, believed.as_ref());
        step.reasons.extend(held.into_iter().map(Finding::HeldBack));
    }
}

/// Whether the ladder hangs anything beside the line that a weak link could be trained by.
fn has_companions(ladder: &Ladder) -> bool {
    companion(ladder, LinkKind::Hang.companion().unwrap_or_default()).is_some()
}

/// The next steps of many athletes with what beliefs add, in order of name; not of those who are archived.
pub fn of_all<'l>(
    logs: &'l [Log],
    catalogue: &'l Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
) -> Vec<NextStep> {
    of_each(logs, on, |log| {
        let timeline = Timeline::new(log, catalogue, on);
        let mut steps = next_steps(&timeline, catalogue, plates);
        add(&mut steps, &mut Estimates::new(&timeline, catalogue));
        steps
    })
}

/// The chance of the lowest that is asked, the asked reserve left, in a fresh set; and repetitions to expect of one to failure.
fn outlook(
    estimates: &mut Estimates<'_, '_>,
    ladder: &Ladder,
    rung: &Rung,
    rail: Rail,
    work: &Prescription,
) -> Option<(f64, Option<f64>)> {
    let Asked::Reps(lo, _) = work.asked else {
        return None;
    };
    let reps = lo + work.reserve.map_or(0.0, Reserve::reps);
    let load = work.load.as_ref().map(|load| load.system);
    let chance = chance_of(estimates, ladder, rung, rail, load, reps)?;
    let expected =
        load_and_belief(estimates, rung, rail, load).map(|(load, belief)| belief.expected_reps(load));
    Some((chance, expected))
}

/// The chance of at least `reps` to failure in a fresh set of a rung today: at `load`, else at what its standard asks. None for
/// holds, for help that nobody measured, and without evidence.
pub fn chance_of(
    estimates: &mut Estimates<'_, '_>,
    ladder: &Ladder,
    rung: &Rung,
    rail: Rail,
    load: Option<SystemLoad>,
    reps: f64,
) -> Option<f64> {
    if let Help::FingerHelp(fingers) = rung.help {
        let single = one_arm::with_fingers(fingers)?.centre();
        let believed = estimates.on_ladder(ladder, rail)?;
        let reach = believed.reach_with_fingers();
        // As the ladder's demands count repetitions.
        let asked = single * (EPLEY_REPS + reps) / (EPLEY_REPS + 1.0);
        return Some(reach.with_noise(DAY_SD).chance(asked));
    }
    let (load, belief) = load_and_belief(estimates, rung, rail, load)?;
    Some(belief.chance_of_reps(load, reps))
}

/// The load of a plain rung of repetitions today, and the belief of its movement.
fn load_and_belief<'e>(
    estimates: &'e mut Estimates<'_, '_>,
    rung: &Rung,
    rail: Rail,
    load: Option<SystemLoad>,
) -> Option<(SystemLoad, &'e Belief)> {
    let plain = matches!(rung.help, Help::Added | Help::Plain) && !rung.work.range.is_hold();
    let movement = estimates.catalogue().movement(&rung.movement).filter(|_| plain)?;
    let believed = estimates.of(&movement.id, rail.side().filter(|_| movement.is_sided()))?;
    let standard = || match rung.standard.ratio {
        Some(ratio) => Some(SystemLoad::new(Mass::from_kg(ratio * believed.bodyweight?.kg()))),
        None => believed.bare(),
    };
    Some((load.or_else(standard)?, &believed.belief))
}
