//! From which machines the records came, and when last.

use std::cmp::Ordering;
use std::collections::BTreeMap;

use super::folder::Logbook;
use super::record::{Device, Record};
use super::written::Written;

/// A machine that wrote to the logbook.
#[derive(Debug, Clone, PartialEq)]
pub struct Seen {
    /// Its name in the records.
    pub device: Device,
    /// How many records of it are there, amends and retractions too.
    pub records: usize,
    /// The latest time that any of them speaks of, as written.
    pub last: Written,
}

impl Logbook {
    /// The machines that wrote to this logbook, the one seen last first.
    pub fn devices(&self) -> Vec<Seen> {
        let mut seen: BTreeMap<&str, (usize, &Written)> = BTreeMap::new();
        let changes = self.histories.iter().flat_map(|history| &history.changes);
        for Record { dev, at, .. } in self.logs.iter().flat_map(|log| &log.records).chain(changes) {
            let (records, last) = seen.entry(dev).or_insert((0, at));
            *records += 1;
            if at.cmp_in_day(last) == Ordering::Greater {
                *last = at;
            }
        }
        let mut seen: Vec<Seen> = seen
            .into_iter()
            .map(|(device, (records, last))| Seen {
                device: device.to_owned(),
                records,
                last: last.clone(),
            })
            .collect();
        seen.sort_by(|a, b| b.last.cmp_in_day(&a.last).then(a.device.cmp(&b.device)));
        seen
    }
}
