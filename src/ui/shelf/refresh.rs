//! The logbook read anew, behind what is shown, when something outside the window changed it or the day did.

use std::path::Path;
use std::sync::Arc;

use crate::catalogue::Catalogue;
use crate::ui::work::{Outcome, Work};

use super::Shelf;
use super::opened::{Ended, Opened};
use super::watch::Watch;

/// The logbook is read anew, behind what is shown.
pub(super) struct Refresh {
    work: Work<Result<Opened, Ended>>,
    /// How much had been written when it began: if more was written since, it is out of date.
    writes: u64,
}

impl Shelf {
    /// Reads the logbook anew on a thread, if something in it changed or the day did.
    pub(super) fn look_outside(&mut self, again: bool) {
        let Some(opened) = &self.opened else { return };
        let changed = self.watch.as_ref().map(Watch::take).unwrap_or_default();
        let foreign = changed.iter().any(|path| self.is_foreign(path));
        if (foreign || again || opened.on != self.today()) && self.job.is_none() {
            self.again = true;
        }
        if !self.again || self.refresh.is_some() {
            return;
        }
        self.again = false;
        let root = opened.book.root.clone();
        let last: Arc<Catalogue> = Arc::new(opened.catalogue.clone());
        let (machine, on, wake) = (self.machine.clone(), self.today(), self.wake.clone());
        let work = Work::start(
            "Reading anew",
            move || wake(),
            move |report| Opened::read(&machine, &root, on, Some(&last), report),
        );
        self.refresh = Some(Refresh {
            work,
            writes: self.writes,
        });
    }

    /// What reading anew brought; true when it is shown now.
    pub(super) fn look_after_refresh(&mut self) -> bool {
        let Some(refresh) = self.refresh.take() else {
            return false;
        };
        match refresh.work.poll() {
            Outcome::Running => {
                self.refresh = Some(refresh);
                false
            }
            Outcome::Done(Ok(_)) if refresh.writes != self.writes => {
                // Something was written meanwhile, and this doesn't know of it.
                self.again = true;
                false
            }
            Outcome::Done(Ok(fresh)) => {
                self.unread = None;
                self.opened = self.opened.take().map(|before| fresh.looking_at(&before));
                self.revision += 1;
                true
            }
            Outcome::Done(Err(Ended::Failed(words))) => {
                self.unread = Some(words);
                self.revision += 1;
                true
            }
            Outcome::Done(Err(Ended::Stopped)) | Outcome::Lost => false,
        }
    }

    /// Whether a change at `path` is not our own. What we wrote last is known by its length.
    fn is_foreign(&self, path: &Path) -> bool {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if name.starts_with('.') || name.starts_with('~') || name.ends_with('~') {
            return false;
        }
        let Ok(stat) = self.machine.disk().stat(path) else {
            return true;
        };
        if stat.kind == crate::logbook::disk::Kind::Folder {
            // A new folder may hold files that came before it was watched.
            return !self.is_known_folder(path);
        }
        self.own.get(path) != Some(&stat.length)
    }

    fn is_known_folder(&self, path: &Path) -> bool {
        self.opened.as_ref().is_some_and(|opened| {
            let athletes = opened.book.root.join("athletes");
            let is_athlete = |log: &crate::logbook::Log| athletes.join(&log.folder) == path;
            path == opened.book.root || path == athletes || opened.book.logs.iter().any(is_athlete)
        })
    }

    /// Keeps the lengths of an athlete's journals as they are after our own write.
    pub(super) fn keep_lengths(&mut self, folder: &str) {
        let Some(opened) = &self.opened else { return };
        let home = opened.book.root.join("athletes").join(folder);
        let disk = self.machine.disk();
        for name in disk.list(&home).unwrap_or_default() {
            let path = home.join(name);
            if let Ok(stat) = disk.stat(&path) {
                self.own.insert(path, stat.length);
            }
        }
        self.writes += 1;
    }
}
