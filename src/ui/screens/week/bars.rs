//! Bars of hard sets: direct solid, indirect hatched, the range a box with end lines, what is missing dotted.

use egui::{Align2, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line, Pen, letters, width_of};
use crate::ui::theme::{Face, STROKE_LINE, STROKE_OUTLINE, Theme, size, translucent};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{GroupView, Standing, WeekView};
use crate::ui::widgets::{self, explained};

/// Distance of the card's edge to what stands in it.
const PAD: f32 = 18.0;
/// Height of a bar.
const BAR: f32 = 13.0;
/// Rows are so high, at least and at most (a target of 24 points).
const ROW: (f32, f32) = (24.0, 42.0);
/// The axis reaches so far at least, sets: the highest range ends there. It steps by this.
const AXIS: (f64, f64) = (20.0, 4.0);

/// Sizes that follow from the card's width.
struct Sizes {
    head: f32,
    label: f32,
    number: f32,
    status: f32,
}

impl Sizes {
    fn of(width: f32) -> Self {
        let roomy = width > 560.0;
        Self {
            head: if roomy { 66.0 } else { 84.0 },
            label: if roomy { 132.0 } else { 108.0 },
            number: 42.0,
            status: if roomy { 82.0 } else { 66.0 },
        }
    }
}

fn note(pen: &mut Pen<'_>, view: &WeekView) {
    let theme = Theme::of(pen.ui);
    let plain = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let strong = Ink::new(Face::LabelStrong, size::TABLE, *theme.ink);
    pen.rule(*theme.line);
    pen.gap(7.0);
    pen.write(Line::phrase(&view.note, plain, strong));
}

fn note_height(ui: &mut Ui, width: f32, view: &WeekView) -> f32 {
    Pen::measure(ui, width - 2.0 * PAD, |pen| note(pen, view)) + 14.0
}

/// How high the card must be.
pub(super) fn needed(ui: &mut Ui, width: f32, view: &WeekView) -> f32 {
    Sizes::of(width).head + ROW.0 * many(view.groups.len()) + 8.0 + note_height(ui, width, view)
}

/// Draws the card as high as `place`, or as high as it must be. Returns where it ends.
pub(super) fn bars_ui(ui: &mut Ui, place: Rect, view: &WeekView) -> f32 {
    let theme = Theme::of(ui);
    let sizes = Sizes::of(place.width());
    let height = place.height().max(needed(ui, place.width(), view));
    let card = Rect::from_min_size(place.min, vec2(place.width(), height));
    widgets::card(ui.painter(), card, None, &theme);
    let inner = card.shrink2(vec2(PAD, 0.0));
    let foot = note_height(ui, card.width(), view);
    head_ui(ui, inner, card.width() > 560.0);
    let rows = many(view.groups.len()).max(1.0);
    let row = ((height - sizes.head - foot - 8.0) / rows).clamp(ROW.0, ROW.1);
    let top = card.top() + sizes.head;
    let plot = Rect::from_min_max(
        pos2(inner.left() + sizes.label, top),
        pos2(
            inner.right() - sizes.number - sizes.status - 6.0,
            top + row * rows,
        ),
    );
    let most = view
        .groups
        .iter()
        .map(|group| group.direct + group.indirect)
        .fold(AXIS.0, f64::max);
    let step = if most > 40.0 { 10.0 } else { AXIS.1 };
    let end = (most / step).ceil() * step;
    let scale = Scale { plot, end };
    axis_ui(ui.painter(), &scale, step, &theme);
    for (nth, group) in view.groups.iter().enumerate() {
        let strip = Rect::from_min_size(
            pos2(inner.left(), top + row * many(nth)),
            vec2(inner.width(), row),
        );
        row_ui(ui, strip, group, &scale, &sizes);
    }
    let foot = Rect::from_min_max(pos2(inner.left(), card.bottom() - foot), card.max);
    note(&mut Pen::new(ui, foot.with_max_x(inner.right())), view);
    card.bottom()
}

/// Sets to points.
struct Scale {
    plot: Rect,
    end: f64,
}

impl Scale {
    fn x(&self, sets: f64) -> f32 {
        #[allow(clippy::cast_possible_truncation, reason = "a share of the plot, 0 to 1")]
        let share = (sets / self.end.max(1.0)).clamp(0.0, 1.0) as f32;
        self.plot.left() + self.plot.width() * share
    }
}

fn head_ui(ui: &mut Ui, inner: Rect, roomy: bool) {
    let theme = Theme::of(ui);
    let title = Ink::new(Face::LabelStrong, 17.0, *theme.ink);
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let galley =
        Line::new("Hard sets by muscle, against the range", title).squeezed(ui.painter(), inner.width());
    crate::ui::pen::named_galley(ui, inner.min + vec2(0.0, 12.0), galley);
    // Direct labels, each beside its pattern.
    let painter = ui.painter();
    let y = inner.top() + if roomy { 24.0 } else { 48.0 };
    let words = ["direct", "indirect, counts half", "range"];
    let widths: Vec<f32> = words.iter().map(|word| width_of(painter, word, quiet)).collect();
    let all: f32 = widths.iter().sum::<f32>() + 3.0 * 24.0 + 2.0 * 14.0;
    let mut x = if roomy { inner.right() - all } else { inner.left() };
    for (nth, (word, width)) in words.iter().zip(&widths).enumerate() {
        let mark = Rect::from_center_size(pos2(x + 8.0, y), vec2(16.0, 11.0));
        match nth {
            0 => {
                painter.rect_filled(mark, 0.0, *theme.steel);
            }
            1 => hatched(painter, mark, &theme),
            _ => range_box(painter, mark, &theme),
        }
        letters(painter, pos2(x + 22.0, y), Align2::LEFT_CENTER, word, quiet);
        x += 24.0 + width + 14.0;
    }
}

