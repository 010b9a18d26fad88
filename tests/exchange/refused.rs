//! Rows that say something impossible: each error, its place and its mend, and the row beside it that is fine.

use rungwright::logbook::exchange::Options;

use crate::kit::read_with;

/// Line, column, reason of the only problem of a row under this header; the row itself is line 2.
fn refused(header: &str, row: &str) -> (usize, usize, String) {
    let csv = format!("{header}\n{row}\n{}\n", header.replace(|c: char| c != ',', ""));
    let sheet = read_with(&csv, &Options::default()).expect("the file as a whole is readable");
    assert_eq!(sheet.problems.listed.len(), 1, "{row}: {}", sheet.problems);
    assert_eq!((sheet.bad_rows, sheet.rows.len()), (1, 0), "{row}");
    let problem = &sheet.problems.listed[0];
    assert!(!problem.mend.is_empty());
    assert_eq!(problem.place.file, "sets.csv");
    (problem.place.line, problem.place.column, problem.what.clone())
}

fn accepted(header: &str, row: &str) {
    let sheet = read_with(&format!("{header}\n{row}\n"), &Options::default()).unwrap();
    assert!(sheet.problems.is_empty(), "{row}: {}", sheet.problems);
    assert_eq!(sheet.rows.len(), 1);
}

#[test]
fn dates_and_names() {
    let at = |row: &str| refused("athlete,date,born", row);
    for (row, column, what) in [
        ("Ana,,", 5, "date is empty"),
        ("Ana,18.03.2026,", 5, "date \"18.03.2026\" is no date"),
        (
            "Ana,2026-02-29,",
            5,
            "date \"2026-02-29\" is no day of the calendar",
        ),
        (
            "Ana,1899-12-31,",
            5,
            "date \"1899-12-31\" is outside the years 1900 to 2100",
        ),
        (
            "Ana,2026-03-18 24:00,",
            5,
            "date \"2026-03-18 24:00\" has no time that a clock shows",
        ),
        ("Ana,2026-03-18,1990", 16, "born \"1990\" is no date"),
        (",2026-03-18,", 1, "athlete is empty"),
        (
            "A\u{200b}na,2026-03-18,",
            1,
            "\"A\u{200b}na\" has a character that cannot be shown (U+200B); leave it out",
        ),
    ] {
        assert_eq!(at(row), (2, column, what.to_owned()));
    }
    accepted("athlete,date,born", "Ana,2028-02-29,1990-01-01");
}

#[test]
fn names_that_the_catalogue_does_not_know() {
    let header = "athlete,date,movement,reps,ladder,rung,goal,goal_by";
    for (row, column, what) in [
        ("Ana,2026-03-18,pul-up,5,,,,", 16, "unknown movement \"pul-up\""),
        ("Ana,2026-03-18,dip,5,dips,,,", 22, "unknown ladder \"dips\""),
        (
            "Ana,2026-03-18,dip,5,weighted-dip,plus-26,,",
            35,
            "unknown rung \"plus-26\" of weighted-dip",
        ),
        ("Ana,2026-03-18,dip,5,,plus-25,,", 23, "rung without a ladder"),
        ("Ana,2026-03-18,,,,plus-25,,", 19, "rung without a ladder"),
        (
            "Ana,2026-03-18,dip,5,weighted-dip,none,,",
            35,
            "unknown rung \"none\" of weighted-dip",
        ),
        (
            "Ana,2026-03-18,pull-up,5,weighted-dip,plus-25,,",
            39,
            "plus-25 of weighted-dip is a rung of dip, not of pull-up",
        ),
        (
            "Ana,2026-03-18,,,,,weighted-dip,",
            20,
            "goal \"weighted-dip\" is not LADDER/RUNG",
        ),
        ("Ana,2026-03-18,,,,,dips/plus-25,", 20, "unknown ladder \"dips\""),
        (
            "Ana,2026-03-18,,,,,weighted-dip/top,",
            20,
            "unknown rung \"top\" of weighted-dip",
        ),
        ("Ana,2026-03-18,,,,,,2026-12-31", 21, "goal_by without a goal"),
    ] {
        assert_eq!(refused(header, row), (2, column, what.to_owned()), "{row}");
    }
    accepted(
        header,
        "Ana,2026-03-18,PULL_UP,5,Weighted Pull-up,PLUS 25,Weighted Dip/plus-50,2026-12-31",
    );
    accepted(header, "Ana,2026-03-18,,,weighted-dip,none,,");
}

