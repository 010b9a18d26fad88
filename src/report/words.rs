//! Findings and cautions as sentences: plain, short, second person, a number with its unit.

use crate::catalogue::{Amount, Catalogue, Help, Ladder};
use crate::coaching::NextStep;
use crate::units::{Rail, Side, Unit};

mod cautions;
mod reasons;

pub use cautions::{pain_scale, rung_caution};

use super::numbers::number;

/// What sentences need besides their numbers: titles, the reader's unit, which rail and what it counts.
#[derive(Debug, Clone, Copy)]
pub struct Words<'a> {
    catalogue: &'a Catalogue,
    ladder: Option<&'a Ladder>,
    rail: Rail,
    is_hold: bool,
    is_loaded: bool,
    unit: Unit,
}

impl<'a> Words<'a> {
    /// Words for one rail's advice, masses in `unit`.
    pub fn of(step: &NextStep, catalogue: &'a Catalogue, unit: Unit) -> Self {
        let ladder = catalogue.ladder(&step.ladder);
        let rung = ladder.and_then(|ladder| ladder.rung(&step.rung));
        Self {
            catalogue,
            ladder,
            rail: step.rail,
            is_hold: rung.is_some_and(|rung| rung.work.range.is_hold()),
            is_loaded: rung.is_some_and(|rung| rung.help == Help::Added),
            unit,
        }
    }

    /// Words for cautions of the person, whatever the ladder.
    pub fn of_the_person(catalogue: &'a Catalogue, unit: Unit) -> Self {
        Self {
            catalogue,
            ladder: None,
            rail: Rail::Both,
            is_hold: false,
            is_loaded: false,
            unit,
        }
    }

    /// The title of a step's rail: [`rail_title`], with the next rung where the step leads to one.
    pub fn step_title(self, step: &NextStep) -> String {
        let ladder = self.ladder.map_or(step.ladder.as_str(), |ladder| &ladder.title);
        let rung = self.rung(&step.rung);
        match &step.next_rung {
            Some(next) => rail_title(ladder, step.rail, Some(&rung), &self.rung(next)),
            None => rail_title(ladder, step.rail, None, &rung),
        }
    }

    /// The title of a rung of this ladder, or its id.
    pub fn rung(self, id: &str) -> String {
        self.ladder
            .and_then(|ladder| ladder.rung(id))
            .map_or_else(|| id.to_owned(), |rung| rung.title.clone())
    }

    /// The title of a movement within a sentence, or its id.
    pub fn movement(self, id: &str) -> String {
        self.catalogue
            .movement(id)
            .map_or_else(|| id.to_owned(), |movement| lower(&movement.title))
    }

    fn amount(self, value: f64) -> String {
        if self.is_hold {
            format!("{} s", number(value, 1))
        } else {
            number(value, 0)
        }
    }

    fn asked(self, movement: &str, at_least: Amount, ratio: Option<f64>) -> String {
        let movement = self.movement(movement);
        let load = match ratio {
            None => String::new(),
            Some(ratio) => format!(" with {} × bodyweight in all", number(ratio, 2)),
        };
        match at_least {
            Amount::Reps(reps) => format!("{} × {movement}{load}", reps.count()),
            Amount::Seconds(seconds) => format!("{} s of {movement}{load}", number(seconds.value(), 1)),
        }
    }
}

/// ", left" after a title; nothing where both hands work as one.
pub fn on_side(side: Option<Side>) -> &'static str {
    match side {
        None => "",
        Some(Side::Left) => ", left",
        Some(Side::Right) => ", right",
    }
}

/// "One-arm pull-up, left": a movement by its title, and the side.
pub fn movement_on(catalogue: &Catalogue, movement: &str, side: Option<Side>) -> String {
    format!("{}{}", catalogue.movement_title(movement), on_side(side))
}

/// "One-arm pull-up, left: Two fingers help → One finger helps": a rail, and the rung it is on or steps from and to.
pub fn rail_title(ladder: &str, rail: Rail, from: Option<&str>, rung: &str) -> String {
    let side = on_side(rail.side());
    match from {
        Some(from) => format!("{ladder}{side}: {from} → {rung}"),
        None => format!("{ladder}{side}: {rung}"),
    }
}

/// "1st", "22nd".
pub fn ordinal_figures(count: usize) -> String {
    let ending = match (count % 100, count % 10) {
        (11..=13, _) => "th",
        (_, 1) => "st",
        (_, 2) => "nd",
        (_, 3) => "rd",
        _ => "th",
    };
    format!("{count}{ending}")
}

/// A title inside a sentence: its first letter small, unless it is an abbreviation such as "L-sit".
fn lower(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.next()) {
        (Some(first), Some(second)) if second.is_lowercase() => first
            .to_lowercase()
            .chain(std::iter::once(second))
            .chain(letters)
            .collect(),
        _ => title.to_owned(),
    }
}

/// A word at the head of a sentence: its first letter large.
pub fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
