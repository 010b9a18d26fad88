//! What Totals remembers: the bodyweight asked about, the point that is walked, the repetitions looked at.

use std::sync::{Arc, Mutex};

use egui::{ColorImage, Rect};

use crate::ui::action::{Action, Actions};
use crate::ui::book::Deed;
use crate::ui::screens::printing::{Printing, What};
use crate::ui::screens::strength::StrengthSheet;
use crate::ui::views::{LiftView, Paper, TotalsView};
use crate::units::{Bodyweight, KG_PER_LB, Unit};

use super::plot::Kept;
use super::trying::Trying;

/// What Totals remembers between frames.
#[derive(Debug, Default)]
pub struct TotalsState {
    /// The bodyweight asked about, kg; none for today's.
    pub asked_kg: Option<f64>,
    /// The point that is walked, in order of time.
    pub walked: Option<usize>,
    /// Repetitions looked at, 1 to 12; 0 before anything is chosen.
    pub reps: u16,
    /// When a digit was pressed, so that a second one makes 10 to 12.
    digit_at: Option<f64>,
    /// The clock, seconds.
    pub now: f64,
    /// Something to copy as text or to save as a picture, in the next frame.
    pub export: Option<Export>,
    /// What came of it.
    pub said: Option<String>,
    /// A screenshot that was asked for, once it is taken.
    pub(super) shot: Arc<Mutex<Option<Arc<ColorImage>>>>,
    /// Where the plot's card lay in the last frame.
    pub card: Option<Rect>,
    /// How many pages the cards are to be scrolled down in the next frame; below zero up.
    pub(super) pages: f32,
    /// A try that is being typed.
    pub trying: Option<Trying>,
    /// Where the sheet of the meet or the picture goes is being asked.
    pub printing: Option<Printing>,
    /// What was painted of the points; dropped when they change.
    pub(super) kept: Option<Kept>,
    /// Strength over time of the open lift.
    pub strength: StrengthSheet,
    /// The tab that this state is about.
    of: Option<(String, Option<crate::units::Side>)>,
}

/// What leaves the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Export {
    /// The points as CSV, on the clipboard.
    Csv,
    /// The plot as a PNG file.
    Picture,
}

/// Two digits within so many seconds are one number, as on the dock.
const TOGETHER_SECS: f64 = 1.0;
/// Most repetitions that bests are kept for.
const MOST_REPS: u16 = 12;

impl TotalsState {
    /// Repetitions looked at.
    pub fn reps(&self) -> u16 {
        self.reps.clamp(1, MOST_REPS)
    }

    /// Starts anew where another lift is open.
    pub fn keep_within(&mut self, view: &TotalsView) {
        let tab = view.open.as_ref().and_then(|lift| view.lifts.get(lift.nth));
        let now = tab.map(|tab| (tab.movement.clone(), tab.side));
        if self.of != now {
            self.of = now;
            self.walked = None;
            self.asked_kg = None;
            self.kept = None;
        }
        let count = view.open.as_ref().map_or(0, |lift| lift.points.len());
        self.walked = self.walked.filter(|nth| *nth < count);
    }

    /// Performs an action of this place.
    pub fn perform(&mut self, action: Action, view: &TotalsView, actions: &mut Actions) {
        let lift = view.open.as_ref();
        self.said = None;
        let step = match view.unit {
            Unit::Kg => 1.0,
            Unit::Lb => KG_PER_LB,
        };
        match action {
            Action::LessBodyweight => self.slide(lift, -1.0, step / 10.0),
            Action::MoreBodyweight => self.slide(lift, 1.0, step / 10.0),
            Action::MuchLessBodyweight => self.slide(lift, -10.0, step / 10.0),
            Action::MuchMoreBodyweight => self.slide(lift, 10.0, step / 10.0),
            Action::PointBack => self.walk(lift, false),
            Action::PointOn => self.walk(lift, true),
            Action::PageUp => self.pages -= 1.0,
            Action::PageDown => self.pages += 1.0,
            Action::NextLift => self.turn(view, 1, actions),
            Action::LiftReps(digit) => self.digit(u16::from(digit)),
            Action::CopyPoints => self.export = lift.map(|_| Export::Csv),
            Action::StrengthOverTime => self.strength.open(),
            Action::MeetSheet => self.print(view),
            Action::LogTry => self.trying = Trying::of(view),
            Action::SavePicture => self.export = lift.map(|_| Export::Picture),
            Action::Back if self.printing.take().is_some() || self.trying.take().is_some() => {}
            Action::Back => {
                self.walked = None;
                self.asked_kg = None;
            }
            _ => {}
        }
    }

    /// So many tenths of the reader's unit further, on whole tenths.
    fn slide(&mut self, lift: Option<&LiftView>, tenths: f64, tenth_kg: f64) {
        let Some(known) = lift.and_then(|lift| lift.what_if.as_ref()) else {
            return;
        };
        let today = lift
            .and_then(|lift| lift.today_kg)
            .unwrap_or(known.bodyweight.kg());
        let from = self.asked_kg.unwrap_or(today);
        self.ask(lift, ((from / tenth_kg).round() + tenths) * tenth_kg);
    }

    /// Asks about a bodyweight, as far as anything is said about it.
    pub fn ask(&mut self, lift: Option<&LiftView>, kg: f64) {
        let Some(known) = lift.and_then(|lift| lift.what_if.as_ref()) else {
            return;
        };
        let lightest = known.healthy_from().map_or(20.0, Bodyweight::kg);
        self.asked_kg = Some(kg.clamp(lightest, 400.0));
    }

    /// Asks where the sheet of the meet goes, or says why there is none.
    fn print(&mut self, view: &TotalsView) {
        let meet = view.meet.as_ref().ok_or(&view.no_meet);
        let meet = meet.and_then(|meet| meet.refused.as_ref().map_or(Ok(meet), Err));
        match meet {
            Ok(meet) => {
                let athletes = vec![meet.athlete.clone()];
                self.printing = Some(Printing::new(What::Paper(Paper::Meet, athletes), &meet.sheet));
            }
            Err(why) => self.said = Some(why.clone()),
        }
    }

    fn walk(&mut self, lift: Option<&LiftView>, on: bool) {
        let count = lift.map_or(0, |lift| lift.points.len());
        let Some(last) = count.checked_sub(1) else { return };
        self.walked = Some(match (self.walked, on) {
            (None, _) => last,
            (Some(nth), true) => (nth + 1).min(last),
            (Some(nth), false) => nth.saturating_sub(1),
        });
    }

    fn turn(&self, view: &TotalsView, by: usize, actions: &mut Actions) {
        let now = view.open.as_ref().map_or(0, |lift| lift.nth);
        if let Some(tab) = view.lifts.get((now + by) % view.lifts.len().max(1)) {
            actions.write(Deed::ShowLift(tab.movement.clone(), tab.side));
        }
    }

    fn digit(&mut self, digit: u16) {
        let joined = self.reps * 10 + digit;
        let soon = self.digit_at.is_some_and(|at| self.now - at <= TOGETHER_SECS);
        self.reps = if soon && (10..=MOST_REPS).contains(&joined) {
            joined
        } else {
            digit.max(1)
        };
        self.digit_at = Some(self.now);
    }
}
