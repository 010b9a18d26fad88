//! Weigh-ins on the real logbook: trend, phase and cautions as worked by hand, new ones written and taken back.

use std::path::Path;

use egui::Key;
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::logbook::exchange::Column;
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::journal::JournalDeed;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Place, WeighInsView};

use crate::kit::SMALL;
use crate::shelf::{OnShelf, again, started, window_at};

/// Ana, 74.6 kg on Wed 18 Mar 2026; before that weighed each Wednesday, half a kilogram more each week back, and once by a slip.
/// She cuts since 1 February.
fn cutting(home: &Path, more: &str) -> Shelf {
    drop(started(home));
    let file = crate::journal::folder(home).join("journal-mill.ron");
    let line = |nth: usize, at: &str, what: &str| {
        format!(
            "(id: \"01KKZ3VY005KBAH2VR57ZGNDF{nth}\", rev: 0, dev: \"mill\", at: \"{at}\", nth: 0, what: {what})\n"
        )
    };
    let mut text = line(0, "2026-02-01", "Phase(kind: cut)");
    for (nth, (day, kg)) in [
        ("2026-02-18", 76.6),
        ("2026-02-25", 76.1),
        ("2026-03-04", 75.6),
        ("2026-03-07", 95.0),
        ("2026-03-11", 75.1),
    ]
    .into_iter()
    .enumerate()
    {
        text += &line(
            nth + 1,
            day,
            &format!("WeighIn(bodyweight: kg({kg:?}), note: \"morning\")"),
        );
    }
    text += more;
    std::fs::write(file, text).unwrap();
    again(home)
}

fn number<'v>(view: &'v WeighInsView, what: &str) -> &'v str {
    let found = view.numbers.iter().find(|(label, ..)| *label == what);
    &found.unwrap_or_else(|| panic!("no {what}: {:?}", view.numbers)).1
}

#[test]
fn half_a_kilogram_a_week_is_said_in_percent_and_kilograms_with_the_phase() {
    let home = tempfile::tempdir().unwrap();
    let view = cutting(home.path(), "").weigh_ins();
    // Worked by hand: 76.6, 76.1, 75.6, 75.1, 74.6 kg, a week apart: −0.5 kg a week of a mean of 75.6 is −0.66 %.
    assert_eq!(number(&view, "A week"), "−0.66 % · −0.5 kg");
    assert_eq!(number(&view, "Trend today"), "74.6 kg");
    assert_eq!(number(&view, "Phase"), "Cut since 1 Feb 2026");
    let odd: Vec<f64> = view
        .days
        .iter()
        .filter(|(.., odd)| *odd)
        .map(|(_, mass, _)| *mass)
        .collect();
    assert_eq!(odd, [95.0], "the slip is marked and moves nothing");
    assert!(
        view.cautions.is_empty(),
        "slower than 0.7 % a week: {:?}",
        view.cautions
    );
    assert_eq!(
        view.journal
            .lines
            .iter()
            .filter(|line| line.odd.is_some())
            .count(),
        1
    );
}

#[test]
fn a_cut_faster_than_seven_tenths_of_a_percent_is_cautioned() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = cutting(home.path(), "");
    // Today's mean falls to 74.1 kg, and the line with it.
    let add = vec![
        (Column::Date, "2026-03-18".into()),
        (Column::BodyweightKg, "73,6".into()),
    ];
    assert_eq!(
        shelf.perform(Deed::Journal(JournalDeed::Add(add))),
        Done::Ok(None)
    );
    let view = shelf.weigh_ins();
    assert!(
        view.cautions
            .iter()
            .any(|words| words.contains("a week; over 0.7 %")),
        "{:?}",
        view.cautions
    );
    assert!(matches!(shelf.perform(Deed::Undo), Done::Ok(_)));
    assert_eq!(number(&shelf.weigh_ins(), "A week"), "−0.66 % · −0.5 kg");
}

