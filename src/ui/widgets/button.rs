//! Buttons, the keys of the dock, and rows of choices.

use egui::{
    Align2, Color32, Painter, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2,
};

use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, RADIUS_CHIP, STROKE_LINE, STROKE_OUTLINE, Theme, fade, size};

use super::{State, focus_ring, key_cap, key_cap_width};

/// What a button says that can't write now.
pub const LOOK_ONLY: &str = "You can look, not write.";

/// How loud a button is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ButtonLook {
    /// Outlined.
    Plain,
    /// The one main button of a screen: ember.
    Main,
    /// Chosen among its neighbours: ink.
    Chosen,
}

/// A button with a title and the key that does the same.
#[derive(Debug, Clone, Copy)]
pub struct Button<'a> {
    /// What it does.
    pub title: &'a str,
    /// The key beside it.
    pub key: Option<&'a str>,
    /// How loud it is.
    pub look: ButtonLook,
}

impl<'a> Button<'a> {
    /// An outlined button.
    pub fn plain(title: &'a str) -> Self {
        Self {
            title,
            key: None,
            look: ButtonLook::Plain,
        }
    }

    /// The main button.
    pub fn main(title: &'a str) -> Self {
        Self {
            look: ButtonLook::Main,
            ..Self::plain(title)
        }
    }

    /// The same with its key shown.
    pub fn key(mut self, key: &'a str) -> Self {
        self.key = (!key.is_empty()).then_some(key);
        self
    }

    /// How wide it wants to be.
    pub fn width(&self, painter: &Painter, theme: &Theme) -> f32 {
        let ink = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
        let title = Line::new(self.title, ink)
            .on_one_line(painter, f32::INFINITY)
            .size()
            .x;
        title
            + 28.0
            + self
                .key
                .map_or(0.0, |key| key_cap_width(painter, key, theme) + 10.0)
    }

    /// Shows it at `rect`.
    pub fn show(self, ui: &mut Ui, rect: Rect) -> Response {
        let response = press_chosen(ui, rect, self.title, self.look == ButtonLook::Chosen);
        paint_button(ui.painter(), rect, &self, State::of(&response), &Theme::of(ui));
        response
    }

    /// Shows it at `rect`, greyed where the window may only look, with the reason on hover; true when it was pressed.
    pub fn show_for_writing(self, ui: &mut Ui, rect: Rect, read_only: bool) -> bool {
        let shown = ui.add_enabled_ui(!read_only, |ui| self.show(ui, rect));
        shown.inner.on_disabled_hover_text(LOOK_ONLY).clicked()
    }

    /// Shows it in a flowing layout.
    pub fn flow(self, ui: &mut Ui) -> Response {
        let theme = Theme::of(ui);
        let (_, rect) = ui.allocate_space(vec2(self.width(ui.painter(), &theme), 34.0));
        self.show(ui, rect)
    }
}

/// A place that can be pressed, named `title`, painted by the caller.
pub(crate) fn press_chosen(ui: &mut Ui, rect: Rect, title: &str, chosen: bool) -> Response {
    let id = ui.scope_id().with(("press", title));
    let response = ui.interact(rect, id, Sense::click());
    let enabled = ui.is_enabled();
    response.widget_info(|| {
        if chosen {
            WidgetInfo::selected(Role::Button, enabled, true, title)
        } else {
            WidgetInfo::labeled(Role::Button, enabled, title)
        }
    });
    response
}

/// The same, with its focus ring, for what is never chosen.
pub(crate) fn press(ui: &mut Ui, rect: Rect, title: &str) -> Response {
    let response = press_chosen(ui, rect, title, false);
    if response.has_focus() {
        focus_ring(ui.painter(), rect, RADIUS_CHIP, &Theme::of(ui));
    }
    response
}

