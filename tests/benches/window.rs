//! How long a frame of Next and of Ladders takes: layout and tessellation, without painting. And how long the book behind the
//! window takes after one more set.
//!
//! `cargo bench --bench window`

#![allow(missing_docs, clippy::unwrap_used, clippy::disallowed_methods)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::{Days, NaiveDate};
use egui::{Context, RawInput, Rect, pos2, vec2};
use rungwright::catalogue::Catalogue;
use rungwright::demo::{Plan, gym};
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::record::{Load, Set};
use rungwright::logbook::{Fact, Logbook, Machine, Name, Places, Record, Settings, Writer, Written};
use rungwright::strength::beliefs;
use rungwright::timeline::Timeline;
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::{Book, Deed, Done};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::{self, Choice};
use rungwright::ui::views::{Place, SetDraft};
use rungwright::units::{Effort, Given, Outcome, Rail, Reps, Typed, Unit};

fn main() {
    divan::main();
}

/// A gym of twelve on disk, and the window on it.
fn window(home: &Path, place: Place) -> Window<Shelf> {
    let on = NaiveDate::from_ymd_opt(2026, 3, 18).unwrap();
    let machine = Machine::with(RealDisk, Places::inside(home));
    let root = machine.places().default_logbook();
    let gym = gym(&Plan {
        athletes: 12,
        years: 1,
        seed: 1,
        on,
    });
    let now = chrono::DateTime::UNIX_EPOCH;
    let wait = std::time::Duration::ZERO;
    let (mut writer, _) = Writer::lock(&machine, &root, "demo".into(), now, wait).unwrap();
    writer.write_settings(&Settings::fresh(Unit::Kg)).unwrap();
    let batch = gym
        .athletes
        .iter()
        .map(|(name, records)| (Name::parse(name).unwrap(), records.clone()))
        .collect();
    writer.commit(batch).unwrap();
    drop(writer);
    let no_demo = |_| Err::<PathBuf, String>(String::new());
    let mut shelf = Shelf::new(machine, "bench".into(), Some(on), Arc::new(no_demo)).with(&root, None, false);
    while shelf.progress().is_some() {
        shelf.poll();
    }
    Window::new(
        shelf,
        Remembered {
            place,
            ..Remembered::default()
        },
    )
}

fn frame(bencher: divan::Bencher<'_, '_>, place: Place) {
    let home = tempfile::tempdir().unwrap();
    let mut window = window(home.path(), place);
    let ctx = Context::default();
    theme::set_type(&ctx);
    theme::apply(&ctx, Choice::Light);
    let mut time = 0.0;
    let mut draw = || {
        time += 1.0 / 60.0;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(pos2(0.0, 0.0), vec2(1440.0, 900.0))),
            time: Some(time),
            ..RawInput::default()
        };
        let output = ctx.run_ui(input, |ui| {
            window.logic(ui.ctx());
            window.ui(ui);
        });
        ctx.tessellate(output.shapes, output.pixels_per_point)
    };
    draw();
    bencher.bench_local(draw);
}

#[divan::bench]
fn next(bencher: divan::Bencher<'_, '_>) {
    frame(bencher, Place::Next);
}

#[divan::bench]
fn ladders(bencher: divan::Bencher<'_, '_>) {
    frame(bencher, Place::Ladders);
}

