//! From a row's cells to what happened: which facts a row holds, and which of them takes the note.

use crate::catalogue::{Ladder, Movement, Sides, Site};
use crate::logbook::record::{Fact, Load, PhaseKind, Placed, Set, Sex};
use crate::problem::quoted;
use crate::units::{Effort, Measure, Outcome, Reps, Seconds, Side, Typed};

use super::check::Check;
use super::column::Column;
use super::names::{near_rung, rung};
use super::write::{SET_ASIDE, outcome_word, phase_word, sex_word};

/// Most equal sets in one row.
const MOST_SETS: u16 = 50;
/// Lightest and heaviest bodyweight, kg.
const BODYWEIGHT: (f64, f64) = (20.0, 400.0);
/// Most help and most load, kg.
const LOAD: (f64, f64) = (-300.0, 400.0);
/// Least and greatest height, cm.
const HEIGHT: (f64, f64) = (50.0, 260.0);

/// A name that the catalogue may know.
enum Named<'c, T> {
    Known(&'c T),
    /// Kept as text: the row is an export of ours.
    Kept(String),
}

impl<'x> Check<'x, '_> {
    /// How many equal sets the row stands for.
    pub(super) fn sets(&mut self) -> u32 {
        let sets = self.whole(Column::Sets, 1, MOST_SETS).unwrap_or(1);
        if self.ours && sets > 1 {
            self.bad(
                Column::Sets,
                "several sets under one id",
                "clear sets, or clear id",
            );
        }
        sets.into()
    }

    /// What the row says, the most telling fact first. The facts are right only if no problem was found.
    pub(super) fn facts(&mut self) -> Vec<Fact> {
        let side = self.side();
        let bodyweight = self.mass(
            Column::BodyweightKg,
            Column::BodyweightLb,
            BODYWEIGHT.0,
            BODYWEIGHT.1,
        );
        let moved = self.text(Column::Movement).is_some();
        let mut facts = Vec::with_capacity(2);
        if moved {
            facts.extend(self.set(side, bodyweight).map(Fact::Set));
        } else {
            self.refuse_half_a_set();
            facts.extend(self.placement(side));
            facts.extend(bodyweight.map(|bodyweight| Fact::WeighIn {
                bodyweight,
                note: None,
            }));
        }
        facts.extend(self.pain(side));
        facts.extend(self.phase());
        facts.extend(self.goal());
        let placed = self.text(Column::Ladder).is_some();
        let hurts = self.text(Column::Pain).is_some();
        if self.text(Column::Side).is_some() && !moved && !placed && !hurts {
            self.bad(
                Column::Side,
                "side without a set, a placement or pain",
                "clear side",
            );
        }
        let mut note = self.note();
        if let Some(
            Fact::Set(Set { note: own, .. })
            | Fact::Placement { why: own, .. }
            | Fact::WeighIn { note: own, .. }
            | Fact::Pain { note: own, .. }
            | Fact::Phase { note: own, .. }
            | Fact::Goal { note: own, .. },
        ) = facts.first_mut()
        {
            *own = note.take();
        }
        facts.extend(self.profile());
        facts.extend(note.map(|text| Fact::Note { text }));
        facts
    }

    /// An export's note comes back to the letter; another file's loses outer spaces, which nobody sees.
    fn note(&self) -> Option<String> {
        let text = if self.ours {
            self.verbatim(Column::Note)
        } else {
            self.text(Column::Note)
        };
        text.map(str::to_owned)
    }

    fn side(&mut self) -> Option<Side> {
        let text = self.text(Column::Side)?;
        match text {
            "L" | "l" => Some(Side::Left),
            "R" | "r" => Some(Side::Right),
            _ => {
                self.not_one_of(Column::Side, text, "L, R or an empty cell");
                None
            }
        }
    }

    fn refuse_half_a_set(&mut self) {
        for column in [
            Column::AddedKg,
            Column::AddedLb,
            Column::Reps,
            Column::HoldS,
            Column::Rir,
            Column::Rpe,
            Column::Outcome,
            Column::Sets,
        ] {
            if self.text(column).is_some() {
                let name = column.name();
                let mend = format!("name the movement, or clear {name}");
                self.bad(column, format!("{name} without a movement"), mend);
            }
        }
    }

    fn set(&mut self, side: Option<Side>, bodyweight: Option<Typed>) -> Option<Set> {
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
                Named::Known(movement) => movement.id.clone(),
                Named::Kept(text) => text,
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
            ladder,
            rung,
            note: None,
        })
    }

    fn movement(&mut self) -> Option<Named<'x, Movement>> {
        let text = self.text(Column::Movement)?;
        if let Some(movement) = self.names.movement(text) {
            return Some(Named::Known(movement));
        }
        let mend = self.names.near_movement(text);
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
            .whole(Column::Reps, 0, 1000)
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

    fn ladder(&mut self) -> Option<Named<'x, Ladder>> {
        let text = self.text(Column::Ladder)?;
        if let Some(ladder) = self.names.ladder(text) {
            return Some(Named::Known(ladder));
        }
        let mend = self.names.near_ladder(text);
        self.odd(Column::Ladder, format!("unknown ladder {}", quoted(text)), mend);
        self.ours
            .then(|| Named::Kept(self.verbatim(Column::Ladder).unwrap_or(text).to_owned()))
    }

    /// Ladder and rung that a set was done for.
    fn tag(&mut self, movement: Option<&Movement>) -> (Option<String>, Option<String>) {
        let ladder = self.ladder();
        let Some(text) = self.text(Column::Rung) else {
            return (ladder.map(id_of), None);
        };
        let mut id = self.verbatim(Column::Rung).unwrap_or(text).to_owned();
        match &ladder {
            None if self.text(Column::Ladder).is_none() => {
                self.odd(
                    Column::Rung,
                    "rung without a ladder",
                    "name its ladder, or clear rung",
                );
            }
            Some(Named::Known(ladder)) => match rung(ladder, text) {
                None => self.unknown_rung(Column::Rung, ladder, text),
                Some(rung) => {
                    id.clone_from(&rung.id);
                    if let Some(movement) = movement.filter(|movement| movement.id != rung.movement) {
                        let what = format!(
                            "{} of {} is a rung of {}, not of {}",
                            rung.id, ladder.id, rung.movement, movement.id
                        );
                        self.odd(
                            Column::Rung,
                            what,
                            format!("clear rung, or make the movement {}", rung.movement),
                        );
                    }
                }
            },
            _ => {}
        }
        (ladder.map(id_of), Some(id))
    }

    fn unknown_rung(&mut self, column: Column, ladder: &Ladder, text: &str) {
        let what = format!("unknown rung {} of {}", quoted(text), ladder.id);
        self.odd(column, what, near_rung(ladder, text));
    }

    fn placement(&mut self, side: Option<Side>) -> Option<Fact> {
        let Some(ladder) = self.ladder() else {
            if self.text(Column::Rung).is_some() && self.text(Column::Ladder).is_none() {
                self.bad(
                    Column::Rung,
                    "rung without a ladder",
                    "name its ladder, or clear rung",
                );
            }
            return None;
        };
        let rung = match (self.text(Column::Rung), &ladder) {
            (None, _) => Placed::Joined,
            (Some(text), _) if text.eq_ignore_ascii_case(SET_ASIDE) => Placed::SetAside,
            (Some(text), Named::Known(ladder)) => match rung(ladder, text) {
                Some(rung) => Placed::On(rung.id.clone()),
                None => {
                    self.unknown_rung(Column::Rung, ladder, text);
                    Placed::On(self.verbatim(Column::Rung).unwrap_or(text).to_owned())
                }
            },
            (Some(text), Named::Kept(_)) => {
                Placed::On(self.verbatim(Column::Rung).unwrap_or(text).to_owned())
            }
        };
        if let (Named::Known(ladder), Some(side)) = (&ladder, side)
            && !ladder.is_sided()
        {
            let what = format!("side {} on {}, which has one rail", side.letter(), ladder.id);
            self.odd(
                Column::Side,
                what,
                "clear side; pain on one side goes into a row of its own",
            );
        }
        Some(Fact::Placement {
            ladder: id_of(ladder),
            side,
            rung,
            why: None,
        })
    }

    fn pain(&mut self, side: Option<Side>) -> Option<Fact> {
        let score = self
            .whole(Column::Pain, 0, 10)
            .and_then(|score| u8::try_from(score).ok());
        let site = self.text(Column::PainSite);
        let words = || Site::ALL.map(Site::word).join(", ");
        let found = site.and_then(|text| {
            Site::ALL
                .into_iter()
                .find(|site| site.word().eq_ignore_ascii_case(text))
        });
        match (self.text(Column::Pain), site) {
            (Some(_), None) => self.bad(
                Column::Pain,
                "pain without pain_site",
                format!("say where: {}", words()),
            ),
            (None, Some(_)) => self.bad(
                Column::PainSite,
                "pain_site without pain",
                "give pain from 0 to 10, or clear pain_site",
            ),
            (_, Some(text)) if found.is_none() => self.not_one_of(Column::PainSite, text, &words()),
            _ => {}
        }
        Some(Fact::Pain {
            site: found?,
            side,
            score: score?,
            note: None,
        })
    }

    fn phase(&mut self) -> Option<Fact> {
        let text = self.text(Column::Phase)?;
        let known = [
            PhaseKind::Cut,
            PhaseKind::Hold,
            PhaseKind::Gain,
            PhaseKind::Deload,
        ];
        let found = known
            .into_iter()
            .find(|kind| phase_word(*kind).eq_ignore_ascii_case(text));
        if found.is_none() {
            self.not_one_of(Column::Phase, text, "cut, hold, gain or deload");
        }
        Some(Fact::Phase {
            kind: found?,
            note: None,
        })
    }

    fn goal(&mut self) -> Option<Fact> {
        let by = self.date(Column::GoalBy);
        let Some(text) = self.text(Column::Goal) else {
            if self.text(Column::GoalBy).is_some() {
                self.bad(
                    Column::GoalBy,
                    "goal_by without a goal",
                    "give the goal as LADDER/RUNG, or clear goal_by",
                );
            }
            return None;
        };
        let Some((of, to)) = text.split_once('/') else {
            let what = format!("goal {} is not LADDER/RUNG", quoted(text));
            self.bad(Column::Goal, what, "write it as weighted-dip/plus-50");
            return None;
        };
        let (mut ladder, mut goal) = (of.to_owned(), to.to_owned());
        match self.names.ladder(of) {
            None => {
                let mend = self.names.near_ladder(of);
                self.odd(Column::Goal, format!("unknown ladder {}", quoted(of)), mend);
            }
            Some(known) => match rung(known, to) {
                None => self.unknown_rung(Column::Goal, known, to),
                Some(rung) => {
                    ladder.clone_from(&known.id);
                    goal.clone_from(&rung.id);
                }
            },
        }
        Some(Fact::Goal {
            ladder,
            rung: goal,
            by,
            note: None,
        })
    }

    /// Birth date, sex and height; the name comes once for the file.
    fn profile(&mut self) -> Option<Fact> {
        let height_cm = self.within(Column::HeightCm, HEIGHT.0, HEIGHT.1, " cm");
        let born = self.date(Column::Born);
        let sex = self.text(Column::Sex).and_then(|text| {
            let found = [Sex::Female, Sex::Male]
                .into_iter()
                .find(|sex| sex_word(*sex).eq_ignore_ascii_case(text));
            if found.is_none() {
                self.not_one_of(Column::Sex, text, "female, male or an empty cell");
            }
            found
        });
        let any = height_cm.is_some() || born.is_some() || sex.is_some();
        any.then_some(Fact::Profile {
            name: None,
            born,
            sex,
            height_cm,
        })
    }
}

fn id_of(ladder: Named<'_, Ladder>) -> String {
    match ladder {
        Named::Known(ladder) => ladder.id.clone(),
        Named::Kept(text) => text,
    }
}
