//! `demo`: the demo gym, in a folder of its own or as a throw-away copy.

use std::path::{Path, PathBuf};
use std::time::Duration;

use chrono::Datelike as _;

use crate::clock;
use crate::demo::{Gym, Plan, gym};
use crate::logbook::{Machine, Name, Settings, WholeFile, Writer};
use crate::report::numbers::counted;
use crate::units::Unit;

use super::args::DemoArgs;
use super::reading;
use super::{Answer, Failed};

/// The demo's device.
const DEVICE: &str = "demo";
/// How many demo windows may be open at once.
const COPIES: u32 = 9;

/// The years to show the demo for: its oldest people are 62, and a logbook's dates go from 1900 to 2100.
const YEARS: std::ops::RangeInclusive<i32> = 1964..=2100;

/// Runs `demo`.
pub fn run(args: &DemoArgs) -> Result<Answer, Failed> {
    let machine = Machine::this()?;
    let holds_something = std::fs::read_dir(&args.dir).is_ok_and(|mut entries| entries.next().is_some());
    if holds_something || args.dir.is_file() {
        let place = crate::problem::visible(&args.dir.to_string_lossy());
        return Err(Failed::Problem(format!(
            "{place}: not an empty folder; name a new one, nothing was written"
        )));
    }
    let on = shown_for(args.on)?;
    let plan = Plan {
        athletes: usize::try_from(args.athletes).unwrap_or(usize::MAX),
        years: args.years,
        seed: args.seed,
        on,
    };
    let gym = gym(&plan);
    lay(&machine, &args.dir, &gym, Duration::from_secs(10))?;
    let sets: usize = gym.athletes.iter().map(|(_, records)| records.len()).sum();
    let place = crate::problem::visible(&args.dir.to_string_lossy());
    let count = |count: usize, noun| counted(i64::try_from(count).unwrap_or(i64::MAX), noun);
    Ok(Answer::plain(format!(
        "{}, {} in {place}\n",
        count(gym.athletes.len(), "athlete"),
        count(sets, "record")
    )))
}

/// The day that the demo is shown for.
///
/// # Errors
/// When its people would have lived before or after the years that a logbook knows.
fn shown_for(on: Option<chrono::NaiveDate>) -> Result<chrono::NaiveDate, Failed> {
    let on = reading::day(on);
    if !YEARS.contains(&on.year()) {
        return Err(Failed::Usage(format!(
            "the demo's people could not have lived and trained up to {on}; give --on a day of the years {} to {}",
            YEARS.start(),
            YEARS.end()
        )));
    }
    Ok(on)
}

/// Writes a gym into an empty folder.
pub fn lay(machine: &Machine, folder: &Path, gym: &Gym, wait: Duration) -> Result<(), Failed> {
    let (mut writer, _) = Writer::lock(machine, folder, DEVICE.to_owned(), clock::now().to_utc(), wait)?;
    let settings = Settings {
        name: Some("Demo gym".to_owned()),
        plates: gym.plates.clone(),
        ..Settings::fresh(Unit::Kg)
    };
    writer.write_settings(&settings)?;
    for (file, text) in &gym.ladders {
        writer.write_whole(&WholeFile::Ladder(file.trim_end_matches(".ron").to_owned()), text)?;
    }
    let batch = gym
        .athletes
        .iter()
        .filter_map(|(name, records)| Some((Name::parse(name).ok()?, records.clone())))
        .collect();
    writer.commit(batch)?;
    Ok(())
}

/// A fresh copy of the demo gym in the state folder, for `--demo`.
pub fn fresh_copy(machine: &Machine, on: chrono::NaiveDate) -> Result<PathBuf, Failed> {
    let on = shown_for(Some(on))?;
    let gym = gym(&Plan {
        athletes: 12,
        years: 1,
        seed: 1,
        on,
    });
    for copy in 1..=COPIES {
        let folder = machine.places().state.join(format!("demo-{copy}"));
        // Holding the mark until the new copy lies there keeps another demo window's copy whole.
        let Some(mark) = machine.mark_window(&folder)? else {
            continue;
        };
        match std::fs::remove_dir_all(&folder) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
                let place = crate::problem::visible(&folder.to_string_lossy());
                return Err(Failed::Problem(format!("{place}: cannot be emptied: {error}")));
            }
            _ => {}
        }
        lay(machine, &folder, &gym, Duration::from_secs(1))?;
        drop(mark);
        return Ok(folder);
    }
    Err(Failed::Problem(
        "too many demo windows are open; close one".to_owned(),
    ))
}
