//! A disk in memory that fails or loses power at any chosen operation.
//!
//! What is not flushed may be lost, halved or zeroed; names not flushed with their folder may be lost, each for itself.
//! After a failed flush the bytes written before it are never made durable by a later one, as kernels do
//! (Rebello et al., "Can Applications Recover from fsync Failures?", USENIX ATC 2020).

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard};
use std::time::Duration;

use rungwright::logbook::disk::{Disk, Handle, Held, Kind, NoLock, Stat, parent_of};

/// What becomes of bytes and names that were not flushed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unflushed {
    Lost,
    Kept,
    Halved,
    Zeroed,
    /// Names each by the bits of this seed; bytes halved.
    Mixed(u64),
}

/// Which operation goes wrong, counted from 1, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    None,
    /// The power goes at this operation.
    Cut(usize),
    /// This operation fails.
    Once(usize),
    /// The next flush of a file fails.
    NextFlush,
    /// This operation and all that write after it fail.
    From(usize),
}

#[derive(Debug, Clone, Default)]
struct Node {
    is_folder: bool,
    live: Vec<u8>,
    durable: Vec<u8>,
    /// Bytes that a failed flush lost for good.
    dropped: Vec<std::ops::Range<usize>>,
    version: i64,
}

#[derive(Debug, Clone)]
struct NameChange {
    folder: PathBuf,
    gone: Option<PathBuf>,
    here: Option<(PathBuf, usize)>,
}

#[derive(Debug, Default)]
struct State {
    nodes: Vec<Node>,
    live: BTreeMap<PathBuf, usize>,
    durable: BTreeMap<PathBuf, usize>,
    unflushed: Vec<NameChange>,
    steps: usize,
    is_off: bool,
    log: Vec<String>,
}

/// The disk. Clones are the same disk.
#[derive(Debug, Clone)]
pub struct ModelDisk {
    state: Arc<Mutex<State>>,
    fault: Arc<Mutex<Fault>>,
}

impl ModelDisk {
    pub fn new() -> Self {
        let disk = Self {
            state: Arc::default(),
            fault: Arc::new(Mutex::new(Fault::None)),
        };
        let mut state = disk.state();
        state.nodes.push(Node {
            is_folder: true,
            ..Node::default()
        });
        state.live.insert(PathBuf::from("/"), 0);
        state.durable.insert(PathBuf::from("/"), 0);
        drop(state);
        disk
    }

    /// From now on, counted anew, this goes wrong.
    pub fn plan(&self, fault: Fault) {
        *self.fault.lock().unwrap() = fault;
        self.state().steps = 0;
    }

    /// Operations since the plan was made.
    pub fn steps(&self) -> usize {
        self.state().steps
    }

    /// What the last operations were, to explain a failure.
    pub fn log(&self) -> Vec<String> {
        self.state().log.clone()
    }

    /// The disk after the power is back.
    pub fn reboot(&self, unflushed: Unflushed) -> ModelDisk {
        let state = self.state();
        let mut names = state.durable.clone();
        for (at, change) in state.unflushed.iter().enumerate() {
            let is_kept = match unflushed {
                Unflushed::Lost => false,
                Unflushed::Mixed(seed) => (seed >> (at % 64)) & 1 == 1,
                _ => true,
            };
            if is_kept {
                apply(&mut names, change);
            }
        }
        let all = names.clone();
        names.retain(|path, _| path.ancestors().all(|above| all.contains_key(above)));
        let nodes = state
            .nodes
            .iter()
            .map(|node| {
                let bytes = node.after(unflushed);
                Node {
                    live: bytes.clone(),
                    durable: bytes,
                    dropped: Vec::new(),
                    ..node.clone()
                }
            })
            .collect();
        let rebooted = ModelDisk::new();
        *rebooted.state() = State {
            nodes,
            live: names.clone(),
            durable: names,
            ..State::default()
        };
        rebooted
    }

    /// The bytes of a file, past any fault.
    pub fn bytes(&self, path: &Path) -> Option<Vec<u8>> {
        let state = self.state();
        let node = *state.live.get(path)?;
        Some(state.nodes[node].live.clone())
    }

    /// Every file's path.
    pub fn files(&self) -> Vec<PathBuf> {
        let state = self.state();
        let is_file = |node: &usize| !state.nodes[*node].is_folder;
        let files = state.live.iter().filter(|(_, node)| is_file(node));
        files.map(|(path, _)| path.clone()).collect()
    }

