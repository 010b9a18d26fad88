//! The card of one rail.

use crate::catalogue::{Catalogue, Rung};
use crate::coaching::progress::last_time;
use crate::coaching::{Asked as Work, LoadToday, NextStep, Verdict};
use crate::report::advice;
use crate::report::numbers::{about, day, kg, number};
use crate::report::words::Words;
use crate::timeline::{LoggedSet, Timeline};
use crate::ui::views::{Amounts, Asked, BeltView, CardView, Phrase, PlateView, Prescription, Reason};
use crate::units::{Rail, Unit};

use super::opened::Opened;
use super::say;

/// One rail's advice.
pub(super) fn card(opened: &Opened, timeline: &Timeline<'_>, step: &NextStep) -> CardView {
    let unit = opened.book.unit();
    let words = Words::of(step, &opened.catalogue, unit);
    let reasons = step
        .reasons
        .iter()
        .enumerate()
        .map(|(nth, found)| Reason {
            from: super::beliefs::behind(opened, timeline, step, found),
            ..reason(words.reason(found, nth == 0), found.rule())
        })
        .collect();
    let cautions = step
        .cautions
        .iter()
        .map(|note| reason(words.caution(note), note.rule()))
        .collect();
    let work = prescription(opened, timeline, step);
    let asked = match (step.verdict, work) {
        (Verdict::WeighInFirst, work) => Asked::WeighInFirst(work),
        (_, Some(work)) => Asked::Work(work),
        (_, None) => Asked::Pause(pause(step)),
    };
    CardView {
        ladder: step.ladder.clone(),
        rail: step.rail,
        heading: heading(&opened.catalogue, step),
        verdict: step.verdict,
        asked,
        reasons,
        cautions,
        chances: super::beliefs::chances(step),
        chances_how: super::beliefs::how_chances(opened, timeline, step),
        not_before: step.not_before.map(day),
    }
}

fn heading(catalogue: &Catalogue, step: &NextStep) -> String {
    match step.rail {
        Rail::Left => "Left hand".to_owned(),
        Rail::Right => "Right hand".to_owned(),
        Rail::Both => catalogue
            .ladder(&step.ladder)
            .map_or_else(|| step.ladder.clone(), |ladder| ladder.title.clone()),
    }
}

fn reason(words: String, rule: &'static str) -> Reason {
    Reason {
        words: Phrase::plain(words),
        rule: rule.to_owned(),
        doc: crate::report::rules::doc(rule).to_owned(),
        from: String::new(),
    }
}

fn pause(step: &NextStep) -> Vec<Phrase> {
    let whose = match step.rail {
        Rail::Left => "No set with the left hand.",
        Rail::Right => "No set with the right hand.",
        Rail::Both => "No set on this ladder.",
    };
    vec![
        Phrase::strong(whose),
        Phrase::plain("Rest it, and report again when it changes."),
    ]
}

fn prescription(opened: &Opened, timeline: &Timeline<'_>, step: &NextStep) -> Option<Prescription> {
    let work = step.prescription.as_ref()?;
    let rung = opened
        .catalogue
        .ladder(&step.ladder)
        .and_then(|ladder| ladder.rung(&work.rung));
    let done: Vec<String> = timeline
        .sets
        .iter()
        .rev()
        .take_while(|set| set.date == opened.on)
        .filter(|set| is_of(set, step, &work.rung))
        .map(|set| say::result(set.amount, !set.is_reps(), set.reserve, set.set.outcome))
        .collect();
    let measure = match work.asked {
        Work::Reps(lo, hi) => Amounts::Reps(whole(lo), whole(hi.unwrap_or(lo))),
        Work::Hold(lo, hi) => Amounts::Hold(whole(lo), whole(hi.unwrap_or(lo))),
    };
    Some(Prescription {
        rung: work.rung.clone(),
        title: rung.map_or_else(|| work.rung.clone(), |rung| rung.title.clone()),
        sets: work.sets,
        measure,
        prefill: f64::from(measure.range().0),
        reserve: work.reserve.map(crate::units::Reserve::reps),
        load: work.load.as_ref().and_then(|today| load(opened, today)),
        load_words: load_words(opened, work.load.as_ref(), rung),
        belt: work.load.as_ref().and_then(|today| belt(opened, today)),
        rest_secs: work.rest_secs,
        done: done.into_iter().rev().collect(),
        last_time: rung.and_then(|rung| last(opened, timeline, rung, step.rail)),
    })
}

fn is_of(set: &LoggedSet<'_>, step: &NextStep, rung: &str) -> bool {
    let here = set
        .tag
        .is_some_and(|tag| tag.ladder.id == step.ladder && tag.rung.id == rung);
    here && set.counts_for(step.rail)
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped into the type's range before"
)]
fn whole(value: f64) -> u16 {
    value.round().clamp(0.0, f64::from(u16::MAX)) as u16
}

/// `+33.5 kg`, `−10 kg`; none where nothing hangs and nothing helps.
pub(super) fn load(opened: &Opened, load: &LoadToday) -> Option<String> {
    let (added, unit) = (load.added.kg(), opened.book.unit());
    if load.plates.is_empty() {
        None
    } else if added < 0.0 {
        Some(kg(added, unit))
    } else {
        Some(format!("+{}", kg(added, unit)))
    }
}

fn load_words(opened: &Opened, load: Option<&LoadToday>, rung: Option<&Rung>) -> Phrase {
    let unit = opened.book.unit();
    let Some(load) = load else {
        let help = rung.and_then(|rung| say::help(&rung.help));
        return Phrase::plain(help.unwrap_or_else(|| "Own weight".to_owned()));
    };
    let all = Phrase::strong(format!("{} in all", about(load.system.kg(), unit)));
    let body = about(load.bodyweight.kg(), unit);
    match load.added.kg() {
        _ if load.plates.is_empty() => all.then(format!(" at {body}, nothing hung")),
        added if added < 0.0 => all.then(format!(" at {body}, helped by {}", kg(-added, unit))),
        _ => all.then(format!(" at {body}")),
    }
}

fn belt(opened: &Opened, load: &LoadToday) -> Option<BeltView> {
    let plate = |typed: &crate::units::Typed| PlateView {
        number: number(typed.value(), 2),
        kg: typed.mass().kg(),
        is_kg: typed.unit() == Unit::Kg,
    };
    (!load.plates.is_empty()).then(|| BeltView {
        plates: load.plates.iter().map(plate).collect(),
        words: belt_words(opened, load),
    })
}

/// `20 + 10 + 2.5` strong, ` + gear 1 kg` plain.
pub(super) fn belt_words(opened: &Opened, load: &LoadToday) -> Phrase {
    let words = Phrase::strong(advice::plates(load, opened.book.unit()));
    match opened.book.settings.gear {
        Some(gear) if gear.value() > 0.0 => words.then(format!(
            " + gear {} {}",
            number(gear.value(), 2),
            gear.unit().sign()
        )),
        _ => words,
    }
}

/// `Fri 10 Oct: 5, 5, 5 reps`.
fn last(opened: &Opened, timeline: &Timeline<'_>, rung: &Rung, rail: Rail) -> Option<Phrase> {
    let (date, sets) = last_time(timeline, rung, rail, opened.on)?;
    let mut words = format!("{}: {}", day(date), say::amounts(&sets));
    let added = sets.last().map_or(0.0, |set| set.added.kg());
    if added > 0.0 {
        words.push_str(&format!(" at +{}", kg(added, opened.book.unit())));
    }
    Some(Phrase::plain(words))
}
