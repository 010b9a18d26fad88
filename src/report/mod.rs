//! Numbers and findings as words, for screen, command and sheet. Nothing here decides anything.

pub mod advice;
pub mod belief;
pub mod meet;
pub mod numbers;
pub mod progress;
pub mod rules;
pub mod sheet;
pub mod totals;
pub mod week;
pub mod words;
