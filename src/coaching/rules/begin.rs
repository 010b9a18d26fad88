//! Where to start?

use crate::coaching::advice::Verdict;
use crate::coaching::entry;
use crate::coaching::facts::{Facts, Known};
use crate::coaching::finding::{Begins, Finding};

use super::Found;

/// *Asks*: was the rail put on this rung, without a day on it since? *Why*: a placement is a coach's word.
/// *Example*: placed on one finger's help, nothing logged → begin there.
pub fn placed(facts: &Facts<'_, '_>) -> Option<Found> {
    let waiting = facts.exposures.is_empty() && facts.known == Known::ByRecord;
    waiting.then(|| Found::new(Verdict::Begin, Finding::Placed))
}

/// *Asks*: is nothing known of this rail? *Why*: begin at the highest rung whose entry is logged and whose standard is not,
/// never above the other side: a pass is logged work, not a guess. *Example*: three sets of six strict pull-ups on two days →
/// begin one rung higher. Common practice, no source.
pub fn no_record(facts: &Facts<'_, '_>) -> Option<Found> {
    let unknown = facts.exposures.is_empty() && facts.known != Known::ByRecord;
    let begins = match facts.named {
        named if named.held => Begins::BesideOther,
        named if named.met => Begins::Met,
        _ if facts.below.is_none() => Begins::First,
        _ => Begins::Entered,
    };
    unknown.then(|| Found::new(Verdict::Begin, Finding::NoRecord { begins }))
}

/// *Asks*: is the named rung met, and does the rung above ask something that was never tried? *Why*: one set today tells.
/// *Example*: pull-ups are there, a one-arm hang was never logged → hang today. Never decides.
pub fn entry_untested(facts: &Facts<'_, '_>) -> Option<Found> {
    no_record(facts).filter(|_| facts.named.met)?;
    let untested = facts
        .above?
        .entry
        .iter()
        .find(|entry| entry::is_untested(facts.timeline, entry, facts.rail))?;
    let finding = Finding::EntryUntested {
        movement: untested.movement.clone(),
        at_least: untested.at_least,
    };
    Some(Found::new(Verdict::Begin, finding))
}
