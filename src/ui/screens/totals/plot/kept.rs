//! What is painted of the points, kept from frame to frame until something moves it: thousands of sets cost no frame twice.

use egui::{Pos2, Shape};

use crate::ui::screens::totals::axes::Axes;
use crate::ui::theme::Theme;
use crate::ui::views::LiftView;

use super::marks::{dots, fit_band};

/// Heights of one lift's points for so many repetitions, and what was painted of them last.
#[derive(Debug)]
pub struct Kept {
    reps: u16,
    heights: Vec<Option<f64>>,
    /// Least and greatest bodyweight and height of all points, kg.
    corners: Option<[(f64, f64); 2]>,
    drawn: Option<Drawn>,
}

#[derive(Debug)]
struct Drawn {
    axes: Axes,
    dark: bool,
    places: Vec<Option<Pos2>>,
    marks: Vec<Shape>,
}

impl Kept {
    /// `before` where it still holds for these repetitions, else made anew. The caller drops it when another lift is shown.
    pub fn still(before: Option<Kept>, lift: &LiftView, reps: u16) -> Self {
        match before {
            Some(kept) if kept.reps == reps && kept.heights.len() == lift.points.len() => kept,
            _ => Self::of(lift, reps),
        }
    }

    fn of(lift: &LiftView, reps: u16) -> Self {
        let heights: Vec<Option<f64>> = lift.points.iter().map(|point| lift.height(point, reps)).collect();
        let seen = lift.points.iter().zip(&heights);
        let seen = seen.filter_map(|(point, height)| Some((point.bodyweight_kg, (*height)?)));
        let corners = seen.fold(None, |corners: Option<[(f64, f64); 2]>, at| {
            let [low, high] = corners.unwrap_or([at, at]);
            Some([
                (low.0.min(at.0), low.1.min(at.1)),
                (high.0.max(at.0), high.1.max(at.1)),
            ])
        });
        Self {
            reps,
            heights,
            corners,
            drawn: None,
        }
    }

    /// Two corners that hold all points: bodyweight and height, kg.
    pub fn corners(&self) -> impl Iterator<Item = (f64, f64)> {
        self.corners.into_iter().flatten()
    }

    /// Where each point lies (none where it has no height), and the marks of all with the line under them.
    pub fn drawn(
        &mut self,
        axes: &Axes,
        lift: &LiftView,
        reps: u16,
        theme: &Theme,
    ) -> (&[Option<Pos2>], &[Shape]) {
        let fits = |drawn: &Drawn| drawn.axes == *axes && drawn.dark == theme.dark;
        let drawn = match self.drawn.take().filter(fits) {
            Some(drawn) => drawn,
            None => {
                let points = lift.points.iter().zip(&self.heights);
                let place = points.map(|(point, height)| Some(axes.at(point.bodyweight_kg, (*height)?)));
                let places: Vec<Option<Pos2>> = place.collect();
                let mut marks = Vec::new();
                if let Some(fit) = &lift.fit {
                    marks.extend(fit_band(axes, fit, lift, reps, theme));
                }
                marks.extend(dots(lift, reps, &places, theme));
                Drawn {
                    axes: *axes,
                    dark: theme.dark,
                    places,
                    marks,
                }
            }
        };
        let drawn = self.drawn.insert(drawn);
        (&drawn.places, &drawn.marks)
    }
}
