//! Many journals as one log: the union by id, amended, without what was retracted.
//!
//! Invariant: the answer is a function of the set of lines; order, repetition and split of the journals change nothing.

use std::cmp::Ordering;
use std::collections::HashMap;

use super::Log;
use super::journal::Entry;
use super::record::{Fact, Id, Record};

/// A record that no longer counts.
#[derive(Debug, Clone, PartialEq)]
pub struct Retracted {
    /// The record as it last stood.
    pub record: Record,
    /// The retraction that holds.
    pub by: Id,
    /// Its reason.
    pub why: Option<String>,
}

/// A record whose content was replaced.
#[derive(Debug, Clone, PartialEq)]
pub struct Amended {
    /// The record as first written.
    pub was: Record,
    /// The amend that holds.
    pub by: Id,
}

/// What lies behind a log: nothing of it counts, all of it can be brought back.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct History {
    /// Retracted records, in the log's order.
    pub retracted: Vec<Retracted>,
    /// First versions of amended records, in the log's order.
    pub amended: Vec<Amended>,
    /// Amends, retractions and restorations, by revision, device and bytes.
    pub changes: Vec<Record>,
    /// The highest revision anywhere in the journals; the next amend carries one more.
    pub highest_rev: u32,
}

/// The records that count, in the log's order, and what lies behind them. `highest_rev` is that of lines that gave no entry.
pub fn merge(entries: Vec<Entry<'_>>, highest_rev: u32) -> (Vec<Record>, History) {
    let mut history = History {
        highest_rev,
        ..History::default()
    };
    let union = union(entries);
    let mut records = Vec::with_capacity(union.len());
    let (facts, changes): (Vec<_>, Vec<_>) = union
        .into_iter()
        .partition(|entry| !is_change(&entry.record.what));
    let mut standing = Standing::of(changes, &mut history);
    for entry in facts {
        history.highest_rev = history.highest_rev.max(entry.record.rev);
        standing.settle(entry.record, &mut records, &mut history);
    }
    standing.settle_orphans(&mut records, &mut history);
    // Ids are unique now, so this order is total. Journals come nearly sorted, which a stable sort uses.
    records.sort_by(Log::order);
    history.retracted.sort_by(|a, b| Log::order(&a.record, &b.record));
    history.amended.sort_by(|a, b| Log::order(&a.was, &b.was));
    (records, history)
}

/// One entry an id: the one that precedes all others.
fn union(entries: Vec<Entry<'_>>) -> Vec<Entry<'_>> {
    let mut places: HashMap<Id, usize> = HashMap::with_capacity(entries.len());
    let mut union: Vec<Entry<'_>> = Vec::with_capacity(entries.len());
    for entry in entries {
        let place = *places.entry(entry.record.id).or_insert(union.len());
        match union.get_mut(place) {
            None => union.push(entry),
            Some(there) if precedence(there, &entry) == Ordering::Less => *there = entry,
            Some(_) => {}
        }
    }
    union
}

/// The order that decides: revision, device, bytes.
fn precedence(a: &Entry<'_>, b: &Entry<'_>) -> Ordering {
    (a.record.rev, &a.record.dev, a.body).cmp(&(b.record.rev, &b.record.dev, b.body))
}

fn is_change(what: &Fact) -> bool {
    matches!(
        what,
        Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. }
    )
}

/// The changes that hold, by target.
#[derive(Default)]
struct Standing {
    /// The retraction of the highest revision.
    gone: HashMap<Id, (u32, Id, Option<String>)>,
    /// The highest revision of a restoration.
    restored: HashMap<Id, u32>,
    /// The content of the amend that holds, as a record with the target's id.
    content: HashMap<Id, (Record, Id)>,
}

impl Standing {
    fn of(mut changes: Vec<Entry<'_>>, history: &mut History) -> Self {
        // Ascending, so that the last one written into a map is the one that holds.
        changes.sort_unstable_by(|a, b| precedence(a, b).then(a.record.id.cmp(&b.record.id)));
        let mut standing = Standing::default();
        let mut amends = Vec::new();
        for entry in changes {
            history.changes.push(entry.record.clone());
            let Record {
                id, rev, dev, what, ..
            } = entry.record;
            history.highest_rev = history.highest_rev.max(rev);
            match what {
                Fact::Retract { target, why } => {
                    standing.gone.insert(target, (rev, id, why));
                }
                Fact::Restore { target } => {
                    standing.restored.insert(target, rev);
                }
                Fact::Amend {
                    target,
                    at,
                    nth,
                    what,
                } => amends.push((
                    id,
                    Record {
                        id: target,
                        rev,
                        dev,
                        at,
                        nth,
                        what: *what,
                    },
                )),
                _ => {}
            }
        }
        for (by, record) in amends {
            // An amend that was itself retracted gives no content.
            if standing.retraction(by).is_none() {
                standing.content.insert(record.id, (record, by));
            }
        }
        standing
    }

    /// The retraction of `target` that no restoration exceeds.
    fn retraction(&self, target: Id) -> Option<&(u32, Id, Option<String>)> {
        let restored = self.restored.get(&target);
        self.gone
            .get(&target)
            .filter(|(rev, ..)| restored.is_none_or(|restored| restored <= rev))
    }

    fn settle(&mut self, original: Record, records: &mut Vec<Record>, history: &mut History) {
        let id = original.id;
        let amended = self.content.remove(&id);
        let current = match amended {
            Some((record, by)) => {
                history.amended.push(Amended { was: original, by });
                record
            }
            None => original,
        };
        self.place(current, records, history);
    }

    /// Amends whose target is in no journal here: they hold the whole record, so nothing is lost meanwhile.
    fn settle_orphans(&mut self, records: &mut Vec<Record>, history: &mut History) {
        for (_, (record, _)) in std::mem::take(&mut self.content) {
            self.place(record, records, history);
        }
    }

    fn place(&self, record: Record, records: &mut Vec<Record>, history: &mut History) {
        match self.retraction(record.id) {
            Some((_, by, why)) => history.retracted.push(Retracted {
                record,
                by: *by,
                why: why.clone(),
            }),
            None => records.push(record),
        }
    }
}
