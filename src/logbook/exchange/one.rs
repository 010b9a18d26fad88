//! One record as the row that `export` writes of it, changed field by field and read back by import's own code. So what a
//! record may say is ruled in one place, for the command line and the window alike.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::logbook::names::Name;
use crate::logbook::record::{Fact, Record};
use crate::logbook::{Log, Written};
use crate::problem::Problem;

use super::{Column, Import, Listing, Options, Row, Sheet, guarded, values};

/// The cells of a row, as a file has them; empty ones are absent.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct OneRow(BTreeMap<Column, String>);

impl OneRow {
    /// The row that `export` writes of a record.
    pub fn of(athlete: &str, record: &Record) -> Self {
        let cells = values(athlete, record).into_iter();
        Self(cells.map(|(column, text)| (column, guarded(&text))).collect())
    }

    /// Whether there is something in `column`.
    pub fn has(&self, column: Column) -> bool {
        self.0.contains_key(&column)
    }

    /// The row without what is in `column`.
    pub fn without(mut self, column: Column) -> Self {
        self.0.remove(&column);
        self
    }

    /// Puts a text into `column`; an empty one empties it.
    pub fn put(&mut self, column: Column, text: &str) {
        let text = text.trim();
        if text.is_empty() {
            self.0.remove(&column);
        } else {
            self.0.insert(column, guarded(text));
        }
    }

    fn cell(&self, column: Column) -> &str {
        self.0.get(&column).map_or("", String::as_str)
    }
}

/// Why a record can't say that.
#[derive(Debug, Clone, PartialEq)]
pub enum NotAmended {
    /// It is an amend, a retraction or a restoration: what it changed is amended instead.
    IsChange,
    /// A record needs its day.
    NoDay,
    /// A value is wrong; the column, where one can be told.
    Wrong(Option<Column>, Box<Problem>),
    /// Every field was taken away: that is a retraction.
    NothingLeft,
    /// It would be two records.
    TwoRecords,
    /// Only a profile has a name.
    NoName,
}

/// What rows are read with.
pub struct RowReader<'r> {
    /// The movements and ladders in force.
    pub catalogue: &'r Catalogue,
    /// The device that writes.
    pub device: &'r str,
}

impl RowReader<'_> {
    /// Reads rows.
    ///
    /// # Errors
    /// When the first of them could not be read at all.
    pub fn sheet(&self, rows: &[OneRow]) -> Result<Sheet, Listing> {
        let options = Options::default();
        let import = Import {
            file: "",
            options: &options,
            catalogue: self.catalogue,
            device: self.device,
            // A name comes from the writer, who knows under the lock whether it is needed.
            known: &|_| true,
        };
        import.read(text(rows).as_bytes())
    }

    /// The record as it is to be after `change`; `renamed` is a profile's new name, or that it goes. What it said before is
    /// kept even where the catalogue no longer knows it; what is said now must be sound.
    ///
    /// # Errors
    /// When a record can't say that; nothing is written here.
    pub fn amended(
        &self,
        athlete: &str,
        old: &Record,
        change: impl FnOnce(&mut OneRow),
        renamed: Option<Option<Name>>,
    ) -> Result<Record, NotAmended> {
        if is_change(&old.what) {
            return Err(NotAmended::IsChange);
        }
        let before = OneRow::of(athlete, old);
        let mut after = before.clone();
        change(&mut after);
        if !after.has(Column::Date) {
            return Err(NotAmended::NoDay);
        }
        let known = self.strictly(&before)?.listed;
        let is_new = |problem: &&Problem| known.iter().all(|other| other.what != problem.what);
        let row = after.clone().without(Column::Id);
        if let Some(problem) = self.strictly(&after)?.listed.iter().find(is_new) {
            return Err(wrong(&row, problem));
        }
        let sheet = self
            .sheet(std::slice::from_ref(&after))
            .map_err(|listing| first_wrong(&after, &listing))?;
        named(only_record(&after, sheet)?, old, renamed)
    }

    /// The one record that a new row of an athlete says.
    ///
    /// # Errors
    /// When a record can't say that; nothing is written here.
    pub fn single(&self, athlete: &str, fill: impl FnOnce(&mut OneRow)) -> Result<Record, NotAmended> {
        let mut row = OneRow::default();
        fill(&mut row);
        row.put(Column::Athlete, athlete);
        if !row.has(Column::Date) {
            return Err(NotAmended::NoDay);
        }
        let sheet = self
            .sheet(std::slice::from_ref(&row))
            .map_err(|listing| first_wrong(&row, &listing))?;
        only_record(&row, sheet)
    }

    /// What is wrong with a row that isn't known to be an export of ours.
    fn strictly(&self, row: &OneRow) -> Result<Listing, NotAmended> {
        let row = row.clone().without(Column::Id);
        let sheet = self.sheet(std::slice::from_ref(&row));
        Ok(sheet.map_err(|listing| first_wrong(&row, &listing))?.problems)
    }
}

