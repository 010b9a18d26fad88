//! A logbook as read: settings, own ladders, and every athlete's log.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use crate::catalogue::{Catalogue, OwnFile};
use crate::problem::{Place, Problem, quoted};
use crate::units::Unit;

use super::Log;
use super::journal::{self, Entry, Form};
use super::listing::{self, Role, Scope, Snapshot, Text};
use super::machine::Machine;
use super::merge::{self, History};
use super::name_index;
use super::names::Name;
use super::record::{Fact, Record};
use super::settings::{self, Settings};
use super::trouble::Trouble;

/// Largest ladder or settings file that is read, bytes.
const LARGEST_TEXT: usize = 8 << 20;

/// A logbook as it was at one moment.
#[derive(Debug, Clone)]
pub struct Logbook {
    /// Its folder, as named.
    pub root: PathBuf,
    /// `logbook.ron`, or a fresh logbook's settings.
    pub settings: Settings,
    /// Whether `logbook.ron` is there.
    pub has_settings: bool,
    /// The athletes' logs, by name, then folder.
    pub logs: Vec<Log>,
    /// What lies behind each of [`Logbook::logs`], at the same place.
    pub histories: Vec<History>,
    /// The logbook's own ladders: file from the logbook's folder, and text.
    pub own_ladders: Vec<(String, String)>,
    /// The logbook's own movements, likewise.
    pub own_movements: Option<(String, String)>,
}

impl Logbook {
    /// Reads the logbook at `root`. Nothing in it is touched.
    ///
    /// # Errors
    /// When there is no folder or it can't be listed; whatever is wrong inside is a problem and costs nothing else.
    pub fn open(machine: &Machine, root: &Path) -> Result<(Self, Vec<Problem>), Trouble> {
        Ok(Self::build(
            root,
            listing::read(machine, root, Scope::All, false)?,
            None,
        ))
    }

    /// Reads settings and one athlete, without everyone's journals where the name leads to a folder.
    ///
    /// # Errors
    /// As [`Logbook::open`], and when no athlete has this name.
    pub fn open_athlete(
        machine: &Machine,
        root: &Path,
        name: &Name,
    ) -> Result<(Self, Vec<Problem>), Trouble> {
        match name_index::find(machine, root, name, false)? {
            Some(found) => Ok(found),
            None => {
                let (everyone, _) = Self::open(machine, root)?;
                Err(Trouble::UnknownAthlete {
                    name: quoted(name.as_str()),
                    nearest: everyone.nearest(name),
                })
            }
        }
    }

    /// Reads settings, own movements and own ladders, and nobody's journals.
    ///
    /// # Errors
    /// As [`Logbook::open`].
    pub fn open_without_athletes(machine: &Machine, root: &Path) -> Result<(Self, Vec<Problem>), Trouble> {
        let snapshot = listing::read(machine, root, Scope::Own, false)?;
        Ok(Self::build(root, snapshot, None))
    }

    /// Where in [`Logbook::logs`] the athlete called `name` is.
    pub fn position(&self, name: &Name) -> Option<usize> {
        let own = name.folder();
        let called = |log: &Log| Name::parse(&log.name).is_ok_and(|other| other == *name);
        self.logs
            .iter()
            .position(|log| log.folder == own && called(log))
            .or_else(|| self.logs.iter().position(called))
    }

    /// The athletes' names most like `name`, nearest first.
    pub fn nearest(&self, name: &Name) -> Vec<String> {
        nearest(name, self.logs.iter().map(|log| log.name.as_str()))
    }

    /// The unit that people here think in.
    pub fn unit(&self) -> Unit {
        self.settings.unit
    }

    /// The movements and ladders in force: the shipped ones and this logbook's own, and what is wrong in those.
    pub fn catalogue(&self) -> (Catalogue, Vec<Problem>) {
        let files: Vec<OwnFile> = self
            .own_movements
            .iter()
            .chain(&self.own_ladders)
            .map(|(path, text)| OwnFile::new(path, text))
            .collect();
        if files.is_empty() {
            (Catalogue::shipped().clone(), Vec::new())
        } else {
            Catalogue::shipped().with_own(&files)
        }
    }

    /// The names that a record gives; an athlete who only has a folder is none of them.
    pub fn names(&self) -> BTreeSet<String> {
        let named = |log: &&Log| log.naming().is_some();
        self.logs
            .iter()
            .filter(named)
            .map(|log| log.name.clone())
            .collect()
    }

    /// The highest revision that any record read here has; the next amend carries one more.
    pub fn highest_rev(&self) -> u32 {
        self.histories
            .iter()
            .map(|history| history.highest_rev)
            .max()
            .unwrap_or(0)
    }

    /// The logbook that was read; with `only` that athlete of it.
    pub(crate) fn build(root: &Path, snapshot: Snapshot, only: Option<&str>) -> (Self, Vec<Problem>) {
        let mut logbook = Self {
            root: root.to_owned(),
            settings: Settings::fresh(Unit::Kg),
            has_settings: false,
            logs: Vec::new(),
            histories: Vec::new(),
            own_ladders: Vec::new(),
            own_movements: None,
        };
        let mut problems = snapshot.problems;
        let mut journals = Vec::new();
        for file in snapshot.files {
            match &file.role {
                Role::Journal(_) | Role::Pending => journals.push(file),
                _ => logbook.take_text(file, &mut problems),
            }
        }
        logbook.take_journals(&journals, only, &mut problems);
        problems.sort();
        (logbook, problems)
    }

