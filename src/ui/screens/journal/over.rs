//! Sheets over the journal: a record in full, why it is retracted, a remark.

use egui::{RichText, TextEdit, Ui};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::journal::JournalDeed;
use crate::ui::screens::sheet::{SheetFrame, field_label, first_field, quiet};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{JournalView, RecordView};
use crate::ui::widgets::Button;

use super::form::form_ui;
use super::{JournalState, Over};

/// Shows what lies over the journal, if anything does.
pub(in crate::ui::screens) fn over_ui(
    ui: &Ui,
    view: &JournalView,
    state: &mut JournalState,
    actions: &mut Actions,
) {
    if std::mem::take(&mut state.closes_popup) {
        egui::Popup::close_all(ui.ctx());
    }
    state.has_popup = state.over.is_some() && egui::Popup::is_any_open(ui.ctx());
    let Some(over) = &mut state.over else { return };
    let closed = match (over, &view.open) {
        (Over::Record, Some(record)) => record_ui(ui, record, view.read_only.as_deref(), actions),
        (Over::Form(Some(typed)), Some(record)) => form_ui(ui, record, typed, actions),
        (Over::Retract(why), Some(record)) => retract_ui(ui, record, why, actions),
        (Over::Note(text), _) => note_ui(ui, &view.name, text, actions),
        // Its view comes with the next loading.
        (Over::Record | Over::Form(_) | Over::Retract(_), _) => false,
    };
    if closed {
        state.over = None;
    }
}

fn record_ui(ui: &Ui, record: &RecordView, read_only: Option<&str>, actions: &mut Actions) -> bool {
    SheetFrame::new(&record.title).width(620.0).show(ui, |ui| {
        let theme = Theme::of(ui);
        for mark in &record.marks {
            ui.add_space(4.0);
            let words = RichText::new(mark)
                .font(Face::LabelStrong.at(15.0))
                .color(*theme.plum);
            ui.add(egui::Label::new(words).wrap());
        }
        ui.add_space(6.0);
        table(
            ui,
            "says",
            record
                .says
                .iter()
                .map(|(label, value)| (*label, value.as_str(), "")),
        );
        if !record.counts.is_empty() {
            heading(ui, "Counts as");
            let rows = record.counts.iter();
            table(
                ui,
                "counts",
                rows.map(|(label, value, how)| (*label, value.as_str(), how.as_str())),
            );
        }
        if !record.before.is_empty() {
            heading(ui, "What it said before");
            for (when, words) in &record.before {
                quiet(ui, when);
                let words = RichText::new(words).font(Face::Label.at(15.0)).color(*theme.ink);
                ui.add(egui::Label::new(words).wrap());
                ui.add_space(4.0);
            }
        }
        heading(ui, "On record");
        table(
            ui,
            "written",
            record
                .written
                .iter()
                .map(|(label, value)| (*label, value.as_str(), "")),
        );
        ui.add_space(12.0);
        match read_only {
            Some(words) => quiet(ui, words),
            None => buttons(ui, record, actions),
        }
        false
    })
}

fn buttons(ui: &mut Ui, record: &RecordView, actions: &mut Actions) {
    if record.retracted {
        quiet(ui, "A retracted record can't be amended; restore it first.");
        ui.add_space(4.0);
    }
    ui.horizontal(|ui| {
        let mut button = |title: &str, action: Action| {
            let key = action.key();
            if Button::plain(title).key(&key).flow(ui).clicked() {
                actions.ask(action);
            }
        };
        if record.retracted {
            button("Restore", Action::RestoreRecord);
        } else {
            button("Amend", Action::AmendRecord);
            button("Retract", Action::RetractRecord);
        }
    });
}

fn heading(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    ui.add_space(10.0);
    let words = RichText::new(words)
        .font(Face::LabelStrong.at(size::BODY))
        .color(*theme.ink);
    ui.label(words);
}

/// Labels, values, and how a value came about.
fn table<'r>(ui: &mut Ui, name: &str, rows: impl Iterator<Item = (&'r str, &'r str, &'r str)>) {
    let theme = Theme::of(ui);
    egui::Grid::new(name)
        .num_columns(2)
        .spacing([16.0, 3.0])
        .show(ui, |ui| {
            for (label, value, how) in rows {
                let label = RichText::new(label).font(Face::Label.at(15.0)).color(*theme.ink2);
                ui.vertical(|ui| {
                    ui.set_width(150.0);
                    ui.add(egui::Label::new(label).halign(egui::Align::Min));
                });
                ui.vertical(|ui| {
                    ui.set_max_width(ui.available_width().min(430.0));
                    let value = RichText::new(value)
                        .font(Face::LabelStrong.at(15.0))
                        .color(*theme.ink);
                    ui.add(egui::Label::new(value).wrap());
                    if !how.is_empty() {
                        quiet(ui, how);
                    }
                });
                ui.end_row();
            }
        });
}

fn retract_ui(ui: &Ui, record: &RecordView, why: &mut String, actions: &mut Actions) -> bool {
    SheetFrame::new("Retract").show(ui, |ui| {
        quiet(ui, &record.title);
        quiet(
            ui,
            "It stays on record and counts nowhere. It can be restored at any time.",
        );
        let label = field_label(ui, "Why; may stay empty");
        let field = ui.add(TextEdit::singleline(why).desired_width(f32::INFINITY));
        let entered = first_field(ui, &field.labelled_by(label));
        ui.add_space(8.0);
        let pressed = Button::main("Retract it").key("Enter").flow(ui).clicked();
        if pressed || entered {
            actions.write(Deed::Journal(JournalDeed::Retract(
                record.id.clone(),
                why.clone(),
            )));
        }
        false
    })
}

fn note_ui(ui: &Ui, name: &str, text: &mut String, actions: &mut Actions) -> bool {
    SheetFrame::new("Note").show(ui, |ui| {
        let label = field_label(ui, &format!("About {name}, today"));
        let field = ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY));
        let entered = first_field(ui, &field.labelled_by(label));
        ui.add_space(8.0);
        let pressed = Button::main("Write it").key("Enter").flow(ui).clicked();
        if (pressed || entered) && !text.trim().is_empty() {
            actions.write(Deed::Note(text.trim().to_owned()));
        }
        false
    })
}
