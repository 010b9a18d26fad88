//! Tonight's sheet: for each athlete what every rail does today, ready to be drawn, printed and typed back.
//!
//! It asks for the session as the day began, so that a sheet printed again after the first sets still says the same.

use chrono::NaiveDate;

use crate::catalogue::Catalogue;
use crate::coaching::next_step::next_steps;
use crate::coaching::roster::pains;
use crate::coaching::session::session_steps;
use crate::coaching::warm_up::warm_up;
use crate::coaching::{CareNote, NextStep, PlatesOnHand, Prescription, Verdict};
use crate::logbook::{Log, Logbook};
use crate::timeline::{Pain, Timeline};
use crate::units::{Rail, Side, Unit};

use super::advice::{asked, help, hung_mass, in_all, plates as plate_list, rest, warm_up as warm_up_words};
use super::numbers::{about, ago, day, number};
use super::words::Words;

/// The sheet of one evening.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The logbook's name.
    pub gym: String,
    /// The day.
    pub on: NaiveDate,
    /// The unit that people here think in.
    pub unit: Unit,
    /// The athletes, in the order that was asked.
    pub athletes: Vec<AthleteSheet>,
}

/// One athlete's part.
#[derive(Debug, Clone, PartialEq)]
pub struct AthleteSheet {
    /// Name on screen.
    pub name: String,
    /// The athlete's folder, which tells people of one name apart.
    pub folder: String,
    /// "78.2 kg, 3 days ago"; none without a weigh-in.
    pub weighs: Option<String>,
    /// Whether a load waits for the scale.
    pub weigh_in_first: bool,
    /// "elbow L 4", the worst first.
    pub hurts: Vec<String>,
    /// One a rail, in order of ladder, then left, right.
    pub cards: Vec<Card>,
    /// What to mind for the person, whatever the rung.
    pub care: Vec<String>,
}

/// What one rail does.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// The ladder's id.
    pub ladder: String,
    /// The ladder's title.
    pub ladder_title: String,
    /// The rail.
    pub rail: Rail,
    /// The title of the rung that is worked on.
    pub rung_title: String,
    /// The rung left for it, at step-up and step-back.
    pub from: Option<String>,
    /// The verdict.
    pub verdict: Verdict,
    /// What to do; none at pause.
    pub work: Option<Work>,
    /// The reason that decided.
    pub why: String,
    /// What to mind on this rung.
    pub mind: Vec<String>,
    /// The first day on which the days between two sessions are kept, if that is after today.
    pub not_before: Option<String>,
}

/// Sets, amounts and load.
#[derive(Debug, Clone, PartialEq)]
pub struct Work {
    /// The rung's id.
    pub rung: String,
    /// The movement's id.
    pub movement: String,
    /// The movement's title.
    pub movement_title: String,
    /// How many sets.
    pub sets: u16,
    /// "4–6", "10–30 s".
    pub asked: String,
    /// The lower end of what is asked, reps or seconds.
    pub least: f64,
    /// Whether seconds are counted.
    pub is_hold: bool,
    /// Repetitions to keep in reserve, "1".
    pub reserve: Option<String>,
    /// What hangs.
    pub load: Option<Load>,
    /// What helps or makes it harder, where that isn't a load: "A band helps".
    pub help: Option<String>,
    /// "3–5 min".
    pub rest: String,
    /// The steps before the work.
    pub warm_up: Vec<String>,
}

/// What hangs from the belt, or helps.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// "+17.5 kg", "10 kg of help", "bodyweight".
    pub hung: String,
    /// "10 + 5 + 2.5"; empty where nothing hangs.
    pub plates: String,
    /// "97.5 kg in all at 78 kg".
    pub in_all: String,
}

/// The sheet of `folders`, in that order; of everybody, by name, where none is named.
pub fn sheet(
    book: &Logbook,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
    folders: &[String],
) -> Sheet {
    let logs: Vec<&Log> = if folders.is_empty() {
        book.logs.iter().filter(|log| !log.is_archived(on)).collect()
    } else {
        let log = |folder: &String| book.logs.iter().find(|log| log.folder == *folder);
        folders.iter().filter_map(log).collect()
    };
    let unit = book.unit();
    let athletes = logs
        .into_iter()
        .map(|log| of_athlete(log, catalogue, plates, on, unit))
        .collect();
    Sheet {
        gym: gym(book),
        on,
        unit,
        athletes,
    }
}

