//! Everything that can be asked for by button, key or palette. An action has a title, a sentence for its tooltip, its keys and the
//! place where it holds; so that button, key and palette agree.

mod bar;
mod first;
mod journal;
mod ladders;
mod next;
mod roster;
mod strength;
mod totals;
mod week;
mod weigh_ins;
mod window;
mod workshop;

use std::sync::LazyLock;

use egui::Key;

use crate::units::Rail;

use super::book::Deed;
use super::keys::Chord;
use super::theme::Choice;
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
    /// On Week.
    Week,
    /// In the Workshop.
    Workshop,
    /// While strength over time lies over a place.
    Strength,
    /// On Weigh-ins.
    WeighIns,
    /// On Journal.
    Journal,
    /// While one record of the journal is shown in full.
    Record,
    /// Before a logbook is open.
    First,
    /// While a spreadsheet is brought.
    Import,
}

/// Something that can be asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "the tables of rows say each in words")]
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
    Look(Choice),
    LessMotion,
    SingleKeys,
    Beeps,
    BringSheet,
    PickSheet,
    PickFolder,
    ReadAgain,
    CloseLogbook,
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
    StrengthOverTime,
    MendSet,
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
    MeetSheet,
    LogTry,
    PickPicture,
    EarlierWeek,
    LaterWeek,
    BuildSession,
    SetPhase,
    FirstRow,
    LastRow,
    FilterRecords,
    AmendRecord,
    RetractRecord,
    RestoreRecord,
    PageUpRows,
    PageDownRows,
    NeedOnly(u8),
    MarkRow,
    MarkShown,
    TonightsSheet,
    TypeResults,
    ProgressReport,
    NewAthlete,
    EditAthlete,
    NoteRow,
    PickOutput,
    EditLadder,
    NextMistake,
    MendMistake,
    SaveText,
    FoldRungs,
    TurnBody,
    NewLadder,
    CopyLadder,
    DeleteLadder,
    ThrowAway,
    TextOrLadder,
    ChoiceUp,
    ChoiceDown,
    TakeChoice,
    OpenDemo,
    StartLogbook,
    OpenLogbook,
    ImportSheet,
    MakeLogbook,
}

/// What an action says of itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ActionWords {
    /// Which action it is.
    pub action: Action,
    /// Its title, as the palette and a button say it.
    pub title: String,
    /// A sentence more.
    pub tooltip: &'static str,
    /// Its keys; the first is the one shown.
    pub keys: Vec<Chord>,
    /// Where it holds.
    pub context: Context,
}

/// A row of a place's table: action, title, tooltip, keys.
type Row = (Action, String, &'static str, Vec<Chord>);

fn row(action: Action, title: &str, tooltip: &'static str, keys: &[Chord]) -> Row {
    (action, title.to_owned(), tooltip, keys.to_vec())
}

/// Every action, one table a place. An action without a row has no key and is in no list.
static ALL: LazyLock<Vec<ActionWords>> = LazyLock::new(|| {
    let tables = [
        (Context::Everywhere, window::rows()),
        (Context::Next, next::rows()),
        (Context::Bar, bar::rows()),
        (Context::Ladders, ladders::rows()),
        (Context::Roster, roster::rows()),
        (Context::Totals, totals::rows()),
        (Context::Week, week::rows()),
        (Context::Workshop, workshop::rows()),
        (Context::Strength, strength::rows()),
        (Context::WeighIns, weigh_ins::rows()),
        (Context::Journal, journal::rows()),
        (Context::Record, journal::of_a_record()),
        (Context::First, first::rows()),
    ];
    let words = |context, (action, title, tooltip, keys)| ActionWords {
        action,
        title,
        tooltip,
        keys,
        context,
    };
    tables
        .into_iter()
        .flat_map(|(context, rows)| rows.into_iter().map(move |row| words(context, row)))
        .collect()
});

impl Action {
    /// Every action.
    pub fn all() -> &'static [ActionWords] {
        &ALL
    }

    /// Whether it only begins to write: it opens something to fill in, which a window that only looks could not save.
    pub fn begins_to_write(self) -> bool {
        matches!(
            self,
            Self::Pain
                | Self::WeighIn
                | Self::Note
                | Self::PlaceHand
                | Self::SetAside
                | Self::SetPhase
                | Self::NoteRow
                | Self::NewAthlete
                | Self::EditAthlete
                | Self::TypeResults
                | Self::NewLadder
                | Self::BringSheet
        )
    }

    /// The key beside its button; empty where it has none.
    pub fn key(self) -> String {
        let row = ALL.iter().find(|row| row.action == self);
        row.and_then(|row| row.keys.first())
            .map(Chord::words)
            .unwrap_or_default()
    }
}

/// The key of a digit, 0 to 9.
fn digit(number: u8) -> Key {
    const DIGITS: [Key; 10] = [
        Key::Num0,
        Key::Num1,
        Key::Num2,
        Key::Num3,
        Key::Num4,
        Key::Num5,
        Key::Num6,
        Key::Num7,
        Key::Num8,
        Key::Num9,
    ];
    DIGITS.get(usize::from(number)).copied().unwrap_or(Key::Num0)
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
        for words in Action::all() {
            let action = words.action;
            for key in &words.keys {
                let everywhere = taken.get(&(Context::Everywhere, *key)).copied();
                let here = taken.insert((words.context, *key), action);
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
        for words in Action::all() {
            assert!(!words.title.is_empty());
            assert!(words.tooltip.ends_with('.'), "{words:?}");
        }
    }
}
