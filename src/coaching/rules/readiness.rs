//! Fit for work today? Pain, a weigh-in, time away, a lighter week.

use crate::coaching::advice::Verdict;
use crate::coaching::facts::{Facts, STRONG_PAIN, STRONG_PAIN_DAYS};
use crate::coaching::finding::Finding;

use super::{DEEP_CUT, DEEPEST_CUT, Found};

/// A weigh-in this old no longer tells today's load, days. Common practice, no source.
const STALE_DAYS: i64 = 15;
/// Time away that asks for a lighter day, days. Little is lost in two weeks (McMaster et al. 2013); the bound is common practice.
const AWAY: i64 = 15;
/// Time away that costs more. Common practice, no source.
const LONG_AWAY: i64 = 29;
/// Time away after which a rung has to be earned again. Common practice, no source.
const STEP_AWAY: i64 = 85;

/// *Asks*: was pain of 6 or more reported at one of the rung's joints, and not less since?
/// *Why*: sharp pain is no training load; the scale's upper zone is excessive (pain monitoring, Thomeé 1997, from memory).
/// *Example*: elbow 7 four days ago → pause.
pub fn pain_stop(facts: &Facts<'_, '_>) -> Option<Found> {
    let pain = facts.pain.filter(|pain| pain.score >= STRONG_PAIN)?;
    let finding = Finding::PainStop {
        site: pain.site,
        score: pain.score,
        days: facts.age(pain.date),
    };
    Some(Found::new(Verdict::Pause, finding))
}

/// *Asks*: on a rung with load, is the last weigh-in 15 days old or older, or missing?
/// *Why*: the belt is the target less today's bodyweight; an old bodyweight makes a wrong belt.
/// *Example*: weighed on 1 March, asked on the 16th → weigh in first. Common practice, no source.
pub fn weigh_in_stale(facts: &Facts<'_, '_>) -> Option<Found> {
    let days = facts.timeline.weigh_ins.last().map(|day| facts.age(day.date));
    let stale = facts.is_loaded() && days.is_none_or(|days| days >= STALE_DAYS);
    stale.then(|| Found::new(Verdict::WeighInFirst, Finding::WeighInStale { days }))
}

/// *Asks*: how long ago was the last day on this rung?
/// *Why*: strength falls with time off (Bosquet et al. 2013), tendons faster than the memory of the last load.
/// *Example*: 20 days → 5 % lighter; 40 days → 10 % lighter, or the rung below where nothing is loaded; 85 → a rung lower.
pub fn layoff(facts: &Facts<'_, '_>) -> Option<Found> {
    let days = facts.age(facts.last_exposure()?);
    let found = if days >= STEP_AWAY {
        Found::new(Verdict::StepBack, Finding::LayoffStep { days }).cutting_to(DEEPEST_CUT)
    } else if days >= LONG_AWAY {
        let verdict = if facts.is_loaded() {
            Verdict::BackOff
        } else {
            Verdict::StepBack
        };
        Found::new(verdict, Finding::LayoffLong { days }).cutting_to(DEEP_CUT)
    } else if days >= AWAY {
        Found::new(Verdict::BackOff, Finding::LayoffShort { days })
    } else {
        return None;
    };
    Some(found)
}

/// *Asks*: was a 6 or more reported in the last four weeks, with no day on the rung since?
/// *Why*: the first day after pain is a trial, not a test. *Example*: a 7 last week, a 2 today → 5 % lighter, a set fewer.
/// Common practice, no source.
pub fn after_pain(facts: &Facts<'_, '_>) -> Option<Found> {
    let strong = facts
        .timeline
        .pains
        .iter()
        .rev()
        .filter(|pain| pain.score >= STRONG_PAIN && pain.touches(facts.movement, facts.rail))
        .find(|pain| facts.age(pain.date) <= STRONG_PAIN_DAYS)?;
    let finding = Finding::AfterPain {
        site: strong.site,
        score: strong.score,
        date: strong.date,
    };
    facts
        .last_exposure()
        .is_none_or(|last| last <= strong.date)
        .then(|| Found::new(Verdict::BackOff, finding))
}

/// *Asks*: does today lie in a deload? *Why*: half the sets for a week keep strength; a week fully off cost some (Coleman et
/// al. 2024). *Example*: deload since Monday → the same loads, half the sets until Sunday.
pub fn deload(facts: &Facts<'_, '_>) -> Option<Found> {
    let running = facts.timeline.phases.in_deload(facts.timeline.on);
    running.then(|| Found::new(Verdict::Repeat, Finding::Deload))
}
