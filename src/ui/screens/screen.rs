//! What a place is to the window: something that loads its view, draws it and performs its actions.

use egui::Ui;

use crate::ui::action::{Action, Actions, Context};
use crate::ui::app::Remembered;
use crate::ui::book::Book;

/// What holds for every place in this frame.
#[derive(Debug, Clone, Copy)]
pub struct Around<'a> {
    /// The window's time, seconds.
    pub now: f64,
    /// How the person wants it: less motion, keys, beeps, look.
    pub remembered: &'a Remembered,
    /// Whether a player of sounds was found.
    pub can_play: bool,
    /// Whether this window may only look.
    pub read_only: bool,
}

/// A place of the window.
pub trait Screen {
    /// Where its actions hold.
    fn context(&self) -> Context;

    /// Loads its view; called when the place opens and whenever the book says that it would come out differently.
    fn load(&mut self, book: &dyn Book);

    /// Shows it in the whole of `ui`.
    fn ui(&mut self, ui: &mut Ui, around: &Around<'_>, actions: &mut Actions);

    /// Performs an action that holds here; [`Action::Back`] closes what is open over it.
    fn perform(&mut self, action: Action, actions: &mut Actions);

    /// Whether a sheet lies over it; then only actions that hold everywhere are heard.
    fn has_sheet(&self) -> bool {
        false
    }

    /// Another place opens, or another athlete.
    fn leave(&mut self) {}
}
