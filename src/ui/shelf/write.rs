//! Deeds as records: made under the lock, flushed, read back.

use crate::catalogue::Site;
use crate::clock;
use crate::logbook::record::{Load, Placed, Set};
use crate::logbook::{Fact, Log, Logbook, Name, Record, Settings, Trouble, Writer, Written};
use crate::problem::quoted;
use crate::ui::book::Deed;
use crate::ui::views::SetDraft;
use crate::units::{Bodyweight, Effort, Given, OutOfRange, Outcome, Reps, Seconds, Typed, Unit};

use super::desk::NotDone;
use super::opened::Opened;
use super::{Shelf, logged};

impl Shelf {
    /// When it happens: now, or at this time of the day that was asked for.
    pub(super) fn at(&self) -> Written {
        let now = clock::now();
        let text = format!(
            "{}{}",
            self.today().format("%Y-%m-%d"),
            now.format("T%H:%M:%S%:z")
        );
        Written::parse(&text).unwrap_or_else(|_| Written::day(self.today()))
    }

    /// Writes a deed of the open athlete.
    pub(super) fn record(&mut self, deed: Deed) -> Result<Option<String>, NotDone> {
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let facts = facts(opened, deed)?;
        let name = open_name(opened)?;
        self.add(&name, facts)?;
        Ok(self.news())
    }

    /// What the newest record of the day is, if it is a set: a best.
    fn news(&self) -> Option<String> {
        let opened = self.opened.as_ref()?;
        let log = opened.open_log()?;
        let newest = logged::newest(opened, log)?;
        matches!(newest.what, Fact::Set(_)).then(|| logged::news_of(opened, log, newest.id))?
    }

    /// Appends facts of an athlete as one moment, and reads the athlete back; makes the athlete if there is none.
    pub(super) fn add(&mut self, name: &Name, facts: Vec<Fact>) -> Result<(), NotDone> {
        self.add_then(name, facts, name)
    }

    /// The same for an athlete who is called `after` then.
    pub(super) fn add_then(&mut self, name: &Name, facts: Vec<Fact>, after: &Name) -> Result<(), NotDone> {
        let (at, device) = (self.at(), self.device.clone());
        self.change(after, |writer| {
            writer
                .add(name, &at, |log| records(facts, &at, log, &device))
                .map(|_| ())
        })
    }

    /// Saves what `make` says of these athletes, all or nothing, and reads them back.
    pub(super) fn commit(
        &mut self,
        names: &[Name],
        make: impl FnOnce(&Writer) -> Result<Vec<(Name, Vec<Record>)>, Trouble>,
    ) -> Result<(), NotDone> {
        let root = self.opened.as_ref().ok_or(NOTHING_OPEN)?.book.root.clone();
        let fresh = self.desk.write(&self.machine, &root, &self.device, |writer| {
            let batch = make(writer)?;
            writer.commit(batch)?;
            names
                .iter()
                .map(|name| writer.read_athlete(name))
                .collect::<Result<Vec<_>, _>>()
        })?;
        for (fresh, _) in fresh.into_iter().flatten() {
            self.take_back(fresh);
        }
        Ok(())
    }

    /// Replaces the gym's settings, and reads everything anew.
    pub(super) fn write_settings(&mut self, settings: &Settings) -> Result<(), NotDone> {
        let root = self.opened.as_ref().ok_or(NOTHING_OPEN)?.book.root.clone();
        self.desk.write(&self.machine, &root, &self.device, |writer| {
            writer.write_settings(settings)
        })?;
        if let Some(opened) = &mut self.opened {
            opened.book.settings = settings.clone();
            opened.reckon();
        }
        Ok(())
    }

    fn take_back(&mut self, fresh: Logbook) {
        let folders: Vec<String> = fresh.logs.iter().map(|log| log.folder.clone()).collect();
        if let Some(opened) = &mut self.opened {
            opened.take(fresh);
        }
        for folder in folders {
            self.keep_lengths(&folder);
        }
    }

    /// Writes under the lock, and reads the athlete back.
    pub(super) fn change(
        &mut self,
        name: &Name,
        write: impl FnOnce(&mut Writer) -> Result<(), Trouble>,
    ) -> Result<(), NotDone> {
        let opened = self.opened.as_ref().ok_or(NOTHING_OPEN)?;
        let root = opened.book.root.clone();
        let fresh = self.desk.write(&self.machine, &root, &self.device, |writer| {
            write(writer)?;
            match writer.read_athlete(name)? {
                // Nobody is called so any more: a rename was taken back.
                None => writer.read().map(Some),
                found => Ok(found),
            }
        })?;
        if let Some((fresh, _)) = fresh {
            self.take_back(fresh);
        }
        Ok(())
    }
}

pub(super) const NOTHING_OPEN: &str = "No logbook is open.";

pub(super) fn open_name(opened: &Opened) -> Result<Name, String> {
    let log = opened.open_log().ok_or("Choose an athlete first.")?;
    Name::parse(&log.name).map_err(|error| error.to_string())
}

/// Facts as records of one moment, each with its own place in the day.
pub(super) fn records(facts: Vec<Fact>, at: &Written, log: Option<&Log>, device: &str) -> Vec<Record> {
    let first = log.map_or(0, |log| log.count_on(at.date()));
    (first..)
        .zip(facts)
        .map(|(nth, what)| Record {
            id: clock::fresh_id(),
            rev: 0,
            dev: device.to_owned(),
            at: at.clone(),
            nth,
            what,
        })
        .collect()
}

