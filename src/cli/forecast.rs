//! `forecast`: when each goal may come within reach, as a range.

use chrono::{Days, NaiveDate};
use serde_json::{Value, json};

use crate::body::Counted;
use crate::coaching::goals::{Goal, goals};
use crate::problem::visible;
use crate::report::belief;
use crate::report::words::on_side;
use crate::strength::{Estimates, Forecast};
use crate::timeline::Timeline;

use super::args::ForecastArgs;
use super::output::{Format, Style, csv_text, json_option, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 8] = [
    "athlete",
    "ladder",
    "rung",
    "side",
    "soonest",
    "median",
    "latest",
    "chance_in_a_year",
];

/// Runs `forecast`.
pub fn run(args: &ForecastArgs) -> Result<Answer, Failed> {
    let (reading, log) = reading::athlete(args.place.logbook.as_ref(), &args.athlete)?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading;
    let on = reading::day(args.place.on);
    let timeline = Timeline::counting(&log, &catalogue, on, Counted::of(&book.settings));
    let mut estimates = Estimates::new(&timeline, &catalogue);
    let told: Vec<Told<'_>> = goals(&timeline, &catalogue)
        .into_iter()
        .map(|goal| Told {
            forecast: estimates.forecast(goal.ladder, goal.rung, goal.rail),
            pull_alone: estimates
                .on_ladder(goal.ladder, goal.rail)
                .is_some_and(|believed| believed.grip_lies_below()),
            goal,
        })
        .collect();
    let rows = || -> Vec<Value> {
        let each = told.iter();
        each.map(|told| row(&log.name, &told.goal, told.forecast.as_ref(), on))
            .collect()
    };
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text => text(&log.name, &told, on),
    };
    Ok(Answer { text, with_problems })
}

/// What can be said of a goal.
struct Told<'a> {
    goal: Goal<'a>,
    forecast: Option<Forecast>,
    /// The hang lies below: the forecast is of the pull alone.
    pull_alone: bool,
}

fn row(athlete: &str, goal: &Goal<'_>, forecast: Option<&Forecast>, on: NaiveDate) -> Value {
    let date = |weeks: fn(&Forecast) -> Option<u16>| {
        let weeks = forecast.and_then(weeks)?;
        Some(on.checked_add_days(Days::new(7 * u64::from(weeks)))?.to_string())
    };
    json!({
        "athlete": athlete,
        "ladder": goal.ladder.id,
        "rung": goal.rung.id,
        "side": goal.rail.letter(),
        "soonest": date(|forecast| forecast.soonest),
        "median": date(|forecast| forecast.median),
        "latest": date(|forecast| forecast.latest),
        "chance_in_a_year": json_option(forecast.map(|forecast| forecast.in_a_year)),
    })
}

fn text(athlete: &str, told: &[Told<'_>], on: NaiveDate) -> String {
    let mut text = format!("{}\n", Style::for_stdout().strong(&visible(athlete)));
    if told.is_empty() {
        text.push_str("  no goal: join a ladder, or set one with log --goal LADDER/RUNG\n");
    }
    for Told {
        goal,
        forecast,
        pull_alone,
    } in told
    {
        let side = on_side(goal.rail.side());
        let said = match forecast {
            Some(forecast) if *pull_alone => format!("by pull alone: {}", belief::forecast(forecast, on)),
            Some(forecast) => belief::forecast(forecast, on),
            None => "nothing can be said: no sets yet that tell of it".to_owned(),
        };
        text.push_str(&format!(
            "  {}: {}{side}\n    {said}\n",
            visible(&goal.ladder.title),
            visible(&goal.rung.title)
        ));
    }
    text
}
