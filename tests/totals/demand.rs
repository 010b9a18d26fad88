//! The command `demand`, and the warnings of `check` about stated demands.

use serde_json::Value;

use crate::kit::Home;

fn rows(out: &str) -> Vec<Value> {
    serde_json::from_str(out).unwrap()
}

fn rung<'r>(rows: &'r [Value], id: &str) -> &'r Value {
    rows.iter().find(|row| row["rung"] == id).unwrap()
}

#[test]
fn a_body_given_on_the_command_line_needs_no_logbook() {
    let home = Home::new();
    let body = ["--height-cm", "175", "--mass-kg", "75", "--sex", "male"];
    let out = home.answer(
        &[
            &["demand", "--ladder", "front-lever", "--format", "json"],
            &body[..],
        ]
        .concat(),
    );
    let rows = rows(&out);
    assert_eq!(rows.len(), 5);
    // Independent computation from de Leva's tables, a man of 1.75 m and 75 kg: 166 and 306 N·m, 22.3° of lean, 46.2 N·m.
    let tuck = rung(&rows, "tuck");
    assert!((tuck["moment_nm"].as_f64().unwrap() - 166.0).abs() < 0.6);
    assert!((tuck["lean_deg"].as_f64().unwrap() - 22.3).abs() < 0.06);
    assert!((tuck["elbow_nm"].as_f64().unwrap() - 46.2).abs() < 0.06);
    assert!((tuck["demand"].as_f64().unwrap() - 0.541).abs() < 0.0006);
    assert!(
        tuck["share"].is_null() && tuck["system_kg"].is_null(),
        "a lever is a moment, no load"
    );
    assert_eq!(tuck["status"], "assumption", "how round a tuck is, is a choice");
    assert_eq!(rung(&rows, "full")["status"], "derived");
    for row in &rows {
        let number = |key: &str| row[key].as_f64().unwrap();
        assert!(number("low") <= number("demand") && number("demand") <= number("high"));
        assert!(row["text"].as_str().unwrap().ends_with('.'));
    }
    assert!(!home.logbook().exists(), "asking makes nothing");
}

#[test]
fn every_row_has_the_same_fields_in_order() {
    let home = Home::new();
    let csv = home.answer(&[
        "demand",
        "--ladder",
        "Weighted Dip",
        "--mass-kg",
        "80",
        "--format",
        "csv",
    ]);
    let mut lines = csv.lines();
    assert_eq!(
        lines.next(),
        Some("ladder,rung,demand,low,high,status,text,moment_nm,elbow_nm,lean_deg,share,system_kg")
    );
    assert!(lines.any(|line| line.starts_with("weighted-dip,plus-25,") && line.ends_with(",,,,1,100")));
}

#[test]
fn an_athletes_own_body_and_measured_band_are_taken_from_the_log() {
    let home = Home::new();
    home.import(
        "athlete,date,movement,side,bodyweight_kg,added_kg,reps,ladder,rung,height_cm,sex\n\
         Ana,2026-03-01,one-arm-pull-up,L,60,-12,4,one-arm-pull-up,band,165,female\n",
    );
    let ask = |more: &[&str]| {
        let args = [
            "demand",
            "--ladder",
            "one-arm-pull-up",
            "--athlete",
            "Ana",
            "--on",
            "2026-03-10",
        ];
        rows(&home.answer(&[&args[..], &["--format", "json"], more].concat()))
    };
    // Her band takes 12 kg of 60: 20 % of bodyweight.
    let band = rung(&ask(&[]), "band").clone();
    assert_eq!(band["system_kg"].as_f64(), Some(48.0));
    assert!(
        band["text"]
            .as_str()
            .unwrap()
            .contains("your band takes 0.20 × bodyweight")
    );
    // What is said on the command line holds instead of the log.
    assert_eq!(
        rung(&ask(&["--mass-kg", "80"]), "one-arm")["system_kg"].as_f64(),
        Some(80.0)
    );
    let text = home.answer(&[
        "demand",
        "--ladder",
        "front-lever",
        "--athlete",
        "Ana",
        "--on",
        "2026-03-10",
    ]);
    // Independent computation, a woman of 1.65 m and 60 kg: 123 N·m tucked, 216 full.
    assert!(
        text.contains("123 N·m at both shoulders") && text.contains("216 N·m at both shoulders"),
        "{text}"
    );
}

