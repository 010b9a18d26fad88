//! What a rule found: its numbers, without a sentence. `report::words` says them.

use chrono::NaiveDate;

use super::held_back::HeldBack;
use crate::catalogue::{Amount, Caution, Site};

/// Why a rail without a record begins where it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Begins {
    /// Nothing says more than the first rung.
    First,
    /// The entry is logged, the standard is not.
    Entered,
    /// The standard is met already, and no higher rung's entry is logged.
    Met,
    /// By its own log higher, but not above the other side.
    BesideOther,
}

/// What a rule or a cap found. The variants are in the order of the rules; caps come last.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub enum Finding {
    PainStop {
        site: Site,
        score: u8,
        days: i64,
    },
    WeighInStale {
        days: Option<i64>,
    },
    Placed,
    NoRecord {
        begins: Begins,
    },
    EntryUntested {
        movement: String,
        at_least: Amount,
    },
    LayoffShort {
        days: i64,
    },
    LayoffLong {
        days: i64,
    },
    LayoffStep {
        days: i64,
    },
    AfterPain {
        site: Site,
        score: u8,
        date: NaiveDate,
    },
    Deload,
    StandardMet {
        days: Vec<NaiveDate>,
        next: String,
    },
    EntryMissing {
        next: String,
        movement: String,
        at_least: Amount,
        ratio: Option<f64>,
    },
    MissedTwice {
        first: NaiveDate,
        second: NaiveDate,
    },
    MissedAgain {
        pairs: usize,
        first: NaiveDate,
        second: NaiveDate,
    },
    LightOnly,
    MissedOnce {
        date: NaiveDate,
        lowest: f64,
        lo: f64,
    },
    FormMiss {
        date: NaiveDate,
    },
    SetsShort {
        date: NaiveDate,
        done: usize,
        asked: usize,
        lowest: f64,
        lo: f64,
    },
    ReserveShort {
        date: NaiveDate,
        lowest: f64,
        asked: f64,
    },
    OneMoreDay {
        date: NaiveDate,
        days: usize,
        asked: u8,
        apart: u8,
    },
    TopOfRange {
        work_kg: f64,
        load_kg: f64,
        hi: f64,
    },
    CoarseStep {
        work_kg: f64,
        load_kg: f64,
        lowest: f64,
        reserve: f64,
    },
    NoStepInBand {
        work_kg: Option<f64>,
        next_kg: Option<f64>,
    },
    LastRung {
        hi: f64,
    },
    ReserveUnlogged {
        hi: f64,
    },
    TestDue {
        judged: usize,
    },
    Stalled {
        days: usize,
        work_kg: f64,
    },
    InRange {
        lowest: f64,
        lo: f64,
        hi: f64,
    },
    PainCap {
        site: Site,
        score: u8,
        days: i64,
    },
    MinorNoMax {
        past: Option<String>,
    },
    TendonTime {
        days: i64,
        asked: i64,
        caution: Caution,
    },
    SideWait {
        other: SideState,
    },
    SideGap {
        own: f64,
        other: f64,
        within: f64,
    },
    LongShot {
        chance: f64,
        reps: f64,
        expected: Option<f64>,
    },
    HeldBack(HeldBack),
}

/// What the other side is doing, as far as a rail that waits for it must say.
#[derive(Debug, Clone, PartialEq)]
pub enum SideState {
    /// It stands lower, or carries less.
    Behind,
    /// It pauses, begins, backs off or steps back.
    NotReady,
    /// It does not step up or add load yet.
    NotThere,
    /// It does fewer reps or seconds.
    Fewer {
        /// This side's fewest.
        own: f64,
        /// The other side's fewest.
        other: f64,
    },
}

impl Finding {
    /// The rule's id, as answers and files use it.
    pub fn rule(&self) -> &'static str {
        match self {
            Finding::PainStop { .. } => "pain-stop",
            Finding::WeighInStale { .. } => "weigh-in-stale",
            Finding::Placed => "placed",
            Finding::NoRecord { .. } => "no-record",
            Finding::EntryUntested { .. } => "entry-untested",
            Finding::LayoffShort { .. } => "layoff-short",
            Finding::LayoffLong { .. } => "layoff-long",
            Finding::LayoffStep { .. } => "layoff-step",
            Finding::AfterPain { .. } => "after-pain",
            Finding::Deload => "deload",
            Finding::StandardMet { .. } => "standard-met",
            Finding::EntryMissing { .. } => "entry-missing",
            Finding::MissedTwice { .. } => "missed-twice",
            Finding::MissedAgain { .. } => "missed-again",
            Finding::LightOnly => "light-only",
            Finding::MissedOnce { .. } => "missed-once",
            Finding::FormMiss { .. } => "form-miss",
            Finding::SetsShort { .. } => "sets-short",
            Finding::ReserveShort { .. } => "reserve-short",
            Finding::OneMoreDay { .. } => "one-more-day",
            Finding::TopOfRange { .. } => "top-of-range",
            Finding::CoarseStep { .. } => "coarse-step",
            Finding::NoStepInBand { .. } => "no-step-in-band",
            Finding::LastRung { .. } => "last-rung",
            Finding::ReserveUnlogged { .. } => "reserve-unlogged",
            Finding::TestDue { .. } => "test-due",
            Finding::Stalled { .. } => "stalled",
            Finding::InRange { .. } => "in-range",
            Finding::PainCap { .. } => "pain-cap",
            Finding::MinorNoMax { .. } => "minor-no-max",
            Finding::TendonTime { .. } => "tendon-time",
            Finding::SideWait { .. } => "side-wait",
            Finding::SideGap { .. } => "side-gap",
            Finding::LongShot { .. } => "long-shot",
            Finding::HeldBack(_) => "held-back",
        }
    }
}

/// What to mind. The first variant carries the rung's own cautions.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub enum CareNote {
    Rung(Caution),
    Spacing {
        last: NaiveDate,
        days: i64,
    },
    ContradictoryLog {
        date: NaiveDate,
        reserve: f64,
    },
    CheckEntry {
        date: NaiveDate,
        system_kg: f64,
    },
    WeighInOdd {
        date: NaiveDate,
        kg: f64,
    },
    EntryNotMet {
        movement: String,
        at_least: Amount,
        ratio: Option<f64>,
    },
    TestSafety,
    PainProfessional {
        site: Site,
    },
    Minor {
        years: u32,
    },
    Underweight {
        bmi: f64,
    },
    CutRefused,
    CutFast {
        percent_a_week: f64,
    },
    CutLong {
        days: i64,
    },
}

impl CareNote {
    /// The caution's id, as answers and files use it.
    pub fn rule(&self) -> &'static str {
        match self {
            CareNote::Rung(caution) => caution.id(),
            CareNote::Spacing { .. } => "spacing",
            CareNote::ContradictoryLog { .. } => "contradictory-log",
            CareNote::CheckEntry { .. } => "check-entry",
            CareNote::WeighInOdd { .. } => "weigh-in-odd",
            CareNote::EntryNotMet { .. } => "entry-not-met",
            CareNote::TestSafety => "test-safety",
            CareNote::PainProfessional { .. } => "pain-professional",
            CareNote::Minor { .. } => "minor",
            CareNote::Underweight { .. } => "underweight",
            CareNote::CutRefused => "cut-refused",
            CareNote::CutFast { .. } => "cut-fast",
            CareNote::CutLong { .. } => "cut-long",
        }
    }
}
