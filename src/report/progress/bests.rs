//! The bests that are handed over.

use chrono::NaiveDate;

use crate::bests::{Best, Formula, Kind, Size, bests};
use crate::catalogue::Catalogue;
use crate::timeline::{LoggedSet, Timeline};
use crate::units::{Bodyweight, Unit};

use super::super::numbers::{about, kg, number, reps as in_reps};
use super::super::words::movement_on;
use super::BestLine;

/// The measures that are handed over: those that a reader asks for first.
fn is_told(best: &Best<'_>) -> bool {
    match (best.kind, best.size) {
        (Kind::System, Size::Reps(reps)) => matches!(reps, 1 | 5),
        (Kind::System, Size::Hold(_)) | (Kind::OneRepMax, Size::Estimate) => true,
        (Kind::Added, Size::Reps(1) | Size::Hold(_)) => best.system.is_none(),
        _ => false,
    }
}

pub(super) fn best_lines(
    then: &Timeline<'_>,
    now: &Timeline<'_>,
    catalogue: &Catalogue,
    unit: Unit,
) -> Vec<BestLine> {
    let trained = |best: &Best<'_>| {
        let since = now.sets.iter().rev().take_while(|set| set.date > then.on);
        let mut since = since.filter(|set| set.side() == best.side);
        since.any(|set| set.movement.is_some_and(|movement| movement.id == best.movement))
    };
    let before = bests(then, Formula::Epley);
    let known = |best: &Best<'_>| {
        before.iter().find(|old| {
            (old.movement, old.side, old.kind) == (best.movement, best.side, best.kind)
                && match (old.size, best.size) {
                    (Size::Hold(_), Size::Hold(_)) => true,
                    (old, new) => old == new,
                }
        })
    };
    let all = bests(now, Formula::Epley);
    // Where nothing ever hung, system load says only what somebody weighed: the reps tell more.
    let is_loaded = |best: &Best<'_>| {
        let same = all
            .iter()
            .filter(|other| (other.movement, other.side) == (best.movement, best.side));
        let mut same = same;
        same.any(|other| other.added.kg() != 0.0) || matches!(best.size, Size::Hold(_))
    };
    let loaded = all
        .iter()
        .filter(|best| is_told(best) && !best.doubted && trained(best) && is_loaded(best))
        .map(|best| BestLine {
            what: movement_on(catalogue, best.movement, best.side),
            measure: measure(best),
            value: value(best, unit),
            when: when(best.date, best.bodyweight, unit),
            then: known(best).map(|old| value(old, unit)),
            is_new: best.date > then.on,
        });
    let unloaded = all
        .iter()
        .filter(|best| (best.kind, best.size) == (Kind::Added, Size::Reps(1)))
        .filter(|best| trained(best) && !is_loaded(best))
        .filter_map(|best| most_reps(best, then, now, catalogue, unit));
    let mut lines: Vec<BestLine> = loaded.chain(unloaded).collect();
    lines.sort_by(|a, b| a.what.cmp(&b.what));
    lines
}

/// The most reps in a set, for a movement that nothing ever hung from.
fn most_reps(
    best: &Best<'_>,
    then: &Timeline<'_>,
    now: &Timeline<'_>,
    catalogue: &Catalogue,
    unit: Unit,
) -> Option<BestLine> {
    let plain = |set: &&LoggedSet<'_>| {
        let form = set.form.filter(|form| form.help.is_none());
        form.is_some_and(|form| form.movement == best.movement)
            && set.side() == best.side
            && set.is_reps()
            && !set.broke_form()
    };
    let more = |most: Option<(f64, NaiveDate)>, set: &LoggedSet<'_>| match most {
        Some((reps, _)) if reps >= set.amount => most,
        _ => Some((set.amount, set.date)),
    };
    let most = |timeline: &Timeline<'_>| timeline.sets.iter().filter(plain).fold(None, more);
    let (reps, date) = most(now)?;
    Some(BestLine {
        what: movement_on(catalogue, best.movement, best.side),
        measure: "most reps".to_owned(),
        value: in_reps(reps),
        when: when(date, now.weigh_ins.on(date), unit),
        then: most(then).map(|(reps, _)| in_reps(reps)),
        is_new: date > then.on,
    })
}

fn measure(best: &Best<'_>) -> String {
    match best.size {
        Size::Reps(1) => "1 rep or more".to_owned(),
        Size::Reps(reps) => format!("{reps} reps or more"),
        Size::Hold(_) => "longest hold".to_owned(),
        Size::Estimate => "e1RM (Epley)".to_owned(),
    }
}

fn value(best: &Best<'_>, unit: Unit) -> String {
    let hold = match best.size {
        Size::Hold(seconds) => Some(format!("{} s", number(seconds, 1))),
        _ => None,
    };
    let added = (best.kind != Kind::OneRepMax && best.added.kg() != 0.0).then(|| {
        let sign = if best.added.kg() > 0.0 { "+" } else { "" };
        format!("{sign}{}", kg(best.added.kg(), unit))
    });
    let all = match (best.kind, best.size) {
        (Kind::OneRepMax, _) => Some(format!("{} in all", about(best.value, unit))),
        (_, Size::Hold(_)) => None,
        _ => best
            .system
            .map(|system| format!("{} in all", about(system.kg(), unit))),
    };
    let parts: Vec<String> = [hold, added, all].into_iter().flatten().collect();
    if parts.is_empty() {
        "bodyweight".to_owned()
    } else {
        parts.join(", ")
    }
}

fn when(date: NaiveDate, bodyweight: Option<Bodyweight>, unit: Unit) -> String {
    let date = date.format("%-d %b %Y");
    match bodyweight {
        Some(body) => format!("{date} at {}", about(body.kg(), unit)),
        None => date.to_string(),
    }
}
