//! What each action says of itself: title, tooltip, keys, context. One line an action.

use egui::Key;

use crate::ui::keys::Chord;
use crate::units::Rail;

use super::{Action, Context};

impl Action {
    pub(super) fn row(self) -> (String, &'static str, Vec<Chord>, Context) {
        use Action::*;
        use Context::*;
        let say = |title: &str| title.to_owned();
        match self {
            Go(place) => (
                format!("Go to {}", place.title()),
                "Opens this place.",
                vec![Chord::alt(digit(place.number()))],
                Everywhere,
            ),
            NextAthlete => (
                say("Next athlete"),
                "In the roster's order.",
                vec![Chord::alt(Key::ArrowDown)],
                Everywhere,
            ),
            PreviousAthlete => (
                say("Previous athlete"),
                "In the roster's order.",
                vec![Chord::alt(Key::ArrowUp)],
                Everywhere,
            ),
            ShowKeys => (
                say("All keys"),
                "Lists the keys of this place.",
                vec![Chord::plain(Key::F1)],
                Everywhere,
            ),
            ShowPalette => (
                say("All actions"),
                "Find an action by its name.",
                vec![Chord::ctrl(Key::K)],
                Everywhere,
            ),
            Find => (
                say("Find"),
                "An athlete by name.",
                vec![Chord::ctrl(Key::F)],
                Everywhere,
            ),
            Undo => (
                say("Undo"),
                "Takes back the newest record.",
                vec![Chord::ctrl(Key::Z)],
                Everywhere,
            ),
            Back => (
                say("Back"),
                "Closes what is open.",
                vec![Chord::plain(Key::Escape)],
                Everywhere,
            ),
            Larger => (
                say("Larger text"),
                "Up to 200 %.",
                vec![Chord::ctrl(Key::Plus), Chord::ctrl(Key::Equals)],
                Everywhere,
            ),
            Smaller => (
                say("Smaller text"),
                "Down to 100 %.",
                vec![Chord::ctrl(Key::Minus)],
                Everywhere,
            ),
            UsualSize => (
                say("Text at 100 %"),
                "The usual size.",
                vec![Chord::ctrl(Key::Num0)],
                Everywhere,
            ),
            TurnTheme => (
                say("Light, dark or as the system"),
                "Turns to the next look.",
                vec![Chord::ctrl(Key::T)],
                Everywhere,
            ),
            LessMotion => (
                say("Less motion"),
                "Hands move to a rung at once.",
                vec![],
                Everywhere,
            ),
            Hand(rail) => {
                let (title, key) = match rail {
                    Rail::Left => ("Log the left hand", Key::L),
                    Rail::Right => ("Log the right hand", Key::R),
                    Rail::Both => ("Log both hands", Key::B),
                };
                (
                    say(title),
                    "The dock logs for this hand.",
                    vec![Chord::plain(key)],
                    Next,
                )
            }
            Amount(n) => (
                format!("{n} reps"),
                "Digits within a second join: 1, 2 is 12.",
                vec![Chord::plain(digit(n))],
                Next,
            ),
            Reserve(n) => (
                format!("{n} in reserve"),
                "Repetitions in reserve at the set's end.",
                vec![Chord::shift(digit(n))],
                Next,
            ),
            LogSet => (
                say("Log the set"),
                "Writes what the main button says.",
                vec![Chord::plain(Key::Enter)],
                Next,
            ),
            Missed => (
                say("Missed"),
                "One more was tried and failed.",
                vec![Chord::plain(Key::M)],
                Next,
            ),
            FormNotKept => (
                say("Standard not kept"),
                "The reps were done, but not as the movement asks.",
                vec![Chord::plain(Key::F)],
                Next,
            ),
            RestClock => (
                say("Rest clock"),
                "Starts or stops it.",
                vec![Chord::plain(Key::Space)],
                Next,
            ),
            HoldClock => (
                say("Hold clock"),
                "Counts 3-2-1, then runs; any key stops it.",
                vec![Chord::plain(Key::H)],
                Next,
            ),
            Pain => (
                say("Report pain"),
                "Where, and how much of 10.",
                vec![Chord::plain(Key::P)],
                Next,
            ),
            WeighIn => (
                say("Weigh in"),
                "Writes today's bodyweight.",
                vec![Chord::plain(Key::K)],
                Next,
            ),
            UndoSet => (
                say("Undo"),
                "Takes back the newest record.",
                vec![Chord::plain(Key::U)],
                Next,
            ),
            Note => (
                say("Add a note"),
                "To the next set, or by itself.",
                vec![Chord::plain(Key::N)],
                Next,
            ),
            Why => (
                say("Why, first card"),
                "Every reason in full, with its rule.",
                vec![Chord::plain(Key::W)],
                Next,
            ),
            WhyOther => (
                say("Why, second card"),
                "Every reason in full, with its rule.",
                vec![Chord::plain(Key::V)],
                Next,
            ),
            WhyNext => (
                say("Why, third card"),
                "Every reason in full, with its rule.",
                vec![Chord::plain(Key::X)],
                Next,
            ),
            WarmUp => (
                say("Warm-up"),
                "Shows the steps, or ticks the next one.",
                vec![Chord::plain(Key::Q)],
                Next,
            ),
            AtTheBar => (
                say("At the bar"),
                "Next in letters that are read from three metres.",
                vec![Chord::plain(Key::F11)],
                Next,
            ),
            LeaveBar => (
                say("Leave the bar view"),
                "Back to Next.",
                vec![Chord::plain(Key::F11)],
                Bar,
            ),
            BarMore => (
                say("One more"),
                "Changes the reps or seconds that are logged.",
                vec![Chord::plain(Key::ArrowUp)],
                Bar,
            ),
            BarFewer => (
                say("One fewer"),
                "Changes the reps or seconds that are logged.",
                vec![Chord::plain(Key::ArrowDown)],
                Bar,
            ),
            BarMissed => (
                say("Missed"),
                "One more was tried and failed.",
                vec![Chord::plain(Key::M)],
                Bar,
            ),
            BarUndo => (
                say("Undo"),
                "Takes back the newest record.",
                vec![Chord::plain(Key::Backspace)],
                Bar,
            ),
            RungUp => (
                say("Rung above"),
                "Chooses it.",
                vec![Chord::plain(Key::ArrowUp)],
                Ladders,
            ),
            RungDown => (
                say("Rung below"),
                "Chooses it.",
                vec![Chord::plain(Key::ArrowDown)],
                Ladders,
            ),
            BesideLeft => (
                say("Branch beside"),
                "Goes from a rung to a branch that joins there.",
                vec![Chord::plain(Key::ArrowLeft)],
                Ladders,
            ),
            BesideRight => (
                say("Back to the main line"),
                "Goes from a branch to the rung it joins.",
                vec![Chord::plain(Key::ArrowRight)],
                Ladders,
            ),
            PageUp => (
                say("Higher part"),
                "Scrolls a long ladder up.",
                vec![Chord::plain(Key::PageUp)],
                Ladders,
            ),
            PageDown => (
                say("Lower part"),
                "Scrolls a long ladder down.",
                vec![Chord::plain(Key::PageDown)],
                Ladders,
            ),
            HandsToMiddle => (
                say("Hands to the middle"),
                "Scrolls so that both hands show.",
                vec![Chord::plain(Key::H)],
                Ladders,
            ),
            PlaceHand => (
                say("Place a hand here"),
                "Puts a hand on the chosen rung.",
                vec![Chord::plain(Key::P)],
                Ladders,
            ),
            SetAside => (
                say("Set a rail aside"),
                "No advice for it until it is placed again.",
                vec![Chord::plain(Key::A)],
                Ladders,
            ),
            OtherLadder => (
                say("Other ladder"),
                "Opens or joins another ladder.",
                vec![Chord::plain(Key::O)],
                Ladders,
            ),
            RowUp => (
                say("Line above"),
                "Chooses it.",
                vec![Chord::plain(Key::ArrowUp)],
                Roster,
            ),
            RowDown => (
                say("Line below"),
                "Chooses it.",
                vec![Chord::plain(Key::ArrowDown)],
                Roster,
            ),
            OpenRow => (
                say("Open"),
                "Opens Next of the chosen athlete.",
                vec![Chord::plain(Key::Enter)],
                Roster,
            ),
            NextGroup => (
                say("Next group"),
                "Goes to the next need.",
                vec![Chord::plain(Key::G)],
                Roster,
            ),
            LessBodyweight => (
                say("A little lighter"),
                "Asks about a bodyweight 0.1 lower.",
                vec![Chord::plain(Key::OpenBracket)],
                Totals,
            ),
            MoreBodyweight => (
                say("A little heavier"),
                "Asks about a bodyweight 0.1 higher.",
                vec![Chord::plain(Key::CloseBracket)],
                Totals,
            ),
            MuchLessBodyweight => (
                say("Lighter"),
                "Asks about a bodyweight 1 lower.",
                vec![
                    Chord::shift(Key::OpenBracket),
                    Chord::plain(Key::OpenCurlyBracket),
                ],
                Totals,
            ),
            MuchMoreBodyweight => (
                say("Heavier"),
                "Asks about a bodyweight 1 higher.",
                vec![
                    Chord::shift(Key::CloseBracket),
                    Chord::plain(Key::CloseCurlyBracket),
                ],
                Totals,
            ),
            PointBack => (
                say("Earlier set"),
                "Reads the set before on the plot.",
                vec![Chord::plain(Key::ArrowLeft)],
                Totals,
            ),
            PointOn => (
                say("Later set"),
                "Reads the set after on the plot.",
                vec![Chord::plain(Key::ArrowRight)],
                Totals,
            ),
            NextLift => (
                say("Next movement"),
                "Opens the next movement.",
                vec![Chord::plain(Key::M)],
                Totals,
            ),
            LiftReps(reps) => (
                format!("Bests for {reps} reps"),
                "Two digits in a second make 10 to 12.",
                vec![Chord::plain(digit(reps))],
                Totals,
            ),
            CopyPoints => (
                say("Copy as CSV"),
                "Puts every set of the plot on the clipboard.",
                vec![Chord::plain(Key::C)],
                Totals,
            ),
            SavePicture => (
                say("Save picture"),
                "Writes the plot as a PNG file.",
                vec![Chord::ctrl(Key::S)],
                Totals,
            ),
            FilterRoster => (
                say("Filter"),
                "By name or ladder.",
                vec![Chord::plain(Key::Slash)],
                Roster,
            ),
            ChoiceUp => (
                say("Choice above"),
                "Both hands move up.",
                vec![Chord::plain(Key::ArrowUp)],
                First,
            ),
            ChoiceDown => (
                say("Choice below"),
                "Both hands move down.",
                vec![Chord::plain(Key::ArrowDown)],
                First,
            ),
            TakeChoice => (
                say("Take this"),
                "Opens what the hands hold.",
                vec![Chord::plain(Key::Enter)],
                First,
            ),
            OpenDemo => (
                say("Open the demo gym"),
                "Invented athletes in a folder of its own.",
                vec![Chord::plain(Key::D)],
                First,
            ),
            StartLogbook => (
                say("Start a logbook"),
                "Name, unit, plates, first weigh-in.",
                vec![Chord::plain(Key::N)],
                First,
            ),
            OpenLogbook => (
                say("Open a logbook you have"),
                "Pick its folder; nothing in it is changed.",
                vec![Chord::plain(Key::O)],
                First,
            ),
            ImportSheet => (
                say("Bring a spreadsheet"),
                "Its rows are shown before anything is written.",
                vec![Chord::plain(Key::I)],
                First,
            ),
        }
    }
}

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
