//! The sheet on which a try of today's meet is typed: which lift, its load, good or not.

use egui::{TextEdit, Ui};

use crate::coaching::typed::number;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::screens::sheet::{SheetFrame, field_label, first_field, quiet};
use crate::ui::views::TotalsView;
use crate::ui::widgets::{Button, Choices};
use crate::units::Unit;

/// A try as typed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Trying {
    /// Which of the view's lifts.
    pub lift: usize,
    /// Its load, as typed.
    pub load: String,
}

impl Trying {
    /// A try of the open lift where a meet has it, else of the first that is in the meet; none where nothing can be tried.
    pub fn of(view: &TotalsView) -> Option<Self> {
        let open = view.open.as_ref().and_then(|lift| view.lifts.get(lift.nth));
        let planned = view.meet.iter().flat_map(|meet| &meet.choices);
        let wanted = open.map(|tab| &tab.movement);
        let mut wanted = wanted.into_iter().chain(
            planned
                .filter(|choice| choice.chosen)
                .map(|choice| &choice.movement),
        );
        let found = wanted.find_map(|id| view.tries.iter().position(|lift| lift.movement == *id));
        let mut trying = Self::default();
        trying.turn(view, found.unwrap_or(0));
        (!view.tries.is_empty()).then_some(trying)
    }

    /// Another lift, with its next planned load.
    fn turn(&mut self, view: &TotalsView, lift: usize) {
        self.lift = lift;
        self.load = view
            .tries
            .get(lift)
            .map_or_else(String::new, |lift| lift.next.clone());
    }

    /// Asks for it; true once it should close.
    pub fn show(&mut self, ui: &Ui, view: &TotalsView, actions: &mut Actions) -> bool {
        SheetFrame::new("Log a try").width(560.0).show(ui, |ui| {
            let titles: Vec<&str> = view.tries.iter().map(|lift| lift.title.as_str()).collect();
            let choices = Choices {
                titles: &titles,
                chosen: self.lift,
            };
            let (row, pressed) = choices.show(ui, ui.cursor().min);
            ui.advance_cursor_after_rect(row);
            if let Some(nth) = pressed {
                self.turn(view, nth);
            }
            let unit = view.unit.sign();
            let label = field_label(ui, &format!("On the belt, or bar and discs, {unit}"));
            let field = ui.add(TextEdit::singleline(&mut self.load).desired_width(110.0));
            let entered = first_field(ui, &field.labelled_by(label));
            let load = load(&self.load, view.unit);
            if load.is_none() {
                quiet(ui, "A number, like 62.5; 0 with nothing on the belt.");
            }
            ui.add_space(10.0);
            let mut came = entered.then_some(true);
            ui.horizontal(|ui| {
                if Button::main("Good").key("Enter").flow(ui).clicked() {
                    came = Some(true);
                }
                if Button::plain("No lift").flow(ui).clicked() {
                    came = Some(false);
                }
            });
            if let (Some(good), Some(load), Some(lift)) = (came, load, view.tries.get(self.lift)) {
                actions.write(Deed::LogTry {
                    movement: lift.movement.clone(),
                    load,
                    good,
                });
            }
            false
        })
    }
}

/// A load as typed, with or without its sign and unit; below zero it is help.
fn load(text: &str, unit: Unit) -> Option<f64> {
    let text = text.trim().trim_end_matches(unit.sign()).trim();
    match text.strip_prefix(['-', '−']) {
        Some(help) => number(help).map(|help| -help),
        None => number(text.strip_prefix('+').unwrap_or(text)),
    }
}
