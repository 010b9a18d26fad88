//! A logbook is made: name and unit, bodyweight, plates, what helps but isn't needed, a goal, and what can be done today.

use egui::{Rect, ScrollArea, TextEdit, Ui, UiBuilder, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::heading;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::Theme;
use crate::ui::views::FirstView;
use crate::ui::widgets::{Button, ButtonLook, Choices};

use super::typed::{StartState, usual_plates};

/// Shows the form; true when it should close. The goal stands beside the person where there is room, and what makes the logbook
/// is always in sight.
pub(super) fn start_ui(ui: &mut Ui, view: &FirstView, state: &mut StartState, actions: &mut Actions) -> bool {
    let whole = ui.max_rect();
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    heading::bar(ui, header, "Start a logbook");
    let foot = whole.with_min_y(whole.bottom() - FOOT);
    let body = Rect::from_min_max(header.left_bottom() + vec2(20.0, 8.0), foot.right_top());
    let wide = body.width() > 860.0;
    enter_goes_on(ui);
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    ScrollArea::vertical()
        .id_salt("start")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            if !wide {
                ui.set_max_width((body.width() - 24.0).min(680.0));
                person_ui(ui, state);
                helps_ui(ui, state);
                goal_ui(ui, view, state);
                ui.add_space(12.0);
                return;
            }
            ui.horizontal_top(|ui| {
                for (width, part) in [(PERSON, 0), (body.width() - PERSON - 60.0, 1)] {
                    ui.vertical(|ui| {
                        ui.set_width(width.min(680.0));
                        if part == 0 {
                            person_ui(ui, state);
                            helps_ui(ui, state);
                        } else {
                            goal_ui(ui, view, state);
                        }
                    });
                    ui.add_space(28.0);
                }
            });
        });
    foot_ui(ui, foot, view, state, actions)
}

/// Enter in a field goes on to the next one, as Tab does. Asked before any field is drawn.
fn enter_goes_on(ui: &Ui) {
    let typing = ui.ctx().text_edit_focused();
    if typing && ui.input_mut(|input| input.consume_key(egui::Modifiers::NONE, egui::Key::Enter)) {
        ui.memory_mut(|memory| memory.move_focus(egui::FocusDirection::Next));
    }
}

/// Height of the bar that makes the logbook.
const FOOT: f32 = 64.0;
/// Width of the person's column.
const PERSON: f32 = 340.0;

fn field(ui: &mut Ui, label: &str, text: &mut String, width: f32) -> egui::Response {
    let label = field_label(ui, label);
    ui.add(TextEdit::singleline(text).desired_width(width))
        .labelled_by(label)
}

fn person_ui(ui: &mut Ui, state: &mut StartState) {
    let name = field(ui, "Your name", &mut state.name, 320.0);
    if ui.memory(|memory| memory.focused().is_none()) && state.name.is_empty() {
        name.request_focus();
    }
    field_label(ui, "Weights in");
    let at = ui.cursor().min;
    let (row, pressed) = Choices {
        titles: &["kg", "lb"],
        chosen: usize::from(state.in_lb),
    }
    .show(ui, at);
    ui.advance_cursor_after_rect(row);
    state.in_lb = pressed.map_or(state.in_lb, |nth| nth == 1);
    let unit = if state.in_lb { "lb" } else { "kg" };
    field(
        ui,
        &format!("Bodyweight today, {unit}"),
        &mut state.bodyweight,
        120.0,
    );
    let usual = usual_plates(state.in_lb);
    let mut plates = state.plates.clone().unwrap_or_else(|| usual.clone());
    field(
        ui,
        &format!("Plates you can hang, {unit}, each one"),
        &mut plates,
        320.0,
    );
    state.plates = (plates != usual).then_some(plates);
}

