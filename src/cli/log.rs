//! `log`: one record, made from options and saved at once; or rows of a spreadsheet, each saved before the next is read.

use std::path::Path;

use crate::bests::{Formula, new_bests_by};
use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::clock;
use crate::logbook::exchange::{Column, OneRow, RowReader, Sheet};
use crate::logbook::record::Id;
use crate::logbook::writer::{LOCK_WAIT, refuse_for_writing};
use crate::logbook::{Fact, Log, Logbook, Machine, Name, Record, Settings, Trouble, Writer, Written};
use crate::problem::{quoted, visible};
use crate::report::totals::new_best;
use crate::units::Unit;

use super::args_record::{LogArgs, RecordArgs};
use super::output::tell;
use super::record_row::{Cells, line_of, unread, wrong};
use super::{Answer, Failed, log_rows, reading};

/// Runs `log`.
pub fn run(args: &LogArgs) -> Result<Answer, Failed> {
    match &args.rows {
        Some(_) if !args.said.is_empty() => Err(Failed::Usage(
            "--rows brings its own records; give it only --athlete and --logbook beside".to_owned(),
        )),
        Some(rows) => log_rows::run(args, rows),
        None => one(args),
    }
}

fn one(args: &LogArgs) -> Result<Answer, Failed> {
    let name = args.athlete.as_deref().ok_or_else(|| {
        let what = "say whose record it is with --athlete NAME";
        Failed::Usage(what.to_owned())
    })?;
    let name = reading::name(name)?;
    let new_name = new_name(&args.said)?;
    let machine = Machine::this()?;
    let device = reading::device(&machine)?;
    let root = reading::root(&machine, args.logbook.as_ref());
    refuse_for_writing(&machine, &root)?;
    let (catalogue, settings) = in_force(&machine, &root)?;
    let at = at(&args.said)?;
    let sheet = sheet(&args.said, &name, &at, &catalogue, &device)?;
    for note in &sheet.notes.listed {
        tell(&format!("rungwright: {}", line_of(note)));
    }
    if let Some(new_name) = &new_name {
        may_be_called(&machine, &root, &name, new_name)?;
    }
    let (mut writer, notes) =
        Writer::lock(&machine, &root, device.clone(), clock::now().to_utc(), LOCK_WAIT)?;
    reading::report(&notes);
    if writer.ensure_settings(sheet.unit())? {
        tell_new_logbook(&root);
    }
    let mut set = None;
    let added = writer.add(&name, &at, |log| {
        let records = records(sheet, new_name.as_ref(), &at, log, &device);
        let is_set = |record: &&Record| matches!(record.what, Fact::Set(_));
        set = records.iter().find(is_set).map(|record| record.id);
        records
    })?;
    if added.is_new {
        tell_new_athlete(&name);
    }
    if let Some(set) = set {
        tell_new_bests(&added.log, &settings, &catalogue, set);
    }
    let id = set.or(added.records.first().copied()).unwrap_or(added.name);
    Ok(Answer::plain(format!("saved {id}\n")))
}

/// Says which bests a set that was just saved is, or confirms.
fn tell_new_bests(log: &Log, settings: &Settings, catalogue: &Catalogue, set: Id) {
    let (counted, formula) = (Counted::of(settings), Formula::chosen(settings));
    for best in new_bests_by(log, catalogue, counted, formula, set) {
        let title = catalogue.movement_title(&best.movement);
        tell(&new_best(&best, &visible(title), settings.unit));
    }
}

/// Says that there was no logbook before.
pub fn tell_new_logbook(root: &Path) {
    tell(&format!(
        "rungwright: made a logbook in {}",
        visible(&root.to_string_lossy())
    ));
}

/// Says that there was no such athlete before.
pub fn tell_new_athlete(name: &Name) {
    tell(&format!("rungwright: {} is new here", quoted(name.as_str())));
}

/// The movements and ladders in force and the settings, nobody's journals read.
fn in_force(machine: &Machine, root: &Path) -> Result<(Catalogue, Settings), Failed> {
    match Logbook::open_without_athletes(machine, root) {
        Ok((book, problems)) => {
            let (catalogue, own) = book.catalogue();
            reading::report(&problems);
            reading::report(&own);
            Ok((catalogue, book.settings))
        }
        Err(Trouble::Missing { .. }) => Ok((Catalogue::shipped().clone(), Settings::fresh(Unit::Kg))),
        Err(trouble) => Err(trouble.into()),
    }
}

