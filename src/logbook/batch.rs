//! A batch over several journals, seen whole or not at all: a pending file is the commit point, then each journal follows.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::io;
use std::path::PathBuf;

use rayon::prelude::*;

use crate::problem::{Place, Problem};

use super::disk;
use super::folder::{Logbook, name_in};
use super::journal::{self, Form};
use super::line;
use super::listing::{self, ATHLETES, Scope};
use super::merge::History;
use super::name_index;
use super::names::Name;
use super::pending;
use super::record::{Fact, Id, Record};
use super::trouble::Trouble;
use super::writer::{Committed, Conflict, Writer};

/// An athlete whom a batch writes to.
#[derive(Debug)]
pub(super) struct Athlete {
    name: Name,
    pub folder: String,
    /// Whether a record of the athlete is there.
    is_there: bool,
    has_name: bool,
    /// The values of every id that is there: as first written, and as they stand.
    there: HashMap<Id, Vec<Record>>,
}

impl Athlete {
    fn new(name: Name, folder: String) -> Self {
        Self {
            name,
            folder,
            is_there: false,
            has_name: false,
            there: HashMap::new(),
        }
    }

    fn read(name: Name, mut logbook: Logbook) -> Option<Self> {
        let log = logbook.logs.pop()?;
        let History {
            retracted,
            amended,
            changes,
            ..
        } = logbook.histories.pop().unwrap_or_default();
        let mut athlete = Self::new(name, log.folder);
        athlete.is_there = true;
        athlete.has_name = name_in(&log.records).is_some();
        let gone = retracted.into_iter().map(|retracted| retracted.record);
        let before = amended.into_iter().map(|amended| amended.was);
        for record in log.records.into_iter().chain(gone).chain(before).chain(changes) {
            athlete.there.entry(record.id).or_default().push(record);
        }
        Some(athlete)
    }

    /// The records of `records` that are new, with the athlete's name first where no record gives it.
    pub(super) fn sift(&self, records: Vec<Record>, device: &str, committed: &mut Committed) -> Vec<Record> {
        let mut new: Vec<Record> = Vec::with_capacity(records.len());
        let mut taken: HashMap<Id, usize> = HashMap::new();
        for record in records {
            let there = self.there.get(&record.id).map_or(&[][..], Vec::as_slice);
            let in_batch = taken.get(&record.id).and_then(|at| new.get(*at));
            if there.is_empty() && in_batch.is_none() {
                taken.insert(record.id, new.len());
                committed.added.push(record.id);
                new.push(record);
            } else if there
                .iter()
                .chain(in_batch)
                .any(|other| says_the_same(other, &record))
            {
                committed.already_there.push(record.id);
            } else {
                committed.conflicting.push(Conflict {
                    athlete: self.name.clone(),
                    record,
                });
            }
        }
        let gives_name = |record: &Record| matches!(record.what, Fact::Profile { name: Some(_), .. });
        if let Some(first) = new.first()
            && !self.has_name
            && !new.iter().any(gives_name)
        {
            let named = self.name.record(&first.at, first.nth, device);
            new.insert(0, named);
        }
        if !self.is_there && !new.is_empty() {
            committed.made.push(self.name.clone());
        }
        new
    }
}

/// Whether two records of one id have the same values; the device, the revision and the place in a file are none.
fn says_the_same(a: &Record, b: &Record) -> bool {
    a.at == b.at && a.what == b.what
}

impl Writer {
    pub(super) fn athlete(&self, name: &Name) -> Result<Athlete, Trouble> {
        let mut athletes = self.athletes(&[name])?;
        athletes
            .pop()
            .ok_or_else(|| Trouble::io(&self.root, "cannot be read")(io::Error::other("no athlete")))
    }

    /// The athletes of these names, in this order, each with a folder of their own.
    pub(super) fn athletes(&self, names: &[&Name]) -> Result<Vec<Athlete>, Trouble> {
        let outside = listing::read(&self.machine, &self.root, Scope::Outside, true)?;
        let mut taken: HashSet<String> = outside.folders.into_iter().collect();
        let mut athletes = Vec::with_capacity(names.len());
        // A logbook without athletes needs no search; only the batch itself can fill it.
        let is_empty = taken.is_empty()
            && outside
                .files
                .iter()
                .all(|file| file.role != listing::Role::Pending);
        let mut index = name_index::Search::new(&self.machine, &self.root);
        for name in names {
            let found = if is_empty { None } else { index.find(name)? };
            let athlete = match found.and_then(|(logbook, _)| Athlete::read((*name).clone(), logbook)) {
                Some(athlete) => athlete,
                None => Athlete::new((*name).clone(), free_folder(name, &taken)),
            };
            taken.insert(athlete.folder.clone());
            athletes.push(athlete);
        }
        Ok(athletes)
    }

