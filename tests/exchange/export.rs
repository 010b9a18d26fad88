//! What `export` writes, and that it comes back.

use rungwright::logbook::exchange::{Options, write};
use rungwright::logbook::record::{Fact, Load, Record};
use rungwright::logbook::{Id, Log, Written};
use rungwright::units::{Given, Typed, Unit};

use crate::kit::{good, logs, read_bytes, read_with};

const HEADER: &str = "id,athlete,date,movement,side,bodyweight_kg,bodyweight_lb,added_kg,added_lb,reps,hold_s,rir,rpe,\
                      outcome,ladder,rung,pain,pain_site,phase,goal,goal_by,height_cm,sex,born,sets,note\r\n";

/// A lifter's days with every kind of record, guards, quotes, units and equal rows.
const ALL_KINDS: &str = "athlete,date,movement,side,bodyweight_kg,bodyweight_lb,added_kg,added_lb,reps,hold_s,rir,rpe,outcome,\
    ladder,rung,pain,pain_site,phase,goal,goal_by,height_cm,sex,born,sets,note\r\n\
    =Ana,2026-03-18 18:00,dip,,80.25,,20,,8,,1.5,,,weighted-dip,plus-25,,,,,,,,,3,\"- hard, \"\"slow\"\"\r\nlast\"\r\n\
    =Ana,2026-03-18,pull-up,,,176.4,,-12.5,0,,,8.5,fail,,,4,elbow,cut,weighted-dip/plus-50,2026-12-31,171.5,female,1994-05-02,,@gym\r\n\
    =Ana,2026-03-18 07:00,,,79.9,,,,,,,,,,,,,,,,,,,,\r\n\
    =Ana,2026-03-18,,L,,,,,,,,,,one-arm-pull-up,one-arm,,,,,,,,,,seen\r\n\
    =Ana,2026-03-19,,,,,,,,,,,,one-arm-pull-up,none,,,,,,,,,,\r\n\
    =Ana,2026-03-19,dead-hang,,,,,,,32.5,,,form,,,,,,,,,,,,\r\n\
    =Ana,2026-03-19,,,,,,,,,,,,,,,,,,,,,,,'=note\r\n\
    Ben,1969-12-31,dip,,,,,,5,,,,,,,,,,,,,,,,\r\n";

fn again(csv: &str) -> String {
    write(&logs(&[&good(csv)]))
}

#[test]
fn every_record_is_a_row_with_every_column_in_one_order() {
    let csv =
        again("athlete,date,movement,added_lb,reps,rpe,note\nAna,2026-03-18,dip,45,5,8.5,\"a\"\"b,c\"\n");
    let (header, rows) = csv.split_once("\r\n").unwrap();
    assert_eq!(format!("{header}\r\n"), HEADER);
    let rows: Vec<&str> = rows.lines().collect();
    assert_eq!(rows.len(), 2, "the set and the name");
    let set = rows.iter().find(|row| row.contains("dip")).unwrap();
    assert_eq!(
        set.split_once(',').unwrap().1,
        "Ana,2026-03-18,dip,,,,,45,5,,,8.5,success,,,,,,,,,,,,\"a\"\"b,c\""
    );
    let name = rows.iter().find(|row| !row.contains("dip")).unwrap();
    assert_eq!(
        name.split_once(',').unwrap().1,
        format!("Ana,2026-03-18{}", ",".repeat(23))
    );
}

#[test]
fn an_export_read_into_an_empty_logbook_is_exported_with_the_same_bytes() {
    let first = again(ALL_KINDS);
    assert!(first.lines().count() > 15);
    let second = again(&first);
    assert_eq!(first, second);
    assert_eq!(again(&second), second);
}

