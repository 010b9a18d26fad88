//! Any bytes as a file of a ladder or of movements.
#![no_main]

#[path = "../laws.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::ladder(bytes));
