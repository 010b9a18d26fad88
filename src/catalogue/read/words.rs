//! What RON says of a text that it can't read, in words that help whoever wrote it.

use std::ops::Range;

use ron::error::Error;

use super::outline::{Inside, Node};
use super::source::Source;
use super::tokens::{Kind, Token, Tokens, Unbalanced};
use crate::problem::{Edit, Problem, did_you_mean, quoted};

/// Longest word that is compared with the right ones, bytes: comparing takes time for each pair of letters.
const LONGEST_WORD: usize = 64;

/// The problem for an error of RON that stopped at the bytes `at` while it read the bytes `part`, which `node` outlines.
pub(super) fn explain(
    source: &Source<'_>,
    node: &Node,
    part: &Range<usize>,
    error: &Error,
    at: Range<usize>,
) -> Problem {
    let after = token_after(source, part, at.start);
    let (what, mend) = if after.start < at.start && is_digit(source, after.start) {
        sentence(&Error::ExpectedInteger)
    } else {
        sentence(error)
    };
    let with = meant(error);
    let named = match error {
        Error::NoSuchStructField { found, .. } => key(source, node, found, &at),
        Error::DuplicateStructField { field, .. } => key(source, node, field, &at),
        Error::NoSuchEnumVariant { found, .. } => word(source, part, found, &at),
        Error::MissingStructField { .. } => Some(holder(source, node, &at)),
        _ => None,
    };
    let edit = match (error, with, &named) {
        (_, Some(with), Some(word)) => Some(Edit {
            from: word.start,
            to: word.end,
            with: with.to_owned(),
        }),
        (Error::ExpectedComma | Error::ExpectedArrayEnd | Error::ExpectedStructLikeEnd, ..) => {
            comma_before(source, after.start)
        }
        _ => None,
    };
    source.at(named.unwrap_or(after), |place| Problem {
        edit,
        ..Problem::error(place, what, mend)
    })
}

/// A comma after the token that ends last before the byte `at`; none where that is one already, or opens a bracket.
fn comma_before(source: &Source<'_>, at: usize) -> Option<Edit> {
    let last = Tokens::of(source.text)
        .take_while(|token| token.span.end <= at)
        .last()?;
    let takes = matches!(last.kind, Kind::Close(_) | Kind::Word | Kind::Text);
    takes.then(|| Edit {
        from: last.span.end,
        to: last.span.end,
        with: ",".to_owned(),
    })
}

/// A bracket without partner; where a quote that was never closed hides the partner, that quote.
pub(super) fn lone_bracket(source: &Source<'_>, lone: Unbalanced) -> Problem {
    let sign = |at: usize| source.text.get(at..=at).unwrap_or_default();
    if let Some(quote) = open_quote(source.text) {
        return source.at(quote..quote + 1, |place| {
            Problem::error(
                place,
                "this quote is not closed on its line",
                "close the text with a quote",
            )
        });
    }
    match lone {
        Unbalanced::Open(at) => source.at(at..at + 1, |place| {
            Problem::error(
                place,
                format!("this {} is never closed", sign(at)),
                "close it where its content ends",
            )
        }),
        Unbalanced::Crossed { close, open } => source.at(close..close + 1, |place| {
            Problem::error(
                place,
                format!(
                    "this {} meets the {} that line {} opened",
                    sign(close),
                    sign(open),
                    source.line(open)
                ),
                "close that one first: each bracket with its own kind, the last opened first",
            )
        }),
    }
}

/// The first text in plain quotes that runs over the end of its line.
fn open_quote(text: &str) -> Option<usize> {
    Tokens::of(text)
        .filter(|token| token.kind == Kind::Text)
        .find(|token| {
            let written = text.get(token.span.clone()).unwrap_or_default();
            written.starts_with('"') && written.contains('\n')
        })
        .map(|token| token.span.start)
}

