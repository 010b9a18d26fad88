//! A line of a pending batch: a record with the folder of its athlete, under one checksum.
//!
//! `(athlete: "ana", record: (id: …)) //1a2b3c4d`

use crate::problem::Severity;

use super::line::{self, Fault};
use super::names;

const OPEN: &str = "(athlete: \"";
const BETWEEN: &str = "\", record: ";
const CLOSE: &str = ")";

/// What to do about a pending line that can't be read.
const MEND: &str = "import the file again; what is there already is not doubled";

/// The pending line of the record whose text is `body`, for the athlete in `folder`.
pub fn write(folder: &str, body: &str) -> String {
    line::sealed(format!("{OPEN}{folder}{BETWEEN}{body}{CLOSE}"))
}

/// The athlete's folder and the record's text.
///
/// # Errors
/// When the checksum does not fit, the frame is another, or the folder could lead out of the logbook.
pub fn split(text: &str) -> Result<(String, &str), Fault> {
    let wrong = |what: &str| Fault::new(Severity::Error, 1, what, MEND);
    if !line::is_sealed(text) {
        return Err(wrong(
            "this line of an unfinished batch is damaged and is not read",
        ));
    }
    let (whole, _) = line::split_checksum(text);
    let framed = whole
        .strip_prefix(OPEN)
        .and_then(|rest| rest.strip_suffix(CLOSE))
        .and_then(|rest| rest.split_once(BETWEEN));
    let (folder, body) = framed.ok_or_else(|| wrong("this is no line of an unfinished batch"))?;
    if !names::is_safe_folder(folder) {
        return Err(wrong(
            "the athlete's folder on this line leads out of the logbook",
        ));
    }
    Ok((folder.to_owned(), body))
}
