//! The form that amends a record: every field of its kind, each message beside its field.

use egui::{ComboBox, RichText, TextEdit, Ui};

use crate::logbook::exchange::Column;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::journal::JournalDeed;
use crate::ui::screens::sheet::{SheetFrame, by_enter, field_label, first_field, quiet};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{Choice, FieldView, RecordView};
use crate::ui::widgets::Button;

use super::Typed;

/// Shows the form; true once it should close.
pub(super) fn form_ui(ui: &Ui, record: &RecordView, typed: &mut Typed, actions: &mut Actions) -> bool {
    SheetFrame::new(&format!("Amend · {}", record.title)).width(680.0).show(ui, |ui| {
        let before = typed.fields.clone();
        let ladder = value(&typed.fields, Column::Ladder).to_owned();
        let mut entered = false;
        let mut is_first = true;
        for (views, values) in record.fields.chunks(2).zip(typed.fields.chunks_mut(2)) {
            let alone = views.len() == 1 && views.iter().all(|view| view.column == Column::Note);
            ui.columns(if alone { 1 } else { 2 }, |columns| {
                for ((ui, view), (_, text)) in columns.iter_mut().zip(views).zip(values) {
                    entered |= field_ui(ui, view, text, &ladder, is_first);
                    is_first = false;
                    for (_, words) in record.refused.iter().filter(|(at, _)| *at == Some(view.column)) {
                        wrong(ui, words);
                    }
                }
            });
        }
        ui.add_space(8.0);
        for (_, words) in record.refused.iter().filter(|(at, _)| at.is_none()) {
            wrong(ui, words);
        }
        quiet(
            ui,
            "An empty field takes its value away. What the record says now stays on record. A record of another kind is \
             retracted and logged anew.",
        );
        ui.add_space(8.0);
        let pressed = Button::main("Save the amend").key("Enter").flow(ui).clicked();
        let changed = changed(record, typed);
        if (pressed || entered) && !changed.is_empty() {
            actions.write(Deed::Journal(JournalDeed::Amend(typed.id.clone(), changed)));
        } else if before != typed.fields {
            let deed = if changed.is_empty() {
                JournalDeed::Show(Some(typed.id.clone()))
            } else {
                JournalDeed::Try(typed.id.clone(), changed)
            };
            actions.write(Deed::Journal(deed));
        }
        false
    })
}

fn value(fields: &[(Column, String)], column: Column) -> &str {
    let found = fields.iter().find(|(other, _)| *other == column);
    found.map_or("", |(_, text)| text)
}

/// The fields that say something else than the record does.
fn changed(record: &RecordView, typed: &Typed) -> Vec<(Column, String)> {
    let differs = |(column, text): &&(Column, String)| {
        let now = record.fields.iter().find(|field| field.column == *column);
        now.is_some_and(|field| field.value.trim() != text.trim())
    };
    typed.fields.iter().filter(differs).cloned().collect()
}

/// One field; true when Enter was pressed in it.
fn field_ui(ui: &mut Ui, view: &FieldView, text: &mut String, ladder: &str, is_first: bool) -> bool {
    let label = field_label(ui, view.label);
    if view.choices.is_empty() {
        let field = ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY));
        let field = field.labelled_by(label);
        return if is_first {
            first_field(ui, &field)
        } else {
            by_enter(ui, &field)
        };
    }
    let fits = |choice: &&Choice| choice.of.as_deref().is_none_or(|of| of == ladder);
    let mut choices = view.choices.iter().filter(fits);
    let title = choices.find(|choice| choice.value == *text);
    // What the catalogue no longer knows stays as it is written.
    let title = title
        .map_or(text.as_str(), |choice| choice.title.as_str())
        .to_owned();
    let combo = ComboBox::from_id_salt(("amend", view.column.name()))
        .selected_text(title)
        .width(ui.available_width() - 8.0)
        .height(300.0)
        .show_ui(ui, |ui| {
            for choice in view.choices.iter().filter(fits) {
                let is_it = choice.value == *text;
                if ui.selectable_label(is_it, &choice.title).clicked() {
                    text.clone_from(&choice.value);
                }
            }
        });
    combo.response.labelled_by(label);
    false
}

fn wrong(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let words = RichText::new(words)
        .font(Face::LabelStrong.at(size::TABLE))
        .color(*theme.plum);
    ui.add(egui::Label::new(words).wrap().halign(egui::Align::Min));
}
