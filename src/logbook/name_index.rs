//! Finding an athlete's folder by name without reading everyone's journals.
//!
//! The index in the cache holds hashes only, no names. Every hit is checked against the athlete's own records; any doubt
//! reads everyone and writes the index anew. Deleting it changes nothing but the time.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::problem::{Problem, quoted, visible};

use super::Logbook;
use super::disk;
use super::listing::{self, Scope, Unread};
use super::machine::{Machine, mark_of};
use super::names::Name;
use super::trouble::Trouble;

/// First line of an index; another one is another format.
const HEAD: &str = "rungwright names 1";

/// The logbook with only the athlete called `name` in it.
pub(crate) fn find(
    machine: &Machine,
    root: &Path,
    name: &Name,
    has_lock: bool,
) -> Result<Option<(Logbook, Vec<Problem>)>, Trouble> {
    let mut search = Search::new(machine, root);
    search.has_lock = has_lock;
    search.find(name)
}

/// Finding several names, everyone's journals read at most once. It holds the lock unless told otherwise.
pub(crate) struct Search<'a> {
    machine: &'a Machine,
    root: &'a Path,
    has_lock: bool,
    everyone: Option<Everyone>,
}

/// Everyone, and whose journals could not be read.
struct Everyone {
    logbook: Logbook,
    unread: Vec<Unread>,
    /// The index before, which may know the names of those.
    before: Index,
}

impl<'a> Search<'a> {
    pub(crate) fn new(machine: &'a Machine, root: &'a Path) -> Self {
        Self {
            machine,
            root,
            has_lock: true,
            everyone: None,
        }
    }

    pub(crate) fn find(&mut self, name: &Name) -> Result<Option<(Logbook, Vec<Problem>)>, Trouble> {
        let (machine, root, has_lock) = (self.machine, self.root, self.has_lock);
        let in_folder = |folder: &str| called(machine, root, folder, name, has_lock);
        if let Some(found) = in_folder(&name.folder())? {
            return Ok(Some(found));
        }
        let path = place(machine, root);
        let everyone = match &mut self.everyone {
            Some(everyone) => everyone,
            None => {
                let folders = listing::read(machine, root, Scope::Outside, has_lock)?.folders;
                let before = Index::read(machine, &path, &folders);
                if let Some(folder) = before.folder(name)
                    && let Some(found) = in_folder(folder)?
                {
                    return Ok(Some(found));
                }
                let mut everything = listing::read(machine, root, Scope::All, has_lock)?;
                let unread = std::mem::take(&mut everything.unread);
                let (logbook, _) = Logbook::build(root, everything, None);
                if unread.is_empty() {
                    write(machine, &path, &logbook);
                }
                self.everyone.insert(Everyone {
                    logbook,
                    unread,
                    before,
                })
            }
        };
        let logbook = &everyone.logbook;
        match logbook.position(name).and_then(|at| logbook.logs.get(at)) {
            Some(log) => in_folder(&log.folder),
            None => everyone.nobody(name, has_lock).map_or(Ok(None), Err),
        }
    }
}

impl Everyone {
    /// Why it can't be said that nobody is called `name`. A writer, who would make a second athlete of that name, minds only
    /// what may well be theirs: a gym goes on writing while one journal is out of reach.
    fn nobody(&self, name: &Name, writes: bool) -> Option<Trouble> {
        let own = name.folder();
        let may_be_theirs = |unread: &&Unread| {
            let indexed = self.before.folder(name);
            !writes || unread.may_hold(&own) || indexed.is_some_and(|folder| unread.may_hold(folder))
        };
        let unread = self.unread.iter().find(may_be_theirs)?;
        Some(Trouble::UnreadAthlete {
            name: quoted(name.as_str()),
            label: visible(&unread.label),
            why: unread.why.clone(),
        })
    }
}

/// The logbook with only the athlete in `folder`, if that athlete's name is `name` now.
fn called(
    machine: &Machine,
    root: &Path,
    folder: &str,
    name: &Name,
    has_lock: bool,
) -> Result<Option<(Logbook, Vec<Problem>)>, Trouble> {
    let snapshot = listing::read(machine, root, Scope::Athlete(folder), has_lock)?;
    let (logbook, problems) = Logbook::build(root, snapshot, Some(folder));
    let is_called = logbook.position(name).is_some();
    Ok(is_called.then_some((logbook, problems)))
}

fn place(machine: &Machine, root: &Path) -> PathBuf {
    let real = machine.disk().real_path(root).unwrap_or_else(|_| root.to_owned());
    machine.places().cache.join(format!("names-{}", mark_of(&real)))
}

fn hash(text: &str) -> String {
    format!("{:032x}", xxhash_rust::xxh3::xxh3_128(text.as_bytes()))
}

/// Folders by the hashes of their athletes' names; empty where the cache has none that is sound.
#[derive(Debug, Default)]
struct Index(BTreeMap<String, String>);

impl Index {
    fn read(machine: &Machine, path: &Path, folders: &BTreeSet<String>) -> Self {
        Self::sound(machine, path, folders).unwrap_or_default()
    }

    fn sound(machine: &Machine, path: &Path, folders: &BTreeSet<String>) -> Option<Self> {
        let bytes = machine.disk().read(path).ok()?;
        let text = String::from_utf8(bytes).ok()?;
        let (body, checksum) = text.trim_end().rsplit_once('\n')?;
        let is_sound =
            body.starts_with(HEAD) && checksum == format!("{:08x}", crc32fast::hash(body.as_bytes()));
        if !is_sound {
            return None;
        }
        let by_hash: BTreeMap<String, &String> =
            folders.iter().map(|folder| (hash(folder), folder)).collect();
        let entry = |line: &str| {
            let (name, folder) = line.split_once(' ')?;
            Some((name.to_owned(), (*by_hash.get(folder)?).clone()))
        };
        Some(Self(body.lines().skip(1).filter_map(entry).collect()))
    }

    fn folder(&self, name: &Name) -> Option<&str> {
        self.0.get(&hash(name.as_str())).map(String::as_str)
    }
}

/// Writes the index; where it can't be, the next reader takes longer.
fn write(machine: &Machine, path: &Path, everyone: &Logbook) {
    let lines: BTreeMap<String, String> = everyone
        .logs
        .iter()
        .filter_map(|log| Some((hash(Name::parse(&log.name).ok()?.as_str()), hash(&log.folder))))
        .collect();
    let lines = lines.iter().map(|(name, folder)| format!("\n{name} {folder}"));
    let body: String = std::iter::once(HEAD.to_owned()).chain(lines).collect();
    let text = format!("{body}\n{:08x}\n", crc32fast::hash(body.as_bytes()));
    let folder = disk::parent_of(path);
    let _ = disk::make_folders(machine.disk(), folder)
        .and_then(|()| disk::replace(machine.disk(), path, &path.with_extension("tmp"), text.as_bytes()));
}
