//! From an athlete's log to beliefs: one call answers for every movement and side.
//!
//! [`beliefs`] is what screens and commands ask; [`Series`] is one movement of the log as the filter reads it, for those who
//! ask about many days (a backtest, a plot). A belief of a day stands on records of days strictly before it; the day's own
//! sets are read too, but only to say which of them look like typos.
//!
//! ```
//! # use rungwright::{catalogue::Catalogue, logbook::Log, strength, timeline::Timeline};
//! # fn ask(log: &Log, catalogue: &Catalogue, on: chrono::NaiveDate) {
//! let timeline = Timeline::new(log, catalogue, on);
//! for believed in strength::beliefs(&timeline) {
//!     let one_rep_max = believed.belief.one_rep_max().kg(); // on system load
//!     let band = believed.belief.band(strength::Coverage::Eighty);
//! #   let _ = (one_rep_max, band);
//! }
//! # }
//! ```

mod basis;
mod course;
mod kept;
mod points;
mod series;

use chrono::NaiveDate;

use crate::logbook::record::Id;
use crate::timeline::Timeline;
use crate::units::{Added, Bodyweight, Share, Side, SystemLoad};

use super::{Belief, Likely};

pub use basis::{Basis, Telling};
pub use course::{Course, CourseDay, CourseSet, course};
pub use kept::Kept;
pub use points::{Point, beliefs_at};
pub use series::{Series, SetAt, Standpoint};

/// What is believed of one movement and side on the timeline's day.
#[derive(Debug, Clone, PartialEq)]
pub struct Believed {
    /// The movement's id.
    pub movement: String,
    /// The side; none where both work as one, or where a sided movement's sets name none.
    pub side: Option<Side>,
    /// The part of the body that the movement lifts.
    pub share: Share,
    /// The belief; its 1RM is on system load.
    pub belief: Belief,
    /// Today's bodyweight, if ever weighed.
    pub bodyweight: Option<Bodyweight>,
    /// The sets that it stands on.
    pub basis: Basis,
    /// Sets of this movement and side that look like typos, in order of time; the day's own too.
    pub suspects: Vec<Suspect>,
}

/// A set that is more likely not what it says than so. It stays in the log; amending it replays the filter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Suspect {
    /// The set's id.
    pub id: Id,
    /// Its day.
    pub date: NaiveDate,
    /// Probability that it is not what it says, 0.5 to 1.
    pub probability: f64,
    /// What it may have been, where something fits better.
    pub likely: Option<Likely>,
}

/// Where strength is heading, said only when trend and forecast agree and the trend stands out of its own doubt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Heading {
    /// Up.
    Rising,
    /// Down.
    Falling,
    /// Neither can be said.
    Unclear,
}

/// How far ahead a heading looks, days: eight weeks, the horizon that forecasts were checked at.
pub const AHEAD_DAYS: f64 = 56.0;
/// A trend is said when it exceeds so many of its standard deviations: nine in ten on one side.
const CLEAR: f64 = 1.28;

impl Believed {
    /// What would hang from the belt at today's bodyweight for the 1RM; below zero it is help.
    pub fn added_one_rep_max(&self) -> Option<Added> {
        let body = self.bodyweight?;
        Some(self.belief.one_rep_max().added_from(self.share, body))
    }

    /// The system load of the movement with nothing on the belt, at today's bodyweight.
    pub fn bare(&self) -> Option<SystemLoad> {
        Some(SystemLoad::of(self.share, self.bodyweight?, Added::NONE))
    }

    /// Whether so few sessions stand behind it that an answer must say so.
    pub fn is_thin(&self) -> bool {
        self.belief.sessions() < 3
    }

    /// Where it is heading.
    pub fn heading(&self) -> Heading {
        let (a_week, sd) = self.belief.trend();
        let ahead = self.belief.after_training(AHEAD_DAYS).one_rep_max();
        let now = self.belief.one_rep_max();
        if a_week > CLEAR * sd && ahead > now {
            Heading::Rising
        } else if a_week < -CLEAR * sd && ahead < now {
            Heading::Falling
        } else {
            Heading::Unclear
        }
    }
}

/// All beliefs on the timeline's day, in order of movement, then side; movements without system load have none.
pub fn beliefs(timeline: &Timeline<'_>) -> Vec<Believed> {
    beliefs_keeping(timeline, &Kept::default())
}

/// The same, reading only what has changed since `kept` was last asked about this athlete.
pub fn beliefs_keeping(timeline: &Timeline<'_>, kept: &Kept) -> Vec<Believed> {
    let series = Series::all(timeline);
    series
        .iter()
        .flat_map(|series| series.believed(timeline, kept))
        .collect()
}

/// The belief of one movement and side on the timeline's day.
pub fn belief_of(timeline: &Timeline<'_>, movement: &str, side: Option<Side>) -> Option<Believed> {
    let believed = Series::of(timeline, movement)?.believed(timeline, &Kept::default());
    believed.into_iter().find(|believed| believed.side == side)
}
