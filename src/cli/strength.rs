//! `strength`: the beliefs of a day, with their bands, trend, and the sets that look like typos.

use rayon::prelude::*;
use serde_json::{Map, Value, json};

use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::logbook::Log;
use crate::problem::visible;
use crate::report::belief;
use crate::report::words::movement_on;
use crate::strength::{Belief, Believed, Coverage, beliefs};
use crate::timeline::Timeline;
use crate::units::{Added, Bodyweight, Side, Unit};

use super::args::StrengthArgs;
use super::output::{Format, NOBODY, Style, csv_text, json_number, json_option, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 18] = [
    "athlete",
    "movement",
    "side",
    "on",
    "system_1rm_kg",
    "log_sd",
    "low50",
    "high50",
    "low80",
    "high80",
    "low95",
    "high95",
    "trend_pct_week",
    "bodyweight_kg",
    "added_1rm_kg",
    "suspects.id",
    "suspects.date",
    "suspects.probability",
];

/// Runs `strength`.
pub fn run(args: &StrengthArgs) -> Result<Answer, Failed> {
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.place.logbook.as_ref(), args.athlete.as_deref())?;
    let on = reading::day(args.place.on);
    let counted = Counted::of(&book.settings);
    let all: Vec<(&Log, Vec<Believed>)> = book
        .logs
        .par_iter()
        .map(|log| (log, beliefs(&Timeline::counting(log, &catalogue, on, counted))))
        .collect();
    let rows = || -> Vec<Value> {
        let each = all
            .iter()
            .flat_map(|(log, beliefs)| beliefs.iter().map(move |believed| (log, believed)));
        each.map(|(log, believed)| row(&log.name, believed, on)).collect()
    };
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text if book.logs.is_empty() => NOBODY.to_owned(),
        Format::Text => all
            .iter()
            .map(|(log, beliefs)| text(&log.name, beliefs, &catalogue, book.unit()))
            .collect(),
    };
    Ok(Answer { text, with_problems })
}

fn row(athlete: &str, believed: &Believed, on: chrono::NaiveDate) -> Value {
    let mut row = Map::new();
    row.insert("athlete".to_owned(), athlete.into());
    row.insert("movement".to_owned(), believed.movement.as_str().into());
    row.insert("side".to_owned(), believed.side.map_or("", Side::letter).into());
    row.insert("on".to_owned(), on.to_string().into());
    for (name, value) in numbers(&believed.belief) {
        row.insert(name.to_owned(), json_number(value));
    }
    let suspects: Vec<Value> = believed
        .suspects
        .iter()
        .map(|suspect| {
            json!({
                "id": suspect.id.to_string(),
                "date": suspect.date.to_string(),
                "probability": json_number(suspect.probability),
            })
        })
        .collect();
    let (trend, _) = believed.belief.trend();
    row.insert("trend_pct_week".to_owned(), json_number(trend * 100.0));
    let body = believed.bodyweight.map(Bodyweight::kg);
    row.insert("bodyweight_kg".to_owned(), json_option(body));
    let added = believed.added_one_rep_max().map(Added::kg);
    row.insert("added_1rm_kg".to_owned(), json_option(added));
    row.insert("suspects".to_owned(), suspects.into());
    Value::Object(row)
}

/// The numbers of a belief by the names that answers give them: 1RM on system load in kg, sd of its log, bands in kg.
pub(super) fn numbers(belief: &Belief) -> [(&'static str, f64); 8] {
    let [half, eighty, most] =
        [Coverage::Half, Coverage::Eighty, Coverage::NinetyFive].map(|coverage| belief.band(coverage));
    [
        ("system_1rm_kg", belief.one_rep_max().kg()),
        ("log_sd", belief.log_sd()),
        ("low50", half.low.kg()),
        ("high50", half.high.kg()),
        ("low80", eighty.low.kg()),
        ("high80", eighty.high.kg()),
        ("low95", most.low.kg()),
        ("high95", most.high.kg()),
    ]
}

fn text(athlete: &str, beliefs: &[Believed], catalogue: &Catalogue, unit: Unit) -> String {
    let mut text = format!("{}\n", Style::for_stdout().strong(&visible(athlete)));
    if beliefs.is_empty() {
        text.push_str("  no estimate yet: it needs sets with a load, and a weigh-in, of an earlier day\n");
    }
    for believed in beliefs {
        let title = movement_on(catalogue, &believed.movement, believed.side);
        text.push_str(&format!("  {}\n", visible(&title)));
        for line in belief::lines(believed, unit) {
            text.push_str(&format!("    {line}\n"));
        }
    }
    text.push('\n');
    text
}
