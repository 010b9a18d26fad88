//! Opening a logbook for a command: where it is, what is wrong in it, its own ladders, whose rows are asked for.

use std::path::PathBuf;

use chrono::NaiveDate;

use crate::catalogue::Catalogue;
use crate::clock;
use crate::coaching::PlatesOnHand;
use crate::logbook::{Log, Logbook, Machine, Name, device};
use crate::problem::{Problem, Severity, quoted};
use crate::units::{Mass, Typed, Unit};

use super::Failed;
use super::output::tell;

/// A logbook opened for reading.
pub struct Reading {
    /// The logbook.
    pub book: Logbook,
    /// Shipped and own movements and ladders.
    pub catalogue: Catalogue,
    /// Whether part of it could not be read: exit 1.
    pub with_problems: bool,
}

/// The logbook that is meant: named, or the user's own.
pub fn root(machine: &Machine, named: Option<&PathBuf>) -> PathBuf {
    named.cloned().unwrap_or_else(|| machine.usual_logbook())
}

/// The day that is meant.
pub fn day(on: Option<NaiveDate>) -> NaiveDate {
    on.unwrap_or_else(clock::today)
}

/// An athlete's name as typed.
///
/// # Errors
/// When it can't be a name.
pub fn name(text: &str) -> Result<Name, Failed> {
    Name::parse(text).map_err(|error| Failed::Usage(error.to_string()))
}

/// Opens the logbook that is meant, all of it or one athlete's part, athletes in order of name.
///
/// # Errors
/// When there is no logbook, or no athlete of that name.
pub fn logbook(named: Option<&PathBuf>, athlete: Option<&str>) -> Result<Reading, Failed> {
    let machine = Machine::this()?;
    let athlete = athlete.map(name).transpose()?;
    let mut reading = open(&machine, &root(&machine, named), athlete.as_ref())?;
    reading.book.logs.sort_by(|a, b| a.name.cmp(&b.name));
    Ok(reading)
}

/// Opens one athlete's part of the logbook that is meant; the athlete's log is taken out of it.
///
/// # Errors
/// When there is no logbook, or no athlete of that name.
pub fn athlete(named: Option<&PathBuf>, athlete: &str) -> Result<(Reading, Log), Failed> {
    let name = name(athlete)?;
    let mut reading = logbook(named, Some(athlete))?;
    let at = reading.book.position(&name);
    let log = at.map(|at| reading.book.logs.swap_remove(at));
    let log =
        log.ok_or_else(|| Failed::Problem(format!("no athlete is called {}", quoted(name.as_str()))))?;
    Ok((reading, log))
}

/// Opens a logbook, says on stderr what is wrong in it, and keeps everything else.
///
/// # Errors
/// When there is no logbook, or no athlete of that name.
pub fn open(machine: &Machine, root: &std::path::Path, athlete: Option<&Name>) -> Result<Reading, Failed> {
    let (book, problems) = match athlete {
        Some(name) => Logbook::open_athlete(machine, root, name)?,
        None => Logbook::open(machine, root)?,
    };
    let (catalogue, own_problems) = book.catalogue();
    let with_problems = report(&problems) | report(&own_problems);
    Ok(Reading {
        book,
        catalogue,
        with_problems,
    })
}

/// Says problems on stderr, warnings aside; tells whether any of them means that something was not read.
pub fn report(problems: &[Problem]) -> bool {
    for problem in problems
        .iter()
        .filter(|problem| problem.severity > Severity::Warning)
    {
        tell(&problem.to_string());
    }
    problems.iter().any(|problem| problem.severity == Severity::Error)
}

/// Plates named in an option, or none if neither was given.
///
/// # Errors
/// When the list is not one of masses.
pub fn plates(kg: Option<&str>, lb: Option<&str>) -> Result<Option<Vec<Typed>>, Failed> {
    match (kg, lb) {
        (Some(list), _) => masses(list, Unit::Kg).map(Some),
        (None, Some(list)) => masses(list, Unit::Lb).map(Some),
        (None, None) => Ok(None),
    }
}

/// Heaviest single plate that is believed, in its own unit. Above any disc that is sold; it only catches slips.
const HEAVIEST_PLATE: f64 = 200.0;

fn masses(list: &str, unit: Unit) -> Result<Vec<Typed>, Failed> {
    list.split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(|part| {
            let plain = part.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
            let value: Option<f64> = part
                .parse()
                .ok()
                .filter(|value| plain && *value > 0.0 && *value <= HEAVIEST_PLATE);
            value
                .and_then(|value| Typed::new(value, unit).ok())
                .ok_or_else(|| {
                    let quoted = quoted(part);
                    Failed::Usage(format!(
                        "{quoted} is no plate; list masses with commas, like 20,10,5,2.5"
                    ))
                })
        })
        .collect()
}

/// What can be hung: the named plates without gear, or the logbook's plates and gear.
pub fn on_hand(book: &Logbook, named: Option<Vec<Typed>>) -> PlatesOnHand {
    match named {
        Some(plates) => PlatesOnHand::new(&plates, Mass::ZERO),
        None => PlatesOnHand::of(&book.settings),
    }
}

/// The device that this process writes as: named by the environment, else this machine's own.
///
/// # Errors
/// When the name is none, or the state folder can't be read or written.
pub fn device(machine: &Machine) -> Result<String, Failed> {
    match std::env::var_os(device::VARIABLE) {
        Some(name) => Ok(device::named(&name.to_string_lossy())?),
        None => Ok(device::of_machine(machine, clock::chance())?),
    }
}
