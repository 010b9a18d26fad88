//! Any bytes as settings.
#![no_main]

#[path = "../laws.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::settings(bytes));
