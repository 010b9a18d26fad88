//! The rows of the table of results: who, what was asked, and the cells to type in.

use egui::{Align2, Key, Rect, Stroke, TextEdit, Ui, pos2, vec2};

use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::widgets::hand_disc;

use super::Grid;
use super::cells::Cell;

const ROW: f32 = 32.0;
const FIELD: f32 = 58.0;
/// So wide is "12 1".
const LEAST_FIELD: f32 = 40.0;
const GAP: f32 = 6.0;

/// Where the columns begin, from the place's left edge.
pub(super) struct Columns {
    weighs: f32,
    pain: f32,
    rung: f32,
    load: f32,
    sets: f32,
    /// How wide a set's cell is.
    set: f32,
    /// Sets that stand beside each other; more go on below.
    beside: usize,
}

impl Columns {
    /// For a place of this width and rows of at most so many sets.
    pub(super) fn of(width: f32, sets: usize) -> Self {
        let name = if width > 1100.0 { 170.0 } else { 130.0 };
        let weighs = 20.0 + name;
        let pain = weighs + FIELD + 2.0 * GAP;
        let at = pain + 78.0 + 2.0 * GAP;
        // The rung's name gets what the sets leave.
        let sets = crate::ui::screens::ladders::many(sets.max(1));
        let rung = (width - at - (sets + 1.0) * (FIELD + GAP) - 12.0).clamp(190.0, 300.0);
        let first = at + rung + FIELD + GAP;
        let room = width - first - 12.0;
        let each = (room / sets - GAP).clamp(LEAST_FIELD, FIELD);
        let beside = (1..)
            .take_while(|beside| crate::ui::screens::ladders::many(*beside) * (each + GAP) <= room + GAP)
            .last();
        Self {
            weighs,
            pain,
            rung: at,
            load: at + rung,
            sets: first,
            set: each,
            beside: beside.unwrap_or(1),
        }
    }
}

pub(super) fn heads_ui(ui: &Ui, rect: Rect, columns: &Columns, grid: &Grid) {
    let theme = Theme::of(ui);
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, *theme.bench);
    painter.hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.5, *theme.edge));
    let ink = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let unit = grid.view.unit;
    let heads = [
        (20.0, "athlete".to_owned()),
        (columns.weighs, format!("weighs, {unit}")),
        (columns.pain, "pain".to_owned()),
        (columns.rung, "asked, rung".to_owned()),
        (columns.load, format!("load, {unit}")),
        (columns.sets, "sets, in order".to_owned()),
    ];
    for (x, words) in heads {
        letters(
            painter,
            pos2(rect.left() + x, rect.center().y),
            Align2::LEFT_CENTER,
            &words,
            ink,
        );
    }
}

