//! The same row gives the same records: read twice, on two machines, in another order, in another spelling.

use rungwright::logbook::exchange::{Dates, Options, Sheet, same_values};
use rungwright::logbook::record::Fact;

use crate::kit::{by_id, good, good_with, logs, read_bytes, records};

const SETS: &str = "athlete,date,movement,side,bodyweight_kg,added_kg,reps,rir,pain,pain_site,note\n\
                    Ana,2026-03-18,pull-up,,80,15,6,1,,,\n\
                    Ana,2026-03-18,pull-up,,80,15,6,1,,,\n\
                    Ana,2026-03-18,pull-up,,80,15,6,1,,,\n\
                    Ben,2026-03-18,pull-up,,80,15,6,1,,,\n\
                    Ana,2026-03-20,,,79.5,,,,,,morning\n\
                    Ana,2026-03-20,dip,,,,12,,2,elbow,\n\
                    Ana,2026-03-19,,L,,,,,4,shoulder,\n";

/// The ids of [`SETS`], names last in the rows that bring them.
const PINNED: [&str; 10] = [
    "01KKZ3VY007K7208P2E4ZDVPDM",
    "01KKZ3VY005GK1QS5D86AW6MCX",
    "01KKZ3VY00HJT36NGMAK0W4P70",
    "01KKZ3VY0008ZH6F9XYZ5H47CJ",
    "01KKZ3VY000MF47JZVKX0NYMP8",
    "01KKZ3VY00HTFP9HTWNTWG48VY",
    "01KM48NC0036WZH01R9QTNGYZK",
    "01KM48NC009GTH6B3DA83M27VR",
    "01KM48NC00FC78XW5BF420T9KG",
    "01KM1P8N00B31T72KRK3QX3MJW",
];

fn reordered(csv: &str) -> String {
    let (header, rows) = csv.split_once('\n').unwrap();
    let mut rows: Vec<&str> = rows.lines().collect();
    rows.reverse();
    rows.swap(0, 2);
    format!("{header}\n{}\n", rows.join("\n"))
}

/// What a second reading into the same logbook would add.
fn added(first: &Sheet, second: &Sheet) -> usize {
    by_id(&[first, second]).len() - by_id(&[first]).len()
}

#[test]
fn a_file_read_twice_adds_nothing_and_three_equal_sets_stay_three() {
    let first = good(SETS);
    assert_eq!(first.records(), 8 + 2, "facts of all rows, and two names");
    assert_eq!(by_id(&[&first]).len(), first.records(), "no id comes twice");
    assert_eq!(added(&first, &good(SETS)), 0);
}

#[test]
fn another_order_of_rows_gives_the_same_ids_with_the_same_facts() {
    let known = |_: &rungwright::logbook::Name| true;
    let read = |csv: &str| read_bytes(csv.as_bytes(), &Options::default(), &known).unwrap();
    assert_eq!(by_id(&[&read(SETS)]), by_id(&[&read(&reordered(SETS))]));
}

#[test]
fn one_row_of_three_sets_is_three_equal_rows() {
    let header = "athlete,date,movement,added_kg,reps,note";
    let row = "Ana,2026-03-18,dip,20,8,\"slow, deep\"";
    let last = "Ana,2026-03-18,dip,20,6,";
    let one = good(&format!("{header},sets\n{row},3\n{last},\n"));
    let three = good(&format!("{header}\n{row}\n{row}\n{row}\n{last}\n"));
    let flat = |sheet: &Sheet| -> Vec<_> { records(sheet).into_iter().cloned().collect() };
    assert_eq!(flat(&one), flat(&three));
    let mixed = good(&format!("{header},sets\n{row},2\n{last},1\n{row},\n"));
    assert_eq!(added(&one, &mixed), 0);
}