fn axis_ui(painter: &Painter, scale: &Scale, step: f64, theme: &Theme) {
    let quiet = Ink::new(Face::Label, size::SMALL, *theme.ink2);
    let mut at = 0.0;
    while at <= scale.end {
        let x = scale.x(at).round() + 0.5;
        painter.vline(x, scale.plot.y_range(), Stroke::new(STROKE_LINE, *theme.line));
        let number = format!("{at:.0}");
        letters(
            painter,
            pos2(x, scale.plot.top() - 3.0),
            Align2::CENTER_BOTTOM,
            &number,
            quiet,
        );
        at += step;
    }
}

fn row_ui(ui: &mut Ui, strip: Rect, group: &GroupView, scale: &Scale, sizes: &Sizes) {
    let theme = Theme::of(ui);
    let painter = ui.painter().clone();
    let y = strip.center().y;
    let quiet = group.standing == Standing::Unsaid;
    let ink = if quiet { *theme.ink2 } else { *theme.ink };
    let name = Ink::new(Face::LabelStrong, 15.0, ink);
    let title = Line::new(group.title, name).squeezed(&painter, sizes.label - 6.0);
    painter.galley(pos2(strip.left(), y - title.size().y / 2.0), title, ink);
    let range = Rect::from_x_y_ranges(
        scale.x(group.range.0)..=scale.x(group.range.1),
        y - (strip.height() - 7.0).min(26.0) / 2.0..=y + (strip.height() - 7.0).min(26.0) / 2.0,
    );
    range_box(&painter, range, &theme);
    let bar = |from: f64, to: f64| {
        Rect::from_x_y_ranges(scale.x(from)..=scale.x(to), y - BAR / 2.0..=y + BAR / 2.0)
    };
    let sets = group.direct + group.indirect;
    if group.indirect > 0.0 {
        hatched(&painter, bar(group.direct, sets), &theme);
    }
    painter.rect_filled(bar(0.0, group.direct), 0.0, *theme.steel);
    let missing = match group.standing {
        Standing::Below => Some(*theme.ember),
        Standing::SoFar => Some(*theme.edge),
        Standing::Unsaid | Standing::Within | Standing::Above => None,
    };
    if let Some(colour) = missing {
        let from = pos2(scale.x(sets) + 4.0, y);
        let to = pos2(range.left() - 2.0, y);
        if to.x > from.x {
            painter.extend(Shape::dotted_line(&[from, to], colour, 4.5, 1.1));
        }
    }
    let face = if quiet { Face::Label } else { Face::Number };
    let number = Ink::new(face, size::BODY, ink);
    let x = scale.plot.right() + 10.0;
    letters(&painter, pos2(x, y), Align2::LEFT_CENTER, &group.sets, number);
    let (face, colour) = match group.standing {
        Standing::Below | Standing::Above => (Face::LabelStrong, *theme.ember),
        Standing::Within | Standing::SoFar | Standing::Unsaid => (Face::Label, *theme.ink2),
    };
    let status = Ink::new(face, size::TABLE, colour);
    letters(
        &painter,
        pos2(strip.right(), y),
        Align2::RIGHT_CENTER,
        &group.status,
        status,
    );
    let id = ui.scope_id().with(("group", group.title));
    let target = strip.expand2(vec2(6.0, 0.0)).shrink2(vec2(0.0, 1.0));
    explained(ui, target, id, group.how.clone());
}

/// A range: a quiet box with end lines.
fn range_box(painter: &Painter, rect: Rect, theme: &Theme) {
    painter.rect_filled(rect, 0.0, translucent(*theme.edge, 0.18));
    for x in [rect.left(), rect.right()] {
        painter.vline(x, rect.y_range(), Stroke::new(STROKE_OUTLINE, *theme.edge));
    }
}

/// An outline filled with slanted lines.
fn hatched(painter: &Painter, rect: Rect, theme: &Theme) {
    painter.rect(
        rect,
        0.0,
        *theme.raised,
        Stroke::new(STROKE_OUTLINE, *theme.steel),
        StrokeKind::Inside,
    );
    let within = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    let stroke = Stroke::new(STROKE_OUTLINE, *theme.steel);
    let mut x = rect.left() - rect.height();
    while x < rect.right() {
        let (a, b): (Pos2, Pos2) = (pos2(x, rect.bottom()), pos2(x + rect.height(), rect.top()));
        within.line_segment([a, b], stroke);
        x += 5.0;
    }
}
