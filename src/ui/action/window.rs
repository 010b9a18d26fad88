//! Actions of the whole window.

use egui::Key;

use crate::ui::keys::Chord;
use crate::ui::theme::Choice;
use crate::ui::views::Place;

use super::{Action, Row, digit, row};

pub(super) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = Place::ALL.into_iter().map(go).collect();
    rows.extend([
        row(
            Action::NextAthlete,
            "Next athlete",
            "In the roster's order.",
            &[Chord::alt(Key::ArrowDown)],
        ),
        row(
            Action::PreviousAthlete,
            "Previous athlete",
            "In the roster's order.",
            &[Chord::alt(Key::ArrowUp)],
        ),
        row(
            Action::ShowKeys,
            "All keys",
            "Lists the keys of this place.",
            &[Chord::plain(Key::F1)],
        ),
        row(
            Action::ShowPalette,
            "All actions",
            "Find an action by its name.",
            &[Chord::ctrl(Key::K)],
        ),
        row(
            Action::Find,
            "Find",
            "An athlete by name.",
            &[Chord::ctrl(Key::F)],
        ),
        row(
            Action::Undo,
            "Undo",
            "The newest record; in the Workshop, typing or the last deletion.",
            &[Chord::ctrl(Key::Z)],
        ),
        row(
            Action::Back,
            "Back",
            "Closes what is open.",
            &[Chord::plain(Key::Escape)],
        ),
        row(
            Action::Larger,
            "Larger text",
            "Up to 200 %.",
            &[Chord::ctrl(Key::Plus), Chord::ctrl(Key::Equals)],
        ),
        row(
            Action::Smaller,
            "Smaller text",
            "Down to 100 %.",
            &[Chord::ctrl(Key::Minus)],
        ),
        row(
            Action::UsualSize,
            "Text at 100 %",
            "The usual size.",
            &[Chord::ctrl(Key::Num0)],
        ),
        row(
            Action::TurnTheme,
            "Light, dark or as the system",
            "Turns to the next look.",
            &[Chord::ctrl(Key::T)],
        ),
        row(
            Action::Look(Choice::System),
            "Colours as the system",
            "Light by day, dark by night, as the system says.",
            &[],
        ),
        row(
            Action::Look(Choice::Light),
            "Light colours",
            "Chalk page, graphite ink.",
            &[],
        ),
        row(Action::Look(Choice::Dark), "Dark colours", "For a dim room.", &[]),
        row(
            Action::LessMotion,
            "Less motion, or the usual",
            "Hands move to a rung at once.",
            &[],
        ),
        row(
            Action::SingleKeys,
            "Single letters as keys, on or off",
            "Keys with Ctrl or Alt stay.",
            &[],
        ),
        row(
            Action::Beeps,
            "Beeps on or off",
            "At the end of rest and while a hold counts in.",
            &[],
        ),
        row(
            Action::BringSheet,
            "Bring a spreadsheet",
            "Its rows are shown before anything is written.",
            &[],
        ),
        row(
            Action::ReadAgain,
            "Read the logbook again",
            "Changes show by themselves; this asks for them now.",
            &[Chord::plain(Key::F5)],
        ),
        row(
            Action::CloseLogbook,
            "Open another logbook",
            "Puts this one away; everything in it is saved.",
            &[],
        ),
    ]);
    rows
}

fn go(place: Place) -> Row {
    let title = format!("Go to {}", place.title());
    row(
        Action::Go(place),
        &title,
        "Opens this place.",
        &[Chord::alt(digit(place.number()))],
    )
}
