//! After the last row: names for athletes who have none, and the ladders that all join.

use std::collections::HashMap;

use chrono::NaiveDate;

use crate::logbook::Written;
use crate::logbook::names::Name;
use crate::logbook::record::{Fact, Placed, Record};

use super::athletes::Athlete;
use super::column::Column;
use super::ident::{Fingerprint, Kind};
use super::reading::Reading;
use super::{Row, Sheet};

impl Reading<'_> {
    /// Adds the athlete's name to `row` if neither the logbook nor a row so far has it.
    pub(super) fn name_in(&mut self, row: &mut Row) {
        let nobody = |athlete: &&mut Athlete| athlete.name == row.athlete && !athlete.named;
        let Some(athlete) = self.athletes.seen.iter_mut().find(nobody) else {
            return;
        };
        athlete.named = true;
        if let (false, Some((at, nth))) = ((self.import.known)(&row.athlete), &athlete.came) {
            row.records.push(row.athlete.record(at, *nth, self.import.device));
        }
    }

    /// What comes after the last row: names for athletes who have none, and the ladders that all join.
    pub(super) fn close(mut self) -> Sheet {
        for athlete in &self.athletes.seen {
            let (Some(first), Some((at, nth))) = (athlete.first, &athlete.came) else {
                continue;
            };
            if athlete.named || (self.import.known)(&athlete.name) {
                continue;
            }
            let own = athlete
                .profile
                .and_then(|(row, place)| self.sheet.rows.get_mut(row)?.records.get_mut(place));
            if let Some(Record {
                what: Fact::Profile { name, .. },
                ..
            }) = own
            {
                // Our export has no column of its own for a name that came with birth date, sex or height.
                *name = Some(athlete.name.as_str().to_owned());
            } else if let Some(row) = self.sheet.rows.get_mut(first) {
                let named = athlete.name.record(at, *nth, self.import.device);
                if self
                    .ids
                    .insert(named.id, (Fingerprint::default(), row.line))
                    .is_none()
                {
                    row.records.push(named);
                }
            }
        }
        self.join();
        self.sheet
    }

    /// Puts every athlete on the ladders of `--ladder`, as a row with only athlete, date and ladder before all rows of their
    /// earliest day would. The earliest and not the first, so that the order of rows makes no difference.
    fn join(&mut self) {
        if self.ladders.is_empty() {
            return;
        }
        let mut joins: HashMap<Name, (usize, NaiveDate, Vec<Record>)> = HashMap::new();
        for athlete in &self.athletes.seen {
            let (Some(first), Some(date)) = (athlete.first, athlete.earliest) else {
                continue;
            };
            let at = Written::day(date);
            let mut records = Vec::new();
            for ladder in &self.ladders {
                let fact = Fact::Placement {
                    ladder: ladder.clone(),
                    side: None,
                    rung: Placed::Joined,
                    why: None,
                };
                self.values.clear();
                self.values.set(Column::Athlete, &athlete.name);
                self.values.set(Column::Date, &at);
                self.values.add(&fact);
                let print = Fingerprint::of(&self.values, &mut self.buffer);
                let id = print.id(date, Kind::Placement, 0);
                if !self.equal.has(print) && !self.ids.contains_key(&id) {
                    let nth = u32::try_from(records.len()).unwrap_or(u32::MAX);
                    records.push(self.import.record(id, at.clone(), nth, fact));
                }
            }
            joins.insert(athlete.name.clone(), (first, date, records));
        }
        for row in &mut self.sheet.rows {
            if let Some((_, date, records)) = joins.get(&row.athlete) {
                let shift = u32::try_from(records.len()).unwrap_or(u32::MAX);
                for record in row.records.iter_mut().filter(|record| record.at.date() == *date) {
                    record.nth = record.nth.saturating_add(shift);
                }
            }
        }
        for (first, _, records) in joins.into_values() {
            if let Some(row) = self.sheet.rows.get_mut(first) {
                row.records.extend(records);
            }
        }
    }
}
