//! The roster: everyone with need, rungs and verdicts, sorted by need; who is marked gets a sheet, and their results are typed.

mod grid;
mod order;
mod over;
mod rows;

use std::collections::BTreeSet;

use egui::{Align2, Rect, Stroke, TextEdit, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::gym::GymDeed;
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, NARROW, Theme, size};
use crate::ui::views::{GymView, Need, Paper, Place, RosterLine, RosterView};
use crate::ui::widgets::{self, Button, badge, badge_colour, focus_ring, hand_disc, key_cap};

pub use grid::Grid;
use grid::grid_ui;
use order::Order;
use over::over_ui;
pub use over::{NewPerson, Over, Person};
use rows::{Columns, heads_ui, rows_ui};

use super::next::{header_bar, heading_centred};
use super::{Around, Screen};

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
            GymDeed::ShowClass(_) | GymDeed::SetRack { .. } => {}
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
            if grid_ui(ui, grid, actions) {
                self.grid = None;
            }
            return;
        }
        roster_ui(ui, &self.view, &mut self.state, actions);
        over_ui(ui, &self.view, &self.gym, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        match (&mut self.grid, action) {
            (Some(grid), Action::Back) => {
                if grid.leave() {
                    self.grid = None;
                }
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

/// What the roster remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RosterState {
    /// The chosen line, among those shown.
    pub chosen: usize,
    /// Only this need, if one is picked.
    pub need: Option<Need>,
    /// What is typed into the filter.
    pub filter: String,
    /// The filter wants the focus.
    pub focus_filter: bool,
    /// Keys of marked athletes.
    pub marked: BTreeSet<String>,
    /// What lies over it.
    pub over: Option<Over>,
    /// A class was asked for, and its view comes with the next loading.
    wants_class: bool,
    /// Bring the chosen line into view.
    bring: bool,
    /// How often the view was loaded.
    loaded: u64,
    order: Order,
}

impl RosterState {
    /// Lines that pass the filter.
    pub fn shown<'a>(&mut self, view: &'a RosterView) -> Vec<&'a RosterLine> {
        self.refresh(view);
        (0..self.order.len())
            .filter_map(|nth| self.order.line(view, nth))
            .collect()
    }

    fn refresh(&mut self, view: &RosterView) {
        self.order.refresh(view, &self.filter, self.need, self.loaded);
        self.chosen = self.chosen.min(self.order.len().saturating_sub(1));
    }

    /// The athletes that a sheet is for, in the roster's order: the marked ones, else the chosen one.
    pub fn meant(&self, view: &RosterView) -> Vec<String> {
        let marked = view
            .lines
            .iter()
            .filter(|line| self.marked.contains(&line.athlete));
        let marked: Vec<String> = marked.map(|line| line.athlete.clone()).collect();
        if !marked.is_empty() {
            return marked;
        }
        let chosen = self.order.line(view, self.chosen);
        chosen.map(|line| line.athlete.clone()).into_iter().collect()
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &RosterView, gym: &GymView, actions: &mut Actions) {
        self.refresh(view);
        let last = self.order.len().saturating_sub(1);
        let chosen = self.order.line(view, self.chosen);
        match action {
            Action::RowUp => self.chosen = self.chosen.saturating_sub(1),
            Action::RowDown => self.chosen = (self.chosen + 1).min(last),
            Action::PageUpRows => self.chosen = self.chosen.saturating_sub(PAGE),
            Action::PageDownRows => self.chosen = (self.chosen + PAGE).min(last),
            Action::NextGroup => {
                let now = chosen.map(|line| line.need);
                let next = (self.chosen..self.order.len())
                    .find(|nth| self.order.line(view, *nth).map(|line| line.need) != now);
                self.chosen = next.unwrap_or(0);
            }
            Action::NeedOnly(nth) => {
                let need = usize::from(nth)
                    .checked_sub(1)
                    .and_then(|nth| Need::ALL.get(nth))
                    .copied();
                self.need = need.filter(|need| self.need != Some(*need));
                self.chosen = 0;
            }
            Action::OpenRow => {
                if let Some(line) = chosen {
                    actions.write(Deed::ChooseAthlete(line.athlete.clone()));
                    actions.ask(Action::Go(Place::Next));
                }
            }
            Action::MarkRow => {
                if let Some(line) = chosen {
                    if !self.marked.remove(&line.athlete) {
                        self.marked.insert(line.athlete.clone());
                    }
                    self.chosen = (self.chosen + 1).min(last);
                }
            }
            Action::MarkShown => self.mark_shown(view),
            Action::TonightsSheet => self.over = Some(Over::print(Paper::Pages, self.meant(view), gym)),
            Action::ProgressReport => {
                let athlete = chosen.map(|line| line.athlete.clone()).into_iter().collect();
                self.over = Some(Over::print(Paper::Progress, athlete, gym));
            }
            Action::TypeResults => {
                let meant = self.meant(view);
                if !meant.is_empty() {
                    self.wants_class = true;
                    actions.write(Deed::Gym(GymDeed::ShowClass(meant)));
                }
            }
            Action::NewAthlete => self.over = Some(Over::New(NewPerson::default())),
            Action::EditAthlete => {
                self.over = Some(Over::Edit(chosen.map(Person::of).unwrap_or_default()));
            }
            Action::NoteRow => {
                if let Some(line) = chosen {
                    self.over = Some(Over::Note(Person::of(line)));
                }
            }
            Action::FilterRoster | Action::Find => self.focus_filter = true,
            Action::Back if self.over.take().is_some() => return,
            Action::Back if !self.filter.is_empty() || self.need.is_some() => {
                self.filter.clear();
                self.need = None;
            }
            Action::Back => self.marked.clear(),
            _ => return,
        }
        self.bring = true;
    }

    /// A place was chosen for the page to print.
    pub fn picked(&mut self, path: &std::path::Path) {
        if let Some(Over::Print(printing)) = &mut self.over {
            printing.path = path.to_string_lossy().into_owned();
        }
    }

    /// Marks all that are shown; where all are marked already, unmarks them.
    fn mark_shown(&mut self, view: &RosterView) {
        let shown: Vec<String> = (0..self.order.len())
            .filter_map(|nth| self.order.line(view, nth))
            .map(|line| line.athlete.clone())
            .collect();
        if shown.iter().all(|athlete| self.marked.contains(athlete)) {
            shown.iter().for_each(|athlete| {
                self.marked.remove(athlete);
            });
        } else {
            self.marked.extend(shown);
        }
    }
}

