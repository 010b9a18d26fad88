//! Wrong use: one line, exit 2, nothing written.

use crate::kit::Home;

/// Logs for Ana and gives the one line that says what is wrong.
fn refused(args: &[&str]) -> String {
    let home = Home::new();
    let ran = home.run(&[&["log", "--athlete", "Ana"], args].concat());
    assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}: {}", ran.err);
    assert_eq!(ran.err.lines().count(), 1, "{args:?}: {}", ran.err);
    assert!(!home.logbook().exists(), "{args:?} made a logbook");
    let line = ran.err.trim_end().strip_prefix("rungwright: ").unwrap();
    line.to_owned()
}

#[test]
fn a_slip_is_told_with_its_mend() {
    for (args, told) in [
        (
            &["--movement", "pullup2", "--reps", "3"][..],
            "unknown movement \"pullup2\"; did you mean pull-up?",
        ),
        (
            &["--movement", "pull-up"],
            "a set of pull-up without reps; give reps, or leave out movement",
        ),
        (
            // What was typed stays as it is, also where a spreadsheet would call something so.
            &[
                "--movement",
                "pull-up",
                "--reps",
                "3",
                "--ladder",
                "clear added_kg",
            ],
            "unknown ladder \"clear added_kg\"; add a file for it to ladders in the logbook",
        ),
        (
            &["--movement", "pull-up", "--reps", "3", "--added", "20"],
            "--added \"20\" is no mass; write it as 20kg or 45lb",
        ),
        (
            &["--movement", "pull-up", "--reps", "3", "--added", "500kg"],
            "--added \"500\" is outside -300 to 400 kg; give -300 to 400 kg, or leave it out",
        ),
        (
            &["--pain", "elbow"],
            "--pain \"elbow\" says not where and how much; write it as elbow=3",
        ),
        (
            &["--height", "178"],
            "--height \"178\" is no height; write it as 178cm",
        ),
        (
            &["--movement", "dead-hang", "--reps", "3"],
            "dead-hang is counted in --hold-s, not in reps; move the number to --hold-s",
        ),
        (
            &["--by", "2026-01-01"],
            "--by without a goal; give the goal as LADDER/RUNG, or leave out --by",
        ),
    ] {
        assert_eq!(refused(args), told);
    }
}

#[test]
fn whatever_is_wrong_is_one_line() {
    let long = "x".repeat(300);
    for args in [
        &["--reps", "5"][..],
        &["--movement", "pull-up", "--reps", "2000"],
        &["--movement", "pull-up", "--reps", "nan"],
        &["--movement", "pull-up", "--reps", "0"],
        &["--movement", "pull-up", "--reps", "3", "--rir", "1", "--rpe", "9"],
        &["--movement", "pull-up", "--reps", "3", "--rir", "1.2"],
        &["--movement", "pull-up", "--reps", "3", "--rpe", "4.5"],
        &["--movement", "pull-up", "--reps", "3", "--side", "L"],
        &["--movement", "pull-up", "--reps", "3", "--assist", "-3kg"],
        &[
            "--movement",
            "pull-up",
            "--reps",
            "3",
            "--assist",
            "3kg",
            "--added",
            "3kg",
        ],
        &["--movement", "pull-up", "--reps", "3", "--missed", "--form"],
        &["--movement", "pull-up", "--reps", "3", "--missed=no"],
        &["--movement", "pull-up", "--reps", "3", "--rung", "plus-25"],
        &["--bodyweight", "1e2kg"],
        &["--bodyweight", "7kg"],
        &["--pain", "elbo=3"],
        &["--pain", "elbow=11"],
        &["--place", "nowhere"],
        &["--place", "front-lever/top"],
        &["--place", "front-lever", "--ladder", "front-lever"],
        &["--phase", "bulk"],
        &["--goal", "front-lever"],
        &["--sex", "f"],
        &["--height", "300cm"],
        &["--born", "17.05.1990"],
        &["--at", "2026-02-30"],
        &["--at", "yesterday\nor so"],
        &["--side", "L"],
        &["--rename", "\u{7}"],
        &["--rows", "-", "--reps", "3"],
        &["--movement", &long, "--reps", "3"],
        &["--nonsense"],
    ] {
        let line = refused(args);
        assert!(!line.contains(&"x".repeat(41)), "{line}");
    }
}

#[test]
fn a_record_needs_somebody_and_an_id_is_an_id() {
    let home = Home::new();
    for args in [
        &["log", "--bodyweight", "70kg"][..],
        &["log", "--athlete", "", "--bodyweight", "70kg"],
        &["log", "--athlete", "Ana", "--logbook", ""],
        &["amend", "nonsense", "--reps", "3"],
        &["amend", "01ARZ3NDEKTSV4RRFFQ69G5FAV"],
        &["retract"],
        &["retract", "8ZZZZZZZZZZZZZZZZZZZZZZZZZ"],
        &["restore", "01ARZ3NDEKTSV4RRFFQ69G5FA"],
        &["roster", "--on", "today"],
        &["export", "--format", "text"],
    ] {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert_eq!(ran.err.lines().count(), 1, "{args:?}: {}", ran.err);
    }
}

#[test]
fn a_wrong_device_is_refused_before_anything_is_made() {
    let home = Home::new().on_device("Not A Device");
    let ran = home.run(&["log", "--athlete", "Ana", "--bodyweight", "70kg"]);
    assert_eq!(ran.code, 2);
    assert!(!home.logbook().exists());
}

#[test]
fn every_command_answers_help() {
    let home = Home::new();
    for command in ["log", "amend", "retract", "restore", "export", "roster"] {
        let help = home.answer(&[command, "--help"]);
        assert!(help.contains(&format!("Usage: rungwright {command}")), "{help}");
    }
}

