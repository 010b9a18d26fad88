//! Sheets of Weigh-ins: a new weigh-in, and another phase.

use egui::{RichText, TextEdit, Ui};

use crate::logbook::exchange::Column;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::journal::JournalDeed;
use crate::ui::screens::sheet::{SheetFrame, by_enter, field_label, first_field, quiet};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::WeighInsView;
use crate::ui::widgets::{Button, Choices};

/// Something new, as typed.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Asked {
    /// What the scale showed, and on which day.
    WeighIn { mass: String, day: String },
    /// Which of the phases that may be set, and from which day.
    Phase { nth: usize, day: String },
}

impl Asked {
    pub fn weigh_in(view: &WeighInsView) -> Self {
        Self::WeighIn {
            mass: String::new(),
            day: view.day.clone(),
        }
    }

    pub fn phase(view: &WeighInsView) -> Self {
        Self::Phase {
            nth: 0,
            day: view.day.clone(),
        }
    }
}

/// Asks for it; true once it should close.
pub(super) fn asked_ui(ui: &Ui, view: &WeighInsView, asked: &mut Asked, actions: &mut Actions) -> bool {
    let title = match asked {
        Asked::WeighIn { .. } => "Weigh in",
        Asked::Phase { .. } => "Phase",
    };
    SheetFrame::new(title).width(460.0).show(ui, |ui| {
        let mut entered = false;
        let is_phase = matches!(asked, Asked::Phase { .. });
        let mut save = "Save the weigh-in";
        if let Asked::WeighIn { mass, .. } = asked {
            let label = field_label(
                ui,
                &format!("What the scale shows, {}, or with its unit", view.unit),
            );
            let field = ui.add(TextEdit::singleline(mass).desired_width(140.0));
            entered |= first_field(ui, &field.labelled_by(label));
            wrong(ui, view, Column::BodyweightKg);
        }
        if let Asked::Phase { nth, .. } = asked {
            let titles: Vec<&str> = view.may_set.iter().map(|(_, title, _)| *title).collect();
            let choices = Choices {
                titles: &titles,
                chosen: *nth,
            };
            ui.add_space(8.0);
            let (row, pressed) = choices.show(ui, ui.cursor().min);
            ui.advance_cursor_after_rect(row);
            *nth = pressed.unwrap_or(*nth);
            if let Some((_, _, means)) = view.may_set.get(*nth) {
                quiet(ui, means);
            }
            save = "Set the phase";
        }
        let (Asked::WeighIn { day, .. } | Asked::Phase { day, .. }) = asked;
        let label = field_label(ui, "Day, or day and time");
        let field = ui.add(TextEdit::singleline(day).desired_width(200.0));
        let field = field.labelled_by(label);
        entered |= if is_phase {
            first_field(ui, &field)
        } else {
            by_enter(ui, &field)
        };
        wrong(ui, view, Column::Date);
        ui.add_space(10.0);
        let pressed = Button::main(save).key("Enter").flow(ui).clicked();
        if pressed || entered {
            let (column, text, day) = match asked {
                Asked::WeighIn { mass, day } => (Column::BodyweightKg, mass.trim().to_owned(), day),
                Asked::Phase { nth, day } => {
                    let word = view.may_set.get(*nth).map_or("", |(word, ..)| word);
                    (Column::Phase, word.to_owned(), day)
                }
            };
            if !text.is_empty() {
                let said = vec![(Column::Date, day.trim().to_owned()), (column, text)];
                actions.write(Deed::Journal(JournalDeed::Add(said)));
            }
        }
        false
    })
}

fn wrong(ui: &mut Ui, view: &WeighInsView, column: Column) {
    let theme = Theme::of(ui);
    for (_, words) in view.refused.iter().filter(|(at, _)| *at == Some(column)) {
        let words = RichText::new(words)
            .font(Face::LabelStrong.at(size::TABLE))
            .color(*theme.plum);
        ui.add(egui::Label::new(words).wrap());
    }
}
