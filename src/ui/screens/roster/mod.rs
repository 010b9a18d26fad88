//! The roster: everyone with need, rungs and verdicts, sorted by need; who is marked gets a sheet, and their results are typed.

mod around;
mod grid;
mod order;
mod over;
mod rows;
mod state;

use egui::{Rect, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::gym::GymDeed;
use crate::ui::theme::{NARROW, Theme};
use crate::ui::views::{GymView, RosterView};
use crate::ui::widgets::Button;

use around::{foot_ui, header_ui};
pub use grid::Grid;
use grid::grid_ui;
use over::over_ui;
pub use over::{NewPerson, Over, Person};
use rows::{Columns, heads_ui, rows_ui};
pub use state::RosterState;

use super::{Around, Screen};
use crate::ui::screens::heading;

/// The roster, with its views as last loaded.
#[derive(Default)]
pub struct RosterScreen {
    /// What is shown.
    pub view: RosterView,
    /// What it remembers.
    pub state: RosterState,
    /// Plates, ladders to join, who is off the roster.
    pub gym: GymView,
    /// The class's results being typed, in place of the roster.
    pub grid: Option<Grid>,
}

impl RosterScreen {
    /// A deed is done: what asked for it closes.
    pub fn done(&mut self, deed: &GymDeed) {
        match deed {
            GymDeed::LogClass(_) => self.grid = None,
            GymDeed::ShowClass(_) | GymDeed::KeepTyped { .. } | GymDeed::SetRack { .. } => {}
            GymDeed::Archive { archived: false, .. } => {}
            _ => self.state.over = None,
        }
    }
}

impl Screen for RosterScreen {
    fn context(&self) -> Context {
        if self.grid.is_some() {
            Context::Everywhere
        } else {
            Context::Roster
        }
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.roster();
        self.gym = book.gym();
        self.state.loaded += 1;
        if std::mem::take(&mut self.state.wants_class) {
            self.grid = Some(Grid::of(book.class()));
        }
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        if let Some(grid) = &mut self.grid {
            grid_ui(ui, grid, actions);
            return;
        }
        roster_ui(ui, &self.view, &mut self.state, actions);
        over_ui(ui, &self.view, &self.gym, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        match (&mut self.grid, action) {
            (Some(grid), Action::Back) => {
                actions.write(Deed::Gym(GymDeed::KeepTyped {
                    typed: grid.kept(),
                    leaves: true,
                }));
                self.grid = None;
            }
            (Some(_), _) => {}
            (None, action) => self.state.perform(action, &self.view, &self.gym, actions),
        }
    }

    fn has_sheet(&self) -> bool {
        self.state.over.is_some()
    }

    fn leave(&mut self) {
        self.state.over = None;
    }
}

/// Shows the roster in the whole of `ui`.
pub fn roster_ui(ui: &mut Ui, view: &RosterView, state: &mut RosterState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.raised);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 56.0 } else { 48.0 }));
    state.refresh(view);
    header_ui(ui, header, view, state, actions);
    if view.lines.is_empty() {
        empty_ui(ui, whole, actions);
        return;
    }
    state.refresh(view);
    let columns = Columns::of(whole);
    let heads = Rect::from_min_size(header.left_bottom(), vec2(whole.width(), 28.0));
    heads_ui(ui, heads, &columns);
    let foot_height = if whole.height() > 420.0 { 46.0 } else { 0.0 };
    let rows = Rect::from_min_max(heads.left_bottom(), whole.max - vec2(0.0, foot_height));
    rows_ui(ui, rows, view, &columns, state, actions);
    if foot_height > 0.0 {
        let foot = Rect::from_min_max(rows.left_bottom(), whole.max);
        foot_ui(ui, foot, state.order.line(view, state.chosen));
    }
}

/// A logbook without athletes.
fn empty_ui(ui: &mut Ui, rect: Rect, actions: &mut Actions) {
    let at = pos2(rect.center().x, rect.top() + 180.0);
    heading::centred(ui, at, "No athlete yet. Add one, or bring a spreadsheet.");
    let theme = Theme::of(ui);
    let key = Action::NewAthlete.key();
    let button = Button::main("New athlete").key(&key);
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(at.x - width / 2.0, at.y + 44.0), vec2(width, 36.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::NewAthlete);
    }
}
