//! How numbers are written: with a unit, a true minus sign, and no digits that mean nothing.

use std::fmt::Display;

use chrono::NaiveDate;

use crate::units::{Mass, Unit};

/// A number with at most `decimals` digits after the point, without trailing zeros, with a true minus sign.
pub fn number(value: f64, decimals: usize) -> String {
    let fixed = format!("{:.*}", decimals, value.abs());
    let trimmed = if fixed.contains('.') {
        fixed.trim_end_matches('0').trim_end_matches('.')
    } else {
        &fixed
    };
    if value < 0.0 && trimmed != "0" {
        format!("−{trimmed}")
    } else {
        trimmed.to_owned()
    }
}

/// A mass in the reader's unit, to the hundredth at most.
pub fn mass(mass: Mass, unit: Unit) -> String {
    format!("{} {}", number(mass.in_unit(unit), 2), unit.sign())
}

/// A mass of so many kilograms in the reader's unit.
pub fn kg(kilograms: f64, unit: Unit) -> String {
    mass(Mass::from_kg(kilograms), unit)
}

/// A mass to the tenth, for bodyweights and loads that need no plate's exactness.
pub fn about(kilograms: f64, unit: Unit) -> String {
    format!(
        "{} {}",
        number(Mass::from_kg(kilograms).in_unit(unit), 1),
        unit.sign()
    )
}

/// The same with its tenth written even where it is none: on a slider the words keep their place.
pub fn tenths(kilograms: f64, unit: Unit) -> String {
    format!("{:.1} {}", Mass::from_kg(kilograms).in_unit(unit), unit.sign())
}

/// A mass to the tenth above: the least that may be typed where anything under `kilograms` is refused.
pub fn no_less(kilograms: f64, unit: Unit) -> String {
    // What a unit's factor leaves behind the tenth is no step up.
    let tenths = (Mass::from_kg(kilograms).in_unit(unit) * 10.0 - 1e-6).ceil();
    format!("{} {}", number(tenths / 10.0, 1), unit.sign())
}

/// A number as [`number`] writes it, with as many digits more as tell it from `bound`, which it lies under or over.
pub fn apart(value: f64, bound: f64, decimals: usize) -> String {
    let said = number(bound, decimals);
    let mut written = (decimals..decimals + 4).map(|digits| number(value, digits));
    written
        .find(|digits| *digits != said)
        .unwrap_or_else(|| number(value, decimals))
}

/// A date as people read it in a sentence: `Wed 18 Mar`.
pub fn day(date: NaiveDate) -> String {
    date.format("%a %-d %b").to_string()
}

/// "1 day", "3 days".
pub fn days(count: i64) -> String {
    counted(count, "day")
}

/// A count, whole and not below zero, and its noun in the right number: "1 rep", "12 reps".
pub fn counted<N: Display + PartialEq + From<u8>>(count: N, noun: &str) -> String {
    let ending = if count == N::from(1) { "" } else { "s" };
    format!("{count} {noun}{ending}")
}

/// Repetitions: "1 rep", "12 reps".
pub fn reps(count: f64) -> String {
    counted(count.round(), "rep")
}

/// How long ago: "today", "yesterday", "4 days ago".
pub fn ago(count: i64) -> String {
    match count {
        0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        _ => format!("{count} days ago"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_shows_no_digits_that_mean_nothing() {
        assert_eq!(number(97.5, 2), "97.5");
        assert_eq!(number(100.0, 2), "100");
        assert_eq!(number(-8.75, 2), "−8.75");
        assert_eq!(number(-0.001, 2), "0");
        assert_eq!(number(1200.0, 0), "1200");
    }

    #[test]
    fn what_lies_under_or_over_a_bound_never_reads_as_the_bound() {
        // 59.9 kg at 180 cm: 59.9 / 1.8² = 18.488; the range begins at 18.5 × 1.8² = 59.94 kg.
        assert_eq!(apart(59.9 / 3.24, 18.5, 1), "18.49");
        assert_eq!(apart(17.2, 18.5, 1), "17.2");
        assert_eq!(apart(0.704, 0.7, 1), "0.704");
        assert_eq!(no_less(59.94, Unit::Kg), "60 kg");
        assert_eq!(no_less(60.0, Unit::Kg), "60 kg");
        assert_eq!(no_less(59.94, Unit::Lb), "132.2 lb");
        assert_eq!(no_less(132.0 * crate::units::KG_PER_LB, Unit::Lb), "132 lb");
    }

    #[test]
    fn pounds_are_said_in_pounds() {
        assert_eq!(kg(20.411_656_65, Unit::Lb), "45 lb");
        assert_eq!(tenths(20.411_656_65, Unit::Lb), "45.0 lb");
    }
}
