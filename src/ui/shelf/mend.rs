//! One key for a set that looks like a typo: the same record, with the load and repetitions that would fit.

use crate::logbook::record::{Load, Set};
use crate::logbook::{Fact, Id};
use crate::strength::{Likely, beliefs_keeping};
use crate::units::{Added, KG_PER_LB, Typed, Unit};

use super::Shelf;
use super::desk::NotDone;

/// A candidate this near to the number as typed, read in the other unit, is that number in that unit; kg.
const SAME_KG: f64 = 1e-6;

impl Shelf {
    /// Amends the set with this id as the belief says that it would fit.
    pub(super) fn mend_set(&mut self, id: &str) -> Result<Option<String>, NotDone> {
        let (id, amend) = self.mended(id).ok_or("that set no longer looks like a typo.")?;
        if let Some(change) = self.change_record(id, amend)? {
            self.take_backs
                .push(super::journal_write::TakeBack::Retract(change));
        }
        Ok(None)
    }

    fn mended(&self, id: &str) -> Option<(Id, Fact)> {
        let id = Id::from_string(id).ok()?;
        let opened = self.opened.as_ref()?;
        let log = opened.open_log()?;
        let suspects = beliefs_keeping(&opened.timeline(log), &opened.kept())
            .into_iter()
            .flat_map(|known| known.suspects);
        let likely = suspects.into_iter().find(|suspect| suspect.id == id)?.likely?;
        let record = log.records.iter().find(|record| record.id == id)?;
        let Fact::Set(set) = &record.what else { return None };
        let amend = Fact::Amend {
            target: id,
            at: record.at.clone(),
            nth: record.nth,
            what: Box::new(Fact::Set(fitted(set, &likely)?)),
        };
        Some((id, amend))
    }
}

fn fitted(set: &Set, likely: &Likely) -> Option<Set> {
    let load = match set.load {
        Some(load) if load.signed() == likely.added.mass() => Some(load),
        load => as_load(load, likely.added)?,
    };
    Some(Set {
        load,
        effort: likely.effort,
        ..set.clone()
    })
}

/// A load in the unit in which it was most likely meant.
fn as_load(typed: Option<Load>, added: Added) -> Option<Option<Load>> {
    let kg = added.kg().abs();
    let old = typed.map(|(Load::Added(typed) | Load::Assistance(typed))| typed);
    let mass = match old {
        Some(old) if (old.value() * KG_PER_LB - kg).abs() < SAME_KG => Typed::new(old.value(), Unit::Lb),
        Some(old) if (old.value() - kg).abs() < SAME_KG => Typed::new(old.value(), Unit::Kg),
        _ => Typed::new((kg * 100.0).round() / 100.0, Unit::Kg),
    }
    .ok()?;
    Some(match added.kg() {
        0.0 => None,
        kg if kg < 0.0 => Some(Load::Assistance(mass)),
        _ => Some(Load::Added(mass)),
    })
}
