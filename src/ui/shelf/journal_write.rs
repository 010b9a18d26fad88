//! Amending, retracting and restoring single records, and taking such a change back.

use crate::logbook::exchange::{Column, NotAmended, RowReader, amend_of};
use crate::logbook::{Fact, Id, Name, Record, Written};
use crate::ui::book::{Deed, Done};
use crate::ui::journal::JournalDeed;

use super::Shelf;
use super::desk::NotDone;
use super::journal::fields;
use super::write::{NOTHING_OPEN, open_name, records};

/// What takes a change of one record back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum TakeBack {
    /// Retract this record or amend.
    Retract(Id),
    /// Restore this record.
    Restore(Id),
}

/// What a record is refused for: beside a field, or about the whole.
type Refused = Vec<(Option<Column>, String)>;

impl Shelf {
    /// Looks at a record; writes nothing.
    pub(super) fn look(&mut self, deed: &JournalDeed) -> Done {
        let refused = match deed {
            JournalDeed::Try(id, typed) => self.amended(id, typed).err().unwrap_or_default(),
            _ => Vec::new(),
        };
        self.show(|opened| {
            opened.journal.refused = refused;
            if let JournalDeed::Show(id) = deed {
                opened.journal.open = id.as_deref().and_then(|id| Id::from_string(id).ok());
            }
        })
    }

    /// Writes a change of one record.
    pub(super) fn change_one(&mut self, deed: JournalDeed) -> Result<Option<String>, NotDone> {
        match deed {
            JournalDeed::Show(_) | JournalDeed::Try(..) => Ok(None),
            JournalDeed::Add(typed) => self.add_typed(&typed),
            JournalDeed::Amend(id, typed) => {
                let (id, amend) = match self.amended(&id, &typed) {
                    Ok(amended) => amended,
                    Err(refused) => {
                        let words = refused.first().map(|(_, words)| words.clone());
                        if let Some(opened) = &mut self.opened {
                            opened.journal.refused = refused;
                        }
                        return Err(NotDone::Because(words.unwrap_or_default()));
                    }
                };
                let change = self.change_record(id, amend)?.ok_or(GONE)?;
                self.take_backs.push(TakeBack::Retract(change));
                Ok(Some(
                    "Amended. What it said before stays on record; Ctrl+Z takes the change back.".to_owned(),
                ))
            }
            JournalDeed::Retract(id, why) => {
                let target = id_of(&id)?;
                let why = Some(why.trim().to_owned()).filter(|why| !why.is_empty());
                self.change_record(target, Fact::Retract { target, why })?
                    .ok_or(GONE)?;
                self.take_backs.push(TakeBack::Restore(target));
                Ok(Some(
                    "Retracted. It stays on record and counts nowhere; Ctrl+Z takes that back.".to_owned(),
                ))
            }
            JournalDeed::Restore(id) => {
                let target = id_of(&id)?;
                self.change_record(target, Fact::Restore { target })?
                    .ok_or("it counts already.")?;
                self.take_backs.push(TakeBack::Retract(target));
                Ok(Some(
                    "Restored: it counts again. Ctrl+Z takes that back.".to_owned(),
                ))
            }
        }
    }

    /// Writes a new record from what is typed.
    fn add_typed(&mut self, typed: &[(Column, String)]) -> Result<Option<String>, NotDone> {
        let (record, name) = match self.new_record(typed) {
            Ok(new) => new,
            Err(refused) => {
                let words = refused.first().map(|(_, words)| words.clone());
                if let Some(opened) = &mut self.opened {
                    opened.journal.refused = refused;
                }
                return Err(NotDone::Because(words.unwrap_or_default()));
            }
        };
        // A day without a time that is today is now.
        let at = if record.at == Written::day(self.today()) {
            self.at()
        } else {
            record.at
        };
        let (device, what) = (self.device.clone(), record.what);
        let mut added = Vec::new();
        self.change(&name, |writer| {
            added = writer
                .add(&name, &at, |log| records(vec![what], &at, log, &device))?
                .records;
            Ok(())
        })?;
        self.take_backs
            .extend(added.last().copied().map(TakeBack::Retract));
        if let Some(opened) = &mut self.opened {
            opened.journal.refused = Vec::new();
        }
        Ok(None)
    }

    fn new_record(&self, typed: &[(Column, String)]) -> Result<(Record, Name), Refused> {
        let whole = |words: &str| vec![(None, words.to_owned())];
        let opened = self.opened.as_ref().ok_or_else(|| whole(NOTHING_OPEN))?;
        let name = open_name(opened).map_err(|words| whole(&words))?;
        let reader = RowReader {
            catalogue: &opened.catalogue,
            device: &self.device,
        };
        let unit = opened.book.unit();
        let new = reader.single(name.as_str(), |row| fields::put(row, typed, unit));
        Ok((new.map_err(|why| vec![refused(why)])?, name))
    }

