//! Week: its pictures, and what keys and screen reader do on it.

use egui::Key;
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::{NodeT, Queryable, by};
use rungwright::logbook::Fact;
use rungwright::logbook::record::Set;
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{JointView, Place, SessionView, SetDraft, Standing, WeekView};
use rungwright::units::{Effort, Outcome, Rail, Seconds, Side};

use crate::beliefs::{shelf_of, today, window_of, year};
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

#[test]
fn a_real_logbook_shows_this_week_and_those_before() {
    // Today is Wednesday 18 March 2026; pull-ups were logged last on Wednesday 11.
    let home = tempfile::tempdir().unwrap();
    let mut shelf = shelf_of(home.path(), year());
    let now = shelf.week();
    assert_eq!(
        (now.name.as_str(), now.hard.as_str(), now.back),
        ("2026-W12", "0 hard sets", 0)
    );
    assert!(!now.is_empty && now.joints.is_empty());
    assert!(
        now.note.text().starts_with("No hard set yet this week."),
        "{}",
        now.note.text()
    );
    assert_eq!(shelf.perform(Deed::ShowWeek(1)), Done::Ok(None));
    let before = shelf.week();
    assert_eq!(
        (before.span.as_str(), before.back),
        ("Mon 9 – Sun 15 Mar 2026", 1)
    );
    let lats = &before.groups[0];
    assert_eq!(
        (lats.title, lats.direct, lats.standing),
        ("Lats", 3.0, Standing::Below)
    );
    assert!(lats.how.contains("From Pull-up (Wed 3)."), "{}", lats.how);
    assert_eq!(before.joints[0].beads, [0, 0, 3, 0, 0, 0, 0]);
    assert!(
        before.joints[0].how.contains("Wed 3 (Pull-up)"),
        "{}",
        before.joints[0].how
    );
}

#[test]
fn a_set_logged_now_is_in_the_week_and_off_the_session() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = shelf_of(home.path(), year());
    let asked = shelf.week().session;
    assert_eq!(asked.budget, 12);
    assert_eq!(asked.blocks.len(), 1);
    let sets = |view: &SessionView| {
        view.blocks[0].parts[0]
            .1
            .chars()
            .next()
            .unwrap()
            .to_digit(10)
            .unwrap()
    };
    let before = sets(&asked);
    let set = SetDraft {
        ladder: "weighted-pull-up".into(),
        rung: "plus-25".into(),
        rail: Rail::Both,
        amount: 5.0,
        is_hold: false,
        reserve: Some(1.0),
        outcome: Outcome::Done,
        note: None,
    };
    assert!(matches!(shelf.perform(Deed::Log(set)), Done::Ok(_)));
    let view = shelf.week();
    assert_eq!(view.hard, "1 hard set");
    assert_eq!(view.days[2].sets.as_deref(), Some("1 set"));
    assert_eq!(sets(&view.session), before - 1);
    // A budget of one set is less than half of it.
    shelf.perform(Deed::SessionOf(1));
    let small = shelf.week().session;
    assert_eq!((small.budget, small.blocks.len() + small.left_out.len()), (1, 1));
}

#[test]
fn holds_without_a_ladder_or_a_reserve_have_a_week_too() {
    let hang = Fact::Set(Set {
        movement: "one-arm-hang".into(),
        side: Some(Side::Left),
        load: None,
        effort: Effort::Hold(Seconds::try_from(20.0).unwrap()),
        left: None,
        outcome: Outcome::Done,
        bodyweight: None,
        ladder: None,
        rung: None,
        note: None,
    });
    let home = tempfile::tempdir().unwrap();
    let shelf = shelf_of(home.path(), vec![(today(), hang.clone()), (today(), hang)]);
    let view = shelf.week();
    let forearms = view
        .groups
        .iter()
        .find(|group| group.title == "Forearms")
        .unwrap();
    assert_eq!((forearms.direct, forearms.status.as_str()), (2.0, "6 below"));
    assert!(
        forearms
            .how
            .contains("on the left, the side with more; the other has 0"),
        "{}",
        forearms.how
    );
    assert!(view.joints.iter().all(|joint| joint.rail == Rail::Left));
    assert!(
        view.session.head.contains("on no ladder"),
        "{}",
        view.session.head
    );
    // The window shows it all the same.
    let mut harness = window_of(shelf, Place::Week, SMALL, Choice::Light);
    harness.run();
    harness.get_by_label_contains("Forearms: 2 direct = 2 hard sets");
}
