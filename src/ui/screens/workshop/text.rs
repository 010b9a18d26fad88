//! The text with its line numbers and marks.

use std::sync::Arc;

use egui::text::{CCursor, CCursorRange};
use egui::{
    Align, Align2, Frame, Galley, Key, Margin, Pos2, Rect, ScrollArea, Shape, TextBuffer, TextEdit, Ui,
    UiBuilder, pos2, vec2,
};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, NARROW, Theme, size};
use crate::ui::two_rail::heights::many;
use crate::ui::views::{FileView, Mistake};
use crate::ui::workshop::WorkshopDeed;

use super::coloured;
use super::state::{Jump, WorkshopState};

/// Room for line numbers.
pub(super) const GUTTER: f32 = 46.0;
/// Type of the text, points, and the height of its lines; smaller in a narrow window.
const WIDE: (f32, f32) = (14.0, 20.0);
const SMALL: (f32, f32) = (13.0, 18.0);
/// Spaces for one bracket more, as the shipped ladders are written.
const INDENT: usize = 4;
/// So long after the last key the window looks again, so that what is typed is kept.
const LOOK_AGAIN: std::time::Duration = std::time::Duration::from_millis(800);

/// Shows the text in `rect`.
pub(super) fn text_ui(
    ui: &mut Ui,
    rect: Rect,
    open: &FileView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.raised);
    let (size, height) = measures(ui);
    let inside = Rect::from_min_max(pos2(rect.left() + GUTTER, rect.top()), rect.max);
    let mut child = ui.new_child(UiBuilder::new().max_rect(inside).id_salt(("text", &open.file)));
    child.shrink_clip_rect(inside);
    let seen = rect.expand2(vec2(0.0, height));
    let mut shown = None;
    ScrollArea::both()
        .id_salt("scroll")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            shown = Some(edit_ui(ui, inside, (size, height), open, state, actions));
        });
    let Some(Shown { galley, at }) = shown else { return };
    // Numbers stay where they are while long lines move to the left.
    let gutter = ui.painter_at(rect.with_max_x(inside.left()));
    for (nth, row) in galley.rows.iter().enumerate() {
        let y = at.y + row.rect().center().y;
        if !seen.y_range().contains(y) {
            continue;
        }
        let is_wrong = open.mistakes.iter().any(|mistake| mistake.line == nth + 1);
        let (face, colour) = if is_wrong {
            gutter.rect_filled(
                Rect::from_x_y_ranges(rect.left()..=inside.left(), y - height / 2.0..=y + height / 2.0),
                0.0,
                *theme.plum_wash,
            );
            (Face::LabelStrong, *theme.plum)
        } else {
            (Face::Label, *theme.ink3)
        };
        letters(
            &gutter,
            pos2(inside.left() - 12.0, y),
            Align2::RIGHT_CENTER,
            &(nth + 1).to_string(),
            Ink::new(face, size::TABLE, colour),
        );
    }
}

/// Size of type and height of a line.
pub(super) fn measures(ui: &Ui) -> (f32, f32) {
    if ui.ctx().content_rect().width() >= NARROW {
        WIDE
    } else {
        SMALL
    }
}

struct Shown {
    galley: Arc<Galley>,
    at: Pos2,
}

fn edit_ui(
    ui: &mut Ui,
    inside: Rect,
    (size, height): (f32, f32),
    open: &FileView,
    state: &mut WorkshopState,
    actions: &mut Actions,
) -> Shown {
    let theme = Theme::of(ui);
    let id = ui.make_persistent_id("ladder text");
    if let Some(jump) = state.jump {
        place_cursor(ui, id, &state.text, jump);
    }
    let width = |ui: &Ui, text: &str| {
        let job = coloured::job(text, size, height, &theme);
        ui.fonts_mut(|fonts| fonts.layout_job(job))
    };
    let wide = width(ui, &state.text).size().x + 24.0;
    let marks = ui.painter().add(Shape::Noop);
    let mut layouter = |ui: &Ui, text: &dyn TextBuffer, _: f32| width(ui, text.as_str());
    let mut edit = |buffer: &mut dyn TextBuffer, ui: &mut Ui| {
        TextEdit::multiline(buffer)
            .id(id)
            .frame(Frame::NONE.inner_margin(Margin {
                top: 6,
                bottom: 6,
                left: 0,
                right: 8,
            }))
            .layouter(&mut layouter)
            .desired_width(wide.max(inside.width()))
            .min_size(vec2(wide.max(inside.width()), inside.height()))
            .show(ui)
    };
    let mut output = if open.writable {
        edit(&mut state.text, ui)
    } else {
        edit(&mut state.text.as_str(), ui)
    };
    let name = format!("Text of {}", open.file);
    let response = output.response.response.clone().accessible_name(name);
    if response.changed() {
        if ui.input(|input| input.key_pressed(Key::Enter))
            && let Some(at) = output.cursor_range.and_then(|range| range.single())
        {
            let (text, cursor) = indented(&state.text, at.index.0);
            state.text = text;
            let cursor = CCursorRange::one(CCursor::new(cursor));
            output.state.cursor.set_char_range(Some(cursor));
            output.state.clone().store(ui.ctx(), id);
        }
        actions.write(Deed::Workshop(WorkshopDeed::Type {
            file: state.file.clone(),
            text: state.text.clone(),
        }));
        ui.ctx().request_repaint_after(LOOK_AGAIN);
    }
    let galley = output.galley.clone();
    let at = output.galley_pos;
    ui.painter()
        .set(marks, marks_of(&galley, at, ui.clip_rect(), open, &theme));
    if let Some(jump) = state.jump.take() {
        let row = jump.line.and_then(|line| galley.rows.get(line.saturating_sub(1)));
        if let Some(row) = row {
            let mut place = row.rect().translate(at.to_vec2());
            let column = many(jump.column.saturating_sub(1)) * size * 0.6;
            place = Rect::from_x_y_ranges(at.x + column..=at.x + column + 40.0, place.y_range());
            ui.scroll_to_rect_animation(place, Some(Align::Center), egui::style::ScrollAnimation::none());
        }
        if jump.enters {
            response.request_focus();
        }
    }
    Shown { galley, at }
}

