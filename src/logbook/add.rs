//! Records that come one by one from a person: each is made from what is known of the athlete under the lock, then appended.

use chrono::NaiveDate;

use crate::problem::Problem;

use super::batch::naming_record;
use super::folder::Logbook;
use super::name_index;
use super::names::Name;
use super::record::{Fact, Id, Record};
use super::trouble::Trouble;
use super::writer::Writer;
use super::{History, Log, Written};

/// What adding came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Added {
    /// The records that are saved now, without a name that came along; none if there was nothing new to say.
    pub records: Vec<Id>,
    /// The record that gives the athlete's name.
    pub name: Id,
    /// Whether the athlete had no record before.
    pub is_new: bool,
    /// The athlete's log with them.
    pub log: Log,
}

/// A record that is to be changed, and where it lies.
#[derive(Debug, Clone, PartialEq)]
pub struct Target {
    /// The athlete's name.
    pub athlete: String,
    /// The athlete's folder.
    pub folder: String,
    /// The record as it stands; a change as it was written.
    pub record: Record,
    /// Whether it is retracted.
    pub is_retracted: bool,
}

impl Writer {
    /// Appends to the athlete called `name` what `make` says, given the log so far, in one write. Reads this athlete and no
    /// other, unless nobody lies in the folder that the name leads to. An athlete whom no record names gets one that does,
    /// as of `at`; so the ids of `make` must be fresh.
    ///
    /// # Errors
    /// When nothing of it is saved.
    pub fn add(
        &mut self,
        name: &Name,
        at: &Written,
        make: impl FnOnce(Option<&Log>) -> Vec<Record>,
    ) -> Result<Added, Trouble> {
        let found = name_index::find(&self.machine, &self.root, name, true)?;
        let log = found.as_ref().and_then(|(logbook, _)| logbook.logs.first());
        let mut records = make(log);
        let ids = records.iter().map(|record| record.id).collect();
        let folder = match log {
            Some(log) => log.folder.clone(),
            None => self.new_folder(name)?,
        };
        let known = log.and_then(Log::naming);
        let named = match (known, records.iter().find(|record| gives_name(record))) {
            (Some(id), _) => id,
            (None, Some(record)) => record.id,
            (None, None) => {
                let (at, nth) = records.first().map_or((at, 0), |first| (&first.at, first.nth));
                let record = naming_record(name, &folder, (at, nth), &self.device);
                let id = record.id;
                let is_retracted = |(logbook, _): &(Logbook, Vec<Problem>)| logbook.target(id).is_some();
                if !found.as_ref().is_some_and(is_retracted) {
                    records.insert(0, record);
                }
                id
            }
        };
        self.append_records(&folder, &records)?;
        let is_new = found.is_none();
        let before = found.and_then(|(mut logbook, _)| logbook.logs.pop());
        let mut log = before.unwrap_or_else(|| Log {
            name: name.as_str().to_owned(),
            folder,
            records: Vec::new(),
        });
        log.records.extend(records);
        log.records.sort_by(Log::order);
        Ok(Added {
            records: ids,
            name: named,
            is_new,
            log,
        })
    }

    /// Appends an amend, a retraction or a restoration to the athlete whom `target` belongs to.
    ///
    /// # Errors
    /// When it is not saved.
    pub fn change(&mut self, target: &Target, change: Record) -> Result<(), Trouble> {
        self.append_records(&target.folder, &[change])
    }
}

impl Logbook {
    /// The record `id`, whoever it belongs to: one that counts, one that is retracted, or a change.
    pub fn target(&self, id: Id) -> Option<Target> {
        self.logs
            .iter()
            .zip(&self.histories)
            .find_map(|(log, history)| target_in(log, history, id))
    }
}

impl Log {
    /// The record that gives the name.
    pub fn naming(&self) -> Option<Id> {
        let record = self.records.iter().rev().find(|record| gives_name(record))?;
        Some(record.id)
    }

    /// How many records there are on `date`: the place of the next one in that day.
    pub fn count_on(&self, date: NaiveDate) -> u32 {
        let first = self.records.partition_point(|record| record.at.date() < date);
        let after = self.records.partition_point(|record| record.at.date() <= date);
        u32::try_from(after - first).unwrap_or(u32::MAX)
    }
}

fn target_in(log: &Log, history: &History, id: Id) -> Option<Target> {
    let is_it = |record: &&Record| record.id == id;
    let gone = || history.retracted.iter().map(|retracted| &retracted.record);
    let counting = log.records.iter().chain(&history.changes).find(is_it);
    let (record, is_retracted) = match counting {
        Some(record) => (record, false),
        None => (gone().find(is_it)?, true),
    };
    Some(Target {
        athlete: log.name.clone(),
        folder: log.folder.clone(),
        record: record.clone(),
        is_retracted,
    })
}

fn gives_name(record: &Record) -> bool {
    matches!(record.what, Fact::Profile { name: Some(_), .. })
}
