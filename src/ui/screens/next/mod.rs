//! Next: today's prescriptions of each rail, the belt, the warm-up, and a dock that logs with one tap.

mod card;
mod dock;
mod header;
mod sheets;
mod side;
mod state;
mod words;

use card::Room;
pub use state::{Held, NextState, Rail2, Sheet, typed_number};
pub use words::{done_words, log_title, number};

use egui::{Rect, ScrollArea, Ui, UiBuilder, pos2, vec2};

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::Book;
use crate::ui::theme::{COMPACT, NEXT_WIDE, Theme};
use crate::ui::two_rail::ladder_ui;
use crate::ui::two_rail::layout::{Layout, Width};
use crate::ui::views::{LadderCards, LadderView, NextView};
use crate::ui::widgets::Button;

use super::{Around, Screen, heading};

/// Next, with its view as last loaded.
#[derive(Default)]
pub struct NextScreen {
    /// What is shown.
    pub view: NextView,
    /// What it remembers.
    pub state: NextState,
}

impl Screen for NextScreen {
    fn context(&self) -> Context {
        Context::Next
    }

    fn load(&mut self, book: &dyn Book) {
        self.view = book.next();
    }

    fn ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions) {
        self.state.less_motion = around.remembered.less_motion;
        self.state.read_only = around.read_only;
        next_ui(ui, &self.view, &mut self.state, actions);
    }

    fn perform(&mut self, action: Action, actions: &mut Actions) {
        self.state.perform(action, &self.view, actions);
    }

    fn has_sheet(&self) -> bool {
        self.state.sheet.is_some()
    }

    fn leave(&mut self) {
        self.state.sheet = None;
    }
}

/// Room between a pair of cards for the strip of rungs.
const STRIP: f32 = 232.0;
const STRIP_NARROW: f32 = 166.0;
const SIDE: f32 = 300.0;

/// Shows Next in the whole of `ui`.
pub fn next_ui(ui: &mut Ui, view: &NextView, state: &mut NextState, actions: &mut Actions) {
    let theme = Theme::of(ui);
    let whole = ui.max_rect();
    let (wide, compact) = (whole.width() >= NEXT_WIDE, whole.width() < COMPACT);
    ui.painter().rect_filled(whole, 0.0, *theme.bench);
    let header = Rect::from_min_size(whole.min, vec2(whole.width(), if wide { 60.0 } else { 48.0 }));
    header::header_ui(ui, header, view, state, actions, wide, compact);
    state.card = if view.card(state.card).is_some() {
        state.card
    } else {
        0
    };
    let dock_height = if view.card(0).is_some() {
        dock::height(whole.width(), wide)
    } else {
        0.0
    };
    // In a window as low as a magnified laptop's the dock would leave no room: then it scrolls with the cards.
    let floats = whole.height() - header.height() - dock_height > 190.0;
    let dock_top = if floats {
        whole.bottom() - dock_height
    } else {
        whole.bottom()
    };
    let main = Rect::from_min_max(header.left_bottom(), pos2(whole.right(), dock_top));
    main_ui(
        ui,
        main,
        view,
        state,
        actions,
        (wide, compact),
        (!floats).then_some(dock_height),
    );
    if floats {
        let dock = Rect::from_min_max(pos2(whole.left(), dock_top), whole.max);
        dock::dock_ui(ui, dock, view, state, actions, wide);
    }
    sheets::sheets_ui(ui, view, state, actions);
}

fn main_ui(
    ui: &mut Ui,
    main: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
    (wide, compact): (bool, bool),
    dock_inside: Option<f32>,
) {
    let margin = if wide { 20.0 } else { 12.0 };
    let top = if wide { 15.0 } else { 10.0 };
    let cards_right = if wide {
        main.right() - margin - SIDE - 16.0
    } else {
        main.right() - margin
    };
    let cards = Rect::from_min_max(main.min + vec2(margin, top), pos2(cards_right, main.bottom()));
    if wide {
        let side = Rect::from_min_max(
            pos2(cards.right() + 16.0, cards.top()),
            pos2(main.right() - margin, main.bottom() - 15.0),
        );
        side::side_ui(ui, side, view, state, actions);
    }
    // The bar stands in the middle of the gap beside the cards.
    let bar = if wide { 10.0 } else { margin };
    let mut child = ui.new_child(UiBuilder::new().max_rect(cards.with_max_x(cards.right() + bar)));
    ScrollArea::vertical()
        .id_salt("cards")
        .auto_shrink(false)
        .show(&mut child, |ui| {
            let left_top = ui.cursor().min;
            let area = Rect::from_min_size(left_top, vec2(cards.width(), cards.height()));
            let mut bottom = groups_ui(ui, area, view, state, actions, wide, compact);
            if let Some(height) = dock_inside {
                let dock = Rect::from_min_size(pos2(main.left(), bottom + 8.0), vec2(main.width(), height));
                ui.set_clip_rect(ui.clip_rect().expand2(vec2(margin, 0.0)));
                dock::dock_ui(ui, dock, view, state, actions, wide);
                bottom = dock.bottom();
            }
            ui.allocate_rect(
                Rect::from_min_max(left_top, pos2(area.right(), bottom)),
                egui::Sense::hover(),
            );
        });
}

