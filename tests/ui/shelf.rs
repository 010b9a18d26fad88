//! The real logbook behind the window: what is logged is on disk, and there again when it is opened anew.

use std::path::{Path, PathBuf};

use chrono::NaiveDate;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Machine, Places};
use rungwright::ui::book::{Book, Deed, Done, NewLogbook};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::views::{Asked, Banner, Prescription, Saved, SetDraft, Spot, Verdict};
use rungwright::units::{Outcome, Rail};

fn machine(home: &Path) -> Machine {
    Machine::with(RealDisk, Places::inside(home))
}

fn shelf(home: &Path) -> Shelf {
    let on = NaiveDate::from_ymd_opt(2026, 3, 18);
    let no_demo = |_| Err::<PathBuf, String>("no demo here".into());
    Shelf::new(machine(home), "bench".into(), on, Box::new(no_demo))
}

fn again(home: &Path) -> Shelf {
    shelf(home).with(&machine(home).places().default_logbook(), None)
}

/// A lifter of 74.6 kg who did 5 pull-ups, on the ladder to the weighted pull-up.
fn started(home: &Path) -> Shelf {
    let mut shelf = shelf(home);
    let ladder = "weighted-pull-up";
    let first = shelf.first();
    let choice = first.ladders.iter().find(|choice| choice.id == ladder).unwrap();
    let pull_up = choice
        .questions
        .iter()
        .position(|(title, _)| title == "Pull-up")
        .unwrap();
    let new = NewLogbook {
        name: "Ana Brook".into(),
        bodyweight: Some(74.6),
        plates: vec![20.0, 10.0, 5.0, 2.5, 1.25],
        ladder: Some(ladder.into()),
        today: vec![(pull_up, [Some(5.0), Some(5.0)])],
        ..NewLogbook::default()
    };
    assert_eq!(shelf.perform(Deed::Start(new)), Done::Ok(None));
    shelf
}

fn work(shelf: &Shelf) -> Prescription {
    let asked = shelf.next().card(0).unwrap().asked.clone();
    assert!(matches!(asked, Asked::Work(_)), "no work: {asked:?}");
    asked.prescription().unwrap().clone()
}

fn draft(shelf: &Shelf) -> SetDraft {
    let work = work(shelf);
    SetDraft {
        ladder: "weighted-pull-up".into(),
        rung: work.rung,
        rail: Rail::Both,
        amount: 4.0,
        is_hold: false,
        reserve: Some(1.0),
        outcome: Outcome::Done,
        note: None,
    }
}

#[test]
fn a_new_logbook_begins_on_a_rung_with_what_was_said_on_record() {
    let home = tempfile::tempdir().unwrap();
    let shelf = started(home.path());
    assert!(shelf.is_open());
    let next = shelf.next();
    assert_eq!(next.card(0).unwrap().verdict, Verdict::Begin);
    assert_eq!(next.last_bodyweight, Some(74.6));
    let ladder = shelf.ladders().open.unwrap();
    assert_eq!(ladder.id, "weighted-pull-up");
    assert!(matches!(ladder.hands[0].at, Spot::Rung(_)));
}

#[test]
fn a_logged_set_is_there_when_the_logbook_is_opened_again_and_an_undone_one_is_not() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let before = shelf.next().logged.len();
    let asked = work(&shelf);
    for _ in 0..2 {
        let draft = draft(&shelf);
        assert_eq!(shelf.perform(Deed::Log(draft)), Done::Ok(None));
    }
    assert_eq!(shelf.perform(Deed::Undo), Done::Ok(None));
    drop(shelf);
    let shelf = again(home.path());
    assert_eq!(shelf.next().logged.len(), before + 1);
    let now = work(&shelf);
    assert_eq!(now.done, ["4 reps, RIR 1"]);
    assert_eq!(
        (now.sets, now.measure),
        (asked.sets, asked.measure),
        "the session asks what it asked"
    );
}

#[test]
fn weigh_in_pain_note_and_a_rail_set_aside_are_on_record() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let elbow = Deed::Pain {
        site: "elbow",
        rail: Rail::Right,
        score: 6,
    };
    for deed in [Deed::WeighIn(75.2), elbow, Deed::Note("slept badly".into())] {
        assert_eq!(shelf.perform(deed), Done::Ok(None));
    }
    assert!(matches!(shelf.frame().saved, Saved::At { .. }));
    drop(shelf);
    let mut shelf = again(home.path());
    let next = shelf.next();
    assert_eq!(
        next.card(0).unwrap().verdict,
        Verdict::Pause,
        "6 of 10 at a joint that pulls"
    );
    assert_eq!(next.pain.as_deref(), Some("elbow R 6 of 10"));
    assert_eq!(next.logged[0].what, "slept badly");
    let aside = Deed::SetAside {
        ladder: "weighted-pull-up".into(),
        rail: Rail::Both,
    };
    assert_eq!(shelf.perform(aside), Done::Ok(None));
    assert_eq!(shelf.next().cards().count(), 0);
}

#[test]
fn what_no_scale_shows_is_refused_and_nothing_is_written() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let before = shelf.next().logged;
    assert!(matches!(shelf.perform(Deed::WeighIn(7460.0)), Done::Failed(_)));
    assert!(matches!(shelf.frame().saved, Saved::Not { .. }));
    assert_eq!(shelf.next().logged, before);
}

#[test]
fn a_second_window_on_a_logbook_reads_and_says_so() {
    let home = tempfile::tempdir().unwrap();
    let first = started(home.path());
    let mut second = again(home.path());
    assert!(matches!(second.frame().banner, Some(Banner::ReadOnly(_))));
    assert!(matches!(second.perform(Deed::WeighIn(75.0)), Done::Failed(_)));
    drop(first);
    assert_eq!(second.perform(Deed::WeighIn(75.0)), Done::Ok(None));
}