/// Puts the cursor where a jump leads.
fn place_cursor(ui: &Ui, id: egui::Id, text: &str, jump: Jump) {
    let Some(line) = jump.line else { return };
    let before: usize = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(|line| line.chars().count())
        .sum();
    let length = text
        .split('\n')
        .nth(line.saturating_sub(1))
        .map_or(0, |line| line.chars().count());
    let at = before + jump.column.saturating_sub(1).min(length);
    let mut state = TextEdit::load_state(ui.ctx(), id).unwrap_or_default();
    state
        .cursor
        .set_char_range(Some(CCursorRange::one(CCursor::new(at))));
    state.store(ui.ctx(), id);
}

/// The wash behind lines with mistakes, and a line under the letters that are meant.
fn marks_of(galley: &Galley, at: Pos2, clip: Rect, open: &FileView, theme: &Theme) -> Shape {
    let mut shapes = Vec::new();
    for mistake in &open.mistakes {
        let Some(row) = galley.rows.get(mistake.line.saturating_sub(1)) else {
            continue;
        };
        let rect = row.rect().translate(at.to_vec2());
        let wash = Rect::from_x_y_ranges(clip.x_range(), rect.y_range());
        shapes.push(Shape::rect_filled(wash, 0.0, *theme.plum_wash));
        let (from, to) = span(row, mistake);
        let under = Rect::from_x_y_ranges(at.x + from..=at.x + to, rect.bottom() - 3.0..=rect.bottom() - 1.0);
        shapes.push(Shape::rect_filled(under, 0.0, *theme.plum));
    }
    Shape::Vec(shapes)
}

/// From where to where on its row a mistake stands.
fn span(row: &egui::epaint::text::PlacedRow, mistake: &Mistake) -> (f32, f32) {
    let x = |column: usize| row.pos.x + row.x_offset(column.into());
    let from = x(mistake.column.saturating_sub(1));
    let to = x(mistake.column.saturating_sub(1) + mistake.width);
    (from, to.max(from + 8.0))
}

/// The text after Enter at the character before `at`: the new line begins as far in as the one before it, and farther where that
/// opened a bracket. And where the cursor is then.
fn indented(text: &str, at: usize) -> (String, usize) {
    let byte = text.char_indices().nth(at).map_or(text.len(), |(byte, _)| byte);
    let (before, after) = text.split_at(byte);
    let Some(line) = before
        .strip_suffix('\n')
        .map(|before| before.rsplit('\n').next().unwrap_or_default())
    else {
        return (text.to_owned(), at);
    };
    let spaces = line.len() - line.trim_start_matches(' ').len();
    let opens = line.trim_end().ends_with(['(', '[', '{']);
    let more = spaces + if opens { INDENT } else { 0 };
    (format!("{before}{}{after}", " ".repeat(more)), at + more)
}

#[cfg(test)]
mod tests {
    use super::indented;

    #[test]
    fn a_new_line_begins_where_the_one_before_it_did() {
        assert_eq!(indented("    a: 1,\n", 10), ("    a: 1,\n    ".into(), 14));
        assert_eq!(indented("ä: [\n]", 5), ("ä: [\n    ]".into(), 9));
        assert_eq!(indented("no new line", 3), ("no new line".into(), 3));
    }
}
