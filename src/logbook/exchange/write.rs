//! Export: one row a record, every column always, in the order that import reads back.

use std::fmt::{Display, Write};

use crate::logbook::log::Log;
use crate::logbook::record::{Fact, Load, PhaseKind, Placed, Record, Set, Sex};
use crate::units::{Effort, Given, Outcome, Side, Typed, Unit};

use super::cell::guard;
use super::column::Column;

/// A row's values by column, without guard and quotes; empty ones are absent.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Cells {
    text: String,
    at: [Option<(usize, usize)>; Column::ALL.len()],
}

impl Cells {
    /// Takes every value out, keeping the room.
    pub(super) fn clear(&mut self) {
        self.text.clear();
        self.at.fill(None);
    }

    /// The value in `column`.
    pub(super) fn get(&self, column: Column) -> Option<&str> {
        let (from, to) = (*self.at.get(column as usize)?)?;
        self.text.get(from..to)
    }

    /// Puts `value` into `column`; an empty text leaves it absent.
    pub(super) fn set(&mut self, column: Column, value: impl Display) {
        let from = self.text.len();
        // Writing to a String can't fail.
        let _ = write!(self.text, "{value}");
        if let Some(at) = self.at.get_mut(column as usize)
            && self.text.len() > from
        {
            *at = Some((from, self.text.len()));
        }
    }

    fn set_some(&mut self, column: Column, value: Option<impl Display>) {
        if let Some(value) = value {
            self.set(column, value);
        }
    }

    fn mass(&mut self, mass: Typed, sign: f64, kg: Column, lb: Column) {
        let column = match mass.unit() {
            Unit::Kg => kg,
            Unit::Lb => lb,
        };
        // Adding zero turns minus zero into zero.
        self.set(column, sign * mass.value() + 0.0);
    }

    /// Adds what `fact` says. Facts of one row may be added one after the other.
    pub(super) fn add(&mut self, fact: &Fact) {
        match fact {
            Fact::Set(set) => self.add_set(set),
            Fact::WeighIn { bodyweight, note } => {
                self.mass(*bodyweight, 1.0, Column::BodyweightKg, Column::BodyweightLb);
                self.set_some(Column::Note, note.as_ref());
            }
            Fact::Pain {
                site,
                side,
                score,
                note,
            } => {
                self.set(Column::Pain, score);
                self.set(Column::PainSite, site.word());
                self.set_some(Column::Side, side.map(Side::letter));
                self.set_some(Column::Note, note.as_ref());
            }
            Fact::Placement {
                ladder,
                side,
                rung,
                why,
            } => {
                self.set(Column::Ladder, ladder);
                self.set_some(Column::Side, side.map(Side::letter));
                match rung {
                    Placed::Joined => {}
                    Placed::On(rung) => self.set(Column::Rung, rung),
                    Placed::SetAside => self.set(Column::Rung, SET_ASIDE),
                }
                self.set_some(Column::Note, why.as_ref());
            }
            Fact::Phase { kind, note } => {
                self.set(Column::Phase, phase_word(*kind));
                self.set_some(Column::Note, note.as_ref());
            }
            Fact::Archive { archived, note } => {
                self.set(Column::Phase, if *archived { ARCHIVED } else { ACTIVE });
                self.set_some(Column::Note, note.as_ref());
            }
            Fact::Goal {
                ladder,
                rung,
                by,
                note,
            } => {
                self.set(Column::Goal, format_args!("{ladder}/{rung}"));
                self.set_some(Column::GoalBy, by.as_ref());
                self.set_some(Column::Note, note.as_ref());
            }
            Fact::Profile {
                name: _,
                born,
                sex,
                height_cm,
            } => {
                self.set_some(Column::Born, born.as_ref());
                self.set_some(Column::Sex, sex.map(sex_word));
                self.set_some(Column::HeightCm, *height_cm);
            }
            Fact::Note { text } => self.set(Column::Note, text),
            Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {}
        }
    }

