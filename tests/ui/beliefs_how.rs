//! Every number that rests on a belief says on focus how it came about and from which sets: by Tab alone, on each place.

use std::path::Path;

use chrono::{Days, NaiveDate};
use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable, by};
use rungwright::logbook::Fact;
use rungwright::logbook::record::{Load, Placed, Set};
use rungwright::ui::app::Window;
use rungwright::ui::book::Book;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::Place;
use rungwright::units::{Effort, Given, Outcome, Reps, Seconds, Side};

use crate::beliefs::{kg, pull_up, shelf_of, today, window_of, year};
use crate::kit::{DESK, SMALL};

fn set(movement: &str, side: Option<Side>, load: Option<f64>, effort: Effort, left: Option<f64>) -> Set {
    Set {
        movement: movement.into(),
        side,
        load: load.map(|added| Load::Added(kg(added))),
        effort,
        left: left.map(|left| Given::rir(left).unwrap()),
        outcome: if left.is_some() {
            Outcome::Done
        } else {
            Outcome::Missed
        },
        bodyweight: Some(kg(75.0)),
        ladder: None,
        rung: None,
        note: None,
    }
}

fn reps(count: u16) -> Effort {
    Effort::Reps(Reps::try_from(count).unwrap())
}

/// Strong on both arms; the left hand opens after four seconds, the right fails at the top and says so.
fn one_arm() -> Vec<(NaiveDate, Fact)> {
    let day = |ago: u64| today() - Days::new(ago);
    let ladder = "one-arm-pull-up";
    let place = Fact::Placement {
        ladder: ladder.into(),
        side: None,
        rung: Placed::On("fingers-3".into()),
        why: None,
    };
    let mut facts = vec![(day(200), place)];
    for ago in [80, 70, 60, 50, 40, 30, 20, 10] {
        for _ in 0..3 {
            let heavy = set("pull-up", None, Some(70.0), reps(3), Some(1.0));
            facts.push((day(ago), Fact::Set(heavy)));
        }
    }
    let hang = Effort::Hold(Seconds::try_from(4.0).unwrap());
    facts.push((
        day(5),
        Fact::Set(set("one-arm-hang", Some(Side::Left), None, hang, Some(0.0))),
    ));
    let failed = Set {
        ladder: Some(ladder.into()),
        rung: Some("fingers-3".into()),
        note: Some("stuck at the top".into()),
        ..set(ladder, Some(Side::Right), None, reps(2), None)
    };
    facts.push((day(5), Fact::Set(failed)));
    facts
}

type Opened = Harness<'static, Window<Shelf>>;

fn opened(home: &Path, facts: Vec<(NaiveDate, Fact)>, place: Place, size: [f32; 2]) -> Opened {
    let mut harness = window_of(shelf_of(home, facts), place, size, Choice::Light);
    harness.run_steps(3);
    harness
}

/// What is said of what has the focus.
fn focused(harness: &Opened) -> String {
    let node = harness.query_all(by().predicate(|node| node.is_focused())).last();
    node.and_then(|node| node.accesskit_node().label())
        .unwrap_or_default()
}

/// What is said of everything that Tab reaches, once around.
fn tabbed(harness: &mut Opened) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for _ in 0..60 {
        harness.key_press(Key::Tab);
        harness.run_steps(2);
        let label = focused(harness);
        if said.first() == Some(&label) {
            break;
        }
        said.push(label);
    }
    said
}

/// One of what Tab reached says all of this.
fn says(said: &[String], words: &[&str]) {
    let found = said
        .iter()
        .any(|label| words.iter().all(|word| label.contains(word)));
    assert!(found, "{words:?} in {said:#?}");
}

#[test]
fn the_chances_of_a_card_name_their_sets() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), year(), Place::Next, DESK);
    let said = tabbed(&mut harness);
    says(
        &said,
        &[
            "Estimated one-rep max",
            "80 %",
            " sets on ",
            "Lately: ",
            "no promise",
        ],
    );
}

#[test]
fn what_holds_a_hand_back_names_its_sets_on_next_and_in_a_small_window_too() {
    for size in [DESK, SMALL] {
        let home = tempfile::tempdir().unwrap();
        let mut harness = opened(home.path(), one_arm(), Place::Next, size);
        harness.get_by_label_contains("grip holds you back, and one-arm hang trains it");
        let said = tabbed(&mut harness);
        says(
            &said,
            &["held-back", "24 sets on 8 days", "The hang: ", "from 4 s on"],
        );
        if size == DESK {
            harness.get_by_label_contains("Your notes say that 1 missed set failed at the top");
            says(
                &said,
                &["held-back", "notes on missed sets of the last twelve weeks"],
            );
        }
    }
}

