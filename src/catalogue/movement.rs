//! A movement: what it lifts, how it is counted, what it loads, and when a repetition counts.

use serde::{Deserialize, Serialize};

use crate::units::{Measure, Share};

/// One movement. Serialises as it is written in `movements.ron`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Movement {
    /// Kebab-case name that files and commands use, for example `pull-up`.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// Direction of the force.
    pub pattern: Pattern,
    /// Whether left and right are trained apart.
    pub sides: Sides,
    /// What part of the body it lifts.
    pub share: BodyShare,
    /// Counted in repetitions or seconds.
    pub measure: Measure,
    /// Class for rest and warm-up.
    pub class: Class,
    /// Joints that it loads.
    pub joints: Vec<Joint>,
    /// Muscle groups that get a whole set from a set of it.
    pub direct: Vec<Muscle>,
    /// Muscle groups that get half a set from a set of it.
    #[serde(default)]
    pub indirect: Vec<Muscle>,
    /// When a repetition or a second counts, in a sentence.
    pub standard: String,
    /// Where share and standard come from.
    #[serde(default)]
    pub sources: Vec<String>,
}

impl Movement {
    /// The share for the plain form of this movement; none where no system load is defined.
    pub fn share(&self) -> Option<Share> {
        self.share.plain()
    }

    /// Whether a set of it belongs to one side.
    pub fn is_sided(&self) -> bool {
        self.sides == Sides::Apart
    }
}

/// The direction of force that a movement trains.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Pattern {
    VerticalPull,
    HorizontalPull,
    VerticalPush,
    HorizontalPush,
    StraightArmPull,
    StraightArmPush,
    Squat,
    Hinge,
    Core,
    Grip,
}

/// Whether both hands (or feet) work as one, or each side climbs apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Sides {
    /// Both work as one.
    Together,
    /// Left and right apart.
    Apart,
}

/// What part of the body a movement lifts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum BodyShare {
    /// All of it.
    Whole,
    /// A fixed fraction of it.
    Fraction(f64),
    /// A push-up's hand load; heights of hands and feet over the ground in cm, and whether the knees are the pivot.
    PushUp {
        /// Hands over the ground, cm.
        hands_cm: f64,
        /// Feet over the ground, cm.
        feet_cm: f64,
        /// Knees on the ground instead of feet.
        knees: bool,
    },
    /// A straight-arm lever: a moment, not a load.
    Lever,
    /// Nothing of the body: only outside load is moved.
    Outside,
    /// Not measured: no system load.
    Unknown,
}

/// Share of bodyweight in the hands at a flat push-up. Ebben 2011 and Mier 2014 measured 0.64 to 0.69 (references, body physics).
const FLAT_PUSH_UP: f64 = 0.64;

impl BodyShare {
    /// The share of the plain form, where a system load is defined.
    pub fn plain(self) -> Option<Share> {
        match self {
            BodyShare::Whole => Some(Share::WHOLE),
            BodyShare::Outside => Some(Share::OUTSIDE),
            BodyShare::Fraction(value) => Share::new(value).ok(),
            BodyShare::PushUp { .. } => Share::new(FLAT_PUSH_UP).ok(),
            BodyShare::Lever | BodyShare::Unknown => None,
        }
    }
}

/// Class for rest and warm-up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Class {
    /// Several joints, for strength: rest 180–300 s.
    Compound,
    /// Balance, straight arms or control: rest 120–240 s.
    Skill,
    /// One joint: rest 60–120 s.
    Isolation,
}

impl Class {
    /// Seconds of rest between sets, at least and at most. Over 2 min: Grgic et al., Sports Med 2018; the ranges are common
    /// practice, no source.
    pub fn rest_secs(self) -> (u16, u16) {
        match self {
            Class::Compound => (180, 300),
            Class::Skill => (120, 240),
            Class::Isolation => (60, 120),
        }
    }
}

/// A joint that a movement loads, and where pain can be reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Joint {
    Elbow,
    Shoulder,
    Wrist,
    Fingers,
    Knee,
    Hip,
    Ankle,
}

impl Joint {
    /// Every joint, in the order that screens list them.
    pub const ALL: [Joint; 7] = [
        Joint::Elbow,
        Joint::Shoulder,
        Joint::Wrist,
        Joint::Fingers,
        Joint::Knee,
        Joint::Hip,
        Joint::Ankle,
    ];

