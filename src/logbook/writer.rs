//! The one who writes: holds the logbook's lock from its first look to its last flush.
//!
//! Invariant: when a call says that something is saved, it has been flushed; journals only ever grow.

use std::collections::{BTreeMap, HashSet};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use chrono::{DateTime, Utc};

use crate::problem::{Problem, Severity};

use super::batch::{Athlete, Elsewhere};
use super::disk::{self, Held};
use super::folder::Logbook;
use super::listing::{self, ATHLETES, Scope};
use super::machine::Machine;
use super::name_index;
use super::names::Name;
use super::record::{Device, Id, Record};
use super::settings;
use super::trouble::Trouble;

/// How long a command waits for another writer.
pub const LOCK_WAIT: Duration = Duration::from_secs(10);

/// A logbook that is written to. Nobody else on this machine writes to it until this is dropped.
#[derive(Debug)]
pub struct Writer {
    pub(super) machine: Machine,
    pub(super) root: PathBuf,
    pub(super) device: Device,
    pub(super) now: DateTime<Utc>,
    /// Journals whose flush failed, and the number of the fresh one used instead.
    pub(super) fresh: BTreeMap<String, u32>,
    pub(super) is_read_only: bool,
    _held: Held,
}

/// What a program learned about journals whose flush failed. It outlives a writer, so that a window that gives the lock back
/// after each write never trusts such a journal again.
#[derive(Debug, Clone, Default)]
pub struct Doubts {
    fresh: BTreeMap<String, u32>,
    is_read_only: bool,
}

/// What a batch came to.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Committed {
    /// Records that are new and saved now.
    pub added: Vec<Id>,
    /// Records that were there with the same values, retracted ones too.
    pub already_there: Vec<Id>,
    /// Records whose id is there with other values: nothing was changed; they ask for an amend.
    pub conflicting: Vec<Conflict>,
    /// Athletes that had no record before.
    pub made: Vec<Name>,
    /// What went wrong after everything was saved; this machine's next write puts it right.
    pub notes: Vec<Problem>,
}

/// Where the ids of new records come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Ids {
    /// Made just now.
    Fresh,
    /// A spreadsheet, or worked out from its rows: the record may be there, also as another athlete's.
    Given,
}

/// A record whose id is there with other values.
#[derive(Debug, Clone, PartialEq)]
pub struct Conflict {
    /// The athlete.
    pub athlete: Name,
    /// The folder of the athlete who has the id, where it is another one.
    pub whose: Option<String>,
    /// The record that was to be written.
    pub record: Record,
}

impl Writer {
    /// Takes the lock of the logbook at `root`, makes the folder if it is missing, and finishes what this device left
    /// unfinished. `now` only names files that set torn bytes aside.
    ///
    /// # Errors
    /// Busy after `wait`; no working locks; a folder that holds something else; a newer format; a full disk. Nothing is written then.
    pub fn lock(
        machine: &Machine,
        root: &Path,
        device: Device,
        now: DateTime<Utc>,
        wait: Duration,
    ) -> Result<(Self, Vec<Problem>), Trouble> {
        refuse_for_writing(machine, root)?;
        // The lock comes first: where there are none, not even an empty folder is made.
        let root =
            disk::real_path_to_be(machine.disk(), root).map_err(Trouble::io(root, "cannot be opened"))?;
        let held = machine.lock(&root, wait)?;
        disk::make_folders(machine.disk(), &root).map_err(Trouble::io(&root, "cannot be made"))?;
        if refuse_for_writing(machine, &root)? == Content::Nothing {
            disk::flush_outer_folder(machine.disk(), disk::parent_of(&root))
                .map_err(Trouble::io(&root, "cannot be made durable"))?;
        }
        let mut writer = Self {
            machine: machine.clone(),
            root,
            device,
            now,
            fresh: BTreeMap::new(),
            is_read_only: false,
            _held: held,
        };
        writer.refuse_newer()?;
        let problems = writer.roll_forward()?;
        Ok((writer, problems))
    }

    /// What is doubted so far.
    pub fn doubts(&self) -> Doubts {
        Doubts {
            fresh: self.fresh.clone(),
            is_read_only: self.is_read_only,
        }
    }

    /// The same writer, doubting what an earlier one of this program doubted.
    pub fn doubting(mut self, doubts: Doubts) -> Self {
        self.fresh = doubts.fresh;
        self.is_read_only = doubts.is_read_only;
        self
    }

    /// The device that writes.
    pub fn device(&self) -> &str {
        &self.device
    }

    /// The whole logbook as it is under the lock.
    ///
    /// # Errors
    /// As [`Logbook::open`].
    pub fn read(&self) -> Result<(Logbook, Vec<Problem>), Trouble> {
        let snapshot = listing::read(&self.machine, &self.root, Scope::All, true)?;
        Ok(Logbook::build(&self.root, snapshot, None))
    }

    /// The logbook with only the athlete called `name`; none if there is no such athlete.
    ///
    /// # Errors
    /// As [`Logbook::open`].
    pub fn read_athlete(&self, name: &Name) -> Result<Option<(Logbook, Vec<Problem>)>, Trouble> {
        name_index::find(&self.machine, &self.root, name, true)
    }

    /// Appends records with fresh ids to one athlete's journal in one write; makes the athlete if there is none.
    ///
    /// # Errors
    /// When they are not saved; the journal then stands as before.
    pub fn append(&mut self, name: &Name, records: &[Record]) -> Result<Committed, Trouble> {
        self.append_of(name, records, Ids::Fresh)
    }

