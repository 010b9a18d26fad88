//! The class and the gym: views from the core, people and results to the journals, pages to files.

use std::path::{Path, PathBuf};

use crate::coaching::typed;
use crate::logbook::rack::{mass_of, plates_of};
use crate::logbook::record::{Load, Placed};
use crate::logbook::{Fact, Log, Name, Record, hand_out_pdf};
use crate::paper::{class, pdf, progress, sheet as pages};
use crate::report::numbers::{counted, number};
use crate::report::progress::report;
use crate::report::sheet::{Card, Sheet, sheet};
use crate::ui::gym::GymDeed;
use crate::ui::views::{
    ClassAthlete, ClassResult, ClassRow, ClassSet, ClassView, GymView, MachineLine, Paper, SetDraft,
};
use crate::units::{Typed, Unit};

use super::Shelf;
use super::desk::NotDone;
use super::opened::Opened;
use super::write::{self, bodyweight, records};

/// What each athlete has to type.
pub(super) fn view(opened: &Opened, athletes: &[String]) -> ClassView {
    let sheet = of(opened, athletes);
    ClassView {
        day: crate::report::numbers::day(opened.on),
        unit: opened.book.unit().sign(),
        athletes: sheet
            .athletes
            .iter()
            .map(|athlete| {
                let weighed = opened
                    .athletes
                    .iter()
                    .find(|known| known.folder == athlete.folder)
                    .and_then(|known| known.line.weighed);
                let unit = opened.book.unit();
                ClassAthlete {
                    athlete: athlete.folder.clone(),
                    name: athlete.name.clone(),
                    weighs: weighed.map_or_else(String::new, |day| number(day.mean.mass().in_unit(unit), 1)),
                    weigh_in_first: athlete.weigh_in_first,
                    rows: athlete
                        .cards
                        .iter()
                        .filter_map(|card| row(opened, &athlete.folder, card))
                        .collect(),
                }
            })
            .collect(),
    }
}

fn of(opened: &Opened, athletes: &[String]) -> Sheet {
    sheet(
        &opened.book,
        &opened.catalogue,
        &opened.plates,
        opened.on,
        athletes,
    )
}

fn row(opened: &Opened, folder: &str, card: &Card) -> Option<ClassRow> {
    let work = card.work.as_ref()?;
    let step = opened.asked(folder, &card.ladder, card.rail, &work.rung);
    let added = step
        .and_then(|work| work.load.as_ref())
        .map(|load| load.added)
        .filter(|added| added.kg() != 0.0);
    let load = added.map_or_else(String::new, |added| {
        number(added.mass().in_unit(opened.book.unit()).abs(), 2)
    });
    let least = number(work.least, 1);
    Some(ClassRow {
        ladder: card.ladder.clone(),
        rung: work.rung.clone(),
        rail: card.rail,
        title: card.rung_title.clone(),
        asked: format!("{} × {}", work.sets, work.asked),
        load,
        is_help: added.is_some_and(|added| added.kg() < 0.0),
        sets: usize::from(work.sets),
        prefill: match &work.reserve {
            Some(reserve) if !work.is_hold => format!("{least} {reserve}"),
            _ => least,
        },
        is_hold: work.is_hold,
        logged: opened
            .log(folder)
            .map_or(0, |log| logged(opened, log, card, &work.rung)),
    })
}

/// Sets of today on this rung and rail.
fn logged(opened: &Opened, log: &Log, card: &Card, rung: &str) -> usize {
    let today = log
        .records
        .iter()
        .rev()
        .take_while(|record| record.at.date() >= opened.on);
    let is_it = |record: &&Record| match &record.what {
        Fact::Set(set) => {
            set.ladder.as_deref() == Some(card.ladder.as_str())
                && set.rung.as_deref() == Some(rung)
                && set.side == card.rail.side()
        }
        _ => false,
    };
    today
        .filter(|record| record.at.date() == opened.on)
        .filter(is_it)
        .count()
}

/// The gym around it.
pub(super) fn gym(opened: &Opened, device: &str) -> GymView {
    let settings = &opened.book.settings;
    let machine = |seen: crate::logbook::Seen| {
        let this = if seen.device == device {
            ", this machine"
        } else {
            ""
        };
        let records = counted(i64::try_from(seen.records).unwrap_or(i64::MAX), "record");
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
    }
}

/// The documents folder, else the home folder, else here.
fn out_folder() -> PathBuf {
    let home = std::env::var_os("HOME").or_else(|| std::env::var_os("USERPROFILE"));
    let home = home.map(PathBuf::from).unwrap_or_default();
    let documents = home.join("Documents");
    if documents.is_dir() { documents } else { home }
}

impl Shelf {
    /// Does a deed of the gym. Words to show come with it.
    pub(super) fn gym_deed(&mut self, deed: GymDeed) -> Result<Option<String>, NotDone> {
        match deed {
            GymDeed::NewAthlete {
                name,
                ladder,
                bodyweight,
            } => self.new_athlete(&name, ladder, bodyweight),
            GymDeed::Rename { athlete, name } => self.rename(&athlete, &name),
            GymDeed::Archive { athlete, archived } => self.archive(&athlete, archived),
            GymDeed::Note { athlete, text } => {
                self.add_to(&athlete, vec![Fact::Note { text }])?;
                Ok(Some("Noted.".to_owned()))
            }
            GymDeed::Print { paper, athletes, to } => Ok(self.print(paper, &athletes, &to)?),
            GymDeed::ShowClass(_) => Ok(None),
            GymDeed::LogClass(results) => self.log_class(&results),
            GymDeed::SetRack {
                name,
                in_lb,
                plates,
                gear,
            } => self.set_rack(&name, in_lb, &plates, &gear),
        }
    }

