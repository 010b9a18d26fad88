//! The rest clock and the hold clock: when the next frame is due, and what is heard.

use std::time::Duration;

use crate::ui::screens::next::NextScreen;
use crate::ui::sound::{Alarm, Play, Sound};

use super::Remembered;

/// What runs.
#[derive(Default)]
pub(super) struct Clocks {
    /// Plays a sound, where the system can.
    pub play: Option<Play>,
    /// The second that was shown last; of a hold, below 0 while counting in.
    last: Option<i64>,
    /// The end of rest, on a thread of its own: it is on time even if no frame is drawn. With it, when rest began and how
    /// long it is.
    rest: Option<((f64, u16), Option<Alarm>)>,
}

impl Clocks {
    /// Plays what is due and asks for the next frame, while a clock runs.
    /// A rest clock that is not `shown` needs no frame: its end is the alarm's.
    pub fn go_on(&mut self, ctx: &egui::Context, next: &NextScreen, remembered: &Remembered, shown: bool) {
        let state = &next.state;
        let asked = next
            .view
            .card(state.card)
            .and_then(|card| card.asked.prescription())
            .map(|work| work.rest_secs.0);
        self.keep_alarm(ctx, state.rest_from.zip(asked), state.now, remembered.silent);
        let held = state.holding();
        let Some(seconds) = held.or(state.rested().filter(|_| shown)) else {
            self.last = None;
            return;
        };
        #[allow(clippy::cast_possible_truncation, reason = "seconds of a clock")]
        let whole = seconds.floor() as i64;
        let is_new = self.last != Some(whole);
        if is_new && held.is_some() && !remembered.silent {
            let sound = match whole {
                -3..=-1 => Some(Sound::Tick),
                0 => Some(Sound::Go),
                _ => None,
            };
            if let (Some(play), Some(sound)) = (&self.play, sound) {
                play(sound);
            }
        }
        self.last = Some(whole);
        let to_next = 1.0 - (seconds - seconds.floor());
        ctx.request_repaint_after(Duration::from_secs_f64(to_next.clamp(0.01, 1.0)));
    }

    fn keep_alarm(&mut self, ctx: &egui::Context, rest: Option<(f64, u16)>, now: f64, silent: bool) {
        if self.rest.as_ref().map(|(rest, _)| *rest) == rest {
            return;
        }
        self.rest = rest.map(|rest| {
            let left = rest.0 + f64::from(rest.1) - now;
            let alarm = (left > 0.0).then(|| {
                let (ctx, play) = (ctx.clone(), self.play.clone().filter(|_| !silent));
                Alarm::after(Duration::from_secs_f64(left), move || {
                    if let Some(play) = &play {
                        play(Sound::Go);
                    }
                    ctx.request_repaint();
                })
            });
            (rest, alarm)
        });
    }
}
