//! The class: what it was asked, its results to the journals, pages to files.

use std::collections::BTreeMap;
use std::path::Path;

use crate::coaching::typed;
use crate::logbook::{Fact, Id, Log, Name, Record, hand_out_pdf, hand_out_png};
use crate::paper::{class, meet as page_of_a_meet, pdf, progress, sheet as pages};
use crate::report::meet::meet;
use crate::report::numbers::{counted, number};
use crate::report::progress::report;
use crate::report::sheet::{Card, Sheet, sheet};
use crate::ui::gym::GymDeed;
use crate::ui::views::{
    ClassAthlete, ClassResult, ClassRow, ClassSet, ClassView, Paper, SetDraft, TypedClass,
};

use super::Shelf;
use super::desk::NotDone;
use super::opened::Opened;
use super::undo::SavedClass;
use super::write::{self, bodyweight, records};

/// What each athlete has to type.
pub(super) fn view(opened: &Opened, athletes: &[String], typed: TypedClass) -> ClassView {
    let sheet = of(opened, athletes);
    ClassView {
        typed,
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
            // These write nothing into the logbook; the shelf did them before it came here.
            GymDeed::Print { .. }
            | GymDeed::Picture { .. }
            | GymDeed::ShowClass(_)
            | GymDeed::KeepTyped { .. } => Ok(None),
            GymDeed::LogClass(results) => self.log_class(&results),
            GymDeed::SetRack {
                name,
                in_lb,
                plates,
                gear,
            } => self.set_rack(&name, in_lb, &plates, &gear),
        }
    }

    pub(super) fn opened(&self) -> Result<&Opened, NotDone> {
        self.opened
            .as_ref()
            .ok_or_else(|| NotDone::from(write::NOTHING_OPEN))
    }

    /// Writes a page to print. Nothing of the logbook is touched.
    pub(super) fn print(
        &self,
        paper: Paper,
        athletes: &[String],
        to: &Path,
    ) -> Result<Option<String>, String> {
        let opened = self.opened.as_ref().ok_or(write::NOTHING_OPEN)?;
        if to.as_os_str().is_empty() {
            return Err("Say where the file goes.".to_owned());
        }
        let document = match paper {
            Paper::Meet => {
                let (book, chosen) = (&opened.book, &opened.meet);
                let sheet = meet(
                    book,
                    &opened.catalogue,
                    &opened.plates,
                    opened.on,
                    athletes,
                    chosen,
                )?;
                page_of_a_meet::document(&sheet)
            }
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
        let place = crate::problem::visible(&to.to_string_lossy());
        Ok(Some(format!(
            "Written: {place}, {}.",
            counted(document.pages.len(), "page")
        )))
    }

    /// Writes a picture. Nothing of the logbook is touched.
    pub(super) fn picture(&self, png: &[u8], to: &Path) -> Result<Option<String>, String> {
        if to.as_os_str().is_empty() {
            return Err("Say where the file goes.".to_owned());
        }
        hand_out_png(&self.machine, to, png).map_err(|trouble| trouble.to_string())?;
        let place = crate::problem::visible(&to.to_string_lossy());
        Ok(Some(format!("Picture saved: {place}.")))
    }

    /// A class's results as one batch: all of them are there, or none.
    fn log_class(&mut self, results: &[ClassResult]) -> Result<Option<String>, NotDone> {
        let (at, device) = (self.at(), self.device.clone());
        let opened = self.opened()?;
        let mut batch: Vec<(Name, Vec<Record>)> = Vec::new();
        let mut saved: BTreeMap<String, Vec<Id>> = BTreeMap::new();
        let mut sets = 0usize;
        for result in results {
            let log = opened
                .log(&result.athlete)
                .ok_or_else(|| NotDone::from("An athlete of the class is gone."))?;
            let facts = facts(opened, result).map_err(|why| format!("{}: {why}", log.name))?;
            sets += result.sets.len();
            if !facts.is_empty() {
                let name = Name::parse(&log.name).map_err(|error| error.to_string())?;
                let records = records(facts, &at, Some(log), &device);
                let ids = records.iter().map(|record| record.id);
                saved.entry(log.folder.clone()).or_default().extend(ids);
                batch.push((name, records));
            }
        }
        if batch.is_empty() {
            return Err("Nothing is typed yet.".into());
        }
        let words = format!(
            "Saved {} of {}. Ctrl+Z takes all of it back.",
            counted(sets, "set"),
            counted(batch.len(), "athlete")
        );
        let names: Vec<Name> = batch.iter().map(|(name, _)| name.clone()).collect();
        self.commit(&names, |_| Ok(batch))?;
        self.typed_is_saved();
        self.saved_class = Some(SavedClass {
            records: saved,
            is_newest: true,
        });
        Ok(Some(words))
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
        set.load = write::typed_load(value, opened.book.unit())?;
    }
    Ok(set)
}
