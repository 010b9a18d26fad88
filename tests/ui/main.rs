//! The window without a window: screens drawn by the CPU, queried by role and label, compared picture by picture.
//!
//! `UPDATE_SNAPSHOTS=force cargo test --test ui` rewrites `tests/pictures`; look at every changed picture before committing it.

mod contrast;
mod kit;
mod ladder;
mod renderer;
mod sample_ladders;
mod widgets;
