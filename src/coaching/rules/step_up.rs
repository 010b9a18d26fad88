//! Is the standard met?

use crate::coaching::advice::Verdict;
use crate::coaching::entry;
use crate::coaching::facts::Facts;
use crate::coaching::finding::Finding;

use super::Found;

/// *Asks*: was the standard met on two of the last four judged days, two days apart, and does the rung above let one in?
/// *Why*: once can be a good day; and some rungs ask more than the one below can show. *Example*: 3 × 6 on Monday and
/// Thursday → next rung; without the asked hang → the same again until it is logged. Common practice, no source.
pub fn passed(facts: &Facts<'_, '_>) -> Option<Found> {
    let above = facts.above.filter(|_| facts.is_passed())?;
    let next = above.id.clone();
    Some(match entry::missing(facts.timeline, above, facts.rail) {
        None => Found::new(
            Verdict::StepUp,
            Finding::StandardMet {
                days: facts.passed_on(),
                next,
            },
        ),
        Some(entry) => {
            let (movement, at_least, ratio) = (entry.movement.clone(), entry.at_least, entry.ratio);
            Found::new(
                Verdict::Repeat,
                Finding::EntryMissing {
                    next,
                    movement,
                    at_least,
                    ratio,
                },
            )
        }
    })
}

/// *Asks*: was the standard met last time, but not yet often enough? *Why*: two days make it a fact.
/// *Example*: met on Monday → once more on Wednesday or later. Common practice, no source.
pub fn one_more_day(facts: &Facts<'_, '_>) -> Option<Found> {
    let latest = facts
        .latest()
        .filter(|latest| latest.meets && !facts.is_passed())?;
    let finding = Finding::OneMoreDay {
        date: latest.date,
        days: facts.passed_on().len(),
        asked: facts.rung.standard.days,
        apart: facts.rung.standard.days_apart,
    };
    Some(Found::new(Verdict::Repeat, finding))
}
