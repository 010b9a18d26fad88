//! One row: what its cells say, and everything that is wrong with them.

use crate::problem::{Place, Problem, quoted};
use crate::units::{Given, KG_PER_LB, Typed, Unit};

use super::Import;
use super::cell::{NoDate, number, unguarded};
use super::column::Column;
use super::header::{Header, place};
use super::table::{Cell, Spot, Table};
use crate::logbook::Written;
use crate::logbook::record::Id;

/// A row under reading, with what was found wrong so far.
pub(super) struct Check<'x, 'a> {
    pub(super) import: &'x Import<'x>,
    pub(super) header: &'x Header,
    pub(super) table: &'x Table<'a>,
    pub(super) cells: &'x [Cell<'a>],
    pub(super) start: Spot,
    /// The row carries an id: it is an export of ours, and what the catalogue doesn't know is kept with a note.
    pub(super) ours: bool,
    /// Errors; the row is not read if there is one.
    pub(super) problems: Vec<Problem>,
    /// What was kept although it isn't understood.
    pub(super) notes: Vec<Problem>,
}

impl<'x> Check<'x, '_> {
    /// The cell's text to the letter, without a guard.
    pub(super) fn verbatim(&self, column: Column) -> Option<&'x str> {
        let cell = self.cells.get(self.header.index(column)?)?;
        Some(unguarded(&cell.text)).filter(|text| !text.is_empty())
    }

    /// The cell's text without a guard and outer spaces; none if nothing is left.
    pub(super) fn text(&self, column: Column) -> Option<&'x str> {
        let text = self.verbatim(column)?.trim();
        (!text.is_empty()).then_some(text)
    }

    pub(super) fn place(&self, column: Column) -> Place {
        let cell = self.header.index(column).and_then(|index| self.cells.get(index));
        match cell {
            Some(cell) => place(self.import.file, self.table, cell),
            None => Place::new(self.import.file, self.start.line, self.table.column(self.start)),
        }
    }

    /// An error in `column`.
    pub(super) fn bad(&mut self, column: Column, what: impl Into<String>, mend: impl Into<String>) {
        self.problems.push(Problem::error(self.place(column), what, mend));
    }

    /// An error in `column`, or only a note where the row is an export of ours.
    pub(super) fn odd(&mut self, column: Column, what: impl Into<String>, mend: impl Into<String>) {
        if self.ours {
            let place = self.place(column);
            self.notes.push(Problem::damage(
                place,
                format!("{}; kept as written", what.into()),
                mend,
            ));
        } else {
            self.bad(column, what, mend);
        }
    }

    /// Says that `column` is neither of some words.
    pub(super) fn not_one_of(&mut self, column: Column, text: &str, words: &str) {
        let what = format!("unknown {} {}", column.name(), quoted(text));
        self.bad(column, what, format!("use {words}"));
    }

    /// The record's id, if the row carries one.
    pub(super) fn id(&mut self) -> Option<Id> {
        let text = self.text(Column::Id)?;
        // Reading accepts 26 letters whose value doesn't fit; such a text is no ULID.
        let id = Id::from_string(text)
            .ok()
            .filter(|id| id.to_string().eq_ignore_ascii_case(text));
        if id.is_none() {
            let what = format!("id {} is no ULID", quoted(text));
            self.bad(
                Column::Id,
                what,
                "leave the cell empty, or take the id that export wrote",
            );
        }
        id
    }

    /// A date or time in the file's order.
    pub(super) fn date(&mut self, column: Column) -> Option<Written> {
        let text = self.text(column)?;
        let order = self.import.options.dates;
        let wrong = match order.read(text) {
            Ok(written) => return Some(written),
            Err(wrong) => wrong,
        };
        let (example, name, shown) = (order.example(), column.name(), quoted(text));
        match wrong {
            NoDate::Form => self.bad(
                column,
                format!("{name} {shown} is no date"),
                format!("write it as {example}, or say in which order the file has it with --dates ymd, dmy or mdy"),
            ),
            NoDate::Day => self.bad(
                column,
                format!("{name} {shown} is no day of the calendar"),
                format!("write a day that exists as {example}, or say in which order the file has it with --dates"),
            ),
            NoDate::Year => self.bad(
                column,
                format!("{name} {shown} is outside the years 1900 to 2100"),
                "correct the year",
            ),
            NoDate::Time => self.bad(
                column,
                format!("{name} {shown} has no time that a clock shows"),
                format!("write it as {example} or {example} 17:30"),
            ),
        }
        None
    }

    /// A number.
    pub(super) fn number(&mut self, column: Column) -> Option<f64> {
        let text = self.text(column)?;
        let decimal = self.import.options.decimal;
        let value = number(text, decimal);
        if value.is_none() {
            let what = format!("{} {} is no number", column.name(), quoted(text));
            let comma = text.contains(',') && number(&text.replacen(',', ".", 1), decimal).is_some();
            let mend = if comma {
                "write it with a point, or read the file with --decimal ,"
            } else {
                "write digits with at most one decimal mark, without a unit"
            };
            self.bad(column, what, mend);
        }
        value
    }

    /// A number from `low` to `high`, both included, of which `unit` says the unit.
    pub(super) fn within(&mut self, column: Column, low: f64, high: f64, unit: &str) -> Option<f64> {
        let value = self.number(column)?;
        if (low..=high).contains(&value) {
            return Some(value);
        }
        self.outside(column, &format!("{low} to {high}{unit}"));
        None
    }

    /// Says that the number in `column` is outside `range`.
    pub(super) fn outside(&mut self, column: Column, range: &str) {
        let text = self.text(column).unwrap_or_default();
        let what = format!("{} {} is outside {range}", column.name(), quoted(text));
        self.bad(column, what, format!("give {range}, or leave the cell empty"));
    }

    /// A whole number from `low` to `high`; `5.0` is 5.
    pub(super) fn whole(&mut self, column: Column, low: u16, high: u16) -> Option<u16> {
        let value = self.within(column, low.into(), high.into(), "")?;
        let text = self.text(column)?;
        let digits = text.trim_start_matches(['+', '-']).split(['.', ',']).next()?;
        if value.fract() == 0.0 {
            // "-0" and ".0" are 0.
            return if value == 0.0 {
                Some(0)
            } else {
                digits.parse().ok()
            };
        }
        let what = format!("{} {} is not whole", column.name(), quoted(text));
        self.bad(column, what, format!("give a whole number from {low} to {high}"));
        None
    }

    /// A mass in one of two columns, `low` to `high` kg.
    pub(super) fn mass(&mut self, kg: Column, lb: Column, low: f64, high: f64) -> Option<Typed> {
        let (column, unit) = match (self.text(kg), self.text(lb)) {
            (None, None) => return None,
            (Some(_), None) => (kg, Unit::Kg),
            (None, Some(_)) => (lb, Unit::Lb),
            (Some(_), Some(_)) => {
                let what = format!("{} and {} are both given", kg.name(), lb.name());
                self.bad(lb, what, "keep the one that was weighed");
                return None;
            }
        };
        let value = self.number(column)?;
        let typed = Typed::new(value, unit).ok();
        let fits = typed.filter(|typed| (low..=high).contains(&typed.mass().kg()));
        if fits.is_none() {
            self.outside(
                column,
                &match unit {
                    Unit::Kg => format!("{low} to {high} kg"),
                    Unit::Lb => format!("{:.1} to {:.1} lb", low / KG_PER_LB, high / KG_PER_LB),
                },
            );
        }
        fits
    }

    /// The reserve, from `rir` or `rpe`.
    pub(super) fn left(&mut self) -> Option<Given> {
        let (rir, rpe) = (self.text(Column::Rir).is_some(), self.text(Column::Rpe).is_some());
        if rir && rpe {
            self.bad(
                Column::Rpe,
                "rir and rpe are both given",
                "keep the one that was noted",
            );
            return None;
        }
        let (column, low, made): (_, _, fn(f64) -> Result<Given, _>) = match rpe {
            true => (Column::Rpe, 5.0, Given::rpe),
            false => (Column::Rir, 0.0, Given::rir),
        };
        let value = self.within(column, low, 10.0, "")?;
        let given = made(value).ok();
        if given.is_none() {
            let shown = quoted(self.text(column).unwrap_or_default());
            let what = format!("{} {shown} is neither whole nor a half", column.name());
            self.bad(column, what, format!("give {low} to 10 in halves"));
        }
        given
    }
}
