//! A spreadsheet is brought: pasted or read from a file, columns matched by name, rows and what is wrong with them shown before
//! anything is written.

use egui::{ComboBox, Rect, ScrollArea, TextEdit, Ui, UiBuilder, vec2};

use crate::ui::action::Actions;
use crate::ui::book::{Deed, ImportText};
use crate::ui::screens::next::header_bar;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::Theme;
use crate::ui::views::ImportView;
use crate::ui::widgets::Button;

/// What is typed so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ImportState {
    /// The text and how its columns were matched.
    pub text: ImportText,
    /// The text that the preview was asked for.
    asked: ImportText,
}

/// Shows the import; true when it should close.
pub(super) fn import_ui(
    ui: &mut Ui,
    view: Option<&ImportView>,
    state: &mut ImportState,
    actions: &mut Actions,
) -> bool {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    header_bar(ui, header, "Bring a spreadsheet");
    let body = Rect::from_min_max(
        header.left_bottom() + vec2(24.0, 8.0),
        whole.max - vec2(24.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    let mut close = false;
    ScrollArea::vertical()
        .id_salt("import")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.set_max_width(body.width() - 16.0);
            let label = field_label(
                ui,
                "Paste the rows with their header, or drop a CSV file on this window",
            );
            let edit = TextEdit::multiline(&mut state.text.text)
                .desired_rows(6)
                .desired_width(f32::INFINITY)
                .code_editor();
            ui.add(edit).labelled_by(label);
            if let Some(text) = dropped(ui) {
                state.text = ImportText {
                    text,
                    columns: Vec::new(),
                };
            }
            if state.text != state.asked && !state.text.text.trim().is_empty() {
                state.asked = state.text.clone();
                actions.write(Deed::PreviewImport(state.text.clone()));
            }
            if let Some(view) = view.filter(|_| !state.text.text.trim().is_empty()) {
                preview_ui(ui, view, state);
            }
            ui.add_space(10.0);
            ui.horizontal(|ui| {
                let good = view.map_or(0, |view| view.good);
                let bad = view.map_or(0, |view| view.bad);
                let sound = good > 0 && bad == 0 && !state.text.text.trim().is_empty();
                let title = format!("Write {good} rows");
                if ui
                    .add_enabled_ui(sound, |ui| Button::main(&title).flow(ui).clicked())
                    .inner
                {
                    actions.write(Deed::Import(state.text.clone()));
                }
                close = Button::plain("Back").key("Esc").flow(ui).clicked();
                if bad > 0 {
                    ui.colored_label(
                        *theme.plum,
                        format!("{bad} rows have a problem. Nothing is written until they are mended."),
                    );
                }
            });
            ui.add_space(16.0);
        });
    close
}

/// The text of a file that was dropped on the window.
fn dropped(ui: &Ui) -> Option<String> {
    ui.input(|input| {
        input.raw.dropped_files.iter().find_map(|file| {
            file.bytes()
                .ok()
                .map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
        })
    })
}

fn preview_ui(ui: &mut Ui, view: &ImportView, state: &mut ImportState) {
    let theme = Theme::of(ui);
    if let Some(problem) = &view.problem {
        ui.colored_label(*theme.plum, problem);
    }
    field_label(ui, "Columns");
    ui.horizontal_wrapped(|ui| {
        for (theirs, ours) in &view.columns {
            let shown = ours.as_deref().unwrap_or("left out");
            let combo =
                ComboBox::from_id_salt(("column", theirs)).selected_text(format!("{theirs} → {shown}"));
            combo.show_ui(ui, |ui| {
                for known in std::iter::once("").chain(view.known_columns.iter().copied()) {
                    let name = if known.is_empty() { "leave out" } else { known };
                    if ui
                        .selectable_label(ours.as_deref().unwrap_or("") == known, name)
                        .clicked()
                    {
                        state.text.columns.retain(|(column, _)| column != theirs);
                        state.text.columns.push((theirs.clone(), known.to_owned()));
                    }
                }
            });
        }
    });
    field_label(
        ui,
        &format!("Rows: {} sound, {} with a problem", view.good, view.bad),
    );
    for row in view.rows.iter().take(200) {
        ui.horizontal(|ui| {
            ui.monospace(format!("{:>5}", row.line));
            ui.add(egui::Label::new(egui::RichText::new(row.cells.join("  ·  ")).monospace()).truncate());
        });
        if let Some(problem) = &row.problem {
            ui.colored_label(*theme.plum, problem);
        }
    }
}
