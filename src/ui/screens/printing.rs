//! The sheet that asks where a page to print goes, over whatever place it was asked on.

use std::path::Path;

use egui::{TextEdit, Ui};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::views::Paper;
use crate::ui::widgets::{Button, Choices};

use super::sheet::{SheetFrame, field_label, first_field, quiet};

/// A page to print.
#[derive(Debug, Clone, PartialEq)]
pub struct Printing {
    /// What.
    pub paper: Paper,
    /// The athletes' keys.
    pub athletes: Vec<String>,
    /// Where to, as typed or picked.
    pub path: String,
}

impl Printing {
    /// A page for these athletes, to go to `path` unless somebody says otherwise.
    pub fn new(paper: Paper, athletes: Vec<String>, path: &Path) -> Self {
        Self {
            paper,
            athletes,
            path: path.to_string_lossy().into_owned(),
        }
    }

    /// A place was picked.
    pub fn picked(&mut self, path: &Path) {
        self.path = path.to_string_lossy().into_owned();
    }

    /// Asks where it goes; `who` is on it. Esc or a press outside closes it, as every sheet.
    pub fn show(&mut self, ui: &Ui, who: &str, actions: &mut Actions) -> bool {
        let title = match self.paper {
            Paper::Progress => "Report of progress",
            Paper::Meet => "Sheet for the meet",
            Paper::Pages | Paper::Table => "Sheet for tonight",
        };
        SheetFrame::new(title).width(560.0).show(ui, |ui| {
            quiet(ui, who);
            if matches!(self.paper, Paper::Pages | Paper::Table) {
                self.layout(ui);
            }
            let label = field_label(ui, "The PDF goes to");
            let field = ui.add(TextEdit::singleline(&mut self.path).desired_width(f32::INFINITY));
            let field = field.labelled_by(label);
            let mut write = first_field(ui, &field);
            ui.add_space(10.0);
            ui.horizontal(|ui| {
                write |= Button::main("Write it").key("Enter").flow(ui).clicked();
                if Button::plain("Pick a place").flow(ui).clicked() {
                    actions.ask(Action::PickOutput);
                }
            });
            if write && !self.athletes.is_empty() {
                actions.write(Deed::Gym(GymDeed::Print {
                    paper: self.paper,
                    athletes: self.athletes.clone(),
                    to: self.path.trim().into(),
                }));
            }
            false
        })
    }

    fn layout(&mut self, ui: &mut Ui) {
        field_label(ui, "Laid out as");
        let at = ui.cursor().min;
        let (row, pressed) = Choices {
            titles: &["A page an athlete", "A table a movement"],
            chosen: usize::from(self.paper == Paper::Table),
        }
        .show(ui, at);
        ui.advance_cursor_after_rect(row);
        if let Some(nth) = pressed {
            self.paper = if nth == 0 { Paper::Pages } else { Paper::Table };
        }
    }
}
