//! The bytes of a journal as records and problems, line by line.
//!
//! Invariant: one bad line costs itself and nothing else, and always says so with file, line and column.

use rayon::prelude::*;

use crate::problem::{Place, Problem, Severity};

use super::line::{self, Fault};
use super::record::Record;

/// Longest line that is read, bytes with its end.
pub const LONGEST_LINE: usize = 1 << 20;

/// Most problems listed for one file; the rest are counted.
pub const MOST_PROBLEMS: usize = 100;

/// Characters of a faulty line that a message shows.
const SHOWN: usize = 40;

/// Lines that one task reads; enough to make splitting cheap, few enough to share the work.
const LINES_A_TASK: usize = 512;

/// So few lines are read sooner than other threads wake, on a machine that is busy too: years of one athlete. From a
/// measurement on 2 cores.
const FEW_LINES: usize = 8192;

/// A record with the bytes that it was read from, which decide between equal revisions.
#[derive(Debug, Clone)]
pub struct Entry<'a> {
    /// The record.
    pub record: Record,
    /// Its line without byte order mark, line end and checksum.
    pub body: &'a str,
    /// The athlete's folder that the line names; only in a pending file.
    pub folder: Option<String>,
}

/// What a journal holds.
#[derive(Debug, Clone, Default)]
pub struct Journal<'a> {
    /// Its records, in file order.
    pub entries: Vec<Entry<'a>>,
    /// What is wrong with it, in file order, at most [`MOST_PROBLEMS`] and one that counts the rest.
    pub problems: Vec<Problem>,
    /// The highest revision in it, of kinds that are not known too.
    pub highest_rev: u32,
    /// Lines that gave no record although they hold something.
    pub unread: usize,
}

/// How a file's lines are framed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A journal: one record a line.
    Journal,
    /// A pending batch: each line names its athlete's folder too.
    Pending,
}

/// Reads the journal `bytes`, called `file` in problems.
pub fn read<'a>(file: &str, bytes: &'a [u8], form: Form) -> Journal<'a> {
    let lines = lines(bytes);
    let read_task = |(task, lines): (usize, &[Line<'a>])| {
        let mut part = Journal::default();
        for (at, line) in lines.iter().enumerate() {
            part.take(file, task * LINES_A_TASK + at + 1, *line, form);
        }
        part
    };
    let parts: Vec<Journal<'a>> = if lines.len() <= FEW_LINES {
        vec![read_task((0, &lines))]
    } else {
        lines
            .par_chunks(LINES_A_TASK)
            .enumerate()
            .map(read_task)
            .collect()
    };
    let mut parts = parts.into_iter();
    let mut journal = parts.next().unwrap_or_default();
    journal
        .entries
        .reserve(lines.len().saturating_sub(journal.entries.len()));
    for part in parts {
        journal.entries.extend(part.entries);
        journal.problems.extend(part.problems);
        journal.highest_rev = journal.highest_rev.max(part.highest_rev);
        journal.unread += part.unread;
    }
    journal.limit_problems(file);
    journal
}

/// A line's bytes without its end, and whether it had one.
#[derive(Debug, Clone, Copy)]
struct Line<'a> {
    bytes: &'a [u8],
    is_ended: bool,
}

fn lines(bytes: &[u8]) -> Vec<Line<'_>> {
    bytes
        .split_inclusive(|byte| *byte == b'\n')
        .map(|line| match line.strip_suffix(b"\n") {
            Some(ended) => Line {
                bytes: ended,
                is_ended: true,
            },
            None => Line {
                bytes: line,
                is_ended: false,
            },
        })
        .collect()
}

/// `bytes` without byte order mark and carriage return.
fn bare(bytes: &[u8]) -> &[u8] {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    bytes.strip_suffix(b"\r").unwrap_or(bytes)
}

impl<'a> Journal<'a> {
    fn take(&mut self, file: &str, number: usize, line: Line<'a>, form: Form) {
        let place = |column| Place::new(file, number, column);
        let bytes = bare(line.bytes);
        if bytes.len() >= LONGEST_LINE {
            self.lost(Problem::error(
                place(1),
                format!("this line is longer than {LONGEST_LINE} bytes and is not read"),
                "no record is that long; restore the file from a backup",
            ));
            return;
        }
        let bytes = self.without_zeros(place(1), bytes);
        let text = match std::str::from_utf8(bytes) {
            Ok(text) => text,
            Err(error) => {
                let before = bytes.get(..error.valid_up_to()).unwrap_or_default();
                let column = line::columns(&String::from_utf8_lossy(before)) + 1;
                self.lost(Problem::error(
                    place(column),
                    "this line is not UTF-8 text and is not read",
                    "restore the line from another machine's copy or a backup; it is kept as it is",
                ));
                return;
            }
        };
        if text.trim().is_empty() {
            return;
        }
        if is_merge_marker(text) {
            self.problems.push(Problem::damage(
                place(1),
                "a merge left its marker here",
                "delete this line and keep the records on both sides of it",
            ));
            return;
        }
        if !line.is_ended && !line::is_sealed(text) {
            self.lost(
                Problem::error(
                    place(1),
                    "the last line is torn: its end is missing",
                    "nothing to do if another machine's copy is still on its way; the next write on its own machine sets it aside",
                )
                .with_excerpt(&shown(text, 1).0, 0, SHOWN),
            );
            return;
        }
        self.take_text(file, number, text, form);
    }

