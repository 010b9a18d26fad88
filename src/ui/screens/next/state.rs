//! What Next remembers between frames: which card the dock logs for, what was typed, the clocks, the open sheet.

use std::collections::BTreeSet;

use crate::coaching::typed::number;
use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::views::{Asked, CardView, NextView, SetDraft};
use crate::units::{Outcome, Rail};

/// Digits typed within so many seconds join.
const DIGITS_JOIN_SECS: f64 = 1.0;
/// A hold's count-in, seconds.
pub const COUNT_IN_SECS: f64 = 3.0;

/// A rest clock that ran so long is nobody's any more, and draws no more frames.
const FORGOTTEN_SECS: f64 = 3600.0;

/// A sheet over the place.
#[derive(Debug, Clone, PartialEq)]
pub enum Sheet {
    /// Report pain.
    Pain,
    /// Weigh in.
    WeighIn,
    /// Write a note.
    Note,
    /// Every reason of a card.
    Why(usize),
    /// Warm-up and today's records, where the side column is folded.
    Today,
}

/// The hold clock.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Held {
    /// Not running.
    #[default]
    No,
    /// Counting in; the hold begins at this time.
    From(f64),
}

/// What Next remembers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct NextState {
    /// The card that the dock logs for.
    pub card: usize,
    /// Reps or seconds, where they differ from the prescription.
    pub amount: Option<f64>,
    /// Reserve, where it differs.
    pub reserve: Option<f64>,
    /// How the set ended.
    pub outcome: Outcome,
    /// When the last digit was typed.
    typed_at: Option<f64>,
    /// When the rest clock started, in the window's time.
    pub rest_from: Option<f64>,
    /// The hold clock.
    pub held: Held,
    /// The open sheet.
    pub sheet: Option<Sheet>,
    /// Warm-up steps that were ticked.
    pub warmed: BTreeSet<usize>,
    /// The first amount on the dock's keys, where it was moved on.
    pub keys_from: Option<u16>,
    /// What is typed into the scale field.
    pub weigh_in: String,
    /// What is typed as a note.
    pub note: String,
    /// Pain: which site, whose, how much.
    pub pain: (usize, Rail2, u8),
    /// The window's time of this frame, seconds.
    pub now: f64,
    /// Hands move at once.
    pub less_motion: bool,
    /// Beeps are off.
    pub silent: bool,
    /// This window may only look.
    pub read_only: bool,
}

/// Where it hurts: left, right, or unsaid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Rail2 {
    /// Both, or not said.
    #[default]
    Unsaid,
    /// Left.
    Left,
    /// Right.
    Right,
}

impl From<Rail2> for Rail {
    fn from(side: Rail2) -> Rail {
        match side {
            Rail2::Unsaid => Rail::Both,
            Rail2::Left => Rail::Left,
            Rail2::Right => Rail::Right,
        }
    }
}

impl NextState {
    /// As prescribed, with no clock running.
    pub fn at(now: f64) -> Self {
        Self {
            now,
            ..Self::default()
        }
    }

    /// As prescribed, at the first card that asks for work.
    pub fn opened(now: f64, view: &NextView) -> Self {
        let first = view
            .cards()
            .position(|card| !matches!(card.asked, Asked::Pause(_)));
        Self {
            card: first.unwrap_or(0),
            ..Self::at(now)
        }
    }

    /// Reps or seconds that would be logged for `card`.
    pub fn amount_for(&self, card: &CardView) -> f64 {
        self.amount
            .unwrap_or_else(|| card.asked.prescription().map_or(0.0, |work| work.prefill))
    }

    /// The reserve that would be logged; none on holds and where none is asked.
    pub fn reserve_for(&self, card: &CardView) -> Option<f64> {
        let work = card.asked.prescription()?;
        if work.measure.is_hold() {
            None
        } else {
            self.reserve.or(work.reserve)
        }
    }

    /// Seconds since the rest clock started; none once it was forgotten for an hour.
    pub fn rested(&self) -> Option<f64> {
        self.rest_from
            .map(|from| (self.now - from).max(0.0))
            .filter(|rested| *rested < FORGOTTEN_SECS)
    }

    /// Seconds held so far; negative while counting in.
    pub fn holding(&self) -> Option<f64> {
        match self.held {
            Held::No => None,
            Held::From(begin) => Some(self.now - begin),
        }
    }

