//! `export`, and what comes back of it.

use crate::kit::Home;

/// A logbook with every kind of record, awkward texts and changes.
fn full() -> Home {
    let home = Home::new();
    home.import(
        "athlete,date,movement,side,bodyweight_kg,added_lb,reps,hold_s,rir,outcome,ladder,rung,pain,pain_site,note\n\
         Ana,2026-03-01,pull-up,,70.5,45,5,,2,,weighted-pull-up,plus-25,,,\"a, \"\"b\"\"\nc\"\n\
         Ana,2026-03-01,pull-up,,,45,5,,2,,weighted-pull-up,plus-25,3,elbow,\n\
         Ana,2026-03-01,pull-up,,,45,5,,2,,weighted-pull-up,plus-25,,,\n\
         Ana,2026-03-02 17:30,one-arm-hang,L,,,,12.5,,fail,one-arm-hang,,,,=1+1\n\
         Bo,1969-12-31,dip,,,-10,8,,,form,,,,,'tis\n",
    );
    home.log(&["--bodyweight", "155lb", "--note", "-heavy"]);
    home.log(&["--place", "one-arm-pull-up/none", "--side", "L"]);
    home.log(&[
        "--phase",
        "deload",
        "--goal",
        "front-lever/full",
        "--by",
        "2027-01-01",
    ]);
    home.log(&["--born", "1990-05-17", "--height", "178cm", "--sex", "male"]);
    home.log(&[
        "--movement",
        "dip",
        "--reps",
        "3",
        "--rpe",
        "8.5",
        "--assist",
        "5kg",
    ]);
    let slip = home.log(&["--note", "a slip"]);
    home.answer(&["retract", &slip]);
    let id = home.log(&["--movement", "dip", "--reps", "30"]);
    home.answer(&["amend", &id, "--reps", "3"]);
    home.answer(&["log", "--athlete", "Bo", "--rename", "Bo Löwe"]);
    home
}

#[test]
fn every_column_is_there_and_retracted_records_are_not() {
    let export = full().answer(&["export"]);
    // The columns of import, in the order that the format gives them, the id first.
    assert!(export.starts_with(
        "id,athlete,date,movement,side,bodyweight_kg,bodyweight_lb,added_kg,added_lb,reps,hold_s,rir,rpe,outcome,\
         ladder,rung,pain,pain_site,phase,goal,goal_by,height_cm,sex,born,sets,note\r\n"
    ));
    assert!(!export.contains("a slip"));
    assert!(
        export.contains(",'=1+1\r\n") && export.contains(",'-heavy\r\n"),
        "{export}"
    );
    assert_eq!(export, full_again(&export).answer(&["export", "--format", "csv"]));
}

/// An empty logbook into which `export` was imported.
fn full_again(export: &str) -> Home {
    let home = Home::new();
    let file = home.file("export.csv", export);
    let ran = home.run(&["import", &file]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    home
}

#[test]
fn an_empty_logbook_takes_an_export_and_gives_the_same_bytes() {
    let export = full().answer(&["export"]);
    let again = full_again(&export);
    assert_eq!(again.answer(&["export"]), export);
    let third = full_again(&again.answer(&["export"]));
    assert_eq!(third.answer(&["export"]), export);
}

#[test]
fn the_same_logbook_takes_its_export_and_nothing_changes() {
    let home = full();
    let export = home.answer(&["export"]);
    let before = home.lines();
    let file = home.file("export.csv", &export);
    let ran = home.run(&["import", &file]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.contains(": 0 added"), "{}", ran.out);
    assert_eq!(home.lines(), before);
    assert_eq!(home.answer(&["export"]), export);
}

#[test]
fn a_stream_takes_every_row_of_an_export_and_names_people_with_their_first_row() {
    let export = full().answer(&["export"]);
    let home = Home::new();
    let file = home.file("export.csv", &export);
    let out = home.answer(&["log", "--rows", &file]);
    let rows: Vec<&str> = export.split("\r\n").collect();
    assert_eq!(
        out.lines().count(),
        rows.len() - 2,
        "all but header and end: {out}"
    );
    let again = home.answer(&["export"]);
    let more: Vec<&str> = again.split("\r\n").filter(|row| !rows.contains(row)).collect();
    assert!(rows.iter().all(|row| again.contains(row)));
    // A stream can't know that a row with the name comes later.
    assert!(
        more.iter()
            .all(|row| row[26..].trim_end_matches(',').matches(',').count() == 2),
        "{more:?}"
    );
}

#[test]
fn json_has_the_same_rows_with_numbers_as_numbers() {
    let home = full();
    let json: Vec<serde_json::Map<String, serde_json::Value>> =
        serde_json::from_str(&home.answer(&["export", "--format", "json"])).unwrap();
    let export = home.answer(&["export"]);
    let mut reader = csv::Reader::from_reader(export.as_bytes());
    let header = reader.headers().unwrap().clone();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), json.len());
    for (row, object) in rows.iter().zip(&json) {
        assert_eq!(
            object.keys().collect::<Vec<_>>(),
            header.iter().collect::<Vec<_>>()
        );
        for (name, cell) in header.iter().zip(row) {
            let text = match &object[name] {
                serde_json::Value::Null => String::new(),
                serde_json::Value::String(text) => text.clone(),
                number => number.to_string(),
            };
            // Only a cell has the guard against formulas.
            assert!(
                cell == text || cell == format!("'{text}"),
                "{name}: {cell} {text}"
            );
        }
    }
    let dip = json.iter().find(|row| row["rpe"] == 8.5).unwrap();
    assert_eq!((&dip["reps"], &dip["added_kg"]), (&3.into(), &(-5).into()));
}

