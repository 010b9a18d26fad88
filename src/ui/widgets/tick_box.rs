//! A box to tick, for warm-up steps.

use egui::{Painter, Rect, Stroke, StrokeKind, vec2};

use crate::ui::theme::{STROKE_OUTLINE, Theme};

use super::State;

/// Paints a box into `rect` (18 × 18 points).
pub fn tick_box(painter: &Painter, rect: Rect, ticked: bool, state: State, theme: &Theme) {
    let outline = if state.hovered { *theme.ink } else { *theme.edge };
    if ticked {
        painter.rect_filled(rect, 3.0, *theme.steel);
        let stroke = Stroke::new(2.2, *theme.on_steel);
        let at = |x: f32, y: f32| rect.min + vec2(x, y) * (rect.width() / 18.0);
        painter.line(vec![at(4.0, 9.5), at(7.6, 13.0), at(14.0, 5.5)], stroke);
    } else {
        painter.rect(
            rect,
            3.0,
            *theme.raised,
            Stroke::new(STROKE_OUTLINE, outline),
            StrokeKind::Inside,
        );
    }
}