    /// The same for records whose ids come from outside: one that another athlete has changes nothing.
    ///
    /// # Errors
    /// When they are not saved; the journal then stands as before.
    pub fn append_given(&mut self, name: &Name, records: &[Record]) -> Result<Committed, Trouble> {
        self.append_of(name, records, Ids::Given)
    }

    fn append_of(&mut self, name: &Name, records: &[Record], ids: Ids) -> Result<Committed, Trouble> {
        let mut committed = Committed::default();
        let athlete = self.athlete(name)?;
        let elsewhere = self.elsewhere(ids, records.iter())?;
        let new = athlete.sift(records.to_vec(), &elsewhere, &self.device, &mut committed);
        self.append_records(&athlete.folder, &new)?;
        Ok(committed)
    }

    /// Saves a batch of records with fresh ids over any athletes, all or nothing.
    ///
    /// # Errors
    /// When nothing of it is saved.
    pub fn commit(&mut self, batch: Vec<(Name, Vec<Record>)>) -> Result<Committed, Trouble> {
        self.commit_of(batch, Ids::Fresh)
    }

    /// The same for records whose ids come from outside: one that another athlete has changes nothing.
    ///
    /// # Errors
    /// When nothing of it is saved.
    pub fn commit_given(&mut self, batch: Vec<(Name, Vec<Record>)>) -> Result<Committed, Trouble> {
        self.commit_of(batch, Ids::Given)
    }

    fn commit_of(&mut self, batch: Vec<(Name, Vec<Record>)>, ids: Ids) -> Result<Committed, Trouble> {
        let mut committed = Committed::default();
        let mut new: BTreeMap<String, Vec<Record>> = BTreeMap::new();
        let mut by_name: BTreeMap<Name, Vec<Record>> = BTreeMap::new();
        for (name, records) in batch {
            by_name.entry(name).or_default().extend(records);
        }
        let names: Vec<&Name> = by_name.keys().collect();
        let athletes: Vec<Athlete> = self.athletes(&names)?;
        let elsewhere = self.elsewhere(ids, by_name.values().flatten())?;
        for ((_, records), athlete) in by_name.into_iter().zip(athletes) {
            let records = athlete.sift(records, &elsewhere, &self.device, &mut committed);
            if !records.is_empty() {
                new.entry(athlete.folder).or_default().extend(records);
            }
        }
        self.save(new, &mut committed)?;
        Ok(committed)
    }

    /// Whose of the records' ids are there already; fresh ones are nobody's, and looking costs reading everyone.
    fn elsewhere<'r>(
        &self,
        ids: Ids,
        records: impl Iterator<Item = &'r Record>,
    ) -> Result<Elsewhere, Trouble> {
        match ids {
            Ids::Fresh => Ok(Elsewhere::default()),
            Ids::Given => self.owners(&records.map(|record| record.id).collect::<HashSet<Id>>()),
        }
    }

    /// Makes a folder inside the logbook, unless a link or file stands in its place.
    pub(super) fn own_folder(&self, folder: &Path) -> Result<(), Trouble> {
        let disk = self.machine.disk();
        match disk.stat(folder) {
            Ok(stat) if stat.kind == disk::Kind::Folder => Ok(()),
            Ok(_) => Err(Trouble::not_saved(folder)(io::Error::other(
                "a link or file stands where a folder belongs",
            ))),
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                disk::make_folders(disk, folder).map_err(Trouble::not_saved(folder))
            }
            Err(error) => Err(Trouble::not_saved(folder)(error)),
        }
    }

    fn refuse_newer(&self) -> Result<(), Trouble> {
        let snapshot = listing::read(&self.machine, &self.root, Scope::Settings, true)?;
        let (logbook, problems) = Logbook::build(&self.root, snapshot, None);
        let format = logbook.settings.format;
        if format > settings::FORMAT {
            return Err(Trouble::NewerFormat {
                logbook: self.root.clone(),
                format,
            });
        }
        let of_settings =
            |problem: &&Problem| problem.place.file == settings::FILE && problem.severity == Severity::Error;
        match problems.iter().find(of_settings) {
            Some(problem) if format == 0 || !logbook.has_settings => Err(Trouble::UnreadSettings {
                logbook: self.root.clone(),
                why: problem.what.clone(),
            }),
            _ => Ok(()),
        }
    }
}

/// What a folder that may be written to holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Content {
    /// Nothing yet, or the folder is missing.
    Nothing,
    /// A logbook.
    Logbook,
}

/// Refuses a folder that is not empty and holds no logbook; our own unfinished files don't count as content.
///
/// # Errors
/// [`Trouble::NotALogbook`], or that the folder can't be read.
pub fn refuse_for_writing(machine: &Machine, root: &Path) -> Result<Content, Trouble> {
    let names = match machine.disk().list(root) {
        Ok(names) => names,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Content::Nothing),
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
            return Err(Trouble::NoFolder {
                logbook: root.to_owned(),
            });
        }
        Err(error) => return Err(Trouble::io(root, "cannot be read")(error)),
    };
    let names: Vec<String> = names
        .into_iter()
        .map(|name| name.to_string_lossy().into_owned())
        .collect();
    let is_ours =
        |name: &String| listing::is_pending(name) || (name.starts_with('.') && name.ends_with(".tmp"));
    let is_logbook = names
        .iter()
        .any(|name| name == settings::FILE || name == ATHLETES);
    if is_logbook {
        return Ok(Content::Logbook);
    }
    if names.iter().all(is_ours) {
        return Ok(Content::Nothing);
    }
    Err(Trouble::NotALogbook {
        logbook: root.to_owned(),
    })
}
