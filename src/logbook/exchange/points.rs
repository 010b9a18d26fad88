//! A file of points: for each row whose strength, of which movement and side, as of which day and for which day is asked.

use chrono::NaiveDate;

use crate::catalogue::{Catalogue, fold};
use crate::logbook::names::Name;
use crate::logbook::written::date_of;
use crate::problem::{Place, Problem, quoted};
use crate::units::{Mass, Side, SystemLoad};

use super::cell::{Decimal, number};
use super::flaw::{Flaw, LARGEST_FILE};
use super::listing::Listing;
use super::names::near_movement;
use super::table::{Cell, Table};

/// The columns that must be there, and the one that may.
const COLUMNS: [&str; 6] = ["athlete", "movement", "side", "as_of", "on", "system_kg"];
// Their places in [`COLUMNS`].
const ATHLETE: usize = 0;
const MOVEMENT: usize = 1;
const SIDE: usize = 2;
const AS_OF: usize = 3;
const ON: usize = 4;
const SYSTEM_KG: usize = 5;

/// All points of a file, each row's bytes kept for the answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Points<'b> {
    /// The header's bytes, without its line end.
    pub header: &'b [u8],
    /// The rows in the file's order; blank ones left out.
    pub rows: Vec<PointRow<'b>>,
    /// What is wrong with the bad ones.
    pub problems: Listing,
}

/// One row.
#[derive(Debug, Clone, PartialEq)]
pub struct PointRow<'b> {
    /// Its bytes, without its line end.
    pub raw: &'b [u8],
    /// What it asks; none for a bad row.
    pub asked: Option<Asked>,
}

/// What a row asks.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    /// Whose strength.
    pub athlete: Name,
    /// The movement's id.
    pub movement: String,
    /// The side.
    pub side: Option<Side>,
    /// Only records of earlier days may be used.
    pub as_of: NaiveDate,
    /// The day that the answer is for.
    pub on: NaiveDate,
    /// The load whose chance is asked.
    pub system: Option<SystemLoad>,
}

/// Reads a file of points: header names fold as everywhere, further columns are only echoed. `answers` are the columns that the
/// answer adds.
///
/// # Errors
/// When the file as a whole can't be read: too large, no header, a missing or double column, a column that the answer adds.
pub fn points<'b>(
    file: &str,
    bytes: &'b [u8],
    catalogue: &Catalogue,
    answers: &[&str],
) -> Result<Points<'b>, Listing> {
    let whole = |what: &str, mend: &str| Listing::from(Problem::error(Place::whole(file), what, mend));
    if bytes.len() > LARGEST_FILE {
        return Err(whole("the file has more than 200 MiB", "split it"));
    }
    let mut table = Table::new(bytes, b',', 1);
    let mut cells = Vec::new();
    let mut at: Option<([Option<usize>; COLUMNS.len()], usize)> = None;
    let mut found = Points {
        header: &[],
        rows: Vec::new(),
        problems: Listing::default(),
    };
    loop {
        let start = table.spot();
        let Some(read) = table.next(&mut cells) else { break };
        let raw = table.between(start, table.spot());
        let place = Place::new(file, start.line, 1);
        match (read, at) {
            (Ok(()), _) if cells.iter().all(|cell| cell.text.trim().is_empty()) => {}
            (Err((flaw, spot)), Some(_)) if flaw != Flaw::ManyColumns => {
                let place = Place::new(file, spot.line, table.column(spot));
                found.problems.push(flawed(place, flaw));
                found.rows.push(PointRow { raw, asked: None });
            }
            (Err((flaw, spot)), _) => {
                let place = Place::new(file, spot.line, table.column(spot));
                return Err(flawed(place, flaw).into());
            }
            (Ok(()), None) => {
                at = Some((header(&place, &cells, answers)?, cells.len()));
                found.header = raw;
            }
            (Ok(()), Some((columns, width))) => {
                let asked = if cells.len() == width {
                    let cell = |column: usize| {
                        columns
                            .get(column)
                            .copied()
                            .flatten()
                            .and_then(|at| cells.get(at))
                    };
                    row(cell, catalogue).map_err(|(cell, what, mend)| {
                        let place = cell.map_or(place, |cell| {
                            Place::new(file, cell.spot.line, table.column(cell.spot))
                        });
                        Problem::error(place, what, mend)
                    })
                } else {
                    let what = format!("{} cells where the header has {width}", cells.len());
                    Err(Problem::error(
                        place,
                        what,
                        "put cells with a comma or a quote in quotes",
                    ))
                };
                let asked = asked.map_err(|problem| found.problems.push(problem)).ok();
                found.rows.push(PointRow { raw, asked });
            }
        }
    }
    match at {
        Some(_) => Ok(found),
        None => Err(whole("the file has no header", MEND_HEADER)),
    }
}

