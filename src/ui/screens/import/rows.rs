//! How the columns were matched, and the rows with what is wrong with them.

use egui::{ComboBox, Label, RichText, Ui};

use crate::ui::book::ImportText;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::ImportView;

/// Every column of theirs, with ours to choose.
pub(super) fn columns_ui(ui: &mut Ui, view: &ImportView, text: &mut ImportText) {
    if view.columns.is_empty() {
        return;
    }
    let theme = Theme::of(ui);
    let label = field_label(ui, "Columns: yours, and what each is here");
    ui.horizontal_wrapped(|ui| {
        for (theirs, ours) in &view.columns {
            let shown = ours.as_deref().unwrap_or("left out");
            let colour = if ours.is_some() { *theme.ink } else { *theme.ember };
            let words = RichText::new(format!("{theirs} → {shown}")).color(colour);
            let combo = ComboBox::from_id_salt(("column", theirs))
                .selected_text(words)
                .width(160.0);
            let column = combo.show_ui(ui, |ui| {
                for known in std::iter::once("").chain(view.known_columns.iter().copied()) {
                    let name = if known.is_empty() { "leave out" } else { known };
                    let is_it = ours.as_deref().unwrap_or("") == known;
                    if ui.selectable_label(is_it, name).clicked() {
                        text.columns.retain(|(column, _)| column != theirs);
                        text.columns.push((theirs.clone(), known.to_owned()));
                    }
                }
            });
            column.response.labelled_by(label);
        }
    });
}

/// Rows, each with its line and what is wrong with it.
pub(super) fn rows_ui(ui: &mut Ui, view: &ImportView) {
    let theme = Theme::of(ui);
    let heading = match (view.good, view.bad) {
        (0, 0) => "Rows".to_owned(),
        (good, 0) => format!("{}, all sound", counted(good)),
        (good, bad) => format!("{} sound, {bad} with a problem", counted(good)),
    };
    field_label(ui, &heading);
    for row in &view.rows {
        ui.horizontal(|ui| {
            let mono = |text: String| RichText::new(text).font(Face::Code.at(size::TABLE));
            ui.label(mono(format!("{:>5}", row.line)).color(*theme.ink2));
            ui.add(Label::new(mono(row.text.clone()).color(*theme.ink)).truncate());
        });
        if let Some(problem) = &row.problem {
            ui.horizontal(|ui| {
                ui.add_space(52.0);
                ui.add(Label::new(RichText::new(problem).color(*theme.plum)).wrap());
            });
        }
    }
    let shown = view.rows.len();
    if view.good + view.bad > shown {
        ui.colored_label(*theme.ink2, "The rest isn’t shown; all of it is checked.");
    }
}

/// `1 row`, `120 rows`.
pub(super) fn counted(rows: usize) -> String {
    format!("{rows} {}", if rows == 1 { "row" } else { "rows" })
}
