//! The window as a whole: asks the keys, draws, then performs what was asked. It holds what outlives a frame and nothing of the
//! trade.

mod clocks;
mod perform;
mod pick;
mod remembered;
mod run;
mod shown;

pub use pick::{Pick, PickPath};
pub use remembered::Remembered;
pub use run::run;

use egui::{Rect, Ui, UiBuilder, pos2};

use super::action::{Actions, Context};
use super::book::{Book, News};
use super::frame::{column_width, frame_ui};
use super::keys;
use super::palette::{Palette, keys_ui, palette_ui};
use super::screens::at_the_bar::{BarState, bar_ui};
use super::screens::first::{FirstState, first_ui};
use super::screens::import::{ImportState, import_ui};
use super::screens::next::NextState;
use super::screens::{Around, Screen, Screens};
use super::sound::Play;
use super::views::{Banner, Place};
use clocks::Clocks;
use pick::Picking;
use shown::Shown;

/// The window's content; [`run`] puts it into a window of the system, a test into a harness.
pub struct Window<B> {
    /// What stands behind it.
    pub book: B,
    /// What is kept between starts.
    pub remembered: Remembered,
    shown: Shown,
    screens: Screens,
    first: FirstState,
    bar: Option<BarState>,
    /// A spreadsheet being brought, over everything.
    import: Option<ImportState>,
    palette: Option<Palette>,
    keys_open: bool,
    /// A line over the place, until the next action: what failed, or a new best.
    message: Option<Message>,
    clocks: Clocks,
    picking: Picking,
    /// Since when long work is waited for.
    waits_from: Option<f64>,
}

#[derive(Debug, Clone, PartialEq)]
struct Message {
    words: String,
    is_bad: bool,
}

/// Work that takes longer is shown, with a button that stops it.
const SHOWN_AFTER_SECS: f64 = 0.2;

impl<B: Book> Window<B> {
    /// A window on `book`, as it was left.
    pub fn new(book: B, remembered: Remembered) -> Self {
        Self {
            book,
            remembered,
            shown: Shown::default(),
            screens: Screens::default(),
            first: FirstState::default(),
            bar: None,
            import: None,
            palette: None,
            keys_open: false,
            message: None,
            clocks: Clocks::default(),
            picking: Picking::default(),
            waits_from: None,
        }
    }

    /// Sounds go to `play`; `None` where the system can play none.
    pub fn with_sound(mut self, play: Option<Play>) -> Self {
        self.clocks.play = play;
        self
    }

    /// A folder or a file is asked for by `pick`.
    pub fn with_picker(mut self, pick: PickPath) -> Self {
        self.picking = Picking::by(pick);
        self
    }

    /// The place that is open.
    pub fn place(&self) -> Place {
        self.remembered.place
    }

    /// What Next remembers, for tests.
    pub fn next_state(&self) -> &NextState {
        &self.screens.next.state
    }

    /// Looks for what came from outside, and keeps clocks going. Draws nothing.
    pub fn logic(&mut self, ctx: &egui::Context) {
        self.screens.next.state.now = ctx.input(|input| input.time);
        match self.book.poll() {
            News::Ended(deed, done) => self.came(ctx, deed, done),
            News::Changed | News::None => {}
        }
        if let Some((pick, path)) = self.picking.take() {
            self.picked(pick, path);
        }
        let shown = self.bar.is_some() || self.remembered.place == Place::Next;
        self.clocks
            .go_on(ctx, &self.screens.next, &self.remembered, shown);
    }

    /// Draws everything, then performs what was asked.
    pub fn ui(&mut self, ui: &mut Ui) {
        let context = self.context();
        let mut actions = Actions::default();
        // A running hold is stopped by any key, before keys mean anything else.
        let next = &mut self.screens.next;
        let holds = self.bar.is_none() && next.state.holding().is_some() && any_key(ui);
        if holds {
            next.state.stop_hold(&next.view, &mut actions);
        } else if self.palette.is_none() && !self.has_sheet() {
            actions.asked = keys::pressed(ui.ctx(), context, self.remembered.single_keys);
        } else {
            actions.asked = keys::pressed(ui.ctx(), Context::Everywhere, self.remembered.single_keys);
        }
        self.shown
            .load(&self.book, self.remembered.place, &mut self.screens);
        self.draw(ui, context, &mut actions);
        self.perform(ui.ctx(), actions);
    }

