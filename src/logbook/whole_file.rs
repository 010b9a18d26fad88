//! Files that are replaced as a whole: settings, own ladders, own movements.
//!
//! Invariant: a reader and a power cut see the old or the new file; the old one stays in the state folder.

use std::io;
use std::path::{Path, PathBuf};

use crate::units::Unit;

use super::disk;
use super::machine::mark_of;
use super::names;
use super::settings::{self, Settings};
use super::trouble::Trouble;
use super::writer::Writer;

/// A file that is replaced as a whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WholeFile {
    /// `movements.ron`.
    Movements,
    /// The own ladder with this id.
    Ladder(String),
}

/// What came of replacing a file that somebody had looked at before.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Replaced {
    /// It is on disk.
    Done,
    /// Nothing was written: the file is no longer what was looked at. What it holds now; none where it is gone.
    Changed(Option<Vec<u8>>),
}

impl WholeFile {
    /// The file that a logbook's listing names so, for example `ladders/ring-dip.ron`; none of another name, which the program
    /// reads but doesn't write.
    pub fn named(path: &str) -> Option<Self> {
        if path == "movements.ron" {
            return Some(Self::Movements);
        }
        let id = path.strip_prefix("ladders/")?.strip_suffix(".ron")?;
        names::is_plain_folder(id).then(|| Self::Ladder(id.to_owned()))
    }
}

impl Writer {
    /// Writes `logbook.ron` with a fresh logbook's settings in `unit`, if there is none; says whether it did.
    ///
    /// # Errors
    /// When it can't be written; nothing is left of it then.
    pub fn ensure_settings(&mut self, unit: Unit) -> Result<bool, Trouble> {
        let path = self.root.join(settings::FILE);
        match self.machine.disk().stat(&path) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                self.write_settings(&Settings::fresh(unit)).inspect_err(|_| {
                    // Whoever finds the file would take its name for durable: take it back.
                    let _ = self.machine.disk().remove(&path);
                })?;
                Ok(true)
            }
            Err(error) => Err(Trouble::io(&path, "cannot be read")(error)),
            Ok(_) => Ok(false),
        }
    }

    /// Replaces `logbook.ron`; the version before goes to the state folder.
    ///
    /// # Errors
    /// When it can't be written; the old one stands then.
    pub fn write_settings(&mut self, settings: &Settings) -> Result<(), Trouble> {
        self.replace(&self.root.join(settings::FILE), settings.to_text().as_bytes())
    }

    /// Replaces an own ladder or the own movements; the version before goes to the state folder.
    ///
    /// # Errors
    /// When it can't be written, or the ladder's id makes no file name; the old one stands then.
    pub fn write_whole(&mut self, file: &WholeFile, text: &str) -> Result<(), Trouble> {
        let path = self.whole_path(file)?;
        if matches!(file, WholeFile::Ladder(_)) {
            self.own_folder(disk::parent_of(&path))?;
        }
        self.replace(&path, text.as_bytes())
    }

    /// As [`Writer::write_whole`], unless the file is no longer `seen`, what somebody looked at; none where there was no file.
    ///
    /// # Errors
    /// As [`Writer::write_whole`]; and when what is there can't be read.
    pub fn write_seen(
        &mut self,
        file: &WholeFile,
        seen: Option<&[u8]>,
        text: &str,
    ) -> Result<Replaced, Trouble> {
        let now = self.whole_bytes(file)?;
        if now.as_deref() != seen && now.as_deref() != Some(text.as_bytes()) {
            return Ok(Replaced::Changed(now));
        }
        self.write_whole(file, text)?;
        Ok(Replaced::Done)
    }

    /// Takes an own ladder or the own movements away, unless the file is no longer `seen`. What it held goes to the state folder
    /// first.
    ///
    /// # Errors
    /// When it can't be kept there or removed; it stands then.
    pub fn remove_seen(&mut self, file: &WholeFile, seen: &[u8]) -> Result<Replaced, Trouble> {
        let path = self.whole_path(file)?;
        match self.whole_bytes(file)? {
            Some(now) if now == seen => self.keep_earlier(&path, &now)?,
            Some(now) => return Ok(Replaced::Changed(Some(now))),
            None => return Ok(Replaced::Done),
        }
        let disk = self.machine.disk();
        disk.remove(&path)
            .and_then(|()| disk.flush_folder(disk::parent_of(&path)))
            .map_err(Trouble::not_saved(&path))?;
        Ok(Replaced::Done)
    }

    /// Keeps a text that was never this file among its earlier versions.
    ///
    /// # Errors
    /// When it can't be written.
    pub fn keep_beside(&self, file: &WholeFile, text: &str) -> Result<(), Trouble> {
        self.keep_earlier(&self.whole_path(file)?, text.as_bytes())
    }

    fn whole_path(&self, file: &WholeFile) -> Result<PathBuf, Trouble> {
        match file {
            WholeFile::Movements => Ok(self.root.join("movements.ron")),
            WholeFile::Ladder(id) => {
                let path = self.root.join("ladders").join(format!("{id}.ron"));
                if names::is_plain_folder(id) {
                    return Ok(path);
                }
                let wrong = io::Error::other("a ladder's id has 1 to 32 of a-z, 0-9 and -");
                Err(Trouble::not_saved(&path)(wrong))
            }
        }
    }

    fn whole_bytes(&self, file: &WholeFile) -> Result<Option<Vec<u8>>, Trouble> {
        let path = self.whole_path(file)?;
        match self.machine.disk().read(&path) {
            Ok(bytes) => Ok(Some(bytes)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(Trouble::io(&path, "cannot be read")(error)),
        }
    }

    /// Replaces a whole file, keeping the version before in the state folder.
    fn replace(&self, path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
        let disk = self.machine.disk();
        match disk.read(path) {
            // An earlier try may have failed to flush the name.
            Ok(old) if old == bytes => {
                let flushed = disk.flush_folder(disk::parent_of(path));
                return flushed.map_err(Trouble::not_saved(path));
            }
            Ok(old) => self.keep_earlier(path, &old)?,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(Trouble::not_saved(path)(error)),
        }
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let temporary = path.with_file_name(format!(".{name}.tmp"));
        disk::replace(disk, path, &temporary, bytes).map_err(Trouble::not_saved(path))
    }

    fn keep_earlier(&self, path: &Path, old: &[u8]) -> Result<(), Trouble> {
        let folder = self
            .machine
            .places()
            .state
            .join("earlier")
            .join(mark_of(&self.root));
        let stem = path.file_stem().unwrap_or_default().to_string_lossy();
        let version = names::base32_letters(xxhash_rust::xxh3::xxh3_64(old));
        let kept = folder.join(format!("{stem}-{version}.ron"));
        let disk = self.machine.disk();
        if disk.stat(&kept).is_ok() {
            return Ok(());
        }
        let temporary = folder.join(format!(".{stem}.tmp"));
        disk::make_folders(disk, &folder)
            .and_then(|()| disk::replace(disk, &kept, &temporary, old))
            .map_err(Trouble::not_saved(&kept))
    }
}