#[test]
fn an_export_keeps_ids_order_and_values() {
    let before = logs(&[&good(ALL_KINDS)]);
    let after = logs(&[&good(&write(&before))]);
    let told = |logs: &[Log]| -> Vec<(Id, Written, Fact)> {
        let records = logs.iter().flat_map(|log| &log.records);
        records
            .map(|record| (record.id, record.at.clone(), record.what.clone()))
            .collect()
    };
    assert_eq!(told(&before), told(&after));
}

#[test]
fn an_export_read_back_into_its_own_logbook_or_after_its_source_adds_nothing() {
    let source = good(ALL_KINDS);
    let export = good(&write(&logs(&[&source])));
    assert_eq!(logs(&[&source, &export]), logs(&[&source]));
    // Without ids the rows are taken for new ones only where one row of the source told several things.
    let plain = "athlete,date,movement,added_kg,reps,note\nAna,2026-03-18,dip,20,8,=x\nAna,2026-03-18,dip,20,8,=x\nAna,2026-03-19,,,,hm\n";
    let source = good(plain);
    let bare: String = write(&logs(&[&source]))
        .lines()
        .map(|row| row.split_once(',').unwrap().1.to_owned() + "\r\n")
        .collect();
    let back = read_bytes(bare.as_bytes(), &Options::default(), &|_| true).unwrap();
    assert_eq!(logs(&[&source, &back]), logs(&[&source]));
}

#[test]
fn another_csv_reader_sees_the_same_cells() {
    // The csv crate reads RFC 4180 apart from this project.
    let text = again(ALL_KINDS);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(reader.headers().unwrap().len(), 26);
    let notes: Vec<String> = reader
        .records()
        .map(|row| row.unwrap()[25].to_owned())
        .filter(|note| !note.is_empty())
        .collect();
    assert_eq!(
        notes
            .iter()
            .filter(|note| *note == "'- hard, \"slow\"\r\nlast")
            .count(),
        3
    );
    assert!(notes.contains(&"'@gym".to_owned()) && notes.contains(&"'=note".to_owned()));
}

#[test]
fn no_cell_begins_a_formula_and_numbers_stay_numbers() {
    let text = again(ALL_KINDS);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let mut negative = 0;
    for row in reader.records() {
        for cell in row.unwrap().iter() {
            if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) {
                assert!(cell.parse::<f64>().is_ok(), "{cell}");
                negative += 1;
            }
        }
    }
    assert_eq!(negative, 1, "the help of -12.5 lb");
}

#[test]
fn numbers_are_the_shortest_that_mean_the_same_and_have_no_exponent() {
    let mut log = logs(&[&good(
        "athlete,date,movement,added_kg,reps,rir\nAna,2026-03-18,dip,0.1,5,2\n",
    )])
    .remove(0);
    let mut load = |value: f64| {
        let set = log.records.iter_mut().find_map(|record| match &mut record.what {
            Fact::Set(set) => Some(set),
            _ => None,
        });
        let set = set.unwrap();
        set.load = Some(Load::Assistance(Typed::new(value, Unit::Kg).unwrap()));
        set.left = Some(Given::rir(0.5).unwrap());
        let csv = write([&log]);
        let row = csv.lines().find(|row| row.contains("dip")).unwrap().to_owned();
        row.split(',').nth(7).unwrap().to_owned()
    };
    assert_eq!(load(1e-7), "-0.0000001");
    assert_eq!(load(0.1 + 0.2), "-0.30000000000000004");
    assert_eq!(load(12.50), "-12.5");
    assert_eq!(load(0.0), "0");
}

#[test]
fn a_renamed_athlete_is_exported_under_the_name_of_today() {
    let sheet = good("athlete,date,movement,reps\nAna,2026-03-18,dip,8\n");
    let mut log = logs(&[&sheet]).remove(0);
    log.name = "Anna".into();
    log.records.push(Record {
        id: Id::from_parts(1_800_000_000_000, 1),
        rev: 0,
        dev: "test".into(),
        at: Written::parse("2026-04-01").unwrap(),
        nth: 0,
        what: Fact::Profile {
            name: Some("Anna".into()),
            born: None,
            sex: None,
            height_cm: None,
        },
    });
    let csv = write([&log]);
    let back = logs(&[&good(&csv)]);
    assert_eq!(back.len(), 1);
    assert_eq!(write(&back), csv);
}

