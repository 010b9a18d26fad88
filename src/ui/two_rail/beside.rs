//! What stands beside the rails: labels at the right, companions and branches at the left.

use std::sync::Arc;

use egui::epaint::CubicBezierShape;
use egui::{Align, Align2, Color32, Galley, Painter, Rect, Shape, Stroke, StrokeKind, pos2, vec2};

use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, Theme, line_height, size, translucent};
use crate::ui::views::{LadderView, Spot};

use super::heights::decimals;
use super::layout::{Layout, RAIL};

/// Columns of a label, from the right rail's middle.
const DEMAND: f32 = 28.0;
const TITLE: f32 = 90.0;
/// The same where rails stand closer than in any other place, and demands have no band beside them.
const TITLE_CLOSE: f32 = 72.0;
const CLOSE: f32 = 140.0;
const LEADER: f32 = 6.0;
const SLOPE: f32 = 8.0;

/// Labels of rungs, from the right rail to `right`.
pub(super) fn labels(
    painter: &Painter,
    view: &LadderView,
    layout: &Layout,
    chosen: Option<Spot>,
    right: f32,
    theme: &Theme,
) {
    let rail = layout.rails[1];
    let digits = decimals(&view.rungs.iter().map(|rung| rung.demand).collect::<Vec<_>>());
    let is_close = rail - layout.rails[0] < CLOSE;
    let title = if is_close { TITLE_CLOSE } else { TITLE };
    let on = |nth: usize| view.hands.iter().any(|hand| hand.at == Spot::Rung(nth));
    for (nth, (rung, place)) in view.rungs.iter().zip(&layout.rungs).enumerate() {
        let is_chosen = chosen == Some(Spot::Rung(nth));
        if is_chosen {
            let wash = Rect::from_x_y_ranges(
                rail + DEMAND - 6.0..=right,
                place.label_y - half(layout)..=place.label_y + half(layout),
            );
            painter.rect_filled(wash, 5.0, *theme.ember_wash);
        }
        leader(painter, rail, place.y, place.label_y, theme);
        let demand = rung
            .demand
            .map_or_else(|| "–".to_owned(), |demand| format!("{demand:.digits$}"));
        let number_size = if layout.one_line { 15.0 } else { 17.0 };
        let range = band_words(rung.sheet.demand_band).filter(|_| !layout.one_line && !is_close);
        let lift = if range.is_some() { 7.0 } else { 0.0 };
        letters(
            painter,
            pos2(rail + DEMAND, place.label_y - lift),
            Align2::LEFT_CENTER,
            &demand,
            Ink::new(Face::LabelStrong, number_size, *theme.ink),
        );
        if let Some(range) = range {
            let ink = Ink::new(Face::Label, size::NOTE, *theme.ink3);
            letters(
                painter,
                pos2(rail + DEMAND, place.label_y + 9.0),
                Align2::LEFT_CENTER,
                &range,
                ink,
            );
        }
        let text = Rect::from_x_y_ranges(
            rail + title..=right - 10.0,
            place.label_y - half(layout)..=place.label_y + half(layout),
        );
        if layout.one_line {
            let (face, colour) = match (rung.is_goal, is_chosen || on(nth)) {
                (true, _) => (Face::LabelStrong, *theme.ember),
                (_, true) => (Face::LabelStrong, *theme.ink),
                _ => (Face::Label, *theme.ink2),
            };
            let galley = Line::new(&rung.title, Ink::new(face, 15.0, colour)).squeezed(painter, text.width());
            painter.galley(
                pos2(text.left(), text.center().y - galley.size().y / 2.0),
                galley,
                colour,
            );
        } else {
            two_lines(painter, rung, text, theme);
        }
    }
}

/// `0.47–0.61`; nothing where the demand is true by definition.
fn band_words(band: Option<(f64, f64)>) -> Option<String> {
    let (low, high) = band.map(|(low, high)| (format!("{low:.2}"), format!("{high:.2}")))?;
    (low != high).then(|| format!("{low}–{high}"))
}

/// The band of the chosen rung's demand beside the right rail: soft, because nobody measured it on this body.
pub(super) fn demand_band(
    painter: &Painter,
    view: &LadderView,
    layout: &Layout,
    chosen: Option<Spot>,
    theme: &Theme,
) {
    let sheet = match chosen {
        Some(Spot::Rung(nth)) => view.rungs.get(nth).map(|rung| &rung.sheet),
        Some(Spot::Branch(nth)) => view.branches.get(nth).map(|branch| &branch.sheet),
        Some(Spot::Ground) | None => None,
    };
    let ends = sheet
        .and_then(|sheet| sheet.demand_band)
        .filter(|(low, high)| high > low);
    let ends = ends.and_then(|(low, high)| Some((layout.y_of(low)?, layout.y_of(high)?)));
    let Some((bottom, top)) = ends else { return };
    let x = layout.rails[1] + RAIL / 2.0 + 2.0;
    let bar = Rect::from_x_y_ranges(
        x..=x + 5.0,
        top.max(layout.area.top())..=bottom.min(layout.area.bottom()),
    );
    painter.rect_filled(bar, 2.5, translucent(*theme.ink2, 0.45));
}

