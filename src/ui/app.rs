//! The window as a whole: asks the keys, draws, then performs what was asked. It holds what outlives a frame and nothing of the
//! trade.

mod perform;
mod remembered;
mod shown;

pub use remembered::Remembered;

use egui::{Rect, Ui, UiBuilder, pos2};

use super::action::{Actions, Context};
use super::book::Book;
use super::frame::{column_width, frame_ui};
use super::keys;
use super::palette::{Palette, keys_ui, palette_ui};
use super::screens::at_the_bar::{BarState, bar_ui};
use super::screens::first::{FirstState, first_ui};
use super::screens::ladders::{LaddersState, Over, ladders_ui};
use super::screens::next::{NextState, next_ui};
use super::screens::roster::{RosterState, roster_ui};
use super::theme;
use super::views::Place;
use shown::Shown;

/// Something the person should hear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sound {
    /// A second of the count-in.
    Tick,
    /// The hold begins, or rest is over.
    Go,
}

/// The window's content; [`run`] puts it into a window of the system, a test into a harness.
pub struct Window<B> {
    /// What stands behind it.
    pub book: B,
    /// What is kept between starts.
    pub remembered: Remembered,
    shown: Shown,
    next: NextState,
    ladders: LaddersState,
    roster: RosterState,
    first: FirstState,
    bar: Option<BarState>,
    palette: Option<Palette>,
    keys_open: bool,
    /// A line over the place, until the next action: what failed, or a new best.
    message: Option<Message>,
    /// Plays a sound, where the system can.
    sound: Box<dyn FnMut(Sound)>,
    /// Asks the person for a folder.
    pick_folder: Box<dyn FnMut() -> Option<std::path::PathBuf>>,
    last_tick: i64,
}

#[derive(Debug, Clone, PartialEq)]
struct Message {
    words: String,
    is_bad: bool,
}

impl<B: Book> Window<B> {
    /// A window on `book`, as it was left.
    pub fn new(book: B, remembered: Remembered) -> Self {
        Self {
            book,
            remembered,
            shown: Shown::default(),
            next: NextState::default(),
            ladders: LaddersState::default(),
            roster: RosterState::default(),
            first: FirstState::default(),
            bar: None,
            palette: None,
            keys_open: false,
            message: None,
            sound: Box::new(|_| {}),
            pick_folder: Box::new(|| None),
            last_tick: i64::MIN,
        }
    }

    /// Sounds go to `play`.
    pub fn with_sound(mut self, play: impl FnMut(Sound) + 'static) -> Self {
        self.sound = Box::new(play);
        self
    }

    /// A folder is asked for by `pick`.
    pub fn with_folder_picker(mut self, pick: impl FnMut() -> Option<std::path::PathBuf> + 'static) -> Self {
        self.pick_folder = Box::new(pick);
        self
    }

    /// The place that is open.
    pub fn place(&self) -> Place {
        self.remembered.place
    }

    /// What Next remembers, for tests.
    pub fn next_state(&self) -> &NextState {
        &self.next
    }

    /// Looks for what came from outside, and keeps clocks going. Draws nothing.
    pub fn logic(&mut self, ctx: &egui::Context) {
        self.book.poll();
        self.next.now = ctx.input(|input| input.time);
        self.clocks(ctx);
    }

    /// Draws everything, then performs what was asked.
    pub fn ui(&mut self, ui: &mut Ui) {
        self.next.less_motion = self.remembered.less_motion;
        self.ladders.less_motion = self.remembered.less_motion;
        let context = self.context();
        let mut actions = Actions::default();
        // A running hold is stopped by any key, before keys mean anything else.
        let holds = self.bar.is_none() && self.next.holding().is_some() && any_key(ui);
        if holds {
            self.next.stop_hold(&self.shown.next, &mut actions);
        } else if self.palette.is_none() && !self.has_sheet() {
            actions.asked = keys::pressed(ui.ctx(), context, self.remembered.single_keys);
        } else {
            actions.asked = keys::pressed(ui.ctx(), Context::Everywhere, self.remembered.single_keys);
        }
        self.shown.load(&self.book, self.remembered.place);
        self.draw(ui, context, &mut actions);
        self.perform(ui.ctx(), actions);
    }

    fn has_sheet(&self) -> bool {
        self.keys_open || self.next.sheet.is_some() || self.ladders.over.is_some_and(Over::takes_keys)
    }

    fn context(&self) -> Context {
        match self.remembered.place {
            _ if !self.book.is_open() => Context::First,
            _ if self.bar.is_some() => Context::Bar,
            Place::Next => Context::Next,
            Place::Ladders => Context::Ladders,
            Place::Roster => Context::Roster,
            _ => Context::Everywhere,
        }
    }

