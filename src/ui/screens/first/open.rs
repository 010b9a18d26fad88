//! A logbook that is there is opened: by its folder's path, or picked.

use egui::{Align2, Key, Rect, TextEdit, Ui, UiBuilder, vec2};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::heading;
use crate::ui::screens::sheet::field_label;
use crate::ui::theme::Theme;
use crate::ui::views::FirstView;
use crate::ui::widgets::Button;

/// Shows it; true when it should close.
pub(super) fn open_ui(ui: &mut Ui, view: &FirstView, path: &mut String, actions: &mut Actions) -> bool {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    heading::bar(ui, header, "Open a logbook you have");
    let width = (whole.width() - 40.0).min(620.0);
    let body = Rect::from_min_size(header.left_bottom() + vec2(20.0, 12.0), vec2(width, 260.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    let ui = &mut child;
    ui.colored_label(
        *theme.ink2,
        "A logbook is a folder with logbook.ron and athletes in it. Nothing in it is changed by opening it.",
    );
    let label = field_label(ui, "The folder’s path");
    let mut opens = false;
    ui.horizontal(|ui| {
        let field = TextEdit::singleline(path)
            .desired_width((ui.available_width() - 130.0).max(160.0))
            .min_size(vec2(0.0, 34.0))
            .align(Align2::LEFT_CENTER)
            .hint_text("/home/you/logbook");
        let field = ui.add(field).labelled_by(label);
        opens = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if !opens && ui.memory(|memory| memory.focused().is_none()) {
            field.request_focus();
        }
        if Button::plain("Browse…").flow(ui).clicked() {
            actions.ask(Action::PickFolder);
        }
    });
    ui.add_space(14.0);
    let mut close = false;
    ui.horizontal(|ui| {
        let has_path = !path.trim().is_empty();
        opens |= ui
            .add_enabled_ui(has_path, |ui| Button::main("Open it").flow(ui).clicked())
            .inner;
        close = Button::plain("Back").key("Esc").flow(ui).clicked();
        opens &= has_path;
    });
    if let Some(problem) = &view.problem {
        ui.add_space(12.0);
        ui.colored_label(*theme.plum, problem);
    }
    if opens {
        actions.write(Deed::OpenFolder(path.trim().into()));
    }
    close
}
