//! A rectangle whose colour changes from stop to stop: round steel, and bands that fade.

use egui::epaint::{Mesh, Vertex, WHITE_UV};
use egui::{Color32, Painter, Rect, Shape, pos2};

/// A mesh of coloured stops across a rectangle, left to right or top to bottom.
pub(super) fn stops(painter: &Painter, rect: Rect, across: bool, colours: &[(f32, Color32)]) {
    let mut mesh = Mesh::default();
    for (share, colour) in colours {
        let (a, b) = if across {
            let x = rect.left() + rect.width() * share;
            (pos2(x, rect.top()), pos2(x, rect.bottom()))
        } else {
            let y = rect.top() + rect.height() * share;
            (pos2(rect.left(), y), pos2(rect.right(), y))
        };
        for pos in [a, b] {
            mesh.vertices.push(Vertex {
                pos,
                uv: WHITE_UV,
                color: *colour,
            });
        }
    }
    for pair in (2..)
        .step_by(2)
        .zip(1..colours.len())
        .map(|(at, _): (u32, usize)| at)
    {
        mesh.add_triangle(pair - 2, pair - 1, pair);
        mesh.add_triangle(pair - 1, pair, pair + 1);
    }
    painter.add(Shape::mesh(mesh));
}