const MEND_HEADER: &str =
    "put a line with the columns' names first: athlete,movement,side,as_of,on,system_kg";

fn flawed(place: Place, flaw: Flaw) -> Problem {
    let (what, mend) = flaw.words();
    Problem::error(place, what, mend)
}

/// Where each column stands.
fn header(
    place: &Place,
    cells: &[Cell<'_>],
    answers: &[&str],
) -> Result<[Option<usize>; COLUMNS.len()], Listing> {
    let mut wrong = Listing::default();
    let mut at = [None; COLUMNS.len()];
    for (nth, cell) in cells.iter().enumerate() {
        let name = fold(&cell.text);
        let is = |column: &str| fold(column) == name;
        if answers.iter().any(|column| is(column)) {
            let what = format!("the answer adds the column {}", quoted(cell.text.trim()));
            wrong.push(Problem::error(place.clone(), what, "leave it out of the points"));
        }
        if let Some(column) = COLUMNS.iter().position(|column| is(column))
            && let Some(slot) = at.get_mut(column)
            && slot.replace(nth).is_some()
        {
            let what = format!("a second column {}", quoted(cell.text.trim()));
            wrong.push(Problem::error(place.clone(), what, "drop one of the two"));
        }
    }
    for (column, slot) in COLUMNS.iter().zip(at) {
        if slot.is_none() && *column != COLUMNS[SYSTEM_KG] {
            wrong.push(Problem::error(
                place.clone(),
                format!("no column {column}"),
                MEND_HEADER,
            ));
        }
    }
    if wrong.is_empty() { Ok(at) } else { Err(wrong) }
}

type Wrong<'c, 'b> = (Option<&'c Cell<'b>>, String, String);

fn row<'c, 'b: 'c>(
    cell: impl Fn(usize) -> Option<&'c Cell<'b>>,
    catalogue: &Catalogue,
) -> Result<Asked, Wrong<'c, 'b>> {
    let text = |column: usize| cell(column).map_or("", |cell| cell.text.trim());
    let wrong = |column: usize, what: String, mend: &str| (cell(column), what, mend.to_owned());
    let athlete = Name::parse(text(ATHLETE))
        .map_err(|bad| wrong(ATHLETE, bad.to_string(), "give the athlete's name"))?;
    let movement = catalogue.movement_by_name(text(MOVEMENT)).ok_or_else(|| {
        let what = format!("unknown movement {}", quoted(text(MOVEMENT)));
        wrong(MOVEMENT, what, &near_movement(catalogue, text(MOVEMENT)))
    })?;
    let side = match text(SIDE) {
        "" => None,
        "L" | "l" => Some(Side::Left),
        "R" | "r" => Some(Side::Right),
        other => {
            return Err(wrong(
                SIDE,
                format!("unknown side {}", quoted(other)),
                "write L, R or nothing",
            ));
        }
    };
    let date = |column: usize| {
        date_of(text(column)).ok_or_else(|| {
            let what = format!("{} is no date", quoted(text(column)));
            wrong(column, what, "write it as 2026-03-18")
        })
    };
    let (as_of, on) = (date(AS_OF)?, date(ON)?);
    if on < as_of {
        let what = format!("on {on} lies before as_of {as_of}");
        return Err(wrong(ON, what, "ask for a day from as_of on"));
    }
    let system = match text(SYSTEM_KG) {
        "" => None,
        load => match number(load, Decimal::Point).filter(|kg| *kg > 0.0 && *kg <= 10_000.0) {
            Some(kg) => Some(SystemLoad::new(Mass::from_kg(kg))),
            None => {
                let what = format!("{} is no load", quoted(load));
                return Err(wrong(
                    SYSTEM_KG,
                    what,
                    "write kilograms over 0, as 97.5, or leave the cell empty",
                ));
            }
        },
    };
    Ok(Asked {
        athlete,
        movement: movement.id.clone(),
        side,
        as_of,
        on,
        system,
    })
}
