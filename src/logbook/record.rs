//! The kinds of record. One record is one line of a journal; nothing in it changes once it is written.

use serde::{Deserialize, Serialize};

use crate::catalogue::Site;
use crate::units::{Effort, Given, Mass, Outcome, Side, Typed};

use super::Written;

/// A record's id: a ULID, 26 characters of Crockford's base 32.
pub type Id = ulid::Ulid;

/// The name of the device that wrote a record: 1 to 32 of `a-z`, `0-9`, `-`.
pub type Device = String;

/// A movement's, ladder's or rung's id as a set names it. Nearly all are short enough to lie in the record itself: reading
/// and comparing a year of sets then follows no pointer.
pub type Slug = smol_str::SmolStr;

/// One record: who wrote it where, when it happened, and what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Record {
    /// Its id, the same for ever.
    pub id: Id,
    /// Revision: 0 at first; an amend, retract or restore carries the highest known + 1.
    pub rev: u32,
    /// The device that wrote it.
    pub dev: Device,
    /// When it happened, as written.
    pub at: Written,
    /// Its place among that athlete's rows of that date in the file it came from.
    pub nth: u32,
    /// What happened.
    pub what: Fact,
}

/// What happened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Fact {
    /// Who the athlete is: each field that is given replaces what was known of it.
    Profile {
        /// The name on screen.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        name: Option<String>,
        /// Birth date, `YYYY-MM-DD`.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        born: Option<Written>,
        /// Sex, for the segment tables.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sex: Option<Sex>,
        /// Standing height, cm, 50 to 260.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        height_cm: Option<f64>,
    },
    /// One set.
    Set(Set),
    /// A bodyweight, measured without a set.
    WeighIn {
        /// What the scale showed.
        bodyweight: Typed,
        /// A remark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    /// Pain, 0 (none) to 10.
    Pain {
        /// Where.
        site: Site,
        /// On which side, if known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<Side>,
        /// How much, 0 to 10.
        score: u8,
        /// A remark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    /// A rail put on a rung, joined to a ladder, or set aside.
    Placement {
        /// The ladder's id.
        ladder: String,
        /// The rail; none for both.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<Side>,
        /// Where to.
        rung: Placed,
        /// Why.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        why: Option<String>,
    },
    /// A phase of bodyweight, or a lighter week.
    Phase {
        /// Which.
        kind: PhaseKind,
        /// A remark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    /// Taken off the roster, or put back on it. Every record stays, and the advice stays to be had by name.
    Archive {
        /// Whether the athlete is off the roster from here on.
        archived: bool,
        /// A remark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    /// A rung to reach, by a date if one is set.
    Goal {
        /// The ladder's id.
        ladder: String,
        /// The rung's id.
        rung: String,
        /// By when.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by: Option<Written>,
        /// A remark.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    /// A remark.
    Note {
        /// The remark.
        text: String,
    },
    /// A new content for the record `target`: its time, place in the day and fact are replaced as a whole.
    Amend {
        /// The record that is amended.
        target: Id,
        /// Its new time.
        at: Written,
        /// Its new place in the day.
        nth: u32,
        /// Its new fact; none of amend, retract, restore.
        what: Box<Fact>,
    },
    /// The record `target` no longer counts.
    Retract {
        /// The record that is retracted.
        target: Id,
        /// Why.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        why: Option<String>,
    },
    /// The record `target` counts again.
    Restore {
        /// The record that is restored.
        target: Id,
    },
}

/// One set, as logged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Set {
    /// The movement's id.
    pub movement: Slug,
    /// The side, for a movement whose sides are apart.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub side: Option<Side>,
    /// Belt load or measured help; none is neither.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub load: Option<Load>,
    /// Reps or seconds.
    pub effort: Effort,
    /// What was left, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<Given>,
    /// How it ended.
    #[serde(default, skip_serializing_if = "is_done")]
    pub outcome: Outcome,
    /// Bodyweight, if weighed then.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bodyweight: Option<Typed>,
    /// The ladder that it was done for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ladder: Option<Slug>,
    /// The rung that it was done on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rung: Option<Slug>,
    /// A remark.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

fn is_done(outcome: &Outcome) -> bool {
    *outcome == Outcome::Done
}

/// What hung from the belt, or what helped, as typed; neither is below zero.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum Load {
    /// Hung from the belt, or held.
    Added(Typed),
    /// Taken off by counterweight, band or hand.
    Assistance(Typed),
}

impl Load {
    /// Kilograms as a spreadsheet has them: help is below zero.
    pub fn signed(self) -> Mass {
        match self {
            Load::Added(typed) => typed.mass(),
            Load::Assistance(typed) => Mass::ZERO - typed.mass(),
        }
    }
}

/// Where a placement puts a rail.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Placed {
    /// Joined to the ladder; the rules name the rung.
    Joined,
    /// On this rung.
    On(String),
    /// Set aside until a later placement or tagged set.
    SetAside,
}

/// Sex, as the segment tables tell bodies apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Sex {
    /// Female.
    #[serde(rename = "female")]
    Female,
    /// Male.
    #[serde(rename = "male")]
    Male,
}

/// A phase. A deload lasts 7 days and ends no other phase; the others last until the next of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum PhaseKind {
    /// Losing bodyweight on purpose.
    #[serde(rename = "cut")]
    Cut,
    /// Holding it.
    #[serde(rename = "hold")]
    Hold,
    /// Gaining on purpose.
    #[serde(rename = "gain")]
    Gain,
    /// A lighter week.
    #[serde(rename = "deload")]
    Deload,
}
