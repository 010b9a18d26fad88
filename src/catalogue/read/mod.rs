//! RON text to movements and ladders, and to the problems in it.
//!
//! Each item of a file (a movement, a rung) is read for itself, so that one mistake hides no other. Text that could harm the
//! reader (too long, nested too deep) never reaches it. Fields that a file may leave out are listed in [`raw`].

mod build;
mod outline;
mod parts;
mod raw;
mod source;
mod tokens;
mod words;
mod write;

use serde::de::IgnoredAny;

use super::check::{self, Finding, Findings, Movements};
use super::{Ladder, Movement};
use crate::problem::{Edit, Place, Problem, Severity};

pub(super) use build::standard_of;
use outline::Node;
pub(super) use outline::Spot;
use parts::{parse, parse_items};
pub(super) use raw::{RawBranch, RawEntry, RawLadder, RawRung, RawStandard, RawWork};
use source::Source;
pub(super) use write::{ladder_text, movements_text, raw_of};

/// Longest file of movements or of a ladder, bytes: 8 MiB, a thousand times a long ladder. Our choice.
pub const LONGEST_FILE: usize = 8 << 20;
/// Deepest nesting of brackets. A ladder needs 5; RON itself refuses 128. Our choice.
const DEEPEST: usize = 64;
/// Most problems that are told of one file; nobody reads more at once. Our choice.
pub(super) const MOST_PROBLEMS: usize = 100;
/// Most rungs that a ladder is checked with; the screen shows 40. Our choice.
const MOST_RUNGS: usize = 1000;

/// Where a rung stands in its file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RungLines {
    /// Its id; empty where the file gives none.
    pub id: String,
    /// Its first line, from 1.
    pub first: usize,
    /// Its last line.
    pub last: usize,
}

/// What a file gave: the value, if it is sound, and what is wrong in it.
pub(super) struct Reading<T> {
    pub value: T,
    pub problems: Vec<Problem>,
}

/// The text of a file's bytes.
///
/// # Errors
/// When the bytes are not UTF-8; the problem says at which line and column.
pub fn text_of<'a>(file: &str, bytes: &'a [u8]) -> Result<&'a str, Box<Problem>> {
    std::str::from_utf8(bytes).map_err(|error| {
        let sound = bytes.get(..error.valid_up_to()).unwrap_or_default();
        let sound = String::from_utf8_lossy(sound);
        let line = sound.matches('\n').count() + 1;
        let column = sound.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        Box::new(Problem::error(
            Place::new(file, line, column),
            "from here on the file is not text in UTF-8",
            "save it again as UTF-8",
        ))
    })
}

/// The movements of a file; those with an error are left out.
pub(super) fn movements(file: &str, text: &str) -> Reading<Vec<Movement>> {
    let source = Source::new(file, text);
    let outline = match open(&source) {
        Ok(outline) => outline,
        Err(problem) => {
            return Reading {
                value: Vec::new(),
                problems: vec![*problem],
            };
        }
    };
    let whole = parse::<Vec<IgnoredAny>>(&source, &outline, 0..source.text.len()).map(|_| ());
    let (items, mut problems) = parse_items::<Movement>(&source, outline.items(), whole);
    let findings = check::movements(&items);
    let broken: Vec<Spot> = findings
        .0
        .iter()
        .filter(|finding| finding.severity == Severity::Error)
        .map(|finding| finding.spot.clone())
        .collect();
    problems.extend(told(&source, &outline, findings));
    let value = items
        .into_iter()
        .enumerate()
        .filter(|(at, _)| !broken.iter().any(|spot| spot.is_in_item(*at)))
        .filter_map(|(_, movement)| movement)
        .collect();
    Reading {
        value,
        problems: ordered(problems),
    }
}

/// The ladder of a file, if nothing in it is an error.
pub(super) fn ladder(file: &str, text: &str, movements: &Movements) -> Reading<Option<Ladder>> {
    let source = Source::new(file, text);
    let (raw, problems) = match open(&source) {
        Ok(outline) => raw_ladder(&source, &outline, movements),
        Err(problem) => (None, vec![*problem]),
    };
    let sound = problems.iter().all(|problem| problem.severity != Severity::Error);
    Reading {
        value: raw
            .filter(|_| sound)
            .and_then(|raw| build::ladder(&raw, movements)),
        problems: ordered(problems),
    }
}

/// The movements of a file that is known to be sound; none of one that isn't.
pub(super) fn sound_movements(text: &str) -> Vec<Movement> {
    parts::ron().from_str(text).unwrap_or_default()
}

/// The ladder of a file that is known to be sound; none of one that isn't.
pub(super) fn sound_ladder(text: &str, movements: &Movements) -> Option<Ladder> {
    build::ladder(&parts::ron().from_str(text).ok()?, movements)
}

/// An error at the place where a file gives the `id` of its ladder or of one of its movements.
pub(super) fn error_at_id(file: &str, text: &str, id: &str, what: String, mend: String) -> Problem {
    let source = Source::new(file, text);
    let Ok(outline) = open(&source) else {
        return source.whole(what, mend);
    };
    let mut nodes = std::iter::once(&outline).chain(outline.items());
    let span = nodes.find_map(|node| {
        let span = node.field(source.text, "id")?.span.clone();
        let written = source.text.get(span.clone())?;
        (written.trim_matches('"') == id).then_some(span)
    });
    match span {
        Some(span) => source.at(span, |place| Problem::error(place, what, mend)),
        None => source.whole(what, mend),
    }
}

