//! Totals in the window on a real logbook: a lifter over two cuts and a gain, and corrections that come while it is open.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::Arc;

use chrono::{Days, NaiveDate};
use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use rungwright::bests::Kind;
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Machine, Places};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::Book;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{BestView, LiftView, Place};

use crate::kit::{DESK, open};
use crate::mara;
use crate::shelf::{until, wait};

/// Runs a command as a person would beside the open window; returns what it prints.
fn command(home: &Path, arguments: &[&str]) -> String {
    let ran = Command::new(env!("CARGO_BIN_EXE_rungwright"))
        .args(arguments)
        .args(["--logbook".as_ref(), root(home).as_os_str()])
        .env("HOME", home)
        .env("XDG_STATE_HOME", home.join("of-commands"))
        .env("RUNGWRIGHT_DEVICE", "terminal")
        .output()
        .unwrap();
    assert!(ran.status.success(), "{}", String::from_utf8_lossy(&ran.stderr));
    String::from_utf8(ran.stdout).unwrap()
}

fn root(home: &Path) -> PathBuf {
    home.join("gym")
}

/// A gym with the rows of this spreadsheet.
fn gym(rows: &str) -> tempfile::TempDir {
    let home = tempfile::tempdir().unwrap();
    let sheet = home.path().join("rows.csv");
    std::fs::write(&sheet, rows).unwrap();
    command(home.path(), &["import", sheet.to_str().unwrap()]);
    home
}

fn shelf(home: &Path, on: NaiveDate) -> Shelf {
    let machine = Machine::with(RealDisk, Places::inside(&home.join("of-the-window")));
    let no_demo = |_| Err::<PathBuf, String>("no demo here".into());
    let mut shelf =
        Shelf::new(machine, "bench".into(), Some(on), Arc::new(no_demo)).with(&root(home), None, false);
    wait(&mut shelf);
    shelf
}

type Opened = Harness<'static, Window<Shelf>>;

/// Totals on the Sunday after a week of Mara's.
fn sunday(home: &Path, week: u64) -> Opened {
    let remembered = Remembered {
        place: Place::Totals,
        ..Remembered::default()
    };
    let book = shelf(home, mara::day(week) + Days::new(6));
    let mut harness = open(
        DESK,
        Choice::Light,
        Window::new(book, remembered),
        |ui, window| {
            window.logic(ui.ctx());
            window.ui(ui);
        },
    );
    harness.run();
    harness
}

/// The slider, so many whole kilograms down.
fn lighter(harness: &mut Opened, kg: usize) {
    for _ in 0..kg {
        harness.key_press_modifiers(Modifiers::SHIFT, Key::OpenBracket);
        harness.run_steps(2);
    }
}

fn lift(harness: &Opened) -> LiftView {
    harness.state().book.totals().open.unwrap()
}

fn best(lift: &LiftView, kind: Kind, reps: u16) -> BestView {
    let found = lift
        .bests
        .iter()
        .find(|best| best.kind == kind && best.reps == reps);
    found.unwrap().clone()
}

#[test]
fn five_sundays_on_screen() {
    let home = gym(&mara::sheet());

    // 1. Three weeks in: no slope of hers is made up, and that is said.
    let screen = sunday(home.path(), 2);
    screen.get_by_label_contains("No fit of your own yet: 3 weeks with a set that counts, 6 are asked");

    // 2. The first cut has just begun: her bodyweight hardly varied.
    let screen = sunday(home.path(), 8);
    screen.get_by_label_contains("your bodyweight hardly varied");

    // 3. The cut is over: a fit of her own, with what it isn't; and a bodyweight that she never had is called rough.
    let mut screen = sunday(home.path(), 30);
    screen.get_by_label_contains("It shows what went together, not what a cut does.");
    lighter(&mut screen, 2);
    screen.get_by_label_contains("lies outside what you logged");

    // 4. The top of the gain: the best system load and the best added stand here, the best ratio with the light weeks.
    let lift_then = lift(&sunday(home.path(), 69));
    let weighed = |kind| best(&lift_then, kind, 1).at.unwrap().0;
    assert!(weighed(Kind::System) > 83.0 && weighed(Kind::Added) > 83.0);
    assert!(weighed(Kind::Ratio) < 78.0);

    // 5. After the second cut: the slider stops where her healthy range starts, 18.5 × 1.72² = 54.7 kg, and says why.
    let mut screen = sunday(home.path(), 87);
    lighter(&mut screen, 30);
    screen.get_by_label_contains("Your healthy range starts at 54.7 kg; nothing is said below it.");
}