/// All ladders from the top down; the last but one's room grows so that the window is filled.
fn groups_ui(
    ui: &mut Ui,
    area: Rect,
    view: &NextView,
    state: &mut NextState,
    actions: &mut Actions,
    wide: bool,
    compact: bool,
) -> f32 {
    if view.ladders.is_empty() {
        return empty_ui(ui, area, actions);
    }
    let gap = if wide { 15.0 } else { 10.0 };
    let mut planned = |chips| -> (Vec<Plan>, f32) {
        let room = Room { wide, chips };
        let plans = view.ladders.iter();
        let plans: Vec<Plan> = plans
            .map(|ladder| Plan::of(ui, ladder, area.width(), room, compact))
            .collect();
        let needed = plans.iter().map(|plan| plan.height + gap).sum::<f32>();
        (plans, needed)
    };
    let (mut plans, mut needed) = planned(true);
    if needed > area.height() {
        (plans, needed) = planned(false);
    }
    let spare = (area.height() - needed).max(0.0);
    let mut y = area.top();
    let mut nth = 0;
    for (index, (ladder, plan)) in view.ladders.iter().zip(&plans).enumerate() {
        let most = if view.ladders.len() == 1 { spare } else { 140.0 };
        let grows = if index == 0 { spare.min(most) } else { 0.0 };
        let rect = Rect::from_min_size(pos2(area.left(), y), vec2(area.width(), plan.height + grows));
        group_ui(ui, rect, ladder, plan, nth, state, actions);
        nth += ladder.cards.len();
        y = rect.bottom() + gap;
    }
    y - gap
}

/// How the cards of one ladder lie.
struct Plan {
    height: f32,
    card_width: f32,
    strip: f32,
    stacked: bool,
    room: Room,
}

impl Plan {
    fn of(ui: &mut Ui, ladder: &LadderCards, width: f32, room: Room, compact: bool) -> Self {
        let strip = match (&ladder.strip, room.wide, compact) {
            (None, ..) | (_, _, true) => 0.0,
            (_, true, _) => STRIP,
            (_, false, _) => STRIP_NARROW,
        };
        let pair = ladder.cards.len() > 1;
        let stacked = pair && compact;
        let card_width = match (pair, stacked) {
            (true, false) => (width - strip.max(12.0)) / 2.0,
            (_, _) => width - if pair { 0.0 } else { strip },
        };
        let heights = ladder
            .cards
            .iter()
            .map(|card| card::height(ui, card, card_width, room));
        let height = if stacked {
            heights.map(|height| height + 8.0).sum::<f32>()
        } else {
            heights.fold(0.0, f32::max)
        };
        let least = if strip > 0.0 && pair { 290.0 } else { 0.0 };
        Self {
            height: height.max(least),
            card_width,
            strip,
            stacked,
            room,
        }
    }
}

fn group_ui(
    ui: &mut Ui,
    rect: Rect,
    ladder: &LadderCards,
    plan: &Plan,
    first: usize,
    state: &mut NextState,
    actions: &mut Actions,
) {
    let mut y = rect.top();
    let heights: Vec<f32> = if plan.stacked {
        ladder
            .cards
            .iter()
            .map(|card| card::height(ui, card, plan.card_width, plan.room))
            .collect()
    } else {
        ladder.cards.iter().map(|_| rect.height()).collect()
    };
    for (nth, (card, height)) in ladder.cards.iter().zip(heights).enumerate() {
        let x = if nth > 0 && !plan.stacked {
            rect.right() - plan.card_width
        } else {
            rect.left()
        };
        let place = Rect::from_min_size(pos2(x, y), vec2(plan.card_width, height));
        card::card_ui(ui, place, card, first + nth, plan.room, state, actions);
        if plan.stacked {
            y += height + 8.0;
        }
    }
    if let Some(strip) = ladder.strip.as_ref().filter(|_| plan.strip > 0.0) {
        let left = if ladder.cards.len() > 1 {
            rect.left() + plan.card_width
        } else {
            rect.right() - plan.strip
        };
        let place = Rect::from_min_size(pos2(left, rect.top()), vec2(plan.strip, rect.height()));
        strip_ui(ui, place, strip, state.less_motion);
    }
}

/// The rungs around the hands: four, the hands low among them.
fn strip_ui(ui: &mut Ui, rect: Rect, view: &LadderView, still: bool) {
    let area = rect.shrink2(vec2(6.0, 0.0));
    let layout = Layout::of(view, area, Width::Strip, 0.0);
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect));
    child.shrink_clip_rect(rect);
    ladder_ui(&mut child, view, &layout, Width::Strip, None, still);
}

/// Nobody is on a ladder yet: an outline, a sentence, a button.
fn empty_ui(ui: &mut Ui, area: Rect, actions: &mut Actions) -> f32 {
    let theme = Theme::of(ui);
    let centre = pos2(area.center().x, area.top() + 60.0);
    crate::ui::two_rail::rails_between(
        ui.painter(),
        &[centre.x - 74.0, centre.x + 74.0],
        12.0,
        centre.y - 20.0..=centre.y + 180.0,
        &theme,
    );
    for rung in 0..4u8 {
        let y = centre.y + 10.0 + f32::from(rung) * 45.0;
        let rect = Rect::from_center_size(pos2(centre.x, y), vec2(136.0, 12.0));
        crate::ui::two_rail::rung_open(ui.painter(), rect, &theme);
    }
    let words = "On no ladder yet. Choose one; what to do next follows.";
    heading::centred(ui, pos2(centre.x, centre.y + 200.0), words);
    let button = Button::main("Choose a ladder");
    let width = button.width(ui.painter(), &theme);
    let rect = Rect::from_min_size(pos2(centre.x - width / 2.0, centre.y + 236.0), vec2(width, 38.0));
    if button.show(ui, rect).clicked() {
        actions.ask(Action::Go(crate::ui::views::Place::Ladders));
        actions.ask(Action::OtherLadder);
    }
    rect.bottom() + 12.0
}
