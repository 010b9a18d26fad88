//! What Ladders remembers: the chosen rung, how far it is scrolled, what lies over it.

use crate::ui::action::Action;
use crate::ui::screens::strength::StrengthSheet;
use crate::ui::two_rail::layout::Layout;
use crate::ui::views::{LadderView, Spot};

/// A sheet over Ladders.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// Put a hand on the chosen rung.
    Place,
    /// Set a rail aside.
    SetAside,
    /// Open or join another ladder.
    Others,
}

/// What Ladders remembers between frames.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LaddersState {
    /// The chosen rung or branch.
    pub chosen: Option<Spot>,
    /// Points scrolled up from the ground.
    pub scroll: f32,
    /// Height of the ladder's area in the last frame.
    pub height: f32,
    /// The sheet over the place.
    pub over: Option<Over>,
    /// In a narrow window: the rung's sheet is open.
    pub sheet_open: bool,
    /// Strength over time.
    pub strength: StrengthSheet,
    /// Hands move at once.
    pub less_motion: bool,
    /// This window may only look.
    pub read_only: bool,
    /// The ladder that this state is about.
    ladder: String,
    /// Scroll so that these show, in the next frame.
    bring: Bring,
}

#[derive(Debug, Clone, Copy, PartialEq, Default)]
enum Bring {
    #[default]
    Nothing,
    Hands,
    Chosen,
}

impl LaddersState {
    /// Starts anew when another ladder is open: hands in the middle, the first hand's rung chosen.
    pub fn keep_within(&mut self, view: &LadderView) {
        if self.ladder != view.id {
            self.ladder.clone_from(&view.id);
            self.chosen = None;
            self.bring = Bring::Hands;
        }
        let exists = match self.chosen {
            Some(Spot::Rung(nth)) => nth < view.rungs.len(),
            Some(Spot::Branch(nth)) => nth < view.branches.len(),
            Some(Spot::Ground) | None => false,
        };
        if !exists {
            let hand = view
                .hands
                .iter()
                .map(|hand| hand.at)
                .find(|at| *at != Spot::Ground);
            self.chosen = hand.or((!view.rungs.is_empty()).then_some(Spot::Rung(0)));
        }
    }

    /// Scrolls to what has to show.
    pub fn follow(&mut self, view: &LadderView, layout: &Layout) {
        let target = match std::mem::take(&mut self.bring) {
            Bring::Nothing => return,
            Bring::Hands => layout.scroll_to(view.hands.iter().map(|hand| hand.at)),
            Bring::Chosen => {
                let Some(spot) = self.chosen else { return };
                let y = layout.hand(crate::units::Rail::Left, spot).y;
                if layout.area.shrink(30.0).y_range().contains(y) {
                    return;
                }
                layout.scroll_to([spot].into_iter())
            }
        };
        self.scroll = target;
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: Option<&LadderView>) {
        if action == Action::OtherLadder {
            self.over = Some(Over::Others);
            return;
        }
        let Some(view) = view else { return };
        match action {
            Action::RungUp => self.step(view, 1),
            Action::RungDown => self.step(view, -1),
            Action::BesideLeft => self.enter_branch(view),
            Action::BesideRight => self.leave_branch(view),
            Action::PageUp => self.scroll += self.height * 0.8,
            Action::PageDown => self.scroll = (self.scroll - self.height * 0.8).max(0.0),
            Action::HandsToMiddle => self.bring = Bring::Hands,
            Action::PlaceHand => self.over = self.chosen.map(|_| Over::Place),
            Action::StrengthOverTime => self.strength.open(),
            Action::SetAside => self.over = Some(Over::SetAside),
            Action::Back => {
                self.over = None;
                self.sheet_open = false;
            }
            _ => {}
        }
    }

    fn step(&mut self, view: &LadderView, by: isize) {
        let now = match self.chosen {
            Some(Spot::Rung(nth)) => nth,
            Some(Spot::Branch(nth)) => view.branches.get(nth).map_or(0, |branch| branch.from),
            Some(Spot::Ground) | None => 0,
        };
        let next = now
            .saturating_add_signed(by)
            .min(view.rungs.len().saturating_sub(1));
        self.chosen = Some(Spot::Rung(next));
        self.bring = Bring::Chosen;
    }

    /// From a rung to the first branch that leaves or joins it; from a branch to the next one.
    fn enter_branch(&mut self, view: &LadderView) {
        let count = view.branches.len();
        let found = match self.chosen {
            Some(Spot::Branch(nth)) => Some((nth + 1) % count.max(1)),
            Some(Spot::Rung(at)) => view
                .branches
                .iter()
                .position(|branch| branch.from == at || branch.to == at),
            _ => None,
        };
        if let Some(nth) = found.filter(|nth| *nth < count) {
            self.chosen = Some(Spot::Branch(nth));
        }
    }

    fn leave_branch(&mut self, view: &LadderView) {
        if let Some(Spot::Branch(nth)) = self.chosen {
            self.chosen = view.branches.get(nth).map(|branch| Spot::Rung(branch.to));
            self.bring = Bring::Chosen;
        }
    }
}

/// The title of a rung or branch.
pub fn title_of(view: &LadderView, spot: Spot) -> Option<String> {
    match spot {
        Spot::Ground => None,
        Spot::Rung(nth) => view.rungs.get(nth).map(|rung| rung.title.clone()),
        Spot::Branch(nth) => view.branches.get(nth).map(|branch| branch.title.clone()),
    }
}

/// The id of a rung or branch.
pub fn id_of(view: &LadderView, spot: Spot) -> Option<String> {
    match spot {
        Spot::Ground => None,
        Spot::Rung(nth) => view.rungs.get(nth).map(|rung| rung.id.clone()),
        Spot::Branch(nth) => view.branches.get(nth).map(|branch| branch.id.clone()),
    }
}