    /// The same place, as pain is reported there.
    pub fn site(self) -> Site {
        match self {
            Joint::Elbow => Site::Elbow,
            Joint::Shoulder => Site::Shoulder,
            Joint::Wrist => Site::Wrist,
            Joint::Fingers => Site::Fingers,
            Joint::Knee => Site::Knee,
            Joint::Hip => Site::Hip,
            Joint::Ankle => Site::Ankle,
        }
    }
}

/// Where pain can be reported: a joint, or the back, which counts for every movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Site {
    Elbow,
    Shoulder,
    Wrist,
    Fingers,
    Knee,
    Hip,
    Ankle,
    Back,
}

impl Site {
    /// Every site, in the order that messages list them.
    pub const ALL: [Site; 8] = [
        Site::Elbow,
        Site::Shoulder,
        Site::Wrist,
        Site::Fingers,
        Site::Knee,
        Site::Hip,
        Site::Ankle,
        Site::Back,
    ];

    /// The word that files, commands and screens use.
    pub fn word(self) -> &'static str {
        match self {
            Site::Elbow => "elbow",
            Site::Shoulder => "shoulder",
            Site::Wrist => "wrist",
            Site::Fingers => "fingers",
            Site::Knee => "knee",
            Site::Hip => "hip",
            Site::Ankle => "ankle",
            Site::Back => "back",
        }
    }

    /// The joint; none for the back.
    pub fn joint(self) -> Option<Joint> {
        match self {
            Site::Elbow => Some(Joint::Elbow),
            Site::Shoulder => Some(Joint::Shoulder),
            Site::Wrist => Some(Joint::Wrist),
            Site::Fingers => Some(Joint::Fingers),
            Site::Knee => Some(Joint::Knee),
            Site::Hip => Some(Joint::Hip),
            Site::Ankle => Some(Joint::Ankle),
            Site::Back => None,
        }
    }
}

/// A muscle group that sets are counted for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[allow(missing_docs)]
pub enum Muscle {
    Lats,
    UpperBack,
    Biceps,
    Forearms,
    Chest,
    Triceps,
    FrontDelts,
    SideDelts,
    RearDelts,
    Abs,
    Erectors,
    Quads,
    Glutes,
    Hamstrings,
    Adductors,
    Calves,
}

impl Muscle {
    /// Every group, from the back over the chest and shoulders to the legs: the order that people read.
    pub const ALL: [Muscle; 16] = [
        Muscle::Lats,
        Muscle::UpperBack,
        Muscle::Biceps,
        Muscle::Forearms,
        Muscle::Chest,
        Muscle::Triceps,
        Muscle::FrontDelts,
        Muscle::SideDelts,
        Muscle::RearDelts,
        Muscle::Abs,
        Muscle::Erectors,
        Muscle::Quads,
        Muscle::Glutes,
        Muscle::Hamstrings,
        Muscle::Adductors,
        Muscle::Calves,
    ];

    /// The id that answers use.
    pub fn id(self) -> &'static str {
        match self {
            Muscle::Lats => "lats",
            Muscle::UpperBack => "upper-back",
            Muscle::Biceps => "biceps",
            Muscle::Forearms => "forearms",
            Muscle::Chest => "chest",
            Muscle::Triceps => "triceps",
            Muscle::FrontDelts => "front-delts",
            Muscle::SideDelts => "side-delts",
            Muscle::RearDelts => "rear-delts",
            Muscle::Abs => "abs",
            Muscle::Erectors => "erectors",
            Muscle::Quads => "quads",
            Muscle::Glutes => "glutes",
            Muscle::Hamstrings => "hamstrings",
            Muscle::Adductors => "adductors",
            Muscle::Calves => "calves",
        }
    }

    /// The name on screen.
    pub fn title(self) -> &'static str {
        match self {
            Muscle::Lats => "Lats",
            Muscle::UpperBack => "Upper back",
            Muscle::Biceps => "Biceps",
            Muscle::Forearms => "Forearms",
            Muscle::Chest => "Chest",
            Muscle::Triceps => "Triceps",
            Muscle::FrontDelts => "Front shoulder",
            Muscle::SideDelts => "Side shoulder",
            Muscle::RearDelts => "Rear shoulder",
            Muscle::Abs => "Abs",
            Muscle::Erectors => "Back extensors",
            Muscle::Quads => "Front thigh",
            Muscle::Glutes => "Glutes",
            Muscle::Hamstrings => "Hamstrings",
            Muscle::Adductors => "Inner thigh",
            Muscle::Calves => "Calves",
        }
    }
}
