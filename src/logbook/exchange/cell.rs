//! What one cell says: numbers, dates and the guard against formulas.

use std::str::FromStr;

use chrono::NaiveDate;

use crate::logbook::Written;
use crate::logbook::written::date_of;
use crate::problem::quoted;

use super::options::BadOption;

/// The mark between whole and part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Decimal {
    /// 2.5
    #[default]
    Point,
    /// 2,5
    Comma,
}

impl FromStr for Decimal {
    type Err = BadOption;

    fn from_str(text: &str) -> Result<Self, BadOption> {
        match text {
            "." => Ok(Self::Point),
            "," => Ok(Self::Comma),
            _ => Err(BadOption(format!(
                "{} is no decimal mark; use . or ,",
                quoted(text)
            ))),
        }
    }
}

/// A number of ASCII digits with an optional sign and one decimal mark; no exponent, no spaces, no separators of thousands.
pub(super) fn number(text: &str, decimal: Decimal) -> Option<f64> {
    let mark = match decimal {
        Decimal::Point => '.',
        Decimal::Comma => ',',
    };
    let (whole, part) = text
        .strip_prefix(['+', '-'])
        .unwrap_or(text)
        .split_once(mark)
        .unwrap_or((text.strip_prefix(['+', '-']).unwrap_or(text), ""));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(part) || whole.len() + part.len() == 0 {
        return None;
    }
    let value: f64 = match decimal {
        Decimal::Point => text.parse().ok()?,
        Decimal::Comma => text.replacen(mark, ".", 1).parse().ok()?,
    };
    value.is_finite().then_some(value)
}

/// The characters that make a spreadsheet program take a cell for a formula (CWE-1236, OWASP ASVS 1.2.10).
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// Whether a spreadsheet program could run this cell, or take a guard off it: any number of `'`, then a formula sign.
fn guardable(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(FORMULA)
}

/// The guard that `export` puts before `text`; plain numbers need none.
pub fn guard(text: &str) -> &'static str {
    if guardable(text) && number(text, Decimal::Point).is_none() {
        "'"
    } else {
        ""
    }
}

/// `text` as a cell that no spreadsheet program runs: with the guard that `export` puts before it.
pub fn guarded(text: &str) -> String {
    format!("{}{text}", guard(text))
}

/// `text` without one guard. `unguarded(guarded(text)) == text` for every text.
pub(super) fn unguarded(text: &str) -> &str {
    match text.strip_prefix('\'') {
        Some(rest) if guardable(rest) => rest,
        _ => text,
    }
}

/// The order in which a file writes day, month and year; never guessed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Dates {
    /// 2026-03-18, or an RFC 3339 time.
    #[default]
    Ymd,
    /// 18.03.2026, 18/3/2026 or 18-03-2026.
    Dmy,
    /// 03/18/2026, 3.18.2026 or 03-18-2026.
    Mdy,
}

impl FromStr for Dates {
    type Err = BadOption;

    fn from_str(text: &str) -> Result<Self, BadOption> {
        match text {
            "ymd" => Ok(Self::Ymd),
            "dmy" => Ok(Self::Dmy),
            "mdy" => Ok(Self::Mdy),
            _ => Err(BadOption(format!(
                "{} is no order of dates; use ymd, dmy or mdy",
                quoted(text)
            ))),
        }
    }
}

/// Why a cell is no date.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum NoDate {
    /// It has another form.
    Form,
    /// No calendar has this day.
    Day,
    /// The year lies outside 1900 to 2100.
    Year,
    /// The time after the day is none.
    Time,
}

