//! `log`: each form, and the record it makes.

use crate::kit::{Home, saved};

/// What Ana's journal says after her name, having logged once.
fn said(args: &[&str]) -> Vec<String> {
    let home = Home::new();
    home.log(args);
    let facts = home.facts();
    assert_eq!(facts.first().unwrap(), "Profile(name: \"Ana\")");
    facts.into_iter().skip(1).collect()
}

#[test]
fn a_set_keeps_what_was_typed() {
    assert_eq!(
        said(&[
            "--movement",
            "Pull Up",
            "--reps",
            "5",
            "--added",
            "20kg",
            "--bodyweight",
            "165.5lb",
            "--rir",
            "1.5",
            "--ladder",
            "weighted-pull-up",
            "--rung",
            "plus-25",
            "--note",
            " chalked ",
        ]),
        [
            "Set(movement: \"pull-up\", load: Added(kg(20)), effort: Reps(5), left: rir(1.5), \
             bodyweight: lb(165.5), ladder: \"weighted-pull-up\", rung: \"plus-25\", note: \"chalked\")"
        ]
    );
}

#[test]
fn help_is_taken_off_and_an_rpe_stays_an_rpe() {
    assert_eq!(
        said(&[
            "--movement",
            "one-arm-lock-off",
            "--side",
            "L",
            "--hold-s",
            "7.5",
            "--assist",
            "10 lb",
            "--rpe",
            "8.5"
        ]),
        [
            "Set(movement: \"one-arm-lock-off\", side: L, load: Assistance(lb(10)), effort: Hold(7.5), left: rpe(8.5))"
        ]
    );
    // A sheet's sign for help works here too.
    assert_eq!(
        said(&["--movement", "dip", "--reps", "3", "--added", "-12.5kg"]),
        ["Set(movement: \"dip\", load: Assistance(kg(12.5)), effort: Reps(3))"]
    );
}

#[test]
fn a_failed_set_and_one_without_the_standard_are_told_apart() {
    assert_eq!(
        said(&["--movement", "dip", "--reps", "0", "--missed"]),
        ["Set(movement: \"dip\", effort: Reps(0), outcome: Missed)"]
    );
    assert_eq!(
        said(&["--movement", "dip", "--reps", "8", "--form"]),
        ["Set(movement: \"dip\", effort: Reps(8), outcome: Form)"]
    );
}

#[test]
fn a_bodyweight_alone_is_a_weigh_in() {
    assert_eq!(
        said(&["--bodyweight", "75.2KG", "--note", "after breakfast"]),
        ["WeighIn(bodyweight: kg(75.2), note: \"after breakfast\")"]
    );
}

#[test]
fn pain_has_a_site_a_score_and_perhaps_a_side() {
    assert_eq!(
        said(&["--pain", "elbow=3", "--side", "R"]),
        ["Pain(site: Elbow, side: R, score: 3)"]
    );
    assert_eq!(said(&["--pain", "Back=0"]), ["Pain(site: Back, score: 0)"]);
}

#[test]
fn a_placement_joins_puts_on_a_rung_or_sets_aside() {
    assert_eq!(
        said(&["--place", "front-lever"]),
        ["Placement(ladder: \"front-lever\", rung: Joined)"]
    );
    assert_eq!(
        said(&[
            "--place",
            "one-arm-pull-up/fingers-3",
            "--side",
            "L",
            "--note",
            "coach's word"
        ]),
        ["Placement(ladder: \"one-arm-pull-up\", side: L, rung: On(\"fingers-3\"), why: \"coach's word\")"]
    );
    assert_eq!(
        said(&["--place", "one-arm-pull-up/none", "--side", "R"]),
        ["Placement(ladder: \"one-arm-pull-up\", side: R, rung: SetAside)"]
    );
}