#[test]
fn what_is_not_known_is_named_and_a_body_unlike_the_measured_ones_gets_a_caution() {
    let home = Home::new();
    let text = home.answer(&["demand", "--ladder", "front-lever"]);
    assert!(text.contains("Your height and sex would narrow this"), "{text}");
    let child = home.answer(&[
        "demand",
        "--ladder",
        "front-lever",
        "--height-cm",
        "125",
        "--mass-kg",
        "26",
    ]);
    assert!(
        child.contains("Caution: the body tables come from young, lean adult athletes"),
        "{child}"
    );
    let json = home.run(&[
        "demand",
        "--ladder",
        "front-lever",
        "--height-cm",
        "170",
        "--mass-kg",
        "145",
        "--format",
        "json",
    ]);
    assert!(json.err.contains("body mass index of 50"), "{}", json.err);
    assert_eq!(json.code, 0);
}

#[test]
fn bodies_that_cannot_be_and_ladders_that_are_not_there_are_refused() {
    let home = Home::new();
    let wrong = |args: &[&str]| home.run(&[&["demand"], args].concat());
    for mass in ["0", "-70", "1e9", "nan"] {
        let ran = wrong(&["--ladder", "planche", "--mass-kg", mass]);
        assert_eq!(ran.code, 2, "{mass}: {}", ran.err);
    }
    assert_eq!(wrong(&["--ladder", "planche", "--height-cm", "300"]).code, 2);
    assert_eq!(wrong(&["--ladder", "planche", "--sex", "x"]).code, 2);
    assert_eq!(wrong(&[]).code, 2);
    let ran = wrong(&["--ladder", "front-levr"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("did you mean front-lever?"), "{}", ran.err);
    let ran = wrong(&["--ladder", "planche", "--athlete", "Ana"]);
    assert_eq!(ran.code, 1, "no logbook, no Ana");
}

const OWN: &str = r#"(
    id: "own-push-up",
    title: "Own push-up",
    goal: "One-arm push-up",
    sides: Apart,
    sources: ["common practice, no source"],
    rungs: [
        (
            id: "raised",
            title: "Hands on 60 cm",
            movement: "one-arm-push-up",
            help: HandsRaised(60),
            work: (sets: 3, range: Reps(3, 5), reserve: 1),
            demand: (0.30, "common practice"),
        ),
        (
            id: "flat",
            title: "Flat",
            movement: "one-arm-push-up",
            help: Plain,
            work: (sets: 3, range: Reps(1, 3), reserve: 1),
            demand: (1.0, "common practice"),
        ),
    ],
)
"#;

#[test]
fn check_warns_of_a_stated_demand_that_physics_doubts_and_still_exits_0() {
    let home = Home::new();
    let file = home.file("own-push-up.ron", OWN);
    let ran = home.run(&["check", &file]);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
    assert!(
        ran.out
            .contains("\"raised\" states a demand of 0.3, outside the computed"),
        "{}",
        ran.out
    );
    assert!(
        ran.out.contains("own-push-up.ron:14:"),
        "it points at the demand: {}",
        ran.out
    );
    // A reason in the file settles it.
    let file = home.file(
        "own-push-up.ron",
        &OWN.replace(
            "(0.30, \"common practice\")",
            "(0.30, \"this holds: measured on our box\")",
        ),
    );
    let ran = home.run(&["check", &file]);
    assert!(ran.out.contains("No problems."), "{}", ran.out);
}

#[test]
fn check_warns_where_the_demand_falls_between_a_stated_and_a_computed_rung() {
    let home = Home::new();
    let levers = std::fs::read_to_string("progressions/front-lever.ron").unwrap();
    // Two shapes change places: no demand is stated, physics alone sees it.
    let swapped = levers
        .replace("Shape(Tuck)", "Shape(X)")
        .replace("Shape(Straddle)", "Shape(Tuck)")
        .replace("Shape(X)", "Shape(Straddle)");
    assert_ne!(swapped, levers);
    std::fs::create_dir_all(home.logbook().join("ladders")).unwrap();
    std::fs::write(home.logbook().join("logbook.ron"), "(format: 1, unit: kg)").unwrap();
    std::fs::write(home.logbook().join("ladders/front-lever.ron"), swapped).unwrap();
    let ran = home.run(&["check"]);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
    assert!(ran.out.contains("the demand falls from"), "{}", ran.out);
}
