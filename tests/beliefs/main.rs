//! From a log to beliefs: which sets count for which estimate, and from when.
//!
//! The estimate itself is tested beside the filter and scored on simulated logs; here it is only asked whether the log reaches
//! it whole. Where a test names no source, the numbers are worked out from the log itself.

// A helper that panics fails its test, as it should.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "../support/mod.rs"]
mod support;

mod heading;
mod kept;
mod log;
mod outlook;
mod scale;
mod steady;
