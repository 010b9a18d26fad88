//! The folder of a new athlete: nobody else's, of this batch or before it.

use std::collections::BTreeSet;

use super::disk;
use super::folder::Logbook;
use super::journal::{self, Form};
use super::listing::{self, ATHLETES, Scope};
use super::names::Name;
use super::trouble::Trouble;
use super::writer::Writer;

impl Writer {
    /// The folder that a new athlete of this name gets.
    pub(super) fn new_folder(&self, name: &Name) -> Result<String, Trouble> {
        self.free_folder(name, &self.folders()?, &BTreeSet::new())
    }

    /// The folder for a new athlete: the name's own, or the other one if somebody has it. `taken` are those that are there,
    /// `given` those that others of this batch get.
    pub(super) fn free_folder(
        &self,
        name: &Name,
        taken: &BTreeSet<String>,
        given: &BTreeSet<String>,
    ) -> Result<String, Trouble> {
        let own = name.folder();
        let is_free = !given.contains(&own) && (!taken.contains(&own) || self.is_nobodys(&own)?);
        Ok(if is_free { own } else { name.other_folder() })
    }

    /// Whether a failed or killed first write left this folder without a whole line: it is nobody's yet.
    fn is_nobodys(&self, folder: &str) -> Result<bool, Trouble> {
        let stat = self.machine.disk().stat(&self.root.join(ATHLETES).join(folder));
        if !stat.is_ok_and(|stat| stat.kind == disk::Kind::Folder) {
            return Ok(false);
        }
        let snapshot = listing::read(&self.machine, &self.root, Scope::Athlete(folder), true)?;
        let all_is_read = snapshot.unread.is_empty();
        let (logbook, _) = Logbook::build(&self.root, snapshot, Some(folder));
        Ok(all_is_read && logbook.logs.is_empty())
    }

    /// The athletes' folders, those of unfinished batches too.
    pub(super) fn folders(&self) -> Result<BTreeSet<String>, Trouble> {
        let snapshot = listing::read(&self.machine, &self.root, Scope::Outside, true)?;
        let mut folders = snapshot.folders;
        for file in &snapshot.files {
            if file.role == listing::Role::Pending {
                let pending = journal::read(&file.label, &file.bytes, Form::Pending);
                folders.extend(pending.entries.into_iter().filter_map(|entry| entry.folder));
            }
        }
        Ok(folders)
    }
}
