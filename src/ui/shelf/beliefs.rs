//! What is believed of a ladder's rails, for the band on the ladder, the header and the sheets.

use std::collections::BTreeMap;

use crate::body::demand::goal;
use crate::catalogue::{Help, Ladder, Rung};
use crate::coaching::Finding;
use crate::coaching::held_back::{Evidence, held_back};
use crate::coaching::outlook::chance_of;
use crate::coaching::standing::{is_set_aside, rails};
use crate::report::belief::{self, Loads, between, link, sets_behind, span};
use crate::report::numbers::{day, number};
use crate::strength::{Coverage, Estimates, Link, LinkKind, RailBelief, ReadFrom};
use crate::timeline::Timeline;
use crate::ui::views::{BeliefView, Outlook, Phrase, SheetLine};
use crate::units::{Rail, Unit};

use super::opened::Opened;
use super::say;

/// A belief that rests on nothing newer than so many days is drawn as old.
const STALE_DAYS: i64 = 14;

/// How something came about, for each rail, a passage for each kind of evidence.
pub(super) type Hows = Vec<(Rail, Vec<String>)>;

/// What is believed of the rails of one ladder.
#[derive(Default)]
pub(super) struct Beliefs {
    pub bands: Vec<BeliefView>,
    pub outlook: Vec<Outlook>,
    /// Lines about each kind of evidence.
    pub evidence: Vec<SheetLine>,
    /// When the goal comes within reach.
    pub forecasts: Vec<SheetLine>,
    /// What holds a rail back.
    pub held_back: Vec<SheetLine>,
    /// Chances by rung, and how they came about.
    pub chances: BTreeMap<String, (Vec<SheetLine>, Hows)>,
    /// How everything above came about.
    pub how: Hows,
}

