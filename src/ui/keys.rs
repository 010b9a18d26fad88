//! Keys and what they ask for. Keys without Ctrl or Alt are left alone while a text field has the focus, and Enter and Space go to
//! a button that has it.

use egui::{Context as Egui, Event, Key};

use super::action::{Action, Context};

/// A key with its modifiers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Chord {
    key: Key,
    ctrl: bool,
    alt: bool,
    shift: bool,
}

impl Chord {
    /// The key alone.
    pub const fn plain(key: Key) -> Self {
        Self {
            key,
            ctrl: false,
            alt: false,
            shift: false,
        }
    }

    /// With Ctrl (Cmd on a Mac).
    pub const fn ctrl(key: Key) -> Self {
        Self {
            ctrl: true,
            ..Self::plain(key)
        }
    }

    /// With Alt.
    pub const fn alt(key: Key) -> Self {
        Self {
            alt: true,
            ..Self::plain(key)
        }
    }

    /// With Shift.
    pub const fn shift(key: Key) -> Self {
        Self {
            shift: true,
            ..Self::plain(key)
        }
    }

    /// As a key cap says it.
    pub fn words(&self) -> String {
        let key = match self.key {
            Key::ArrowUp => "↑",
            Key::ArrowDown => "↓",
            Key::ArrowLeft => "←",
            Key::ArrowRight => "→",
            Key::Escape => "Esc",
            Key::PageUp => "PgUp",
            Key::PageDown => "PgDn",
            Key::Delete => "Del",
            Key::Slash => "/",
            Key::Plus => "+",
            Key::Minus => "−",
            other => other.name(),
        };
        let mut words = String::new();
        for (held, name) in [(self.ctrl, "Ctrl+"), (self.alt, "Alt+"), (self.shift, "Shift+")] {
            if held {
                words.push_str(name);
            }
        }
        words + key
    }

    /// Whether it is a letter, digit or sign that a text field would take, or a key that a focused control uses.
    fn yields_to_focus(&self) -> bool {
        !self.ctrl
            && !self.alt
            && !matches!(
                self.key,
                Key::F1 | Key::F4 | Key::F5 | Key::F8 | Key::F11 | Key::Escape
            )
    }
}

/// Actions that this frame's keys ask for in `context`; their keys are taken out of the input.
pub fn pressed(egui: &Egui, context: Context, single_keys: bool) -> Vec<Action> {
    let focused = egui.memory(|memory| memory.focused());
    let typing = egui.text_edit_focused();
    let mut asked = Vec::new();
    for words in Action::all() {
        let action = words.action;
        let holds = words.context == context
            || (words.context == Context::Everywhere && (is_in_a_place(context) || is_of_the_window(action)));
        // While a ladder's text is typed, Ctrl+Z is the text's.
        let is_the_texts = context == Context::Workshop && action == Action::Undo && typing;
        if !holds || is_the_texts {
            continue;
        }
        for chord in words.keys.iter().copied() {
            let press = matches!(chord.key, Key::Enter | Key::Space);
            let blocked = chord.yields_to_focus() && (typing || (press && focused.is_some()));
            let unwanted = chord.yields_to_focus() && !single_keys && !is_movement(chord.key);
            if !blocked && !unwanted && takes(egui, chord) {
                asked.push(action);
            }
        }
    }
    asked
}

/// Whether a place of an open logbook is shown.
pub(super) fn is_in_a_place(context: Context) -> bool {
    !matches!(context, Context::First | Context::Import)
}

/// Before a logbook is open only the window's own actions hold.
fn is_of_the_window(action: Action) -> bool {
    matches!(
        action,
        Action::Larger
            | Action::Smaller
            | Action::UsualSize
            | Action::TurnTheme
            | Action::ShowKeys
            | Action::Back
    )
}

fn is_movement(key: Key) -> bool {
    matches!(
        key,
        Key::ArrowUp
            | Key::ArrowDown
            | Key::ArrowLeft
            | Key::ArrowRight
            | Key::Enter
            | Key::PageUp
            | Key::PageDown
            | Key::Home
            | Key::End
    )
}

/// Takes the chord out of the input, if it was pressed with exactly its modifiers.
fn takes(egui: &Egui, chord: Chord) -> bool {
    let is_it = |event: &Event| match event {
        Event::Key {
            key,
            pressed: true,
            modifiers,
            ..
        } => {
            *key == chord.key
                && modifiers.alt == chord.alt
                && (modifiers.ctrl || modifiers.command) == chord.ctrl
                && (modifiers.shift == chord.shift || shift_is_part(chord.key))
        }
        _ => false,
    };
    egui.input_mut(|input| {
        let before = input.events.len();
        input.events.retain(|event| !is_it(event));
        input.events.len() < before
    })
}

/// On many keyboards Shift belongs to these signs.
fn shift_is_part(key: Key) -> bool {
    matches!(
        key,
        Key::Plus | Key::Slash | Key::Equals | Key::OpenCurlyBracket | Key::CloseCurlyBracket
    )
}
