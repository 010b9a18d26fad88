//! Which files of a logbook are read, and reading them all at one moment although others write meanwhile.
//!
//! Invariant: nothing here writes into the logbook; links, pipes and folders in a file's place are reported, not followed.

use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use rayon::prelude::*;

use crate::problem::{Place, Problem};

use super::disk::{Disk, Kind, Stat};
use super::machine::Machine;
use super::names::is_safe_folder;
use super::settings;
use super::trouble::Trouble;

/// How often a listing that changed while it was read is read again before the lock is taken.
const TRIES: usize = 8;

/// So few files are read sooner than other threads wake. From a measurement on 2 cores.
const FEW_FILES: usize = 8;

/// How long a reader waits for the lock then.
const LOCK_WAIT: Duration = Duration::from_secs(10);

/// The folder of all athletes.
pub(crate) const ATHLETES: &str = "athletes";

/// What a file is to the logbook.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Role {
    Settings,
    Movements,
    Ladder,
    /// A journal of the athlete in this folder.
    Journal(String),
    Pending,
}

/// How much is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Scope<'a> {
    All,
    /// Everything but the journals of all other athletes.
    Athlete(&'a str),
    /// Settings, pending batches and which athletes there are.
    Outside,
    /// Settings, own movements and own ladders.
    Own,
    /// Settings alone.
    Settings,
}

/// A file as read.
#[derive(Debug)]
pub(crate) struct Text {
    /// Its path from the logbook's folder, with `/`.
    pub label: String,
    pub role: Role,
    pub bytes: Vec<u8>,
}

/// The files of a logbook at one moment.
#[derive(Debug, Default)]
pub(crate) struct Snapshot {
    pub files: Vec<Text>,
    /// The athletes' folders, with or without journals.
    pub folders: BTreeSet<String>,
    /// What is there of athletes and could not be read.
    pub unread: Vec<Unread>,
    pub problems: Vec<Problem>,
}

/// A journal, or a folder of journals, that is there and could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Unread {
    /// Its path from the logbook's folder, with `/`.
    pub label: String,
    /// The system's words, or ours.
    pub why: String,
}

impl Unread {
    /// Whether journals of the athlete in `folder` may be in it.
    pub fn may_hold(&self, folder: &str) -> bool {
        let below = self.label.strip_prefix(ATHLETES).unwrap_or_default();
        let first = below.split('/').nth(1);
        first.is_none_or(|first| first == folder)
    }
}

/// Reads the logbook at `root`, the same moment for all files; `has_lock` if this program's writer holds its lock.
pub(crate) fn read(
    machine: &Machine,
    root: &Path,
    scope: Scope<'_>,
    has_lock: bool,
) -> Result<Snapshot, Trouble> {
    for _ in 0..TRIES {
        if let Some(snapshot) = once(machine.disk(), root, scope)? {
            return Ok(snapshot);
        }
    }
    let _held = if has_lock {
        None
    } else {
        let real = machine
            .disk()
            .real_path(root)
            .map_err(Trouble::io(root, "cannot be read"))?;
        Some(machine.lock(&real, LOCK_WAIT)?)
    };
    for _ in 0..TRIES {
        if let Some(snapshot) = once(machine.disk(), root, scope)? {
            return Ok(snapshot);
        }
    }
    Err(Trouble::io(root, "keeps changing while it is read")(
        io::Error::other("another program writes here all the time"),
    ))
}

/// The folders of the athletes who have a journal whose bytes `wanted` knows; what can't be read is passed over.
pub(crate) fn folders_where(
    disk: &dyn Disk,
    root: &Path,
    wanted: impl Fn(&[u8]) -> bool + Sync,
) -> Result<BTreeSet<String>, Trouble> {
    let listing = Listing::of(disk, root, Scope::All)?;
    let holds_it = |found: &Found| disk.read(&found.path).is_ok_and(|bytes| wanted(&bytes));
    let folders = listing
        .files
        .par_iter()
        .filter_map(|(_, found)| match &found.role {
            Role::Journal(folder) if holds_it(found) => Some(folder.clone()),
            _ => None,
        });
    Ok(folders.collect())
}

