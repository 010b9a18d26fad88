//! A place's bar with its title, and centred sentences.

use egui::{Align2, Pos2, Rect, Stroke, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::theme::{Face, Theme, size};

/// The place's title at `left_centre`; returns its box.
fn title(ui: &mut Ui, left_centre: Pos2, text: &str, width: f32) -> Rect {
    let theme = Theme::of(ui);
    let galley = Line::new(text, Ink::new(Face::LabelStrong, size::TITLE, *theme.ink))
        .on_one_line(ui.painter(), width);
    let at = left_centre - vec2(0.0, galley.size().y / 2.0);
    named_galley(ui, at, galley)
}

/// A sentence centred on `top_centre`.
pub(super) fn centred(ui: &mut Ui, top_centre: Pos2, text: &str) -> Rect {
    let theme = Theme::of(ui);
    let width = ui.max_rect().width() - 40.0;
    let galley = Line::new(text, Ink::new(Face::Label, 17.0, *theme.ink)).wrapped(ui.painter(), width);
    let rect = Align2::CENTER_TOP.anchor_size(top_centre, galley.size());
    named_galley(ui, rect.min, galley)
}

/// Paints a place's bar and returns where its content may go.
pub(super) fn bar(ui: &mut Ui, rect: Rect, words: &str) -> Rect {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, *theme.line));
    let inset = if rect.height() > 50.0 { 20.0 } else { 12.0 };
    let title = title(
        ui,
        pos2(rect.left() + inset, rect.center().y),
        words,
        rect.width() * 0.5,
    );
    Rect::from_min_max(
        pos2(title.right() + 20.0, rect.top()),
        pos2(rect.right() - inset, rect.bottom()),
    )
}