    fn take_text(&mut self, file: Text, problems: &mut Vec<Problem>) {
        let text = match text_of(file.bytes) {
            Ok(text) => text,
            Err(what) => {
                let mend = "restore the file from a backup";
                problems.push(Problem::error(Place::whole(&file.label), what, mend));
                if file.role == Role::Settings {
                    self.has_settings = true;
                    self.settings.format = 0;
                }
                return;
            }
        };
        match file.role {
            Role::Settings => {
                let (read, wrong) = Settings::read(settings::FILE, &text);
                self.has_settings = true;
                self.settings = read;
                problems.extend(wrong);
            }
            Role::Movements => self.own_movements = Some((file.label, text)),
            Role::Ladder => self.own_ladders.push((file.label, text)),
            Role::Journal(_) | Role::Pending => {}
        }
    }

    /// Reads athlete by athlete, so that no more than a few athletes' lines are held beside their records.
    fn take_journals(&mut self, files: &[Text], only: Option<&str>, problems: &mut Vec<Problem>) {
        let mut athletes: BTreeMap<String, (Vec<&Text>, Vec<Entry<'_>>)> = BTreeMap::new();
        for file in files {
            if let Role::Journal(folder) = &file.role {
                athletes.entry(folder.clone()).or_default().0.push(file);
                continue;
            }
            let pending = journal::read(&file.label, &file.bytes, Form::Pending);
            problems.extend(pending.problems);
            for mut entry in pending.entries {
                let folder = entry.folder.take().unwrap_or_default();
                athletes.entry(folder).or_default().1.push(entry);
            }
        }
        if let Some(only) = only {
            athletes.retain(|folder, _| folder == only);
        }
        let read_one = |(folder, (files, pending)): (String, (Vec<&Text>, Vec<Entry<'_>>))| {
            athlete(folder, &files, pending)
        };
        // For one there is nothing to share, and for none other threads would wake in vain.
        let read: Vec<(Option<Athlete>, Vec<Problem>)> = if athletes.len() <= 1 {
            athletes.into_iter().map(read_one).collect()
        } else {
            athletes.into_par_iter().map(read_one).collect()
        };
        let mut merged = Vec::with_capacity(read.len());
        for (somebody, wrong) in read {
            problems.extend(wrong);
            merged.extend(somebody);
        }
        merged.sort_by(|(a, _), (b, _)| (&a.name, &a.folder).cmp(&(&b.name, &b.folder)));
        (self.logs, self.histories) = merged.into_iter().unzip();
        problems.extend(self.logs.windows(2).filter_map(same_name));
    }
}

/// Two athletes of one name: by name, only the first is found.
fn same_name(pair: &[Log]) -> Option<Problem> {
    let [first, second] = pair else { return None };
    (first.name == second.name).then(|| {
        Problem::warning(
            Place::whole(format!("{}/{}", listing::ATHLETES, second.folder)),
            format!(
                "{} is the name of the athlete in {} too",
                quoted(&second.name),
                first.folder
            ),
            "give one of them another name",
        )
    })
}

/// An athlete's log and what lies behind it.
type Athlete = (Log, History);

/// One athlete from journals and what pending batches hold. Nobody where not one line is whole: a first write that failed or
/// was killed, or a first journal that is still being carried here.
fn athlete<'a>(
    folder: String,
    files: &[&'a Text],
    mut entries: Vec<Entry<'a>>,
) -> (Option<Athlete>, Vec<Problem>) {
    let mut problems = Vec::new();
    let mut highest_rev = 0;
    for file in files {
        let journal = journal::read(&file.label, &file.bytes, Form::Journal);
        problems.extend(journal.problems);
        highest_rev = highest_rev.max(journal.highest_rev);
        if entries.is_empty() {
            entries = journal.entries;
        } else {
            entries.extend(journal.entries);
        }
    }
    let has_a_line = files.iter().any(|file| file.bytes.contains(&b'\n'));
    if entries.is_empty() && !has_a_line {
        return (None, problems);
    }
    let (records, history) = merge::merge(entries, highest_rev);
    let log = Log {
        name: name_in(&records).unwrap_or(&folder).to_owned(),
        folder,
        records,
    };
    (Some((log, history)), problems)
}

/// The newest name that the records give.
pub(crate) fn name_in(records: &[Record]) -> Option<&str> {
    records.iter().rev().find_map(|record| match &record.what {
        Fact::Profile { name, .. } => name.as_deref(),
        _ => None,
    })
}

fn text_of(bytes: Vec<u8>) -> Result<String, String> {
    if bytes.len() > LARGEST_TEXT {
        return Err(format!(
            "this file is larger than {LARGEST_TEXT} bytes and is not read"
        ));
    }
    String::from_utf8(bytes).map_err(|_| "this file is not UTF-8 text and is not read".to_owned())
}

/// The names most like `name`, nearest first, at most three.
fn nearest<'a>(name: &Name, names: impl Iterator<Item = &'a str>) -> Vec<String> {
    let folded = |text: &str| text.to_lowercase();
    let wanted = folded(name.as_str());
    let mut near: Vec<(usize, &str)> = names
        .map(|other| (strsim::osa_distance(&wanted, &folded(other)), other))
        .filter(|(edits, other)| *edits <= (other.chars().count() / 2).max(2))
        .collect();
    near.sort_unstable();
    near.into_iter()
        .take(3)
        .map(|(_, name)| name.to_owned())
        .collect()
}
