//! Journal from the core: every record of the open athlete as a line, and one of them in full.

pub(super) mod fields;
mod record;

use std::collections::{HashMap, HashSet};
use std::sync::{Arc, Mutex, PoisonError};

use rayon::prelude::*;

use crate::logbook::exchange::Column;
use crate::logbook::record::{Id, PhaseKind};
use crate::logbook::{Fact, History, Log, Record};
use crate::problem::{Severity, visible};
use crate::report::numbers::{mass, number};
use crate::strength::beliefs_keeping;
use crate::ui::views::{JournalLine, JournalView};

use super::logged::said;
use super::opened::Opened;
use super::say;

/// Lines as they were last made, by the athlete's folder.
type Made = Option<(String, Arc<Vec<JournalLine>>)>;

/// What the journal keeps between two loadings.
#[derive(Default)]
pub(super) struct Desk {
    /// A hundred thousand lines aren't made again because one of them is opened.
    made: Mutex<Made>,
    /// The record that is looked at.
    pub open: Option<Id>,
    /// What the values typed last are refused for.
    pub refused: Vec<(Option<Column>, String)>,
}

impl Desk {
    /// Something was written or read anew.
    pub fn forget_lines(&mut self) {
        self.made = Mutex::default();
    }
}

pub(super) fn view(opened: &Opened, read_only: Option<&str>) -> Option<JournalView> {
    let log = opened.open_log()?;
    let history = opened.history(&log.folder)?;
    Some(JournalView {
        name: log.name.clone(),
        lines: lines(opened, log, history),
        kept: kept(opened, log),
        open: opened
            .journal
            .open
            .and_then(|id| record::view(opened, log, history, id)),
        read_only: read_only.map(str::to_owned),
    })
}

fn lines(opened: &Opened, log: &Log, history: &History) -> Arc<Vec<JournalLine>> {
    let mut made = opened.journal.made.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some((folder, lines)) = made.as_ref()
        && *folder == log.folder
    {
        return lines.clone();
    }
    let lines = Arc::new(all_lines(opened, log, history));
    *made = Some((log.folder.clone(), lines.clone()));
    lines
}

fn all_lines(opened: &Opened, log: &Log, history: &History) -> Vec<JournalLine> {
    let odd = odd(opened, log);
    let amended: HashSet<Id> = history.amended.iter().map(|amended| amended.was.id).collect();
    let counting = log.records.iter().map(|record| (record, false));
    let gone = history.retracted.iter().map(|gone| (&gone.record, true));
    let mut all: Vec<(&Record, bool)> = counting.chain(gone).collect();
    all.par_sort_by(|(one, _), (other, _)| Log::order(other, one));
    let of = |(record, retracted): &(&Record, bool)| {
        let words = Words::of(opened, &record.what);
        let mut line = JournalLine {
            id: record.id.to_string(),
            day: record.at.date().format("%a %-d %b %Y").to_string(),
            time: say::clock_time(record.at.as_str()),
            kind: kind(&record.what),
            rail: words.rail,
            what: words.what,
            result: words.result,
            note: visible(words.note.unwrap_or_default()),
            retracted: *retracted,
            amended: amended.contains(&record.id),
            odd: odd.get(&record.id).copied().filter(|_| !retracted),
            says: String::new(),
        };
        line.says = says(&line, record);
        line
    };
    all.par_iter().map(of).collect()
}

/// What the filter looks through.
fn says(line: &JournalLine, record: &Record) -> String {
    let side = line.rail.map_or("", crate::units::Rail::letter);
    let movement = match &record.what {
        Fact::Set(set) => set.movement.as_str(),
        _ => "",
    };
    let marks = [
        (line.retracted, "retracted"),
        (line.amended, "amended"),
        (line.odd.is_some(), "odd"),
    ];
    let marks = marks.iter().filter(|(is_so, _)| *is_so).map(|(_, word)| *word);
    let date = record.at.date().to_string();
    [
        date.as_str(),
        &line.day,
        &line.time,
        line.kind,
        side,
        movement,
        &line.what,
        &line.result,
        &line.note,
    ]
    .into_iter()
    .chain(marks)
    .collect::<Vec<_>>()
    .join(" ")
    .to_lowercase()
}

/// Records that count in no estimate, and why.
pub(super) fn odd(opened: &Opened, log: &Log) -> HashMap<Id, &'static str> {
    let timeline = opened.timeline(log);
    let suspects = beliefs_keeping(&timeline, &opened.kept())
        .into_iter()
        .flat_map(|known| known.suspects);
    let mut odd: HashMap<Id, &'static str> = suspects
        .map(|suspect| (suspect.id, "looks like a typo"))
        .collect();
    let doubted = timeline.doubted();
    let sets = timeline.sets.iter().zip(doubted).filter(|(_, odd)| *odd);
    odd.extend(sets.map(|(set, _)| (set.id, "odd set")));
    let weighed = log.records.iter().filter(|record| match &record.what {
        Fact::WeighIn { .. } => true,
        Fact::Set(set) => set.bodyweight.is_some(),
        _ => false,
    });
    let weighed = weighed.filter(|record| timeline.weigh_ins.is_odd_on(record.at.date()));
    odd.extend(weighed.map(|record| (record.id, "odd weigh-in")));
    odd
}