#[test]
fn a_row_of_several_sets_hurts_once() {
    let header = "athlete,date,movement,reps,pain,pain_site,sets\n";
    let rows = [
        "Ana,2026-03-18,dip,8,3,elbow,3\n",
        "Ana,2026-03-18,dip,8,3,elbow,1\n",
    ];
    let sheet = good(&format!("{header}{}{}", rows[0], rows[1]));
    let pains = |record: &&&_| {
        matches!(
            record,
            rungwright::logbook::Record {
                what: Fact::Pain { .. },
                ..
            }
        )
    };
    assert_eq!(records(&sheet).iter().filter(pains).count(), 2);
    assert_eq!(records(&sheet).len(), 6);
    let turned = good(&format!("{header}{}{}", rows[1], rows[0]));
    assert_eq!(by_id(&[&sheet]), by_id(&[&turned]));
}

#[test]
fn spelling_makes_no_difference_but_what_was_typed_does() {
    let id = |row: &str| {
        let header = "athlete,date,movement,bodyweight_kg,added_kg,added_lb,reps,rir,rpe,outcome,note\n";
        let sheet = good(&format!("{header}{row}\n"));
        records(&sheet)[0].id
    };
    let plain = id("Ana,2026-03-18,pull-up,80,10,,5,2,,,easy");
    for same in [
        " Ana ,2026-03-18, Pull Up ,80.0,+10,,5.0,2,,success, easy ",
        "Ana,2026-03-18,PULL_UP,080,10.,,005,2.0,,Success,easy",
    ] {
        assert_eq!(id(same), plain, "{same}");
    }
    for other in [
        "Ana,2026-03-18T00:00,pull-up,80,10,,5,2,,,easy",
        "Ana,2026-03-19,pull-up,80,10,,5,2,,,easy",
        "ana,2026-03-18,pull-up,80,10,,5,2,,,easy",
        "Ana,2026-03-18,pull-up,80,,10,5,2,,,easy",
        "Ana,2026-03-18,pull-up,80,10,,5,,8,,easy",
        "Ana,2026-03-18,pull-up,80,10,,5,2,,form,easy",
        "Ana,2026-03-18,pull-up,80,10,,5,2,,,Easy",
        "Ana,2026-03-18,chin-up,80,10,,5,2,,,easy",
        "Ana,2026-03-18,pull-up,,10,,5,2,,,easy",
    ] {
        assert_ne!(id(other), plain, "{other}");
    }
}

#[test]
fn a_day_first_file_gives_the_records_of_its_year_first_twin() {
    let options = Options {
        dates: Dates::Dmy,
        ..Options::default()
    };
    let turned = SETS
        .replace("2026-03-18", "18.3.2026")
        .replace("2026-03-20", "20/03/2026")
        .replace("2026-03-19", "19-03-2026");
    assert_eq!(good_with(&turned, &options), good(SETS));
}

#[test]
fn a_column_more_changes_no_id() {
    let header = "athlete,date,movement,reps\n";
    let plain = good(&format!("{header}Ana,2026-03-18,dip,5\n"));
    let wider = good("rir,athlete,note,date,movement,reps,phase\n,Ana,,2026-03-18,dip,5,\n");
    assert_eq!(by_id(&[&plain]), by_id(&[&wider]));
}

#[test]
fn the_ids_of_known_rows_never_change() {
    // A regression pin, no outside source: another id here would make every file that was ever read new again.
    let ids: Vec<String> = good(SETS)
        .rows
        .iter()
        .flat_map(|row| &row.records)
        .map(|record| record.id.to_string())
        .collect();
    assert_eq!(ids, PINNED);
}

#[test]
fn a_place_in_the_day_counts_bad_rows_so_that_a_mended_row_falls_into_its_place() {
    let csv = |reps: &str| {
        format!(
            "athlete,date,movement,reps\nAna,2026-03-18,dip,8\nAna,2026-03-18,dip,{reps}\nBen,2026-03-18,dip,3\nAna,2026-03-18,dip,6\n"
        )
    };
    let read = |reps: &str| read_bytes(csv(reps).as_bytes(), &Options::default(), &|_| true).unwrap();
    let places = |sheet: &Sheet| -> Vec<u32> { records(sheet).iter().map(|record| record.nth).collect() };
    let (broken, mended) = (read("7x"), read("7"));
    assert_eq!(places(&broken), [0, 0, 2]);
    assert_eq!(places(&mended), [0, 1, 0, 2]);
    assert_eq!(added(&broken, &mended), 1);
}

