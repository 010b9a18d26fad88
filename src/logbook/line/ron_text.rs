//! A line through RON: every kind of record, and what to say of those that are none.

use ron::error::{Error, SpannedError};
use ron::extensions::Extensions;
use serde::Deserialize;

use crate::logbook::record::{Id, Record};
use crate::problem::{Severity, did_you_mean, quoted};

use super::{Fault, Reading, column_of, columns};

/// The kinds of [`crate::logbook::Fact`], as lines write them.
const KINDS: [&str; 12] = [
    "Profile",
    "Set",
    "WeighIn",
    "Pain",
    "Placement",
    "Phase",
    "Archive",
    "Goal",
    "Note",
    "Amend",
    "Retract",
    "Restore",
];

/// Deepest nesting that is read; no record comes near it.
const DEEPEST: usize = 64;

/// What to do about a line that can't be read.
const MEND: &str = "mend the line from another machine's copy or a backup; it is kept as it is";

/// RON as the logbook's files use it: no `Some(…)`, no doubled brackets.
pub(crate) fn options() -> ron::Options {
    ron::Options::default().with_default_extension(
        Extensions::IMPLICIT_SOME | Extensions::UNWRAP_NEWTYPES | Extensions::UNWRAP_VARIANT_NEWTYPES,
    )
}

/// A record of which only the outside is known.
#[derive(Deserialize)]
struct Envelope<'a> {
    #[serde(rename = "id")]
    _id: Id,
    rev: u32,
    #[serde(borrow)]
    what: &'a ron::value::RawValue,
}

/// An amend of which only the outside is known.
#[derive(Deserialize)]
#[serde(rename = "Amend")]
struct AmendOutside<'a> {
    #[serde(rename = "target")]
    _target: Id,
    #[serde(borrow)]
    what: &'a ron::value::RawValue,
}

/// Reads `body` as RON.
pub fn read(body: &str) -> Reading {
    if let Some(column) = too_deep(body) {
        let what = format!("brackets nest more than {DEEPEST} deep");
        return Reading::nothing(Fault::new(Severity::Error, column, what, MEND));
    }
    match record(body) {
        Ok((record, unknown)) => {
            let faults = unknown.iter().map(|field| unknown_field(body, field)).collect();
            Reading::known(record, faults)
        }
        Err(error) => newer_kind(body).unwrap_or_else(|| Reading::nothing(fault_of(body, &error))),
    }
}

/// The record and the fields of it that nobody here knows.
pub(crate) fn record(body: &str) -> Result<(Record, Vec<String>), SpannedError> {
    let mut unknown = Vec::new();
    let options = options();
    let mut reader = ron::Deserializer::from_str_with_options(body, &options)?;
    let record = serde_ignored::deserialize(&mut reader, |path| unknown.push(path.to_string()))
        .map_err(|error| reader.span_error(error))?;
    reader.end().map_err(|error| reader.span_error(error))?;
    Ok((record, unknown))
}

/// What a field that is not known costs: nothing.
fn unknown_field(body: &str, path: &str) -> Fault {
    let name = path.rsplit('.').find(|part| *part != "?").unwrap_or(path);
    Fault::new(
        Severity::Damage,
        column_of(body, name),
        format!("field {} is not known to this version; it is kept", quoted(name)),
        "use the version of Rungwright that wrote it, or mend the field's name",
    )
}

/// The reading of a line whose kind is not known, but whose outside is a record's; an amend to such a kind too.
fn newer_kind(body: &str) -> Option<Reading> {
    let envelope: Envelope = options().from_str(body).ok()?;
    let raw = envelope.what.get_ron().trim_start();
    let mut kind = kind_of(raw)?;
    let mut column = column_of(body, "what");
    if kind == "Amend" {
        let amend: AmendOutside = options().from_str(raw).ok()?;
        kind = kind_of(amend.what.get_ron().trim_start())?;
        let outside = columns(body.get(..body.find(raw)?)?);
        column = outside + column_of(raw, "what");
    }
    if kind.is_empty() || KINDS.contains(&kind) {
        return None;
    }
    let mend = match did_you_mean(kind, KINDS) {
        Some(near) => format!("write {near}, or use the version of Rungwright that wrote it"),
        None => "use the version of Rungwright that wrote it".to_owned(),
    };
    let what = format!(
        "records of kind {} are not known to this version; it is kept",
        quoted(kind)
    );
    Some(Reading::kept(
        envelope.rev,
        Fault::new(Severity::Damage, column, what, mend),
    ))
}

