//! Week of the open athlete.

use chrono::NaiveDate;

use crate::coaching::week::{Close, Day, Group, JointLine, Status, Trained, Week, build, muscles::INDIRECT};
use crate::report::advice;
use crate::report::numbers::number;
use crate::report::week as words;
use crate::timeline::Timeline;
use crate::ui::views::{
    DayIs, DayView, GroupView, JointView, Phrase, SessionBlock, SessionView, Standing, WeekView,
};
use crate::units::{Rail, Side};

use super::opened::{Athlete, Opened};

/// The chosen week; none where nobody is open.
pub(super) fn view(opened: &Opened) -> Option<WeekView> {
    let (_, athlete) = opened.athlete()?;
    let timeline = opened.timeline(opened.open_log()?);
    let today = Week::of(opened.on);
    let now = Trained::of(&timeline, &opened.catalogue, today);
    let session = session(opened, athlete, &timeline, &now);
    let back = opened.weeks_back;
    let shown = match back {
        0 => now,
        _ => Trained::of(&timeline, &opened.catalogue, today.earlier(back)),
    };
    let is_over = opened.on >= shown.week.sunday();
    let close = words::close(&shown.close, opened.on);
    Some(WeekView {
        back,
        is_empty: timeline.sets.is_empty(),
        span: words::span(shown.week),
        name: shown.week.name(),
        hard: words::hard_sets(shown.hard_sets()),
        what_is_hard: words::what_is_hard(),
        days: shown.days.iter().map(|of| day(of, opened.on)).collect(),
        groups: shown.groups.iter().map(|of| group(of, is_over)).collect(),
        note: note(&shown, is_over),
        joints: joints(&shown),
        close: close
            .into_iter()
            .map(|(strong, rest)| Phrase::strong(strong).then(rest))
            .collect(),
        resting: words::resting(&shown.resting),
        care: words::CARE,
        session,
    })
}

fn note(trained: &Trained<'_>, is_over: bool) -> Phrase {
    if trained.hard_sets() == 0 {
        let none = if is_over {
            "No hard set in this week. "
        } else {
            "No hard set yet this week. "
        };
        return Phrase::strong(none).then(words::RANGES);
    }
    match words::summary(trained, is_over) {
        Some(summary) => Phrase::strong(format!("{summary} ")).then(words::RANGES),
        None => Phrase::strong("All that you train lies within its range. ").then(words::RANGES),
    }
}

fn day(day: &Day, today: NaiveDate) -> DayView {
    let is = match day.date.cmp(&today) {
        std::cmp::Ordering::Less => DayIs::Past,
        std::cmp::Ordering::Equal => DayIs::Today,
        std::cmp::Ordering::Greater => DayIs::Ahead,
    };
    let hard = words::hard_sets(day.hard);
    let date = day.date.format("%A %-d %b");
    let easy = match day.easy {
        0 => String::new(),
        1 => ", 1 set too easy to count".to_owned(),
        count => format!(", {count} sets too easy to count"),
    };
    let what = words::kinds(&day.kinds);
    let free = if is == DayIs::Past { "rest" } else { "open" };
    let trained = day.hard > 0 || day.easy > 0;
    DayView {
        weekday: day.date.format("%a").to_string(),
        number: day.date.format("%-d").to_string(),
        is,
        sets: trained.then(|| match day.hard {
            1 => "1 set".to_owned(),
            count => format!("{count} sets"),
        }),
        what: match (trained, what.is_empty()) {
            (false, _) => free.to_owned(),
            (true, true) => "easy".to_owned(),
            (true, false) => what.clone(),
        },
        how: match (trained, day.kinds.is_empty()) {
            (false, _) => format!("{date}: {free}"),
            (true, true) => format!("{date}: {hard}{easy}"),
            (true, false) => format!("{date}: {hard}{easy}. {what}"),
        },
    }
}

fn group(group: &Group<'_>, is_over: bool) -> GroupView {
    GroupView {
        title: group.muscle.title(),
        direct: f64::from(group.direct),
        indirect: INDIRECT * f64::from(group.indirect),
        range: (group.range.low, group.range.high),
        sets: number(group.sets(), 1),
        status: words::status(group).unwrap_or_default(),
        standing: match group.status() {
            None => Standing::Unsaid,
            Some(Status::Below) if !is_over => Standing::SoFar,
            Some(Status::Below) => Standing::Below,
            Some(Status::Within) => Standing::Within,
            Some(Status::Above) => Standing::Above,
        },
        how: words::how(group),
    }
}

