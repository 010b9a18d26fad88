//! A hand around a rung: four fingers over, the thumb under, and the side's letter on the rail.

use egui::{Align2, Color32, Painter, Pos2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, Theme};
use crate::ui::widgets::hand_mark;
use crate::units::Rail;

const FINGER: f32 = 9.5;
const APART: f32 = 0.6;
/// Heights from index (inner) to little finger, of 30 points.
const FINGERS: [f32; 4] = [0.90, 1.0, 0.95, 0.80];
const HEIGHT: f32 = 30.0;
/// Finger tips end so far under the rung's middle.
const TIPS: f32 = 12.0;
const THUMB: egui::Vec2 = vec2(26.0, 11.0);
const THUMB_AT: f32 = 5.0;
const FROM_RAIL: f32 = 9.0;
const DISC: f32 = 14.0;

/// How large grips may be where the rails stand so far apart, so that two hands on one rung don't cover each other.
pub(super) fn scale_between(rails: f32) -> f32 {
    let reach = FROM_RAIL + 6.0 + 4.0 * FINGER + 3.0 * APART + 2.0;
    (rails / 2.0 / reach).min(1.0)
}

/// Paints a grip whose disc is centred at `disc`, `scale` times its size. A left hand reaches to the right, a right hand to the left.
pub fn grip(painter: &Painter, disc: Pos2, rail: Rail, scale: f32, theme: &Theme) {
    let way = if rail == Rail::Right { -1.0 } else { 1.0 };
    let colour = theme.rail(rail);
    let x = |over: f32| disc.x + way * over * scale;
    let y = |over: f32| disc.y + over * scale;
    let pill = |from: f32, to: f32, top: f32, bottom: f32| {
        let rect = Rect::from_two_pos(pos2(x(from), y(top)), pos2(x(to), y(bottom)));
        let round = (rect.width().min(rect.height()) / 2.0).min(FINGER / 2.0 * scale + 1.0);
        painter.rect(
            rect,
            round,
            colour,
            Stroke::new(1.2, *theme.raised),
            StrokeKind::Middle,
        );
    };
    let first = FROM_RAIL + 6.0;
    let end = first + 4.0 * FINGER + 3.0 * APART;
    pill(end - THUMB.x - 1.0, end - 0.5, THUMB_AT, THUMB_AT + THUMB.y);
    for (nth, share) in FINGERS.iter().rev().enumerate() {
        let from = first + super::heights::many(nth) * (FINGER + APART);
        pill(from, from + FINGER, TIPS - HEIGHT * share, TIPS);
    }
    hand_mark(painter, disc, DISC * scale, rail, theme);
}

/// Chevrons above a hand whose step today is one up.
pub(super) fn chevrons(painter: &Painter, centre: Pos2, count: u8, theme: &Theme) {
    for nth in 0..count {
        let y = centre.y - f32::from(nth) * 9.0;
        let points = |lift: f32| {
            vec![
                pos2(centre.x - 9.0, y + lift),
                pos2(centre.x, y - 8.0 + lift),
                pos2(centre.x + 9.0, y + lift),
            ]
        };
        painter.line(points(0.0), Stroke::new(6.5, *theme.raised));
    }
    for nth in 0..count {
        let y = centre.y - f32::from(nth) * 9.0;
        let points = vec![
            pos2(centre.x - 9.0, y),
            pos2(centre.x, y - 8.0),
            pos2(centre.x + 9.0, y),
        ];
        painter.line(points, Stroke::new(3.4, *theme.ember));
    }
}

/// A tag with a number at the middle of a belief; where it stands.
pub(super) fn tag(
    painter: &Painter,
    at: Pos2,
    anchor: Align2,
    text: &str,
    colour: Color32,
    theme: &Theme,
) -> egui::Rect {
    let ink = Ink::new(Face::LabelStrong, 14.0, colour);
    let galley = crate::ui::pen::Line::new(text, ink).on_one_line(painter, f32::INFINITY);
    let rect = anchor.anchor_size(at, galley.size() + vec2(14.0, 0.0));
    painter.rect(
        rect,
        4.0,
        *theme.raised,
        Stroke::new(1.2, colour),
        StrokeKind::Inside,
    );
    letters(painter, rect.center(), Align2::CENTER_CENTER, text, ink);
    rect
}
