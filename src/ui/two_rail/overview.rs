//! The strip at the left of a ladder that scrolls: all rungs, both hands, the goal, and a frame around what is shown.

use egui::{Align2, Painter, Stroke, StrokeKind, pos2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, STROKE_NOW, Theme, size};
use crate::ui::views::{LadderView, RungState, Spot};
use crate::units::Rail;

use super::layout::Overview;
use super::paint::{dim, rails_between};

/// Paints the strip.
pub(super) fn overview(painter: &Painter, view: &LadderView, strip: &Overview, theme: &Theme) {
    let rails = [strip.rect.left() + 5.0, strip.rect.right() - 5.0];
    let middle = (rails[0] + rails[1]) / 2.0;
    let all = format!("all {} rungs", view.rungs.len());
    let ink = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink);
    letters(
        painter,
        pos2(middle, strip.rect.top() - 6.0),
        Align2::CENTER_BOTTOM,
        &all,
        ink,
    );
    for (rung, y) in view.rungs.iter().zip(&strip.rungs) {
        for (nth, x) in [(0, rails[0]..=middle - 1.0), (1, middle + 1.0..=rails[1])] {
            let passed = rung.state[nth] == RungState::Passed;
            let colour = if passed {
                *theme.steel
            } else {
                dim(*theme.edge, theme)
            };
            painter.hline(x, *y, Stroke::new(if passed { 3.0 } else { 1.0 }, colour));
        }
        if rung.is_goal {
            painter.hline(
                rails[1] + 4.0..=rails[1] + 18.0,
                *y,
                Stroke::new(STROKE_NOW, *theme.ember),
            );
            let words = rung
                .demand
                .map_or_else(|| "goal".to_owned(), |demand| format!("goal {demand:.2}"));
            let ink = Ink::new(Face::LabelStrong, size::TABLE, *theme.ember);
            letters(
                painter,
                pos2(rails[1] + 24.0, *y),
                Align2::LEFT_CENTER,
                &words,
                ink,
            );
        }
    }
    rails_between(
        painter,
        &rails,
        4.0,
        strip.rect.y_range().min..=strip.rect.y_range().max,
        theme,
    );
    for hand in &view.hands {
        let Spot::Rung(nth) = hand.at else { continue };
        let Some(y) = strip.rungs.get(nth) else { continue };
        let x = if hand.rail == Rail::Right {
            rails[1]
        } else {
            rails[0]
        };
        match hand.rail {
            Rail::Right => painter.circle_filled(pos2(x, *y), 6.0, *theme.right),
            Rail::Left | Rail::Both => {
                let square = egui::Rect::from_center_size(pos2(x, *y), egui::vec2(13.0, 10.0));
                painter.rect_filled(square, 2.0, theme.rail(hand.rail))
            }
        };
    }
    painter.rect_stroke(
        strip.frame,
        5.0,
        Stroke::new(STROKE_NOW, *theme.ink),
        StrokeKind::Inside,
    );
    let note = Ink::new(Face::Text, size::NOTE, *theme.ink2);
    let at = pos2(strip.frame.right() + 10.0, strip.frame.bottom() - 40.0);
    letters(painter, at, Align2::LEFT_TOP, "shown here", note);
    letters(
        painter,
        at + egui::vec2(0.0, 16.0),
        Align2::LEFT_TOP,
        "PgUp, PgDn",
        note,
    );
}