/// One try; none if something changed meanwhile.
fn once(disk: &dyn Disk, root: &Path, scope: Scope<'_>) -> Result<Option<Snapshot>, Trouble> {
    let before = Listing::of(disk, root, scope)?;
    let read = |found: &Found| disk.read(&found.path);
    let texts: Vec<io::Result<Vec<u8>>> = if before.files.len() <= FEW_FILES {
        before.files.values().map(read).collect()
    } else {
        before.files.par_iter().map(|(_, found)| read(found)).collect()
    };
    if Listing::of(disk, root, scope)? != before {
        return Ok(None);
    }
    let mut snapshot = Snapshot {
        files: Vec::with_capacity(texts.len()),
        folders: before.folders,
        unread: before.unread,
        problems: before.problems,
    };
    for ((label, found), text) in before.files.into_iter().zip(texts) {
        match text {
            Ok(bytes) if bytes.len() as u64 != found.stat.length => return Ok(None),
            Ok(bytes) => snapshot.files.push(Text {
                label,
                role: found.role,
                bytes,
            }),
            Err(error) => {
                snapshot.unread.extend(of_athletes(&label, &error));
                snapshot.problems.push(unreadable(&label, &error));
            }
        }
    }
    Ok(Some(snapshot))
}

#[derive(Debug, PartialEq, Eq)]
struct Found {
    path: PathBuf,
    role: Role,
    stat: Stat,
}

#[derive(Debug, Default, PartialEq, Eq)]
struct Listing {
    files: BTreeMap<String, Found>,
    folders: BTreeSet<String>,
    unread: Vec<Unread>,
    problems: Vec<Problem>,
}