/// A row a joint where both sides are alike, else a row a side.
fn joints(trained: &Trained<'_>) -> Vec<JointView> {
    let mut rows = Vec::new();
    for of in trained.joints.chunk_by(|a, b| a.joint == b.joint) {
        match of {
            [left, right] if alike(left, right) => rows.push(row(left, Rail::Both, true, trained)),
            sides => {
                let each = sides.iter().zip([true, false]);
                rows.extend(each.map(|(line, first)| row(line, Rail::from(Some(line.side)), first, trained)));
            }
        }
    }
    rows
}

/// Whether both sides did the same, day by day.
fn alike(left: &JointLine<'_>, right: &JointLine<'_>) -> bool {
    let sets = |line: &JointLine<'_>| line.days.iter().map(|load| load.sets).collect::<Vec<_>>();
    sets(left) == sets(right)
}

fn row(line: &JointLine<'_>, rail: Rail, is_first: bool, trained: &Trained<'_>) -> JointView {
    let side = rail.side().unwrap_or(Side::Left);
    let mine = |close: &&Close| close.joint == line.joint && close.rail.side().is_none_or(|of| of == side);
    let monday = trained.week.monday();
    let place = |date: NaiveDate| i8::try_from((date - monday).num_days()).unwrap_or(-1).max(-1);
    let rows = || trained.close.iter().filter(mine);
    let links = rows().flat_map(|close| {
        let pairs = close.days.windows(2).filter_map(|pair| match pair {
            [(a, _), (b, _)] => Some((place(*a), place(*b))),
            _ => None,
        });
        pairs.filter(|(_, b)| *b >= 0).collect::<Vec<_>>()
    });
    let longest = rows().map(Close::running).max().filter(|days| *days > 1);
    let running = longest.map(|days| format!("{days} days running"));
    let days = trained
        .week
        .days()
        .zip(&line.days)
        .filter(|(_, load)| load.sets > 0);
    let days: Vec<String> = days
        .map(|(date, load)| {
            format!(
                "{} {} ({})",
                date.format("%a"),
                load.sets,
                load.movements.join(", ")
            )
        })
        .collect();
    let said = running
        .as_ref()
        .map_or_else(String::new, |words| format!("; {words}"));
    JointView {
        title: if is_first {
            words::joint(line.joint)
        } else {
            String::new()
        },
        rail,
        beads: line.days.iter().map(|load| load.sets).collect(),
        links: links.collect(),
        how: format!(
            "{}: hard sets that load it, {}{said}.",
            words::joint_on(line.joint, rail),
            days.join("; ")
        ),
        running,
    }
}

fn session(opened: &Opened, athlete: &Athlete, timeline: &Timeline<'_>, week: &Trained<'_>) -> SessionView {
    let unit = opened.book.unit();
    let with = (timeline, &opened.catalogue, &opened.plates);
    let built = build(&athlete.session, with, week, opened.budget);
    let sets = built.sets();
    let head = if athlete.session.is_empty() {
        "You are on no ladder. Join one on Ladders, and its work can be put together here.".to_owned()
    } else if built.blocks.is_empty() {
        "Nothing of it fits today.".to_owned()
    } else if sets < built.budget {
        format!(
            "{sets} of {} sets: no more of today’s work fits or is asked.",
            built.budget
        )
    } else {
        format!("All {sets} sets are used.")
    };
    let blocks = built.blocks.iter().map(|block| SessionBlock {
        title: words::block_title(block, &opened.catalogue),
        parts: words::parts(block, unit),
        why: block.why.iter().map(words::why).collect(),
        warm_up: block
            .warm_up
            .iter()
            .map(|step| advice::warm_up(step, unit))
            .collect(),
    });
    SessionView {
        budget: built.budget,
        head,
        blocks: blocks.collect(),
        left_out: built
            .left_out
            .iter()
            .map(|left| words::left_out(left, &opened.catalogue))
            .collect(),
    }
}
