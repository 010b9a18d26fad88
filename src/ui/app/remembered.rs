//! What the window remembers between starts. The rim keeps it as a file in the state folder; a broken file is as good as none.

use serde::{Deserialize, Serialize};

use crate::ui::theme::Choice;
use crate::ui::views::Place;

/// What is kept between starts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Remembered {
    /// Inner size of the window, points at 100 %.
    pub size: [f32; 2],
    /// The open place.
    pub place: Place,
    /// The open athlete's key.
    pub athlete: Option<String>,
    /// The logbook's folder.
    pub logbook: Option<std::path::PathBuf>,
    /// Light, dark, or as the system says.
    pub theme: Choice,
    /// Text zoom, 1 to 2.
    pub zoom: f32,
    /// Hands move at once.
    pub less_motion: bool,
    /// Single letters are keys.
    pub single_keys: bool,
    /// No beeps.
    pub silent: bool,
}

impl Default for Remembered {
    fn default() -> Self {
        Self {
            size: [1440.0, 900.0],
            place: Place::Roster,
            athlete: None,
            logbook: None,
            theme: Choice::System,
            zoom: 1.0,
            less_motion: false,
            single_keys: true,
            silent: false,
        }
    }
}

impl Remembered {
    /// From the text of its file; what can't be read is as it was at first.
    pub fn read(text: &str) -> Self {
        let mut read: Self = ron::from_str(text).unwrap_or_default();
        let sane = |value: f32, lo: f32, hi: f32, usual: f32| {
            if value.is_finite() {
                value.clamp(lo, hi)
            } else {
                usual
            }
        };
        read.zoom = sane(read.zoom, 1.0, 2.0, 1.0);
        read.size = [
            sane(read.size[0], 480.0, 8000.0, 1440.0),
            sane(read.size[1], 340.0, 8000.0, 900.0),
        ];
        read
    }

    /// As text for its file.
    pub fn write(&self) -> String {
        ron::ser::to_string_pretty(self, ron::ser::PrettyConfig::default()).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_kept_comes_back_and_a_broken_file_is_no_harm() {
        let kept = Remembered {
            place: Place::Ladders,
            zoom: 1.5,
            athlete: Some("ana".into()),
            ..Remembered::default()
        };
        assert_eq!(Remembered::read(&kept.write()), kept);
        assert_eq!(Remembered::read("(zoom: oops"), Remembered::default());
        assert_eq!(Remembered::read("(zoom: 9.0)").zoom, 2.0);
    }
}
