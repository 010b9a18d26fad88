//! Totals: its pictures, and what keys, pointer and screen reader do on it.

use egui_kittest::kittest::Queryable;
use egui_kittest::{Harness, SnapshotResults};
use rungwright::ui::action::{Action, Actions};
use rungwright::ui::book::Deed;
use rungwright::ui::screens::totals::{TotalsState, png_of, totals_ui};
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Place, TotalsView};

use crate::fake_book::FakeBook;
use crate::kit::{DESK, SMALL, open};
use crate::sample_totals::dip;
use crate::screens::{Opened, window};

type Totals = Harness<'static, (TotalsView, TotalsState, Actions)>;

fn totals(view: TotalsView, size: [f32; 2], choice: Choice) -> Totals {
    let state = (view, TotalsState::default(), Actions::default());
    open(size, choice, state, move |ui, (view, state, actions)| {
        let bench = *rungwright::ui::theme::Theme::of(ui).bench;
        ui.painter().rect_filled(ui.max_rect(), 0.0, bench);
        let left = if size[0] < 800.0 { 52.0 } else { 160.0 };
        let place = ui.max_rect().with_min_x(left);
        let mut child = ui.new_child(egui::UiBuilder::new().max_rect(place));
        child.set_clip_rect(place);
        totals_ui(&mut child, view, state, actions);
    })
}

fn shoot_window(shots: &mut SnapshotResults, name: &str, harness: &mut Opened) {
    harness.snapshot(name);
    shots.extend_harness(harness);
}

fn shoot(shots: &mut SnapshotResults, name: &str, mut harness: Totals) {
    harness.run();
    harness.snapshot(name);
    shots.extend_harness(&mut harness);
}

#[test]
fn what_was_lifted_at_each_bodyweight() {
    let mut shots = SnapshotResults::new();
    shoot(&mut shots, "totals-light", totals(dip(70), DESK, Choice::Light));
    shoot(&mut shots, "totals-dark", totals(dip(70), DESK, Choice::Dark));
    shoot(&mut shots, "totals-1024", totals(dip(70), SMALL, Choice::Light));
    shoot(
        &mut shots,
        "totals-200",
        totals(dip(70), [720.0, 450.0], Choice::Light),
    );
    shoot(&mut shots, "totals-5", totals(dip(5), DESK, Choice::Light));
    shoot(&mut shots, "totals-5000", totals(dip(5000), DESK, Choice::Dark));
    shoot(&mut shots, "totals-5-1024", totals(dip(5), SMALL, Choice::Dark));
    shoot(
        &mut shots,
        "totals-5000-1024",
        totals(dip(5000), SMALL, Choice::Light),
    );
}

#[test]
fn nothing_yet_and_nothing_to_say_of_another_bodyweight() {
    let mut shots = SnapshotResults::new();
    shoot(
        &mut shots,
        "totals-empty",
        totals(TotalsView::default(), SMALL, Choice::Light),
    );
    let mut minor = dip(70);
    if let Some(lift) = &mut minor.open {
        lift.what_if = None;
        lift.no_what_if =
            Some("Under 18 no other bodyweight is looked at: growing and learning come first.".into());
        lift.attempts.clear();
        lift.attempts_note = "Under 18: no maximal tests.".into();
    }
    minor.meet = None;
    shoot(&mut shots, "totals-minor", totals(minor, SMALL, Choice::Dark));
}

#[test]
fn keys_ask_about_a_bodyweight_and_walk_the_sets() {
    let mut shots = SnapshotResults::new();
    let mut harness = totals(dip(70), DESK, Choice::Light);
    harness.run();
    let act = |harness: &mut Totals, action| {
        let (view, state, actions) = harness.state_mut();
        let view = view.clone();
        state.perform(action, &view, actions);
        harness.run();
    };
    for _ in 0..5 {
        act(&mut harness, Action::MuchLessBodyweight);
    }
    act(&mut harness, Action::LessBodyweight);
    assert!((harness.state().1.asked_kg.unwrap() - 74.2).abs() < 1e-9);
    harness.get_by_label_contains("If you weigh 74.2 kg");
    act(&mut harness, Action::PointBack);
    act(&mut harness, Action::PointBack);
    let words = harness.state().0.open.as_ref().unwrap().points[68].words.clone();
    assert!(
        harness.query_all_by_label(&words).count() >= 1,
        "the set that is walked is read out"
    );
    shoot(&mut shots, "totals-walked", harness);
}

#[test]
fn nothing_is_said_below_the_healthy_range() {
    let mut harness = totals(dip(70), DESK, Choice::Light);
    harness.run();
    let (view, state, actions) = harness.state_mut();
    let view = view.clone();
    for _ in 0..30 {
        state.perform(Action::MuchLessBodyweight, &view, actions);
    }
    // 18.5 × 1.81² = 60.6 kg (World Health Organization's range for adults).
    assert!((state.asked_kg.unwrap() - 18.5 * 1.81 * 1.81).abs() < 1e-9);
    harness.run();
    harness.get_by_label_contains("Your healthy range starts at 60.6 kg; nothing is said below it.");
}

#[test]
fn two_digits_soon_after_each_other_ask_for_twelve_reps() {
    let (view, mut state) = (dip(70), TotalsState::default());
    let mut actions = Actions::default();
    let mut press = |state: &mut TotalsState, at: f64, digit| {
        state.now = at;
        state.perform(Action::LiftReps(digit), &view, &mut actions);
        state.reps()
    };
    assert_eq!(press(&mut state, 0.0, 1), 1);
    assert_eq!(press(&mut state, 0.6, 2), 12);
    assert_eq!(press(&mut state, 3.0, 5), 5);
    assert_eq!(press(&mut state, 3.4, 3), 3, "53 is no number of reps");
}

