//! The clock, at the rim: the only place that asks the system what time it is, and for chance.

use std::time::SystemTime;

use chrono::{DateTime, Local, NaiveDate};

/// Today's date where the user is.
pub fn today() -> NaiveDate {
    now().date_naive()
}

/// Now, with the local offset. A clock that stands before 1970 is taken as it is.
#[allow(clippy::disallowed_methods)]
pub fn now() -> DateTime<Local> {
    DateTime::from(SystemTime::now())
}

/// A ULID that nobody had before: the clock's milliseconds (0 before 1970) and chance.
#[allow(clippy::disallowed_methods)]
pub fn fresh_id() -> ulid::Ulid {
    ulid::Ulid::generate()
}

/// Random bits, for a new device's name.
#[allow(clippy::disallowed_methods)]
pub fn chance() -> u64 {
    let random = ulid::Ulid::generate().random();
    u64::try_from(random & u128::from(u64::MAX)).unwrap_or(0)
}
