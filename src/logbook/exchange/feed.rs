//! The same reading line by line, for rows that come one at a time and are saved one at a time.

use super::flaw::{Flaw, LONGEST_CELL, MOST_COLUMNS};
use super::listing::Listing;
use super::reading::{Reading, flawed, is_blank};
use super::table::Table;
use super::{Import, Row};

/// Longest row, bytes: all its cells at their longest.
const LONGEST_ROW: usize = LONGEST_CELL * MOST_COLUMNS;

/// Rows of a file of which the end hasn't come yet. The options' ladders join nobody here: that needs the whole file.
pub struct Feed<'i> {
    import: &'i Import<'i>,
    reading: Option<Reading<'i>>,
    /// Lines of a row that isn't whole yet.
    pending: Vec<u8>,
    /// The physical line on which they begin.
    line: usize,
    /// Quotes in them; an odd number means that one is open.
    quotes: usize,
}

/// What a line completed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fed {
    /// Whole rows; one that is the first of an athlete without a name record brings it along.
    pub rows: Vec<Row>,
    /// What was kept although it isn't understood.
    pub notes: Listing,
    /// What is wrong with the row or header after these rows, if anything. Nothing more should be fed then.
    pub wrong: Option<Listing>,
}

impl<'i> Feed<'i> {
    /// A file that begins now.
    pub fn new(import: &'i Import<'i>) -> Self {
        Self {
            import,
            reading: None,
            pending: Vec::new(),
            line: 1,
            quotes: 0,
        }
    }

    /// Takes the next physical line, its line end included.
    pub fn line(&mut self, bytes: &[u8]) -> Fed {
        let first = self.pending.is_empty();
        self.pending.extend_from_slice(bytes);
        self.quotes += bytes.iter().filter(|byte| **byte == b'"').count();
        let open = !self.quotes.is_multiple_of(2) && self.pending.len() <= LONGEST_ROW;
        // A stray quote is told at once and doesn't wait for another to close it.
        if open && (!first || self.awaits_a_quote()) {
            return Fed::default();
        }
        self.end()
    }

    /// Says that nothing more comes.
    pub fn end(&mut self) -> Fed {
        let pending = std::mem::take(&mut self.pending);
        self.quotes = 0;
        let mut fed = Fed::default();
        let mut table = Table::new(&pending, self.import.options.delimiter.byte(), self.line);
        if let Err(wrong) = self.read(&mut table, &mut fed) {
            fed.wrong = Some(wrong);
        }
        self.line = table.spot().line;
        fed
    }

    fn awaits_a_quote(&self) -> bool {
        let mut table = Table::new(&self.pending, self.import.options.delimiter.byte(), self.line);
        let mut cells = Vec::new();
        std::iter::from_fn(|| table.next(&mut cells)).any(|read| matches!(read, Err((Flaw::OpenQuote, _))))
    }

    fn read(&mut self, table: &mut Table<'_>, fed: &mut Fed) -> Result<(), Listing> {
        let mut cells = Vec::new();
        loop {
            let Some(reading) = &mut self.reading else {
                let start = table.spot();
                match table.next(&mut cells) {
                    None => return Ok(()),
                    Some(Ok(())) if is_blank(&cells) => {}
                    Some(Ok(())) => {
                        self.reading = Some(Reading::with_header(self.import, table, &cells, start.line)?)
                    }
                    Some(Err((flaw, spot))) => return Err(flawed(self.import, table, flaw, spot).into()),
                }
                continue;
            };
            let more = reading.row(table, &mut cells)?;
            let sheet = std::mem::take(&mut reading.sheet);
            fed.notes.extend(sheet.notes.listed);
            for mut row in sheet.rows {
                reading.name_in(&mut row);
                fed.rows.push(row);
            }
            if !sheet.problems.is_empty() {
                return Err(sheet.problems);
            }
            if !more {
                return Ok(());
            }
        }
    }
}