/// Lines that Page Up and Page Down go.
const PAGE: usize = 25;

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

/// Title, needs to pick, filter, the sheet.
fn header_ui(ui: &mut Ui, rect: Rect, view: &RosterView, state: &mut RosterState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let room = header_bar(ui, rect, "Roster");
    let mut right = room.right();
    if !view.lines.is_empty() {
        let title = match state.marked.len() {
            0 => "Sheet for tonight".to_owned(),
            count => format!("Sheet for tonight, {count}"),
        };
        let title = if room.width() > 760.0 {
            title.as_str()
        } else {
            "Sheet"
        };
        let button = Button::plain(title).key("S");
        let width = button.width(ui.painter(), &theme);
        let at = Rect::from_min_size(pos2(right - width, room.center().y - 17.0), vec2(width, 34.0));
        if button.show(ui, at).clicked() {
            actions.ask(Action::TonightsSheet);
        }
        right = at.left() - 8.0;
    }
    let field_width = if room.width() > 760.0 { 150.0 } else { 110.0 };
    let field = Rect::from_min_size(
        pos2(right - field_width, room.center().y - 17.0),
        vec2(field_width, 34.0),
    );
    let edit = TextEdit::singleline(&mut state.filter)
        .hint_text("name or ladder")
        .align(egui::Align2::LEFT_CENTER);
    let response = ui
        .put(field, edit)
        .accessible_name("Filter by name, ladder or need");
    if std::mem::take(&mut state.focus_filter) {
        response.request_focus();
    }
    if response.has_focus() && ui.input(|input| input.key_pressed(egui::Key::ArrowDown)) {
        response.surrender_focus();
    }
    if state.filter.is_empty() && !response.has_focus() {
        key_cap(
            ui.painter(),
            field.right_center() - vec2(8.0, 0.0),
            Align2::RIGHT_CENTER,
            "/",
            *theme.ink2,
            &theme,
        );
    }
    let limit = field.left() - 8.0;
    let mut x = room.left() - 4.0;
    let y = room.center().y;
    if let Some((right, pressed)) = chip(ui, x, y, limit, None, view.lines.len(), state.need.is_none()) {
        x = right + 7.0;
        if pressed {
            state.need = None;
        }
    }
    let needs: Vec<(Need, usize)> = state.order.needs().collect();
    for (need, count) in needs {
        let chosen = state.need == Some(need);
        let Some((right, pressed)) = chip(ui, x, y, limit, Some(need), count, chosen) else {
            break;
        };
        x = right + 7.0;
        if pressed {
            state.need = (!chosen).then_some(need);
        }
    }
}

