//! Any text is survived, and a ladder that comes out of it is one that the rules may rely on.

use proptest::prelude::*;
use rungwright::catalogue::{Catalogue, Ladder, Way};
use rungwright::problem::Severity;

use crate::{shipped_files, shipped_text, told};

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
}
