//! The gym of this logbook: its name, unit, plates and belt, and the machines that write to it.

use egui::{TextEdit, Ui};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::screens::sheet::field_label;
use crate::ui::views::GymView;
use crate::ui::widgets::{Button, Choices};

use super::note;

/// The gym as it stands, and as it is typed.
#[derive(Default)]
pub(super) struct Gym {
    view: GymView,
    name: String,
    in_lb: bool,
    plates: String,
    gear: String,
}

impl Gym {
    /// Takes the gym as it stands; what is being typed stays while that is the same.
    pub fn load(&mut self, view: GymView) {
        let rack = |view: &GymView| {
            (
                view.name.clone(),
                view.in_lb,
                view.plates.clone(),
                view.gear.clone(),
            )
        };
        if rack(&view) != rack(&self.view) {
            (self.name, self.in_lb, self.plates, self.gear) = rack(&view);
        }
        self.view = view;
    }

    fn is_typed(&self) -> bool {
        let GymView {
            name,
            in_lb,
            plates,
            gear,
            ..
        } = &self.view;
        (&self.name, &self.in_lb, &self.plates, &self.gear) != (name, in_lb, plates, gear)
    }

    /// Name, unit, plates and belt.
    pub fn rack_ui(&mut self, ui: &mut Ui, actions: &mut Actions) {
        let label = field_label(ui, "Name; empty takes the folder's");
        ui.add(TextEdit::singleline(&mut self.name).desired_width(f32::INFINITY))
            .labelled_by(label);
        field_label(ui, "Weights in");
        let at = ui.cursor().min;
        let (row, pressed) = Choices {
            titles: &["kg", "lb"],
            chosen: usize::from(self.in_lb),
        }
        .show(ui, at);
        ui.advance_cursor_after_rect(row);
        if let Some(nth) = pressed {
            self.in_lb = nth == 1;
        }
        let unit = if self.in_lb { "lb" } else { "kg" };
        let label = field_label(
            ui,
            &format!("Plates on hand, {unit}; each as often as it is there, others like 45lb"),
        );
        ui.add(TextEdit::singleline(&mut self.plates).desired_width(f32::INFINITY))
            .labelled_by(label);
        let label = field_label(
            ui,
            &format!("Belt, chain and carabiner, {unit}; counts only with a plate on it"),
        );
        ui.add(TextEdit::singleline(&mut self.gear).desired_width(110.0))
            .labelled_by(label);
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            if Button::main("Save the gym").flow(ui).clicked() && self.is_typed() {
                actions.write(Deed::Gym(GymDeed::SetRack {
                    name: self.name.clone(),
                    in_lb: self.in_lb,
                    plates: self.plates.clone(),
                    gear: self.gear.clone(),
                }));
            }
        });
        note(
            ui,
            "Every load of this logbook is made of these. The version before goes to the state folder.",
        );
    }

    /// From which machines records came, and when last.
    pub fn machines_ui(&self, ui: &mut Ui) {
        if self.view.machines.is_empty() {
            note(ui, "No record yet.");
        }
        for machine in &self.view.machines {
            note(ui, &format!("{}: {}", machine.name, machine.words));
        }
        note(
            ui,
            "Git, a network share or a file-sync tool may carry the folder; each machine writes only its own files.",
        );
    }
}
