//! The fields of a record that can be amended, and what is typed into them as cells of a row.

use std::sync::Arc;

use crate::catalogue::Site;
use crate::logbook::exchange::{Column, OneRow, values};
use crate::logbook::{Fact, Log, Name, Record};
use crate::ui::shelf::opened::Opened;
use crate::ui::views::{Choice, FieldView};
use crate::units::Unit;

pub(super) fn of(opened: &Opened, log: &Log, record: &Record) -> Vec<FieldView> {
    let cells = values(&log.name, record);
    let value = |column: Column| {
        let found = cells.iter().find(|(other, _)| *other == column);
        found.map_or_else(String::new, |(_, text)| text.clone())
    };
    let has = |column: Column| cells.iter().any(|(other, _)| *other == column);
    let mass = |kg: Column, lb: Column| match (value(kg), value(lb)) {
        (kg, lb) if kg.is_empty() && lb.is_empty() => String::new(),
        (kg, lb) if lb.is_empty() => format!("{kg} kg"),
        (_, lb) => format!("{lb} lb"),
    };
    let field = |column: Column, label: &'static str, choices: Vec<Choice>| FieldView {
        column,
        label,
        value: match column {
            Column::AddedKg => mass(Column::AddedKg, Column::AddedLb),
            Column::BodyweightKg => mass(Column::BodyweightKg, Column::BodyweightLb),
            Column::Athlete => match &record.what {
                Fact::Profile { name, .. } => name.clone().unwrap_or_default(),
                _ => String::new(),
            },
            column => value(column),
        },
        choices: Arc::new(choices),
    };
    let typed = |column, label| field(column, label, Vec::new());
    let mut fields = vec![typed(Column::Date, "Day, or day and time")];
    match &record.what {
        Fact::Set(_) => {
            let reserve = if has(Column::Rpe) {
                typed(Column::Rpe, "Effort, RPE 5 to 10 in halves")
            } else {
                typed(Column::Rir, "In reserve, reps; empty if unknown")
            };
            fields.extend([
                field(Column::Movement, "Movement", movements(opened)),
                field(Column::Side, "Side", sides()),
                typed(Column::AddedKg, "Load, like 20 kg or 45 lb; help is below zero"),
                typed(Column::Reps, "Reps"),
                typed(Column::HoldS, "Held, seconds"),
                reserve,
                field(Column::Outcome, "How it ended", outcomes()),
                typed(Column::BodyweightKg, "Bodyweight, if weighed then, kg or lb"),
                field(Column::Ladder, "Ladder", ladders(opened)),
                field(Column::Rung, "Rung", rungs(opened, false)),
            ]);
        }
        Fact::WeighIn { .. } => {
            fields.push(typed(Column::BodyweightKg, "Bodyweight, like 74.6 kg or 165 lb"))
        }
        Fact::Pain { .. } => fields.extend([
            field(Column::PainSite, "Where", words(&Site::ALL.map(Site::word))),
            field(Column::Side, "Side", sides()),
            typed(Column::Pain, "Pain, 0 to 10"),
        ]),
        Fact::Placement { .. } => fields.extend([
            field(Column::Ladder, "Ladder", ladders(opened)),
            field(Column::Side, "Side", sides()),
            field(Column::Rung, "Rung", rungs(opened, true)),
        ]),
        Fact::Phase { .. } => {
            fields.push(field(
                Column::Phase,
                "Phase",
                words(&["cut", "hold", "gain", "deload"]),
            ));
        }
        Fact::Archive { .. } => fields.push(field(Column::Phase, "Roster", words(&["archived", "active"]))),
        Fact::Goal { .. } => fields.extend([
            field(Column::Goal, "Rung to reach", goals(opened)),
            typed(Column::GoalBy, "By, a day; may stay empty"),
        ]),
        Fact::Profile { .. } => fields.extend([
            typed(Column::Athlete, "Name"),
            typed(Column::Born, "Born, like 1990-05-31"),
            field(Column::Sex, "Sex", unsaid(words(&["female", "male"]))),
            typed(Column::HeightCm, "Height, cm"),
        ]),
        Fact::Note { .. } | Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {}
    }
    if !matches!(record.what, Fact::Profile { .. }) {
        fields.push(typed(Column::Note, "Note"));
    }
    fields
}

fn choice(value: &str, title: &str) -> Choice {
    Choice {
        value: value.to_owned(),
        title: title.to_owned(),
        of: None,
    }
}

fn words(all: &[&str]) -> Vec<Choice> {
    all.iter()
        .map(|word| choice(word, &crate::ui::shelf::say::capital(word)))
        .collect()
}

