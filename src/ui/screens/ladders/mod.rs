//! Ladders: the two-rail ladder in full, and beside it the sheet of the chosen rung.

mod header;
mod others;
mod place;
mod rung_sheet;
mod state;
mod what_if;

pub(crate) use state::id_of;
pub use state::{LaddersState, Over};

use egui::{Align2, Rect, ScrollArea, Stroke, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed};
use crate::ui::pen::{Ink, Line, Pen, letters, named_galley};
use crate::ui::theme::{COMPACT, Face, NARROW, Theme, size};
use crate::ui::two_rail::layout::{Layout, Width};
use crate::ui::two_rail::{ghost, ladder_ui, part_names};
use crate::ui::views::{LadderView, LaddersView, Place};
use crate::ui::widgets::Button;
use crate::ui::workshop::WorkshopDeed;
use crate::units::Rail;

use super::{Around, Screen};
use crate::ui::screens::heading;

pub(crate) use crate::ui::two_rail::heights::many;

/// Ladders, with its view as last loaded.
#[derive(Default)]
pub struct LaddersScreen {
    /// What is shown.
    pub view: LaddersView,
    /// What it remembers.
    pub state: LaddersState,
}

impl Screen for LaddersScreen {
    fn context(&self) -> Context {
        if self.state.strength.is_open() {
            Context::Strength
        } else {
            Context::Ladders
        }
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.ladders();
    }

    fn ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
        self.state.less_motion = around.remembered.less_motion;
        self.state.read_only = around.read_only;
        ladders_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        if self.state.strength.is_open() {
            self.state.strength.perform(action, &self.view.strength);
            return;
        }
        if let Some(asked) = self.view.open.as_ref().and_then(|ladder| ladder.what_if.as_ref()) {
            what_if::perform(action, asked, actions);
        }
        if let (Action::EditLadder, Some(ladder)) = (action, &self.view.open) {
            actions.write(Deed::Workshop(WorkshopDeed::OpenLadder(ladder.id.clone())));
            actions.ask(Action::Go(Place::Workshop));
        }
        self.state.perform(action, self.view.open.as_ref());
    }

    fn has_sheet(&self) -> bool {
        self.state.over.is_some()
    }

    fn leave(&mut self) {
        self.state.over = None;
        self.state.strength.close();
    }
}

/// Shows Ladders in the whole of `ui`.
pub fn ladders_ui(ui: &mut Ui, view: &LaddersView, state: &mut LaddersState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 64.0 } else { 48.0 }));
    let main = Rect::from_min_max(header.left_bottom(), whole.max);
    match &view.open {
        Some(ladder) => {
            header::header_ui(ui, header, ladder, &view.strength, actions);
            state.keep_within(ladder);
            main_ui(ui, main, ladder, state, actions, wide);
        }
        None => empty_ui(ui, header, main, actions),
    }
    others::others_ui(ui, view, state, actions);
    state.strength.show(ui, &view.strength, actions);
    if let Some(ladder) = &view.open {
        place::place_ui(ui, ladder, state, actions);
    }
}

