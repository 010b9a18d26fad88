//! Strokes of the ladder: rails, rungs, pegs, bands, selection. Everything it needs to know lies in the layout and the view.

use egui::epaint::{Mesh, PathShape, Vertex, WHITE_UV};
use egui::{Align2, Color32, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};

use crate::ui::theme::{STROKE_NOW, STROKE_OUTLINE, STROKE_SELECTED, Theme, fade, translucent};
use crate::ui::views::{BeliefView, LadderView, RungState};
use crate::units::Rail;

use super::grip::tag;
use super::heights::narrow;
use super::layout::{Layout, RAIL, Width, belief_rows};

/// A mesh of coloured stops across a rectangle, left to right or top to bottom.
fn stops(painter: &Painter, rect: Rect, across: bool, colours: &[(f32, Color32)]) {
    let mut mesh = Mesh::default();
    for (share, colour) in colours {
        let (a, b) = if across {
            let x = rect.left() + rect.width() * share;
            (pos2(x, rect.top()), pos2(x, rect.bottom()))
        } else {
            let y = rect.top() + rect.height() * share;
            (pos2(rect.left(), y), pos2(rect.right(), y))
        };
        for pos in [a, b] {
            mesh.vertices.push(Vertex {
                pos,
                uv: WHITE_UV,
                color: *colour,
            });
        }
    }
    for pair in (2..)
        .step_by(2)
        .zip(1..colours.len())
        .map(|(at, _): (u32, usize)| at)
    {
        mesh.add_triangle(pair - 2, pair - 1, pair);
        mesh.add_triangle(pair - 1, pair, pair + 1);
    }
    painter.add(Shape::mesh(mesh));
}

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

