//! Words that several views share.

use chrono::NaiveDate;

use crate::catalogue::{Range, Rung, Standard};
pub(super) use crate::report::advice::help;
use crate::report::numbers::number;
pub(super) use crate::report::numbers::reps;
pub(super) use crate::report::words::capital;
use crate::timeline::LoggedSet;
use crate::units::{Outcome, Rail};

/// `ladders/dip.ron:3:18`.
pub(super) fn place(place: &crate::problem::Place) -> String {
    format!("{}:{}:{}", place.file, place.line, place.column)
}

/// `today`, `3 d`.
pub(super) fn days_ago(days: i64) -> String {
    if days <= 0 {
        "today".to_owned()
    } else {
        format!("{days} d")
    }
}

/// `Mon 13` within a week, `13 Oct` within a year, else with the year.
pub(super) fn short_date(date: NaiveDate, on: NaiveDate) -> String {
    let days = (on - date).num_days();
    let form = match days {
        i64::MIN..7 => "%a %-d",
        7..300 => "%-d %b",
        _ => "%b %Y",
    };
    date.format(form).to_string()
}

/// `2 reps, RIR 1`, `11 s`, `3 reps, missed`.
pub(super) fn result(amount: f64, is_hold: bool, reserve: Option<f64>, outcome: Outcome) -> String {
    let amount = counted(amount, is_hold);
    match (outcome, reserve) {
        (Outcome::Missed, _) => format!("{amount}, missed"),
        (Outcome::Form, _) => format!("{amount}, form"),
        (Outcome::Done, Some(reserve)) => format!("{amount}, RIR {}", number(reserve, 1)),
        (Outcome::Done, None) => amount,
    }
}

fn counted(amount: f64, is_hold: bool) -> String {
    let unit = match (is_hold, amount) {
        (true, _) => "s",
        (false, 1.0) => "rep",
        (false, _) => "reps",
    };
    format!("{} {unit}", number(amount, 1))
}

/// `5, 5, 4 reps`.
pub(super) fn amounts(sets: &[&LoggedSet<'_>]) -> String {
    let is_hold = sets.first().is_some_and(|set| !set.is_reps());
    let all: Vec<String> = sets.iter().map(|set| number(set.amount, 1)).collect();
    let unit = match (is_hold, all.as_slice()) {
        (true, _) => "s",
        (false, [one]) if one == "1" => "rep",
        (false, _) => "reps",
    };
    format!("{} {unit}", all.join(", "))
}

/// `3–5`, `10–20 s`.
pub(super) fn range(range: Range) -> String {
    let unit = if range.is_hold() { " s" } else { "" };
    let (lo, hi) = (number(range.lo(), 0), number(range.hi(), 0));
    if lo == hi {
        format!("{lo}{unit}")
    } else {
        format!("{lo}–{hi}{unit}")
    }
}

/// The standard, one short line: `3 × 5 at 1.25 × bodyweight`.
pub(super) fn standard(rung: &Rung) -> String {
    let Standard {
        sets, reach, ratio, ..
    } = &rung.standard;
    let unit = if rung.work.range.is_hold() { " s" } else { "" };
    let load = ratio.map_or_else(String::new, |ratio| {
        format!(" at {} × bodyweight", number(ratio, 2))
    });
    format!("{sets} × {}{unit}{load}", number(*reach, 1))
}

/// `L `, `R ` or nothing.
pub(super) fn side(rail: Rail) -> &'static str {
    match rail {
        Rail::Left => "L ",
        Rail::Right => "R ",
        Rail::Both => "",
    }
}

/// A count for a chip or square; ladders ask a handful of days.
pub(super) fn few(count: usize) -> u8 {
    u8::try_from(count).unwrap_or(u8::MAX)
}

/// `18:42` of a time as written; nothing for a day without a time.
pub(super) fn clock_time(written: &str) -> String {
    written.get(11..16).unwrap_or_default().to_owned()
}
