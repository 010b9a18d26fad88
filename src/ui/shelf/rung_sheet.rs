//! The sheet of a rung: demand, standard, entry, work, last work, where to fall back, companions, care, source.

use crate::body::RungDemand;
use crate::catalogue::{Amount, Companion, Entry, Ladder, Rung};
use crate::coaching::entry::holds;
use crate::coaching::progress::{Progress, last_time};
use crate::coaching::standing::Line;
use crate::report::numbers::{counted, day, number};
use crate::timeline::Timeline;
use crate::ui::views::{Phrase, SheetLine, SheetSection, SheetView};
use crate::units::Rail;

use super::beliefs::{self, Beliefs};
use super::opened::Opened;
use super::say;

/// What every sheet of a ladder is made from.
pub(super) struct Sheets<'s, 'a> {
    pub opened: &'s Opened,
    pub timeline: &'s Timeline<'a>,
    pub ladder: &'s Ladder,
    pub climbs: &'s [(Rail, Vec<Progress<'s>>)],
    pub beliefs: &'s Beliefs,
}

/// The sheet of one rung.
pub(super) fn sheet(sheets: &Sheets<'_, '_>, rung: &Rung, demand: Option<&RungDemand>) -> SheetView {
    let (chances, hows) = sheets.beliefs.chances.get(&rung.id).cloned().unwrap_or_default();
    let how = beliefs::together(&sheets.beliefs.how);
    let explained = |name: &str| match name {
        "Chance" => Some(format!(
            "{} Each is the chance of that many in one fresh set to failure today. {}",
            beliefs::together(&hows),
            beliefs::MEANING
        )),
        "Holds you back" => Some(format!("{how} {}", held_back_means())),
        "Estimate" => Some(format!("{how} {}", beliefs::MEANING)),
        "Forecast" => Some(format!("{how} {} {}", beliefs::MEANING, beliefs::FORECAST)),
        _ => None,
    };
    let sections = [
        ("Demand", demand.map_or_else(Vec::new, of_demand)),
        ("Standard", of_standard(sheets, rung)),
        ("Entry", of_entry(sheets, rung)),
        ("Work", of_work(rung)),
        ("Chance", chances),
        ("Holds you back", sheets.beliefs.held_back.clone()),
        ("Last work", of_last(sheets, rung)),
        ("Fall back", of_fall_back(sheets, rung)),
        ("Beside it", of_companions(sheets, rung)),
        ("Estimate", sheets.beliefs.evidence.clone()),
        ("Forecast", sheets.beliefs.forecasts.clone()),
        ("Care", of_care(sheets, rung)),
        (
            "Source",
            sheets.ladder.sources.iter().map(|text| quiet(text)).collect(),
        ),
    ];
    SheetView {
        sections: sections
            .into_iter()
            .filter(|(_, lines)| !lines.is_empty())
            .map(|(name, lines)| SheetSection {
                name: name.to_owned(),
                lines,
                how: explained(name),
            })
            .collect(),
        demand_band: demand
            .and_then(|demand| demand.demand)
            .map(|band| (band.low(), band.high())),
    }
}

/// Companions by name: where the window is narrow or zoomed, the drawing has no room for theirs.
fn of_companions(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    let catalogue = &sheets.opened.catalogue;
    let line = |companion: &Companion| {
        let movement = catalogue.movement(&companion.movement);
        let title = movement.map_or(companion.movement.as_str(), |movement| &movement.title);
        SheetLine::words(format!("{title}: {}", companion.why))
    };
    rung.companions.iter().map(line).collect()
}

fn held_back_means() -> &'static str {
    crate::report::rules::doc("held-back")
}

fn quiet(text: &str) -> SheetLine {
    SheetLine::words(text).quiet()
}

fn of_demand(demand: &RungDemand) -> Vec<SheetLine> {
    let mut lines = Vec::new();
    if let Some(band) = demand.demand {
        let (low, high) = (format!("{:.2}", band.low()), format!("{:.2}", band.high()));
        let range = if low == high {
            String::new()
        } else {
            format!(" ({low}–{high})")
        };
        lines.push(SheetLine::words(
            Phrase::strong(format!("{:.2}", band.centre())).then(format!(" of the goal{range}")),
        ));
    }
    lines.push(SheetLine::words(demand.text()).quiet());
    lines
}