    fn add_set(&mut self, set: &Set) {
        self.set(Column::Movement, &set.movement);
        self.set_some(Column::Side, set.side.map(Side::letter));
        if let Some(bodyweight) = set.bodyweight {
            self.mass(bodyweight, 1.0, Column::BodyweightKg, Column::BodyweightLb);
        }
        match set.load {
            None => {}
            Some(Load::Added(mass)) => self.mass(mass, 1.0, Column::AddedKg, Column::AddedLb),
            Some(Load::Assistance(mass)) => self.mass(mass, -1.0, Column::AddedKg, Column::AddedLb),
        }
        match set.effort {
            Effort::Reps(reps) => self.set(Column::Reps, reps.count()),
            Effort::Hold(seconds) => self.set(Column::HoldS, seconds.value()),
        }
        match set.left {
            None => {}
            Some(Given::Rir(reserve)) => self.set(Column::Rir, reserve.reps()),
            Some(Given::Rpe(reserve)) => self.set(Column::Rpe, 10.0 - reserve.reps()),
        }
        self.set(Column::Outcome, outcome_word(set.outcome));
        self.set_some(Column::Ladder, set.ladder.as_ref());
        self.set_some(Column::Rung, set.rung.as_ref());
        self.set_some(Column::Note, set.note.as_ref());
    }

    /// Makes these the values of a record's row.
    fn fill(&mut self, athlete: &str, record: &Record) {
        self.clear();
        self.set(Column::Id, record.id);
        self.set(Column::Athlete, athlete);
        self.set(Column::Date, &record.at);
        self.add(&record.what);
    }

    /// Writes the row with guards, quotes and CRLF (RFC 4180 section 2).
    fn write(&self, out: &mut String) {
        for column in Column::ALL {
            if column != Column::ALL[0] {
                out.push(',');
            }
            let text = self.get(column).unwrap_or_default();
            let guard = guard(text);
            if text.contains([',', '"', '\r', '\n']) {
                out.push('"');
                out.push_str(guard);
                out.push_str(&text.replace('"', "\"\""));
                out.push('"');
            } else {
                out.push_str(guard);
                out.push_str(text);
            }
        }
        out.push_str("\r\n");
    }
}

/// What the column `rung` says of a rail that is set aside.
pub(super) const SET_ASIDE: &str = "none";

/// What the column `phase` says of an athlete who is taken off the roster.
pub(super) const ARCHIVED: &str = "archived";
/// And of one who is back on it.
pub(super) const ACTIVE: &str = "active";

/// The word for an outcome in files and commands.
pub fn outcome_word(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Done => "success",
        Outcome::Missed => "fail",
        Outcome::Form => "form",
    }
}

/// The word for a phase in files and commands.
pub fn phase_word(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::Cut => "cut",
        PhaseKind::Hold => "hold",
        PhaseKind::Gain => "gain",
        PhaseKind::Deload => "deload",
    }
}

/// The word for a sex in files and commands.
pub fn sex_word(sex: Sex) -> &'static str {
    match sex {
        Sex::Female => "female",
        Sex::Male => "male",
    }
}

/// Everything in `logs` as CSV: a header, then one row a record in each log's order, athletes in the order they come.
///
/// A name is the column `athlete` of every row; a `Profile` that only names is a row with id, athlete and date alone. An
/// earlier name is not written. Reading the answer with [`super::Import`] into an empty logbook and writing that again gives the
/// same bytes.
pub fn write<'l>(logs: impl IntoIterator<Item = &'l Log>) -> String {
    let mut out = Column::ALL.map(Column::name).join(",") + "\r\n";
    let mut cells = Cells::default();
    for log in logs {
        for record in log.records.iter().filter(|record| is_a_row(record)) {
            cells.fill(&log.name, record);
            cells.write(&mut out);
        }
    }
    out
}

/// What [`write`] puts into the columns of one record's row, without guards and quotes; columns without a value are absent.
/// Empty for an amend, a retraction or a restoration.
pub fn values(athlete: &str, record: &Record) -> Vec<(Column, String)> {
    if !is_a_row(record) {
        return Vec::new();
    }
    let mut cells = Cells::default();
    cells.fill(athlete, record);
    Column::ALL
        .into_iter()
        .filter_map(|column| Some((column, cells.get(column)?.to_owned())))
        .collect()
}

fn is_a_row(record: &Record) -> bool {
    !matches!(
        record.what,
        Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. }
    )
}

/// Whether two records say the same: their rows are the same but for athlete and id. Place in the day, revision and
/// device are no values. An import whose id is there already asks this, to tell a repetition from a change.
pub fn same_values(one: &Record, other: &Record) -> bool {
    let cells = |record: &Record| {
        let mut cells = Cells::default();
        cells.set(Column::Date, &record.at);
        cells.add(&record.what);
        cells
    };
    cells(one) == cells(other)
}
