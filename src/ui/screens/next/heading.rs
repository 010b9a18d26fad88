//! Titles and centred sentences.

use egui::{Align2, Pos2, Rect, Ui, vec2};

use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::theme::{Face, Theme, size};

/// The place's title at `left_centre`; returns its box.
pub(crate) fn title(ui: &mut Ui, left_centre: Pos2, text: &str, width: f32) -> Rect {
    let theme = Theme::of(ui);
    let galley = Line::new(text, Ink::new(Face::LabelStrong, size::TITLE, *theme.ink))
        .on_one_line(ui.painter(), width);
    let at = left_centre - vec2(0.0, galley.size().y / 2.0);
    named_galley(ui, at, galley)
}

/// A sentence centred on `top_centre`.
pub(crate) fn centred(ui: &mut Ui, top_centre: Pos2, text: &str) -> Rect {
    let theme = Theme::of(ui);
    let width = ui.max_rect().width() - 40.0;
    let galley = Line::new(text, Ink::new(Face::Label, 17.0, *theme.ink)).wrapped(ui.painter(), width);
    let rect = Align2::CENTER_TOP.anchor_size(top_centre, galley.size());
    named_galley(ui, rect.min, galley)
}
