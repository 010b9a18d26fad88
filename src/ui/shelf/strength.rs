//! Strength over time of the movements of the open ladder.

use chrono::{Datelike, Days, NaiveDate};

use crate::catalogue::{Help, Ladder};
use crate::logbook::record::PhaseKind;
use crate::report::belief;
use crate::strength::{Believed, Course, CourseSet, Likely, Suspect, belief_of, course};
use crate::timeline::Timeline;
use crate::ui::views::{DotKind, StrengthDay, StrengthDot, StrengthView, SuspectView};
use crate::units::{Mass, Rail, Side, SystemLoad, Unit};

use super::opened::Opened;

/// Days that the plot reaches back.
const SPAN_DAYS: u64 = 365;

/// The movements of a ladder that something is believed of, each with its sides.
pub(super) fn views(opened: &Opened, timeline: &Timeline<'_>, ladder: &Ladder) -> Vec<StrengthView> {
    let mut movements: Vec<&str> = Vec::new();
    for rung in ladder.rungs.iter().rev() {
        let plain = matches!(rung.help, Help::Added | Help::Plain) && !rung.work.range.is_hold();
        if plain && !movements.contains(&rung.movement.as_str()) {
            movements.push(&rung.movement);
        }
    }
    let sides = [None, Some(Side::Left), Some(Side::Right)];
    movements
        .into_iter()
        .flat_map(|movement| sides.map(|side| (movement, side)))
        .filter_map(|(movement, side)| view(opened, timeline, movement, side))
        .collect()
}

fn view(
    opened: &Opened,
    timeline: &Timeline<'_>,
    movement: &str,
    side: Option<Side>,
) -> Option<StrengthView> {
    let unit = opened.book.unit();
    let from = timeline.on.checked_sub_days(Days::new(SPAN_DAYS))?;
    let believed = belief_of(timeline, movement, side)?;
    let course = course(timeline, movement, side, from)?;
    let first = course.days.first()?.date;
    let day = |date: NaiveDate| days_from(timeline.on, date.max(first));
    let mass = |load: SystemLoad| load.mass().in_unit(unit);
    let title = opened
        .catalogue
        .movement(movement)
        .map_or(movement, |known| &known.title);
    let scale = scale(&course);
    let weighed = timeline
        .weigh_ins
        .days()
        .iter()
        .filter(|weighed| !weighed.odd && weighed.date >= first);
    Some(StrengthView {
        title: match side {
            None => title.to_owned(),
            Some(Side::Left) => format!("{title}, left"),
            Some(Side::Right) => format!("{title}, right"),
        },
        rail: Rail::from(side),
        unit: unit.sign().to_owned(),
        words: words(&believed, unit),
        days: course
            .days
            .iter()
            .map(|point| StrengthDay {
                day: day(point.date),
                middle: mass(point.one_rep_max),
                bands: point.bands.map(|(low, high)| (mass(low), mass(high))),
            })
            .collect(),
        sets: course
            .sets
            .iter()
            .filter(|set| set.date >= first && set.reps > 0)
            .map(|set| StrengthDot {
                day: day(set.date),
                shows: mass(match set.suspect {
                    Some(_) => SystemLoad::new(Mass::from_kg(set.shows.kg().clamp(scale.0, scale.1))),
                    None => set.shows,
                }),
                kind: kind(set),
            })
            .collect(),
        layoffs: course
            .layoffs
            .iter()
            .map(|(from, until)| (day(*from), day(*until)))
            .collect(),
        phases: timeline
            .phases
            .spans(timeline.on)
            .into_iter()
            .filter(|(kind, _, until)| *until > first && *kind != PhaseKind::Hold)
            .map(|(kind, from, until)| (day(from), day(until), phase(kind)))
            .collect(),
        bodyweight: weighed
            .map(|weighed| (day(weighed.date), weighed.mean.mass().in_unit(unit)))
            .collect(),
        suspects: suspects(&course, unit),
        today: timeline.on.num_days_from_ce(),
    })
}

/// Lowest and highest of what is believed and of sound sets, kg: a slip is drawn at the edge, so that the rest can be read.
fn scale(course: &Course) -> (f64, f64) {
    let bands = course.days.iter().filter_map(|day| day.bands.last());
    let ends = bands.flat_map(|(low, high)| [low.kg(), high.kg()]);
    let sound = course
        .sets
        .iter()
        .filter(|set| set.suspect.is_none() && set.reps > 0);
    ends.chain(sound.map(|set| set.shows.kg()))
        .fold((f64::MAX, 0.0), |(low, high), kg| (low.min(kg), high.max(kg)))
}

/// The last lines of [`belief::lines`] are about typos, which stand beside their keys here.
fn words(believed: &Believed, unit: Unit) -> Vec<String> {
    let mut lines = belief::lines(believed, unit);
    lines.truncate(lines.len().saturating_sub(believed.suspects.len()));
    lines
}

fn kind(set: &CourseSet) -> DotKind {
    match (set.suspect, set.missed, set.reps) {
        (Some(_), _, _) => DotKind::Suspect,
        (None, true, _) => DotKind::Missed,
        (None, false, 1) => DotKind::Single,
        (None, false, _) => DotKind::FromReps,
    }
}

fn phase(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::Cut => "cut",
        PhaseKind::Hold => "hold",
        PhaseKind::Gain => "gain",
        PhaseKind::Deload => "deload",
    }
}

fn suspects(course: &Course, unit: Unit) -> Vec<SuspectView> {
    let mend = |likely: &Likely| format!("Make it {}", belief::likely(likely, unit));
    let each = course.suspects.iter().map(|suspect: &Suspect| SuspectView {
        id: suspect.id.to_string(),
        words: belief::suspected(suspect, unit),
        mend: suspect.likely.as_ref().map(mend),
    });
    // The newest first: it is the one that somebody remembers.
    each.rev().collect()
}

fn days_from(today: NaiveDate, date: NaiveDate) -> f64 {
    i32::try_from((date - today).num_days()).map_or(0.0, f64::from)
}
