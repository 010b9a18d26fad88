//! The scatter: what was lifted at each bodyweight, lines of the same added load, the athlete's own line, and where another
//! bodyweight would lead.

use egui::{
    Align2, Color32, Mesh, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo, pos2,
    vec2,
};

use crate::bests::{Fit, Kind};
use crate::coaching::what_if::There;
use crate::report::numbers::number;
use crate::report::totals::signed;
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, STROKE_NOW, Theme, size, translucent};
use crate::ui::two_rail::heights::{many, narrow};
use crate::ui::views::{BestView, LiftView, PointView};
use crate::units::{Bodyweight, Mass, Unit};

use super::axes::{Axes, callouts};
use super::state::TotalsState;

/// Room around the frame: ticks at the left, added loads at the right, title and legend above, bodyweights and slider below.
const MARGIN: [f32; 4] = [48.0, 62.0, 96.0, 106.0];
/// Radius of a dot of a set with just these repetitions.
const DOT: f32 = 4.4;
/// Radius of a ring of a set with others.
const RING: f32 = 4.0;
/// Points nearer than this across and upward are drawn as one: at 5,000 nobody could tell them apart.
const CELL: f32 = 2.0;
/// How far the pointer may be from a point to read it.
const REACH: f32 = 10.0;

/// Draws the plot's card, and lets the points be walked and read.
pub(super) fn plot_ui(
    ui: &mut Ui,
    card: Rect,
    lift: &LiftView,
    unit: Unit,
    there: Option<&There>,
    state: &mut TotalsState,
) {
    let theme = Theme::of(ui);
    let reps = state.reps();
    let title = format!("{}: what you lifted at each bodyweight", lift.title);
    let ink = Ink::new(Face::LabelStrong, 17.0, *theme.ink);
    let line = Line::new(&title, ink).on_one_line(ui.painter(), card.width() - 40.0);
    let title_end = named_galley(ui, card.min + vec2(22.0, 12.0), line).right();
    let frame = frame(card, lift);
    legend(ui.painter(), card, title_end, lift, reps, &theme);
    let Some(axes) = axes(lift, reps, there, frame, unit) else {
        return;
    };
    grid(ui.painter(), &axes, reps, &theme);
    same_added(ui.painter(), &axes, lift.share, &theme);
    let inside = ui.painter().with_clip_rect(frame.expand(6.0));
    if let Some(fit) = &lift.fit {
        fit_band(&inside, &axes, fit, lift, reps, &theme);
    }
    let places = places(lift, reps, &axes);
    dots(&inside, lift, reps, &places, &theme);
    if let Some(there) = there {
        whisker(ui.painter(), &axes, there, lift, reps, &theme);
    }
    bests(ui.painter(), &axes, lift, reps, there, &theme);
    walk(ui, &axes, lift, &places, state, &theme);
}

/// Where the plot lies in its card; without a slider there is more room.
fn frame(card: Rect, lift: &LiftView) -> Rect {
    let below = if lift.what_if.is_some() { MARGIN[3] } else { 46.0 };
    Rect::from_min_max(
        card.min + vec2(MARGIN[0] + 12.0, MARGIN[2]),
        card.max - vec2(MARGIN[1], below),
    )
}

/// The line under the plot on which the slider runs.
pub(super) fn track(card: Rect, lift: &LiftView) -> Rect {
    let frame = frame(card, lift);
    Rect::from_center_size(
        pos2(frame.center().x, card.bottom() - 50.0),
        vec2(frame.width(), 30.0),
    )
}

/// Axes around every point, the line's ends and the whisker.
pub(super) fn axes(
    lift: &LiftView,
    reps: u16,
    there: Option<&There>,
    frame: Rect,
    unit: Unit,
) -> Option<Axes> {
    let points = lift
        .points
        .iter()
        .filter_map(|point| Some((point.bodyweight_kg, lift.height(point, reps)?)));
    let today = lift
        .what_if
        .as_ref()
        .map(|known| (known.bodyweight.kg(), lift.for_reps(known.today.kg(), reps)));
    let bests = lift
        .bests
        .iter()
        .filter(|best| best.reps == reps)
        .filter_map(|best| best.at);
    let axes = Axes::around(points.chain(today).chain(bests), frame, unit)?;
    Some(match there {
        Some(there) => {
            let ends = [there.low80, there.high80].map(|load| lift.for_reps(load.kg(), reps));
            axes.reaching(there.bodyweight.kg(), ends)
        }
        None => axes,
    })
}

