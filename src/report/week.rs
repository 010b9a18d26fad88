//! A week as words: sets against ranges, joints on following days, a session from a budget of sets.

use chrono::NaiveDate;

use crate::catalogue::{Catalogue, Joint};
use crate::coaching::caps::MILD_PAIN;
use crate::coaching::facts::STRONG_PAIN;
use crate::coaching::week::hard::MOST_RESERVE;
use crate::coaching::week::{
    Block, Close, Group, Kind, Left, LeftOut, Range, Rested, Status, Trained, Week, Why,
};
use crate::units::{Rail, Unit};

use super::advice;
use super::numbers::{counted, number};
use super::words::{on_side, rail_title};

/// What counts as hard, in a line.
pub fn what_is_hard() -> String {
    format!(
        "0–{} in reserve, or not logged, counts as hard",
        number(MOST_RESERVE, 0)
    )
}

/// Where ranges come from, and what they are not.
pub const RANGES: &str =
    "Ranges a week: 8–20 sets kept 1–3 in reserve, or 4–10 to failure; common practice, no source.";

/// What stands under anything about joints.
pub const CARE: &str = "Stop on sharp pain. Tendons adapt more slowly than muscle. Local rules and licensed practitioners come first.";

/// "Mon 23 – Sun 29 Nov 2026".
pub fn span(week: Week) -> String {
    let (first, last) = (week.monday(), week.sunday());
    let year = |date: NaiveDate| date.format("%Y").to_string();
    let month = |date: NaiveDate| date.format("%b").to_string();
    let from = if year(first) != year(last) {
        first.format("%a %-d %b %Y")
    } else if month(first) != month(last) {
        first.format("%a %-d %b")
    } else {
        first.format("%a %-d")
    };
    format!("{from} – {}", last.format("%a %-d %b %Y"))
}

/// "23 hard sets".
pub fn hard_sets(count: usize) -> String {
    counted(count, "hard set")
}

/// "8–20".
pub fn range(range: Range) -> String {
    format!("{}–{}", number(range.low, 0), number(range.high, 0))
}

/// "2 below", "within", "3 above"; none where nothing trained the group.
pub fn status(group: &Group<'_>) -> Option<String> {
    Some(match group.status()? {
        Status::Below => format!("{} below", number(group.missing(), 1)),
        Status::Within => "within".to_owned(),
        Status::Above => format!("{} above", number(group.sets() - group.range.high, 1)),
    })
}

/// How a group's number came about, and from which sets.
pub fn how(group: &Group<'_>) -> String {
    let title = group.muscle.title();
    if group.sets() == 0.0 {
        return format!("{title}: no hard set this week. Nothing is said of what you don't train.");
    }
    let mut parts = Vec::new();
    if group.direct > 0 {
        parts.push(format!("{} direct", group.direct));
    }
    if group.indirect > 0 {
        parts.push(format!("{} indirect × ½", group.indirect));
    }
    let side = group.side.map_or_else(String::new, |(side, other)| {
        format!(
            " Counted{}, the side with more; the other has {}.",
            on_side(Some(side)).replace(',', " on the"),
            number(other, 1)
        )
    });
    let why = if group.to_failure {
        "most went to failure"
    } else {
        "most kept something in reserve, or say nothing of it"
    };
    let said = status(group).unwrap_or_default();
    format!(
        "{title}: {} = {} hard sets, {said} the range of {}, because {why}.{side} From {}.",
        parts.join(" + "),
        number(group.sets(), 1),
        range(group.range),
        from(group)
    )
}

/// "pull-up (Mon 3, Thu 2), one-arm row, half (Wed 4)".
fn from(group: &Group<'_>) -> String {
    let mut movements: Vec<(&str, bool, Vec<String>)> = Vec::new();
    for from in &group.from {
        let day = format!("{} {}", from.date.format("%a"), from.sets);
        let known = movements
            .iter_mut()
            .find(|(title, _, _)| *title == from.movement.title);
        match known {
            Some((_, _, days)) => days.push(day),
            None => movements.push((&from.movement.title, from.direct, vec![day])),
        }
    }
    let each: Vec<String> = movements
        .iter()
        .map(|(title, direct, days)| {
            let half = if *direct { "" } else { ", half" };
            format!("{title}{half} ({})", days.join(", "))
        })
        .collect();
    each.join("; ")
}

/// Groups named in a summary, at most.
const NAMED: usize = 3;

