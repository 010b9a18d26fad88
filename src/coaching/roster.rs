//! The roster: what each athlete needs from a coach, the most urgent first.
//!
//! A need is read off the next steps of an athlete's rails; the order of [`Need`] is the order of urgency.

use chrono::NaiveDate;
use rayon::prelude::*;

use crate::catalogue::{Catalogue, Site};
use crate::logbook::Log;
use crate::timeline::{Pain, Timeline, WeighDay};
use crate::units::{Rail, Side};

use super::advice::{NextStep, Verdict};
use super::caps::MILD_PAIN;
use super::facts::still_counts;
use super::finding::Finding;
use super::loads::PlatesOnHand;
use super::next_step::next_steps;
use super::standing::joined;

/// So many judged days without a standard day make a rail stuck. Common practice, no source.
const STUCK_DAYS: usize = 8;

/// What an athlete needs from a coach; the first that fits, in this order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Need {
    /// A rail pauses, or something that its rung loads hurts 3 or more.
    Hurts,
    /// A load depends on a weigh-in.
    WeighIn,
    /// A rail is ready for its next rung.
    StepUp,
    /// Missed twice, stalled, or long on one rung without a day that meets its standard.
    Stuck,
    /// A rail is due for a test.
    Test,
    /// A rail begins, or there is no ladder yet.
    Begin,
    /// Nothing but the next session.
    GoingOn,
}

impl Need {
    /// Every need, the most urgent first.
    pub const ALL: [Need; 7] = [
        Need::Hurts,
        Need::WeighIn,
        Need::StepUp,
        Need::Stuck,
        Need::Test,
        Need::Begin,
        Need::GoingOn,
    ];

    /// The id that answers use.
    pub fn id(self) -> &'static str {
        match self {
            Need::Hurts => "hurts",
            Need::WeighIn => "weigh-in",
            Need::StepUp => "step-up",
            Need::Stuck => "stuck",
            Need::Test => "test",
            Need::Begin => "begin",
            Need::GoingOn => "going-on",
        }
    }

    /// Its name in tables.
    pub fn title(self) -> &'static str {
        match self {
            Need::Hurts => "Hurts",
            Need::WeighIn => "Weigh-in",
            Need::StepUp => "Step up",
            Need::Stuck => "Stuck",
            Need::Test => "Test",
            Need::Begin => "Begin",
            Need::GoingOn => "Going on",
        }
    }

    /// The verdict that it mostly comes from, which lends it its badge.
    pub fn stands_for(self) -> Verdict {
        match self {
            Need::Hurts => Verdict::Pause,
            Need::WeighIn => Verdict::WeighInFirst,
            Need::StepUp => Verdict::StepUp,
            Need::Stuck => Verdict::BackOff,
            Need::Test => Verdict::Test,
            Need::Begin => Verdict::Begin,
            Need::GoingOn => Verdict::AddReps,
        }
    }
}

/// One athlete's line.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The name.
    pub athlete: String,
    /// The need.
    pub need: Need,
    /// Every rail that is climbed, in order of ladder id, then left, right.
    pub rails: Vec<RailNow>,
    /// The last weigh-in that counts.
    pub weighed: Option<WeighDay>,
    /// Pain reports that count today, by site, then side.
    pub pains: Vec<Pain>,
    /// The day of the last set.
    pub last_set: Option<NaiveDate>,
}

/// Where a rail stands, and the verdict on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RailNow {
    /// The ladder's id.
    pub ladder: String,
    /// The rail.
    pub rail: Rail,
    /// The rung's id.
    pub rung: String,
    /// The verdict.
    pub verdict: Verdict,
}

/// Everyone's line, by need, then name; nobody's who is archived.
pub fn roster(logs: &[Log], catalogue: &Catalogue, plates: &PlatesOnHand, on: NaiveDate) -> Vec<Line> {
    let mut lines: Vec<Line> = logs
        .par_iter()
        .with_max_len(1)
        .filter(|log| !log.is_archived(on))
        .map(|log| line(&Timeline::new(log, catalogue, on), catalogue, plates))
        .collect();
    lines.sort_by(|a, b| (a.need, &a.athlete).cmp(&(b.need, &b.athlete)));
    lines
}

/// One athlete's line.
pub fn line(timeline: &Timeline<'_>, catalogue: &Catalogue, plates: &PlatesOnHand) -> Line {
    line_of(timeline, catalogue, &next_steps(timeline, catalogue, plates))
}

/// One athlete's line, where the next steps are known already.
pub fn line_of(timeline: &Timeline<'_>, catalogue: &Catalogue, steps: &[NextStep]) -> Line {
    let pains = pains(timeline);
    let on_no_ladder = joined(timeline)
        .into_iter()
        .all(|id| catalogue.ladder(id).is_none());
    let need = need(steps, &pains, on_no_ladder);
    let rails = steps.iter().map(|step| RailNow {
        ladder: step.ladder.clone(),
        rail: step.rail,
        rung: step.rung.clone(),
        verdict: step.verdict,
    });
    Line {
        athlete: timeline.name.to_owned(),
        need,
        rails: rails.collect(),
        weighed: timeline.weigh_ins.last(),
        pains,
        last_set: timeline.sets.last().map(|set| set.date),
    }
}

/// The first need that fits. Without a ladder no rung says which joints matter, so any pain of 3 or more does.
fn need(steps: &[NextStep], pains: &[Pain], on_no_ladder: bool) -> Need {
    let any = |verdict: Verdict| steps.iter().any(|step| step.verdict == verdict);
    let sore = on_no_ladder && pains.iter().any(|pain| pain.score >= MILD_PAIN);
    if sore || any(Verdict::Pause) || steps.iter().any(hurts) {
        Need::Hurts
    } else if any(Verdict::WeighInFirst) {
        Need::WeighIn
    } else if any(Verdict::StepUp) {
        Need::StepUp
    } else if steps.iter().any(is_stuck) {
        Need::Stuck
    } else if any(Verdict::Test) {
        Need::Test
    } else if on_no_ladder || any(Verdict::Begin) {
        Need::Begin
    } else {
        Need::GoingOn
    }
}

/// Whether a joint of the rung hurts 3 or more: from there on the rules and caps say so.
fn hurts(step: &NextStep) -> bool {
    step.reasons
        .iter()
        .any(|reason| matches!(reason, Finding::PainStop { .. } | Finding::PainCap { .. }))
}

/// Whether misses or a stall decided, or the rung's standard was not met for long.
fn is_stuck(step: &NextStep) -> bool {
    let decided = step.reasons.first().is_some_and(|reason| {
        matches!(
            reason,
            Finding::MissedTwice { .. } | Finding::MissedAgain { .. } | Finding::Stalled { .. }
        )
    });
    decided || step.days_without_standard >= STUCK_DAYS
}

/// Reports that count today: for each site the latest that speaks of the left side, and of the right. One of a side not
/// known speaks of both, until a side has a later one.
pub fn pains(timeline: &Timeline<'_>) -> Vec<Pain> {
    let mut counting: Vec<Pain> = Vec::new();
    for site in Site::ALL {
        for side in [Side::Left, Side::Right] {
            let latest = timeline
                .pains
                .iter()
                .filter(|pain| pain.site == site && pain.side.is_none_or(|own| own == side))
                .max_by_key(|pain| (pain.date, pain.score));
            if let Some(pain) = latest.filter(|pain| still_counts(pain.score, timeline.age(pain.date)))
                && !counting.contains(pain)
            {
                counting.push(*pain);
            }
        }
    }
    counting
}
