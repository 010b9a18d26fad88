//! Every place as a picture: light, dark, small, magnified, empty, in error.

use egui_kittest::kittest::Queryable;
use egui_kittest::{Harness, SnapshotResults};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Banner, LaddersView, Place, RosterView};
use rungwright::units::Rail;

use crate::fake_book::FakeBook;
use crate::kit::{DESK, SMALL, open};
use crate::{sample_ladders, sample_next};

pub type Opened = Harness<'static, Window<FakeBook>>;

/// The window on `book`, at `place`.
pub fn window(book: FakeBook, place: Place, size: [f32; 2], choice: Choice) -> Opened {
    let remembered = Remembered {
        place,
        theme: choice,
        less_motion: true,
        ..Remembered::default()
    };
    open(size, choice, Window::new(book, remembered), |ui, window| {
        window.logic(ui.ctx());
        window.ui(ui);
    })
}

fn shoot(shots: &mut SnapshotResults, name: &str, mut harness: Opened) {
    harness.run();
    harness.snapshot(name);
    shots.extend_harness(&mut harness);
}

/// A picture at the desk in both themes and on a small screen.
fn at_all_sizes(name: &str, place: Place, book: impl Fn() -> FakeBook) {
    let mut shots = SnapshotResults::new();
    shoot(
        &mut shots,
        &format!("{name}-light"),
        window(book(), place, DESK, Choice::Light),
    );
    shoot(
        &mut shots,
        &format!("{name}-dark"),
        window(book(), place, DESK, Choice::Dark),
    );
    shoot(
        &mut shots,
        &format!("{name}-1024"),
        window(book(), place, SMALL, Choice::Light),
    );
    // 200 % on the small screen leaves half its points.
    shoot(
        &mut shots,
        &format!("{name}-200"),
        window(book(), place, [720.0, 450.0], Choice::Light),
    );
}

#[test]
fn next_with_both_hands_and_a_belt() {
    at_all_sizes("next", Place::Next, FakeBook::open);
}

#[test]
fn next_on_a_laptop_while_rest_runs() {
    let mut shots = SnapshotResults::new();
    let mut harness = window(FakeBook::open(), Place::Next, [1280.0, 800.0], Choice::Light);
    harness.run();
    harness.key_press(egui::Key::Enter);
    harness.run_steps(8);
    harness.snapshot("next-1280");
    shots.extend_harness(&mut harness);
}

#[test]
fn a_new_best_stands_whole_under_its_set() {
    let mut book = FakeBook::open();
    let words = "New best: system load, added, ratio and size-adjusted, before 118.5 kg";
    book.next.logged[0].best = Some(words.into());
    let mut shots = SnapshotResults::new();
    let mut harness = window(book, Place::Next, DESK, Choice::Dark);
    harness.run();
    harness.snapshot("next-new-best");
    assert!(harness.query_all_by_label(words).count() >= 1);
    shots.extend_harness(&mut harness);
}

#[test]
fn next_when_a_hand_pauses_or_the_scale_comes_first() {
    let mut shots = SnapshotResults::new();
    let with = |next| FakeBook {
        next,
        ..FakeBook::open()
    };
    shoot(
        &mut shots,
        "next-pause",
        window(with(sample_next::pause()), Place::Next, DESK, Choice::Light),
    );
    shoot(
        &mut shots,
        "next-weigh-in-first",
        window(
            with(sample_next::weigh_in_first()),
            Place::Next,
            DESK,
            Choice::Light,
        ),
    );
    shoot(
        &mut shots,
        "next-hold",
        window(with(sample_next::hold()), Place::Next, DESK, Choice::Dark),
    );
    shoot(
        &mut shots,
        "next-empty",
        window(with(sample_next::empty()), Place::Next, SMALL, Choice::Light),
    );
}

#[test]
fn ladders_with_the_sheet_of_a_rung() {
    at_all_sizes("ladders", Place::Ladders, FakeBook::open);
}

#[test]
fn ladders_at_another_bodyweight() {
    let mut shots = SnapshotResults::new();
    let mut book = FakeBook::open();
    if let Some(asked) = book
        .ladders
        .open
        .as_mut()
        .and_then(|ladder| ladder.what_if.as_mut())
    {
        asked.asked_kg = Some(70.6);
        // One exponent for both hands: (70.6 ÷ 74.6)^(0.35 − 1) = 1.036.
        asked.ghosts = vec![(Rail::Left, (0.85, 0.93)), (Rail::Right, (0.90, 0.97))];
        asked.words = "At 70.6 kg each hand would stand at 1.04 of where it stands, by one exponent for both (0.35). It shows what went together, not what a cut does.".into();
    }
    shoot(
        &mut shots,
        "ladders-what-if",
        window(book, Place::Ladders, DESK, Choice::Light),
    );
}

#[test]
fn ladders_long_empty_and_without_demand() {
    let mut shots = SnapshotResults::new();
    let with = |open| FakeBook {
        ladders: LaddersView {
            open,
            ..FakeBook::open().ladders
        },
        ..FakeBook::open()
    };
    shoot(
        &mut shots,
        "ladders-40",
        window(
            with(Some(sample_ladders::long(40))),
            Place::Ladders,
            DESK,
            Choice::Light,
        ),
    );
    shoot(
        &mut shots,
        "ladders-empty",
        window(with(None), Place::Ladders, SMALL, Choice::Light),
    );
    let mut broken = sample_ladders::without_demand();
    broken.broken = Some("one-arm-pull-up.ron:12:9: demand falls along the main line.".into());
    shoot(
        &mut shots,
        "ladders-broken",
        window(with(Some(broken)), Place::Ladders, DESK, Choice::Dark),
    );
}