#[test]
fn a_name_that_came_with_a_height_needs_no_second_record() {
    let named = Fact::Profile {
        name: Some("Ana".into()),
        born: None,
        sex: None,
        height_cm: Some(171.0),
    };
    let log = Log {
        name: "Ana".into(),
        folder: "ana".into(),
        records: vec![Record {
            id: Id::from_parts(1_800_000_000_000, 1),
            rev: 0,
            dev: "test".into(),
            at: Written::parse("2026-04-01").unwrap(),
            nth: 0,
            what: named,
        }],
    };
    let back = logs(&[&good(&write([&log]))]);
    assert_eq!(back[0].records[0].what, log.records[0].what);
    assert_eq!(write(&back), write([&log]));
}

#[test]
fn what_the_catalogue_no_longer_knows_is_kept_as_text_with_a_note() {
    let id = |n: u32| format!("01KKZ4Z8G0000000000000000{n}");
    let csv = format!(
        "id,athlete,date,movement,side,reps,ladder,rung,goal\n\
         {},Ana,2026-03-18,Kipping Thing,L,5,old-ladder,top,\n\
         {},Ana,2026-03-18,,,,weighted-dip,plus-99,\n\
         {},Ana,2026-03-18,dip,R,5,weighted-dip,plus-99,\n\
         {},Ana,2026-03-18,,,,,,old-ladder/top\n",
        id(1),
        id(2),
        id(3),
        id(4)
    );
    let sheet = good(&csv);
    let notes: Vec<&str> = sheet.notes.listed.iter().map(|note| note.what.as_str()).collect();
    assert_eq!(
        notes,
        [
            "unknown movement \"Kipping Thing\"; kept as written",
            "unknown ladder \"old-ladder\"; kept as written",
            "unknown rung \"plus-99\" of weighted-dip; kept as written",
            "side R on dip, in which both sides work as one; kept as written",
            "unknown rung \"plus-99\" of weighted-dip; kept as written",
            "unknown ladder \"old-ladder\"; kept as written",
        ]
    );
    let export = again(&csv);
    assert!(
        export.contains("Kipping Thing,L")
            && export.contains("old-ladder,top")
            && export.contains("old-ladder/top")
    );
    assert_eq!(again(&export), export);
    // The same rows without ids are errors.
    let bare: String = csv
        .lines()
        .map(|row| row.split_once(',').unwrap().1.to_owned() + "\n")
        .collect();
    assert_eq!(read_with(&bare, &Options::default()).unwrap().bad_rows, 4);
}

#[test]
fn one_id_stands_for_one_set() {
    let csv = "id,athlete,date,movement,reps,sets\n01KKZ4Z8G0000000000000000A,Ana,2026-03-18,dip,5,2\n";
    let sheet = read_with(csv, &Options::default()).unwrap();
    assert_eq!(sheet.problems.listed[0].what, "several sets under one id");
    assert_eq!(good(&csv.replace(",2\n", ",1\n")).rows[0].records.len(), 2);
}

#[test]
fn a_pound_only_file_makes_a_pound_logbook() {
    let unit = |csv: &str| good(csv).unit();
    assert_eq!(
        unit("athlete,date,movement,added_lb,reps\nAna,2026-03-18,dip,45,5\n"),
        Unit::Lb
    );
    assert_eq!(
        unit("athlete,date,movement,added_lb,bodyweight_kg,reps\nAna,2026-03-18,dip,45,80,5\n"),
        Unit::Kg
    );
    assert_eq!(
        unit("athlete,date,movement,reps\nAna,2026-03-18,dip,5\n"),
        Unit::Kg
    );
}
