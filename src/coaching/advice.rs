//! What is said: verdict and prescription. Plain values for screens, commands and sheets.

use chrono::NaiveDate;

use crate::units::{Added, Bodyweight, Rail, Reserve, SystemLoad, Typed};

use super::{CareNote, Finding};

/// The advice for one rail, in a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// Start on this rung.
    Begin,
    /// The same again.
    Repeat,
    /// A repetition or a few seconds more.
    AddReps,
    /// A heavier load.
    AddLoad,
    /// On to the next rung.
    StepUp,
    /// See what the best set is.
    Test,
    /// Lighter, or a set fewer.
    BackOff,
    /// Down to the rung below.
    StepBack,
    /// No work on this rung until the pain has settled.
    Pause,
    /// Weigh in; the load depends on it.
    WeighInFirst,
}

impl Verdict {
    /// Every verdict.
    pub const ALL: [Verdict; 10] = [
        Verdict::Begin,
        Verdict::Repeat,
        Verdict::AddReps,
        Verdict::AddLoad,
        Verdict::StepUp,
        Verdict::Test,
        Verdict::BackOff,
        Verdict::StepBack,
        Verdict::Pause,
        Verdict::WeighInFirst,
    ];

    /// The id that answers and files use.
    pub fn id(self) -> &'static str {
        match self {
            Verdict::Begin => "begin",
            Verdict::Repeat => "repeat",
            Verdict::AddReps => "add-reps",
            Verdict::AddLoad => "add-load",
            Verdict::StepUp => "step-up",
            Verdict::Test => "test",
            Verdict::BackOff => "back-off",
            Verdict::StepBack => "step-back",
            Verdict::Pause => "pause",
            Verdict::WeighInFirst => "weigh-in-first",
        }
    }

    /// Whether it asks for more than last time; caps turn such a verdict into [`Verdict::Repeat`].
    pub fn is_forward(self) -> bool {
        matches!(
            self,
            Verdict::StepUp | Verdict::AddLoad | Verdict::AddReps | Verdict::Test
        )
    }
}

/// The advice for one rail of one athlete.
#[derive(Debug, Clone, PartialEq)]
pub struct NextStep {
    /// The athlete's name.
    pub athlete: String,
    /// The ladder's id.
    pub ladder: String,
    /// The rail.
    pub rail: Rail,
    /// The rung that the rail stands on, or begins at.
    pub rung: String,
    /// The rung stepped to, at step-up and step-back only.
    pub next_rung: Option<String>,
    /// The verdict.
    pub verdict: Verdict,
    /// What follows a weigh-in; the verdict itself at all others.
    pub behind: Verdict,
    /// What to do; none at pause.
    pub prescription: Option<Prescription>,
    /// Why, the one that decided first.
    pub reasons: Vec<Finding>,
    /// What to mind.
    pub cautions: Vec<CareNote>,
    /// Days on which the standard was met, as counted for passing.
    pub passed_on: Vec<NaiveDate>,
    /// The first day on which the days between two sessions are kept, if that is after today.
    pub not_before: Option<NaiveDate>,
    /// Judged days since the standard was last met in this stay; all of the stay's where it never was.
    pub days_without_standard: usize,
    /// Chance of doing the prescription's lowest with the asked reserve in a fresh set, 0 to 1, once beliefs were asked
    /// ([`super::outlook::add`]) and there is one.
    pub chance: Option<f64>,
    /// Repetitions to expect of a fresh set to failure at the prescribed load, likewise.
    pub expected_reps: Option<f64>,
}

/// What to do today on one rail.
#[derive(Debug, Clone, PartialEq)]
pub struct Prescription {
    /// The rung it is for: the one stepped to at step-up and step-back.
    pub rung: String,
    /// The movement's id.
    pub movement: String,
    /// Sets.
    pub sets: u16,
    /// Reps or seconds.
    pub asked: Asked,
    /// Repetitions to keep in reserve.
    pub reserve: Option<Reserve>,
    /// Rest between sets, seconds, at least and at most.
    pub rest_secs: (u16, u16),
    /// Today's bodyweight, where a load is asked.
    pub bodyweight: Option<Bodyweight>,
    /// What to move, where a load is asked and can be named.
    pub load: Option<LoadToday>,
}

/// The range of reps or seconds that is asked of each set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asked {
    /// Repetitions: at least, at most (open at a test).
    Reps(f64, Option<f64>),
    /// Seconds: at least, at most.
    Hold(f64, Option<f64>),
}

impl Asked {
    /// The lower end.
    pub fn lo(self) -> f64 {
        match self {
            Asked::Reps(lo, _) | Asked::Hold(lo, _) => lo,
        }
    }

    /// The upper end; none where it is open.
    pub fn hi(self) -> Option<f64> {
        match self {
            Asked::Reps(_, hi) | Asked::Hold(_, hi) => hi,
        }
    }
}

/// A load that can be hung today.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadToday {
    /// All that is moved.
    pub system: SystemLoad,
    /// Today's bodyweight, as it was taken for this load.
    pub bodyweight: Bodyweight,
    /// On the belt; below zero it is help.
    pub added: Added,
    /// The plates that make it, heaviest first.
    pub plates: Vec<Typed>,
}
