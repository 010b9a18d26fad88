//! What a rung asks before it is tried.

use super::work::{impossible_ratio, is_amount, is_ratio, no_system_load};
use super::{Findings, Movements, Spot, known_movement};
use crate::catalogue::Help;
use crate::catalogue::read::{RawEntry, RawRung, standard_of};
use crate::units::Measure;

/// The mistakes of a rung's entry conditions.
pub(super) fn entries(found: &mut Findings, spot: &Spot, rung: &RawRung, movements: &Movements) {
    for (at, entry) in rung.entry.iter().enumerate() {
        let spot = spot.item(at);
        one(found, &spot, entry, movements);
        if asks_the_rung_itself(rung, entry) {
            found.warning(
                spot,
                "the rung can't be reached: it asks for more than what it trains itself",
                "ask for less, or for a movement that is trained before",
            );
        }
    }
}

fn one(found: &mut Findings, spot: &Spot, entry: &RawEntry, movements: &Movements) {
    let movement = known_movement(found, spot.field("movement"), &entry.movement, movements);
    match (entry.reps, entry.seconds) {
        (Some(_), Some(_)) => found.error(
            spot.field("seconds"),
            "one entry asks both repetitions and seconds",
            "keep the one that the movement is counted in",
        ),
        (None, None) => found.error(
            spot.clone(),
            "the entry says no amount",
            "add reps or seconds, for example reps: 5",
        ),
        (reps, seconds) if !is_amount(reps, seconds) => found.error(
            spot.field(if reps.is_some() { "reps" } else { "seconds" }),
            "no set is so long or so short",
            "give 1 to 1000 repetitions, or over 0 to 3600 seconds",
        ),
        (reps, _) => {
            let slip = match (movement.map(|movement| movement.measure), reps) {
                (Some(Measure::Hold), Some(_)) => Some(("reps", "a hold, counted in seconds", "seconds")),
                (Some(Measure::Reps), None) => Some(("seconds", "counted in repetitions", "reps")),
                _ => None,
            };
            if let Some((given, how, right)) = slip {
                found.error(
                    spot.field(given),
                    format!("{} is {how}, but the entry gives {given}", entry.movement),
                    format!("write {right} in place of {given}"),
                );
            }
        }
    }
    let Some(ratio) = entry.ratio else { return };
    if !is_ratio(ratio) {
        impossible_ratio(found, spot.field("ratio"), ratio);
    } else if movement.is_some_and(|movement| movement.share().is_none()) {
        no_system_load(found, spot.field("ratio"), &entry.movement);
    }
}

/// Whether only whoever has passed this rung could enter it: its own movement, its load or more, beyond its range.
fn asks_the_rung_itself(rung: &RawRung, entry: &RawEntry) -> bool {
    let own = entry.movement == rung.movement && matches!(rung.help, Help::Added | Help::Plain);
    let amount = entry.reps.map(f64::from).or(entry.seconds).unwrap_or(0.0);
    let asked = standard_of(&rung.standard, &rung.work);
    own && amount > rung.work.range.hi() && entry.ratio.unwrap_or(1.0) >= asked.ratio.unwrap_or(1.0)
}
