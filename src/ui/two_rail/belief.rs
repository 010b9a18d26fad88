//! Strokes of what is believed: bands, their middles and numbers, brackets, and where a hand would stand.

use egui::epaint::PathShape;
use egui::{Align2, Color32, Painter, Pos2, Rect, Shape, Stroke, pos2};

use crate::ui::theme::{STROKE_NOW, Theme, translucent};
use crate::ui::views::{BeliefView, LadderView};
use crate::units::Rail;

use super::grip::tag;
use super::heights::narrow;
use super::layout::{Layout, belief_rows};
use super::stops::stops;

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

/// A belief: soft, because it is believed and not logged.
pub(super) fn band(painter: &Painter, belief: &BeliefView, layout: &Layout, theme: &Theme) {
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
pub(super) fn bracket(painter: &Painter, belief: &BeliefView, layout: &Layout, theme: &Theme) {
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
