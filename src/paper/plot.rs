//! Plots over time: a frame with a few labels, what was logged hard-edged, what is believed as a soft band.

use chrono::NaiveDate;

use crate::report::numbers::number;

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
/// How labels are written.
const LABEL: (Face, f32, Ink) = (Face::Label, 8.0, Ink::QUIET);

/// Where days and values lie on the page.
struct Scale {
    frame: Area,
    from: NaiveDate,
    days: f32,
    bottom: f64,
    top: f64,
    step: f64,
}

/// Draws `plot` into `area`.
pub(super) fn draw(page: &mut Page, area: Area, plot: &Plot<'_>) {
    let Some(scale) = Scale::of(plot, area) else {
        return;
    };
    scale.band(page, plot.band);
    scale.values(page, plot.unit);
    scale.dates(page, plot.days);
    scale.dots(page, plot);
}

impl Scale {
    fn of(plot: &Plot<'_>, area: Area) -> Option<Self> {
        let values = plot.dots.iter().map(|dot| dot.1);
        let banded = plot.band.iter().flat_map(|(_, low, _, high)| [*low, *high]);
        let all: Vec<f64> = values.chain(banded).filter(|value| value.is_finite()).collect();
        let lowest = all.iter().copied().reduce(f64::min)?;
        let highest = all.iter().copied().reduce(f64::max)?;
        let step = step(highest - lowest);
        let (bottom, top) = ((lowest / step).floor() * step, (highest / step).ceil() * step);
        Some(Self {
            frame: Area::new(area.x + LEFT, area.y, area.w - LEFT, area.h - BELOW),
            from: plot.days.0,
            days: days(plot.days.0, plot.days.1).max(1.0),
            bottom,
            top: if top > bottom { top } else { bottom + step },
            step,
        })
    }

    fn x(&self, date: NaiveDate) -> f32 {
        self.frame.x + days(self.from, date) / self.days * self.frame.w
    }

    fn y(&self, value: f64) -> f32 {
        self.frame.bottom() - narrow((value - self.bottom) / (self.top - self.bottom)) * self.frame.h
    }

    fn at(&self, date: NaiveDate, value: f64) -> (f32, f32) {
        (self.x(date), self.y(value))
    }

    fn band(&self, page: &mut Page, band: &[(NaiveDate, f64, f64, f64)]) {
        if band.len() < 2 {
            return;
        }
        let upper = band.iter().map(|(date, _, _, high)| self.at(*date, *high));
        let lower = band.iter().rev().map(|(date, low, _, _)| self.at(*date, *low));
        page.marks.push(Mark::Shape {
            points: upper.chain(lower).collect(),
            ink: Ink(0xd6),
        });
        let middle = band.iter().map(|(date, _, middle, _)| self.at(*date, *middle));
        page.line(middle.collect(), 1.2, Ink::QUIET, true);
    }

    /// A line a step, with its value; the highest says the unit.
    fn values(&self, page: &mut Page, unit: &str) {
        let (frame, end) = (self.frame, self.top + self.step / 2.0);
        let mut value = self.bottom;
        while value <= end {
            let next = value + self.step;
            let words = number(value, 1);
            let words = if next > end {
                format!("{words} {unit}")
            } else {
                words
            };
            page.rule((frame.x, frame.right()), self.y(value), 0.4, Ink(0xc4));
            page.words_to(frame.x - 4.0, self.y(value) + 2.8, LABEL, &words);
            value = next;
        }
    }

    /// The first day, the last and the one between.
    fn dates(&self, page: &mut Page, (first, last): (NaiveDate, NaiveDate)) {
        let at = self.frame.bottom() + 11.0;
        let between = first + chrono::TimeDelta::days((last - first).num_days() / 2);
        let words = |date: NaiveDate| date.format("%-d %b %Y").to_string();
        page.words(self.x(first), at, LABEL, &words(first));
        page.words_around(self.x(between), at, LABEL, &words(between));
        page.words_to(self.x(last), at, LABEL, &words(last));
    }

    fn dots(&self, page: &mut Page, plot: &Plot<'_>) {
        if plot.joined && plot.dots.len() > 1 {
            let points = plot.dots.iter().map(|dot| self.at(dot.0, dot.1));
            page.line(points.collect(), 1.0, Ink::QUIET, false);
        }
        for (date, value, solid) in plot.dots {
            let (x, y) = self.at(*date, *value);
            let mut disc = |r, ink| {
                page.marks.push(Mark::Disc {
                    x,
                    y,
                    r,
                    fill: Some(ink),
                });
            };
            disc(2.4, Ink::BLACK);
            if !solid {
                disc(2.4 - 0.9, Ink::WHITE);
            }
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

fn days(from: NaiveDate, to: NaiveDate) -> f32 {
    i32::try_from((to - from).num_days()).map_or(0.0, |days| narrow(f64::from(days)))
}

#[allow(clippy::cast_possible_truncation, reason = "points on a page")]
fn narrow(value: f64) -> f32 {
    value as f32
}
