//! Parts of a file, read by RON one by one.

use std::ops::Range;

use ron::extensions::Extensions;
use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::outline::Node;
use super::source::Source;
use super::{MOST_PROBLEMS, words};
use crate::problem::Problem;

/// RON as our files are written.
pub(super) fn ron() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME)
}

/// Each item read for itself. What is wrong with the whole counts only where no item explains it.
pub(super) fn parse_items<T: DeserializeOwned>(
    source: &Source<'_>,
    nodes: &[Node],
    whole: Result<(), Fault>,
) -> (Vec<Option<T>>, Vec<Problem>) {
    let mut items = Vec::with_capacity(nodes.len());
    let mut faults = Vec::new();
    for node in nodes {
        if faults.len() >= MOST_PROBLEMS {
            break;
        }
        match parse::<T>(source, node, node.span.clone()) {
            Ok(item) => items.push(Some(item)),
            Err(fault) => {
                faults.push(fault);
                items.push(None);
            }
        }
    }
    if let Err(fault) = whole {
        let inside = nodes.iter().any(|node| node.span.contains(&fault.at));
        if !inside || faults.is_empty() {
            faults.push(fault);
        }
    }
    (items, faults.into_iter().map(|fault| *fault.problem).collect())
}

/// Why a part could not be read, and the byte where the reader stopped.
pub(super) struct Fault {
    at: usize,
    problem: Box<Problem>,
}

/// Reads the bytes `part` of a file, which `node` outlines.
pub(super) fn parse<'a, T: Deserialize<'a>>(
    source: &Source<'a>,
    node: &Node,
    part: Range<usize>,
) -> Result<T, Fault> {
    let text = source.text.get(part.clone()).unwrap_or_default();
    ron().from_str(text).map_err(|error| {
        let at =
            |position: ron::error::Position| part.start + Source::offset(text, position.line, position.col);
        let (start, end) = (at(error.span.start), at(error.span.end));
        Fault {
            at: start,
            problem: Box::new(words::explain(source, node, &part, &error.code, start..end)),
        }
    })
}
