//! `export`: every record as a row that import takes back.

use serde_json::{Map, Value};

use crate::logbook::Record;
use crate::logbook::exchange::{Column, values, write};

use super::args_record::{ExportArgs, ExportFormat};
use super::output::json_text;
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Runs `export`.
pub fn run(args: &ExportArgs) -> Result<Answer, Failed> {
    let Reading {
        book, with_problems, ..
    } = reading::logbook(args.logbook.as_ref(), None)?;
    let text = match args.format {
        ExportFormat::Csv => write(&book.logs),
        ExportFormat::Json => {
            let rows = book
                .logs
                .iter()
                .flat_map(|log| log.records.iter().map(|record| json(&log.name, record)));
            json_text(&Value::Array(rows.collect()))
        }
    };
    Ok(Answer { text, with_problems })
}

/// A row as a JSON object with every column; empty cells are null, numbers are numbers.
fn json(athlete: &str, record: &Record) -> Value {
    let mut row: Map<String, Value> = Column::ALL
        .into_iter()
        .map(|column| (column.name().to_owned(), Value::Null))
        .collect();
    for (column, text) in values(athlete, record) {
        let value = match column {
            Column::BodyweightKg
            | Column::BodyweightLb
            | Column::AddedKg
            | Column::AddedLb
            | Column::Reps
            | Column::HoldS
            | Column::Rir
            | Column::Rpe
            | Column::Pain
            | Column::HeightCm => text
                .parse()
                .map_or_else(|_| Value::String(text.clone()), Value::Number),
            _ => Value::String(text),
        };
        row.insert(column.name().to_owned(), value);
    }
    Value::Object(row)
}
