//! A set that is the only one of its side on its day: one more repetition never lowers what is then believed.
//!
//! Nothing else of the day explains its count. By itself the filter would let the belief rise less for far more repetitions
//! at a light load, since endurance takes the credit, and fall less for far fewer, since they look like a slip. Here the set
//! counts at least as much as each less surprising count would have. One more likely a typo than not is left as it is.

use super::curve::Curve;
use super::set::{Moved, Observed, learn};
use super::state::{AHEAD, ENDURANCE, LEVEL, LOSS, SHAPE, State, TREND};
use super::tuning::Tuning;

/// Counts that are tried at most to either side.
const MOST_TRIED: usize = 60;
/// A log strength that only rounding makes.
const NOTHING: f64 = 1e-12;

/// Moves the belief by a set that stands alone.
pub(super) fn learn_alone(state: &mut State, set: &Observed, wobbles: bool, tuning: &Tuning) -> Moved {
    let before = state.clone();
    let moved = learn(state, set, wobbles, tuning);
    if moved.looks_like_a_typo() {
        return moved;
    }
    let as_if = |reps: f64| {
        let mut after = before.clone();
        learn(&mut after, &Observed { reps, ..*set }, wobbles, tuning);
        after
    };
    let lowers = |after: &State| after.strength(set.side) < before.strength(set.side) - NOTHING;
    let believed = Curve::new(before.mean[SHAPE], before.mean[ENDURANCE]).reps(set.spare(&before));
    let more: Vec<State> = counts(set, 1.0)
        .take_while(|reps| *reps < believed + 1.0)
        .map(as_if)
        .collect();
    let too_few = more.iter().rposition(lowers).map(|last| last + 2);
    match too_few.or(lowers(state).then_some(1)) {
        Some(tried) => more
            .iter()
            .take(tried)
            .for_each(|after| take(state, after, set.side, f64::min)),
        None => counts(set, -1.0)
            .map(as_if)
            .take_while(|after| !lowers(after))
            .for_each(|after| take(state, &after, set.side, f64::max)),
    }
    moved
}

/// The counts one, two, … repetitions up or down from the set's.
fn counts(set: &Observed, step: f64) -> impl Iterator<Item = f64> {
    let (reps, step) = (set.reps, step * set.unit);
    std::iter::successors(Some(reps + step), move |reps| Some(reps + step))
        .take_while(|reps| *reps >= 0.0)
        .take(MOST_TRIED)
}

/// Takes of each number that belief and its trend are made of the smaller, or the larger, strength.
fn take(state: &mut State, after: &State, side: f64, of: fn(f64, f64) -> f64) {
    for (i, sign) in [(LEVEL, 1.0), (TREND, 1.0), (LOSS, -1.0), (AHEAD, side)] {
        if sign != 0.0 {
            state.mean[i] = sign * of(sign * state.mean[i], sign * after.mean[i]);
        }
    }
}
