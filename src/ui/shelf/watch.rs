//! Watches a logbook's folder for what an editor, a command or a sync tool brings.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use notify_debouncer_full::notify::{EventKind, RecommendedWatcher, RecursiveMode};
use notify_debouncer_full::{DebounceEventResult, Debouncer, RecommendedCache, new_debouncer};

use super::Wake;

/// A change is passed on once nothing more came for so long; with the reading it shows well within a second.
const QUIET: Duration = Duration::from_millis(150);

/// A watched folder. Dropping it ends the watching.
pub(super) struct Watch {
    _debouncer: Debouncer<RecommendedWatcher, RecommendedCache>,
    changed: Arc<Mutex<BTreeSet<PathBuf>>>,
}

impl Watch {
    /// Watches `root` and everything in it; none where the system can't, for then [`crate::ui::action::Action::ReadAgain`] is
    /// left.
    pub fn on(root: &Path, wake: Wake) -> Option<Self> {
        let changed = Arc::new(Mutex::new(BTreeSet::new()));
        let gathered = changed.clone();
        let gather = move |result: DebounceEventResult| {
            // An error means that events may have been lost: then anything may have changed.
            let paths: Vec<PathBuf> = match result {
                Ok(events) => events
                    .into_iter()
                    .filter(|event| !matches!(event.kind, EventKind::Access(_)))
                    .flat_map(|event| event.event.paths)
                    .collect(),
                Err(_) => vec![PathBuf::new()],
            };
            if !paths.is_empty() {
                gathered
                    .lock()
                    .unwrap_or_else(PoisonError::into_inner)
                    .extend(paths);
                wake();
            }
        };
        let mut debouncer = new_debouncer(QUIET, None, gather).ok()?;
        debouncer.watch(root, RecursiveMode::Recursive).ok()?;
        Some(Self {
            _debouncer: debouncer,
            changed,
        })
    }

    /// What changed since the last call.
    pub fn take(&self) -> BTreeSet<PathBuf> {
        std::mem::take(&mut *self.changed.lock().unwrap_or_else(PoisonError::into_inner))
    }
}
