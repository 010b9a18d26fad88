//! The text folded: a line a rung, so that a long ladder is seen whole. Pressing a rung unfolds the text there.

use egui::{Align2, Rect, Role, ScrollArea, Sense, Ui, UiBuilder, WidgetInfo, pos2, vec2};

use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{FileView, RungBlock};
use crate::ui::widgets::focus_ring;

use super::coloured;
use super::state::WorkshopState;
use super::text::{GUTTER, measures};

/// Height of a folded rung: something to press.
const ROW: f32 = 26.0;

/// Shows the folded text in `rect`.
pub(super) fn folded_ui(ui: &mut Ui, rect: Rect, open: &FileView, state: &mut WorkshopState) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.raised);
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt("folded"));
    child.shrink_clip_rect(rect);
    let mut went = None;
    ScrollArea::vertical()
        .id_salt("scroll")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            ui.add_space(6.0);
            let lines: Vec<&str> = state.text.split('\n').collect();
            let mut nth = 0;
            while nth < lines.len() {
                match open.rungs.iter().find(|rung| rung.first == nth + 1) {
                    Some(rung) => {
                        if rung_ui(ui, rung, open) {
                            went = Some(rung.first);
                        }
                        nth = rung.last.max(nth + 1);
                    }
                    None => {
                        line_ui(ui, nth + 1, lines[nth], open);
                        nth += 1;
                    }
                }
            }
            ui.add_space(6.0);
        });
    if let Some(line) = went {
        state.go(Some(line), 1);
    }
}

fn line_ui(ui: &mut Ui, number: usize, text: &str, open: &FileView) {
    let theme = Theme::of(ui);
    let (size, height) = measures(ui);
    let (_, rect) = ui.allocate_space(vec2(ui.available_width(), height));
    number_ui(ui, rect, &number.to_string(), is_wrong(open, number, number));
    let galley = ui.fonts_mut(|fonts| fonts.layout_job(coloured::job(text, size, height, &theme)));
    ui.painter()
        .with_clip_rect(rect.intersect(ui.clip_rect()))
        .galley(pos2(rect.left() + GUTTER, rect.top()), galley, *theme.ink2);
}

fn rung_ui(ui: &mut Ui, rung: &RungBlock, open: &FileView) -> bool {
    let theme = Theme::of(ui);
    let (id, rect) = ui.allocate_space(vec2(ui.available_width(), ROW));
    let response = ui.interact(rect, id, Sense::click());
    let wrong = is_wrong(open, rung.first, rung.last);
    let name = if rung.id.is_empty() {
        "a rung without an id"
    } else {
        &rung.id
    };
    let words = if wrong { ", with a mistake" } else { "" };
    response.widget_info(|| {
        let said = format!("{name}, lines {} to {}{words}", rung.first, rung.last);
        WidgetInfo::labeled(Role::Button, true, said)
    });
    let body = Rect::from_min_max(
        pos2(rect.left() + GUTTER + 26.0, rect.top() + 2.0),
        rect.max - vec2(12.0, 2.0),
    );
    let fill = match (wrong, response.hovered()) {
        (true, _) => *theme.plum_wash,
        (false, true) => *theme.bench,
        (false, false) => *theme.surface,
    };
    ui.painter().rect_filled(body, 4.0, fill);
    number_ui(ui, rect, &rung.first.to_string(), wrong);
    let code = Ink::new(
        Face::Code,
        size::SMALL,
        if wrong { *theme.plum } else { *theme.ink },
    );
    let note = Ink::new(Face::Label, size::TABLE, *theme.ink3);
    let lines = format!("lines {}–{}", rung.first, rung.last);
    let line = Line::new(name, code)
        .gap(14.0, &lines, note)
        .gap(0.0, words, note);
    let galley = line.on_one_line(ui.painter(), body.width() - 16.0);
    ui.painter().galley(
        pos2(body.left() + 8.0, body.center().y - galley.size().y / 2.0),
        galley,
        *theme.ink,
    );
    if response.has_focus() {
        focus_ring(ui.painter(), body.shrink(2.0), 4.0, &theme);
        ui.scroll_to_rect(rect, None);
    }
    response.clicked()
}

fn number_ui(ui: &Ui, rect: Rect, number: &str, wrong: bool) {
    let theme = Theme::of(ui);
    let (face, colour) = if wrong {
        (Face::LabelStrong, *theme.plum)
    } else {
        (Face::Label, *theme.ink3)
    };
    letters(
        ui.painter(),
        pos2(rect.left() + GUTTER - 12.0, rect.center().y),
        Align2::RIGHT_CENTER,
        number,
        Ink::new(face, size::TABLE, colour),
    );
}

fn is_wrong(open: &FileView, first: usize, last: usize) -> bool {
    let mut all = open.mistakes.iter();
    all.any(|mistake| (first..=last).contains(&mistake.line))
}
