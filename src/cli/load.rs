//! `load`: what to hang for a load in all.

use serde_json::json;

use crate::coaching::PlatesOnHand;
use crate::coaching::advice::LoadToday;
use crate::logbook::Settings;
use crate::report::advice;
use crate::report::numbers::kg;
use crate::units::{Bodyweight, Mass, Share, SystemLoad, Typed, Unit};

use super::args::LoadArgs;
use super::output::{Format, csv_text, json_number, json_text};
use super::{Answer, Failed, reading};

/// Paths of the JSON answer, in order, for CSV.
const COLUMNS: [&str; 4] = ["system_kg", "added_kg", "assistance_kg", "plates_kg"];

/// Runs `load`.
pub fn run(args: &LoadArgs) -> Result<Answer, Failed> {
    let unit = if args.target_kg.is_some() {
        Unit::Kg
    } else {
        Unit::Lb
    };
    let target = mass("target", args.target_kg, args.target_lb, (0.0, 1000.0))?;
    let body = mass(
        "bodyweight",
        args.bodyweight_kg,
        args.bodyweight_lb,
        (*Bodyweight::BELIEVED_KG.start(), *Bodyweight::BELIEVED_KG.end()),
    )?;
    let gear = match (args.gear_kg, args.gear_lb) {
        (None, None) => Mass::ZERO,
        (kg, lb) => mass("gear", kg, lb, (0.0, 50.0))?,
    };
    let share = Share::new(args.share).map_err(|error| Failed::Usage(error.to_string()))?;
    let named = reading::plates(args.plates_kg.as_deref(), args.plates_lb.as_deref())?;
    let plates = named.unwrap_or_else(|| Settings::fresh(unit).plates);
    let found = PlatesOnHand::new(&plates, gear)
        .loadable(share, Bodyweight::new(body), true)
        .at_or_below(SystemLoad::new(target))
        .ok_or_else(|| Failed::Problem("nothing can be hung for this load".to_owned()))?;
    Ok(Answer::plain(answer(&found, args.format, unit, target)))
}

fn answer(load: &LoadToday, format: Format, unit: Unit, target: Mass) -> String {
    let plates: Vec<_> = load
        .plates
        .iter()
        .map(|plate| json_number(plate.mass().kg()))
        .collect();
    let help = load.added.assistance().map_or(0.0, crate::units::Assistance::kg);
    let row = json!({
        "system_kg": json_number(load.system.kg()),
        "added_kg": json_number(load.added.kg().max(0.0)),
        "assistance_kg": json_number(help),
        "plates_kg": plates,
    });
    match format {
        Format::Json => json_text(&row),
        Format::Csv => csv_text(&[row], &COLUMNS),
        Format::Text => {
            let short = Mass::from_kg(target.kg() - load.system.kg());
            let off = match short.kg() {
                left if left > 0.005 => format!(", {} under the target", kg(left, unit)),
                left if left < -0.005 => format!(
                    ", {} over the target: nothing lighter can be made",
                    kg(-left, unit)
                ),
                _ => String::new(),
            };
            format!(
                "{}: {} in all{off}\n",
                advice::hung(load, unit),
                kg(load.system.kg(), unit)
            )
        }
    }
}

fn mass(what: &str, kg: Option<f64>, lb: Option<f64>, (low, high): (f64, f64)) -> Result<Mass, Failed> {
    let typed = match (kg, lb) {
        (Some(value), _) => Typed::new(value, Unit::Kg),
        (None, value) => Typed::new(value.unwrap_or(0.0), Unit::Lb),
    };
    typed
        .ok()
        .map(Typed::mass)
        .filter(|mass| mass.kg() > 0.0 || low == 0.0)
        .filter(|mass| (low..=high).contains(&mass.kg()))
        .ok_or_else(|| {
            Failed::Usage(format!(
                "--{what} is out of range; give {low} to {high} kg, or the same in lb"
            ))
        })
}
