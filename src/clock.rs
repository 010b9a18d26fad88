//! The clock, at the rim: the only place that asks the system what time it is, and for chance.

use std::time::{Duration, SystemTime};

use chrono::{DateTime, Local, NaiveDate};

/// Today's date where the user is.
pub fn today() -> NaiveDate {
    now().date_naive()
}

/// So far from 1970 no calendar of ours goes: ten thousand Julian years.
const FAR: Duration = Duration::from_secs(315_576_000_000);

/// Now, with the local offset. A clock that stands before 1970 is taken as it is; one that is off by ages says 1970.
#[allow(clippy::disallowed_methods)]
pub fn now() -> DateTime<Local> {
    let now = SystemTime::now();
    let away = now
        .duration_since(SystemTime::UNIX_EPOCH)
        .unwrap_or_else(|before| before.duration());
    DateTime::from(if away > FAR { SystemTime::UNIX_EPOCH } else { now })
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
