//! Verdict badges, drawn on a grid of 20. Filled means go or go on, open means ease, the octagon means stop. A badge never
//! stands without its word.

use egui::epaint::PathShape;
use egui::{Color32, CornerRadius, Painter, Pos2, Rect, Shape, Stroke, pos2, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, Theme};
use crate::ui::views::Verdict;

/// The colour of a verdict.
pub fn badge_colour(verdict: Verdict, theme: &Theme) -> Color32 {
    match verdict {
        Verdict::Begin | Verdict::StepUp | Verdict::Test => *theme.ember,
        Verdict::Pause => *theme.plum,
        Verdict::WeighInFirst => *theme.ink,
        Verdict::Repeat | Verdict::AddReps | Verdict::AddLoad | Verdict::BackOff | Verdict::StepBack => {
            *theme.steel
        }
    }
}

/// A grid of 20 × 20 laid over a square.
struct Grid<'a> {
    painter: &'a Painter,
    origin: Pos2,
    unit: f32,
    colour: Color32,
    ground: Color32,
}

impl Grid<'_> {
    fn at(&self, x: f32, y: f32) -> Pos2 {
        self.origin + vec2(x, y) * self.unit
    }

    fn bar(&self, x: f32, y: f32, w: f32, h: f32, round: f32, colour: Color32) {
        let rect = Rect::from_min_max(self.at(x, y), self.at(x + w, y + h));
        self.painter
            .rect_filled(rect, CornerRadius::from(round * self.unit), colour);
    }

    fn line(&self, from: (f32, f32), to: (f32, f32), width: f32) {
        let points = [self.at(from.0, from.1), self.at(to.0, to.1)];
        self.painter
            .line_segment(points, Stroke::new(width * self.unit, self.colour));
    }

    fn points(&self, points: &[(f32, f32)]) -> Vec<Pos2> {
        points.iter().map(|(x, y)| self.at(*x, *y)).collect()
    }

    fn fill(&self, points: &[(f32, f32)], colour: Color32) {
        self.painter
            .add(Shape::convex_polygon(self.points(points), colour, Stroke::NONE));
    }

    fn outline(&self, points: &[(f32, f32)], width: f32) {
        let stroke = Stroke::new(width * self.unit, self.colour);
        self.painter
            .add(PathShape::closed_line(self.points(points), stroke));
    }

    fn disc(&self, x: f32, y: f32, r: f32, colour: Color32) {
        self.painter.circle_filled(self.at(x, y), r * self.unit, colour);
    }

    fn ring(&self, x: f32, y: f32, r: f32, width: f32) {
        self.painter.circle_stroke(
            self.at(x, y),
            r * self.unit,
            Stroke::new(width * self.unit, self.colour),
        );
    }
}