#[test]
fn phases_goals_notes_and_the_person_are_records_too() {
    assert_eq!(said(&["--phase", "cut"]), ["Phase(kind: cut)"]);
    assert_eq!(
        said(&["--goal", "weighted-dip/plus-50", "--by", "2026-12-31"]),
        ["Goal(ladder: \"weighted-dip\", rung: \"plus-50\", by: \"2026-12-31\")"]
    );
    assert_eq!(
        said(&["--note", "- slept badly"]),
        ["Note(text: \"- slept badly\")"]
    );
    assert_eq!(
        said(&["--born", "1990-05-17", "--height", "178.5cm", "--sex", "female"]),
        ["Profile(born: \"1990-05-17\", sex: female, height_cm: 178.5)"]
    );
}

#[test]
fn the_id_of_the_set_is_the_one_that_is_said() {
    let home = Home::new();
    let id = home.log(&[
        "--pain",
        "wrist=2",
        "--movement",
        "dip",
        "--reps",
        "8",
        "--phase",
        "gain",
        "--place",
        "weighted-dip",
    ]);
    let lines = home.lines();
    assert_eq!(lines.len(), 5, "name, set, pain, phase, placement");
    let set = lines.iter().find(|line| line.contains("what: Set(")).unwrap();
    assert!(set.contains(&id), "{set}");
}

#[test]
fn the_first_log_makes_logbook_and_athlete_and_says_so_once() {
    let home = Home::new();
    let first = home.run(&["log", "--athlete", "Ana", "--bodyweight", "160lb"]);
    assert_eq!(first.code, 0);
    saved(&first.out);
    assert_eq!(first.err.lines().count(), 2, "{}", first.err);
    assert!(first.err.contains("made a logbook") && first.err.contains("\"Ana\" is new"));
    // Every mass so far was in pounds, so the logbook thinks in pounds.
    let settings = std::fs::read_to_string(home.logbook().join("logbook.ron")).unwrap();
    assert!(settings.contains("unit: lb"), "{settings}");
    let second = home.run(&["log", "--athlete", "Ana", "--bodyweight", "161lb"]);
    assert_eq!((second.code, second.err.as_str()), (0, ""));
}

#[test]
fn an_athlete_alone_is_made_and_found_again() {
    let home = Home::new();
    let made = home.log(&[]);
    assert_eq!(home.facts(), ["Profile(name: \"Ana\")"]);
    assert_eq!(home.log(&[]), made);
    assert_eq!(home.facts().len(), 1, "nothing was added");
}

#[test]
fn a_name_is_one_name_however_it_is_typed() {
    let home = Home::new();
    // U+00E9, and e with U+0301: one name in Unicode's composed form (Unicode Standard Annex 15).
    home.answer(&["log", "--athlete", "Ren\u{e9}", "--bodyweight", "70kg"]);
    home.answer(&["log", "--athlete", " Rene\u{301} ", "--bodyweight", "71kg"]);
    assert_eq!(
        std::fs::read_dir(home.logbook().join("athletes"))
            .unwrap()
            .count(),
        1
    );
}

#[test]
fn a_time_is_kept_as_written_and_now_has_the_local_offset() {
    let home = Home::new();
    home.log(&["--note", "a", "--at", "2026-03-18T17:30-08:00"]);
    home.log(&["--note", "b", "--at", "2026-03-18"]);
    home.log(&["--note", "c"]);
    let lines = home.lines();
    assert!(
        lines[1].contains("at: \"2026-03-18T17:30-08:00\""),
        "{}",
        lines[1]
    );
    assert!(lines[2].contains("at: \"2026-03-18\""), "{}", lines[2]);
    // Berlin is one hour or two ahead of UTC.
    let now = lines[3]
        .split_once("at: \"")
        .unwrap()
        .1
        .split_once('"')
        .unwrap()
        .0;
    assert!(now.ends_with("+01:00") || now.ends_with("+02:00"), "{now}");
}

#[test]
fn records_of_a_day_stand_in_the_order_in_which_they_were_logged() {
    let home = Home::new();
    for note in ["one", "two", "three"] {
        home.log(&["--note", note, "--at", "2026-03-18"]);
    }
    let places: Vec<bool> = ["nth: 0", "nth: 2", "nth: 3"]
        .iter()
        .zip(home.lines().iter().skip(1))
        .map(|(nth, line)| line.contains(nth))
        .collect();
    assert_eq!(
        places,
        [true; 3],
        "the name is a record of the first day: {:?}",
        home.lines()
    );
    let notes: Vec<String> = home
        .answer(&["export"])
        .lines()
        .skip(2)
        .map(|row| row.rsplit(',').next().unwrap().to_owned())
        .collect();
    assert_eq!(notes, ["one", "two", "three"]);
}

