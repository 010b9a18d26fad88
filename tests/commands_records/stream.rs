//! `log --rows`: each row is on disk before it is said to be.

use std::io::{BufRead, BufReader, Write};
use std::process::Stdio;

use crate::kit::Home;

#[test]
fn each_row_is_said_with_its_line_and_id_and_a_bad_one_stops_it() {
    let home = Home::new();
    let file = home.file(
        "rows.csv",
        "athlete,date,movement,reps,note\n\
         Ana,2026-03-01,dip,5,\n\
         Ana,2026-03-01,dip,5,\"two\nlines\"\n\
         \n\
         Cy,2026-03-01,,,\n\
         Ana,2026-03-02,dip,many,\n\
         Ana,2026-03-03,dip,5,\n",
    );
    let ran = home.run(&["log", "--rows", &file]);
    assert_eq!(ran.code, 1);
    let lines: Vec<&str> = ran
        .out
        .lines()
        .map(|line| line.strip_prefix("saved ").unwrap().split_once(' ').unwrap().0)
        .collect();
    assert_eq!(lines, ["2", "3", "6"], "physical lines");
    assert!(
        ran.err.contains("rows.csv:7:20: reps \"many\" is no number"),
        "{}",
        ran.err
    );
    let export = home.answer(&["export"]);
    for line in ran.out.lines() {
        assert!(export.contains(line.rsplit(' ').next().unwrap()), "{line}");
    }
    assert!(!export.contains("2026-03-03"));
}

#[test]
fn the_same_rows_again_are_saved_already() {
    let home = Home::new();
    let file = home.file(
        "rows.csv",
        "date,bodyweight_kg\n2026-03-01,70\n2026-03-01,70\n2026-03-02,71\n",
    );
    let rows = ["log", "--rows", &file, "--athlete", "Ana"];
    let first = home.answer(&rows);
    let lines = home.lines();
    assert_eq!(lines.len(), 4, "three weigh-ins and a name");
    assert_eq!(home.answer(&rows), first);
    assert_eq!(home.lines(), lines);
    // The ids are those that import gives the file.
    home.import("athlete,date,bodyweight_kg\nAna,2026-03-02,71\nAna,2026-03-01,70\n");
    assert_eq!(home.lines(), lines);
}

#[test]
fn a_file_without_header_or_that_is_not_there_saves_nothing() {
    let home = Home::new();
    let headless = home.file("rows.csv", "Ana,2026-03-01,70\n");
    for file in [headless.as_str(), "missing.csv"] {
        let ran = home.run(&["log", "--rows", file]);
        assert_eq!((ran.code, ran.out.as_str()), (1, ""));
        assert!(ran.err.contains(file.rsplit('/').next().unwrap()), "{}", ran.err);
    }
    assert!(!home.logbook().exists());
}

#[test]
fn rows_come_in_one_at_a_time_and_other_writers_get_their_turn() {
    let home = Home::new();
    let mut child = home
        .command(&["log", "--rows", "-", "--athlete", "Ana"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut rows = child.stdin.take().unwrap();
    let mut said = BufReader::new(child.stdout.take().unwrap()).lines();
    rows.write_all(b"date,movement,reps\n").unwrap();
    for reps in 1..=3 {
        rows.write_all(format!("2026-03-01,dip,{reps}\n").as_bytes())
            .unwrap();
        let line = said.next().unwrap().unwrap();
        assert!(line.starts_with(&format!("saved {} ", reps + 1)), "{line}");
        // The stream is open and holds no lock.
        home.log(&["--note", "between"]);
    }
    drop(rows);
    assert!(child.wait().unwrap().success());
    assert_eq!(home.answer(&["export"]).matches(",dip,").count(), 3);
}

#[test]
fn killed_after_its_hundredth_saved_it_has_its_hundred() {
    let home = Home::new();
    let mut child = home
        .command(&["log", "--rows", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut rows = child.stdin.take().unwrap();
    let feeder = std::thread::spawn(move || {
        let mut text = "athlete,date,movement,reps\n".to_owned();
        for row in 0..5000 {
            text.push_str(&format!(
                "Athlete {},2026-03-{:02},dip,5\n",
                row % 3,
                row % 28 + 1
            ));
        }
        // The pipe breaks when the reader is killed.
        let _broken = rows.write_all(text.as_bytes());
    });
    let said: Vec<String> = BufReader::new(child.stdout.take().unwrap())
        .lines()
        .take(100)
        .map(Result::unwrap)
        .collect();
    child.kill().unwrap();
    child.wait().unwrap();
    feeder.join().unwrap();
    assert_eq!(said.len(), 100);
    let export = home.run(&["export"]).out;
    for line in &said {
        let id = line.rsplit(' ').next().unwrap();
        assert!(export.contains(id), "{line} was said and is not there");
    }
    // The next start needs no repair.
    for athlete in 0..3 {
        home.answer(&["log", "--athlete", &format!("Athlete {athlete}"), "--note", "on"]);
    }
    home.answer(&["export"]);
}

#[test]
fn a_header_that_is_none_is_mended_in_the_file_itself() {
    let home = Home::new();
    let file = home.file("rows.csv", "athlete;date;bodyweight_kg\nAna;2026-03-01;70\n");
    let streamed = home.run(&["log", "--rows", &file]);
    assert_eq!(streamed.code, 1);
    assert!(
        streamed
            .err
            .contains("nothing was saved; --map and --delimiter are options of import"),
        "{}",
        streamed.err
    );
    // Import can read it, and says how.
    let imported = home.run(&["import", &file]);
    assert!(
        imported.err.contains("read the file with --delimiter \";\""),
        "{}",
        imported.err
    );
    home.answer(&["import", &file, "--delimiter", ";"]);
}
