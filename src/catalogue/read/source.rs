//! A file's text with the places in it: from bytes to line and column, and a problem with its excerpt.

use std::ops::Range;

use crate::problem::{LONGEST_EXCERPT, Place, Problem, visible};

/// Characters of a long line that are kept before the marked ones.
const LEAD: usize = 60;
/// Characters that the marked part is given room for.
const ROOM: usize = 40;

/// A file that is being read.
pub(super) struct Source<'a> {
    pub file: &'a str,
    /// The text without byte order mark.
    pub text: &'a str,
}

impl<'a> Source<'a> {
    pub fn new(file: &'a str, text: &'a str) -> Self {
        Self {
            file,
            text: text.strip_prefix('\u{feff}').unwrap_or(text),
        }
    }

    /// The byte at a line and column as RON counts them, both from 1, columns in characters.
    pub fn offset(text: &str, line: usize, column: usize) -> usize {
        let mut start = 0;
        for _ in 1..line {
            match text.get(start..).and_then(|rest| rest.find('\n')) {
                Some(found) => start += found + 1,
                None => return text.len(),
            }
        }
        let rest = text.get(start..).unwrap_or_default();
        rest.char_indices()
            .nth(column.saturating_sub(1))
            .map_or(text.len(), |(ahead, _)| start + ahead)
    }

    /// The line of a byte, from 1.
    pub fn line(&self, at: usize) -> usize {
        let before = self.text.get(..floor(self.text, at)).unwrap_or_default();
        before.matches('\n').count() + 1
    }

    /// `problem` put at `span` of this file, with the line shown and the span marked.
    pub fn at(&self, span: Range<usize>, problem: impl FnOnce(Place) -> Problem) -> Problem {
        let start = floor(self.text, span.start);
        let end = floor(self.text, span.end).max(start);
        let before = self.text.get(..start).unwrap_or_default();
        let line_start = before.rfind('\n').map_or(0, |found| found + 1);
        let line = self.line(start);
        let lead = self.text.get(line_start..start).unwrap_or_default();
        let rest = shown_of(self.text.get(start..).unwrap_or_default());
        let marked = shown_of(self.text.get(start..end).unwrap_or_default()).trim_end();
        let place = Place::new(self.file, line, lead.chars().count() + 1);
        let (shown, from) = shorten(lead);
        let shown_rest = printable(rest);
        let width = printable(marked).chars().count();
        problem(place).with_excerpt(&format!("{shown}{shown_rest}"), from, from + width)
    }

    /// A problem of the file as a whole.
    pub fn whole(&self, what: impl Into<String>, mend: impl Into<String>) -> Problem {
        Problem::error(Place::whole(self.file), what, mend)
    }
}

/// The nearest character boundary at or below `at`.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// A part of a line as an excerpt shows it: tabs are one space, so that the marks stand under what they mean.
fn printable(part: &str) -> String {
    visible(&part.replace('\t', " "))
}

/// What an excerpt can show of a text: its first line, as far as an excerpt goes.
fn shown_of(text: &str) -> &str {
    let end = text
        .char_indices()
        .take(LONGEST_EXCERPT)
        .find(|(_, c)| *c == '\n')
        .map(|(at, _)| at)
        .or_else(|| text.char_indices().nth(LONGEST_EXCERPT).map(|(at, _)| at));
    let line = text.get(..end.unwrap_or(text.len())).unwrap_or_default();
    line.strip_suffix('\r').unwrap_or(line)
}

/// The text before the marked characters, cut from the left where the line is long, and its length in characters.
fn shorten(lead: &str) -> (String, usize) {
    let last: Vec<char> = lead.chars().rev().take(LONGEST_EXCERPT).collect();
    let shown = printable(&last.into_iter().rev().collect::<String>());
    let length = shown.chars().count();
    if length <= LONGEST_EXCERPT - ROOM {
        return (shown, length);
    }
    let kept: String = shown.chars().skip(length - LEAD).collect();
    (format!("…{kept}"), LEAD + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_counts_characters_and_the_marks_stand_under_them() {
        let source = Source::new("a.ron", "\u{feff}(\r\n\tid: \"Zoë\", x: 1)\r\n");
        let at = source.text.find("x:").unwrap();
        let problem = source.at(at..at + 1, |place| Problem::error(place, "no x", "leave it out"));
        assert_eq!(
            problem.to_string(),
            "a.ron:2:13: no x\n  2 |  id: \"Zoë\", x: 1)\n    |             ^\n  mend: leave it out"
        );
    }

    #[test]
    fn a_line_and_column_of_ron_lead_back_to_the_byte() {
        let text = "ab\ncé(d";
        assert_eq!(Source::offset(text, 2, 3), text.find('(').unwrap());
        assert_eq!(Source::offset(text, 9, 9), text.len());
    }
}
