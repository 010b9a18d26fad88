//! Strokes of the ladder: rails, rungs, pegs, bands, selection. Everything it needs to know lies in the layout and the view.

use egui::{Color32, Painter, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::ui::theme::{STROKE_NOW, STROKE_OUTLINE, STROKE_SELECTED, Theme, fade, translucent};
use crate::ui::views::{LadderView, RungState};
use crate::units::Rail;

use super::belief::{band, bracket};
use super::layout::{Layout, RAIL, Width};
use super::stops::stops;

/// One rail: lighter a third across, as round steel is.
pub fn rails_between(
    painter: &Painter,
    xs: &[f32],
    width: f32,
    y: std::ops::RangeInclusive<f32>,
    theme: &Theme,
) {
    for x in xs {
        let rect = Rect::from_x_y_ranges(x - width / 2.0..=x + width / 2.0, y.clone());
        stops(
            painter,
            rect,
            true,
            &[
                (0.0, *theme.steel_low),
                (0.35, *theme.steel_high),
                (1.0, *theme.steel_low),
            ],
        );
    }
}

/// The rails fade out upward over the last `fade` points.
pub fn rails_fading(
    painter: &Painter,
    xs: &[f32],
    width: f32,
    top: f32,
    bottom: f32,
    length: f32,
    theme: &Theme,
) {
    rails_between(painter, xs, width, top..=bottom, theme);
    for x in xs {
        let rect = Rect::from_x_y_ranges(x - width / 2.0 - 1.0..=x + width / 2.0 + 1.0, top..=top + length);
        stops(
            painter,
            rect,
            false,
            &[(0.0, *theme.bench), (1.0, translucent(*theme.bench, 0.0))],
        );
    }
}

/// An open rung: an outline, nothing in it.
pub fn rung_open(painter: &Painter, rect: Rect, theme: &Theme) {
    let fill = translucent(*theme.raised, 0.55);
    painter.rect(
        rect,
        0.0,
        fill,
        Stroke::new(STROKE_OUTLINE, *theme.ink2),
        StrokeKind::Inside,
    );
}

/// A rung that was passed: solid steel.
pub fn rung_passed(painter: &Painter, rect: Rect, theme: &Theme) {
    let rect = rect.expand2(vec2(0.0, 0.5));
    stops(
        painter,
        rect,
        false,
        &[
            (0.0, *theme.steel_high),
            (0.4, *theme.steel),
            (1.0, *theme.steel_low),
        ],
    );
}

/// A rung being worked on: the side's outline, and standard days as squares from the middle outward.
fn rung_worked(painter: &Painter, rect: Rect, rail: Rail, done: u8, of: u8, theme: &Theme) {
    let colour = theme.rail(rail);
    painter.rect(
        rect,
        0.0,
        translucent(*theme.raised, 0.55),
        Stroke::new(STROKE_NOW, colour),
        StrokeKind::Inside,
    );
    let (from, way) = match rail {
        Rail::Left => (rect.right() - 10.0, -1.0),
        Rail::Right => (rect.left() + 10.0, 1.0),
        Rail::Both => (rect.center().x - f32::from(of.saturating_sub(1)) * 6.0, 1.0),
    };
    for day in 0..of.min(6) {
        let centre = pos2(from + way * f32::from(day) * 12.0, rect.center().y);
        let square = Rect::from_center_size(centre, vec2(8.0, 8.0));
        let fill = if day < done { colour } else { *theme.raised };
        painter.rect(square, 0.0, fill, Stroke::new(1.2, colour), StrokeKind::Inside);
    }
}

/// Everything under the hands: ground, space between the rails, bands, rungs, rails, pegs.
pub(super) fn body(painter: &Painter, view: &LadderView, layout: &Layout, width: Width, theme: &Theme) {
    if width != Width::Strip {
        ground(painter, layout, theme);
    }
    let (left, right) = (layout.rails[0], layout.rails[1]);
    let inner = Rect::from_x_y_ranges(left..=right, layout.top..=layout.ground);
    painter.rect_filled(inner, 0.0, *theme.raised);
    for belief in &view.beliefs {
        band(painter, belief, layout, theme);
    }
    if view.sided {
        painter.vline(
            layout.middle(),
            layout.top..=layout.ground,
            Stroke::new(1.0, *theme.line),
        );
    }
    for (rung, place) in view.rungs.iter().zip(&layout.rungs) {
        if rung.is_goal {
            for y in [place.rect.top() - 5.0, place.rect.bottom() + 5.0] {
                painter.hline(place.rect.x_range(), y, Stroke::new(STROKE_NOW, *theme.ember));
            }
        }
        let sides: &[(Rail, usize)] = if view.sided {
            &[(Rail::Left, 0), (Rail::Right, 1)]
        } else {
            &[(Rail::Both, 0)]
        };
        for (rail, nth) in sides {
            let half = place.halves[*nth];
            match rung.state[*nth] {
                RungState::Passed => rung_passed(painter, half, theme),
                RungState::Open => rung_open(painter, half, theme),
                RungState::WorkedOn { done, of } => rung_worked(painter, half, *rail, done, of, theme),
            }
        }
    }
    rails_between(painter, &[left, right], RAIL, layout.top..=layout.ground, theme);
    for (rung, place) in view.rungs.iter().zip(&layout.rungs) {
        for (nth, x) in [left, right].into_iter().enumerate() {
            peg(
                painter,
                pos2(x, place.y),
                rung.state[nth] == RungState::Passed,
                theme,
            );
        }
        if place.stretched_above {
            nicks(painter, layout, place.y, theme);
        }
    }
    for belief in &view.beliefs {
        bracket(painter, belief, layout, theme);
    }
}

/// A peg in the rail: filled when passed, hollow when open.
fn peg(painter: &Painter, centre: egui::Pos2, passed: bool, theme: &Theme) {
    let colour = if theme.dark { *theme.bench } else { *theme.raised };
    if passed {
        painter.circle_filled(centre, 4.2, colour);
    } else {
        painter.circle(
            centre,
            3.4,
            if theme.dark { *theme.edge } else { *theme.steel },
            Stroke::new(1.5, colour),
        );
    }
}

/// Two slanted nicks on both rails: the gap above is drawn wider than its demand.
fn nicks(painter: &Painter, layout: &Layout, y: f32, theme: &Theme) {
    for x in layout.rails {
        for lift in [11.0, 15.0] {
            let at = pos2(x, y - lift);
            painter.line_segment(
                [at + vec2(-7.0, 2.0), at + vec2(7.0, -2.0)],
                Stroke::new(1.8, *theme.bench),
            );
        }
    }
}

fn ground(painter: &Painter, layout: &Layout, theme: &Theme) {
    let y = layout.ground;
    let (from, to) = (layout.rails[0] - 70.0, layout.rails[1] + 70.0);
    painter.hline(from..=to, y, Stroke::new(STROKE_NOW, *theme.steel_low));
    let mut x = from + 4.0;
    while x < to - 6.0 {
        painter.line_segment(
            [pos2(x, y + 9.0), pos2(x + 9.0, y + 1.0)],
            Stroke::new(1.0, *theme.edge),
        );
        x += 20.0;
    }
}

/// The selected rung: 2.5 points of ember, outside.
pub(super) fn selection(painter: &Painter, rect: Rect, theme: &Theme) {
    let rect = rect.expand2(vec2(6.0 + RAIL, 7.0));
    painter.rect_stroke(
        rect,
        5.0,
        Stroke::new(STROKE_SELECTED, *theme.ember),
        StrokeKind::Inside,
    );
}

/// A dimmer colour for what lies outside the window of attention.
pub(super) fn dim(colour: Color32, theme: &Theme) -> Color32 {
    fade(colour, *theme.bench, 0.4)
}
