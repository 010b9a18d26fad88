//! Add, test or repeat?

use crate::coaching::advice::Verdict;
use crate::coaching::facts::{Facts, system};
use crate::coaching::finding::Finding;
use crate::coaching::judge::{ATTEMPT_REPS, EPLEY_REPS, Went};
use crate::coaching::loads::Loadable;

use super::Found;

/// Smallest and largest step of load, as parts of the work load: 2 to 10 % (ACSM position stand 2009), taken of system load.
const STEP: (f64, f64) = (1.02, 1.10);
/// A `top` day confirms an unlogged one at so much of its load. Common practice, no source.
const SAME_LOAD: f64 = 0.99;
/// How far back a hard set is looked for before a test, days (six weeks). Common practice, no source.
const TEST_DAYS: i64 = 42;
/// So many judged days in that time make a test worth it. Common practice, no source.
const TEST_JUDGED: usize = 4;
/// At most so much in reserve makes a set hard. Common practice, no source.
const HARD_RESERVE: f64 = 2.0;

/// *Asks*: are there only light days on this rung? *Why*: a light day shows nothing. Common practice, no source.
/// *Example*: two deload days since the step up → the same again.
pub fn light_only(facts: &Facts<'_, '_>) -> Option<Found> {
    let only_light = !facts.exposures.is_empty() && facts.latest().is_none();
    only_light.then(|| Found::new(Verdict::Repeat, Finding::LightOnly))
}

/// *Asks*: what held the last judged day up: a miss, the movement's standard, too few sets, too little in reserve?
/// *Why*: each is repeated before anything is added. *Example*: 5, 5, 3 where 4 to 6 is asked, the last one failed → the same
/// again. Common practice, no source.
pub fn held_up(facts: &Facts<'_, '_>) -> Option<Found> {
    let latest = facts.latest()?;
    let date = latest.date;
    let finding = match latest.went {
        Went::Missed => Finding::MissedOnce {
            date,
            lowest: latest.lowest(),
            lo: facts.measure.lo(),
        },
        Went::Form => Finding::FormMiss { date },
        Went::Short => Finding::SetsShort {
            date,
            done: latest.judged.len(),
            asked: facts.measure.sets(),
            lowest: latest.lowest(),
            lo: facts.measure.lo(),
        },
        Went::Low => Finding::ReserveShort {
            date,
            lowest: latest.lowest_reserve().unwrap_or(0.0),
            asked: facts.measure.asked(),
        },
        _ => return None,
    };
    Some(Found::new(Verdict::Repeat, finding))
}

/// Whether the last judged day reached the top with the asked reserve, or two in a row reached it with none logged.
fn is_at_top(facts: &Facts<'_, '_>) -> bool {
    let Some(latest) = facts.latest() else {
        return false;
    };
    match latest.went {
        Went::Top | Went::Test => true,
        Went::TopUnlogged => facts.before_latest().is_some_and(|before| {
            let reached = before.went.is_top() || before.went == Went::TopUnlogged;
            let as_heavy = match before.work_kg().zip(latest.work_kg()) {
                Some((before, now)) => before >= now * SAME_LOAD - crate::coaching::GRACE_KG,
                None => true,
            };
            reached && as_heavy
        }),
        _ => false,
    }
}

/// *Asks*: were all sets at the top of the range with the asked reserve, and what step do the plates allow?
/// *Why*: the 2009 position stand adds 2 to 10 % when 1 or 2 repetitions over the goal can be done; taken of system load, the
/// smallest step that can be hung comes first. *Example*: 3 × 6 at 95 kg → [96.9, 104.5]: 97.5 kg. Where the next plate is a
/// bigger step, it is taken only if the reps done carry it by Epley; else reps are added first.
pub fn top_of_range(facts: &Facts<'_, '_>) -> Option<Found> {
    if !facts.is_loaded() || !is_at_top(facts) {
        return None;
    }
    let latest = facts.latest()?;
    let Some((work_kg, loadable)) = facts.work_kg().zip(facts.loadable(facts.ever_helped())) else {
        let finding = Finding::NoStepInBand {
            work_kg: facts.work_kg(),
            next_kg: None,
        };
        return Some(Found::new(Verdict::AddReps, finding));
    };
    if let Some(load) = step(loadable, work_kg) {
        let (load_kg, hi) = (load, facts.measure.hi());
        return Some(Found::new(
            Verdict::AddLoad,
            Finding::TopOfRange { work_kg, load_kg, hi },
        ));
    }
    let next_kg = coarse(loadable, work_kg);
    let (lowest, reserve) = (latest.lowest(), latest.lowest_reserve().unwrap_or(0.0));
    let carries = |load_kg: f64| {
        facts.measure.is_reps()
            && work_kg * (EPLEY_REPS + lowest + reserve) + crate::coaching::GRACE_KG
                >= load_kg * (EPLEY_REPS + facts.measure.lo() + facts.measure.asked())
    };
    Some(match next_kg.filter(|load_kg| carries(*load_kg)) {
        Some(load_kg) => Found::new(
            Verdict::AddLoad,
            Finding::CoarseStep {
                work_kg,
                load_kg,
                lowest,
                reserve,
            },
        ),
        None => Found::new(
            Verdict::AddReps,
            Finding::NoStepInBand {
                work_kg: Some(work_kg),
                next_kg,
            },
        ),
    })
}

