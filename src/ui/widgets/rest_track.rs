//! The rest clock: digits, a track with the asked range outlined, and words that say who may go.

use egui::{Align2, Painter, Rect, Stroke, StrokeKind, pos2};

use crate::ui::pen::{Ink, letters};
use crate::ui::theme::{Face, STROKE_NOW, Theme, size};

/// How the track stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RestTrack {
    /// Seconds since the last set; none before the first.
    pub passed: Option<f64>,
    /// The asked range, seconds.
    pub asked: (u16, u16),
}

impl RestTrack {
    /// Seconds until the lower end of the range.
    pub fn left_over(&self) -> Option<f64> {
        self.passed
            .map(|passed| f64::from(self.asked.0) - passed)
            .filter(|left| *left > 0.0)
    }

    /// Whether rest has been long enough.
    pub fn is_over(&self) -> bool {
        self.passed
            .is_some_and(|passed| passed >= f64::from(self.asked.0))
    }
}

/// Seconds as a clock shows them: `1:52`.
pub fn clock_words(seconds: f64) -> String {
    let whole = seconds.max(0.0).floor();
    let minutes = (whole / 60.0).floor();
    format!("{minutes:.0}:{:02.0}", whole - minutes * 60.0)
}

/// Paints the track into `rect` (8 points high; labels come below).
pub fn rest_track(painter: &Painter, rect: Rect, track: RestTrack, theme: &Theme) {
    let full = f64::from(track.asked.1) * 1.2;
    let share = |seconds: f64| -> f32 {
        #[allow(clippy::cast_possible_truncation, reason = "a share between 0 and 1")]
        let share = (seconds / full).clamp(0.0, 1.0) as f32;
        rect.left() + share * rect.width()
    };
    let (lo, hi) = (f64::from(track.asked.0), f64::from(track.asked.1));
    painter.rect_filled(rect, 3.0, *theme.line);
    let asked = Rect::from_min_max(
        pos2(share(lo), rect.top() - 1.0),
        pos2(share(hi), rect.bottom() + 1.0),
    );
    painter.rect_stroke(asked, 1.0, Stroke::new(1.5, *theme.edge), StrokeKind::Inside);
    if let Some(passed) = track.passed {
        let done = Rect::from_min_max(rect.min, pos2(share(passed), rect.bottom()));
        painter.rect_filled(
            done,
            3.0,
            if track.is_over() {
                *theme.ember
            } else {
                *theme.steel
            },
        );
        painter.vline(
            share(passed),
            rect.top() - 5.0..=rect.bottom() + 5.0,
            Stroke::new(STROKE_NOW + 1.0, *theme.ink),
        );
    }
    let ink = Ink::new(Face::Text, size::NOTE, *theme.ink2);
    let below = rect.bottom() + 3.0;
    let low = letters(
        painter,
        pos2(share(lo), below),
        Align2::CENTER_TOP,
        &short(lo),
        ink,
    );
    let at = pos2(share(hi).max(low.right() + 24.0).min(rect.right() - 14.0), below);
    if at.x - 16.0 > low.right() {
        letters(painter, at, Align2::CENTER_TOP, &short(hi), ink);
    }
}

fn short(seconds: f64) -> String {
    if seconds % 60.0 == 0.0 {
        format!("{:.0} min", seconds / 60.0)
    } else {
        format!("{seconds:.0} s")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_shows_minutes_and_two_digits_of_seconds() {
        assert_eq!(clock_words(112.9), "1:52");
        assert_eq!(clock_words(-3.0), "0:00");
        assert_eq!(clock_words(3600.0), "60:00");
    }

    #[test]
    fn rest_is_over_at_the_lower_end_of_the_asked_range() {
        let at = |passed| RestTrack {
            passed,
            asked: (180, 300),
        };
        assert!(!at(None).is_over());
        assert_eq!(at(Some(112.0)).left_over(), Some(68.0));
        assert!(at(Some(180.0)).is_over());
    }
}
