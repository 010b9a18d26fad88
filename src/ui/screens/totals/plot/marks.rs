//! What is painted on the plot: dots, rings and crosses, the line with its band, the whisker, the legend.

use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};

use crate::bests::{Fit, Kind};
use crate::coaching::what_if::There;
use crate::report::numbers::counted;
use crate::ui::pen::{Ink, letters, width_of};
use crate::ui::screens::totals::axes::Axes;
use crate::ui::theme::{Face, STROKE_NOW, Theme, size, translucent};
use crate::ui::two_rail::heights::narrow;
use crate::ui::views::LiftView;
use crate::units::{Bodyweight, Mass};

/// Radius of a dot of a set with just these repetitions.
const DOT: f32 = 4.4;
/// Radius of a ring of a set with others.
const RING: f32 = 4.0;
/// Points nearer than this across and upward are drawn as one: at 5,000 nobody could tell them apart.
const CELL: f32 = 2.0;

fn dot(at: Pos2, theme: &Theme) -> [Shape; 2] {
    [
        Shape::circle_filled(at, DOT + 1.1, *theme.raised),
        Shape::circle_filled(at, DOT, *theme.steel),
    ]
}

fn ring(at: Pos2, theme: &Theme) -> [Shape; 2] {
    [
        Shape::circle_filled(at, RING + 0.6, *theme.steel),
        Shape::circle_filled(at, RING - 0.9, *theme.raised),
    ]
}

fn cross(at: Pos2, colour: Color32) -> [Shape; 2] {
    let stroke = Stroke::new(1.6, colour);
    [-3.6, 3.6].map(|y| Shape::line_segment([at + vec2(-3.6, y), at + vec2(3.6, -y)], stroke))
}

/// A set that looks like a slip: a ring with a question mark.
fn doubt(painter: &Painter, at: Pos2, theme: &Theme) {
    painter.circle(at, 7.0, *theme.raised, Stroke::new(1.5, *theme.plum));
    letters(
        painter,
        at,
        Align2::CENTER_CENTER,
        "?",
        Ink::new(Face::LabelStrong, size::NOTE, *theme.plum),
    );
}

/// Every point once: those that nobody could tell apart are one.
pub(super) fn dots(lift: &LiftView, reps: u16, places: &[Option<Pos2>], theme: &Theme) -> Vec<Shape> {
    let mut seen = std::collections::HashSet::with_capacity(places.len());
    let mut marks = Vec::new();
    #[allow(clippy::cast_possible_truncation, reason = "a place on the screen")]
    let cell = |at: Pos2| ((at.x / CELL) as i32, (at.y / CELL) as i32);
    // Rings first, so that no dot of a set done hides under one.
    for done in [false, true] {
        for (point, at) in lift.points.iter().zip(places) {
            let (Some(at), true) = (*at, (point.reps == f64::from(reps)) == done) else {
                continue;
            };
            let empty = point.reps == 0.0;
            if point.doubted || !seen.insert((cell(at), done, empty)) {
                continue;
            }
            marks.extend(match (done, empty) {
                (true, _) => dot(at, theme),
                (false, true) => cross(at, *theme.ink2),
                (false, false) => ring(at, theme),
            });
        }
    }
    marks
}

/// Sets that look like a slip, over all others.
pub(super) fn doubts(painter: &Painter, lift: &LiftView, places: &[Option<Pos2>], theme: &Theme) {
    for (point, at) in lift.points.iter().zip(places) {
        if let (true, Some(at)) = (point.doubted, at) {
            doubt(painter, *at, theme);
        }
    }
}

/// The line with its band: soft, and fading out past what was logged.
pub(super) fn fit_band(axes: &Axes, fit: &Fit, lift: &LiftView, reps: u16, theme: &Theme) -> Vec<Shape> {
    const COLUMNS: u16 = 36;
    const ROWS: i16 = 14;
    let (from, to) = (fit.bodyweights.0.kg(), fit.bodyweights.1.kg());
    let beyond = (to - from) * 0.12 + 0.3;
    let mut mesh = Mesh::default();
    for column in 0..=COLUMNS {
        let kg = from - beyond + (to - from + 2.0 * beyond) * f64::from(column) / f64::from(COLUMNS);
        let outside = ((from - kg).max(kg - to).max(0.0) / beyond).clamp(0.0, 1.0);
        let body = Bodyweight::new(Mass::from_kg(kg));
        let (middle, sd) = (fit.at(body).kg(), fit.log_sd_at(body));
        for row in -ROWS..=ROWS {
            // To 1.96 standard deviations on both sides: 95 %.
            let z = 1.96 * f64::from(row) / f64::from(ROWS);
            let alpha = 0.42 * ((-z * z / 2.0).exp() - (-1.96f64 * 1.96 / 2.0).exp()) * (1.0 - outside);
            let at = axes.at(kg, lift.for_reps(middle * (z * sd).exp(), reps));
            mesh.colored_vertex(at, translucent(*theme.steel, narrow(alpha.max(0.0))));
        }
    }
    let rows = u32::from(ROWS.unsigned_abs()) * 2 + 1;
    for column in 0..u32::from(COLUMNS) {
        for row in 0..rows - 1 {
            let first = column * rows + row;
            mesh.add_triangle(first, first + 1, first + rows);
            mesh.add_triangle(first + 1, first + rows, first + rows + 1);
        }
    }
    let mut band = vec![Shape::mesh(mesh)];
    let at = |kg: f64| {
        axes.at(
            kg,
            lift.for_reps(fit.at(Bodyweight::new(Mass::from_kg(kg))).kg(), reps),
        )
    };
    let line: Vec<Pos2> = (0..=24u8)
        .map(|part| at(from + (to - from) * f64::from(part) / 24.0))
        .collect();
    band.extend(Shape::dotted_line(&line, *theme.ink, 4.2, 1.2));
    band
}

