//! A ladder: rungs from the first easy variation to a goal skill, with one main line and branches beside it.

use serde::{Deserialize, Serialize};

use crate::units::{Demand, Reps, Reserve, Seconds};

use super::{Class, Sides};

/// One ladder, checked: ids resolve, the main line is in order, every standard can be met by its work.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    /// Kebab-case name.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// What the last rung of the main line means, in a sentence.
    pub goal: String,
    /// Whether left and right climb apart.
    pub sides: Sides,
    /// Where the order and the work come from.
    pub sources: Vec<String>,
    /// Cautions in words for the ladder as a whole.
    pub cautions: Vec<String>,
    /// Rungs: the main line from the ground up, then the branches.
    pub rungs: Vec<Rung>,
}

impl Ladder {
    /// The rung with this id.
    pub fn rung(&self, id: &str) -> Option<&Rung> {
        self.rungs.iter().find(|rung| rung.id == id)
    }

    /// The main line, from the ground up.
    pub fn main_line(&self) -> impl DoubleEndedIterator<Item = &Rung> {
        self.rungs.iter().filter(|rung| rung.way == Way::Main)
    }

    /// Whether each side has a rail of its own.
    pub fn is_sided(&self) -> bool {
        self.sides == Sides::Apart
    }
}

/// One step of a ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// Kebab-case name, unique in its ladder.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// The movement's id.
    pub movement: String,
    /// What makes it easier or heavier than the plain movement.
    pub help: Help,
    /// What must be logged before it is tried, beside the rung below.
    pub entry: Vec<Entry>,
    /// The work asked each time.
    pub work: Work,
    /// What must be logged to have passed it.
    pub standard: Standard,
    /// Assistance work beside the main line.
    pub companions: Vec<Companion>,
    /// Main line, or a branch beside it.
    pub way: Way,
    /// Demand stated in the file; none where it is computed.
    pub demand: Option<Given>,
    /// Cautions by kind; they also set spacing and tendon time.
    pub cautions: Vec<Caution>,
    /// The rung to fall back to, where it isn't the one below (main line) or the one it leaves (branch).
    pub fall_back: Option<String>,
}

/// Where a rung stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Way {
    /// On the main line.
    Main,
    /// Beside it: leaves the main line at `from`, joins it at `to`.
    Branch {
        /// The main rung it leaves.
        from: String,
        /// The main rung it leads to.
        to: String,
    },
}

/// What makes a rung easier or heavier than its plain movement.
///
/// Two sets are of one *form* when movement and help agree; [`Help::Added`], [`Help::Plain`] and a set without rung are plain.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Help {
    /// Belt load, or measured help (counterweight): the load decides.
    Added,
    /// The movement as it is; reps or seconds decide.
    Plain,
    /// So many fingers of the free hand help.
    FingerHelp(u8),
    /// A band helps, as the athlete has measured it.
    Band,
    /// Only the way down.
    Negative,
    /// A body shape that changes the leverage.
    Shape(Shape),
    /// Hands on a box so high, cm.
    HandsRaised(u16),
    /// Feet on a box so high, cm.
    FeetRaised(u16),
    /// Down to a box so high, cm.
    Box(u16),
    /// The body leans back so many degrees from upright, on straps or under a bar.
    Lean(u16),
    /// A wall steadies.
    Wall,
    /// Half the way only.
    HalfRange,
    /// Another variation, in the ladder's own words.
    Variation(String),
}

/// A body shape, from the smallest to the longest lever.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Shape {
    /// Knees to the chest, back rounded.
    Tuck,
    /// Hips and knees at 90°, back flat.
    AdvancedTuck,
    /// One leg straight, the other tucked, back flat.
    OneLeg,
    /// Legs straight, apart.
    Straddle,
    /// Legs straight and level.
    Level,
}

/// Something that must have been logged: so much of a movement, at a ratio of system load to bodyweight if one is asked.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The movement's id.
    pub movement: String,
    /// At least so much in one set.
    pub at_least: Amount,
    /// At least this system load ÷ bodyweight.
    pub ratio: Option<f64>,
}

