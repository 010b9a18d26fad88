//! A reader for the one shape that most lines have: a set exactly as [`super::text`] writes it.
//!
//! Invariant: where it gives a record, RON gives the same; everything unusual (another order, an escape, a comment, an
//! unknown field) is `None` and goes to RON.

use crate::logbook::Written;
use crate::logbook::record::{Fact, Id, Load, Record, Set};
use crate::units::{Effort, Given, Outcome, Reps, Seconds, Side, Typed, Unit};

/// The record, if `body` is a set in canonical form.
pub fn set(body: &str) -> Option<Record> {
    let mut at = Cursor(body);
    let record = Record {
        id: {
            at.skip("(id: ")?;
            Id::from_string(at.string()?).ok()?
        },
        rev: at.after(", rev: ")?.whole()?,
        dev: at.after(", dev: ")?.string()?.to_owned(),
        at: Written::parse(at.after(", at: ")?.string()?).ok()?,
        nth: at.after(", nth: ")?.whole()?,
        what: Fact::Set(at.after(", what: Set(movement: ")?.set()?),
    };
    at.0.is_empty().then_some(record)
}

/// What is left to read.
struct Cursor<'a>(&'a str);

impl<'a> Cursor<'a> {
    fn skip(&mut self, expected: &str) -> Option<()> {
        self.0 = self.0.strip_prefix(expected)?;
        Some(())
    }

    fn after(&mut self, expected: &str) -> Option<&mut Self> {
        self.skip(expected)?;
        Some(self)
    }

    /// Whether the text goes on with `expected`, which is then skipped.
    fn has(&mut self, expected: &str) -> bool {
        self.skip(expected).is_some()
    }

    /// A string without escapes.
    fn string(&mut self) -> Option<&'a str> {
        let inside = self.0.strip_prefix('"')?;
        let end = inside.bytes().position(|byte| matches!(byte, b'"' | b'\\'))?;
        if inside.as_bytes().get(end) == Some(&b'\\') {
            return None;
        }
        self.0 = inside.get(end + 1..)?;
        inside.get(..end)
    }

    /// A string that is kept, where the field is there.
    fn optional_string<T: From<&'a str>>(&mut self, field: &str) -> Option<Option<T>> {
        if self.has(field) {
            return self.string().map(|text| Some(text.into()));
        }
        Some(None)
    }

    /// Digits, with at most one point between them.
    fn digits(&mut self) -> Option<&'a str> {
        let end = self
            .0
            .bytes()
            .position(|byte| !byte.is_ascii_digit() && byte != b'.')?;
        let (number, rest) = self.0.split_at_checked(end)?;
        let plain = number.starts_with(|c: char| c.is_ascii_digit())
            && number.ends_with(|c: char| c.is_ascii_digit());
        self.0 = rest;
        plain.then_some(number)
    }

    fn whole<N: std::str::FromStr>(&mut self) -> Option<N> {
        self.digits()?.parse().ok()
    }

    fn number(&mut self) -> Option<f64> {
        self.digits()?.parse().ok()
    }

    /// `kg(20)` or `lb(45)`.
    fn mass(&mut self) -> Option<Typed> {
        let unit = if self.has("kg(") {
            Unit::Kg
        } else {
            self.skip("lb(")?;
            Unit::Lb
        };
        let value = self.number()?;
        self.skip(")")?;
        Typed::new(value, unit).ok()
    }

    /// The fields of a set after `movement: `, up to the record's end.
    fn set(&mut self) -> Option<Set> {
        Some(Set {
            movement: self.string()?.into(),
            side: self.side(),
            load: self.load()?,
            effort: self.effort()?,
            left: self.left()?,
            outcome: self.outcome(),
            bodyweight: if self.has(", bodyweight: ") {
                Some(self.mass()?)
            } else {
                None
            },
            ladder: self.optional_string(", ladder: ")?,
            rung: self.optional_string(", rung: ")?,
            note: {
                let note = self.optional_string(", note: ")?;
                self.skip("))")?;
                note
            },
        })
    }

    fn side(&mut self) -> Option<Side> {
        if self.has(", side: L") {
            Some(Side::Left)
        } else {
            self.has(", side: R").then_some(Side::Right)
        }
    }

    fn load(&mut self) -> Option<Option<Load>> {
        let load = if self.has(", load: Added(") {
            Load::Added(self.mass()?)
        } else if self.has(", load: Assistance(") {
            Load::Assistance(self.mass()?)
        } else {
            return Some(None);
        };
        self.skip(")")?;
        Some(Some(load))
    }

    fn effort(&mut self) -> Option<Effort> {
        let effort = if self.has(", effort: Reps(") {
            Effort::Reps(Reps::try_from(self.whole::<u16>()?).ok()?)
        } else {
            self.skip(", effort: Hold(")?;
            Effort::Hold(Seconds::try_from(self.number()?).ok()?)
        };
        self.skip(")")?;
        Some(effort)
    }

    fn left(&mut self) -> Option<Option<Given>> {
        let left = if self.has(", left: rir(") {
            Given::rir(self.number()?)
        } else if self.has(", left: rpe(") {
            Given::rpe(self.number()?)
        } else {
            return Some(None);
        };
        self.skip(")")?;
        left.ok().map(Some)
    }

    fn outcome(&mut self) -> Outcome {
        if self.has(", outcome: Missed") {
            Outcome::Missed
        } else if self.has(", outcome: Form") {
            Outcome::Form
        } else {
            Outcome::Done
        }
    }
}