fn unsaid(mut choices: Vec<Choice>) -> Vec<Choice> {
    choices.insert(0, choice("", "Unsaid"));
    choices
}

fn sides() -> Vec<Choice> {
    vec![choice("", "None"), choice("L", "Left"), choice("R", "Right")]
}

fn outcomes() -> Vec<Choice> {
    ["success", "fail", "form"]
        .map(|word| choice(word, outcome_title(word)))
        .into()
}

/// An outcome as it is said on screen.
pub(super) fn outcome_title(word: &str) -> &str {
    match word {
        "success" => "Done",
        "fail" => "Missed",
        "form" => "Standard not kept",
        other => other,
    }
}

fn movements(opened: &Opened) -> Vec<Choice> {
    let movements = opened.catalogue.movements();
    let mut all: Vec<Choice> = movements.map(|known| choice(&known.id, &known.title)).collect();
    all.sort_by(|one, other| one.title.cmp(&other.title));
    all
}

fn ladders(opened: &Opened) -> Vec<Choice> {
    let ladders = opened.catalogue.ladders();
    let mut all: Vec<Choice> = ladders.map(|known| choice(&known.id, &known.title)).collect();
    all.sort_by(|one, other| one.title.cmp(&other.title));
    all.insert(0, choice("", "None"));
    all
}

fn rungs(opened: &Opened, is_placed: bool) -> Vec<Choice> {
    let mut all = vec![choice("", if is_placed { "As the rules say" } else { "None" })];
    if is_placed {
        all.push(choice("none", "Set aside"));
    }
    for ladder in opened.catalogue.ladders() {
        all.extend(ladder.rungs.iter().map(|rung| Choice {
            of: Some(ladder.id.clone()),
            ..choice(&rung.id, &rung.title)
        }));
    }
    all
}

fn goals(opened: &Opened) -> Vec<Choice> {
    let of = |ladder: &crate::catalogue::Ladder| -> Vec<Choice> {
        let goal = |rung: &crate::catalogue::Rung| {
            choice(
                &format!("{}/{}", ladder.id, rung.id),
                &format!("{}: {}", ladder.title, rung.title),
            )
        };
        ladder.rungs.iter().map(goal).collect()
    };
    let mut all: Vec<Choice> = opened.catalogue.ladders().flat_map(of).collect();
    all.sort_by(|one, other| one.title.cmp(&other.title));
    all
}

/// A profile's name among what is typed: none if it is not.
pub(in crate::ui::shelf) fn renamed(typed: &[(Column, String)]) -> Result<Option<Option<Name>>, String> {
    let Some((_, text)) = typed.iter().find(|(column, _)| *column == Column::Athlete) else {
        return Ok(None);
    };
    if text.trim().is_empty() {
        return Ok(Some(None));
    }
    Name::parse(text)
        .map(|name| Some(Some(name)))
        .map_err(|error| error.to_string())
}

/// Puts what is typed into a row. A mass without a unit is in `unit`.
pub(in crate::ui::shelf) fn put(row: &mut OneRow, typed: &[(Column, String)], unit: Unit) {
    for (column, text) in typed {
        match column {
            Column::Athlete => {}
            Column::AddedKg => put_mass(row, (Column::AddedKg, Column::AddedLb), text, unit),
            Column::BodyweightKg => put_mass(row, (Column::BodyweightKg, Column::BodyweightLb), text, unit),
            Column::Rir | Column::Reps | Column::HoldS | Column::HeightCm | Column::Rpe => {
                row.put(*column, &with_point(text));
            }
            column => row.put(*column, text),
        }
    }
}

fn put_mass(row: &mut OneRow, (kg, lb): (Column, Column), text: &str, unit: Unit) {
    let text = with_point(text);
    let text = text.trim();
    let end = text.len().saturating_sub(2);
    let said = text.split_at_checked(end).and_then(|(number, sign)| {
        let unit = [Unit::Kg, Unit::Lb]
            .into_iter()
            .find(|unit| unit.sign().eq_ignore_ascii_case(sign))?;
        Some((number, unit))
    });
    let (number, unit) = said.unwrap_or((text, unit));
    let (column, other) = match unit {
        Unit::Kg => (kg, lb),
        Unit::Lb => (lb, kg),
    };
    row.put(other, "");
    row.put(column, number);
}

/// Digits as a person types them, as import reads them: a comma is a decimal mark and − is a minus.
fn with_point(text: &str) -> String {
    text.replace(',', ".").replace('−', "-")
}
