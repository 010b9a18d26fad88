//! The cast: twelve invented people, each there to show something.

use crate::catalogue::Site;
use crate::logbook::record::{PhaseKind, Sex};
use crate::units::{Side, Unit};

use super::life::Habit;

/// A ladder that somebody climbs all year by the advice: id, strength (or level) of left and right at first, growth a year.
pub type Climb = (&'static str, (f64, f64), f64);

/// Work that the coach gave of late: a rung, and how strong left and right are beside what it asks (1.0 just meets it).
pub type Work = (&'static str, &'static str, (f64, f64));

/// New work, in place of what was climbed before.
#[derive(Debug, Clone, PartialEq)]
pub struct Block {
    /// How many days ago it began.
    pub days_ago: u64,
    /// The work.
    pub work: Vec<Work>,
}

/// Somebody in the demo gym.
#[derive(Debug, Clone)]
pub struct Member {
    /// Name on screen.
    pub name: String,
    /// Age in whole years.
    pub age: u32,
    /// Sex, if told.
    pub sex: Option<Sex>,
    /// Height, if told, cm.
    pub height_cm: Option<f64>,
    /// Bodyweight a year ago and now, kg.
    pub weights: (f64, f64),
    /// The unit that they type in.
    pub unit: Unit,
    /// What they log of reserve.
    pub habit: Habit,
    /// When they step on the scale.
    pub scale: Scale,
    /// A phase, and how many days ago it began.
    pub phase: Option<(PhaseKind, u64)>,
    /// What they climb by the advice: all year, or until the block.
    pub climbs: Vec<Climb>,
    /// What they do since.
    pub block: Option<Block>,
    /// The last weeks on one more ladder, day by day.
    pub script: Vec<Scene>,
}

/// When somebody weighs in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Once a week.
    Weekly,
    /// Once a week, until three weeks ago.
    Lapsed,
    /// Never.
    Never,
}

/// One thing on one day of the last weeks.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// How many days ago.
    pub days_ago: u64,
    /// What.
    pub act: Act,
}

