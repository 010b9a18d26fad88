//! Reading movements and ladders: what is shipped is sound, own files add and replace, names fold, any text is survived.

use std::collections::BTreeSet;

use proptest::prelude::*;
use rungwright::catalogue::{Catalogue, LONGEST_FILE, Ladder, OwnFile, Way, text_of};
use rungwright::problem::{Problem, Severity};
use rungwright::units::Measure;

const PROGRESSIONS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/progressions");

fn shipped_text(name: &str) -> String {
    std::fs::read_to_string(format!("{PROGRESSIONS}/{name}")).unwrap()
}

fn shipped_files() -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(PROGRESSIONS)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

fn told(problems: &[Problem]) -> String {
    problems.iter().map(|problem| format!("{problem}\n")).collect()
}

/// A ladder of two rungs by this id.
fn two_rungs(id: &str) -> String {
    format!(
        r#"(id: "{id}", title: "Ring dips", goal: "Ten ring dips.", sides: Together, sources: ["from memory"], rungs: [
            (id: "support", title: "Support", movement: "ring-support", work: (sets: 3, range: Hold(10, 30))),
            (id: "dip", title: "Ring dip", movement: "ring-dip", work: (sets: 3, range: Reps(3, 10), reserve: 1)),
        ])"#
    )
}

fn own(path: &str, text: impl Into<String>) -> OwnFile {
    OwnFile::new(path, text)
}

#[test]
fn every_shipped_file_is_sound_and_compiled_in() {
    let names = shipped_files();
    let ladders: BTreeSet<String> = Catalogue::shipped()
        .ladders()
        .map(|ladder| format!("{}.ron", ladder.id))
        .collect();
    for name in &names {
        let text = shipped_text(name);
        let problems = if name == "movements.ron" {
            Catalogue::read_movements(name, &text).1
        } else {
            assert!(ladders.contains(name), "{name} is not compiled in");
            Catalogue::shipped().read_ladder(name, &text).1
        };
        assert_eq!(told(&problems), "", "{name}");
    }
    assert_eq!(ladders.len() + 1, names.len());
}

#[test]
fn no_shipped_text_holds_a_shorthand() {
    // The program's texts are full words: no "3x5-8", no "r2", no "Xtuck", no "in:" of a coach's notebook.
    for name in shipped_files() {
        let text = shipped_text(&name);
        for line in text.lines() {
            let shorthand = line.split(|c: char| !c.is_alphanumeric()).any(|word| {
                word.len() > 2 && word.contains('x') && word.chars().all(|c| c.is_ascii_digit() || c == 'x')
            });
            assert!(
                !shorthand && !line.contains("in:") && !line.contains("Xt"),
                "{name}: {line}"
            );
        }
    }
}

#[test]
fn a_ladder_written_out_reads_back_the_same() {
    let shipped = Catalogue::shipped();
    for ladder in shipped.ladders() {
        let text = shipped.ladder_text(ladder);
        let (back, problems) = shipped.read_ladder("copy.ron", &text);
        assert_eq!(told(&problems), "", "{text}");
        assert_eq!(back.as_ref(), Some(ladder));
    }
}

