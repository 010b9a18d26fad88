//! The movements and ladders that the program brings along, compiled in so that the binary runs alone.
//!
//! A ladder's file is read when the ladder is first asked for, and never checked here: a test holds that every shipped file
//! is sound. So a command that needs one ladder, or none, does not wait for nineteen.

use std::sync::{LazyLock, OnceLock};

use super::check::Movements;
use super::{Ladder, read};

/// The movements' file.
pub(super) const MOVEMENTS: &str = include_str!("../../progressions/movements.ron");

/// The shipped movements, by id.
pub(super) static BY_ID: LazyLock<Movements> = LazyLock::new(|| {
    let movements = read::sound_movements(MOVEMENTS).into_iter();
    movements
        .map(|movement| (movement.id.clone(), movement))
        .collect()
});

/// A shipped ladder.
#[derive(Debug)]
pub(super) struct Shipped {
    /// The ladder's id, which names its file too.
    pub id: &'static str,
    /// Its file as it was written.
    pub text: &'static str,
    ladder: OnceLock<Option<Ladder>>,
}

impl Shipped {
    /// The ladder; none only if its file were not sound.
    pub fn ladder(&self) -> Option<&Ladder> {
        self.ladder
            .get_or_init(|| read::sound_ladder(self.text, &BY_ID))
            .as_ref()
    }
}

macro_rules! ladders {
    ($($id:literal),* $(,)?) => {
        [$(Shipped {
            id: $id,
            text: include_str!(concat!("../../progressions/", $id, ".ron")),
            ladder: OnceLock::new(),
        }),*]
    };
}

/// The ladders.
pub(super) static LADDERS: [Shipped; 19] = ladders![
    "back-lever",
    "first-dip",
    "first-pull-up",
    "front-lever",
    "handstand",
    "handstand-push-up",
    "l-sit",
    "muscle-up",
    "nordic-curl",
    "one-arm-chin-up",
    "one-arm-hang",
    "one-arm-pull-up",
    "one-arm-push-up",
    "one-arm-row",
    "pistol-squat",
    "planche",
    "toes-to-bar",
    "weighted-dip",
    "weighted-pull-up",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shipped_file_is_sound_and_read_unchecked_as_it_is_checked() {
        let movements = read::movements("movements.ron", MOVEMENTS);
        assert_eq!(movements.problems, []);
        assert_eq!(movements.value, read::sound_movements(MOVEMENTS), "the movements");
        for shipped in &LADDERS {
            let checked = read::ladder(shipped.id, shipped.text, &BY_ID);
            assert_eq!(checked.problems, [], "{}", shipped.id);
            assert_eq!(checked.value.as_ref(), shipped.ladder(), "{}", shipped.id);
            let id = shipped.ladder().map(|ladder| ladder.id.as_str());
            assert_eq!(id, Some(shipped.id), "a file is named as its ladder");
        }
    }
}