    fn draw(&mut self, ui: &mut Ui, context: Context, actions: &mut Actions) {
        let whole = ui.ctx().content_rect();
        if context == Context::First {
            let mut child = part(ui, whole, "first");
            first_ui(
                &mut child,
                &self.shown.first,
                self.shown.import.as_ref(),
                &mut self.first,
                actions,
            );
        } else if let Some(bar) = &mut self.bar {
            let mut child = part(ui, whole, "bar");
            bar_ui(&mut child, &self.shown.next, &mut self.next, bar, actions);
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
            match self.remembered.place {
                Place::Roster => roster_ui(&mut child, &self.shown.roster, &mut self.roster, actions),
                Place::Ladders => ladders_ui(&mut child, &self.shown.ladders, &mut self.ladders, actions),
                _ => next_ui(&mut child, &self.shown.next, &mut self.next, actions),
            }
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
        if let Some((title, done, of)) = self.book.progress()
            && shown::progress_ui(ui, &title, done, of)
        {
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

    /// Ticks and the end of rest; asks for the next frame only while a clock runs.
    fn clocks(&mut self, ctx: &egui::Context) {
        let rest = self.next.rested();
        let held = self.next.holding();
        let (Some(seconds), is_hold) = (held.or(rest), held.is_some()) else {
            self.last_tick = i64::MIN;
            return;
        };
        #[allow(clippy::cast_possible_truncation, reason = "seconds of a clock")]
        let whole = seconds.floor() as i64;
        let asked = self
            .shown
            .next
            .card(self.next.card)
            .and_then(|card| card.asked.prescription())
            .map(|work| work.rest_secs.0);
        if whole != self.last_tick && self.last_tick != i64::MIN && !self.remembered.silent {
            match (is_hold, whole) {
                (true, -3..=-1) => (self.sound)(Sound::Tick),
                (true, 0) => (self.sound)(Sound::Go),
                (false, at) if asked.is_some_and(|asked| i64::from(asked) == at) => (self.sound)(Sound::Go),
                _ => {}
            }
        }
        self.last_tick = whole;
        let to_next = 1.0 - (seconds - seconds.floor());
        ctx.request_repaint_after(std::time::Duration::from_secs_f64(to_next.clamp(0.01, 1.0)));
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

impl<B: Book> eframe::App for Window<B> {
    fn logic(&mut self, ctx: &egui::Context, _frame: &mut eframe::Frame) {
        Window::logic(self, ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        if let Some(size) = ui
            .ctx()
            .input(|input| input.viewport().inner_rect)
            .map(|rect| rect.size())
        {
            self.remembered.size = [size.x * ui.ctx().zoom_factor(), size.y * ui.ctx().zoom_factor()];
        }
        Window::ui(self, ui);
    }
}

/// Opens the window and returns when it is closed; `keep` is given what to remember.
///
/// # Errors
/// When the system has no display, or no way to draw on it.
pub fn run<B: Book + 'static>(
    remembered: Remembered,
    make: impl FnOnce(&egui::Context) -> B + 'static,
    mut keep: impl FnMut(&Remembered) + 'static,
) -> Result<(), String> {
    let viewport = egui::ViewportBuilder::default()
        .with_title("Rungwright")
        .with_app_id("rungwright")
        .with_inner_size(remembered.size)
        .with_min_inner_size([480.0, 340.0]);
    let options = eframe::NativeOptions {
        viewport,
        persist_window: false,
        ..eframe::NativeOptions::default()
    };
    let started = eframe::run_native(
        "Rungwright",
        options,
        Box::new(move |creation| {
            let ctx = &creation.egui_ctx;
            ctx.set_fonts(theme::fonts());
            theme::apply(ctx, remembered.theme);
            ctx.set_zoom_factor(remembered.zoom);
            let pick = || rfd::FileDialog::new().pick_folder();
            let window = Window::new(make(ctx), remembered.clone()).with_folder_picker(pick);
            Ok(Box::new(Kept {
                window,
                keep: Box::new(move |remembered: &Remembered| keep(remembered)),
                kept: remembered,
            }))
        }),
    );
    started.map_err(|error| error.to_string())
}

/// A window whose memory is kept whenever it changes, so that a killed process loses nothing.
struct Kept<B> {
    window: Window<B>,
    keep: Box<dyn FnMut(&Remembered)>,
    kept: Remembered,
}

impl<B: Book> eframe::App for Kept<B> {
    fn logic(&mut self, ctx: &egui::Context, frame: &mut eframe::Frame) {
        eframe::App::logic(&mut self.window, ctx, frame);
    }

    fn ui(&mut self, ui: &mut Ui, frame: &mut eframe::Frame) {
        eframe::App::ui(&mut self.window, ui, frame);
        let dragging = ui.input(|input| input.pointer.any_down());
        if self.kept != self.window.remembered && !dragging {
            self.kept = self.window.remembered.clone();
            (self.keep)(&self.kept);
        }
    }
}
