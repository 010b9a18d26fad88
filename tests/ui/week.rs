//! Week: its pictures, and what keys and screen reader do on it.

use egui::Key;
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::{NodeT, Queryable, by};
use rungwright::ui::book::Deed;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{JointView, Place, SessionView, WeekView};

use crate::fake_book::FakeBook;
use crate::kit::{DESK, SMALL};
use crate::sample_week;
use crate::screens::{Opened, window};

fn week(view: WeekView, size: [f32; 2], choice: Choice) -> Opened {
    let book = FakeBook {
        week: view,
        ..FakeBook::open()
    };
    let mut harness = window(book, Place::Week, size, choice);
    harness.run();
    harness
}

fn shoot(shots: &mut SnapshotResults, name: &str, mut harness: Opened) {
    harness.snapshot(name);
    shots.extend_harness(&mut harness);
}

fn deeds(harness: &Opened) -> Vec<Deed> {
    harness.state().book.deeds.clone()
}

#[test]
fn sets_against_ranges_and_joints_day_by_day() {
    let mut shots = SnapshotResults::new();
    shoot(
        &mut shots,
        "week-light",
        week(sample_week::usual(), DESK, Choice::Light),
    );
    shoot(
        &mut shots,
        "week-dark",
        week(sample_week::usual(), DESK, Choice::Dark),
    );
    shoot(
        &mut shots,
        "week-1024",
        week(sample_week::usual(), SMALL, Choice::Dark),
    );
    shoot(
        &mut shots,
        "week-1024-before",
        week(sample_week::before(), SMALL, Choice::Light),
    );
    // 200 % leaves half the points.
    shoot(
        &mut shots,
        "week-200",
        week(sample_week::usual(), [720.0, 450.0], Choice::Light),
    );
}

#[test]
fn everything_fits_a_small_laptop_without_scrolling() {
    let harness = week(sample_week::usual(), SMALL, Choice::Light);
    for words in ["Calves: ", "Fingers ", "Stop on sharp pain"] {
        let lowest = harness.get_by_label_contains(words).rect().bottom();
        assert!(lowest <= SMALL[1], "{words} ends at {lowest}");
    }
}

#[test]
fn nothing_yet_says_what_to_do_first() {
    let mut shots = SnapshotResults::new();
    let empty = WeekView {
        is_empty: true,
        ..WeekView::default()
    };
    let mut harness = week(empty, SMALL, Choice::Light);
    harness.get_by_label("No sets yet. Log one on Next; your week shows here.");
    shots.add(harness.try_snapshot("week-empty"));
    // B has nothing to build from.
    harness.key_press(Key::B);
    harness.run();
    assert!(harness.query_by_label("Build a session").is_none());
    harness.get_by_label("Go to Next").click();
    harness.run();
    assert_eq!(harness.state().place(), Place::Next);
}

#[test]
fn arrows_turn_the_weeks_up_to_this_one() {
    let mut harness = week(sample_week::usual(), DESK, Choice::Light);
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(deeds(&harness), []);
    harness.key_press(Key::ArrowLeft);
    harness.run();
    assert_eq!(deeds(&harness), [Deed::ShowWeek(1)]);
    let mut harness = week(sample_week::before(), DESK, Choice::Light);
    harness.get_by_label("The week after").click();
    harness.run();
    harness.key_press(Key::ArrowLeft);
    harness.run();
    assert_eq!(deeds(&harness), [Deed::ShowWeek(0), Deed::ShowWeek(2)]);
}

#[test]
fn tab_walks_days_groups_and_joints_and_says_each() {
    let mut harness = week(sample_week::usual(), DESK, Choice::Light);
    let mut said = Vec::new();
    for _ in 0..60 {
        harness.key_press(Key::Tab);
        harness.run_steps(2);
        let focused = harness.query_all(by().predicate(|node| node.is_focused())).last();
        said.extend(focused.and_then(|node| node.accesskit_node().label()));
    }
    let at = |words: &str| {
        said.iter()
            .position(|label| label.contains(words))
            .unwrap_or_else(|| panic!("{words}: {said:?}"))
    };
    assert!(at("Mon 13 Oct: 14 hard sets") < at("Lats: 13 direct"));
    assert!(at("Lats: 13 direct") < at("Calves: "));
    assert!(at("Calves: ") < at("Elbow left: hard sets that load it"));
    assert!(at("Elbow left") < at("Right elbow: last loaded"));
}

#[test]
fn a_session_is_built_by_keyboard_alone() {
    let mut shots = SnapshotResults::new();
    let mut harness = week(sample_week::usual(), DESK, Choice::Light);
    harness.key_press(Key::B);
    harness.run();
    harness.get_by_label("1. Front lever: Tuck");
    harness.get_by_label_contains("Warm-up: 5–10 min easy until warm");
    shots.add(harness.try_snapshot("week-session"));
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert_eq!(deeds(&harness).first(), Some(&Deed::SessionOf(13)));
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("1. Front lever: Tuck").is_none());
    assert_eq!(harness.state().place(), Place::Week);
}

#[test]
fn somebody_on_no_ladder_is_told_where_to_join_one() {
    let mut view = sample_week::usual();
    view.session = SessionView {
        budget: 12,
        head: "You are on no ladder. Join one on Ladders, and its work can be put together here.".into(),
        ..SessionView::default()
    };
    let mut harness = week(view, SMALL, Choice::Dark);
    harness.key_press(Key::B);
    harness.run();
    harness.get_by_label_contains("You are on no ladder");
    assert!(harness.query_by_label("Go to Next, to log it").is_none());
}

#[test]
fn many_joints_and_cautions_make_the_cards_longer_than_the_window() {
    let mut shots = SnapshotResults::new();
    let mut view = sample_week::usual();
    let rows: Vec<JointView> = view.joints.iter().cycle().take(14).cloned().collect();
    view.joints = rows
        .into_iter()
        .enumerate()
        .map(|(nth, row)| JointView {
            how: format!("Row {nth}: {}", row.how),
            ..row
        })
        .collect();
    view.close = view.close.iter().cycle().take(4).cloned().collect();
    shoot(&mut shots, "week-full", week(view, SMALL, Choice::Light));
}
