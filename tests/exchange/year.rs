//! A year of one lifter's own spreadsheet, as it was kept: tests/spreadsheets/make_year.py wrote it and says how.

use std::collections::BTreeMap;

use rungwright::logbook::exchange::{Dates, Meaning, Options, Sheet, headers, meanings, write};
use rungwright::logbook::record::{Fact, Load, Record, Set};
use rungwright::units::{Effort, Outcome, Unit};

use crate::kit::{by_id, good_with, logs, records};

const YEAR: &str = include_str!("../spreadsheets/dips-and-pull-ups.csv");

fn options() -> Options {
    let maps = [
        "Exercise=movement",
        "Belt kg=added_kg",
        "Belt lb=added_lb",
        "BW kg=bodyweight_kg",
        "Result=outcome",
        "Mood=",
        "Notes=note",
    ];
    Options {
        athlete: Some("Nadia Brandt".into()),
        dates: Dates::Dmy,
        map: maps.iter().map(|map| map.parse().unwrap()).collect(),
        ..Options::default()
    }
}

fn year() -> Sheet {
    good_with(YEAR, &options())
}

/// The file's rows as the csv crate reads them, empty ones left out.
fn rows() -> Vec<Vec<String>> {
    let mut reader = csv::Reader::from_reader(YEAR.trim_start_matches('\u{feff}').as_bytes());
    let rows = reader
        .records()
        .map(|row| row.unwrap().iter().map(str::to_owned).collect());
    rows.filter(|row: &Vec<String>| row.iter().any(|cell| !cell.is_empty()))
        .collect()
}

fn sets<'s>(sheet: &'s Sheet) -> Vec<(&'s Record, &'s Set)> {
    let set = |record: &'s Record| match &record.what {
        Fact::Set(set) => Some((record, set)),
        _ => None,
    };
    records(sheet).into_iter().filter_map(set).collect()
}

#[test]
fn the_window_can_say_beforehand_which_columns_it_knows() {
    let headers = headers(YEAR.as_bytes(), options().delimiter);
    let found = meanings(headers.iter().map(String::as_str), &[]);
    let unknown: Vec<&str> = headers
        .iter()
        .zip(&found)
        .filter(|(_, meaning)| matches!(meaning, Meaning::Unknown(_)))
        .map(|(header, _)| header.as_str())
        .collect();
    assert_eq!(
        unknown,
        [
            "Exercise", "Belt kg", "Belt lb", "BW kg", "Result", "Mood", "Notes"
        ]
    );
    assert_eq!(
        found.last(),
        Some(&Meaning::Unknown(Some(
            rungwright::logbook::exchange::Column::Note
        )))
    );
}

#[test]
fn every_row_and_every_set_of_the_year_arrives() {
    let (sheet, rows) = (year(), rows());
    let count = |row: &Vec<String>| row[2].parse().unwrap_or(1);
    let done: usize = rows.iter().filter(|row| !row[1].is_empty()).map(count).sum();
    let weighed = rows.iter().filter(|row| row[1].is_empty()).count();
    assert_eq!(sheet.rows.len(), rows.len());
    assert_eq!(sets(&sheet).len(), done);
    assert_eq!(records(&sheet).len(), done + weighed);
    assert_eq!(sheet.records(), done + weighed + 1, "and the name");
    assert!(sheet.notes.is_empty());
    assert_eq!(sheet.unit(), Unit::Kg);
    assert!(done > 700 && weighed == 49, "{done} sets, {weighed} weigh-ins");
}

#[test]
fn kilograms_stay_kilograms_pounds_pounds_and_the_sums_are_those_of_the_file() {
    let sheet = year();
    let mut sums: BTreeMap<&str, f64> = BTreeMap::new();
    for (_, set) in sets(&sheet) {
        if let Some(Load::Added(load)) = set.load {
            *sums.entry(load.unit().sign()).or_default() += load.value();
        }
    }
    let sum = |column: usize| -> f64 {
        let load =
            |row: &Vec<String>| -> f64 { row[column].parse().unwrap_or(0.0) * row[2].parse().unwrap_or(1.0) };
        rows().iter().map(load).sum()
    };
    assert_eq!(sums, BTreeMap::from([("kg", sum(4)), ("lb", sum(5))]));
    assert!(sum(4) > 1000.0 && sum(5) > 1000.0);
}

#[test]
fn misses_reps_and_notes_are_those_of_the_file() {
    let sheet = year();
    let missed = sets(&sheet)
        .into_iter()
        .filter(|(_, set)| set.outcome == Outcome::Missed)
        .count();
    assert_eq!(missed, rows().iter().filter(|row| row[8] == "fail").count());
    let done: u32 = sets(&sheet)
        .iter()
        .map(|(_, set)| match set.effort {
            Effort::Reps(reps) => u32::from(reps.count()),
            Effort::Hold(_) => panic!("nothing was held"),
        })
        .sum();
    let written = |row: &Vec<String>| row[3].parse().unwrap_or(0) * row[2].parse().unwrap_or(1);
    assert_eq!(done, rows().iter().map(written).sum::<u32>());
    let notes: Vec<String> = sheet
        .rows
        .iter()
        .filter_map(|row| match &row.records[0].what {
            Fact::Set(set) => set.note.clone(),
            Fact::WeighIn { note, .. } => note.clone(),
            _ => None,
        })
        .collect();
    let written: Vec<String> = rows()
        .into_iter()
        .map(|row| row[10].clone())
        .filter(|note| !note.is_empty())
        .collect();
    assert_eq!(notes, written);
    assert!(notes.iter().any(|note| note.contains("\r\n")) && notes.iter().any(|note| note.contains('"')));
}

#[test]
fn the_year_can_be_read_again_upside_down_or_with_its_dates_turned() {
    let first = year();
    assert_eq!(year(), first);

    let mut turned = csv::Writer::from_writer(Vec::new());
    turned
        .write_record(
            YEAR.trim_start_matches('\u{feff}')
                .lines()
                .next()
                .unwrap()
                .split(','),
        )
        .unwrap();
    for mut row in rows().into_iter().rev() {
        let day: Vec<&str> = row[0].split('/').collect();
        row[0] = format!("{}-{}-{}", day[2], day[1], day[0]);
        turned.write_record(&row).unwrap();
    }
    let turned = String::from_utf8(turned.into_inner().unwrap()).unwrap();
    let turned = good_with(
        &turned,
        &Options {
            dates: Dates::Ymd,
            ..options()
        },
    );
    let without_name = |sheet: &Sheet| {
        let mut said = by_id(&[sheet]);
        said.retain(|_, (_, _, fact)| !matches!(fact, Fact::Profile { .. }));
        said
    };
    assert_eq!(without_name(&first), without_name(&turned));
}

#[test]
fn the_year_comes_back_from_its_export() {
    let once = write(&logs(&[&year()]));
    let again = write(&logs(&[&good_with(&once, &Options::default())]));
    assert_eq!(once, again);
    assert_eq!(once.matches("Nadia Brandt").count(), year().records());
}