/// Nine weeks of pull-ups while bodyweight falls, the heaviest last; an odd one on the last day.
fn nine_weeks() -> String {
    let mut rows = "athlete,date,movement,bodyweight_kg,added_kg,reps,rir,height_cm,born\n".to_owned();
    let monday = NaiveDate::from_ymd_opt(2026, 1, 5).unwrap();
    for week in 0..9u32 {
        let date = monday + Days::new(7 * u64::from(week));
        let bodyweight = 80.0 - f64::from(week) / 2.0;
        let added = 17 + week;
        rows.push_str(&format!(
            "Ana,{date},pull-up,{bodyweight},{added},5,1,178,1990-02-03\n"
        ));
    }
    rows.push_str("Ana,2026-03-09,pull-up,76,70,5,1,178,1990-02-03\n");
    rows
}

#[test]
fn a_retracted_amended_or_confirmed_best_changes_every_number_of_the_open_window() {
    let home = gym(&nine_weeks());
    let home = home.path();
    let mut window = shelf(home, NaiveDate::from_ymd_opt(2026, 3, 11).unwrap());
    let lift = |shelf: &Shelf| shelf.totals().open.unwrap();
    let added = |shelf: &Shelf| best(&lift(shelf), Kind::Added, 5);
    let counted = |shelf: &Shelf| lift(shelf).fit.unwrap().sets;
    let believed = |shelf: &Shelf| lift(shelf).what_if.unwrap();

    // 70 kg after 25 looks like a slip: it stands, marked, and counts in nothing else.
    assert_eq!(
        (added(&window).value.as_str(), added(&window).doubted),
        ("+70 kg", true)
    );
    assert_eq!(
        lift(&window).points.iter().filter(|point| point.doubted).count(),
        1
    );
    let (sets, before) = (counted(&window), believed(&window));

    // Lifted again the next day: both count, and every number says so at once.
    let again = [
        "log",
        "--athlete",
        "Ana",
        "--movement",
        "pull-up",
        "--reps",
        "5",
        "--added",
        "70kg",
    ];
    let said = command(
        home,
        &[&again[..], &["--bodyweight", "76kg", "--at", "2026-03-10"]].concat(),
    );
    let second = said.split_whitespace().nth(1).unwrap().to_owned();
    assert!(until(&mut window, |shelf| !added(shelf).doubted));
    assert_eq!(counted(&window), sets + 2);
    assert!(
        believed(&window).log_sd > before.log_sd,
        "two sets so far from nine weeks: less is sure"
    );
    assert!(lift(&window).points.iter().all(|point| !point.doubted));
    let ratio = best(&lift(&window), Kind::Ratio, 5).value;

    // Its bodyweight amended: the ratio moves, the belt doesn't.
    command(home, &["amend", &second, "--bodyweight", "74kg"]);
    assert!(until(&mut window, |shelf| best(&lift(shelf), Kind::Ratio, 5)
        .value
        != ratio));
    assert_eq!(added(&window).value, "+70 kg");

    // Retracted: the first one is doubted again, and nothing else remembers the second.
    command(home, &["retract", &second]);
    assert!(until(&mut window, |shelf| added(shelf).doubted));
    assert_eq!(counted(&window), sets);
    assert_eq!(believed(&window), before);
    assert_eq!(best(&lift(&window), Kind::Ratio, 5).value, ratio);
}

/// 1 lb is 0.45359237 kg (international yard and pound agreement of 1959), so +90 and +120 lb differ by 30 lb and nothing less.
#[test]
fn a_change_between_two_bodyweights_is_exact_in_the_readers_pounds() {
    let mut rows = "athlete,date,movement,bodyweight_lb,added_lb,reps,rir\n".to_owned();
    for (day, bodyweight, added) in [
        ("2026-01-05", 154, 90),
        ("2026-02-05", 164, 100),
        ("2026-03-05", 174, 120),
    ] {
        rows += &format!("Ana Brook,{day},dip,{bodyweight},{added},1,0\n");
    }
    let home = gym(&rows);
    let shelf = shelf(home.path(), NaiveDate::from_ymd_opt(2026, 3, 6).unwrap());
    let two = shelf.totals().open.unwrap().two_weights.unwrap();
    let added = two.rows.iter().find(|row| row[0] == "Added").unwrap();
    assert_eq!(added[1..], ["+90 lb", "+120 lb", "+30 lb"]);
}
