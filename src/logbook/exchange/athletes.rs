//! The athletes of a file.

use std::collections::HashMap;

use chrono::NaiveDate;

use crate::logbook::Written;
use crate::logbook::names::{BadName, Name};

/// Athletes in the order in which the file first names them.
#[derive(Default)]
pub(super) struct Athletes {
    /// Each once.
    pub seen: Vec<Athlete>,
    by_text: HashMap<String, usize>,
    by_name: HashMap<Name, usize>,
}

/// What the file has said of one athlete so far.
pub(super) struct Athlete {
    /// The name.
    pub name: Name,
    /// The first good row, as an index into the sheet's rows.
    pub first: Option<usize>,
    /// Its date, and its place in the day.
    pub came: Option<(Written, u32)>,
    /// The earliest date of a good row.
    pub earliest: Option<NaiveDate>,
    /// A row of the file gives the name.
    pub named: bool,
    /// The first `Profile` that a row with an id makes: its row, and its place among the row's records.
    pub profile: Option<(usize, usize)>,
}

impl Athletes {
    /// The athlete that the cell `text` names.
    pub(super) fn index(&mut self, text: &str) -> Result<usize, BadName> {
        if let Some(index) = self.by_text.get(text) {
            return Ok(*index);
        }
        let name = Name::parse(text)?;
        let index = *self.by_name.entry(name.clone()).or_insert_with(|| {
            self.seen.push(Athlete {
                name,
                first: None,
                came: None,
                earliest: None,
                named: false,
                profile: None,
            });
            self.seen.len() - 1
        });
        self.by_text.insert(text.to_owned(), index);
        Ok(index)
    }
}
