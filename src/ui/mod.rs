//! The window: screens that show ready views and push actions.
//!
//! * [`views`]: what screens show, plain data; an adapter fills it from the core
//! * [`book`]: the boundary behind which the logbook lies
//! * [`shelf`]: the logbooks of this machine behind it
//! * [`action`], [`keys`], [`key_queue`], [`palette`]: everything that can be asked for, by button, key or name
//! * [`theme`], [`pen`], [`widgets`], [`two_rail`]: the look
//! * [`frame`], [`screens`]: what stands around, and one screen a place
//! * [`app`]: asks the keys, draws, then performs what was asked; [`work`]: long work on a thread; [`sound`]: beeps
//!
//! Absent on purpose: no rule of the trade, no path of a journal, no clock but the window's own.

pub mod action;
pub mod app;
pub mod book;
pub mod frame;
pub mod gym;
pub mod journal;
pub mod key_queue;
pub mod keys;
pub mod palette;
pub mod pen;
pub mod screens;
pub mod shelf;
pub mod sound;
pub mod theme;
pub mod two_rail;
pub mod views;
pub mod widgets;
pub mod work;
pub mod workshop;
