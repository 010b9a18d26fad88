//! The clock, at the rim: the only place that asks the system what time it is.

use chrono::{DateTime, Local, NaiveDate};

/// Today's date where the user is.
pub fn today() -> NaiveDate {
    now().date_naive()
}

/// Now, with the local offset.
#[allow(clippy::disallowed_methods)]
pub fn now() -> DateTime<Local> {
    Local::now()
}

/// Random bits, for a new device's name.
#[allow(clippy::disallowed_methods)]
pub fn chance() -> u64 {
    let random = ulid::Ulid::generate().random();
    u64::try_from(random & u128::from(u64::MAX)).unwrap_or(0)
}