/// What lies furthest below its range, and what above, in a sentence or two; none where all that is trained lies within.
pub fn summary(trained: &Trained<'_>, is_over: bool) -> Option<String> {
    let of = |status: Status| {
        let groups = trained
            .groups
            .iter()
            .filter(|group| group.status() == Some(status));
        let mut groups: Vec<&Group<'_>> = groups.collect();
        groups.sort_by(|a, b| b.missing().total_cmp(&a.missing()));
        let each: Vec<String> = groups
            .iter()
            .take(NAMED)
            .map(|group| {
                format!(
                    "{} {}",
                    group.muscle.title().to_lowercase(),
                    number(group.sets(), 1)
                )
            })
            .collect();
        (!each.is_empty()).then(|| each.join(", "))
    };
    let so_far = if is_over { "" } else { " so far" };
    let below = of(Status::Below).map(|groups| format!("Furthest below{so_far}: {groups}."));
    let above = of(Status::Above).map(|groups| format!("Above: {groups}."));
    let both: Vec<String> = above.into_iter().chain(below).collect();
    (!both.is_empty()).then(|| both.join(" "))
}

/// "Pull", "Straight-arm".
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Pull => "Pull",
        Kind::Push => "Push",
        Kind::StraightArm => "Straight-arm",
        Kind::Legs => "Legs",
        Kind::Trunk => "Trunk",
        Kind::Grip => "Grip",
    }
}

/// "Pull + straight-arm"; of more than two kinds the two with most sets.
pub fn kinds(kinds: &[Kind]) -> String {
    let words: Vec<String> = kinds
        .iter()
        .take(2)
        .enumerate()
        .map(|(nth, of)| {
            if nth == 0 {
                kind(*of).to_owned()
            } else {
                kind(*of).to_lowercase()
            }
        })
        .collect();
    words.join(" + ")
}

/// "Elbow": a joint's name on its row.
pub fn joint(joint: Joint) -> String {
    super::words::capital(joint.site().word())
}

/// "Left elbow", "Elbows".
pub fn joint_on(joint: Joint, rail: Rail) -> String {
    let word = joint.site().word();
    match rail {
        Rail::Left => format!("Left {word}"),
        Rail::Right => format!("Right {word}"),
        Rail::Both if word.ends_with('s') => super::words::capital(word),
        Rail::Both => super::words::capital(&format!("{word}s")),
    }
}

/// "Sun 22, Mon 23 and Tue 24 Nov".
fn day_list(days: &[(NaiveDate, u32)]) -> String {
    // The latest three say enough.
    let shown = days.get(days.len().saturating_sub(3)..).unwrap_or_default();
    let Some(((last, _), before)) = shown.split_last() else {
        return String::new();
    };
    let last = last.format("%a %-d %b").to_string();
    let before: Vec<String> = before
        .iter()
        .map(|(date, _)| date.format("%a %-d").to_string())
        .collect();
    match before.as_slice() {
        [] => last,
        some => format!("{} and {last}", some.join(", ")),
    }
}

/// Joints loaded on days too near each other: what in strong words, and what to do. Joints with the same days are said together.
pub fn close(all: &[Close], today: NaiveDate) -> Vec<(String, String)> {
    let mut told: Vec<(Vec<&Close>, &Close)> = Vec::new();
    for one in all {
        let dates = |close: &Close| close.days.iter().map(|(date, _)| *date).collect::<Vec<_>>();
        let same = |other: &Close| {
            (dates(other), other.strains, other.rested_from, other.pain)
                == (dates(one), one.strains, one.rested_from, one.pain)
        };
        match told.iter_mut().find(|(_, first)| same(first)) {
            Some((group, _)) => group.push(one),
            None => told.push((vec![one], one)),
        }
    }
    told.iter()
        .map(|(group, first)| said(group, first, today))
        .collect()
}

fn said(group: &[&Close], close: &Close, today: NaiveDate) -> (String, String) {
    let names = named(group.iter().map(|one| (one.joint, one.rail)));
    let running = close.running();
    let how = if running > 1 {
        format!("{running} days running")
    } else {
        "one day between".to_owned()
    };
    let pain = close.pain.map_or_else(String::new, |pain| {
        let day = pain.date.format("%a %-d %b");
        let advice = match pain.score {
            score if score >= STRONG_PAIN => " Stop, and have it looked at by a licensed professional.",
            score if score >= MILD_PAIN => " Nothing harder while it hurts.",
            _ => "",
        };
        format!(" Pain {} of 10 on {day}.{advice}", pain.score)
    });
    let hours = hours(close.strains);
    let rest = if close.rested_from > today {
        format!(
            " Leave free until {}: {hours}.",
            close.rested_from.format("%a %-d %b")
        )
    } else {
        format!(" Next time leave {hours}.")
    };
    let strong = format!("{names}: loaded {}, {how}.", day_list(&close.days));
    (strong, format!("{pain}{rest}"))
}

/// How long a joint rests, and after what.
fn hours(strains: bool) -> &'static str {
    if strains {
        "72 h after lowering, straight-arm, one-arm and palms-up work"
    } else {
        "48 h after a day of work"
    }
}