/// Fill, outline and text of a button's box in `state`.
fn box_colours(look: ButtonLook, state: State, theme: &Theme) -> (Color32, Stroke, Color32) {
    let lift = if state.pressed {
        0.16
    } else if state.hovered {
        0.07
    } else {
        0.0
    };
    let (fill, outline, text) = match look {
        ButtonLook::Plain => (
            *theme.raised,
            if state.hovered { *theme.ink2 } else { *theme.edge },
            *theme.ink,
        ),
        ButtonLook::Main => (*theme.ember, *theme.ember, *theme.on_ember),
        ButtonLook::Chosen => (*theme.ink, *theme.ink, *theme.raised),
    };
    let faded = |colour: Color32| {
        if state.disabled {
            fade(colour, *theme.surface, 0.55)
        } else {
            colour
        }
    };
    let toward = if look == ButtonLook::Plain {
        *theme.ink
    } else {
        *theme.bench
    };
    (
        faded(fade(fill, toward, lift)),
        Stroke::new(STROKE_OUTLINE, faded(outline)),
        faded(text),
    )
}

/// Paints a button in `state`.
pub fn paint_button(painter: &Painter, rect: Rect, button: &Button<'_>, state: State, theme: &Theme) {
    let (fill, outline, text) = box_colours(button.look, state, theme);
    painter.rect(rect, RADIUS_CHIP, fill, outline, StrokeKind::Inside);
    let cap = button
        .key
        .map_or(0.0, |key| key_cap_width(painter, key, theme) + 10.0);
    let ink = Ink::new(Face::LabelStrong, size::BODY, text);
    let title = Line::new(button.title, ink).on_one_line(painter, rect.width() - cap - 16.0);
    let left = rect.center().x - (title.size().x + cap) / 2.0;
    let at = pos2(left, rect.center().y - title.size().y / 2.0);
    let right = left + title.size().x;
    painter.galley(at, title, text);
    if let Some(key) = button.key {
        let colour = if button.look == ButtonLook::Plain && !state.disabled {
            *theme.ink2
        } else {
            text
        };
        key_cap(
            painter,
            pos2(right + 10.0, rect.center().y),
            Align2::LEFT_CENTER,
            key,
            colour,
            theme,
        );
    }
    if state.focused {
        focus_ring(painter, rect, RADIUS_CHIP, theme);
    }
}

/// Paints a big key of the dock: a number that can be chosen.
pub fn dock_key(painter: &Painter, rect: Rect, number: &str, chosen: bool, state: State, theme: &Theme) {
    let look = if chosen {
        ButtonLook::Chosen
    } else {
        ButtonLook::Plain
    };
    let (fill, outline, text) = box_colours(look, state, theme);
    painter.rect(
        rect,
        RADIUS_CHIP,
        fill,
        Stroke::new(STROKE_LINE, outline.color),
        StrokeKind::Inside,
    );
    let size = if rect.width() > 50.0 { 28.0 } else { 22.0 };
    letters(
        painter,
        rect.center(),
        Align2::CENTER_CENTER,
        number,
        Ink::new(Face::Number, size, text),
    );
    if state.focused {
        focus_ring(painter, rect, RADIUS_CHIP, theme);
    }
}

/// A row of choices, one chosen: returns the one that was pressed.
pub struct Choices<'a> {
    /// Their titles.
    pub titles: &'a [&'a str],
    /// The chosen one.
    pub chosen: usize,
}

impl Choices<'_> {
    /// Shows the row at `left_top`, 34 points high; returns its box and the choice that was pressed.
    pub fn show(&self, ui: &mut Ui, left_top: egui::Pos2) -> (Rect, Option<usize>) {
        let theme = Theme::of(ui);
        let mut pressed = None;
        let mut x = left_top.x;
        for (nth, title) in self.titles.iter().enumerate() {
            let chosen = nth == self.chosen;
            let button = Button {
                title,
                key: None,
                look: if chosen {
                    ButtonLook::Chosen
                } else {
                    ButtonLook::Plain
                },
            };
            let rect = Rect::from_min_size(
                pos2(x, left_top.y),
                vec2(button.width(ui.painter(), &theme), 34.0),
            );
            if button.show(ui, rect).clicked() {
                pressed = Some(nth);
            }
            x = rect.right() + 4.0;
        }
        (Rect::from_min_max(left_top, pos2(x, left_top.y + 34.0)), pressed)
    }
}
