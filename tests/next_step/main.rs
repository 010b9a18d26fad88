//! The next step: each boundary of the rules as a claim, tested on both sides.
//!
//! Unless a test names a published source, the numbers are common practice, no source.
//! The lifter most tests speak of weighs 80 kg and stands on "a quarter of you on the belt": 3 sets of 4 to 6, 1 in
//! reserve; standard 3 × 5 at 100 kg in all.

// A helper that panics fails its test, as it should; loads are compared with numbers that floats hold.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "../support/mod.rs"]
mod support;

mod begin;
mod bodyweight;
mod caps;
mod cautions;
mod classes;
mod evidence;
mod going_on;
mod kit;
mod layoff;
mod loads;
mod misses;
mod odd_sets;
mod own_standard;
mod pain;
mod published;
mod random;
mod random_bounds;
mod random_logs;
mod random_sessions;
mod roster;
mod sides;
mod standard;
mod standing;
mod warm_up;
mod week;
mod week_joints;
mod week_session;
mod work_load;

use support::{Ago, Athlete, Phrase, Sets, athlete};

/// On the rung of a quarter of 80 kg, with nothing logged.
fn lifter() -> Athlete {
    athlete()
        .weighing(80.0)
        .placed_on("weighted-pull-up", "plus-25", 100.days_ago())
}

/// All sets at the top of that rung's range with the asked reserve, under its standard's load: 90 kg in all.
fn good_sets() -> Sets {
    3.sets_of(6).with(10.0).leaving(1.0)
}

/// All sets in that rung's range, at 90 kg in all.
fn fair_sets() -> Sets {
    3.sets_of(5).with(10.0).leaving(1.0)
}

/// That rung's standard: 100 kg in all.
fn standard_sets() -> Sets {
    3.sets_of(5).with(20.0).leaving(1.0)
}
