//! The commands that write, mend and list records, asked as a person asks them: through the binary.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod careful;
mod carried;
mod check;
mod kit;
mod log;
mod machines;
mod mend;
mod roster;
mod round_trip;
mod sheet;
mod stream;
mod totals;
mod wrong_use;
