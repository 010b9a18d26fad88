//! Settings of this window on this machine: the look, the size of text, motion, keys, beeps; and which logbook is open.

mod gym;

use egui::{Frame, Margin, Rect, RichText, ScrollArea, Ui, UiBuilder, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::Book;
use crate::ui::screens::heading;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::{Choice, Face, NARROW, RADIUS_CARD, Theme, size};
use crate::ui::widgets::{self, Button, Choices, State, tick_box};

use super::{Around, Screen};

/// Settings, with the gym as it is typed.
#[derive(Default)]
pub struct SettingsScreen {
    folder: String,
    gym: gym::Gym,
}

impl Screen for SettingsScreen {
    fn context(&self) -> Context {
        Context::Everywhere
    }

    fn load(&mut self, book: &dyn Book) {
        let folder = book.folder().unwrap_or_default();
        self.folder = crate::problem::visible(&folder.to_string_lossy());
        self.gym.load(book.gym());
    }

    fn ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
        let theme = Theme::of(ui);
        let whole = ui.max_rect();
        ui.painter().rect_filled(whole, 0.0, *theme.bench);
        let wide = ui.ctx().content_rect().width() >= NARROW;
        let (height, margin) = if wide { (56.0, 20.0) } else { (48.0, 12.0) };
        let header = Rect::from_min_size(whole.min, vec2(whole.width(), height));
        heading::bar(ui, header, "Settings");
        let body = Rect::from_min_max(header.left_bottom(), whole.max);
        let mut child = ui.new_child(UiBuilder::new().max_rect(body.with_min_x(body.left() + margin)));
        child.shrink_clip_rect(body);
        let room = body.width() - 2.0 * margin;
        ScrollArea::vertical()
            .id_salt("settings")
            .auto_shrink(false)
            .show(&mut child, |ui| {
                ui.add_space(margin - 4.0);
                if room < 1000.0 {
                    ui.set_max_width(room.min(620.0));
                    self.window_ui(ui, around, actions);
                    self.book_ui(ui, actions);
                    return;
                }
                ui.horizontal_top(|ui| {
                    let within = std::mem::replace(&mut ui.spacing_mut().item_spacing.x, BETWEEN);
                    for part in [0, 1] {
                        ui.vertical(|ui| {
                            ui.spacing_mut().item_spacing.x = within;
                            ui.set_width(((room - BETWEEN) / 2.0).min(620.0));
                            match part {
                                0 => self.window_ui(ui, around, actions),
                                _ => self.book_ui(ui, actions),
                            }
                        });
                    }
                });
            });
    }

    fn perform(&mut self, _action: Action, _actions: &mut Actions) {}
}

/// Room between two columns of cards.
const BETWEEN: f32 = 16.0;

impl SettingsScreen {
    /// What is of this window, and where the logbook lies.
    fn window_ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
        card(ui, "How it looks", |ui| look_ui(ui, around, actions));
        card(ui, "Keys and sound", |ui| keys_ui(ui, around, actions));
        card(ui, "Logbook", |ui| self.logbook_ui(ui, actions));
    }

    /// What is of the logbook.
    fn book_ui(&mut self, ui: &mut Ui, actions: &mut Actions) {
        card(ui, "This gym", |ui| self.gym.rack_ui(ui, actions));
        card(ui, "Machines", |ui| self.gym.machines_ui(ui));
    }

    fn logbook_ui(&self, ui: &mut Ui, actions: &mut Actions) {
        let folder = if self.folder.is_empty() {
            "A throw-away copy of the demo gym. It is gone when another one is made."
        } else {
            &self.folder
        };
        note(ui, folder);
        note(ui, "A change in its files shows here within a second.");
        ui.add_space(6.0);
        ui.horizontal_wrapped(|ui| {
            let buttons = [
                ("Bring a spreadsheet", Action::BringSheet),
                ("Read it again", Action::ReadAgain),
                ("Open another", Action::CloseLogbook),
            ];
            for (title, action) in buttons {
                if Button::plain(title).key(&action.key()).flow(ui).clicked() {
                    actions.ask(action);
                }
            }
        });
    }
}

