//! Reading movements and ladders: what is shipped is sound, names fold, what can't be a ladder is told.

use std::collections::BTreeSet;

use rungwright::catalogue::{Catalogue, LONGEST_FILE, text_of};
use rungwright::problem::Severity;

use crate::{shipped_files, shipped_text, told, two_rungs};

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
    // The program's texts are full words, not the signs of a coach's notebook.
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
    // Common practice, no source.
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
