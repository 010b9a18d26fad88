//! What stands around every place: the logbook, the athlete, where and when it was saved.

use serde::{Deserialize, Serialize};

/// A place of the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[allow(missing_docs, reason = "each is its own title")]
pub enum Place {
    Roster,
    Next,
    Ladders,
    Totals,
    Week,
    WeighIns,
    Journal,
    Workshop,
    Settings,
}

impl Place {
    /// Every place, in the order of its number.
    pub const ALL: [Place; 9] = [
        Place::Roster,
        Place::Next,
        Place::Ladders,
        Place::Totals,
        Place::Week,
        Place::WeighIns,
        Place::Journal,
        Place::Workshop,
        Place::Settings,
    ];

    /// Its name on screen.
    pub fn title(self) -> &'static str {
        match self {
            Place::Roster => "Roster",
            Place::Next => "Next",
            Place::Ladders => "Ladders",
            Place::Totals => "Totals",
            Place::Week => "Week",
            Place::WeighIns => "Weigh-ins",
            Place::Journal => "Journal",
            Place::Workshop => "Workshop",
            Place::Settings => "Settings",
        }
    }

    /// Its number, 1 to 9, the same whichever other places exist.
    pub fn number(self) -> u8 {
        (1..)
            .zip(Place::ALL)
            .find(|(_, place)| *place == self)
            .map_or(0, |(number, _)| number)
    }
}

/// The frame around every place.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FrameView {
    /// The logbook's name, or its folder's.
    pub logbook: String,
    /// Places that exist, in order.
    pub places: Vec<Place>,
    /// The athlete that is open.
    pub athlete: Option<AthleteLine>,
    /// When and where the last record was saved.
    pub saved: Saved,
    /// What must be said above the place.
    pub banner: Option<Banner>,
}

/// The athlete that is open, and where they stand among all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AthleteLine {
    /// Name on screen.
    pub name: String,
    /// Place in the roster's order, from 1.
    pub nth: usize,
    /// How many athletes there are.
    pub of: usize,
}

/// Whether what was logged is on disk.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Saved {
    /// Nothing was logged since the logbook was opened.
    #[default]
    Nothing,
    /// On disk, at a time (`18:42`), by a device.
    At {
        /// Clock time.
        time: String,
        /// The device that wrote it, in words.
        device: String,
    },
    /// Not on disk, and why.
    Not {
        /// One line: what happened and what to do.
        why: String,
    },
}

/// A bar above the place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Banner {
    /// The logbook is open in another window, or from a newer version: it can be read only.
    ReadOnly(String),
    /// Results of a class are typed and not saved.
    Unsaved(String),
    /// Something could not be read; the last good state is shown.
    Broken {
        /// What is wrong.
        what: String,
        /// `file:line:column`.
        place: String,
        /// How to mend it.
        mend: String,
    },
}
