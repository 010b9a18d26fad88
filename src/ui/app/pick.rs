//! Asks the person for a folder or a file, on a thread: the dialog belongs to the desktop and may stay open for long.

use std::path::PathBuf;
use std::sync::Arc;

use crate::ui::work::{Outcome, Work};

/// What is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pick {
    /// A logbook's folder.
    Folder,
    /// A spreadsheet.
    Sheet,
    /// Where a picture goes.
    Picture,
    /// Where a page to print goes.
    Output,
}

/// Shows a dialog and comes back with what was chosen.
pub type PickPath = Arc<dyn Fn(Pick) -> Option<PathBuf> + Send + Sync>;

/// A dialog that is open, or none.
#[derive(Default)]
pub(super) struct Picking {
    by: Option<PickPath>,
    open: Option<(Pick, Work<Option<PathBuf>>)>,
}

impl Picking {
    pub fn by(pick: PickPath) -> Self {
        Self {
            by: Some(pick),
            open: None,
        }
    }

    /// Opens a dialog, unless one is open.
    pub fn ask(&mut self, pick: Pick, ctx: &egui::Context) {
        if let (Some(by), None) = (self.by.clone(), &self.open) {
            let ctx = ctx.clone();
            let work = Work::start("", move || ctx.request_repaint(), move |_| by(pick));
            self.open = Some((pick, work));
        }
    }

    /// What was chosen since; no path where the dialog was closed, or the desktop has none.
    pub fn take(&mut self) -> Option<(Pick, Option<PathBuf>)> {
        let (pick, work) = self.open.take()?;
        match work.poll() {
            Outcome::Running => {
                self.open = Some((pick, work));
                None
            }
            Outcome::Done(path) => Some((pick, path)),
            Outcome::Lost => Some((pick, None)),
        }
    }
}
