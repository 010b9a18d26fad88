//! Reading row by row: what must be remembered from row to row, and what comes after the last.

use std::collections::HashMap;

use chrono::NaiveDate;

use crate::logbook::Written;
use crate::logbook::names::Name;
use crate::logbook::record::{Fact, Id, Record};
use crate::problem::{Place, Problem, quoted};

use super::athletes::Athletes;
use super::check::Check;
use super::column::Column;
use super::flaw::{Flaw, MOST_RECORDS};
use super::header::Header;
use super::ident::{Equal, Fingerprint, Kind, beside};
use super::listing::Listing;
use super::names::near_ladder;
use super::table::{Cell, Spot, Table};
use super::write::Cells;
use super::{Import, Row, Sheet};

/// A file under reading.
pub(super) struct Reading<'i> {
    pub(super) import: &'i Import<'i>,
    pub(super) header: Header,
    /// Ids of the ladders that every athlete joins.
    pub(super) ladders: Vec<String>,
    pub(super) athletes: Athletes,
    pub(super) equal: Equal,
    pub(super) places: HashMap<(usize, NaiveDate), u32>,
    pub(super) ids: HashMap<Id, (Fingerprint, usize)>,
    pub(super) sheet: Sheet,
    // Room that is used again for every row.
    pub(super) values: Cells,
    pub(super) buffer: Vec<u8>,
}

impl<'i> Reading<'i> {
    /// Reads the header; blank lines before it are skipped.
    pub(super) fn open(import: &'i Import<'i>, table: &mut Table<'_>) -> Result<Self, Listing> {
        let mut cells = Vec::new();
        loop {
            let start = table.spot();
            match table.next(&mut cells) {
                None => {
                    let mend = "put a line with the columns' names first, such as athlete,date,movement,added_kg,reps";
                    return Err(import.whole("the file has no header", mend).into());
                }
                Some(Err((flaw, spot))) => return Err(flawed(import, table, flaw, spot).into()),
                Some(Ok(())) if is_blank(&cells) => {}
                Some(Ok(())) => return Self::with_header(import, table, &cells, start.line),
            }
        }
    }

    /// Begins with `cells` as the header, which stands on `line`.
    pub(super) fn with_header(
        import: &'i Import<'i>,
        table: &Table<'_>,
        cells: &[Cell<'_>],
        line: usize,
    ) -> Result<Self, Listing> {
        let mut reading = Self {
            import,
            header: Header::read(import.file, table, cells, import.options)?,
            ladders: joined(import)?,
            athletes: Athletes::default(),
            equal: Equal::default(),
            places: HashMap::new(),
            ids: HashMap::new(),
            sheet: Sheet::default(),
            values: Cells::default(),
            buffer: Vec::new(),
        };
        reading.whose(Place::new(import.file, line, 1))?;
        Ok(reading)
    }

    /// Looks at `--athlete`: a bad name is refused, one beside a column `athlete` is only noted.
    fn whose(&mut self, place: Place) -> Result<(), Listing> {
        let Some(given) = &self.import.options.athlete else {
            return Ok(());
        };
        if self.header.index(Column::Athlete).is_some() {
            let what = "the file has a column athlete, so --athlete is not used";
            let mend = "leave out --athlete, or drop the column with --map athlete=";
            self.sheet.notes.push(Problem::warning(place, what, mend));
        } else if let Err(bad) = Name::parse(given) {
            return Err(Problem::error(place, bad.to_string(), "give --athlete a name").into());
        }
        Ok(())
    }

    /// Reads the next row, with `cells` as room; false after the last.
    pub(super) fn row<'a>(
        &mut self,
        table: &mut Table<'a>,
        cells: &mut Vec<Cell<'a>>,
    ) -> Result<bool, Listing> {
        let start = table.spot();
        match table.next(cells) {
            None => return Ok(false),
            Some(Err((flaw @ (Flaw::LongCell | Flaw::ManyColumns), spot))) => {
                return Err(flawed(self.import, table, flaw, spot).into());
            }
            Some(Err((flaw, spot))) => self.refuse([flawed(self.import, table, flaw, spot)]),
            Some(Ok(())) if is_blank(cells) => {}
            Some(Ok(())) if cells.len() != self.header.width => {
                let place = Place::new(self.import.file, start.line, table.column(start));
                let what = format!("{} cells where the header has {}", cells.len(), self.header.width);
                let mend = "put cells with a comma, a quote or a line break in quotes, or name the file's --delimiter";
                self.refuse([Problem::error(place, what, mend)]);
            }
            Some(Ok(())) => self.good_cells(table, cells, start),
        }
        if self.ids.len() > MOST_RECORDS {
            let place = Place::new(self.import.file, start.line, 1);
            let what = format!("more than {MOST_RECORDS} records");
            return Err(Problem::error(place, what, "split the file by years").into());
        }
        Ok(true)
    }

    fn refuse(&mut self, problems: impl IntoIterator<Item = Problem>) {
        self.sheet.bad_rows += 1;
        self.sheet.problems.extend(problems);
    }

