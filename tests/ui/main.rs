//! The window without a window: screens drawn by the CPU, queried by role and label, compared picture by picture.
//!
//! `UPDATE_SNAPSHOTS=force cargo test --test ui` rewrites `tests/pictures`; look at every changed picture before committing it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::type_complexity,
    clippy::disallowed_methods,
    reason = "helpers of tests: pixels are small whole numbers, a failed unwrap is a failed test, reference colours are numbers"
)]

mod beliefs;
mod beliefs_how;
mod coach;
mod contrast;
mod fake_book;
mod fast_keys;
mod journal;
mod kit;
mod ladder;
#[path = "../support/mara.rs"]
#[allow(dead_code, reason = "one story for several test programs")]
mod mara;
mod names;
mod readme;
mod renderer;
mod sample_ladders;
mod sample_next;
mod sample_roster;
mod sample_totals;
mod sample_week;
mod screens;
mod shelf;
mod shelf_class;
mod shelf_ladders;
mod shelf_totals;
mod story;
mod totals;
mod use_it;
mod week;
mod weigh_ins;
mod widgets;
mod workshop;
mod workshop_window;
