//! `totals`: bests by each measure, with their bodyweights and dates.

use std::collections::BTreeMap;

use rayon::prelude::*;
use serde_json::{Value, json};

use crate::bests::{Best, Formula, Kind, Size, bests};
use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::logbook::Log;
use crate::problem::visible;
use crate::report::numbers::{about, counted, kg, number};
use crate::report::words::movement_on;
use crate::timeline::Timeline;
use crate::units::{Bodyweight, Side, SystemLoad, Unit};

use super::args::TotalsArgs;
use super::output::{Format, NOBODY, Style, csv_text, json_number, json_option, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 12] = [
    "athlete",
    "movement",
    "side",
    "kind",
    "reps",
    "hold_s",
    "value",
    "date",
    "bodyweight_kg",
    "added_kg",
    "system_kg",
    "doubted",
];

/// Runs `totals`.
pub fn run(args: &TotalsArgs) -> Result<Answer, Failed> {
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.place.logbook.as_ref(), args.athlete.as_deref())?;
    let on = reading::day(args.place.on);
    let formula = args.formula.unwrap_or_else(|| Formula::chosen(&book.settings));
    let counted = Counted::of(&book.settings);
    let timelines: Vec<(&Log, Timeline<'_>)> = book
        .logs
        .par_iter()
        .map(|log| (log, Timeline::counting(log, &catalogue, on, counted)))
        .collect();
    let all: Vec<(&str, Vec<Best<'_>>)> = timelines
        .par_iter()
        .map(|(log, timeline)| (log.name.as_str(), bests(timeline, formula)))
        .collect();
    let rows = || -> Vec<Value> {
        all.iter()
            .flat_map(|(athlete, bests)| bests.iter().map(|best| row(athlete, best)))
            .collect()
    };
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text if book.logs.is_empty() => NOBODY.to_owned(),
        Format::Text => {
            let told = all
                .iter()
                .map(|(athlete, bests)| of_athlete(athlete, bests, &catalogue, book.unit(), formula));
            told.collect()
        }
    };
    Ok(Answer { text, with_problems })
}

fn row(athlete: &str, best: &Best<'_>) -> Value {
    let (reps, hold) = match best.size {
        Size::Reps(reps) => (Value::from(reps), Value::Null),
        Size::Hold(seconds) => (Value::Null, json_number(seconds)),
        Size::Estimate => (Value::Null, Value::Null),
    };
    json!({
        "athlete": athlete,
        "movement": best.movement,
        "side": best.side.map_or("", Side::letter),
        "kind": best.kind.id(),
        "reps": reps,
        "hold_s": hold,
        "value": json_number(best.value),
        "date": best.date.to_string(),
        "bodyweight_kg": json_option(best.bodyweight.map(Bodyweight::kg)),
        "added_kg": json_number(best.added.kg()),
        "system_kg": json_option(best.system.map(SystemLoad::kg)),
        "doubted": best.doubted,
    })
}

fn of_athlete(
    athlete: &str,
    bests: &[Best<'_>],
    catalogue: &Catalogue,
    unit: Unit,
    formula: Formula,
) -> String {
    let style = Style::for_stdout();
    let mut text = format!("{}\n", style.strong(&visible(athlete)));
    let mut rails: BTreeMap<(&str, Option<Side>), Vec<&Best<'_>>> = BTreeMap::new();
    for best in bests {
        rails.entry((best.movement, best.side)).or_default().push(best);
    }
    if rails.is_empty() {
        text.push_str("  no best yet: log a set\n");
    }
    for ((movement, side), bests) in rails {
        let title = movement_on(catalogue, movement, side);
        text.push_str(&format!("  {}\n", visible(&title)));
        // A set of eight is often the best of at least five, six and seven too: one line says so.
        for same in bests.chunk_by(|a, b| (a.kind, a.id) == (b.kind, b.id)) {
            if let (Some(first), Some(last)) = (same.first(), same.last()) {
                text.push_str(&line(first, last.size, unit, formula));
            }
        }
    }
    text.push('\n');
    text
}

/// One set's line: it is the best from its own size to `last`.
fn line(best: &Best<'_>, last: Size, unit: Unit, formula: Formula) -> String {
    let what = match best.kind {
        Kind::System => "best system load".to_owned(),
        Kind::Added => "best added".to_owned(),
        Kind::Ratio => "best ratio".to_owned(),
        Kind::SizeAdjusted => "size-adjusted".to_owned(),
        Kind::OneRepMax => format!("e1RM, {}", formula.id()),
        Kind::OneRepMaxAdded => "e1RM, added".to_owned(),
    };
    let size = match (best.size, last) {
        (Size::Reps(first), Size::Reps(last)) if first < last => format!("{first}–{last} reps"),
        (Size::Reps(reps), _) => counted(reps, "rep"),
        (Size::Hold(seconds), _) => format!("{} s", number(seconds, 1)),
        (Size::Estimate, _) => String::new(),
    };
    let value = match best.kind {
        Kind::Ratio => format!("{} × bodyweight", number(best.value, 2)),
        Kind::SizeAdjusted => format!("{} kg^0.33", number(best.value, 2)),
        _ => kg(best.value, unit),
    };
    let at = best
        .bodyweight
        .map_or_else(String::new, |body| format!("at {}", about(body.kg(), unit)));
    let doubted = if best.doubted {
        "  doubted: check the entry"
    } else {
        ""
    };
    format!(
        "    {what:<18}{size:>10}  {value:<20}{:<12}{at}{doubted}\n",
        best.date.to_string()
    )
    .trim_end()
    .to_owned()
        + "\n"
}