#[test]
fn renaming_changes_the_name_and_not_the_folder() {
    let home = Home::new();
    home.log(&["--bodyweight", "70kg"]);
    home.log(&["--rename", "Ana Pavlova-Ito", "--sex", "female"]);
    assert_eq!(
        home.facts().last().unwrap(),
        "Profile(name: \"Ana Pavlova-Ito\", sex: female)"
    );
    home.answer(&["log", "--athlete", "Ana Pavlova-Ito", "--bodyweight", "71kg"]);
    assert_eq!(
        std::fs::read_dir(home.logbook().join("athletes"))
            .unwrap()
            .count(),
        1
    );
    // The name is free again for somebody else, who gets a folder and a name record of their own.
    home.log(&["--bodyweight", "90kg"]);
    let export = home.answer(&["export"]);
    let mut ids: Vec<&str> = export.lines().skip(1).map(|row| &row[..26]).collect();
    let rows = ids.len();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), rows, "{export}");
}

#[test]
fn nobody_is_renamed_to_somebody_else_and_nobody_unknown_is_renamed() {
    let home = Home::new();
    home.log(&["--bodyweight", "70kg"]);
    home.answer(&["log", "--athlete", "Bo", "--bodyweight", "80kg"]);
    let before = home.lines();
    let taken = home.run(&["log", "--athlete", "Bo", "--rename", "Ana"]);
    assert_eq!(taken.code, 1);
    assert!(
        taken.err.contains("another athlete is called \"Ana\""),
        "{}",
        taken.err
    );
    let unknown = home.run(&["log", "--athlete", "Anna", "--rename", "Eva"]);
    assert_eq!(unknown.code, 1);
    assert!(
        unknown.err.contains("\"Ana\""),
        "the nearest name: {}",
        unknown.err
    );
    assert_eq!(home.lines(), before);
}

#[test]
fn a_ladder_of_ones_own_can_be_logged_for() {
    let home = Home::new();
    home.log(&[]);
    let shipped = include_str!("../../progressions/front-lever.ron");
    std::fs::create_dir(home.logbook().join("ladders")).unwrap();
    let own = shipped.replacen("\"front-lever\"", "\"my-lever\"", 1);
    std::fs::write(home.logbook().join("ladders/my-lever.ron"), own).unwrap();
    home.log(&["--place", "my-lever/tuck"]);
    home.answer(&["log", "--athlete", "Bo", "--place", "my-lever"]);
    assert_eq!(
        home.facts()[1],
        "Placement(ladder: \"my-lever\", rung: On(\"tuck\"))"
    );
}

#[test]
fn logging_for_one_reads_nobody_elses_journal() {
    let home = Home::new();
    home.answer(&["log", "--athlete", "ana", "--bodyweight", "70kg"]);
    home.answer(&["log", "--athlete", "bo", "--bodyweight", "80kg"]);
    let bo = home.logbook().join("athletes/bo/journal-test.ron");
    std::fs::write(bo, "no record at all\n").unwrap();
    // Whoever reads bo's journal says what is wrong in it.
    assert_eq!(home.run(&["export"]).code, 1);
    let ran = home.run(&["log", "--athlete", "ana", "--bodyweight", "71kg"]);
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
}

#[test]
fn a_logbook_that_cannot_be_written_keeps_nothing_half() {
    let home = Home::new();
    std::fs::create_dir_all(home.logbook()).unwrap();
    std::fs::write(home.logbook().join("holiday.jpg"), "x").unwrap();
    let ran = home.run(&["log", "--athlete", "Ana", "--bodyweight", "70kg"]);
    assert_eq!((ran.code, ran.out.as_str()), (1, ""));
    assert_eq!(std::fs::read_dir(home.logbook()).unwrap().count(), 1);
}
