//! One record, one physical line: RON, then a comment with the CRC-32 of all before it.
//!
//! Invariant: what [`write`] makes, [`read`] gives back without a fault, and the bytes of a record never change again.
//! Columns are characters, from 1.

mod fast;
pub(crate) mod ron_text;
mod sound;
pub(crate) mod text;

use std::fmt::Write as _;

use crate::problem::Severity;

pub(crate) use text::{Mass, quote};

use super::record::Record;

/// What stands between a record and its checksum, and begins a comment in RON.
const CHECKSUM_MARK: &str = " //";

/// Digits of a checksum: CRC-32 in hexadecimal.
const CHECKSUM_DIGITS: usize = 8;

/// A fault within one line; the journal knows file and line number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Column in characters, from 1.
    pub column: usize,
    /// How much it matters.
    pub severity: Severity,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: String,
}

impl Fault {
    pub(crate) fn new(
        severity: Severity,
        column: usize,
        what: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        Self {
            column,
            severity,
            what: what.into(),
            mend: mend.into(),
        }
    }
}

/// A line as read: what it said, and what is wrong with it.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// The record, if this version knows its kind and its values can be.
    pub record: Option<Record>,
    /// The revision of the record on this line, also of one that stays in its file and counts in nothing; none if the
    /// line is no record at all.
    pub rev: Option<u32>,
    /// Faults, in reading order.
    pub faults: Vec<Fault>,
}

impl Reading {
    fn known(record: Record, faults: Vec<Fault>) -> Self {
        Self {
            rev: Some(record.rev),
            record: Some(record),
            faults,
        }
    }

    fn kept(rev: u32, fault: Fault) -> Self {
        Self {
            record: None,
            rev: Some(rev),
            faults: vec![fault],
        }
    }

    fn nothing(fault: Fault) -> Self {
        Self {
            record: None,
            rev: None,
            faults: vec![fault],
        }
    }
}

/// The line of `record`: RON and checksum, without the line's end.
pub fn write(record: &Record) -> String {
    sealed(text::record(record))
}

/// The text of `record` before its checksum.
pub(crate) fn body(record: &Record) -> String {
    text::record(record)
}

/// `body` with its checksum.
pub fn sealed(mut body: String) -> String {
    let checksum = crc32fast::hash(body.as_bytes());
    // Writing to a String cannot fail.
    let _ = write!(body, "{CHECKSUM_MARK}{checksum:08x}");
    body
}

/// The line's text before its checksum, and the checksum if the line ends with one.
pub fn split_checksum(line: &str) -> (&str, Option<u32>) {
    let cut = line.len().checked_sub(CHECKSUM_MARK.len() + CHECKSUM_DIGITS);
    let parts = cut.and_then(|cut| line.split_at_checked(cut));
    let Some((body, digits)) = parts.and_then(|(body, end)| Some((body, end.strip_prefix(CHECKSUM_MARK)?)))
    else {
        return (line, None);
    };
    let lower_case = digits
        .bytes()
        .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
    match u32::from_str_radix(digits, 16) {
        Ok(checksum) if lower_case => (body, Some(checksum)),
        _ => (line, None),
    }
}

/// Whether the line ends with the checksum that its text has.
pub fn is_sealed(line: &str) -> bool {
    matches!(split_checksum(line), (body, Some(checksum)) if crc32fast::hash(body.as_bytes()) == checksum)
}

/// Reads one line, without its end.
pub fn read(line: &str) -> Reading {
    let (body, checksum) = split_checksum(line);
    let fits = checksum.map(|checksum| crc32fast::hash(body.as_bytes()) == checksum);
    let mut reading = read_body(body);
    if fits == Some(true) {
        return reading;
    }
    if let Some(column) = second_record(body) {
        reading.faults.push(Fault::new(
            Severity::Error,
            column,
            "a second record stands on this line and is not read",
            "put each record on a line of its own",
        ));
    } else if reading.rev.is_some() {
        // A kind that nobody knows may be a known one, damaged: then the answer lacks a record.
        let severity = match reading.record {
            Some(_) => Severity::Damage,
            None => Severity::Error,
        };
        reading.faults.push(Fault::new(
            severity,
            columns(body).saturating_add(1),
            if fits.is_some() {
                "the checksum does not fit this record: it was changed by hand or damaged"
            } else {
                "this record has no checksum: it was changed by hand or damaged"
            },
            "compare it with another machine's copy or a backup; to change a record, amend it",
        ));
    }
    reading
}

/// Reads the text before the checksum.
pub(crate) fn read_body(body: &str) -> Reading {
    let reading = match fast::set(body) {
        Some(record) => Reading::known(record, Vec::new()),
        None => ron_text::read(body),
    };
    let wrong = reading.record.as_ref().map(sound::check);
    match wrong {
        Some(Err(sound::Unsound { field, what })) => Reading::kept(
            reading.rev.unwrap_or_default(),
            Fault::new(
                Severity::Error,
                column_of(body, field),
                what,
                "the line is kept but counts nowhere; log the right values, and retract this id",
            ),
        ),
        _ => reading,
    }
}

/// Where a second record begins on the same line, after the first one's end.
fn second_record(body: &str) -> Option<usize> {
    let end = body.find(CHECKSUM_MARK)?;
    let start = body.get(end..)?.find("(id:")?;
    Some(columns(body.get(..end + start)?) + 1)
}

/// The column of the field `name`, or of the line if it can't be found.
pub(crate) fn column_of(body: &str, name: &str) -> usize {
    body.find(&format!("{name}:"))
        .and_then(|at| body.get(..at))
        .map_or(1, |before| columns(before) + 1)
}

/// How many characters `text` has.
pub(crate) fn columns(text: &str) -> usize {
    text.chars().count()
}

#[cfg(test)]
mod tests;
