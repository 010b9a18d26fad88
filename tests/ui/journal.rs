//! The journal on the real logbook: an older record is amended, retracted, restored; each is on disk before it is said, the
//! journals only grow, and the command line sees the same.

use std::path::{Path, PathBuf};

use egui::Key;
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use rungwright::logbook::exchange::Column;
use rungwright::logbook::{Fact, Logbook};
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::journal::JournalDeed;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{JournalLine, Place};

use crate::kit::SMALL;
use crate::shelf::{OnShelf, again, machine, started, window_at};

fn root(home: &Path) -> PathBuf {
    machine(home).places().default_logbook()
}

/// The folder of the one athlete.
pub fn folder(home: &Path) -> PathBuf {
    let mut all = std::fs::read_dir(root(home).join("athletes")).unwrap();
    all.next().unwrap().unwrap().path()
}

/// Every journal's bytes, one after the other.
fn bytes(home: &Path) -> Vec<u8> {
    let folder = folder(home);
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path())
        .collect();
    files.sort();
    files
        .iter()
        .flat_map(|file| std::fs::read(file).unwrap())
        .collect()
}

/// A weigh-in, a set in pounds and a pain, as a command logged them.
fn history() -> String {
    let line = |id: &str, at: &str, what: &str| {
        format!(
            "(id: \"01KKZ3VY005KBAH2VR57ZGND{id}\", rev: 0, dev: \"mill\", at: \"{at}\", nth: 0, what: {what})\n"
        )
    };
    let text = [
        line(
            "F1",
            "2026-03-02T17:30",
            "WeighIn(bodyweight: kg(74.2), note: \"garage\")",
        ),
        line(
            "F2",
            "2026-03-10T18:05",
            "Set(movement: \"pull-up\", load: Added(lb(45)), effort: Reps(3), left: rir(1), note: \"garage, belt slipped\")",
        ),
        line(
            "F3",
            "2026-03-11",
            "Pain(site: Elbow, side: L, score: 2, note: \"garage\")",
        ),
    ];
    text.concat()
}

/// Ana's logbook of today, with them before.
fn with_history(home: &Path) -> Shelf {
    drop(started(home));
    let folder = folder(home).join("journal-mill.ron");
    std::fs::write(folder, history()).unwrap();
    again(home)
}

fn line(shelf: &Shelf, what: &str) -> JournalLine {
    let view = shelf.journal();
    let found = view.lines.iter().find(|line| line.says.contains(what));
    found
        .unwrap_or_else(|| panic!("no {what}: {:?}", view.lines))
        .clone()
}

fn journal(shelf: &mut Shelf, deed: JournalDeed) -> Done {
    shelf.perform(Deed::Journal(deed))
}

/// The record as a command reads it; none where it is retracted.
fn on_disk(home: &Path, id: &str) -> Option<Fact> {
    let (book, _) = Logbook::open(&machine(home), &root(home)).unwrap();
    let records = book.logs.iter().flat_map(|log| &log.records);
    let mut found = records.filter(|record| record.id.to_string() == id);
    found.next().map(|record| record.what.clone())
}

fn reps(home: &Path, id: &str) -> Option<f64> {
    match on_disk(home, id)? {
        Fact::Set(set) => Some(set.effort.amount()),
        other => panic!("{other:?}"),
    }
}

#[test]
fn all_kinds_show_newest_first_with_masses_and_words() {
    let home = tempfile::tempdir().unwrap();
    let shelf = with_history(home.path());
    let view = shelf.journal();
    let kinds: Vec<&str> = view.lines.iter().map(|line| line.kind).collect();
    assert!(
        kinds.contains(&"Profile") && kinds.contains(&"Placement"),
        "{kinds:?}"
    );
    assert_eq!(kinds[kinds.len() - 3..], ["Pain", "Set", "Weigh-in"]);
    let set = line(&shelf, "belt slipped");
    assert_eq!(
        (set.day.as_str(), set.time.as_str()),
        ("Tue 10 Mar 2026", "18:05")
    );
    assert_eq!(set.result, "3 reps, RIR 1");
}

