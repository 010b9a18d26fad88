//! The least window that eframe can open: an empty page. The start of the program is measured against it.
//!
//! `cargo run --release --example bare_window`, or with both in turn: `bash tests/window/start.sh`.

fn main() -> Result<(), String> {
    eframe::run_ui_native("Bare", eframe::NativeOptions::default(), |ui, _| {
        ui.label("Bare");
    })
    .map_err(|error| error.to_string())
}
