//! Ids made from what a row says, so that the same row gives the same id on every machine, in any order, for ever.
//!
//! Changing anything here makes every import a second time new: a test pins the ids of known rows.

use std::collections::HashMap;

use chrono::{Datelike, NaiveDate};
use xxhash_rust::xxh3::xxh3_128;

use crate::logbook::record::{Fact, Id};

use super::column::Column;
use super::write::Cells;

/// Which of a row's records an id is for. The numbers are part of every id.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Set = 1,
    Placement = 2,
    WeighIn = 3,
    Pain = 4,
    Phase = 5,
    Goal = 6,
    Profile = 7,
    Note = 8,
    Archive = 9,
}

impl Kind {
    pub(super) fn of(fact: &Fact) -> Kind {
        match fact {
            Fact::Set(_) => Kind::Set,
            Fact::Placement { .. } => Kind::Placement,
            Fact::WeighIn { .. } => Kind::WeighIn,
            Fact::Pain { .. } => Kind::Pain,
            Fact::Phase { .. } => Kind::Phase,
            Fact::Archive { .. } => Kind::Archive,
            Fact::Goal { .. } => Kind::Goal,
            Fact::Profile { .. } => Kind::Profile,
            Fact::Note { .. } | Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {
                Kind::Note
            }
        }
    }
}

/// A hash of a row's values as `export` would write them; two rows are equal when theirs are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub(super) struct Fingerprint(u128);

impl Fingerprint {
    /// Of the values in `cells`: empty ones add nothing, so that a column more in a later version changes no id.
    pub(super) fn of(cells: &Cells, buffer: &mut Vec<u8>) -> Self {
        buffer.clear();
        for column in Column::ALL {
            if let Some(text) = cells.get(column)
                && !matches!(column, Column::Id | Column::Sets)
            {
                for part in [column.name(), text] {
                    buffer.extend_from_slice(&(part.len() as u64).to_le_bytes());
                    buffer.extend_from_slice(part.as_bytes());
                }
            }
        }
        Self(xxh3_128(buffer))
    }

    /// The id of the record of `kind` that the row with these values makes, `before` equal ones having come before it.
    pub(super) fn id(self, date: NaiveDate, kind: Kind, before: u32) -> Id {
        let mut bytes = [0; 21];
        bytes[..16].copy_from_slice(&self.0.to_le_bytes());
        bytes[16..20].copy_from_slice(&before.to_le_bytes());
        bytes[20] = kind as u8;
        ulid(date, xxh3_128(&bytes))
    }
}

/// The id of a further record of `kind` in a row that carries the id `main` for its first.
pub(super) fn beside(main: Id, date: NaiveDate, kind: Kind) -> Id {
    let mut bytes = [0; 17];
    bytes[..16].copy_from_slice(&main.to_bytes());
    bytes[16] = kind as u8;
    ulid(date, xxh3_128(&bytes))
}

/// A ULID of the day's first millisecond in UTC (0 before 1970) and 80 bits of `hash`.
fn ulid(date: NaiveDate, hash: u128) -> Id {
    /// 1 January 1970 in days from the common era, as chrono counts them.
    const EPOCH: i64 = 719_163;
    let days = i64::from(date.num_days_from_ce()) - EPOCH;
    let milliseconds = u64::try_from(days * 86_400_000).unwrap_or(0);
    Id::from_parts(milliseconds, hash & ((1 << 80) - 1))
}

/// How many equal rows, and sets of equal rows, have come so far. Sets are counted apart because one row may stand for many.
#[derive(Debug, Default)]
pub(super) struct Equal(HashMap<Fingerprint, (u32, u32)>);

impl Equal {
    /// Counts one more row that holds `sets` sets; gives the numbers of rows and sets before it.
    pub(super) fn count(&mut self, row: Fingerprint, sets: u32) -> (u32, u32) {
        let seen = self.0.entry(row).or_default();
        let before = *seen;
        seen.0 = seen.0.saturating_add(1);
        seen.1 = seen.1.saturating_add(sets);
        before
    }

    /// Whether an equal row has come already.
    pub(super) fn has(&self, row: Fingerprint) -> bool {
        self.0.contains_key(&row)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_id_carries_the_day_and_nothing_before_1970() {
        let id = |text| ulid(crate::logbook::written::date_of(text).unwrap(), u128::MAX);
        // Unix time of 2026-03-18 00:00 UTC is 1,773,792,000 s (`date -u -d 2026-03-18 +%s`).
        assert_eq!(id("2026-03-18").timestamp_ms(), 1_773_792_000_000);
        assert_eq!(id("1970-01-01").timestamp_ms(), 0);
        assert_eq!(id("1969-12-31").timestamp_ms(), 0);
        assert_eq!(id("2026-03-18").random(), (1 << 80) - 1);
    }
}
