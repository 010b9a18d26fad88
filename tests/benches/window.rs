//! How long a frame of Next and of Ladders takes: layout and tessellation, without painting.
//!
//! `cargo bench --bench window`

#![allow(missing_docs, clippy::unwrap_used, clippy::disallowed_methods)]

use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::NaiveDate;
use egui::{Context, RawInput, Rect, pos2, vec2};
use rungwright::demo::{Plan, gym};
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Machine, Name, Places, Settings, Writer};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::Book;
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::{self, Choice};
use rungwright::ui::views::Place;
use rungwright::units::Unit;

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