fn main_ui(
    ui: &mut Ui,
    main: Rect,
    view: &LadderView,
    state: &mut LaddersState,
    actions: &mut Actions,
    wide: bool,
) {
    let theme = Theme::of(ui);
    let sheet_width = if wide { 340.0 } else { 254.0 };
    let beside = main.width() >= COMPACT;
    let ladder_right = if beside {
        main.right() - sheet_width
    } else {
        main.right()
    };
    let all = main;
    let mut main = main;
    // A low window keeps its height for the rungs.
    if let Some(asked) = view.what_if.as_ref().filter(|_| main.height() > 420.0) {
        main.max.y -= what_if::HEIGHT;
        let bar = Rect::from_min_max(main.left_bottom(), pos2(ladder_right, all.bottom()));
        what_if::what_if_ui(ui, bar, asked, actions);
    }
    let roomy = ladder_right - main.left() > 820.0;
    let width = if roomy { Width::Full } else { Width::Narrow };
    let top = if view.broken.is_some() { 74.0 } else { 30.0 };
    let area = Rect::from_min_max(
        main.min + vec2(16.0, top),
        pos2(ladder_right - 16.0, main.bottom() - 22.0),
    );
    if let Some(broken) = &view.broken {
        broken_ui(
            ui,
            Rect::from_min_max(
                main.min + vec2(16.0, 8.0),
                pos2(ladder_right - 16.0, main.top() + 42.0),
            ),
            broken,
        );
    }
    let mut layout = Layout::of(view, area, width, state.scroll);
    part_names(ui, view, &mut layout);
    column_heads(ui, view, &layout, area.top() - 14.0, roomy);
    let touch = ladder_ui(ui, view, &layout, width, state.chosen, state.less_motion);
    if let Some(asked) = &view.what_if {
        let painter = ui.painter_at(layout.area.expand(14.0));
        for (rail, interval) in &asked.ghosts {
            ghost(&painter, *interval, *rail, &layout, &theme);
        }
    }
    state.height = area.height();
    if let Some(spot) = touch.chosen {
        state.chosen = Some(spot);
        state.sheet_open = !beside;
    }
    if touch.scrolled != 0.0 {
        state.scroll = (state.scroll + touch.scrolled).clamp(0.0, layout.scroll_max);
    }
    state.follow(view, &layout);
    if beside {
        let place = Rect::from_min_max(pos2(ladder_right, main.top()), all.max);
        ui.painter().rect_filled(place, 0.0, *theme.surface);
        ui.painter()
            .vline(place.left() + 0.5, place.y_range(), Stroke::new(1.0, *theme.line));
        side_ui(ui, place, view, state, actions);
    } else if state.sheet_open {
        let title = state
            .chosen
            .and_then(|spot| state::title_of(view, spot))
            .unwrap_or_default();
        let closed = super::sheet::SheetFrame::new(&title).show(ui, |ui| {
            let width = ui.available_width();
            let area = Rect::from_min_size(ui.cursor().min, vec2(width, 0.0));
            let height = Pen::measure(ui, width, |pen| rung_sheet::write(pen, view, state.chosen));
            rung_sheet::write(&mut Pen::new(ui, area), view, state.chosen);
            ui.advance_cursor_after_rect(area.with_max_y(area.top() + height + 8.0));
            let pressed = Button::main("Place a hand here").key("P").flow(ui).clicked();
            if pressed {
                actions.ask(Action::PlaceHand);
            }
            pressed
        });
        state.sheet_open &= !closed;
    }
}

/// What the columns are.
fn column_heads(ui: &mut Ui, view: &LadderView, layout: &Layout, y: f32, roomy: bool) {
    let theme = Theme::of(ui);
    let quiet = Ink::new(Face::Label, size::TABLE, *theme.ink2);
    let painter = ui.painter();
    let (left, right) = (layout.rails[0], layout.rails[1]);
    if view.sided {
        let side = |rail| Ink::new(Face::LabelStrong, size::TABLE, theme.rail(rail));
        letters(
            painter,
            pos2(left + 8.0, y),
            Align2::LEFT_CENTER,
            "left hand",
            side(Rail::Left),
        );
        letters(
            painter,
            pos2(right - 8.0, y),
            Align2::RIGHT_CENTER,
            "right hand",
            side(Rail::Right),
        );
    } else {
        letters(
            painter,
            pos2(layout.middle(), y),
            Align2::CENTER_CENTER,
            "both hands",
            Ink::new(Face::LabelStrong, size::TABLE, *theme.steel),
        );
    }
    letters(
        painter,
        pos2(right + 28.0, y),
        Align2::LEFT_CENTER,
        "demand",
        quiet,
    );
    letters(
        painter,
        pos2(right + 90.0, y),
        Align2::LEFT_CENTER,
        if layout.one_line || !roomy {
            "rung"
        } else {
            "rung and its standard"
        },
        quiet,
    );
    if roomy && !(view.companions.is_empty() && view.branches.is_empty()) {
        letters(
            painter,
            pos2(left - 42.0, y),
            Align2::RIGHT_CENTER,
            "companions and branches",
            quiet,
        );
    }
}

