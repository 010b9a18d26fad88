//! One screen a place. Each is a function of a ready view, its own state and the actions it pushes; it holds no rule of the trade.

pub mod at_the_bar;
pub mod first;
pub mod ladders;
pub mod next;
pub mod roster;
pub mod sheet;
pub mod totals;
