//! The class's results in one table. Enter takes what the sheet asked and goes on, Tab goes on, and nothing is saved before the
//! button says so; then all of it is, or none.

mod cells;

use egui::{Align2, Key, Rect, ScrollArea, Stroke, TextEdit, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::pen::{Ink, Line, letters};
use crate::ui::theme::{Face, Theme, size};
use crate::ui::views::{ClassView, TypedClass};
use crate::ui::widgets::{Button, hand_disc};

use super::super::next::header_bar;
use cells::{Cell, Typed};

/// What was typed so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Grid {
    view: ClassView,
    typed: Typed,
    /// The cell that gets the keys next.
    focus: Option<Cell>,
    /// Keys go to the button next.
    focus_save: bool,
    /// What is wrong in a cell.
    problem: Option<(Cell, String)>,
    /// Everything is thrown away at the next press of its button.
    throws: bool,
    /// Something was typed since it was last kept.
    changed: bool,
    /// A cell was left in this frame.
    left: bool,
}

impl Grid {
    /// An empty table for a class.
    pub fn of(view: ClassView) -> Self {
        let mut grid = Self {
            typed: Typed::of(&view),
            view,
            ..Self::default()
        };
        grid.focus = grid.first_set();
        grid
    }

    /// All that is typed.
    pub fn kept(&self) -> TypedClass {
        self.typed.kept(&self.view)
    }

    /// Keeps what is typed whenever a cell is left, and once more when the window closes.
    fn keep(&mut self, ui: &Ui, actions: &mut Actions) {
        let left = std::mem::take(&mut self.left) || ui.input(|input| input.viewport().close_requested());
        if left && std::mem::take(&mut self.changed) {
            actions.write(Deed::Gym(GymDeed::KeepTyped {
                typed: self.kept(),
                leaves: false,
            }));
        }
    }

    fn throw_away(&mut self, actions: &mut Actions) {
        if !std::mem::replace(&mut self.throws, true) {
            return;
        }
        self.typed.clear();
        (self.problem, self.throws, self.focus) = (None, false, self.first_set());
        actions.write(Deed::Gym(GymDeed::KeepTyped {
            typed: TypedClass::default(),
            leaves: false,
        }));
    }

    fn save(&mut self, actions: &mut Actions) {
        match self.typed.results(&self.view) {
            Ok(results) if results.is_empty() => {}
            Ok(results) => actions.write(Deed::Gym(GymDeed::LogClass(results))),
            Err((cell, words)) => {
                self.focus = Some(cell);
                self.problem = Some((cell, words));
            }
        }
    }
}

const ROW: f32 = 32.0;
const FIELD: f32 = 58.0;
/// So wide is "12 1".
const LEAST_FIELD: f32 = 40.0;
const GAP: f32 = 6.0;

/// Where the columns begin, from the place's left edge.
struct Columns {
    weighs: f32,
    pain: f32,
    rung: f32,
    load: f32,
    sets: f32,
    /// How wide a set's cell is.
    set: f32,
}

impl Columns {
    /// For a place of this width and rows of at most so many sets.
    fn of(width: f32, sets: usize) -> Self {
        let name = if width > 1100.0 { 170.0 } else { 130.0 };
        let rung = if width > 1100.0 { 300.0 } else { 190.0 };
        let weighs = 20.0 + name;
        let pain = weighs + FIELD + 2.0 * GAP;
        let at = pain + 78.0 + 2.0 * GAP;
        let first = at + rung + FIELD + GAP;
        let each = (width - first - 12.0) / crate::ui::screens::ladders::many(sets.max(1)) - GAP;
        Self {
            weighs,
            pain,
            rung: at,
            load: at + rung,
            sets: first,
            set: each.clamp(LEAST_FIELD, FIELD),
        }
    }
}