    /// Puts bytes into a file, durable at once.
    pub fn put(&self, path: &Path, bytes: &[u8]) {
        let mut state = self.state();
        let at = state.live[path];
        state.nodes[at].live = bytes.to_vec();
        state.nodes[at].durable = bytes.to_vec();
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }

    /// Counts an operation; an error if it is the one that goes wrong.
    fn step(&self, what: String, is_write: bool) -> io::Result<()> {
        let mut state = self.state();
        if state.is_off {
            return Err(io::Error::other("the power is off"));
        }
        state.steps += 1;
        let at = state.steps;
        let what_is_flush = what == "flush";
        state.log.push(format!("{at} {what}"));
        let mut fault = self.fault.lock().unwrap();
        match *fault {
            Fault::NextFlush if what_is_flush => {
                *fault = Fault::None;
                Err(io::Error::other("input/output error"))
            }
            Fault::Cut(cut) if at >= cut => {
                state.is_off = true;
                Err(io::Error::other("the power is off"))
            }
            Fault::Once(fails) if at == fails => Err(io::Error::from(io::ErrorKind::StorageFull)),
            Fault::From(fails) if at >= fails && is_write => Err(io::Error::from(io::ErrorKind::StorageFull)),
            _ => Ok(()),
        }
    }

    fn change(&self, change: NameChange) {
        let mut state = self.state();
        apply(&mut state.live, &change);
        state.unflushed.push(change);
    }

    fn make(&self, path: &Path, is_folder: bool) -> io::Result<usize> {
        let at = {
            let mut state = self.state();
            match state.live.get(parent_of(path)) {
                Some(parent) if state.nodes[*parent].is_folder => {}
                _ => return Err(io::Error::from(io::ErrorKind::NotFound)),
            }
            if state.live.contains_key(path) {
                return Err(io::Error::from(io::ErrorKind::AlreadyExists));
            }
            state.nodes.push(Node {
                is_folder,
                ..Node::default()
            });
            state.nodes.len() - 1
        };
        self.change(NameChange {
            folder: parent_of(path).to_owned(),
            gone: None,
            here: Some((path.to_owned(), at)),
        });
        Ok(at)
    }

    fn handle(&self, node: usize) -> Box<dyn Handle> {
        Box::new(ModelHandle {
            disk: self.clone(),
            node,
        })
    }
}

impl Node {
    fn after(&self, unflushed: Unflushed) -> Vec<u8> {
        let mut live = self.live.clone();
        for range in &self.dropped {
            let end = range.end.min(live.len());
            if let Some(bytes) = live.get_mut(range.start.min(end)..end) {
                bytes.fill(0);
            }
        }
        let same = live.iter().zip(&self.durable).take_while(|(a, b)| a == b).count();
        match unflushed {
            Unflushed::Lost => self.durable.clone(),
            Unflushed::Kept => live,
            Unflushed::Halved | Unflushed::Mixed(_) if live.len() > self.durable.len() => {
                live.truncate(same + (live.len() - same) / 2);
                live
            }
            Unflushed::Halved | Unflushed::Mixed(_) => self.durable.clone(),
            Unflushed::Zeroed => {
                if let Some(bytes) = live.get_mut(same..) {
                    bytes.fill(0);
                }
                live
            }
        }
    }
}

fn apply(names: &mut BTreeMap<PathBuf, usize>, change: &NameChange) {
    if let Some(gone) = &change.gone {
        names.remove(gone);
    }
    if let Some((path, node)) = &change.here {
        names.insert(path.clone(), *node);
    }
}

fn not_found() -> io::Error {
    io::Error::from(io::ErrorKind::NotFound)
}

