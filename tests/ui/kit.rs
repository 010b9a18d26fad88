//! Opens a screen in a test, and compares its picture byte by byte.

use egui::Ui;
use egui_kittest::{Harness, HarnessBuilder, SnapshotOptions, SnapshotResults};
use rungwright::ui::theme::{self, Choice};

use crate::renderer::CpuRenderer;

/// The size that pictures of whole screens have, unless they say otherwise.
pub const DESK: [f32; 2] = [1440.0, 900.0];
/// A small laptop.
pub const SMALL: [f32; 2] = [1024.0, 700.0];

/// A harness of `size` in `choice`, drawn by the CPU.
pub fn builder<State>(size: [f32; 2], choice: Choice) -> HarnessBuilder<State> {
    Harness::builder()
        .with_size(size)
        .with_theme(if choice == Choice::Dark {
            egui::Theme::Dark
        } else {
            egui::Theme::Light
        })
        .with_options(
            SnapshotOptions::new()
                .output_path("tests/pictures")
                .threshold(0.0),
        )
        .with_render_cursor(false)
        .with_max_steps(12)
        .renderer(CpuRenderer::default())
        .with_context_setup(move |ctx| {
            theme::set_type(ctx);
            theme::apply(ctx, choice);
        })
}

/// Draws a state in a screen of `size`.
pub fn open<'a, State: 'a>(
    size: [f32; 2],
    choice: Choice,
    state: State,
    mut draw: impl FnMut(&mut Ui, &mut State) + 'a,
) -> Harness<'a, State> {
    builder(size, choice).build_ui_state(
        move |ui, state| {
            // The harness leaves a margin; screens begin at the window's corner.
            let screen = ui.ctx().content_rect();
            let mut whole = ui.new_child(egui::UiBuilder::new().max_rect(screen));
            whole.set_clip_rect(screen);
            draw(&mut whole, state);
        },
        state,
    )
}

/// Draws parts in light and dark, one picture each.
pub fn in_both_themes(name: &str, size: [f32; 2], draw: impl Fn(&mut Ui) + Copy) {
    let mut shots = SnapshotResults::new();
    for (choice, suffix) in [(Choice::Light, "light"), (Choice::Dark, "dark")] {
        let mut harness = open(size, choice, (), move |ui, ()| {
            let theme = rungwright::ui::theme::Theme::of(ui);
            ui.painter().rect_filled(ui.max_rect(), 0.0, *theme.raised);
            draw(ui);
        });
        harness.run();
        harness.snapshot(format!("{name}-{suffix}"));
        shots.extend_harness(&mut harness);
    }
}
