//! Rungwright: ladders of bodyweight strength, system load, a belief of strength, and the next step with its reasons.
//!
//! Data flows one way; each stage is a pure function of the ones before it:
//!
//! 1. [`problem`]: what is wrong in a file, where, and how to mend it
//! 2. [`units`]: quantities of the trade as types
//! 3. [`catalogue`]: movements and ladders, read from RON
//! 4. [`logbook`]: records, journals, athletes; the only stage that touches the disk
//! 5. [`body`]: what a rung asks of a body, by segment physics and measured shares
//! 6. [`timeline`]: a log on a day; each set with that day's bodyweight and its system load
//! 7. [`strength`]: the belief of a one-rep max
//! 8. [`bests`]: records by four measures, and the rep-max formulas
//! 9. [`coaching`]: the next step of every rail, with its reasons
//! 10. [`report`]: numbers and findings as words; sheets and reports as ready views
//! 11. [`paper`]: those views on A4 pages, as PDF
//!
//! At the rim: [`cli`] asks and prints, `ui` is the window (feature `window`), [`clock`] knows what day it is, [`demo`] invents
//! a gym.
//!
//! Absent on purpose: no clock (today is an argument), no network, no `unsafe`, no rule of the trade on a screen.

pub mod bests;
pub mod body;
pub mod catalogue;
pub mod cli;
pub mod clock;
pub mod coaching;
pub mod demo;
pub mod logbook;
pub mod paper;
pub mod problem;
pub mod report;
pub mod strength;
pub mod timeline;
#[cfg(feature = "window")]
pub mod ui;
pub mod units;