    /// The set that would be logged now; none while there is nothing to log.
    pub fn draft(&self, view: &NextView) -> Option<SetDraft> {
        let card = view.card(self.card)?;
        let Asked::Work(work) = &card.asked else {
            return None;
        };
        Some(SetDraft {
            ladder: card.ladder.clone(),
            rung: work.rung.clone(),
            rail: card.rail,
            amount: self.amount_for(card),
            is_hold: work.measure.is_hold(),
            reserve: self.reserve_for(card),
            outcome: self.outcome,
            note: (!self.note.trim().is_empty()).then(|| self.note.trim().to_owned()),
        })
    }

    /// Goes to card `nth`, as prescribed there.
    pub fn choose(&mut self, nth: usize) {
        if nth != self.card {
            self.card = nth;
            self.as_prescribed();
        }
    }

    /// Forgets what was typed.
    fn as_prescribed(&mut self) {
        (
            self.amount,
            self.reserve,
            self.outcome,
            self.keys_from,
            self.typed_at,
        ) = (None, None, Outcome::Done, None, None);
        self.held = Held::No;
    }

    /// Once a set is on disk: rest begins, the next hand of the same ladder comes up.
    pub fn logged(&mut self, view: &NextView) {
        self.rest_from = Some(self.now);
        self.note.clear();
        let next = turn(view, self.card);
        self.as_prescribed();
        self.card = next;
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &NextView, actions: &mut Actions) {
        match action {
            Action::Hand(rail) => self.choose_rail(rail, view),
            Action::Amount(digit) => self.type_digit(f64::from(digit)),
            Action::Reserve(reserve) => self.reserve = Some(f64::from(reserve)),
            Action::Missed => self.outcome = toggled(self.outcome, Outcome::Missed),
            Action::FormNotKept => self.outcome = toggled(self.outcome, Outcome::Form),
            Action::LogSet | Action::BarMissed => self.log(action == Action::BarMissed, view, actions),
            Action::RestClock => {
                self.rest_from = if self.rest_from.is_some() {
                    None
                } else {
                    Some(self.now)
                }
            }
            Action::HoldClock => self.turn_hold(view, actions),
            Action::Pain => self.sheet = Some(Sheet::Pain),
            Action::WeighIn => self.sheet = Some(Sheet::WeighIn),
            Action::Note => self.sheet = Some(Sheet::Note),
            Action::Why => self.sheet = Some(Sheet::Why(0)),
            Action::WhyOther => self.sheet = Some(Sheet::Why(1)),
            Action::WhyNext => self.sheet = Some(Sheet::Why(2)),
            Action::WarmUp => self.warm_up(view),
            Action::BarMore => self.change(1.0, view),
            Action::BarFewer => self.change(-1.0, view),
            Action::BarUndo | Action::UndoSet => actions.write(Deed::Undo),
            Action::Back => self.sheet = None,
            _ => {}
        }
    }

    fn log(&mut self, missed: bool, view: &NextView, actions: &mut Actions) {
        if missed {
            self.outcome = Outcome::Missed;
        }
        match view.card(self.card).map(|card| &card.asked) {
            Some(Asked::WeighInFirst(_)) => self.weigh_in_now(actions),
            Some(Asked::Work(_)) => {
                if let Some(draft) = self
                    .draft(view)
                    .filter(|draft| draft.amount > 0.0 || draft.outcome == Outcome::Missed)
                {
                    actions.write(Deed::Log(draft));
                }
            }
            Some(Asked::Pause(_)) | None => {}
        }
    }

    /// Writes what is typed into the scale field, if it is a number.
    pub fn weigh_in_now(&mut self, actions: &mut Actions) {
        if let Some(value) = typed_number(&self.weigh_in) {
            actions.write(Deed::WeighIn(value));
            self.weigh_in.clear();
            self.sheet = None;
        } else {
            self.sheet = Some(Sheet::WeighIn);
        }
    }

