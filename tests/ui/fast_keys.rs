//! Keys typed faster than frames are drawn: all of them in one frame, as a busy machine hands them over. None is lost, and each does
//! what it would have done alone.

use egui::{Event, Key, Modifiers};
use rungwright::ui::gym::GymDeed;
use rungwright::ui::key_queue::KeyQueue;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::Place;

use crate::coach::gym_deeds;
use crate::fake_book::FakeBook;
use crate::kit::DESK;
use crate::screens::{Opened, window};

/// A key as the system reports it: down, the letter that it writes, up.
fn key(key: Key, text: Option<&str>) -> Vec<Event> {
    let event = |pressed| Event::Key {
        key,
        physical_key: None,
        pressed,
        repeat: false,
        modifiers: Modifiers::NONE,
    };
    let letter = text.map(|text| Event::Text(text.to_owned()));
    [event(true)]
        .into_iter()
        .chain(letter)
        .chain([event(false)])
        .collect()
}

/// A text with `>` for Tab and a line's end for Enter.
fn keys(text: &str) -> Vec<Event> {
    let of = |letter: char| match letter {
        '\n' => key(Key::Enter, None),
        '>' => key(Key::Tab, None),
        ' ' => key(Key::Space, Some(" ")),
        '.' => key(Key::Period, Some(".")),
        other => {
            let name = other.to_uppercase().to_string();
            key(Key::from_name(&name).unwrap(), Some(&other.to_string()))
        }
    };
    text.chars().flat_map(of).collect()
}

/// The roster, with all of `text` typed within one frame.
fn at_once(text: &str) -> Opened {
    let mut harness = window(FakeBook::open(), Place::Roster, DESK, Choice::Light);
    harness.ctx.add_plugin(KeyQueue::default());
    harness.run();
    harness.input_mut().events.extend(keys(text));
    harness.run_steps(200);
    harness
}

#[test]
fn a_class_typed_within_one_frame_has_every_set_as_it_was_typed() {
    let harness = at_once("xxt6 2\n7 m\n\n12\n9\n\n");
    let deeds = gym_deeds(&harness);
    let Some(GymDeed::LogClass(results)) = deeds.last() else {
        panic!("{deeds:?}")
    };
    let amounts: Vec<f64> = results
        .iter()
        .flat_map(|result| result.sets.iter().map(|set| set.amount))
        .collect();
    assert_eq!(
        amounts,
        [6.0, 7.0, 5.0, 12.0, 9.0],
        "the third as the sheet asked it"
    );
}

#[test]
fn a_new_athlete_typed_within_one_frame_is_whole() {
    let harness = at_once("anoor haddad>front>61.5\n");
    let new = GymDeed::NewAthlete {
        name: "noor haddad".into(),
        ladder: Some("front-lever".into()),
        bodyweight: Some(61.5),
    };
    assert_eq!(gym_deeds(&harness), [new]);
}

#[test]
fn archiving_is_reached_by_tab_and_enter() {
    let harness = at_once("e>>\n");
    let archived = GymDeed::Archive {
        athlete: "ximena quispe".into(),
        archived: true,
    };
    assert_eq!(gym_deeds(&harness), [archived]);
}
