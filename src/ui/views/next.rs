//! Today's prescriptions of one athlete.

use crate::units::{Outcome, Rail};

use super::{LadderView, Phrase, Verdict};

/// The place Next for one athlete on one day.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct NextView {
    /// The day in words: `Tue 14 Oct 2025`.
    pub day: String,
    /// Bodyweight today, trend and pace in words, longest form.
    pub bodyweight: Phrase,
    /// The same, short, for a narrow window.
    pub bodyweight_short: Phrase,
    /// The phase, if one is set.
    pub phase: Option<String>,
    /// The worst pain of today, if any: `elbow R 1 of 10`.
    pub pain: Option<String>,
    /// What to show in the weigh-in field before anything is typed, in the logbook's unit.
    pub last_bodyweight: Option<f64>,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// Ladders in training, each with its rails' cards.
    pub ladders: Vec<LadderCards>,
    /// Warm-up steps in order.
    pub warm_up: Vec<WarmUpStep>,
    /// Why steps were left out.
    pub warm_up_note: Option<String>,
    /// Today's records, newest first.
    pub logged: Vec<LoggedLine>,
    /// What comes after these cards: what, and how much.
    pub after: Vec<(String, String)>,
    /// A closing line about the session.
    pub after_note: Option<String>,
    /// The athlete hasn't said which sites hurt today; offered in the pain sheet, in order.
    pub sites: Vec<&'static str>,
}

impl NextView {
    /// Every card, in the order that the dock and Tab walk them.
    pub fn cards(&self) -> impl Iterator<Item = &CardView> {
        self.ladders.iter().flat_map(|ladder| &ladder.cards)
    }

    /// The card with this place in [`NextView::cards`].
    pub fn card(&self, nth: usize) -> Option<&CardView> {
        self.cards().nth(nth)
    }
}

/// One ladder: a card a rail, and the strip of rungs around the hands.
#[derive(Debug, Clone, PartialEq)]
pub struct LadderCards {
    /// Left and right, or the one card of a ladder for both hands.
    pub cards: Vec<CardView>,
    /// The rungs around the hands; none where it helps nobody.
    pub strip: Option<LadderView>,
}

/// The next step of one rail.
#[derive(Debug, Clone, PartialEq)]
pub struct CardView {
    /// The ladder's id, for what is logged.
    pub ladder: String,
    /// The rail.
    pub rail: Rail,
    /// `Left hand`, `Both hands, then`.
    pub heading: String,
    /// The verdict.
    pub verdict: Verdict,
    /// What is asked.
    pub asked: Asked,
    /// Every reason; the first decided.
    pub reasons: Vec<Reason>,
    /// Cautions, each a sentence or two.
    pub cautions: Vec<Reason>,
    /// Chances today, where they are known: `2 reps`, `82 %`.
    pub chances: Vec<(String, String)>,
    /// How they came about, and from which sets: shown on hover and focus.
    pub chances_how: String,
    /// The first day on which spacing is kept, if that isn't today: `Thu 16 Oct`.
    pub not_before: Option<String>,
}

/// A reason or a caution, and the rule behind it.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// The sentence.
    pub words: Phrase,
    /// The rule's id.
    pub rule: String,
    /// The rule's own words: what it asks, why, and its source. Shown on hover and focus.
    pub doc: String,
    /// Where it is an estimate: the sets that it stands on. Else empty.
    pub from: String,
}

/// What a card asks.
#[derive(Debug, Clone, PartialEq)]
pub enum Asked {
    /// Sets of reps or seconds.
    Work(Prescription),
    /// First weigh in; this is what would follow.
    WeighInFirst(Option<Prescription>),
    /// No work: words instead of numbers, and who to see or what to wait for.
    Pause(Vec<Phrase>),
}

impl Asked {
    /// What can be logged from this card.
    pub fn prescription(&self) -> Option<&Prescription> {
        match self {
            Asked::Work(work) | Asked::WeighInFirst(Some(work)) => Some(work),
            Asked::WeighInFirst(None) | Asked::Pause(_) => None,
        }
    }
}