    fn has_sheet(&mut self) -> bool {
        self.keys_open || (self.import.is_none() && self.book.is_open() && self.screen().has_sheet())
    }

    fn screen(&mut self) -> &mut dyn Screen {
        self.screens.of(self.remembered.place)
    }

    fn context(&mut self) -> Context {
        if self.import.is_some() {
            Context::Import
        } else if !self.book.is_open() {
            Context::First
        } else if self.bar.is_some() {
            Context::Bar
        } else {
            self.screen().context()
        }
    }

    fn draw(&mut self, ui: &mut Ui, context: Context, actions: &mut Actions) {
        let whole = ui.ctx().content_rect();
        if let Some(import) = &mut self.import {
            let mut child = part(ui, whole, "import");
            if import_ui(&mut child, self.shown.import.as_ref(), import, actions) {
                self.import = None;
            }
        } else if context == Context::First && self.book.progress().is_some() {
            shown::opening_ui(ui, whole);
        } else if context == Context::First {
            let mut child = part(ui, whole, "first");
            first_ui(&mut child, &self.shown.first, &mut self.first, actions);
        } else if let Some(bar) = &mut self.bar {
            let mut child = part(ui, whole, "bar");
            let next = &mut self.screens.next;
            bar_ui(&mut child, &next.view, &mut next.state, bar, actions);
        } else {
            let column =
                Rect::from_min_size(whole.min, egui::vec2(column_width(whole.width()), whole.height()));
            let place = Rect::from_min_max(pos2(column.right(), whole.top()), whole.max);
            frame_ui(
                &mut part(ui, column, "frame"),
                column,
                &self.shown.frame,
                self.remembered.place,
                actions,
            );
            let place = self.banner(ui, place);
            let mut child = part(ui, place, self.remembered.place.title());
            let around = Around {
                now: self.screens.next.state.now,
                remembered: &self.remembered,
                can_play: self.clocks.play.is_some(),
                read_only: matches!(self.shown.frame.banner, Some(Banner::ReadOnly(_))),
            };
            self.screens
                .of(self.remembered.place)
                .ui(&mut child, &around, actions);
        }
        self.overlays(ui, context, actions);
    }

    fn overlays(&mut self, ui: &Ui, context: Context, actions: &mut Actions) {
        if let Some(palette) = &mut self.palette
            && palette_ui(ui, palette, context, &self.shown.frame.places, actions)
        {
            self.palette = None;
        }
        if self.keys_open && keys_ui(ui, context, &self.shown.frame.places) {
            self.keys_open = false;
        }
        self.long_work(ui);
    }

    /// Long work: nothing for a fifth of a second, then how far it is.
    fn long_work(&mut self, ui: &Ui) {
        let Some((title, done, of)) = self.book.progress() else {
            self.waits_from = None;
            return;
        };
        let now = self.screens.next.state.now;
        let waited = now - *self.waits_from.get_or_insert(now);
        if waited < SHOWN_AFTER_SECS {
            let left = std::time::Duration::from_secs_f64(SHOWN_AFTER_SECS - waited);
            ui.ctx().request_repaint_after(left);
        } else if shown::progress_ui(ui, &title, done, of) {
            self.book.stop();
        }
    }

    /// Bars above the place: read-only, broken files, what was just said. Returns what is left for the place.
    fn banner(&mut self, ui: &mut Ui, place: Rect) -> Rect {
        let mut top = place.top();
        let message = self.message.clone();
        let lines = shown::bars(
            self.shown.frame.banner.as_ref(),
            message
                .as_ref()
                .map(|message| (message.words.as_str(), message.is_bad)),
        );
        for line in lines {
            let rect = Rect::from_min_size(pos2(place.left(), top), egui::vec2(place.width(), 34.0));
            shown::bar_ui(ui, rect, &line);
            top = rect.bottom();
        }
        place.with_min_y(top)
    }
}

/// A part of the window with an id of its own.
fn part(ui: &mut Ui, rect: Rect, name: &str) -> Ui {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt(name));
    child.set_clip_rect(rect);
    child
}

fn any_key(ui: &Ui) -> bool {
    ui.input(|input| {
        input.events.iter().any(|event| {
            matches!(
                event,
                egui::Event::Key {
                    pressed: true,
                    repeat: false,
                    ..
                }
            )
        })
    })
}