/// The kind that a record's content begins with.
fn kind_of(raw: &str) -> Option<&str> {
    let end = raw.find(|c: char| !c.is_alphanumeric() && c != '_');
    raw.get(..end.unwrap_or(raw.len()))
}

/// RON's error in words, at its column.
fn fault_of(body: &str, error: &SpannedError) -> Fault {
    let column = error.span.start.col.clamp(1, columns(body).saturating_add(1));
    let what = format!("this line is no record: {}", words(&error.code));
    let meant = match &error.code {
        Error::NoSuchEnumVariant { expected, found, .. } => did_you_mean(found, expected.iter().copied()),
        _ => None,
    };
    let mend = meant.map_or_else(
        || MEND.to_owned(),
        |meant| format!("did you mean {meant}? {MEND}"),
    );
    Fault::new(Severity::Error, column, what, mend)
}

/// RON's own words, without its names for our types.
pub(crate) fn words(code: &Error) -> String {
    match code {
        Error::Eof => "it ends too early".to_owned(),
        // The words of the crate that reads ids.
        Error::Message(message) if matches!(message.as_str(), "invalid length" | "invalid character") => {
            "an id has 26 digits and capital letters".to_owned()
        }
        Error::Message(message) => message.clone(),
        Error::MissingStructField { field, .. } => format!("the field {} is missing", quoted(field)),
        Error::NoSuchEnumVariant { expected, found, .. } => {
            let known = expected.join(", ");
            format!("{} is not one of {known}", quoted(found))
        }
        Error::InvalidValueForType { expected, found } => format!("expected {expected}, found {found}"),
        Error::DuplicateStructField { field, .. } => format!("the field {} stands twice", quoted(field)),
        Error::ExpectedNamedStructLike(_)
        | Error::ExpectedStructLike
        | Error::ExpectedDifferentStructName { .. } => "expected `(`".to_owned(),
        Error::ExpectedStructLikeEnd => "expected `)`".to_owned(),
        other => {
            let text = other.to_string();
            let mut chars = text.chars();
            chars
                .next()
                .map_or(String::new(), |first| first.to_lowercase().chain(chars).collect())
        }
    }
}

/// The column where brackets nest too deep, outside strings and comments.
pub(crate) fn too_deep(text: &str) -> Option<usize> {
    let mut depth = 0usize;
    let mut bytes = text.bytes().enumerate().peekable();
    while let Some((at, byte)) = bytes.next() {
        match byte {
            b'(' | b'[' | b'{' => depth += 1,
            b')' | b']' | b'}' => depth = depth.saturating_sub(1),
            b'"' => {
                while let Some((_, inside)) = bytes.next() {
                    match inside {
                        b'\\' => {
                            bytes.next();
                        }
                        b'"' => break,
                        _ => {}
                    }
                }
            }
            b'/' if matches!(bytes.peek(), Some((_, b'/' | b'*'))) => {
                // A line comment ends the line; a block comment nests, and each of them counts as depth of its own.
                if matches!(bytes.next(), Some((_, b'*'))) {
                    depth += 1;
                } else {
                    while bytes.next_if(|(_, byte)| *byte != b'\n').is_some() {}
                }
            }
            b'*' if matches!(bytes.peek(), Some((_, b'/'))) => {
                bytes.next();
                depth = depth.saturating_sub(1);
            }
            _ => {}
        }
        if depth > DEEPEST {
            return text.get(..at).map(|before| columns(before) + 1).or(Some(1));
        }
    }
    None
}