    /// Starts the count-in, or stops the hold: its whole seconds are the amount, and the set is logged.
    fn turn_hold(&mut self, view: &NextView, actions: &mut Actions) {
        let is_hold = view
            .card(self.card)
            .and_then(|card| card.asked.prescription())
            .is_some_and(|work| work.measure.is_hold());
        match self.holding() {
            None if is_hold => self.held = Held::From(self.now + COUNT_IN_SECS),
            None => {}
            Some(seconds) if seconds < 1.0 => self.held = Held::No,
            Some(seconds) => {
                self.held = Held::No;
                self.amount = Some(seconds.floor());
                self.log(false, view, actions);
            }
        }
    }

    /// Stops a running hold, whichever key was pressed; true when one ran.
    pub fn stop_hold(&mut self, view: &NextView, actions: &mut Actions) -> bool {
        let runs = self.holding().is_some();
        if runs {
            self.turn_hold(view, actions);
        }
        runs
    }

    fn type_digit(&mut self, digit: f64) {
        let joins = self.typed_at.is_some_and(|at| self.now - at < DIGITS_JOIN_SECS);
        let before = self.amount.filter(|_| joins).unwrap_or(0.0);
        self.amount = Some((before * 10.0 + digit).min(999.0));
        self.typed_at = Some(self.now);
    }

    fn change(&mut self, by: f64, view: &NextView) {
        if let Some(card) = view.card(self.card) {
            self.amount = Some((self.amount_for(card) + by).clamp(0.0, 999.0));
        }
    }

    /// The next card with that rail, after the present one.
    fn choose_rail(&mut self, rail: Rail, view: &NextView) {
        let rails: Vec<Rail> = view.cards().map(|card| card.rail).collect();
        let found = (1..=rails.len())
            .map(|step| (self.card + step) % rails.len().max(1))
            .find(|nth| rails.get(*nth) == Some(&rail));
        if let Some(nth) = found.filter(|_| rails.get(self.card) != Some(&rail) || rail == Rail::Both) {
            self.choose(nth);
        }
    }

    fn warm_up(&mut self, view: &NextView) {
        if let Some(step) = (0..view.warm_up.len()).find(|step| !self.warmed.contains(step)) {
            self.warmed.insert(step);
        }
    }
}

/// The number over zero that a person typed, with a point or a comma.
pub fn typed_number(text: &str) -> Option<f64> {
    number(text).filter(|value| *value > 0.0)
}

fn toggled(now: Outcome, to: Outcome) -> Outcome {
    if now == to { Outcome::Done } else { to }
}

/// The card that comes after `card` was logged: the other hand of the ladder if it has fewer sets done, else the same while sets
/// remain, else the next card with work left.
fn turn(view: &NextView, card: usize) -> usize {
    let left = |nth: usize, just: bool| {
        view.card(nth).and_then(|card| match &card.asked {
            Asked::Work(work) => {
                Some(usize::from(work.sets).saturating_sub(work.done.len() + usize::from(just)))
            }
            Asked::WeighInFirst(_) | Asked::Pause(_) => None,
        })
    };
    let same_ladder =
        |nth: usize| view.card(nth).map(|other| &other.ladder) == view.card(card).map(|own| &own.ladder);
    let count = view.cards().count();
    let own = left(card, true).unwrap_or(0);
    let other =
        (0..count).find(|nth| *nth != card && same_ladder(*nth) && left(*nth, false).unwrap_or(0) > own);
    let later = (1..=count)
        .map(|step| (card + step) % count.max(1))
        .find(|nth| left(*nth, *nth == card).unwrap_or(0) > 0);
    other.or((own > 0).then_some(card)).or(later).unwrap_or(card)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_within_a_second_join_to_twelve() {
        let mut state = NextState::default();
        let (view, mut actions) = (NextView::default(), Actions::default());
        state.now = 10.0;
        state.perform(Action::Amount(1), &view, &mut actions);
        state.now = 10.6;
        state.perform(Action::Amount(2), &view, &mut actions);
        assert_eq!(state.amount, Some(12.0));
        state.now = 12.0;
        state.perform(Action::Amount(3), &view, &mut actions);
        assert_eq!(state.amount, Some(3.0));
    }

    #[test]
    fn a_bodyweight_is_typed_with_a_point_or_a_comma() {
        assert_eq!(typed_number(" 74,6 "), Some(74.6));
        assert_eq!(typed_number("74.6"), Some(74.6));
        for wrong in ["", "abc", "-3", "1e5", "0", "NaN", "7.4.6"] {
            assert_eq!(typed_number(wrong), None, "{wrong}");
        }
    }
}
