//! `next`: the next step of every rail, as text, JSON or CSV.

use serde_json::{Value, json};

use crate::catalogue::Catalogue;
use crate::coaching::advice::{Asked, Prescription};
use crate::coaching::outlook::of_all;
use crate::coaching::warm_up::warm_up;
use crate::coaching::{Finding, NextStep, PlatesOnHand, Verdict};
use crate::logbook::{Fact, Log};
use crate::problem::visible;
use crate::report::advice;
use crate::report::words::Words;
use crate::units::Unit;

use super::args::NextArgs;
use super::output::{Format, NOBODY, Style, csv_text, json_number, json_option, json_text};
use super::reading::{self, Reading};
use super::{Answer, Failed};

/// Paths of the JSON answer, in order, for CSV.
pub const COLUMNS: [&str; 28] = [
    "athlete",
    "ladder",
    "side",
    "rung",
    "next_rung",
    "verdict",
    "prescription.movement",
    "prescription.sets",
    "prescription.reps.lo",
    "prescription.reps.hi",
    "prescription.hold_s.lo",
    "prescription.hold_s.hi",
    "prescription.reserve",
    "prescription.rest_s.lo",
    "prescription.rest_s.hi",
    "prescription.system_kg",
    "prescription.bodyweight_kg",
    "prescription.added_kg",
    "prescription.assistance_kg",
    "prescription.plates_kg",
    "reasons.rule",
    "reasons.text",
    "cautions.rule",
    "cautions.text",
    "passed_on",
    "not_before",
    "chance",
    "prescription.rung",
];

/// One rail's advice as a JSON object.
pub fn json(step: &NextStep, catalogue: &Catalogue, unit: Unit) -> Value {
    let words = Words::of(step, catalogue, unit);
    let reasons: Vec<Value> = step
        .reasons
        .iter()
        .enumerate()
        .map(|(at, found)| json!({"rule": found.rule(), "text": words.reason(found, at == 0)}))
        .collect();
    let cautions: Vec<Value> = step
        .cautions
        .iter()
        .map(|note| json!({"rule": note.rule(), "text": words.caution(note)}))
        .collect();
    let dates: Vec<String> = step.passed_on.iter().map(ToString::to_string).collect();
    json!({
        "athlete": step.athlete,
        "ladder": step.ladder,
        "side": step.rail.letter(),
        "rung": step.rung,
        "next_rung": step.next_rung,
        "verdict": step.verdict.id(),
        "prescription": step.prescription.as_ref().map(prescription),
        "reasons": reasons,
        "cautions": cautions,
        "passed_on": dates,
        "not_before": step.not_before.map(|date| date.to_string()),
        "chance": json_option(step.chance),
    })
}

fn prescription(work: &Prescription) -> Value {
    let range = json!([json_number(work.asked.lo()), json_option(work.asked.hi())]);
    let (reps, hold) = match work.asked {
        Asked::Reps(..) => (range, Value::Null),
        Asked::Hold(..) => (Value::Null, range),
    };
    let load = work.load.as_ref();
    let plates = load.map(|load| {
        load.plates
            .iter()
            .map(|plate| json_number(plate.mass().kg()))
            .collect::<Vec<_>>()
    });
    let help = load
        .and_then(|load| load.added.assistance())
        .map(crate::units::Assistance::kg);
    json!({
        "rung": work.rung,
        "movement": work.movement,
        "sets": work.sets,
        "reps": reps,
        "hold_s": hold,
        "reserve": json_option(work.reserve.map(crate::units::Reserve::reps)),
        "rest_s": [work.rest_secs.0, work.rest_secs.1],
        "system_kg": json_option(load.map(|load| load.system.kg())),
        "bodyweight_kg": json_option(work.bodyweight.map(crate::units::Bodyweight::kg)),
        "added_kg": json_option(load.map(|load| load.added.kg().max(0.0))),
        "assistance_kg": json_option(load.map(|_| help.unwrap_or(0.0))),
        "plates_kg": plates,
    })
}

/// All advice as text, a paragraph a rail, a heading an athlete.
pub fn text(
    steps: &[NextStep],
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    unit: Unit,
    style: Style,
) -> String {
    let mut text = String::new();
    let mut athlete: Option<&str> = None;
    for step in steps {
        if athlete != Some(&step.athlete) {
            if athlete.is_some() {
                text.push('\n');
            }
            text.push_str(&format!("{}\n", style.strong(&visible(&step.athlete))));
            athlete = Some(&step.athlete);
        }
        text.push_str(&paragraph(step, catalogue, plates, unit, style));
    }
    text
}

