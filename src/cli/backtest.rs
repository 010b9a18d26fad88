//! `backtest`: beliefs as they would have been on past dates, beside the rows that ask for them.

use std::collections::BTreeMap;

use rayon::prelude::*;
use serde_json::{Map, Value};

use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::logbook::exchange::{Asked, Points, points};
use crate::logbook::{Log, Logbook, Name};
use crate::problem::visible;
use crate::report::belief::{probability, range};
use crate::report::numbers::{about, counted};
use crate::strength::{Band, Belief, Point, beliefs_at};
use crate::timeline::Timeline;
use crate::units::{Mass, Side, SystemLoad, Unit};

use super::args::BacktestArgs;
use super::output::{Format, json_text, tell};
use super::reading::{self, Reading};
use super::strength::numbers;
use super::{Answer, Failed};

/// The columns that the answer adds.
const ADDED: [&str; 9] = [
    "system_1rm_kg",
    "log_sd",
    "low50",
    "high50",
    "low80",
    "high80",
    "low95",
    "high95",
    "chance",
];

/// One row's answer: the numbers in the order of [`ADDED`].
type Numbers = Vec<Option<f64>>;

/// Runs `backtest`.
pub fn run(args: &BacktestArgs) -> Result<Answer, Failed> {
    let file = args.points.to_string_lossy().into_owned();
    let bytes = std::fs::read(&args.points)
        .map_err(|error| Failed::Problem(format!("{}: cannot be read: {error}", visible(&file))))?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.logbook.as_ref(), None)?;
    let points =
        points(&file, &bytes, &catalogue, &ADDED).map_err(|listing| Failed::Problem(listing.to_string()))?;
    if !points.problems.is_empty() {
        tell(&points.problems.to_string());
    }
    let (answers, strangers) = answers(&points, &book, &catalogue);
    for (name, rows) in &strangers {
        let rows = counted(*rows, "row");
        tell(&format!(
            "{}: no athlete {} in this logbook; {rows} without an answer",
            visible(&file),
            crate::problem::quoted(name.as_str())
        ));
    }
    let text = match args.format {
        Format::Csv => csv(&points, &answers),
        Format::Json => json_text(&Value::from(json(&points, &answers))),
        Format::Text => text(&points, &answers, book.unit()),
    };
    Ok(Answer {
        text,
        with_problems: with_problems || !points.problems.is_empty() || !strangers.is_empty(),
    })
}

/// The answer to each row, and how many rows ask for somebody who isn't there.
fn answers<'p>(
    points: &'p Points<'_>,
    book: &Logbook,
    catalogue: &Catalogue,
) -> (Vec<Option<Numbers>>, BTreeMap<&'p Name, usize>) {
    let mut by_athlete: BTreeMap<&Name, Vec<(usize, &Asked)>> = BTreeMap::new();
    for (nth, row) in points.rows.iter().enumerate() {
        if let Some(asked) = &row.asked {
            by_athlete.entry(&asked.athlete).or_default().push((nth, asked));
        }
    }
    let log_of: BTreeMap<&str, &Log> = book.logs.iter().map(|log| (log.name.as_str(), log)).collect();
    let counted = Counted::of(&book.settings);
    let found: Vec<(usize, Numbers)> = by_athlete
        .par_iter()
        .filter_map(|(name, asked)| Some(of_athlete(log_of.get(name.as_str())?, asked, catalogue, counted)))
        .flatten_iter()
        .collect();
    let mut answers = vec![None; points.rows.len()];
    for (nth, numbers) in found {
        if let Some(slot) = answers.get_mut(nth) {
            *slot = Some(numbers);
        }
    }
    let strangers = by_athlete
        .iter()
        .filter(|(name, _)| !log_of.contains_key(name.as_str()))
        .map(|(name, asked)| (*name, asked.len()))
        .collect();
    (answers, strangers)
}

