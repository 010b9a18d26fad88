//! One record in full: as written, what it counts as, what it said before.

use crate::logbook::exchange::{Column, values};
use crate::logbook::record::Id;
use crate::logbook::{Fact, History, Log, Record};
use crate::problem::visible;
use crate::report::numbers::{about, kg, number};
use crate::ui::shelf::opened::Opened;
use crate::ui::views::RecordView;

use super::{Words, fields, kind, odd};

pub(super) fn view(opened: &Opened, log: &Log, history: &History, id: Id) -> Option<RecordView> {
    let gone = history.retracted.iter().find(|gone| gone.record.id == id);
    let counting = log.records.iter().find(|record| record.id == id);
    let record = counting.or_else(|| gone.map(|gone| &gone.record))?;
    let mut marks = Vec::new();
    if let Some(gone) = gone {
        let why = gone
            .why
            .as_deref()
            .map_or_else(String::new, |why| format!(": {}", visible(why)));
        marks.push(format!("Retracted{why}. It counts nowhere until it is restored."));
    } else if record.at.date() > opened.on {
        marks.push("Its day is yet to come; until then it counts nowhere.".to_owned());
    } else if let Some(why) = odd(opened, log).get(&id) {
        marks.push(match *why {
            "odd weigh-in" => {
                "Far off the weigh-ins around it: left out everywhere. Amend it if it is a slip.".to_owned()
            }
            "odd set" => {
                "Far above everything else of this kind: it moves no advice. Amend it if it is a slip."
                    .to_owned()
            }
            _ => "Looks like a typo beside the other sets: it hardly moves the estimate.".to_owned(),
        });
    }
    Some(RecordView {
        id: id.to_string(),
        title: format!(
            "{} · {}",
            kind(&record.what),
            record.at.date().format("%a %-d %b %Y")
        ),
        says: as_written(opened, &log.name, record),
        counts: counts(opened, log, record),
        marks,
        before: before(opened, log, history, id),
        written: vec![
            ("When, as written", visible(record.at.as_str())),
            ("Id", id.to_string()),
            ("Device", record.dev.clone()),
            ("Revision", record.rev.to_string()),
        ],
        retracted: gone.is_some(),
        fields: fields::of(opened, log, record),
        refused: opened.journal.refused.clone(),
    })
}

