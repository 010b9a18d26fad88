//! A record as RON on one line, written by hand so that the bytes stay the same whatever any crate's next version does.
//!
//! Invariant: canonical. One record has one text: fields in the order of [`Record`], nothing that is absent, numbers in
//! their shortest form that reads back to the same bits.

use std::fmt::{Display, Write as _};

use crate::catalogue::Site;
use crate::logbook::record::{Fact, Id, Load, Placed, Record, Set, Sex};
use crate::logbook::{Written, record::PhaseKind};
use crate::problem::visible;
use crate::units::{Effort, Given, Outcome, Side, Typed};

/// The record's text.
pub fn record(record: &Record) -> String {
    let Record {
        id,
        rev,
        dev,
        at,
        nth,
        what,
    } = record;
    let mut text = Text {
        out: String::with_capacity(224),
        is_first: true,
    };
    text.open("");
    text.text("id", &id.to_string());
    text.put("rev", rev);
    text.text("dev", dev);
    text.text("at", at.as_str());
    text.put("nth", nth);
    text.name("what");
    text.fact(what);
    text.close();
    text.out
}

/// A text that grows field by field.
struct Text {
    out: String,
    is_first: bool,
}

impl Text {
    fn open(&mut self, kind: &str) {
        self.out.push_str(kind);
        self.out.push('(');
        self.is_first = true;
    }

    fn close(&mut self) {
        self.out.push(')');
        self.is_first = false;
    }

    fn name(&mut self, name: &str) {
        if !self.is_first {
            self.out.push_str(", ");
        }
        self.is_first = false;
        self.out.push_str(name);
        self.out.push_str(": ");
    }

    fn put(&mut self, name: &str, value: impl Display) {
        self.name(name);
        // Writing to a String cannot fail.
        let _ = write!(self.out, "{value}");
    }

    fn maybe(&mut self, name: &str, value: Option<impl Display>) {
        if let Some(value) = value {
            self.put(name, value);
        }
    }

    fn text(&mut self, name: &str, value: &str) {
        self.name(name);
        push_quoted(&mut self.out, value);
    }

    fn maybe_text(&mut self, name: &str, value: Option<&str>) {
        if let Some(value) = value {
            self.text(name, value);
        }
    }

    fn id(&mut self, name: &str, id: Id) {
        self.text(name, &id.to_string());
    }

    fn fact(&mut self, fact: &Fact) {
        match fact {
            Fact::Profile {
                name,
                born,
                sex,
                height_cm,
            } => {
                self.open("Profile");
                self.maybe_text("name", name.as_deref());
                self.maybe_text("born", born.as_ref().map(Written::as_str));
                self.maybe("sex", sex.map(sex_word));
                self.maybe("height_cm", *height_cm);
            }
            Fact::Set(set) => self.set(set),
            Fact::WeighIn { bodyweight, note } => {
                self.open("WeighIn");
                self.put("bodyweight", Mass(*bodyweight));
                self.maybe_text("note", note.as_deref());
            }
            Fact::Pain {
                site,
                side,
                score,
                note,
            } => {
                self.open("Pain");
                self.put("site", site_word(*site));
                self.maybe("side", side.map(Side::letter));
                self.put("score", score);
                self.maybe_text("note", note.as_deref());
            }
            Fact::Placement {
                ladder,
                side,
                rung,
                why,
            } => {
                self.open("Placement");
                self.text("ladder", ladder);
                self.maybe("side", side.map(Side::letter));
                self.placed(rung);
                self.maybe_text("why", why.as_deref());
            }
            Fact::Phase { kind, note } => {
                self.open("Phase");
                self.put("kind", phase_word(*kind));
                self.maybe_text("note", note.as_deref());
            }
            Fact::Archive { archived, note } => {
                self.open("Archive");
                self.put("archived", archived);
                self.maybe_text("note", note.as_deref());
            }
            Fact::Goal {
                ladder,
                rung,
                by,
                note,
            } => {
                self.open("Goal");
                self.text("ladder", ladder);
                self.text("rung", rung);
                self.maybe_text("by", by.as_ref().map(Written::as_str));
                self.maybe_text("note", note.as_deref());
            }
            Fact::Note { text } => {
                self.open("Note");
                self.text("text", text);
            }
            Fact::Amend {
                target,
                at,
                nth,
                what,
            } => {
                self.open("Amend");
                self.id("target", *target);
                self.text("at", at.as_str());
                self.put("nth", nth);
                self.name("what");
                self.fact(what);
            }
            Fact::Retract { target, why } => {
                self.open("Retract");
                self.id("target", *target);
                self.maybe_text("why", why.as_deref());
            }
            Fact::Restore { target } => {
                self.open("Restore");
                self.id("target", *target);
            }
        }
        self.close();
    }

