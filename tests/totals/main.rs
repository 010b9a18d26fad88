//! Demands, totals across bodyweights, attempts and meets: what the commands answer and what the core says.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests may fail loudly"
)]

mod attempts;
mod bests;
mod demand;
#[path = "../commands_records/kit.rs"]
#[allow(dead_code, reason = "one kit for several test programs")]
mod kit;
#[path = "../support/mara.rs"]
mod mara;
mod outside;
mod shares;
mod story;
#[path = "../support/mod.rs"]
mod support;
mod what_if;
