//! `demand`: what each rung of a ladder asks of a body, with its band and how it was computed.

use serde_json::{Value, json};

use crate::body::demand::{Measured, demands_with};
use crate::body::{Angle, Band, Body, Facts, Moment, RungDemand};
use crate::catalogue::{Catalogue, Ladder};
use crate::logbook::{Logbook, Machine};
use crate::problem::{did_you_mean, quoted, visible};
use crate::report::numbers::{about, number};
use crate::timeline::Timeline;
use crate::units::{Bodyweight, Height, Mass, SystemLoad, Unit};

use super::args_body::DemandArgs;
use super::output::{Format, Style, csv_text, json_number, json_option, json_text, tell};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 12] = [
    "ladder",
    "rung",
    "demand",
    "low",
    "high",
    "status",
    "text",
    "moment_nm",
    "elbow_nm",
    "lean_deg",
    "share",
    "system_kg",
];

/// What a demand is asked of.
struct Asked {
    catalogue: Catalogue,
    body: Body,
    measured: Measured,
    unit: Unit,
    with_problems: bool,
}

/// Runs `demand`.
pub fn run(args: &DemandArgs) -> Result<Answer, Failed> {
    let asked = match &args.athlete {
        Some(name) => of_athlete(args, name)?,
        None => of_anyone(args)?,
    };
    let ladder = ladder(&asked.catalogue, &args.ladder)?;
    let demands = demands_with(ladder, &asked.catalogue, &asked.body, asked.measured);
    let rows = || {
        demands
            .iter()
            .map(|demand| row(ladder, demand))
            .collect::<Vec<_>>()
    };
    let text = match args.place.format {
        Format::Text => told(ladder, &demands, &asked),
        format => {
            asked
                .body
                .cautions()
                .iter()
                .for_each(|caution| tell(&format!("rungwright: {caution}")));
            if format == Format::Json {
                json_text(&rows().into())
            } else {
                csv_text(&rows(), &COLUMNS)
            }
        }
    };
    Ok(Answer {
        text,
        with_problems: asked.with_problems,
    })
}

/// A logged body, with what was said on the command line instead.
fn of_athlete(args: &DemandArgs, name: &str) -> Result<Asked, Failed> {
    let (reading, log) = reading::athlete(args.place.logbook.as_ref(), name)?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading;
    let on = reading::day(args.place.on);
    let timeline = Timeline::new(&log, &catalogue, on);
    let facts = Facts {
        height: timeline.person.height,
        mass: timeline.bodyweight(),
        sex: timeline.person.sex,
        years: timeline.years().and_then(|years| i32::try_from(years).ok()),
    };
    let measured = Measured {
        band: timeline.measured_band(ladder(&catalogue, &args.ladder)?),
    };
    Ok(Asked {
        body: body(args, facts)?,
        measured,
        unit: book.unit(),
        with_problems,
        catalogue,
    })
}

/// A body as said on the command line; own ladders of the logbook serve where there is one.
fn of_anyone(args: &DemandArgs) -> Result<Asked, Failed> {
    let machine = Machine::this()?;
    let root = reading::root(&machine, args.place.logbook.as_ref());
    let (catalogue, unit, with_problems) = match Logbook::open_without_athletes(&machine, &root) {
        Ok((book, problems)) => {
            let (catalogue, own) = book.catalogue();
            (
                catalogue,
                book.unit(),
                reading::report(&problems) | reading::report(&own),
            )
        }
        Err(trouble) if args.place.logbook.is_some() => return Err(trouble.into()),
        Err(_) => (Catalogue::shipped().clone(), Unit::Kg, false),
    };
    Ok(Asked {
        body: body(args, Facts::default())?,
        measured: Measured::default(),
        unit,
        with_problems,
        catalogue,
    })
}

