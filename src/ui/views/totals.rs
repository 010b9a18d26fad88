//! Totals: what one athlete lifted at each bodyweight, the bests, another bodyweight, attempts and a meet.

use std::path::PathBuf;

use chrono::NaiveDate;

use crate::bests::{Fit, Formula, Kind};
use crate::coaching::what_if::WhatIf;
use crate::units::{Mass, Side, SystemLoad, Unit};

use super::{Phrase, StrengthView};

/// The place Totals for one athlete.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TotalsView {
    /// What can be looked at, one of it open.
    pub lifts: Vec<LiftTab>,
    /// The open one; none while no set with a system load is logged.
    pub open: Option<LiftView>,
    /// `Bodyweight 79.3 kg on Mon 13 Oct`.
    pub bodyweight: Phrase,
    /// The day's meet.
    pub meet: Option<MeetView>,
    /// Why there is none.
    pub no_meet: String,
    /// What a try can be logged of, whether it was trained or not.
    pub tries: Vec<TryView>,
    /// Where a picture of the plot goes, if nobody says otherwise.
    pub picture: PathBuf,
    /// The unit of every number on the plot.
    pub unit: Unit,
}

/// A movement, and the side where sides are apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LiftTab {
    /// The movement's id.
    pub movement: String,
    /// The side.
    pub side: Option<Side>,
    /// Name on screen.
    pub title: String,
}

/// One movement of one side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LiftView {
    /// Which of the tabs it is.
    pub nth: usize,
    /// Name on screen.
    pub title: String,
    /// The part of bodyweight that it lifts, 0 to 1.
    pub share: f64,
    /// Sets in order of time, kg.
    pub points: Vec<PointView>,
    /// The athlete's own line.
    pub fit: Option<Fit>,
    /// The rep-max formula that carries points from one number of repetitions to another.
    pub formula: Formula,
    /// What the line says, or why there is none.
    pub fit_words: String,
    /// Bests for 1 to 12 repetitions.
    pub bests: Vec<BestView>,
    /// What another bodyweight would mean.
    pub what_if: Option<WhatIf>,
    /// Why nothing is said of another bodyweight.
    pub no_what_if: Option<String>,
    /// Bodyweight today, kg.
    pub today_kg: Option<f64>,
    /// The best single at two bodyweights.
    pub two_weights: Option<TwoWeightsView>,
    /// How the strength of the what-if came about, and from which sets: for hover and focus.
    pub belief_how: String,
    /// How the attempts and their chances came about.
    pub attempts_how: String,
    /// Strength over time of this lift; none where nothing is believed.
    pub strength: Option<StrengthView>,
    /// Three attempts, lightest first.
    pub attempts: Vec<AttemptView>,
    /// What makes their loads: plates, or a bar.
    pub hangs: String,
    /// At which bodyweight, or why there are none.
    pub attempts_note: String,
    /// Steps before the first attempt.
    pub warm_up: Vec<String>,
}

/// A set on the plot.
#[derive(Debug, Clone, PartialEq)]
pub struct PointView {
    /// The day.
    pub date: NaiveDate,
    /// Bodyweight, kg.
    pub bodyweight_kg: f64,
    /// What hung from the belt, kg; below zero it is help.
    pub added_kg: f64,
    /// All that was moved, kg.
    pub system_kg: f64,
    /// Its estimated one-rep max, kg, where one is believed.
    pub one_rep_max_kg: Option<f64>,
    /// Repetitions done.
    pub reps: f64,
    /// Whether the next one was tried and failed.
    pub missed: bool,
    /// Looks like a slip of the finger.
    pub doubted: bool,
    /// Date, load, repetitions, bodyweight and standing, for whoever walks the points.
    pub words: String,
}

/// A best.
#[derive(Debug, Clone, PartialEq)]
pub struct BestView {
    /// By which measure.
    pub kind: Kind,
    /// For at least so many repetitions.
    pub reps: u16,
    /// `best system load`.
    pub title: &'static str,
    /// Its value, with the unit.
    pub value: String,
    /// Bodyweight then.
    pub weighed: String,
    /// What hung from the belt.
    pub added: String,
    /// The day.
    pub date: String,
    /// Where its point lies: bodyweight and load, kg.
    pub at: Option<(f64, f64)>,
    /// It looks like a slip, and stands until somebody says.
    pub doubted: bool,
    /// Its place among the gym's athletes: `3rd of 12`; none where nobody else has one.
    pub place: Option<String>,
}

