//! The side's disc with its letter: position, letter and shape tell sides apart, colour only helps. Left is a square with soft
//! corners in glyphs, right is round.

use egui::{Align2, Color32, Painter, Pos2, Rect, Stroke, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, Theme};
use crate::units::Rail;

fn letter(rail: Rail) -> &'static str {
    match rail {
        Rail::Both => "B",
        Rail::Left => "L",
        Rail::Right => "R",
    }
}

/// The letter's colour on a rail's disc: the ground of the theme, light on dark or dark on light.
fn on_rail(rail: Rail, theme: &Theme) -> Color32 {
    match rail {
        Rail::Both => *theme.on_steel,
        Rail::Left | Rail::Right if theme.dark => *theme.bench,
        Rail::Left | Rail::Right => *theme.raised,
    }
}

/// Paints the disc of `rail` around `centre`.
pub fn hand_disc(painter: &Painter, centre: Pos2, radius: f32, rail: Rail, theme: &Theme) {
    painter.circle_filled(centre, radius, theme.rail(rail));
    let ink = Ink::new(
        Face::Number,
        (radius * 1.15).round().max(10.0),
        on_rail(rail, theme),
    );
    letters(painter, centre, Align2::CENTER_CENTER, letter(rail), ink);
}

/// Paints the disc as it sits on a rail: with a halo of the raised colour around it.
pub fn hand_mark(painter: &Painter, centre: Pos2, radius: f32, rail: Rail, theme: &Theme) {
    painter.circle(centre, radius, theme.rail(rail), Stroke::new(1.8, *theme.raised));
    let ink = Ink::new(Face::Number, (radius * 1.15).round(), on_rail(rail, theme));
    letters(painter, centre, Align2::CENTER_CENTER, letter(rail), ink);
}

/// The small mark of a side in a glyph: left square, right round, both a block.
pub(super) fn glyph_mark(painter: &Painter, centre: Pos2, rail: Rail, theme: &Theme) {
    match rail {
        Rail::Left => {
            painter.rect_filled(Rect::from_center_size(centre, vec2(7.0, 6.0)), 1.0, *theme.left);
        }
        Rail::Right => {
            painter.circle_filled(centre, 3.6, *theme.right);
        }
        Rail::Both => {
            painter.rect_filled(Rect::from_center_size(centre, vec2(5.0, 15.0)), 1.5, *theme.ink);
        }
    }
}
