//! `totals`: bests as a person and a program read them.

use crate::kit::Home;

/// The rows of one kind for `reps` repetitions (empty: neither reps nor a hold), as CSV cells.
fn rows(home: &Home, kind: &str, reps: &str) -> Vec<Vec<String>> {
    let csv = home.answer(&["totals", "--on", "2026-03-20", "--format", "csv"]);
    let cells = |line: &str| line.split(',').map(str::to_owned).collect::<Vec<String>>();
    csv.lines()
        .skip(1)
        .map(cells)
        .filter(|row| row[3] == kind && row[4] == reps)
        .collect()
}

fn value_and_date(home: &Home, kind: &str, reps: &str) -> Vec<(String, String)> {
    rows(home, kind, reps)
        .into_iter()
        .map(|row| (row[6].clone(), row[7].clone()))
        .collect()
}

fn log(home: &Home, at: &str, reps: &str, added: &str) -> String {
    let what = ["--movement", "pull-up", "--reps", reps, "--added", added];
    home.log(&[&what[..], &["--bodyweight", "80kg", "--at", at]].concat())
}

#[test]
fn retracting_a_best_gives_the_one_before_back_with_its_date() {
    let home = Home::new();
    log(&home, "2026-03-01", "5", "20kg");
    let better = log(&home, "2026-03-08", "5", "25kg");
    let best = |value: &str, date: &str| vec![(value.to_owned(), date.to_owned())];
    assert_eq!(value_and_date(&home, "system", "5"), best("105", "2026-03-08"));
    home.answer(&["retract", &better]);
    assert_eq!(value_and_date(&home, "system", "5"), best("100", "2026-03-01"));
    assert_eq!(value_and_date(&home, "e1rm", "")[0].1, "2026-03-01");
    home.answer(&["restore", &better]);
    assert_eq!(value_and_date(&home, "system", "5"), best("105", "2026-03-08"));
}

#[test]
fn the_settings_choose_the_formula_and_an_option_goes_before_them() {
    let home = Home::new();
    log(&home, "2026-03-01", "5", "20kg");
    let max = |home: &Home| value_and_date(home, "e1rm", "")[0].0.parse::<f64>().unwrap();
    // 100 kg for 5: Epley 1985 gives 116.6667, Brzycki 1993 gives 112.5.
    assert!((max(&home) - 116.666_67).abs() < 1e-4);
    let file = home.logbook().join("logbook.ron");
    let settings = std::fs::read_to_string(&file).unwrap();
    let chosen = settings.replace("    unit: kg,\n", "    unit: kg,\n    formula: \"brzycki\",\n");
    std::fs::write(&file, chosen).unwrap();
    assert_eq!(max(&home), 112.5);
    let text = home.answer(&["totals", "--on", "2026-03-20"]);
    assert!(text.contains("e1RM, brzycki"), "{text}");
    let text = home.answer(&["totals", "--on", "2026-03-20", "--formula", "epley"]);
    assert!(text.contains("e1RM, epley"), "{text}");
}

#[test]
fn a_formula_that_nobody_published_is_told_with_the_nearest_one() {
    let home = Home::new();
    log(&home, "2026-03-01", "5", "20kg");
    let file = home.logbook().join("logbook.ron");
    let settings = std::fs::read_to_string(&file).unwrap();
    let chosen = settings.replace("    unit: kg,\n", "    unit: kg,\n    formula: \"brzicki\",\n");
    std::fs::write(&file, chosen).unwrap();
    let ran = home.run(&["totals", "--on", "2026-03-20"]);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("did you mean brzycki?"), "{}", ran.err);
    assert!(
        ran.out.contains("e1RM, epley"),
        "the rest is printed: {}",
        ran.out
    );
}

#[test]
fn of_a_movement_that_is_not_known_here_the_belt_alone_is_told() {
    let home = Home::new();
    home.import(
        "id,athlete,date,movement,bodyweight_kg,added_kg,reps\n\
         01KKZ3VY005KBAH2VR57ZGNDF7,Ana,2026-03-01,rope-climb,80,15,2\n",
    );
    let csv = home.answer(&["totals", "--on", "2026-03-20", "--format", "csv"]);
    let rows: Vec<&str> = csv.lines().skip(1).collect();
    assert_eq!(
        rows,
        [
            "Ana,rope-climb,,added,1,,15,2026-03-01,80,15,,false",
            "Ana,rope-climb,,added,2,,15,2026-03-01,80,15,,false",
        ]
    );
}

#[test]
fn the_table_shows_every_count_that_has_a_best_and_says_a_row_of_the_same_once() {
    let home = Home::new();
    log(&home, "2026-03-01", "8", "10kg");
    log(&home, "2026-03-08", "3", "25kg");
    let text = home.answer(&["totals", "--on", "2026-03-20"]);
    let system: Vec<&str> = text.lines().filter(|line| line.contains("system load")).collect();
    assert_eq!(
        system,
        [
            "    best system load    1–3 reps  105 kg              2026-03-08  at 80 kg",
            "    best system load    4–8 reps  90 kg               2026-03-01  at 80 kg",
        ]
    );
}
