//! Sheets over the roster: what to print and where to, a new athlete, another name, a note.

use egui::{TextEdit, Ui};

use crate::coaching::typed::number;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::screens::printing::{Printing, What};
use crate::ui::screens::sheet::{SheetFrame, by_enter, field_label, first_field, quiet};
use crate::ui::views::{GymView, Paper, RosterLine, RosterView};
use crate::ui::widgets::Button;

use super::RosterState;

/// What lies over the roster.
#[derive(Debug, Clone, PartialEq)]
pub enum Over {
    /// A page to print.
    Print(Printing),
    /// A new athlete.
    New(NewPerson),
    /// Another name, or off the roster.
    Edit(Person),
    /// A remark.
    Note(Person),
}

/// A new athlete as typed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct NewPerson {
    name: String,
    ladder: String,
    bodyweight: String,
}

/// An athlete who is there, and what is typed of them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Person {
    athlete: String,
    before: String,
    typed: String,
}

impl Person {
    /// The athlete of a line.
    pub fn of(line: &RosterLine) -> Self {
        Self {
            athlete: line.athlete.clone(),
            before: line.name.clone(),
            typed: String::new(),
        }
    }
}

impl Over {
    /// A page for these athletes, in the usual place.
    pub fn print(paper: Paper, athletes: Vec<String>, gym: &GymView) -> Self {
        let name = match (paper, athletes.first()) {
            (Paper::Progress, Some(athlete)) => format!("report-{athlete}-{}.pdf", gym.today),
            _ => format!("sheet-{}.pdf", gym.today),
        };
        let path = std::path::Path::new(&gym.out_folder).join(name);
        Self::Print(Printing::new(What::Paper(paper, athletes), &path))
    }
}

/// Shows what lies over the roster, if anything does.
pub(super) fn over_ui(
    ui: &Ui,
    view: &RosterView,
    gym: &GymView,
    state: &mut RosterState,
    actions: &mut Actions,
) {
    let Some(over) = &mut state.over else { return };
    let closed = match over {
        Over::Print(printing) => {
            let who = match &printing.what {
                What::Paper(paper, athletes) => who(view, *paper, athletes),
                What::Picture(_) => String::new(),
            };
            printing.show(ui, &who, actions)
        }
        Over::New(person) => new_ui(ui, gym, person, actions),
        Over::Edit(person) => edit_ui(ui, gym, person, actions),
        Over::Note(person) => note_ui(ui, person, actions),
    };
    if closed {
        state.over = None;
    }
}

/// "Ana Brook, Bo Lund and 3 more".
fn who(view: &RosterView, paper: Paper, athletes: &[String]) -> String {
    let named = view.lines.iter().filter(|line| athletes.contains(&line.athlete));
    let names: Vec<&str> = named.map(|line| line.name.as_str()).collect();
    match names.as_slice() {
        [] => "Nobody is marked. Mark athletes with X.".to_owned(),
        [one] if paper != Paper::Progress && view.lines.len() > 1 => {
            format!("{one}. Mark more on the roster: X one, Shift+X all shown.")
        }
        [one] => (*one).to_owned(),
        [first, second] => format!("{first} and {second}"),
        [first, second, more @ ..] => format!("{first}, {second} and {} more", more.len()),
    }
}