#[test]
fn an_older_set_is_amended_undone_and_amended_again_and_the_journals_only_grow() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_history(home.path());
    let id = line(&shelf, "belt slipped").id;
    let at_first = bytes(home.path());
    let change = vec![
        (Column::Reps, "5".to_owned()),
        (Column::AddedKg, "20,5 kg".to_owned()),
    ];
    let done = journal(&mut shelf, JournalDeed::Amend(id.clone(), change));
    assert!(matches!(done, Done::Ok(Some(_))), "{done:?}");
    assert_eq!(reps(home.path(), &id), Some(5.0));
    let after = bytes(home.path());
    assert!(after.len() > at_first.len());
    // The device that amends is another than the one that wrote: its own journal grew, and the other is as it was.
    let mill = std::fs::read(folder(home.path()).join("journal-mill.ron")).unwrap();
    assert!(at_first.ends_with(&mill) && after.ends_with(&mill));
    let amended = line(&shelf, "belt slipped");
    assert!(
        amended.amended && amended.what.contains("+20.5 kg"),
        "{amended:?}"
    );
    journal(&mut shelf, JournalDeed::Show(Some(id.clone())));
    let open = shelf.journal().open.unwrap();
    assert_eq!(open.before.len(), 2, "{:?}", open.before);
    assert!(open.before[0].1.contains("3 reps"), "{:?}", open.before);
    assert!(open.before[1].0.contains("holds now"));
    // Undo means the amend, not the newest record of the day.
    let today = shelf.next().logged.len();
    assert!(matches!(shelf.perform(Deed::Undo), Done::Ok(_)));
    assert_eq!(reps(home.path(), &id), Some(3.0));
    assert_eq!(shelf.next().logged.len(), today);
    assert!(!line(&shelf, "belt slipped").amended);
    assert!(
        bytes(home.path()).len() > after.len(),
        "taking back is a record too"
    );
    // The next undo is the usual one.
    assert!(matches!(shelf.perform(Deed::Undo), Done::Ok(_)));
    assert_eq!(shelf.next().logged.len() + 1, today);
}

#[test]
fn a_retracted_record_is_struck_and_counts_nowhere_until_it_is_restored() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_history(home.path());
    let id = line(&shelf, "belt slipped").id;
    let why = "not mine".to_owned();
    assert!(matches!(
        journal(&mut shelf, JournalDeed::Retract(id.clone(), why)),
        Done::Ok(_)
    ));
    assert_eq!(on_disk(home.path(), &id), None);
    assert!(line(&shelf, "belt slipped").retracted);
    journal(&mut shelf, JournalDeed::Show(Some(id.clone())));
    let open = shelf.journal().open.unwrap();
    assert!(
        open.marks[0].starts_with("Retracted: not mine"),
        "{:?}",
        open.marks
    );
    let refused = journal(
        &mut shelf,
        JournalDeed::Amend(id.clone(), vec![(Column::Reps, "9".into())]),
    );
    assert!(
        matches!(refused, Done::Failed(_)),
        "a retracted record is restored first"
    );
    assert!(matches!(
        journal(&mut shelf, JournalDeed::Restore(id.clone())),
        Done::Ok(_)
    ));
    assert_eq!(reps(home.path(), &id), Some(3.0));
    // Back through both changes.
    shelf.perform(Deed::Undo);
    assert_eq!(on_disk(home.path(), &id), None, "the restoration is taken back");
    shelf.perform(Deed::Undo);
    assert_eq!(reps(home.path(), &id), Some(3.0), "and the retraction");
}

#[test]
fn what_a_record_cannot_say_is_refused_beside_its_field_and_nothing_is_written() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = with_history(home.path());
    let set = line(&shelf, "belt slipped").id;
    let weigh_in = line(&shelf, "74.2").id;
    let before = bytes(home.path());
    for (id, column, text) in [
        (&set, Column::Reps, "four"),
        (&set, Column::AddedKg, "heavy"),
        (&set, Column::Rir, "11"),
        (&set, Column::Date, "yesterday"),
        (&weigh_in, Column::BodyweightKg, "7420 kg"),
    ] {
        let change = vec![(column, text.to_owned())];
        let failed = journal(&mut shelf, JournalDeed::Amend(id.clone(), change.clone()));
        assert!(matches!(failed, Done::Failed(_)), "{column:?} {text}");
        journal(&mut shelf, JournalDeed::Show(Some(id.clone())));
        journal(&mut shelf, JournalDeed::Try(id.clone(), change));
        let refused = shelf.journal().open.unwrap().refused;
        assert_eq!(refused[0].0, Some(column), "{refused:?}");
    }
    assert_eq!(bytes(home.path()), before);
}

#[test]
fn a_second_window_looks_and_says_why_it_does_not_write() {
    let home = tempfile::tempdir().unwrap();
    let first = with_history(home.path());
    let mut second = again(home.path());
    assert!(second.journal().read_only.is_some());
    let id = line(&second, "belt slipped").id;
    let before = bytes(home.path());
    assert!(matches!(
        journal(&mut second, JournalDeed::Retract(id, String::new())),
        Done::Failed(_)
    ));
    assert_eq!(bytes(home.path()), before);
    drop(first);
}

