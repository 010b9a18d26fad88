//! A ladder as its file writes it: plain numbers and optional fields, nothing checked yet.
//!
//! What a file leaves out has a default, filled in by [`super::build`]: the standard is all sets at the top of the range, on 2
//! days 2 apart, both sides within 1 repetition or 2 seconds; rest goes by the movement's class; 2 days a week.

use serde::{Deserialize, Serialize};

use crate::catalogue::{Caution, Companion, Help, Range, Sides};

/// A ladder's file, or its head alone where `R` is not a rung.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "Ladder", deny_unknown_fields)]
pub(in crate::catalogue) struct RawLadder<R = RawRung> {
    pub id: String,
    pub title: String,
    pub goal: String,
    pub sides: Sides,
    #[serde(default)]
    pub sources: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<String>,
    pub rungs: Vec<R>,
}

/// A rung as written.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "Rung", deny_unknown_fields)]
pub(in crate::catalogue) struct RawRung {
    pub id: String,
    pub title: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub branch: Option<RawBranch>,
    pub movement: String,
    #[serde(default = "plain", skip_serializing_if = "is_plain")]
    pub help: Help,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub entry: Vec<RawEntry>,
    pub work: RawWork,
    #[serde(default, skip_serializing_if = "RawStandard::is_silent")]
    pub standard: RawStandard,
    /// The demand and its source.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub demand: Option<(f64, String)>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Caution>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub companions: Vec<Companion>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fall_back: Option<String>,
}

/// Where a branch leaves the main line and where it leads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "Branch", deny_unknown_fields)]
pub(in crate::catalogue) struct RawBranch {
    pub from: String,
    pub to: String,
}

/// What must have been logged before a rung is tried: `reps` or `seconds` of a movement.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "Entry", deny_unknown_fields)]
pub(in crate::catalogue) struct RawEntry {
    pub movement: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reps: Option<u16>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seconds: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ratio: Option<f64>,
}

/// The work as written.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename = "Work", deny_unknown_fields)]
pub(in crate::catalogue) struct RawWork {
    pub sets: u16,
    pub range: Range,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reserve: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rest_secs: Option<(u16, u16)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exposures_a_week: Option<u8>,
}

/// The standard as written.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(rename = "Standard", deny_unknown_fields, default)]
pub(in crate::catalogue) struct RawStandard {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sets: Option<u16>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reach: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<u8>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_apart: Option<u8>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub side_gap: Option<f64>,
}

impl RawStandard {
    fn is_silent(&self) -> bool {
        *self == Self::default()
    }
}

fn plain() -> Help {
    Help::Plain
}

fn is_plain(help: &Help) -> bool {
    *help == Help::Plain
}
