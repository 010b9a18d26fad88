//! A logbook's own movements and ladders: they add to the shipped ones or replace one by id.

use std::collections::BTreeSet;

use super::{Catalogue, Ladder, Movement, check, fold, read};
use crate::problem::{Problem, Severity, quoted};

/// A file of a logbook, as read by the rim.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnFile {
    /// The path that problems name, for example `ladders/ring-dip.ron`.
    pub path: String,
    /// What is in it.
    pub text: String,
}

impl OwnFile {
    /// A file of this path and text.
    pub fn new(path: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            text: text.into(),
        }
    }

    /// Whether it holds movements: its name is `movements.ron`; every other file is a ladder.
    pub fn is_movements(&self) -> bool {
        self.path.rsplit(['/', '\\']).next() == Some("movements.ron")
    }
}

impl Catalogue {
    /// This catalogue with a logbook's own files, and what is wrong in them. The order of the files makes no difference. What
    /// has an error is left out and everything else is in force: a broken ladder never takes another with it.
    pub fn with_own(&self, files: &[OwnFile]) -> (Catalogue, Vec<Problem>) {
        let mut files: Vec<&OwnFile> = files.iter().collect();
        files.sort_by(|one, other| one.path.cmp(&other.path));
        let (movements, ladders): (Vec<&OwnFile>, Vec<&OwnFile>) =
            files.into_iter().partition(|file| file.is_movements());
        let mut catalogue = self.clone();
        let mut problems = Vec::new();
        for file in movements {
            catalogue.add_movements(file, &mut problems);
        }
        let mut own = BTreeSet::new();
        for file in ladders {
            catalogue.add_ladder(file, &mut own, &mut problems);
        }
        (catalogue, problems)
    }

    /// This catalogue, in which every ladder that came from one of the `broken` files stays as `last` had it: a slip of the
    /// finger in an open file takes no ladder away.
    pub fn keeping_last_good(mut self, last: &Catalogue, broken: &BTreeSet<&str>) -> Catalogue {
        for (id, path) in &last.origins {
            let Some(ladder) = last.ladder(id).filter(|_| broken.contains(path.as_str())) else {
                continue;
            };
            if !self.origins.contains_key(id) && self.suits(ladder) {
                self.put_ladder(ladder.clone());
                self.origins.insert(id.clone(), path.clone());
            }
        }
        self
    }

    fn add_movements(&mut self, file: &OwnFile, problems: &mut Vec<Problem>) {
        let reading = read::movements(&file.path, &file.text);
        problems.extend(reading.problems);
        for movement in reading.value {
            match self.objection(&movement) {
                None => self.put_movement(movement),
                Some((what, mend)) => {
                    problems.push(read::error_at_id(
                        &file.path,
                        &file.text,
                        &movement.id,
                        what,
                        mend,
                    ));
                }
            }
        }
    }

    /// Why an own movement can't be added: its name folds to another's, or a ladder no longer holds with it.
    fn objection(&self, movement: &Movement) -> Option<(String, String)> {
        if let Some(other) = self
            .movement_names
            .get(&fold(&movement.id))
            .filter(|id| **id != movement.id)
        {
            return Some((
                format!(
                    "{} and {} differ only in case and hyphens",
                    quoted(&movement.id),
                    quoted(other)
                ),
                format!(
                    "write id: {} to replace that movement, or choose another id",
                    quoted(other)
                ),
            ));
        }
        self.movements.get(&movement.id)?;
        let mut after = self.clone();
        after.put_movement(movement.clone());
        let broken = self.ladders().find(|ladder| !after.suits(ladder))?;
        Some((
            format!(
                "with this {} the ladder {} no longer holds",
                quoted(&movement.id),
                quoted(&broken.id)
            ),
            "keep measure, sides and share of the movement that it replaces, or choose another id".to_owned(),
        ))
    }

    /// Whether a ladder has no error with the movements of this catalogue.
    fn suits(&self, ladder: &Ladder) -> bool {
        let raw = read::raw_of(ladder, &self.movements);
        let findings = check::ladder(&raw, &self.movements);
        findings
            .0
            .iter()
            .all(|finding| finding.severity != Severity::Error)
    }

    fn add_ladder(&mut self, file: &OwnFile, own: &mut BTreeSet<String>, problems: &mut Vec<Problem>) {
        let reading = read::ladder(&file.path, &file.text, &self.movements);
        problems.extend(reading.problems);
        let Some(ladder) = reading.value else { return };
        let taken = self.ladder_names.get(&fold(&ladder.id));
        let objection = if own.contains(&ladder.id) {
            let first = self
                .origins
                .get(&ladder.id)
                .map_or("another file", String::as_str);
            Some(format!("{} has a ladder {} too", first, quoted(&ladder.id)))
        } else {
            taken.filter(|id| **id != ladder.id).map(|id| {
                format!(
                    "{} and {} differ only in case and hyphens",
                    quoted(&ladder.id),
                    quoted(id)
                )
            })
        };
        if let Some(what) = objection {
            let mend = "give one of them another id".to_owned();
            problems.push(read::error_at_id(&file.path, &file.text, &ladder.id, what, mend));
            return;
        }
        own.insert(ladder.id.clone());
        self.origins.insert(ladder.id.clone(), file.path.clone());
        self.put_ladder(ladder);
    }
}