fn half(layout: &Layout) -> f32 {
    if layout.one_line { 12.5 } else { 18.5 }
}

/// Title over standard; the status at the right, dropped first where there is no room, then the standard. A title that is cut
/// even in small type takes both lines.
fn two_lines(painter: &Painter, rung: &crate::ui::views::RungView, text: Rect, theme: &Theme) {
    let titled = |size| Line::new(&rung.title, Ink::new(Face::LabelStrong, size, *theme.ink));
    let mut title = titled(size::BODY).squeezed(painter, text.width());
    if title.elided {
        title = titled(size::SMALL).fitted(painter, text.width(), Align::LEFT);
    }
    let one_row = title.rows.len() == 1;
    let standard_ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let standard = Line::new(&rung.standard, standard_ink).on_one_line(painter, f32::INFINITY);
    let status = if rung.is_goal && rung.status.is_none() {
        Some("goal")
    } else {
        rung.status.as_deref()
    };
    let now = rung.status_is_now || rung.is_goal;
    let (face, colour) = if now {
        (Face::LabelStrong, *theme.ember)
    } else {
        (Face::Label, *theme.ink3)
    };
    let status = status.map(|status| {
        Line::new(status, Ink::new(face, size::TABLE, colour)).on_one_line(painter, f32::INFINITY)
    });
    let fits = one_row && standard.size().x <= text.width();
    let bottom = text.center().y
        + if fits {
            title.size().y / 2.0 + 7.0
        } else {
            title.size().y / 2.0
        };
    let line_top = bottom - standard.size().y + 1.0;
    let title_top = bottom - 14.0 - title.size().y + if fits { 0.0 } else { 14.0 };
    if let Some(status) = status.filter(|_| one_row) {
        let left = text.right() - status.size().x;
        if standard.size().x + 16.0 <= left - text.left() {
            painter.galley(pos2(left, line_top), status, colour);
        } else if title.size().x + 16.0 <= left - text.left() {
            painter.galley(pos2(left, title_top + 2.0), status, colour);
        }
    }
    painter.galley(pos2(text.left(), title_top), title, *theme.ink);
    if fits {
        painter.galley(pos2(text.left(), line_top), standard, *theme.ink2);
    }
}

/// From a rung's end to its label: straight out, then across to the label's height.
fn leader(painter: &Painter, rail: f32, y: f32, label_y: f32, theme: &Theme) {
    let from = rail + RAIL / 2.0;
    let points = vec![
        pos2(from, y),
        pos2(from + LEADER, y),
        pos2(from + LEADER + SLOPE, label_y),
        pos2(rail + DEMAND - 4.0, label_y),
    ];
    painter.add(Shape::line(points, Stroke::new(1.0, *theme.edge)));
}

/// Names on the rungs of a strip, each on a quiet plate over its rung.
pub(super) fn names_on_rungs(painter: &Painter, view: &LadderView, layout: &Layout, theme: &Theme) {
    let mut taken: Vec<Rect> = Vec::new();
    for (nth, (rung, place)) in view.rungs.iter().zip(&layout.rungs).enumerate().rev() {
        // Chevrons stand over a hand that steps up; its rung's name goes beneath.
        let steps_up = view
            .hands
            .iter()
            .any(|hand| hand.steps_up && hand.at == Spot::Rung(nth));
        let ink = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink);
        let room = layout.rails[1] - layout.rails[0] + 20.0;
        let galley = Line::new(&rung.title, ink).fitted(painter, room, Align::Center);
        let holds = view.hands.iter().any(|hand| hand.at == Spot::Rung(nth));
        let lift = match (rung.is_goal, holds) {
            (_, true) => 25.0,
            (true, false) => 18.0,
            (false, false) => 13.0,
        };
        let further = (galley.size().y - line_height(size::TABLE)).max(0.0) / 2.0;
        let y = if steps_up {
            place.rect.bottom() + 20.0 + further
        } else {
            place.rect.top() - lift - further
        };
        let centre = pos2(layout.middle(), y);
        let plate = Rect::from_center_size(centre, galley.size() + vec2(12.0, 0.0));
        if plate.top() < layout.area.top() || taken.iter().any(|other| other.intersects(plate)) {
            continue;
        }
        taken.push(plate);
        painter.rect_filled(plate, 4.0, crate::ui::theme::translucent(*theme.surface, 0.94));
        painter.galley(plate.center_top(), galley, *theme.ink);
    }
}