/// The best single at a lighter and at a heavier bodyweight.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TwoWeightsView {
    /// `best single within 1.5 kg`.
    pub note: String,
    /// `at 70 kg`, `at 80 kg`.
    pub heads: [String; 2],
    /// Measure, both values, and the change.
    pub rows: Vec<[String; 4]>,
}

/// One of three attempts.
#[derive(Debug, Clone, PartialEq)]
pub struct AttemptView {
    /// `+82.5 kg`.
    pub load: String,
    /// The plates that make it.
    pub plates: String,
    /// Chance, 0 to 1.
    pub chance: f64,
    /// The same in words: `95 %`.
    pub words: String,
}

/// A meet: added loads of a day over several lifts.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MeetView {
    /// A line a lift: name, what was done, three attempts.
    pub lifts: Vec<MeetLift>,
    /// The total of what was done; a dash while a lift is missing. Loads of a meet have no unit: its head says it.
    pub total: String,
    /// The totals of all openers, seconds and thirds.
    pub planned: [String; 3],
    /// How what is planned came about: for hover and focus.
    pub how: String,
    /// What can be lifted in it, some of it chosen.
    pub choices: Vec<MeetChoice>,
    /// Why a lift has no attempts, each reason once.
    pub notes: Vec<String>,
    /// Why nothing at all is planned; then there is no sheet.
    pub refused: Option<String>,
    /// The athlete's key.
    pub athlete: String,
    /// The athlete's name.
    pub name: String,
    /// Where its sheet goes, if nobody says otherwise.
    pub sheet: PathBuf,
}

/// A lift of which a try can be logged.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TryView {
    /// The movement's id.
    pub movement: String,
    /// Name on screen.
    pub title: String,
    /// The next planned load, a number in the unit; empty where nothing is planned.
    pub next: String,
}

/// A lift that may be in the meet.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MeetChoice {
    /// The movement's id.
    pub movement: String,
    /// Name on screen.
    pub title: String,
    /// Whether it is in.
    pub chosen: bool,
}

/// A lift of a meet.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MeetLift {
    /// Name on screen.
    pub title: String,
    /// What was done today.
    pub made: String,
    /// What is planned.
    pub attempts: [String; 3],
}

impl LiftView {
    /// How high a point stands on the plot for `reps` repetitions, kg: a set of just so many as it is, every other by the
    /// formula; none where the formula isn't believed.
    pub fn height(&self, point: &PointView, reps: u16) -> Option<f64> {
        let is_it = point.reps == f64::from(reps) || (point.reps == 0.0 && reps == 1);
        if is_it {
            Some(point.system_kg)
        } else {
            point.one_rep_max_kg.map(|max| self.for_reps(max, reps))
        }
    }

    /// A one-rep max as the load that it allows for `reps` repetitions, kg.
    pub fn for_reps(&self, one_rep_max_kg: f64, reps: u16) -> f64 {
        let max = SystemLoad::new(Mass::from_kg(one_rep_max_kg));
        self.formula.load_for(max, f64::from(reps)).kg()
    }
}

impl TotalsView {
    /// Every point of the open lift as CSV (RFC 4180), kg to 9 decimals as in the answers of commands; none while nothing is
    /// open.
    pub fn csv(&self) -> Option<String> {
        let lift = self.open.as_ref()?;
        let tab = self.lifts.get(lift.nth)?;
        let mut writer = csv::WriterBuilder::new()
            .terminator(csv::Terminator::CRLF)
            .from_writer(Vec::new());
        writer.write_record(COLUMNS).ok()?;
        let side = tab.side.map_or("", Side::letter);
        for point in &lift.points {
            let row = [
                tab.movement.clone(),
                side.to_owned(),
                point.date.to_string(),
                decimal(point.bodyweight_kg),
                decimal(point.added_kg),
                decimal(point.system_kg),
                point.one_rep_max_kg.map_or_else(String::new, decimal),
                decimal(point.reps),
                point.missed.to_string(),
                point.doubted.to_string(),
            ];
            writer.write_record(row).ok()?;
        }
        String::from_utf8(writer.into_inner().ok()?).ok()
    }
}

/// What a point has in a spreadsheet.
const COLUMNS: [&str; 10] = [
    "movement",
    "side",
    "date",
    "bodyweight_kg",
    "added_kg",
    "system_kg",
    "one_rep_max_kg",
    "reps",
    "missed",
    "doubted",
];

/// To 9 decimals at most, without an exponent.
fn decimal(value: f64) -> String {
    ((value * 1e9).round() / 1e9).to_string()
}