impl Dates {
    /// An example in this order, for a mend.
    pub(super) fn example(self) -> &'static str {
        match self {
            Dates::Ymd => "2026-03-18",
            Dates::Dmy => "18.03.2026",
            Dates::Mdy => "03/18/2026",
        }
    }

    /// The date or time that `text` writes in this order. Day- or month-first ones become the ISO form, so that both files
    /// make the same records; a time after the day is kept as written.
    pub(super) fn read(self, text: &str) -> Result<Written, NoDate> {
        if let (Dates::Ymd, Ok(written)) = (self, Written::parse(text)) {
            return Ok(written);
        }
        let end = text.find(['T', 't', ' ']).unwrap_or(text.len());
        let (day, time) = text.split_at_checked(end).ok_or(NoDate::Form)?;
        let mark = match self {
            Dates::Ymd => '-',
            Dates::Dmy | Dates::Mdy => day
                .chars()
                .find(|c| ['.', '/', '-'].contains(c))
                .ok_or(NoDate::Form)?,
        };
        let parts: Vec<&str> = day.split(mark).collect();
        let [first, second, third] = parts[..] else {
            return Err(NoDate::Form);
        };
        let (year, month, day) = match self {
            Dates::Ymd => (first, second, third),
            Dates::Dmy => (third, second, first),
            Dates::Mdy => (third, first, second),
        };
        let whole = |text: &str, fits: fn(usize) -> bool| {
            let digits = fits(text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
            digits
                .then(|| text.parse::<u16>().ok())
                .flatten()
                .ok_or(NoDate::Form)
        };
        let short: fn(usize) -> bool = if self == Dates::Ymd {
            |n| n == 2
        } else {
            |n| n == 1 || n == 2
        };
        let (year, month, day) = (whole(year, |n| n == 4)?, whole(month, short)?, whole(day, short)?);
        let date = NaiveDate::from_ymd_opt(year.into(), month.into(), day.into()).ok_or(NoDate::Day)?;
        let iso = date.format("%Y-%m-%d").to_string();
        date_of(&iso).ok_or(NoDate::Year)?;
        Written::parse(&format!("{iso}{time}")).map_err(|_| NoDate::Time)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_digits_with_one_mark_and_nothing_else() {
        for (text, value) in [
            ("5", 5.0),
            ("-2.5", -2.5),
            ("+1.25", 1.25),
            (".5", 0.5),
            ("5.", 5.0),
            ("007", 7.0),
        ] {
            assert_eq!(number(text, Decimal::Point), Some(value), "{text}");
        }
        for text in [
            "", ".", "-", "1e3", "nan", "inf", "-inf", "NaN", "1.2.3", "1,5", "1 000", "0x1f", "٣", "１",
            "−5", "5kg", "--5", "+-5", "1_000",
        ] {
            assert_eq!(number(text, Decimal::Point), None, "{text}");
        }
        assert_eq!(number("-2,5", Decimal::Comma), Some(-2.5));
        assert_eq!(number("2.5", Decimal::Comma), None);
        assert_eq!(number(&"9".repeat(400), Decimal::Point), None);
    }

    #[test]
    fn a_guard_is_put_on_and_taken_off_again_from_any_cell() {
        for (text, guarded) in [
            ("=SUM(A1)", "'=SUM(A1)"),
            ("@home", "'@home"),
            ("- hard", "'- hard"),
            ("\tx", "'\tx"),
            ("'=x", "''=x"),
            ("''=x", "'''=x"),
            ("-15", "-15"),
            ("'-15", "''-15"),
            ("'tis", "'tis"),
            ("'", "'"),
            ("", ""),
            ("plain", "plain"),
        ] {
            assert_eq!(super::guarded(text), guarded);
            assert_eq!(unguarded(guarded), text);
        }
        // What a person's own spreadsheet holds stays as it is, and loses a guard that some program put there.
        assert_eq!(unguarded("=x"), "=x");
        assert_eq!(unguarded("'-15"), "-15");
    }

    #[test]
    fn day_first_and_month_first_dates_become_the_same_days_as_year_first_ones() {
        for (order, text) in [
            (Dates::Ymd, "2026-03-08"),
            (Dates::Dmy, "08.03.2026"),
            (Dates::Dmy, "8/3/2026"),
            (Dates::Dmy, "8-03-2026"),
            (Dates::Mdy, "03/08/2026"),
            (Dates::Mdy, "3.8.2026"),
        ] {
            assert_eq!(order.read(text).unwrap().as_str(), "2026-03-08", "{text}");
        }
        assert_eq!(
            Dates::Dmy.read("8.3.2026 17:30").unwrap().as_str(),
            "2026-03-08 17:30"
        );
        let time = "2026-03-18T17:30:00+01:00";
        assert_eq!(Dates::Ymd.read(time).unwrap().as_str(), time);
    }

    #[test]
    fn a_date_in_another_order_is_never_guessed() {
        for (order, text, why) in [
            (Dates::Ymd, "18.03.2026", NoDate::Form),
            (Dates::Ymd, "2026/03/18", NoDate::Form),
            (Dates::Ymd, "2026-3-18", NoDate::Form),
            (Dates::Ymd, "20260318", NoDate::Form),
            (Dates::Ymd, "2026-13-01", NoDate::Day),
            (Dates::Ymd, "2023-02-29", NoDate::Day),
            (Dates::Ymd, "1899-12-31", NoDate::Year),
            (Dates::Ymd, "2101-01-01", NoDate::Year),
            (Dates::Ymd, "2026-03-18T25:00", NoDate::Time),
            (Dates::Dmy, "2026-03-18", NoDate::Form),
            (Dates::Dmy, "18.03.26", NoDate::Form),
            (Dates::Dmy, "18.03/2026", NoDate::Form),
            (Dates::Dmy, "03/18/2026", NoDate::Day),
            (Dates::Mdy, "18/03/2026", NoDate::Day),
            (Dates::Mdy, "+3/08/2026", NoDate::Form),
            (Dates::Dmy, "", NoDate::Form),
            (Dates::Dmy, "１8.03.2026", NoDate::Form),
        ] {
            assert_eq!(order.read(text), Err(why), "{text}");
        }
    }
}
