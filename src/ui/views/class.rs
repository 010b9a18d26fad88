//! A class on one evening, and the gym around it.

use serde::{Deserialize, Serialize};

use crate::units::{Outcome, Rail};

/// What is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// Tonight's sheet, a page an athlete.
    Pages,
    /// Tonight's sheet, a table a movement.
    Table,
    /// One athlete's progress.
    Progress,
    /// One athlete's meet of today.
    Meet,
}

/// Results to be typed, in the order of the sheet.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ClassView {
    /// "Thu 26 Nov".
    pub day: String,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// The athletes.
    pub athletes: Vec<ClassAthlete>,
    /// What was typed before and not saved.
    pub typed: TypedClass,
}

/// Results as they stand in their cells, not saved yet.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TypedClass {
    /// Cells with something in them.
    pub cells: Vec<TypedCell>,
}

/// One cell of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TypedCell {
    /// The athlete's key.
    pub athlete: String,
    /// Which of the athlete's cells.
    pub at: TypedAt,
    /// As typed.
    pub text: String,
}

/// Which cell of an athlete. A row is known by what it asks, so that a text finds it again in another class.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum TypedAt {
    /// Bodyweight.
    Weighs,
    /// Pain.
    Pain,
    /// The load of a row.
    Load(TypedRow),
    /// A set of a row, from 0.
    Set(TypedRow, usize),
}

/// A row: ladder, rung, and the rail's letter.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TypedRow(pub String, pub String, pub String);

impl TypedClass {
    /// Keys of the athletes, each once.
    pub fn athletes(&self) -> Vec<String> {
        let mut keys: Vec<String> = self.cells.iter().map(|cell| cell.athlete.clone()).collect();
        keys.sort();
        keys.dedup();
        keys
    }

    /// How many sets.
    pub fn sets(&self) -> usize {
        let is_set = |cell: &&TypedCell| matches!(cell.at, TypedAt::Set(..));
        self.cells.iter().filter(is_set).count()
    }
}

impl ClassRow {
    /// What the row is known by.
    pub fn key(&self) -> TypedRow {
        let rail = self.rail.letter().to_owned();
        TypedRow(self.ladder.clone(), self.rung.clone(), rail)
    }
}

/// One athlete of the class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassAthlete {
    /// The athlete's key.
    pub athlete: String,
    /// Name on screen.
    pub name: String,
    /// The last bodyweight, a number; empty where there is none.
    pub weighs: String,
    /// Whether a load waits for the scale.
    pub weigh_in_first: bool,
    /// A row a rail.
    pub rows: Vec<ClassRow>,
}

/// What one rail was asked.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassRow {
    /// The ladder's id.
    pub ladder: String,
    /// The rung's id.
    pub rung: String,
    /// The rail.
    pub rail: Rail,
    /// The rung's title.
    pub title: String,
    /// "3 × 4–6".
    pub asked: String,
    /// The load as the sheet says it, a number in the unit; empty where none is asked.
    pub load: String,
    /// Whether the load is help.
    pub is_help: bool,
    /// How many sets.
    pub sets: usize,
    /// What a set is prefilled with: "5 1".
    pub prefill: String,
    /// Whether seconds are typed.
    pub is_hold: bool,
    /// Sets of today that are logged already.
    pub logged: usize,
}

/// What was typed of one athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ClassResult {
    /// The athlete's key.
    pub athlete: String,
    /// Bodyweight in the logbook's unit.
    pub weighs: Option<f64>,
    /// Where it hurts and how much, as typed.
    pub pain: String,
    /// The sets, in order.
    pub sets: Vec<ClassSet>,
}

/// One set of a class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassSet {
    /// The ladder's id.
    pub ladder: String,
    /// The rung's id.
    pub rung: String,
    /// The rail.
    pub rail: Rail,
    /// Another load than the sheet's, in the logbook's unit; below zero it is help.
    pub load: Option<f64>,
    /// Reps, or seconds.
    pub amount: f64,
    /// Whether `amount` is seconds.
    pub is_hold: bool,
    /// Reps in reserve, if said.
    pub reserve: Option<f64>,
    /// How it ended.
    pub outcome: Outcome,
}

/// The gym: its plates, its machines, who is off the roster.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct GymView {
    /// The logbook's name; empty where it goes by its folder.
    pub name: String,
    /// Whether people here think in pounds.
    pub in_lb: bool,
    /// Plates on hand as typed.
    pub plates: String,
    /// Belt, chain and carabiner as typed.
    pub gear: String,
    /// From which machines records came, the one seen last first.
    pub machines: Vec<MachineLine>,
    /// Athletes off the roster: key and name.
    pub archived: Vec<(String, String)>,
    /// Ladders to join: id and title.
    pub ladders: Vec<(String, String)>,
    /// Where sheets go, if nobody says otherwise.
    pub out_folder: String,
    /// Keys of athletes whose results are typed and not saved.
    pub typed: Vec<String>,
    /// Today, for a file's name: `2026-11-26`.
    pub today: String,
}

/// One machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MachineLine {
    /// Its name in the records; "this machine" where it is this one.
    pub name: String,
    /// "1,204 records, last of 25 Nov 2026".
    pub words: String,
}
