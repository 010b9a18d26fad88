//! `roster`: a line an athlete, the most urgent need first.

use chrono::NaiveDate;
use serde_json::{Value, json};

use crate::coaching::roster::{Line, RailNow, roster};
use crate::problem::visible;
use crate::report::numbers::{about, ago};
use crate::timeline::Pain;
use crate::units::{Side, Unit};

use super::args_record::RosterArgs;
use super::output::{Format, NOBODY, Style, csv_text, json_number, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 12] = [
    "athlete",
    "need",
    "rails.ladder",
    "rails.side",
    "rails.rung",
    "rails.verdict",
    "bodyweight_kg",
    "weighed_on",
    "pain.site",
    "pain.side",
    "pain.score",
    "last_set",
];

/// Runs `roster`.
pub fn run(args: &RosterArgs) -> Result<Answer, Failed> {
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.place.logbook.as_ref(), None)?;
    let on = reading::day(args.place.on);
    let lines = roster(&book.logs, &catalogue, &reading::on_hand(&book, None), on);
    let rows = || lines.iter().map(json).collect::<Vec<_>>();
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text => text(&lines, book.unit(), on, Style::for_stdout()),
    };
    Ok(Answer { text, with_problems })
}

/// One athlete's line as a JSON object.
fn json(line: &Line) -> Value {
    let rails: Vec<Value> = line
        .rails
        .iter()
        .map(|rail| {
            json!({
                "ladder": rail.ladder,
                "side": rail.rail.letter(),
                "rung": rail.rung,
                "verdict": rail.verdict.id(),
            })
        })
        .collect();
    let pains: Vec<Value> = line
        .pains
        .iter()
        .map(|pain| {
            json!({
                "site": pain.site.word(),
                "side": pain.side.map(Side::letter),
                "score": pain.score,
            })
        })
        .collect();
    json!({
        "athlete": line.athlete,
        "need": line.need.id(),
        "rails": rails,
        "bodyweight_kg": line.weighed.map(|day| json_number(day.mean.kg())),
        "weighed_on": line.weighed.map(|day| day.date.to_string()),
        "pain": pains,
        "last_set": line.last_set.map(|date| date.to_string()),
    })
}

/// The roster as an aligned table.
pub fn text(lines: &[Line], unit: Unit, on: NaiveDate, style: Style) -> String {
    if lines.is_empty() {
        return NOBODY.to_owned();
    }
    let head = ["need", "athlete", "weighs", "weighed", "last set", "hurts", "on"].map(str::to_owned);
    let mut table = vec![head];
    table.extend(lines.iter().map(|line| cells(line, unit, on)));
    let width = |column: usize| {
        let cells = table.iter().filter_map(|row| row.get(column));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..7).map(width).collect();
    let mut text = String::new();
    for (at, row) in table.iter().enumerate() {
        let padded: Vec<String> = row
            .iter()
            .zip(&widths)
            .map(|(cell, width)| format!("{cell:width$}"))
            .collect();
        let line = padded.join("  ");
        let line = line.trim_end();
        text.push_str(&if at == 0 {
            style.strong(line)
        } else {
            line.to_owned()
        });
        text.push('\n');
    }
    text
}

fn cells(line: &Line, unit: Unit, on: NaiveDate) -> [String; 7] {
    let since = |date: NaiveDate| ago((on - date).num_days());
    let or_dash = |text: Option<String>| text.unwrap_or_else(|| "-".to_owned());
    let pains: Vec<String> = line.pains.iter().map(pain).collect();
    [
        line.need.id().to_owned(),
        visible(&line.athlete),
        or_dash(line.weighed.map(|day| about(day.mean.kg(), unit))),
        or_dash(line.weighed.map(|day| since(day.date))),
        or_dash(line.last_set.map(since)),
        or_dash(Some(pains.join(", ")).filter(|text| !text.is_empty())),
        or_dash(Some(rails(&line.rails)).filter(|text| !text.is_empty())),
    ]
}

/// `elbow L 4`.
fn pain(pain: &Pain) -> String {
    match pain.side {
        Some(side) => format!("{} {} {}", pain.site.word(), side.letter(), pain.score),
        None => format!("{} {}", pain.site.word(), pain.score),
    }
}

/// `one-arm-pull-up L fingers-3 add-reps, R fingers-2 repeat; weighted-dip plus-25 step-up`.
fn rails(rails: &[RailNow]) -> String {
    let mut text = String::new();
    let mut ladder: Option<&str> = None;
    for rail in rails {
        let gap = match ladder {
            None => "",
            Some(same) if same == rail.ladder => ", ",
            Some(_) => "; ",
        };
        text.push_str(gap);
        let words = [
            Some(rail.ladder.as_str()).filter(|id| ladder != Some(*id)),
            rail.rail.side().map(Side::letter),
            Some(rail.rung.as_str()),
            Some(rail.verdict.id()),
        ];
        text.push_str(&words.into_iter().flatten().collect::<Vec<_>>().join(" "));
        ladder = Some(&rail.ladder);
    }
    visible(&text)
}
