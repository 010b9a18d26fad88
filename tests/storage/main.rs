//! People's data: what is saved is there, whatever happens to processes, power, disks, files and other machines.

// Helpers outside a #[test] may panic as tests do; the numbers here are small.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

mod arrive;
mod corpora;
mod damage;
mod faults;
mod files;
mod help;
mod kill;
#[path = "../fuzz/laws.rs"]
mod laws;
mod merge;
mod names;
mod power;
