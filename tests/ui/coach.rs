//! The roster used as a coach uses it: by keyboard, before and after class; and how that looks.

use egui::{Key, Modifiers};
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::ui::book::Deed;
use rungwright::ui::gym::GymDeed;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::*;
use rungwright::units::Outcome;

use crate::fake_book::FakeBook;
use crate::kit::{DESK, SMALL};
use crate::sample_roster;
use crate::screens::{Opened, window};

fn roster() -> Opened {
    let mut harness = window(FakeBook::open(), Place::Roster, DESK, Choice::Light);
    harness.run();
    harness
}

fn press(harness: &mut Opened, keys: &[Key]) {
    for key in keys {
        harness.key_press(*key);
        harness.run_steps(3);
    }
}

fn type_into(harness: &mut Opened, text: &str) {
    harness.event(egui::Event::Text(text.into()));
    harness.run_steps(2);
}

pub fn gym_deeds(harness: &Opened) -> Vec<GymDeed> {
    let deeds = harness.state().book.deeds.iter();
    deeds
        .filter_map(|deed| match deed {
            Deed::Gym(deed) => Some(deed.clone()),
            _ => None,
        })
        .collect()
}

#[test]
fn two_marked_athletes_get_a_sheet_by_four_keys() {
    let mut harness = roster();
    press(&mut harness, &[Key::X, Key::X, Key::S, Key::Enter]);
    let deeds = gym_deeds(&harness);
    let GymDeed::Print { paper, athletes, to } = &deeds[0] else {
        panic!("{deeds:?}")
    };
    assert_eq!(*paper, Paper::Pages);
    assert_eq!(athletes, &["ximena quispe", "duncan aird"]);
    assert_eq!(to.to_str(), Some("/home/coach/sheet-2026-11-26.pdf"));
}

#[test]
fn one_need_is_shown_by_a_digit_and_marked_at_once() {
    let mut harness = roster();
    press(&mut harness, &[Key::Num3]);
    harness.key_press_modifiers(Modifiers::SHIFT, Key::X);
    harness.run_steps(3);
    press(&mut harness, &[Key::S, Key::Enter]);
    let deeds = gym_deeds(&harness);
    let GymDeed::Print { athletes, .. } = &deeds[0] else {
        panic!("{deeds:?}")
    };
    assert_eq!(athletes, &["dele akintola", "zsófia keleti"], "those who step up");
}

#[test]
fn the_filter_finds_by_name_ladder_and_need() {
    for (typed, found) in [
        ("eirik", "Eirik Tveitan"),
        ("front", "Duncan Aird"),
        ("begin", "Wen Jiahui"),
    ] {
        let mut harness = roster();
        press(&mut harness, &[Key::Slash]);
        type_into(&mut harness, typed);
        assert!(
            harness.query_by_label_contains(&format!("{found}: ")).is_some(),
            "{typed}"
        );
        assert!(
            harness.query_by_label_contains("Ingrid Sætre: ").is_none(),
            "{typed}"
        );
        press(&mut harness, &[Key::Escape, Key::Escape]);
        assert!(
            harness.query_by_label_contains("Ingrid Sætre: ").is_some(),
            "Esc shows everyone again"
        );
    }
}

/// The table of results open for two marked athletes.
fn typing() -> Opened {
    let mut harness = roster();
    press(&mut harness, &[Key::X, Key::X, Key::T]);
    harness.run_steps(4);
    harness
}

#[test]
fn enter_takes_what_the_sheet_asked_and_all_is_saved_at_once() {
    let mut harness = typing();
    assert!(matches!(&gym_deeds(&harness)[..], [GymDeed::ShowClass(who)] if who.len() == 2));
    press(&mut harness, &[Key::Enter]);
    type_into(&mut harness, "4 m");
    press(&mut harness, &[Key::Enter, Key::Enter, Key::Enter, Key::Enter]);
    harness.get_by_label("Save 5 sets");
    press(&mut harness, &[Key::Enter]);
    let deeds = gym_deeds(&harness);
    let Some(GymDeed::LogClass(results)) = deeds.last() else {
        panic!("{deeds:?}")
    };
    let sets: Vec<(f64, Option<f64>, Outcome)> = results
        .iter()
        .flat_map(|result| &result.sets)
        .map(|set| (set.amount, set.reserve, set.outcome))
        .collect();
    let asked = (5.0, Some(1.0), Outcome::Done);
    let hold = (10.0, None, Outcome::Done);
    assert_eq!(sets, [asked, (4.0, None, Outcome::Missed), asked, hold, hold]);
    harness.get_by_label_contains("Ximena Quispe: ");
}

