//! Plots over time: a frame with a few labels, what was logged hard-edged, what is believed as a soft band.

use chrono::NaiveDate;

use super::face::Face;
use super::page::{Area, Ink, Mark, Page};

/// What a plot shows, y in the reader's unit.
pub(super) struct Plot<'p> {
    /// First and last day.
    pub days: (NaiveDate, NaiveDate),
    /// Solid dots joined by no line: what was logged. True: drawn solid; false: an estimate, hollow.
    pub dots: &'p [(NaiveDate, f64, bool)],
    /// Low, middle, high by day.
    pub band: &'p [(NaiveDate, f64, f64, f64)],
    /// Joins the dots.
    pub joined: bool,
    /// The unit's sign.
    pub unit: &'p str,
}

/// Room for the labels at the left and below.
const LEFT: f32 = 34.0;
const BELOW: f32 = 14.0;

/// Draws `plot` into `area`.
pub(super) fn draw(page: &mut Page, area: Area, plot: &Plot<'_>) {
    let values = plot.dots.iter().map(|dot| dot.1);
    let banded = plot.band.iter().flat_map(|(_, low, _, high)| [*low, *high]);
    let all: Vec<f64> = values.chain(banded).filter(|value| value.is_finite()).collect();
    let (Some(lowest), Some(highest)) = (
        all.iter().copied().reduce(f64::min),
        all.iter().copied().reduce(f64::max),
    ) else {
        return;
    };
    let step = step(highest - lowest);
    let (bottom, top) = ((lowest / step).floor() * step, (highest / step).ceil() * step);
    let top = if top > bottom { top } else { bottom + step };
    let frame = Area::new(area.x + LEFT, area.y, area.w - LEFT, area.h - BELOW);
    let days = days(plot.days.0, plot.days.1).max(1.0);
    let x = |date: NaiveDate| frame.x + self::days(plot.days.0, date) / days * frame.w;
    let y = |value: f64| frame.bottom() - narrow((value - bottom) / (top - bottom)) * frame.h;

    if plot.band.len() > 1 {
        let upper = plot.band.iter().map(|(date, _, _, high)| (x(*date), y(*high)));
        let lower = plot
            .band
            .iter()
            .rev()
            .map(|(date, low, _, _)| (x(*date), y(*low)));
        page.marks.push(Mark::Shape {
            points: upper.chain(lower).collect(),
            ink: Ink(0xd6),
        });
        let middle = plot
            .band
            .iter()
            .map(|(date, _, middle, _)| (x(*date), y(*middle)));
        page.line(middle.collect(), 1.2, Ink::QUIET, true);
    }
    let label = (Face::Label, 8.0, Ink::QUIET);
    let mut value = bottom;
    while value <= top + step / 2.0 {
        page.rule((frame.x, frame.right()), y(value), 0.4, Ink(0xc4));
        let words = crate::report::numbers::number(value, 1);
        let words = if value + step > top + step / 2.0 {
            format!("{words} {}", plot.unit)
        } else {
            words
        };
        page.words_to(frame.x - 4.0, y(value) + 2.8, label, &words);
        value += step;
    }
    for (nth, date) in [plot.days.0, middle(plot.days.0, plot.days.1), plot.days.1]
        .into_iter()
        .enumerate()
    {
        let words = date.format("%-d %b %Y").to_string();
        let at = frame.bottom() + 11.0;
        match nth {
            0 => {
                page.words(x(date), at, label, &words);
            }
            1 => page.words_around(x(date), at, label, &words),
            _ => {
                page.words_to(x(date), at, label, &words);
            }
        }
    }
    if plot.joined {
        let points: Vec<(f32, f32)> = plot.dots.iter().map(|dot| (x(dot.0), y(dot.1))).collect();
        if points.len() > 1 {
            page.line(points, 1.0, Ink::QUIET, false);
        }
    }
    for (date, value, solid) in plot.dots {
        let (x, y) = (x(*date), y(*value));
        let r = 2.4;
        page.marks.push(Mark::Disc {
            x,
            y,
            r,
            fill: Some(Ink::BLACK),
        });
        if !solid {
            page.marks.push(Mark::Disc {
                x,
                y,
                r: r - 0.9,
                fill: Some(Ink::WHITE),
            });
        }
    }
}

/// A round step that makes two to five lines.
fn step(span: f64) -> f64 {
    [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0]
        .into_iter()
        .find(|step| span / step <= 4.0)
        .unwrap_or(500.0)
}

fn middle(from: NaiveDate, to: NaiveDate) -> NaiveDate {
    from + chrono::TimeDelta::days((to - from).num_days() / 2)
}

fn days(from: NaiveDate, to: NaiveDate) -> f32 {
    i32::try_from((to - from).num_days()).map_or(0.0, |days| narrow(f64::from(days)))
}

#[allow(clippy::cast_possible_truncation, reason = "points on a page")]
fn narrow(value: f64) -> f32 {
    value as f32
}
