//! A sheet over a place: a title, its content, closed by Esc or a press outside. The rest of the window stays as it is.

use egui::text::{CCursor, CCursorRange};
use egui::{Align2, Frame, Id, Key, Margin, Modal, Pos2, Rect, Response, ScrollArea, Stroke, Ui, pos2, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, RADIUS_CARD, Theme, size, translucent};
use crate::ui::widgets;

/// A sheet with its title.
pub struct SheetFrame<'a> {
    title: &'a str,
    width: f32,
    says_close: bool,
}

impl<'a> SheetFrame<'a> {
    /// A sheet named `title`.
    pub fn new(title: &'a str) -> Self {
        Self {
            title,
            width: 480.0,
            says_close: true,
        }
    }

    /// With a button of its own for what Esc does.
    pub fn own_close(mut self) -> Self {
        self.says_close = false;
        self
    }

    /// So many points wide, where the window allows.
    pub fn width(mut self, width: f32) -> Self {
        self.width = width;
        self
    }

    /// Shows it; true once it should close: by Esc, by a press outside, or because `content` says so.
    pub fn show(self, ui: &Ui, content: impl FnOnce(&mut Ui) -> bool) -> bool {
        let theme = Theme::of(ui);
        let screen = ui.ctx().content_rect();
        let frame = Frame::new()
            .fill(*theme.raised)
            .stroke(Stroke::new(1.5, *theme.edge))
            .corner_radius(RADIUS_CARD)
            .inner_margin(Margin::same(20));
        // The place behind fades toward the page, in either theme.
        let modal = Modal::new(Id::unique(("sheet", self.title)))
            .frame(frame)
            .backdrop_color(translucent(*theme.bench, 0.7));
        let response = modal.show(ui.ctx(), |ui| {
            let width = self.width.min(screen.width() - 80.0);
            ui.set_width(width);
            let corner = ui.cursor().min + vec2(width, 0.0);
            ui.scope(|ui| {
                ui.set_max_width(width - CLOSE.x - 8.0);
                ui.label(
                    egui::RichText::new(self.title)
                        .font(Face::LabelStrong.at(size::TITLE))
                        .color(*theme.ink),
                );
            });
            ui.add_space(4.0);
            let wants_to_close = ScrollArea::vertical()
                .auto_shrink([false, true])
                .max_height(screen.height() - 150.0)
                .min_scrolled_height(screen.height() - 150.0)
                .show(ui, |ui| {
                    scroll_by_page(ui);
                    content(ui)
                })
                .inner;
            // Last in the order of Tab, so that the sheet's own fields and buttons come first.
            (self.says_close && close(ui, corner)) || wants_to_close
        });
        response.should_close() || response.inner
    }
}

/// Size of what closes a sheet.
const CLOSE: egui::Vec2 = vec2(72.0, 31.0);

/// "close" with its key, at the right of the title.
fn close(ui: &mut Ui, corner: Pos2) -> bool {
    let theme = Theme::of(ui);
    let rect = Rect::from_min_size(corner - vec2(CLOSE.x, 0.0), CLOSE);
    let response = widgets::press(ui, rect, "Close");
    let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let colour = if response.hovered() {
        *theme.ink
    } else {
        *theme.ink2
    };
    let cap = widgets::key_cap(
        ui.painter(),
        rect.right_center(),
        Align2::RIGHT_CENTER,
        "Esc",
        colour,
        &theme,
    );
    let at = pos2(cap.left() - 8.0, rect.center().y);
    letters(
        ui.painter(),
        at,
        Align2::RIGHT_CENTER,
        "close",
        Ink { colour, ..ink },
    );
    response.clicked()
}

/// Page keys move what is higher than the window.
fn scroll_by_page(ui: &Ui) {
    let pressed = |key| f32::from(ui.input(|input| input.key_pressed(key)));
    let pages = pressed(Key::PageUp) - pressed(Key::PageDown);
    if pages != 0.0 {
        ui.scroll_with_delta(vec2(0.0, pages * 0.8 * ui.clip_rect().height()));
    }
}

/// The label over a field; its id names the field for screen readers.
pub fn field_label(ui: &mut Ui, text: &str) -> Id {
    let theme = Theme::of(ui);
    ui.add_space(8.0);
    ui.label(
        egui::RichText::new(text)
            .font(Face::Label.at(size::TABLE))
            .color(*theme.ink2),
    )
    .id
}

/// The first field has the keys when the sheet opens; true when Enter was pressed in it.
pub fn first_field(ui: &Ui, field: &Response) -> bool {
    let entered = by_enter(ui, field);
    if !entered && ui.memory(|memory| memory.focused().is_none()) {
        field.request_focus();
    }
    entered
}

/// Gives a field the keys with all its `text` chosen: what is typed now takes its place.
pub fn focus_all(ui: &Ui, field: &Response, text: &str) {
    field.request_focus();
    let mut state = egui::text_edit::TextEditState::load(ui.ctx(), field.id).unwrap_or_default();
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(all));
    state.store(ui.ctx(), field.id);
}

/// True when Enter was pressed in this field.
pub fn by_enter(ui: &Ui, field: &Response) -> bool {
    field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter))
}

/// Second words on a sheet.
pub fn quiet(ui: &mut Ui, words: &str) {
    let theme = Theme::of(ui);
    let text = egui::RichText::new(words)
        .font(Face::Label.at(15.0))
        .color(*theme.ink2);
    ui.add(egui::Label::new(text).wrap());
}
