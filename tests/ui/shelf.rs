//! The real logbook behind the window: what is logged is on disk, and there again when it is opened anew.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use chrono::NaiveDate;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Fact, Machine, Name, Places, Record, Writer, Written};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::{Book, DatesAre, Deed, Done, ImportText, NewLogbook, News, Source};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Asked, Banner, Place, Prescription, Saved, SetDraft, Spot, Verdict};
use rungwright::units::{Outcome, Rail, Typed, Unit};

pub fn machine(home: &Path) -> Machine {
    Machine::with(RealDisk, Places::inside(home))
}

pub fn shelf(home: &Path) -> Shelf {
    shelf_named(home, "bench")
}

/// The same on the machine of this name.
pub fn shelf_named(home: &Path, device: &str) -> Shelf {
    let on = NaiveDate::from_ymd_opt(2026, 3, 18);
    let no_demo = |_| Err::<PathBuf, String>("no demo here".into());
    Shelf::new(machine(home), device.into(), on, Arc::new(no_demo))
}

/// Waits for long work, and says what came of it.
pub fn wait(shelf: &mut Shelf) -> Done {
    loop {
        let news = shelf.poll();
        match news {
            News::Ended(_, done) => return done,
            _ if shelf.progress().is_none() => return Done::Ok(None),
            _ => std::thread::sleep(Duration::from_millis(2)),
        }
    }
}

/// Looks at the shelf until `shows` holds, at most five seconds; what comes from outside shows within one.
pub fn until(shelf: &mut Shelf, shows: impl Fn(&Shelf) -> bool) -> bool {
    (0..500).any(|_| {
        shelf.poll();
        let is_so = shows(shelf);
        if !is_so {
            std::thread::sleep(Duration::from_millis(10));
        }
        is_so
    })
}

/// A window on a shelf, at a place.
pub type OnShelf = egui_kittest::Harness<'static, Window<Shelf>>;

/// The window at `place` of the shelf.
pub fn window_at(place: Place, shelf: Shelf, size: [f32; 2], choice: Choice) -> OnShelf {
    let remembered = Remembered {
        place,
        theme: choice,
        less_motion: true,
        ..Remembered::default()
    };
    crate::kit::open(size, choice, Window::new(shelf, remembered), |ui, window| {
        window.logic(ui.ctx());
        window.ui(ui);
    })
}

pub fn again(home: &Path) -> Shelf {
    let mut shelf = shelf(home).with(&machine(home).places().default_logbook(), None, false);
    wait(&mut shelf);
    shelf
}

/// A lifter of 74.6 kg who did 5 pull-ups, on the ladder to the weighted pull-up.
pub fn started(home: &Path) -> Shelf {
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
    assert!(matches!(shelf.perform(Deed::Start(new)), Done::Working(_)));
    assert_eq!(wait(&mut shelf), Done::Ok(None));
    shelf
}

pub fn work(shelf: &Shelf) -> Prescription {
    let asked = shelf.next().card(0).unwrap().asked.clone();
    assert!(matches!(asked, Asked::Work(_)), "no work: {asked:?}");
    asked.prescription().unwrap().clone()
}

pub fn draft(shelf: &Shelf) -> SetDraft {
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

/// A command's way to the same logbook.
fn command(home: &Path) -> Writer {
    let now = chrono::DateTime::UNIX_EPOCH;
    let root = machine(home).places().default_logbook();
    let (writer, _) = Writer::lock(&machine(home), &root, "bench".into(), now, Duration::ZERO).unwrap();
    writer
}

fn weigh_in(home: &Path, kg: f64) {
    let name = Name::parse("Ana Brook").unwrap();
    let at = Written::parse("2026-03-18T09:00:00+01:00").unwrap();
    let make = |_: Option<&rungwright::logbook::Log>| {
        vec![Record {
            id: Default::default(),
            rev: 0,
            dev: "bench".into(),
            at: at.clone(),
            nth: 90,
            what: Fact::WeighIn {
                bodyweight: Typed::new(kg, Unit::Kg).unwrap(),
                note: None,
            },
        }]
    };
    command(home).add(&name, &at, make).unwrap();
}

#[test]
fn a_window_left_open_keeps_no_command_waiting() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    assert_eq!(shelf.perform(Deed::WeighIn(75.0)), Done::Ok(None));
    // The lock is free although the window is open and has just written.
    drop(command(home.path()));
}

#[test]
fn while_a_command_writes_the_window_waits_and_then_its_set_comes_through() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    let busy = command(home.path());
    assert!(matches!(shelf.perform(Deed::WeighIn(75.0)), Done::Working(_)));
    assert!(shelf.progress().is_some(), "it says that it waits");
    drop(busy);
    assert_eq!(wait(&mut shelf), Done::Ok(None));
    let bodyweight = again(home.path()).next().last_bodyweight;
    assert_eq!(bodyweight, Some(74.8), "the mean of the day's 74.6 and 75.0");
}

#[test]
fn what_a_command_or_a_sync_tool_brings_shows_by_itself() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = started(home.path());
    weigh_in(home.path(), 76.5);
    // The mean of the day: 74.6 at the start, 76.5 now.
    assert!(until(&mut shelf, |shelf| shelf.next().last_bodyweight != Some(74.6)));
    assert!(
        shelf
            .next()
            .logged
            .iter()
            .any(|line| line.result.contains("76.5"))
    );
}

#[test]
fn a_spreadsheet_is_shown_before_anything_is_written_and_then_written_whole() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = shelf(home.path());
    let rows = "Datum;Wer;Übung;Wdh;Laune\n17.03.2026;Ana;pull-up;5;gut\n17.03.2026;Ana;pull-up;4,5;gut\n";
    let mut text = ImportText {
        from: Source::Text(rows.into()),
        dates: DatesAre::DayFirst,
        comma: true,
        ..ImportText::default()
    };
    shelf.perform(Deed::PreviewImport(text.clone()));
    wait(&mut shelf);
    let view = shelf.import().unwrap();
    let theirs: Vec<&str> = view.columns.iter().map(|(theirs, _)| theirs.as_str()).collect();
    assert_eq!(theirs, ["Datum", "Wer", "Übung", "Wdh", "Laune"]);
    assert!(view.problem.is_some(), "no name fits yet");
    for (theirs, ours) in [
        ("Datum", "date"),
        ("Wer", "athlete"),
        ("Übung", "movement"),
        ("Wdh", "reps"),
    ] {
        text.columns.push((theirs.into(), ours.into()));
    }
    shelf.perform(Deed::PreviewImport(text.clone()));
    wait(&mut shelf);
    let view = shelf.import().unwrap();
    assert_eq!((view.good, view.bad), (1, 1), "reps are whole");
    assert_eq!(view.columns[4], ("Laune".into(), None));
    assert!(view.rows.iter().any(|row| row.line == 3 && row.problem.is_some()));
    shelf.perform(Deed::Import(text.clone()));
    assert!(
        matches!(wait(&mut shelf), Done::Failed(_)),
        "a bad row writes nothing"
    );
    assert!(!shelf.is_open());
    text.from = Source::Text(rows.replace("4,5", "4"));
    shelf.perform(Deed::Import(text));
    assert_eq!(wait(&mut shelf), Done::Ok(None));
    assert_eq!(shelf.roster().lines.len(), 1);
}