#[test]
fn a_slip_of_the_finger_is_mended_with_the_name_that_was_meant() {
    let csv = "athlete,date,movement,reps\nAna,2026-03-18,pul up,5\n";
    let sheet = read_with(csv, &Options::default()).unwrap();
    assert_eq!(
        sheet.problems.to_string(),
        "sets.csv:2:16: unknown movement \"pul up\"\n  mend: did you mean pull-up?"
    );
}

#[test]
fn sets_that_are_no_sets() {
    let header = "athlete,date,movement,side,reps,hold_s,outcome,sets";
    for (row, column, what) in [
        ("Ana,2026-03-18,dip,,,,,", 16, "a set of dip without reps"),
        (
            "Ana,2026-03-18,dead-hang,,,,,",
            16,
            "a set of dead-hang without hold_s",
        ),
        (
            "Ana,2026-03-18,dip,,,10,,",
            22,
            "dip is counted in reps, not in hold_s",
        ),
        (
            "Ana,2026-03-18,dead-hang,,10,,,",
            27,
            "dead-hang is counted in hold_s, not in reps",
        ),
        (
            "Ana,2026-03-18,dip,,10,10,,",
            24,
            "dip is counted in reps, not in hold_s",
        ),
        ("Ana,2026-03-18,,,5,,,", 18, "reps without a movement"),
        ("Ana,2026-03-18,,,,5,,", 19, "hold_s without a movement"),
        ("Ana,2026-03-18,,,,,fail,", 20, "outcome without a movement"),
        ("Ana,2026-03-18,,,,,,2", 21, "sets without a movement"),
        ("Ana,2026-03-18,dip,,0,,,", 21, "reps 0 with outcome success"),
        (
            "Ana,2026-03-18,dip,,0,,success,",
            21,
            "reps 0 with outcome success",
        ),
        ("Ana,2026-03-18,dip,,0,,form,", 21, "reps 0 with outcome form"),
        ("Ana,2026-03-18,dip,,5,,done,", 24, "unknown outcome \"done\""),
        (
            "Ana,2026-03-18,dip,L,5,,,",
            20,
            "side L on dip, in which both sides work as one",
        ),
        (
            "Ana,2026-03-18,one-arm-pull-up,both,5,,,",
            32,
            "unknown side \"both\"",
        ),
        (
            "Ana,2026-03-18,,L,,,,",
            17,
            "side without a set, a placement or pain",
        ),
        ("Ana,2026-03-18,dip,,5,,,0", 25, "sets \"0\" is outside 1 to 50"),
        ("Ana,2026-03-18,dip,,5,,,51", 25, "sets \"51\" is outside 1 to 50"),
        ("Ana,2026-03-18,dip,,5,,,1.5", 25, "sets \"1.5\" is not whole"),
    ] {
        assert_eq!(refused(header, row), (2, column, what.to_owned()), "{row}");
    }
    accepted(header, "Ana,2026-03-18,dip,,0,,fail,");
    accepted(header, "Ana,2026-03-18,dip,,1,,form,");
    accepted(header, "Ana,2026-03-18,one-arm-pull-up,,1,,,50");
}