#[test]
fn an_id_that_comes_twice_is_kept_once_and_other_values_under_it_are_told() {
    let id = "01KKZ4Z8G0000000000000000A";
    let csv = format!(
        "id,athlete,date,movement,reps\n{id},Ana,2026-03-18,dip,8\n{id},Ana,2026-03-18,dip,8\n{id},Ana,2026-03-18,dip,9\n"
    );
    let sheet = good(&csv);
    assert_eq!(records(&sheet).len(), 1);
    assert_eq!(records(&sheet)[0].id.to_string(), id);
    assert_eq!(sheet.notes.listed.len(), 1);
    assert_eq!(
        sheet.notes.listed[0].what,
        format!("id {id} came with other values on line 2; this row adds nothing")
    );
}

#[test]
fn two_records_say_the_same_when_their_rows_would() {
    let record = |row: &str| {
        let sheet = good(&format!("athlete,date,movement,reps,note\n{row}\n"));
        records(&sheet)[0].clone()
    };
    let one = record("Ana,2026-03-18,dip,8,");
    let mut moved = one.clone();
    (moved.nth, moved.dev, moved.rev) = (7, "other".into(), 3);
    assert!(same_values(&one, &moved));
    assert!(!same_values(&one, &record("Ana,2026-03-18,dip,8,x")));
    assert!(!same_values(&one, &record("Ana,2026-03-18 10:00,dip,8,")));
}

#[test]
fn joining_a_ladder_is_a_row_with_only_athlete_date_and_ladder_before_the_rows_of_the_earliest_day() {
    let join = Options {
        ladders: vec!["Weighted Dip".into(), "weighted-dip".into()],
        ..Options::default()
    };
    let csv = "athlete,date,movement,reps,ladder,rung\n\
               Ana,2026-03-20,dip,8,,\n\
               Ana,2026-03-18,,,weighted-dip,plus-25\n\
               Ben,2026-03-19,dip,8,,\n";
    let joined = good_with(csv, &join);
    let by_row = good(&format!(
        "{csv}Ana,2026-03-18,,,weighted-dip,\nBen,2026-03-19,,,weighted-dip,\n"
    ));
    assert_eq!(by_id(&[&joined]), by_id(&[&by_row]));
    assert_eq!(by_id(&[&good_with(&reordered(csv), &join)]).len(), 3 + 2 + 2);
    let known = |sheet: &Sheet| -> Vec<_> {
        by_id(&[sheet])
            .into_iter()
            .filter(|(_, (_, _, fact))| matches!(fact, Fact::Placement { .. }))
            .collect()
    };
    assert_eq!(known(&good_with(&reordered(csv), &join)), known(&joined));
    // The rung that Ana's own row names comes later in the day and so holds.
    let ana = &logs(&[&joined])[0];
    let rungs: Vec<_> = ana
        .records
        .iter()
        .filter_map(|record| match &record.what {
            Fact::Placement { rung, .. } => Some((record.at.to_string(), record.nth, format!("{rung:?}"))),
            _ => None,
        })
        .collect();
    assert_eq!(
        rungs,
        [
            ("2026-03-18".into(), 0, "Joined".into()),
            ("2026-03-18".into(), 1, "On(\"plus-25\")".into())
        ]
    );
    // With the row in the file, the option adds none.
    let both = good_with(
        &format!("{csv}Ana,2026-03-18,,,weighted-dip,\nBen,2026-03-19,,,weighted-dip,\n"),
        &join,
    );
    assert_eq!(by_id(&[&both]), by_id(&[&joined]));
}
