//! The list of files: own ones, then the shipped ones.

use egui::{Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, Line};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{FileLine, Whose, WorkshopView};
use crate::ui::widgets::focus_ring;
use crate::ui::workshop::WorkshopDeed;

use super::state::WorkshopState;

/// Height of a file without a second line.
const ROW: f32 = 30.0;

/// Shows the list in `rect`, beside the text.
pub(super) fn list_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &WorkshopView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .vline(rect.right() - 0.5, rect.y_range(), Stroke::new(1.0, *theme.line));
    let body = Rect::from_min_max(rect.min + vec2(8.0, 0.0), rect.max - vec2(8.0, 0.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(body).id_salt("files"));
    child.shrink_clip_rect(body);
    ScrollArea::vertical()
        .id_salt("scroll")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.add_space(8.0);
            lines_ui(ui, view, state, actions);
            ui.add_space(12.0);
        });
}

/// The files, with what they are over them; true when one was pressed.
pub(super) fn lines_ui(
    ui: &mut Ui,
    view: &WorkshopView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) -> bool {
    ui.spacing_mut().item_spacing.y = 0.0;
    let mut pressed = false;
    for (whose, title) in [
        (Whose::Own, "Your own"),
        (Whose::Shipped, "Shipped, to read and copy"),
    ] {
        heading(ui, title);
        let files = || view.files.iter().filter(|line| line.whose == whose);
        if files().next().is_none() {
            quiet(ui, "None yet. N begins one, C copies a shipped one.");
        }
        for line in files() {
            if line_ui(ui, line, state) {
                pressed = true;
                actions.write(Deed::Workshop(WorkshopDeed::Open(line.file.clone())));
            }
        }
        ui.add_space(10.0);
    }
    state.bring_file = false;
    pressed
}

fn heading(ui: &mut Ui, title: &str) {
    let theme = Theme::of(ui);
    let text = egui::RichText::new(title)
        .font(Face::LabelStrong.at(size::TABLE))
        .color(*theme.ink2);
    ui.label(text);
    ui.add_space(3.0);
}

fn quiet(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let text = egui::RichText::new(words)
        .font(Face::Label.at(size::TABLE))
        .color(*theme.ink3);
    ui.add(egui::Label::new(text).wrap());
}

fn line_ui(ui: &mut Ui, line: &FileLine, state: &WorkshopState) -> bool {
    let theme = Theme::of(ui);
    let chosen = line.file == state.file;
    let second = match (&line.broken, line.unsaved) {
        (_, true) => Some(("not saved".to_owned(), *theme.ember)),
        (Some(broken), false) => Some((broken.clone(), *theme.plum)),
        (None, false) => None,
    };
    let height = ROW + if second.is_some() { 18.0 } else { 0.0 };
    let (id, rect) = ui.allocate_space(vec2(ui.available_width(), height));
    let response = ui.interact(rect, id, Sense::click());
    let said = second
        .as_ref()
        .map_or_else(String::new, |(words, _)| format!(", {words}"));
    let kind = if line.whose == Whose::Own {
        "own"
    } else {
        "shipped"
    };
    response.widget_info(|| {
        WidgetInfo::selected(
            Role::Button,
            true,
            chosen,
            format!("{}, {kind}{said}", line.title),
        )
    });
    let card = rect.shrink2(vec2(0.0, 1.0));
    let ink = if chosen {
        ui.painter().rect_filled(card, 4.0, *theme.ink);
        *theme.raised
    } else {
        if response.hovered() {
            ui.painter().rect_filled(card, 4.0, *theme.bench);
        }
        *theme.ink
    };
    let face = if line.whose == Whose::Own {
        Face::LabelStrong
    } else {
        Face::Label
    };
    let title = Line::new(&line.title, Ink::new(face, 15.0, ink)).squeezed(ui.painter(), card.width() - 18.0);
    ui.painter()
        .galley(pos2(card.left() + 9.0, card.top() + 4.0), title, ink);
    if let Some((words, colour)) = second {
        let colour = if chosen { *theme.raised } else { colour };
        let words = Line::new(&words, Ink::new(Face::Label, size::SMALL, colour))
            .on_one_line(ui.painter(), card.width() - 18.0);
        ui.painter()
            .galley(pos2(card.left() + 9.0, card.top() + 24.0), words, colour);
    }
    if response.has_focus() {
        focus_ring(ui.painter(), card.shrink(3.0), 4.0, &theme);
    }
    if chosen && state.bring_file {
        ui.scroll_to_rect(rect, None);
    }
    response.clicked()
}
