//! The cap of a key, beside what it does.

use egui::{Align2, Painter, Pos2, Rect, Stroke, StrokeKind, vec2};

use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, STROKE_LINE, Theme, size};

const HEIGHT: f32 = 20.0;
const PADDING: f32 = 6.0;

/// How wide the cap of `key` is.
pub fn key_cap_width(painter: &Painter, key: &str, theme: &Theme) -> f32 {
    let galley =
        Line::new(key, Ink::new(Face::Text, size::NOTE, *theme.ink2)).on_one_line(painter, f32::INFINITY);
    (galley.size().x + 2.0 * PADDING).max(HEIGHT)
}

/// Paints the cap of `key` so that `anchor` of it lies at `at`; `ink` is the colour of its outline and letter.
pub fn key_cap(
    painter: &Painter,
    at: Pos2,
    anchor: Align2,
    key: &str,
    ink: egui::Color32,
    theme: &Theme,
) -> Rect {
    let rect = anchor.anchor_size(at, vec2(key_cap_width(painter, key, theme), HEIGHT));
    painter.rect_stroke(rect, 4.0, Stroke::new(STROKE_LINE, ink), StrokeKind::Inside);
    let foot = rect.bottom() - 1.5;
    painter.hline(
        rect.left() + 3.0..=rect.right() - 3.0,
        foot,
        Stroke::new(1.0, ink),
    );
    letters(
        painter,
        rect.center(),
        Align2::CENTER_CENTER,
        key,
        Ink::new(Face::Text, size::NOTE, ink),
    );
    rect
}