fn look_ui(ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
    const LOOKS: [Choice; 3] = [Choice::System, Choice::Light, Choice::Dark];
    field_label(ui, "Colours");
    let chosen = LOOKS.iter().position(|look| *look == around.remembered.theme);
    let at = ui.cursor().min;
    let (row, pressed) = Choices {
        titles: &["As the system", "Light", "Dark"],
        chosen: chosen.unwrap_or(0),
    }
    .show(ui, at);
    ui.advance_cursor_after_rect(row);
    if let Some(look) = pressed.and_then(|nth| LOOKS.get(nth)) {
        actions.ask(Action::Look(*look));
    }
    field_label(ui, &format!("Text, {:.0} %", around.remembered.zoom * 100.0));
    ui.horizontal_wrapped(|ui| {
        let sizes = [
            ("Smaller", Action::Smaller),
            ("Larger", Action::Larger),
            ("100 %", Action::UsualSize),
        ];
        for (title, action) in sizes {
            if Button::plain(title).key(&action.key()).flow(ui).clicked() {
                actions.ask(action);
            }
        }
    });
    ui.add_space(8.0);
    let note = "Hands move to their rung at once.";
    if tick(ui, "Less motion", around.remembered.less_motion, note) {
        actions.ask(Action::LessMotion);
    }
}

fn keys_ui(ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
    ui.add_space(4.0);
    let note = "L, R, M, digits and so on. Arrows, Enter and keys with Ctrl or Alt stay.";
    if tick(ui, "Single letters are keys", around.remembered.single_keys, note) {
        actions.ask(Action::SingleKeys);
    }
    let note = if around.can_play {
        "When rest is over, and while a hold counts in. Both show on the screen too."
    } else {
        "No player was found on this machine (pw-play, paplay or aplay), so nothing is heard. The end of rest and the count-in show on the screen."
    };
    if tick(ui, "Beeps", !around.remembered.silent, note) {
        actions.ask(Action::Beeps);
    }
}

fn card(ui: &mut Ui, title: &str, content: impl FnOnce(&mut Ui)) {
    let theme = Theme::of(ui);
    Frame::new()
        .fill(*theme.raised)
        .stroke(egui::Stroke::new(1.0, *theme.line))
        .corner_radius(RADIUS_CARD)
        .inner_margin(Margin::same(18))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.label(
                RichText::new(title)
                    .font(Face::LabelStrong.at(18.0))
                    .color(*theme.ink),
            );
            content(ui);
        });
    ui.add_space(14.0);
}

fn note(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let text = RichText::new(words).font(Face::Label.at(15.0)).color(*theme.ink2);
    ui.add(egui::Label::new(text).wrap());
}

/// Something that is on or off, with a line about it; true when it was pressed.
fn tick(ui: &mut Ui, title: &str, on: bool, about: &str) -> bool {
    let theme = Theme::of(ui);
    ui.add_space(6.0);
    let (_, rect) = ui.allocate_space(vec2(ui.available_width(), 26.0));
    let response = ui.interact(rect, ui.scope_id().with(("tick", title)), egui::Sense::click());
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::CheckBox, true, on, title));
    let square = Rect::from_center_size(egui::pos2(rect.left() + 9.0, rect.center().y), vec2(18.0, 18.0));
    tick_box(ui.painter(), square, on, State::of(&response), &theme);
    crate::ui::pen::letters(
        ui.painter(),
        egui::pos2(rect.left() + 30.0, rect.center().y),
        egui::Align2::LEFT_CENTER,
        title,
        crate::ui::pen::Ink::new(Face::LabelStrong, size::BODY, *theme.ink),
    );
    if response.has_focus() {
        widgets::focus_ring(ui.painter(), rect.expand2(vec2(3.0, -1.0)), 3.0, &theme);
    }
    ui.horizontal(|ui| {
        ui.add_space(30.0);
        note(ui, about);
    });
    response.clicked()
}
