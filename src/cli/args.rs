//! What may be asked. The doc comments are what `--help` prints.

use std::ops::RangeInclusive;
use std::path::PathBuf;

use chrono::NaiveDate;
use clap::{Args, Parser, Subcommand};

use crate::bests::Formula;
use crate::logbook::exchange::{Dates, Decimal, Delimiter, Renaming};
use crate::logbook::written::{NoDate, day_of};
use crate::problem::quoted;

use super::args_body::{DemandArgs, WhatIfArgs};
use super::args_paper::{ReportArgs, SheetArgs};
use super::args_record::{AmendArgs, ExportArgs, LogArgs, RestoreArgs, RetractArgs, RosterArgs};
use super::output::Format;

/// Keeps ladders of bodyweight strength and says the next step, and why.
///
/// Loads, rates and dates are estimates, not medical advice. Stop on sharp pain, and follow local rules and licensed
/// practitioners.
#[derive(Debug, Parser)]
#[command(name = "rungwright", version, args_conflicts_with_subcommands = true)]
pub struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub command: Option<Command>,
    /// How to start without a command.
    #[command(flatten)]
    pub start: Start,
}

/// How to start without a command.
#[derive(Debug, Args)]
pub struct Start {
    /// Opens a throw-away copy of the demo gym
    #[arg(long)]
    pub demo: bool,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The day to look from, YYYY-MM-DD; today by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub on: Option<NaiveDate>,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// The next step of every rail: what to do today, why, and what to mind
    Next(NextArgs),
    /// What to hang for a load in all: the plates, or the help
    Load(LoadArgs),
    /// What each rung of a ladder asks of a body, and how that was computed
    Demand(DemandArgs),
    /// Who needs what, the most urgent first
    Roster(RosterArgs),
    /// Writes one record: a set, a weigh-in, pain, a placement, a phase, a goal, a note or a profile
    Log(Box<LogArgs>),
    /// Says one record anew
    Amend(Box<AmendArgs>),
    /// Takes one record out of account; nothing is deleted
    Retract(RetractArgs),
    /// Takes a retracted record back into account
    Restore(RestoreArgs),
    /// Prints every record, as import reads them
    Export(ExportArgs),
    /// Reads a spreadsheet (CSV) into the logbook, all of it or nothing
    Import(ImportArgs),
    /// Bests of each movement by four measures, with their bodyweights and dates
    Totals(TotalsArgs),
    /// Writes tonight's sheet (PDF): who does what, with plates, rest and boxes to write in
    Sheet(SheetArgs),
    /// Writes one athlete's progress over a period (PDF), to hand over
    Report(ReportArgs),
    /// Strength, added load and ratio at another bodyweight: what went together, not what a cut will do
    WhatIf(WhatIfArgs),
    /// What each athlete can lift once today, with ranges, trend, and sets that look like typos
    Strength(StrengthArgs),
    /// When each goal may come within reach, as a range of dates
    Forecast(ForecastArgs),
    /// Estimates as they would have been on past dates, from strictly earlier records
    Backtest(BacktestArgs),
    /// Hard sets by muscle group in a week against the range, and joints on following days
    Week(WeekArgs),
    /// Finds mistakes in ladders, movements, settings and journals
    Check(CheckArgs),
    /// Writes the demo gym: invented people and a year of their training
    Demo(DemoArgs),
}

/// Where and when to look.
#[derive(Debug, Args)]
pub struct Where {
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The day to look from, YYYY-MM-DD; today by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub on: Option<NaiveDate>,
    /// The form of the answer
    #[arg(long, value_enum, default_value = "text")]
    pub format: Format,
}

