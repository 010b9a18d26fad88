//! What was read of an athlete's log, kept from one question to the next: one more set today costs a day's reading, and a
//! change of an older record is read from there on.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use crate::strength::{History, LinkKind, Tuning};

use super::Series;

/// Which series of one athlete: its movement, the share of the body that was counted, and the help whose loads were read into it.
type Key = (String, u64, Option<LinkKind>);

/// The histories of one athlete, or of several who are told apart by whoever keeps them. Answers have the same bits whether
/// anything was kept or not.
#[derive(Debug, Default)]
pub struct Kept(Mutex<BTreeMap<Key, History>>);

impl Kept {
    /// Asks the history of a series once it holds all of the series' days; only what has changed is read.
    pub(super) fn read<T>(
        &self,
        series: &Series,
        help: Option<LinkKind>,
        ask: impl FnOnce(&History) -> T,
    ) -> T {
        let key = (
            series.movement().to_owned(),
            series.share().value().to_bits(),
            help,
        );
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let history = all
            .entry(key)
            .or_insert_with(|| History::new(series.prior(), Tuning::default()));
        history.update(series.training_days());
        ask(history)
    }
}
