//! The Workshop: ladders as text, checked while they are typed, and drawn beside it as they will be climbed.

mod coloured;
mod drawing;
mod folded;
mod list;
mod mistakes;
mod sheets;
mod state;
mod text;

pub use state::{Jump, Over, WorkshopState};

use egui::{Rect, Stroke, Ui, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::Book;
use crate::ui::pen::{Ink, Line, named_galley};
use crate::ui::screens::heading;
use crate::ui::theme::{COMPACT, Face, NARROW, Theme, size};
use crate::ui::views::{FileView, WorkshopView};
use crate::ui::widgets::Button;
use crate::ui::workshop::WorkshopDeed;

use super::{Around, Screen};

/// From this width of its own on the list has room beside the text.
const WITH_LIST: f32 = 1150.0;
/// Height of the line over the text.
const STRIP: f32 = 34.0;

/// The Workshop, with its view as last loaded.
#[derive(Default)]
pub struct WorkshopScreen {
    /// What is shown.
    pub view: WorkshopView,
    /// What it remembers.
    pub state: WorkshopState,
}

impl WorkshopScreen {
    /// A deed is done.
    pub fn done(&mut self, deed: &WorkshopDeed) {
        match deed {
            WorkshopDeed::New(_) | WorkshopDeed::Open(_) => self.state.over = None,
            _ => {}
        }
    }
}

impl Screen for WorkshopScreen {
    fn context(&self) -> Context {
        Context::Workshop
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.workshop();
        self.state.load(&self.view);
    }

    fn ui(&mut self, ui: &mut Ui, _around: &Around<'_>, actions: &mut Actions) {
        workshop_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        self.state.perform(action, &self.view, actions);
    }

    fn has_sheet(&self) -> bool {
        self.state.over.is_some() || self.view.asks.is_some()
    }

    fn leave(&mut self) {
        self.state.over = None;
    }
}

/// Shows the Workshop in the whole of `ui`.
pub fn workshop_ui(ui: &mut Ui, view: &WorkshopView, state: &mut WorkshopState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let wide = ui.ctx().content_rect().width() >= NARROW;
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 64.0 } else { 48.0 }));
    let mut main = Rect::from_min_max(header.left_bottom(), whole.max);
    let Some(open) = &view.open else {
        heading::bar(ui, header, "Workshop");
        return;
    };
    let beside = main.width() >= COMPACT;
    state.has_list = main.width() >= WITH_LIST;
    header_ui(ui, header, view, open, state, beside, actions);
    if state.has_list {
        let list = main.with_max_x(main.left() + 216.0);
        list::list_ui(ui, list, view, state, actions);
        main.min.x = list.right();
    }
    if beside {
        let width = if main.width() >= 980.0 { 430.0 } else { 372.0 };
        let drawing = main.with_min_x(main.right() - width);
        pane_ui(ui, main.with_max_x(drawing.left()), open, state, actions);
        drawing::drawing_ui(ui, drawing, open, state, actions);
        ui.painter().vline(
            drawing.left() + 0.5,
            drawing.y_range(),
            Stroke::new(1.0, *theme.line),
        );
    } else if state.shows_ladder {
        drawing::drawing_ui(ui, main, open, state, actions);
    } else {
        pane_ui(ui, main, open, state, actions);
    }
    sheets::sheets_ui(ui, view, state, actions);
}

/// What can be done with the file; what has no room has its key still.
fn header_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &WorkshopView,
    open: &FileView,
    state: &WorkshopState,
    beside: bool,
    actions: &mut Actions,
) {
    let theme = Theme::of(ui);
    let room = heading::bar(ui, rect, "Workshop");
    let mut offered: Vec<(&str, Action)> = Vec::new();
    if !beside {
        let title = if state.shows_ladder { "Text" } else { "Ladder" };
        offered.push((title, Action::TextOrLadder));
    }
    if !state.has_list {
        offered.push(("Other ladder", Action::OtherLadder));
    }
    offered.push(("New ladder", Action::NewLadder));
    if open.can_copy {
        offered.push(("Copy to an own one", Action::CopyLadder));
    }
    offered.push((if state.folded { "Unfold" } else { "Fold" }, Action::FoldRungs));
    if view.can_take_back {
        offered.push(("Bring back", Action::Undo));
    }
    if open.unsaved && !open.is_new {
        offered.push(("Back to saved", Action::ThrowAway));
    }
    if open.can_delete {
        offered.push(("Delete", Action::DeleteLadder));
    }
    let mut right = room.right();
    for (title, action) in offered {
        let key = action.key();
        let button = Button::plain(title).key(&key);
        let width = button.width(ui.painter(), &theme);
        let place = Rect::from_min_size(pos2(right - width, room.center().y - 17.0), vec2(width, 34.0));
        if place.left() < room.left() + 4.0 {
            break;
        }
        if button.show(ui, place).clicked() {
            actions.ask(action);
        }
        right = place.left() - 8.0;
    }
}

/// The text with the line over it and its mistakes below.
fn pane_ui(ui: &mut Ui, rect: Rect, open: &FileView, state: &mut WorkshopState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let strip = Rect::from_min_size(rect.min, vec2(rect.width(), STRIP));
    ui.painter().rect_filled(strip, 0.0, *theme.surface);
    ui.painter().hline(
        strip.x_range(),
        strip.bottom() - 0.5,
        Stroke::new(1.0, *theme.line),
    );
    let ink = |colour| Ink::new(Face::Label, size::TABLE, colour);
    let colour = if open.unsaved { *theme.ember } else { *theme.ink2 };
    let state_words = Line::new(&open.state, ink(colour)).squeezed(ui.painter(), strip.width() * 0.62);
    let width = state_words.size().x;
    let middle = |height: f32| strip.center().y - height / 2.0;
    let at = pos2(strip.right() - 14.0 - width, middle(state_words.size().y));
    named_galley(ui, at, state_words);
    let file = Line::new(&open.file, Ink::new(Face::LabelStrong, 15.0, *theme.ink))
        .squeezed(ui.painter(), strip.width() - width - 44.0);
    named_galley(ui, pos2(strip.left() + 16.0, middle(file.size().y)), file);
    let low = mistakes::height(open, rect.height());
    let text = Rect::from_min_max(strip.left_bottom(), pos2(rect.right(), rect.bottom() - low));
    if state.folded {
        folded::folded_ui(ui, text, open, state);
    } else {
        text::text_ui(ui, text, open, state, actions);
    }
    let list = Rect::from_min_max(text.left_bottom(), rect.max);
    mistakes::mistakes_ui(ui, list, open, state, actions);
}