/// Arguments of `next`.
#[derive(Debug, Args)]
pub struct NextArgs {
    /// Only this athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// Plates on hand instead of the logbook's, kg, with commas: 20,10,5 (empty: none)
    #[arg(long, value_name = "LIST", allow_hyphen_values = true)]
    pub plates_kg: Option<String>,
    /// The same in pounds
    #[arg(
        long,
        value_name = "LIST",
        conflicts_with = "plates_kg",
        allow_hyphen_values = true
    )]
    pub plates_lb: Option<String>,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `load`.
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("target").required(true).args(["target_kg", "target_lb"]))]
#[command(group = clap::ArgGroup::new("body").required(true).args(["bodyweight_kg", "bodyweight_lb"]))]
pub struct LoadArgs {
    /// The load in all, kg
    #[arg(long, value_name = "KG", value_parser = number, allow_negative_numbers = true)]
    pub target_kg: Option<f64>,
    /// The load in all, lb
    #[arg(long, value_name = "LB", value_parser = number, allow_negative_numbers = true)]
    pub target_lb: Option<f64>,
    /// Today's bodyweight, kg
    #[arg(long, value_name = "KG", value_parser = number, allow_negative_numbers = true)]
    pub bodyweight_kg: Option<f64>,
    /// Today's bodyweight, lb
    #[arg(long, value_name = "LB", value_parser = number, allow_negative_numbers = true)]
    pub bodyweight_lb: Option<f64>,
    /// The part of bodyweight that the movement lifts, 0 to 1
    #[arg(
        long,
        value_name = "PART",
        default_value = "1",
        value_parser = number,
        allow_negative_numbers = true
    )]
    pub share: f64,
    /// What carabiner and chain weigh, kg; counts only with a plate on it
    #[arg(long, value_name = "KG", value_parser = number, allow_negative_numbers = true)]
    pub gear_kg: Option<f64>,
    /// The same in pounds
    #[arg(
        long,
        value_name = "LB",
        conflicts_with = "gear_kg",
        value_parser = number,
        allow_negative_numbers = true
    )]
    pub gear_lb: Option<f64>,
    /// Plates on hand, kg, with commas (empty: none)
    #[arg(long, value_name = "LIST", allow_hyphen_values = true)]
    pub plates_kg: Option<String>,
    /// The same in pounds
    #[arg(
        long,
        value_name = "LIST",
        conflicts_with = "plates_kg",
        allow_hyphen_values = true
    )]
    pub plates_lb: Option<String>,
    /// The form of the answer
    #[arg(long, value_enum, default_value = "text")]
    pub format: Format,
}

/// Arguments of `import`.
#[derive(Debug, Args)]
pub struct ImportArgs {
    /// The spreadsheet, saved as CSV
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// Whose rows these are, for a file without a column athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// A ladder that every athlete of the file joins; may be given again
    #[arg(long = "ladder", value_name = "LADDER")]
    pub ladders: Vec<String>,
    /// The order of day, month and year: ymd, dmy or mdy
    #[arg(long, value_name = "ORDER", default_value = "ymd", value_parser = parsed::<Dates>)]
    pub dates: Dates,
    /// What stands between cells: , ; | or tab
    #[arg(long, value_name = "MARK", default_value = ",", value_parser = parsed::<Delimiter>)]
    pub delimiter: Delimiter,
    /// The decimal mark: . or ,
    #[arg(long, value_name = "MARK", default_value = ".", value_parser = parsed::<Decimal>)]
    pub decimal: Decimal,
    /// A column that the file calls otherwise, THEIRS=OURS; THEIRS= leaves it out; may be given again
    #[arg(long, value_name = "THEIRS=OURS", value_parser = parsed::<Renaming>)]
    pub map: Vec<Renaming>,
    /// Writes nothing; says what would be written
    #[arg(long)]
    pub dry_run: bool,
    /// Writes the good rows even if others are bad
    #[arg(long)]
    pub keep_good: bool,
}

