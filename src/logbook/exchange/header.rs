//! The first line of a file: which column stands where.

use crate::catalogue::fold;
use crate::problem::{Place, Problem, quoted};

use super::column::{Column, Meaning, meanings};
use super::listing::Listing;
use super::options::Options;
use super::table::{Cell, Table};

/// Where each column stands.
#[derive(Debug, Clone)]
pub(super) struct Header {
    at: [Option<usize>; Column::ALL.len()],
    /// Cells in every row.
    pub width: usize,
}

impl Header {
    /// The header in `cells`, or everything that is wrong with it.
    pub(super) fn read(
        file: &str,
        table: &Table<'_>,
        cells: &[Cell<'_>],
        options: &Options,
    ) -> Result<Self, Listing> {
        let mut wrong = Listing::default();
        let start = cells
            .first()
            .map_or(Place::whole(file), |cell| place(file, table, cell));
        let found = meanings(cells.iter().map(|cell| cell.text.as_ref()), &options.map);
        let mut header = Self {
            at: [None; Column::ALL.len()],
            width: cells.len(),
        };
        if !found.iter().any(|meaning| matches!(meaning, Meaning::Column(_))) {
            return Err(Problem::error(
                start,
                "no header: no cell of the first line is the name of a column",
                no_header_mend(cells),
            )
            .into());
        }
        for (index, (cell, meaning)) in cells.iter().zip(found).enumerate() {
            let theirs = cell.text.trim();
            match meaning {
                Meaning::Dropped => {}
                Meaning::Column(column) => {
                    if let Some(at) = header.at.get_mut(column as usize) {
                        *at = Some(index);
                    }
                }
                Meaning::Twice(column) => wrong.push(twice(place(file, table, cell), theirs, column)),
                Meaning::Unknown(guess) => wrong.push(unknown(place(file, table, cell), theirs, guess)),
            }
        }
        for renaming in &options.map {
            let theirs = fold(&renaming.theirs);
            if !cells.iter().any(|cell| fold(&cell.text) == theirs) {
                wrong.push(Problem::error(
                    start.clone(),
                    format!("no column {}, which --map names", quoted(&renaming.theirs)),
                    "give --map the name as the file's first line has it",
                ));
            }
        }
        let missing = |column: Column, mend: &str| {
            Problem::error(start.clone(), format!("no column {}", column.name()), mend)
        };
        if header.index(Column::Date).is_none() {
            let mend = "name the column that holds the day with --map THEIRS=date";
            wrong.push(missing(Column::Date, mend));
        }
        if header.index(Column::Athlete).is_none() && options.athlete.is_none() {
            let mend =
                "say whose rows these are with --athlete NAME, or name the column with --map THEIRS=athlete";
            wrong.push(missing(Column::Athlete, mend));
        }
        if wrong.is_empty() { Ok(header) } else { Err(wrong) }
    }

    /// Where `column` stands, from 0.
    pub(super) fn index(&self, column: Column) -> Option<usize> {
        self.at.get(column as usize).copied().flatten()
    }
}

fn twice(place: Place, theirs: &str, column: Column) -> Problem {
    Problem::error(
        place,
        format!("{} is a second column {}", quoted(theirs), column.name()),
        format!("drop one of the two with --map {}", quoted(&format!("{theirs}="))),
    )
}

fn unknown(place: Place, theirs: &str, guess: Option<Column>) -> Problem {
    let what = match theirs {
        "" => "a column without a name".to_owned(),
        _ => format!("unknown column {}", quoted(theirs)),
    };
    let guess = guess.map_or(String::new(), |column| {
        format!("did you mean {}? ", column.name())
    });
    let mend = format!(
        "{guess}say what it is with --map {}, or drop it with --map {}",
        quoted(&format!("{theirs}=OURS")),
        quoted(&format!("{theirs}="))
    );
    Problem::error(place, what, mend)
}

/// How to mend a first line without a column's name: read it by the mark that parts it, or write one.
fn no_header_mend(cells: &[Cell<'_>]) -> String {
    let parts_columns = |mark: &&(char, &str)| {
        let parted = cells.iter().filter(|cell| cell.text.contains(mark.0));
        let mut names = parted.flat_map(|cell| cell.text.split(mark.0));
        names.any(|name| Column::named(name).is_some())
    };
    let marks = [(',', ","), (';', ";"), ('|', "|"), ('\t', "tab")];
    match marks.iter().find(parts_columns) {
        Some((_, mark)) => format!(
            "its cells are parted otherwise: read the file with --delimiter {}",
            quoted(mark)
        ),
        None => {
            "put a line with the columns' names first, such as athlete,date,movement,added_kg,reps".to_owned()
        }
    }
}

/// The place of a cell.
pub(super) fn place(file: &str, table: &Table<'_>, cell: &Cell<'_>) -> Place {
    Place::new(file, cell.spot.line, table.column(cell.spot))
}
