//! Joints day by day: a bead is a day's hard sets with their number, a plum link joins days that are too near each other. Below,
//! what to do about it, and until when joints rest.

use egui::{Align2, Rect, Stroke, StrokeKind, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line, Pen, letters};
use crate::ui::theme::{Face, RADIUS_CHIP, STROKE_LINE, Theme, size, translucent};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{DayIs, JointView, WeekView};
use crate::ui::widgets::{self, caution_box, explained, hand_disc};
use crate::units::Rail;

/// Distance of the card's edge to what stands in it.
const PAD: f32 = 18.0;
/// Room over the first row.
const HEAD: f32 = 86.0;
/// Rows are so high, at least and at most.
const ROW: (f32, f32) = (28.0, 40.0);
/// How far a link from a day before Monday reaches out.
const REACH: f32 = 19.0;
/// Height of a chip that says when a joint is rested.
const CHIP: f32 = 28.0;

/// Where the days' columns stand.
struct Columns {
    disc: f32,
    first: f32,
    apart: f32,
    note: Option<f32>,
}

impl Columns {
    fn of(inner: Rect) -> Self {
        let note = (inner.width() > 430.0).then_some(inner.right());
        let right = inner.right() - if note.is_some() { 66.0 } else { 6.0 };
        let left = inner.left() + 124.0;
        Self {
            disc: inner.left() + 82.0,
            first: left,
            apart: (right - left) / 6.4,
            note,
        }
    }

    fn x(&self, day: usize) -> f32 {
        self.first + self.apart * many(day)
    }
}

/// Everything under the beads.
fn foot(pen: &mut Pen<'_>, view: &WeekView) {
    let theme = Theme::of(pen.ui);
    for words in &view.close {
        let (height, paint) = caution_box(pen.ui, words, pen.width());
        if let Some(rect) = pen.room(height) {
            paint(pen.ui, rect);
        }
        pen.gap(8.0);
    }
    if !view.resting.is_empty() {
        pen.write(Line::new(
            "Rested again on",
            Ink::new(Face::LabelStrong, size::TABLE, *theme.ink2),
        ));
        pen.gap(5.0);
        chips(pen, view);
        pen.gap(8.0);
    }
    pen.write(Line::new(
        view.care,
        Ink::new(Face::Label, size::TABLE, *theme.ink2),
    ));
}

/// Chips in as many lines as they need.
fn chips(pen: &mut Pen<'_>, view: &WeekView) {
    let theme = Theme::of(pen.ui);
    let mut x = pen.left;
    for (joint, from, how) in &view.resting {
        let line = Line::new(joint, Ink::new(Face::Label, size::TABLE, *theme.ink)).gap(
            6.0,
            from,
            Ink::new(Face::LabelStrong, size::TABLE, *theme.ink),
        );
        let galley = line.on_one_line(pen.ui.painter(), pen.width() - 20.0);
        let width = galley.size().x + 20.0;
        if x > pen.left && x + width > pen.right {
            x = pen.left;
            pen.y += CHIP + 6.0;
        }
        let chip = Rect::from_min_size(pos2(x, pen.y), vec2(width, CHIP));
        if !pen.measuring {
            let edge = Stroke::new(STROKE_LINE, *theme.edge);
            pen.ui
                .painter()
                .rect(chip, RADIUS_CHIP, *theme.raised, edge, StrokeKind::Inside);
            let at = chip.center() - galley.size() / 2.0;
            pen.ui.painter().galley(at, galley, *theme.ink);
            let id = pen.ui.scope_id().with(("rested", joint, from));
            explained(pen.ui, chip, id, how.clone());
        }
        x += width + 6.0;
    }
    pen.y += CHIP;
}

fn foot_height(ui: &mut Ui, width: f32, view: &WeekView) -> f32 {
    Pen::measure(ui, width - 2.0 * PAD, |pen| foot(pen, view)) + 14.0
}

/// How high the card must be.
pub(super) fn needed(ui: &mut Ui, width: f32, view: &WeekView) -> f32 {
    HEAD + ROW.0 * many(view.joints.len()).max(1.0) + 26.0 + foot_height(ui, width, view)
}

/// Draws the card as high as `place`, or as high as it must be. Returns where it ends.
pub(super) fn joints_ui(ui: &mut Ui, place: Rect, view: &WeekView) -> f32 {
    let theme = Theme::of(ui);
    let height = place.height().max(needed(ui, place.width(), view));
    let card = Rect::from_min_size(place.min, vec2(place.width(), height));
    widgets::card(ui.painter(), card, None, &theme);
    let inner = card.shrink2(vec2(PAD, 0.0));
    let title = Ink::new(Face::LabelStrong, 17.0, *theme.ink);
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let mut pen = Pen::new(ui, inner.with_min_y(card.top() + 12.0));
    pen.write_apart(
        Line::new("Joints, day by day", title),
        Line::new("number = hard sets that load it", quiet),
    );
    let columns = Columns::of(inner);
    let free = height - HEAD - 26.0 - foot_height(ui, card.width(), view);
    let row = (free / many(view.joints.len()).max(1.0)).clamp(ROW.0, ROW.1);
    let top = card.top() + HEAD;
    let end = top + row * many(view.joints.len()).max(1.0);
    head_ui(ui, inner, &columns, view, top..=end);
    if view.joints.is_empty() {
        let none = Line::new("No joint was loaded in this week.", quiet).wrapped(ui.painter(), inner.width());
        crate::ui::pen::named_galley(ui, pos2(inner.left(), top + 6.0), none);
    }
    for (nth, joint) in view.joints.iter().enumerate() {
        let strip = Rect::from_min_size(
            pos2(inner.left(), top + row * many(nth)),
            vec2(inner.width(), row),
        );
        row_ui(ui, strip, joint, &columns);
    }
    let foot_at = Rect::from_min_max(pos2(inner.left(), end + 26.0), pos2(inner.right(), card.bottom()));
    foot(&mut Pen::new(ui, foot_at), view);
    card.bottom()
}