/// The ladder's file is broken: the last good version is drawn.
fn broken_ui(ui: &mut Ui, rect: Rect, words: &str) {
    let theme = Theme::of(ui);
    ui.painter().rect_filled(rect, 5.0, *theme.plum_wash);
    ui.painter().rect_filled(
        Rect::from_min_size(rect.min, vec2(4.0, rect.height())),
        0.0,
        *theme.plum,
    );
    let line = format!("{words} The last good version is shown.");
    let galley = Line::new(&line, Ink::new(Face::Label, 15.0, *theme.ink))
        .on_one_line(ui.painter(), rect.width() - 24.0);
    named_galley(
        ui,
        pos2(rect.left() + 14.0, rect.center().y - galley.size().y / 2.0),
        galley,
    );
}

/// The sheet of the chosen rung, and what can be done with it.
fn side_ui(ui: &mut Ui, rect: Rect, view: &LadderView, state: &mut LaddersState, actions: &mut Actions) {
    let foot = Rect::from_min_max(
        pos2(rect.left() + 20.0, rect.bottom() - 56.0),
        pos2(rect.right() - 20.0, rect.bottom() - 16.0),
    );
    let body = Rect::from_min_max(
        rect.min + vec2(20.0, 14.0),
        pos2(rect.right() - 8.0, foot.top() - 10.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(body));
    ScrollArea::vertical()
        .id_salt("rung")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            let area = Rect::from_min_size(ui.cursor().min, vec2(body.width() - 14.0, 0.0));
            let height = Pen::measure(ui, area.width(), |pen| rung_sheet::write(pen, view, state.chosen));
            rung_sheet::write(&mut Pen::new(ui, area), view, state.chosen);
            ui.allocate_rect(area.with_max_y(area.top() + height), egui::Sense::hover());
        });
    if state.chosen.is_none() {
        return;
    }
    let narrow = foot.width() < 280.0;
    let caps = |action: Action| if narrow { String::new() } else { action.key() };
    let aside = if narrow { 94.0 } else { 124.0 };
    let place = Rect::from_min_max(foot.min, pos2(foot.right() - aside - 8.0, foot.bottom()));
    if Button::plain("Place a hand")
        .key(&caps(Action::PlaceHand))
        .show_for_writing(ui, place, state.read_only)
    {
        actions.ask(Action::PlaceHand);
    }
    let place = Rect::from_min_max(pos2(foot.right() - aside, foot.top()), foot.max);
    if Button::plain("Set aside")
        .key(&caps(Action::SetAside))
        .show_for_writing(ui, place, state.read_only)
    {
        actions.ask(Action::SetAside);
    }
}

/// The athlete is on no ladder.
fn empty_ui(ui: &mut Ui, header: Rect, main: Rect, actions: &mut Actions) {
    let theme = Theme::of(ui);
    heading::bar(ui, header, "Ladders");
    let centre = main.center_top() + vec2(0.0, 60.0);
    crate::ui::two_rail::rails_between(
        ui.painter(),
        &[centre.x - 122.0, centre.x + 122.0],
        12.0,
        centre.y..=centre.y + 240.0,
        &theme,
    );
    for nth in 0..5u8 {
        let y = centre.y + 30.0 + 45.0 * f32::from(nth);
        crate::ui::two_rail::rung_open(
            ui.painter(),
            Rect::from_center_size(pos2(centre.x, y), vec2(232.0, 12.0)),
            &theme,
        );
    }
    heading::centred(
        ui,
        centre + vec2(0.0, 260.0),
        "No ladder yet. Choose one to climb; you can be on several.",
    );
    let button = Button::main("Choose a ladder").key("O");
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(centre.x - width / 2.0, centre.y + 296.0), vec2(width, 38.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::OtherLadder);
    }
}
