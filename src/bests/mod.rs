//! Bests: the records of each movement and side, by four measures, and the estimated one-rep max by published formulas.
//!
//! A best is logged work. The measures are system load, added load, system load ÷ bodyweight, and system load ÷
//! bodyweight^0.67; each answers another question, and none is called the true one.

mod fit;
mod fresh;
mod points;
pub mod rank;
mod records;
mod rep_max;
mod two_weights;

pub use fit::{Fit, NoFit, Slope, Z80};
pub use fresh::{NewBest, new_bests, new_bests_by, new_bests_today};
pub use points::{Point, RailOf, points};
pub use records::{Best, Kind, Size, bests, size_adjusted};
pub use rep_max::Formula;
pub use two_weights::{TwoWeights, WITHIN_KG, two_weights};

/// Values as near as this, relative to each other, are the same: pounds and kilograms differ by less in conversion.
const ROUNDING: f64 = 1e-9;