fn new_name(said: &RecordArgs) -> Result<Option<Name>, Failed> {
    let given = said.rename.as_deref().filter(|name| !name.trim().is_empty());
    given.map(reading::name).transpose()
}

/// Refuses to rename nobody, or to a name that somebody else has.
fn may_be_called(machine: &Machine, root: &Path, name: &Name, new: &Name) -> Result<(), Failed> {
    Logbook::open_athlete(machine, root, name)?;
    if new == name {
        return Ok(());
    }
    match Logbook::open_athlete(machine, root, new) {
        Err(Trouble::UnknownAthlete { .. }) => Ok(()),
        Err(trouble) => Err(trouble.into()),
        Ok(_) => Err(Failed::Problem(format!(
            "another athlete is called {}; nothing was saved",
            quoted(new.as_str())
        ))),
    }
}

/// When it happened: as typed, else now with the local offset.
fn at(said: &RecordArgs) -> Result<Written, Failed> {
    match said.at.as_deref().map(str::trim).filter(|text| !text.is_empty()) {
        Some(text) => Written::parse(text).map_err(|error| Failed::Usage(format!("--at: {error}"))),
        None => Ok(now()),
    }
}

/// Now as a record writes it. A clock beyond the years that a logbook knows gives the day on which all clocks begin.
pub fn now() -> Written {
    let text = clock::now().format("%Y-%m-%dT%H:%M:%S%:z").to_string();
    Written::parse(&text).unwrap_or_else(|_| Written::day(chrono::NaiveDate::default()))
}

/// What was said, as import reads it: one row, and one more for a placement beside a set.
fn sheet(
    said: &RecordArgs,
    name: &Name,
    at: &Written,
    catalogue: &Catalogue,
    device: &str,
) -> Result<Sheet, Failed> {
    let mut row = Cells::default();
    row.say(said)?;
    row.put(Column::Athlete, name.as_str());
    row.put(Column::Date, at.as_str());
    let mut rows = vec![row];
    if let (Some(place), Some(row)) = (&said.place, rows.first_mut()) {
        if row.has(Column::Movement) {
            let mut placed = Cells::default();
            placed.put(Column::Athlete, name.as_str());
            placed.put(Column::Date, at.as_str());
            placed.put(Column::Side, said.side.as_deref().unwrap_or_default());
            placed.place(place);
            rows.push(placed);
        } else {
            row.place(place);
        }
    }
    let rows: Vec<OneRow> = rows.into_iter().map(Cells::row).collect();
    let reader = RowReader { catalogue, device };
    let sheet = reader.sheet(&rows).map_err(|listing| unread(&listing))?;
    match sheet.problems.listed.first() {
        Some(problem) => Err(wrong(problem)),
        None => Ok(sheet),
    }
}

/// The records to save: fresh ids, and the place in the day after what `log` has.
fn records(
    sheet: Sheet,
    new_name: Option<&Name>,
    at: &Written,
    log: Option<&Log>,
    device: &str,
) -> Vec<Record> {
    let mut nth = log.map_or(0, |log| log.count_on(at.date()));
    let mut all = Vec::new();
    for row in sheet.rows {
        let count = u32::try_from(row.records.len()).unwrap_or(u32::MAX);
        all.extend(row.records.into_iter().map(|record| Record {
            id: clock::fresh_id(),
            nth,
            ..record
        }));
        nth = nth.saturating_add(count);
    }
    let Some(new_name) = new_name.map(|name| name.as_str().to_owned()) else {
        return all;
    };
    let profile = all.iter_mut().find_map(|record| match &mut record.what {
        Fact::Profile { name, .. } => Some(name),
        _ => None,
    });
    match profile {
        Some(name) => *name = Some(new_name),
        None => all.push(Record {
            id: clock::fresh_id(),
            rev: 0,
            dev: device.to_owned(),
            at: at.clone(),
            nth: all.first().map_or(nth, |first| first.nth),
            what: Fact::Profile {
                name: Some(new_name),
                born: None,
                sex: None,
                height_cm: None,
            },
        }),
    }
    all
}