/// Numbers of the beliefs, over everything that they might meet; where each stands.
pub(super) fn tags(
    painter: &Painter,
    view: &LadderView,
    layout: &Layout,
    theme: &Theme,
) -> Vec<(Rail, Rect)> {
    let tag = |belief| belief_tag(painter, view, belief, layout, theme);
    view.beliefs
        .iter()
        .filter_map(|belief| Some((belief.rail, tag(belief)?)))
        .collect()
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

/// A belief: soft, because it is believed and not logged.
fn band(painter: &Painter, belief: &BeliefView, layout: &Layout, theme: &Theme) {
    let fill = theme.rail_fill(belief.rail);
    let half = layout.half(belief.rail);
    let rows: Vec<(f32, Color32)> = belief_rows()
        .filter_map(|(z, alpha)| {
            let y = layout.y_of(belief.median * (z * belief.log_sd).exp())?;
            Some((y.clamp(layout.top, layout.ground), translucent(fill, alpha)))
        })
        .collect();
    let (Some(low), Some(high)) = (rows.first(), rows.last()) else {
        return;
    };
    let height = (low.0 - high.0).max(1.0);
    let rect = Rect::from_x_y_ranges(half, high.0..=low.0);
    let shares: Vec<(f32, Color32)> = rows
        .iter()
        .rev()
        .map(|(y, colour)| ((y - high.0) / height, *colour))
        .collect();
    stops(painter, rect, false, &shares);
}

/// The middle of a belief, dotted, with its number, and the bracket of its 80 % interval.
fn bracket(painter: &Painter, belief: &BeliefView, layout: &Layout, theme: &Theme) {
    let colour = theme.rail(belief.rail);
    let y_of = |demand: f64| layout.y_of(demand).map(|y| y.clamp(layout.top, layout.ground));
    let (Some(low), Some(high), Some(middle)) = (
        y_of(belief.interval80.0),
        y_of(belief.interval80.1),
        y_of(belief.median),
    ) else {
        return;
    };
    let half = layout.half(belief.rail);
    let (x, way) = if belief.rail == Rail::Right {
        (half.end() - 6.0, -1.0)
    } else {
        (half.start() + 6.0, 1.0)
    };
    // What reaches beyond the rails stays open there.
    let shown = layout.top + 1.0..=layout.ground - 1.0;
    let tick = |y: f32| shown.contains(&y).then(|| pos2(x + way * 6.0, y));
    let ends = [tick(high), Some(pos2(x, high)), Some(pos2(x, low)), tick(low)];
    let points: Vec<Pos2> = ends.into_iter().flatten().collect();
    let stroke = Stroke::new(STROKE_NOW, colour);
    if belief.is_stale {
        painter.extend(Shape::dashed_line(&points, stroke, 4.0, 3.0));
    } else {
        painter.add(PathShape::line(points, stroke));
    }
    if shown.contains(&middle) {
        painter.extend(dotted(*half.start() + 4.0, *half.end() - 4.0, middle, colour));
    }
}

fn belief_tag(
    painter: &Painter,
    view: &LadderView,
    belief: &BeliefView,
    layout: &Layout,
    theme: &Theme,
) -> Option<Rect> {
    let y = layout.y_of(belief.median)?;
    let middle = y.clamp(layout.top + TAG, layout.ground - TAG);
    let (half, colour) = (layout.half(belief.rail), theme.rail(belief.rail));
    let old = if belief.is_stale { " old" } else { "" };
    let beyond = match y {
        y if y < layout.top => " ↑",
        y if y > layout.ground => " ↓",
        _ => "",
    };
    let number = format!("{:.2}{old}{beyond}", belief.median);
    let (at, anchor) = match belief.rail {
        Rail::Left => (pos2(half.end() - 8.0, middle), Align2::RIGHT_CENTER),
        Rail::Right => (pos2(half.start() + 8.0, middle), Align2::LEFT_CENTER),
        Rail::Both => (pos2(layout.middle() - 18.0, middle), Align2::RIGHT_CENTER),
    };
    let at = beside_hands(at, belief.rail, view, layout);
    Some(tag(painter, at, anchor, &number, colour, theme))
}

/// Half the height of a tag: it stands within the rails.
const TAG: f32 = 10.0;

/// The same place, or above or below a hand of this rail where rails are so close that the hand would cover it.
fn beside_hands(at: Pos2, rail: Rail, view: &LadderView, layout: &Layout) -> Pos2 {
    const ABOVE: f32 = 30.0;
    const BELOW: f32 = 28.0;
    if layout.middle() - layout.rails[0] > 100.0 {
        return at;
    }
    let hands = view.hands.iter().filter(|hand| hand.rail == rail);
    let near = hands.map(|hand| (hand, layout.hand(hand.rail, hand.at).y));
    match near
        .into_iter()
        .find(|(_, y)| (y - ABOVE..y + BELOW).contains(&at.y))
    {
        None => at,
        // Chevrons stand above a hand that steps up.
        Some((hand, y)) if hand.steps_up || at.y > y => pos2(at.x, y + BELOW),
        Some((_, y)) => pos2(at.x, y - ABOVE),
    }
}

fn dotted(from: f32, to: f32, y: f32, colour: Color32) -> Vec<Shape> {
    Shape::dashed_line(&[pos2(from, y), pos2(to, y)], Stroke::new(1.5, colour), 2.0, 2.5)
}

/// Where a hand would stand at another bodyweight: the 80 % box, dashed, no fill.
pub fn ghost(painter: &Painter, interval80: (f64, f64), rail: Rail, layout: &Layout, theme: &Theme) {
    let (Some(low), Some(high)) = (layout.y_of(interval80.0), layout.y_of(interval80.1)) else {
        return;
    };
    let half = layout.half(rail);
    let rect = Rect::from_x_y_ranges(half.start() + 5.0..=half.end() - 5.0, high..=low);
    let path = [
        rect.left_top(),
        rect.right_top(),
        rect.right_bottom(),
        rect.left_bottom(),
        rect.left_top(),
    ];
    painter.extend(Shape::dashed_line(
        &path,
        Stroke::new(1.5, theme.rail(rail)),
        5.0,
        4.0,
    ));
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

/// Opacity for a row of the belief at its middle, for the sheet's small scale.
pub(crate) fn soft_bar(
    painter: &Painter,
    rect: Rect,
    at: impl Fn(f64) -> f32,
    belief: &BeliefView,
    theme: &Theme,
) {
    let fill = theme.rail_fill(belief.rail);
    let rows: Vec<(f32, Color32)> = belief_rows()
        .map(|(z, alpha)| {
            (
                at(belief.median * (z * belief.log_sd).exp()).clamp(rect.left(), rect.right()),
                translucent(fill, alpha * 2.0),
            )
        })
        .collect();
    let shares: Vec<(f32, Color32)> = rows
        .iter()
        .map(|(x, colour)| ((x - rect.left()) / rect.width().max(1.0), *colour))
        .collect();
    stops(painter, rect, true, &shares);
    let x = at(belief.median).clamp(rect.left(), rect.right());
    painter.vline(
        x,
        rect.y_range(),
        Stroke::new(narrow(2.0), theme.rail(belief.rail)),
    );
}
