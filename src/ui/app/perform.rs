//! Performs what a frame asked for, once all is drawn. The one place where the window changes anything but itself.

use egui::Context as Egui;

use crate::ui::action::{Action, Actions};
use crate::ui::book::{Book, Deed, Done};
use crate::ui::palette::Palette;
use crate::ui::screens::at_the_bar::BarState;
use crate::ui::theme::{self, Choice};
use crate::ui::views::Place;

use super::{Message, Window};

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
            self.write(deed);
            ctx.request_repaint();
        }
    }

    fn act(&mut self, ctx: &Egui, action: Action, more: &mut Actions) {
        ctx.request_repaint();
        match action {
            Action::Go(place) => self.go(place),
            Action::NextAthlete => more.write(Deed::StepAthlete(1)),
            Action::PreviousAthlete => more.write(Deed::StepAthlete(-1)),
            Action::ShowKeys => self.keys_open = !self.keys_open,
            Action::ShowPalette => self.palette = Some(Palette::default()),
            Action::Find => {
                self.go(Place::Roster);
                self.roster.focus_filter = true;
            }
            Action::Undo => more.write(Deed::Undo),
            Action::Larger => self.zoom(ctx, 0.1),
            Action::Smaller => self.zoom(ctx, -0.1),
            Action::UsualSize => self.zoom(ctx, 1.0 - self.remembered.zoom),
            Action::TurnTheme => self.turn_theme(ctx),
            Action::LessMotion => self.remembered.less_motion = !self.remembered.less_motion,
            Action::AtTheBar => self.bar = Some(BarState::default()),
            Action::LeaveBar => self.bar = None,
            Action::Back => self.back(),
            Action::OpenLogbook if !self.book.is_open() => self.open_folder(more),
            _ => self.act_in_place(action, more),
        }
    }

    fn act_in_place(&mut self, action: Action, more: &mut Actions) {
        if !self.book.is_open() {
            self.first.perform(action, more);
            return;
        }
        match self.remembered.place {
            Place::Roster => self.roster.perform(action, &self.shown.roster, more),
            Place::Ladders => self.ladders.perform(action, self.shown.ladders.open.as_ref()),
            _ => self.next.perform(action, &self.shown.next, more),
        }
    }

    fn go(&mut self, place: Place) {
        if self.shown.frame.places.contains(&place) {
            self.remembered.place = place;
            self.bar = None;
            self.next.sheet = None;
            self.ladders.over = None;
        }
    }

    fn back(&mut self) {
        if self.palette.take().is_some() || std::mem::take(&mut self.keys_open) || self.bar.take().is_some() {
            return;
        }
        self.act_in_place(Action::Back, &mut Actions::default());
    }

    fn zoom(&mut self, ctx: &Egui, by: f32) {
        self.remembered.zoom = ((self.remembered.zoom + by) * 10.0).round().clamp(10.0, 20.0) / 10.0;
        ctx.set_zoom_factor(self.remembered.zoom);
    }

    fn turn_theme(&mut self, ctx: &Egui) {
        self.remembered.theme = match self.remembered.theme {
            Choice::System => Choice::Light,
            Choice::Light => Choice::Dark,
            Choice::Dark => Choice::System,
        };
        theme::apply(ctx, self.remembered.theme);
    }

    fn open_folder(&mut self, more: &mut Actions) {
        if let Some(folder) = (self.pick_folder)() {
            more.write(Deed::OpenFolder(folder));
        }
    }

    /// Hands a deed to the book, and says what came of it.
    fn write(&mut self, deed: Deed) {
        let is_set = matches!(deed, Deed::Log(_));
        let opens = matches!(
            deed,
            Deed::OpenDemo | Deed::OpenFolder(_) | Deed::Start(_) | Deed::Import(_)
        );
        let chooses = matches!(deed, Deed::ChooseAthlete(_) | Deed::StepAthlete(_));
        match self.book.perform(deed) {
            Done::Ok(words) => {
                self.message = words.map(|words| Message { words, is_bad: false });
                self.shown.load_next(&self.book);
                if is_set {
                    self.next.logged(&self.shown.next);
                }
                if opens {
                    self.opened();
                }
                if opens || chooses {
                    self.remember();
                }
                if chooses {
                    self.next = crate::ui::screens::next::NextState::opened(self.next.now, &self.shown.next);
                }
            }
            Done::Failed(words) => self.message = Some(Message { words, is_bad: true }),
            Done::Working(_) => {}
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
    }
}