#[test]
fn a_damaged_record_costs_itself_and_the_exit_code() {
    let home = Home::new();
    home.log(&["--bodyweight", "70kg"]);
    home.log(&["--bodyweight", "71kg"]);
    let folder = std::fs::read_dir(home.logbook().join("athletes"))
        .unwrap()
        .next()
        .unwrap()
        .unwrap();
    let journal = folder.path().join("journal-test.ron");
    let text = std::fs::read_to_string(&journal).unwrap();
    let broken = text.replacen("WeighIn(bodyweight: kg(70))", "WeighIn(bodyweight", 1);
    std::fs::write(&journal, broken).unwrap();
    let ran = home.run(&["export"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains(",71,"), "{}", ran.out);
    assert!(ran.err.contains("journal-test.ron:2:"), "{}", ran.err);
    // Writing is judged by what it wrote.
    assert_eq!(home.run(&["log", "--athlete", "Ana", "--note", "x"]).code, 0);
}

#[test]
fn an_id_is_one_record_whoever_a_row_says_it_belongs_to() {
    let home = Home::new();
    home.import("athlete,date,movement,bodyweight_kg,reps\nAna,2026-03-01,pull-up,70,5\n");
    let before = home.answer(&["export"]);
    let set = before.lines().find(|row| row.contains(",pull-up,")).unwrap();
    let as_bo = format!(
        "{}\n{}\n",
        before.lines().next().unwrap(),
        set.replace(",Ana,", ",Bo,")
    );
    let file = home.file("bo.csv", &as_bo);
    for args in [&["import", &file][..], &["log", "--rows", &file]] {
        let ran = home.run(args);
        assert_eq!(ran.code, 0, "{args:?}: {}", ran.err);
        assert!(
            ran.err.contains(&format!(
                "Bo: the record {} is there as another athlete's, in athletes/ana-",
                &set[..26]
            )),
            "{args:?}: {}",
            ran.err
        );
        assert_eq!(home.answer(&["export"]), before, "{args:?}");
    }
}

#[test]
fn a_file_imported_again_after_somebody_was_renamed_doubles_nobody() {
    let home = Home::new();
    let rows = "athlete,date,movement,bodyweight_kg,reps\nAna,2026-03-01,pull-up,70,5\nAna,2026-03-03,pull-up,70,6\n";
    home.import(rows);
    home.log(&["--rename", "Ana Pavlova-Ito"]);
    let before = home.answer(&["export"]);
    let ran = home.run(&["import", &home.file("again.csv", rows)]);
    assert_eq!(ran.code, 0);
    assert!(ran.out.contains("0 added"), "{}", ran.out);
    assert!(ran.err.contains("another athlete's"), "{}", ran.err);
    assert_eq!(home.answer(&["export"]), before);
    // What the file has more of is somebody's who is called so now, and every id stays one record.
    home.answer(&[
        "import",
        &home.file("more.csv", &format!("{rows}Ana,2026-03-05,pull-up,70,7\n")),
    ]);
    let export = home.answer(&["export"]);
    let other = Home::new();
    other.import(&export);
    assert_eq!(other.answer(&["export"]), export);
}
