//! What the commands that write a page to print may be asked. The doc comments are what `--help` prints.

use std::path::PathBuf;

use chrono::NaiveDate;
use clap::Args;

use crate::catalogue::fold;
use crate::coaching::meet::LIFTS;

use super::args::{date, folder};

/// Arguments of `sheet`.
#[derive(Debug, Args)]
pub struct SheetArgs {
    /// Only this athlete; may be given again, and the sheet keeps the order; everyone by default
    #[arg(long = "athlete", value_name = "NAME")]
    pub athletes: Vec<String>,
    /// A table by movement for a whole class, instead of a page an athlete
    #[arg(long)]
    pub class: bool,
    /// A page for a meet instead, of each athlete named: three attempts a lift with plates and chances, and room to write
    #[arg(long, conflicts_with = "class", requires = "athletes")]
    pub meet: bool,
    /// A lift of the meet: muscle-up, pull-up, chin-up, dip or back-squat; may be given again; those of the last year by default
    #[arg(long = "lift", value_name = "MOVEMENT", requires = "meet", value_parser = lift)]
    pub lifts: Vec<String>,
    /// The PDF to write; one that is there is replaced
    #[arg(long, value_name = "FILE", value_parser = file)]
    pub output: PathBuf,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The day of the class, YYYY-MM-DD; today by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub on: Option<NaiveDate>,
}

/// Arguments of `report`.
#[derive(Debug, Args)]
pub struct ReportArgs {
    /// Whose progress
    #[arg(long, value_name = "NAME")]
    pub athlete: String,
    /// The first day of the period, YYYY-MM-DD; twelve weeks before the last by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub from: Option<NaiveDate>,
    /// The PDF to write; one that is there is replaced
    #[arg(long, value_name = "FILE", value_parser = file)]
    pub output: PathBuf,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The last day of the period, YYYY-MM-DD; today by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub on: Option<NaiveDate>,
}

/// A lift of a meet, however its name is written.
fn lift(text: &str) -> Result<String, String> {
    let is_it = |id: &&&str| fold(id) == fold(text);
    let found = LIFTS.iter().find(is_it).map(|id| (*id).to_owned());
    found.ok_or_else(|| format!("a meet is made of {}", LIFTS.join(", ")))
}

/// A file's name that is not empty.
fn file(text: &str) -> Result<PathBuf, String> {
    if text.is_empty() {
        Err("name a file".to_owned())
    } else {
        Ok(PathBuf::from(text))
    }
}
