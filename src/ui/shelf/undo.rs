//! Taking back: one record, or a class's results as they were saved, all at once.

use std::collections::BTreeMap;

use crate::clock;
use crate::logbook::{Fact, Id, Name, Record};
use crate::report::numbers::counted;

use super::desk::NotDone;
use super::write::{NOTHING_OPEN, open_name};
use super::{Shelf, logged};

/// The class's results that were saved last.
pub(super) struct SavedClass {
    /// Whose, by folder, and which records.
    pub records: BTreeMap<String, Vec<Id>>,
    /// Nothing was written since, and nobody else was opened: undo means the class, whoever is open.
    pub is_newest: bool,
}

impl SavedClass {
    fn holds(&self, id: Id) -> bool {
        self.records.values().any(|ids| ids.contains(&id))
    }
}

impl Shelf {
    /// Something else was written, or somebody else opened.
    pub(super) fn undo_means_the_open_athlete(&mut self) {
        if let Some(class) = &mut self.saved_class {
            class.is_newest = false;
        }
    }

    /// Takes back the newest record of the day; the results of a class, which were saved as one, together.
    pub(super) fn undo(&mut self) -> Result<Option<String>, NotDone> {
        if let Some(words) = self.take_back_change()? {
            return Ok(Some(words));
        }
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let newest = opened
            .open_log()
            .and_then(|log| logged::newest(opened, log))
            .map(|record| record.id);
        let means = |class: &SavedClass| class.is_newest || newest.is_some_and(|id| class.holds(id));
        if let Some(class) = self.saved_class.as_ref().filter(|class| means(class)) {
            let records = class.records.clone();
            let words = self.undo_class(&records)?;
            self.saved_class = None;
            return Ok(Some(words));
        }
        let newest = newest.ok_or("nothing of today is left to take back.")?;
        let retract = Fact::Retract {
            target: newest,
            why: None,
        };
        self.change_record(newest, retract)?;
        Ok(None)
    }

    fn undo_class(&mut self, records: &BTreeMap<String, Vec<Id>>) -> Result<String, NotDone> {
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let known = opened.book.highest_rev();
        let logs = records
            .iter()
            .filter_map(|(folder, ids)| Some((opened.log(folder)?, ids)));
        let of: Vec<(Name, Vec<Id>)> = logs
            .filter_map(|(log, ids)| Some((Name::parse(&log.name).ok()?, ids.clone())))
            .collect();
        let names: Vec<Name> = of.iter().map(|(name, _)| name.clone()).collect();
        let (at, device) = (self.at(), self.device.clone());
        self.commit(&names, |writer| {
            let mut batch = Vec::new();
            for (name, ids) in of {
                // As with one record: looked at again under the lock.
                let Some((log, _)) = writer.read_athlete(&name)? else {
                    continue;
                };
                let rev = known.max(log.highest_rev()).saturating_add(1);
                let first = log.logs.first().map_or(0, |log| log.count_on(at.date()));
                let counts = |id: &Id| log.target(*id).is_some_and(|target| !target.is_retracted);
                let retract = |(nth, target): (u32, Id)| Record {
                    id: clock::fresh_id(),
                    rev,
                    dev: device.clone(),
                    at: at.clone(),
                    nth,
                    what: Fact::Retract { target, why: None },
                };
                let there = ids.into_iter().filter(counts);
                batch.push((name, (first..).zip(there).map(retract).collect()));
            }
            Ok(batch)
        })?;
        let all: usize = records.values().map(Vec::len).sum();
        Ok(format!(
            "Taken back: {} of {}.",
            counted(all, "record"),
            counted(records.len(), "athlete")
        ))
    }

    /// Writes what changes one record of the open athlete, and says the change's id; nothing where the record is gone by
    /// then, or to be restored and there.
    pub(super) fn change_record(&mut self, id: Id, what: Fact) -> Result<Option<Id>, NotDone> {
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let name = open_name(opened)?;
        let known = opened.book.highest_rev();
        let (at, device) = (self.at(), self.device.clone());
        let called = name.clone();
        let is_restored = matches!(what, Fact::Restore { .. });
        let mut written = None;
        self.change(&name, |writer| {
            // Under the lock it is looked at again: a command may have changed it meanwhile.
            let Some((log, _)) = writer.read_athlete(&called)? else {
                return Ok(());
            };
            let Some(target) = log.target(id).filter(|target| target.is_retracted == is_restored) else {
                return Ok(());
            };
            let record = Record {
                id: clock::fresh_id(),
                rev: known.max(log.highest_rev()).saturating_add(1),
                dev: device,
                nth: log.logs.first().map_or(0, |log| log.count_on(at.date())),
                at,
                what,
            };
            let change = record.id;
            writer.change(&target, record)?;
            written = Some(change);
            Ok(())
        })?;
        Ok(written)
    }
}
