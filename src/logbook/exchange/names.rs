//! Names as people write them, led back to ids: case, spaces, `-` and `_` make no difference.

use std::collections::HashMap;

use crate::catalogue::{Catalogue, Ladder, Movement, Rung};
use crate::problem::did_you_mean;

use super::column::fold;

/// Movements and ladders by folded name.
pub(super) struct Names<'c> {
    catalogue: &'c Catalogue,
    movements: HashMap<String, &'c Movement>,
    ladders: HashMap<String, &'c Ladder>,
}

impl<'c> Names<'c> {
    pub(super) fn of(catalogue: &'c Catalogue) -> Self {
        Self {
            catalogue,
            movements: catalogue
                .movements()
                .map(|movement| (fold(&movement.id), movement))
                .collect(),
            ladders: catalogue
                .ladders()
                .map(|ladder| (fold(&ladder.id), ladder))
                .collect(),
        }
    }

    pub(super) fn movement(&self, text: &str) -> Option<&'c Movement> {
        self.catalogue
            .movement(text)
            .or_else(|| self.movements.get(&fold(text)).copied())
    }

    pub(super) fn ladder(&self, text: &str) -> Option<&'c Ladder> {
        self.catalogue
            .ladder(text)
            .or_else(|| self.ladders.get(&fold(text)).copied())
    }

    /// The mend for a movement that isn't there.
    pub(super) fn near_movement(&self, text: &str) -> String {
        let ids = self.catalogue.movements().map(|movement| movement.id.as_str());
        mend(text, ids, "add it to movements.ron in the logbook")
    }

    /// The mend for a ladder that isn't there.
    pub(super) fn near_ladder(&self, text: &str) -> String {
        let ids = self.catalogue.ladders().map(|ladder| ladder.id.as_str());
        mend(text, ids, "add a file for it to ladders in the logbook")
    }
}

/// The rung of `ladder` that `text` names.
pub(super) fn rung<'c>(ladder: &'c Ladder, text: &str) -> Option<&'c Rung> {
    ladder.rung(text).or_else(|| {
        let folded = fold(text);
        ladder.rungs.iter().find(|rung| fold(&rung.id) == folded)
    })
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