#[test]
fn movements_written_out_read_back_the_same() {
    let movements: Vec<_> = Catalogue::shipped().movements().cloned().collect();
    let text = Catalogue::movements_text(&movements);
    let (back, problems) = Catalogue::read_movements("movements.ron", &text);
    assert_eq!(told(&problems), "");
    assert_eq!(back, movements);
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_change_nothing() {
    // U+FEFF at the start: Unicode Standard, section 23.8.
    let shipped = Catalogue::shipped();
    for ladder in shipped.ladders() {
        let name = format!("{}.ron", ladder.id);
        let text = format!("\u{feff}{}", shipped_text(&name).replace('\n', "\r\n"));
        let (back, problems) = shipped.read_ladder(&name, &text);
        assert_eq!((back.as_ref(), told(&problems)), (Some(ladder), String::new()));
    }
}

#[test]
fn optional_values_may_be_written_with_or_without_some() {
    let plain = two_rungs("ring-dips");
    let wrapped = plain.replace("reserve: 1", "reserve: Some(1)");
    let named = format!("Ladder{plain}");
    let shipped = Catalogue::shipped();
    let read = |text: &str| shipped.read_ladder("a.ron", text).0;
    assert!(read(&plain).is_some());
    assert_eq!(read(&plain), read(&wrapped));
    assert_eq!(read(&plain), read(&format!("#![enable(implicit_some)]\n{named}")));
}

#[test]
fn every_name_is_found_however_it_is_spelt() {
    let shipped = Catalogue::shipped();
    let shouted = |id: &str| id.to_uppercase().replace('-', " ");
    for movement in shipped.movements() {
        for written in [
            shouted(&movement.id),
            movement.id.replace('-', "_"),
            movement.id.replace('-', ""),
        ] {
            assert_eq!(shipped.movement_by_name(&written), Some(movement), "{written}");
        }
    }
    for ladder in shipped.ladders() {
        assert_eq!(shipped.ladder_by_name(&shouted(&ladder.id)), Some(ladder));
        for rung in &ladder.rungs {
            assert_eq!(ladder.rung_by_name(&shouted(&rung.id)), Some(rung));
        }
    }
    assert_eq!(shipped.movement_by_name("pull-upp"), None);
}

#[test]
fn climbing_and_falling_back_lead_along_the_main_line() {
    // Source: common practice, no source.
    let ladder = Catalogue::shipped().ladder("one-arm-pull-up").unwrap();
    let id = |rung: Option<&rungwright::catalogue::Rung>| rung.map(|rung| rung.id.clone());
    let around = |name: &str| {
        let rung = ladder.rung(name).unwrap();
        (id(ladder.below(rung)), id(ladder.above(rung)))
    };
    let some = |name: &str| Some(name.to_owned());
    assert_eq!(around("two-arm"), (None, some("fingers-3")));
    assert_eq!(around("fingers-1"), (some("fingers-2"), some("one-arm")));
    assert_eq!(around("one-arm-plus"), (some("one-arm"), None));
    assert_eq!(around("pulley"), (some("two-arm"), some("one-arm")));
    assert_eq!(
        (ladder.main_index("fingers-2"), ladder.main_index("pulley")),
        (Some(2), None)
    );
}

#[test]
fn branches_follow_the_main_line_whatever_the_order_in_the_file() {
    let text = two_rungs("ring-dips").replace(
        "rungs: [",
        r#"rungs: [(id: "slow", title: "Slow", branch: (from: "support", to: "dip"), movement: "ring-dip", help: Negative,
            work: (sets: 3, range: Reps(3, 5))),"#,
    );
    let (ladder, problems) = Catalogue::shipped().read_ladder("a.ron", &text);
    assert_eq!(told(&problems), "");
    let ids: Vec<String> = ladder.unwrap().rungs.into_iter().map(|rung| rung.id).collect();
    assert_eq!(ids, ["support", "dip", "slow"]);
}

#[test]
fn an_own_ladder_adds_to_the_shipped_ones() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/ring.ron", two_rungs("ring-dips"))]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.ladders().count(), 20);
    assert!(catalogue.ladder_by_name("Ring Dips").is_some());
}

#[test]
fn an_own_ladder_replaces_the_shipped_one_of_its_id() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/mine.ron", two_rungs("first-dip"))]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.ladders().count(), 19);
    assert_eq!(catalogue.ladder("first-dip").unwrap().title, "Ring dips");
}

#[test]
fn an_own_movement_can_be_used_by_an_own_ladder() {
    let movements = r#"[(id: "typewriter", title: "Typewriter", pattern: VerticalPull, sides: Together, share: Whole, measure: Reps,
        class: Compound, joints: [Elbow], direct: [Lats], standard: "From hand to hand over the bar.", sources: ["from memory"])]"#;
    let ladder = two_rungs("typewriters").replace("ring-dip\"", "typewriter\"");
    let files = [own("ladders/a.ron", ladder), own("movements.ron", movements)];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    assert_eq!(told(&problems), "");
    assert!(catalogue.ladder("typewriters").is_some());
    assert!(catalogue.movement_by_name("TypeWriter").is_some());
}

