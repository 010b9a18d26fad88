//! A lock that the death of its holder frees.

use std::fs::{File, TryLockError};
use std::io;
use std::thread;
use std::time::{Duration, Instant};

/// How often a waiting writer asks again.
const ASK_AGAIN: Duration = Duration::from_millis(20);

/// A lock that is held until this is dropped.
#[derive(Debug)]
#[must_use = "dropping it frees the lock"]
pub struct Held {
    _file: Option<File>,
}

impl Held {
    /// A lock on nothing, for a disk that has no other processes.
    pub fn alone() -> Self {
        Self { _file: None }
    }
}

/// Why a lock was not given.
#[derive(Debug, thiserror::Error)]
pub enum NoLock {
    /// Another program holds it.
    #[error("busy")]
    Busy,
    /// The system gives no locks here, or the file can't be opened.
    #[error(transparent)]
    Io(#[from] io::Error),
}

/// Locks `file`, waiting up to `wait`.
pub(super) fn take(file: File, wait: Duration) -> Result<Held, NoLock> {
    let begun = Instant::now();
    loop {
        match file.try_lock() {
            Ok(()) => return Ok(Held { _file: Some(file) }),
            Err(TryLockError::WouldBlock) if begun.elapsed() < wait => thread::sleep(ASK_AGAIN),
            Err(TryLockError::WouldBlock) => return Err(NoLock::Busy),
            Err(TryLockError::Error(error)) => return Err(error.into()),
        }
    }
}