/// Asks the core about every rail of a ladder.
pub(super) fn of_ladder(opened: &Opened, timeline: &Timeline<'_>, ladder: &Ladder) -> Beliefs {
    let mut estimates = opened.estimates(timeline);
    let unit = opened.book.unit();
    let mut found = Beliefs::default();
    let climbed = rails(ladder)
        .iter()
        .copied()
        .filter(|rail| !is_set_aside(timeline, ladder, *rail));
    for rail in climbed {
        for rung in &ladder.rungs {
            if let Some(line) = chance(&mut estimates, ladder, rung, rail) {
                let (lines, hows) = found.chances.entry(rung.id.clone()).or_default();
                lines.push(line);
                let how = how_chance(&mut estimates, ladder, rung, rail, unit);
                hows.push((rail, how.unwrap_or_default()));
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
                .map(|forecast| format!("{}, {}", goal_words(&believed), span(&forecast, timeline.on)));
            let how = how(&believed, unit);
            let words = outlook_how(&believed, &how.join(" "), forecast.as_deref());
            found.how.push((rail, how));
            let forecast_line = forecast.as_deref().map(|words| of(rail, say::capital(words)));
            found.bands.push(band(&believed, timeline));
            found.outlook.push(Outlook {
                rail,
                belief: in_words(&believed),
                how: words,
                forecast,
            });
            found
                .evidence
                .extend(believed.links.iter().map(|link| of(rail, evidence(link)).quiet()));
            found.forecasts.extend(forecast_line);
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

/// What every range on a screen means.
pub(super) const MEANING: &str = "An estimate from the sets of earlier days, no promise: in 8 of 10 such cases the strength lies within \
    the range.";
pub(super) const FORECAST: &str = "The forecast takes it that training goes on as now.";

/// What the forecast is about: where the hang lies below, the pull alone, lest it promise what the hand can't hold.
fn goal_words(believed: &RailBelief) -> &'static str {
    if believed.grip_lies_below() {
        "the goal by pull alone"
    } else {
        "the goal"
    }
}

/// What stands on the ladder and in the header, how it came about, and what it means.
fn outlook_how(believed: &RailBelief, how: &str, forecast: Option<&str>) -> String {
    let what = whose(believed.rail, &in_words(believed).text());
    let ahead = forecast.map_or_else(String::new, |words| {
        format!(" {}. {FORECAST}", say::capital(words))
    });
    format!("{what}. {how} {MEANING}{ahead}")
}

/// `Left hand: …` where sides are apart.
fn whose(rail: Rail, words: &str) -> String {
    match rail {
        Rail::Both => words.to_owned(),
        Rail::Left => format!("Left hand: {words}"),
        Rail::Right => format!("Right hand: {words}"),
    }
}

/// Passages of all rails in one text: what is said of every rail once, before what is said of one.
pub(super) fn together(hows: &[(Rail, Vec<String>)]) -> String {
    let is_shared = |words: &String| hows.len() > 1 && hows.iter().all(|(_, own)| own.contains(words));
    let shared = hows.first().into_iter().flat_map(|(_, own)| own);
    let mut parts: Vec<String> = shared.filter(|words| is_shared(words)).cloned().collect();
    for (rail, own) in hows {
        let own: Vec<&str> = own
            .iter()
            .filter(|words| !is_shared(words))
            .map(String::as_str)
            .collect();
        if !own.is_empty() {
            parts.push(whose(*rail, &own.join(" ")));
        }
    }
    parts.join(" ")
}

/// All evidence, a passage for each kind with the sets that it stands on.
fn how(believed: &RailBelief, unit: Unit) -> Vec<String> {
    let each = believed.links.iter().map(|link| match &link.basis {
        Some(basis) => format!(
            "{}: {}.",
            evidence(link),
            sets_behind(basis, loads(link.kind, unit))
        ),
        None => format!("{}.", evidence(link)),
    });
    each.collect()
}

/// Loads of helped sets say nothing to who lifted them.
fn loads(kind: LinkKind, unit: Unit) -> Loads {
    match kind {
        LinkKind::Fingers | LinkKind::Band => Loads::Left,
        _ => Loads::Said(unit),
    }
}

/// How a chance came about: the estimate behind it and its sets. None where there is none.
pub(super) fn how_chance(
    estimates: &mut Estimates<'_, '_>,
    ladder: &Ladder,
    rung: &Rung,
    rail: Rail,
    unit: Unit,
) -> Option<Vec<String>> {
    if matches!(rung.help, Help::FingerHelp(_)) {
        let mut believed = estimates.on_ladder(ladder, rail)?;
        // As the chance itself is asked.
        if believed.reach_with_fingers() != believed.reach {
            believed.links.retain(|link| link.kind == LinkKind::Fingers);
        }
        return Some(how(&believed, unit));
    }
    let movement = estimates.catalogue().movement(&rung.movement)?;
    let side = rail.side().filter(|_| movement.is_sided());
    let from = belief::how(estimates.of(&movement.id, side)?, unit);
    Some(vec![format!("{from}.")])
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

/// How the chances of a card came about.
pub(super) fn how_chances(
    opened: &Opened,
    timeline: &Timeline<'_>,
    step: &crate::coaching::NextStep,
) -> String {
    let how = || {
        let ladder = opened.catalogue.ladder(&step.ladder)?;
        let rung = ladder.rung(&step.prescription.as_ref()?.rung)?;
        let unit = opened.book.unit();
        how_chance(&mut opened.estimates(timeline), ladder, rung, step.rail, unit)
    };
    how().map_or_else(String::new, |how| {
        let how = how.join(" ");
        format!("{how} The chance is that of one fresh set with the asked reserve, on a day of which nothing more is known; an \
             estimate, no promise, and it changes no verdict.")
    })
}

/// The sets behind a reason that is an estimate; empty for what was logged.
pub(super) fn behind(
    opened: &Opened,
    timeline: &Timeline<'_>,
    step: &crate::coaching::NextStep,
    found: &Finding,
) -> String {
    match found {
        Finding::LongShot { .. } => how_chances(opened, timeline, step),
        Finding::HeldBack(held) if matches!(held.by, Evidence::Link { .. }) => {
            let believed = opened
                .catalogue
                .ladder(&step.ladder)
                .and_then(|ladder| opened.estimates(timeline).on_ladder(ladder, step.rail));
            believed.map_or_else(String::new, |believed| {
                how(&believed, opened.book.unit()).join(" ")
            })
        }
        Finding::HeldBack(_) => NOTES.to_owned(),
        _ => String::new(),
    }
}

/// What a weak place is known from where no band tells of it.
const NOTES: &str = "From the notes on missed sets of the last twelve weeks: bottom, middle, top or grip.";

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