fn paragraph(
    step: &NextStep,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    unit: Unit,
    style: Style,
) -> String {
    let words = Words::of(step, catalogue, unit);
    let mut lines = vec![format!("  {}", visible(&words.step_title(step)))];
    let verdict = style.strong(step.verdict.id());
    let pad = " ".repeat(LABEL.saturating_sub(step.verdict.id().len()));
    let work = step
        .prescription
        .as_ref()
        .map(|work| advice::prescription(work, unit));
    let behind = if step.verdict == Verdict::WeighInFirst {
        format!("then {}: ", step.behind.id())
    } else {
        String::new()
    };
    let first = work.map_or_else(
        || "no work on this rung".to_owned(),
        |work| format!("{behind}{work}"),
    );
    lines.push(format!("    {verdict}{pad}{first}"));
    if let Some(load) = step.prescription.as_ref().and_then(|work| work.load.as_ref()) {
        lines.push(labelled("load", &advice::in_all(load, unit)));
    }
    // A long shot is a reason, which has the same numbers.
    if !step
        .reasons
        .iter()
        .any(|found| matches!(found, Finding::LongShot { .. }))
    {
        lines.extend(advice::outlook(step).map(|words| labelled("estimate", &words)));
    }
    for (at, finding) in step.reasons.iter().enumerate() {
        let label = match at {
            0 => "why",
            1 => "also",
            _ => "",
        };
        lines.push(labelled(label, &words.reason(finding, at == 0)));
    }
    for (at, note) in step.cautions.iter().enumerate() {
        lines.push(labelled(if at == 0 { "mind" } else { "" }, &words.caution(note)));
    }
    if let Some(date) = step.not_before {
        lines.push(labelled("not before", &crate::report::numbers::day(date)));
    }
    lines.extend(preparation(step, catalogue, plates, unit));
    lines.push(String::new());
    lines.join("\n")
}

/// Width of the labels at the left.
const LABEL: usize = 16;

fn labelled(label: &str, words: &str) -> String {
    format!("    {label:LABEL$}{}", visible(words))
}

fn preparation(step: &NextStep, catalogue: &Catalogue, plates: &PlatesOnHand, unit: Unit) -> Vec<String> {
    let Some(work) = &step.prescription else {
        return Vec::new();
    };
    let steps = warm_up(work, catalogue.movement(&work.movement), plates, false);
    let mut lines = vec![labelled(
        "warm-up",
        &steps
            .iter()
            .map(|step| advice::warm_up(step, unit))
            .collect::<Vec<_>>()
            .join("; "),
    )];
    let rung = catalogue
        .ladder(&step.ladder)
        .and_then(|ladder| ladder.rung(&work.rung));
    let companions: Vec<String> = rung
        .map(|rung| rung.companions.as_slice())
        .unwrap_or_default()
        .iter()
        .map(|companion| {
            let movement = catalogue.movement_title(&companion.movement);
            format!("{movement} ({})", companion.why)
        })
        .collect();
    if !companions.is_empty() {
        lines.push(labelled("beside", &companions.join("; ")));
    }
    lines
}

/// Runs `next`.
pub fn run(args: &NextArgs) -> Result<Answer, Failed> {
    let named_plates = reading::plates(args.plates_kg.as_deref(), args.plates_lb.as_deref())?;
    let Reading {
        book,
        catalogue,
        with_problems,
    } = reading::logbook(args.place.logbook.as_ref(), args.athlete.as_deref())?;
    let plates = reading::on_hand(&book, named_plates);
    let unit = book.unit();
    let steps = of_all(&book.logs, &catalogue, &plates, reading::day(args.place.on));
    let rows = || {
        steps
            .iter()
            .map(|step| json(step, &catalogue, unit))
            .collect::<Vec<_>>()
    };
    let text = match args.place.format {
        Format::Json => json_text(&Value::from(rows())),
        Format::Csv => csv_text(&rows(), &COLUMNS),
        Format::Text if book.logs.is_empty() => NOBODY.to_owned(),
        Format::Text => {
            let mut text = text(&steps, &catalogue, &plates, unit, Style::for_stdout());
            for log in book
                .logs
                .iter()
                .filter(|log| steps.iter().all(|step| step.athlete != log.name))
            {
                text.push_str(&without_ladder(log, &catalogue));
            }
            text
        }
    };
    Ok(Answer { text, with_problems })
}

/// What to say of somebody on no ladder: what they train, and how to join one.
fn without_ladder(log: &Log, catalogue: &Catalogue) -> String {
    let mut count: std::collections::BTreeMap<&str, usize> = std::collections::BTreeMap::new();
    for record in &log.records {
        if let Fact::Set(set) = &record.what {
            *count.entry(set.movement.as_str()).or_default() += 1;
        }
    }
    let name = visible(&log.name);
    let Some((movement, _)) = count.into_iter().max_by_key(|(_, sets)| *sets) else {
        return format!("{name} is on no ladder and has logged no set.\n");
    };
    let ladder = catalogue
        .ladders()
        .find(|ladder| ladder.rungs.iter().any(|rung| rung.movement == movement))
        .map_or("LADDER", |ladder| ladder.id.as_str());
    format!(
        "{name} trains {} and is on no ladder; join one with: rungwright log --athlete {} --place {ladder}\n",
        visible(movement),
        shell_word(&log.name)
    )
}

/// A name as a shell takes it as one word.
fn shell_word(name: &str) -> String {
    let plain = name
        .chars()
        .all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'));
    if plain {
        name.to_owned()
    } else {
        format!("'{}'", visible(name).replace('\'', "'\\''"))
    }
}