/// Days over the columns, and today's column.
fn head_ui(ui: &Ui, inner: Rect, columns: &Columns, view: &WeekView, rows: std::ops::RangeInclusive<f32>) {
    let theme = Theme::of(ui);
    let painter = ui.painter();
    let top = *rows.start();
    for (nth, day) in view.days.iter().enumerate() {
        let x = columns.x(nth);
        let colour = match day.is {
            DayIs::Today => *theme.ember,
            DayIs::Past | DayIs::Ahead => *theme.ink2,
        };
        if day.is == DayIs::Today {
            let half = (columns.apart * 0.44).min(18.0);
            let column = Rect::from_x_y_ranges(x - half..=x + half, rows.clone());
            painter.rect_filled(column, 0.0, *theme.ember_wash);
            let at = pos2(x, rows.end() + 3.0);
            let word = Ink::new(Face::LabelStrong, size::SMALL, *theme.ember);
            letters(painter, at, Align2::CENTER_TOP, "today", word);
        }
        let weekday = Ink::new(Face::Label, size::SMALL, colour);
        letters(
            painter,
            pos2(x, top - 22.0),
            Align2::CENTER_BOTTOM,
            &day.weekday,
            weekday,
        );
        let number = Ink::new(Face::LabelStrong, size::SMALL, colour);
        letters(
            painter,
            pos2(x, top - 6.0),
            Align2::CENTER_BOTTOM,
            &day.number,
            number,
        );
    }
    painter.hline(inner.x_range(), top + 0.5, Stroke::new(STROKE_LINE, *theme.line));
}

fn row_ui(ui: &mut Ui, strip: Rect, joint: &JointView, columns: &Columns) {
    let theme = Theme::of(ui);
    let painter = ui.painter().clone();
    let y = strip.center().y;
    if !joint.title.is_empty() {
        painter.hline(
            strip.x_range(),
            strip.top() + 0.5,
            Stroke::new(STROKE_LINE, *theme.line),
        );
        let name = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
        letters(
            &painter,
            pos2(strip.left(), y),
            Align2::LEFT_CENTER,
            &joint.title,
            name,
        );
    }
    match joint.rail {
        Rail::Both => {
            hand_disc(&painter, pos2(columns.disc - 9.0, y), 8.5, Rail::Left, &theme);
            hand_disc(&painter, pos2(columns.disc + 9.0, y), 8.5, Rail::Right, &theme);
        }
        side => hand_disc(&painter, pos2(columns.disc, y), 8.5, side, &theme),
    }
    let days = joint.beads.len();
    let line = Stroke::new(STROKE_LINE, translucent(*theme.edge, 0.6));
    painter.hline(
        columns.x(0) - 8.0..=columns.x(days.saturating_sub(1)) + 8.0,
        y,
        line,
    );
    let day_x = |day: i8| usize::try_from(day).map_or(columns.x(0) - REACH, |day| columns.x(day));
    let mut linked = vec![false; days];
    for (from, to) in &joint.links {
        let rail = Rect::from_x_y_ranges(day_x(*from)..=day_x(*to), y - 3.0..=y + 3.0);
        painter.rect_filled(rail, 0.0, *theme.plum);
        for day in [from, to] {
            if let Some(linked) = usize::try_from(*day).ok().and_then(|day| linked.get_mut(day)) {
                *linked = true;
            }
        }
    }
    for (day, (sets, linked)) in joint.beads.iter().zip(&linked).enumerate() {
        let at = pos2(columns.x(day), y);
        if *sets == 0 {
            painter.circle_filled(at, 2.6, *theme.edge);
            continue;
        }
        let (fill, ink) = if *linked {
            (*theme.plum, *theme.raised)
        } else {
            (*theme.steel, *theme.on_steel)
        };
        let radius = radius(*sets)
            .min(strip.height() / 2.0 - 1.5)
            .min(columns.apart / 2.0 - 1.0);
        painter.circle_filled(at, radius, fill);
        let number = Ink::new(Face::Number, if radius > 9.0 { 13.0 } else { 12.0 }, ink);
        letters(&painter, at, Align2::CENTER_CENTER, &sets.to_string(), number);
    }
    if let (Some(x), Some(words)) = (columns.note, &joint.running) {
        let ink = Ink::new(Face::LabelStrong, size::SMALL, *theme.plum);
        let galley = Line::new(words, ink).fitted(&painter, 60.0, egui::Align::RIGHT);
        painter.galley(pos2(x, y - galley.size().y / 2.0), galley, *theme.plum);
    }
    let id = ui.scope_id().with(("joint", &joint.how));
    explained(
        ui,
        strip.expand2(vec2(6.0, 0.0)).shrink2(vec2(0.0, 1.0)),
        id,
        joint.how.clone(),
    );
}

/// More sets, a larger bead: its area grows with them.
fn radius(sets: u32) -> f32 {
    let sets = f32::from(u16::try_from(sets).unwrap_or(u16::MAX));
    (7.0 + 2.1 * sets.sqrt()).min(14.0)
}