/// What happens in a scene.
#[derive(Debug, Clone, PartialEq)]
pub enum Act {
    /// Joins a ladder; the rules name the rung.
    Joins(&'static str),
    /// Is placed on a rung by the coach.
    Placed(&'static str, &'static str),
    /// A session.
    Session(Session),
    /// A report of pain.
    Hurts(Site, Option<Side>, u8),
    /// A remark.
    Says(&'static str),
}

/// Sets of one session on one rung.
#[derive(Debug, Clone, PartialEq)]
pub struct Session {
    /// Ladder and rung.
    pub rung: (&'static str, &'static str),
    /// The side, on a sided ladder.
    pub side: Option<Side>,
    /// System load ÷ bodyweight, where a belt hangs.
    pub ratio: Option<f64>,
    /// Reps or seconds of each set.
    pub amounts: Vec<f64>,
    /// What was left.
    pub left: Option<f64>,
    /// The last so many sets failed.
    pub missed: usize,
}

pub(super) fn at(days_ago: u64, act: Act) -> Scene {
    Scene { days_ago, act }
}

pub(super) fn session(
    days_ago: u64,
    rung: (&'static str, &'static str),
    ratio: Option<f64>,
    amounts: &[f64],
    left: Option<f64>,
    missed: usize,
) -> Scene {
    at(
        days_ago,
        Act::Session(Session {
            rung,
            side: None,
            ratio,
            amounts: amounts.to_vec(),
            left,
            missed,
        }),
    )
}

pub(super) fn member(name: &str, age: u32, sex: Sex, height_cm: f64, weights: (f64, f64)) -> Member {
    Member {
        name: name.to_owned(),
        age,
        sex: Some(sex),
        height_cm: Some(height_cm),
        weights,
        unit: Unit::Kg,
        habit: Habit::LogsReserve,
        scale: Scale::Weekly,
        phase: None,
        climbs: Vec::new(),
        block: None,
        script: Vec::new(),
    }
}

fn block(days_ago: u64, work: &[Work]) -> Block {
    Block {
        days_ago,
        work: work.to_vec(),
    }
}

/// The twelve.
pub fn twelve() -> Vec<Member> {
    vec![
        one_arm_goal(),
        adds_load(),
        adds_reps_in_pounds(),
        passes_a_hold(),
        is_due_a_test(),
        backs_off(),
        steps_back(),
        hurts(),
        begins(),
        never_weighs(),
        is_a_minor(),
        mistypes_and_has_an_own_ladder(),
    ]
}

fn one_arm_goal() -> Member {
    let sides = |days_ago: u64, reps: [f64; 4]| {
        [Side::Left, Side::Right].map(|side| {
            at(
                days_ago,
                Act::Session(Session {
                    rung: ("one-arm-pull-up", "fingers-2"),
                    side: Some(side),
                    ratio: None,
                    amounts: reps.to_vec(),
                    left: Some(1.0),
                    missed: 0,
                }),
            )
        })
    };
    let placed = at(30, Act::Placed("one-arm-pull-up", "fingers-2"));
    let sessions = [
        sides(24, [3.0, 3.0, 2.0, 2.0]),
        sides(16, [4.0, 3.0, 3.0, 3.0]),
        sides(9, [4.0, 4.0, 4.0, 4.0]),
        sides(4, [4.0, 4.0, 4.0, 4.0]),
    ];
    Member {
        climbs: vec![("weighted-pull-up", (1.50, 1.50), 0.10)],
        block: Some(block(15, &[("weighted-dip", "plus-50", (0.98, 0.98))])),
        phase: Some((PhaseKind::Cut, 60)),
        script: std::iter::once(placed)
            .chain(sessions.into_iter().flatten())
            .collect(),
        ..member("Ilka Brandvold", 29, Sex::Female, 168.0, (64.0, 60.5))
    }
}

fn adds_load() -> Member {
    let rung = ("weighted-dip", "plus-75");
    Member {
        climbs: vec![("weighted-pull-up", (1.42, 1.42), 0.14)],
        block: Some(block(15, &[("muscle-up", "high-pull", (0.98, 0.98))])),
        phase: Some((PhaseKind::Gain, 120)),
        script: vec![
            at(24, Act::Placed("weighted-dip", "plus-75")),
            session(20, rung, Some(1.5), &[3.0, 3.0, 3.0, 3.0], Some(2.0), 0),
            session(16, rung, Some(1.5), &[4.0, 4.0, 3.0, 3.0], Some(1.0), 0),
            session(12, rung, Some(1.5), &[4.0, 4.0, 4.0, 4.0], Some(1.0), 0),
            session(8, rung, Some(1.5), &[5.0, 5.0, 4.0, 4.0], Some(1.0), 0),
            session(4, rung, Some(1.5), &[5.0, 5.0, 5.0, 5.0], Some(1.0), 0),
        ],
        ..member("Tarek Osei", 33, Sex::Male, 178.0, (74.0, 79.0))
    }
}

fn adds_reps_in_pounds() -> Member {
    let rung = ("weighted-pull-up", "plus-25");
    Member {
        unit: Unit::Lb,
        climbs: vec![("pistol-squat", (0.75, 0.72), 0.15)],
        block: Some(block(14, &[("one-arm-push-up", "hands-60", (0.98, 0.97))])),
        script: vec![
            at(18, Act::Placed("weighted-pull-up", "plus-25")),
            session(14, rung, Some(1.16), &[4.0, 4.0, 4.0], Some(2.0), 0),
            session(10, rung, Some(1.16), &[5.0, 4.0, 4.0], Some(1.0), 0),
            session(3, rung, Some(1.16), &[5.0, 5.0, 5.0], Some(1.0), 0),
        ],
        ..member("Corwin Hale", 41, Sex::Male, 183.0, (86.0, 85.0))
    }
}

fn passes_a_hold() -> Member {
    let rung = ("l-sit", "one-leg");
    Member {
        climbs: vec![("first-pull-up", (0.80, 0.80), 0.20)],
        script: vec![
            at(40, Act::Placed("l-sit", "one-leg")),
            session(20, rung, None, &[14.0, 14.0, 12.0, 12.0], None, 0),
            session(13, rung, None, &[18.0, 18.0, 16.0, 16.0], None, 0),
            session(8, rung, None, &[20.0, 20.0, 20.0, 20.0], None, 0),
            session(4, rung, None, &[21.0, 20.0, 20.0, 20.0], None, 0),
        ],
        ..member("Solveig Marchetti", 36, Sex::Female, 171.0, (66.0, 66.0))
    }
}

fn is_due_a_test() -> Member {
    let rung = ("weighted-pull-up", "bodyweight");
    let reps = [5.0, 6.0, 6.0, 5.0, 7.0, 6.0, 7.0];
    let easy =
        |(at, reps): (u64, &f64)| session(33 - 5 * at, rung, Some(1.0), &[*reps, *reps, *reps], Some(4.0), 0);
    Member {
        climbs: vec![("handstand", (0.85, 0.85), 0.10)],
        block: Some(block(15, &[("toes-to-bar", "level", (0.98, 0.98))])),
        script: std::iter::once(at(36, Act::Placed("weighted-pull-up", "bodyweight")))
            .chain((0..).zip(&reps).map(easy))
            .collect(),
        ..member("Matti Ferreira", 52, Sex::Male, 175.0, (77.0, 76.0))
    }
}

fn backs_off() -> Member {
    let rung = ("weighted-dip", "plus-50");
    Member {
        habit: Habit::LogsNone,
        climbs: vec![("weighted-pull-up", (1.50, 1.50), 0.08)],
        script: vec![
            at(20, Act::Placed("weighted-dip", "plus-50")),
            session(15, rung, Some(1.45), &[4.0, 4.0, 4.0, 4.0], None, 0),
            session(8, rung, Some(1.5), &[4.0, 4.0, 3.0, 2.0], None, 2),
            session(4, rung, Some(1.5), &[4.0, 3.0, 3.0, 2.0], None, 3),
        ],
        ..member("Ada Lindqvist", 27, Sex::Female, 165.0, (61.0, 62.0))
    }
}

fn steps_back() -> Member {
    let rung = ("handstand-push-up", "wall");
    Member {
        climbs: vec![("front-lever", (0.62, 0.62), 0.12)],
        script: vec![
            at(30, Act::Placed("handstand-push-up", "wall")),
            session(24, rung, None, &[3.0, 2.0, 2.0], None, 2),
            session(20, rung, None, &[3.0, 2.0, 1.0], None, 2),
            session(15, rung, None, &[3.0, 3.0, 3.0], Some(0.0), 0),
            session(9, rung, None, &[3.0, 2.0, 2.0], None, 2),
            session(5, rung, None, &[2.0, 2.0, 1.0], None, 3),
        ],
        ..member("Joaquín Esterházy", 24, Sex::Male, 172.0, (69.0, 70.0))
    }
}

fn hurts() -> Member {
    Member {
        climbs: vec![
            ("one-arm-chin-up", (0.78, 0.76), 0.10),
            ("weighted-dip", (1.40, 1.40), 0.10),
        ],
        script: vec![
            at(3, Act::Hurts(Site::Elbow, Some(Side::Left), 4)),
            at(1, Act::Hurts(Site::Elbow, Some(Side::Left), 7)),
        ],
        ..member("Priya Sandoval", 31, Sex::Female, 163.0, (58.0, 58.5))
    }
}

fn begins() -> Member {
    Member {
        climbs: vec![("handstand", (0.75, 0.75), 0.12)],
        block: Some(block(13, &[("toes-to-bar", "level", (0.97, 0.97))])),
        script: vec![
            at(1, Act::Joins("one-arm-hang")),
            at(1, Act::Says("Wants to hang from one hand by spring.")),
        ],
        ..member("Bruno Takahashi", 45, Sex::Male, 180.0, (88.0, 84.0))
    }
}

fn never_weighs() -> Member {
    Member {
        scale: Scale::Never,
        height_cm: None,
        sex: None,
        climbs: vec![("weighted-pull-up", (1.15, 1.15), 0.10)],
        ..member("Wren Kowalczyk", 38, Sex::Female, 170.0, (70.0, 70.0))
    }
}

fn is_a_minor() -> Member {
    Member {
        climbs: vec![
            ("first-pull-up", (0.92, 0.92), 0.12),
            ("first-dip", (0.92, 0.92), 0.12),
        ],
        ..member("Emil Adeyemi", 15, Sex::Male, 166.0, (52.0, 56.0))
    }
}

fn mistypes_and_has_an_own_ladder() -> Member {
    let rung = ("weighted-pull-up", "plus-25");
    Member {
        climbs: vec![
            ("ring-dip", (0.84, 0.84), 0.15),
            ("one-arm-push-up", (0.70, 0.74), 0.15),
        ],
        block: Some(block(
            14,
            &[
                ("l-sit", "one-leg", (0.97, 0.97)),
                ("ring-dip", "free", (0.98, 0.98)),
            ],
        )),
        script: vec![
            at(30, Act::Placed("weighted-pull-up", "plus-25")),
            session(26, rung, Some(1.15), &[5.0, 5.0, 4.0], Some(1.0), 0),
            session(19, rung, Some(1.15), &[5.0, 5.0, 5.0], Some(1.0), 0),
            session(12, rung, Some(1.18), &[5.0, 4.0, 4.0], Some(1.0), 0),
            session(8, rung, Some(2.5), &[5.0], Some(1.0), 0),
            session(5, rung, Some(1.18), &[5.0, 5.0, 4.0], Some(1.0), 0),
        ],
        ..member("Niamh Oyelaran", 34, Sex::Female, 174.0, (68.0, 67.0))
    }
}
