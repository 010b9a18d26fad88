//! A logbook is made: name and unit, bodyweight, plates, what helps but isn't needed, a goal, and what can be done today.

use chrono::NaiveDate;
use egui::{Rect, ScrollArea, TextEdit, Ui, UiBuilder, vec2};

use crate::ui::action::Actions;
use crate::ui::book::{Deed, NewLogbook};
use crate::ui::screens::next::{header_bar, typed_number};
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::Theme;
use crate::ui::views::{FirstView, LadderChoice};
use crate::ui::widgets::{Button, ButtonLook, Choices};

/// What is typed so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StartState {
    name: String,
    in_lb: bool,
    bodyweight: String,
    plates: Option<String>,
    height: String,
    sex: usize,
    born: String,
    ladder: Option<usize>,
    today: Vec<[String; 2]>,
}

/// Which question, and the amount left and right.
type Answers = Vec<(usize, [Option<f64>; 2])>;

const PLATES_KG: &str = "20 15 10 5 5 2.5 2.5 1.25 1.25";
const PLATES_LB: &str = "45 25 10 10 5 5 2.5";

impl StartState {
    /// What would be made; none while the name is missing or something typed is no number.
    pub fn ready(&self, view: &FirstView) -> Result<NewLogbook, &'static str> {
        if self.name.trim().is_empty() {
            return Err("Give a name.");
        }
        let plates = self
            .plates
            .as_deref()
            .unwrap_or(if self.in_lb { PLATES_LB } else { PLATES_KG });
        let plates: Option<Vec<f64>> = plates.split_whitespace().map(typed_number).collect();
        let ladder = self.ladder.and_then(|nth| view.ladders.get(nth));
        Ok(NewLogbook {
            name: self.name.trim().to_owned(),
            in_lb: self.in_lb,
            bodyweight: optional(
                &self.bodyweight,
                typed_number,
                "Bodyweight: a number, like 74.6, or leave it empty.",
            )?,
            plates: plates.ok_or("Plates: numbers with spaces between, like 20 10 2.5.")?,
            gear: 0.0,
            height_cm: optional(&self.height, height, "Height: 50 to 260 cm, or leave it empty.")?,
            sex: [None, Some("female"), Some("male")]
                .get(self.sex)
                .copied()
                .flatten(),
            born: optional(
                &self.born,
                |text| NaiveDate::parse_from_str(text.trim(), "%Y-%m-%d").ok(),
                "Birth date: like 1994-05-31, or leave it empty.",
            )?,
            ladder: ladder.map(|ladder| ladder.id.clone()),
            today: self.answers(ladder)?,
        })
    }

    fn answers(&self, ladder: Option<&LadderChoice>) -> Result<Answers, &'static str> {
        let Some(ladder) = ladder else {
            return Ok(Vec::new());
        };
        let wrong = "What you can do today: whole numbers, or leave it empty.";
        let mut answers = Vec::new();
        for (nth, typed) in self.today.iter().take(ladder.questions.len()).enumerate() {
            let left = optional(&typed[0], typed_number, wrong)?;
            let right = if ladder.sided {
                optional(&typed[1], typed_number, wrong)?
            } else {
                left
            };
            if left.is_some() || right.is_some() {
                answers.push((nth, [left, right]));
            }
        }
        Ok(answers)
    }
}

fn height(text: &str) -> Option<f64> {
    typed_number(text).filter(|cm| (50.0..=260.0).contains(cm))
}

fn optional<T>(
    text: &str,
    read: impl Fn(&str) -> Option<T>,
    wrong: &'static str,
) -> Result<Option<T>, &'static str> {
    if text.trim().is_empty() {
        Ok(None)
    } else {
        read(text).map(Some).ok_or(wrong)
    }
}

/// Shows the form; true when it should close.
pub(super) fn start_ui(ui: &mut Ui, view: &FirstView, state: &mut StartState, actions: &mut Actions) -> bool {
    let whole = ui.max_rect();
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    header_bar(ui, header, "Start a logbook");
    let width = (whole.width() - 48.0).min(680.0);
    let body = Rect::from_min_max(header.left_bottom() + vec2(24.0, 8.0), whole.max - vec2(0.0, 8.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    let mut close = false;
    ScrollArea::vertical()
        .id_salt("start")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.set_max_width(width);
            person_ui(ui, state);
            helps_ui(ui, state);
            goal_ui(ui, view, state);
            close = foot_ui(ui, view, state, actions);
        });
    close
}

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
    let usual = if state.in_lb { PLATES_LB } else { PLATES_KG };
    let mut plates = state.plates.clone().unwrap_or_else(|| usual.to_owned());
    field(
        ui,
        &format!("Plates you can hang, {unit}, each one"),
        &mut plates,
        320.0,
    );
    state.plates = (plates != PLATES_KG && plates != PLATES_LB).then_some(plates);
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
            let label = ui.add_sized(
                [250.0, 24.0],
                egui::Label::new(format!("{question}, {unit}")).truncate(),
            );
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

fn foot_ui(ui: &mut Ui, view: &FirstView, state: &StartState, actions: &mut Actions) -> bool {
    let theme = Theme::of(ui);
    ui.add_space(12.0);
    let ready = state.ready(view);
    let words = match &ready {
        Ok(_) => format!("It will lie in {}. You can move it.", view.new_folder),
        Err(wrong) => (*wrong).to_owned(),
    };
    ui.colored_label(*theme.ink2, words);
    ui.add_space(6.0);
    let mut close = false;
    ui.horizontal(|ui| {
        let made = ui
            .add_enabled_ui(ready.is_ok(), |ui| {
                Button::main("Make the logbook").flow(ui).clicked()
            })
            .inner;
        if let (true, Ok(logbook)) = (made, ready) {
            actions.write(Deed::Start(logbook));
        }
        close = Button::plain("Back").key("Esc").flow(ui).clicked();
    });
    ui.add_space(20.0);
    close
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_all_that_a_logbook_needs() {
        let view = FirstView::default();
        let mut state = StartState::default();
        assert!(state.ready(&view).is_err());
        state.name = " Ana ".into();
        let made = state.ready(&view).unwrap();
        assert_eq!(
            (made.name.as_str(), made.plates.len(), made.bodyweight),
            ("Ana", 9, None)
        );
    }

    #[test]
    fn what_is_typed_wrong_is_said_and_not_made() {
        let view = FirstView::default();
        let named = StartState {
            name: "Ana".into(),
            ..StartState::default()
        };
        for state in [
            StartState {
                bodyweight: "heavy".into(),
                ..named.clone()
            },
            StartState {
                height: "1.78".into(),
                ..named.clone()
            },
            StartState {
                born: "31.5.1994".into(),
                ..named.clone()
            },
            StartState {
                plates: Some("20, x".into()),
                ..named
            },
        ] {
            assert!(state.ready(&view).is_err(), "{state:?}");
        }
    }
}
