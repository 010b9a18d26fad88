//! Rows of a training day that can be, with their load, and what each says of its reserve.

use crate::units::{Effort, Given, Outcome, Side};

use super::bodyweight::Trend;
use super::curve::Curve;
use super::state::{ENDURANCE, SHAPE, State};
use super::training::Attempt;

/// A row that can be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Row {
    /// Its place in the day as logged.
    pub(super) nth: usize,
    /// Log of the load: system load in kg, or of a hold's demand.
    pub(super) log_load: f64,
    /// Repetitions done, or what stands for them in a hold.
    pub(super) reps: f64,
    /// Repetitions that one of reserve stands for.
    pub(super) unit: f64,
    /// Reserve that was reported.
    pub(super) left: Option<f64>,
    pub(super) outcome: Outcome,
    pub(super) side: Option<Side>,
}

impl Row {
    /// Whether another row is of the same side and load.
    pub(super) fn is_at_load_of(&self, other: &Row) -> bool {
        self.side == other.side && (self.log_load - other.log_load).abs() < 1e-4
    }
}

/// A reserve as the filter reads it. An RPE of 9.5 means no repetition left, but more load (Zourdos 2016).
pub(super) fn reserve(given: Given) -> f64 {
    match given {
        Given::Rpe(left) if left.reps() < 0.75 => 0.0,
        Given::Rir(left) | Given::Rpe(left) => left.reps(),
    }
}

/// −1 left, 1 right, 0 both: the sign that half of the difference between the sides takes.
pub(super) fn sign(side: Option<Side>) -> f64 {
    match side {
        None => 0.0,
        Some(Side::Left) => -1.0,
        Some(Side::Right) => 1.0,
    }
}

/// Which of the three counts of a day a side has.
pub(super) fn slot(side: Option<Side>) -> usize {
    match side {
        None => 0,
        Some(Side::Left) => 1,
        Some(Side::Right) => 2,
    }
}

/// The lightest system load that can be, kg.
pub(super) const LIGHTEST_KG: f64 = 5.0;
/// The most repetitions that can be.
pub(super) const MOST_REPS: u16 = 60;

/// Whether a set can be what it says: bodyweight over 20 kg, system load over 5 kg, at most 60 repetitions, one of them
/// done unless it was missed.
pub(super) fn can_be(attempt: &Attempt, trend: Option<&Trend>) -> bool {
    let Effort::Reps(reps) = attempt.effort else {
        return false;
    };
    let Some(kg) = attempt.bodyweight.map(|b| b.kg()).or(trend.map(|t| t.kg)) else {
        return false;
    };
    let load = attempt.share.value() * kg + attempt.added.kg();
    kg > 20.0
        && kg.is_finite()
        && load > LIGHTEST_KG
        && load.is_finite()
        && reps.count() <= MOST_REPS
        && (attempt.outcome == Outcome::Missed || reps.count() > 0)
}

/// The row of an attempt whose load is known.
pub(super) fn row(nth: usize, attempt: &Attempt, load_kg: f64) -> Row {
    Row {
        nth,
        log_load: libm::log(load_kg.max(LIGHTEST_KG)),
        reps: attempt.effort.amount(),
        unit: 1.0,
        left: attempt.left.map(reserve),
        outcome: attempt.outcome,
        side: attempt.side,
    }
}

/// Of each side the set that asks most, a later one of equals; each set before counts 0.8 % of fatigue. A.
pub(super) fn hardest(state: &State, rows: &[Row]) -> [Option<usize>; 3] {
    let curve = Curve::new(state.mean[SHAPE], state.mean[ENDURANCE]);
    let mut best: [Option<(usize, f64)>; 3] = [None; 3];
    let mut before = [0.0; 3];
    for (index, row) in rows.iter().enumerate() {
        let slot = slot(row.side);
        let asks = row.log_load + curve.log_ratio(row.reps).0 + before[slot];
        if best[slot].is_none_or(|(_, most)| asks >= most) {
            best[slot] = Some((index, asks));
        }
        before[slot] += 0.008;
    }
    best.map(|found| found.map(|(index, _)| index))
}