#[test]
fn a_weigh_in_of_last_week_in_pounds_is_written_as_typed_and_taken_back() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = cutting(home.path(), "");
    let before = shelf.weigh_ins().days.len();
    let add = |mass: &str, day: &str| {
        let said = vec![
            (Column::Date, day.to_owned()),
            (Column::BodyweightKg, mass.to_owned()),
        ];
        Deed::Journal(JournalDeed::Add(said))
    };
    assert_eq!(shelf.perform(add("166 lb", "2026-03-14")), Done::Ok(None));
    let view = shelf.weigh_ins();
    assert_eq!(view.days.len(), before + 1);
    assert!(
        view.journal
            .lines
            .iter()
            .any(|line| line.what == "75.3 kg, typed as 166 lb")
    );
    shelf.perform(Deed::Undo);
    assert_eq!(
        shelf.weigh_ins().days.len(),
        before,
        "undo means the weigh-in of last week"
    );
    assert!(matches!(
        shelf.perform(add("7460", "2026-03-14")),
        Done::Failed(_)
    ));
    assert_eq!(shelf.weigh_ins().refused[0].0, Some(Column::BodyweightKg));
    assert!(matches!(shelf.perform(add("74", "14.3.")), Done::Failed(_)));
    assert_eq!(shelf.weigh_ins().refused[0].0, Some(Column::Date));
}

#[test]
fn no_cut_is_offered_to_a_minor_or_below_the_healthy_range() {
    let home = tempfile::tempdir().unwrap();
    let offered =
        |shelf: &Shelf| -> Vec<&str> { shelf.weigh_ins().may_set.iter().map(|(word, ..)| *word).collect() };
    assert!(offered(&cutting(home.path(), "")).contains(&"cut"));
    let line = |what: &str| {
        format!(
            "(id: \"01KKZ3VY005KBAH2VR57ZGNDF9\", rev: 0, dev: \"mill\", at: \"2026-01-01\", nth: 0, what: {what})\n"
        )
    };
    // 17 years old; and 74.6 kg at 210 cm are 16.9 kg/m², under 18.5 (World Health Organization's adult classes).
    for profile in ["Profile(born: \"2009-01-01\")", "Profile(height_cm: 210.0)"] {
        let home = tempfile::tempdir().unwrap();
        let shelf = cutting(home.path(), &line(profile));
        assert!(!offered(&shelf).contains(&"cut"), "{profile}");
        let cautions = shelf.weigh_ins().cautions;
        assert!(
            cautions
                .iter()
                .any(|words| words.starts_with("Losing weight is not planned here")),
            "{cautions:?}"
        );
    }
}

fn window(shelf: Shelf, choice: Choice) -> OnShelf {
    let mut harness = window_at(Place::WeighIns, shelf, SMALL, choice);
    harness.run();
    harness
}

#[test]
fn by_keyboard_a_weigh_in_and_a_phase_are_set() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = window(cutting(home.path(), ""), Choice::Light);
    let press = |harness: &mut OnShelf, key: Key| {
        harness.key_press(key);
        harness.run_steps(3);
    };
    press(&mut harness, Key::K);
    let role = egui::accesskit::Role::TextInput;
    harness
        .get_by_role_and_label(role, "What the scale shows, kg, or with its unit")
        .type_text("74.4");
    harness.run_steps(2);
    press(&mut harness, Key::Enter);
    assert!(
        harness
            .state()
            .book
            .weigh_ins()
            .journal
            .lines
            .iter()
            .any(|line| line.what == "74.4 kg")
    );
    press(&mut harness, Key::F);
    harness.get_by_label("Hold");
    harness
        .get_by_role_and_label(role, "Day, or day and time")
        .focus();
    harness.run_steps(2);
    press(&mut harness, Key::Enter);
    assert_eq!(
        number(&harness.state().book.weigh_ins(), "Phase"),
        "Hold since 18 Mar 2026"
    );
}

#[test]
fn pictures_of_a_cut_with_a_slip_of_the_scale() {
    let mut shots = SnapshotResults::new();
    for (choice, name) in [(Choice::Light, "light"), (Choice::Dark, "dark")] {
        let home = tempfile::tempdir().unwrap();
        let mut shelf = cutting(home.path(), "");
        // Today's record carries the clock's time.
        let today = shelf.weigh_ins().journal.lines[0].id.clone();
        let day = vec![(Column::Date, "2026-03-18".to_owned())];
        assert!(matches!(
            shelf.perform(Deed::Journal(JournalDeed::Amend(today, day))),
            Done::Ok(_)
        ));
        drop(shelf);
        let mut harness = window(again(home.path()), choice);
        harness.key_press(Key::End);
        harness.run_steps(3);
        harness.snapshot(format!("weigh-ins-{name}"));
        shots.extend_harness(&mut harness);
    }
}
