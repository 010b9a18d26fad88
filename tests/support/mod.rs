//! Sentences about an athlete's log, and what the rules say to it; no disk, no clock.
//!
//! ```ignore
//! athlete()
//!     .weighing(80.0)
//!     .placed_on("weighted-pull-up", "plus-25", 30.days_ago())
//!     .did(2.days_ago(), 3.sets_of(6).with(10.0).leaving(1.0))
//!     .advice()
//! ```

// Each test program uses its own part of this. A helper that panics fails its test, as it should.
#![allow(
    dead_code,
    unused_imports,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

mod athlete;
mod day;
mod said;
mod sets;

pub use athlete::{Athlete, athlete};
pub use day::{Ago, Day, TODAY};
pub use said::Said;
pub use sets::{Phrase, Session, Sets, one_set, reps};
