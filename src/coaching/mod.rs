//! The next step of every rail: a verdict, a prescription, the reasons and the cautions.
//!
//! Everything here is a pure function of the timeline, the catalogue and the plates on hand. A rule asks one question of
//! the [`facts`] and answers with a [`Finding`]: numbers, no sentences (`report::words` makes those). The arrays in
//! [`rules`] are the order in which they decide; in [`next_step`] caps and sides come after. No belief changes a verdict.

pub mod advice;
pub mod attempts;
pub mod caps;
pub mod care;
pub mod entry;
pub mod facts;
pub mod finding;
pub mod goals;
pub mod held_back;
pub mod judge;
pub mod loads;
pub mod meet;
pub mod next_step;
pub mod outlook;
pub mod prescribe;
pub mod progress;
pub mod roster;
pub mod rules;
pub mod session;
pub mod sides;
pub mod standing;
pub mod typed;
pub mod warm_up;
pub mod week;
pub mod what_if;

pub use advice::{Asked, LoadToday, NextStep, Prescription, Verdict};
pub use finding::{CareNote, Finding};
pub use loads::PlatesOnHand;
pub use next_step::next_steps;

/// Room for rounding in comparisons of loads, kg: far below any plate, far above what pounds lose in conversion.
pub(crate) const GRACE_KG: f64 = 1e-6;