/// The lightest load within the step's bounds, kg.
pub(crate) fn step(loadable: Loadable<'_>, work_kg: f64) -> Option<f64> {
    let (low, high) = STEP;
    loadable
        .lowest_within(system(work_kg * low), system(work_kg * high))
        .map(|load| load.system.kg())
}

/// The next load above those bounds, kg.
fn coarse(loadable: Loadable<'_>, work_kg: f64) -> Option<f64> {
    loadable
        .next_above(system(work_kg * STEP.1))
        .map(|load| load.system.kg())
}

/// *Asks*: is the top reached on a rung without load that has nothing above? *Why*: keep it; there is no next rung. (Where a
/// rung is above, the standard leads on; this only steps in if an own ladder asks more than the top of its range.)
/// *Example*: 4 × 8 s full lever, passed → the same again. Common practice, no source.
pub fn last_rung(facts: &Facts<'_, '_>) -> Option<Found> {
    let leads_on = facts.above.is_some() && facts.latest().is_some_and(|latest| latest.meets);
    let there = !facts.is_loaded() && is_at_top(facts) && !leads_on;
    there.then(|| {
        Found::new(
            Verdict::Repeat,
            Finding::LastRung {
                hi: facts.measure.hi(),
            },
        )
    })
}

/// *Asks*: is the top reached, but no reserve logged? *Why*: nobody knows what was left; once more, or log it.
/// *Example*: 3 × 6 without RIR → the same again; a second time → load. Common practice, no source.
pub fn reserve_unlogged(facts: &Facts<'_, '_>) -> Option<Found> {
    let unlogged = facts
        .latest()
        .is_some_and(|latest| latest.went == Went::TopUnlogged);
    unlogged.then(|| {
        Found::new(
            Verdict::Repeat,
            Finding::ReserveUnlogged {
                hi: facts.measure.hi(),
            },
        )
    })
}

/// *Asks*: on a rung with load, was nothing hard for six weeks? *Why*: a best set now and then keeps the loads honest.
/// *Example*: six weeks of fives with 3 in reserve → one set, as many as leave 1. Common practice, no source.
pub fn test_due(facts: &Facts<'_, '_>) -> Option<Found> {
    let recent = |date| facts.age(date) <= TEST_DAYS;
    let judged: Vec<_> = facts.judged().filter(|exposure| recent(exposure.date)).collect();
    if !facts.is_loaded() || judged.len() < TEST_JUDGED {
        return None;
    }
    let form = crate::timeline::Form::of(facts.rung);
    let mut sets = facts
        .timeline
        .of_form(form, facts.rail)
        .rev()
        .take_while(|set| recent(set.date));
    let hard = sets.any(|set| {
        set.known_reserve().is_some_and(|reserve| reserve <= HARD_RESERVE)
            || (set.is_reps() && set.amount <= ATTEMPT_REPS)
    });
    let tested = facts.measure.sets() > 1 && judged.iter().any(|exposure| exposure.judged.len() == 1);
    (!hard && !tested).then(|| Found::new(Verdict::Test, Finding::TestDue { judged: judged.len() }))
}

/// *Asks*: nothing; it holds when no other rule does. *Why*: in the range, the next thing is a repetition or a few seconds.
/// *Example*: 5, 5, 4 of 4 to 6 → from 5 up. Common practice, no source.
pub fn in_range(facts: &Facts<'_, '_>) -> Option<Found> {
    let latest = facts.latest()?;
    let finding = Finding::InRange {
        lowest: latest.lowest(),
        lo: facts.measure.lo(),
        hi: facts.measure.hi(),
    };
    Some(Found::new(Verdict::AddReps, finding))
}
