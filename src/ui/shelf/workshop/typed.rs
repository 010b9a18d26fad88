//! Texts that are typed and not saved. They outlive the place, the window and a crash: kept as a file of this machine, as a
//! class's results are.

use std::collections::BTreeMap;
use std::io;
use std::time::{Duration, Instant};

use serde::{Deserialize, Serialize};

use crate::logbook::Machine;
use crate::ui::shelf::draft_file::{DraftFile, drafts_of, only_in_the_window};

/// What is typed is kept so long after its first letter, again and again. Our choice: a kill costs at most the last word.
const AT_LAST: Duration = Duration::from_millis(700);

/// One file as it is typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Typed {
    /// The file on disk when typing began; none where there was none.
    pub seen: Option<String>,
    /// What is typed.
    pub text: String,
}

/// Every typed file, by its key.
#[derive(Default)]
pub(super) struct AllTyped {
    files: BTreeMap<String, Typed>,
    /// Where they are kept; nowhere for a throw-away copy.
    kept_in: Option<DraftFile>,
    /// Since when something typed isn't kept.
    unkept: Option<Instant>,
    /// Why it couldn't be, until that is said.
    refused: Option<String>,
}

impl AllTyped {
    /// What lies in the state folder for the logbook at `root`. What can't be read is set aside, never written over.
    pub fn of(machine: &Machine, root: &std::path::Path, may_write: bool) -> Self {
        let (folder, mark) = drafts_of(machine, root);
        let path = folder.join(format!("{mark}-ladders.ron"));
        let (kept_in, files) = DraftFile::open(machine, path, may_write);
        Self {
            files,
            kept_in: Some(kept_in),
            unkept: None,
            refused: None,
        }
    }

    pub fn get(&self, file: &str) -> Option<&Typed> {
        self.files.get(file)
    }

    pub fn keys(&self) -> impl Iterator<Item = &String> {
        self.files.keys()
    }

    pub fn put(&mut self, file: &str, typed: Typed) {
        self.files.insert(file.to_owned(), typed);
        self.unkept.get_or_insert_with(Instant::now);
    }

    pub fn take(&mut self, file: &str) -> Option<Typed> {
        let taken = self.files.remove(file);
        if taken.is_some() {
            self.unkept.get_or_insert_with(Instant::now);
        }
        taken
    }

    /// Keeps what was typed a moment ago.
    pub fn keep_in_time(&mut self) {
        if self.unkept.is_some_and(|since| since.elapsed() >= AT_LAST) {
            // What can't be kept now is tried again; it is still in the window.
            self.refused = self.keep().err().map(|error| only_in_the_window(&error));
        }
    }

    /// What is to be said of a text that couldn't be kept; once, until the next try.
    pub fn say_refused(&mut self) -> Option<String> {
        self.refused.take()
    }

    /// Keeps what is typed now.
    ///
    /// # Errors
    /// As the system says; then it is kept only as long as the window is open.
    pub fn keep(&mut self) -> io::Result<()> {
        let (Some(_), Some(file)) = (self.unkept.take(), &self.kept_in) else {
            return Ok(());
        };
        let kept = file.write(Some(&self.files).filter(|files| !files.is_empty()));
        if kept.is_err() {
            self.unkept = Some(Instant::now());
        }
        kept
    }
}

impl Drop for AllTyped {
    fn drop(&mut self) {
        // The window closes, or another logbook opens.
        let _ = self.keep();
    }
}
