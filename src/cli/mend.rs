//! What `amend`, `retract` and `restore` share: finding a record by its id, and saying something about it.

use std::path::PathBuf;

use crate::catalogue::Catalogue;
use crate::clock;
use crate::logbook::writer::LOCK_WAIT;
use crate::logbook::{Fact, Holder, Id, Logbook, Machine, Record, Target, Writer};
use crate::problem::quoted;

use super::{Answer, Failed, log, reading};

/// A record under the lock.
pub struct Mending {
    /// The record and whose it is.
    pub target: Target,
    /// The logbook as it is under the lock, with the record's athlete alone.
    pub book: Logbook,
    /// The movements and ladders in force.
    pub catalogue: Catalogue,
    writer: Writer,
}

/// An id as typed.
///
/// # Errors
/// When it can't be one.
pub fn id(text: &str) -> Result<Id, Failed> {
    // Reading takes 26 letters whose value doesn't fit, too; they aren't what it writes.
    Id::from_string(text)
        .ok()
        .filter(|id| id.to_string().eq_ignore_ascii_case(text))
        .ok_or_else(|| {
            let text = quoted(text);
            Failed::Usage(format!(
                "{text} is no id; ids have 26 letters and digits, as log and export print them"
            ))
        })
}

impl Mending {
    /// Takes the lock and finds the record.
    ///
    /// # Errors
    /// When there is no logbook, or no record has this id.
    pub fn open(logbook: Option<&PathBuf>, id: Id) -> Result<Self, Failed> {
        let machine = Machine::this()?;
        let device = reading::device(&machine)?;
        let root = reading::root(&machine, logbook);
        // Locking would make a logbook that isn't there; here that is a slip.
        Logbook::open_without_athletes(&machine, &root)?;
        let now = clock::now().to_utc();
        let (writer, notes) = Writer::lock(&machine, &root, device, now, LOCK_WAIT)?;
        reading::report(&notes);
        let Some(found) = writer.holder(id)? else {
            // It may be in what can't be read.
            reading::report(&writer.read()?.1);
            return Err(Failed::Problem(format!(
                "no record has the id {id}; export lists them all"
            )));
        };
        let Holder {
            target,
            book,
            problems,
        } = found;
        reading::report(&problems);
        let (catalogue, _) = book.catalogue();
        Ok(Self {
            target,
            book,
            catalogue,
            writer,
        })
    }

    /// The device that writes.
    pub fn device(&self) -> &str {
        self.writer.device()
    }

    /// Saves a change of the record.
    ///
    /// # Errors
    /// When it is not saved.
    pub fn save(mut self, change: Fact) -> Result<Answer, Failed> {
        let at = log::now();
        let log = self.book.logs.iter().find(|log| log.folder == self.target.folder);
        let record = Record {
            id: clock::fresh_id(),
            rev: self.book.highest_rev().saturating_add(1),
            dev: self.writer.device().to_owned(),
            nth: log.map_or(0, |log| log.count_on(at.date())),
            at,
            what: change,
        };
        self.writer.change(&self.target, record)?;
        Ok(Answer::plain(format!("saved {}\n", self.target.record.id)))
    }
}
