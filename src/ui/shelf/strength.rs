//! Strength over time of the movements of the open ladder.

use chrono::{Datelike, Days, NaiveDate};

use crate::catalogue::{Help, Ladder};
use crate::logbook::record::PhaseKind;
use crate::report::belief;
use crate::report::numbers::about;
use crate::strength::{Believed, Course, CourseSet, Likely, Suspect, course};
use crate::timeline::Timeline;
use crate::ui::views::{DotKind, StrengthDay, StrengthDot, StrengthView, SuspectView};
use crate::units::{Effort, Mass, Rail, Side, SystemLoad, Unit};

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

/// One movement and side; none where nothing is believed.
pub(super) fn view(
    opened: &Opened,
    timeline: &Timeline<'_>,
    movement: &str,
    side: Option<Side>,
) -> Option<StrengthView> {
    let share = timeline.share(opened.catalogue.movement(movement)?, None)?;
    let of = (
        opened.folder.clone().unwrap_or_default(),
        movement.to_owned(),
        side,
        share.value().to_bits(),
    );
    opened.plotted(of, || plot(opened, timeline, movement, side))
}

fn plot(
    opened: &Opened,
    timeline: &Timeline<'_>,
    movement: &str,
    side: Option<Side>,
) -> Option<StrengthView> {
    let unit = opened.book.unit();
    let from = timeline.on.checked_sub_days(Days::new(SPAN_DAYS))?;
    let course = course(timeline, movement, side, from, &opened.kept())?;
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
        words: words(&course.believed, unit),
        how: how(&course.believed, unit),
        spans: spans(&course, timeline, first),
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
                beyond: (set.suspect.is_some() && !(scale.0..=scale.1).contains(&set.shows.kg()))
                    .then(|| about(set.shows.kg(), unit)),
                kind: kind(set),
                words: said(set, unit),
            })
            .collect(),
        layoffs: course
            .layoffs
            .iter()
            .map(|(from, until)| (day(*from), day(*until)))
            .collect(),
        phases: phases(timeline, first)
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

/// Where the estimate comes from, and what the dots are.
fn how(believed: &Believed, unit: Unit) -> String {
    format!(
        "{}. {} A ring is what its reps and the reserve as given stand for by today's endurance; most have more left than they \
         say, so the estimate may lie above.",
        belief::how(believed, unit),
        super::beliefs::MEANING
    )
}

/// `Mon 16 Mar 2026: +20 kg × 5, 1 in reserve; stands for 96.4 kg in all`.
fn said(set: &CourseSet, unit: Unit) -> String {
    let day = set.date.format("%a %-d %b %Y");
    let reps = crate::units::Reps::try_from(set.reps).map(Effort::Reps);
    let load = reps.map_or_else(
        |_| String::new(),
        |reps| belief::load_times(set.added, reps, unit),
    );
    let done = format!("{load}{}", belief::ending(set.left, set.missed));
    match set.suspect {
        Some(probability) => format!(
            "{day}: {done}; looks like a typo, probability {}",
            belief::probability(probability)
        ),
        None => format!("{day}: {done}; stands for {} in all", about(set.shows.kg(), unit)),
    }
}

/// What is shaded, in sentences.
fn spans(course: &Course, timeline: &Timeline<'_>, first: NaiveDate) -> Vec<String> {
    let span = |from: NaiveDate, until: NaiveDate| {
        format!(
            "{} – {}",
            from.max(first).format("%-d %b %Y"),
            until.format("%-d %b %Y")
        )
    };
    let layoffs: Vec<String> = course
        .layoffs
        .iter()
        .map(|(from, until)| span(*from, *until))
        .collect();
    let phases: Vec<String> = phases(timeline, first)
        .map(|(kind, from, until)| format!("{} {}", phase(kind), span(from, until)))
        .collect();
    let grey = (!layoffs.is_empty())
        .then(|| format!("Grey, over two weeks without training: {}.", layoffs.join("; ")));
    let tinted = (!phases.is_empty()).then(|| format!("Tinted: {}.", phases.join("; ")));
    grey.into_iter().chain(tinted).collect()
}

/// Phases that are shaded; holding one's weight is the rule and is not.
fn phases<'t>(
    timeline: &'t Timeline<'_>,
    first: NaiveDate,
) -> impl Iterator<Item = (PhaseKind, NaiveDate, NaiveDate)> + 't {
    let all = timeline.phases.spans(timeline.on).into_iter();
    all.filter(move |(kind, _, until)| *until > first && *kind != PhaseKind::Hold)
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
    let words = |suspect: &Suspect| match suspect.likely {
        Some(_) => belief::suspected(suspect, unit),
        None => format!(
            "{}; nothing near it would fit. If it is one: rungwright amend {}",
            belief::suspected(suspect, unit),
            suspect.id
        ),
    };
    let each = course.believed.suspects.iter().map(|suspect| SuspectView {
        id: suspect.id.to_string(),
        words: words(suspect),
        mend: suspect.likely.as_ref().map(mend),
    });
    // The newest first: it is the one that somebody remembers.
    each.rev().collect()
}

fn days_from(today: NaiveDate, date: NaiveDate) -> f64 {
    i32::try_from((date - today).num_days()).map_or(0.0, f64::from)
}
