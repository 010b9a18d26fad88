//! `week`: hard sets of each muscle group in the ISO week of a day, against the range; joints on following days.

use rayon::prelude::*;
use serde_json::{Value, json};

use crate::coaching::week::{Group, Status, Trained, Week};
use crate::logbook::Log;
use crate::problem::visible;
use crate::report::numbers::number;
use crate::report::week as words;
use crate::timeline::Timeline;

use super::args::WeekArgs;
use super::output::{Format, NOBODY, Style, csv_text, json_number, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 9] = [
    "athlete", "week", "group", "direct", "indirect", "sets", "low", "high", "status",
];

/// Runs `week`.
pub fn run(args: &WeekArgs) -> Result<Answer, Failed> {
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.place.logbook.as_ref(), args.athlete.as_deref())?;
    let on = reading::day(args.place.on);
    let week = Week::of(on);
    let logs: Vec<&Log> = book
        .logs
        .iter()
        .filter(|log| args.athlete.is_some() || !log.is_archived(on))
        .collect();
    let timelines: Vec<Timeline<'_>> = logs
        .par_iter()
        .map(|log| Timeline::new(log, &catalogue, on))
        .collect();
    let all: Vec<(&str, Trained<'_>)> = logs
        .par_iter()
        .zip(&timelines)
        .map(|(log, timeline)| (log.name.as_str(), Trained::of(timeline, &catalogue, week)))
        .collect();
    let rows = || -> Vec<Value> {
        all.iter()
            .flat_map(|(athlete, trained)| rows(athlete, trained))
            .collect()
    };
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text if all.is_empty() => NOBODY.to_owned(),
        Format::Text => all
            .iter()
            .map(|(athlete, trained)| text(athlete, trained, on))
            .collect(),
    };
    Ok(Answer { text, with_problems })
}

/// A row a group, in order of its id.
fn rows(athlete: &str, trained: &Trained<'_>) -> Vec<Value> {
    let mut groups: Vec<&Group<'_>> = trained.groups.iter().collect();
    groups.sort_by_key(|group| group.muscle.id());
    let row = |group: &Group<'_>| {
        json!({
            "athlete": athlete,
            "week": trained.week.name(),
            "group": group.muscle.id(),
            "direct": group.direct,
            "indirect": group.indirect,
            "sets": json_number(group.sets()),
            "low": json_number(group.range.low),
            "high": json_number(group.range.high),
            "status": group.status().map(Status::id),
        })
    };
    groups.into_iter().map(row).collect()
}

fn text(athlete: &str, trained: &Trained<'_>, on: chrono::NaiveDate) -> String {
    let style = Style::for_stdout();
    let mut text = format!(
        "{}\n  {}, {}: {}; {}\n",
        style.strong(&visible(athlete)),
        trained.week.name(),
        words::span(trained.week),
        words::hard_sets(trained.hard_sets()),
        words::what_is_hard(),
    );
    for group in trained.groups.iter().filter(|group| group.sets() > 0.0) {
        text.push_str(&line(group));
    }
    if trained.hard_sets() > 0 {
        text.push_str(&format!("    {}\n", words::RANGES));
    }
    let close = words::close(&trained.close, on);
    for (what, rest) in &close {
        text.push_str(&format!("    joints          {what}{rest}\n"));
    }
    for (_, _, how) in words::resting(&trained.resting) {
        text.push_str(&format!("    rests           {how}\n"));
    }
    if !close.is_empty() {
        text.push_str(&format!("    {}\n", words::CARE));
    }
    text.push('\n');
    text
}

/// "    Lats              13  of 8–20   within     11 direct, 4 indirect".
fn line(group: &Group<'_>) -> String {
    let title = group.muscle.title();
    let sets = number(group.sets(), 1);
    let range = words::range(group.range);
    let status = words::status(group).unwrap_or_default();
    let from = match (group.direct, group.indirect) {
        (direct, 0) => format!("{direct} direct"),
        (0, indirect) => format!("{indirect} indirect"),
        (direct, indirect) => format!("{direct} direct, {indirect} indirect"),
    };
    format!("    {title:<16}{sets:>5}  of {range:<6}{status:<12}{from}\n")
}
