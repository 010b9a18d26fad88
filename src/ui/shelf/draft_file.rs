//! A file of this machine's state folder for what is typed into one logbook and not saved yet.

use std::io::{Error, ErrorKind, Result};
use std::path::{Path, PathBuf};

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::logbook::machine::mark_of;
use crate::logbook::{Machine, disk};

/// Where it lies. What can't be read there is set aside as `.damaged`; where not even that goes, it is never written over.
pub(super) struct DraftFile {
    machine: Machine,
    path: PathBuf,
    is_strange: bool,
}

/// The folder of drafts, and how the files of the logbook at `root` begin there.
pub(super) fn drafts_of(machine: &Machine, root: &Path) -> (PathBuf, String) {
    let real = disk::real_path_to_be(machine.disk(), root).unwrap_or_else(|_| root.to_owned());
    (machine.places().state.join("drafts"), mark_of(&real))
}

/// What is said where a draft can't be kept.
pub(super) fn only_in_the_window(error: &Error) -> String {
    format!("What you type is kept only while this window is open: {error}. Save it soon.")
}

impl DraftFile {
    /// The file at `path`, and what it holds; nothing where there is none or it can't be read. A window that may not write sets
    /// nothing aside.
    pub fn open<T: DeserializeOwned + Default>(
        machine: &Machine,
        path: PathBuf,
        may_write: bool,
    ) -> (Self, T) {
        let held = match machine.disk().read(&path) {
            Ok(bytes) if bytes.is_empty() => Some(T::default()),
            Ok(bytes) => ron::from_str(&String::from_utf8_lossy(&bytes)).ok(),
            Err(error) => (error.kind() == ErrorKind::NotFound).then(T::default),
        };
        let set_aside = || machine.disk().rename(&path, &path.with_extension("damaged"));
        let is_strange = held.is_none() && !(may_write && set_aside().is_ok());
        let file = Self {
            machine: machine.clone(),
            path,
            is_strange,
        };
        (file, held.unwrap_or_default())
    }

    /// Replaces what it holds; without anything the file goes.
    ///
    /// # Errors
    /// As the system says; then what it held stands.
    pub fn write(&self, typed: Option<&impl Serialize>) -> Result<()> {
        if self.is_strange {
            return Err(Error::other("what lies there can’t be read"));
        }
        let disk = self.machine.disk();
        let Some(typed) = typed else {
            return match disk.remove(&self.path) {
                Err(error) if error.kind() != ErrorKind::NotFound => Err(error),
                _ => Ok(()),
            };
        };
        let text = ron::to_string(typed).map_err(Error::other)?;
        disk::make_folders(disk, disk::parent_of(&self.path))?;
        disk::replace(
            disk,
            &self.path,
            &self.path.with_extension("tmp"),
            text.as_bytes(),
        )
    }
}