/// Where each point lies; none where it has no height.
fn places(lift: &LiftView, reps: u16, axes: &Axes) -> Vec<Option<Pos2>> {
    let place = |point: &PointView| Some(axes.at(point.bodyweight_kg, lift.height(point, reps)?));
    lift.points.iter().map(place).collect()
}

fn legend(painter: &Painter, card: Rect, title_end: f32, lift: &LiftView, reps: u16, theme: &Theme) {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let (done, other) = match reps {
        1 => ("single, done".to_owned(), "from 2–12 reps"),
        reps => (format!("{reps} reps, done"), "from other reps"),
    };
    let mut entries = vec![(0, done), (1, other.to_owned())];
    if lift.points.iter().any(|point| point.missed && point.reps == 0.0) {
        entries.push((2, "missed".to_owned()));
    }
    if lift.points.iter().any(|point| point.doubted) {
        entries.push((5, "doubted".to_owned()));
    }
    entries.push((3, "same added load".to_owned()));
    if lift.fit.is_some() {
        entries.push((4, "fit, 50/80/95 %".to_owned()));
    }
    let wide = |text: &str| {
        Line::new(text, quiet)
            .on_one_line(painter, f32::INFINITY)
            .size()
            .x
            + 44.0
    };
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
        if x + wide(&text) > card.right() - 4.0 {
            break;
        }
        let at = pos2(x + 10.0, y);
        match sign {
            0 => dot(painter, at, theme),
            1 => ring(painter, at, *theme.raised, theme),
            2 => cross(painter, at, *theme.ink2),
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
        letters(painter, at + vec2(16.0, 0.0), Align2::LEFT_CENTER, &text, quiet);
        x += wide(&text);
    }
}

fn grid(painter: &Painter, axes: &Axes, reps: u16, theme: &Theme) {
    let frame = axes.frame;
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    for (kg, value) in axes.ticks_upward() {
        let y = axes.y(kg).round() + 0.5;
        painter.hline(frame.x_range(), y, Stroke::new(1.0, *theme.line));
        letters(
            painter,
            pos2(frame.left() - 10.0, y),
            Align2::RIGHT_CENTER,
            &number(value, 1),
            quiet,
        );
    }
    let across = format!("bodyweight, {}", axes.unit.sign());
    let at = pos2(frame.right() + 54.0, frame.bottom() + 12.0);
    let named = letters(painter, at, Align2::RIGHT_TOP, &across, quiet);
    for (kg, value) in axes.ticks_across() {
        let x = axes.x(kg);
        if x + 20.0 > named.left() {
            continue;
        }
        painter.vline(
            x,
            frame.bottom() + 4.0..=frame.bottom() + 9.0,
            Stroke::new(1.0, *theme.edge),
        );
        letters(
            painter,
            pos2(x, frame.bottom() + 12.0),
            Align2::CENTER_TOP,
            &number(value, 1),
            quiet,
        );
    }
    let counted = if reps == 1 {
        "1 rep".to_owned()
    } else {
        format!("{reps} reps")
    };
    let upward = format!("system load, {} ({counted})", axes.unit.sign());
    letters(
        painter,
        frame.left_top() + vec2(-38.0, -24.0),
        Align2::LEFT_CENTER,
        &upward,
        quiet,
    );
}

