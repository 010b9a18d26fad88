//! The physics of a body: shares, levers, demands, and the laws that hold for all of them.

#![allow(clippy::unwrap_used, reason = "helpers of tests may fail loudly")]

mod demands;
mod laws;
mod levers;
mod shares;
