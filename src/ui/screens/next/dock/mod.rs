//! The dock: hand, reps or seconds, reserve, the main button that says exactly what it writes, and the rest clock.

mod keys;
mod main_button;
mod rest;

use egui::{Rect, Stroke, Ui, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::theme::Theme;
use crate::ui::views::{Asked, NextView};

use crate::ui::screens::next::state::NextState;
use keys::{Row, hands, hold_keys, rep_keys, reserve_keys, scale_field};
use main_button::main_button;
use rest::rest_ui;

/// Sizes of the dock's parts.
#[derive(Clone, Copy)]
struct Size {
    key: egui::Vec2,
    gap: f32,
    between: f32,
    label: f32,
}

impl Size {
    fn of(wide: bool) -> Self {
        if wide {
            Self {
                key: vec2(54.0, 64.0),
                gap: 6.0,
                between: 20.0,
                label: 22.0,
            }
        } else {
            Self {
                key: vec2(46.0, 52.0),
                gap: 6.0,
                between: 12.0,
                label: 20.0,
            }
        }
    }
}

/// Height of the dock: one row, or two where the width doesn't carry it.
pub(in crate::ui::screens::next) fn height(width: f32, wide: bool) -> f32 {
    let row = Size::of(wide).key.y + Size::of(wide).label;
    if width >= 860.0 {
        row + if wide { 49.0 } else { 44.0 }
    } else {
        2.0 * row + 40.0
    }
}

/// Draws the dock.
pub(in crate::ui::screens::next) fn dock_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
    wide: bool,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let size = Size::of(wide);
    let margin = if wide { 20.0 } else { 12.0 };
    let two_rows = rect.width() < 860.0;
    let row_top = rect.top() + if wide { 24.0 } else { 14.0 };
    let mut row = Row {
        x: rect.left() + margin,
        y: row_top,
        right: rect.right() - margin,
        size,
    };
    let Some(card) = view.card(state.card) else { return };
    hands(ui, &mut row, view, card, actions);
    match &card.asked {
        Asked::WeighInFirst(_) => scale_field(ui, &mut row, view, state, actions),
        Asked::Pause(_) => {}
        Asked::Work(work) if work.measure.is_hold() => hold_keys(ui, &mut row, card, state, actions),
        Asked::Work(work) => {
            rep_keys(ui, &mut row, card, work, state);
            reserve_keys(ui, &mut row, card, state, actions);
        }
    }
    if two_rows {
        row = Row {
            x: rect.left() + margin,
            y: row_top + size.key.y + size.label + 12.0,
            ..row
        };
    }
    let rest_width = if wide { 206.0 } else { 128.0 };
    let main = Rect::from_min_max(
        pos2(row.x, row.y + size.label),
        pos2(
            row.right - rest_width - size.between,
            row.y + size.label + size.key.y,
        ),
    );
    main_button(ui, main, card, state, actions, &theme);
    let rest = Rect::from_min_max(
        pos2(row.right - rest_width, row.y - 6.0),
        pos2(row.right, main.bottom() + 8.0),
    );
    rest_ui(ui, rest, card, state, actions, wide);
}
