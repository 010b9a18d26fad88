//! The window used as a lifter uses it: by keyboard, read by role and label.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use rungwright::ui::book::Deed;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Banner, Place, SetDraft};
use rungwright::units::{Outcome, Rail};

use crate::fake_book::FakeBook;
use crate::kit::DESK;
use crate::sample_next;
use crate::screens::{Opened, window};

fn next() -> Opened {
    let mut harness = window(FakeBook::open(), Place::Next, DESK, Choice::Light);
    harness.run();
    harness
}

fn press(harness: &mut Opened, keys: &[Key]) {
    for key in keys {
        harness.key_press(*key);
        harness.run_steps(2);
    }
}

fn sets(harness: &Opened) -> Vec<SetDraft> {
    let deeds = &harness.state().book.deeds;
    deeds
        .iter()
        .filter_map(|deed| {
            if let Deed::Log(set) = deed {
                Some(set.clone())
            } else {
                None
            }
        })
        .collect()
}

#[test]
fn enter_logs_what_the_main_button_says() {
    let mut harness = next();
    harness.get_by_label("Log left set 2: 2 reps, 1 in reserve");
    press(&mut harness, &[Key::Enter]);
    let logged = sets(&harness);
    assert_eq!(logged.len(), 1);
    assert_eq!(
        (logged[0].rail, logged[0].amount, logged[0].reserve),
        (Rail::Left, 2.0, Some(1.0))
    );
    harness.get_by_label("Log right set 2: 2 reps, 1 in reserve");
}

#[test]
fn three_sets_on_two_sides_with_the_keyboard_only_and_one_undone() {
    let mut harness = next();
    press(&mut harness, &[Key::Num3, Key::Enter, Key::Enter, Key::L]);
    harness.key_press_modifiers(Modifiers::SHIFT, Key::Num0);
    harness.run_steps(2);
    press(&mut harness, &[Key::M, Key::Enter]);
    let logged = sets(&harness);
    assert_eq!(
        logged.iter().map(|set| set.rail).collect::<Vec<_>>(),
        [Rail::Left, Rail::Right, Rail::Left]
    );
    assert_eq!(
        (logged[0].amount, logged[2].outcome, logged[2].reserve),
        (3.0, Outcome::Missed, Some(0.0))
    );
    harness.key_press_modifiers(Modifiers::CTRL, Key::Z);
    harness.run_steps(2);
    assert_eq!(harness.state().book.deeds.last(), Some(&Deed::Undo));
}

#[test]
fn a_weigh_in_is_typed_and_entered() {
    let mut harness = next();
    press(&mut harness, &[Key::K]);
    let field = harness.get_by_label_contains("What the scale shows");
    let _ = field;
    harness
        .get_by_role_and_label(egui::accesskit::Role::TextInput, "What the scale shows, kg")
        .type_text("74,2");
    harness.run_steps(2);
    press(&mut harness, &[Key::Enter]);
    assert_eq!(harness.state().book.deeds, [Deed::WeighIn(74.2)]);
}

#[test]
fn letters_in_a_text_field_are_no_keys() {
    let mut harness = next();
    press(&mut harness, &[Key::N]);
    harness
        .get_by_role(egui::accesskit::Role::MultilineTextInput)
        .type_text("M missed the bus");
    press(&mut harness, &[Key::M]);
    assert_eq!(harness.state().next_state().outcome, Outcome::Done);
}

#[test]
fn a_hold_from_the_bar_counts_in_and_logs_the_seconds() {
    let book = FakeBook {
        next: sample_next::hold(),
        ..FakeBook::open()
    };
    let mut harness = window(book, Place::Next, DESK, Choice::Light);
    harness.run();
    press(&mut harness, &[Key::F11, Key::Space]);
    // A step of the harness is a quarter of a second: 3 s of count-in and 8 s of holding.
    harness.run_steps(44);
    press(&mut harness, &[Key::Space]);
    let logged = sets(&harness);
    assert_eq!(logged.len(), 1, "{:?}", harness.state().book.deeds);
    assert!(
        logged[0].is_hold && (7.0..=9.0).contains(&logged[0].amount),
        "{}",
        logged[0].amount
    );
    press(&mut harness, &[Key::Escape]);
    harness.get_by_label_contains("Advanced tuck 4 × 5–15 s");
}

