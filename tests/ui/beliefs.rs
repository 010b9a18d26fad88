//! Beliefs in the window, from a real logbook: the band on the ladder, chances, strength over time, a slip mended by one key.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use chrono::{Days, NaiveDate};
use egui::Key;
use egui_kittest::{Harness, SnapshotResults};
use rungwright::clock;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::record::{Load, PhaseKind, Placed, Set};
use rungwright::logbook::writer::LOCK_WAIT;
use rungwright::logbook::{Fact, Machine, Name, Places, Record, Writer, Written};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{DotKind, Place};
use rungwright::units::{Effort, Given, Outcome, Reps, Typed, Unit};

use crate::kit::{DESK, SMALL, open};

pub fn today() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 3, 18).unwrap()
}

pub fn kg(value: f64) -> Typed {
    Typed::new(value, Unit::Kg).unwrap()
}

pub fn pull_up(added: f64, reps: u16, outcome: Outcome, body: f64) -> Fact {
    Fact::Set(Set {
        movement: "pull-up".into(),
        side: None,
        load: Some(Load::Added(kg(added))),
        effort: Effort::Reps(Reps::try_from(reps).unwrap()),
        left: (outcome == Outcome::Done).then(|| Given::rir(1.0).unwrap()),
        outcome,
        bodyweight: Some(kg(body)),
        ladder: Some("weighted-pull-up".into()),
        rung: Some("plus-25".into()),
        note: None,
    })
}

/// What a year of pull-ups left behind: two sessions a week, a summer off, a cut, one missed single, one 5 typed as 55.
pub fn year() -> Vec<(NaiveDate, Fact)> {
    let day = |ago: u64| today() - Days::new(ago);
    let mut facts = vec![
        (
            day(330),
            Fact::Placement {
                ladder: "weighted-pull-up".into(),
                side: None,
                rung: Placed::On("plus-25".into()),
                why: None,
            },
        ),
        (
            day(120),
            Fact::Phase {
                kind: PhaseKind::Cut,
                note: None,
            },
        ),
        (
            day(60),
            Fact::Phase {
                kind: PhaseKind::Hold,
                note: None,
            },
        ),
    ];
    for session in 0..92u32 {
        let ago = 325 - u64::from(session) * 7 / 2;
        if (150..195).contains(&ago) {
            continue;
        }
        let body = if ago < 120 { 78.5 } else { 80.0 };
        let added = 10.0 + 1.25 * f64::from(session / 8);
        for _ in 0..3 {
            facts.push((day(ago), pull_up(added, 5, Outcome::Done, body)));
        }
        if session == 60 {
            facts.push((day(ago), pull_up(50.0, 0, Outcome::Missed, body)));
        }
        if session == 86 {
            facts.push((day(ago), pull_up(added, 55, Outcome::Done, body)));
        }
    }
    facts
}

fn shelf(home: &Path) -> Shelf {
    shelf_of(home, year())
}

/// A window's book of one athlete to whom this happened.
pub fn shelf_of(home: &Path, facts: Vec<(NaiveDate, Fact)>) -> Shelf {
    let machine = || Machine::with(RealDisk, Places::inside(home));
    let root = machine().places().default_logbook();
    let name = Name::parse("Ana Brook").unwrap();
    let profile = Fact::Profile {
        name: Some("Ana Brook".into()),
        born: None,
        sex: None,
        height_cm: Some(172.0),
    };
    let facts = [(today() - Days::new(331), profile)].into_iter().chain(facts);
    let records = facts.zip(0u32..).map(|((date, what), nth)| Record {
        id: clock::fresh_id(),
        rev: 0,
        dev: "bench".into(),
        at: Written::day(date),
        nth,
        what,
    });
    {
        let now = today().and_hms_opt(8, 0, 0).unwrap().and_utc();
        let (mut writer, _) = Writer::lock(&machine(), &root, "bench".into(), now, LOCK_WAIT).unwrap();
        writer.ensure_settings(Unit::Kg).unwrap();
        writer.commit(vec![(name, records.collect())]).unwrap();
    }
    let no_demo = |_| Err::<PathBuf, String>("no demo here".into());
    let mut shelf =
        Shelf::new(machine(), "bench".into(), Some(today()), Arc::new(no_demo)).with(&root, None, false);
    while shelf.progress().is_some() {
        shelf.poll();
        std::thread::sleep(Duration::from_millis(2));
    }
    shelf
}

fn window(home: &Path, size: [f32; 2], choice: Choice) -> Harness<'static, Window<Shelf>> {
    window_of(shelf(home), Place::Ladders, size, choice)
}

/// The window on a book, a place open.
pub fn window_of(
    shelf: Shelf,
    place: Place,
    size: [f32; 2],
    choice: Choice,
) -> Harness<'static, Window<Shelf>> {
    let remembered = Remembered {
        place,
        theme: choice,
        less_motion: true,
        ..Remembered::default()
    };
    open(size, choice, Window::new(shelf, remembered), |ui, window| {
        window.logic(ui.ctx());
        window.ui(ui);
    })
}

#[test]
fn the_ladder_has_a_band_of_belief_and_says_it_in_words() {
    let home = tempfile::tempdir().unwrap();
    let ladder = shelf(home.path()).ladders().open.unwrap();
    let band = ladder.beliefs[0];
    assert!(band.interval80.0 < band.median && band.median < band.interval80.1);
    assert!(!band.is_stale);
    let words = ladder.outlook[0].belief.text();
    assert!(words.contains("of the goal (80 %: "), "{words}");
    let sheet = &ladder
        .rungs
        .iter()
        .find(|rung| rung.id == "plus-25")
        .unwrap()
        .sheet;
    let section = |name: &str| {
        sheet
            .sections
            .iter()
            .find(|section| section.name == name)
            .map(|section| &section.lines)
    };
    let chance = section("Chance").unwrap()[0].words.text();
    assert!(chance.contains(" %") && chance.contains("reps"), "{chance}");
    assert!(
        section("Estimate").unwrap()[0]
            .words
            .text()
            .contains("one-rep max")
    );
    assert_eq!(section("Holds you back"), None);
}