/// Paints the badge of `verdict` into `square`; `ground` is the colour it lies on, for its cut-outs.
pub fn badge(painter: &Painter, square: Rect, verdict: Verdict, colour: Color32, ground: Color32) {
    let grid = Grid {
        painter,
        origin: square.min,
        unit: square.width() / 20.0,
        colour,
        ground,
    };
    match verdict {
        Verdict::Begin => {
            grid.disc(10.0, 8.0, 5.6, colour);
            grid.bar(1.5, 16.0, 17.0, 2.6, 0.4, colour);
        }
        Verdict::StepUp => step_up(&grid),
        Verdict::Test => {
            grid.fill(&[(10.0, 0.8), (19.2, 10.0), (10.0, 19.2), (0.8, 10.0)], colour);
            grid.disc(10.0, 10.0, 3.1, ground);
        }
        Verdict::Repeat => {
            grid.bar(1.5, 1.5, 17.0, 17.0, 2.0, colour);
            grid.bar(5.0, 6.0, 10.0, 2.6, 0.3, ground);
            grid.bar(5.0, 11.4, 10.0, 2.6, 0.3, ground);
        }
        Verdict::AddReps => {
            for x in [3.5, 7.5, 11.5, 15.5] {
                grid.bar(x - 1.1, 2.5, 2.2, 15.0, 0.4, colour);
            }
            grid.line((0.8, 15.5), (19.2, 5.0), 2.4);
        }
        Verdict::AddLoad => {
            grid.disc(10.0, 10.0, 8.8, colour);
            grid.bar(5.2, 8.7, 9.6, 2.6, 0.3, ground);
            grid.bar(8.7, 5.2, 2.6, 9.6, 0.3, ground);
        }
        Verdict::BackOff => {
            grid.ring(10.0, 10.0, 7.8, 2.0);
            grid.bar(5.6, 8.9, 8.8, 2.2, 0.3, colour);
        }
        Verdict::StepBack => {
            grid.outline(
                &[(2.2, 2.2), (17.8, 2.2), (17.8, 11.0), (10.0, 18.4), (2.2, 11.0)],
                2.0,
            );
            grid.bar(5.4, 5.6, 9.2, 1.8, 0.2, colour);
            grid.bar(5.4, 9.4, 9.2, 1.8, 0.2, colour);
        }
        Verdict::Pause => {
            let (near, far) = (6.3, 13.7);
            let (lo, hi) = (1.0, 19.0);
            let corners = [
                (near, lo),
                (far, lo),
                (hi, near),
                (hi, far),
                (far, hi),
                (near, hi),
                (lo, far),
                (lo, near),
            ];
            grid.fill(&corners, colour);
            grid.bar(6.4, 5.8, 2.6, 8.4, 0.3, ground);
            grid.bar(11.0, 5.8, 2.6, 8.4, 0.3, ground);
        }
        Verdict::WeighInFirst => dial(&grid),
    }
}

/// A hand over a rung: four fingers above, the rung, the thumb below.
fn step_up(grid: &Grid<'_>) {
    const FINGERS: [(f32, f32); 4] = [(2.4, 4.0), (6.4, 1.8), (10.4, 2.6), (14.4, 5.0)];
    grid.bar(0.0, 10.4, 20.0, 3.4, 0.3, grid.colour);
    for (x, top) in FINGERS {
        grid.bar(x - 0.9, top - 0.8, 5.0, 16.6 - top, 2.4, grid.ground);
    }
    for (x, top) in FINGERS {
        grid.bar(x, top, 3.1, 15.2 - top, 1.5, grid.colour);
    }
    grid.bar(5.0, 16.4, 10.4, 2.8, 1.4, grid.colour);
}

/// A scale's dial with its needle.
fn dial(grid: &Grid<'_>) {
    let mut rim: Vec<(f32, f32)> = (0..=16u8)
        .map(|step| {
            let angle = std::f32::consts::PI * (1.0 + f32::from(step) / 16.0);
            (10.0 + 8.2 * angle.cos(), 10.4 + 8.2 * angle.sin())
        })
        .collect();
    rim.extend([(18.2, 17.2), (1.8, 17.2)]);
    grid.outline(&rim, 2.2);
    grid.line((9.4, 13.0), (13.6, 6.6), 2.2);
    grid.disc(9.6, 12.8, 1.7, grid.colour);
}

/// The badge of `verdict` and its word, from `left_centre` on; returns the box of both.
pub fn badge_with_word(
    painter: &Painter,
    left_centre: Pos2,
    verdict: Verdict,
    side: f32,
    size: f32,
    ground: Color32,
    theme: &Theme,
) -> Rect {
    let colour = badge_colour(verdict, theme);
    let square = Rect::from_min_size(left_centre - vec2(0.0, side / 2.0), vec2(side, side));
    badge(painter, square, verdict, colour, ground);
    let at = pos2(square.right() + side * 0.38, left_centre.y);
    let word = letters(
        painter,
        at,
        egui::Align2::LEFT_CENTER,
        verdict.id(),
        Ink::new(Face::LabelStrong, size, colour),
    );
    square.union(word)
}
