//! The parts that screens are made of. Each paints from a state that it is given ([`State`]), so that a test can show every
//! state in one picture, and each names itself for screen readers.

mod badge;
mod belt;
mod button;
mod card;
mod chip;
mod disc;
mod key_cap;
mod lying;
mod rest_track;
mod slider;
mod tick_box;

pub use badge::{badge, badge_colour, badge_with_word};
pub use belt::{belt, disc_rect, plate};
pub use button::{Button, ButtonLook, Choices, LOOK_ONLY, dock_key, paint_button};
pub(crate) use button::{press, press_chosen};
pub(crate) use card::error_line;
pub use card::{card, caution_box};
pub use chip::{SetChip, set_chip};
pub use disc::{hand_disc, hand_mark};
pub use key_cap::{key_cap, key_cap_width};
pub use lying::lying;
pub use rest_track::{RestTrack, clock_words, rest_track};
pub use slider::Slider;
pub use tick_box::tick_box;

use egui::{EventFilter, Id, Painter, Rect, Response, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo};

use super::theme::{FOCUS_GAP, STROKE_NOW, Theme};

/// The state that a control is painted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct State {
    /// The pointer is over it.
    pub hovered: bool,
    /// It is held down.
    pub pressed: bool,
    /// Keys go to it.
    pub focused: bool,
    /// It can't be used now.
    pub disabled: bool,
}

impl State {
    /// The five states of a state matrix, in order: idle, hover, pressed, focused, disabled.
    pub const MATRIX: [State; 5] = [
        State {
            hovered: false,
            pressed: false,
            focused: false,
            disabled: false,
        },
        State {
            hovered: true,
            pressed: false,
            focused: false,
            disabled: false,
        },
        State {
            hovered: true,
            pressed: true,
            focused: false,
            disabled: false,
        },
        State {
            hovered: false,
            pressed: false,
            focused: true,
            disabled: false,
        },
        State {
            hovered: false,
            pressed: false,
            focused: false,
            disabled: true,
        },
    ];

    /// The state that `response` reports.
    pub fn of(response: &Response) -> Self {
        Self {
            hovered: response.hovered(),
            pressed: response.is_pointer_button_down_on(),
            focused: response.has_focus(),
            disabled: !response.enabled(),
        }
    }
}

/// The focus ring: 2 points of ink, 2 points outside.
pub fn focus_ring(painter: &Painter, rect: Rect, radius: f32, theme: &Theme) {
    let ring = rect.expand(FOCUS_GAP);
    painter.rect_stroke(
        ring,
        radius + FOCUS_GAP,
        Stroke::new(STROKE_NOW, *theme.ink),
        StrokeKind::Outside,
    );
}

/// ← and → are the place's own here; they must not walk the focus away from whatever has it.
pub(crate) fn keep_arrows(ui: &Ui) {
    let filter = EventFilter {
        horizontal_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| {
        if let Some(id) = memory.focused() {
            memory.set_focus_lock_filter(id, filter);
        }
    });
}

/// A hint at a pointer that rests on `response`; none while a sheet lies over it, though the pointer rest there still.
pub fn hinted(response: Response, words: impl Into<egui::WidgetText>) -> Response {
    let is_open = response
        .ctx
        .memory(|memory| memory.allows_interaction(response.layer_id));
    if is_open {
        response.on_hover_text(words)
    } else {
        response
    }
}

/// Says on hover and on focus how what stands in `rect` came about.
pub fn explained(ui: &mut Ui, rect: Rect, id: Id, words: String) {
    let response = ui.interact(rect, id, Sense::focusable_noninteractive());
    response.widget_info(|| WidgetInfo::labeled(Role::Note, true, &words));
    if response.has_focus() {
        if response.gained_focus() {
            response.scroll_to_me(None);
        }
        focus_ring(ui.painter(), rect.expand(1.0), 3.0, &Theme::of(ui));
        response.show_tooltip_text(words);
    } else {
        hinted(response, words);
    }
}