/// Another bodyweight: a line from the slider, the middle, and the 80 % interval.
pub(super) fn whisker(
    painter: &Painter,
    axes: &Axes,
    there: &There,
    lift: &LiftView,
    reps: u16,
    theme: &Theme,
) {
    let x = axes.x(there.bodyweight.kg());
    let [low, middle, high] =
        [there.low80, there.system, there.high80].map(|load| axes.y(lift.for_reps(load.kg(), reps)));
    let ember = *theme.ember;
    painter.vline(x, middle..=axes.frame.bottom() + 40.0, Stroke::new(1.5, ember));
    painter.extend(Shape::dotted_line(
        &[pos2(axes.frame.left(), middle), pos2(x, middle)],
        ember,
        4.0,
        1.0,
    ));
    painter.vline(x, high..=low, Stroke::new(STROKE_NOW + 0.5, ember));
    for y in [low, high] {
        painter.hline(x - 6.0..=x + 6.0, y, Stroke::new(STROKE_NOW + 0.5, ember));
    }
    painter.circle(
        pos2(x, middle),
        6.0,
        *theme.raised,
        Stroke::new(STROKE_NOW, ember),
    );
}

pub(super) fn legend(
    painter: &Painter,
    card: Rect,
    title_end: f32,
    lift: &LiftView,
    reps: u16,
    theme: &Theme,
) {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let counted = counted(reps, "rep");
    let (done, other) = match reps {
        1 => (["single, done", "single"], ["from 2–12 reps", "2–12 reps"]),
        _ => ([counted.as_str(); 2], ["from other reps", "others"]),
    };
    let mut entries = vec![(0, done), (1, other)];
    if lift.points.iter().any(|point| point.missed && point.reps == 0.0) {
        entries.push((2, ["missed"; 2]));
    }
    if lift.points.iter().any(|point| point.doubted) {
        entries.push((5, ["doubted"; 2]));
    }
    entries.push((3, ["same added load", "same added"]));
    if lift.fit.is_some() {
        entries.push((4, ["fit, 50/80/95 %", "fit"]));
    }
    let wide = |text: &str, room: f32| width_of(painter, text, quiet) + room;
    // A small window has room for all of it in fewer words only.
    let long: f32 = entries.iter().map(|(_, [text, _])| wide(text, 44.0)).sum();
    let (short, room) = if long > card.width() - 26.0 {
        (1, 36.0)
    } else {
        (0, 44.0)
    };
    let entries: Vec<(i32, &str)> = entries
        .into_iter()
        .map(|(sign, texts)| (sign, texts[short]))
        .collect();
    let wide = |text: &str| wide(text, room);
    let all: f32 = entries.iter().map(|(_, text)| wide(text)).sum();
    // Beside the title where there is room, else on a line of its own.
    let beside = card.right() - 16.0 - all > title_end + 12.0;
    let y = card.top() + if beside { 24.0 } else { 46.0 };
    let mut x = if beside {
        card.right() - 16.0 - all
    } else {
        card.left() + 22.0
    };
    for (sign, text) in entries {
        if x + wide(text) > card.right() + room - 32.0 {
            break;
        }
        let at = pos2(x + 10.0, y);
        match sign {
            0 => painter.extend(dot(at, theme)),
            1 => painter.extend(ring(at, theme)),
            2 => painter.extend(cross(at, *theme.ink2)),
            5 => doubt(painter, at, theme),
            3 => painter.extend(Shape::dashed_line(
                &[at + vec2(-10.0, 4.0), at + vec2(10.0, -4.0)],
                Stroke::new(1.0, *theme.ink3),
                6.0,
                5.0,
            )),
            _ => {
                painter.rect_filled(
                    Rect::from_center_size(at, vec2(22.0, 13.0)),
                    0.0,
                    translucent(*theme.steel, 0.3),
                );
                painter.extend(Shape::dotted_line(
                    &[at - vec2(10.0, 0.0), at + vec2(10.0, 0.0)],
                    *theme.ink,
                    4.0,
                    1.2,
                ));
            }
        }
        letters(painter, at + vec2(16.0, 0.0), Align2::LEFT_CENTER, text, quiet);
        x += wide(text);
    }
}

/// The sign of a measure, around `at`.
pub(in crate::ui::screens::totals) fn sign(
    painter: &Painter,
    at: Pos2,
    kind: Kind,
    radius: f32,
    theme: &Theme,
) {
    let (corners, turn, reach) = match kind {
        Kind::Added => (3u8, 0.0, 1.25),
        Kind::Ratio => (4, 0.0, 1.2),
        Kind::SizeAdjusted => (5, 0.0, 1.12),
        _ => (4, 0.5, 1.28),
    };
    let corner = |nth: u8| {
        let angle = (f32::from(nth) + turn) * std::f32::consts::TAU / f32::from(corners);
        at + vec2(angle.sin(), -angle.cos()) * radius * reach
    };
    let around = (0..corners).map(corner).collect();
    painter.add(Shape::convex_polygon(
        around,
        *theme.ink,
        Stroke::new(2.0, *theme.raised),
    ));
}
