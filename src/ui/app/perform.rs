//! Performs what a frame asked for, once all is drawn. The one place where the window changes anything but itself.

use egui::Context as Egui;

use crate::ui::action::{Action, Actions, Context};
use crate::ui::book::{Book, Deed, Done};
use crate::ui::gym::GymDeed;
use crate::ui::palette::Palette;
use crate::ui::screens::at_the_bar::BarState;
use crate::ui::screens::import::ImportState;
use crate::ui::screens::next::NextState;
use crate::ui::theme::{self, Choice};
use crate::ui::views::{Banner, Place};

use super::{Message, Pick, Window};

impl<B: Book> Window<B> {
    /// Performs actions first, then deeds, in the order they were asked.
    pub(super) fn perform(&mut self, ctx: &Egui, actions: Actions) {
        if !actions.asked.is_empty() || !actions.deeds.is_empty() {
            self.message = None;
        }
        let mut deeds = actions.deeds;
        for action in actions.asked {
            let mut more = Actions::default();
            self.act(ctx, action, &mut more);
            deeds.append(&mut more.deeds);
            for action in more.asked {
                let mut last = Actions::default();
                self.act(ctx, action, &mut last);
                deeds.append(&mut last.deeds);
            }
        }
        for deed in deeds {
            self.write(ctx, deed);
        }
    }

    fn act(&mut self, ctx: &Egui, action: Action, more: &mut Actions) {
        ctx.request_repaint();
        if action.begins_to_write() && matches!(self.shown.frame.banner, Some(Banner::ReadOnly(_))) {
            self.only_looks(action);
            return;
        }
        match action {
            Action::Go(place) => self.go(place),
            Action::NextAthlete => more.write(Deed::StepAthlete(1)),
            Action::PreviousAthlete => more.write(Deed::StepAthlete(-1)),
            Action::ShowKeys => self.keys_open = !self.keys_open,
            Action::ShowPalette => self.palette = Some(Palette::default()),
            Action::Find => {
                self.go(Place::Roster);
                self.screens.roster.state.focus_filter = true;
            }
            // A record taken back unseen, while a ladder is being written, would be a surprise.
            Action::Undo if self.context() == Context::Workshop => self.act_in_place(action, more),
            Action::Undo => more.write(Deed::Undo),
            Action::Larger => self.zoom(ctx, 0.1),
            Action::Smaller => self.zoom(ctx, -0.1),
            Action::UsualSize => self.zoom(ctx, 1.0 - self.remembered.zoom),
            Action::TurnTheme => self.turn_theme(ctx),
            Action::Look(look) => self.look(ctx, look),
            Action::LessMotion => self.remembered.less_motion = !self.remembered.less_motion,
            Action::SingleKeys => self.remembered.single_keys = !self.remembered.single_keys,
            Action::Beeps => self.remembered.silent = !self.remembered.silent,
            Action::BringSheet => self.import = Some(ImportState::default()),
            Action::PickSheet => self.picking.ask(Pick::Sheet, ctx),
            Action::PickPicture => self.picking.ask(Pick::Picture, ctx),
            Action::PickFolder => self.picking.ask(Pick::Folder, ctx),
            Action::PickOutput => self.picking.ask(Pick::Output, ctx),
            Action::ReadAgain => more.write(Deed::ReadAgain),
            Action::CloseLogbook => self.close(more),
            Action::AtTheBar => self.bar = Some(BarState::default()),
            Action::LeaveBar => self.bar = None,
            Action::Back => self.back(more),
            _ => self.act_in_place(action, more),
        }
    }

    /// Says at once, before anything is typed, that it can't be saved here.
    fn only_looks(&mut self, action: Action) {
        let row = Action::all().iter().find(|row| row.action == action);
        let title = row.map_or("That", |row| row.title.as_str());
        self.message = Some(Message {
            words: format!("{title}: not in this window, which only looks."),
            is_bad: true,
        });
    }

    fn act_in_place(&mut self, action: Action, more: &mut Actions) {
        if !self.book.is_open() {
            self.first.perform(action, more);
            return;
        }
        self.screen().perform(action, more);
    }

    fn go(&mut self, place: Place) {
        if self.shown.frame.places.contains(&place) {
            self.screen().leave();
            self.remembered.place = place;
            self.bar = None;
        }
    }

    fn back(&mut self, more: &mut Actions) {
        let is_closed = self.palette.take().is_some()
            || std::mem::take(&mut self.keys_open)
            || self.import.take().is_some()
            || self.bar.take().is_some();
        if is_closed {
            return;
        }
        self.act_in_place(Action::Back, more);
    }