#[test]
fn numbers_that_are_none_or_out_of_range() {
    let header = "athlete,date,movement,bodyweight_kg,bodyweight_lb,added_kg,added_lb,reps,hold_s,rir,rpe,pain,pain_site,height_cm";
    let row = |cells: &str| format!("Ana,2026-03-18,{cells}");
    for (cells, what) in [
        ("dip,,,,,five,,,,,,", "reps \"five\" is no number"),
        ("dip,,,,,1e1,,,,,,", "reps \"1e1\" is no number"),
        ("dip,,,,,\"5,0\",,,,,,", "reps \"5,0\" is no number"),
        ("dip,,,nan,,5,,,,,,", "added_kg \"nan\" is no number"),
        ("dip,80 kg,,,,5,,,,,,", "bodyweight_kg \"80 kg\" is no number"),
        ("dip,,,,,-1,,,,,,", "reps \"-1\" is outside 0 to 1000"),
        ("dip,,,,,1001,,,,,,", "reps \"1001\" is outside 0 to 1000"),
        ("dip,,,,,5.5,,,,,,", "reps \"5.5\" is not whole"),
        (
            "dead-hang,,,,,,0,,,,,",
            "hold_s \"0\" is outside over 0 to 3600 s",
        ),
        (
            "dead-hang,,,,,,3600.5,,,,,",
            "hold_s \"3600.5\" is outside over 0 to 3600 s",
        ),
        (
            "dip,19.9,,,,5,,,,,,",
            "bodyweight_kg \"19.9\" is outside 20 to 400 kg",
        ),
        (
            "dip,400.1,,,,5,,,,,,",
            "bodyweight_kg \"400.1\" is outside 20 to 400 kg",
        ),
        (
            "dip,,44,,,5,,,,,,",
            "bodyweight_lb \"44\" is outside 44.1 to 881.8 lb",
        ),
        (
            "dip,,881.9,,,5,,,,,,",
            "bodyweight_lb \"881.9\" is outside 44.1 to 881.8 lb",
        ),
        (
            "dip,,,-300.1,,5,,,,,,",
            "added_kg \"-300.1\" is outside -300 to 400 kg",
        ),
        (
            "dip,,,400.1,,5,,,,,,",
            "added_kg \"400.1\" is outside -300 to 400 kg",
        ),
        (
            "dip,,,,881.9,5,,,,,,",
            "added_lb \"881.9\" is outside -661.4 to 881.8 lb",
        ),
        (
            "dip,80,176,,,5,,,,,,",
            "bodyweight_kg and bodyweight_lb are both given",
        ),
        ("dip,,,20,45,5,,,,,,", "added_kg and added_lb are both given"),
        ("dip,,,,,5,,2,8,,,", "rir and rpe are both given"),
        ("dip,,,,,5,,2.3,,,,", "rir \"2.3\" is neither whole nor a half"),
        ("dip,,,,,5,,-0.5,,,,", "rir \"-0.5\" is outside 0 to 10"),
        ("dip,,,,,5,,10.5,,,,", "rir \"10.5\" is outside 0 to 10"),
        ("dip,,,,,5,,,4.5,,,", "rpe \"4.5\" is outside 5 to 10"),
        ("dip,,,,,5,,,10.5,,,", "rpe \"10.5\" is outside 5 to 10"),
        ("dip,,,,,5,,,7.3,,,", "rpe \"7.3\" is neither whole nor a half"),
        (",,,,,,,,,3.5,elbow,", "pain \"3.5\" is not whole"),
        (",,,,,,,,,11,elbow,", "pain \"11\" is outside 0 to 10"),
        (",,,,,,,,,-1,elbow,", "pain \"-1\" is outside 0 to 10"),
        (",,,,,,,,,3,,", "pain without pain_site"),
        (",,,,,,,,,,elbow,", "pain_site without pain"),
        (",,,,,,,,,3,neck,", "unknown pain_site \"neck\""),
        (",,,,,,,,,,,49.9", "height_cm \"49.9\" is outside 50 to 260 cm"),
        (",,,,,,,,,,,260.1", "height_cm \"260.1\" is outside 50 to 260 cm"),
        (",,,20,,,,,,,,", "added_kg without a movement"),
        (",,,,45,,,,,,,", "added_lb without a movement"),
        (",,,,,,,2,,,,", "rir without a movement"),
        (",,,,,,,,8,,,", "rpe without a movement"),
    ] {
        assert_eq!(refused(header, &row(cells)).2, what, "{cells}");
    }
}

