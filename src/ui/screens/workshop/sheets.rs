//! Sheets over the Workshop: a new ladder's title, the list of files in a narrow window, and what has to be answered.

use egui::{TextEdit, Ui};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::screens::sheet::{SheetFrame, field_label, first_field, quiet};
use crate::ui::views::{Asks, WorkshopView};
use crate::ui::widgets::Button;
use crate::ui::workshop::WorkshopDeed;

use super::list;
use super::state::{Over, WorkshopState};

/// Shows the sheet that is open.
pub(super) fn sheets_ui(ui: &Ui, view: &WorkshopView, state: &mut WorkshopState, actions: &mut Actions) {
    if let Some(asks) = &view.asks {
        asks_ui(ui, asks, actions);
        return;
    }
    state.over = match state.over.take() {
        None => None,
        Some(Over::New(mut title)) => {
            let closed = new_ui(ui, &mut title, actions);
            (!closed).then_some(Over::New(title))
        }
        Some(Over::Files) => {
            let closed = SheetFrame::new("Ladders").width(420.0).show(ui, |ui| {
                state.bring_file = false;
                list::lines_ui(ui, view, state, actions)
            });
            (!closed).then_some(Over::Files)
        }
    };
}

/// A new ladder's title; true once it should close.
fn new_ui(ui: &Ui, title: &mut String, actions: &mut Actions) -> bool {
    SheetFrame::new("New ladder").show(ui, |ui| {
        quiet(
            ui,
            "It begins with three sound rungs to change. Its file and id come from the title.",
        );
        let label = field_label(ui, "Title");
        let field = ui.add(
            TextEdit::singleline(title)
                .char_limit(80)
                .desired_width(f32::INFINITY),
        );
        let field = field.labelled_by(label);
        let mut begins = first_field(ui, &field);
        ui.add_space(10.0);
        begins |= Button::main("Begin it").key("Enter").flow(ui).clicked();
        let begins = begins && !title.trim().is_empty();
        if begins {
            actions.write(Deed::Workshop(WorkshopDeed::New(title.clone())));
        }
        begins
    })
}

fn asks_ui(ui: &Ui, asks: &Asks, actions: &mut Actions) {
    let (title, words, answers): (&str, &str, &[(&str, WorkshopDeed)]) = match asks {
        Asks::Delete(words) => (
            "Delete this ladder?",
            words,
            &[
                ("Delete it", WorkshopDeed::Delete),
                ("Leave it", WorkshopDeed::LeaveIt),
            ],
        ),
        Asks::Settle(words) => (
            "Changed by somebody else",
            words,
            &[
                ("Save mine", WorkshopDeed::KeepMine),
                ("Take theirs", WorkshopDeed::TakeTheirs),
                ("Decide later", WorkshopDeed::LeaveIt),
            ],
        ),
    };
    let closed = SheetFrame::new(title).show(ui, |ui| {
        quiet(ui, words);
        ui.add_space(12.0);
        ui.horizontal_wrapped(|ui| {
            for (nth, (title, deed)) in answers.iter().enumerate() {
                let response = Button::plain(title).flow(ui);
                // What loses nothing is under Enter.
                if nth + 1 == answers.len() && ui.memory(|memory| memory.focused().is_none()) {
                    response.request_focus();
                }
                if response.clicked() {
                    actions.write(Deed::Workshop(deed.clone()));
                }
            }
        });
        false
    });
    if closed {
        actions.write(Deed::Workshop(WorkshopDeed::LeaveIt));
    }
}
