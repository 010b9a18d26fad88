//! The cells that name ladders and rungs: tags of sets, placements and goals.

use crate::catalogue::{Ladder, Movement};
use crate::logbook::record::{Fact, Placed};
use crate::problem::quoted;
use crate::units::Side;

use super::check::Check;
use super::column::Column;
use super::names::{near_ladder, near_rung};
use super::write::SET_ASIDE;

/// A name that the catalogue may know.
pub(super) enum Named<'c, T> {
    /// This one.
    Known(&'c T),
    /// Kept as text: the row is an export of ours.
    Kept(String),
}

impl<'x> Check<'x, '_> {
    fn ladder(&mut self) -> Option<Named<'x, Ladder>> {
        let text = self.text(Column::Ladder)?;
        if let Some(ladder) = self.import.catalogue.ladder_by_name(text) {
            return Some(Named::Known(ladder));
        }
        let mend = near_ladder(self.import.catalogue, text);
        self.odd(Column::Ladder, format!("unknown ladder {}", quoted(text)), mend);
        self.ours
            .then(|| Named::Kept(self.verbatim(Column::Ladder).unwrap_or(text).to_owned()))
    }

    /// Ladder and rung that a set was done for.
    pub(super) fn tag(&mut self, movement: Option<&Movement>) -> (Option<String>, Option<String>) {
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
            Some(Named::Known(ladder)) => match ladder.rung_by_name(text) {
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

    pub(super) fn placement(&mut self, side: Option<Side>) -> Option<Fact> {
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
            (Some(text), Named::Known(ladder)) => match ladder.rung_by_name(text) {
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

    pub(super) fn goal(&mut self) -> Option<Fact> {
        let by = self.date(Column::GoalBy);
        // An export's goal comes back to the letter, where the catalogue doesn't know it.
        let text = self.text(Column::Goal).and_then(|text| {
            if self.ours {
                self.verbatim(Column::Goal)
            } else {
                Some(text)
            }
        });
        let Some(text) = text else {
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
        match self.import.catalogue.ladder_by_name(of) {
            None => {
                let mend = near_ladder(self.import.catalogue, of);
                self.odd(Column::Goal, format!("unknown ladder {}", quoted(of)), mend);
            }
            Some(known) => match known.rung_by_name(to) {
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
}

fn id_of(ladder: Named<'_, Ladder>) -> String {
    match ladder {
        Named::Known(ladder) => ladder.id.clone(),
        Named::Kept(text) => text,
    }
}
