//! A ladder as it is drawn: rungs, hands, beliefs, companions, branches.

use crate::units::{Rail, Unit};

use super::{Phrase, StrengthView};

/// One ladder of one athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LadderView {
    /// The ladder's id.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// A second line beside the title: `own ladder, 40 rungs`.
    pub subtitle: Option<String>,
    /// Whether left and right climb apart.
    pub sided: bool,
    /// The main line from the ground up.
    pub rungs: Vec<RungView>,
    /// Branches beside it.
    pub branches: Vec<BranchView>,
    /// Assistance work beside the line.
    pub companions: Vec<CompanionView>,
    /// Where the hands are.
    pub hands: Vec<HandView>,
    /// How strong each rail is believed to be, on the ladder's scale; empty where it isn't known.
    pub beliefs: Vec<BeliefView>,
    /// Belief and forecast in words, a line a rail, for the header.
    pub outlook: Vec<Outlook>,
    /// Rails that are set aside.
    pub set_aside: Vec<Rail>,
    /// What is wrong with the ladder's file, if it is broken: the last good version is shown.
    pub broken: Option<String>,
    /// Another bodyweight, where anything is said about it.
    pub what_if: Option<LadderWhatIf>,
}

/// What another bodyweight would mean on a ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct LadderWhatIf {
    /// Bodyweight today, kg.
    pub today_kg: f64,
    /// The bodyweight that the demands and ghosts are made for, kg; none for today's.
    pub asked_kg: Option<f64>,
    /// Lightest and heaviest of the slider, kg.
    pub ends_kg: [f64; 2],
    /// The lightest bodyweight that is answered, kg.
    pub from_kg: Option<f64>,
    /// 80 % intervals there, on the ladder's scale.
    pub ghosts: Vec<(Rail, (f64, f64))>,
    /// What is said beside the slider.
    pub words: String,
    /// The unit of bodyweights.
    pub unit: Unit,
}

/// A rung of the main line.
#[derive(Debug, Clone, PartialEq)]
pub struct RungView {
    /// The rung's id.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// Its standard, one short line.
    pub standard: String,
    /// How strong one must be, 1.00 = the goal; none where it isn't known.
    pub demand: Option<f64>,
    /// Whether it is the goal.
    pub is_goal: bool,
    /// How far each rail is: left and right, or twice the same where both hands work as one.
    pub state: [RungState; 2],
    /// At the right: when it was passed, or what is asked today.
    pub status: Option<String>,
    /// Whether the status is about today.
    pub status_is_now: bool,
    /// The sheet beside the ladder.
    pub sheet: SheetView,
}

/// How far a rail is on a rung.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RungState {
    /// Its standard was met.
    Passed,
    /// Ahead.
    Open,
    /// Being worked on: standard days done, of how many.
    WorkedOn {
        /// Days on which the standard was met.
        done: u8,
        /// Days that are asked.
        of: u8,
    },
}

/// What the sheet of a rung says: a heading and lines for each.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SheetView {
    /// Sections in order.
    pub sections: Vec<SheetSection>,
    /// Demand and its band, for the small scale.
    pub demand_band: Option<(f64, f64)>,
}

/// A name and its lines.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SheetSection {
    /// `Chance`.
    pub name: String,
    /// What it says.
    pub lines: Vec<SheetLine>,
    /// Where it is an estimate: how it came about and from which sets, for hover and focus.
    pub how: Option<String>,
}

/// A line of a sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetLine {
    /// The side it is about, as a disc.
    pub rail: Option<Rail>,
    /// Standard days as squares: done, of how many.
    pub days: Option<(u8, u8)>,
    /// The words.
    pub words: Phrase,
    /// Second in rank.
    pub quiet: bool,
}

impl SheetLine {
    /// A line of words.
    pub fn words(words: impl Into<Phrase>) -> Self {
        Self {
            rail: None,
            days: None,
            words: words.into(),
            quiet: false,
        }
    }

    /// The same, for one side.
    pub fn of(rail: Rail, words: impl Into<Phrase>) -> Self {
        Self {
            rail: Some(rail),
            ..Self::words(words)
        }
    }

    /// Quieter.
    pub fn quiet(mut self) -> Self {
        self.quiet = true;
        self
    }
}

/// A branch: another way from one main rung to a later one.
#[derive(Debug, Clone, PartialEq)]
pub struct BranchView {
    /// The rung's id.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// Work and demand, one line.
    pub line: String,
    /// Index of the main rung it leaves.
    pub from: usize,
    /// Index of the main rung it joins.
    pub to: usize,
    /// Its demand, if known.
    pub demand: Option<f64>,
    /// Whether its standard was met.
    pub passed: bool,
    /// The sheet beside the ladder.
    pub sheet: SheetView,
}

/// Assistance work beside the line.
#[derive(Debug, Clone, PartialEq)]
pub struct CompanionView {
    /// Name on screen.
    pub title: String,
    /// Work and demand, one line.
    pub line: String,
    /// Index of the main rung it stands beside.
    pub beside: usize,
    /// Its own demand, if known; else it stands at its rung.
    pub demand: Option<f64>,
    /// Whether it was met.
    pub met: bool,
}

/// Where a hand is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HandView {
    /// Whose.
    pub rail: Rail,
    /// Where.
    pub at: Spot,
    /// Whether today's step is one up.
    pub steps_up: bool,
}

/// A place on a ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Spot {
    /// Nothing logged yet.
    Ground,
    /// A rung of the main line, from 0.
    Rung(usize),
    /// A branch, from 0.
    Branch(usize),
}

/// How strong a rail is believed to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BeliefView {
    /// Whose.
    pub rail: Rail,
    /// The middle of the belief, on the ladder's scale.
    pub median: f64,
    /// Spread, natural logarithm.
    pub log_sd: f64,
    /// Ends of the 80 % interval.
    pub interval80: (f64, f64),
    /// Whether the last set that it rests on is more than 14 days old.
    pub is_stale: bool,
}

/// Belief and forecast of a rail in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlook {
    /// Whose.
    pub rail: Rail,
    /// `0.86 of the goal (80 %: 0.82–0.90)`.
    pub belief: Phrase,
    /// `one rep, 80 %: Apr – Nov 2026`.
    pub forecast: Option<String>,
    /// How both came about, for hover and focus.
    pub how: String,
}

/// All ladders of one athlete, one of them open.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LaddersView {
    /// The open one; none while the athlete is on no ladder.
    pub open: Option<LadderView>,
    /// Every ladder that can be opened: id, title, whether the athlete is on it, and what is wrong with its file.
    pub others: Vec<OtherLadder>,
    /// Strength over time of the open ladder's movements.
    pub strength: Vec<StrengthView>,
}

/// A ladder that can be opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherLadder {
    /// The ladder's id.
    pub id: String,
    /// Name on screen.
    pub title: String,
    /// Whether the athlete is on it.
    pub joined: bool,
    /// What is wrong with its file.
    pub broken: Option<String>,
}