#[test]
fn an_own_movement_may_not_break_a_ladder_that_uses_it() {
    let mut dip = Catalogue::shipped().movement("dip").unwrap().clone();
    dip.title = "Dip, our way".to_owned();
    let sound = Catalogue::movements_text(std::slice::from_ref(&dip));
    let (catalogue, problems) = Catalogue::shipped().with_own(&[own("movements.ron", sound)]);
    assert_eq!(told(&problems), "");
    assert_eq!(catalogue.movement("dip").unwrap().title, "Dip, our way");

    dip.measure = Measure::Hold;
    let held = Catalogue::movements_text(std::slice::from_ref(&dip));
    let (catalogue, problems) = Catalogue::shipped().with_own(&[own("movements.ron", held)]);
    assert_eq!(
        told(&problems),
        "movements.ron:3:13: with this \"dip\" the ladder \"first-dip\" no longer holds\n  3 |         id: \"dip\",\n    |             ^^^^^\n  mend: keep measure, sides and share of the movement that it replaces, or choose another id\n"
    );
    assert_eq!(catalogue.movement("dip").unwrap().measure, Measure::Reps);
}

#[test]
fn two_own_ladders_of_one_id_are_told_and_the_first_holds() {
    let second = two_rungs("ring-dips").replace("Ring dips", "Other dips");
    let files = [
        own("ladders/b.ron", second),
        own("ladders/a.ron", two_rungs("ring-dips")),
    ];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    assert_eq!(problems.len(), 1);
    let told = told(&problems);
    assert!(
        told.starts_with("ladders/b.ron:1:6: ladders/a.ron has a ladder \"ring-dips\" too"),
        "{told}"
    );
    assert_eq!(catalogue.ladder("ring-dips").unwrap().title, "Ring dips");
}

#[test]
fn an_own_name_that_a_spreadsheet_takes_for_another_is_refused() {
    let (catalogue, problems) =
        Catalogue::shipped().with_own(&[own("ladders/a.ron", two_rungs("first-d-ip"))]);
    assert!(told(&problems).contains("differ only in case and hyphens"));
    assert_eq!(catalogue.ladders().count(), 19);
}

#[test]
fn a_broken_ladder_takes_no_other_with_it() {
    let files = [
        own(
            "ladders/broken.ron",
            two_rungs("broken").replace("ring-dip\"", "ring-dipp\""),
        ),
        own("ladders/sound.ron", two_rungs("sound")),
        own("ladders/torn.ron", "(id: \"torn\""),
        own("movements.ron", "[(id: 3)]"),
    ];
    let (catalogue, problems) = Catalogue::shipped().with_own(&files);
    let broken: Vec<&str> = problems
        .iter()
        .map(|problem| problem.place.file.as_str())
        .collect();
    assert_eq!(
        broken,
        ["movements.ron", "ladders/broken.ron", "ladders/torn.ron"]
    );
    assert!(catalogue.ladder("sound").is_some());
    assert_eq!(catalogue.ladders().count(), 20);
}

#[test]
fn the_last_good_version_stays_while_its_file_is_broken() {
    let (last, _) = Catalogue::shipped().with_own(&[own("ladders/a.ron", two_rungs("first-dip"))]);
    let (now, problems) = Catalogue::shipped().with_own(&[own("ladders/a.ron", "(")]);
    assert_eq!(now.ladder("first-dip").unwrap().title, "First dip");
    let broken: BTreeSet<&str> = problems
        .iter()
        .map(|problem| problem.place.file.as_str())
        .collect();
    let kept = now.clone().keeping_last_good(&last, &broken);
    assert_eq!(kept.ladder("first-dip").unwrap().title, "Ring dips");
    let (deleted, _) = Catalogue::shipped().with_own(&[]);
    let after = deleted.keeping_last_good(&kept, &BTreeSet::new());
    assert_eq!(after.ladder("first-dip").unwrap().title, "First dip");
}

