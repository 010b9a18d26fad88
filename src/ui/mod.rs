//! The window: screens that show ready views and push actions.
pub mod pen;
pub mod theme;
pub mod two_rail;
pub mod views;
pub mod widgets;
