//! What is believed of a ladder's rails, for the band on the ladder, the header and the sheets.

use std::collections::BTreeMap;

use crate::body::demand::goal;
use crate::catalogue::{Ladder, Rung};
use crate::coaching::held_back::held_back;
use crate::coaching::outlook::chance_of;
use crate::coaching::standing::{is_set_aside, rails};
use crate::report::belief::{self, between, link, span};
use crate::report::numbers::{day, number};
use crate::strength::{Coverage, Estimates, Link, RailBelief, ReadFrom};
use crate::timeline::Timeline;
use crate::ui::views::{BeliefView, Outlook, Phrase, SheetLine};
use crate::units::Rail;

use super::opened::Opened;
use super::say;

/// A belief that rests on nothing newer than so many days is drawn as old.
const STALE_DAYS: i64 = 14;

/// What is believed of the rails of one ladder.
#[derive(Default)]
pub(super) struct Beliefs {
    pub bands: Vec<BeliefView>,
    pub outlook: Vec<Outlook>,
    /// Lines about each kind of evidence.
    pub evidence: Vec<SheetLine>,
    /// What holds a rail back.
    pub held_back: Vec<SheetLine>,
    /// Chances by rung.
    pub chances: BTreeMap<String, Vec<SheetLine>>,
}

/// Asks the core about every rail of a ladder.
pub(super) fn of_ladder(opened: &Opened, timeline: &Timeline<'_>, ladder: &Ladder) -> Beliefs {
    let mut estimates = Estimates::new(timeline, &opened.catalogue);
    let mut found = Beliefs::default();
    let climbed = rails(ladder)
        .iter()
        .copied()
        .filter(|rail| !is_set_aside(timeline, ladder, *rail));
    for rail in climbed {
        for rung in &ladder.rungs {
            if let Some(line) = chance(&mut estimates, ladder, rung, rail) {
                found.chances.entry(rung.id.clone()).or_default().push(line);
            }
        }
        let believed = estimates.on_ladder(ladder, rail);
        for held in held_back(timeline, ladder, rail, believed.as_ref()) {
            let companion = opened
                .catalogue
                .movement(&held.companion)
                .map_or(held.companion.as_str(), |movement| &movement.title);
            let words = belief::held_back(&held, &companion.to_lowercase());
            found.held_back.push(of(rail, format!("{words}.")));
        }
        if let Some(believed) = believed {
            let forecast = goal(ladder)
                .and_then(|goal| estimates.forecast(ladder, goal, rail))
                .map(|forecast| format!("the goal, {}", span(&forecast, timeline.on)));
            found.bands.push(band(&believed, timeline));
            found.outlook.push(Outlook {
                rail,
                belief: in_words(&believed),
                forecast,
                how: how(&believed),
            });
            found
                .evidence
                .extend(believed.links.iter().map(|link| of(rail, evidence(link)).quiet()));
        }
    }
    found
}

fn of(rail: Rail, words: String) -> SheetLine {
    SheetLine {
        rail: rail.side().map(|side| Rail::from(Some(side))),
        ..SheetLine::words(words)
    }
}

fn band(believed: &RailBelief, timeline: &Timeline<'_>) -> BeliefView {
    BeliefView {
        rail: believed.rail,
        median: believed.reach.centre(),
        log_sd: believed.reach.log_sd(),
        interval80: believed.reach.band(Coverage::Eighty),
        is_stale: timeline.age(believed.last) > STALE_DAYS,
    }
}

/// `0.86 of the goal (80 %: 0.82–0.90)`.
fn in_words(believed: &RailBelief) -> Phrase {
    let interval = between(believed.reach.band(Coverage::Eighty));
    Phrase::strong(format!("{:.2}", believed.reach.centre())).then(format!(" of the goal (80 %: {interval})"))
}

/// All evidence in one sentence a kind, and what the range means.
fn how(believed: &RailBelief) -> String {
    let each: Vec<String> = believed.links.iter().map(evidence).collect();
    format!(
        "{}. Estimated from the sets of earlier days; in 8 of 10 such cases the strength lies within the range. The forecast \
         takes it that training goes on as now.",
        each.join(". ")
    )
}

/// `Both arms: 0.97–1.05, from a one-rep max of 1.87 × bodyweight`.
fn evidence(found: &Link) -> String {
    let range = between(found.reach.band(Coverage::Eighty));
    let at_least = if found.at_least { "at least " } else { "" };
    let from = match found.from {
        ReadFrom::OneRepMax { ratio } => {
            format!(
                "from an estimated one-rep max of {} × bodyweight",
                number(ratio, 2)
            )
        }
        ReadFrom::Hold { seconds, date } => format!("from {} s on {}", number(seconds, 1), day(date)),
        ReadFrom::Holds => "from the ladder's holds; rough".to_owned(),
    };
    format!("{}: {at_least}{range}, {from}", say::capital(link(found.kind)))
}

/// `2 reps 82 %, 4 reps 53 %, of a fresh set at the standard's load`.
fn chance(estimates: &mut Estimates<'_, '_>, ladder: &Ladder, rung: &Rung, rail: Rail) -> Option<SheetLine> {
    if rung.work.range.is_hold() {
        return None;
    }
    let (lo, hi) = (rung.work.range.lo(), rung.work.range.hi());
    let mut words = Phrase::plain("");
    for (nth, reps) in [lo, hi].into_iter().enumerate() {
        if nth == 1 && hi <= lo {
            break;
        }
        let chance = chance_of(estimates, ladder, rung, rail, None, reps)?;
        let gap = if nth == 0 { "" } else { ", " };
        words = words
            .then(format!("{gap}{} ", say::reps(reps)))
            .then_strong(belief::percent(chance));
    }
    Some(SheetLine {
        words: words.then(", a fresh set"),
        ..of(rail, String::new())
    })
}

/// What a card says of the chance of its work: `4 reps, 1 in reserve` and `86 %`; and repetitions to expect.
pub(super) fn chances(step: &crate::coaching::NextStep) -> Vec<(String, String)> {
    let (Some(chance), Some(work)) = (step.chance, &step.prescription) else {
        return Vec::new();
    };
    let reserve = match work.reserve {
        Some(reserve) if reserve.reps() > 0.0 => format!(", {} in reserve", number(reserve.reps(), 1)),
        _ => String::new(),
    };
    let mut said = vec![(
        format!("{}{reserve}", say::reps(work.asked.lo())),
        belief::percent(chance),
    )];
    said.extend(
        step.expected_reps
            .map(|reps| ("expected to failure".to_owned(), number(reps, 1))),
    );
    said
}
