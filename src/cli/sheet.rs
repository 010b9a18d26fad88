//! `sheet`: tonight's sheet, or a meet's, as a PDF.

use crate::logbook::{Logbook, Machine, Name, Trouble, hand_out_pdf};
use crate::paper::{class, meet as page_of_a_meet, pdf, sheet as page_an_athlete};
use crate::problem::{quoted, visible};
use crate::report::meet::meet;
use crate::report::numbers::counted;
use crate::report::sheet::sheet;

use super::args_paper::SheetArgs;
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Runs `sheet`.
pub fn run(args: &SheetArgs) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let names: Vec<Name> = args
        .athletes
        .iter()
        .map(|name| reading::name(name))
        .collect::<Result<_, _>>()?;
    let root = reading::root(&machine, args.logbook.as_ref());
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::open(&machine, &root, None)?;
    let mut folders: Vec<String> = Vec::with_capacity(names.len());
    for name in &names {
        let folder = folder(&book, name)?;
        // Named twice is there once: one body trains once tonight.
        if !folders.contains(&folder) {
            folders.push(folder);
        }
    }
    let on = reading::day(args.on);
    let plates = reading::on_hand(&book, None);
    let (athletes, document) = if args.meet {
        let sheet = meet(&book, &catalogue, &plates, on, &folders, &args.lifts);
        let sheet = sheet.map_err(Failed::Problem)?;
        (sheet.athletes.len(), page_of_a_meet::document(&sheet))
    } else {
        let sheet = sheet(&book, &catalogue, &plates, on, &folders);
        let document = if args.class {
            class::document(&sheet)
        } else {
            page_an_athlete::document(&sheet)
        };
        (sheet.athletes.len(), document)
    };
    let bytes = pdf(&document).map_err(|error| Failed::Problem(error.to_string()))?;
    hand_out_pdf(&machine, &args.output, &bytes)?;
    Ok(Answer {
        text: format!(
            "{}: {} on {}\n",
            visible(&args.output.to_string_lossy()),
            counted(athletes, "athlete"),
            counted(document.pages.len(), "page")
        ),
        with_problems,
    })
}

/// The folder of the athlete of this name.
pub(super) fn folder(book: &Logbook, name: &Name) -> Result<String, Failed> {
    let log = book.position(name).and_then(|at| book.logs.get(at));
    log.map(|log| log.folder.clone()).ok_or_else(|| {
        let trouble = Trouble::UnknownAthlete {
            name: quoted(name.as_str()),
            nearest: book.nearest(name),
        };
        trouble.into()
    })
}