/// The amend that makes `old` say what `new` says: on another day it comes after what `log` has there.
pub fn amend_of(old: &Record, new: Record, log: Option<&Log>) -> Fact {
    let stays = old.at.date() == new.at.date();
    let nth = if stays {
        old.nth
    } else {
        log.map_or(0, |log| log.count_on(Written::date(&new.at)))
    };
    Fact::Amend {
        target: old.id,
        at: new.at,
        nth,
        what: Box::new(new.what),
    }
}

fn is_change(what: &Fact) -> bool {
    matches!(
        what,
        Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. }
    )
}

fn first_wrong(row: &OneRow, listing: &Listing) -> NotAmended {
    match listing.listed.first() {
        Some(problem) => wrong(row, problem),
        None => NotAmended::NothingLeft,
    }
}

fn wrong(row: &OneRow, problem: &Problem) -> NotAmended {
    NotAmended::Wrong(column_at(row, problem.place.column), Box::new(problem.clone()))
}

/// The one record of a sheet.
fn only_record(row: &OneRow, sheet: Sheet) -> Result<Record, NotAmended> {
    if let Some(problem) = sheet.problems.listed.first() {
        return Err(wrong(row, problem));
    }
    let mut records = sheet.rows.into_iter().flat_map(|row: Row| row.records);
    match (records.next(), records.next()) {
        (Some(record), None) => Ok(record),
        (None, _) => Err(NotAmended::NothingLeft),
        (Some(_), Some(_)) => Err(NotAmended::TwoRecords),
    }
}

/// The record with the name that a profile had or gets: a row has no cell for it.
fn named(mut new: Record, old: &Record, renamed: Option<Option<Name>>) -> Result<Record, NotAmended> {
    let was = match &old.what {
        Fact::Profile { name, .. } => Some(name.clone()),
        _ => None,
    };
    let renamed = renamed.map(|name| name.map(|name| name.as_str().to_owned()));
    match &mut new.what {
        Fact::Profile { name, .. } if was.is_some() => *name = renamed.or(was).flatten(),
        // A row of athlete and date alone names the athlete; here it means that every field was taken away.
        Fact::Profile { name, .. } if renamed.is_none() => *name = None,
        _ if renamed.is_some() => return Err(NotAmended::NoName),
        _ => {}
    }
    match &new.what {
        Fact::Profile {
            name: None,
            born: None,
            sex: None,
            height_cm: None,
        } => Err(NotAmended::NothingLeft),
        _ => Ok(new),
    }
}

/// Rows as CSV with the columns that any of them fills.
fn text(rows: &[OneRow]) -> String {
    let columns: Vec<Column> = Column::ALL
        .into_iter()
        .filter(|column| rows.iter().any(|row| row.has(*column)))
        .collect();
    let line = |cells: Vec<String>| cells.join(",") + "\r\n";
    let header = line(columns.iter().map(|column| column.name().to_owned()).collect());
    let body = rows.iter().map(|row| {
        line(
            columns
                .iter()
                .map(|column| in_quotes(row.cell(*column)))
                .collect(),
        )
    });
    std::iter::once(header).chain(body).collect()
}

fn in_quotes(text: &str) -> String {
    format!("\"{}\"", text.replace('"', "\"\""))
}

/// The column whose cell holds the character at `at`, from 1, in the line that [`text`] makes of this row alone. A remark
/// is its last cell, so line ends in it move no other.
fn column_at(row: &OneRow, at: usize) -> Option<Column> {
    let mut begins = 1;
    let mut found = None;
    for (column, text) in &row.0 {
        if begins <= at {
            found = Some(*column);
        }
        begins += in_quotes(text).chars().count() + 1;
    }
    found
}