/// Shows the table in the whole of `ui`.
pub(super) fn grid_ui(ui: &mut Ui, grid: &mut Grid, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.raised);
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    let room = header_bar(ui, header, "Type results");
    let note = grid.problem.as_ref().map_or_else(
        || {
            let day = &grid.view.day;
            if whole.width() > 1100.0 {
                format!("{day}. 5 1 is five with one in reserve, 5 m a miss, 5 f form. Enter takes what was asked, Tab goes on.")
            } else {
                format!("{day}. 5 1: one in reserve, 5 m: a miss, 5 f: form. Enter: as asked.")
            }
        },
        |(_, words)| words.clone(),
    );
    let wrong = grid.problem.is_some();
    let colour = if wrong { *theme.plum } else { *theme.ink2 };
    let title = save_title(grid.typed.count());
    let button = Button::main(&title).key("Ctrl+Enter");
    let width = button.width(ui.painter(), &theme);
    let at = Rect::from_min_size(
        pos2(room.right() - width, room.center().y - 17.0),
        vec2(width, 34.0),
    );
    // What is wrong in a cell needs the room.
    let throw = (!grid.typed.is_empty() && !wrong).then(|| {
        let button = Button::plain(if grid.throws {
            "Throw all away?"
        } else {
            "Throw away"
        });
        let left = at.left() - button.width(ui.painter(), &theme) - 8.0;
        (
            button,
            Rect::from_min_max(pos2(left, at.top()), pos2(at.left() - 8.0, at.bottom())),
        )
    });
    let words_until = throw.as_ref().map_or(at.left(), |(_, rect)| rect.left());
    let words = Line::new(&note, Ink::new(Face::Label, 15.0, colour))
        .on_one_line(ui.painter(), words_until - room.left() - 12.0);
    crate::ui::pen::named_galley(
        ui,
        pos2(room.left(), room.center().y - words.size().y / 2.0),
        words,
    );

    let rows = grid.view.athletes.iter().flat_map(|athlete| &athlete.rows);
    let columns = Columns::of(whole.width(), rows.map(|row| row.sets).max().unwrap_or(0));
    let heads = Rect::from_min_size(header.left_bottom(), vec2(whole.width(), 26.0));
    heads_ui(ui, heads, &columns, grid);
    let body = Rect::from_min_max(heads.left_bottom(), whole.max);
    let mut child = ui.new_child(UiBuilder::new().max_rect(body).id_salt("class"));
    child.shrink_clip_rect(body);
    child.spacing_mut().item_spacing.y = 0.0;
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        rows_ui(ui, &columns, grid);
        ui.add_space(20.0);
    });
    // Counted again: a cell may have been filled in this frame, and the button's name is what holds the focus.
    let title = save_title(grid.typed.count());
    let response = Button::main(&title).key("Ctrl+Enter").show(ui, at);
    if std::mem::take(&mut grid.focus_save) {
        response.request_focus();
    }
    let by_keys = ui.input_mut(|input| input.consume_key(egui::Modifiers::CTRL, Key::Enter));
    grid.keep(ui, actions);
    if response.clicked() || by_keys {
        grid.save(actions);
    }
    if let Some((button, rect)) = throw {
        let response = button.show(ui, rect);
        if response.clicked() {
            grid.throw_away(actions);
        } else if response.lost_focus() {
            grid.throws = false;
        }
    }
}

fn save_title(count: usize) -> String {
    match count {
        1 => "Save 1 set".to_owned(),
        count => format!("Save {count} sets"),
    }
}

fn heads_ui(ui: &Ui, rect: Rect, columns: &Columns, grid: &Grid) {
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

fn rows_ui(ui: &mut Ui, columns: &Columns, grid: &mut Grid) {
    let theme = Theme::of(ui);
    let view = std::mem::take(&mut grid.view);
    for (who, athlete) in view.athletes.iter().enumerate() {
        for nth in 0..athlete.rows.len().max(1) {
            let (_, rect) = ui.allocate_space(vec2(ui.available_width(), ROW));
            let edge = if nth == 0 { *theme.edge } else { *theme.line };
            ui.painter()
                .hline(rect.x_range(), rect.top(), Stroke::new(1.0, edge));
            let y = rect.center().y;
            if nth == 0 {
                let ink = Ink::new(Face::LabelStrong, size::BODY, *theme.ink);
                let name = Line::new(&athlete.name, ink).on_one_line(ui.painter(), columns.weighs - 28.0);
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
            // What was asked first: a long title is cut where there is no room.
            let words = Line::new(&row.asked, strong)
                .and(&done, plain)
                .gap(8.0, &row.title, plain);
            let words = words.on_one_line(ui.painter(), rect.left() + columns.load - x - 8.0);
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
                let at = columns.sets + (columns.set + GAP) * crate::ui::screens::ladders::many(set);
                field(
                    ui,
                    rect,
                    at,
                    columns.set,
                    grid,
                    Cell::Set(who, nth, set),
                    &row.prefill,
                    &said,
                );
            }
        }
    }
    grid.view = view;
}

impl Grid {
    fn first_set(&self) -> Option<Cell> {
        let sets = |who: usize| {
            self.view
                .athletes
                .get(who)
                .is_some_and(|athlete| !athlete.rows.is_empty())
        };
        let who = (0..self.view.athletes.len()).find(|who| sets(*who))?;
        Some(Cell::Set(who, 0, 0))
    }
}

/// One cell to type in.
#[allow(clippy::too_many_arguments, reason = "one cell, drawn in one place")]
fn field(ui: &mut Ui, row: Rect, x: f32, width: f32, grid: &mut Grid, cell: Cell, hint: &str, said: &str) {
    let theme = Theme::of(ui);
    let rect = Rect::from_min_size(pos2(row.left() + x, row.top() + 3.0), vec2(width, ROW - 6.0));
    if rect.right() > row.right() {
        return;
    }
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
