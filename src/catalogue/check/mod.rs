//! What can be wrong in a movement or a ladder that RON itself can't see. Every mistake is found, not only the first.
//!
//! A check sees raw values and names a [`Spot`]; the reader turns the spot into file, line and column.

mod entry;
mod ladder;
mod movement;
mod rung;
mod work;

use std::collections::BTreeMap;

pub(super) use ladder::ladder;
pub(super) use movement::movements;
pub(super) use rung::rung;

use super::Movement;
use super::names::fold;
use super::read::{MOST_PROBLEMS, Spot};
use crate::problem::{Severity, did_you_mean, quoted};

/// The movements that a ladder may name, by id.
pub(super) type Movements = BTreeMap<String, Movement>;

/// One mistake and where it is.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Finding {
    pub spot: Spot,
    pub severity: Severity,
    pub what: String,
    pub mend: String,
    /// What to write in place of the spot's value, where the mend is nothing but that.
    pub write: Option<String>,
}

/// The mistakes found so far.
#[derive(Debug, Default)]
pub(super) struct Findings(pub Vec<Finding>);

impl Findings {
    fn error(&mut self, spot: Spot, what: impl Into<String>, mend: impl Into<String>) {
        self.push(spot, Severity::Error, what.into(), mend.into(), None);
    }

    /// An error that is mended by other letters in the place of the value.
    fn slip(&mut self, spot: Spot, what: impl Into<String>, mend: impl Into<String>, write: Option<String>) {
        self.push(spot, Severity::Error, what.into(), mend.into(), write);
    }

    fn warning(&mut self, spot: Spot, what: impl Into<String>, mend: impl Into<String>) {
        self.push(spot, Severity::Warning, what.into(), mend.into(), None);
    }

    /// Keeps a mistake, unless there are already as many of its kind as are ever told.
    fn push(&mut self, spot: Spot, severity: Severity, what: String, mend: String, write: Option<String>) {
        if self.is_full(severity) {
            return;
        }
        self.0.push(Finding {
            spot,
            severity,
            what,
            mend,
            write,
        });
    }

    fn is_full(&self, severity: Severity) -> bool {
        self.0
            .iter()
            .filter(|finding| finding.severity == severity)
            .count()
            >= MOST_PROBLEMS
    }

    /// Says that a text which people read is empty.
    fn unless_written(&mut self, spot: Spot, text: &str, what: &str) {
        if text.trim().is_empty() {
            self.error(
                spot,
                format!("the {what} is empty"),
                format!("write the {what} in words"),
            );
        }
    }

    /// Says that `id` isn't kebab-case.
    fn unless_kebab(&mut self, spot: Spot, id: &str, what: &str) {
        if is_kebab(id) {
            return;
        }
        let better = kebab(id);
        let mend = match &better {
            Some(better) => format!("write {}", quoted(better)),
            None => {
                "use lower-case letters, digits and single hyphens, for example \"one-arm-hang\"".to_owned()
            }
        };
        let write = better.map(|better| in_quotes(&better));
        self.slip(spot, format!("{} is no id for a {what}", quoted(id)), mend, write);
    }

    /// Says that two ids of a kind are one for whoever writes them in a log or spreadsheet.
    fn unless_distinct<'a>(&mut self, ids: impl IntoIterator<Item = (Spot, &'a str)>, what: &str) {
        let mut seen: BTreeMap<String, &str> = BTreeMap::new();
        for (spot, id) in ids {
            match seen.insert(fold(id), id) {
                Some(before) if before == id => self.error(
                    spot,
                    format!("the {what} {} is there twice", quoted(id)),
                    "give one of them another id, or delete it",
                ),
                Some(before) => self.error(
                    spot,
                    format!(
                        "{} and {} differ only in case and hyphens",
                        quoted(before),
                        quoted(id)
                    ),
                    "give one of them another id: names in a spreadsheet fold both",
                ),
                None => {}
            }
        }
    }

    /// Says that nothing tells where this comes from.
    fn unless_sourced(&mut self, spot: Spot, sources: &[String], what: &str) {
        if sources.iter().all(|source| source.trim().is_empty()) {
            self.warning(
                spot,
                format!("the {what} names no source"),
                "say what it rests on, for example sources: [\"common practice, no source\"]",
            );
        }
    }
}

/// The movement of this id; says so, with the nearest name, when there is none.
fn known_movement<'a>(
    found: &mut Findings,
    spot: Spot,
    id: &str,
    movements: &'a Movements,
) -> Option<&'a Movement> {
    let known = movements.get(id);
    if known.is_none() && !found.is_full(Severity::Error) {
        let ids = movements.keys().map(String::as_str);
        let (mend, write) = nearest(
            id,
            ids,
            "name one of movements.ron, or add it to your own movements.ron",
        );
        found.slip(spot, format!("there is no movement {}", quoted(id)), mend, write);
    }
    known
}

/// The mend for a name that isn't there, and what to write: the nearest that is; else `otherwise`, and nothing.
fn nearest<'a>(
    word: &str,
    known: impl IntoIterator<Item = &'a str> + Clone,
    otherwise: &str,
) -> (String, Option<String>) {
    if word.len() > LONGEST_ID {
        return (otherwise.to_owned(), None);
    }
    let folded = fold(word);
    let same = known.clone().into_iter().find(|id| fold(id) == folded);
    match same.or_else(|| did_you_mean(word, known)) {
        Some(meant) => (format!("did you mean {}?", quoted(meant)), Some(in_quotes(meant))),
        None => (otherwise.to_owned(), None),
    }
}

/// A known id as a file gives it.
fn in_quotes(id: &str) -> String {
    format!("\"{id}\"")
}

/// Longest id, in characters. Ids stand in tables, file names and commands. Common practice, no source.
const LONGEST_ID: usize = 64;

fn is_kebab(id: &str) -> bool {
    id.len() <= LONGEST_ID
        && id.split('-').all(|part| {
            !part.is_empty()
                && part
                    .bytes()
                    .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit())
        })
}

/// Words as an id is written: lower case, every run of anything but letters of ASCII and digits one hyphen, none at the ends.
pub fn hyphened(words: &str) -> String {
    let spaced: String = words
        .chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() {
                c.to_ascii_lowercase()
            } else {
                ' '
            }
        })
        .collect();
    spaced.split_whitespace().collect::<Vec<_>>().join("-")
}

/// The kebab-case id that `id` comes nearest to, if there is one.
fn kebab(id: &str) -> Option<String> {
    if id.len() > 2 * LONGEST_ID {
        return None;
    }
    let better = hyphened(id);
    is_kebab(&better).then_some(better)
}