#[test]
fn the_points_are_copied_as_csv() {
    let view = dip(5);
    let csv = view.csv().unwrap();
    assert!(csv.ends_with("\r\n"), "RFC 4180, 2.1: a record ends with CRLF");
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let at = |name: &str| heads.iter().position(|head| head == name).unwrap();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let lift = view.open.unwrap();
    assert_eq!(rows.len(), lift.points.len());
    for (row, point) in rows.iter().zip(&lift.points) {
        assert_eq!((&row[at("movement")], &row[at("side")]), ("dip", ""));
        assert_eq!(row[at("date")], point.date.to_string());
        let number = |name: &str| row[at(name)].parse::<f64>().unwrap();
        assert!((number("system_kg") - point.system_kg).abs() < 1e-9);
        assert!((number("bodyweight_kg") + number("added_kg") - number("system_kg")).abs() < 2e-9);
    }
    assert_eq!(TotalsView::default().csv(), None);
}

#[test]
fn attempts_and_the_meet_stand_below_the_bests() {
    let mut shots = SnapshotResults::new();
    for (name, size, choice) in [
        ("totals-meet-light", [1440.0, 1330.0], Choice::Light),
        ("totals-meet-1024", [1024.0, 1500.0], Choice::Dark),
    ] {
        shoot(&mut shots, name, totals(dip(70), size, choice));
    }
}

#[test]
fn the_lifts_of_a_meet_are_ticked_and_one_stays() {
    let mut harness = totals(dip(70), [1440.0, 1400.0], Choice::Light);
    harness.run();
    harness.get_by_label("Chin-up in the meet").click();
    harness.run();
    let all = ["muscle-up", "pull-up", "chin-up", "dip"]
        .map(str::to_owned)
        .to_vec();
    assert_eq!(harness.state().2.deeds, [Deed::MeetOver(all)]);
    let meet = harness.state_mut().0.meet.as_mut().unwrap();
    meet.choices
        .iter_mut()
        .for_each(|choice| choice.chosen = choice.movement == "dip");
    harness.run();
    harness.get_by_label("Dip in the meet").click();
    harness.run();
    assert_eq!(harness.state().2.deeds.len(), 1, "a meet of nothing is no meet");
}

#[test]
fn a_try_is_typed_and_written_by_two_keys() {
    let mut shots = SnapshotResults::new();
    let mut book = FakeBook::open();
    book.totals = dip(70);
    let mut harness = window(book, Place::Totals, SMALL, Choice::Light);
    harness.run();
    harness.key_press(egui::Key::L);
    harness.run_steps(4);
    shoot_window(&mut shots, "totals-try", &mut harness);
    harness.key_press(egui::Key::Enter);
    harness.run_steps(4);
    let good = |movement: &str, load, good| Deed::LogTry {
        movement: movement.into(),
        load,
        good,
    };
    assert_eq!(
        harness.state().book.deeds,
        [good("dip", 75.0, true)],
        "the open lift, its next planned load"
    );
    assert!(harness.query_by_label("No lift").is_none(), "the sheet closes");
    harness.key_press(egui::Key::L);
    harness.run_steps(4);
    harness.get_by_label("Back squat").click();
    harness.run_steps(4);
    harness.event(egui::Event::Text("152.5".into()));
    harness.run_steps(4);
    harness.get_by_label("No lift").click();
    harness.run_steps(4);
    assert_eq!(
        harness.state().book.deeds.last(),
        Some(&good("back-squat", 152.5, false))
    );
}

#[test]
fn a_meet_that_is_refused_says_why_and_has_no_sheet() {
    let mut view = dip(70);
    let why = "Under 18: no maximal tests.".to_owned();
    let meet = view.meet.as_mut().unwrap();
    (meet.refused, meet.notes) = (Some(why.clone()), vec![why.clone()]);
    let mut state = TotalsState::default();
    let mut actions = Actions::default();
    state.perform(Action::MeetSheet, &view, &mut actions);
    assert_eq!((state.said.as_ref(), state.printing.as_ref()), (Some(&why), None));
    let mut harness = totals(view.clone(), [1440.0, 1400.0], Choice::Light);
    harness.run();
    harness.get_by_label(&why);
    assert!(harness.query_by_label("Sheet for the meet").is_none());
    view.meet = None;
    view.no_meet = "A meet takes at least two lifts that were logged in the last year.".into();
    state.perform(Action::MeetSheet, &view, &mut actions);
    assert_eq!(state.said, Some(view.no_meet));
}

#[test]
fn the_picture_is_the_cards_part_of_the_screen() {
    let pixels = (0..48u8).map(egui::Color32::from_gray).collect();
    let screen = egui::ColorImage::new([8, 6], pixels);
    let area = egui::Rect::from_min_max(egui::pos2(1.0, 1.0), egui::pos2(3.0, 2.0));
    let bytes = png_of(&screen, area, 2.0).unwrap();
    let mut reader = png::Decoder::new(std::io::Cursor::new(&bytes))
        .read_info()
        .unwrap();
    let mut out = vec![0; reader.output_buffer_size().unwrap()];
    let info = reader.next_frame(&mut out).unwrap();
    assert_eq!((info.width, info.height), (4, 2));
    assert_eq!(&out[..4], [18, 18, 18, 255], "row 2, column 2 of 8 is the 18th");
    assert!(
        png_of(
            &screen,
            egui::Rect::from_min_max(egui::pos2(90.0, 0.0), egui::pos2(99.0, 9.0)),
            1.0
        )
        .is_err()
    );
}
