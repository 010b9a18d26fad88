//! What the logbook asks of the disk in memory, one counted operation each.

use std::ffi::OsString;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use rungwright::logbook::disk::{Disk, Handle, Held, Kind, NoLock, Stat, parent_of};

use super::{ModelDisk, NameChange, Unflushed, apply};

fn handle(disk: &ModelDisk, node: usize) -> Box<dyn Handle> {
    Box::new(ModelHandle {
        disk: disk.clone(),
        node,
    })
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
            Some(node) => Ok(handle(self, node)),
            None => Ok(handle(self, self.make(path, false)?)),
        }
    }

    fn create_new(&self, path: &Path) -> io::Result<Box<dyn Handle>> {
        self.step(format!("create {}", path.display()), true)?;
        Ok(handle(self, self.make(path, false)?))
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