impl Listing {
    fn of(disk: &dyn Disk, root: &Path, scope: Scope<'_>) -> Result<Self, Trouble> {
        let mut listing = Self::default();
        let names = match disk.list(root) {
            Ok(names) => names,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                return Err(Trouble::Missing {
                    logbook: root.to_owned(),
                });
            }
            Err(error) if error.kind() == io::ErrorKind::NotADirectory => {
                return Err(Trouble::NoFolder {
                    logbook: root.to_owned(),
                });
            }
            Err(error) => return Err(Trouble::io(root, "cannot be read")(error)),
        };
        for name in names {
            let Some(name) = name.to_str() else { continue };
            let path = root.join(name);
            match name {
                settings::FILE => listing.file(disk, name, path, Role::Settings),
                _ if scope == Scope::Settings => {}
                "movements.ron" if scope != Scope::Outside => listing.file(disk, name, path, Role::Movements),
                "ladders" if scope != Scope::Outside => listing.ladders(disk, &path),
                _ if scope == Scope::Own => {}
                ATHLETES => listing.athletes(disk, &path, scope),
                pending if is_pending(pending) => listing.file(disk, pending, path, Role::Pending),
                _ => {}
            }
        }
        listing.problems.sort();
        Ok(listing)
    }

    fn unreadable(&mut self, label: &str, error: &io::Error) {
        self.unread.extend(of_athletes(label, error));
        self.problems.push(unreadable(label, error));
    }

    fn file(&mut self, disk: &dyn Disk, label: &str, path: PathBuf, role: Role) {
        match disk.stat(&path) {
            Ok(stat) if stat.kind == Kind::File => {
                self.files.insert(label.to_owned(), Found { path, role, stat });
            }
            Ok(_) => {
                self.unread.extend(of_athletes(label, NOT_FOLLOWED));
                self.problems.push(Problem::error(
                    Place::whole(label),
                    "this is no plain file and is not read",
                    "put the file itself here; links, pipes and folders are not followed",
                ));
            }
            // It went away between listing and looking: the second listing will differ.
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => self.unreadable(label, &error),
        }
    }

    /// The names in a folder below the logbook, if it is a plain one.
    fn names_in(&mut self, disk: &dyn Disk, label: &str, path: &Path) -> Vec<String> {
        let found = disk.stat(path).and_then(|stat| match stat.kind {
            Kind::Folder => disk.list(path).map(Some),
            _ => Ok(None),
        });
        match found {
            Ok(Some(names)) => names
                .into_iter()
                .filter_map(|name| match name.into_string() {
                    Ok(name) => Some(name),
                    Err(name) => {
                        self.problems.push(Problem::error(
                            Place::whole(format!("{label}/{}", name.to_string_lossy())),
                            "this name is not UTF-8 text, so the file or folder is not read",
                            "rename it",
                        ));
                        None
                    }
                })
                .collect(),
            // What no program of ours made is nobody's folder: a new athlete gets another one.
            Ok(None) => {
                self.problems.push(Problem::error(
                    Place::whole(label),
                    "this is no plain folder and is not read",
                    "put the folder itself here; links are not followed",
                ));
                Vec::new()
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => Vec::new(),
            Err(error) => {
                self.unreadable(label, &error);
                Vec::new()
            }
        }
    }

    fn ladders(&mut self, disk: &dyn Disk, folder: &Path) {
        for name in self.names_in(disk, "ladders", folder) {
            if name.ends_with(".ron") && !name.starts_with(['.', '~']) {
                self.file(disk, &format!("ladders/{name}"), folder.join(&name), Role::Ladder);
            }
        }
    }

    fn athletes(&mut self, disk: &dyn Disk, folder: &Path, scope: Scope<'_>) {
        let names = match scope {
            Scope::Athlete(one) => vec![one.to_owned()],
            _ => self.names_in(disk, ATHLETES, folder),
        };
        for name in names {
            let path = folder.join(&name);
            let label = format!("{ATHLETES}/{name}");
            match disk.stat(&path) {
                // Strange files beside the athletes' folders are not ours: nothing is lost with them.
                Ok(stat) if stat.kind == Kind::File => continue,
                Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
                _ if name.starts_with(['.', '~']) || name.ends_with('~') => continue,
                Err(error) => {
                    self.unreadable(&label, &error);
                    continue;
                }
                Ok(_) => {}
            }
            if !is_safe_folder(&name) {
                self.problems.push(Problem::error(
                    Place::whole(&label),
                    "no athlete's folder can have this name on every system, so it is not read",
                    "rename it with letters, digits and -",
                ));
                continue;
            }
            if scope != Scope::Outside {
                self.journals(disk, &label, &path, &name);
            }
            self.folders.insert(name);
        }
    }

    fn journals(&mut self, disk: &dyn Disk, label: &str, path: &Path, athlete: &str) {
        for name in self.names_in(disk, label, path) {
            let label = format!("{label}/{name}");
            if is_journal(&name) {
                self.file(disk, &label, path.join(&name), Role::Journal(athlete.to_owned()));
            } else if name.contains(TORN) {
                self.problems.push(set_aside(&label));
            }
        }
    }
}

/// Why something that is no plain file is not read.
const NOT_FOLLOWED: &str = "links, pipes and the like are not followed";

/// What the names of set-aside files have in them.
pub(crate) const TORN: &str = ".torn-";

/// Whether a file of this name in an athlete's folder is read: `journal-*.ron`, but nothing hidden or set aside.
pub(crate) fn is_journal(name: &str) -> bool {
    name.starts_with("journal-") && name.ends_with(".ron") && !name.contains(TORN)
}

/// Whether a file of this name in the logbook's folder is an unfinished batch.
pub(crate) fn is_pending(name: &str) -> bool {
    name.starts_with("pending-") && name.ends_with(".ron") && !name.contains(TORN)
}

fn set_aside(label: &str) -> Problem {
    Problem::warning(
        Place::whole(label),
        "torn bytes were set aside here after a crash; no saved record is in them",
        "delete the file once you have looked at it",
    )
}

/// What an unreadable file or folder keeps from us, if it is one of athletes.
fn of_athletes(label: &str, why: impl ToString) -> Option<Unread> {
    label.starts_with(ATHLETES).then(|| Unread {
        label: label.to_owned(),
        why: why.to_string(),
    })
}

fn unreadable(label: &str, error: &io::Error) -> Problem {
    Problem::error(
        Place::whole(label),
        format!("this cannot be read: {error}"),
        "give yourself the right to read it, or restore it from a backup",
    )
}
