//! What the tests share: a catalogue, a way to read text, and the union of what was read.

use std::collections::BTreeMap;

use rungwright::catalogue::Catalogue;
use rungwright::logbook::exchange::{Import, Listing, Options, Sheet};
use rungwright::logbook::record::{Fact, Record, Set};
use rungwright::logbook::{Id, Log, Name};

/// The file name that messages show.
pub const FILE: &str = "sets.csv";

/// Reads `csv`; nobody is known yet.
pub fn read_with(csv: &str, options: &Options) -> Result<Sheet, Listing> {
    read_bytes(csv.as_bytes(), options, &|_| false)
}

/// Reads bytes with athletes that the logbook knows.
pub fn read_bytes(csv: &[u8], options: &Options, known: &dyn Fn(&Name) -> bool) -> Result<Sheet, Listing> {
    let import = Import {
        file: FILE,
        options,
        catalogue: Catalogue::shipped(),
        device: "test",
        known,
    };
    import.read(csv)
}

/// Reads a file in which everything is good.
pub fn good(csv: &str) -> Sheet {
    good_with(csv, &Options::default())
}

/// The same with options.
pub fn good_with(csv: &str, options: &Options) -> Sheet {
    let sheet = read_with(csv, options).expect("the file as a whole is readable");
    assert!(sheet.problems.is_empty(), "{}", sheet.problems);
    sheet
}

/// The records of a sheet without the names that it brings along, row by row.
pub fn records(sheet: &Sheet) -> Vec<&Record> {
    let named = |record: &&Record| !matches!(&record.what, Fact::Profile { name: Some(_), .. });
    sheet
        .rows
        .iter()
        .flat_map(|row| &row.records)
        .filter(named)
        .collect()
}

/// The only set of a file.
pub fn only_set(csv: &str) -> Set {
    let sheet = good(csv);
    match records(&sheet)[..] {
        [
            Record {
                what: Fact::Set(set), ..
            },
        ] => set.clone(),
        ref other => panic!("not one set: {other:?}"),
    }
}

/// Every id with what it stands for, place in the day left out.
pub fn by_id(sheets: &[&Sheet]) -> BTreeMap<Id, (String, String, Fact)> {
    let rows = sheets.iter().flat_map(|sheet| &sheet.rows);
    rows.flat_map(|row| row.records.iter().map(move |record| (row, record)))
        .map(|(row, record)| {
            let said = (
                row.athlete.to_string(),
                record.at.to_string(),
                record.what.clone(),
            );
            (record.id, said)
        })
        .collect()
}

/// A logbook that was empty before these sheets, as logs in order of name.
pub fn logs(sheets: &[&Sheet]) -> Vec<Log> {
    let mut by_name: BTreeMap<String, BTreeMap<Id, Record>> = BTreeMap::new();
    for row in sheets.iter().flat_map(|sheet| &sheet.rows) {
        let own = by_name.entry(row.athlete.to_string()).or_default();
        for record in &row.records {
            own.entry(record.id).or_insert_with(|| record.clone());
        }
    }
    by_name
        .into_iter()
        .map(|(name, records)| {
            let mut records: Vec<Record> = records.into_values().collect();
            records.sort_by(Log::order);
            Log {
                folder: name.to_lowercase(),
                name,
                records,
            }
        })
        .collect()
}
