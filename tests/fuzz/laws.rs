//! What holds for any bytes whatever, one law a reader; the fuzz targets look for bytes that break it, and a test of the tree
//! reads the bytes that once were interesting.
#![allow(dead_code)]

use rungwright::catalogue::{Catalogue, text_of};
use rungwright::logbook::Settings;
use rungwright::logbook::exchange::{Feed, Import, Options};
use rungwright::logbook::journal::{self, Form};
use rungwright::logbook::line;
use rungwright::logbook::settings;

/// A journal, and a pending batch: every line is a record or a problem, and a record that is written again reads back.
pub fn journal(bytes: &[u8]) {
    let lines = bytes.split(|byte| *byte == b'\n').count();
    for form in [Form::Journal, Form::Pending] {
        let read = journal::read("journal-fuzz.ron", bytes, form);
        assert!(read.entries.len() <= lines);
        assert!(read.problems.len() <= journal::MOST_PROBLEMS + 1);
        for entry in &read.entries {
            let again = line::read(&line::write(&entry.record));
            assert_eq!(again.record.as_ref(), Some(&entry.record));
        }
        for problem in &read.problems {
            assert!(
                !problem
                    .to_string()
                    .contains(|c: char| c.is_control() && c != '\n')
            );
        }
    }
    journal::tail(bytes);
}

/// A ladder's file, and one of movements: what is in force is written and read back the same.
pub fn ladder(bytes: &[u8]) {
    let Ok(text) = text_of("fuzz.ron", bytes) else {
        return;
    };
    let shipped = Catalogue::shipped();
    let (ladder, problems) = shipped.read_ladder("fuzz.ron", text);
    if let Some(ladder) = ladder {
        let written = shipped.ladder_text(&ladder);
        assert_eq!(shipped.read_ladder("fuzz.ron", &written).0, Some(ladder));
    } else {
        assert!(!problems.is_empty());
    }
    let (movements, _) = Catalogue::read_movements("movements.ron", text);
    let written = Catalogue::movements_text(&movements);
    assert_eq!(Catalogue::read_movements("movements.ron", &written).0, movements);
}

/// A spreadsheet, whole and line by line: the same rows either way, and an export of them is taken back.
pub fn spreadsheet(bytes: &[u8]) {
    let options = Options {
        athlete: Some("Ana".to_owned()),
        ..Options::default()
    };
    let import = Import {
        file: "fuzz.csv",
        options: &options,
        catalogue: Catalogue::shipped(),
        device: "fuzz",
        known: &|_| true,
    };
    let whole = import.read(bytes);
    let mut feed = Feed::new(&import);
    let mut fed = 0;
    let mut wrong = false;
    for line in bytes.split_inclusive(|byte| *byte == b'\n') {
        let said = feed.line(line);
        fed += said.rows.len();
        wrong = said.wrong.is_some();
        if wrong {
            break;
        }
    }
    if !wrong {
        let said = feed.end();
        fed += said.rows.len();
        wrong = said.wrong.is_some();
    }
    if let (Ok(sheet), false) = (whole, wrong)
        && sheet.bad_rows == 0
    {
        assert_eq!(sheet.rows.len(), fed);
    }
}

/// Settings: what could be read is written and read back the same, newer fields too.
pub fn settings(bytes: &[u8]) {
    let Ok(text) = text_of("logbook.ron", bytes) else {
        return;
    };
    let (read, _) = Settings::read(settings::FILE, text);
    let (again, problems) = Settings::read(settings::FILE, &read.to_text());
    if read.format > 0 {
        assert_eq!(again, read, "{problems:?}");
    }
}