impl Disk for ModelDisk {
    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        self.step(format!("list {}", folder.display()), false)?;
        let state = self.state();
        match state.live.get(folder) {
            None => return Err(not_found()),
            Some(node) if !state.nodes[*node].is_folder => {
                return Err(io::Error::from(io::ErrorKind::NotADirectory));
            }
            Some(_) => {}
        }
        let inside = state.live.keys().filter(|path| path.parent() == Some(folder));
        Ok(inside
            .filter_map(|path| path.file_name().map(OsString::from))
            .collect())
    }

    fn stat(&self, path: &Path) -> io::Result<Stat> {
        self.step(format!("stat {}", path.display()), false)?;
        let state = self.state();
        let at = *state.live.get(path).ok_or_else(not_found)?;
        let node = &state.nodes[at];
        Ok(Stat {
            kind: if node.is_folder { Kind::Folder } else { Kind::File },
            length: node.live.len() as u64,
            mark: (node.version, 0, at as u64),
        })
    }

    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        self.step(format!("read {}", path.display()), false)?;
        self.bytes(path).ok_or_else(not_found)
    }

    fn make_folder(&self, path: &Path) -> io::Result<()> {
        self.step(format!("make folder {}", path.display()), true)?;
        self.make(path, true).map(|_| ())
    }

    fn open_append(&self, path: &Path) -> io::Result<Box<dyn Handle>> {
        self.step(format!("open {}", path.display()), true)?;
        let there = self.state().live.get(path).copied();
        match there {
            Some(node) => Ok(self.handle(node)),
            None => Ok(self.handle(self.make(path, false)?)),
        }
    }

    fn create_new(&self, path: &Path) -> io::Result<Box<dyn Handle>> {
        self.step(format!("create {}", path.display()), true)?;
        Ok(self.handle(self.make(path, false)?))
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step(format!("rename {} to {}", from.display(), to.display()), true)?;
        let node = *self.state().live.get(from).ok_or_else(not_found)?;
        self.change(NameChange {
            folder: parent_of(from).to_owned(),
            gone: Some(from.to_owned()),
            here: Some((to.to_owned(), node)),
        });
        Ok(())
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.step(format!("remove {}", path.display()), true)?;
        if !self.state().live.contains_key(path) {
            return Err(not_found());
        }
        self.change(NameChange {
            folder: parent_of(path).to_owned(),
            gone: Some(path.to_owned()),
            here: None,
        });
        Ok(())
    }

    fn remove_folder(&self, path: &Path) -> io::Result<()> {
        let is_empty = !self.state().live.keys().any(|other| other.parent() == Some(path));
        if is_empty {
            self.remove(path)
        } else {
            Err(io::Error::from(io::ErrorKind::DirectoryNotEmpty))
        }
    }

    fn flush_folder(&self, folder: &Path) -> io::Result<()> {
        self.step(format!("flush folder {}", folder.display()), true)?;
        let mut state = self.state();
        let (flushed, rest): (Vec<_>, Vec<_>) = std::mem::take(&mut state.unflushed)
            .into_iter()
            .partition(|change| change.folder == folder);
        for change in &flushed {
            apply(&mut state.durable, change);
        }
        state.unflushed = rest;
        Ok(())
    }

    fn real_path(&self, path: &Path) -> io::Result<PathBuf> {
        self.step(format!("real path of {}", path.display()), false)?;
        if self.state().live.contains_key(path) {
            Ok(path.to_owned())
        } else {
            Err(not_found())
        }
    }

    fn lock(&self, path: &Path, _: Duration) -> Result<Held, NoLock> {
        self.step(format!("lock {}", path.display()), false)?;
        Ok(Held::alone())
    }
}

struct ModelHandle {
    disk: ModelDisk,
    node: usize,
}

impl ModelHandle {
    fn write(&self, bytes: &[u8]) {
        let mut state = self.disk.state();
        let node = &mut state.nodes[self.node];
        node.live.extend_from_slice(bytes);
        node.version += 1;
    }
}

impl Handle for ModelHandle {
    fn write_all(&mut self, bytes: &[u8]) -> io::Result<()> {
        let failed = self.disk.step(format!("write {} bytes", bytes.len()), true);
        if let Err(error) = failed {
            // A write that fails, or that the power cuts, may have come half way.
            self.write(&bytes[..bytes.len() / 2]);
            return Err(error);
        }
        self.write(bytes);
        Ok(())
    }

    fn flush(&mut self) -> io::Result<()> {
        let flushed = self.disk.step("flush".to_owned(), true);
        let mut state = self.disk.state();
        let is_off = state.is_off;
        let node = &mut state.nodes[self.node];
        if flushed.is_err() && !is_off {
            let dropped = node.durable.len().min(node.live.len())..node.live.len();
            node.dropped.push(dropped);
        }
        flushed?;
        node.durable = node.after(Unflushed::Kept);
        Ok(())
    }

    fn truncate(&mut self, length: u64) -> io::Result<()> {
        self.disk.step(format!("truncate to {length}"), true)?;
        let mut state = self.disk.state();
        let node = &mut state.nodes[self.node];
        node.live.truncate(length as usize);
        // Pages past the end are gone; what is written there next is new.
        node.dropped
            .iter_mut()
            .for_each(|range| range.end = range.end.min(length as usize));
        node.version += 1;
        Ok(())
    }
}
