//! Bests: the records of each movement and side, by four measures, and the estimated one-rep max by published formulas.
//!
//! A best is logged work. The measures are system load, added load, system load ÷ bodyweight, and system load ÷
//! bodyweight^0.67; each answers another question, and none is called the true one.

mod records;
mod rep_max;

pub use records::{Best, Kind, Size, bests};
pub use rep_max::Formula;
