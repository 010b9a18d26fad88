//! A record as RON on one line, written by hand so that the bytes stay the same whatever any crate's next version does.
//!
//! Invariant: canonical. One record has one text: fields in the order of [`Record`], nothing that is absent, numbers in
//! their shortest form that reads back to the same bits.

use std::fmt::Write as _;

use crate::catalogue::Site;
use crate::logbook::record::{Fact, Load, Placed, Record, Set, Sex};
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
    let mut fields = Fields::open(String::with_capacity(192), "");
    fields.add("id", quote(&id.to_string()));
    fields.add("rev", rev);
    fields.add("dev", quote(dev));
    fields.add("at", quote(at.as_str()));
    fields.add("nth", nth);
    fields.add("what", fact(what));
    fields.close()
}

fn fact(fact: &Fact) -> String {
    match fact {
        Fact::Profile {
            name,
            born,
            sex,
            height_cm,
        } => Fields::of("Profile")
            .text("name", name.as_deref())
            .text("born", born.as_ref().map(Written::as_str))
            .maybe("sex", sex.map(sex_word))
            .maybe("height_cm", *height_cm)
            .close(),
        Fact::Set(set) => set_text(set),
        Fact::WeighIn { bodyweight, note } => Fields::of("WeighIn")
            .with("bodyweight", mass(*bodyweight))
            .text("note", note.as_deref())
            .close(),
        Fact::Pain {
            site,
            side,
            score,
            note,
        } => Fields::of("Pain")
            .with("site", site_word(*site))
            .maybe("side", side.map(Side::letter))
            .with("score", score)
            .text("note", note.as_deref())
            .close(),
        Fact::Placement {
            ladder,
            side,
            rung,
            why,
        } => Fields::of("Placement")
            .text("ladder", Some(ladder))
            .maybe("side", side.map(Side::letter))
            .with("rung", placed(rung))
            .text("why", why.as_deref())
            .close(),
        Fact::Phase { kind, note } => Fields::of("Phase")
            .with("kind", phase_word(*kind))
            .text("note", note.as_deref())
            .close(),
        Fact::Goal {
            ladder,
            rung,
            by,
            note,
        } => Fields::of("Goal")
            .text("ladder", Some(ladder))
            .text("rung", Some(rung))
            .text("by", by.as_ref().map(Written::as_str))
            .text("note", note.as_deref())
            .close(),
        Fact::Note { text } => Fields::of("Note").text("text", Some(text)).close(),
        Fact::Amend {
            target,
            at,
            nth,
            what,
        } => Fields::of("Amend")
            .text("target", Some(&target.to_string()))
            .text("at", Some(at.as_str()))
            .with("nth", nth)
            .with("what", self::fact(what))
            .close(),
        Fact::Retract { target, why } => Fields::of("Retract")
            .text("target", Some(&target.to_string()))
            .text("why", why.as_deref())
            .close(),
        Fact::Restore { target } => Fields::of("Restore")
            .text("target", Some(&target.to_string()))
            .close(),
    }
}

fn set_text(set: &Set) -> String {
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
    Fields::of("Set")
        .text("movement", Some(movement))
        .maybe("side", side.map(Side::letter))
        .maybe("load", load.map(load_text))
        .with(
            "effort",
            match effort {
                Effort::Reps(reps) => format!("Reps({})", reps.count()),
                Effort::Hold(seconds) => format!("Hold({})", seconds.value()),
            },
        )
        .maybe("left", left.map(left_text))
        .maybe(
            "outcome",
            match outcome {
                Outcome::Done => None,
                Outcome::Missed => Some("Missed"),
                Outcome::Form => Some("Form"),
            },
        )
        .maybe("bodyweight", bodyweight.map(mass))
        .text("ladder", ladder.as_deref())
        .text("rung", rung.as_deref())
        .text("note", note.as_deref())
        .close()
}

fn load_text(load: Load) -> String {
    match load {
        Load::Added(typed) => format!("Added({})", mass(typed)),
        Load::Assistance(typed) => format!("Assistance({})", mass(typed)),
    }
}

fn left_text(given: Given) -> String {
    let reps = given.reserve().reps();
    match given {
        Given::Rir(_) => format!("rir({reps})"),
        Given::Rpe(_) => format!("rpe({})", 10.0 - reps),
    }
}

fn placed(placed: &Placed) -> String {
    match placed {
        Placed::Joined => "Joined".to_owned(),
        Placed::On(rung) => format!("On({})", quote(rung)),
        Placed::SetAside => "SetAside".to_owned(),
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
pub(crate) fn mass(typed: Typed) -> String {
    format!("{}({})", typed.unit().sign(), typed.value())
}

/// A string in quotes; quotes, backslashes, control and direction characters escaped.
pub(crate) fn quote(text: &str) -> String {
    let escaped = text
        .replace('\\', "\\\\")
        .replace('"', "\\\"")
        .replace('\n', "\\n");
    format!("\"{}\"", visible(&escaped))
}

/// A struct's fields, one after another.
struct Fields {
    out: String,
    is_first: bool,
}

impl Fields {
    fn of(kind: &str) -> Self {
        Self::open(String::with_capacity(96), kind)
    }

    fn open(mut out: String, kind: &str) -> Self {
        out.push_str(kind);
        out.push('(');
        Self { out, is_first: true }
    }

    fn add(&mut self, name: &str, value: impl std::fmt::Display) {
        if !self.is_first {
            self.out.push_str(", ");
        }
        self.is_first = false;
        // Writing to a String cannot fail.
        let _ = write!(self.out, "{name}: {value}");
    }

    fn with(mut self, name: &str, value: impl std::fmt::Display) -> Self {
        self.add(name, value);
        self
    }

    fn maybe(self, name: &str, value: Option<impl std::fmt::Display>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }

    fn text(self, name: &str, value: Option<&str>) -> Self {
        self.maybe(name, value.map(quote))
    }

    fn close(mut self) -> String {
        self.out.push(')');
        self.out
    }
}