/// Somebody who did twelve sets of weighted pull-ups three days a week for so many years, and the book on them.
fn book(home: &Path, years: u64) -> Shelf {
    let on = NaiveDate::from_ymd_opt(2026, 3, 18).unwrap();
    let machine = Machine::with(RealDisk, Places::inside(home));
    let root = machine.places().default_logbook();
    let set = |added: f64| {
        Fact::Set(Set {
            movement: "pull-up".into(),
            side: None,
            load: Some(Load::Added(Typed::new(added, Unit::Kg).unwrap())),
            effort: Effort::Reps(Reps::try_from(5).unwrap()),
            left: Some(Given::rir(1.0).unwrap()),
            outcome: Outcome::Done,
            bodyweight: Some(Typed::new(80.0, Unit::Kg).unwrap()),
            ladder: Some("weighted-pull-up".into()),
            rung: Some("plus-25".into()),
            note: None,
        })
    };
    let days = (1..365 * years).rev().filter(|ago| ago % 7 % 2 == 1);
    let mut facts: Vec<(NaiveDate, Fact)> = Vec::new();
    for (nth, ago) in days.enumerate() {
        let load = 20.0 + 1.25 * f64::from(u32::try_from(nth / 40).unwrap());
        facts.extend((0..12).map(|_| (on - Days::new(ago), set(load))));
    }
    let records = facts.into_iter().zip(0u32..).map(|((date, what), nth)| Record {
        id: rungwright::clock::fresh_id(),
        rev: 0,
        dev: "bench".into(),
        at: Written::day(date),
        nth,
        what,
    });
    let now = chrono::DateTime::UNIX_EPOCH;
    let wait = std::time::Duration::ZERO;
    let (mut writer, _) = Writer::lock(&machine, &root, "bench".into(), now, wait).unwrap();
    writer.write_settings(&Settings::fresh(Unit::Kg)).unwrap();
    let ana = Name::parse("Ana Brook").unwrap();
    writer.commit(vec![(ana, records.collect())]).unwrap();
    drop(writer);
    let no_demo = |_| Err::<PathBuf, String>(String::new());
    let mut shelf = Shelf::new(machine, "bench".into(), Some(on), Arc::new(no_demo)).with(&root, None, false);
    while shelf.progress().is_some() {
        shelf.poll();
    }
    shelf
}

/// Logs one more set, today.
fn log_one(shelf: &mut Shelf) {
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
}

/// Years of training.
const YEARS: [u64; 2] = [1, 5];

/// What every question would cost if nothing were kept: all sets read by the filter.
#[divan::bench(args = YEARS, sample_count = 20, sample_size = 1)]
fn after_a_set_if_read_anew(bencher: divan::Bencher<'_, '_>, years: u64) {
    let home = tempfile::tempdir().unwrap();
    drop(book(home.path(), years));
    let machine = Machine::with(RealDisk, Places::inside(home.path()));
    let (book, _) = Logbook::open(&machine, &machine.places().default_logbook()).unwrap();
    let on = NaiveDate::from_ymd_opt(2026, 3, 18).unwrap();
    let timeline = Timeline::new(&book.logs[0], Catalogue::shipped(), on);
    bencher.bench_local(|| beliefs(&timeline));
}

#[divan::bench(args = YEARS, sample_count = 20, sample_size = 1)]
fn after_a_set_write_and_read_back(bencher: divan::Bencher<'_, '_>, years: u64) {
    let home = tempfile::tempdir().unwrap();
    let mut shelf = book(home.path(), years);
    bencher.bench_local(|| log_one(&mut shelf));
}

/// The same day's set again and again: the one before is taken back.
fn after_a_set<T>(bencher: divan::Bencher<'_, '_>, years: u64, view: impl Fn(&Shelf) -> T) {
    let home = tempfile::tempdir().unwrap();
    let shelf = std::cell::RefCell::new(book(home.path(), years));
    log_one(&mut shelf.borrow_mut());
    view(&shelf.borrow());
    let again = || {
        assert!(matches!(shelf.borrow_mut().perform(Deed::Undo), Done::Ok(_)));
        log_one(&mut shelf.borrow_mut());
    };
    bencher
        .with_inputs(again)
        .bench_local_values(|()| view(&shelf.borrow()));
}

#[divan::bench(args = YEARS, sample_count = 20, sample_size = 1)]
fn after_a_set_next(bencher: divan::Bencher<'_, '_>, years: u64) {
    after_a_set(bencher, years, Shelf::next);
}

#[divan::bench(args = YEARS, sample_count = 20, sample_size = 1)]
fn after_a_set_ladders(bencher: divan::Bencher<'_, '_>, years: u64) {
    after_a_set(bencher, years, Shelf::ladders);
}

#[divan::bench(args = YEARS, sample_count = 20, sample_size = 1)]
fn after_a_set_totals(bencher: divan::Bencher<'_, '_>, years: u64) {
    after_a_set(bencher, years, Shelf::totals);
}
