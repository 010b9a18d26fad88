//! `what-if`: strength, added load and ratio at another bodyweight.

use serde_json::{Value, json};

use crate::bests::{Formula, Point, Slope, points};
use crate::body::Counted;
use crate::catalogue::{Catalogue, Movement};
use crate::coaching::what_if::{Refused, There, Unknown, WhatIf};
use crate::problem::{did_you_mean, quoted, visible};
use crate::report::totals as words;
use crate::report::words::on_side;
use crate::strength::beliefs;
use crate::timeline::Timeline;
use crate::units::{Bodyweight, Side, Unit};

use super::args_body::WhatIfArgs;
use super::output::{Format, Style, csv_text, json_number, json_option, json_text, tell};
use super::reading::{self, Reading};
use super::record_row::typed;
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 14] = [
    "athlete",
    "movement",
    "side",
    "bodyweight_kg",
    "system_kg",
    "low80",
    "high80",
    "added_kg",
    "ratio",
    "size_adjusted",
    "slope",
    "slope_low80",
    "slope_high80",
    "sets",
];

/// What is known of one side, and the answer there.
struct Answered {
    side: Option<Side>,
    known: WhatIf,
    there: There,
}

/// Runs `what-if`.
pub fn run(args: &WhatIfArgs) -> Result<Answer, Failed> {
    let asked = typed("--bodyweight", &args.bodyweight)?;
    let bodyweight = Bodyweight::new(asked.mass());
    let (reading, log) = reading::athlete(args.place.logbook.as_ref(), &args.athlete)?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading;
    let movement = movement(&catalogue, &args.movement)?;
    let on = reading::day(args.place.on);
    let timeline = Timeline::counting(&log, &catalogue, on, Counted::of(&book.settings));
    let formula = Formula::chosen(&book.settings);
    let answered = answers(&timeline, formula, movement, bodyweight, asked.unit())?;
    for one in &answered {
        notes(one, asked.unit());
    }
    let rows = || {
        answered
            .iter()
            .map(|one| row(&log.name, movement, one))
            .collect::<Vec<_>>()
    };
    let text = match args.place.format {
        Format::Json => json_text(&rows().into()),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text => answered
            .iter()
            .map(|one| told(&log.name, movement, one, asked.unit()))
            .collect(),
    };
    Ok(Answer { text, with_problems })
}

fn movement<'c>(catalogue: &'c Catalogue, name: &str) -> Result<&'c Movement, Failed> {
    catalogue.movement_by_name(name).ok_or_else(|| {
        let ids = catalogue.movements().map(|movement| movement.id.as_str());
        let mend = did_you_mean(name, ids).map_or_else(String::new, |near| format!("; did you mean {near}?"));
        Failed::Usage(format!("unknown movement {}{mend}", quoted(name)))
    })
}

/// The answer for every side that has a belief.
fn answers(
    timeline: &Timeline<'_>,
    formula: Formula,
    movement: &Movement,
    bodyweight: Bodyweight,
    unit: Unit,
) -> Result<Vec<Answered>, Failed> {
    let unknown = |why: Unknown| {
        let title = visible(&movement.title);
        Failed::Problem(format!("nothing can be said of {title}: {}", words::unknown(why)))
    };
    let refused = |why: Refused| match why {
        Refused::NoBodyweight => {
            Failed::Usage(format!("--bodyweight: {}", words::refused(why, bodyweight, unit)))
        }
        _ => Failed::Problem(words::refused(why, bodyweight, unit)),
    };
    let believed: Vec<_> = beliefs(timeline)
        .into_iter()
        .filter(|known| known.movement == movement.id)
        .collect();
    let points = points(timeline, formula);
    let of = |side: Option<Side>| -> &[Point] {
        points
            .get(&(movement.id.as_str(), side))
            .map_or(&[], Vec::as_slice)
    };
    if believed.is_empty() {
        WhatIf::new(timeline, movement, None, of(None)).map_err(unknown)?;
    }
    believed
        .iter()
        .map(|known| {
            let side = known.side;
            let known = WhatIf::new(timeline, movement, Some(known), of(side)).map_err(unknown)?;
            let there = known.at(bodyweight).map_err(refused)?;
            Ok(Answered { side, known, there })
        })
        .collect()
}

/// What to mind, on stderr, whatever the form of the answer.
fn notes(one: &Answered, unit: Unit) {
    for caution in words::cautions_there(&one.known, &one.there, unit) {
        tell(&format!("rungwright: {caution}"));
    }
    if one.known.fit.is_err() {
        tell(&format!("rungwright: {}", words::fit(&one.known.fit, unit)));
    }
}

fn row(athlete: &str, movement: &Movement, one: &Answered) -> Value {
    let there = &one.there;
    let fit = one.known.fit.as_ref().ok();
    let slope = |part: fn(&Slope) -> f64| json_option(fit.map(|fit| part(&fit.exponent)));
    json!({
        "athlete": athlete,
        "movement": movement.id,
        "side": one.side.map_or("", Side::letter),
        "bodyweight_kg": json_number(there.bodyweight.kg()),
        "system_kg": json_number(there.system.kg()),
        "low80": json_number(there.low80.kg()),
        "high80": json_number(there.high80.kg()),
        "added_kg": json_number(there.added.kg()),
        "ratio": json_number(there.ratio),
        "size_adjusted": json_number(there.size_adjusted),
        "slope": slope(|slope| slope.centre),
        "slope_low80": slope(|slope| slope.low80),
        "slope_high80": slope(|slope| slope.high80),
        "sets": fit.map(|fit| fit.sets),
    })
}

fn told(athlete: &str, movement: &Movement, one: &Answered, unit: Unit) -> String {
    let side = on_side(one.side);
    let (system, range) = words::system_there(&one.there, unit);
    let (belt, belt_range) = words::belt_there(&one.there, unit);
    let title = format!("{}, {}{side}", visible(athlete), visible(&movement.title));
    let at = crate::report::numbers::about(one.there.bodyweight.kg(), unit);
    let fit = one.known.fit.as_ref().map_or_else(
        |_| String::new(),
        |_| format!("  {}\n", words::fit(&one.known.fit, unit)),
    );
    format!(
        "{} at {at}, one rep\n  {system} {range}\n  {belt} {belt_range} · {}\n{fit}",
        Style::for_stdout().strong(&title),
        words::measures_there(&one.there),
    )
}
