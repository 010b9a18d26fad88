//! Import and export: a spreadsheet's bytes in, records and problems out, and back. Pure: no disk, no clock.
//!
//! What holds, and is tested:
//! - A row gives the same ids on every machine, in any order of rows, in either order of dates: an id is a hash of what the
//!   row says ([`ident`]) and of how many equal rows came before. So a file read twice adds nothing and three equal sets stay
//!   three; `sets: 3` is the same as three equal rows.
//! - A record's place in the day (`nth`) is its row's place among the athlete's rows of that date, bad ones counted too, so
//!   that a mended file puts its row where it belongs. Facts of one row share the place; a row with `sets: 3` takes three.
//! - Export writes one row a record in order. Read back, each row has its old id and a new place; as the rows lie in order
//!   (time as written, place, id), the order is the old one, and so are the bytes of the next export.
//! - A row with an id is an export of ours: what the catalogue no longer knows is kept as text with a note, never refused.

mod athletes;
mod cell;
mod check;
mod close;
mod column;
mod facts;
mod feed;
mod flaw;
mod header;
mod ident;
mod listing;
mod names;
mod one;
mod options;
mod points;
mod rails;
mod reading;
mod set;
mod table;
mod write;

use crate::catalogue::Catalogue;
use crate::logbook::names::Name;
use crate::logbook::record::{Fact, Load, Record};
use crate::problem::{Place, Problem};
use crate::units::Unit;

pub use cell::guard;
pub use cell::guarded;
pub use column::{Column, Meaning, meanings};
pub use feed::{Fed, Feed};
pub use listing::{Listing, MOST_LISTED};
pub use one::{NotAmended, OneRow, RowReader, amend_of};
pub use options::{BadOption, Dates, Decimal, Delimiter, Options, Renaming};
pub use points::{Asked, PointRow, Points, points};
pub use write::{outcome_word, phase_word, same_values, sex_word, values, write};

use flaw::LARGEST_FILE;
use reading::Reading;
use table::Table;

/// All that a file is read with.
#[derive(Clone, Copy)]
pub struct Import<'i> {
    /// The file's name, for messages.
    pub file: &'i str,
    /// How to read it.
    pub options: &'i Options,
    /// The movements and ladders in force.
    pub catalogue: &'i Catalogue,
    /// The device that writes the records.
    pub device: &'i str,
    /// Whether the logbook has a record with this name for its athlete.
    pub known: &'i dyn Fn(&Name) -> bool,
}

/// What a file says.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sheet {
    /// The good rows in the file's order. No id comes twice.
    pub rows: Vec<Row>,
    /// What is wrong with the bad ones.
    pub problems: Listing,
    /// How many rows are bad.
    pub bad_rows: usize,
    /// What was kept although it isn't understood, and what adds nothing.
    pub notes: Listing,
}

/// What one row says.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The physical line on which it begins.
    pub line: usize,
    /// Whose it is.
    pub athlete: Name,
    /// The row carries the first record's id itself, in a column `id`.
    pub has_id: bool,
    /// Its records: the set (or the sets) first, else the most telling fact; last what the row brings along, the athlete's
    /// name and joined ladders. Empty for a row that says nothing new.
    pub records: Vec<Record>,
}

impl Sheet {
    /// How many records all rows make.
    pub fn records(&self) -> usize {
        self.rows.iter().map(|row| row.records.len()).sum()
    }

    /// Pounds if there is a mass and every mass is in pounds, else kilograms: the unit of a logbook made for this sheet.
    pub fn unit(&self) -> Unit {
        let units: Vec<Unit> = self
            .rows
            .iter()
            .flat_map(|row| &row.records)
            .flat_map(|record| match &record.what {
                Fact::WeighIn { bodyweight, .. } => [Some(bodyweight.unit()), None],
                Fact::Set(set) => [
                    set.bodyweight.map(|typed| typed.unit()),
                    set.load
                        .map(|(Load::Added(typed) | Load::Assistance(typed))| typed.unit()),
                ],
                _ => [None, None],
            })
            .flatten()
            .collect();
        if units.contains(&Unit::Lb) && !units.contains(&Unit::Kg) {
            Unit::Lb
        } else {
            Unit::Kg
        }
    }
}

impl Import<'_> {
    /// Reads a whole file.
    ///
    /// # Errors
    /// When the file as a whole can't be read: no header, no `date`, no `athlete` and none given, an unknown or double column,
    /// an unknown ladder among the options, or a limit passed. Bad rows are no error here; [`Sheet::problems`] has them.
    pub fn read(&self, bytes: &[u8]) -> Result<Sheet, Listing> {
        if bytes.len() > LARGEST_FILE {
            return Err(self
                .whole("the file has more than 200 MiB", "split it by years")
                .into());
        }
        if bytes.starts_with(b"\xff\xfe") || bytes.starts_with(b"\xfe\xff") {
            return Err(self.whole("the file is UTF-16", "save it as CSV in UTF-8").into());
        }
        let mut table = Table::new(bytes, self.options.delimiter.byte(), 1);
        let mut reading = Reading::open(self, &mut table)?;
        let mut cells = Vec::new();
        while reading.row(&mut table, &mut cells)? {}
        Ok(reading.close())
    }

    fn whole(&self, what: &str, mend: &str) -> Problem {
        Problem::error(Place::whole(self.file), what, mend)
    }
}

/// The headers of a file, as its first line that isn't blank has them; empty if there is none. The window asks this before a
/// person maps columns.
pub fn headers(bytes: &[u8], delimiter: Delimiter) -> Vec<String> {
    let mut table = Table::new(bytes, delimiter.byte(), 1);
    let mut cells = Vec::new();
    while let Some(read) = table.next(&mut cells) {
        let texts: Vec<String> = cells.iter().map(|cell| cell.text.trim().to_owned()).collect();
        if read.is_err() || texts.iter().any(|text| !text.is_empty()) {
            return texts;
        }
    }
    Vec::new()
}