fn of_athlete(
    log: &Log,
    asked: &[(usize, &Asked)],
    catalogue: &Catalogue,
    counted: Counted,
) -> Vec<(usize, Numbers)> {
    let Some(last) = asked.iter().map(|(_, asked)| asked.as_of).max() else {
        return Vec::new();
    };
    let timeline = Timeline::counting(log, catalogue, last, counted);
    let wanted: Vec<Point> = asked
        .iter()
        .map(|(_, asked)| Point {
            movement: asked.movement.clone(),
            side: asked.side,
            as_of: asked.as_of,
            on: asked.on,
        })
        .collect();
    let mut found = Vec::with_capacity(wanted.len());
    beliefs_at(&timeline, &wanted, |place, belief| {
        if let (Some((nth, asked)), Some(belief)) = (asked.get(place), belief) {
            found.push((*nth, row(&belief, asked.system)));
        }
    });
    found
}

fn row(belief: &Belief, system: Option<SystemLoad>) -> Numbers {
    let mut row: Numbers = numbers(belief).iter().map(|(_, value)| Some(*value)).collect();
    row.push(system.map(|load| belief.chance(load)));
    row
}

/// The rows as they came, the answer's columns behind.
fn csv(points: &Points<'_>, answers: &[Option<Numbers>]) -> String {
    let mut text = String::from_utf8_lossy(points.header).into_owned();
    for name in ADDED {
        text.push(',');
        text.push_str(name);
    }
    text.push_str("\r\n");
    for (row, answer) in points.rows.iter().zip(answers) {
        text.push_str(&String::from_utf8_lossy(row.raw));
        for nth in 0..ADDED.len() {
            text.push(',');
            let value = answer
                .as_ref()
                .and_then(|numbers| numbers.get(nth).copied().flatten());
            if let Some(value) = value {
                text.push_str(&value.to_string());
            }
        }
        text.push_str("\r\n");
    }
    text
}

fn json(points: &Points<'_>, answers: &[Option<Numbers>]) -> Vec<Value> {
    let asked = points
        .rows
        .iter()
        .zip(answers)
        .filter_map(|(row, answer)| Some((row.asked.as_ref()?, answer)));
    asked
        .map(|(asked, answer)| {
            let mut row = Map::new();
            row.insert("athlete".to_owned(), asked.athlete.as_str().into());
            row.insert("movement".to_owned(), asked.movement.as_str().into());
            row.insert("side".to_owned(), asked.side.map_or("", Side::letter).into());
            row.insert("as_of".to_owned(), asked.as_of.to_string().into());
            row.insert("on".to_owned(), asked.on.to_string().into());
            row.insert("system_kg".to_owned(), asked.system.map(SystemLoad::kg).into());
            for (nth, name) in ADDED.iter().enumerate() {
                let value = answer
                    .as_ref()
                    .and_then(|numbers| numbers.get(nth).copied().flatten());
                row.insert((*name).to_owned(), value.into());
            }
            Value::Object(row)
        })
        .collect()
}

fn text(points: &Points<'_>, answers: &[Option<Numbers>], unit: Unit) -> String {
    let mut text = String::new();
    for (row, answer) in points.rows.iter().zip(answers) {
        let Some(asked) = &row.asked else { continue };
        let side = asked
            .side
            .map_or_else(String::new, |side| format!(" {}", side.letter()));
        let said = match answer.as_deref() {
            Some([Some(most), _, _, _, Some(low), Some(high), _, _, chance]) => {
                let load = |kg: f64| SystemLoad::new(Mass::from_kg(kg));
                let band = Band {
                    low: load(*low),
                    high: load(*high),
                };
                let tried = match (asked.system, chance) {
                    (Some(system), Some(chance)) => format!(
                        "; one repetition at {}: chance {}",
                        about(system.kg(), unit),
                        probability(*chance)
                    ),
                    _ => String::new(),
                };
                format!("about {}, 80 %: {}{tried}", about(*most, unit), range(band, unit))
            }
            _ => "no earlier record".to_owned(),
        };
        text.push_str(&visible(&format!(
            "{}, {}{side}, {} as of {}: {said}",
            asked.athlete.as_str(),
            asked.movement,
            asked.on,
            asked.as_of
        )));
        text.push('\n');
    }
    text
}
