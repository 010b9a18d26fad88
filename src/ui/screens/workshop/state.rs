//! What the Workshop remembers between frames, and what its actions do.

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::views::{FileView, Spot, WorkshopView};
use crate::ui::workshop::WorkshopDeed;

/// How much of what is seen of a long ladder a key scrolls. Common practice, no source.
const PAGE: f32 = 0.8;

/// A sheet over the Workshop.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Over {
    /// A new ladder, of this title.
    New(String),
    /// The list of files, where it has no room beside the text.
    Files,
}

/// Somewhere in the text to go to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Jump {
    /// Line, from 1; none for where the cursor was.
    pub line: Option<usize>,
    /// Column in characters, from 1.
    pub column: usize,
    /// The text gets the keys.
    pub enters: bool,
}

/// What the Workshop remembers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WorkshopState {
    /// The text as typed.
    pub text: String,
    /// The file that it is of.
    pub file: String,
    /// The chosen mistake.
    pub mistake: Option<usize>,
    /// Rungs are folded to a line each.
    pub folded: bool,
    /// In a narrow window: the ladder is shown, not the text.
    pub shows_ladder: bool,
    /// A sheet over the place.
    pub over: Option<Over>,
    /// How far a long ladder is scrolled.
    pub scroll: f32,
    /// Height of the drawing in the last frame.
    pub height: f32,
    /// Where to go in the next frame.
    pub jump: Option<Jump>,
    /// The chosen rung of the drawing.
    pub rung: Option<Spot>,
    /// Whether the list has room beside the text.
    pub has_list: bool,
    /// The chosen mistake comes into view.
    pub bring_mistake: bool,
    /// The chosen file of the list comes into view.
    pub bring_file: bool,
}

impl WorkshopState {
    /// Takes the text of the view: another file's, or what a key mended.
    pub fn load(&mut self, view: &WorkshopView) {
        let Some(open) = &view.open else { return };
        if open.file != self.file {
            *self = Self {
                file: open.file.clone(),
                shows_ladder: self.shows_ladder,
                over: self.over.take(),
                jump: Some(Jump {
                    line: Some(1),
                    column: 1,
                    enters: false,
                }),
                bring_file: true,
                ..Self::default()
            };
        }
        if open.text != self.text {
            self.text.clone_from(&open.text);
        }
        self.mistake = self.mistake.filter(|nth| *nth < open.mistakes.len());
        let exists = |spot: &Spot| match (&open.ladder, spot) {
            (Some(ladder), Spot::Rung(nth)) => *nth < ladder.rungs.len(),
            (Some(ladder), Spot::Branch(nth)) => *nth < ladder.branches.len(),
            _ => false,
        };
        self.rung = self.rung.filter(exists);
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &WorkshopView, actions: &mut Actions) {
        let mut ask = |deed| actions.write(Deed::Workshop(deed));
        match action {
            Action::Back if view.asks.is_some() => ask(WorkshopDeed::LeaveIt),
            Action::Back => self.over = None,
            Action::Undo => ask(WorkshopDeed::TakeBack),
            Action::NewLadder => self.over = Some(Over::New(String::new())),
            Action::OtherLadder if !self.has_list => self.over = Some(Over::Files),
            Action::OtherLadder | Action::RowDown => self.step_file(view, 1, &mut ask),
            Action::RowUp => self.step_file(view, -1, &mut ask),
            Action::SaveText => ask(WorkshopDeed::Save),
            Action::TurnBody => ask(WorkshopDeed::TurnBody),
            Action::CopyLadder => ask(WorkshopDeed::Copy),
            Action::ThrowAway => ask(WorkshopDeed::ThrowAway),
            Action::DeleteLadder => ask(WorkshopDeed::AskDelete),
            Action::FoldRungs => self.folded = !self.folded,
            Action::TextOrLadder => self.shows_ladder = !self.shows_ladder,
            Action::OpenRow => self.go(None, 1),
            Action::PageUp => self.scroll += self.height * PAGE,
            Action::PageDown => self.scroll = (self.scroll - self.height * PAGE).max(0.0),
            Action::NextMistake => self.next_mistake(view.open.as_ref()),
            Action::MendMistake => ask(WorkshopDeed::Mend(self.mistake.unwrap_or(0))),
            _ => {}
        }
    }

    /// Goes to a place in the text, and gives it the keys.
    pub fn go(&mut self, line: Option<usize>, column: usize) {
        (self.folded, self.shows_ladder) = (false, false);
        self.jump = Some(Jump {
            line,
            column,
            enters: true,
        });
    }

    /// Goes to the mistake of this number.
    pub fn go_to_mistake(&mut self, open: &FileView, nth: usize) {
        if let Some(mistake) = open.mistakes.get(nth) {
            self.mistake = Some(nth);
            self.bring_mistake = true;
            self.go(Some(mistake.line), mistake.column);
        }
    }

    fn next_mistake(&mut self, open: Option<&FileView>) {
        let Some(open) = open.filter(|open| !open.mistakes.is_empty()) else {
            return;
        };
        let next = self.mistake.map_or(0, |nth| (nth + 1) % open.mistakes.len());
        self.go_to_mistake(open, next);
    }

    /// Goes to the text of the rung that was chosen in the drawing.
    pub fn go_to_rung(&mut self, open: &FileView, spot: Spot) {
        self.rung = Some(spot);
        let id = open
            .ladder
            .as_ref()
            .and_then(|ladder| crate::ui::screens::ladders::id_of(ladder, spot));
        let block = open.rungs.iter().find(|block| Some(&block.id) == id.as_ref());
        if let Some(block) = block {
            self.jump = Some(Jump {
                line: Some(block.first),
                column: 1,
                enters: false,
            });
        }
    }

    fn step_file(&mut self, view: &WorkshopView, by: isize, ask: &mut impl FnMut(WorkshopDeed)) {
        let now = view.files.iter().position(|line| line.file == self.file);
        let next = now.unwrap_or(0).saturating_add_signed(by);
        if let Some(line) = view.files.get(next) {
            ask(WorkshopDeed::Open(line.file.clone()));
        }
    }
}
