//! What screens show: plain owned data, made ready by an adapter from the core. A screen reads it and decides nothing.
//!
//! Numbers that a control changes are numbers here; everything else is words already, in the logbook's unit.

mod class;
mod first;
mod frame;
mod journal;
mod ladder;
mod next;
mod phrase;
mod roster;
mod strength;
mod totals;
mod week;
mod weigh_ins;
mod workshop;

pub use crate::coaching::Verdict;
pub use class::*;
pub use first::{FirstView, ImportRow, ImportView, LadderChoice};
pub use frame::{AthleteLine, Banner, FrameView, Place, Saved};
pub use journal::*;
pub use ladder::*;
pub use next::*;
pub use phrase::Phrase;
pub use roster::{LyingView, Need, RosterLine, RosterView};
pub use strength::*;
pub use totals::*;
pub use week::*;
pub use weigh_ins::WeighInsView;
pub use workshop::*;