fn of_standard(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    let standard = &rung.standard;
    let mut words = String::new();
    if standard.days > 1 {
        words.push_str(&format!(", on {} separate days", standard.days));
    }
    if sheets.ladder.is_sided() {
        let unit = if rung.work.range.is_hold() { "s" } else { "rep" };
        words.push_str(&format!(", hands within {} {unit}", number(standard.side_gap, 1)));
    }
    let mut lines = vec![SheetLine::words(Phrase::strong(say::standard(rung)).then(words))];
    for (rail, climb) in sheets.climbs {
        let Some(progress) = climb.iter().find(|progress| progress.rung.id == rung.id) else {
            continue;
        };
        let done = say::few(progress.met_on.len()).min(standard.days);
        let words = match progress.met_on.last() {
            Some(last) => format!("{done} of {} days, {}", standard.days, day(*last)),
            None => format!("0 of {}", counted(standard.days, "day")),
        };
        lines.push(SheetLine {
            days: Some((done, standard.days)),
            rail: rail.side().map(|side| Rail::from(Some(side))),
            ..SheetLine::words(words)
        });
    }
    lines
}

fn of_entry(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    rung.entry
        .iter()
        .map(|entry| {
            let words = entry_words(sheets, entry);
            let missing: Vec<&str> = sheets
                .climbs
                .iter()
                .filter(|(rail, _)| !holds(sheets.timeline, entry, *rail))
                .map(|(rail, _)| match rail {
                    Rail::Left => "left",
                    Rail::Right => "right",
                    Rail::Both => "yet",
                })
                .collect();
            if missing.is_empty() {
                SheetLine::words(Phrase::strong("Holds: ").then(words))
            } else {
                SheetLine::words(
                    Phrase::plain(words).then(format!(" — not logged {}", missing.join(" and "))),
                )
            }
        })
        .collect()
}

fn entry_words(sheets: &Sheets<'_, '_>, entry: &Entry) -> String {
    let movement = sheets
        .opened
        .catalogue
        .movement(&entry.movement)
        .map_or(entry.movement.as_str(), |movement| &movement.title);
    let load = entry.ratio.map_or_else(String::new, |ratio| {
        format!(" at {} × bodyweight", number(ratio, 2))
    });
    match entry.at_least {
        Amount::Reps(reps) => format!("{movement}, {} reps{load}", reps.count()),
        Amount::Seconds(seconds) => format!("{movement}, {} s{load}", number(seconds.value(), 1)),
    }
}

fn of_work(rung: &Rung) -> Vec<SheetLine> {
    let work = &rung.work;
    let reserve = work.reserve.map_or_else(String::new, |reserve| {
        format!(", {} in reserve", number(reserve.reps(), 1))
    });
    let mut lines = vec![SheetLine::words(format!(
        "{} × {}{reserve}; rest {}; {} a week",
        work.sets,
        say::range(work.range),
        crate::report::advice::rest(work.rest_secs),
        counted(work.exposures_a_week, "day"),
    ))];
    lines.extend(say::help(&rung.help).map(|words| SheetLine::words(words).quiet()));
    lines
}

fn of_last(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    let tomorrow = sheets.opened.on.succ_opt().unwrap_or(sheets.opened.on);
    sheets
        .climbs
        .iter()
        .filter_map(|(rail, _)| {
            let (date, sets) = last_time(sheets.timeline, rung, *rail, tomorrow)?;
            Some(SheetLine {
                rail: rail.side().map(|side| Rail::from(Some(side))),
                ..SheetLine::words(format!("{}: {}", day(date), say::amounts(&sets)))
            })
        })
        .collect()
}

fn of_fall_back(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    Line::of(sheets.ladder, sheets.timeline)
        .below(rung)
        .map(|below| SheetLine::words(below.title.as_str()))
        .into_iter()
        .collect()
}

fn of_care(sheets: &Sheets<'_, '_>, rung: &Rung) -> Vec<SheetLine> {
    let kinds = rung
        .cautions
        .iter()
        .map(|caution| crate::report::words::rung_caution(*caution).to_owned());
    let whole = sheets.ladder.cautions.iter().cloned();
    kinds.chain(whole).map(SheetLine::words).collect()
}
