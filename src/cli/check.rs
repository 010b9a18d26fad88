//! `check`: mistakes in ladders, movements, settings, journals or whole logbooks, with place and mend.

use std::path::Path;

use serde_json::json;

use crate::body::demand;
use crate::catalogue::{Catalogue, OwnFile};
use crate::logbook::{Logbook, Machine, journal, settings};
use crate::problem::{Place, Problem, Severity};
use crate::report::numbers::counted;

use super::args::CheckArgs;
use super::output::{Format, csv_text, json_text};
use super::{Answer, Failed, reading};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 6] = ["file", "line", "column", "severity", "what", "mend"];

/// Runs `check`.
pub fn run(args: &CheckArgs) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let mut problems = Vec::new();
    if args.paths.is_empty() {
        problems.extend(logbook(
            &machine,
            &reading::root(&machine, args.logbook.as_ref()),
        )?);
    }
    for path in &args.paths {
        if path.is_dir() {
            problems.extend(logbook(&machine, path)?)
        } else {
            problems.extend(file(path))
        }
    }
    let with_problems = problems
        .iter()
        .any(|problem| problem.severity > Severity::Warning);
    Ok(Answer {
        text: answer(&problems, args.format),
        with_problems,
    })
}

fn answer(problems: &[Problem], format: Format) -> String {
    let rows = || {
        let row = |problem: &Problem| {
            json!({
                "file": problem.place.file,
                "line": problem.place.line,
                "column": problem.place.column,
                "severity": severity(problem.severity),
                "what": problem.what,
                "mend": problem.mend,
            })
        };
        problems.iter().map(row).collect::<Vec<_>>()
    };
    match format {
        Format::Json => json_text(&rows().into()),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text if problems.is_empty() => "No problems.\n".to_owned(),
        Format::Text => {
            let mut text: String = problems.iter().map(|problem| format!("{problem}\n")).collect();
            let warnings = problems
                .iter()
                .filter(|problem| problem.severity == Severity::Warning)
                .count();
            text.push_str(&format!(
                "{}, {}\n",
                counted(problems.len() - warnings, "problem"),
                counted(warnings, "warning")
            ));
            text
        }
    }
}

fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Warning => "warning",
        Severity::Damage => "damage",
        Severity::Error => "error",
    }
}

fn logbook(machine: &Machine, root: &Path) -> Result<Vec<Problem>, Failed> {
    let (book, mut problems) = Logbook::open(machine, root)?;
    let (catalogue, own) = book.catalogue();
    problems.extend(own);
    let own_file = |(path, text): &(String, String)| OwnFile::new(path, text);
    let ladders: Vec<OwnFile> = book.own_ladders.iter().map(own_file).collect();
    problems.extend(demand::warnings_of(&catalogue, &ladders));
    for problem in &mut problems {
        if Path::new(&problem.place.file).is_relative() {
            problem.place.file = root.join(&problem.place.file).to_string_lossy().into_owned();
        }
    }
    problems.sort();
    Ok(problems)
}

/// One file, told by its name: movements, settings, a journal, else a ladder.
fn file(path: &Path) -> Vec<Problem> {
    let shown = path.to_string_lossy().into_owned();
    let bytes = match std::fs::read(path) {
        Ok(bytes) => bytes,
        Err(error) => {
            let what = format!("cannot be read: {error}");
            return vec![Problem::error(
                Place::whole(shown),
                what,
                "name a file that is there and yours to read",
            )];
        }
    };
    let name = path
        .file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned();
    if name.starts_with("journal-") && name.ends_with(".ron") {
        return journal::read(&shown, &bytes, journal::Form::Journal).problems;
    }
    let text = match crate::catalogue::text_of(&shown, &bytes) {
        Ok(text) => text,
        Err(problem) => return vec![*problem],
    };
    match name.as_str() {
        settings::FILE => settings::Settings::read(&shown, text).1,
        "movements.ron" => Catalogue::shipped().with_own(&[OwnFile::new(shown, text)]).1,
        _ => with_movements_beside(path, OwnFile::new(shown, text)),
    }
}

/// A ladder, with the own movements of the logbook that it lies in.
fn with_movements_beside(path: &Path, ladder: OwnFile) -> Vec<Problem> {
    let own = path
        .parent()
        .and_then(Path::parent)
        .map(|folder| folder.join("movements.ron"));
    let movements = own.and_then(|path| {
        let text = std::fs::read_to_string(&path).ok()?;
        Some(OwnFile::new(path.to_string_lossy(), text))
    });
    let files: Vec<OwnFile> = movements.into_iter().chain([ladder.clone()]).collect();
    let (catalogue, mut problems) = Catalogue::shipped().with_own(&files);
    problems.retain(|problem| problem.place.file == ladder.path);
    problems.extend(demand::warnings(&catalogue, &ladder));
    problems.sort();
    problems
}