#[test]
fn what_a_newer_version_wrote_is_said_to_be_kept() {
    let home = tempfile::tempdir().unwrap();
    drop(with_history(home.path()));
    let folder = folder(home.path()).join("journal-new.ron");
    let line = "(id: \"01KKZ3VY005KBAH2VR57ZGNDF9\", rev: 0, dev: \"new\", at: \"2026-03-12\", nth: 0, what: Sleep(hours: 7))\n";
    std::fs::write(folder, line).unwrap();
    let shelf = again(home.path());
    let kept = shelf.journal().kept;
    assert!(
        kept.iter()
            .any(|words| words.contains("Sleep") && words.contains("journal-new.ron:1")),
        "{kept:?}"
    );
}

/// The window at the journal of the shelf.
fn window(shelf: Shelf, choice: Choice) -> OnShelf {
    let mut harness = window_at(Place::Journal, shelf, SMALL, choice);
    harness.run();
    harness
}

#[test]
fn by_keyboard_a_slip_of_last_week_is_found_and_mended() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = window(with_history(home.path()), Choice::Light);
    let press = |harness: &mut OnShelf, key: Key| {
        harness.key_press(key);
        harness.run_steps(3);
    };
    press(&mut harness, Key::End);
    press(&mut harness, Key::ArrowUp);
    press(&mut harness, Key::Enter);
    harness.get_by_label("Set · Tue 10 Mar 2026");
    press(&mut harness, Key::E);
    harness.get_by_label("Amend · Set · Tue 10 Mar 2026");
    let field = egui::accesskit::Role::TextInput;
    harness.get_by_role_and_label(field, "Reps").focus();
    harness.run_steps(2);
    press(&mut harness, Key::Backspace);
    harness.get_by_role_and_label(field, "Reps").type_text("4");
    harness.run_steps(3);
    press(&mut harness, Key::Enter);
    let line = line(&harness.state().book, "belt slipped");
    assert_eq!(line.result, "4 reps, RIR 1");
    assert_eq!(
        reps(home.path(), &line.id),
        Some(4.0),
        "on disk before it is said"
    );
    press(&mut harness, Key::Enter);
    let top = |harness: &OnShelf| harness.get_by_label("On record").rect().top();
    let before = top(&harness);
    press(&mut harness, Key::PageDown);
    assert!(
        top(&harness) < before,
        "a record higher than the window moves by page"
    );
}

#[test]
fn pictures_of_the_list_and_of_a_record() {
    let mut shots = SnapshotResults::new();
    for (choice, name) in [(Choice::Light, "light"), (Choice::Dark, "dark")] {
        let home = tempfile::tempdir().unwrap();
        // Nothing of today, whose times are the clock's: they would change which letters are drawn first.
        let athlete = root(home.path()).join("athletes/ana-brook");
        std::fs::create_dir_all(&athlete).unwrap();
        let profile = "(id: \"01KKZ3VY005KBAH2VR57ZGNDF0\", rev: 0, dev: \"mill\", at: \"2026-03-01\", nth: 0, what: Profile(name: \"Ana Brook\"))\n";
        std::fs::write(athlete.join("journal-mill.ron"), profile.to_owned() + &history()).unwrap();
        let mut shelf = again(home.path());
        let id = line(&shelf, "belt slipped").id;
        journal(
            &mut shelf,
            JournalDeed::Amend(id, vec![(Column::Reps, "5".into())]),
        );
        let pain = line(&shelf, "elbow").id;
        journal(&mut shelf, JournalDeed::Retract(pain, String::new()));
        // Opened anew nothing was saved yet.
        drop(shelf);
        let mut harness = window(again(home.path()), choice);
        let filter = "Filter by movement, note, kind or date";
        let role = egui::accesskit::Role::TextInput;
        harness.get_by_role_and_label(role, filter).focus();
        harness.run_steps(2);
        harness.get_by_role_and_label(role, filter).type_text("garage");
        harness.run_steps(2);
        harness.key_press(Key::Enter);
        harness.run_steps(3);
        harness.run_steps(8);
        harness.snapshot(format!("journal-{name}"));
        harness.key_press(Key::End);
        harness.run_steps(2);
        harness.key_press(Key::ArrowUp);
        harness.run_steps(2);
        harness.key_press(Key::Enter);
        harness.run_steps(3);
        harness.run_steps(8);
        harness.snapshot(format!("journal-record-{name}"));
        harness.key_press(Key::E);
        harness.run_steps(3);
        harness.run_steps(8);
        harness.snapshot(format!("journal-amend-{name}"));
        shots.extend_harness(&mut harness);
    }
}