#[test]
fn a_second_touch_within_a_second_logs_nothing_twice() {
    let mut harness = next();
    press(&mut harness, &[Key::F11]);
    harness.key_press(Key::G);
    harness.step();
    harness.key_press(Key::G);
    harness.step();
    assert_eq!(sets(&harness).len(), 1);
}

#[test]
fn places_athletes_and_rungs_by_keyboard() {
    let mut harness = next();
    harness.key_press_modifiers(Modifiers::ALT, Key::Num3);
    harness.run_steps(2);
    assert_eq!(harness.state().place(), Place::Ladders);
    harness.get_by_label("Rung 3 of 6");
    press(&mut harness, &[Key::ArrowUp]);
    harness.get_by_label("Rung 4 of 6");
    press(&mut harness, &[Key::P]);
    harness
        .get_by_role_and_label(egui::accesskit::Role::Button, "Right hand")
        .click();
    harness.run_steps(2);
    let placed = Deed::Place {
        ladder: "one-arm-pull-up".into(),
        rail: Rail::Right,
        rung: "fingers-1".into(),
    };
    assert_eq!(harness.state().book.deeds.last(), Some(&placed));
    harness.key_press_modifiers(Modifiers::ALT, Key::Num4);
    harness.run_steps(2);
    assert_eq!(
        harness.state().place(),
        Place::Ladders,
        "Totals does not exist yet"
    );
}

#[test]
fn what_is_not_saved_says_so_and_keeps_what_was_typed() {
    let mut harness = next();
    harness.state_mut().book.fails = Some("The disk is full. Free some space, then log again.".into());
    press(&mut harness, &[Key::Num3, Key::Enter]);
    harness.get_by_label("The disk is full. Free some space, then log again.");
    harness.get_by_label("Log left set 2: 3 reps, 1 in reserve");
}

#[test]
fn an_athlete_is_chosen_from_the_roster() {
    let mut harness = window(FakeBook::open(), Place::Roster, DESK, Choice::Light);
    harness.run();
    press(&mut harness, &[Key::G, Key::ArrowDown, Key::Enter]);
    assert_eq!(
        harness.state().book.deeds,
        [Deed::ChooseAthlete("hana dvorská".into())]
    );
    assert_eq!(harness.state().place(), Place::Next);
}

#[test]
fn the_demo_opens_with_one_key() {
    let mut harness = window(FakeBook::closed(), Place::Roster, DESK, Choice::Light);
    harness.run();
    harness.get_by_label("Open the demo gym");
    press(&mut harness, &[Key::Enter]);
    assert_eq!(harness.state().book.deeds, [Deed::OpenDemo]);
}

#[test]
fn a_new_person_makes_a_logbook_without_the_mouse() {
    let mut harness = window(FakeBook::closed(), Place::Next, DESK, Choice::Light);
    harness.run();
    press(&mut harness, &[Key::N]);
    harness.event(egui::Event::Text("Ana".into()));
    harness.run_steps(2);
    // Enter goes on to kg, Tab past lb to the scale.
    press(&mut harness, &[Key::Enter, Key::Tab, Key::Tab]);
    harness.event(egui::Event::Text("62.5".into()));
    harness.run_steps(2);
    harness.key_press_modifiers(egui::Modifiers::CTRL, Key::Enter);
    harness.run_steps(3);
    let made = harness.state().book.deeds.iter().find_map(|deed| match deed {
        Deed::Start(logbook) => Some(logbook.clone()),
        _ => None,
    });
    let made = made.unwrap();
    assert_eq!((made.name.as_str(), made.bodyweight), ("Ana", Some(62.5)));
}

