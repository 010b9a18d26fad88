//! The roster, plain: everyone with need, rungs and verdicts, sorted by need, to choose an athlete from.

mod rows;

use std::collections::BTreeMap;

use egui::{Align2, Rect, Stroke, TextEdit, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::pen::{Ink, Line, letters, named_galley};
use crate::ui::theme::{Face, NARROW, Theme, size};
use crate::ui::views::{Need, Place, RosterLine, RosterView};
use crate::ui::widgets::{self, badge, badge_colour, focus_ring, hand_disc, key_cap};

use rows::{Columns, heads_ui, rows_ui};

use super::next::{header_bar, heading_centred};
use super::{Around, Screen};

/// The roster, with its view as last loaded.
#[derive(Default)]
pub struct RosterScreen {
    /// What is shown.
    pub view: RosterView,
    /// What it remembers.
    pub state: RosterState,
}

impl Screen for RosterScreen {
    fn context(&self) -> Context {
        Context::Roster
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.roster();
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        roster_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        self.state.perform(action, &self.view, actions);
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
    /// Bring the chosen line into view.
    bring: bool,
}

impl RosterState {
    /// Lines that pass the filter.
    pub fn shown<'a>(&self, view: &'a RosterView) -> Vec<&'a RosterLine> {
        let wanted = self.filter.trim().to_lowercase();
        view.lines
            .iter()
            .filter(|line| self.need.is_none_or(|need| line.need == need))
            .filter(|line| {
                wanted.is_empty()
                    || line.name.to_lowercase().contains(&wanted)
                    || line.ladder.to_lowercase().contains(&wanted)
            })
            .collect()
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &RosterView, actions: &mut Actions) {
        let lines = self.shown(view);
        let last = lines.len().saturating_sub(1);
        match action {
            Action::RowUp => self.chosen = self.chosen.min(last).saturating_sub(1),
            Action::RowDown => self.chosen = (self.chosen + 1).min(last),
            Action::NextGroup => {
                let now = lines.get(self.chosen).map(|line| line.need);
                let next = lines
                    .iter()
                    .enumerate()
                    .skip(self.chosen)
                    .find(|(_, line)| Some(line.need) != now);
                self.chosen = next.map_or(0, |(nth, _)| nth);
            }
            Action::OpenRow => {
                if let Some(line) = lines.get(self.chosen) {
                    actions.write(Deed::ChooseAthlete(line.athlete.clone()));
                    actions.ask(Action::Go(Place::Next));
                }
            }
            Action::FilterRoster | Action::Find => self.focus_filter = true,
            Action::Back => {
                self.filter.clear();
                self.need = None;
            }
            _ => return,
        }
        self.bring = true;
    }
}

/// Shows the roster in the whole of `ui`.
pub fn roster_ui(ui: &mut Ui, view: &RosterView, state: &mut RosterState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.raised);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 56.0 } else { 48.0 }));
    header_ui(ui, header, view, state);
    if view.lines.is_empty() {
        empty_ui(ui, whole, actions);
        return;
    }
    let columns = Columns::of(whole);
    let heads = Rect::from_min_size(header.left_bottom(), vec2(whole.width(), 28.0));
    heads_ui(ui, heads, &columns);
    let foot_height = if whole.height() > 420.0 { 46.0 } else { 0.0 };
    let rows = Rect::from_min_max(heads.left_bottom(), whole.max - vec2(0.0, foot_height));
    let lines = state.shown(view);
    state.chosen = state.chosen.min(lines.len().saturating_sub(1));
    rows_ui(ui, rows, &lines, &columns, state, actions);
    if foot_height > 0.0 {
        let foot = Rect::from_min_max(rows.left_bottom(), whole.max);
        foot_ui(ui, foot, lines.get(state.chosen).copied());
    }
}

/// Title, needs to pick, filter.
fn header_ui(ui: &mut Ui, rect: Rect, view: &RosterView, state: &mut RosterState) {
    let theme = Theme::of(ui);
    let room = header_bar(ui, rect, "Roster");
    let field_width = 150.0;
    let field = Rect::from_min_size(
        pos2(room.right() - field_width, room.center().y - 17.0),
        vec2(field_width, 34.0),
    );
    let edit = TextEdit::singleline(&mut state.filter)
        .hint_text("name or ladder")
        .align(egui::Align2::LEFT_CENTER);
    let response = ui.put(field, edit).accessible_name("Filter by name or ladder");
    if std::mem::take(&mut state.focus_filter) {
        response.request_focus();
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
    let mut counts: BTreeMap<Need, usize> = BTreeMap::new();
    for line in &view.lines {
        *counts.entry(line.need).or_default() += 1;
    }
    let mut x = room.left() - 4.0;
    let all = chip(
        ui,
        x,
        room.center().y,
        field.left() - 8.0,
        None,
        view.lines.len(),
        state.need.is_none(),
    );
    if let Some((right, pressed)) = all {
        x = right + 7.0;
        if pressed {
            state.need = None;
        }
    }
    for (need, count) in counts {
        let Some((right, pressed)) = chip(
            ui,
            x,
            room.center().y,
            field.left() - 8.0,
            Some(need),
            count,
            state.need == Some(need),
        ) else {
            break;
        };
        x = right + 7.0;
        if pressed {
            state.need = if state.need == Some(need) {
                None
            } else {
                Some(need)
            };
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
    let words = Line::new(title, Ink::new(Face::Label, 15.0, colour)).gap(
        6.0,
        &count.to_string(),
        Ink::new(Face::LabelStrong, 15.0, colour),
    );
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
    Some((rect.right(), response.clicked()))
}

/// Why the chosen athlete is where they are.
fn foot_ui(ui: &mut Ui, rect: Rect, line: Option<&RosterLine>) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 0.0, *theme.surface);
    ui.painter()
        .hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, *theme.line));
    let Some(line) = line else { return };
    let y = rect.center().y;
    let keys = [("↑↓", "line"), ("Enter", "open"), ("G", "next group")];
    let mut right = rect.right() - 16.0;
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    for (key, words) in keys.iter().rev().filter(|_| rect.width() > 820.0) {
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
fn empty_ui(ui: &mut Ui, rect: Rect, _actions: &mut Actions) {
    heading_centred(
        ui,
        pos2(rect.center().x, rect.top() + 180.0),
        "No athlete yet. Log a set or bring a spreadsheet, and they appear here.",
    );
}
