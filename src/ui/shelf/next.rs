//! Next of the open athlete.

use crate::catalogue::{Pattern, Site};
use crate::coaching::outlook;
use crate::coaching::warm_up::{Easy, WarmUpStep as Step, warm_up};
use crate::coaching::{LoadToday, NextStep};
use crate::logbook::record::PhaseKind;
use crate::report::numbers::{about, number};
use crate::timeline::Timeline;
use crate::ui::views::{LadderCards, NextView, Phrase, WarmUpStep};

use super::opened::Opened;
use super::{cards, ladders, logged, roster};

/// Today's prescriptions; none where nobody is open.
pub(super) fn view(opened: &Opened) -> Option<NextView> {
    let (_, athlete) = opened.athlete()?;
    let log = opened.open_log()?;
    let timeline = opened.timeline(log);
    let unit = opened.book.unit();
    let mut session = athlete.session.clone();
    outlook::add(&mut session, &mut opened.estimates(&timeline));
    let (bodyweight, bodyweight_short) = bodyweight(opened, &timeline);
    let today = timeline.pains.iter().filter(|pain| pain.date == opened.on);
    Some(NextView {
        day: opened.on.format("%a %-d %b %Y").to_string(),
        bodyweight,
        bodyweight_short,
        phase: phase(&timeline),
        pain: today
            .max_by_key(|pain| pain.score)
            .map(|pain| format!("{} of 10", roster::pain(pain))),
        last_bodyweight: timeline
            .bodyweight()
            .map(|weight| tenth(weight.mass().in_unit(unit))),
        unit: unit.sign(),
        ladders: groups(opened, &timeline, &session),
        warm_up: warm_ups(opened, &athlete.session),
        warm_up_note: None,
        logged: logged::today(opened, log),
        after: after(opened, &athlete.session),
        after_note: None,
        sites: Site::ALL.map(Site::word).to_vec(),
    })
}

fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

fn bodyweight(opened: &Opened, timeline: &Timeline<'_>) -> (Phrase, Phrase) {
    let Some(day) = timeline.weigh_ins.last() else {
        let none = Phrase::plain("No weigh-in yet");
        return (none.clone(), none);
    };
    let ago = match (opened.on - day.date).num_days() {
        0 => " today".to_owned(),
        days => format!(" {}", crate::report::numbers::ago(days)),
    };
    let short = Phrase::plain("Bodyweight ")
        .then_strong(about(day.mean.kg(), opened.book.unit()))
        .then(ago);
    let long = match timeline.weigh_ins.trend(opened.on) {
        Some(trend) => short.clone().then(" · trend ").then_strong(format!(
            "{}{} % a week",
            if trend.percent_a_week > 0.05 { "+" } else { "" },
            number(trend.percent_a_week, 1)
        )),
        None => short.clone(),
    };
    (long, short)
}

fn phase(timeline: &Timeline<'_>) -> Option<String> {
    if timeline.phases.in_deload(timeline.on) {
        return Some("deload".to_owned());
    }
    let (kind, _) = timeline.phases.current()?;
    Some(
        match kind {
            PhaseKind::Cut => "cut",
            PhaseKind::Hold => "hold",
            PhaseKind::Gain => "gain",
            PhaseKind::Deload => "deload",
        }
        .to_owned(),
    )
}

/// A group a ladder, in the order of the steps.
fn groups(opened: &Opened, timeline: &Timeline<'_>, steps: &[NextStep]) -> Vec<LadderCards> {
    let mut groups: Vec<(&str, LadderCards)> = Vec::new();
    for step in steps {
        let card = cards::card(opened, timeline, step);
        match groups.last_mut() {
            Some((ladder, group)) if *ladder == step.ladder => group.cards.push(card),
            _ => groups.push((
                &step.ladder,
                LadderCards {
                    cards: vec![card],
                    strip: None,
                },
            )),
        }
    }
    for (id, group) in &mut groups {
        if group.cards.len() > 1 {
            group.strip = opened
                .catalogue
                .ladder(id)
                .map(|ladder| ladders::strip(opened, timeline, ladder));
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// The warm-up for each ladder's first prescription; a pattern that was trained before needs the last step only.
fn warm_ups(opened: &Opened, steps: &[NextStep]) -> Vec<WarmUpStep> {
    let mut all: Vec<WarmUpStep> = Vec::new();
    let mut warm: Vec<Pattern> = Vec::new();
    let mut done: Vec<&str> = Vec::new();
    for step in steps {
        let Some(work) = &step.prescription else { continue };
        if done.contains(&step.ladder.as_str()) {
            continue;
        }
        done.push(&step.ladder);
        let movement = opened.catalogue.movement(&work.movement);
        let pattern = movement.map(|movement| movement.pattern);
        let is_warm = pattern.is_some_and(|pattern| warm.contains(&pattern));
        warm.extend(pattern);
        let title = movement.map_or(work.movement.as_str(), |movement| &movement.title);
        for step in warm_up(work, movement, &opened.plates, is_warm) {
            let said = said(opened, &step, title);
            if !all.contains(&said) {
                all.push(said);
            }
        }
    }
    all
}

fn said(opened: &Opened, step: &Step, title: &str) -> WarmUpStep {
    let one = |what: &str, count: String| WarmUpStep {
        what: what.to_owned(),
        with: None,
        count,
    };
    match step {
        Step::General => one("Easy, until warm", "5–10 min".to_owned()),
        Step::Easy { easy, reps: (lo, hi) } => {
            let count = format!("× {lo}–{hi}");
            match easy {
                Easy::Rows => one("Easy rows", count),
                Easy::ShoulderBlades => one("Shoulder-blade pulls", count),
                Easy::Movement => one(&format!("{title}, easy"), count),
            }
        }
        Step::EasyHold { seconds } => one(
            &format!("{title}, easy shape"),
            format!("{} s", number(*seconds, 0)),
        ),
        Step::Load { load, reps } => WarmUpStep {
            what: format!("{title}{}", short_load(opened, load)),
            with: plates_words(opened, load),
            count: format!("× {reps}"),
        },
    }
}

fn short_load(opened: &Opened, load: &LoadToday) -> String {
    cards::load(opened, load).map_or_else(|| ", own weight".to_owned(), |load| format!(" {load}"))
}

fn plates_words(opened: &Opened, load: &LoadToday) -> Option<String> {
    (!load.plates.is_empty()).then(|| cards::belt_words(opened, load).text())
}

/// Assistance work beside the rungs that are asked.
fn after(opened: &Opened, steps: &[NextStep]) -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    for step in steps {
        let rung = step
            .prescription
            .as_ref()
            .and_then(|work| opened.catalogue.ladder(&step.ladder)?.rung(&work.rung));
        for companion in rung.map(|rung| rung.companions.as_slice()).unwrap_or_default() {
            let title = opened
                .catalogue
                .movement(&companion.movement)
                .map_or(companion.movement.as_str(), |movement| &movement.title);
            let line = (format!("{title}: {}", companion.why), String::new());
            if !all.contains(&line) {
                all.push(line);
            }
        }
    }
    all
}
