//! Cards, and the plum box of a caution.

use egui::{Color32, CornerRadius, Painter, Rect, Shape, Stroke, StrokeKind, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::theme::{Face, RADIUS_CARD, RADIUS_CHIP, STROKE_LINE, Theme, size};
use crate::ui::views::Phrase;

/// Paints a card; `band` colours its upper edge, four points high.
pub fn card(painter: &Painter, rect: Rect, band: Option<Color32>, theme: &Theme) {
    painter.rect(
        rect,
        RADIUS_CARD,
        *theme.raised,
        Stroke::new(STROKE_LINE, *theme.line),
        StrokeKind::Inside,
    );
    if let Some(colour) = band {
        let top = painter.with_clip_rect(Rect::from_min_size(rect.min, vec2(rect.width(), 4.0)));
        top.rect_filled(rect, RADIUS_CARD, colour);
    }
}

/// Height of a caution in a box `width` wide, and what paints it at the box's left top.
pub fn caution_box(ui: &mut Ui, words: &Phrase, width: f32) -> (f32, impl FnOnce(&mut Ui, Rect) + use<>) {
    let theme = Theme::of(ui);
    let plain = Ink::new(Face::Label, 15.0, *theme.ink);
    let strong = Ink::new(Face::LabelStrong, 15.0, *theme.ink);
    let galley = Line::phrase(words, plain, strong).wrapped(ui.painter(), width - 48.0);
    let height = galley.size().y + 14.0;
    (height, move |ui: &mut Ui, rect: Rect| {
        ui.painter().rect_filled(rect, RADIUS_CHIP, *theme.plum_wash);
        warning_sign(ui.painter(), pos2(rect.left() + 19.0, rect.top() + 18.0), &theme);
        named_galley(ui, rect.min + vec2(38.0, 7.0), galley);
    })
}

/// The triangle with a mark (ISO 7010 W001 has this shape).
fn warning_sign(painter: &Painter, centre: egui::Pos2, theme: &Theme) {
    let corner = |x: f32, y: f32| centre + vec2(x, y);
    let stroke = Stroke::new(1.8, *theme.plum);
    let triangle = vec![corner(0.0, -8.0), corner(9.0, 7.5), corner(-9.0, 7.5)];
    painter.add(Shape::closed_line(triangle, stroke));
    painter.line_segment([corner(0.0, -2.8), corner(0.0, 2.4)], stroke);
    painter.rect_filled(
        Rect::from_center_size(corner(0.0, 4.9), vec2(1.9, 1.9)),
        CornerRadius::ZERO,
        *theme.plum,
    );
}

/// The plum bar of an error: what, where, how to mend it.
pub(crate) fn error_line(what: &str, place: &str, mend: &str, theme: &Theme) -> Line {
    let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
    let plain = Ink::new(Face::Label, size::BODY, *theme.ink);
    let code = Ink::new(Face::Code, size::SMALL, *theme.ink);
    Line::new(what, strong)
        .gap(10.0, place, code)
        .gap(10.0, mend, plain)
}
