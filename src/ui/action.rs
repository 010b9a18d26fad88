//! Everything that can be asked for by button, key or palette. An action has a title, a sentence for its tooltip, its keys and the
//! place where it holds; so that button, key and palette agree.

mod rows;

use crate::units::Rail;

use super::book::Deed;
use super::keys::Chord;
use super::views::Place;

/// Where an action holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Context {
    /// In every place of an open logbook.
    Everywhere,
    /// On Next.
    Next,
    /// At the bar.
    Bar,
    /// On Ladders.
    Ladders,
    /// On the roster.
    Roster,
    /// On Totals.
    Totals,
    /// Before a logbook is open.
    First,
}

/// Something that can be asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Action {
    Go(Place),
    NextAthlete,
    PreviousAthlete,
    ShowKeys,
    ShowPalette,
    Find,
    Undo,
    Back,
    Larger,
    Smaller,
    UsualSize,
    TurnTheme,
    LessMotion,
    Hand(Rail),
    Amount(u8),
    Reserve(u8),
    LogSet,
    Missed,
    FormNotKept,
    RestClock,
    HoldClock,
    Pain,
    WeighIn,
    UndoSet,
    Note,
    Why,
    WhyOther,
    WhyNext,
    WarmUp,
    AtTheBar,
    LeaveBar,
    BarMore,
    BarFewer,
    BarMissed,
    BarUndo,
    RungUp,
    RungDown,
    BesideLeft,
    BesideRight,
    PageUp,
    PageDown,
    HandsToMiddle,
    PlaceHand,
    SetAside,
    OtherLadder,
    RowUp,
    RowDown,
    OpenRow,
    NextGroup,
    FilterRoster,
    LessBodyweight,
    MoreBodyweight,
    MuchLessBodyweight,
    MuchMoreBodyweight,
    PointBack,
    PointOn,
    NextLift,
    LiftReps(u8),
    CopyPoints,
    SavePicture,
    ChoiceUp,
    ChoiceDown,
    TakeChoice,
    OpenDemo,
    StartLogbook,
    OpenLogbook,
    ImportSheet,
}

/// What an action says of itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ActionWords {
    /// Its title, as the palette and a button say it.
    pub title: String,
    /// A sentence more.
    pub tooltip: &'static str,
    /// Its keys; the first is the one shown.
    pub keys: Vec<Chord>,
    /// Where it holds.
    pub context: Context,
}

impl Action {
    /// Every action.
    pub fn all() -> Vec<Action> {
        use Action::*;
        let mut all: Vec<Action> = Place::ALL.into_iter().map(Go).collect();
        all.extend([
            NextAthlete,
            PreviousAthlete,
            ShowKeys,
            ShowPalette,
            Find,
            Undo,
            Back,
        ]);
        all.extend([Larger, Smaller, UsualSize, TurnTheme, LessMotion]);
        all.extend([Rail::Left, Rail::Right, Rail::Both].map(Hand));
        all.extend((0..=9).map(Amount));
        all.extend((0..=9).map(Reserve));
        all.extend([
            LogSet,
            Missed,
            FormNotKept,
            RestClock,
            HoldClock,
            Pain,
            WeighIn,
            Note,
        ]);
        all.extend([UndoSet, Why, WhyOther, WhyNext, WarmUp, AtTheBar]);
        all.extend([LeaveBar, BarMore, BarFewer, BarMissed, BarUndo]);
        all.extend([RungUp, RungDown, BesideLeft, BesideRight, PageUp, PageDown]);
        all.extend([HandsToMiddle, PlaceHand, SetAside, OtherLadder]);
        all.extend([RowUp, RowDown, OpenRow, NextGroup, FilterRoster]);
        all.extend([
            LessBodyweight,
            MoreBodyweight,
            MuchLessBodyweight,
            MuchMoreBodyweight,
        ]);
        all.extend([PointBack, PointOn, NextLift, CopyPoints, SavePicture]);
        all.extend((0..=9).map(LiftReps));
        all.extend([
            ChoiceUp,
            ChoiceDown,
            TakeChoice,
            OpenDemo,
            StartLogbook,
            OpenLogbook,
            ImportSheet,
        ]);
        all
    }

    /// Its title, tooltip, keys and context.
    pub fn words(self) -> ActionWords {
        let (title, tooltip, keys, context) = self.row();
        ActionWords {
            title,
            tooltip,
            keys,
            context,
        }
    }

    /// The key beside its button.
    pub fn key(self) -> String {
        self.row().2.first().map(Chord::words).unwrap_or_default()
    }
}

/// What a frame asked for: actions to perform once all is drawn, and deeds for the logbook.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Actions {
    /// Asked by a button or key.
    pub asked: Vec<Action>,
    /// To be written or opened.
    pub deeds: Vec<Deed>,
}

impl Actions {
    /// Asks for an action.
    pub fn ask(&mut self, action: Action) {
        self.asked.push(action);
    }

    /// Asks for a deed.
    pub fn write(&mut self, deed: Deed) {
        self.deeds.push(deed);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashMap;

    #[test]
    fn no_two_actions_share_a_key_where_both_hold() {
        let mut taken: HashMap<(Context, Chord), Action> = HashMap::new();
        for action in Action::all() {
            let words = action.words();
            for key in words.keys {
                let everywhere = taken.get(&(Context::Everywhere, key)).copied();
                let here = taken.insert((words.context, key), action);
                assert_eq!(
                    here.or(everywhere),
                    None,
                    "{action:?} and {here:?}{everywhere:?} share {}",
                    key.words()
                );
            }
        }
    }

    #[test]
    fn every_action_says_what_it_does_in_a_sentence() {
        for action in Action::all() {
            let words = action.words();
            assert!(!words.title.is_empty());
            assert!(words.tooltip.ends_with('.'), "{action:?}");
        }
    }
}