#[test]
fn a_note_that_is_too_long_is_told_as_a_note_not_as_a_cell() {
    let novel = "a".repeat(65_537);
    assert_eq!(
        refused(&["--note", &novel]),
        "a text of more than 65536 bytes; shorten it"
    );
}

#[test]
fn a_date_that_is_none_says_why() {
    for (at, told) in [
        (
            "9999-01-01",
            "\"9999-01-01\" is outside the years 1900 to 2100; correct the year",
        ),
        (
            "2026-02-30",
            "\"2026-02-30\" is no day of the calendar; write one that exists, as 2026-03-18",
        ),
        (
            "2026-03-18T25:00",
            "\"2026-03-18T25:00\" has no time that a clock shows; write it as 2026-03-18T17:30, with an offset like +01:00 or without",
        ),
        (
            "18.3.2026",
            "\"18.3.2026\" is no date; write it as 2026-03-18, or with a time as 2026-03-18T17:30+01:00",
        ),
    ] {
        assert_eq!(refused(&["--note", "x", "--at", at]), format!("--at: {told}"));
    }
    let home = Home::new();
    for (on, told) in [
        ("9999-01-01", "the years go from 1900 to 2100"),
        (
            "2026-02-30",
            "no calendar has this day; write a date as 2026-03-18",
        ),
        ("today", "write a date as 2026-03-18"),
    ] {
        let ran = home.run(&["roster", "--on", on]);
        assert_eq!(ran.code, 2);
        assert_eq!(
            ran.err,
            format!("rungwright: invalid value '{on}' for '--on <DATE>': {told}\n")
        );
    }
}

#[test]
fn a_birth_date_after_the_record_is_kept_and_questioned() {
    // A note, no error: the clock may be wrong, and a wrong clock keeps nobody from logging.
    let home = Home::new();
    let ran = home.run(&[
        "log",
        "--athlete",
        "Ana",
        "--at",
        "2026-03-18",
        "--born",
        "2062-05-17",
    ]);
    assert_eq!(ran.code, 0);
    assert!(
        ran.err.contains("born \"2062-05-17\" is after 2026-03-18, the day of this record; correct one of the two by amend\n"),
        "{}",
        ran.err
    );
    let file = home.file(
        "born.csv",
        "athlete,date,born\nBo,2026-03-18,2062-05-17\nCy,2026-03-18,2026-03-18\n",
    );
    let ran = home.run(&["import", &file]);
    assert_eq!(ran.code, 0);
    assert_eq!(ran.err.matches("is after").count(), 1, "{}", ran.err);
    assert!(
        ran.err
            .contains("born.csv:2:15: born \"2062-05-17\" is after 2026-03-18"),
        "{}",
        ran.err
    );
}

#[test]
fn a_name_that_no_file_knows_is_wrong_use_in_every_command() {
    let home = Home::new();
    home.log(&["--bodyweight", "70kg"]);
    for (args, told) in [
        (
            &[
                "what-if",
                "--athlete",
                "Ana",
                "--movement",
                "pul-up",
                "--bodyweight",
                "70kg",
            ][..],
            "unknown movement \"pul-up\"; did you mean pull-up?",
        ),
        (
            &["demand", "--ladder", "planch"],
            "unknown ladder \"planch\"; did you mean planche?",
        ),
        (
            &["log", "--athlete", "Ana", "--place", "planch"],
            "unknown ladder \"planch\"; did you mean planche?",
        ),
    ] {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert_eq!(ran.err, format!("rungwright: {told}\n"));
    }
}

#[test]
fn a_number_is_written_in_digits_and_a_plate_weighs_something() {
    let home = Home::new();
    let digits = "write a number in digits, like 82.5";
    for (args, told) in [
        (
            &["load", "--target-kg", "82,5", "--bodyweight-kg", "80"][..],
            digits,
        ),
        (&["load", "--target-kg", "1e2", "--bodyweight-kg", "80"], digits),
        (&["load", "--target-kg", "nan", "--bodyweight-kg", "80"], digits),
        (&["load", "--target-kg", "90", "--bodyweight-kg", "inf"], digits),
        (&["demand", "--ladder", "planche", "--height-cm", "tall"], digits),
        (
            &[
                "load",
                "--target-kg",
                "90",
                "--bodyweight-kg",
                "80",
                "--plates-kg",
                "5,0",
            ],
            "\"0\" is no plate",
        ),
        (
            &["demo", "new", "--athletes", "0"],
            "write a whole number from 1 to 5000",
        ),
        (
            &["demo", "new", "--years", "1.5"],
            "write a whole number from 1 to 20",
        ),
        (&["demo", "new", "--seed", "-1"], "write a whole number from 0 to"),
        (
            &["demo", "new", "--on", "1963-12-31"],
            "give --on a day of the years 1964 to 2100",
        ),
    ] {
        let ran = home.run(args);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{args:?}");
        assert!(ran.err.contains(told), "{args:?}: {}", ran.err);
        assert_eq!(ran.err.lines().count(), 1, "{args:?}: {}", ran.err);
    }
    assert!(!home.path("new").exists());
}

#[test]
fn the_earliest_demo_is_sound() {
    let home = Home::new();
    let out = home.answer(&["demo", "old", "--athletes", "40", "--on", "1964-01-01"]);
    assert!(out.starts_with("40 athletes, "), "{out}");
    home.answer(&["check", "old"]);
    assert!(
        home.answer(&["demo", "one", "--athletes", "1"])
            .starts_with("1 athlete, ")
    );
}