/// What a newer version wrote into this athlete's journals: kept, and not understood here.
fn kept(opened: &Opened, log: &Log) -> Vec<String> {
    let folder = format!("/{}/", log.folder);
    let is_of = |file: &str| format!("/{file}").contains(&folder);
    opened
        .problems
        .iter()
        .filter(|problem| problem.severity == Severity::Damage && is_of(&problem.place.file))
        .filter(|problem| problem.what.contains("it is kept"))
        .map(|problem| format!("{}: {}", say::place(&problem.place), visible(&problem.what)))
        .collect()
}

/// What kind of record it is.
pub(super) fn kind(fact: &Fact) -> &'static str {
    match fact {
        Fact::Set(_) => "Set",
        Fact::WeighIn { .. } => "Weigh-in",
        Fact::Pain { .. } => "Pain",
        Fact::Placement { .. } => "Placement",
        Fact::Phase { .. } => "Phase",
        Fact::Archive { .. } => "Archive",
        Fact::Goal { .. } => "Goal",
        Fact::Profile { .. } => "Profile",
        Fact::Note { .. } => "Note",
        Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => "Change",
    }
}

/// A record in words.
pub(super) struct Words<'l> {
    /// Its side.
    pub rail: Option<crate::units::Rail>,
    /// What it is about.
    pub what: String,
    /// What came of it.
    pub result: String,
    /// Its remark.
    pub note: Option<&'l str>,
}

impl<'l> Words<'l> {
    pub fn of(opened: &Opened, fact: &'l Fact) -> Self {
        let unit = opened.book.unit();
        let short = |what: String, note: &'l Option<String>| Self {
            rail: None,
            what,
            result: String::new(),
            note: note.as_deref(),
        };
        match fact {
            Fact::WeighIn { bodyweight, note } => short(mass(bodyweight.mass(), unit), note),
            Fact::Phase { kind, note } => short(phase(*kind).to_owned(), note),
            Fact::Archive { archived, note } => {
                let words = if *archived {
                    "Off the roster"
                } else {
                    "On the roster"
                };
                short(words.to_owned(), note)
            }
            Fact::Goal {
                ladder,
                rung,
                by,
                note,
            } => {
                let known = opened.catalogue.ladder(ladder);
                let title = known.map_or(ladder.as_str(), |ladder| &ladder.title);
                let rung = known
                    .and_then(|ladder| ladder.rung(rung))
                    .map_or(rung.as_str(), |rung| &rung.title);
                let by = by
                    .as_ref()
                    .map_or_else(String::new, |by| format!("by {}", by.date().format("%-d %b %Y")));
                Self {
                    result: by,
                    ..short(format!("{title}: {rung}"), note)
                }
            }
            Fact::Note { text } => Self {
                note: None,
                ..short(visible(text), &None)
            },
            Fact::Profile {
                name,
                born,
                sex,
                height_cm,
            } => {
                let parts = [
                    name.as_ref().map(|name| visible(name)),
                    born.as_ref()
                        .map(|born| format!("born {}", born.date().format("%-d %b %Y"))),
                    sex.map(|sex| crate::logbook::exchange::sex_word(sex).to_owned()),
                    height_cm.map(|cm| format!("{} cm", number(cm, 1))),
                ];
                let parts: Vec<String> = parts.into_iter().flatten().collect();
                short(parts.join(", "), &None)
            }
            Fact::Set(set) => Self::said(opened, fact, set.note.as_deref()),
            Fact::Pain { note, .. } => Self::said(opened, fact, note.as_deref()),
            Fact::Placement { why, .. } => Self::said(opened, fact, why.as_deref()),
            Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {
                Self::said(opened, fact, None)
            }
        }
    }

    fn said(opened: &Opened, fact: &Fact, note: Option<&'l str>) -> Self {
        let (rail, what, result) = said(&opened.catalogue, opened.book.unit(), fact);
        Self {
            rail: rail.filter(|rail| *rail != crate::units::Rail::Both),
            what,
            result,
            note,
        }
    }
}

/// A phase in a word.
pub(super) fn phase(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::Cut => "Cut",
        PhaseKind::Hold => "Hold",
        PhaseKind::Gain => "Gain",
        PhaseKind::Deload => "Deload",
    }
}
