//! Weigh-ins: bodyweight over time, its trend, the phase, what to mind. Masses in the logbook's unit, days from today.

use crate::logbook::exchange::Column;

use super::JournalView;

/// Weigh-ins of the open athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeighInsView {
    /// The records behind it, as the journal shows them: newest first, only those with a bodyweight.
    pub journal: JournalView,
    /// The unit's sign.
    pub unit: &'static str,
    /// The day that is shown, as days from the common era.
    pub today: i32,
    /// The same as `2026-03-18`.
    pub day: String,
    /// Each weigh-in day: days from today, the mean, and whether it looks like a slip.
    pub days: Vec<(f64, f64, bool)>,
    /// The straight line of the last weeks: its first day and value, its last day and value.
    pub line: Option<[(f64, f64); 2]>,
    /// Phases: first and last day, and the word.
    pub phases: Vec<(f64, f64, &'static str)>,
    /// Numbers beside the plot: what, the value, and how it came about.
    pub numbers: Vec<(&'static str, String, String)>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// Phases that may be set: the word for the record, its title, what it means.
    pub may_set: Vec<(&'static str, &'static str, &'static str)>,
    /// What a new weigh-in is refused for.
    pub refused: Vec<(Option<Column>, String)>,
}
