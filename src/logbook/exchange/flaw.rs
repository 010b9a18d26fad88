//! Limits of a file, and why bytes make no row.

/// Largest file, bytes: 200 MiB. Bounds memory; a year of one athlete takes about 100 kB. Common practice, no source.
pub(super) const LARGEST_FILE: usize = 200 << 20;
/// Longest cell, bytes: 64 KiB. Common practice, no source.
pub(super) const LONGEST_CELL: usize = 64 << 10;
/// Most records of one file, `sets` multiplied out: about 2 GB in memory. Common practice, no source.
pub(super) const MOST_RECORDS: usize = 4_000_000;
/// Most columns. Common practice, no source.
pub(super) const MOST_COLUMNS: usize = 256;

/// Why bytes make no row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Flaw {
    /// A quote within a cell that doesn't begin with one (RFC 4180 section 2, rule 5).
    StrayQuote,
    /// Something between the closing quote and the delimiter (rule 5).
    AfterQuote,
    /// A quote that is never closed.
    OpenQuote,
    /// A NUL byte.
    Nul,
    /// Bytes that are not UTF-8.
    NotUtf8,
    /// A cell longer than [`LONGEST_CELL`].
    LongCell,
    /// More than [`MOST_COLUMNS`] cells.
    ManyColumns,
}

impl Flaw {
    /// What is wrong and how to mend it, in words.
    pub fn words(self) -> (String, &'static str) {
        let (what, mend) = match self {
            Flaw::StrayQuote => (
                "a quote within a cell that doesn't begin with one".into(),
                "put the whole cell in quotes and double the quotes in it",
            ),
            Flaw::AfterQuote => (
                "text after a closing quote".into(),
                "end the cell at its quote, or double the quotes in it",
            ),
            Flaw::OpenQuote => (
                "a quote that is never closed".into(),
                "close the quote at the end of the cell",
            ),
            Flaw::Nul => (
                "a NUL byte".into(),
                "save the file as CSV in UTF-8, without NUL bytes",
            ),
            Flaw::NotUtf8 => ("bytes that are not UTF-8".into(), "save the file as CSV in UTF-8"),
            Flaw::LongCell => (
                format!("a cell of more than {LONGEST_CELL} bytes"),
                "shorten the cell, or close the quote before it",
            ),
            Flaw::ManyColumns => (
                format!("more than {MOST_COLUMNS} columns"),
                "leave out the columns that this program doesn't use",
            ),
        };
        (what, mend)
    }
}
