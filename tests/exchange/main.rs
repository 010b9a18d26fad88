//! Import and export as a lifter and a coach meet them: rows in, records out, and back again.

// A helper that panics fails its test, as it should.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod export;
mod feed;
mod files;
mod ids;
mod kit;
mod profiles;
mod random;
mod refused;
mod rows;
mod year;