#[test]
fn companions_are_named_in_the_sheet_where_the_drawing_may_have_no_room() {
    let home = tempfile::tempdir().unwrap();
    let joined = Fact::Placement {
        ladder: "one-arm-pull-up".into(),
        side: None,
        rung: Placed::Joined,
        why: None,
    };
    let ladder = shelf_of(home.path(), vec![(today(), joined)])
        .ladders()
        .open
        .unwrap();
    let beside: Vec<String> = ladder
        .rungs
        .iter()
        .flat_map(|rung| &rung.sheet.sections)
        .filter(|section| section.name == "Beside it")
        .flat_map(|section| section.lines.iter().map(|line| line.words.text()))
        .collect();
    for companion in &ladder.companions {
        let words = format!("{}: {}", companion.title, companion.line);
        assert!(beside.contains(&words), "{words} of {beside:?}");
    }
    assert!(!ladder.companions.is_empty());
}

#[test]
fn a_card_says_the_chance_of_its_work_and_what_to_expect() {
    let home = tempfile::tempdir().unwrap();
    let next = shelf(home.path()).next();
    let chances = &next.card(0).unwrap().chances;
    assert_eq!(chances.len(), 2, "{chances:?}");
    assert!(chances[0].1.ends_with(" %"));
    assert_eq!(chances[1].0, "expected to failure");
}

#[test]
fn strength_over_time_shows_bands_dots_layoff_phase_and_the_slip() {
    let home = tempfile::tempdir().unwrap();
    let strength = shelf(home.path()).ladders().strength;
    let view = &strength[0];
    assert_eq!((view.title.as_str(), view.unit.as_str()), ("Pull-up", "kg"));
    for day in &view.days {
        let [half, eighty, most] = day.bands;
        let ends = [most.0, eighty.0, half.0, day.middle, half.1, eighty.1, most.1];
        assert!(ends.is_sorted(), "{ends:?}");
    }
    assert_eq!(view.days.last().unwrap().day, 0.0);
    let count = |kind| view.sets.iter().filter(|dot| dot.kind == kind).count();
    assert_eq!(count(DotKind::Suspect), 1);
    assert!(count(DotKind::FromReps) > 200);
    assert_eq!(view.layoffs.len(), 1, "{:?}", view.layoffs);
    assert_eq!(
        view.phases.iter().map(|(_, _, word)| *word).collect::<Vec<_>>(),
        ["cut"]
    );
    assert_eq!(view.suspects.len(), 1);
    assert!(
        view.suspects[0]
            .words
            .contains("looks like a typo, probability 0.9")
    );
    assert!(view.suspects[0].mend.as_deref().unwrap().ends_with("× 5"));
}

#[test]
fn trend_and_forecast_agree_on_one_screen() {
    let home = tempfile::tempdir().unwrap();
    let ladders = shelf(home.path()).ladders();
    let said = ladders.strength[0].words.join(" ");
    let forecast = ladders.open.unwrap().outlook[0].forecast.clone().unwrap();
    assert!(
        !(said.contains("falling") && forecast.contains("80 %:")),
        "{said} / {forecast}"
    );
}

#[test]
fn mending_a_slip_amends_its_record_and_nothing_else() {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = shelf(home.path());
    let before = shelf.ladders().strength[0].clone();
    let id = before.suspects[0].id.clone();
    assert_eq!(shelf.perform(Deed::MendSet(id.clone())), Done::Ok(None));
    let after = shelf.ladders().strength[0].clone();
    assert_eq!(after.suspects, []);
    assert_eq!(after.sets.len(), before.sets.len());
    assert!(matches!(shelf.perform(Deed::MendSet(id)), Done::Failed(_)));
}

#[test]
fn one_key_opens_strength_over_time_and_one_mends_the_slip() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = window(home.path(), DESK, Choice::Light);
    harness.run();
    harness.key_press(Key::T);
    harness.run_steps(4);
    harness.key_press(Key::M);
    harness.run_steps(4);
    let again = harness.state().book.ladders();
    assert_eq!(again.strength[0].suspects, []);
}

#[test]
fn strength_over_time_as_a_picture() {
    let home = tempfile::tempdir().unwrap();
    let mut shots = SnapshotResults::new();
    for (size, choice, name) in [
        (DESK, Choice::Light, "strength-light"),
        (DESK, Choice::Dark, "strength-dark"),
        (SMALL, Choice::Light, "strength-1024"),
    ] {
        let folder = home.path().join(name);
        std::fs::create_dir_all(&folder).unwrap();
        let mut harness = window(&folder, size, choice);
        harness.run();
        harness.key_press(Key::T);
        harness.run_steps(6);
        harness.snapshot(name);
        shots.extend_harness(&mut harness);
    }
}

#[test]
fn a_weighted_ladder_with_its_band_as_a_picture() {
    let home = tempfile::tempdir().unwrap();
    let mut shots = SnapshotResults::new();
    let mut harness = window(home.path(), DESK, Choice::Light);
    harness.run();
    harness.snapshot("ladders-belief-light");
    shots.extend_harness(&mut harness);
}
