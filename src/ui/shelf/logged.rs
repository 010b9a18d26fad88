//! Today's records.

use crate::bests::{NewBest, new_bests_by, new_bests_today};
use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::logbook::record::{Id, Load, Placed, Set};
use crate::logbook::{Fact, Log, Record};
use crate::report::belief::probability;
use crate::report::numbers::mass;
use crate::report::totals::{new_best, new_best_short as short};
use crate::strength::{Suspect, beliefs_keeping};
use crate::ui::views::LoggedLine;
use crate::units::{Rail, Unit};

use super::opened::Opened;
use super::say;

/// Today's records, newest first.
pub(super) fn today(opened: &Opened, log: &Log) -> Vec<LoggedLine> {
    let new = new_bests_today(&opened.counting(log), opened.formula());
    let suspects: Vec<Suspect> = beliefs_keeping(&opened.timeline(log), &opened.kept())
        .into_iter()
        .flat_map(|known| known.suspects)
        .collect();
    log.records
        .iter()
        .rev()
        .filter(|record| record.at.date() == opened.on)
        .map(|record| line(opened, record, &new, &suspects))
        .collect()
}

/// What to say of a set that was just logged: the bests that it brought, or confirmed.
pub(super) fn news_of(opened: &Opened, log: &Log, set: Id) -> Option<String> {
    let counted = Counted::of(&opened.book.settings);
    let new = new_bests_by(log, &opened.catalogue, counted, opened.formula(), set);
    let said: Vec<String> = new.iter().map(|best| words(opened, best)).collect();
    (!said.is_empty()).then(|| said.join(". "))
}

fn words(opened: &Opened, best: &NewBest) -> String {
    let known = opened.catalogue.movement(&best.movement);
    let title = known.map_or(best.movement.as_str(), |movement| &movement.title);
    new_best(best, title, opened.book.unit())
}

/// The newest record of the day: what undo takes back.
pub(super) fn newest<'l>(opened: &Opened, log: &'l Log) -> Option<&'l Record> {
    log.records
        .iter()
        .rev()
        .find(|record| record.at.date() == opened.on)
}

fn line(opened: &Opened, record: &Record, new: &[NewBest], suspects: &[Suspect]) -> LoggedLine {
    let (rail, what, result) = said(&opened.catalogue, opened.book.unit(), &record.what);
    LoggedLine {
        id: record.id.to_string(),
        time: say::clock_time(record.at.as_str()),
        rail: rail.filter(|rail| *rail != Rail::Both),
        what,
        result,
        best: new
            .iter()
            .find(|best| best.set == record.id)
            .map(|best| short(best, opened.book.unit())),
        doubt: suspects
            .iter()
            .find(|suspect| suspect.id == record.id)
            .map(|suspect| {
                let probability = probability(suspect.probability);
                format!("Looks like a typo, probability {probability}")
            }),
    }
}

pub(super) fn said(catalogue: &Catalogue, unit: Unit, fact: &Fact) -> (Option<Rail>, String, String) {
    match fact {
        Fact::Set(set) => of_set(catalogue, unit, set),
        Fact::WeighIn { bodyweight, .. } => (None, "Weigh-in".to_owned(), mass(bodyweight.mass(), unit)),
        Fact::Pain {
            site, side, score, ..
        } => (
            side.map(|side| Rail::from(Some(side))),
            say::capital(site.word()),
            format!("pain {score} of 10"),
        ),
        Fact::Placement {
            ladder, side, rung, ..
        } => {
            let known = catalogue.ladder(ladder);
            let title = known.map_or_else(|| ladder.clone(), |ladder| ladder.title.clone());
            let rung = match rung {
                Placed::Joined => "joined".to_owned(),
                Placed::SetAside => "set aside".to_owned(),
                Placed::On(id) => known
                    .and_then(|ladder| ladder.rung(id))
                    .map_or_else(|| id.clone(), |rung| rung.title.clone()),
            };
            (Some(Rail::from(*side)), title, rung)
        }
        Fact::Phase { kind, .. } => (None, "Phase".to_owned(), format!("{kind:?}").to_lowercase()),
        Fact::Archive { archived: true, .. } => (None, "Archived".to_owned(), "off the roster".to_owned()),
        Fact::Archive { .. } => (None, "Active".to_owned(), "on the roster".to_owned()),
        Fact::Goal { rung, .. } => (None, "Goal".to_owned(), rung.clone()),
        Fact::Note { text } => (None, text.clone(), String::new()),
        Fact::Profile { .. } => (None, "Profile".to_owned(), String::new()),
        Fact::Amend { .. } | Fact::Retract { .. } | Fact::Restore { .. } => {
            (None, "Change".to_owned(), String::new())
        }
    }
}

fn of_set(catalogue: &Catalogue, unit: Unit, set: &Set) -> (Option<Rail>, String, String) {
    let rung = set
        .ladder
        .as_deref()
        .and_then(|id| catalogue.ladder(id))
        .zip(set.rung.as_deref())
        .and_then(|(ladder, id)| ladder.rung(id));
    let title = rung
        .map(|rung| rung.title.as_str())
        .or_else(|| Some(catalogue.movement(&set.movement)?.title.as_str()))
        .unwrap_or(&set.movement);
    let load = match set.load {
        Some(Load::Added(typed)) => format!(" +{}", mass(typed.mass(), unit)),
        Some(Load::Assistance(typed)) => format!(" −{}", mass(typed.mass(), unit)),
        None => String::new(),
    };
    let is_hold = set.effort.measure() == crate::units::Measure::Hold;
    let reserve = set.left.map(|left| left.reserve().reps());
    let result = say::result(set.effort.amount(), is_hold, reserve, set.outcome);
    (
        set.side.map(|side| Rail::from(Some(side))),
        format!("{title}{load}"),
        result,
    )
}
