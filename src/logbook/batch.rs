//! A batch over several journals, seen whole or not at all: a pending file is the commit point, then each journal follows.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};
use std::io;
use std::path::PathBuf;

use rayon::prelude::*;

use crate::problem::{Place, Problem};

use super::Written;
use super::disk;
use super::exchange;
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

    /// The records of `records` that are new, with the athlete's name first where no record gives it. An id is one record in
    /// the whole logbook, so what `elsewhere` has of others is there with other values.
    pub(super) fn sift(
        &self,
        records: Vec<Record>,
        elsewhere: &Elsewhere,
        device: &str,
        committed: &mut Committed,
    ) -> Vec<Record> {
        let conflicts_before = committed.conflicting.len();
        let added_before = committed.added.len();
        let mut new: Vec<Record> = Vec::with_capacity(records.len());
        let mut taken: HashMap<Id, usize> = HashMap::new();
        for record in records {
            let there = self.there.get(&record.id).map_or(&[][..], Vec::as_slice);
            let in_batch = taken.get(&record.id).and_then(|at| new.get(*at));
            let is_anothers = || elsewhere.of_another(record.id, &self.folder).is_some();
            if there.is_empty() && in_batch.is_none() && !is_anothers() {
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
                    whose: elsewhere.of_another(record.id, &self.folder).map(str::to_owned),
                    record,
                });
            }
        }
        let gives_name = |record: &Record| matches!(record.what, Fact::Profile { name: Some(_), .. });
        let conflicts = committed.conflicting.len() > conflicts_before;
        if conflicts && !self.is_there && new.iter().all(gives_name) {
            // Whatever was said of them is another's: no athlete is made of a name alone.
            committed.added.truncate(added_before);
            new.clear();
        }
        if let Some(first) = new.first()
            && !self.has_name
            && !new.iter().any(gives_name)
        {
            let named = naming_record(&self.name, &self.folder, (&first.at, first.nth), device);
            new.insert(0, named);
        }
        if !self.is_there && !new.is_empty() {
            committed.made.push(self.name.clone());
        }
        new
    }
}

/// Whose the ids of everyone's records are, by folder.
#[derive(Debug, Default)]
pub(super) struct Elsewhere(HashMap<Id, String>);

impl Elsewhere {
    /// The folder of the athlete who has `id`, unless it is the one in `folder`.
    fn of_another(&self, id: Id, folder: &str) -> Option<&str> {
        let whose = self.0.get(&id).map(String::as_str)?;
        (whose != folder).then_some(whose)
    }
}

/// Whether two records of one id have the same values. Device, revision and place in a file are none, and neither is an
/// earlier name: an export writes the present one.
fn says_the_same(a: &Record, b: &Record) -> bool {
    a.at == b.at && (a.what == b.what || is_profile(a) && is_profile(b) && exchange::same_values(a, b))
}

fn is_profile(record: &Record) -> bool {
    matches!(record.what, Fact::Profile { .. })
}

/// The record that gives the athlete in `folder` only this name. Where somebody else had the name's own folder first, it
/// has another id than theirs, who may have been called so on the same day.
pub(super) fn naming_record(name: &Name, folder: &str, (at, nth): (&Written, u32), device: &str) -> Record {
    let record = name.record(at, nth, device);
    if folder == name.folder() {
        return record;
    }
    Record {
        id: Id::from(u128::from(record.id) ^ 1),
        ..record
    }
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
        let mut search = name_index::Search::new(&self.machine, &self.root);
        let mut taken = None;
        let mut given = BTreeSet::new();
        let mut athletes = Vec::with_capacity(names.len());
        for name in names {
            let found = search.find(name)?;
            let athlete = match found.and_then(|(logbook, _)| Athlete::read((*name).clone(), logbook)) {
                Some(athlete) => athlete,
                None => {
                    let taken = match &mut taken {
                        Some(taken) => taken,
                        None => taken.insert(self.folders()?),
                    };
                    let folder = self.free_folder(name, taken, &given)?;
                    given.insert(folder.clone());
                    Athlete::new((*name).clone(), folder)
                }
            };
            athletes.push(athlete);
        }
        Ok(athletes)
    }

    /// Whose of `ids` are there already, among all athletes.
    pub(super) fn owners(&self, ids: &HashSet<Id>) -> Result<Elsewhere, Trouble> {
        let snapshot = listing::read(&self.machine, &self.root, Scope::All, true)?;
        let found = |file: &listing::Text| -> Vec<(Id, String)> {
            let (folder, form) = match &file.role {
                listing::Role::Journal(folder) => (Some(folder), Form::Journal),
                listing::Role::Pending => (None, Form::Pending),
                _ => return Vec::new(),
            };
            let journal = journal::read(&file.label, &file.bytes, form);
            let entries = journal.entries.into_iter();
            let wanted = entries.filter(|entry| ids.contains(&entry.record.id));
            wanted
                .filter_map(|entry| Some((entry.record.id, folder.cloned().or(entry.folder)?)))
                .collect()
        };
        let found: Vec<Vec<_>> = snapshot.files.par_iter().map(found).collect();
        Ok(Elsewhere(found.into_iter().flatten().collect()))
    }

    /// Saves new records, by folder; a single one needs no pending file.
    pub(super) fn save(
        &mut self,
        new: BTreeMap<String, Vec<Record>>,
        committed: &mut Committed,
    ) -> Result<(), Trouble> {
        let bodies_of = |(folder, records): (String, Vec<Record>)| -> (String, Vec<String>) {
            (folder, records.iter().map(line::body).collect())
        };
        let bodies: BTreeMap<String, Vec<String>> = if new.len() == 1 {
            new.into_iter().map(bodies_of).collect()
        } else {
            new.into_par_iter().map(bodies_of).collect()
        };
        let count: usize = bodies.values().map(Vec::len).sum();
        if count > 1 {
            self.write_pending(&bodies)?;
        }
        for (folder, bodies) in bodies {
            let text = bodies.into_iter().map(|body| line::sealed(body) + "\n").collect();
            match self.append_text(&folder, text) {
                Err(trouble) if count > 1 => {
                    committed.notes.push(left_pending(&self.pending_name(), &trouble));
                    return Ok(());
                }
                appended => appended?,
            }
        }
        if count > 1
            && let Err(trouble) = self.remove_pending()
        {
            committed.notes.push(left_pending(&self.pending_name(), &trouble));
        }
        Ok(())
    }

    /// Writes the pending file. When its folder is flushed, the batch is saved.
    fn write_pending(&self, bodies: &BTreeMap<String, Vec<String>>) -> Result<(), Trouble> {
        let lines: Vec<String> = bodies
            .par_iter()
            .map(|(folder, bodies)| {
                bodies
                    .iter()
                    .map(|body| pending::write(folder, body) + "\n")
                    .collect()
            })
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
        let is_missing = |error: &io::Error| error.kind() == io::ErrorKind::NotFound;
        match disk.remove(&temporary) {
            // A folder that only can be read refuses before it looks; then the file that is to be written is told.
            Err(error)
                if !is_missing(&error) && !disk.stat(&temporary).is_err_and(|error| is_missing(&error)) =>
            {
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

fn left_pending(file: &str, trouble: &Trouble) -> Problem {
    Problem::warning(
        Place::whole(file),
        format!("everything is saved, but the journals in {ATHLETES} could not all be written: {trouble}"),
        "nothing to do: this machine's next write finishes it",
    )
}
