//! How to read a file: whose rows, which columns, how dates and numbers are written.

use std::str::FromStr;

use crate::problem::quoted;

pub use super::cell::{Dates, Decimal};
pub use super::column::Renaming;

/// An option that can't be meant so, in one line.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct BadOption(pub(super) String);

/// How to read a file.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Options {
    /// Whose rows these are, for a file without a column `athlete`.
    pub athlete: Option<String>,
    /// Ladders that every athlete of the file joins, as of their earliest day in it.
    pub ladders: Vec<String>,
    /// The order of day, month and year.
    pub dates: Dates,
    /// What stands between cells.
    pub delimiter: Delimiter,
    /// The mark between whole and part of a number.
    pub decimal: Decimal,
    /// Columns that the file calls otherwise.
    pub map: Vec<Renaming>,
}

/// What stands between cells: one ASCII character that can't be part of a number, a name or a line end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Delimiter(u8);

impl Default for Delimiter {
    fn default() -> Self {
        Self(b',')
    }
}

impl Delimiter {
    /// The character's byte.
    pub fn byte(self) -> u8 {
        self.0
    }
}

impl FromStr for Delimiter {
    type Err = BadOption;

    /// One character, or the word `tab`.
    fn from_str(text: &str) -> Result<Self, BadOption> {
        match text.as_bytes() {
            b"tab" | b"\\t" | b"\t" => Ok(Self(b'\t')),
            [byte @ (b',' | b';' | b'|' | b':' | b'^' | b'~')] => Ok(Self(*byte)),
            _ => Err(BadOption(format!(
                "{} is no delimiter; use one of , ; | : ^ ~ or the word tab",
                quoted(text)
            ))),
        }
    }
}