/// Height, sex and birth date: not needed, and why they help.
fn helps_ui(ui: &mut Ui, state: &mut StartState) {
    let theme = Theme::of(ui);
    ui.add_space(10.0);
    ui.colored_label(
        *theme.ink2,
        "Not needed, but it helps: height and sex for levers and push-ups, birth date for cautions by age.",
    );
    ui.horizontal_wrapped(|ui| {
        ui.vertical(|ui| field(ui, "Height, cm", &mut state.height, 90.0));
        ui.add_space(12.0);
        ui.vertical(|ui| field(ui, "Birth date, like 1994-05-31", &mut state.born, 150.0));
    });
    field_label(ui, "Sex");
    let at = ui.cursor().min;
    let (row, pressed) = Choices {
        titles: &["Not said", "Female", "Male"],
        chosen: state.sex,
    }
    .show(ui, at);
    ui.advance_cursor_after_rect(row);
    state.sex = pressed.unwrap_or(state.sex);
}

fn goal_ui(ui: &mut Ui, view: &FirstView, state: &mut StartState) {
    field_label(ui, "What do you want to climb to?");
    ui.horizontal_wrapped(|ui| {
        for (nth, ladder) in view.ladders.iter().enumerate() {
            let look = if state.ladder == Some(nth) {
                ButtonLook::Chosen
            } else {
                ButtonLook::Plain
            };
            if (Button {
                title: &ladder.title,
                key: None,
                look,
            })
            .flow(ui)
            .clicked()
            {
                state.ladder = Some(nth);
                state.today = vec![Default::default(); ladder.questions.len()];
            }
        }
    });
    let Some(ladder) = state.ladder.and_then(|nth| view.ladders.get(nth)) else {
        return;
    };
    let theme = Theme::of(ui);
    ui.add_space(6.0);
    ui.colored_label(*theme.ink2, &ladder.goal);
    field_label(ui, "What can you do today? Leave empty what you haven’t tried.");
    for ((question, is_hold), typed) in ladder.questions.iter().zip(&mut state.today) {
        let unit = if *is_hold { "seconds" } else { "reps" };
        ui.horizontal(|ui| {
            let beside = egui::Layout::left_to_right(egui::Align::Center);
            let label = ui.allocate_ui_with_layout(vec2(250.0, 24.0), beside, |ui| {
                ui.set_min_width(250.0);
                ui.add(egui::Label::new(format!("{question}, {unit}")).truncate())
            });
            let label = label.inner;
            if ladder.sided {
                for (side, text) in ["L", "R"].into_iter().zip(typed.iter_mut()) {
                    ui.label(side);
                    let edit = TextEdit::singleline(text).desired_width(52.0);
                    ui.add(edit)
                        .accessible_name(format!("{question}, {unit}, {side}"));
                }
            } else {
                ui.add(TextEdit::singleline(&mut typed[0]).desired_width(60.0))
                    .labelled_by(label.id);
            }
        });
    }
}

fn foot_ui(ui: &mut Ui, bar: Rect, view: &FirstView, state: &mut StartState, actions: &mut Actions) -> bool {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(bar, 0.0, *theme.surface);
    ui.painter().hline(
        bar.x_range(),
        bar.top() + 0.5,
        egui::Stroke::new(1.0, *theme.line),
    );
    let ready = state.ready(view);
    let words = match &ready {
        Ok(_) => format!("It will lie in {}. You can move it.", view.new_folder),
        Err(wrong) => (*wrong).to_owned(),
    };
    let inside = bar.shrink2(vec2(20.0, 15.0));
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let mut child = ui.new_child(UiBuilder::new().max_rect(inside).layout(layout));
    let made = child
        .add_enabled_ui(ready.is_ok(), |ui| {
            let key = Action::MakeLogbook.key();
            Button::main("Make the logbook").key(&key).flow(ui).clicked()
        })
        .inner;
    let close = Button::plain("Back").key("Esc").flow(&mut child).clicked();
    child.add_space(8.0);
    child.add(egui::Label::new(egui::RichText::new(words).color(*theme.ink2)).truncate());
    let by_key = std::mem::take(&mut state.make);
    if let (true, Ok(logbook)) = (made || by_key, ready) {
        actions.write(Deed::Start(logbook));
    }
    close
}