/// Repetitions or seconds that a file asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// Repetitions.
    Reps(Reps),
    /// Seconds.
    Seconds(Seconds),
}

impl Amount {
    /// The plain number, for comparing with [`crate::units::Effort::amount`].
    pub fn value(self) -> f64 {
        match self {
            Amount::Reps(reps) => f64::from(reps.count()),
            Amount::Seconds(seconds) => seconds.value(),
        }
    }
}

/// A range of repetitions or of whole seconds, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Range {
    /// Repetitions.
    Reps(u16, u16),
    /// Seconds.
    Hold(u16, u16),
}

impl Range {
    /// Lower end.
    pub fn lo(self) -> f64 {
        match self {
            Range::Reps(lo, _) | Range::Hold(lo, _) => f64::from(lo),
        }
    }

    /// Upper end.
    pub fn hi(self) -> f64 {
        match self {
            Range::Reps(_, hi) | Range::Hold(_, hi) => f64::from(hi),
        }
    }

    /// Whether it is seconds.
    pub fn is_hold(self) -> bool {
        matches!(self, Range::Hold(..))
    }
}

/// The work a rung asks each time it is trained.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// Sets, at least 1.
    pub sets: u16,
    /// Range of reps or seconds of each set.
    pub range: Range,
    /// Repetitions in reserve that are asked; none on holds and where none is asked.
    pub reserve: Option<Reserve>,
    /// Seconds of rest between sets; by the movement's class when the file is silent.
    pub rest_secs: (u16, u16),
    /// Days a week.
    pub exposures_a_week: u8,
}

impl Work {
    /// Rest by class, for a file that is silent.
    pub fn rest_by(class: Class) -> (u16, u16) {
        class.rest_secs()
    }
}

/// What must be logged to have passed a rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Standard {
    /// So many sets on one day.
    pub sets: u16,
    /// Each of so many reps or seconds.
    pub reach: f64,
    /// Each at this system load ÷ bodyweight or more.
    pub ratio: Option<f64>,
    /// On so many days.
    pub days: u8,
    /// The first and the last of them so many days apart.
    pub days_apart: u8,
    /// Both sides within so many reps (or seconds) of each other.
    pub side_gap: f64,
}

/// Assistance work beside the main line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Companion {
    /// The movement's id.
    pub movement: String,
    /// What for, in a few words.
    pub why: String,
}

/// A demand stated in a file, with what it rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Given {
    /// The demand, 1.00 = the goal.
    pub demand: Demand,
    /// Source or status.
    pub source: String,
}

/// Kinds of caution that a rung carries; some also set spacing and the least time on the rung.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Caution {
    /// Check the band; it can snap, and it helps little at the top.
    Band,
    /// Lowering work: sore muscles and tendons need more days.
    Eccentric,
    /// Shoulder near its limits.
    Shoulder,
    /// Elbow tendons near their limits.
    Elbow,
    /// Grip and fingers.
    Grip,
    /// Wrists.
    Wrist,
    /// Knees.
    Knee,
    /// Palms toward the face under high load: the biceps tendon at the elbow.
    Supinated,
    /// Straight-arm work: the elbow in over-extension.
    StraightArm,
    /// Belt, chain and plates.
    Belt,
    /// Head toward the floor.
    Head,
}

impl Caution {
    /// The id that answers and files use.
    pub fn id(self) -> &'static str {
        match self {
            Caution::Band => "band",
            Caution::Eccentric => "eccentric",
            Caution::Shoulder => "shoulder",
            Caution::Elbow => "elbow",
            Caution::Grip => "grip",
            Caution::Wrist => "wrist",
            Caution::Knee => "knee",
            Caution::Supinated => "supinated",
            Caution::StraightArm => "straight-arm",
            Caution::Belt => "belt",
            Caution::Head => "head",
        }
    }
}