#[test]
fn every_set_of_a_long_row_has_its_cell_on_a_small_screen() {
    let mut book = FakeBook::open();
    book.class.athletes[0].rows[0].sets = 12;
    let mut harness = window(book, Place::Roster, SMALL, Choice::Dark);
    harness.run();
    press(&mut harness, &[Key::X, Key::X, Key::T]);
    harness.run_steps(4);
    let at: Vec<egui::Rect> = (1..=12)
        .map(|set| {
            harness
                .get_by_label(&format!("Ximena Quispe, Two fingers help L: set {set}"))
                .rect()
        })
        .collect();
    for (nth, rect) in at.iter().enumerate() {
        assert!(
            rect.right() <= SMALL[0] && rect.width() >= 40.0,
            "set {}: {rect}",
            nth + 1
        );
        assert!(
            at[..nth].iter().all(|other| !other.intersects(*rect)),
            "set {}: {rect}",
            nth + 1
        );
    }
    press(&mut harness, &[Key::Enter; 12]);
    harness.get_by_label("Save 12 sets");
    let mut shots = SnapshotResults::new();
    harness.snapshot("results-long-dark");
    shots.extend_harness(&mut harness);
}

#[test]
fn a_slip_is_said_and_nothing_is_saved_until_it_is_mended() {
    let mut harness = typing();
    type_into(&mut harness, "many");
    harness.key_press_modifiers(Modifiers::CTRL, Key::Enter);
    harness.run_steps(3);
    assert_eq!(gym_deeds(&harness).len(), 1, "only the class was asked for");
    harness.get_by_label_contains("\"many\": write reps like 5");
}

/// What was last kept of typed results, and whether the table closed with it.
fn last_kept(harness: &Opened) -> (Vec<String>, bool) {
    let deeds = gym_deeds(harness);
    let Some(GymDeed::KeepTyped { typed, leaves }) = deeds.last() else {
        panic!("{deeds:?}")
    };
    (
        typed.cells.iter().map(|cell| cell.text.clone()).collect(),
        *leaves,
    )
}

#[test]
fn typed_results_are_kept_with_each_cell_that_is_left_and_when_the_table_is_left() {
    let mut harness = typing();
    type_into(&mut harness, "4 m");
    press(&mut harness, &[Key::Enter]);
    assert_eq!(last_kept(&harness), (vec!["4 m".to_owned()], false));
    type_into(&mut harness, "6");
    press(&mut harness, &[Key::Escape]);
    assert_eq!(
        last_kept(&harness),
        (vec!["4 m".to_owned(), "6".to_owned()], true)
    );
    harness.get_by_label_contains("Ximena Quispe: ");
}

#[test]
fn a_window_that_is_closed_keeps_the_cell_being_typed_too() {
    let mut harness = typing();
    type_into(&mut harness, "5");
    let viewport = harness.input_mut().viewports.entry(egui::ViewportId::ROOT);
    viewport.or_default().events.push(egui::ViewportEvent::Close);
    harness.run_steps(1);
    assert_eq!(last_kept(&harness), (vec!["5".to_owned()], false));
}

#[test]
fn typed_results_are_thrown_away_by_two_presses_only() {
    let mut harness = typing();
    type_into(&mut harness, "5");
    press(&mut harness, &[Key::Enter]);
    harness.get_by_label("Throw away").click();
    harness.run_steps(3);
    assert_eq!(last_kept(&harness).0, ["5"]);
    harness.get_by_label("Throw all away?").click();
    harness.run_steps(3);
    assert_eq!(last_kept(&harness).0, [""; 0]);
    harness.get_by_label("Save 0 sets");
}

