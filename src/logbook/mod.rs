//! The logbook: a folder of plain text with settings, own ladders and every athlete's records.
//!
//! Records are only ever added; the state is the union of all journals by id, the same in any order.

pub mod exchange;
pub mod journal;
pub mod line;
pub mod log;
pub mod merge;
pub mod names;
pub mod pending;
pub mod record;
pub mod written;

pub use log::{Log, Person};
pub use merge::{Amended, History, Retracted};
pub use names::{BadName, Name};
pub use record::{Device, Fact, Id, Load, Record};
pub use written::Written;