/// Its values as they were typed.
fn as_written(opened: &Opened, athlete: &str, record: &Record) -> Vec<(&'static str, String)> {
    let mut says: Vec<(&'static str, String)> = Vec::new();
    if let Fact::Profile { name: Some(name), .. } = &record.what {
        says.push(("Name", visible(name)));
    }
    let cells = values(athlete, record).into_iter();
    says.extend(cells.filter_map(|(column, text)| {
        let (label, unit) = label(column)?;
        let text = match column {
            Column::Outcome => fields::outcome_title(&text).to_owned(),
            Column::Movement | Column::Ladder | Column::Rung => titled(opened, record, column, &text),
            _ => visible(&text).replacen(
                '-',
                "−",
                usize::from(matches!(column, Column::AddedKg | Column::AddedLb)),
            ),
        };
        Some((label, format!("{text}{unit}")))
    }));
    says
}

/// An id as written, and what it is called, where that is known here.
fn titled(opened: &Opened, record: &Record, column: Column, id: &str) -> String {
    let ladder = match &record.what {
        Fact::Set(set) => set.ladder.as_deref(),
        Fact::Placement { ladder, .. } => Some(ladder.as_str()),
        _ => None,
    };
    let catalogue = &opened.catalogue;
    let title = match column {
        Column::Movement => catalogue.movement(id).map(|known| &known.title),
        Column::Ladder => catalogue.ladder(id).map(|known| &known.title),
        _ => ladder
            .and_then(|ladder| catalogue.ladder(ladder))
            .and_then(|ladder| ladder.rung(id))
            .map(|known| &known.title),
    };
    title.map_or_else(
        || visible(id),
        |title| format!("{title}, written {}", visible(id)),
    )
}

/// What a column is called here, and its unit.
fn label(column: Column) -> Option<(&'static str, &'static str)> {
    Some(match column {
        Column::Id | Column::Athlete | Column::Date | Column::Sets => return None,
        Column::Movement => ("Movement", ""),
        Column::Side => ("Side", ""),
        Column::BodyweightKg => ("Bodyweight", " kg"),
        Column::BodyweightLb => ("Bodyweight", " lb"),
        Column::AddedKg => ("Load", " kg"),
        Column::AddedLb => ("Load", " lb"),
        Column::Reps => ("Reps", ""),
        Column::HoldS => ("Held", " s"),
        Column::Rir => ("In reserve, reps", ""),
        Column::Rpe => ("Effort, RPE", ""),
        Column::Outcome => ("How it ended", ""),
        Column::Ladder => ("Ladder", ""),
        Column::Rung => ("Rung", ""),
        Column::Pain => ("Pain, 0 to 10", ""),
        Column::PainSite => ("Where", ""),
        Column::Phase => ("Phase", ""),
        Column::Goal => ("Goal", ""),
        Column::GoalBy => ("By", ""),
        Column::HeightCm => ("Height", " cm"),
        Column::Sex => ("Sex", ""),
        Column::Born => ("Born", ""),
        Column::Note => ("Note", ""),
    })
}

/// What it counts as, and how that came about.
fn counts(opened: &Opened, log: &Log, record: &Record) -> Vec<(&'static str, String, String)> {
    let unit = opened.book.unit();
    let timeline = opened.timeline(log);
    let is_weighed = match &record.what {
        Fact::WeighIn { .. } => true,
        Fact::Set(set) => set.bodyweight.is_some(),
        _ => false,
    };
    let day = record.at.date();
    let mut counts = Vec::new();
    let set = timeline.sets.iter().find(|set| set.id == record.id);
    if let Some(set) = set {
        if let Some(body) = set.bodyweight {
            let how = if is_weighed {
                "Weighed with this set."
            } else if timeline
                .weigh_ins
                .days()
                .iter()
                .any(|weighed| weighed.date == day && !weighed.odd)
            {
                "The mean of that day's weigh-ins."
            } else {
                "Not weighed that day: the latest weigh-in before, else the first after."
            };
            counts.push(("Bodyweight then", about(body.kg(), unit), how.to_owned()));
        }
        match (set.system, set.share, set.bodyweight) {
            (Some(system), Some(share), Some(body)) => {
                let sign = if set.added.kg() < 0.0 { "−" } else { "+" };
                let part = if share.value() == 1.0 {
                    "All".to_owned()
                } else {
                    number(share.value(), 2)
                };
                let how = format!(
                    "{part} of {} {sign} {}.",
                    about(body.kg(), unit),
                    kg(set.added.kg().abs(), unit)
                );
                counts.push(("System load", kg(system.kg(), unit), how));
            }
            _ => counts.push((
                "System load",
                "none".to_owned(),
                "The movement has none, or no bodyweight is known.".to_owned(),
            )),
        }
    } else if is_weighed && let Some(body) = timeline.weigh_ins.on(day) {
        counts.push((
            "Bodyweight of the day",
            about(body.kg(), unit),
            "The mean of the day's weigh-ins, those with a set too; an odd day takes the one before."
                .to_owned(),
        ));
    }
    counts
}

/// What it said before it was amended, oldest first. An amend that was taken back is none.
fn before(opened: &Opened, log: &Log, history: &History, id: Id) -> Vec<(String, String)> {
    let Some(amended) = history.amended.iter().find(|amended| amended.was.id == id) else {
        return Vec::new();
    };
    let mut versions = vec![(
        format!("First written by {}", amended.was.dev),
        in_a_line(opened, log, &amended.was),
    )];
    for change in &history.changes {
        if let Fact::Amend {
            target,
            at,
            nth,
            what,
        } = &change.what
            && *target == id
        {
            let record = Record {
                id,
                at: at.clone(),
                nth: *nth,
                what: (**what).clone(),
                ..change.clone()
            };
            let holds = if change.id == amended.by {
                ", holds now"
            } else {
                ""
            };
            let when = change.at.date().format("%-d %b %Y");
            versions.push((
                format!("Amended {when} by {}{holds}", change.dev),
                in_a_line(opened, log, &record),
            ));
        }
    }
    versions
}

fn in_a_line(opened: &Opened, log: &Log, record: &Record) -> String {
    let words = Words::of(opened, &record.what);
    let side = words.rail.map(|rail| rail.letter().to_owned());
    let weighed = as_written(opened, &log.name, record)
        .into_iter()
        .filter(|(label, _)| *label == "Bodyweight" && matches!(record.what, Fact::Set(_)))
        .map(|(_, value)| format!("weighed {value}"));
    let parts = [
        Some(visible(record.at.as_str())),
        side,
        Some(words.what),
        Some(words.result),
        words.note.map(visible),
    ];
    let parts = parts.into_iter().flatten().chain(weighed);
    parts
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" · ")
}
