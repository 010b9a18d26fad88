//! The class's results in one table. Enter takes what the sheet asked and goes on, Tab goes on, and nothing is saved before the
//! button says so; then all of it is, or none.

mod cells;
mod table;

use egui::{Key, Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::gym::GymDeed;
use crate::ui::pen::{Ink, Line};
use crate::ui::theme::{Face, Theme};
use crate::ui::views::{ClassView, TypedClass};
use crate::ui::widgets::Button;

use crate::ui::screens::heading;
use cells::{Cell, Typed};
use table::{Columns, heads_ui, rows_ui};

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
    /// The table for a class, with what was typed before and not saved.
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

/// Shows the table in the whole of `ui`.
pub(super) fn grid_ui(ui: &mut Ui, grid: &mut Grid, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.raised);
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), 56.0));
    let room = heading::bar(ui, header, "Type results");
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