/// "Elbows and left shoulder": joints by name, a joint of both sides said once.
fn named(joints: impl Iterator<Item = (Joint, Rail)>) -> String {
    let mut each: Vec<(Joint, Rail)> = Vec::new();
    for (joint, rail) in joints {
        match each.iter_mut().find(|(known, _)| *known == joint) {
            Some((_, known)) if *known != rail => *known = Rail::Both,
            Some(_) => {}
            None => each.push((joint, rail)),
        }
    }
    let names: Vec<String> = each
        .into_iter()
        .map(|(joint, rail)| joint_on(joint, rail).to_lowercase())
        .collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    super::words::capital(&super::totals::listed(&names))
}

/// What still rests: which joints, until when, and how that came about. Joints that rest until the same day are said together.
pub fn resting(all: &[Rested]) -> Vec<(String, String, String)> {
    let mut told: Vec<Vec<&Rested>> = Vec::new();
    for one in all {
        let same =
            |first: &Rested| (first.from, first.last, first.strains) == (one.from, one.last, one.strains);
        match told
            .iter_mut()
            .find(|group| group.first().is_some_and(|first| same(first)))
        {
            Some(group) => group.push(one),
            None => told.push(vec![one]),
        }
    }
    let words = |group: &Vec<&Rested>| {
        let first = group.first()?;
        let names = named(group.iter().map(|one| (one.joint, one.rail)));
        let from = first.from.format("%a %-d %b").to_string();
        let last = first.last.format("%a %-d %b");
        let how = format!(
            "{names}: last loaded {last}; {}, so free until {from}.",
            hours(first.strains)
        );
        Some((names, from, how))
    };
    told.iter().filter_map(words).collect()
}

/// "Front lever: 3 × 6–10 s, rest 2–4 min", "Left 3 × 2–4, 1 in reserve", for each rail of a block.
pub fn parts(block: &Block, unit: Unit) -> Vec<(Rail, String)> {
    let each = block.parts.iter().map(|part| {
        let mut work = part.work.clone();
        work.sets = part.sets;
        let first = if part.weigh_in_first {
            "weigh in first; then "
        } else {
            ""
        };
        (part.rail, format!("{first}{}", advice::prescription(&work, unit)))
    });
    each.collect()
}

/// "One-arm pull-up: Two fingers help".
pub fn block_title(block: &Block, catalogue: &Catalogue) -> String {
    let ladder = catalogue.ladder(&block.ladder);
    let title = ladder.map_or(block.ladder.as_str(), |ladder| &ladder.title);
    let mut rungs: Vec<&str> = Vec::new();
    for part in &block.parts {
        let rung = ladder.and_then(|ladder| ladder.rung(&part.work.rung));
        let rung = rung.map_or(part.work.rung.as_str(), |rung| &rung.title);
        if !rungs.contains(&rung) {
            rungs.push(rung);
        }
    }
    rail_title(title, Rail::Both, None, &rungs.join(", "))
}

/// Why a block is there, a sentence each.
pub fn why(why: &Why) -> String {
    match why {
        Why::Lacks { muscle, sets, low } => format!(
            "{}: {} of at least {} hard sets this week.",
            muscle.title(),
            number(*sets, 1),
            number(*low, 0)
        ),
        Why::LastTrained(Some(days)) => format!("Last trained {}.", super::numbers::ago(*days)),
        Why::LastTrained(None) => "Not trained yet.".to_owned(),
        Why::Fresh => "Straight arms and balance first, while you are fresh.".to_owned(),
        Why::StillRests { joint, rail, last } => format!(
            "{}: loaded {}, the rest isn’t over. Go easy, or leave this out.",
            joint_on(*joint, *rail),
            last.format("%a %-d %b")
        ),
        Why::Short => "Fewer sets than asked: the budget ends here.".to_owned(),
    }
}

/// "Front lever: not before Thu 26 Nov."
pub fn left_out(left: &LeftOut, catalogue: &Catalogue) -> String {
    let ladder = catalogue.ladder(&left.ladder);
    let title = ladder.map_or(left.ladder.as_str(), |ladder| &ladder.title);
    let side = on_side(left.rail.side());
    let why = match &left.why {
        Left::Pause => "it hurts; no work on it today".to_owned(),
        Left::NotBefore(day) => format!("not before {}", day.format("%a %-d %b")),
        Left::Running { joint, rail, days } => {
            format!(
                "{}: this would be day {days} running",
                joint_on(*joint, *rail).to_lowercase()
            )
        }
        Left::Enough(muscle) => format!("{} has its sets for the week", muscle.title().to_lowercase()),
        Left::Done => "done today".to_owned(),
        Left::NoRoom => "no sets of the budget are left for it".to_owned(),
    };
    format!("{title}{side}: {why}.")
}
