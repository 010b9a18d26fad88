//! The pictures of the README, made by the program itself from the demo gym of one day.
//!
//! `cargo test --test ui readme -- --ignored` writes `assets/next.png` and `assets/ladders.png`. They are not compared: the
//! demo's advice may change with every rule, and the pictures that are compared lie in `tests/pictures`.

use std::path::PathBuf;
use std::sync::Arc;

use chrono::NaiveDate;
use rungwright::demo::{Plan, gym};
use rungwright::logbook::disk::RealDisk;
use rungwright::logbook::{Machine, Name, Places, Settings, Writer};
use rungwright::ui::app::{Remembered, Window};
use rungwright::ui::book::{Book, Deed};
use rungwright::ui::shelf::Shelf;
use rungwright::ui::theme::Choice;
use rungwright::ui::views::{Place, Verdict};
use rungwright::units::Unit;

use crate::kit::{DESK, open};

#[test]
#[ignore = "writes the README's pictures"]
fn readme_pictures_are_made_from_the_demo_gym() {
    let home = tempfile::tempdir().unwrap();
    let on = NaiveDate::from_ymd_opt(2026, 3, 18).unwrap();
    let machine = Machine::with(RealDisk, Places::inside(home.path()));
    let root = machine.places().default_logbook();
    let gym = gym(&Plan {
        athletes: 12,
        years: 1,
        seed: 1,
        on,
    });
    let now = chrono::DateTime::UNIX_EPOCH;
    let (mut writer, _) =
        Writer::lock(&machine, &root, "demo".into(), now, std::time::Duration::ZERO).unwrap();
    let settings = Settings {
        name: Some("Demo gym".into()),
        plates: gym.plates.clone(),
        ..Settings::fresh(Unit::Kg)
    };
    writer.write_settings(&settings).unwrap();
    let batch = gym
        .athletes
        .iter()
        .map(|(name, records)| (Name::parse(name).unwrap(), records.clone()))
        .collect();
    writer.commit(batch).unwrap();
    drop(writer);
    for (place, file) in [
        (Place::Next, "assets/next.png"),
        (Place::Ladders, "assets/ladders.png"),
    ] {
        let no_demo = |_| Err::<PathBuf, String>(String::new());
        let mut shelf =
            Shelf::new(machine.clone(), "bench".into(), Some(on), Arc::new(no_demo)).with(&root, None, false);
        while shelf.progress().is_some() {
            shelf.poll();
        }
        let two_hands = shelf
            .roster()
            .lines
            .into_iter()
            .find(|line| {
                line.verdicts.len() == 2
                    && line
                        .verdicts
                        .iter()
                        .any(|(_, verdict)| *verdict == Verdict::StepUp)
            })
            .expect("someone climbs with two hands and may step up");
        shelf.perform(Deed::ChooseAthlete(two_hands.athlete));
        let remembered = Remembered {
            place,
            theme: Choice::Light,
            less_motion: true,
            ..Remembered::default()
        };
        let window = Window::new(shelf, remembered);
        let mut harness = open(DESK, Choice::Light, window, |ui, window| {
            window.logic(ui.ctx());
            window.ui(ui);
        });
        harness.run();
        harness.render().expect("the CPU draws").save(file).unwrap();
    }
}
