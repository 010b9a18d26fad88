//! Movements and ladders: what is shipped, what a file may say, and what is said of its mistakes.

#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]

mod mistakes;
mod reading;
mod shipped;
