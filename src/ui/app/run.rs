//! A window of the system around the content.

use egui::Ui;

use crate::ui::book::Book;
use crate::ui::key_queue::KeyQueue;
use crate::ui::sound::Play;
use crate::ui::theme;

use super::{Pick, Remembered, Window};

impl<B: Book> eframe::App for Window<B> {
    fn logic(&mut self, ctx: &egui::Context, _frame: &mut eframe::Frame) {
        Window::logic(self, ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        if let Some(size) = ui
            .ctx()
            .input(|input| input.viewport().inner_rect)
            .map(|rect| rect.size())
        {
            self.remembered.size = [size.x * ui.ctx().zoom_factor(), size.y * ui.ctx().zoom_factor()];
        }
        Window::ui(self, ui);
    }
}

/// Opens the window and returns when it is closed; `keep` is given what to remember.
///
/// # Errors
/// When the system has no display, or no way to draw on it.
pub fn run<B: Book + 'static>(
    remembered: Remembered,
    play: Option<Play>,
    make: impl FnOnce(&egui::Context) -> B + 'static,
    mut keep: impl FnMut(&Remembered) + 'static,
) -> Result<(), String> {
    let viewport = egui::ViewportBuilder::default()
        .with_title("Rungwright")
        .with_app_id("rungwright")
        .with_inner_size(remembered.size)
        .with_min_inner_size([480.0, 340.0]);
    let options = eframe::NativeOptions {
        viewport,
        persist_window: false,
        ..eframe::NativeOptions::default()
    };
    let started = eframe::run_native(
        "Rungwright",
        options,
        Box::new(move |creation| {
            let ctx = &creation.egui_ctx;
            ctx.add_plugin(KeyQueue::default());
            theme::set_type(ctx);
            theme::apply(ctx, remembered.theme);
            ctx.set_zoom_factor(remembered.zoom);
            let window = Window::new(make(ctx), remembered.clone())
                .with_sound(play)
                .with_picker(std::sync::Arc::new(pick));
            Ok(Box::new(Kept {
                window,
                keep: Box::new(move |remembered: &Remembered| keep(remembered)),
                kept: remembered,
            }))
        }),
    );
    started.map_err(|error| error.to_string())
}

/// Asks through the desktop's own dialog; none where there is no such dialog, or nothing was chosen.
fn pick(what: Pick) -> Option<std::path::PathBuf> {
    let dialog = rfd::FileDialog::new();
    match what {
        Pick::Folder => dialog.pick_folder(),
        Pick::Sheet => dialog
            .add_filter("Spreadsheet as text", &["csv", "tsv", "txt"])
            .pick_file(),
        Pick::Picture => dialog
            .add_filter("PNG picture", &["png"])
            .set_file_name("totals.png")
            .save_file(),
        Pick::Output => dialog
            .add_filter("PDF", &["pdf"])
            .set_file_name("sheet.pdf")
            .save_file(),
    }
}

/// A window whose memory is kept whenever it changes, so that a killed process loses nothing.
struct Kept<B> {
    window: Window<B>,
    keep: Box<dyn FnMut(&Remembered)>,
    kept: Remembered,
}

impl<B: Book> eframe::App for Kept<B> {
    fn logic(&mut self, ctx: &egui::Context, frame: &mut eframe::Frame) {
        eframe::App::logic(&mut self.window, ctx, frame);
    }

    fn ui(&mut self, ui: &mut Ui, frame: &mut eframe::Frame) {
        eframe::App::ui(&mut self.window, ui, frame);
        let dragging = ui.input(|input| input.pointer.any_down());
        if self.kept != self.window.remembered && !dragging {
            self.kept = self.window.remembered.clone();
            (self.keep)(&self.kept);
        }
    }
}
