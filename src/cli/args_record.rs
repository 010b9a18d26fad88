//! What may be said of one record, and the commands that write, mend and list records. The doc comments are what `--help` prints.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::args::{Where, folder};

/// Arguments of `log`.
#[derive(Debug, Args)]
pub struct LogArgs {
    /// Whose record it is; a new name makes a new athlete
    #[arg(long, value_name = "NAME")]
    pub athlete: Option<String>,
    /// Rows of a spreadsheet instead, one at a time (- reads stdin): each is saved before the next is read
    #[arg(long, value_name = "FILE|-")]
    pub rows: Option<PathBuf>,
    /// What happened.
    #[command(flatten)]
    pub said: RecordArgs,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
}

/// What a record says. Every value is a text, so that `amend` can take an empty one; rows are checked where import checks them.
#[derive(Debug, Args)]
pub struct RecordArgs {
    /// The movement of a set
    #[arg(long, value_name = "MOVEMENT")]
    pub movement: Option<String>,
    /// Left or right, where sides are apart
    #[arg(long, value_name = "L|R")]
    pub side: Option<String>,
    /// Completed repetitions
    #[arg(long, value_name = "N", allow_hyphen_values = true)]
    pub reps: Option<String>,
    /// Seconds held
    #[arg(long, value_name = "N", allow_hyphen_values = true)]
    pub hold_s: Option<String>,
    /// What hung from the belt, like 20kg or 45lb
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    pub added: Option<String>,
    /// What helped, by counterweight, band or hand, like 10kg
    #[arg(
        long,
        value_name = "MASS",
        conflicts_with = "added",
        allow_hyphen_values = true
    )]
    pub assist: Option<String>,
    /// What the scale showed, like 75kg; alone it is a weigh-in
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    pub bodyweight: Option<String>,
    /// Repetitions left in reserve, 0 to 10 in halves
    #[arg(long, value_name = "N", allow_hyphen_values = true)]
    pub rir: Option<String>,
    /// The same as a rating of perceived exertion, 5 to 10 in halves
    #[arg(long, value_name = "N", allow_hyphen_values = true)]
    pub rpe: Option<String>,
    /// One more was tried and failed
    #[arg(long, value_name = YES, num_args = 0..=1, require_equals = true, default_missing_value = YES)]
    pub missed: Option<String>,
    /// The repetitions were done, but the movement's standard was not kept
    #[arg(
        long,
        value_name = YES,
        num_args = 0..=1,
        require_equals = true,
        default_missing_value = YES,
        conflicts_with = "missed"
    )]
    pub form: Option<String>,
    /// The ladder that the set was done for
    #[arg(long, value_name = "LADDER")]
    pub ladder: Option<String>,
    /// The rung that it was done on
    #[arg(long, value_name = "RUNG")]
    pub rung: Option<String>,
    /// Puts the athlete (with --side one rail) on a ladder, on a rung of it, or sets it aside
    #[arg(long, value_name = "LADDER[/RUNG|/none]", conflicts_with_all = ["ladder", "rung"])]
    pub place: Option<String>,
    /// Where it hurts, and how much from 0 to 10: elbow=3
    #[arg(long, value_name = "SITE=N")]
    pub pain: Option<String>,
    /// Cut, hold or gain bodyweight from now on; a lighter week; off the roster (archived), or back on it (active)
    #[arg(long, value_name = "cut|hold|gain|deload|archived|active")]
    pub phase: Option<String>,
    /// A rung to reach
    #[arg(long, value_name = "LADDER/RUNG")]
    pub goal: Option<String>,
    /// By when, YYYY-MM-DD
    #[arg(long, value_name = "DATE")]
    pub by: Option<String>,
    /// A remark
    #[arg(long, value_name = "TEXT", allow_hyphen_values = true)]
    pub note: Option<String>,
    /// Birth date, YYYY-MM-DD
    #[arg(long, value_name = "DATE")]
    pub born: Option<String>,
    /// Standing height, like 178cm
    #[arg(long, value_name = "HEIGHT", allow_hyphen_values = true)]
    pub height: Option<String>,
    /// For the tables of body segments
    #[arg(long, value_name = "female|male")]
    pub sex: Option<String>,
    /// The athlete's name from now on
    #[arg(long, value_name = "NAME")]
    pub rename: Option<String>,
    /// When it happened: a day, or a time like 2026-03-18T17:30; now by default
    #[arg(long, value_name = "TIME")]
    pub at: Option<String>,
}

/// What `--missed` and `--form` say without a value.
pub const YES: &str = "yes";

impl RecordArgs {
    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        [
            &self.movement,
            &self.side,
            &self.reps,
            &self.hold_s,
            &self.added,
            &self.assist,
            &self.bodyweight,
            &self.rir,
            &self.rpe,
            &self.missed,
            &self.form,
            &self.ladder,
            &self.rung,
            &self.place,
            &self.pain,
            &self.phase,
            &self.goal,
            &self.by,
            &self.note,
            &self.born,
            &self.height,
            &self.sex,
            &self.rename,
            &self.at,
        ]
        .iter()
        .all(|value| value.is_none())
    }
}

/// Arguments of `amend`.
#[derive(Debug, Args)]
pub struct AmendArgs {
    /// The record's id, as log and export print it
    #[arg(value_name = "ID")]
    pub id: String,
    /// What it says now; an empty value takes a field away
    #[command(flatten)]
    pub said: RecordArgs,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
}

/// Arguments of `retract`.
#[derive(Debug, Args)]
pub struct RetractArgs {
    /// The record's id, as log and export print it
    #[arg(value_name = "ID")]
    pub id: String,
    /// Why it no longer counts
    #[arg(long, value_name = "TEXT", allow_hyphen_values = true)]
    pub why: Option<String>,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
}

/// Arguments of `restore`.
#[derive(Debug, Args)]
pub struct RestoreArgs {
    /// The record's id, as log and export print it
    #[arg(value_name = "ID")]
    pub id: String,
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
}

/// Arguments of `export`.
#[derive(Debug, Args)]
pub struct ExportArgs {
    /// The logbook's folder
    #[arg(long, value_name = "DIR", value_parser = folder)]
    pub logbook: Option<PathBuf>,
    /// The form of the answer
    #[arg(long, value_enum, default_value = "csv")]
    pub format: ExportFormat,
}

/// The form of an export.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ExportFormat {
    /// For spreadsheets (RFC 4180); import reads it.
    Csv,
    /// For programs.
    Json,
}

/// Arguments of `roster`.
#[derive(Debug, Args)]
pub struct RosterArgs {
    /// Where and when.
    #[command(flatten)]
    pub place: Where,
}
