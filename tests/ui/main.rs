//! The window without a window: screens drawn by the CPU, queried by role and label, compared picture by picture.
//!
//! `UPDATE_SNAPSHOTS=force cargo test --test ui` rewrites `tests/pictures`; look at every changed picture before committing it.

mod contrast;
mod fake_book;
mod kit;
mod ladder;
mod renderer;
mod sample_ladders;
mod sample_next;
mod sample_roster;
mod screens;
mod use_it;
mod widgets;