fn sentence(error: &Error) -> (String, String) {
    match error {
        Error::NoSuchStructField {
            expected,
            found,
            outer,
        } => (
            format!("{} has no field {}", holder_name(outer.as_deref()), quoted(found)),
            one_of(found, expected),
        ),
        Error::MissingStructField { field, outer } => (
            format!("{} has no {field}", holder_name(outer.as_deref())),
            format!("add {field}: …"),
        ),
        Error::DuplicateStructField { field, .. } => {
            (format!("{field} is given twice"), "keep one of them".to_owned())
        }
        Error::NoSuchEnumVariant { expected, found, .. } => (
            format!("{} is no word for this place", quoted(found)),
            one_of(found, expected),
        ),
        Error::ExpectedComma
        | Error::ExpectedArrayEnd
        | Error::ExpectedStructLikeEnd
        | Error::ExpectedOptionEnd => (
            "a comma or a closing bracket is missing before this".to_owned(),
            "put a comma between two values, and a bracket after the last".to_owned(),
        ),
        Error::ExpectedMapColon => (
            "a field's name needs a colon".to_owned(),
            "write name: value".to_owned(),
        ),
        Error::ExpectedInteger | Error::InvalidIntegerDigit { .. } => (
            "a whole number belongs here".to_owned(),
            "write digits only, for example 3".to_owned(),
        ),
        Error::IntegerOutOfBounds => (
            "this number can't stand here".to_owned(),
            "give a smaller number, and none below zero".to_owned(),
        ),
        Error::ExpectedFloat | Error::FloatUnderscore | Error::UnderscoreAtBeginning => (
            "a number belongs here".to_owned(),
            "write digits and a point, for example 1.25".to_owned(),
        ),
        Error::ExpectedString | Error::ExpectedStringEnd => (
            "a text in quotes belongs here".to_owned(),
            "put it between double quotes".to_owned(),
        ),
        Error::ExpectedArray => (
            "a list belongs here".to_owned(),
            "put it between [ and ], even if it is a single one".to_owned(),
        ),
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) | Error::ExpectedMap => (
            "several fields belong here".to_owned(),
            "put them between ( and ), each as name: value".to_owned(),
        ),
        Error::ExpectedIdentifier => (
            "a name belongs here".to_owned(),
            "write the name of a field or a choice, without quotes".to_owned(),
        ),
        Error::ExpectedBoolean => (
            "true or false belongs here".to_owned(),
            "write true or false".to_owned(),
        ),
        Error::Eof => (
            "the file ends too early".to_owned(),
            "finish the last value".to_owned(),
        ),
        Error::TrailingCharacters => (
            "nothing may follow the last bracket".to_owned(),
            "delete it, or move it into the brackets".to_owned(),
        ),
        Error::UnclosedBlockComment => (
            "a comment is never closed".to_owned(),
            "close it with */".to_owned(),
        ),
        Error::ExpectedDifferentLength { expected, .. } => (
            "the number of values is wrong".to_owned(),
            format!("give {expected}"),
        ),
        Error::ExpectedDifferentStructName { expected, found } => (
            format!("{} is no name for this", quoted(found)),
            format!("leave the name out, or write {expected}"),
        ),
        Error::InvalidValueForType { expected, .. } => (
            "this value does not fit here".to_owned(),
            format!("give {expected}"),
        ),
        other => (
            "this can't be read".to_owned(),
            format!("RON says: {}", lower_first(&other.to_string())),
        ),
    }
}

fn holder_name(outer: Option<&str>) -> String {
    match outer {
        Some(name) => format!("the {}", name.to_lowercase()),
        None => "this".to_owned(),
    }
}

/// The word that was meant in the place of one that isn't known there.
fn meant(error: &Error) -> Option<&'static str> {
    match error {
        Error::NoSuchStructField { expected, found, .. }
        | Error::NoSuchEnumVariant { expected, found, .. } => nearest(found, expected),
        _ => None,
    }
}

fn nearest(found: &str, expected: &[&'static str]) -> Option<&'static str> {
    Some(found)
        .filter(|found| found.len() <= LONGEST_WORD)
        .and_then(|found| did_you_mean(found, expected.iter().copied()))
        .or_else(|| {
            expected
                .iter()
                .copied()
                .find(|word| word.eq_ignore_ascii_case(found))
        })
}

fn one_of(found: &str, expected: &[&'static str]) -> String {
    match nearest(found, expected) {
        Some(meant) => format!("did you mean {meant}?"),
        None if expected.is_empty() => "leave it out".to_owned(),
        None => format!("write one of: {}", expected.join(", ")),
    }
}

fn lower_first(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map_or_else(String::new, |first| first.to_lowercase().chain(chars).collect())
}

/// The key `name` that begins nearest before the place where the reader stopped, or after it.
fn key(source: &Source<'_>, node: &Node, name: &str, at: &Range<usize>) -> Option<Range<usize>> {
    let mut keys = Vec::new();
    node.keys(&mut keys);
    keys.retain(|key| source.text.get(key.clone()) == Some(name));
    let before = keys.iter().rev().find(|key| key.start <= at.end);
    before.or_else(|| keys.first()).cloned()
}

/// The word `found` nearest before the end of where the reader stopped.
fn word(source: &Source<'_>, part: &Range<usize>, found: &str, at: &Range<usize>) -> Option<Range<usize>> {
    spans(source, part)
        .take_while(|span| span.start <= at.end)
        .filter(|span| source.text.get(span.clone()) == Some(found))
        .last()
}

/// The innermost value with fields around the place where the reader stopped: its id, else its opening bracket.
fn holder(source: &Source<'_>, part: &Node, at: &Range<usize>) -> Range<usize> {
    let mut node = part;
    let mut best = part;
    loop {
        if matches!(node.inside, Inside::Fields(_)) {
            best = node;
        }
        let inner = match &node.inside {
            Inside::Leaf => None,
            Inside::Items(items) => items.iter().find(|item| holds(item, at)),
            Inside::Fields(fields) => fields
                .iter()
                .map(|(_, value)| value)
                .find(|value| holds(value, at)),
        };
        match inner {
            Some(next) => node = next,
            None => break,
        }
    }
    match best.field(source.text, "id") {
        Some(id) => id.span.clone(),
        None => best.span.clone(),
    }
}

fn holds(node: &Node, at: &Range<usize>) -> bool {
    node.span.start < at.end && at.end <= node.span.end
}

fn is_digit(source: &Source<'_>, at: usize) -> bool {
    source.text.as_bytes().get(at).is_some_and(u8::is_ascii_digit)
}

/// The first token of a part at or after a byte; the last token at the part's end.
fn token_after(source: &Source<'_>, part: &Range<usize>, at: usize) -> Range<usize> {
    let mut last = at..at;
    for span in spans(source, part) {
        if span.end > at {
            return span;
        }
        last = span;
    }
    last
}

/// The tokens of a part of the file, by their bytes in the file.
fn spans(source: &Source<'_>, part: &Range<usize>) -> impl Iterator<Item = Range<usize>> {
    let start = part.start;
    let text = source.text.get(part.clone()).unwrap_or_default();
    Tokens::of(text).map(move |Token { span, .. }| span.start + start..span.end + start)
}
