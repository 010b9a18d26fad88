//! Why a logbook could not be opened or written: one line each, ending with the system's own words.

use std::io;
use std::path::{Path, PathBuf};

use crate::problem::visible;

/// Why a logbook could not be opened or written.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// No home folder.
    #[error("no home folder is known; set HOME")]
    NoHome,
    /// The logbook isn't there.
    #[error(
        "{}: there is no logbook here; log or import something to make one",
        shown(logbook)
    )]
    Missing {
        /// Where it was looked for.
        logbook: PathBuf,
    },
    /// The path is no folder.
    #[error("{}: a logbook is a folder, and this is none", shown(logbook))]
    NoFolder {
        /// What was named.
        logbook: PathBuf,
    },
    /// A folder with other things in it.
    #[error(
        "{}: this folder is not empty and holds no logbook; name another folder, nothing was written",
        shown(logbook)
    )]
    NotALogbook {
        /// The folder.
        logbook: PathBuf,
    },
    /// The format is newer.
    #[error(
        "{}: written by a newer version (format {format}); this one only reads it, nothing was written",
        shown(logbook)
    )]
    NewerFormat {
        /// The logbook.
        logbook: PathBuf,
        /// Its format.
        format: u32,
    },
    /// The settings can't be read, so it isn't known whether writing is safe.
    #[error(
        "{}: logbook.ron cannot be read, so nothing was written; mend it first: {why}",
        shown(logbook)
    )]
    UnreadSettings {
        /// The logbook.
        logbook: PathBuf,
        /// The first problem.
        why: String,
    },
    /// Another program writes.
    #[error(
        "{}: busy, another program is writing to this logbook; nothing was written",
        shown(logbook)
    )]
    Busy {
        /// The logbook.
        logbook: PathBuf,
    },
    /// Locks don't work.
    #[error("{}: no lock can be had here, so nothing was written: {source}", shown(path))]
    NoLock {
        /// The lock's file or folder.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },
    /// The athlete isn't there.
    #[error("no athlete is called {name}{}", nearest_words(nearest))]
    UnknownAthlete {
        /// The name that was asked for, quoted.
        name: String,
        /// The nearest names, nearest first.
        nearest: Vec<String>,
    },
    /// Whether the athlete is there can't be said: something that may be theirs can't be read.
    #[error("{label}: cannot be read, and {name} may be in it; put that right first: {why}")]
    UnreadAthlete {
        /// The name that was asked for, quoted.
        name: String,
        /// The journal or folder, as shown.
        label: String,
        /// The system's words.
        why: String,
    },
    /// The device's name is wrong.
    #[error("RUNGWRIGHT_DEVICE is {0}; use 1 to 32 of a-z, 0-9 and -")]
    BadDevice(String),
    /// Something could not be read or made.
    #[error("{}: {doing}: {source}", shown(path))]
    Io {
        /// The file or folder.
        path: PathBuf,
        /// What was tried ("cannot be read").
        doing: &'static str,
        /// The system's words.
        source: io::Error,
    },
    /// A write or flush failed: the record isn't there.
    #[error("{}: not saved: {source}", shown(path))]
    NotSaved {
        /// The journal.
        path: PathBuf,
        /// The system's words.
        source: io::Error,
    },
    /// Flushes failed twice: nothing more is written here.
    #[error(
        "{}: not saved: flushing failed before, this logbook is read-only until the program starts again",
        shown(path)
    )]
    ReadOnly {
        /// The journal.
        path: PathBuf,
    },
}

impl Trouble {
    pub(crate) fn no_lock(path: &Path, source: io::Error) -> Self {
        Self::NoLock {
            path: path.to_owned(),
            source,
        }
    }

    pub(crate) fn io(path: &Path, doing: &'static str) -> impl FnOnce(io::Error) -> Self {
        let path = path.to_owned();
        move |source| Self::Io { path, doing, source }
    }

    pub(crate) fn not_saved(path: &Path) -> impl FnOnce(io::Error) -> Self {
        let path = path.to_owned();
        move |source| Self::NotSaved { path, source }
    }
}

fn shown(path: &Path) -> String {
    visible(&path.to_string_lossy())
}

fn nearest_words(nearest: &[String]) -> String {
    if nearest.is_empty() {
        return String::new();
    }
    let names: Vec<String> = nearest.iter().map(|name| crate::problem::quoted(name)).collect();
    format!("; the nearest are {}", names.join(", "))
}
