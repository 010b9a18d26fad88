//! First start: what it offers, and the logbook it makes.

use std::path::PathBuf;

use crate::catalogue::{Catalogue, Help, Ladder, Movement};
use crate::clock;
use crate::coaching::entry::begin_at;
use crate::coaching::standing::rails;
use crate::logbook::record::{Placed, Set, Sex};
use crate::logbook::writer::{Content, LOCK_WAIT, refuse_for_writing};
use crate::logbook::{Fact, Log, Machine, Name, Settings, Writer, Written};
use crate::timeline::Timeline;
use crate::ui::book::NewLogbook;
use crate::ui::views::{FirstView, LadderChoice};
use crate::units::{Measure, Rail, Typed, Unit};

use super::write::{bodyweight, effort, records};

/// How many movements are asked about.
const QUESTIONS: usize = 4;

/// What first start offers.
pub(super) fn view(machine: &Machine, problem: Option<String>) -> FirstView {
    FirstView {
        demo_words: "Invented athletes and a year of their training.".to_owned(),
        ladders: Catalogue::shipped().ladders().map(choice).collect(),
        new_folder: crate::problem::visible(&new_folder(machine).to_string_lossy()),
        problem,
    }
}

/// Where a new logbook lies: the usual folder, or beside it where that is taken.
pub(super) fn new_folder(machine: &Machine) -> PathBuf {
    let usual = machine.places().default_logbook();
    let is_free = |folder: &PathBuf| matches!(refuse_for_writing(machine, folder), Ok(Content::Nothing));
    if is_free(&usual) {
        return usual;
    }
    (2..100u8)
        .map(|nth| usual.with_file_name(format!("logbook-{nth}")))
        .find(is_free)
        .unwrap_or(usual)
}

fn choice(ladder: &Ladder) -> LadderChoice {
    LadderChoice {
        id: ladder.id.clone(),
        title: ladder.title.clone(),
        goal: ladder.goal.clone(),
        sided: ladder.is_sided(),
        rungs: ladder.main_line().map(|rung| rung.title.clone()).collect(),
        questions: questions(ladder)
            .into_iter()
            .map(|movement| (movement.title.clone(), movement.measure == Measure::Hold))
            .collect(),
    }
}

/// The plain movements of the lower rungs and of what they ask, from the ground up.
fn questions(ladder: &Ladder) -> Vec<&'static Movement> {
    let catalogue = Catalogue::shipped();
    let mut asked: Vec<&Movement> = Vec::new();
    for rung in ladder.main_line() {
        let plain = matches!(rung.help, Help::Added | Help::Plain).then_some(&rung.movement);
        let entries = rung.entry.iter().map(|entry| &entry.movement);
        for id in entries.chain(plain) {
            let new = catalogue
                .movement(id)
                .filter(|movement| asked.iter().all(|known| known.id != movement.id));
            asked.extend(new);
        }
    }
    asked.truncate(QUESTIONS);
    asked
}

/// Makes a logbook, and says where it lies.
pub(super) fn make(
    machine: &Machine,
    device: &str,
    at: &Written,
    new: &NewLogbook,
) -> Result<PathBuf, String> {
    let name = Name::parse(&new.name).map_err(|error| error.to_string())?;
    let unit = if new.in_lb { Unit::Lb } else { Unit::Kg };
    let settings = settings(new, unit)?;
    let facts = facts(new, unit, at, &name)?;
    let records = records(facts, at, None, device);
    let root = new_folder(machine);
    let now = clock::now().to_utc();
    let (mut writer, _) = Writer::lock(machine, &root, device.to_owned(), now, LOCK_WAIT)
        .map_err(|trouble| trouble.to_string())?;
    writer
        .write_settings(&settings)
        .and_then(|()| writer.append(&name, &records).map(|_| ()))
        .map_err(|trouble| trouble.to_string())?;
    Ok(root)
}

fn settings(new: &NewLogbook, unit: Unit) -> Result<Settings, String> {
    let typed = |value: &f64| Typed::new(*value, unit).map_err(|error| error.to_string());
    Ok(Settings {
        name: Some(new.name.clone()),
        plates: new.plates.iter().map(typed).collect::<Result<_, _>>()?,
        gear: Some(typed(&new.gear)?).filter(|gear| gear.value() > 0.0),
        ..Settings::fresh(unit)
    })
}

/// Who it is, what the scale said, what can be done today, and the rung that follows from it.
fn facts(new: &NewLogbook, unit: Unit, at: &Written, name: &Name) -> Result<Vec<Fact>, String> {
    let mut facts = vec![Fact::Profile {
        name: Some(name.as_str().to_owned()),
        born: new.born.map(Written::day),
        sex: match new.sex {
            Some("female") => Some(Sex::Female),
            Some("male") => Some(Sex::Male),
            _ => None,
        },
        height_cm: new.height_cm,
    }];
    if let Some(value) = new.bodyweight {
        facts.push(Fact::WeighIn {
            bodyweight: bodyweight(value, unit)?,
            note: None,
        });
    }
    let ladder = new
        .ladder
        .as_deref()
        .and_then(|id| Catalogue::shipped().ladder(id));
    let Some(ladder) = ladder else { return Ok(facts) };
    let questions = questions(ladder);
    for (nth, amounts) in &new.today {
        let Some(movement) = questions.get(*nth) else {
            continue;
        };
        facts.extend(answers(movement, *amounts)?);
    }
    facts.extend(placements(ladder, &facts, at, name));
    Ok(facts)
}

/// One set, or one a side.
fn answers(movement: &Movement, amounts: [Option<f64>; 2]) -> Result<Vec<Fact>, String> {
    let set = |rail: Rail, amount: f64| -> Result<Fact, String> {
        Ok(Fact::Set(Set {
            movement: movement.id.as_str().into(),
            side: rail.side(),
            load: None,
            effort: effort(amount, movement.measure == Measure::Hold)?,
            left: None,
            outcome: Default::default(),
            bodyweight: None,
            ladder: None,
            rung: None,
            note: None,
        }))
    };
    let [left, right] = amounts;
    if movement.is_sided() {
        let sides = [(Rail::Left, left), (Rail::Right, right)];
        return sides
            .into_iter()
            .filter_map(|(rail, amount)| Some(set(rail, amount?)))
            .collect();
    }
    let best = left.into_iter().chain(right).reduce(f64::max);
    best.map(|amount| set(Rail::Both, amount)).into_iter().collect()
}

/// Each rail on the rung that the rules begin at.
fn placements(ladder: &Ladder, facts: &[Fact], at: &Written, name: &Name) -> Vec<Fact> {
    let log = Log {
        name: name.as_str().to_owned(),
        folder: name.folder(),
        records: records(facts.to_vec(), at, None, ""),
    };
    let timeline = Timeline::new(&log, Catalogue::shipped(), at.date());
    let rails = rails(ladder);
    rails
        .iter()
        .filter_map(|rail| {
            let other = rails.iter().find(|other| *other != rail);
            let begins = begin_at(&timeline, ladder, *rail, other.map(|other| (*other, None)))?;
            Some(Fact::Placement {
                ladder: ladder.id.clone(),
                side: rail.side(),
                rung: Placed::On(begins.rung.id.clone()),
                why: None,
            })
        })
        .collect()
}
