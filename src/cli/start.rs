//! The program without a command: the window, or where none can be had the roster and everyone's next steps as text.

use std::path::PathBuf;

use chrono::NaiveDate;

use crate::coaching::outlook::of_all;
use crate::coaching::roster::roster;
use crate::logbook::Machine;
use crate::logbook::writer::{Content, refuse_for_writing};

use super::args::Start;
use super::output::{Style, tell};
use super::reading::{self, Reading};
use super::{Answer, Failed, demo, next, roster as roster_text};

/// What a window is opened with.
pub struct Opening {
    /// This machine.
    pub machine: Machine,
    /// The device that writes.
    pub device: String,
    /// The logbook that was named, or the demo's fresh copy; none leaves the choice to what was open last.
    pub root: Option<PathBuf>,
    /// Whether it is a throw-away copy.
    pub is_demo: bool,
    /// The day to look from; today if none was named.
    pub on: Option<NaiveDate>,
}

/// Opens the window and comes back when it is closed; says why none can be opened.
pub type OpenWindow = fn(Opening) -> Result<(), String>;

/// Lays a fresh copy of the demo gym.
///
/// # Errors
/// In words, when the state folder can't be written.
pub fn lay_demo(machine: &Machine, on: NaiveDate) -> Result<PathBuf, String> {
    demo::fresh_copy(machine, on).map_err(|failed| match failed {
        Failed::Problem(words) | Failed::Usage(words) => words,
    })
}

/// Opens the window if there is one to open, else answers as text.
pub fn run(start: &Start, window: Option<OpenWindow>) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let root = if start.demo {
        Some(demo::fresh_copy(&machine, reading::day(start.on))?)
    } else {
        start.logbook.clone()
    };
    let reason = match window {
        None => "this build has no window".to_owned(),
        Some(_) if !has_display() => "there is no display".to_owned(),
        Some(open) => {
            let opening = Opening {
                device: reading::device(&machine)?,
                machine: machine.clone(),
                root: root.clone(),
                is_demo: start.demo,
                on: start.on,
            };
            match open(opening) {
                Ok(()) => return Ok(Answer::default()),
                Err(reason) => reason,
            }
        }
    };
    // A library's message begins with where in its sources it arose.
    let reason = reason.lines().next().unwrap_or_default();
    let reason = crate::problem::visible(reason.rsplit(": ").next().unwrap_or_default());
    tell(&format!(
        "rungwright: no window can be opened here ({reason}); this is the roster, and everyone's next steps"
    ));
    let is_named = root.is_some();
    let root = reading::root(&machine, root.as_ref());
    if !is_named && matches!(refuse_for_writing(&machine, &root), Ok(Content::Nothing)) {
        return Ok(Answer::plain(
            "There is no logbook yet. Log a set, import a spreadsheet, or look around with --demo; --help says how.\n",
        ));
    }
    as_text(&machine, &root, reading::day(start.on))
}

/// Whether a display is named: X11 or Wayland. Elsewhere than on Unix desktops there always is one.
fn has_display() -> bool {
    let is_set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(all(unix, not(target_os = "macos")))
        || is_set("DISPLAY")
        || is_set("WAYLAND_DISPLAY")
        || is_set("WAYLAND_SOCKET")
}

fn as_text(machine: &Machine, root: &std::path::Path, on: NaiveDate) -> Result<Answer, Failed> {
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::open(machine, root, None)?;
    let (plates, unit, style) = (reading::on_hand(&book, None), book.unit(), Style::for_stdout());
    let lines = roster(&book.logs, &catalogue, &plates, on);
    let steps = of_all(&book.logs, &catalogue, &plates, on);
    let mut text = roster_text::text(&lines, unit, on, style);
    if !steps.is_empty() {
        text.push('\n');
        text.push_str(&next::text(&steps, &catalogue, &plates, unit, style));
    }
    Ok(Answer { text, with_problems })
}
