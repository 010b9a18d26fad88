//! The sheet that asks where a file to hand out goes, a page to print or a picture, over whatever place it was asked on.

use std::path::Path;

use egui::{TextEdit, Ui};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::views::Paper;
use crate::ui::widgets::{Button, Choices};

use super::sheet::{SheetFrame, field_label, first_field, quiet};

/// Something to hand out, and where it goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Printing {
    /// What.
    pub what: What,
    /// Where to, as typed or picked.
    pub path: String,
}

/// What is handed out.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// A page, or pages, of the athletes with these keys.
    Paper(Paper, Vec<String>),
    /// A picture as PNG.
    Picture(Vec<u8>),
}

impl Printing {
    /// Goes to `path` unless somebody says otherwise.
    pub fn new(what: What, path: &Path) -> Self {
        Self {
            what,
            path: path.to_string_lossy().into_owned(),
        }
    }

    /// A place was picked.
    pub fn picked(&mut self, path: &Path) {
        self.path = path.to_string_lossy().into_owned();
    }

    /// Asks where it goes; `who` is on it. True once it should close: by Esc or a press outside.
    pub fn show(&mut self, ui: &Ui, who: &str, actions: &mut Actions) -> bool {
        let (title, label, pick) = match &self.what {
            What::Paper(Paper::Progress, _) => ("Report of progress", "The PDF goes to", Action::PickOutput),
            What::Paper(Paper::Meet, _) => ("Sheet for the meet", "The PDF goes to", Action::PickOutput),
            What::Paper(..) => ("Sheet for tonight", "The PDF goes to", Action::PickOutput),
            What::Picture(_) => ("Save picture", "The PNG goes to", Action::PickPicture),
        };
        SheetFrame::new(title).width(560.0).show(ui, |ui| {
            quiet(ui, who);
            if let What::Paper(paper @ (Paper::Pages | Paper::Table), _) = &mut self.what {
                layout(ui, paper);
            }
            let label = field_label(ui, label);
            let field = ui.add(TextEdit::singleline(&mut self.path).desired_width(f32::INFINITY));
            let field = field.labelled_by(label);
            let mut write = first_field(ui, &field);
            ui.add_space(10.0);
            ui.horizontal(|ui| {
                write |= Button::main("Write it").key("Enter").flow(ui).clicked();
                if Button::plain("Pick a place").flow(ui).clicked() {
                    actions.ask(pick);
                }
            });
            if write {
                self.write(actions);
            }
            false
        })
    }

    fn write(&self, actions: &mut Actions) {
        let to = self.path.trim().into();
        match &self.what {
            What::Paper(_, athletes) if athletes.is_empty() => {}
            What::Paper(paper, athletes) => actions.write(Deed::Gym(GymDeed::Print {
                paper: *paper,
                athletes: athletes.clone(),
                to,
            })),
            What::Picture(png) => actions.write(Deed::Gym(GymDeed::Picture { png: png.clone(), to })),
        }
    }
}

fn layout(ui: &mut Ui, paper: &mut Paper) {
    field_label(ui, "Laid out as");
    let at = ui.cursor().min;
    let (row, pressed) = Choices {
        titles: &["A page an athlete", "A table a movement"],
        chosen: usize::from(*paper == Paper::Table),
    }
    .show(ui, at);
    ui.advance_cursor_after_rect(row);
    if let Some(nth) = pressed {
        *paper = if nth == 0 { Paper::Pages } else { Paper::Table };
    }
}