    fn opened(&self) -> Result<&Opened, NotDone> {
        self.opened
            .as_ref()
            .ok_or_else(|| NotDone::from("No logbook is open."))
    }

    fn new_athlete(
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

    fn rename(&mut self, athlete: &str, name: &str) -> Result<Option<String>, NotDone> {
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

    fn archive(&mut self, athlete: &str, archived: bool) -> Result<Option<String>, NotDone> {
        let name = self.add_to(athlete, vec![Fact::Archive { archived, note: None }])?;
        Ok(Some(if archived {
            format!("{name} is off the roster; every record stays. E brings them back.")
        } else {
            format!("{name} is on the roster again.")
        }))
    }

    /// Writes facts of the athlete with this key. Returns the name under which they were written.
    fn add_to(&mut self, athlete: &str, facts: Vec<Fact>) -> Result<String, NotDone> {
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

    /// Writes a page to print. Nothing of the logbook is touched.
    pub(super) fn print(
        &self,
        paper: Paper,
        athletes: &[String],
        to: &Path,
    ) -> Result<Option<String>, String> {
        let opened = self.opened.as_ref().ok_or("No logbook is open.")?;
        if to.as_os_str().is_empty() {
            return Err("Say where the file goes.".to_owned());
        }
        let document = match paper {
            Paper::Pages => pages::document(&of(opened, athletes)),
            Paper::Table => class::document(&of(opened, athletes)),
            Paper::Progress => {
                let log = athletes.first().and_then(|folder| opened.log(folder));
                let log = log.ok_or("Choose an athlete first.")?;
                progress::document(&report(
                    &opened.book,
                    log,
                    &opened.catalogue,
                    &opened.plates,
                    None,
                    opened.on,
                ))
            }
        };
        let bytes = pdf(&document).map_err(|error| error.to_string())?;
        hand_out_pdf(&self.machine, to, &bytes).map_err(|trouble| trouble.to_string())?;
        let count = i64::try_from(document.pages.len()).unwrap_or(i64::MAX);
        let place = crate::problem::visible(&to.to_string_lossy());
        Ok(Some(format!("Written: {place}, {}.", counted(count, "page"))))
    }

    /// A class's results as one batch: all of them are there, or none.
    fn log_class(&mut self, results: &[ClassResult]) -> Result<Option<String>, NotDone> {
        let (at, device) = (self.at(), self.device.clone());
        let opened = self.opened()?;
        let mut batch: Vec<(Name, Vec<Record>)> = Vec::new();
        let mut sets = 0usize;
        for result in results {
            let log = opened
                .log(&result.athlete)
                .ok_or_else(|| NotDone::from("An athlete of the class is gone."))?;
            let facts = facts(opened, result).map_err(|why| format!("{}: {why}", log.name))?;
            sets += result.sets.len();
            if !facts.is_empty() {
                let name = Name::parse(&log.name).map_err(|error| error.to_string())?;
                batch.push((name, records(facts, &at, Some(log), &device)));
            }
        }
        if batch.is_empty() {
            return Err("Nothing is typed yet.".into());
        }
        let count = |count: usize, noun| counted(i64::try_from(count).unwrap_or(i64::MAX), noun);
        let words = format!(
            "Saved {} of {}.",
            count(sets, "set"),
            count(batch.len(), "athlete")
        );
        self.commit(batch)?;
        Ok(Some(words))
    }

    fn set_rack(
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

fn facts(opened: &Opened, result: &ClassResult) -> Result<Vec<Fact>, String> {
    let unit = opened.book.unit();
    let mut facts = Vec::new();
    if let Some(value) = result.weighs {
        facts.push(Fact::WeighIn {
            bodyweight: bodyweight(value, unit)?,
            note: None,
        });
    }
    if let Some((site, side, score)) = typed::pain(&result.pain)? {
        facts.push(Fact::Pain {
            site,
            side,
            score,
            note: None,
        });
    }
    for set in &result.sets {
        facts.push(Fact::Set(self::set(opened, &result.athlete, set)?));
    }
    Ok(facts)
}

fn set(opened: &Opened, athlete: &str, typed: &ClassSet) -> Result<crate::logbook::record::Set, String> {
    let draft = SetDraft {
        ladder: typed.ladder.clone(),
        rung: typed.rung.clone(),
        rail: typed.rail,
        amount: typed.amount,
        is_hold: typed.is_hold,
        reserve: typed.reserve,
        outcome: typed.outcome,
        note: None,
    };
    let mut set = write::set(opened, athlete, &draft)?;
    if let Some(value) = typed.load {
        let mass = Typed::new(value.abs(), opened.book.unit()).map_err(|error| error.to_string())?;
        set.load = match value {
            0.0 => None,
            help if help < 0.0 => Some(Load::Assistance(mass)),
            _ => Some(Load::Added(mass)),
        };
    }
    Ok(set)
}
