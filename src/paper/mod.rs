//! Ready views on A4 pages: where everything stands, and the PDF made of it.
//!
//! * [`face`]: the embedded type, how wide words are, and what stands in for letters that a face lacks
//! * [`page`]: a page as a list of marks, plain data that tests read
//! * [`sheet`], [`class`], [`meet`], [`progress`]: the layouts
//! * [`pdf`]: marks to bytes, the same for the same marks
//!
//! Lengths are points (1/72 inch), x to the right, y down. Absent on purpose: no rule of the trade, no clock, no disk.

pub mod class;
pub mod face;
pub mod meet;
pub mod page;
pub mod pdf;
pub mod progress;
pub mod sheet;

mod plot;
mod wrap;

pub use pdf::{PaperError, pdf};
