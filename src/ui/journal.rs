//! What is asked of single records: look, amend, retract, restore.

use crate::logbook::exchange::Column;

/// Something to do with one record of the open athlete.
#[derive(Debug, Clone, PartialEq)]
pub enum JournalDeed {
    /// Shows this record in full; none puts it away.
    Show(Option<String>),
    /// Tries whether a record may say this, and writes nothing.
    Try(String, Vec<(Column, String)>),
    /// A new record: the fields that it has, its day among them.
    Add(Vec<(Column, String)>),
    /// Makes it say this: the fields that change.
    Amend(String, Vec<(Column, String)>),
    /// It no longer counts, and why.
    Retract(String, String),
    /// It counts again.
    Restore(String),
}

impl JournalDeed {
    /// Whether nothing is written by it.
    pub fn only_looks(&self) -> bool {
        matches!(self, Self::Show(_) | Self::Try(..))
    }
}
