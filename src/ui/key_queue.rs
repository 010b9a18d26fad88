//! Keys one after the other. A busy machine hands the window many key presses in one frame, but what a press opens and where it
//! moves the focus shows only in the next. So a press that may do either waits until what the one before it did is drawn: keys
//! typed fast are neither lost nor land in another place.

use std::collections::VecDeque;

use egui::{Context, Event, Key, Modifiers, Plugin, RawInput};

/// Events that wait for their frame. Added to a window's context once, with [`Context::add_plugin`].
#[derive(Debug, Default)]
pub struct KeyQueue {
    waiting: VecDeque<Event>,
    /// What the last press did is still to be drawn.
    rests: bool,
    /// Keys that are held down, as they lie on the keyboard: with Shift let go first, a key is released under another name.
    down: Vec<Key>,
    /// The letter of a press that was passed over.
    skips_letter: bool,
}

impl KeyQueue {
    /// Lets an event wait. A held key repeats itself faster than a slow machine draws; of its repeats one waits, so that what it
    /// moves stops when it is let go.
    fn take(&mut self, event: Event) {
        let skips_letter = std::mem::take(&mut self.skips_letter);
        match &event {
            Event::Text(_) if skips_letter => return,
            Event::Key {
                key,
                physical_key,
                pressed: true,
                ..
            } => {
                let waits = self.waiting.iter().any(|waiting| is_press_of(waiting, *key));
                let key = physical_key.unwrap_or(*key);
                if !self.down.contains(&key) {
                    self.down.push(key);
                } else if waits {
                    self.skips_letter = true;
                    return;
                }
            }
            Event::Key {
                key, physical_key, ..
            } => {
                let key = physical_key.unwrap_or(*key);
                self.down.retain(|down| *down != key);
            }
            _ => {}
        }
        self.waiting.push_back(event);
    }

    /// The events of the next frame: up to and with the first press that may open something or move the focus.
    fn next(&mut self, is_typing: bool) -> Vec<Event> {
        if std::mem::take(&mut self.rests) {
            return Vec::new();
        }
        let mut now = Vec::new();
        while let Some(event) = self.waiting.pop_front() {
            let letters = matches!(self.waiting.front(), Some(Event::Text(_)));
            let ends = is_press(&event) && !(is_typing && stays_in_field(&event, letters));
            now.push(event);
            if ends {
                // The letter that the key writes belongs to it.
                now.extend(self.waiting.pop_front_if(|next| matches!(next, Event::Text(_))));
                self.rests = true;
                break;
            }
        }
        now
    }
}

impl Plugin for KeyQueue {
    fn debug_name(&self) -> &'static str {
        "keys one after the other"
    }

    fn input_hook(&mut self, ctx: &Context, input: &mut RawInput) {
        for event in input.events.drain(..) {
            self.take(event);
        }
        input.events = self.next(ctx.text_edit_focused());
        if self.rests || !self.waiting.is_empty() {
            ctx.request_repaint();
        }
    }
}

fn is_press_of(event: &Event, wanted: Key) -> bool {
    matches!(event, Event::Key { key, pressed: true, .. } if *key == wanted)
}

fn is_press(event: &Event) -> bool {
    matches!(event, Event::Key { pressed: true, .. })
}

/// Whether a press only changes the text of the field that it is typed into.
fn stays_in_field(event: &Event, writes_letters: bool) -> bool {
    let Event::Key { key, modifiers, .. } = event else {
        return false;
    };
    let edits = matches!(
        key,
        Key::Backspace | Key::Delete | Key::ArrowLeft | Key::ArrowRight | Key::Home | Key::End
    );
    writes_letters || (edits && *modifiers == Modifiers::NONE)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn press(key: Key) -> Event {
        Event::Key {
            key,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers: Modifiers::NONE,
        }
    }

    fn letter(key: Key, text: &str) -> [Event; 2] {
        [press(key), Event::Text(text.into())]
    }

    fn release(key: Key) -> Event {
        Event::Key {
            key,
            physical_key: None,
            pressed: false,
            repeat: false,
            modifiers: Modifiers::NONE,
        }
    }

    fn queue(events: impl IntoIterator<Item = Event>) -> KeyQueue {
        let mut queue = KeyQueue::default();
        events.into_iter().for_each(|event| queue.take(event));
        queue
    }

    #[test]
    fn each_press_is_drawn_before_the_next_comes() {
        let mut queue = queue(letter(Key::X, "x").into_iter().chain(letter(Key::S, "s")));
        assert_eq!(queue.next(false), letter(Key::X, "x"));
        assert_eq!(queue.next(false), []);
        assert_eq!(queue.next(false), letter(Key::S, "s"));
        assert_eq!(queue.next(false), []);
    }

    #[test]
    fn a_field_takes_its_letters_at_once_and_enter_ends_them() {
        let number = letter(Key::Num5, "5").into_iter().chain(letter(Key::Num1, "1"));
        let keys: Vec<Event> = number.chain([press(Key::Backspace), press(Key::Enter)]).collect();
        let mut queue = queue(keys.clone().into_iter().chain(letter(Key::Num6, "6")));
        assert_eq!(queue.next(true), keys);
        assert_eq!(queue.next(false), []);
        assert_eq!(queue.next(true), letter(Key::Num6, "6"));
    }

    #[test]
    fn a_held_key_stops_when_it_is_let_go_and_one_pressed_twice_counts_twice() {
        let held = (0..40)
            .map(|_| press(Key::ArrowDown))
            .chain([release(Key::ArrowDown)]);
        assert_eq!(
            queue(held).waiting,
            [press(Key::ArrowDown), release(Key::ArrowDown)]
        );
        let letters = (0..9).flat_map(|_| letter(Key::X, "x"));
        assert_eq!(queue(letters).waiting, letter(Key::X, "x"));
        // Shift goes up before the bracket: pressed as one key, released as another, and it lies where it lies.
        let bracket = |key, pressed| Event::Key {
            key,
            physical_key: Some(Key::OpenBracket),
            pressed,
            repeat: false,
            modifiers: Modifiers::NONE,
        };
        let once = [
            bracket(Key::OpenCurlyBracket, true),
            bracket(Key::OpenBracket, false),
        ];
        let thrice = [once.clone(), once.clone(), once].concat();
        assert_eq!(queue(thrice.clone()).waiting, thrice);
        let twice = [press(Key::Enter), release(Key::Enter), press(Key::Enter)];
        assert_eq!(queue(twice.clone()).waiting, twice);
    }
}
