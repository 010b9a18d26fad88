//! Rungwright: ladders of bodyweight strength, system load, a belief of strength, and the next step with its reasons.
//!
//! Data flows one way; each stage is a pure function of the ones before it:
//!
//! 1. [`problem`]: what is wrong in a file, where, and how to mend it
//! 2. [`units`]: quantities of the trade as types
//! 3. [`catalogue`]: movements and ladders, read from RON
//! 4. [`logbook`]: records, journals, athletes; the only stage that touches the disk
//! 5. [`body`]: what a rung asks of a body, by segment physics and measured shares
//!
//! Absent on purpose: no clock (today is an argument), no network, no `unsafe`, no rule of the trade on a screen.

pub mod body;
pub mod catalogue;
pub mod cli;
pub mod clock;
pub mod coaching;
pub mod demo;
pub mod logbook;
pub mod problem;
pub mod report;
pub mod timeline;
#[cfg(feature = "window")]
pub mod ui;
pub mod units;
