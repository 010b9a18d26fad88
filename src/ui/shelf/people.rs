//! The gym's people and plates: who is new, renamed, off the roster; what lies on the rack; which machines wrote.

use std::path::PathBuf;

use crate::logbook::rack::{mass_of, plates_of};
use crate::logbook::record::Placed;
use crate::logbook::{Fact, Name};
use crate::report::numbers::counted;
use crate::ui::views::{GymView, MachineLine};
use crate::units::{Typed, Unit};

use super::Shelf;
use super::desk::NotDone;
use super::opened::Opened;
use super::write::bodyweight;

/// The gym around it.
pub(super) fn gym(opened: &Opened, device: &str) -> GymView {
    let settings = &opened.book.settings;
    let machine = |seen: crate::logbook::Seen| {
        let this = if seen.device == device {
            ", this machine"
        } else {
            ""
        };
        let records = counted(seen.records, "record");
        MachineLine {
            name: format!("{}{this}", seen.device),
            words: format!("{records}, the last of {}", seen.last.date().format("%-d %b %Y")),
        }
    };
    let archived = opened.book.logs.iter().filter(|log| log.is_archived(opened.on));
    let ladders = opened.catalogue.ladders();
    GymView {
        name: settings.name.clone().unwrap_or_default(),
        in_lb: settings.unit == Unit::Lb,
        plates: settings.plates_text(),
        gear: settings.gear_text(),
        machines: opened.book.devices().into_iter().map(machine).collect(),
        archived: archived
            .map(|log| (log.folder.clone(), log.name.clone()))
            .collect(),
        ladders: ladders
            .map(|ladder| (ladder.id.clone(), ladder.title.clone()))
            .collect(),
        out_folder: out_folder().to_string_lossy().into_owned(),
        today: opened.on.to_string(),
        typed: Vec::new(),
    }
}

/// The documents folder, else the home folder, else here.
pub(super) fn out_folder() -> PathBuf {
    let home = std::env::var_os("HOME").or_else(|| std::env::var_os("USERPROFILE"));
    let home = home.map(PathBuf::from).unwrap_or_default();
    let documents = home.join("Documents");
    if documents.is_dir() { documents } else { home }
}

impl Shelf {
    pub(super) fn new_athlete(
        &mut self,
        name: &str,
        ladder: Option<String>,
        weighs: Option<f64>,
    ) -> Result<Option<String>, NotDone> {
        let name = Name::parse(name).map_err(|error| error.to_string())?;
        let opened = self.opened()?;
        if opened.book.position(&name).is_some() {
            return Err(format!(
                "{} is in this logbook already; give the new one another name.",
                name.as_str()
            )
            .into());
        }
        let unit = opened.book.unit();
        let mut facts = vec![named(&name)];
        facts.extend(ladder.map(|ladder| Fact::Placement {
            ladder,
            side: None,
            rung: Placed::Joined,
            why: None,
        }));
        if let Some(value) = weighs {
            facts.push(Fact::WeighIn {
                bodyweight: bodyweight(value, unit)?,
                note: None,
            });
        }
        self.add(&name, facts)?;
        let folder = self.opened()?.book.position(&name);
        if let (Some(at), Some(opened)) = (folder, &mut self.opened)
            && let Some(folder) = opened.book.logs.get(at).map(|log| log.folder.clone())
        {
            opened.choose(&folder);
        }
        Ok(Some(format!("{} is on the roster.", name.as_str())))
    }

    pub(super) fn rename(&mut self, athlete: &str, name: &str) -> Result<Option<String>, NotDone> {
        let name = Name::parse(name).map_err(|error| error.to_string())?;
        let opened = self.opened()?;
        if opened.book.position(&name).is_some() {
            return Err(format!("{} is in this logbook already.", name.as_str()).into());
        }
        let before = opened
            .log(athlete)
            .map(|log| log.name.clone())
            .unwrap_or_default();
        let old = Name::parse(&before).map_err(|error| error.to_string())?;
        if let Some(opened) = &mut self.opened {
            opened.choose(athlete);
        }
        self.add_then(&old, vec![named(&name)], &name)?;
        Ok(Some(format!(
            "{before} is {} from here on. Ctrl+Z takes it back.",
            name.as_str()
        )))
    }

    pub(super) fn archive(&mut self, athlete: &str, archived: bool) -> Result<Option<String>, NotDone> {
        let name = self.add_to(athlete, vec![Fact::Archive { archived, note: None }])?;
        Ok(Some(if archived {
            format!("{name} is off the roster; every record stays. E brings them back.")
        } else {
            format!("{name} is on the roster again.")
        }))
    }

    /// Writes facts of the athlete with this key. Returns the name under which they were written.
    pub(super) fn add_to(&mut self, athlete: &str, facts: Vec<Fact>) -> Result<String, NotDone> {
        let log = self
            .opened()?
            .log(athlete)
            .ok_or_else(|| NotDone::from("That athlete is gone."))?;
        let (name, said) = (
            Name::parse(&log.name).map_err(|error| error.to_string())?,
            log.name.clone(),
        );
        if let Some(opened) = &mut self.opened {
            opened.choose(athlete);
        }
        self.add(&name, facts)?;
        Ok(said)
    }

    pub(super) fn set_rack(
        &mut self,
        name: &str,
        in_lb: bool,
        plates: &str,
        gear: &str,
    ) -> Result<Option<String>, NotDone> {
        let unit = if in_lb { Unit::Lb } else { Unit::Kg };
        let mut settings = self.opened()?.book.settings.clone();
        settings.name = Some(name.trim().to_owned()).filter(|name| !name.is_empty());
        settings.unit = unit;
        settings.plates = plates_of(plates, unit)?;
        let gear = gear.trim();
        settings.gear = if gear.is_empty() {
            None
        } else {
            Some(mass_of(gear, unit)?).filter(|gear: &Typed| gear.value() > 0.0)
        };
        self.write_settings(&settings)?;
        Ok(Some(
            "Plates and settings of this gym are saved; loads follow.".to_owned(),
        ))
    }
}

fn named(name: &Name) -> Fact {
    Fact::Profile {
        name: Some(name.as_str().to_owned()),
        born: None,
        sex: None,
        height_cm: None,
    }
}
