//! Mends for names that the catalogue doesn't know.

use crate::catalogue::{Catalogue, Ladder};
use crate::problem::did_you_mean;

/// The mend for a movement that isn't there.
pub(super) fn near_movement(catalogue: &Catalogue, text: &str) -> String {
    let ids = catalogue.movements().map(|movement| movement.id.as_str());
    mend(text, ids, "add it to movements.ron in the logbook")
}

/// The mend for a ladder that isn't there.
pub(super) fn near_ladder(catalogue: &Catalogue, text: &str) -> String {
    let ids = catalogue.ladders().map(|ladder| ladder.id.as_str());
    mend(text, ids, "add a file for it to ladders in the logbook")
}

/// The mend for a rung that `ladder` hasn't.
pub(super) fn near_rung(ladder: &Ladder, text: &str) -> String {
    let ids: Vec<&str> = ladder.rungs.iter().map(|rung| rung.id.as_str()).collect();
    mend(
        text,
        ids.iter().copied(),
        &format!("use one of {}", ids.join(", ")),
    )
}

fn mend<'c>(text: &str, ids: impl Iterator<Item = &'c str>, otherwise: &str) -> String {
    let word = text.trim().to_lowercase().replace([' ', '_'], "-");
    match did_you_mean(&word, ids) {
        Some(id) => format!("did you mean {id}?"),
        None => otherwise.to_owned(),
    }
}
