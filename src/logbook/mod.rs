//! The logbook: a folder of plain text with settings, own ladders and every athlete's records.
//!
//! Records are only ever added; the state is the union of all journals by id, the same in any order.

mod add;
mod append;
mod batch;
mod by_id;
pub mod device;
mod devices;
pub mod disk;
pub mod exchange;
mod fields;
pub mod folder;
mod handed_out;
pub mod journal;
pub mod line;
mod listing;
pub mod log;
pub mod machine;
pub mod merge;
mod name_index;
pub mod names;
mod new_folder;
mod pending;
pub mod rack;
pub mod record;
pub mod settings;
pub mod trouble;
pub mod whole_file;
pub mod writer;
pub mod written;

pub use add::{Added, Target};
pub use by_id::Holder;
pub use devices::Seen;
pub use folder::Logbook;
pub use handed_out::{hand_out_pdf, hand_out_png};
pub use log::{Log, Person};
pub use machine::{Machine, Places};
pub use merge::{Amended, History, Retracted};
pub use names::{BadName, Name};
pub use record::{Device, Fact, Id, Load, Record};
pub use settings::Settings;
pub use trouble::Trouble;
pub use whole_file::WholeFile;
pub use writer::{Committed, Conflict, Doubts, Writer};
pub use written::Written;