    fn set(&mut self, set: &Set) {
        let Set {
            movement,
            side,
            load,
            effort,
            left,
            outcome,
            bodyweight,
            ladder,
            rung,
            note,
        } = set;
        self.open("Set");
        self.text("movement", movement);
        self.maybe("side", side.map(Side::letter));
        match load {
            Some(Load::Added(typed)) => self.put("load", format_args!("Added({})", Mass(*typed))),
            Some(Load::Assistance(typed)) => self.put("load", format_args!("Assistance({})", Mass(*typed))),
            None => {}
        }
        match effort {
            Effort::Reps(reps) => self.put("effort", format_args!("Reps({})", reps.count())),
            Effort::Hold(seconds) => self.put("effort", format_args!("Hold({})", seconds.value())),
        }
        match left {
            Some(Given::Rir(reserve)) => self.put("left", format_args!("rir({})", reserve.reps())),
            Some(Given::Rpe(reserve)) => self.put("left", format_args!("rpe({})", 10.0 - reserve.reps())),
            None => {}
        }
        match outcome {
            Outcome::Done => {}
            Outcome::Missed => self.put("outcome", "Missed"),
            Outcome::Form => self.put("outcome", "Form"),
        }
        self.maybe("bodyweight", bodyweight.map(Mass));
        self.maybe_text("ladder", ladder.as_deref());
        self.maybe_text("rung", rung.as_deref());
        self.maybe_text("note", note.as_deref());
    }

    fn placed(&mut self, placed: &Placed) {
        match placed {
            Placed::Joined => self.put("rung", "Joined"),
            Placed::On(rung) => self.put("rung", format_args!("On({})", quote(rung))),
            Placed::SetAside => self.put("rung", "SetAside"),
        }
    }
}

fn site_word(site: Site) -> &'static str {
    match site {
        Site::Elbow => "Elbow",
        Site::Shoulder => "Shoulder",
        Site::Wrist => "Wrist",
        Site::Fingers => "Fingers",
        Site::Knee => "Knee",
        Site::Hip => "Hip",
        Site::Ankle => "Ankle",
        Site::Back => "Back",
    }
}

fn sex_word(sex: Sex) -> &'static str {
    match sex {
        Sex::Female => "female",
        Sex::Male => "male",
    }
}

fn phase_word(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::Cut => "cut",
        PhaseKind::Hold => "hold",
        PhaseKind::Gain => "gain",
        PhaseKind::Deload => "deload",
    }
}

/// A mass as typed: `kg(20)`, `lb(45)`.
pub(crate) struct Mass(pub Typed);

impl Display for Mass {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}({})", self.0.unit().sign(), self.0.value())
    }
}

/// A string in quotes; quotes, backslashes, control and direction characters escaped.
pub(crate) fn quote(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    push_quoted(&mut out, text);
    out
}

fn push_quoted(out: &mut String, text: &str) {
    out.push('"');
    if text
        .bytes()
        .all(|byte| matches!(byte, b' '..=b'~') && !matches!(byte, b'"' | b'\\'))
    {
        out.push_str(text);
    } else {
        let escaped = text
            .replace('\\', "\\\\")
            .replace('"', "\\\"")
            .replace('\n', "\\n");
        out.push_str(&visible(&escaped));
    }
    out.push('"');
}