/// A need with its count; none where it doesn't fit left of `limit`.
fn chip(
    ui: &mut Ui,
    x: f32,
    y: f32,
    limit: f32,
    need: Option<Need>,
    count: usize,
    chosen: bool,
) -> Option<(f32, bool)> {
    let theme = Theme::of(ui);
    let colour = if chosen { *theme.raised } else { *theme.ink };
    let title = need.map_or("All", Need::title);
    let plain = Ink::new(Face::Label, 15.0, colour);
    let strong = Ink::new(Face::LabelStrong, 15.0, colour);
    // Where seven words have no room, badge and count stay; the word is still read out and shown under the pointer.
    let words = if need.is_some() && ui.max_rect().width() < ROOM_FOR_WORDS {
        Line::new(&count.to_string(), strong)
    } else {
        Line::new(title, plain).gap(6.0, &count.to_string(), strong)
    };
    let galley = words.on_one_line(ui.painter(), 200.0);
    let icon = if need.is_some() { 22.0 } else { 0.0 };
    let rect = Rect::from_min_size(pos2(x, y - 17.0), vec2(galley.size().x + icon + 20.0, 34.0));
    if rect.right() > limit {
        return None;
    }
    let response = widgets::press_chosen(ui, rect, &format!("{title}, {count}"), chosen);
    let fill = if chosen { *theme.ink } else { *theme.raised };
    ui.painter().rect(
        rect,
        5.0,
        fill,
        Stroke::new(1.0, *theme.edge),
        egui::StrokeKind::Inside,
    );
    if let Some(need) = need {
        let square = Rect::from_center_size(pos2(rect.left() + 17.0, y), vec2(15.0, 15.0));
        let colour = if chosen {
            *theme.raised
        } else {
            badge_colour(need.badge(), &theme)
        };
        badge(ui.painter(), square, need.badge(), colour, fill);
    }
    ui.painter().galley(
        pos2(rect.left() + 10.0 + icon, y - galley.size().y / 2.0),
        galley,
        colour,
    );
    if response.has_focus() {
        focus_ring(ui.painter(), rect, 5.0, &theme);
    }
    let pressed = response.clicked();
    response.on_hover_text(title);
    Some((rect.right(), pressed))
}

/// A place so wide shows every need's word.
const ROOM_FOR_WORDS: f32 = 1150.0;

/// Why the chosen athlete is where they are.
fn foot_ui(ui: &mut Ui, rect: Rect, line: Option<&RosterLine>) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let Some(line) = line else { return };
    let y = rect.center().y;
    let keys = [
        ("↑↓", "line"),
        ("Enter", "open"),
        ("X", "mark"),
        ("T", "type results"),
        ("N", "note"),
        ("E", "edit"),
    ];
    let mut right = rect.right() - 16.0;
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let shown = match rect.width() {
        wide if wide > 1100.0 => 0..6,
        wide if wide > 820.0 => 2..4,
        _ => 0..0,
    };
    for (key, words) in keys.get(shown).unwrap_or_default().iter().rev() {
        let words = letters(ui.painter(), pos2(right, y), Align2::RIGHT_CENTER, words, quiet);
        right = key_cap(
            ui.painter(),
            pos2(words.left() - 4.0, y),
            Align2::RIGHT_CENTER,
            key,
            *theme.ink2,
            &theme,
        )
        .left()
            - 10.0;
    }
    let name = Line::new(&line.name, Ink::new(Face::LabelStrong, size::BODY, *theme.ink))
        .on_one_line(ui.painter(), 220.0);
    let mut x = named_galley(ui, pos2(rect.left() + 20.0, y - name.size().y / 2.0), name).right() + 16.0;
    for (nth, (rail, why)) in line.why.iter().enumerate() {
        // Each side gets its part of what is left, so that a long sentence never takes the other's.
        let part = (right - x) / super::ladders::many(line.why.len() - nth);
        if part < 87.0 {
            break;
        }
        hand_disc(ui.painter(), pos2(x + 10.0, y), 10.0, *rail, &theme);
        x += 27.0;
        let galley = Line::new(why, Ink::new(Face::Label, 15.0, *theme.ink))
            .on_one_line(ui.painter(), part - 27.0 - 14.0);
        x = named_galley(ui, pos2(x, y - galley.size().y / 2.0), galley).right() + 14.0;
    }
}

/// A logbook without athletes.
fn empty_ui(ui: &mut Ui, rect: Rect, actions: &mut Actions) {
    let at = pos2(rect.center().x, rect.top() + 180.0);
    heading_centred(ui, at, "No athlete yet. Add one, or bring a spreadsheet.");
    let theme = Theme::of(ui);
    let key = Action::NewAthlete.key();
    let button = Button::main("New athlete").key(&key);
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(at.x - width / 2.0, at.y + 44.0), vec2(width, 36.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::NewAthlete);
    }
}
