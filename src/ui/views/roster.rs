//! Everyone, sorted by need.

use crate::units::Rail;

pub use crate::coaching::roster::Need;

use super::Verdict;

/// The roster.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RosterView {
    /// Lines in order of need, then name.
    pub lines: Vec<RosterLine>,
}

/// One athlete.
#[derive(Debug, Clone, PartialEq)]
pub struct RosterLine {
    /// The athlete's key for choosing.
    pub athlete: String,
    /// Name on screen.
    pub name: String,
    /// What they need most.
    pub need: Need,
    /// The lying glyph; none without a ladder.
    pub glyph: Option<LyingView>,
    /// The ladder's title.
    pub ladder: String,
    /// Rungs in words: `L One finger, R Two fingers`.
    pub rung: String,
    /// Verdicts a rail.
    pub verdicts: Vec<(Rail, Verdict)>,
    /// Bodyweight with its unit.
    pub weighs: String,
    /// Days since the last weigh-in, in words: `today`, `3 d`.
    pub weighed_ago: String,
    /// Whether that is too long.
    pub weigh_in_is_old: bool,
    /// Pain in words.
    pub pain: Option<String>,
    /// Whether it hurts enough to matter.
    pub pain_matters: bool,
    /// When the last set was.
    pub last_set: String,
    /// Why they need it: one line a rail.
    pub why: Vec<(Rail, String)>,
}

/// The ladder lying on its side: how far each rail is, 0 to 1 of the way to the top, and where rungs and goal are.
#[derive(Debug, Clone, PartialEq)]
pub struct LyingView {
    /// One position, or left and right.
    pub hands: Vec<(Rail, f32)>,
    /// Rungs, 0 to 1.
    pub ticks: Vec<f32>,
    /// The goal, 0 to 1.
    pub goal: f32,
}
