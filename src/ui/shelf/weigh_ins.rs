//! Weigh-ins from the core: days, line, phases, cautions, and the records behind them.

use std::sync::Arc;

use chrono::{Datelike, NaiveDate};

use crate::coaching::care;
use crate::logbook::Fact;
use crate::logbook::record::{PhaseKind, Set};
use crate::report::numbers::{about, ago, counted, day, days, kg, mass, number};
use crate::report::words::Words;
use crate::timeline::{TREND_DAYS, TREND_SPAN, TREND_WINDOW, Timeline, WeighDay};
use crate::ui::views::{JournalLine, JournalView, WeighInsView};
use crate::units::{Mass, Typed, Unit};

use super::journal;
use super::opened::Opened;

pub(super) fn view(opened: &Opened, read_only: Option<&str>) -> Option<WeighInsView> {
    let log = opened.open_log()?;
    let all = journal::view(opened, read_only)?;
    let timeline = opened.timeline(log);
    let unit = opened.book.unit();
    let on = opened.on;
    let shown = |kilograms: f64| Mass::from_kg(kilograms).in_unit(unit);
    let trend = timeline.weigh_ins.trend(on);
    let line = trend.map(|trend| {
        let first = from(on, trend.since);
        [
            (first, shown(trend.kg_today + trend.kg_a_week * first / 7.0)),
            (0.0, shown(trend.kg_today)),
        ]
    });
    let spans = timeline.phases.spans(on).into_iter();
    let words = Words::of_the_person(&opened.catalogue, unit);
    let mut notes = care::of_the_person(&timeline);
    notes.extend(care::odd_weigh_in(&timeline));
    Some(WeighInsView {
        journal: JournalView {
            lines: Arc::new(weighed(opened, &all)),
            kept: Vec::new(),
            ..all
        },
        unit: unit.sign(),
        today: on.num_days_from_ce(),
        day: on.to_string(),
        days: timeline
            .weigh_ins
            .days()
            .iter()
            .map(|day| (from(on, day.date), shown(day.mean.kg()), day.odd))
            .collect(),
        line,
        phases: spans
            .map(|(kind, first, last)| (from(on, first), from(on, last), journal::phase(kind)))
            .collect(),
        numbers: numbers(&timeline, unit),
        cautions: notes.iter().map(|note| words.caution(note)).collect(),
        may_set: may_set(&timeline),
        refused: opened.journal.refused.clone(),
    })
}

/// Days from today.
fn from(on: NaiveDate, date: NaiveDate) -> f64 {
    f64::from(date.num_days_from_ce() - on.num_days_from_ce())
}

/// The journal's lines that say a bodyweight, with what the scale showed.
fn weighed(opened: &Opened, all: &JournalView) -> Vec<JournalLine> {
    let Some(log) = opened.open_log() else {
        return Vec::new();
    };
    let gone = opened.history(&log.folder).map(|history| &history.retracted);
    let gone = gone.into_iter().flatten().map(|gone| &gone.record);
    let of = |record: &crate::logbook::Record| match &record.what {
        Fact::WeighIn { bodyweight, .. } => Some((record.id.to_string(), *bodyweight, false)),
        Fact::Set(Set {
            bodyweight: Some(typed),
            ..
        }) => Some((record.id.to_string(), *typed, true)),
        _ => None,
    };
    let scale: std::collections::HashMap<String, (Typed, bool)> = log
        .records
        .iter()
        .chain(gone)
        .filter_map(of)
        .map(|(id, typed, with_set)| (id, (typed, with_set)))
        .collect();
    let lines = all.lines.iter().filter_map(|line| {
        let (typed, with_set) = scale.get(&line.id)?;
        Some(JournalLine {
            what: scale_words(*typed, opened.book.unit()),
            result: if *with_set {
                format!("with a set: {}", line.what)
            } else {
                String::new()
            },
            rail: None,
            ..line.clone()
        })
    });
    lines.collect()
}

/// `58.6 kg`; as the logbook says masses and as typed, where these differ: `129.19 lb, typed as 58.6 kg`.
fn scale_words(typed: Typed, unit: Unit) -> String {
    let as_typed = format!("{} {}", number(typed.value(), 2), typed.unit().sign());
    if typed.unit() == unit {
        return as_typed;
    }
    format!("{}, typed as {as_typed}", mass(typed.mass(), unit))
}

fn numbers(timeline: &Timeline<'_>, unit: Unit) -> Vec<(&'static str, String, String)> {
    let on = timeline.on;
    let mut numbers = Vec::new();
    let counting: Vec<&WeighDay> = timeline.weigh_ins.days().iter().filter(|day| !day.odd).collect();
    if let Some(last) = counting.last() {
        let ago = ago((on - last.date).num_days());
        let how = "The mean of the latest day that was weighed on and doesn't look like a slip.";
        numbers.push((
            "Last weighed",
            format!("{}, {ago}", about(last.mean.kg(), unit)),
            how.to_owned(),
        ));
    }
    match timeline.weigh_ins.trend(on) {
        Some(trend) => {
            let of = format!(
                "A straight line (least squares) through the {} since {}; odd ones are left out.",
                counted(trend.days, "weigh-in day"),
                day(trend.since)
            );
            numbers.push((
                "Trend today",
                about(trend.kg_today, unit),
                format!("{of} Its value today."),
            ));
            let sign = if trend.kg_a_week > 0.0 { "+" } else { "" };
            let rate = format!(
                "{sign}{} % · {sign}{}",
                number(trend.percent_a_week, 2),
                kg(trend.kg_a_week, unit)
            );
            numbers.push((
                "A week",
                rate,
                format!("{of} Its slope over seven days; the percentage is of the mean of those days."),
            ));
        }
        None => numbers.push((
            "Trend",
            "not yet".to_owned(),
            format!(
                "It needs {TREND_DAYS} days of the last {TREND_WINDOW}, at least {TREND_SPAN} from the first to the last."
            ),
        )),
    }
    numbers.push(match timeline.phases.current() {
        Some((kind, since)) => (
            "Phase",
            format!("{} since {}", journal::phase(kind), since.format("%-d %b %Y")),
            format!(
                "For {}; it lasts until another is set. A deload ends none.",
                days(timeline.age(since))
            ),
        ),
        None => ("Phase", "none set".to_owned(), "F sets one.".to_owned()),
    });
    if timeline.phases.in_deload(on) {
        let how = "A lighter week: the day it was set and six more.";
        numbers.push(("This week", "Deload".to_owned(), how.to_owned()));
    }
    numbers
}

/// Phases on offer. Whom the core refuses a cut is offered none.
fn may_set(timeline: &Timeline<'_>) -> Vec<(&'static str, &'static str, &'static str)> {
    let all = [
        (PhaseKind::Hold, "Bodyweight is meant to stay."),
        (PhaseKind::Gain, "Bodyweight is meant to rise."),
        (PhaseKind::Deload, "A lighter week from that day on."),
        (PhaseKind::Cut, "Bodyweight is meant to fall."),
    ];
    let fits = |(kind, _): &(PhaseKind, &str)| *kind != PhaseKind::Cut || care::may_cut(timeline);
    all.into_iter()
        .filter(fits)
        .map(|(kind, means)| {
            (
                crate::logbook::exchange::phase_word(kind),
                journal::phase(kind),
                means,
            )
        })
        .collect()
}
