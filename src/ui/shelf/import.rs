//! A spreadsheet: looked at, and written all or nothing.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::catalogue::Catalogue;
use crate::clock;
use crate::logbook::exchange::{
    Column, Dates, Decimal, Delimiter, Import, Meaning, Options, Renaming, Sheet, headers, meanings,
};
use crate::logbook::writer::LOCK_WAIT;
use crate::logbook::{Logbook, Machine, Name, Record, Trouble, Writer};
use crate::problem::{Problem, visible};
use crate::ui::book::{Cells, DatesAre, ImportText, Source};
use crate::ui::views::{ImportRow, ImportView};
use crate::ui::work::{Go, Report};

use super::jobs::Bench;
use super::opened::Ended;

/// How many sound rows are shown.
const FIRST_ROWS: usize = 20;
/// A line is shown up to so many characters.
const LONGEST_SHOWN: usize = 300;

/// A spreadsheet's bytes and how they are read.
struct Given {
    file: String,
    bytes: Vec<u8>,
    options: Options,
    headers: Vec<String>,
}

impl Given {
    fn of(text: &ImportText) -> Result<Self, String> {
        let (file, bytes) = match &text.from {
            Source::Text(text) => ("pasted".to_owned(), text.clone().into_bytes()),
            Source::File(path) => {
                let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy();
                let bytes = std::fs::read(path)
                    .map_err(|error| format!("{}: can't be read: {error}", visible(&name)))?;
                (name.into_owned(), bytes)
            }
        };
        let delimiter = delimiter(text.cells, &bytes);
        let headers = headers(&bytes, delimiter);
        let chosen = |header: &str| text.columns.iter().find(|(theirs, _)| theirs == header);
        let mut map: Vec<Renaming> = text
            .columns
            .iter()
            .filter(|(theirs, _)| headers.contains(theirs))
            .map(|(theirs, ours)| Renaming {
                theirs: theirs.clone(),
                ours: Column::named(ours),
            })
            .collect();
        // What no name fits is left out, and the screen says so.
        let unknown: Vec<&String> = headers
            .iter()
            .zip(meanings(headers.iter().map(String::as_str), &map))
            .filter(|(header, meaning)| matches!(meaning, Meaning::Unknown(_)) && chosen(header).is_none())
            .map(|(header, _)| header)
            .collect();
        map.extend(unknown.into_iter().map(|header| Renaming {
            theirs: header.clone(),
            ours: None,
        }));
        let athlete = text.athlete.trim();
        let options = Options {
            athlete: (!athlete.is_empty()).then(|| athlete.to_owned()),
            dates: match text.dates {
                DatesAre::YearFirst => Dates::Ymd,
                DatesAre::DayFirst => Dates::Dmy,
                DatesAre::MonthFirst => Dates::Mdy,
            },
            delimiter,
            decimal: if text.comma {
                Decimal::Comma
            } else {
                Decimal::Point
            },
            map,
            ..Options::default()
        };
        Ok(Self {
            file,
            bytes,
            options,
            headers,
        })
    }

    fn meanings(&self) -> Vec<Meaning> {
        meanings(self.headers.iter().map(String::as_str), &self.options.map)
    }

    fn read(&self, bench: &Bench, known: &Known) -> Result<Sheet, Vec<Problem>> {
        let import = Import {
            file: &self.file,
            options: &self.options,
            catalogue: &known.catalogue,
            device: &bench.device,
            known: &|name: &Name| known.names.contains(name.as_str()),
        };
        import.read(&self.bytes).map_err(|listing| listing.listed)
    }
}

fn delimiter(cells: Cells, bytes: &[u8]) -> Delimiter {
    let first = bytes
        .split(|byte| matches!(byte, b'\n' | b'\r'))
        .find(|line| line.iter().any(|byte| !byte.is_ascii_whitespace()))
        .unwrap_or_default();
    let count = |sign: u8| first.iter().filter(|byte| **byte == sign).count();
    let word = match cells {
        Cells::Comma => ",",
        Cells::Semicolon => ";",
        Cells::Tab => "tab",
        Cells::AsFirstLine if count(b'\t') > 0 => "tab",
        Cells::AsFirstLine if count(b';') > count(b',') => ";",
        Cells::AsFirstLine => ",",
    };
    word.parse().unwrap_or_default()
}

/// What the logbook knows already.
struct Known {
    catalogue: Catalogue,
    names: BTreeSet<String>,
    is_new: bool,
}

