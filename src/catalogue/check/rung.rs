//! One rung by itself: its names, its help, its demand; work, standard and entry have files of their own.

use super::movement::HIGHEST_BOX_CM;
use super::{Findings, Movements, Spot, entry, known_movement, work};
use crate::catalogue::read::RawRung;
use crate::catalogue::{Help, Movement, Sides};
use crate::units::Demand;

/// The mistakes of one rung that need no other rung to be seen.
pub(in crate::catalogue) fn rung(found: &mut Findings, spot: &Spot, rung: &RawRung, movements: &Movements) {
    found.unless_kebab(spot.field("id"), &rung.id, "rung");
    found.unless_written(spot.field("title"), &rung.title, "title");
    let movement = known_movement(found, spot.field("movement"), &rung.movement, movements);
    help(found, spot.field("help"), &rung.help, movement);
    work::work(found, &spot.field("work"), &rung.work, movement);
    work::standard(found, &spot.field("standard"), rung, movement);
    entry::entries(found, &spot.field("entry"), rung, movements);
    for (at, companion) in rung.companions.iter().enumerate() {
        let spot = spot.field("companions").item(at);
        known_movement(found, spot.field("movement"), &companion.movement, movements);
        found.unless_written(spot.field("why"), &companion.why, "reason of a companion");
    }
    let twice = |(at, caution)| rung.cautions.iter().take(at).any(|before| before == caution);
    if let Some((at, caution)) = rung.cautions.iter().enumerate().find(|one| twice(*one)) {
        found.warning(
            spot.field("cautions").item(at),
            format!("{caution:?} is listed twice"),
            "delete one of them",
        );
    }
    demand(found, spot.field("demand"), rung.demand.as_ref());
}

fn help(found: &mut Findings, spot: Spot, help: &Help, movement: Option<&Movement>) {
    match help {
        Help::Added => {
            if let Some(movement) = movement.filter(|movement| movement.share().is_none()) {
                found.error(
                    spot,
                    format!("{} has no system load, so no load can decide", movement.id),
                    "leave help out, or name another movement",
                );
            }
        }
        Help::FingerHelp(fingers) if !(1..=4).contains(fingers) => found.error(
            spot,
            format!("{fingers} fingers can't help: a free hand has 1 to 4 and a thumb"),
            "give 1 to 4",
        ),
        Help::FingerHelp(_) => {
            if let Some(movement) = movement.filter(|movement| movement.sides == Sides::Together) {
                found.error(
                    spot,
                    format!("{} leaves no hand free to help", movement.id),
                    "name a movement of one arm, or another help",
                );
            }
        }
        Help::HandsRaised(cm) | Help::FeetRaised(cm) | Help::Box(cm) => box_height(found, spot, *cm),
        Help::Lean(degrees) if !(1..=89).contains(degrees) => found.error(
            spot,
            format!("nobody leans {degrees} degrees back"),
            "give degrees from upright, 1 to 89",
        ),
        Help::Variation(words) => found.unless_written(spot, words, "variation"),
        _ => {}
    }
}

fn box_height(found: &mut Findings, spot: Spot, cm: u16) {
    if (1..=HIGHEST_BOX_CM).contains(&cm) {
        return;
    }
    let in_cm = cm / 10;
    let mend = if (1..=HIGHEST_BOX_CM).contains(&in_cm) {
        format!("heights are in centimetres: is it {in_cm} cm, written in millimetres?")
    } else {
        format!("give centimetres from 1 to {HIGHEST_BOX_CM}")
    };
    found.error(spot, format!("there is no box of {cm} cm"), mend);
}

fn demand(found: &mut Findings, spot: Spot, demand: Option<&(f64, String)>) {
    let Some((value, source)) = demand else { return };
    if Demand::new(*value).is_err() {
        let mend = if *value > 10.0 && *value <= 300.0 {
            format!("1.0 is the goal, so {value} per cent of it is {}", value / 100.0)
        } else {
            "give a number over 0; 1.0 is the goal, or leave demand out to have it computed".to_owned()
        };
        found.error(spot.clone(), format!("a demand of {value} is out of range"), mend);
    }
    if source.trim().is_empty() {
        found.warning(
            spot,
            "the demand names no source",
            "say what it rests on, for example (0.65, \"common practice, no source\")",
        );
    }
}
