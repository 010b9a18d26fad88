//! Long work on a thread of its own: it says how far it is, wakes the window, and stops when asked.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

/// How far work is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: u64,
    /// Of so many; 0 while it isn't known.
    pub of: u64,
}

/// Whether work goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Go {
    /// On.
    On,
    /// Somebody asked it to stop.
    Stop,
}

/// What the thread reports through.
pub struct Report {
    shared: Arc<Shared>,
    wake: Box<dyn Fn() + Send + Sync>,
}

impl Report {
    /// Whether to go on.
    pub fn go(&self) -> Go {
        if self.shared.stop.load(Ordering::Relaxed) {
            Go::Stop
        } else {
            Go::On
        }
    }

    /// Says how far the work is, and learns whether to go on.
    pub fn at(&self, progress: Progress) -> Go {
        self.shared.done.store(progress.done, Ordering::Relaxed);
        self.shared.of.store(progress.of, Ordering::Relaxed);
        (self.wake)();
        self.go()
    }
}

#[derive(Default)]
struct Shared {
    done: AtomicU64,
    of: AtomicU64,
    stop: AtomicBool,
}

/// Work that runs.
pub struct Work<T> {
    /// What it is, in words: "Reading the spreadsheet".
    pub title: String,
    shared: Arc<Shared>,
    result: Receiver<T>,
}

/// What came of looking after work.
#[derive(Debug, PartialEq, Eq)]
pub enum Outcome<T> {
    /// It runs.
    Running,
    /// It is done.
    Done(T),
    /// Its thread ended without a result.
    Lost,
}

impl<T: Send + 'static> Work<T> {
    /// Starts `job` on a thread. `wake` is called whenever there is something new to show.
    pub fn start(
        title: &str,
        wake: impl Fn() + Send + Sync + Clone + 'static,
        job: impl FnOnce(&Report) -> T + Send + 'static,
    ) -> Self {
        let shared = Arc::new(Shared::default());
        let (send, result) = channel();
        let report = Report {
            shared: shared.clone(),
            wake: Box::new(wake.clone()),
        };
        std::thread::spawn(move || {
            // The window may have gone meanwhile; then nobody waits for the result.
            let _ = send.send(job(&report));
            wake();
        });
        Self {
            title: title.to_owned(),
            shared,
            result,
        }
    }

    /// How far it is.
    pub fn progress(&self) -> Progress {
        Progress {
            done: self.shared.done.load(Ordering::Relaxed),
            of: self.shared.of.load(Ordering::Relaxed),
        }
    }

    /// Asks it to stop; it does at its next report.
    pub fn stop(&self) {
        self.shared.stop.store(true, Ordering::Relaxed);
    }

    /// Looks for its result, without waiting.
    pub fn poll(&self) -> Outcome<T> {
        match self.result.try_recv() {
            Ok(result) => Outcome::Done(result),
            Err(TryRecvError::Empty) => Outcome::Running,
            Err(TryRecvError::Disconnected) => Outcome::Lost,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wait<T: Send + 'static>(work: &Work<T>) -> Outcome<T> {
        loop {
            match work.poll() {
                Outcome::Running => std::thread::yield_now(),
                other => return other,
            }
        }
    }

    #[test]
    fn work_reports_and_ends_with_its_result() {
        let work = Work::start(
            "Counting",
            || {},
            |report| {
                (1..=3)
                    .filter(|done| report.at(Progress { done: *done, of: 3 }) == Go::On)
                    .count()
            },
        );
        assert_eq!(wait(&work), Outcome::Done(3));
        assert_eq!(work.progress(), Progress { done: 3, of: 3 });
    }

    #[test]
    fn work_that_is_told_to_stop_stops() {
        let work = Work::start(
            "Counting on",
            || {},
            |report| {
                let mut done = 0;
                while report.at(Progress { done, of: 0 }) == Go::On {
                    done += 1;
                }
                "stopped"
            },
        );
        work.stop();
        assert_eq!(wait(&work), Outcome::Done("stopped"));
    }
}