/// Arguments of `totals`.
#[derive(Debug, Args)]
pub struct TotalsArgs {
    /// Only this athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// The rep-max formula: epley, brzycki, lander, lombardi, mayhew, oconner or wathan; the settings' by default
    #[arg(long, value_name = "FORMULA", value_parser = parsed::<Formula>)]
    pub formula: Option<Formula>,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `strength`.
#[derive(Debug, Args)]
pub struct StrengthArgs {
    /// Only this athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `forecast`.
#[derive(Debug, Args)]
pub struct ForecastArgs {
    /// Whose goals
    #[arg(long, value_name = "NAME")]
    pub athlete: String,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `backtest`.
#[derive(Debug, Args)]
pub struct BacktestArgs {
    /// What is asked, as CSV: athlete,movement,side,as_of,on and, if you like, system_kg
    #[arg(long, value_name = "FILE")]
    pub points: PathBuf,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The form of the answer
    #[arg(long, value_enum, default_value = "csv")]
    pub format: Format,
}

/// Arguments of `week`.
#[derive(Debug, Args)]
pub struct WeekArgs {
    /// Only this athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}

/// Arguments of `check`.
#[derive(Debug, Args)]
pub struct CheckArgs {
    /// Ladders, movements.ron, logbook.ron, journals or whole logbooks; the logbook in use by default
    #[arg(value_name = "PATH")]
    pub paths: Vec<PathBuf>,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder, conflicts_with = "paths")]
    pub logbook: Option<PathBuf>,
    /// The form of the answer
    #[arg(long, value_enum, default_value = "text")]
    pub format: Format,
}

/// Arguments of `demo`.
#[derive(Debug, Args)]
pub struct DemoArgs {
    /// An empty or new folder
    #[arg(value_name = "DIR", value_parser = folder)]
    pub dir: PathBuf,
    /// How many athletes, 1 to 5000
    #[arg(long, value_name = "N", default_value_t = 12, allow_negative_numbers = true, value_parser = |text: &str| whole::<u32>(text, 1..=5000))]
    pub athletes: u32,
    /// How many years of training, 1 to 20
    #[arg(long, value_name = "Y", default_value_t = 1, allow_negative_numbers = true, value_parser = |text: &str| whole::<u32>(text, 1..=20))]
    pub years: u32,
    /// Another seed makes other people
    #[arg(long, value_name = "S", default_value_t = 1, allow_negative_numbers = true, value_parser = |text: &str| whole::<u64>(text, 0..=u64::MAX))]
    pub seed: u64,
    /// The day it is shown for, YYYY-MM-DD; today by default
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub on: Option<NaiveDate>,
}

/// A date from 1900 to 2100.
pub(super) fn date(text: &str) -> Result<NaiveDate, String> {
    day_of(text).map_err(|of| match of(quoted(text)) {
        NoDate::Form(_) | NoDate::Time(_) => "write a date as 2026-03-18".to_owned(),
        NoDate::Day(_) => "no calendar has this day; write a date as 2026-03-18".to_owned(),
        NoDate::Year(_) => "the years go from 1900 to 2100".to_owned(),
    })
}

/// A number as people write it: no exponent, no `nan` or `inf`.
pub(super) fn number(text: &str) -> Result<f64, String> {
    let plain = text
        .bytes()
        .all(|byte| byte.is_ascii_digit() || b"+-.".contains(&byte));
    let read = text.parse().ok().filter(|value: &f64| plain && value.is_finite());
    read.ok_or_else(|| "write a number in digits, like 82.5".to_owned())
}

/// A whole number of a range.
fn whole<T>(text: &str, range: RangeInclusive<T>) -> Result<T, String>
where
    T: std::str::FromStr + PartialOrd + std::fmt::Display,
{
    let read = text.parse().ok().filter(|value| range.contains(value));
    read.ok_or_else(|| format!("write a whole number from {} to {}", range.start(), range.end()))
}

/// A folder's name that is not empty.
pub(super) fn folder(text: &str) -> Result<PathBuf, String> {
    if text.is_empty() {
        Err("name a folder".to_owned())
    } else {
        Ok(PathBuf::from(text))
    }
}

fn parsed<T>(text: &str) -> Result<T, String>
where
    T: std::str::FromStr,
    T::Err: std::fmt::Display,
{
    text.parse().map_err(|error: T::Err| error.to_string())
}