#[test]
fn phases_sexes_ids_and_rails() {
    let header = "athlete,date,phase,sex,id,side,ladder";
    for (row, column, what) in [
        ("Ana,2026-03-18,bulk,,,,", 16, "unknown phase \"bulk\""),
        ("Ana,2026-03-18,,f,,,", 17, "unknown sex \"f\""),
        ("Ana,2026-03-18,,,12,,", 18, "id \"12\" is no ULID"),
        // 26 letters, but more than 128 bits: the ULID specification's largest is 7ZZZZZZZZZZZZZZZZZZZZZZZZZ.
        (
            "Ana,2026-03-18,,,80000000000000000000000000,,",
            18,
            "id \"80000000000000000000000000\" is no ULID",
        ),
        (
            "Ana,2026-03-18,,,,R,weighted-dip",
            19,
            "side R on weighted-dip, which has one rail",
        ),
    ] {
        assert_eq!(refused(header, row), (2, column, what.to_owned()), "{row}");
    }
    accepted(header, "Ana,2026-03-18,Deload,MALE,7ZZZZZZZZZZZZZZZZZZZZZZZZZ,,");
    accepted(
        header,
        "Ana,2026-03-18,,,01arz3ndektsv4rrffq69g5fav,L,one-arm-pull-up",
    );
}

#[test]
fn every_fault_of_a_row_is_told_at_once_with_its_own_place() {
    let csv = "athlete,date,note,movement,reps\nAna,2026-03-18,\"one\ntwo\",dipp,x\n";
    let sheet = read_with(csv, &Options::default()).unwrap();
    let told: Vec<_> = sheet
        .problems
        .listed
        .iter()
        .map(|problem| (problem.place.line, problem.place.column, problem.what.as_str()))
        .collect();
    assert_eq!(
        told,
        [
            (3, 6, "unknown movement \"dipp\""),
            (3, 11, "reps \"x\" is no number")
        ]
    );
    assert_eq!(sheet.bad_rows, 1);
}

#[test]
fn rows_of_another_width_or_with_bad_bytes_are_bad_rows_and_the_others_stay_good() {
    let csv = "athlete,date,bodyweight_kg\n\
               Ana,2026-03-18,80,5\n\
               \n\
               Ana,2026-03-19\n\
               Ana,2026-03-20,\"80\"kg\n\
               A\"na,2026-03-20,80\n\
               Ana,2026-03-21,80\n\
               Ana,2026-03-22,\"80\n";
    let sheet = read_with(csv, &Options::default()).unwrap();
    let told: Vec<_> = sheet
        .problems
        .listed
        .iter()
        .map(|problem| (problem.place.line, problem.place.column, problem.what.as_str()))
        .collect();
    assert_eq!(
        told,
        [
            (2, 1, "4 cells where the header has 3"),
            (4, 1, "2 cells where the header has 3"),
            (5, 20, "text after a closing quote"),
            (6, 2, "a quote within a cell that doesn't begin with one"),
            (8, 16, "a quote that is never closed"),
        ]
    );
    assert_eq!((sheet.rows.len(), sheet.rows[0].line), (1, 7));
}

#[test]
fn a_long_value_is_quoted_short_and_a_long_list_is_counted() {
    let long = "x".repeat(100);
    let row = format!("Ana,2026-03-18,dip,{long}\n");
    let csv = format!("athlete,date,movement,reps\n{}", row.repeat(150));
    let sheet = read_with(&csv, &Options::default()).unwrap();
    assert_eq!(
        sheet.problems.listed[0].what,
        format!("reps \"{}…\" is no number", "x".repeat(40))
    );
    assert_eq!(
        (sheet.problems.listed.len(), sheet.problems.more, sheet.bad_rows),
        (100, 50, 150)
    );
    assert!(sheet.problems.to_string().ends_with("\nand 50 more"));
}
