//! The last set of its side on a day, where it is the only one or says how near to failure it was: one more repetition
//! lowers nothing of what is then believed.
//!
//! No later set explains its count. By itself the filter would let the belief rise less for far more repetitions
//! at a light load, since endurance takes the credit, and fall less for far fewer, since they look like a slip. Here the set
//! counts at least as much as each less surprising count would have. One more likely a typo than not is left as it is.

use super::curve::Curve;
use super::set::{Moved, Observed, Reading};
use super::state::{AHEAD, ENDURANCE, LEVEL, LOSS, SHAPE, State, TREND, Vector, strength};
use super::tuning::Tuning;

/// Counts that are tried at most to either side.
const MOST_TRIED: usize = 60;
/// A log strength that only rounding makes.
const NOTHING: f64 = 1e-12;

/// Moves the belief by a set after which none of its side follows.
pub(super) fn learn_last(
    state: &mut State,
    set: &Observed,
    alone: bool,
    wobbles: bool,
    tuning: &Tuning,
) -> Moved {
    let before = state.clone();
    let reading = Reading::of(&before, set, wobbles, tuning);
    let moved = reading.learn(state, set, tuning);
    if moved.looks_like_a_typo() {
        return moved;
    }
    let as_if = |reps: f64| reading.mean_after(&before, &Observed { reps, ..*set }, tuning);
    let lowers = |mean: &Vector| strength(mean, set.side) < before.strength(set.side) - NOTHING;
    let believed = Curve::new(before.mean[SHAPE], before.mean[ENDURANCE]).reps(set.spare(&before));
    // The belief may have a second top over the counts, since easy days are a second kind of habit. Beside other sets, where
    // nothing is sure, it is not looked for: that costs time.
    let patience = if alone { MOST_TRIED } else { 1 };
    let mut more: Vec<Vector> = Vec::new();
    let mut in_vain = 0;
    for mean in counts(set, 1.0)
        .take_while(|reps| *reps < believed + 1.0)
        .map(as_if)
    {
        in_vain = if lowers(&mean) { 0 } else { in_vain + 1 };
        more.push(mean);
        if in_vain == patience {
            break;
        }
    }
    let too_few = more.iter().rposition(lowers).map(|last| last + 2);
    if let Some(tried) = too_few.or(lowers(&state.mean).then_some(1)) {
        for mean in more.iter().take(tried) {
            take(&mut state.mean, mean, set.side, f64::min);
        }
        return moved;
    }
    in_vain = 0;
    for mean in counts(set, -1.0).map(as_if).take_while(|mean| !lowers(mean)) {
        in_vain = if take(&mut state.mean, &mean, set.side, f64::max) {
            0
        } else {
            in_vain + 1
        };
        if in_vain == patience {
            break;
        }
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

/// Takes of each number that belief and its trend are made of the smaller, or the larger, strength; says whether that was
/// another one.
fn take(mean: &mut Vector, other: &Vector, side: f64, of: fn(f64, f64) -> f64) -> bool {
    let before = *mean;
    for (i, sign) in [(LEVEL, 1.0), (TREND, 1.0), (LOSS, -1.0), (AHEAD, side)] {
        if sign != 0.0 {
            mean[i] = sign * of(sign * mean[i], sign * other[i]);
        }
    }
    *mean != before
}
