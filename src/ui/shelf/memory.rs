//! Opens the window on what it remembers; that lies in the state folder, in a file that only its owner reads.

use std::path::PathBuf;
use std::sync::Arc;

use crate::logbook::writer::{Content, refuse_for_writing};
use crate::logbook::{Machine, disk};
use crate::ui::app::{self, Remembered};
use crate::ui::sound;

use super::Shelf;

const FILE: &str = "window.ron";

/// Opens the window on `root`, else on the logbook that was open last, else on first start; comes back when it is closed.
///
/// # Errors
/// In words, when no window can be opened.
pub fn open_window(
    machine: &Machine,
    shelf: Shelf,
    root: Option<PathBuf>,
    is_throw_away: bool,
) -> Result<(), String> {
    let mut remembered = remembered(machine);
    let is_named = root.is_some();
    let root = root
        .map(|root| std::path::absolute(&root).unwrap_or(root))
        .or_else(|| {
            let usual = machine.usual_logbook();
            let is_there = matches!(refuse_for_writing(machine, &usual), Ok(Content::Logbook));
            is_there.then_some(usual)
        });
    let athlete = remembered
        .athlete
        .clone()
        .filter(|_| remembered.logbook == root && !is_throw_away);
    if (is_named && remembered.logbook != root) || is_throw_away {
        remembered.place = crate::ui::views::Place::Roster;
    }
    if let Some(root) = root.clone().filter(|_| !is_throw_away) {
        remembered.logbook = Some(root);
    }
    let kept = machine.clone();
    let first = remembered.clone();
    let keeps = move |remembered: &Remembered| {
        keep(&kept, remembered);
        if let Some(logbook) = &remembered.logbook {
            // As with the window's own memory: what can't be kept is chosen again next time.
            let _ = kept.keep_last_opened(logbook);
        }
    };
    let keeps_first = keeps.clone();
    app::run(
        remembered,
        sound::player(machine),
        move |ctx| {
            let ctx = ctx.clone();
            let shelf = shelf.waking(Arc::new(move || ctx.request_repaint()));
            match root {
                Some(root) if is_throw_away => shelf.with(&root, None, true),
                Some(root) => {
                    keeps_first(&first);
                    shelf.with(&root, athlete.as_deref(), false)
                }
                None => shelf,
            }
        },
        keeps,
    )
}

/// What was kept; as at first where nothing can be read.
fn remembered(machine: &Machine) -> Remembered {
    let path = machine.places().state.join(FILE);
    let bytes = machine.disk().read(&path).unwrap_or_default();
    Remembered::read(&String::from_utf8_lossy(&bytes))
}

/// Keeps it. A window whose place can't be kept is still a window, so a full disk says nothing here.
fn keep(machine: &Machine, remembered: &Remembered) {
    let folder = &machine.places().state;
    let temporary = folder.join(format!(".{FILE}.tmp"));
    let text = remembered.write();
    let _ = disk::make_folders(machine.disk(), folder)
        .and_then(|()| disk::replace(machine.disk(), &folder.join(FILE), &temporary, text.as_bytes()));
}