/// Companions and branches, left of the rails.
pub(super) fn companions(
    painter: &Painter,
    view: &LadderView,
    layout: &Layout,
    chosen: Option<Spot>,
    theme: &Theme,
) {
    let rail = layout.rails[0];
    let ring_x = rail - 58.0;
    for (companion, place) in view.companions.iter().zip(&layout.companions) {
        let stroke = Stroke::new(1.2, *theme.edge);
        let hook = vec![
            pos2(rail - RAIL / 2.0, place.y),
            pos2(rail - 22.0, place.y),
            pos2(rail - 30.0, place.label_y),
            pos2(ring_x + 7.0, place.label_y),
        ];
        if companion.met {
            painter.add(Shape::line(hook, stroke));
            painter.circle_filled(pos2(ring_x, place.label_y), 7.0, *theme.steel);
        } else {
            painter.extend(Shape::dashed_line(&hook, stroke, 4.0, 3.0));
            painter.circle(
                pos2(ring_x, place.label_y),
                6.4,
                *theme.raised,
                Stroke::new(1.4, *theme.edge),
            );
        }
        let names = Names {
            title: &companion.title,
            line: &companion.line,
            chosen: false,
        };
        names.paint(painter, layout, place.label_y, theme);
    }
    for (nth, (branch, place)) in view.branches.iter().zip(&layout.branches).enumerate() {
        let holds_hand = view.hands.iter().any(|hand| hand.at == Spot::Branch(nth));
        let bar = Rect::from_center_size(pos2(rail - 32.0, place.y), vec2(34.0, 11.0));
        for end in [branch.from, branch.to] {
            if let Some(rung) = layout.rungs.get(end) {
                curve(painter, bar, pos2(rail - RAIL / 2.0, rung.y), holds_hand, theme);
            }
        }
        let fill: Color32 = if branch.passed {
            *theme.steel
        } else {
            *theme.raised
        };
        painter.rect(bar, 0.0, fill, Stroke::new(1.4, *theme.ink2), StrokeKind::Inside);
        if chosen == Some(Spot::Branch(nth)) {
            painter.rect_stroke(
                bar.expand(5.0),
                4.0,
                Stroke::new(2.5, *theme.ember),
                StrokeKind::Inside,
            );
        }
        if (place.y - place.label_y).abs() > 6.0 && layout.names().is_some() {
            let from = pos2(bar.left(), place.y);
            painter.line_segment(
                [from, pos2(ring_x - 10.0, place.label_y)],
                Stroke::new(1.0, *theme.edge),
            );
        }
        let names = Names {
            title: &branch.title,
            line: &branch.line,
            chosen: chosen == Some(Spot::Branch(nth)),
        };
        names.paint(painter, layout, place.label_y, theme);
    }
}

struct Names<'a> {
    title: &'a str,
    line: &'a str,
    chosen: bool,
}

impl Names<'_> {
    /// Name and line, each on one line or two of this width.
    fn set(&self, painter: &Painter, width: f32, theme: &Theme) -> [Arc<Galley>; 2] {
        let colour = if self.chosen { *theme.ember } else { *theme.ink };
        let title = Line::new(self.title, Ink::new(Face::LabelStrong, 15.0, colour));
        let line = Line::new(self.line, Ink::new(Face::Label, size::TABLE, *theme.ink2));
        [title, line].map(|line| line.fitted(painter, width, Align::RIGHT))
    }

    /// Paints them with `y` as their middle; not at all where there is no room to read them.
    fn paint(&self, painter: &Painter, layout: &Layout, y: f32, theme: &Theme) {
        let Some(room) = layout.names() else { return };
        let [title, line] = self.set(painter, room.end() - room.start(), theme);
        let top = y - (title.size().y + line.size().y) / 2.0 + CLOSER / 2.0;
        let below = top + title.size().y - CLOSER;
        painter.galley(pos2(*room.end(), top), title, *theme.ink);
        painter.galley(pos2(*room.end(), below), line, *theme.ink2);
    }
}

/// A name and its line stand so much closer than two lines of text.
const CLOSER: f32 = 4.0;

/// How high the labels of companions and of branches are, in this order, with the room that parts them.
pub(super) fn name_heights(painter: &Painter, view: &LadderView, layout: &Layout, theme: &Theme) -> Vec<f32> {
    let Some(room) = layout.names() else {
        return Vec::new();
    };
    let companions = view.companions.iter().map(|beside| (&beside.title, &beside.line));
    let branches = view.branches.iter().map(|branch| (&branch.title, &branch.line));
    let high = companions.chain(branches).map(|(title, line)| {
        let names = Names {
            title,
            line,
            chosen: false,
        };
        let [title, line] = names.set(painter, room.end() - room.start(), theme);
        title.size().y + line.size().y + CLOSER
    });
    high.collect()
}

/// From a branch's bar to a rung: dashed, solid where a hand is on it.
fn curve(painter: &Painter, bar: Rect, to: egui::Pos2, solid: bool, theme: &Theme) {
    let above = to.y < bar.center().y;
    let from = pos2(bar.right() - 4.0, if above { bar.top() } else { bar.bottom() });
    let lean = (to.y - from.y) * 0.6;
    let points = [from, from + vec2(0.0, lean), to - vec2(14.0, 0.0), to];
    let stroke = Stroke::new(1.3, *theme.ink3);
    let bezier = CubicBezierShape::from_points_stroke(points, false, Color32::TRANSPARENT, stroke);
    if solid {
        painter.add(bezier);
    } else {
        painter.extend(Shape::dashed_line(&bezier.flatten(Some(0.5)), stroke, 4.0, 3.0));
    }
}