fn same_added(painter: &Painter, axes: &Axes, share: f64, theme: &Theme) {
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let stroke = Stroke::new(1.0, *theme.edge);
    let mut last_top = f32::INFINITY;
    for line in axes.same_added(share).iter().rev() {
        painter.extend(Shape::dashed_line(&[line.from, line.to], stroke, 6.0, 5.0));
        let words = signed(line.added_kg, axes.unit);
        if line.at_right {
            letters(
                painter,
                line.to + vec2(6.0, 0.0),
                Align2::LEFT_CENTER,
                &words,
                quiet,
            );
        } else if line.to.x > axes.frame.left() + 120.0
            && (last_top - line.to.x).abs() > 76.0
            && axes.frame.right() - line.to.x > 40.0
        {
            letters(
                painter,
                line.to + vec2(0.0, -4.0),
                Align2::CENTER_BOTTOM,
                &words,
                quiet,
            );
            last_top = line.to.x;
        }
    }
}

/// The line with its band: soft, and fading out past what was logged.
fn fit_band(painter: &Painter, axes: &Axes, fit: &Fit, lift: &LiftView, reps: u16, theme: &Theme) {
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
    painter.add(Shape::mesh(mesh));
    let at = |kg: f64| {
        axes.at(
            kg,
            lift.for_reps(fit.at(Bodyweight::new(Mass::from_kg(kg))).kg(), reps),
        )
    };
    let line: Vec<Pos2> = (0..=24u8)
        .map(|part| at(from + (to - from) * f64::from(part) / 24.0))
        .collect();
    painter.extend(Shape::dotted_line(&line, *theme.ink, 4.2, 1.2));
}

fn dot(painter: &Painter, at: Pos2, theme: &Theme) {
    painter.circle_filled(at, DOT + 1.1, *theme.raised);
    painter.circle_filled(at, DOT, *theme.steel);
}

fn ring(painter: &Painter, at: Pos2, inside: Color32, theme: &Theme) {
    painter.circle_filled(at, RING + 0.6, *theme.steel);
    painter.circle_filled(at, RING - 0.9, inside);
}

fn cross(painter: &Painter, at: Pos2, colour: Color32) {
    let stroke = Stroke::new(1.6, colour);
    painter.line_segment([at + vec2(-3.6, -3.6), at + vec2(3.6, 3.6)], stroke);
    painter.line_segment([at + vec2(-3.6, 3.6), at + vec2(3.6, -3.6)], stroke);
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
fn dots(painter: &Painter, lift: &LiftView, reps: u16, places: &[Option<Pos2>], theme: &Theme) {
    let mut seen = std::collections::HashSet::with_capacity(places.len());
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
            match (done, empty) {
                (true, _) => dot(painter, at, theme),
                (false, true) => cross(painter, at, *theme.ink2),
                (false, false) => ring(painter, at, *theme.raised, theme),
            }
        }
    }
    for (point, at) in lift.points.iter().zip(places) {
        if let (true, Some(at)) = (point.doubted, at) {
            doubt(painter, *at, theme);
        }
    }
}

