//! Journal: every record of the open athlete, and one of them in full.

use std::sync::Arc;

use crate::logbook::exchange::Column;
use crate::units::Rail;

/// Every record of the open athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct JournalView {
    /// The athlete's name.
    pub name: String,
    /// All of them, newest first; retracted ones too.
    pub lines: Arc<Vec<JournalLine>>,
    /// What a newer version wrote and is kept: where it lies and what it is.
    pub kept: Vec<String>,
    /// The record that is looked at.
    pub open: Option<RecordView>,
    /// Why nothing can be written now.
    pub read_only: Option<String>,
}

/// One record in a line.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct JournalLine {
    /// Its id.
    pub id: String,
    /// `Wed 18 Mar 2026`.
    pub day: String,
    /// `18:42`; empty where only the day is known.
    pub time: String,
    /// `Set`, `Weigh-in`, …
    pub kind: &'static str,
    /// Its side.
    pub rail: Option<Rail>,
    /// What it is about.
    pub what: String,
    /// What came of it.
    pub result: String,
    /// Its remark.
    pub note: String,
    /// It no longer counts.
    pub retracted: bool,
    /// It says something else than at first.
    pub amended: bool,
    /// Why it counts in no estimate, if it looks like a slip.
    pub odd: Option<&'static str>,
    /// All of it in small letters, for the filter.
    pub says: String,
}

/// One record in full.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RecordView {
    /// Its id.
    pub id: String,
    /// `Set · Wed 18 Mar 2026`.
    pub title: String,
    /// What it says, as written: what, and the value.
    pub says: Vec<(&'static str, String)>,
    /// What it counts as: what, the value, and how that came about.
    pub counts: Vec<(&'static str, String, String)>,
    /// That it is retracted, looks like a slip, or is not counted yet.
    pub marks: Vec<String>,
    /// What it said before, oldest first: when and by which device that was replaced or first written, and all it said.
    pub before: Vec<(String, String)>,
    /// Id, revision, device, time as written.
    pub written: Vec<(&'static str, String)>,
    /// It no longer counts.
    pub retracted: bool,
    /// What can be amended.
    pub fields: Vec<FieldView>,
    /// What the values typed last are refused for: beside a field, or about the whole.
    pub refused: Vec<(Option<Column>, String)>,
}

/// A field of a record that can be amended.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldView {
    /// Which. Masses of either unit stand in the kilogram's column, a profile's name in the athlete's.
    pub column: Column,
    /// Its label, with its unit.
    pub label: &'static str,
    /// What it says now.
    pub value: String,
    /// What it may be: value and title, and for a rung the ladder that it stands on. Empty where it is typed.
    pub choices: Arc<Vec<Choice>>,
}

/// A value of a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// The value.
    pub value: String,
    /// Its title.
    pub title: String,
    /// The ladder that it stands on, for a rung.
    pub of: Option<String>,
}
