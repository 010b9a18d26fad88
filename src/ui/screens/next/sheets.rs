//! Sheets over Next: pain, weigh-in, note, every reason in full, and the folded column.

use egui::{Key, Slider, TextEdit, Ui};

use crate::report::words::pain_scale;
use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line, Pen};
use crate::ui::screens::sheet::{SheetFrame, field_label};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{CardView, NextView};
use crate::ui::widgets::{Button, Choices};

use super::side;
use super::state::{NextState, Rail2, Sheet};
use super::words::number;

/// Shows the open sheet, if any.
pub(super) fn sheets_ui(ui: &mut Ui, view: &NextView, state: &mut NextState, actions: &mut Actions) {
    let Some(sheet) = state.sheet.clone() else { return };
    let closed = match sheet {
        Sheet::Pain => pain_ui(ui, view, state, actions),
        Sheet::WeighIn => weigh_in_ui(ui, view, state, actions),
        Sheet::Note => note_ui(ui, state, actions),
        Sheet::Why(nth) => view.card(nth).is_none_or(|card| why_ui(ui, card)),
        Sheet::Today => column_ui(ui, "Today", |pen| {
            side::warm_up(pen, view, state);
            pen.gap(20.0);
            side::logged(pen, view, actions);
        }),
    };
    if closed {
        state.sheet = None;
    }
}

fn pain_ui(ui: &mut Ui, view: &NextView, state: &mut NextState, actions: &mut Actions) -> bool {
    SheetFrame::new("Report pain").show(ui, |ui| {
        let (site, side, score) = &mut state.pain;
        field_label(ui, "Where");
        let mut pressed = None;
        ui.horizontal_wrapped(|ui| {
            for (nth, name) in view.sites.iter().enumerate() {
                let look = if nth == *site {
                    crate::ui::widgets::ButtonLook::Chosen
                } else {
                    crate::ui::widgets::ButtonLook::Plain
                };
                if (Button {
                    title: name,
                    key: None,
                    look,
                })
                .flow(ui)
                .clicked()
                {
                    pressed = Some(nth);
                }
            }
        });
        *site = pressed.unwrap_or(*site);
        field_label(ui, "Side");
        let sides = [Rail2::Left, Rail2::Right, Rail2::Unsaid];
        let chosen = sides.iter().position(|other| other == side).unwrap_or(2);
        let at = ui.cursor().min;
        let (row, choice) = Choices {
            titles: &["Left side", "Right side", "Both, or not sure"],
            chosen,
        }
        .show(ui, at);
        ui.advance_cursor_after_rect(row);
        *side = choice.and_then(|nth| sides.get(nth).copied()).unwrap_or(*side);
        let label = field_label(ui, "How much, 0 none to 10 worst; a digit sets it");
        let entered = typed_score(ui, score);
        ui.spacing_mut().slider_width = 300.0;
        ui.add(Slider::new(score, 0..=10)).labelled_by(label);
        ui.add_space(8.0);
        let theme = Theme::of(ui);
        ui.colored_label(*theme.ink2, pain_scale());
        ui.add_space(8.0);
        let title = format!("Write pain {score} of 10");
        if (Button::main(&title).key("Enter").flow(ui).clicked() || entered)
            && let Some(name) = view.sites.get(*site)
        {
            actions.write(Deed::Pain {
                site: name,
                rail: (*side).into(),
                score: *score,
            });
            return true;
        }
        false
    })
}

/// Digits set the score while nothing has the focus; true when Enter was pressed then.
fn typed_score(ui: &Ui, score: &mut u8) -> bool {
    if ui.memory(|memory| memory.focused().is_some()) {
        return false;
    }
    ui.input(|input| {
        for event in &input.events {
            if let egui::Event::Text(text) = event
                && let Ok(digit) = text.parse::<u8>()
            {
                // 1 and then 0 is 10.
                *score = if *score == 1 && digit == 0 {
                    10
                } else {
                    digit.min(10)
                };
            }
        }
        input.key_pressed(Key::Enter)
    })
}

fn weigh_in_ui(ui: &mut Ui, view: &NextView, state: &mut NextState, actions: &mut Actions) -> bool {
    SheetFrame::new("Weigh in").show(ui, |ui| {
        let label = field_label(ui, &format!("What the scale shows, {}", view.unit));
        let hint = view.last_bodyweight.map_or_else(String::new, number);
        let edit = TextEdit::singleline(&mut state.weigh_in)
            .hint_text(egui::RichText::new(hint).font(Face::Label.at(28.0)))
            .font(egui::FontSelection::FontId(Face::Number.at(28.0)));
        let response = ui.add(edit).labelled_by(label);
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !entered && ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        let wrong = !state.weigh_in.is_empty() && super::state::typed_number(&state.weigh_in).is_none();
        let theme = Theme::of(ui);
        ui.colored_label(
            *theme.ink2,
            if wrong {
                "A number, like 74.6."
            } else {
                "Best in the morning, before breakfast."
            },
        );
        ui.add_space(8.0);
        if Button::main("Write weigh-in").key("Enter").flow(ui).clicked() || entered {
            state.weigh_in_now(actions);
            return state.sheet.is_none();
        }
        false
    })
}

fn note_ui(ui: &mut Ui, state: &mut NextState, actions: &mut Actions) -> bool {
    SheetFrame::new("Note").show(ui, |ui| {
        let label = field_label(ui, "It goes with the next set that you log");
        let response = ui
            .add(
                TextEdit::multiline(&mut state.note)
                    .desired_rows(3)
                    .desired_width(f32::INFINITY),
            )
            .labelled_by(label);
        if ui.memory(|memory| memory.focused().is_none()) {
            response.request_focus();
        }
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            let keep = Button::main("Keep for the next set").flow(ui).clicked();
            let alone = Button::plain("Write it now").flow(ui).clicked();
            if alone && !state.note.trim().is_empty() {
                actions.write(Deed::Note(std::mem::take(&mut state.note)));
            }
            keep || alone
        })
        .inner
    })
}

/// Every reason and caution, with the rule's own words.
fn why_ui(ui: &mut Ui, card: &CardView) -> bool {
    let title = format!("{}: {}", card.heading, card.verdict.id());
    column_ui(ui, &title, |pen| {
        let theme = Theme::of(pen.ui);
        for reason in card.reasons.iter().chain(&card.cautions) {
            pen.gap(6.0);
            let plain = Ink::new(Face::Label, size::BODY, *theme.ink);
            pen.write(Line::phrase(
                &reason.words,
                plain,
                Ink {
                    face: Face::LabelStrong,
                    ..plain
                },
            ));
            let rule = Ink::new(Face::Code, size::NOTE, *theme.ink2);
            let doc = Ink::new(Face::Label, size::TABLE, *theme.ink2);
            pen.write(Line::new(&reason.rule, rule).gap(8.0, &reason.doc, doc).on_base());
            if !reason.from.is_empty() {
                pen.write(Line::new(&reason.from, doc));
            }
            pen.gap(6.0);
            pen.rule(*theme.line);
        }
    })
}

/// A sheet whose content is written by a pen.
fn column_ui(ui: &mut Ui, title: &str, mut write: impl FnMut(&mut Pen<'_>)) -> bool {
    SheetFrame::new(title).show(ui, |ui| {
        let area = ui.available_rect_before_wrap();
        let height = Pen::measure(ui, area.width(), &mut write);
        let rect = egui::Rect::from_min_size(area.min, egui::vec2(area.width(), height));
        write(&mut Pen::new(ui, rect));
        ui.advance_cursor_after_rect(rect);
        false
    })
}