fn new_ui(ui: &Ui, gym: &GymView, person: &mut NewPerson, actions: &mut Actions) -> bool {
    SheetFrame::new("New athlete").show(ui, |ui| {
        let label = field_label(ui, "Name");
        let field = ui.add(TextEdit::singleline(&mut person.name).desired_width(f32::INFINITY));
        let mut entered = first_field(ui, &field.labelled_by(label));
        let label = field_label(ui, "Ladder, by a part of its name; may stay empty");
        let field = ui.add(TextEdit::singleline(&mut person.ladder).desired_width(f32::INFINITY));
        entered |= by_enter(ui, &field.labelled_by(label));
        let ladder = ladder(gym, &person.ladder);
        let said = match (&ladder, person.ladder.trim()) {
            (_, "") => "None yet.",
            (Some((_, title)), _) => title,
            (None, _) => "No ladder is called so.",
        };
        quiet(ui, said);
        let unit = if gym.in_lb { "lb" } else { "kg" };
        let label = field_label(ui, &format!("Bodyweight, {unit}; may stay empty"));
        let field = ui.add(TextEdit::singleline(&mut person.bodyweight).desired_width(110.0));
        entered |= by_enter(ui, &field.labelled_by(label));
        let bodyweight = number(&person.bodyweight);
        let weighs = person.bodyweight.trim();
        if !weighs.is_empty() && bodyweight.is_none() {
            quiet(ui, "A number, like 74.6.");
        }
        ui.add_space(10.0);
        let pressed = Button::main("Add to the roster").key("Enter").flow(ui).clicked();
        let sound = !person.name.trim().is_empty()
            && (weighs.is_empty() || bodyweight.is_some())
            && (person.ladder.trim().is_empty() || ladder.is_some());
        if (pressed || entered) && sound {
            actions.write(Deed::Gym(GymDeed::NewAthlete {
                name: person.name.trim().to_owned(),
                ladder: ladder.map(|(id, _)| id.clone()),
                bodyweight,
            }));
        }
        false
    })
}

/// The ladder whose title begins with, else contains what was typed.
fn ladder<'g>(gym: &'g GymView, typed: &str) -> Option<&'g (String, String)> {
    let wanted = typed.trim().to_lowercase();
    if wanted.is_empty() {
        return None;
    }
    let title = |ladder: &&(String, String)| ladder.1.to_lowercase();
    let begins = gym
        .ladders
        .iter()
        .find(|ladder| title(ladder).starts_with(&wanted));
    begins.or_else(|| gym.ladders.iter().find(|ladder| title(ladder).contains(&wanted)))
}

fn edit_ui(ui: &Ui, gym: &GymView, person: &mut Person, actions: &mut Actions) -> bool {
    SheetFrame::new("Rename or archive").show(ui, |ui| {
        if !person.athlete.is_empty() {
            let label = field_label(ui, &format!("Another name for {}", person.before));
            let field = ui.add(
                TextEdit::singleline(&mut person.typed)
                    .hint_text(&person.before)
                    .desired_width(f32::INFINITY),
            );
            let entered = first_field(ui, &field.labelled_by(label));
            ui.add_space(8.0);
            let mut rename = entered;
            ui.horizontal(|ui| {
                rename |= Button::main("Rename").key("Enter").flow(ui).clicked();
                if Button::plain("Archive").flow(ui).clicked() {
                    actions.write(Deed::Gym(GymDeed::Archive {
                        athlete: person.athlete.clone(),
                        archived: true,
                    }));
                }
            });
            if rename && !person.typed.trim().is_empty() {
                actions.write(Deed::Gym(GymDeed::Rename {
                    athlete: person.athlete.clone(),
                    name: person.typed.trim().to_owned(),
                }));
            }
            quiet(
                ui,
                "Archived: off the roster and the sheets. Every record stays, and they can come back.",
            );
        }
        if !gym.archived.is_empty() {
            field_label(ui, "Archived");
        }
        for (athlete, name) in &gym.archived {
            ui.horizontal(|ui| {
                if Button::plain(&format!("Bring back {name}")).flow(ui).clicked() {
                    actions.write(Deed::Gym(GymDeed::Archive {
                        athlete: athlete.clone(),
                        archived: false,
                    }));
                }
            });
        }
        false
    })
}

fn note_ui(ui: &Ui, person: &mut Person, actions: &mut Actions) -> bool {
    SheetFrame::new("Note").show(ui, |ui| {
        let label = field_label(ui, &format!("About {}", person.before));
        let field = ui.add(TextEdit::singleline(&mut person.typed).desired_width(f32::INFINITY));
        let entered = first_field(ui, &field.labelled_by(label));
        ui.add_space(8.0);
        let pressed = Button::main("Write it").key("Enter").flow(ui).clicked();
        if (pressed || entered) && !person.typed.trim().is_empty() {
            actions.write(Deed::Gym(GymDeed::Note {
                athlete: person.athlete.clone(),
                text: person.typed.trim().to_owned(),
            }));
        }
        false
    })
}
