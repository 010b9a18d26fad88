//! A date or time as a person or file wrote it, kept to the letter; the date as written is the one that counts.

use std::cmp::Ordering;

use chrono::{NaiveDate, NaiveTime, Timelike};
use serde::{Deserialize, Serialize};

/// `YYYY-MM-DD`, or a time to the minute or finer with or without offset (`T` or a space between), as written.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Written {
    text: String,
    date: NaiveDate,
    time: Option<NaiveTime>,
}

/// Why a text is no date or time; the text comes quoted.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoDate {
    /// It has another form.
    #[error("{0} is no date; write it as 2026-03-18, or with a time as 2026-03-18T17:30+01:00")]
    Form(String),
    /// No calendar has this day.
    #[error("{0} is no day of the calendar; write one that exists, as 2026-03-18")]
    Day(String),
    /// Nobody logs then.
    #[error("{0} is outside the years 1900 to 2100; correct the year")]
    Year(String),
    /// The time after the day is none.
    #[error(
        "{0} has no time that a clock shows; write it as 2026-03-18T17:30, with an offset like +01:00 or without"
    )]
    Time(String),
}

impl Written {
    /// The text `text` as a date or time.
    ///
    /// # Errors
    /// When it has another form, or the day or time does not exist, or the year lies outside 1900 to 2100.
    pub fn parse(text: &str) -> Result<Self, NoDate> {
        let quoted = || crate::problem::quoted(text);
        let (date, rest) = text.split_at_checked(10).ok_or_else(|| NoDate::Form(quoted()))?;
        let time = match rest.strip_prefix(['T', 't', ' ']) {
            None if rest.is_empty() => None,
            None => return Err(NoDate::Form(quoted())),
            Some(time) => Some(time),
        };
        let date = day_of(date).map_err(|of| of(quoted()))?;
        let time = time
            .map(|time| time_of(time).ok_or_else(|| NoDate::Time(quoted())))
            .transpose()?;
        Ok(Self {
            text: text.to_owned(),
            date,
            time,
        })
    }

    /// This day, without a time.
    pub fn day(date: NaiveDate) -> Self {
        Self {
            text: date.format("%Y-%m-%d").to_string(),
            date,
            time: None,
        }
    }

    /// The date as written, whatever the offset.
    pub fn date(&self) -> NaiveDate {
        self.date
    }

    /// The text as written.
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// Order within an athlete's log: by date, then a day without a time before the day's times, then by the clock as written.
    pub fn cmp_in_day(&self, other: &Self) -> Ordering {
        (self.date, self.time).cmp(&(other.date, other.time))
    }
}

impl TryFrom<String> for Written {
    type Error = NoDate;
    fn try_from(text: String) -> Result<Self, NoDate> {
        Self::parse(&text)
    }
}

impl From<Written> for String {
    fn from(written: Written) -> String {
        written.text
    }
}

impl std::fmt::Display for Written {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.text)
    }
}

/// A date `YYYY-MM-DD` from 1900 to 2100 (ISO 8601, calendar date in the extended format).
pub fn date_of(text: &str) -> Option<NaiveDate> {
    day_of(text).ok()
}

/// The same, or what is wrong with it, to be given the text.
pub(crate) fn day_of(text: &str) -> Result<NaiveDate, fn(String) -> NoDate> {
    let bytes = text.as_bytes();
    let digits = |from: usize, to: usize| -> Option<u32> {
        bytes.get(from..to)?.iter().try_fold(0u32, |n, byte| {
            byte.is_ascii_digit().then(|| n * 10 + u32::from(byte - b'0'))
        })
    };
    let has_form = bytes.len() == 10 && bytes.get(4) == Some(&b'-') && bytes.get(7) == Some(&b'-');
    let parts = || Some((i32::try_from(digits(0, 4)?).ok()?, digits(5, 7)?, digits(8, 10)?));
    let Some((year, month, day)) = parts().filter(|_| has_form) else {
        return Err(NoDate::Form);
    };
    if !(1900..=2100).contains(&year) {
        return Err(NoDate::Year);
    }
    NaiveDate::from_ymd_opt(year, month, day).ok_or(NoDate::Day)
}

/// A time `HH:MM[:SS[.fff]]` with an optional offset `Z`, `+HH:MM` or `-HH:MM` (RFC 3339 with the seconds optional).
fn time_of(text: &str) -> Option<NaiveTime> {
    let clock = match text.strip_suffix(['Z', 'z']) {
        Some(clock) => clock,
        None => match text.rfind(['+', '-']) {
            Some(at) => {
                let (clock, offset) = text.split_at_checked(at)?;
                let offset = offset.get(1..)?;
                let exact = offset.len() == 5 && offset.as_bytes().get(2) == Some(&b':');
                let known = NaiveTime::parse_from_str(offset, "%H:%M").is_ok();
                (exact && known).then_some(clock)?
            }
            None => text,
        },
    };
    if !clock
        .bytes()
        .all(|byte| byte.is_ascii_digit() || byte == b':' || byte == b'.')
    {
        return None;
    }
    let format = match clock.len() {
        5 => "%H:%M",
        8 => "%H:%M:%S",
        _ => "%H:%M:%S%.f",
    };
    let well_formed = clock.len() <= 18 && clock.as_bytes().get(2) == Some(&b':');
    let time = well_formed.then(|| NaiveTime::parse_from_str(clock, format).ok())??;
    (time.nanosecond() < 1_000_000_000).then_some(time)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn iso_dates_and_rfc_3339_times_are_read_as_written() {
        // ISO 8601 calendar dates; RFC 3339 section 5.6 and 5.8 for the times.
        for text in [
            "2024-02-29",
            "1985-04-12T23:20:50.52Z",
            "1996-12-19T16:39:57-08:00",
            "2026-03-18 17:30",
            "2026-03-18T17:30+01:00",
        ] {
            assert_eq!(Written::parse(text).unwrap().as_str(), text);
        }
        assert_eq!(
            Written::parse("2026-03-18T23:30-08:00").unwrap().date(),
            date_of("2026-03-18").unwrap()
        );
    }

    #[test]
    fn days_and_times_that_do_not_exist_are_refused() {
        for text in [
            "2023-02-29",
            "2026-13-01",
            "1899-12-31",
            "2101-01-01",
            "18.03.2026",
            "2026-3-18",
            "2026-03-18T25:00",
            "2026-03-18T10",
            "2026-03-18T10:00+1",
            "2026-03-18x10:00",
            "",
            "2026-03-1é",
            "2026-03-18T10:00:60Z",
        ] {
            assert!(Written::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_day_without_a_time_comes_before_the_times_of_that_day() {
        let day = Written::parse("2026-03-18").unwrap();
        let noon = Written::parse("2026-03-18 12:00").unwrap();
        let evening = Written::parse("2026-03-18T18:00+09:00").unwrap();
        assert_eq!(day.cmp_in_day(&noon), Ordering::Less);
        assert_eq!(noon.cmp_in_day(&evening), Ordering::Less);
    }
}
