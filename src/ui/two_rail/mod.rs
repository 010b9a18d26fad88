//! The two-rail ladder: rungs from the ground up, spaced by demand, and each hand on its rung.
//!
//! [`heights`] and [`layout`] are geometry, tested in numbers; [`paint`] strokes it and decides nothing; [`ladder_ui`] joins
//! them with the pointer, the keyboard and the screen reader.

mod beside;
mod grip;
pub mod heights;
pub mod layout;
mod overview;
mod paint;
mod spoken;
mod touch;

pub use grip::grip;
pub(crate) use paint::soft_bar;
pub use paint::{ghost, rails_between, rails_fading, rung_open, rung_passed};
pub use touch::{LadderTouch, ladder_ui, part_names};
