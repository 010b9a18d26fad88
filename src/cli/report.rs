//! `report`: one athlete's progress over a period as a PDF.

use crate::logbook::{Machine, hand_out_pdf};
use crate::paper::{pdf, progress};
use crate::problem::visible;
use crate::report::numbers::counted;
use crate::report::progress::report;

use super::args_paper::ReportArgs;
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Runs `report`.
pub fn run(args: &ReportArgs) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let (reading, log) = reading::athlete(args.logbook.as_ref(), &args.athlete)?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading;
    let on = reading::day(args.on);
    if let Some(from) = args.from.filter(|from| *from > on) {
        return Err(Failed::Usage(format!(
            "--from {from} lies after {on}, the last day"
        )));
    }
    let plates = reading::on_hand(&book, None);
    let document = progress::document(&report(&book, &log, &catalogue, &plates, args.from, on));
    let bytes = pdf(&document).map_err(|error| Failed::Problem(error.to_string()))?;
    hand_out_pdf(&machine, &args.output, &bytes)?;
    Ok(Answer {
        text: format!(
            "{}: {}\n",
            visible(&args.output.to_string_lossy()),
            counted(document.pages.len(), "page")
        ),
        with_problems,
    })
}