#[test]
fn a_new_athlete_is_a_name_a_ladder_and_a_weight() {
    let mut harness = roster();
    press(&mut harness, &[Key::A]);
    type_into(&mut harness, "Noor Haddad");
    press(&mut harness, &[Key::Tab]);
    type_into(&mut harness, "front");
    press(&mut harness, &[Key::Tab]);
    type_into(&mut harness, "61.5");
    press(&mut harness, &[Key::Enter]);
    let new = GymDeed::NewAthlete {
        name: "Noor Haddad".into(),
        ladder: Some("front-lever".into()),
        bodyweight: Some(61.5),
    };
    assert_eq!(gym_deeds(&harness), [new]);
}

#[test]
fn a_rename_and_a_note_are_written_for_the_chosen_athlete() {
    let mut harness = roster();
    press(&mut harness, &[Key::E]);
    type_into(&mut harness, "Ximena Flores");
    press(&mut harness, &[Key::Enter, Key::N]);
    type_into(&mut harness, "asks about her elbow");
    press(&mut harness, &[Key::Enter]);
    let athlete = String::from("ximena quispe");
    let asked = [
        GymDeed::Rename {
            athlete: athlete.clone(),
            name: "Ximena Flores".into(),
        },
        GymDeed::Note {
            athlete,
            text: "asks about her elbow".into(),
        },
    ];
    assert_eq!(gym_deeds(&harness), asked);
}

#[test]
fn of_five_hundred_athletes_only_the_visible_rows_are_laid_out() {
    let view = sample_roster::crowd(500);
    let book = FakeBook {
        roster: view,
        ..FakeBook::open()
    };
    let mut harness = window(book, Place::Roster, DESK, Choice::Light);
    harness.run();
    let rows = |harness: &Opened| harness.query_all_by_label_contains("Athlete ").count();
    assert!((20..45).contains(&rows(&harness)), "{} rows", rows(&harness));
    harness.get_by_label("Going on, 71");
    press(&mut harness, &[Key::PageDown, Key::PageDown, Key::G]);
    assert!(
        (20..45).contains(&rows(&harness)),
        "{} rows after scrolling",
        rows(&harness)
    );
}

#[test]
fn the_coachs_evening_in_pictures() {
    let mut shots = SnapshotResults::new();
    let mut shoot = |name: &str, mut harness: Opened| {
        harness.run_steps(4);
        harness.snapshot(name);
        shots.extend_harness(&mut harness);
    };
    let mut marked = window(FakeBook::open(), Place::Roster, DESK, Choice::Dark);
    press(&mut marked, &[Key::G, Key::G, Key::X, Key::X]);
    shoot("roster-marked", marked);
    let mut filtered = roster();
    press(&mut filtered, &[Key::Num7]);
    shoot("roster-filtered", filtered);
    let mut nobody = window(FakeBook::open(), Place::Roster, SMALL, Choice::Light);
    nobody.run();
    press(&mut nobody, &[Key::Slash]);
    type_into(&mut nobody, "zzz");
    shoot("roster-nobody", nobody);
    let mut sheet = roster();
    press(&mut sheet, &[Key::X, Key::X, Key::S]);
    shoot("roster-sheet", sheet);
    let mut new = window(FakeBook::open(), Place::Roster, SMALL, Choice::Dark);
    new.run();
    press(&mut new, &[Key::A]);
    type_into(&mut new, "Noor Haddad");
    shoot("roster-new", new);
    let mut grid = typing();
    press(&mut grid, &[Key::Enter]);
    type_into(&mut grid, "4 m");
    shoot("results-light", grid);
    let mut slip = window(FakeBook::open(), Place::Roster, SMALL, Choice::Dark);
    slip.run();
    press(&mut slip, &[Key::X, Key::T]);
    type_into(&mut slip, "many");
    slip.key_press_modifiers(Modifiers::CTRL, Key::Enter);
    shoot("results-slip-dark", slip);
}