pub(super) fn rows_ui(ui: &mut Ui, columns: &Columns, grid: &mut Grid) {
    let theme = Theme::of(ui);
    let view = std::mem::take(&mut grid.view);
    for (who, athlete) in view.athletes.iter().enumerate() {
        for nth in 0..athlete.rows.len().max(1) {
            let sets = athlete.rows.get(nth).map_or(1, |row| row.sets.max(1));
            let lines = (0..sets.div_ceil(columns.beside)).map(|_| ROW).sum();
            let (_, whole) = ui.allocate_space(vec2(ui.available_width(), lines));
            let rect = whole.with_max_y(whole.top() + ROW);
            let edge = if nth == 0 { *theme.edge } else { *theme.line };
            ui.painter()
                .hline(rect.x_range(), rect.top(), Stroke::new(1.0, edge));
            let y = rect.center().y;
            if nth == 0 {
                let ink = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
                let name = Line::new(&athlete.name, ink).squeezed(ui.painter(), columns.weighs - 28.0);
                crate::ui::pen::named_galley(ui, pos2(rect.left() + 20.0, y - name.size().y / 2.0), name);
                field(
                    ui,
                    rect,
                    columns.weighs,
                    FIELD,
                    grid,
                    Cell::Weighs(who),
                    &athlete.weighs,
                    &athlete.name,
                );
                field(
                    ui,
                    rect,
                    columns.pain,
                    78.0,
                    grid,
                    Cell::Pain(who),
                    "",
                    &athlete.name,
                );
            }
            let Some(row) = athlete.rows.get(nth) else {
                let ink = Ink::new(Face::Label, size::BODY, *theme.ink2);
                letters(
                    ui.painter(),
                    pos2(rect.left() + columns.rung, y),
                    Align2::LEFT_CENTER,
                    "No work today.",
                    ink,
                );
                ui.advance_cursor_after_rect(whole);
                continue;
            };
            let mut x = rect.left() + columns.rung;
            if row.rail.side().is_some() {
                hand_disc(ui.painter(), pos2(x + 8.0, y), 8.0, row.rail, &theme);
                x += 22.0;
            }
            let done = if row.logged > 0 {
                format!(", {} logged", row.logged)
            } else {
                String::new()
            };
            let plain = Ink::new(Face::Label, size::BODY, *theme.ink2);
            let strong = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
            // What was asked first: a long title is drawn smaller, then cut, where there is no room.
            let words = Line::new(&row.asked, strong)
                .and(&done, plain)
                .gap(8.0, &row.title, plain);
            let words = words.squeezed(ui.painter(), rect.left() + columns.load - x - 8.0);
            crate::ui::pen::named_galley(ui, pos2(x, y - words.size().y / 2.0), words);
            let said = format!("{}, {} {}", athlete.name, row.title, row.rail.letter());
            let hint = if row.is_help {
                format!("−{}", row.load)
            } else {
                row.load.clone()
            };
            field(
                ui,
                rect,
                columns.load,
                FIELD,
                grid,
                Cell::Load(who, nth),
                &hint,
                &said,
            );
            for set in 0..row.sets {
                let [line, nth_beside] =
                    [set / columns.beside, set % columns.beside].map(crate::ui::screens::ladders::many);
                let at = columns.sets + (columns.set + GAP) * nth_beside;
                field(
                    ui,
                    rect.translate(vec2(0.0, ROW * line)),
                    at,
                    columns.set,
                    grid,
                    Cell::Set(who, nth, set),
                    &row.prefill,
                    &said,
                );
            }
            // A field put into the row leaves the cursor at its own foot.
            ui.advance_cursor_after_rect(whole);
        }
    }
    grid.view = view;
}

/// One cell to type in.
#[allow(clippy::too_many_arguments, reason = "one cell, drawn in one place")]
fn field(ui: &mut Ui, row: Rect, x: f32, width: f32, grid: &mut Grid, cell: Cell, hint: &str, said: &str) {
    let theme = Theme::of(ui);
    let rect = Rect::from_min_size(pos2(row.left() + x, row.top() + 3.0), vec2(width, ROW - 6.0));
    let id = ui.scope_id().with(("result", cell));
    let text = grid.typed.text(cell);
    let edit = TextEdit::singleline(text)
        .id(id)
        .hint_text(hint)
        .align(Align2::LEFT_CENTER)
        .margin(egui::Margin::symmetric(5, 2));
    let response = ui
        .put(rect, edit)
        .accessible_name(format!("{said}: {}", cell.name()));
    if grid.problem.as_ref().is_some_and(|(wrong, _)| *wrong == cell) {
        let stroke = Stroke::new(2.0, *theme.plum);
        ui.painter()
            .rect_stroke(rect, 3.0, stroke, egui::StrokeKind::Outside);
    }
    if response.changed() {
        (grid.problem, grid.throws, grid.changed) = (None, false, true);
    }
    grid.left |= response.lost_focus();
    if response.gained_focus() {
        ui.scroll_to_rect(rect.expand(60.0), None);
    }
    if grid.focus == Some(cell) {
        grid.focus = None;
        response.request_focus();
    }
    if response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter) && !input.modifiers.ctrl) {
        if let Cell::Set(..) = cell
            && grid.typed.text(cell).trim().is_empty()
        {
            hint.clone_into(grid.typed.text(cell));
            grid.changed = true;
        }
        grid.focus = grid.typed.after(cell);
        grid.focus_save = grid.focus.is_none();
        ui.ctx().request_repaint();
    }
}
