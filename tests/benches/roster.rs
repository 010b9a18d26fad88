//! How long a frame of the roster takes with 500 athletes, laid out and tessellated, still and while it scrolls.

#![allow(missing_docs, clippy::unwrap_used)]

use divan::Bencher;
use egui::{Context, Event, MouseWheelUnit, Pos2, RawInput, Rect, TouchPhase, vec2};
use rungwright::ui::action::Actions;
use rungwright::ui::screens::roster::{RosterState, roster_ui};
use rungwright::ui::theme::{self, Choice};
use rungwright::ui::views::{LyingView, Need, RosterLine, RosterView, Verdict};
use rungwright::units::Rail;

fn main() {
    divan::main();
}

fn gym(athletes: usize) -> RosterView {
    let line = |nth: usize| {
        let need = Need::ALL[nth * Need::ALL.len() / athletes];
        RosterLine {
            athlete: format!("athlete-{nth}"),
            name: format!("Athlete Number {nth}"),
            need,
            glyph: Some(LyingView {
                hands: vec![(Rail::Left, 0.4), (Rail::Right, 0.5)],
                ticks: vec![0.1, 0.3, 0.44, 0.62, 0.7],
                goal: 0.88,
            }),
            ladder: "One-arm pull-up".into(),
            rung: "L Two fingers help, R One finger helps".into(),
            verdicts: vec![(Rail::Left, Verdict::StepUp), (Rail::Right, Verdict::Repeat)],
            weighs: "74.6 kg".into(),
            weighed_ago: "3 d".into(),
            weigh_in_is_old: false,
            pain: Some("elbow R 2".into()),
            pain_matters: false,
            last_set: "Mon 13".into(),
            why: vec![(Rail::Left, "You met the standard on two days.".into())],
        }
    };
    RosterView {
        lines: (0..athletes).map(line).collect(),
    }
}

/// A frame after some to warm up, `scroll` points further down each time.
fn frames(bencher: Bencher<'_, '_>, athletes: usize, scroll: f32) {
    let ctx = Context::default();
    theme::set_type(&ctx);
    theme::apply(&ctx, Choice::Light);
    let view = gym(athletes);
    let mut state = RosterState::default();
    let mut time = 0.0;
    let mut frame = move || {
        time += 1.0 / 60.0;
        let screen = Rect::from_min_size(Pos2::ZERO, vec2(1440.0, 900.0));
        let mut input = RawInput {
            screen_rect: Some(screen),
            time: Some(time),
            ..RawInput::default()
        };
        if scroll != 0.0 {
            input.events.push(Event::PointerMoved(screen.center()));
            input.events.push(Event::MouseWheel {
                unit: MouseWheelUnit::Point,
                delta: vec2(0.0, -scroll),
                phase: TouchPhase::Move,
                source: egui::MouseWheelSource::Wheel,
                modifiers: egui::Modifiers::NONE,
            });
        }
        let output = ctx.run_ui(input, |ui| {
            roster_ui(ui, &view, &mut state, &mut Actions::default())
        });
        let shapes = ctx.tessellate(output.shapes, output.pixels_per_point);
        shapes.len()
    };
    (0..5).for_each(|_| {
        frame();
    });
    bencher.bench_local(frame);
}

#[divan::bench(args = [36, 500, 5000])]
fn a_frame(bencher: Bencher<'_, '_>, athletes: usize) {
    frames(bencher, athletes, 0.0);
}

#[divan::bench(args = [36, 500, 5000])]
fn a_frame_while_scrolling(bencher: Bencher<'_, '_>, athletes: usize) {
    frames(bencher, athletes, 40.0);
}
