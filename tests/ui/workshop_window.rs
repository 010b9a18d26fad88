//! The Workshop by keyboard, and its pictures.

use egui::{Key, Modifiers};
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::ui::book::{Book, Deed};
use rungwright::ui::screens::workshop::{WorkshopState, workshop_ui};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Place, WorkshopView};
use rungwright::ui::workshop::WorkshopDeed;

use crate::fake_book::FakeBook;
use crate::kit::{DESK, SMALL, open};
use crate::screens::window;
use crate::shelf::{OnShelf, started, window_at};
use crate::workshop::{craft, file, on_disk, type_in, typed, with_own};

fn bench(shelf: Shelf, size: [f32; 2], choice: Choice) -> OnShelf {
    window_at(Place::Workshop, shelf, size, choice)
}

fn press(harness: &mut OnShelf, key: Key) {
    harness.key_press(key);
    harness.run_steps(3);
}

fn ctrl(harness: &mut OnShelf, key: Key) {
    harness.key_press_modifiers(Modifiers::CTRL | Modifiers::COMMAND, key);
    harness.run_steps(3);
}

#[test]
fn by_keyboard_a_ladder_is_begun_broken_mended_and_saved() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = bench(started(home.path()), SMALL, Choice::Light);
    harness.run_steps(3);
    press(&mut harness, Key::N);
    harness
        .get_by_role_and_label(egui::accesskit::Role::TextInput, "Title")
        .type_text("Rope");
    harness.run_steps(2);
    press(&mut harness, Key::Enter);
    assert_eq!(file(&harness.state().book).file, "ladders/rope.ron");
    // Letters are keys until the text has them: N in the text is a letter.
    press(&mut harness, Key::Enter);
    ctrl(&mut harness, Key::End);
    harness.event(egui::Event::Text("N".into()));
    press(&mut harness, Key::N);
    let open = file(&harness.state().book);
    assert!(
        open.text.ends_with('N'),
        "{:?}",
        &open.text[open.text.len() - 20..]
    );
    assert_eq!(open.mistakes.len(), 1, "{:?}", open.mistakes);
    ctrl(&mut harness, Key::Z);
    assert_eq!(
        file(&harness.state().book).mistakes,
        [],
        "Ctrl+Z in the text takes back the letter"
    );
    ctrl(&mut harness, Key::S);
    assert!(on_disk(home.path(), "rope.ron").is_some());
    press(&mut harness, Key::Escape);
    press(&mut harness, Key::Z);
    harness.get_by_label("plus-tenth, lines 26 to 35");
}

#[test]
fn e_on_ladders_opens_the_shown_one_here() {
    let mut harness = window(FakeBook::open(), Place::Ladders, DESK, Choice::Light);
    harness.run();
    harness.key_press(Key::E);
    harness.run_steps(2);
    let opens = Deed::Workshop(WorkshopDeed::OpenLadder("one-arm-pull-up".into()));
    assert_eq!(harness.state().book.deeds, [opens]);
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config::with_cases(24))]
    #[test]
    fn whatever_is_typed_the_window_stands(
        cut in 0usize..1500,
        put in "[ -~\\n\"(){}\\[\\]/*,:äß→\u{feff}\u{202e}]{0,60}",
    ) {
        let home = tempfile::tempdir().unwrap();
        let mut shelf = started(home.path());
        craft(&mut shelf, WorkshopDeed::New("Any".into()));
        let text: String = file(&shelf).text;
        let at = cut.min(text.len());
        typed(&mut shelf, format!("{}{put}{}", &text[..at], &text[at..]));
        craft(&mut shelf, WorkshopDeed::Mend(0));
        let mut harness = bench(shelf, SMALL, Choice::Light);
        harness.run_steps(2);
        press(&mut harness, Key::F4);
        press(&mut harness, Key::F8);
        ctrl(&mut harness, Key::S);
        press(&mut harness, Key::Escape);
        press(&mut harness, Key::Z);
    }
}

/// An own ladder with a slip and a warning, typed and not saved; no athlete and no clock is in it.
fn sample() -> WorkshopView {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_own(home.path());
    craft(&mut shelf, WorkshopDeed::OpenLadder("one-arm-row".into()));
    craft(&mut shelf, WorkshopDeed::Copy);
    type_in(&mut shelf, |text| {
        let slip = text.replacen("movement: \"one-arm-row\"", "movement: \"one-arm-roww\"", 1);
        slip.replacen("reserve: 1", "reserv: 1", 1)
    });
    shelf.workshop()
}

fn shoot(
    shots: &mut SnapshotResults,
    name: &str,
    size: [f32; 2],
    choice: Choice,
    view: &WorkshopView,
    state: WorkshopState,
) {
    let mut state = state;
    state.load(view);
    let view = view.clone();
    let mut harness = open(size, choice, state, move |ui, state| {
        workshop_ui(ui, &view, state, &mut rungwright::ui::action::Actions::default());
    });
    harness.run();
    harness.snapshot(name);
    shots.extend_harness(&mut harness);
}

#[test]
fn pictures_of_the_workshop() {
    // What the frame's column leaves of 1024, of 1440 and of 1024 at 200 %.
    let (small, desk, double) = ([876.0, 700.0], [1272.0, 900.0], [460.0, 350.0]);
    let view = sample();
    let mut shots = SnapshotResults::new();
    let usual = WorkshopState::default;
    shoot(
        &mut shots,
        "workshop-1024-light",
        small,
        Choice::Light,
        &view,
        usual(),
    );
    shoot(
        &mut shots,
        "workshop-1024-dark",
        small,
        Choice::Dark,
        &view,
        usual(),
    );
    shoot(&mut shots, "workshop-light", desk, Choice::Light, &view, usual());
    shoot(&mut shots, "workshop-200", double, Choice::Light, &view, usual());
    let mut folded = usual();
    folded.load(&view);
    folded.folded = true;
    shoot(&mut shots, "workshop-folded", small, Choice::Light, &view, folded);
}
