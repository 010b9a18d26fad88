//! Results as a coach types them from a sheet: `5` is five done, `5 1` with one in reserve, `5 m` a miss after five, `5 f` five
//! of which not all kept the movement's standard.

use crate::catalogue::Site;
use crate::problem::quoted;
use crate::units::{Outcome, Reserve, Side};

/// One set as typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TypedSet {
    /// Reps, or seconds of a hold.
    pub amount: f64,
    /// Repetitions in reserve, if said.
    pub reserve: Option<f64>,
    /// How it ended.
    pub outcome: Outcome,
}

/// What a cell says; nothing where it is empty.
///
/// # Errors
/// In words, what is wrong with it and how to write it.
pub fn set(text: &str, is_hold: bool) -> Result<Option<TypedSet>, String> {
    let mut words = text.split_whitespace();
    let Some(first) = words.next() else {
        return Ok(None);
    };
    let mend = if is_hold {
        "write seconds like 12, with m for a miss or f for form"
    } else {
        "write reps like 5, then the reserve like 5 1, m for a miss or f for form"
    };
    let wrong = || format!("{}: {mend}.", quoted(text));
    let amount = number(first).ok_or_else(wrong)?;
    if !is_hold && amount.fract() != 0.0 {
        return Err(wrong());
    }
    let mut typed = TypedSet {
        amount,
        reserve: None,
        outcome: Outcome::Done,
    };
    for word in words {
        match word {
            "m" | "M" if typed.outcome == Outcome::Done => typed.outcome = Outcome::Missed,
            "f" | "F" if typed.outcome == Outcome::Done => typed.outcome = Outcome::Form,
            other if typed.reserve.is_none() && !is_hold => {
                let reserve = number(other).ok_or_else(wrong)?;
                typed.reserve = Some(Reserve::new(reserve).map_err(|_| wrong())?.reps());
            }
            _ => return Err(wrong()),
        }
    }
    if typed.amount <= 0.0 && typed.outcome != Outcome::Missed {
        return Err(format!(
            "{}: nothing done is a miss, 0 m; leave the cell empty if it was not tried.",
            quoted(text)
        ));
    }
    Ok(Some(typed))
}

/// Where it hurts, on which side, and how much: `elbow 4`, `elbow L 4`; nothing where it is empty.
///
/// # Errors
/// In words, what is wrong with it and how to write it.
pub fn pain(text: &str) -> Result<Option<(Site, Option<Side>, u8)>, String> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let sites = || Site::ALL.map(Site::word).join(", ");
    let wrong = || {
        format!(
            "{}: write the place and 0 to 10, like elbow L 4. Places: {}.",
            quoted(text),
            sites()
        )
    };
    let (site, side, score) = match words.as_slice() {
        [] => return Ok(None),
        [site, score] => (site, None, score),
        [site, "L" | "l", score] => (site, Some(Side::Left), score),
        [site, "R" | "r", score] => (site, Some(Side::Right), score),
        _ => return Err(wrong()),
    };
    let known = |known: &Site| known.word().eq_ignore_ascii_case(site);
    let site = Site::ALL.into_iter().find(known).ok_or_else(wrong)?;
    let score: u8 = score
        .parse()
        .ok()
        .filter(|score| *score <= 10)
        .ok_or_else(wrong)?;
    Ok(Some((site, side, score)))
}

/// A number as typed, with a decimal point or comma, without sign or exponent.
pub fn number(text: &str) -> Option<f64> {
    let text = text.trim().replace(',', ".");
    let plain = !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    text.parse().ok().filter(|value: &f64| plain && value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(amount: f64, reserve: Option<f64>, outcome: Outcome) -> Option<TypedSet> {
        Some(TypedSet {
            amount,
            reserve,
            outcome,
        })
    }

    #[test]
    fn reps_then_the_reserve_or_how_it_ended() {
        assert_eq!(set("", false), Ok(None));
        assert_eq!(set(" 5 ", false), Ok(typed(5.0, None, Outcome::Done)));
        assert_eq!(set("5 1", false), Ok(typed(5.0, Some(1.0), Outcome::Done)));
        assert_eq!(set("5 1,5", false), Ok(typed(5.0, Some(1.5), Outcome::Done)));
        assert_eq!(set("3 m", false), Ok(typed(3.0, None, Outcome::Missed)));
        assert_eq!(set("0 m", false), Ok(typed(0.0, None, Outcome::Missed)));
        assert_eq!(set("4 0 f", false), Ok(typed(4.0, Some(0.0), Outcome::Form)));
        assert_eq!(set("12.5", true), Ok(typed(12.5, None, Outcome::Done)));
    }

    #[test]
    fn what_can_not_be_is_said_and_nothing_is_guessed() {
        for wrong in ["five", "5 1 2", "-3", "5.5", "5 m f", "0", "5 11", "1e2", "5 x"] {
            assert!(set(wrong, false).is_err(), "{wrong}");
        }
        assert!(set("12 1", true).is_err(), "a hold asks no reserve");
        assert_eq!(number(&"9".repeat(400)), None, "no float holds it");
        assert!(pain("elbow").is_err() && pain("tail 3").is_err() && pain("knee 11").is_err());
    }

    #[test]
    fn pain_has_a_place_a_side_if_known_and_a_score() {
        assert_eq!(pain("  "), Ok(None));
        assert_eq!(pain("Elbow L 4"), Ok(Some((Site::Elbow, Some(Side::Left), 4))));
        assert_eq!(pain("back 2"), Ok(Some((Site::Back, None, 2))));
    }
}