    fn good_cells(&mut self, table: &Table<'_>, cells: &[Cell<'_>], start: Spot) {
        let mut check = Check {
            import: self.import,
            header: &self.header,
            table,
            cells,
            start,
            ours: false,
            problems: Vec::new(),
            notes: Vec::new(),
        };
        let id = check.id();
        check.ours = id.is_some();
        let athlete = who(&mut check, &mut self.athletes);
        let at = check.date(Column::Date);
        if at.is_none() && check.text(Column::Date).is_none() {
            let mend = format!("write the day as {}", self.import.options.dates.example());
            check.bad(Column::Date, "date is empty", mend);
        }
        let sets = check.sets();
        let facts = check.facts();
        if let Some(at) = &at {
            check.born_by(at.date(), &facts);
        }
        let Check { problems, notes, .. } = check;
        let nth = athlete.zip(at.as_ref()).map(|(athlete, at)| {
            let place = self.places.entry((athlete, at.date())).or_default();
            let nth = *place;
            *place = place.saturating_add(sets);
            nth
        });
        match (athlete, at, nth) {
            (Some(athlete), Some(at), Some(nth)) if problems.is_empty() => {
                self.sheet.notes.extend(notes);
                self.keep(start.line, athlete, Came { id, at, nth, sets }, facts);
            }
            _ => self.refuse(problems),
        }
    }

    /// Turns a good row into records.
    fn keep(&mut self, line: usize, athlete: usize, came: Came, facts: Vec<Fact>) {
        let Some(known) = self.athletes.seen.get_mut(athlete) else {
            return;
        };
        let Came { id, at, nth, sets } = came;
        let date = at.date();
        let row = self.sheet.rows.len();
        known.first.get_or_insert(row);
        known.came.get_or_insert_with(|| (at.clone(), nth));
        known.earliest = Some(known.earliest.map_or(date, |earliest| earliest.min(date)));
        let bare = id.is_some() && facts.is_empty();
        let facts = if bare { vec![profile(&known.name)] } else { facts };

        self.values.clear();
        self.values.set(Column::Athlete, &known.name);
        self.values.set(Column::Date, &at);
        facts.iter().for_each(|fact| self.values.add(fact));
        let print = Fingerprint::of(&self.values, &mut self.buffer);
        let (rows, sets_before) = match id {
            Some(_) => (0, 0),
            None => self.equal.count(print, sets),
        };

        let mut records = Vec::with_capacity(facts.len());
        for (place, fact) in facts.into_iter().enumerate() {
            let kind = Kind::of(&fact);
            let copies = if kind == Kind::Set {
                usize::try_from(sets).unwrap_or(1)
            } else {
                1
            };
            for (copy, fact) in std::iter::repeat_n(fact, copies).enumerate() {
                let copy = u32::try_from(copy).unwrap_or(u32::MAX);
                let own = match (id, place, kind) {
                    (Some(id), 0, _) => id,
                    (Some(id), ..) => beside(id, date, kind),
                    (None, _, Kind::Set) => print.id(date, kind, sets_before.saturating_add(copy)),
                    (None, ..) => print.id(date, kind, rows),
                };
                if let Some((before, on)) = self.ids.get(&own) {
                    if id.is_some() && *before != print {
                        let place = Place::new(self.import.file, line, 1);
                        let what =
                            format!("id {own} came with other values on line {on}; this row adds nothing");
                        let mend = "give the row no id, or change the record with amend";
                        self.sheet.notes.push(Problem::damage(place, what, mend));
                    }
                    continue;
                }
                self.ids.insert(own, (print, line));
                if matches!(fact, Fact::Profile { .. }) && id.is_some() {
                    known.named |= bare;
                    known.profile.get_or_insert((row, records.len()));
                }
                records.push(
                    self.import
                        .record(own, at.clone(), nth.saturating_add(copy), fact),
                );
            }
        }
        self.sheet.rows.push(Row {
            line,
            athlete: known.name.clone(),
            has_id: id.is_some(),
            records,
        });
    }
}

/// How a row came: its own id, its day, its place in the day, and how many sets it stands for.
struct Came {
    id: Option<Id>,
    at: Written,
    nth: u32,
    sets: u32,
}

impl Import<'_> {
    pub(super) fn record(&self, id: Id, at: Written, nth: u32, what: Fact) -> Record {
        Record {
            id,
            rev: 0,
            dev: self.device.to_owned(),
            at,
            nth,
            what,
        }
    }
}

fn who(check: &mut Check<'_, '_>, athletes: &mut Athletes) -> Option<usize> {
    let given = check.import.options.athlete.as_deref();
    let text = match check.header.index(Column::Athlete) {
        Some(_) => check.text(Column::Athlete),
        None => given,
    };
    let Some(text) = text else {
        check.bad(Column::Athlete, "athlete is empty", "write the athlete's name");
        return None;
    };
    let index = athletes.index(text);
    if let Err(bad) = &index {
        check.bad(
            Column::Athlete,
            bad.to_string(),
            "write a name of 1 to 200 visible characters",
        );
    }
    index.ok()
}

fn profile(name: &Name) -> Fact {
    Fact::Profile {
        name: Some(name.as_str().to_owned()),
        born: None,
        sex: None,
        height_cm: None,
    }
}

pub(super) fn is_blank(cells: &[Cell<'_>]) -> bool {
    cells.iter().all(|cell| cell.text.trim().is_empty())
}

pub(super) fn flawed(import: &Import<'_>, table: &Table<'_>, flaw: Flaw, spot: Spot) -> Problem {
    let (what, mend) = flaw.words();
    Problem::error(Place::new(import.file, spot.line, table.column(spot)), what, mend)
}

/// The ids of the ladders that the options name.
fn joined(import: &Import<'_>) -> Result<Vec<String>, Listing> {
    let mut ids: Vec<String> = Vec::new();
    let mut wrong = Listing::default();
    for text in &import.options.ladders {
        match import.catalogue.ladder_by_name(text) {
            Some(ladder) if ids.contains(&ladder.id) => {}
            Some(ladder) => ids.push(ladder.id.clone()),
            None => wrong.push(import.whole(
                &format!("unknown ladder {} of --ladder", quoted(text)),
                &near_ladder(import.catalogue, text),
            )),
        }
    }
    if wrong.is_empty() { Ok(ids) } else { Err(wrong) }
}
