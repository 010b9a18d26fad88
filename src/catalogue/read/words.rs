//! What RON says of a text that it can't read, in words that help whoever wrote it.

use std::ops::Range;

use ron::error::Error;

use super::outline::{Inside, Node};
use super::source::Source;
use super::tokens::{Kind, Token, Tokens, Unbalanced};
use crate::problem::{Problem, did_you_mean, quoted};

/// Longest word that is compared with the right ones, bytes: comparing takes time for each pair of letters.
const LONGEST_WORD: usize = 64;

/// The problem for an error of RON that stopped at the bytes `at`.
pub(super) fn explain(source: &Source<'_>, outline: &Node, error: &Error, at: Range<usize>) -> Problem {
    let (what, mend) = sentence(error);
    let span = match error {
        Error::NoSuchStructField { found, .. } => named(source, outline, found, &at),
        Error::DuplicateStructField { field, .. } => named(source, outline, field, &at),
        Error::NoSuchEnumVariant { found, .. } => word(source, found, &at),
        Error::MissingStructField { .. } => holder(source, outline, &at),
        _ => token_after(source, at.start),
    };
    source.at(span, |place| Problem::error(place, what, mend))
}

/// A bracket without partner.
pub(super) fn lone_bracket(source: &Source<'_>, lone: Unbalanced) -> Problem {
    let sign = |at: usize| source.text.get(at..=at).unwrap_or_default();
    match lone {
        Unbalanced::Open(at) => source.at(at..at + 1, |place| {
            Problem::error(
                place,
                format!("this {} is never closed", sign(at)),
                "close it where its content ends; a quote that is left open hides a bracket too",
            )
        }),
        Unbalanced::Crossed { close, open } => source.at(close..close + 1, |place| {
            Problem::error(
                place,
                format!("this {} closes a {}", sign(close), sign(open)),
                "close brackets in the order in which they were opened, each with its own kind",
            )
        }),
    }
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
            "this does not follow from what stands before it".to_owned(),
            "put a comma between two values, and close the bracket after the last".to_owned(),
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

fn one_of(found: &str, expected: &[&str]) -> String {
    let nearest = Some(found)
        .filter(|found| found.len() <= LONGEST_WORD)
        .and_then(|found| did_you_mean(found, expected.iter().copied()))
        .or_else(|| {
            expected
                .iter()
                .copied()
                .find(|word| word.eq_ignore_ascii_case(found))
        });
    match nearest {
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
fn named(source: &Source<'_>, outline: &Node, name: &str, at: &Range<usize>) -> Range<usize> {
    let keys = keys_named(source, outline, name);
    let before = keys.iter().rev().find(|key| key.start <= at.end);
    before
        .or_else(|| keys.first())
        .cloned()
        .unwrap_or_else(|| token_after(source, at.start))
}

fn keys_named(source: &Source<'_>, outline: &Node, name: &str) -> Vec<Range<usize>> {
    let mut keys = Vec::new();
    outline.keys(&mut keys);
    keys.retain(|key| source.text.get(key.clone()) == Some(name));
    keys
}

/// The word `found` nearest before the end of where the reader stopped, or the token after.
fn word(source: &Source<'_>, found: &str, at: &Range<usize>) -> Range<usize> {
    Tokens::of(source.text)
        .filter(|token| token.kind == Kind::Word && source.text.get(token.span.clone()) == Some(found))
        .take_while(|token| token.span.start <= at.end)
        .last()
        .map_or_else(|| token_after(source, at.start), |token| token.span)
}

/// The innermost value with fields around the place where the reader stopped: its id, else its opening bracket.
fn holder(source: &Source<'_>, outline: &Node, at: &Range<usize>) -> Range<usize> {
    let mut node = outline;
    let mut best = outline;
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

/// The first token at or after a byte; the last token at the end of the text.
fn token_after(source: &Source<'_>, at: usize) -> Range<usize> {
    let mut last = at..at;
    for Token { span, .. } in Tokens::of(source.text) {
        if span.end > at {
            return span;
        }
        last = span;
    }
    last
}
