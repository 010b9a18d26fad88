//! The text in its colours: notes quiet, words in quotes, numbers, and the words of a ladder's form. It decides nothing; whatever
//! the text, every letter of it is drawn.

use std::ops::Range;

use egui::text::{LayoutJob, TextFormat};
use egui::{Align, Color32, FontId};

use crate::ui::theme::{Face, Theme};

/// What a stretch of text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// A note for people.
    Note,
    /// In quotes.
    Quoted,
    /// A number.
    Number,
    /// A choice: `Apart`, `Reps`.
    Choice,
    /// Anything else: names of fields, brackets, white space.
    Plain,
}

/// The stretches of a text, one after the other and without gaps.
pub fn parts(text: &str) -> Vec<(Part, Range<usize>)> {
    let mut all: Vec<(Part, Range<usize>)> = Vec::new();
    let mut at = 0;
    while let Some(rest) = text.get(at..).filter(|rest| !rest.is_empty()) {
        let (part, length) = first_part(rest);
        let end = at + length.max(1).min(rest.len());
        match all.last_mut() {
            Some((last, range)) if *last == part && part == Part::Plain => range.end = end,
            _ => all.push((part, at..end)),
        }
        at = end;
    }
    all
}

/// What the text begins with, and how many bytes of it that is.
fn first_part(rest: &str) -> (Part, usize) {
    let mut letters = rest.chars();
    let first = letters.next().unwrap_or(' ');
    let word = |is_in: fn(char) -> bool| rest.find(|c: char| !is_in(c)).unwrap_or(rest.len());
    if rest.starts_with("//") {
        return (Part::Note, rest.find('\n').unwrap_or(rest.len()));
    }
    if rest.starts_with("/*") {
        return (Part::Note, rest.find("*/").map_or(rest.len(), |end| end + 2));
    }
    match first {
        '"' => (Part::Quoted, quoted(rest)),
        _ if first.is_ascii_digit() => (
            Part::Number,
            word(|c| c.is_ascii_alphanumeric() || c == '.' || c == '_'),
        ),
        _ if first.is_alphabetic() => {
            let length = word(|c| c.is_alphanumeric() || c == '_');
            let part = if first.is_uppercase() {
                Part::Choice
            } else {
                Part::Plain
            };
            (part, length)
        }
        _ => (Part::Plain, first.len_utf8()),
    }
}

/// The length of a text in quotes, up to the quote that closes it; without one, up to the end of its line, so that a forgotten
/// quote doesn't colour the whole file.
fn quoted(rest: &str) -> usize {
    let mut escaped = false;
    for (at, letter) in rest.char_indices().skip(1) {
        match letter {
            '\n' => return at,
            '"' if !escaped => return at + 1,
            _ => escaped = letter == '\\' && !escaped,
        }
    }
    rest.len()
}

/// The text ready to be laid out, a line of it a row, `height` points high.
pub fn job(text: &str, size: f32, height: f32, theme: &Theme) -> LayoutJob {
    let mut job = LayoutJob {
        text: text.to_owned(),
        keep_trailing_whitespace: true,
        ..LayoutJob::default()
    };
    job.wrap.max_width = f32::INFINITY;
    let font = Face::Code.at(size);
    for (part, range) in parts(text) {
        job.sections.push(egui::text::LayoutSection {
            leading_space: 0.0,
            byte_range: range.start.into()..range.end.into(),
            format: format(font.clone(), height, colour(part, theme)),
        });
    }
    if text.is_empty() {
        job.sections.push(egui::text::LayoutSection {
            leading_space: 0.0,
            byte_range: 0.into()..0.into(),
            format: format(font, height, *theme.ink),
        });
    }
    job
}

fn format(font: FontId, height: f32, colour: Color32) -> TextFormat {
    TextFormat {
        line_height: Some(height),
        valign: Align::Center,
        ..TextFormat::simple(font, colour)
    }
}

fn colour(part: Part, theme: &Theme) -> Color32 {
    match part {
        Part::Note => *theme.ink3,
        Part::Quoted => *theme.right,
        Part::Number => *theme.left,
        Part::Choice => *theme.ink,
        Part::Plain => *theme.ink2,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notes_quotes_numbers_and_choices_are_told_apart() {
        let text = "// a\n(id: \"a \\\"b\\\"\", work: Reps(5, 8)) // (";
        let found: Vec<(Part, &str)> = parts(text)
            .into_iter()
            .map(|(part, range)| (part, &text[range]))
            .filter(|(part, _)| *part != Part::Plain)
            .collect();
        assert_eq!(
            found,
            [
                (Part::Note, "// a"),
                (Part::Quoted, "\"a \\\"b\\\"\""),
                (Part::Choice, "Reps"),
                (Part::Number, "5"),
                (Part::Number, "8"),
                (Part::Note, "// ("),
            ]
        );
    }

    #[test]
    fn a_quote_that_is_never_closed_colours_its_line_only() {
        let text = "a: \"oops\nb: 3";
        let quoted: Vec<&str> = parts(text)
            .into_iter()
            .filter(|(part, _)| *part == Part::Quoted)
            .map(|(_, range)| &text[range])
            .collect();
        assert_eq!(quoted, ["\"oops"]);
    }

    proptest::proptest! {
        #[test]
        fn every_letter_is_in_one_part(text in "[ -~\\n\"/*\\\\äß→\u{feff}]{0,80}") {
            let joined: String = parts(&text).into_iter().map(|(_, range)| &text[range]).collect();
            proptest::prop_assert_eq!(joined, text);
        }
    }
}