impl Known {
    fn at(machine: &Machine, root: &Path) -> Result<Self, Trouble> {
        match Logbook::open(machine, root) {
            Ok((book, _)) => Ok(Self {
                catalogue: book.catalogue().0,
                names: book.names(),
                is_new: false,
            }),
            Err(Trouble::Missing { .. }) => Ok(Self {
                catalogue: Catalogue::shipped().clone(),
                names: BTreeSet::new(),
                is_new: true,
            }),
            Err(trouble) => Err(trouble),
        }
    }
}

/// What would be written. Nothing is.
pub(super) fn preview(bench: &Bench, root: &Path, text: &ImportText, report: &Report) -> ImportView {
    let with = |problem: String| ImportView {
        problem: Some(problem),
        known_columns: Column::ALL.map(Column::name).to_vec(),
        ..ImportView::default()
    };
    let given = match Given::of(text) {
        Ok(given) => given,
        Err(words) => return with(words),
    };
    let known = match Known::at(&bench.machine, root) {
        Ok(known) => known,
        Err(trouble) => return with(trouble.to_string()),
    };
    if report.go() == Go::Stop {
        return ImportView::default();
    }
    let columns: Vec<(String, Option<String>)> = given
        .headers
        .iter()
        .zip(given.meanings())
        .map(|(header, meaning)| {
            let ours = match meaning {
                Meaning::Column(column) | Meaning::Twice(column) => Some(column.name().to_owned()),
                Meaning::Dropped | Meaning::Unknown(_) => None,
            };
            (visible(header), ours)
        })
        .collect();
    let has_athlete = columns.iter().any(|(_, ours)| ours.as_deref() == Some("athlete"));
    let folder = visible(&root.to_string_lossy());
    let mut view = ImportView {
        columns,
        asks_athlete: !has_athlete,
        into: if known.is_new {
            format!("A new logbook is made in {folder}.")
        } else {
            format!("They are added to {folder}; rows that are there already add nothing.")
        },
        ..with(String::new())
    };
    view.problem = None;
    match given.read(bench, &known) {
        Ok(sheet) => {
            view.good = sheet.rows.len();
            view.bad = sheet.bad_rows;
            view.rows = rows(&given.bytes, &sheet);
        }
        // Mends of the whole file name options of the command; here the columns are chosen below.
        Err(problems) => {
            let whats: Vec<String> = problems.into_iter().map(|problem| problem.what).collect();
            view.problem = Some(format!("{}.", whats.join("; ")));
            view.rows = first_lines(&given.bytes, &BTreeMap::new());
        }
    }
    view
}

/// The first lines, then those with a problem.
fn rows(bytes: &[u8], sheet: &Sheet) -> Vec<ImportRow> {
    let problems: BTreeMap<usize, String> = sheet
        .problems
        .listed
        .iter()
        .chain(&sheet.notes.listed)
        .map(|problem| {
            let mend = match problem.mend.as_str() {
                "" => String::new(),
                mend => format!("; {mend}"),
            };
            (problem.place.line, format!("{}{mend}", problem.what))
        })
        .collect();
    first_lines(bytes, &problems)
}

fn first_lines(bytes: &[u8], problems: &BTreeMap<usize, String>) -> Vec<ImportRow> {
    let text = String::from_utf8_lossy(bytes);
    (1..)
        .zip(text.lines())
        .filter(|(line, text)| {
            (*line <= FIRST_ROWS && !text.trim().is_empty()) || problems.contains_key(line)
        })
        .map(|(line, text)| ImportRow {
            line,
            text: visible(
                &text
                    .chars()
                    .take(LONGEST_SHOWN)
                    .collect::<String>()
                    .replace('\t', "  "),
            ),
            problem: problems.get(&line).cloned(),
        })
        .collect()
}

/// Writes every row, or nothing.
pub(super) fn write(bench: &Bench, root: &Path, text: &ImportText, report: &Report) -> Result<(), Ended> {
    let given = Given::of(text).map_err(Ended::Failed)?;
    let known = Known::at(&bench.machine, root)?;
    let sheet = given.read(bench, &known).map_err(|problems| {
        let first = problems.into_iter().next().map(|problem| problem.what);
        Ended::Failed(first.unwrap_or_default())
    })?;
    if sheet.bad_rows > 0 {
        return Err(Ended::Failed(format!(
            "{} rows have a problem now; nothing was written.",
            sheet.bad_rows
        )));
    }
    let batch: Vec<(Name, Vec<Record>)> = sheet
        .rows
        .iter()
        .map(|row| (row.athlete.clone(), row.records.clone()))
        .collect();
    let now = clock::now().to_utc();
    let (mut writer, _) = Writer::lock(&bench.machine, root, bench.device.clone(), now, LOCK_WAIT)?;
    if report.go() == Go::Stop {
        return Err(Ended::Stopped);
    }
    writer.ensure_settings(sheet.unit())?;
    writer.commit_given(batch)?;
    Ok(())
}
