//! The sheet of a session from a budget of sets: how many, and what to do with them, with reasons.

use egui::{Key, Modifiers, RichText, TextEdit, Ui};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::sheet::{SheetFrame, field_label, quiet};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{Place, SessionBlock, SessionView};
use crate::ui::widgets::Button;
use crate::units::Rail;

/// Sets of a session that are believed. Common practice, no source: it only catches slips.
const MOST: u16 = 60;

/// What is typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SessionSheet {
    sets: String,
    /// The budget that was last asked for.
    asked: u16,
    is_new: bool,
}

impl SessionSheet {
    pub fn of(budget: u16) -> Self {
        Self {
            sets: budget.to_string(),
            asked: budget,
            is_new: true,
        }
    }

    /// Shows it; true once it should close.
    pub fn show(&mut self, ui: &Ui, view: &SessionView, care: &str, actions: &mut Actions) -> bool {
        let mut goes = false;
        let closed = SheetFrame::new("Build a session").width(620.0).show(ui, |ui| {
            self.budget_ui(ui, view, actions);
            ui.add_space(8.0);
            quiet(ui, &view.head);
            for (nth, block) in view.blocks.iter().enumerate() {
                block_ui(ui, nth, block);
            }
            if !view.left_out.is_empty() {
                heading(ui, "Not today");
                view.left_out.iter().for_each(|words| quiet(ui, words));
            }
            ui.add_space(12.0);
            quiet(ui, care);
            if !view.blocks.is_empty() {
                ui.add_space(8.0);
                goes = Button::plain("Go to Next, to log it").flow(ui).clicked();
            }
            false
        });
        if goes {
            actions.ask(Action::Go(Place::Next));
        }
        closed || goes
    }

    /// The number of sets: typed, or changed by one.
    fn budget_ui(&mut self, ui: &mut Ui, view: &SessionView, actions: &mut Actions) {
        let before = typed(&self.sets);
        let by_key = |ui: &Ui, key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
        let (mut up, mut down) = (by_key(ui, Key::ArrowUp), by_key(ui, Key::ArrowDown));
        let label = field_label(
            ui,
            "Sets of the whole session, one for each side; ↑ ↓ change them",
        );
        ui.horizontal(|ui| {
            let field = ui.add(
                TextEdit::singleline(&mut self.sets)
                    .desired_width(70.0)
                    .char_limit(3),
            );
            let field = field.labelled_by(label);
            if std::mem::take(&mut self.is_new) {
                field.request_focus();
            }
            down |= Button::plain("One fewer").flow(ui).clicked();
            up |= Button::plain("One more").flow(ui).clicked();
        });
        if up != down {
            let sets = before.unwrap_or(view.budget);
            let sets = if up { sets + 1 } else { sets.saturating_sub(1) };
            self.sets = sets.clamp(1, MOST).to_string();
        }
        match typed(&self.sets) {
            None => quiet(ui, &format!("A whole number from 1 to {MOST}.")),
            Some(sets) if sets != self.asked => {
                self.asked = sets;
                actions.write(Deed::SessionOf(sets));
            }
            Some(_) => {}
        }
    }
}

fn typed(text: &str) -> Option<u16> {
    text.trim().parse().ok().filter(|sets| (1..=MOST).contains(sets))
}

fn heading(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    ui.add_space(10.0);
    ui.label(
        RichText::new(words)
            .font(Face::LabelStrong.at(size::BODY))
            .color(*theme.ink),
    );
}

fn block_ui(ui: &mut Ui, nth: usize, block: &SessionBlock) {
    let theme = Theme::of(ui);
    heading(ui, &format!("{}. {}", nth + 1, block.title));
    for (rail, words) in &block.parts {
        let side = match rail {
            Rail::Both => "",
            Rail::Left => "Left ",
            Rail::Right => "Right ",
        };
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = 0.0;
            let strong = |text: &str, colour| {
                RichText::new(text)
                    .font(Face::LabelStrong.at(size::BODY))
                    .color(colour)
            };
            if !side.is_empty() {
                ui.label(strong(side, theme.rail(*rail)));
            }
            ui.label(strong(words, *theme.ink));
        });
    }
    if !block.warm_up.is_empty() {
        quiet(ui, &format!("Warm-up: {}.", block.warm_up.join("; ")));
    }
    quiet(ui, &block.why.join(" "));
}
