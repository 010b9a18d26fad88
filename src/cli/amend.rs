//! `amend`: a record says something else from now on; what it said first stays in its journal.

use crate::logbook::exchange::{Column, Row, Sheet};
use crate::logbook::{Fact, Record};
use crate::problem::Problem;

use super::args_record::{AmendArgs, RecordArgs};
use super::mend::{self, Mending};
use super::output::tell;
use super::record_row::{Cells, Reader, wrong};
use super::{Answer, Failed, reading};

/// Runs `amend`.
pub fn run(args: &AmendArgs) -> Result<Answer, Failed> {
    let target = mend::id(&args.id)?;
    if args.said.is_empty() {
        let what = "say what is to change, like --reps 5; an empty value takes a field away";
        return Err(Failed::Usage(what.to_owned()));
    }
    let mending = Mending::open(args.logbook.as_ref(), target)?;
    if let Fact::Amend { target, .. } | Fact::Retract { target, .. } | Fact::Restore { target } =
        mending.target.record.what
    {
        return Err(Failed::Problem(format!(
            "this is a change of the record {target}; amend that one"
        )));
    }
    let new = amended(&mending, &args.said)?;
    if mending.target.is_retracted {
        tell("rungwright: the record is retracted and counts only once it is restored");
    }
    let of_day = || {
        let log = mending
            .book
            .logs
            .iter()
            .find(|log| log.folder == mending.target.folder);
        log.map_or(0, |log| log.count_on(new.at.date()))
    };
    let old = &mending.target.record;
    let nth = if old.at.date() == new.at.date() {
        old.nth
    } else {
        of_day()
    };
    mending.save(Fact::Amend {
        target,
        at: new.at,
        nth,
        what: Box::new(new.what),
    })
}

/// The record as it is to be. What it said before is kept even where the catalogue no longer knows it; what is said now
/// must be sound.
fn amended(mending: &Mending, said: &RecordArgs) -> Result<Record, Failed> {
    let (old, athlete) = (&mending.target.record, mending.target.athlete.as_str());
    let before = Cells::of(athlete, old);
    let mut after = before.clone();
    after.say(said)?;
    if let Some(place) = &said.place {
        if after.has(Column::Movement) {
            let what = "a set is put on a rung with --ladder and --rung, not with --place";
            return Err(Failed::Usage(what.to_owned()));
        }
        after.place(place);
    }
    if !after.has(Column::Date) {
        return Err(Failed::Usage("a record needs its day; give --at one".to_owned()));
    }
    let reader = Reader {
        catalogue: &mending.catalogue,
        device: mending.device(),
    };
    let strictly = |cells: &Cells| -> Result<Vec<Problem>, Failed> {
        let sheet = reader.sheet(&[cells.clone().without(Column::Id)]);
        Ok(sheet?.problems.listed)
    };
    let known = strictly(&before)?;
    let is_new = |problem: &&Problem| known.iter().all(|other| other.what != problem.what);
    if let Some(problem) = strictly(&after)?.iter().find(is_new) {
        return Err(wrong(problem));
    }
    let sheet = reader.sheet(&[after])?;
    named(only_record(sheet)?, old, said)
}

/// The one record of a sheet.
fn only_record(sheet: Sheet) -> Result<Record, Failed> {
    if let Some(problem) = sheet.problems.listed.first() {
        return Err(wrong(problem));
    }
    let mut records = sheet.rows.into_iter().flat_map(|row: Row| row.records);
    match (records.next(), records.next()) {
        (Some(record), None) => Ok(record),
        (None, _) => Err(nothing_left()),
        (Some(_), Some(_)) => Err(Failed::Usage(
            "a record says one thing, and this would be two; log the other one by itself".to_owned(),
        )),
    }
}

/// The record with the name that a profile had or gets: a row has no cell for it.
fn named(mut new: Record, old: &Record, said: &RecordArgs) -> Result<Record, Failed> {
    let was = match &old.what {
        Fact::Profile { name, .. } => Some(name.clone()),
        _ => None,
    };
    let renamed = match said.rename.as_deref() {
        None => None,
        Some(text) if text.trim().is_empty() => Some(None),
        Some(text) => Some(Some(reading::name(text)?.as_str().to_owned())),
    };
    match &mut new.what {
        Fact::Profile { name, .. } if was.is_some() => *name = renamed.or(was).flatten(),
        // A row of athlete and date alone names the athlete; here it means that every field was taken away.
        Fact::Profile { name, .. } if renamed.is_none() => *name = None,
        _ if renamed.is_some() => {
            let what = "only a profile has a name; rename an athlete with log --rename";
            return Err(Failed::Usage(what.to_owned()));
        }
        _ => {}
    }
    match &new.what {
        Fact::Profile {
            name: None,
            born: None,
            sex: None,
            height_cm: None,
        } => Err(nothing_left()),
        _ => Ok(new),
    }
}

fn nothing_left() -> Failed {
    Failed::Usage("nothing would be left of the record; retract it instead".to_owned())
}
