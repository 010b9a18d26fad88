//! A disk in memory that fails or loses power at any chosen operation.
//!
//! What is not flushed may be lost, halved or zeroed; names not flushed with their folder may be lost, each for itself.
//! After a failed flush the bytes written before it are never made durable by a later one, as kernels do
//! (Rebello et al., "Can Applications Recover from fsync Failures?", USENIX ATC 2020).

mod operations;

use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard};

use rungwright::logbook::disk::parent_of;

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

/// What another program does at an operation of this one.
type Meanwhile = Option<(usize, Box<dyn FnOnce() + Send>)>;

/// The disk. Clones are the same disk.
#[derive(Clone)]
pub struct ModelDisk {
    state: Arc<Mutex<State>>,
    meanwhile: Arc<Mutex<Meanwhile>>,
    fault: Arc<Mutex<Fault>>,
}

impl ModelDisk {
    pub fn new() -> Self {
        let disk = Self {
            state: Arc::default(),
            meanwhile: Arc::default(),
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
        *self.fault() = fault;
        self.state().steps = 0;
    }

    /// At operation `at`, counted anew, another program does this.
    pub fn meanwhile(&self, at: usize, other: impl FnOnce() + Send + 'static) {
        self.state().steps = 0;
        *self
            .meanwhile
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner) = Some((at, Box::new(other)));
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

    fn fault(&self) -> MutexGuard<'_, Fault> {
        self.fault
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner)
    }

    /// Counts an operation; an error if it is the one that goes wrong.
    fn step(&self, what: String, is_write: bool) -> io::Result<()> {
        self.let_others_work();
        let mut state = self.state();
        if state.is_off {
            return Err(io::Error::other("the power is off"));
        }
        state.steps += 1;
        let at = state.steps;
        let what_is_flush = what == "flush";
        state.log.push(format!("{at} {what}"));
        let mut fault = self.fault();
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

    fn let_others_work(&self) {
        let next = self.steps() + 1;
        let mut meanwhile = self
            .meanwhile
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner);
        let other = meanwhile.take_if(|(at, _)| *at == next);
        drop(meanwhile);
        if let Some((_, other)) = other {
            other();
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
}

impl std::fmt::Debug for ModelDisk {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("ModelDisk").finish_non_exhaustive()
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