    /// `bytes` after zeros that a power cut left before them.
    fn without_zeros(&mut self, place: Place, bytes: &'a [u8]) -> &'a [u8] {
        let zeros = bytes.iter().take_while(|byte| **byte == 0).count();
        if zeros > 0 {
            self.lost(Problem::error(
                place,
                format!(
                    "{zeros} zero bytes stand here, as a power cut leaves them; what was to be here is lost"
                ),
                "see whether another machine's copy or a backup has a record here",
            ));
        }
        bytes.get(zeros..).unwrap_or_default()
    }

    fn take_text(&mut self, file: &str, number: usize, text: &'a str, form: Form) {
        let (folder, reading, body) = match form {
            Form::Journal => {
                let (body, _) = line::split_checksum(text);
                (None, line::read(text), body)
            }
            Form::Pending => match super::pending::split(text) {
                Ok((folder, body)) => (Some(folder), line::read_body(body), body),
                Err(fault) => {
                    self.unread += 1;
                    self.problems.push(problem_of(file, number, text, fault));
                    return;
                }
            },
        };
        for fault in reading.faults {
            self.problems.push(problem_of(file, number, text, fault));
        }
        match reading.rev {
            Some(rev) => self.highest_rev = self.highest_rev.max(rev),
            None => self.unread += 1,
        }
        if let Some(record) = reading.record {
            self.entries.push(Entry { record, body, folder });
        }
    }

    fn lost(&mut self, problem: Problem) {
        self.unread += 1;
        self.problems.push(problem);
    }

    fn limit_problems(&mut self, file: &str) {
        let more = self.problems.len().saturating_sub(MOST_PROBLEMS);
        if more == 0 {
            return;
        }
        // The worst of what is not listed: its weight must not get lost with its text.
        let worst = self.problems.iter().map(|problem| problem.severity).max();
        self.problems.truncate(MOST_PROBLEMS);
        self.problems.push(Problem {
            severity: worst.unwrap_or(Severity::Error),
            ..Problem::error(
                Place::whole(file),
                format!("{more} more problems are not listed"),
                "mend the first ones, or restore the file from a backup",
            )
        });
    }
}

/// The lines that git leaves around a conflict.
fn is_merge_marker(text: &str) -> bool {
    ["<<<<<<<", "|||||||", "=======", ">>>>>>>"]
        .iter()
        .any(|marker| text.starts_with(marker))
}

fn problem_of(file: &str, number: usize, text: &str, fault: Fault) -> Problem {
    let (part, from) = shown(text, fault.column);
    let problem = Problem {
        severity: fault.severity,
        ..Problem::error(Place::new(file, number, fault.column), fault.what, fault.mend)
    };
    problem.with_excerpt(&part, from, from + 1)
}

/// At most [`SHOWN`] characters of a line around `column`, and where that column stands in them, from 0.
fn shown(text: &str, column: usize) -> (String, usize) {
    let at = column.saturating_sub(1);
    let length = line::columns(text);
    let start = at.saturating_sub(SHOWN / 2).min(length.saturating_sub(SHOWN));
    let part: String = text.chars().skip(start).take(SHOWN).collect();
    (part, at - start)
}

/// What the end of a journal asks of its next writer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tail {
    /// Empty, or ended as it should be.
    Whole,
    /// A whole record whose line end is missing.
    NeedsLineEnd,
    /// Torn bytes from this offset.
    Torn(usize),
}

/// How the journal `bytes` ends.
pub fn tail(bytes: &[u8]) -> Tail {
    let start = bytes
        .iter()
        .rposition(|byte| *byte == b'\n')
        .map_or(0, |at| at + 1);
    let tail = bytes.get(start..).unwrap_or_default();
    if tail.is_empty() {
        return Tail::Whole;
    }
    let sealed = std::str::from_utf8(bare(tail))
        .is_ok_and(|text| line::is_sealed(text) && line::read(text).rev.is_some());
    if sealed {
        Tail::NeedsLineEnd
    } else {
        Tail::Torn(start)
    }
}
