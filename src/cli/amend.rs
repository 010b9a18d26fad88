//! `amend`: a record says something else from now on; what it said first stays in its journal.

use crate::logbook::exchange::{Column, NotAmended, OneRow, RowReader, amend_of};
use crate::logbook::{Fact, Record};

use super::args_record::{AmendArgs, RecordArgs};
use super::mend::{self, Mending};
use super::output::tell;
use super::record_row::{Cells, wrong};
use super::{Answer, Failed, reading};

/// Runs `amend`.
pub fn run(args: &AmendArgs) -> Result<Answer, Failed> {
    let target = mend::id(&args.id)?;
    if args.said.is_empty() {
        let what = "say what is to change, like --reps 5; an empty value takes a field away";
        return Err(Failed::Usage(what.to_owned()));
    }
    let mending = Mending::open(args.logbook.as_ref(), target)?;
    let new = amended(&mending, &args.said)?;
    if mending.target.is_retracted {
        tell("rungwright: the record is retracted and counts only once it is restored");
    }
    let log = mending
        .book
        .logs
        .iter()
        .find(|log| log.folder == mending.target.folder);
    let amend = amend_of(&mending.target.record, new, log);
    mending.save(amend)
}

/// The record as it is to be.
fn amended(mending: &Mending, said: &RecordArgs) -> Result<Record, Failed> {
    let (old, athlete) = (&mending.target.record, mending.target.athlete.as_str());
    if let Fact::Amend { target, .. } | Fact::Retract { target, .. } | Fact::Restore { target } = old.what {
        return Err(Failed::Problem(format!(
            "this is a change of the record {target}; amend that one"
        )));
    }
    let renamed = match said.rename.as_deref() {
        None => None,
        Some(text) if text.trim().is_empty() => Some(None),
        Some(text) => Some(Some(reading::name(text)?)),
    };
    let reader = RowReader {
        catalogue: &mending.catalogue,
        device: mending.device(),
    };
    let mut after = OneRow::of(athlete, old);
    Cells::change(&mut after, |cells| {
        cells.say(said)?;
        let Some(place) = &said.place else { return Ok(()) };
        if cells.has(Column::Movement) {
            let what = "a set is put on a rung with --ladder and --rung, not with --place";
            return Err(Failed::Usage(what.to_owned()));
        }
        cells.place(place);
        Ok(())
    })?;
    reader
        .amended(athlete, old, |row| *row = after, renamed)
        .map_err(|why| refused(&why))
}

/// Why not, in the words of the command line.
fn refused(why: &NotAmended) -> Failed {
    let what = match why {
        NotAmended::Wrong(_, problem) => return wrong(problem),
        NotAmended::IsChange => "this is a change of another record; amend that one",
        NotAmended::NoDay => "a record needs its day; give --at one",
        NotAmended::NothingLeft => "nothing would be left of the record; retract it instead",
        NotAmended::TwoRecords => {
            "a record says one thing, and this would be two; log the other one by itself"
        }
        NotAmended::NoName => "only a profile has a name; rename an athlete with log --rename",
    };
    Failed::Usage(what.to_owned())
}
