//! What a coach asks for beside one athlete's sets: people, sheets, a class's results, plates.

use std::path::PathBuf;

use super::views::{ClassResult, Paper, TypedClass};

/// Something to write for the gym.
#[derive(Debug, Clone, PartialEq)]
pub enum GymDeed {
    /// A new athlete, on a ladder and weighed where that is said.
    NewAthlete {
        /// The name.
        name: String,
        /// The ladder's id.
        ladder: Option<String>,
        /// Bodyweight in the logbook's unit.
        bodyweight: Option<f64>,
    },
    /// Another name for an athlete.
    Rename {
        /// The athlete's key.
        athlete: String,
        /// The new name.
        name: String,
    },
    /// Off the roster, or back on it.
    Archive {
        /// The athlete's key.
        athlete: String,
        /// Off the roster.
        archived: bool,
    },
    /// A remark about an athlete.
    Note {
        /// The athlete's key.
        athlete: String,
        /// The remark.
        text: String,
    },
    /// A page to print.
    Print {
        /// What.
        paper: Paper,
        /// The athletes' keys, in order.
        athletes: Vec<String>,
        /// The PDF.
        to: PathBuf,
    },
    /// A picture to hand out.
    Picture {
        /// Its bytes as PNG.
        png: Vec<u8>,
        /// The file.
        to: PathBuf,
    },
    /// Shows what the class of these athletes was asked, to be typed.
    ShowClass(Vec<String>),
    /// Keeps what is typed of a class and isn't saved yet, in place of what was kept before.
    KeepTyped {
        /// All of it; empty for nothing.
        typed: TypedClass,
        /// The table closes with it.
        leaves: bool,
    },
    /// A class's results, all of them or none.
    LogClass(Vec<ClassResult>),
    /// Name, unit, plates and belt of this gym, as typed.
    SetRack {
        /// The logbook's name; empty for its folder's.
        name: String,
        /// Pounds instead of kilograms.
        in_lb: bool,
        /// Plates on hand.
        plates: String,
        /// Belt, chain and carabiner.
        gear: String,
    },
}