#[test]
fn the_roster_sorted_by_need() {
    at_all_sizes("roster", Place::Roster, FakeBook::open);
}

#[test]
fn a_roster_without_athletes_and_bars_of_trouble() {
    let mut shots = SnapshotResults::new();
    let book = FakeBook {
        roster: RosterView::default(),
        ..FakeBook::open()
    };
    shoot(
        &mut shots,
        "roster-empty",
        window(book, Place::Roster, SMALL, Choice::Light),
    );
    let read_only = Banner::ReadOnly("Open in another window. You can look, not write.".into());
    let book = FakeBook {
        banner: Some(read_only),
        ..FakeBook::open()
    };
    shoot(
        &mut shots,
        "next-read-only",
        window(book, Place::Next, SMALL, Choice::Dark),
    );
    let broken = Banner::Broken {
        what: "A line can’t be read".into(),
        place: "journal-mill.ron:214:31".into(),
        mend: "Give a reserve of 0 to 10. Everything else is loaded.".into(),
    };
    let book = FakeBook {
        banner: Some(broken),
        ..FakeBook::open()
    };
    shoot(
        &mut shots,
        "next-error",
        window(book, Place::Next, SMALL, Choice::Light),
    );
}

#[test]
fn first_start() {
    at_all_sizes("first", Place::Roster, FakeBook::closed);
}

#[test]
fn a_logbook_is_started_with_a_name() {
    let mut shots = SnapshotResults::new();
    let mut harness = window(FakeBook::closed(), Place::Roster, SMALL, Choice::Light);
    harness.run();
    harness.key_press(egui::Key::N);
    shoot(&mut shots, "first-start", harness);
}

#[test]
fn at_the_bar_for_reps_and_for_a_hold() {
    let mut shots = SnapshotResults::new();
    let mut harness = window(FakeBook::open(), Place::Next, DESK, Choice::Light);
    harness.run();
    harness.key_press(egui::Key::F11);
    shoot(&mut shots, "bar-light", harness);
    let book = FakeBook {
        next: sample_next::hold(),
        ..FakeBook::open()
    };
    let mut harness = window(book, Place::Next, SMALL, Choice::Dark);
    harness.run();
    harness.key_press(egui::Key::F11);
    shoot(&mut shots, "bar-hold-dark", harness);
}

#[test]
fn sheets_over_a_place() {
    let mut shots = SnapshotResults::new();
    for (name, keys) in [
        ("sheet-pain", vec![egui::Key::P]),
        ("sheet-weigh-in", vec![egui::Key::K]),
        ("sheet-why", vec![egui::Key::W]),
        ("sheet-keys", vec![egui::Key::F1]),
    ] {
        let mut harness = window(FakeBook::open(), Place::Next, SMALL, Choice::Light);
        harness.run();
        for key in keys {
            harness.key_press(key);
            harness.run();
        }
        shoot(&mut shots, name, harness);
    }
}

#[test]
fn settings_of_the_window() {
    at_all_sizes("settings", Place::Settings, FakeBook::open);
}

#[test]
fn a_spreadsheet_with_a_bad_row_and_a_column_left_out() {
    let mut shots = SnapshotResults::new();
    for (name, size, choice) in [
        ("import-light", DESK, Choice::Light),
        ("import-1024", SMALL, Choice::Dark),
    ] {
        let mut harness = window(FakeBook::closed(), Place::Roster, size, choice);
        harness.run();
        harness.key_press(egui::Key::I);
        harness.run();
        let rows = egui::accesskit::Role::MultilineTextInput;
        harness.get_by_role(rows).focus();
        harness.run();
        harness
            .get_by_role(rows)
            .type_text("who,when,mood\nAna,2025-10-01,ok\nAna,1.10.25,ok\n");
        harness.run();
        harness.get_by_label_contains("1.10.25 is no date");
        shoot(&mut shots, name, harness);
    }
}

#[test]
fn a_logbook_is_opened_by_its_path() {
    let mut shots = SnapshotResults::new();
    let mut harness = window(FakeBook::closed(), Place::Roster, SMALL, Choice::Light);
    harness.run();
    harness.key_press(egui::Key::O);
    shoot(&mut shots, "first-open", harness);
}

#[test]
fn long_work_shows_how_far_it_is_and_can_be_stopped() {
    let mut shots = SnapshotResults::new();
    let book = FakeBook {
        working: Some(("Opening the logbook".into(), 250, 500)),
        ..FakeBook::closed()
    };
    let mut harness = window(book, Place::Roster, SMALL, Choice::Light);
    // A step of the harness is a quarter of a second: longer than nothing is shown for.
    harness.run_steps(3);
    harness.snapshot("opening-light");
    harness.get_by_label("Stop").click();
    harness.run_steps(3);
    assert_eq!(harness.state().book.working, None);
    shots.extend_harness(&mut harness);
}