/// When the window wants its next frame at the latest.
fn next_frame(harness: &Opened) -> std::time::Duration {
    let output = &harness.output().viewport_output;
    output
        .values()
        .map(|viewport| viewport.repaint_delay)
        .min()
        .unwrap_or(std::time::Duration::MAX)
}

const HOUR: std::time::Duration = std::time::Duration::from_secs(3600);

#[test]
fn an_idle_window_asks_for_no_frame() {
    let mut harness = next();
    assert!(next_frame(&harness) > HOUR);
    press(&mut harness, &[Key::Space]);
    let second = std::time::Duration::from_secs(1);
    assert!(next_frame(&harness) <= second, "the clock runs");
}

#[test]
fn a_rest_clock_that_nobody_sees_asks_for_no_frame_and_runs_on() {
    let mut harness = next();
    press(&mut harness, &[Key::Space]);
    harness.key_press_modifiers(Modifiers::ALT, Key::Num3);
    harness.run_steps(4);
    assert_eq!(harness.state().place(), Place::Ladders);
    // The end of rest has a thread of its own.
    assert!(next_frame(&harness) > HOUR);
    harness.key_press_modifiers(Modifiers::ALT, Key::Num2);
    harness.run_steps(4);
    assert!(harness.state().next_state().rested().is_some());
    assert!(next_frame(&harness) < HOUR);
}

#[test]
fn a_window_that_only_looks_says_so_before_anything_is_typed() {
    let read_only = Banner::ReadOnly("Open in another window. You can look, not write.".into());
    let book = FakeBook {
        banner: Some(read_only),
        ..FakeBook::open()
    };
    let mut harness = window(book, Place::Next, DESK, Choice::Light);
    harness.run();
    for (key, title) in [(Key::K, "Weigh in"), (Key::P, "Report pain")] {
        press(&mut harness, &[key]);
        harness.get_by_label(&format!("{title}: not in this window, which only looks."));
    }
    assert!(harness.query_by_role(egui::Role::TextInput).is_none());
    assert!(harness.state().book.deeds.is_empty());
}

#[test]
fn the_filter_is_typed_anew_over_what_stands_in_it() {
    let mut harness = window(FakeBook::open(), Place::Roster, DESK, Choice::Light);
    harness.run();
    for name in ["nobody", "hana"] {
        press(&mut harness, &[Key::Slash]);
        harness.event(egui::Event::Text(name.into()));
        harness.run_steps(2);
        press(&mut harness, &[Key::Enter]);
    }
    press(&mut harness, &[Key::Enter]);
    assert_eq!(
        harness.state().book.deeds,
        [Deed::ChooseAthlete("hana dvorská".into())]
    );
}

#[test]
fn a_hint_goes_when_a_sheet_opens_over_a_pointer_that_rests() {
    let mut harness = window(FakeBook::open(), Place::Totals, DESK, Choice::Light);
    harness.run();
    let place = harness.get_by_label("Copy CSV").rect().center();
    harness.hover_at(place);
    for _ in 0..60 {
        harness.step();
    }
    // What it says is the button's key.
    let hints = |harness: &Opened| harness.query_all_by_label("C").count();
    let before = hints(&harness);
    harness.key_press_modifiers(Modifiers::default(), Key::F1);
    for _ in 0..6 {
        harness.step();
    }
    assert_eq!((before, hints(&harness)), (1, 0));
}

#[test]
fn a_press_on_close_closes_a_sheet_as_esc_does() {
    for closing in [true, false] {
        let mut harness = next();
        press(&mut harness, &[Key::P]);
        harness.get_by_label("Close");
        if closing {
            harness.get_by_label("Close").click();
            harness.run_steps(3);
        } else {
            press(&mut harness, &[Key::Escape]);
        }
        assert!(harness.query_by_label("Close").is_none());
        assert!(harness.state().book.deeds.is_empty());
    }
}