/// The work that a card asks.
#[derive(Debug, Clone, PartialEq)]
pub struct Prescription {
    /// The rung's id, for what is logged.
    pub rung: String,
    /// The rung's or movement's title.
    pub title: String,
    /// How many sets.
    pub sets: u16,
    /// Reps or seconds.
    pub measure: Amounts,
    /// Reps or seconds that the dock offers first.
    pub prefill: f64,
    /// Reps in reserve asked, if any.
    pub reserve: Option<f64>,
    /// The load behind the numbers, short: `+33.5 kg`. None where nothing hangs and nothing helps.
    pub load: Option<String>,
    /// The load in a sentence: plates, system load.
    pub load_words: Phrase,
    /// What hangs from the belt.
    pub belt: Option<BeltView>,
    /// Rest between sets, seconds.
    pub rest_secs: (u16, u16),
    /// Sets of it that are logged today, in order: the words on their chips.
    pub done: Vec<String>,
    /// What was done last time, in a sentence.
    pub last_time: Option<Phrase>,
}

/// A range of reps or seconds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Amounts {
    /// Repetitions, from and to.
    Reps(u16, u16),
    /// Seconds held, from and to.
    Hold(u16, u16),
}

impl Amounts {
    /// From and to.
    pub fn range(self) -> (u16, u16) {
        match self {
            Amounts::Reps(lo, hi) | Amounts::Hold(lo, hi) => (lo, hi),
        }
    }

    /// Whether it is seconds.
    pub fn is_hold(self) -> bool {
        matches!(self, Amounts::Hold(..))
    }

    /// `reps` or `s`.
    pub fn unit(self) -> &'static str {
        if self.is_hold() { "s" } else { "reps" }
    }
}

/// A belt with plates, or a pulley's counterweight.
#[derive(Debug, Clone, PartialEq)]
pub struct BeltView {
    /// The plates that hang, heaviest first.
    pub plates: Vec<PlateView>,
    /// The words beneath: `20 + 10 + 2.5` strong, `+ chain 1.0 kg` plain.
    pub words: Phrase,
}

/// One plate.
#[derive(Debug, Clone, PartialEq)]
pub struct PlateView {
    /// The number on it, as the plate says: `2.5`.
    pub number: String,
    /// Its mass, kg, for its size and its disc colour.
    pub kg: f64,
    /// A standard disc colour applies to kilogram discs only.
    pub is_kg: bool,
}

/// A step of the warm-up.
#[derive(Debug, Clone, PartialEq)]
pub struct WarmUpStep {
    /// What.
    pub what: String,
    /// With what: `20 + chain 1.0`.
    pub with: Option<String>,
    /// How many: `× 5`.
    pub count: String,
}

/// A record of today.
#[derive(Debug, Clone, PartialEq)]
pub struct LoggedLine {
    /// The record's id.
    pub id: String,
    /// Clock time.
    pub time: String,
    /// The side, for the disc; none for both hands and other records.
    pub rail: Option<Rail>,
    /// What.
    pub what: String,
    /// How it went.
    pub result: String,
    /// A best that it set, in words.
    pub best: Option<String>,
    /// It looks like a typo: with which probability.
    pub doubt: Option<String>,
}

/// What the dock writes when it is told to log: everything but what the logbook knows by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct SetDraft {
    /// The ladder's id.
    pub ladder: String,
    /// The rung's id.
    pub rung: String,
    /// The rail.
    pub rail: Rail,
    /// Reps, or seconds where it is a hold.
    pub amount: f64,
    /// Whether `amount` is seconds.
    pub is_hold: bool,
    /// Reps in reserve, if said.
    pub reserve: Option<f64>,
    /// How it ended.
    pub outcome: Outcome,
    /// A remark.
    pub note: Option<String>,
}
