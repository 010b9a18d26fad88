//! The ten verdicts as badges show them.

use serde::{Deserialize, Serialize};

/// What the next step of a rail is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Verdict {
    Begin,
    Repeat,
    AddReps,
    AddLoad,
    StepUp,
    Test,
    BackOff,
    StepBack,
    Pause,
    WeighInFirst,
}

impl Verdict {
    /// Every verdict.
    pub const ALL: [Verdict; 10] = [
        Verdict::Begin,
        Verdict::StepUp,
        Verdict::Test,
        Verdict::Repeat,
        Verdict::AddReps,
        Verdict::AddLoad,
        Verdict::BackOff,
        Verdict::StepBack,
        Verdict::Pause,
        Verdict::WeighInFirst,
    ];

    /// The word, as answers and screens write it.
    pub fn word(self) -> &'static str {
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
}
