//! Numbers of the dock and the cards as words.

use crate::ui::views::{Amounts, CardView, Prescription};
use crate::units::{Outcome, Rail};

/// `3 × 1–3`, `4 × 10–30 s`; one number where both ends are the same.
pub fn asked_words(work: &Prescription) -> String {
    let (lo, hi) = work.measure.range();
    let unit = if work.measure.is_hold() { " s" } else { "" };
    if lo == hi {
        format!("{} × {lo}{unit}", work.sets)
    } else {
        format!("{} × {lo}–{hi}{unit}", work.sets)
    }
}

/// What follows the big numbers: `reps, 1 in reserve`.
pub fn after_words(work: &Prescription) -> String {
    let unit = if work.measure.is_hold() { "held" } else { "reps" };
    match work.reserve {
        Some(reserve) => format!("{unit}, {} in reserve", number(reserve)),
        None => unit.to_owned(),
    }
}

/// `1–3 reps`.
pub fn range_words(measure: Amounts) -> String {
    let (lo, hi) = measure.range();
    if lo == hi {
        amount_words(f64::from(lo), measure.is_hold())
    } else {
        format!("{lo}–{hi} {}", measure.unit())
    }
}

/// `2 reps`, `1 rep`, `12 s`.
pub fn amount_words(amount: f64, is_hold: bool) -> String {
    let unit = match (is_hold, amount) {
        (true, _) => "s",
        (_, 1.0) => "rep",
        _ => "reps",
    };
    format!("{} {unit}", number(amount))
}

/// `rest 3–5 min`.
pub fn rest_words((lo, hi): (u16, u16)) -> String {
    if lo % 60 == 0 && hi % 60 == 0 {
        format!("rest {}–{} min", lo / 60, hi / 60)
    } else {
        format!("rest {lo}–{hi} s")
    }
}

/// What the main button will write, first line.
pub fn log_title(card: &CardView, set: usize) -> String {
    let whose = match card.rail {
        Rail::Left => "left ",
        Rail::Right => "right ",
        Rail::Both => "",
    };
    format!("Log {whose}set {set}")
}

/// What the main button will write, second line.
pub fn done_words(amount: f64, is_hold: bool, reserve: Option<f64>, outcome: Outcome) -> String {
    let amount = amount_words(amount, is_hold);
    match (outcome, reserve) {
        (Outcome::Missed, _) => format!("{amount} done, then missed"),
        (Outcome::Form, _) => format!("{amount}, standard not kept"),
        (Outcome::Done, Some(reserve)) => format!("{amount}, {} in reserve", number(reserve)),
        (Outcome::Done, None) => amount,
    }
}

/// A number without needless decimals.
pub fn number(value: f64) -> String {
    format!("{value}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_button_says_exactly_what_it_writes() {
        assert_eq!(
            done_words(2.0, false, Some(1.0), Outcome::Done),
            "2 reps, 1 in reserve"
        );
        assert_eq!(done_words(1.0, false, None, Outcome::Done), "1 rep");
        assert_eq!(done_words(12.0, true, None, Outcome::Done), "12 s");
        assert_eq!(
            done_words(2.0, false, Some(1.0), Outcome::Missed),
            "2 reps done, then missed"
        );
    }

    #[test]
    fn rest_reads_in_minutes_where_it_is_whole_minutes() {
        assert_eq!(rest_words((180, 300)), "rest 3–5 min");
        assert_eq!(rest_words((90, 120)), "rest 90–120 s");
    }
}