/// A warning at a field of a rung in a ladder's file, or at the rung's `id` where the file is silent.
pub(super) fn warning_at_rung(
    file: &str,
    text: &str,
    (rung, field): (&str, &'static str),
    what: String,
    mend: String,
) -> Problem {
    let source = Source::new(file, text);
    let warning = |place| Problem::warning(place, what.clone(), mend.clone());
    let Ok(outline) = open(&source) else {
        return warning(Place::whole(file));
    };
    let rungs = outline.field(source.text, "rungs").map_or(&[][..], Node::items);
    let is_it = |node: &&Node| {
        let id = node
            .field(source.text, "id")
            .and_then(|id| source.text.get(id.span.clone()));
        id.is_some_and(|id| id.trim_matches('"') == rung)
    };
    match rungs.iter().find(is_it) {
        Some(node) => source.at(node.point_at(source.text, &Spot::root().field(field)), warning),
        None => warning(Place::whole(file)),
    }
}

/// Where each rung of a ladder's file stands, in the order of the file; empty where the file can't be opened at all.
pub(super) fn rung_lines(text: &str) -> Vec<RungLines> {
    let source = Source::new("", text);
    let Ok(outline) = open(&source) else {
        return Vec::new();
    };
    let rungs = outline.field(source.text, "rungs").map_or(&[][..], Node::items);
    let lines = |node: &Node| RungLines {
        id: node
            .field(source.text, "id")
            .and_then(|id| source.text.get(id.span.clone()))
            .map(|id| id.trim_matches('"').to_owned())
            .unwrap_or_default(),
        first: source.line(node.span.start),
        last: source.line(node.span.end.saturating_sub(1)),
    };
    rungs.iter().take(MOST_RUNGS).map(lines).collect()
}

/// The ladder as written, if every part could be read, and what is wrong in it.
fn raw_ladder(
    source: &Source<'_>,
    outline: &Node,
    movements: &Movements,
) -> (Option<RawLadder>, Vec<Problem>) {
    let head = parse::<RawLadder<IgnoredAny>>(source, outline, 0..source.text.len());
    let nodes = outline.field(source.text, "rungs").map_or(&[][..], Node::items);
    if nodes.len() > MOST_RUNGS {
        let problem = source.whole(
            format!("a ladder of {} rungs is too long to climb", nodes.len()),
            format!("split it; {MOST_RUNGS} is the most that is read"),
        );
        return (None, vec![problem]);
    }
    let (head, whole) = match head {
        Ok(head) => (Some(head), Ok(())),
        Err(problem) => (None, Err(problem)),
    };
    let (rungs, mut problems) = parse_items::<RawRung>(source, nodes, whole);
    let complete = head.filter(|head| head.rungs.len() == rungs.len() && rungs.iter().all(Option::is_some));
    let (raw, findings) = match complete {
        Some(head) => {
            let raw = RawLadder {
                id: head.id,
                title: head.title,
                goal: head.goal,
                sides: head.sides,
                sources: head.sources,
                cautions: head.cautions,
                rungs: rungs.into_iter().flatten().collect(),
            };
            let findings = check::ladder(&raw, movements);
            (Some(raw), findings)
        }
        None => (None, check_alone(&rungs, movements)),
    };
    problems.extend(told(source, outline, findings));
    (raw, problems)
}

/// The mistakes within those rungs that could be read, when the ladder as a whole could not.
fn check_alone(rungs: &[Option<RawRung>], movements: &Movements) -> Findings {
    let mut found = Findings::default();
    let spot = Spot::root().field("rungs");
    for (at, rung) in rungs.iter().enumerate() {
        if let Some(rung) = rung {
            check::rung(&mut found, &spot.item(at), rung, movements);
        }
    }
    found
}

/// The outline of a file that is safe to read.
fn open(source: &Source<'_>) -> Result<Node, Box<Problem>> {
    match objection(source) {
        Some(problem) => Err(Box::new(problem)),
        None => Node::of(source.text).ok_or_else(|| {
            Box::new(source.whole(
                "the file holds no value",
                "begin with ( for a ladder, [ for movements",
            ))
        }),
    }
}

/// Why a file is not even tried.
fn objection(source: &Source<'_>) -> Option<Problem> {
    if source.text.len() > LONGEST_FILE {
        return Some(source.whole(
            "the file is longer than 8 MiB",
            "split it: a ladder needs a few kB",
        ));
    }
    if let Some(at) = tokens::too_deep(source.text, DEEPEST) {
        return Some(source.at(at..at + 1, |place| {
            Problem::error(
                place,
                format!("brackets nest deeper than {DEEPEST}"),
                "take brackets away: a ladder needs five in one another",
            )
        }));
    }
    if let Some(extension) = tokens::extension(source.text, "implicit_some") {
        return Some(source.at(extension, |place| {
            Problem::error(
                place,
                "this extension of RON is not used here",
                "delete the line; implicit_some is always on",
            )
        }));
    }
    tokens::unbalanced(source.text).map(|lone| words::lone_bracket(source, lone))
}

/// The findings as problems of the file.
fn told(source: &Source<'_>, outline: &Node, findings: Findings) -> Vec<Problem> {
    findings
        .0
        .into_iter()
        .map(|finding| {
            let span = outline.point_at(source.text, &finding.spot);
            let Finding {
                severity,
                what,
                mend,
                write,
                ..
            } = finding;
            let edit = write.map(|with| Edit {
                from: span.start,
                to: span.end,
                with,
            });
            source.at(span, |place| Problem {
                severity,
                edit,
                ..Problem::error(place, what, mend)
            })
        })
        .collect()
}

/// Problems in the order of the file; where there are too many, the gravest.
fn ordered(mut problems: Vec<Problem>) -> Vec<Problem> {
    problems.sort_by(|one, other| other.severity.cmp(&one.severity).then_with(|| one.cmp(other)));
    problems.truncate(MOST_PROBLEMS);
    problems.sort();
    problems
}
