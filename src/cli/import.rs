//! `import`: a spreadsheet into the logbook, all of it or nothing.

use std::collections::BTreeSet;
use std::path::Path;

use crate::catalogue::Catalogue;
use crate::clock;
use crate::logbook::exchange::{Import, Listing, Options, Sheet};
use crate::logbook::writer::LOCK_WAIT;
use crate::logbook::{Committed, Logbook, Machine, Name, Record, Trouble, Writer};
use crate::problem::visible;
use crate::report::numbers::counted;

use super::args::ImportArgs;
use super::output::tell;
use super::{Answer, Failed, reading};

/// Runs `import`.
pub fn run(args: &ImportArgs) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let device = reading::device(&machine)?;
    let root = reading::root(&machine, args.logbook.as_ref());
    let file = args.file.to_string_lossy().into_owned();
    let bytes = std::fs::read(&args.file)
        .map_err(|error| Failed::Problem(format!("{}: cannot be read: {error}", visible(&file))))?;
    if !args.dry_run {
        crate::logbook::writer::refuse_for_writing(&machine, &root)?;
    }
    let (catalogue, names) = known(&machine, &root)?;
    let options = Options {
        athlete: args.athlete.clone(),
        ladders: args.ladders.clone(),
        dates: args.dates,
        delimiter: args.delimiter,
        decimal: args.decimal,
        map: args.map.clone(),
    };
    let import = Import {
        file: &file,
        options: &options,
        catalogue: &catalogue,
        device: &device,
        known: &|name: &Name| names.contains(name.as_str()),
    };
    let sheet = import
        .read(&bytes)
        .map_err(|listing: Listing| Failed::Problem(listing.to_string()))?;
    if !sheet.notes.is_empty() {
        tell(&sheet.notes.to_string());
    }
    let bad = sheet.bad_rows > 0;
    if bad {
        tell(&sheet.problems.to_string());
    }
    if bad && !args.keep_good {
        let rows = counted(sheet.bad_rows, "bad row");
        return Err(Failed::Problem(format!("{rows}; nothing was imported")));
    }
    if args.dry_run {
        let text = format!("{} would be read, nothing was written\n", summary(&sheet));
        return Ok(Answer {
            text,
            with_problems: bad,
        });
    }
    let committed = write(&machine, &root, device, &sheet)?;
    Ok(Answer {
        text: told(&sheet, &committed),
        with_problems: bad,
    })
}

/// The catalogue and the names that the logbook has already; those of a logbook that isn't there yet.
pub(super) fn known(machine: &Machine, root: &Path) -> Result<(Catalogue, BTreeSet<String>), Failed> {
    match Logbook::open(machine, root) {
        Ok((book, _told_by_readers)) => {
            let (catalogue, _) = book.catalogue();
            Ok((catalogue, book.names()))
        }
        Err(Trouble::Missing { .. }) => Ok((Catalogue::shipped().clone(), BTreeSet::new())),
        Err(trouble) => Err(trouble.into()),
    }
}

fn write(machine: &Machine, root: &Path, device: String, sheet: &Sheet) -> Result<Committed, Failed> {
    let now = clock::now().to_utc();
    let (mut writer, notes) = Writer::lock(machine, root, device, now, LOCK_WAIT)?;
    reading::report(&notes);
    writer.ensure_settings(sheet.unit())?;
    let batch: Vec<(Name, Vec<Record>)> = sheet
        .rows
        .iter()
        .map(|row| (row.athlete.clone(), row.records.clone()))
        .collect();
    let committed = writer.commit_given(batch)?;
    reading::report(&committed.notes);
    tell_conflicts(&committed);
    Ok(committed)
}

/// How many records with other values are listed.
const LISTED: usize = 100;

/// Says which records are there with other values.
pub(super) fn tell_conflicts(committed: &Committed) {
    for conflict in committed.conflicting.iter().take(LISTED) {
        let (athlete, id) = (visible(conflict.athlete.as_str()), conflict.record.id);
        tell(&match &conflict.whose {
            None => format!(
                "{athlete}: the record {id} is there with other values; nothing was changed, use amend"
            ),
            Some(folder) => format!(
                "{athlete}: the record {id} is there as another athlete's, in athletes/{folder}; nothing was changed"
            ),
        });
    }
    if let Some(more) = committed
        .conflicting
        .len()
        .checked_sub(LISTED)
        .filter(|more| *more > 0)
    {
        tell(&format!(
            "{} more like these",
            counted(i64::try_from(more).unwrap_or(i64::MAX), "record")
        ));
    }
}

fn summary(sheet: &Sheet) -> String {
    let athletes: BTreeSet<&Name> = sheet.rows.iter().map(|row| &row.athlete).collect();
    format!(
        "{} of {}",
        counted(sheet.records(), "record"),
        counted(athletes.len(), "athlete")
    )
}

fn told(sheet: &Sheet, committed: &Committed) -> String {
    let there = match committed.already_there.len() {
        0 => String::new(),
        1 => ", 1 was there already".to_owned(),
        there => format!(", {there} were there already"),
    };
    format!(
        "{} read: {} added{there}\n",
        summary(sheet),
        committed.added.len()
    )
}
