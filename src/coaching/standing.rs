//! Where a rail stands: its rung now, since when, and whether it is climbed at all.

use std::collections::BTreeSet;

use chrono::NaiveDate;

use crate::catalogue::{Ladder, Rung, Way};
use crate::logbook::record::Placed;
use crate::timeline::{EVIDENCE_DAYS, LoggedSet, Timeline};
use crate::units::Rail;

/// The rung that records put a rail on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing<'a> {
    /// The rung.
    pub rung: &'a Rung,
    /// The last day on another rung: the stay is the days after it. None when the whole log is the stay.
    pub after: Option<NaiveDate>,
    /// The last day that said so.
    said_on: NaiveDate,
}

/// One day's word about where a rail stands.
#[derive(Debug, Default)]
struct DayOnLadder<'a> {
    placed: Option<&'a Rung>,
    highest: Option<(usize, &'a Rung)>,
    branches: Vec<&'a Rung>,
}

/// The rails of `ladder`.
pub fn rails(ladder: &Ladder) -> &'static [Rail] {
    if ladder.is_sided() {
        &[Rail::Left, Rail::Right]
    } else {
        &[Rail::Both]
    }
}

/// The ladders that the athlete ever joined, by id: by a placement, or by a set logged for one.
pub fn joined<'a>(timeline: &Timeline<'a>) -> BTreeSet<&'a str> {
    let placed = timeline.placements.iter().map(|placement| placement.ladder);
    let trained = timeline.ladders().map(|ladder| ladder.id.as_str());
    // A rung that this catalogue doesn't know still tells the ladder.
    let untagged = timeline.sets.iter().filter(|set| set.tag.is_none());
    let named = untagged.filter_map(|set| set.set.ladder.as_deref());
    placed.chain(trained).chain(named).collect()
}

/// Whether the rail was set aside and neither placed later in order nor trained on a later day.
pub fn is_set_aside(timeline: &Timeline<'_>, ladder: &Ladder, rail: Rail) -> bool {
    let last = timeline
        .placements
        .iter()
        .rfind(|placement| placement.ladder == ladder.id && rail.touched_by(placement.side));
    let Some(aside) = last.filter(|placement| *placement.rung == Placed::SetAside) else {
        return false;
    };
    let later = |set: &LoggedSet<'_>| set.date > aside.date && set.counts_for(rail);
    !timeline.on_ladder(ladder).any(later)
}

/// The rung now: the latest of placements and main-line tagged sets with at least 1 rep or second, of the last 365 days.
///
/// On one day a placement goes before sets, and the highest rung before lower ones. A tag on a branch moves nothing; on
/// the branch that the rail was placed at it renews the placement.
pub fn rung_now<'a>(timeline: &Timeline<'a>, ladder: &'a Ladder, rail: Rail) -> Option<Standing<'a>> {
    let mut now: Option<Standing<'a>> = None;
    for (date, day) in days_on(timeline, ladder, rail) {
        let renewed = now
            .map(|standing| standing.rung)
            .filter(|rung| day.branches.iter().any(|branch| std::ptr::eq(*branch, *rung)));
        let Some(rung) = day.placed.or(renewed).or(day.highest.map(|(_, rung)| rung)) else {
            continue;
        };
        let after = match now {
            Some(before) if before.rung.id == rung.id => before.after,
            Some(before) => Some(before.said_on),
            None => None,
        };
        now = Some(Standing {
            rung,
            after,
            said_on: date,
        });
    }
    // An old placement holds only as long as something renews it.
    now.filter(|standing| timeline.age(standing.said_on) <= EVIDENCE_DAYS)
}

/// What each day says of where the rail stands, in order of days.
fn days_on<'a>(timeline: &Timeline<'a>, ladder: &'a Ladder, rail: Rail) -> Vec<(NaiveDate, DayOnLadder<'a>)> {
    // Sets come in order of days; the few placements find their place afterwards.
    let mut days: Vec<(NaiveDate, DayOnLadder<'a>)> = Vec::new();
    let speaks =
        |set: &&LoggedSet<'_>| set.amount >= 1.0 && set.counts_for(rail) && timeline.is_evidence(set);
    for set in timeline.on_ladder(ladder).filter(speaks) {
        let Some(tag) = set.tag else { continue };
        if days.last().is_none_or(|(date, _)| *date != set.date) {
            days.push((set.date, DayOnLadder::default()));
        }
        let Some((_, day)) = days.last_mut() else { continue };
        match tag.rung.way {
            Way::Branch { .. } => day.branches.push(tag.rung),
            Way::Main if day.highest.is_none_or(|(highest, _)| tag.height > highest) => {
                day.highest = Some((tag.height, tag.rung));
            }
            Way::Main => {}
        }
    }
    for placement in &timeline.placements {
        if placement.ladder == ladder.id
            && rail.touched_by(placement.side)
            && let Placed::On(id) = placement.rung
            && let Some(rung) = ladder.rung(id)
        {
            let at = days.partition_point(|(date, _)| *date < placement.date);
            match days.get_mut(at) {
                Some((date, day)) if *date == placement.date => day.placed = Some(rung),
                _ => {
                    let day = DayOnLadder {
                        placed: Some(rung),
                        ..DayOnLadder::default()
                    };
                    days.insert(at, (placement.date, day));
                }
            }
        }
    }
    days
}

/// The main line as this athlete may climb it: a minor passes over some rungs, never the first.
#[derive(Debug, Clone)]
pub struct Line<'a> {
    ladder: &'a Ladder,
    minor: bool,
}

impl<'a> Line<'a> {
    /// The main line of `ladder` for this athlete.
    pub fn of(ladder: &'a Ladder, timeline: &Timeline<'_>) -> Self {
        Self {
            ladder,
            minor: timeline.is_minor(),
        }
    }

    /// The main rungs that are open, from the ground up, each with its place on the whole main line.
    pub fn open(&self) -> impl DoubleEndedIterator<Item = (usize, &'a Rung)> + use<'a> {
        let minor = self.minor;
        let main: Vec<&'a Rung> = self.ladder.main_line().collect();
        main.into_iter()
            .enumerate()
            .filter(move |(place, rung)| *place == 0 || !minor || !super::caps::is_passed_over(rung))
    }

    /// The next open rung above (for a branch: from the rung it leads to on).
    pub fn above(&self, rung: &Rung) -> Option<&'a Rung> {
        let from = self.place_of(self.ladder.above(rung)?)?;
        self.open()
            .find(|(place, _)| *place >= from)
            .map(|(_, rung)| rung)
    }

    /// The open rung to fall back to: the next below (for a branch: from the rung it leaves down).
    pub fn below(&self, rung: &Rung) -> Option<&'a Rung> {
        let highest = self.place_of(self.ladder.below(rung)?)?;
        self.open()
            .rev()
            .find(|(place, _)| *place <= highest)
            .map(|(_, rung)| rung)
    }

    fn place_of(&self, rung: &Rung) -> Option<usize> {
        self.ladder.main_index(&rung.id)
    }
}