    fn zoom(&mut self, ctx: &Egui, by: f32) {
        self.remembered.zoom = ((self.remembered.zoom + by) * 10.0).round().clamp(10.0, 20.0) / 10.0;
        ctx.set_zoom_factor(self.remembered.zoom);
    }

    fn turn_theme(&mut self, ctx: &Egui) {
        let next = match self.remembered.theme {
            Choice::System => Choice::Light,
            Choice::Light => Choice::Dark,
            Choice::Dark => Choice::System,
        };
        self.look(ctx, next);
    }

    fn look(&mut self, ctx: &Egui, look: Choice) {
        self.remembered.theme = look;
        theme::apply(ctx, look);
    }

    /// Back to first start. The logbook put away is the one that opens at the next start, unless another is opened.
    fn close(&mut self, more: &mut Actions) {
        self.bar = None;
        self.first = Default::default();
        self.screens = Default::default();
        more.write(Deed::Close);
    }

    /// A folder or a file was picked, or none.
    pub(super) fn picked(&mut self, pick: Pick, path: Option<std::path::PathBuf>) {
        let Some(path) = path else { return };
        match (pick, &mut self.import) {
            (Pick::Sheet, Some(import)) => import.pick(path),
            (Pick::Folder, _) => self.first.path = path.to_string_lossy().into_owned(),
            (Pick::Picture | Pick::Output, _) => {
                self.screens.roster.state.picked(&path);
                if let Some(printing) = &mut self.screens.totals.state.printing {
                    printing.picked(&path);
                }
            }
            (Pick::Sheet, None) => {}
        }
    }

    /// Hands a deed to the book, and says what came of it.
    fn write(&mut self, ctx: &Egui, deed: Deed) {
        let done = self.book.perform(deed.clone());
        self.came(ctx, deed, done);
    }

    /// What came of a deed, at once or after long work.
    pub(super) fn came(&mut self, ctx: &Egui, deed: Deed, done: Done) {
        ctx.request_repaint();
        match done {
            Done::Ok(words) => {
                self.message = words.map(|words| Message { words, is_bad: false });
                self.done(&deed);
            }
            Done::Failed(words) => self.message = Some(Message { words, is_bad: true }),
            Done::Working(_) => {}
        }
    }

    fn done(&mut self, deed: &Deed) {
        if matches!(deed, Deed::Gym(GymDeed::KeepTyped { leaves: false, .. })) {
            return; // Nothing that is shown comes out differently.
        }
        if matches!(deed, Deed::Journal(deed) if deed.only_looks()) {
            return; // Nothing but the journal comes out differently; it sees that by the book's revision.
        }
        if let Deed::Workshop(deed) = deed {
            // The Workshop is loaded by the book's revision, at each word typed; Next is not.
            self.screens.workshop.done(deed);
            return;
        }
        self.shown.load_next(&self.book, &mut self.screens);
        self.screens.totals.done(deed);
        self.screens.weigh_ins.done(deed);
        self.screens.journal.done(deed);
        let next = &mut self.screens.next;
        match deed {
            // Here a new best is marked: the book says it in `Done::Ok`, and `LoggedLine::best` keeps it.
            Deed::Log(_) => next.state.logged(&next.view),
            Deed::ChooseAthlete(_) | Deed::StepAthlete(_) => {
                next.state = NextState::opened(next.state.now, &next.view);
                self.remember();
            }
            Deed::OpenDemo | Deed::OpenFolder(_) | Deed::Start(_) | Deed::Import(_) => {
                self.opened();
                self.remember();
            }
            Deed::PreviewImport(text) => {
                if let Some(import) = &mut self.import {
                    import.seen = Some(text.clone());
                }
            }
            Deed::Gym(deed) => self.screens.roster.done(deed),
            _ => {}
        }
    }

    /// Keeps which logbook and which athlete are open, for the next start.
    pub(super) fn remember(&mut self) {
        if let Some(folder) = self.book.folder() {
            self.remembered.logbook = Some(folder);
            self.remembered.athlete = self.book.open_athlete();
        }
    }

    /// A logbook was opened: its roster, or Next where there is one athlete only.
    fn opened(&mut self) {
        self.shown.frame = self.book.frame();
        let alone = self
            .shown
            .frame
            .athlete
            .as_ref()
            .is_some_and(|athlete| athlete.of == 1);
        self.remembered.place = if alone { Place::Next } else { Place::Roster };
        self.first = Default::default();
        self.import = None;
        self.screens.next.state = NextState::opened(self.screens.next.state.now, &self.screens.next.view);
    }
}
