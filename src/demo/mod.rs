//! The demo gym: invented people who train by the advice, so that everything there is to see can be seen.
//!
//! A pure function of seed, day, number of athletes and years: the same bytes every time. All dates lie relative to the
//! day it is shown for, so every verdict shows on any day. Nobody in it is real.

mod cast;
mod crowd;
mod gym;
mod life;
mod strength;

pub use gym::{Gym, Plan, gym};
