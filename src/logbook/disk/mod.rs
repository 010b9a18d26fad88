//! What the logbook asks of a file system; the real one, and in tests one that fails or loses power at any step.
//!
//! Invariant: every file is made 0600 and every folder 0700, at creation; nothing follows a link.

mod lock;
mod real;

use std::ffi::OsString;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

pub use lock::{Held, NoLock};
pub use real::RealDisk;

/// What stands at a path, links not followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A plain file.
    File,
    /// A folder.
    Folder,
    /// A link, pipe, socket or device.
    Other,
}

/// What two listings compare to see whether a file changed between them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stat {
    /// What it is.
    pub kind: Kind,
    /// Its length in bytes.
    pub length: u64,
    /// When it last changed, in whatever steps the file system counts, and its number there.
    pub mark: (i64, i64, u64),
}

/// A file system.
pub trait Disk: Send + Sync + std::fmt::Debug {
    /// The names in a folder, in any order.
    ///
    /// # Errors
    /// As the system says.
    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>>;
    /// What stands at `path`, links not followed.
    ///
    /// # Errors
    /// As the system says.
    fn stat(&self, path: &Path) -> io::Result<Stat>;
    /// All bytes of a plain file.
    ///
    /// # Errors
    /// As the system says; also when it is a link or no plain file.
    fn read(&self, path: &Path) -> io::Result<Vec<u8>>;
    /// Makes one folder, 0700; its parent must be there.
    ///
    /// # Errors
    /// As the system says.
    fn make_folder(&self, path: &Path) -> io::Result<()>;
    /// Opens a file for appending only, made 0600 if it isn't there.
    ///
    /// # Errors
    /// As the system says; also when it is a link.
    fn open_append(&self, path: &Path) -> io::Result<Box<dyn Handle>>;
    /// Makes a file that isn't there, 0600.
    ///
    /// # Errors
    /// As the system says; also when something is there.
    fn create_new(&self, path: &Path) -> io::Result<Box<dyn Handle>>;
    /// Gives a file another name, over what is there.
    ///
    /// # Errors
    /// As the system says.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Removes a file.
    ///
    /// # Errors
    /// As the system says.
    fn remove(&self, path: &Path) -> io::Result<()>;
    /// Removes an empty folder.
    ///
    /// # Errors
    /// As the system says; also when something is in it.
    fn remove_folder(&self, path: &Path) -> io::Result<()>;
    /// Makes the names in a folder durable.
    ///
    /// # Errors
    /// As the system says.
    fn flush_folder(&self, folder: &Path) -> io::Result<()>;
    /// The path without links and dots.
    ///
    /// # Errors
    /// As the system says.
    fn real_path(&self, path: &Path) -> io::Result<PathBuf>;
    /// Takes the lock that the file at `path` stands for, waiting up to `wait`; dropping it, or death, frees it.
    ///
    /// # Errors
    /// [`NoLock::Busy`] after the wait; otherwise the system's error.
    fn lock(&self, path: &Path, wait: Duration) -> Result<Held, NoLock>;
}

/// An open file that is written to.
pub trait Handle {
    /// Appends all of `bytes`.
    ///
    /// # Errors
    /// As the system says; then part of them may be there.
    fn write_all(&mut self, bytes: &[u8]) -> io::Result<()>;
    /// Makes what was written durable.
    ///
    /// # Errors
    /// As the system says; then nothing is known of what was written since the last flush.
    fn flush(&mut self) -> io::Result<()>;
    /// Cuts the file to `length` bytes.
    ///
    /// # Errors
    /// As the system says.
    fn truncate(&mut self, length: u64) -> io::Result<()>;
}

/// Makes `path` and every parent that is missing, each name durable in its parent.
///
/// # Errors
/// As the system says; also when something else than a folder is there.
pub fn make_folders(disk: &dyn Disk, path: &Path) -> io::Result<()> {
    if path.as_os_str().is_empty() {
        return Ok(());
    }
    let made = match disk.make_folder(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound && path.parent().is_some() => {
            make_folders(disk, parent_of(path))?;
            // Once more and no oftener: a mount point such as /proc refuses with the same word for ever.
            disk.make_folder(path)
        }
        made => made,
    };
    match made {
        Ok(()) => disk.flush_folder(parent_of(path)).inspect_err(|_| {
            // Whoever finds the folder would take its name for durable: take it back.
            let _ = disk.remove_folder(path);
        }),
        // A folder, or a link to one: the user's own choice above the logbook.
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => disk.list(path).map(|_| ()),
        Err(error) => Err(error),
    }
}

/// Makes the names in a folder durable that may not be ours to open.
///
/// # Errors
/// As the system says, but for a folder that can't be opened: nothing was made in it by us.
pub fn flush_outer_folder(disk: &dyn Disk, folder: &Path) -> io::Result<()> {
    match disk.flush_folder(folder) {
        Err(error) if error.kind() == io::ErrorKind::PermissionDenied => Ok(()),
        flushed => flushed,
    }
}

/// The real path of something that may not be there yet.
///
/// # Errors
/// As the system says.
pub fn real_path_to_be(disk: &dyn Disk, path: &Path) -> io::Result<PathBuf> {
    match (disk.real_path(path), path.file_name()) {
        (Err(error), Some(name)) if error.kind() == io::ErrorKind::NotFound => {
            Ok(real_path_to_be(disk, parent_of(path))?.join(name))
        }
        (found, _) => found,
    }
}

/// The folder that holds `path`; the working folder for a bare name.
pub fn parent_of(path: &Path) -> &Path {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    }
}

/// Replaces a whole file, so that a reader and a power cut see the old or the new one, never a mixture.
///
/// # Errors
/// As the system says; then the old file stands.
pub fn replace(disk: &dyn Disk, path: &Path, temporary: &Path, bytes: &[u8]) -> io::Result<()> {
    let written = write_new(disk, temporary, bytes).and_then(|()| disk.rename(temporary, path));
    if let Err(error) = written {
        // Best effort: a left-over temporary file is no record and is removed by the next writer.
        let _ = disk.remove(temporary);
        return Err(error);
    }
    disk.flush_folder(parent_of(path))
}

/// Writes a new file and flushes it; a left-over of the same name is removed first.
///
/// # Errors
/// As the system says.
pub fn write_new(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> io::Result<()> {
    match disk.remove(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
        _ => {}
    }
    let mut file = disk.create_new(path)?;
    file.write_all(bytes)?;
    file.flush()
}