#[test]
fn a_file_too_long_to_be_a_ladder_is_not_read() {
    let text = format!("(id: \"{}\")", "a".repeat(LONGEST_FILE));
    let (ladder, problems) = Catalogue::shipped().read_ladder("long.ron", &text);
    assert!(ladder.is_none());
    assert_eq!(
        told(&problems),
        "long.ron:1:1: the file is longer than 8 MiB\n  mend: split it: a ladder needs a few kB\n"
    );
}

#[test]
fn bytes_that_are_no_text_are_told_with_their_place() {
    // 0xFF never occurs in UTF-8: RFC 3629, section 1.
    let problem = text_of("a.ron", b"(id: \"a\",\n \xc3\xa9\xff").unwrap_err();
    assert_eq!(
        problem.to_string(),
        "a.ron:2:3: from here on the file is not text in UTF-8\n  mend: save it again as UTF-8"
    );
    assert_eq!(text_of("a.ron", "(é)".as_bytes()).unwrap(), "(é)");
}

#[test]
fn more_than_a_hundred_mistakes_are_not_told() {
    let rung = r#"(id: "a b", title: "", movement: "x", work: (sets: 0, range: Reps(0, 0))),"#;
    let text = format!(
        r#"(id: "many", title: "Many", goal: "None.", sides: Together, rungs: [{}])"#,
        rung.repeat(900)
    );
    let (ladder, problems) = Catalogue::shipped().read_ladder("many.ron", &text);
    assert!(ladder.is_none());
    assert_eq!(problems.len(), 100);
    assert!(problems.iter().all(|problem| problem.severity == Severity::Error));
}