    /// Takes the latest change of a record back, if that was the latest thing written.
    pub(super) fn take_back_change(&mut self) -> Result<Option<String>, NotDone> {
        let Some(back) = self.take_backs.last().copied() else {
            return Ok(None);
        };
        match back {
            TakeBack::Retract(target) => self.change_record(target, Fact::Retract { target, why: None })?,
            TakeBack::Restore(target) => self.change_record(target, Fact::Restore { target })?,
        };
        self.take_backs.pop();
        Ok(Some("Taken back: the record is as it was.".to_owned()))
    }

    /// Whether undo means the changes of single records after this deed.
    pub(super) fn keeps_take_backs(deed: &Deed) -> bool {
        matches!(deed, Deed::Undo | Deed::Journal(_) | Deed::MendSet(_))
    }

    /// The amend that makes a record of the open athlete say what is typed.
    fn amended(&self, id: &str, typed: &[(Column, String)]) -> Result<(Id, Fact), Refused> {
        let whole = |words: &str| vec![(None, words.to_owned())];
        let opened = self.opened.as_ref().ok_or_else(|| whole(NOTHING_OPEN))?;
        let log = opened.open_log().ok_or_else(|| whole(GONE))?;
        let id = id_of(id).map_err(whole)?;
        let old = log
            .records
            .iter()
            .find(|record| record.id == id)
            .ok_or_else(|| whole(GONE))?;
        if typed.is_empty() {
            return Err(whole("Nothing is changed yet."));
        }
        let renamed = fields::renamed(typed).map_err(|words| vec![(Some(Column::Athlete), words)])?;
        let reader = RowReader {
            catalogue: &opened.catalogue,
            device: &self.device,
        };
        let unit = opened.book.unit();
        let new = reader.amended(&log.name, old, |row| fields::put(row, typed, unit), renamed);
        let new = new.map_err(|why| vec![refused(why)])?;
        Ok((id, amend_of(old, new, Some(log))))
    }
}

fn id_of(id: &str) -> Result<Id, &'static str> {
    Id::from_string(id).map_err(|_| GONE)
}

const GONE: &str = "that record is gone or retracted by now.";

/// Why not, in the window's words, and at which field.
fn refused(why: NotAmended) -> (Option<Column>, String) {
    match why {
        NotAmended::Wrong(column, problem) => {
            let mut words = problem.what.clone();
            if !problem.mend.is_empty() {
                words.push_str("; ");
                words.push_str(&problem.mend);
            }
            let column = column.map(|column| match column {
                Column::AddedLb => Column::AddedKg,
                Column::BodyweightLb => Column::BodyweightKg,
                other => other,
            });
            let words = super::say::capital(&plain(&words));
            (column, crate::problem::visible(&words))
        }
        NotAmended::IsChange => (None, "This changes another record; amend that one.".to_owned()),
        NotAmended::NoDay => (Some(Column::Date), "A record needs its day.".to_owned()),
        NotAmended::NothingLeft => (
            None,
            "Nothing would be left of the record; retract it instead.".to_owned(),
        ),
        NotAmended::TwoRecords => (
            None,
            "A record says one thing, and this would be two; log the other one by itself.".to_owned(),
        ),
        NotAmended::NoName => (Some(Column::Athlete), "Only a profile has a name.".to_owned()),
    }
}

/// A message of import without a spreadsheet's words. What a person typed stands in quotes and stays as it is.
fn plain(message: &str) -> String {
    let parts = message.split('"').enumerate().map(|(at, part)| match at % 2 {
        0 => WORDS
            .iter()
            .fold(part.to_owned(), |text, (theirs, ours)| text.replace(theirs, ours)),
        _ => part.to_owned(),
    });
    parts.collect::<Vec<_>>().join("\"")
}

/// A spreadsheet's words, and what stands for them in a form.
const WORDS: [(&str, &str); 16] = [
    ("bodyweight_kg", "bodyweight"),
    ("bodyweight_lb", "bodyweight"),
    ("added_kg", "load"),
    ("added_lb", "load"),
    ("hold_s", "seconds held"),
    ("pain_site", "where it hurts"),
    ("goal_by", "the day"),
    ("height_cm", "height"),
    ("leave the cell empty", "leave it empty"),
    ("a cell of more than", "a text of more than"),
    ("shorten the cell, or close the quote before it", "shorten it"),
    ("or an empty cell", "or nothing"),
    ("outcome fail", "Missed"),
    ("outcome form", "Standard not kept"),
    ("outcome success", "Done"),
    (", or read the file with --decimal ,", ""),
];
