//! Who may write: one window of this machine, and the lock only while it writes.
//!
//! Two things are kept apart. The *mark* says that a window has the logbook open; a second window finds it taken and only reads.
//! The *lock* is everybody's, commands too; the window takes it for each write and gives it back at once, so that a window left
//! open keeps no command waiting. Both go with the process, so a kill leaves nothing stale.

use std::path::Path;
use std::time::Duration;

use crate::clock;
use crate::logbook::disk::Held;
use crate::logbook::{Doubts, Machine, Trouble, Writer};

/// What a second window says.
const OPEN_ELSEWHERE: &str = "Open in another window. You can look, not write.";

/// The window's right to write to one logbook.
#[derive(Default)]
pub(super) struct Desk {
    mark: Option<Held>,
    doubts: Doubts,
    /// A writer that was waited for.
    ready: Option<Writer>,
    /// Why nothing can be written, as far as it is known.
    pub read_only: Option<String>,
}

/// Why a deed wasn't done.
#[derive(Debug)]
pub(super) enum NotDone {
    /// Another program writes; waiting may help.
    Busy,
    /// Waiting won't help.
    Because(String),
}

impl From<Trouble> for NotDone {
    fn from(trouble: Trouble) -> Self {
        match trouble {
            Trouble::Busy { .. } => Self::Busy,
            other => Self::Because(other.to_string()),
        }
    }
}

impl From<String> for NotDone {
    fn from(words: String) -> Self {
        Self::Because(words)
    }
}

impl From<&str> for NotDone {
    fn from(words: &str) -> Self {
        Self::Because(words.to_owned())
    }
}

impl Desk {
    /// The desk for the logbook at `root`: tries whether it can be written, and finishes what this device left unfinished.
    pub fn at(machine: &Machine, root: &Path, device: &str) -> Self {
        let mut desk = Self::default();
        match desk.write(machine, root, device, |_| Ok(())) {
            // Somebody writes at this moment; that is no reason to only read.
            Ok(()) | Err(NotDone::Busy) => desk.read_only = None,
            Err(NotDone::Because(words)) => desk.read_only = Some(words),
        }
        desk
    }

    /// Writes under the lock, without waiting for it.
    pub fn write<T>(
        &mut self,
        machine: &Machine,
        root: &Path,
        device: &str,
        deed: impl FnOnce(&mut Writer) -> Result<T, Trouble>,
    ) -> Result<T, NotDone> {
        self.take_mark(machine, root)?;
        let mut writer = match self.ready.take() {
            Some(writer) => writer,
            None => self.writer(machine, root, device, Duration::ZERO)?,
        };
        let came = deed(&mut writer);
        self.doubts = writer.doubts();
        self.read_only = None;
        Ok(came?)
    }

    /// What a thread needs to wait for the lock.
    pub fn wait(
        &self,
        machine: &Machine,
        root: &Path,
        device: &str,
    ) -> impl FnOnce() -> Result<Writer, Trouble> + use<> {
        let (machine, root, device) = (machine.clone(), root.to_owned(), device.to_owned());
        let doubts = self.doubts.clone();
        move || {
            lock(
                &machine,
                &root,
                &device,
                crate::logbook::writer::LOCK_WAIT,
                doubts,
            )
        }
    }

    /// The next write uses this writer.
    pub fn ready(&mut self, writer: Writer) {
        self.ready = Some(writer);
    }

    /// Looks again whether the other window is gone; true when something changed.
    pub fn look_again(&mut self, machine: &Machine, root: &Path) -> bool {
        let was_elsewhere = self.read_only.as_deref() == Some(OPEN_ELSEWHERE);
        if !was_elsewhere || self.take_mark(machine, root).is_err() {
            return false;
        }
        self.read_only = None;
        true
    }

    fn take_mark(&mut self, machine: &Machine, root: &Path) -> Result<(), NotDone> {
        if self.mark.is_none() {
            self.mark = machine.mark_window(root)?;
        }
        if self.mark.is_some() {
            Ok(())
        } else {
            Err(OPEN_ELSEWHERE.into())
        }
    }

    fn writer(
        &self,
        machine: &Machine,
        root: &Path,
        device: &str,
        wait: Duration,
    ) -> Result<Writer, Trouble> {
        lock(machine, root, device, wait, self.doubts.clone())
    }
}

fn lock(
    machine: &Machine,
    root: &Path,
    device: &str,
    wait: Duration,
    doubts: Doubts,
) -> Result<Writer, Trouble> {
    let now = clock::now().to_utc();
    let (writer, _) = Writer::lock(machine, root, device.to_owned(), now, wait)?;
    Ok(writer.doubting(doubts))
}
