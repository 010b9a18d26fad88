//! The two-rail ladder: rungs from the ground up, spaced by demand, and each hand on its rung.
//!
//! [`heights`] and [`layout`] are geometry, tested in numbers; [`paint`] and [`belief`] stroke it and decide nothing; [`ladder_ui`] joins
//! them with the pointer, the keyboard and the screen reader.

mod belief;
mod beside;
mod grip;
pub mod heights;
pub mod layout;
mod overview;
mod paint;
mod spoken;
mod stops;
mod touch;

pub use belief::ghost;
pub(crate) use belief::soft_bar;
pub use grip::grip;
pub use paint::{rails_between, rails_fading, rung_open, rung_passed};
pub use touch::{LadderTouch, ladder_ui, part_names};
