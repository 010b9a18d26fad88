//! The belt with the plates that really hang from it, seen edge-on: tallest nearest the chain's left end, the number always on
//! the plate. Disc colours are those of the International Weightlifting Federation's technical rules (2.5 kg red, 5 white,
//! 10 green, 15 yellow, 20 blue, 25 red); a plate without a standard colour is drawn in iron.

use egui::epaint::PathShape;
use egui::{Align2, Color32, Painter, Pos2, Rect, Stroke, StrokeKind, pos2, vec2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, Theme, fade, translucent};
use crate::ui::views::{BeltView, PlateView};

/// Fill of a plate and colour of its number.
fn disc_colours(plate: &PlateView, theme: &Theme) -> (Color32, Color32) {
    let standard = |kg: f64| plate.is_kg && (plate.kg - kg).abs() < 0.001;
    let table = [
        (25.0, *theme.disc_red),
        (20.0, *theme.disc_blue),
        (15.0, *theme.disc_yellow),
        (10.0, *theme.disc_green),
        (5.0, *theme.disc_white),
        (2.5, *theme.disc_red),
        (2.0, *theme.disc_blue),
        (1.5, *theme.disc_yellow),
        (1.0, *theme.disc_green),
        (0.5, *theme.disc_white),
    ];
    let fill = table
        .iter()
        .find(|(kg, _)| standard(*kg))
        .map_or(*theme.disc_iron, |(_, fill)| *fill);
    let pale = fill == *theme.disc_yellow || fill == *theme.disc_white;
    (fill, if pale { *theme.on_pale_disc } else { *theme.on_disc })
}

/// Width and height of a plate edge-on at 100 %: heavier is taller and thicker.
pub fn disc_rect(plate: &PlateView) -> egui::Vec2 {
    #[allow(clippy::cast_possible_truncation, reason = "a plate's size in points")]
    let kg = plate.kg as f32;
    let height = (36.0 + 18.0 * kg.max(0.1).sqrt()).clamp(30.0, 112.0);
    let digits = plate.number.chars().count();
    vec2(if digits > 3 { 36.0 } else { 29.0 }, height)
}

/// Paints one plate into `rect`.
pub fn plate(painter: &Painter, rect: Rect, view: &PlateView, theme: &Theme) {
    let (fill, number) = disc_colours(view, theme);
    let outline = fade(
        fill,
        if theme.dark {
            *theme.disc_white
        } else {
            *theme.on_pale_disc
        },
        0.55,
    );
    painter.rect(rect, 4.0, fill, Stroke::new(1.5, outline), StrokeKind::Inside);
    let shine = Rect::from_min_size(rect.min + vec2(3.5, 5.0), vec2(2.0, rect.height() - 10.0));
    painter.rect_filled(shine, 1.0, translucent(*theme.disc_white, 0.35));
    let count = super::super::two_rail::heights::many(view.number.chars().count());
    let size = ((rect.width() - 3.0) / (count * 0.56)).clamp(10.0, 16.0);
    letters(
        painter,
        rect.center(),
        Align2::CENTER_CENTER,
        &view.number,
        Ink::new(Face::Number, size, number),
    );
}

/// Paints the belt, its chain and its plates into `rect` (about 190 × 165 points); the words stand beneath and are set by the card.
pub fn belt(painter: &Painter, rect: Rect, view: &BeltView, theme: &Theme) {
    let centre = rect.center_top();
    let half = (rect.width() / 2.0 - 2.0).min(94.0);
    let sag = 16.0;
    let strap = |share: f32| -> Pos2 {
        pos2(
            centre.x + half * share,
            rect.top() + 10.0 + sag * (1.0 - share * share),
        )
    };
    let points: Vec<Pos2> = (0..=24u8)
        .map(|step| strap(f32::from(step) / 12.0 - 1.0))
        .collect();
    painter.add(PathShape::line(
        points.clone(),
        Stroke::new(14.0, if theme.dark { *theme.steel_high } else { *theme.ink }),
    ));
    painter.extend(egui::Shape::dashed_line(
        &points,
        Stroke::new(1.0, *theme.edge),
        4.0,
        4.0,
    ));
    let bar_y = rect.top() + 106.0;
    let gap = 3.0;
    let widths: f32 = view.plates.iter().map(|plate| disc_rect(plate).x + gap).sum();
    let scale = ((rect.width() - 40.0) / widths.max(1.0)).min(1.0);
    let span = (widths * scale).max(40.0);
    let (left, right) = (centre.x - span / 2.0 - 14.0, centre.x + span / 2.0 + 14.0);
    for (top, foot) in [(strap(-0.74), left), (strap(0.74), right)] {
        chain(painter, top + vec2(0.0, 6.0), pos2(foot, bar_y), theme);
    }
    painter.hline(left..=right, bar_y, Stroke::new(3.0, *theme.steel));
    let mut x = centre.x - widths * scale / 2.0;
    for view in &view.plates {
        let size = disc_rect(view);
        let rect = Rect::from_center_size(
            pos2(x + size.x * scale / 2.0, bar_y),
            vec2(size.x * scale, size.y),
        );
        plate(painter, rect, view, theme);
        x += (size.x + gap) * scale;
    }
}

/// Links from `top` to `foot`.
fn chain(painter: &Painter, top: Pos2, foot: Pos2, theme: &Theme) {
    let along = foot - top;
    let links = 6u8;
    for link in 0..links {
        let centre = top + along * ((f32::from(link) + 0.5) / f32::from(links));
        let half = along.length() / f32::from(links) / 2.0 + 0.8;
        let (way, across) = (along.normalized() * half, along.normalized().rot90() * 3.0);
        let oval: Vec<Pos2> = (0..12u8)
            .map(|step| {
                let angle = std::f32::consts::TAU * f32::from(step) / 12.0;
                centre + way * angle.cos() + across * angle.sin()
            })
            .collect();
        painter.add(PathShape::closed_line(oval, Stroke::new(1.8, *theme.steel)));
    }
}
