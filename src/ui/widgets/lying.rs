//! The ladder lying on its side in a table: the upper rail is the left hand's, the lower one the right hand's, ground to goal.

use egui::{Painter, Rect, Stroke, pos2};

use crate::ui::theme::Theme;
use crate::ui::views::LyingView;
use crate::units::Rail;

use super::disc::glyph_mark;

/// Paints the glyph into `rect` (132 × 16 points).
pub fn lying(painter: &Painter, rect: Rect, view: &LyingView, theme: &Theme) {
    let (upper, lower) = (rect.top() + 4.0, rect.bottom() - 4.0);
    let x = |share: f32| rect.left() + 1.0 + share.clamp(0.0, 1.0) * (rect.width() - 8.0);
    for y in [upper, lower] {
        painter.hline(rect.left()..=rect.right(), y, Stroke::new(1.5, *theme.line));
    }
    for tick in &view.ticks {
        painter.vline(
            x(*tick).round() + 0.5,
            upper..=lower,
            Stroke::new(1.0, *theme.line),
        );
    }
    painter.vline(
        x(view.goal),
        upper - 1.0..=lower + 1.0,
        Stroke::new(2.0, *theme.edge),
    );
    for (rail, share) in &view.hands {
        let rails: &[f32] = match rail {
            Rail::Left => &[upper],
            Rail::Right => &[lower],
            Rail::Both => &[upper, lower],
        };
        for y in rails {
            painter.hline(rect.left()..=x(*share), *y, Stroke::new(2.2, theme.rail(*rail)));
        }
        let y = match rail {
            Rail::Left => upper,
            Rail::Right => lower,
            Rail::Both => (upper + lower) / 2.0,
        };
        glyph_mark(painter, pos2(x(*share), y), *rail, theme);
    }
}
