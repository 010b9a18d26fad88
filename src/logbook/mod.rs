//! The logbook: a folder of plain text with settings, own ladders and every athlete's records.
//!
//! Records are only ever added; the state is the union of all journals by id, the same in any order.

pub mod log;
pub mod record;
pub mod written;

pub use log::{Log, Person};
pub use record::{Device, Fact, Id, Load, Record};
pub use written::Written;