fn body(args: &DemandArgs, logged: Facts) -> Result<Body, Failed> {
    let usage = |error: crate::units::OutOfRange| Failed::Usage(error.to_string());
    let height = args.height_cm.map(Height::from_cm).transpose().map_err(usage)?;
    let mass = args.mass_kg.map(|kg| Bodyweight::new(Mass::from_kg(kg)));
    let said = height.is_some() || mass.is_some();
    let facts = Facts {
        height: height.or(logged.height),
        mass: mass.or(logged.mass),
        sex: args.sex.or(logged.sex),
        years: logged.years,
    };
    Body::new(facts).map_err(|error| {
        if said {
            Failed::Usage(error.to_string())
        } else {
            Failed::Problem(format!("the logged height and weigh-in fit no body: {error}"))
        }
    })
}

fn ladder<'c>(catalogue: &'c Catalogue, name: &str) -> Result<&'c Ladder, Failed> {
    catalogue.ladder_by_name(name).ok_or_else(|| {
        let ids: Vec<&str> = catalogue.ladders().map(|ladder| ladder.id.as_str()).collect();
        let mend = match did_you_mean(&name.trim().to_lowercase(), ids.iter().copied()) {
            Some(near) => format!("did you mean {near}?"),
            None => format!("there are {}", ids.join(", ")),
        };
        Failed::Usage(format!("unknown ladder {}; {mend}", quoted(name)))
    })
}

fn row(ladder: &Ladder, asked: &RungDemand) -> Value {
    json!({
        "ladder": ladder.id,
        "rung": asked.rung,
        "demand": json_option(asked.demand.map(Band::centre)),
        "low": json_option(asked.demand.map(Band::low)),
        "high": json_option(asked.demand.map(Band::high)),
        "status": asked.demand.map(|_| asked.status.words()),
        "text": asked.text(),
        "moment_nm": json_option(asked.moment.map(Band::centre)),
        "elbow_nm": json_option(asked.elbow.map(Moment::newton_metres)),
        "lean_deg": json_option(asked.lean.map(Angle::degrees)),
        "share": asked.share.map_or(Value::Null, json_number),
        "system_kg": json_option(asked.system.map(SystemLoad::kg)),
    })
}

fn told(ladder: &Ladder, demands: &[RungDemand], asked: &Asked) -> String {
    let style = Style::for_stdout();
    let mut text = format!("{}\n", style.strong(&visible(&ladder.title)));
    for demand in demands {
        text.push_str(&of_rung(ladder, demand, asked.unit, style));
    }
    for caution in asked.body.cautions() {
        text.push_str(&format!("Caution: {caution}.\n"));
    }
    text
}

/// `0.54 (0.47–0.61)  Tuck, derived`, what it means in numbers, and how it came about.
fn of_rung(ladder: &Ladder, asked: &RungDemand, unit: Unit, style: Style) -> String {
    let title = ladder
        .rung(&asked.rung)
        .map_or(asked.rung.as_str(), |rung| &rung.title);
    let demand = match asked.demand {
        None => "  –   ".to_owned(),
        Some(band) => format!("{:.2} ({:.2}–{:.2})", band.centre(), band.low(), band.high()),
    };
    let status = asked.demand.map_or("", |_| asked.status.words());
    let mut text = format!("  {demand:<18}{}  {status}\n", style.strong(&visible(title)));
    let facts = [
        asked
            .system
            .map(|load| format!("{} in all", about(load.kg(), unit))),
        asked
            .share
            .filter(|share| *share != 1.0)
            .map(|share| format!("{} % of bodyweight", number(share * 100.0, 0))),
        asked.moment.map(|moment| {
            format!(
                "{} N·m at both shoulders ({}–{})",
                number(moment.centre(), 0),
                number(moment.low(), 0),
                number(moment.high(), 0)
            )
        }),
        asked
            .elbow
            .map(|elbow| format!("{} N·m at each elbow", number(elbow.newton_metres(), 0))),
        asked
            .lean
            .map(|lean| format!("arms {}° off the vertical", number(lean.degrees(), 0))),
    ];
    let facts: Vec<String> = facts.into_iter().flatten().collect();
    if !facts.is_empty() {
        text.push_str(&format!("{:20}{}\n", "", facts.join(", ")));
    }
    text.push_str(&format!("{:20}{}\n", "", visible(&asked.text())));
    text
}
