//! The chips of a card's sets: solid when done, outlined in ember when next, dashed when not yet.

use egui::{Painter, Rect, Shape, Stroke, StrokeKind, vec2};

use crate::ui::pen::{Ink, Line};
use crate::ui::theme::{Face, RADIUS_CHIP, STROKE_LINE, STROKE_NOW, Theme, size};

/// A set on a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SetChip {
    /// Logged.
    Done,
    /// The one that the dock would log.
    Next,
    /// Not yet.
    Later,
}

/// Paints the chip of set `nth` into `rect`.
pub fn set_chip(painter: &Painter, rect: Rect, nth: usize, look: SetChip, words: &str, theme: &Theme) {
    let (head, strong, quiet) = match look {
        SetChip::Done => {
            painter.rect_filled(rect, RADIUS_CHIP, *theme.steel);
            (format!("set {nth}"), *theme.on_steel, *theme.on_steel)
        }
        SetChip::Next => {
            painter.rect(
                rect,
                RADIUS_CHIP,
                *theme.raised,
                Stroke::new(STROKE_NOW, *theme.ember),
                StrokeKind::Inside,
            );
            (format!("set {nth}, next"), *theme.ink, *theme.ember)
        }
        SetChip::Later => {
            dashed_box(painter, rect, Stroke::new(STROKE_LINE, *theme.edge));
            (format!("set {nth}"), *theme.ink2, *theme.ink3)
        }
    };
    let head_face = if look == SetChip::Next {
        Face::TextStrong
    } else {
        Face::Text
    };
    let words_face = if look == SetChip::Later {
        Face::Label
    } else {
        Face::LabelStrong
    };
    let width = rect.width() - 13.0;
    let head_ink = Ink::new(head_face, size::NOTE, quiet);
    // Words that end at the outline would read as cut.
    let mut head = Line::new(&head, head_ink).on_one_line(painter, width - 5.0);
    if head.elided && look == SetChip::Next {
        // Where both have no room the number goes: it follows from the place.
        head = Line::new("next", head_ink).on_one_line(painter, width);
    }
    let words = Line::new(words, Ink::new(words_face, 15.0, strong)).squeezed(painter, width);
    let top = rect.center().y - (head.size().y + words.size().y) / 2.0;
    let left = rect.left() + 9.0;
    let below = head.size().y;
    painter.galley(egui::pos2(left, top), head, quiet);
    painter.galley(egui::pos2(left, top + below), words, strong);
}

/// A dashed outline: not yet.
fn dashed_box(painter: &Painter, rect: Rect, stroke: Stroke) {
    let rect = rect.shrink(0.5);
    let inset = vec2(2.0, 2.0);
    let corners = [
        rect.left_top() + vec2(inset.x, 0.0),
        rect.right_top() - vec2(inset.x, 0.0),
        rect.right_top() + vec2(0.0, inset.y),
        rect.right_bottom() - vec2(0.0, inset.y),
        rect.right_bottom() - vec2(inset.x, 0.0),
        rect.left_bottom() + vec2(inset.x, 0.0),
        rect.left_bottom() - vec2(0.0, inset.y),
        rect.left_top() + vec2(0.0, inset.y),
        rect.left_top() + vec2(inset.x, 0.0),
    ];
    painter.extend(Shape::dashed_line(&corners, stroke, 4.0, 3.0));
}
