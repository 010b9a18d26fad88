//! Too hard? Misses and stalls.

use crate::coaching::advice::Verdict;
use crate::coaching::facts::Facts;
use crate::coaching::finding::Finding;
use crate::coaching::judge::{Exposure, Went};

use super::{DEEP_CUT, Found};

/// A pair of misses counts for so many days. Common practice, no source.
const PAIR_DAYS: i64 = 84;
/// With load, the pair of misses that sends a rung down. Common practice, no source.
const PAIRS_WITH_LOAD: usize = 3;
/// The same without load, where backing off only takes a set away. Common practice, no source.
const PAIRS_WITHOUT: usize = 2;
/// A stall is so many judged days …
const STALL_DAYS: usize = 6;
/// … within this part of the same load …
const STALL_BAND: f64 = 0.01;
/// … none of the last so many better than the ones before. All three: common practice, no source.
const STALL_LAST: usize = 4;

/// *Asks*: were the last two judged days both missed, and how often has that happened in this stay? *Why*: back off before
/// stepping back; a load that fails again and again is a rung too high. *Example*: missed twice → 5 % lighter; a third pair
/// → a rung lower, or 10 % lighter where the rung below is the same movement. Common practice, no source.
pub fn missed(facts: &Facts<'_, '_>) -> Option<Found> {
    let judged: Vec<&Exposure<'_, '_>> = facts.judged().collect();
    let pairs: Vec<_> = judged
        .windows(2)
        .filter_map(|pair| match pair {
            [first, second] => Some((first, second)),
            _ => None,
        })
        .filter(|(first, second)| first.went == Went::Missed && second.went == Went::Missed)
        .filter(|(first, _)| facts.age(first.date) <= PAIR_DAYS)
        .collect();
    let (first, second) = pairs.last().map(|(first, second)| (first.date, second.date))?;
    if judged.last().is_none_or(|latest| latest.date != second) {
        return None;
    }
    let pairs = pairs.len();
    let again = pairs
        >= if facts.is_loaded() {
            PAIRS_WITH_LOAD
        } else {
            PAIRS_WITHOUT
        };
    Some(if again {
        Found::new(Verdict::StepBack, Finding::MissedAgain { pairs, first, second }).cutting_to(DEEP_CUT)
    } else {
        Found::new(Verdict::BackOff, Finding::MissedTwice { first, second })
    })
}

/// *Asks*: have six judged days brought nothing at the same load? *Why*: a lighter day, then up again, beats a seventh try.
/// *Example*: six sessions at 95 kg, never more reps in all than in the first two → 5 % lighter. Not while this side only
/// waits for the other. Common practice, no source.
pub fn stalled(facts: &Facts<'_, '_>) -> Option<Found> {
    let latest = facts.latest().filter(|_| facts.is_loaded())?;
    let work = latest.work_kg()?;
    let mut days: Vec<&Exposure<'_, '_>> = facts.judged().rev().take(STALL_DAYS).collect();
    days.reverse();
    let same = |day: &&Exposure<'_, '_>| {
        day.work_kg()
            .is_some_and(|kg| (kg - work).abs() <= work * STALL_BAND + crate::coaching::GRACE_KG)
    };
    if days.len() < STALL_DAYS || !days.iter().all(same) {
        return None;
    }
    let (before, last) = days.split_at_checked(STALL_DAYS - STALL_LAST)?;
    let best = before.iter().map(|day| day.in_all()).fold(0.0, f64::max);
    let better = last.iter().any(|day| day.in_all() > best);
    let waits = facts
        .other_lowest
        .is_some_and(|other| latest.lowest() > other + facts.side_gap());
    (!better && !waits).then(|| {
        Found::new(
            Verdict::BackOff,
            Finding::Stalled {
                days: STALL_DAYS,
                work_kg: work,
            },
        )
    })
}
