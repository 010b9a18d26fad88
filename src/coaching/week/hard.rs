//! What counts as a hard set.
//!
//! No cut is published that everybody uses. A reserve of 4 or 5 repetitions at the most is what studies of volume mostly take
//! in (from memory); 4 is this project's choice, and the screen says it. A failed set had nothing in reserve. **A set without
//! a logged reserve counts as hard**, as it also counts toward a rung's standard: most people log the reserve of few sets, and
//! holds have none (common practice, no source). So log the reserve of warm-up sets, or leave them out of the log. A set whose
//! standard was not kept counts by its reserve: muscles and joints did the work. A load that looks like a slip changes
//! nothing here, because sets are counted and not weighed; a set that moved nothing is none.

use crate::timeline::LoggedSet;

/// The most repetitions in reserve that make a hard set. See the module's words.
pub const MOST_RESERVE: f64 = 4.0;
/// With fewer repetitions in reserve than this, a set went to failure.
const TO_FAILURE: f64 = 1.0;

/// Whether anything was done: a repetition or a second, and not with help of all the bodyweight. A load that nobody logged was
/// some load all the same.
pub fn was_done(set: &LoggedSet<'_>) -> bool {
    let moved_nothing = set.odd && set.system.is_none() && set.added.kg() < 0.0;
    set.amount > 0.0 && !moved_nothing
}

/// Whether it is a hard set.
pub fn is_hard(set: &LoggedSet<'_>) -> bool {
    was_done(set) && set.known_reserve().is_none_or(|reserve| reserve <= MOST_RESERVE)
}

/// Whether it is known to have gone to failure, or within half a repetition of it.
pub fn went_to_failure(set: &LoggedSet<'_>) -> bool {
    set.known_reserve().is_some_and(|reserve| reserve < TO_FAILURE)
}
