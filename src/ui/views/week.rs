//! Week, as it is drawn: sets, ranges and days already counted, everything else in words.

use crate::units::Rail;

use super::Phrase;

/// The place Week for one athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeekView {
    /// How many weeks before this one it is.
    pub back: u32,
    /// Nothing was ever logged.
    pub is_empty: bool,
    /// `Mon 23 – Sun 29 Nov 2026`.
    pub span: String,
    /// `2026-W48`.
    pub name: String,
    /// `23 hard sets`.
    pub hard: String,
    /// What counts as hard.
    pub what_is_hard: String,
    /// Seven days, Monday first.
    pub days: Vec<DayView>,
    /// Every muscle group.
    pub groups: Vec<GroupView>,
    /// What the week lacks, and where ranges come from.
    pub note: Phrase,
    /// Joints that were loaded in the week.
    pub joints: Vec<JointView>,
    /// Joints loaded on following days, each a caution.
    pub close: Vec<Phrase>,
    /// What still rests: which joint, until when, and how that came about.
    pub resting: Vec<(String, String, String)>,
    /// Deference, under the joints.
    pub care: &'static str,
    /// Today's session from a budget of sets.
    pub session: SessionView,
}

/// Where a day lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayIs {
    /// Before today.
    Past,
    /// Today.
    Today,
    /// After today.
    Ahead,
}

/// One day of the week.
#[derive(Debug, Clone, PartialEq)]
pub struct DayView {
    /// `Mon`.
    pub weekday: String,
    /// `23`.
    pub number: String,
    /// Where it lies.
    pub is: DayIs,
    /// `14 sets`; none on a day without.
    pub sets: Option<String>,
    /// What was trained; `rest` or `open` on a day without.
    pub what: String,
    /// The whole day in a sentence.
    pub how: String,
}

/// Where a group lies against its range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Nothing trained it.
    Unsaid,
    /// Fewer sets than the range, in a week that goes on.
    SoFar,
    /// Fewer sets than the range.
    Below,
    /// Within.
    Within,
    /// More.
    Above,
}

/// One muscle group.
#[derive(Debug, Clone, PartialEq)]
pub struct GroupView {
    /// `Lats`.
    pub title: &'static str,
    /// Sets that count whole.
    pub direct: f64,
    /// What the others add.
    pub indirect: f64,
    /// The range.
    pub range: (f64, f64),
    /// `13`.
    pub sets: String,
    /// `2 below`, `within`.
    pub status: String,
    /// The same, for its look.
    pub standing: Standing,
    /// How the number came about, and from which sets.
    pub how: String,
}

/// One joint, of one side or of both where they are alike.
#[derive(Debug, Clone, PartialEq)]
pub struct JointView {
    /// `Elbow`; empty where the row above says it.
    pub title: String,
    /// The side; both where left and right are alike.
    pub rail: Rail,
    /// Hard sets of each day, Monday first.
    pub beads: Vec<u32>,
    /// Days that are too near each other, each as two days of the week; −1 is before Monday.
    pub links: Vec<(i8, i8)>,
    /// `3 days running`.
    pub running: Option<String>,
    /// The whole row in a sentence.
    pub how: String,
}

/// Today's session from a budget of sets.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SessionView {
    /// The budget.
    pub budget: u16,
    /// What came of it, in a sentence.
    pub head: String,
    /// What to do, in order.
    pub blocks: Vec<SessionBlock>,
    /// What is not done today, a sentence each.
    pub left_out: Vec<String>,
}

/// Work on one ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionBlock {
    /// `One-arm pull-up: Two fingers help`.
    pub title: String,
    /// What each hand does.
    pub parts: Vec<(Rail, String)>,
    /// Why it is here, a sentence each.
    pub why: Vec<String>,
    /// The warm-up before it.
    pub warm_up: Vec<String>,
}