#[test]
fn on_ladders_tag_header_scale_chance_estimate_and_forecast_name_their_sets() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), year(), Place::Ladders, DESK);
    let said = tabbed(&mut harness);
    let stands = said
        .iter()
        .filter(|label| label.contains(" of the goal (80 %: ") && label.contains(" sets on "));
    assert_eq!(
        stands.count(),
        2,
        "the tag on the rails and the words of the header: {said:#?}"
    );
    says(&said, &["This rung asks ", "believed of both hands"]);
    says(
        &said,
        &["Each is the chance of that many in one fresh set", " sets on "],
    );
    says(&said, &["The sets: ", " sets on ", "8 of 10 such cases"]);
    says(&said, &["takes it that training goes on as now", " sets on "]);
}

#[test]
fn in_a_small_window_the_tag_still_says_where_its_number_comes_from() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), one_arm(), Place::Ladders, SMALL);
    let said = tabbed(&mut harness);
    says(
        &said,
        &["Right hand: ", " of the goal (80 %: ", "24 sets on 8 days"],
    );
    says(&said, &["The goal by pull alone", "training goes on as now"]);
}

#[test]
fn totals_name_the_sets_of_the_what_if_and_of_the_attempts() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), year(), Place::Totals, DESK);
    let said = tabbed(&mut harness);
    let from_sets = said
        .iter()
        .filter(|label| label.contains("Estimated one-rep max") && label.contains(" sets on "));
    assert_eq!(from_sets.count(), 2, "{said:#?}");
    says(&said, &["for one repetition in a fresh try"]);
}

#[test]
fn strength_over_time_opens_on_totals_its_sets_are_walked_and_a_slip_is_mended_there() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), year(), Place::Totals, DESK);
    harness.key_press(Key::T);
    harness.run_steps(3);
    harness.get_by_label_contains("looks like a typo, probability 0.9");
    for words in ["Grey, over two weeks without training: ", "Tinted: cut "] {
        assert!(harness.query_all_by_label_contains(words).count() > 0, "{words}");
    }
    let said = tabbed(&mut harness);
    says(
        &said,
        &[
            "Estimated one-rep max",
            " sets on ",
            "1 set looks like a typo; it counts for little",
        ],
    );
    says(&said, &["left and right arrow walk them"]);
    harness.key_press(Key::ArrowLeft);
    harness.run_steps(2);
    let newest = harness.state().book.totals().open.unwrap().strength.unwrap();
    let words = newest.sets.last().unwrap().words.clone();
    assert!(
        words.contains("+23.75 kg × 5, 1 in reserve; stands for "),
        "{words}"
    );
    assert!(harness.query_all_by_label(&words).count() > 0, "{words}");
    harness.key_press(Key::M);
    harness.run_steps(3);
    let mended = harness.state().book.totals().open.unwrap().strength.unwrap();
    assert_eq!(mended.suspects, []);
    harness.key_press(Key::Escape);
    harness.run_steps(3);
    assert!(harness.query_by_label("Strength over time").is_none());
}

#[test]
fn two_slips_alike_have_a_button_each_and_are_counted_on_the_button_that_shows_them() {
    let home = tempfile::tempdir().unwrap();
    let mut facts = year();
    facts.push((today() - Days::new(21), pull_up(22.5, 55, Outcome::Done, 78.5)));
    let mut harness = opened(home.path(), facts, Place::Ladders, DESK);
    harness.get_by_label_contains("Strength · 2 to check");
    harness.key_press(Key::T);
    harness.run_steps(3);
    let buttons = harness.query_all_by_label_contains("Make it +22.5 kg × 5");
    assert_eq!(buttons.count(), 2);
}

#[test]
fn a_slip_of_today_is_marked_where_it_is_listed() {
    let home = tempfile::tempdir().unwrap();
    let mut facts = year();
    facts.push((today(), pull_up(237.5, 5, Outcome::Done, 78.5)));
    let harness = opened(home.path(), facts, Place::Next, DESK);
    harness.get_by_label_contains("+237.5 kg 5 reps, RIR 1. Looks like a typo, probability 0.9");
}

#[test]
fn the_arrows_walk_the_sets_and_leave_the_focus_where_it_is() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = opened(home.path(), year(), Place::Totals, DESK);
    for key in [Key::T, Key::Tab, Key::ArrowLeft, Key::ArrowLeft] {
        harness.key_press(key);
        harness.run_steps(3);
    }
    assert!(
        focused(&harness).starts_with("Estimated one-rep max"),
        "{}",
        focused(&harness)
    );
    let sets = harness.state().book.totals().open.unwrap().strength.unwrap().sets;
    let last_but_one = &sets[sets.len() - 2].words;
    assert!(
        harness.query_all_by_label(last_but_one).count() > 0,
        "{last_but_one}"
    );
}