    /// Saves new records, by folder; a single one needs no pending file.
    pub(super) fn save(
        &mut self,
        new: &BTreeMap<String, Vec<Record>>,
        committed: &mut Committed,
    ) -> Result<(), Trouble> {
        let count: usize = new.values().map(Vec::len).sum();
        if count <= 1 {
            for (folder, records) in new {
                self.append_records(folder, records)?;
            }
            return Ok(());
        }
        self.write_pending(new)?;
        for (folder, records) in new {
            let appended = self.append_records(folder, records);
            if let Err(trouble) = appended {
                committed.notes.push(left_pending(&self.pending_name(), &trouble));
                return Ok(());
            }
        }
        if let Err(trouble) = self.remove_pending() {
            committed.notes.push(left_pending(&self.pending_name(), &trouble));
        }
        Ok(())
    }

    /// Writes the pending file. When its folder is flushed, the batch is saved.
    fn write_pending(&self, new: &BTreeMap<String, Vec<Record>>) -> Result<(), Trouble> {
        let lines: Vec<(&str, &Record)> = new
            .iter()
            .flat_map(|(folder, records)| records.iter().map(|record| (folder.as_str(), record)))
            .collect();
        let lines: Vec<String> = lines
            .par_iter()
            .map(|(folder, record)| pending::write(folder, record) + "\n")
            .collect();
        let path = self.pending();
        let disk = self.machine.disk();
        let saved = disk::replace(disk, &path, &self.pending_temporary(), lines.concat().as_bytes());
        saved.map_err(|error| {
            // Whether the name is durable isn't known: take it back, so that "not saved" is true.
            if disk.remove(&path).is_ok() {
                let _ = disk.flush_folder(&self.root);
            }
            Trouble::not_saved(&path)(error)
        })
    }

    fn remove_pending(&self) -> Result<(), Trouble> {
        let path = self.pending();
        let disk = self.machine.disk();
        disk.remove(&path)
            .and_then(|()| disk.flush_folder(&self.root))
            .map_err(Trouble::io(&path, "cannot be removed"))
    }

    /// Finishes the batch that this device began before; others' are theirs.
    pub(super) fn roll_forward(&mut self) -> Result<Vec<Problem>, Trouble> {
        let disk = self.machine.disk();
        let temporary = self.pending_temporary();
        match disk.remove(&temporary) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => {
                return Err(Trouble::io(&temporary, "cannot be removed")(error));
            }
            _ => {}
        }
        let path = self.pending();
        let bytes = match disk.read(&path) {
            Ok(bytes) => bytes,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(error) => return Err(Trouble::io(&path, "cannot be read")(error)),
        };
        let name = self.pending_name();
        let journal = journal::read(&name, &bytes, Form::Pending);
        let mut left: BTreeMap<String, Vec<(Id, &str)>> = BTreeMap::new();
        for entry in journal.entries {
            let folder = entry.folder.unwrap_or_default();
            left.entry(folder)
                .or_default()
                .push((entry.record.id, entry.body));
        }
        for (folder, lines) in left {
            let there = self.ids_in_journals(&folder)?;
            let missing = lines.into_iter().filter(|(id, _)| !there.contains(id));
            let text: String = missing
                .map(|(_, body)| line::sealed(body.to_owned()) + "\n")
                .collect();
            if !text.is_empty() {
                self.append_text(&folder, text)?;
            }
        }
        if journal.problems.is_empty() {
            self.remove_pending()?;
            return Ok(Vec::new());
        }
        let time = self.now.format("%Y%m%dT%H%M%SZ");
        let aside = format!("pending-{}{}{time}.ron", self.device, listing::TORN);
        let disk = self.machine.disk();
        disk.rename(&path, &self.root.join(aside))
            .and_then(|()| disk.flush_folder(&self.root))
            .map_err(Trouble::io(&path, "cannot be set aside"))?;
        Ok(journal.problems)
    }

    /// The ids in the journals of one athlete, pending batches left out.
    fn ids_in_journals(&self, folder: &str) -> Result<HashSet<Id>, Trouble> {
        let snapshot = listing::read(&self.machine, &self.root, Scope::Athlete(folder), true)?;
        let mut ids = HashSet::new();
        for file in &snapshot.files {
            if matches!(file.role, listing::Role::Journal(_)) {
                let journal = journal::read(&file.label, &file.bytes, Form::Journal);
                ids.extend(journal.entries.iter().map(|entry| entry.record.id));
            }
        }
        Ok(ids)
    }

    fn pending_name(&self) -> String {
        format!("pending-{}.ron", self.device)
    }

    fn pending(&self) -> PathBuf {
        self.root.join(self.pending_name())
    }

    fn pending_temporary(&self) -> PathBuf {
        self.root.join(format!(".pending-{}.tmp", self.device))
    }
}

/// The folder for a new athlete: the name's own, or the other one if it is taken.
fn free_folder(name: &Name, taken: &HashSet<String>) -> String {
    let own = name.folder();
    if taken.contains(&own) {
        name.other_folder()
    } else {
        own
    }
}

fn left_pending(file: &str, trouble: &Trouble) -> Problem {
    Problem::warning(
        Place::whole(file),
        format!("everything is saved, but the journals in {ATHLETES} could not all be written: {trouble}"),
        "nothing to do: this machine's next write finishes it",
    )
}
