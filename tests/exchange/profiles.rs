//! Athletes that a file makes, and their names.

use rungwright::logbook::exchange::{Options, Sheet};
use rungwright::logbook::record::Fact;

use crate::kit::{good, read_bytes};

/// Names that a sheet gives, with the date and place in the day of each.
fn names(sheet: &Sheet) -> Vec<(String, String, u32)> {
    let records = sheet.rows.iter().flat_map(|row| &row.records);
    records
        .filter_map(|record| match &record.what {
            Fact::Profile { name: Some(name), .. } => Some((name.clone(), record.at.to_string(), record.nth)),
            _ => None,
        })
        .collect()
}

#[test]
fn a_row_with_only_athlete_and_date_makes_the_athlete() {
    let sheet = good("athlete,date\nAna,2026-03-18\n");
    assert_eq!(sheet.records(), 1);
    assert_eq!(names(&sheet), [("Ana".into(), "2026-03-18".into(), 0)]);
}

#[test]
fn an_athlete_gets_one_name_dated_as_the_first_good_row_of_the_file() {
    let csv = "athlete,date,movement,reps\n\
               Ana,2026-03-17,dip,x\n\
               Ana,2026-03-20,dip,8\n\
               Ben,2026-03-19,dip,8\n\
               Ana,2026-03-18,dip,8\n";
    let sheet = read_bytes(csv.as_bytes(), &Options::default(), &|_| false).unwrap();
    assert_eq!(sheet.bad_rows, 1);
    assert_eq!(
        names(&sheet),
        [
            ("Ana".into(), "2026-03-20".into(), 0),
            ("Ben".into(), "2026-03-19".into(), 0)
        ]
    );
    let ben_known = read_bytes(csv.as_bytes(), &Options::default(), &|name| {
        name.as_str() == "Ben"
    })
    .unwrap();
    assert_eq!(names(&ben_known).len(), 1);
}

#[test]
fn birth_date_sex_and_height_come_without_the_name_which_has_a_record_of_its_own() {
    let sheet = good("athlete,date,born,sex,height_cm\nAna,2026-03-18,1994-05-02,female,171.5\n");
    let facts: Vec<&Fact> = sheet.rows[0].records.iter().map(|record| &record.what).collect();
    assert!(matches!(
        facts[..],
        [
            Fact::Profile {
                name: None,
                born: Some(_),
                sex: Some(_),
                height_cm: Some(171.5)
            },
            Fact::Profile {
                name: Some(_),
                born: None,
                sex: None,
                height_cm: None
            },
        ]
    ));
}

#[test]
fn the_name_has_the_same_id_in_every_file_that_first_names_the_athlete_on_that_day() {
    let id = |csv: &str| {
        let sheet = good(csv);
        sheet.rows[0].records.last().map(|record| record.id)
    };
    assert_eq!(
        id("athlete,date\nAna,2026-03-18\n"),
        id("athlete,date,movement,reps\nAna,2026-03-18T10:00,dip,8\n")
    );
    assert_ne!(
        id("athlete,date\nAna,2026-03-18\n"),
        id("athlete,date\nAnn,2026-03-18\n")
    );
}

#[test]
fn spellings_of_one_name_are_one_athlete() {
    // U+00E9 and e + U+0301 are canonically equivalent (Unicode Standard Annex 15).
    let sheet = good("athlete,date\nRen\u{e9},2026-03-18\n Rene\u{301} ,2026-03-19\n");
    assert_eq!(names(&sheet).len(), 1);
    assert_eq!(sheet.rows[0].athlete, sheet.rows[1].athlete);
}

#[test]
fn a_birth_date_logged_before_the_name_stays_without_it() {
    let id = |last: char| format!("01KKZ4Z8G0000000000000000{last}");
    let csv = format!(
        "id,athlete,date,born\n{},Ana,2026-03-18,1994-05-02\n{},Ana,2026-03-19,\n",
        id('A'),
        id('B')
    );
    assert_eq!(names(&good(&csv)), [("Ana".into(), "2026-03-19".into(), 0)]);
}