fn facts(opened: &Opened, deed: Deed) -> Result<Vec<Fact>, String> {
    let fact = match deed {
        Deed::Log(draft) => Fact::Set(set(opened, opened.folder.as_deref().unwrap_or_default(), &draft)?),
        Deed::LogTry { movement, load, good } => Fact::Set(a_try(opened, &movement, load, good)?),
        Deed::WeighIn(value) => Fact::WeighIn {
            bodyweight: bodyweight(value, opened.book.unit())?,
            note: None,
        },
        Deed::Pain { site, rail, score } => Fact::Pain {
            site: Site::ALL
                .into_iter()
                .find(|known| known.word() == site)
                .ok_or("Say where it hurts.")?,
            side: rail.side(),
            score: score.min(10),
            note: None,
        },
        Deed::Note(text) => Fact::Note { text },
        Deed::Place { ladder, rail, rung } => Fact::Placement {
            ladder,
            side: rail.side(),
            rung: Placed::On(rung),
            why: None,
        },
        Deed::Join { ladder } => Fact::Placement {
            ladder,
            side: None,
            rung: Placed::Joined,
            why: None,
        },
        Deed::SetAside { ladder, rail } => Fact::Placement {
            ladder,
            side: rail.side(),
            rung: Placed::SetAside,
            why: None,
        },
        _ => return Ok(Vec::new()),
    };
    Ok(vec![fact])
}

/// A single of a meet: one repetition, or none where it was no lift.
fn a_try(opened: &Opened, movement: &str, load: f64, good: bool) -> Result<Set, String> {
    let known = opened.catalogue.movement(movement);
    let known = known.ok_or_else(|| format!("No movement is called {}.", quoted(movement)))?;
    let (reps, outcome) = if good {
        (1.0, Outcome::Done)
    } else {
        (0.0, Outcome::Missed)
    };
    Ok(Set {
        movement: known.id.as_str().into(),
        side: None,
        load: typed_load(load, opened.book.unit())?,
        effort: effort(reps, false)?,
        left: None,
        outcome,
        bodyweight: None,
        ladder: None,
        rung: None,
        note: None,
    })
}

/// A load as typed: nothing, on the belt, or below zero help.
pub(super) fn typed_load(value: f64, unit: Unit) -> Result<Option<Load>, String> {
    let mass = Typed::new(value.abs(), unit).map_err(said)?;
    Ok(match value {
        0.0 => None,
        help if help < 0.0 => Some(Load::Assistance(mass)),
        _ => Some(Load::Added(mass)),
    })
}

/// A bodyweight that a person can have.
pub(super) fn bodyweight(value: f64, unit: Unit) -> Result<Typed, String> {
    let typed = Typed::new(value, unit).map_err(said)?;
    if Bodyweight::BELIEVED_KG.contains(&typed.mass().kg()) {
        Ok(typed)
    } else {
        Err(format!(
            "{value} {} is no bodyweight; it lies between {} and {} kg.",
            unit.sign(),
            Bodyweight::BELIEVED_KG.start(),
            Bodyweight::BELIEVED_KG.end()
        ))
    }
}

fn said(error: OutOfRange) -> String {
    error.to_string()
}

/// Reps or seconds as typed.
pub(super) fn effort(amount: f64, is_hold: bool) -> Result<Effort, String> {
    if is_hold {
        return Seconds::try_from(amount).map(Effort::Hold).map_err(said);
    }
    (0..=1000u16)
        .find(|count| f64::from(*count) == amount)
        .and_then(|count| Reps::try_from(count).ok())
        .map(Effort::Reps)
        .ok_or_else(|| format!("{amount} is no number of reps; it is whole, up to 1000."))
}

/// A set of an athlete, with the load that the session asked of them.
pub(super) fn set(opened: &Opened, athlete: &str, draft: &SetDraft) -> Result<Set, String> {
    let ladder = opened
        .catalogue
        .ladder(&draft.ladder)
        .ok_or("That ladder is gone.")?;
    let rung = ladder.rung(&draft.rung).ok_or("That rung is gone.")?;
    let is_sided = opened
        .catalogue
        .movement(&rung.movement)
        .is_some_and(crate::catalogue::Movement::is_sided);
    let asked = opened.asked(athlete, &draft.ladder, draft.rail, &draft.rung);
    let load = asked
        .and_then(|work| work.load.as_ref())
        .filter(|load| !load.plates.is_empty())
        .and_then(|today| load(opened, today.added.kg(), &today.plates));
    let left = draft.reserve.map(Given::rir).transpose().map_err(said)?;
    Ok(Set {
        movement: rung.movement.as_str().into(),
        side: draft.rail.side().filter(|_| is_sided),
        load,
        effort: effort(draft.amount, draft.is_hold)?,
        left: left.filter(|_| draft.outcome != crate::units::Outcome::Missed),
        outcome: draft.outcome,
        bodyweight: None,
        ladder: Some(draft.ladder.as_str().into()),
        rung: Some(draft.rung.as_str().into()),
        note: draft.note.clone(),
    })
}

/// The belt's mass as its plates say it, where they and the gear are of one unit; else in kilograms.
fn load(opened: &Opened, added_kg: f64, plates: &[Typed]) -> Option<Load> {
    let gear = opened.book.settings.gear.filter(|gear| gear.value() > 0.0);
    let pieces: Vec<Typed> = plates.iter().copied().chain(gear).collect();
    let unit = pieces.first()?.unit();
    let typed = if pieces.iter().all(|piece| piece.unit() == unit) {
        Typed::new(pieces.iter().map(|piece| piece.value()).sum(), unit)
    } else {
        Typed::new(added_kg.abs(), Unit::Kg)
    }
    .ok()?;
    Some(if added_kg < 0.0 {
        Load::Assistance(typed)
    } else {
        Load::Added(typed)
    })
}
