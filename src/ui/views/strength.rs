//! Strength over time, as it is plotted: everything already in the athlete's unit, days counted from the plotted day.

use crate::units::Rail;

/// Strength over time of one movement and side.
#[derive(Debug, Clone, PartialEq)]
pub struct StrengthView {
    /// `Pull-up`, `One-arm pull-up, left`.
    pub title: String,
    /// Whose it is; both where both hands work as one.
    pub rail: Rail,
    /// The unit's sign.
    pub unit: String,
    /// Belief, range and heading in words.
    pub words: Vec<String>,
    /// How the estimate came about, and from which sets: for hover and focus.
    pub how: String,
    /// What is shaded, in sentences: spans without training, phases.
    pub spans: Vec<String>,
    /// Points in order of time.
    pub days: Vec<StrengthDay>,
    /// Sets as dots.
    pub sets: Vec<StrengthDot>,
    /// Spans without training: first and last day.
    pub layoffs: Vec<(f64, f64)>,
    /// Phases: first and last day, and the word.
    pub phases: Vec<(f64, f64, &'static str)>,
    /// Bodyweight of each weigh-in day.
    pub bodyweight: Vec<(f64, f64)>,
    /// Sets that look like typos.
    pub suspects: Vec<SuspectView>,
    /// The plotted day as a count from the common era, to name days of the axis.
    pub today: i32,
}

/// The belief on one day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrengthDay {
    /// Days from today, 0 or below.
    pub day: f64,
    /// The one-rep max.
    pub middle: f64,
    /// Bands of 50, 80 and 95 %.
    pub bands: [(f64, f64); 3],
}

/// A set as a dot.
#[derive(Debug, Clone, PartialEq)]
pub struct StrengthDot {
    /// Days from today.
    pub day: f64,
    /// The one-rep max that it stands for.
    pub shows: f64,
    /// `354 kg`, where it lies too far off to be drawn at its place.
    pub beyond: Option<String>,
    /// How it looks.
    pub kind: DotKind,
    /// `Mon 16 Mar 2026: +20 kg × 5, 1 in reserve; stands for 96.4 kg in all`, for whoever walks the sets.
    pub words: String,
}

/// How a dot looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DotKind {
    /// A single: its own load.
    Single,
    /// From repetitions.
    FromReps,
    /// One more was tried and failed.
    Missed,
    /// Looks like a typo.
    Suspect,
}

/// A set that looks like a typo, and what its key would write instead.
#[derive(Debug, Clone, PartialEq)]
pub struct SuspectView {
    /// The record's id.
    pub id: String,
    /// `Thu 12 Mar: looks like a typo, probability 0.97; +25 kg × 5 would fit`.
    pub words: String,
    /// What the button says, where something fits better: `Make it +25 kg × 5`.
    pub mend: Option<String>,
}
