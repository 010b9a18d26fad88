//! The cells of a set.

use crate::catalogue::{Movement, Sides};
use crate::logbook::record::{Load, Set};
use crate::problem::quoted;
use crate::units::{Effort, Measure, Outcome, Reps, Seconds, Side, Typed};

use super::check::Check;
use super::column::Column;
use super::names::near_movement;
use super::rails::Named;
use super::write::outcome_word;

/// Most help and most load, kg.
const LOAD: (f64, f64) = (-300.0, 400.0);

impl<'x> Check<'x, '_> {
    pub(super) fn set(&mut self, side: Option<Side>, bodyweight: Option<Typed>) -> Option<Set> {
        let movement = self.movement();
        let known = match &movement {
            Some(Named::Known(movement)) => Some(*movement),
            _ => None,
        };
        let load = self.mass(Column::AddedKg, Column::AddedLb, LOAD.0, LOAD.1);
        let left = self.left();
        let outcome = self.outcome();
        let effort = self.effort(known, movement.is_some());
        if let (Some(Effort::Reps(reps)), Some(outcome @ (Outcome::Done | Outcome::Form))) = (effort, outcome)
            && reps.count() == 0
        {
            let what = format!("reps 0 with outcome {}", outcome_word(outcome));
            self.odd(Column::Reps, what, "a try that failed has the outcome fail");
        }
        if let (Some(movement), Some(side)) = (known, side)
            && movement.sides == Sides::Together
        {
            let what = format!(
                "side {} on {}, in which both sides work as one",
                side.letter(),
                movement.id
            );
            self.odd(
                Column::Side,
                what,
                "clear side; pain on one side goes into a row of its own",
            );
        }
        let (ladder, rung) = self.tag(known);
        Some(Set {
            movement: match movement? {
                Named::Known(movement) => movement.id.as_str().into(),
                Named::Kept(text) => text.into(),
            },
            side,
            load: load.and_then(|typed| match typed.value() < 0.0 {
                false => Some(Load::Added(typed)),
                true => Typed::new(-typed.value(), typed.unit())
                    .ok()
                    .map(Load::Assistance),
            }),
            effort: effort?,
            left,
            outcome: outcome?,
            bodyweight,
            ladder: ladder.map(Into::into),
            rung: rung.map(Into::into),
            note: None,
        })
    }

    fn movement(&mut self) -> Option<Named<'x, Movement>> {
        let text = self.text(Column::Movement)?;
        if let Some(movement) = self.import.catalogue.movement_by_name(text) {
            return Some(Named::Known(movement));
        }
        let mend = near_movement(self.import.catalogue, text);
        self.odd(
            Column::Movement,
            format!("unknown movement {}", quoted(text)),
            mend,
        );
        self.ours
            .then(|| Named::Kept(self.verbatim(Column::Movement).unwrap_or(text).to_owned()))
    }

    fn outcome(&mut self) -> Option<Outcome> {
        let Some(text) = self.text(Column::Outcome) else {
            return Some(Outcome::Done);
        };
        let known = [Outcome::Done, Outcome::Missed, Outcome::Form];
        let found = known
            .into_iter()
            .find(|outcome| outcome_word(*outcome).eq_ignore_ascii_case(text));
        if found.is_none() {
            self.not_one_of(Column::Outcome, text, "success, fail, form or an empty cell");
        }
        found
    }

    /// Reps or seconds, by what `movement` is counted in; `named` when at least its name is there.
    fn effort(&mut self, movement: Option<&Movement>, named: bool) -> Option<Effort> {
        let reps = self
            .whole(Column::Reps, 0, Reps::MOST)
            .and_then(|count| Reps::try_from(count).ok());
        let hold = self.number(Column::HoldS);
        let hold = hold.and_then(|seconds| {
            let fits = Seconds::try_from(seconds).ok();
            if fits.is_none() {
                self.outside(Column::HoldS, "over 0 to 3600 s");
            }
            fits
        });
        let given = (
            self.text(Column::Reps).is_some(),
            self.text(Column::HoldS).is_some(),
        );
        let asked = movement.map(|movement| match movement.measure {
            Measure::Reps => (movement, Column::Reps, Column::HoldS, given.1),
            Measure::Hold => (movement, Column::HoldS, Column::Reps, given.0),
        });
        match (given, asked) {
            ((false, false), Some((movement, column, ..))) => {
                let what = format!("a set of {} without {}", movement.id, column.name());
                self.bad(
                    Column::Movement,
                    what,
                    format!("fill in {}, or clear movement", column.name()),
                );
            }
            ((false, false), None) if named => {
                self.bad(
                    Column::Movement,
                    "a set without reps or seconds",
                    "fill in reps or hold_s",
                );
            }
            (given, Some((movement, column, other, true))) => {
                let what = format!(
                    "{} is counted in {}, not in {}",
                    movement.id,
                    column.name(),
                    other.name()
                );
                let mend = format!("move the number to {}", column.name());
                match given {
                    (true, true) => self.bad(other, what, format!("clear {}", other.name())),
                    _ => self.odd(other, what, mend),
                }
            }
            ((true, true), None) if named => {
                self.bad(
                    Column::HoldS,
                    "reps and hold_s are both given",
                    "keep the one that counts",
                );
            }
            _ => {}
        }
        reps.map(Effort::Reps).or(hold.map(Effort::Hold))
    }
}
