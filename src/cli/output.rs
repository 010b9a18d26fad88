//! Answers on stdout: text for people, JSON and CSV for programs. One write at the end, so that a full disk or a closed
//! pipe is noticed.

use std::io::{IsTerminal, Write};

use serde_json::Value;

/// The form of an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Format {
    /// For people.
    Text,
    /// For programs.
    Json,
    /// For spreadsheets (RFC 4180).
    Csv,
}

/// What text says of a logbook without athletes.
pub const NOBODY: &str = "Nobody is in this logbook yet; log something, or import a spreadsheet.\n";

/// Writes the whole answer.
///
/// # Errors
/// When stdout takes no more. A reader that closed the pipe is no error: it has what it wanted.
pub fn say(text: &str) -> std::io::Result<()> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => Ok(()),
        result => result,
    }
}

/// Writes one line to stderr; where even that fails there is nobody left to tell.
pub fn tell(line: &str) {
    let _nobody_left = writeln!(std::io::stderr().lock(), "{line}");
}

/// Weight on a terminal; plain text everywhere else, so that nothing is said by colour alone.
#[derive(Debug, Clone, Copy)]
pub struct Style {
    on: bool,
}

impl Style {
    /// Bold on a terminal that wants it (<https://no-color.org> is honoured).
    pub fn for_stdout() -> Self {
        Self {
            on: std::io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none(),
        }
    }

    /// A word to find at a glance.
    pub fn strong(self, word: &str) -> String {
        if self.on {
            format!("\u{1b}[1m{word}\u{1b}[0m")
        } else {
            word.to_owned()
        }
    }
}

/// A JSON number without noise: whole numbers whole, others to a millionth of a gram.
pub fn json_number(value: f64) -> Value {
    let rounded = (value * 1e9).round() / 1e9;
    if rounded.fract() == 0.0 && rounded.abs() < 1e15 {
        #[allow(clippy::cast_possible_truncation)]
        let whole = rounded as i64;
        return Value::from(whole);
    }
    serde_json::Number::from_f64(rounded).map_or(Value::Null, Value::Number)
}

/// A number that may be missing.
pub fn json_option(value: Option<f64>) -> Value {
    value.map_or(Value::Null, json_number)
}

/// A JSON answer, one line feed at its end.
pub fn json_text(rows: &Value) -> String {
    let mut text = serde_json::to_string_pretty(rows).unwrap_or_default();
    text.push('\n');
    text
}

/// Rows of a JSON answer as CSV: `columns` are paths with dots; a range's ends are `.lo` and `.hi`; lists are joined by a space,
/// lists of sentences by ` | `.
pub fn csv_text(rows: &[Value], columns: &[&str]) -> String {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .from_writer(Vec::new());
    let header = writer.write_record(columns);
    let body = rows
        .iter()
        .try_for_each(|row| writer.write_record(columns.iter().map(|column| guarded(&cell(row, column)))));
    debug_assert!(header.is_ok() && body.is_ok(), "writing to memory does not fail");
    writer
        .into_inner()
        .ok()
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default()
}

fn cell(row: &Value, path: &str) -> String {
    static NOTHING: Value = Value::Null;
    let mut value = row;
    for name in path.split('.') {
        let within = match (name, value) {
            ("lo", Value::Array(ends)) => ends.first(),
            ("hi", Value::Array(ends)) => ends.get(1),
            (_, Value::Array(items)) => {
                let parts: Vec<String> = items.iter().map(|item| plain(&item[name])).collect();
                return parts.join(if name == "text" { " | " } else { " " });
            }
            _ => value.get(name),
        };
        value = within.unwrap_or(&NOTHING);
    }
    plain(value)
}

fn plain(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Array(items) => items.iter().map(plain).collect::<Vec<_>>().join(" "),
        other => other.to_string(),
    }
}

/// A cell that no spreadsheet takes for a formula (OWASP CWE-1236).
fn guarded(cell: &str) -> String {
    format!("{}{cell}", crate::logbook::exchange::guard(cell))
}