/// Another bodyweight: a line from the slider, the middle, and the 80 % interval.
fn whisker(painter: &Painter, axes: &Axes, there: &There, lift: &LiftView, reps: u16, theme: &Theme) {
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

/// The sign of a measure, around `at`.
pub(super) fn sign(painter: &Painter, at: Pos2, kind: Kind, radius: f32, theme: &Theme) {
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

/// The bests of these repetitions: a sign on each, a callout with leader beside it. Bests of one set share both.
fn bests(painter: &Painter, axes: &Axes, lift: &LiftView, reps: u16, there: Option<&There>, theme: &Theme) {
    let mut groups: Vec<(Pos2, Vec<&BestView>)> = Vec::new();
    for best in lift.bests.iter().filter(|best| best.reps == reps) {
        let Some(at) = best.at.map(|(body, load)| axes.at(body, load)) else {
            continue;
        };
        match groups.iter_mut().find(|(place, _)| place.distance(at) < 1.0) {
            Some((_, all)) => all.push(best),
            None => groups.push((at, vec![best])),
        }
    }
    let (plain, strong) = (
        Ink::new(Face::Label, size::TABLE, *theme.ink2),
        Ink::new(Face::LabelStrong, 15.0, *theme.ink),
    );
    let galleys: Vec<_> = groups
        .iter()
        .map(|(_, all)| {
            let lines = all.iter().enumerate().fold(Line::default(), |line, (nth, best)| {
                let line = if nth == 0 { line } else { line.and("\n", plain) };
                line.and(&format!("{}  ", super::capital(best.title)), plain)
                    .and(&best.value, strong)
            });
            lines.wrapped(painter, 400.0)
        })
        .collect();
    let wanted: Vec<(Pos2, egui::Vec2)> = groups
        .iter()
        .zip(&galleys)
        .map(|((at, _), galley)| (*at, galley.size() + vec2(18.0, 10.0)))
        .collect();
    let mut keep_free: Vec<Pos2> = groups.iter().map(|(at, _)| *at).collect();
    keep_free
        .extend(there.map(|there| axes.at(there.bodyweight.kg(), lift.for_reps(there.system.kg(), reps))));
    let placed = callouts(&wanted, &keep_free, axes.frame.expand2(vec2(-2.0, 0.0)));
    // Leaders first: a box covers a leader that must pass behind it.
    for ((at, _), rect) in groups.iter().zip(&placed) {
        painter.line_segment([*at, rect.clamp(*at)], Stroke::new(1.0, *theme.ink));
    }
    for (((at, all), galley), rect) in groups.iter().zip(galleys).zip(placed) {
        painter.rect(
            rect,
            3.0,
            *theme.raised,
            Stroke::new(1.0, *theme.ink),
            StrokeKind::Inside,
        );
        painter.galley(rect.min + vec2(9.0, 5.0), galley, *theme.ink);
        if let Some(first) = all.first() {
            sign(painter, *at, first.kind, 7.0, theme);
        }
    }
}

/// Points by key, pointer and screen reader: the one that is walked or pointed at is ringed and read out.
fn walk(
    ui: &mut Ui,
    axes: &Axes,
    lift: &LiftView,
    places: &[Option<Pos2>],
    state: &mut TotalsState,
    theme: &Theme,
) {
    let id = ui.scope_id().with("points");
    let response = ui.interact(axes.frame, id, Sense::click());
    let near = response.hover_pos().and_then(|pointer| nearest(places, pointer));
    if response.clicked() {
        state.walked = near;
        response.request_focus();
    }
    let read = near.or(state.walked);
    let point = read.and_then(|nth| lift.points.get(nth));
    let words = point.map_or_else(
        || format!("{} sets; left and right arrow walk them", lift.points.len()),
        |point| point.words.clone(),
    );
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    if response.has_focus() {
        ui.painter().rect_stroke(
            axes.frame.expand(3.0),
            3.0,
            Stroke::new(STROKE_NOW, *theme.ink),
            StrokeKind::Outside,
        );
    }
    let (Some(point), Some(at)) = (point, read.and_then(|nth| places.get(nth).copied().flatten())) else {
        return;
    };
    ui.painter()
        .circle_stroke(at, 8.5, Stroke::new(STROKE_NOW, *theme.ink));
    let ink = Ink::new(Face::LabelStrong, 15.0, *theme.on_steel);
    let galley = Line::new(&point.words, ink).wrapped(ui.painter(), (axes.frame.width() - 40.0).min(420.0));
    let wanted = [(at, galley.size() + vec2(18.0, 10.0))];
    let rect = callouts(&wanted, &[at], axes.frame)
        .first()
        .copied()
        .unwrap_or(axes.frame);
    ui.painter().rect_filled(rect, 3.0, *theme.steel);
    ui.painter()
        .galley(rect.min + vec2(9.0, 5.0), galley, *theme.on_steel);
}

/// The point nearest to the pointer, within reach.
fn nearest(places: &[Option<Pos2>], pointer: Pos2) -> Option<usize> {
    let distances = places
        .iter()
        .enumerate()
        .filter_map(|(nth, at)| Some((nth, (*at)?.distance(pointer))));
    distances
        .filter(|(_, far)| *far <= REACH)
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(nth, _)| nth)
}

/// Width of so many equal parts, for rows of boxes.
pub(super) fn parts(width: f32, count: usize, gap: f32) -> f32 {
    (width - gap * many(count.saturating_sub(1))) / many(count.max(1))
}