/// The logbook's name, or its folder's.
pub fn gym(book: &Logbook) -> String {
    book.settings.name.clone().unwrap_or_else(|| {
        let folder = book.root.file_name().unwrap_or_default();
        crate::problem::visible(&folder.to_string_lossy())
    })
}

fn of_athlete(
    log: &Log,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
    unit: Unit,
) -> AthleteSheet {
    let timeline = Timeline::new(log, catalogue, on);
    let now = next_steps(&timeline, catalogue, plates);
    let steps = session_steps(log, &timeline, catalogue, plates, &now);
    let mut sore = pains(&timeline);
    sore.sort_by_key(|pain| std::cmp::Reverse(pain.score));
    AthleteSheet {
        name: log.name.clone(),
        folder: log.folder.clone(),
        weighs: timeline
            .weigh_ins
            .last()
            .map(|day| format!("{}, {}", about(day.mean.kg(), unit), ago(timeline.age(day.date)))),
        weigh_in_first: steps.iter().any(|step| step.verdict == Verdict::WeighInFirst),
        hurts: sore.iter().map(pain_words).collect(),
        cards: steps
            .iter()
            .map(|step| card(step, catalogue, plates, unit))
            .collect(),
        care: care(&steps, catalogue, unit),
    }
}

/// "elbow L 4".
fn pain_words(pain: &Pain) -> String {
    match pain.side {
        Some(side) => format!("{} {} {}", pain.site.word(), Side::letter(side), pain.score),
        None => format!("{} {}", pain.site.word(), pain.score),
    }
}

/// Whether a caution is about the person, so that it is said once and not on every card.
fn is_of_the_person(note: &CareNote) -> bool {
    matches!(
        note,
        CareNote::Minor { .. }
            | CareNote::Underweight { .. }
            | CareNote::CutRefused
            | CareNote::CutFast { .. }
            | CareNote::CutLong { .. }
            | CareNote::WeighInOdd { .. }
    )
}

fn care(steps: &[NextStep], catalogue: &Catalogue, unit: Unit) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for step in steps {
        let words = Words::of(step, catalogue, unit);
        for note in step.cautions.iter().filter(|note| is_of_the_person(note)) {
            let sentence = words.caution(note);
            if !said.contains(&sentence) {
                said.push(sentence);
            }
        }
    }
    said
}

fn card(step: &NextStep, catalogue: &Catalogue, plates: &PlatesOnHand, unit: Unit) -> Card {
    let words = Words::of(step, catalogue, unit);
    let worked = step.prescription.as_ref().map_or(&step.rung, |work| &work.rung);
    let ladder = catalogue.ladder(&step.ladder);
    Card {
        ladder: step.ladder.clone(),
        ladder_title: ladder.map_or_else(|| step.ladder.clone(), |ladder| ladder.title.clone()),
        rail: step.rail,
        rung_title: words.rung(worked),
        from: step.next_rung.is_some().then(|| words.rung(&step.rung)),
        verdict: step.verdict,
        work: step
            .prescription
            .as_ref()
            .map(|work| self::work(work, step, catalogue, plates, unit)),
        why: step
            .reasons
            .first()
            .map_or_else(String::new, |found| words.reason(found, true)),
        mind: step
            .cautions
            .iter()
            .filter(|note| !is_of_the_person(note))
            .map(|note| words.caution(note))
            .collect(),
        not_before: step.not_before.map(day),
    }
}

fn work(
    work: &Prescription,
    step: &NextStep,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    unit: Unit,
) -> Work {
    let movement = catalogue.movement(&work.movement);
    let rung = catalogue
        .ladder(&step.ladder)
        .and_then(|ladder| ladder.rung(&work.rung));
    Work {
        rung: work.rung.clone(),
        movement: work.movement.clone(),
        movement_title: movement.map_or_else(|| work.movement.clone(), |known| known.title.clone()),
        sets: work.sets,
        asked: asked(work.asked),
        least: work.asked.lo(),
        is_hold: matches!(work.asked, crate::coaching::Asked::Hold(..)),
        reserve: work.reserve.map(|reserve| number(reserve.reps(), 1)),
        load: work.load.as_ref().map(|load| Load {
            hung: hung_mass(load, unit),
            plates: plate_list(load, unit),
            in_all: in_all(load, unit),
        }),
        help: rung.and_then(|rung| help(&rung.help)),
        rest: rest(work.rest_secs),
        warm_up: warm_up(work, movement, plates, false)
            .iter()
            .map(|step| warm_up_words(step, unit))
            .collect(),
    }
}