#[test]
fn more_rungs_than_a_screen_shows_are_a_warning_and_a_thousand_an_error() {
    let ladder = |count: usize| {
        let rungs: String = (0..count)
            .map(|at| format!(r#"(id: "rung-{at}", title: "Rung", movement: "dip", work: (sets: 3, range: Reps(3, 5))),"#))
            .collect();
        let text = format!(
            r#"(id: "long", title: "Long", goal: "Far.", sides: Together, sources: ["from memory"], rungs: [{rungs}])"#
        );
        let (ladder, problems) = Catalogue::shipped().read_ladder("long.ron", &text);
        (ladder.is_some(), problems.len())
    };
    assert_eq!(ladder(40), (true, 0));
    assert_eq!(ladder(41), (true, 1));
    assert_eq!(ladder(1001), (false, 1));
}

/// What holds for every text: it is survived, an error keeps the ladder out, and every problem lies within the file.
fn survives(text: &str) {
    let (ladder, ladder_problems) = Catalogue::shipped().read_ladder("any.ron", text);
    let error = ladder_problems
        .iter()
        .any(|problem| problem.severity == Severity::Error);
    assert_eq!(ladder.is_some(), !error, "{text}\n{}", told(&ladder_problems));
    if let Some(ladder) = &ladder {
        holds(ladder);
    }
    let (_, movement_problems) = Catalogue::read_movements("any.ron", text);
    let lines = text.split('\n').count();
    for problem in ladder_problems.iter().chain(&movement_problems) {
        let line = text.split('\n').nth(problem.place.line - 1).unwrap_or_default();
        assert!(problem.place.line <= lines, "{problem}");
        assert!(problem.place.column <= line.chars().count() + 1, "{problem}");
        assert!(!problem.what.is_empty() && !problem.mend.is_empty(), "{problem}");
    }
}

/// What the rules may rely on in every ladder of a catalogue.
fn holds(ladder: &Ladder) {
    assert!(ladder.main_line().next().is_some());
    for rung in &ladder.rungs {
        assert!(rung.work.sets >= rung.standard.sets && rung.standard.sets >= 1);
        assert!(rung.standard.reach <= rung.work.range.hi() && rung.standard.reach > 0.0);
        assert!(Catalogue::shipped().movement(&rung.movement).is_some());
        if let Way::Branch { from, to } = &rung.way {
            assert!(ladder.main_index(from) < ladder.main_index(to));
        }
    }
}

#[test]
fn text_made_to_tire_the_reader_is_survived() {
    // Shapes that cost readers the square of their length when they look at all of a file for each mistake.
    let long = |piece: &str| piece.repeat(100_000 / piece.len());
    for text in [
        format!("[{}]", long("(),")),
        format!("[{}]", long("\"\",")),
        format!("[{}]", long("(((()))),")),
        format!("[{}]", long("Some(Some(1)),")),
        format!("(id: \"{}\", rungs: [])", long("a")),
        format!("(id: \"a\", rungs: [{}])", long("(id: \"A\"),")),
        format!("({})", long("id: 1,")),
        long("/*"),
        long("'"),
        long("r#\""),
        long(")"),
    ] {
        survives(&text);
    }
}

fn any_shipped_text() -> impl Strategy<Value = String> {
    proptest::sample::select(shipped_files()).prop_map(|name| shipped_text(&name))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_text_is_survived(text in "\\PC*") {
        survives(&text);
    }

    #[test]
    fn any_text_of_ron_s_own_signs_is_survived(
        text in r##"([\[\](){},:"'/*#\\\n]|r#"|id|rungs|Some|3|-1\.5|é| ){0,60}"##
    ) {
        survives(&text);
    }

    #[test]
    fn a_shipped_file_with_a_piece_cut_out_is_survived(
        text in any_shipped_text(), from in any::<prop::sample::Index>(), length in 0usize..40
    ) {
        let letters: Vec<char> = text.chars().collect();
        let from = from.index(letters.len());
        let cut: String = letters.iter().take(from).chain(letters.iter().skip(from + length)).collect();
        survives(&cut);
    }

    #[test]
    fn a_shipped_file_with_a_word_put_in_is_survived(
        text in any_shipped_text(), at in any::<prop::sample::Index>(),
        word in proptest::sample::select(vec!["(", "]", "\"", ",", "/*", "NaN", "-1", "99999999999", "é", "None", "id: \"a\",", "\u{0}", "'"])
    ) {
        let letters: Vec<char> = text.chars().collect();
        let at = at.index(letters.len());
        let put: String = letters.iter().take(at).copied().chain(word.chars()).chain(letters.iter().skip(at).copied()).collect();
        survives(&put);
    }

    #[test]
    fn a_shipped_ladder_with_other_numbers_is_out_or_reads_back_the_same(
        text in any_shipped_text(), sets in 0u16..60, lo in 0u16..40, hi in 0u16..40, ratio in 0.0..6.0f64, days in 0u8..4
    ) {
        let text = text
            .replace("sets: 3", &format!("sets: {sets}"))
            .replace("(5, 8)", &format!("({lo}, {hi})"))
            .replace("ratio: 1.0", &format!("ratio: {ratio}, days: {days}"));
        let shipped = Catalogue::shipped();
        survives(&text);
        if let (Some(ladder), _) = shipped.read_ladder("any.ron", &text) {
            let (back, _) = shipped.read_ladder("any.ron", &shipped.ladder_text(&ladder));
            prop_assert_eq!(back, Some(ladder));
        }
    }

    #[test]
    fn the_order_of_own_files_makes_no_difference(order in Just(vec![0usize, 1, 2, 3]).prop_shuffle()) {
        let files = [
            own("ladders/a.ron", two_rungs("ring-dips")),
            own("ladders/b.ron", two_rungs("ring-dips")),
            own("ladders/c.ron", two_rungs("first-dip")),
            own("ladders/d.ron", "(id: "),
        ];
        let shuffled: Vec<OwnFile> = order.iter().map(|at| files[*at].clone()).collect();
        let (straight, straight_problems) = Catalogue::shipped().with_own(&files);
        let (mixed, mixed_problems) = Catalogue::shipped().with_own(&shuffled);
        prop_assert_eq!(straight.ladders().collect::<Vec<_>>(), mixed.ladders().collect::<Vec<_>>());
        prop_assert_eq!(told(&straight_problems), told(&mixed_problems));
    }
}
