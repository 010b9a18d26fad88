//! From a verdict to today's work: sets, range, reserve, rest, and a load that can be hung.

use crate::catalogue::Rung;
use crate::timeline::Form;
use crate::units::{Added, Reserve};

use super::advice::{Asked, LoadToday, Prescription, Verdict};
use super::facts::{Facts, system};
use super::finding::Finding;
use super::judge::{ATTEMPT_REPS, EPLEY_REPS, Exposure, Measure};
use super::loads::Loadable;

/// The same belt is kept while it gives today within so much of the last work load. Common practice, no source.
const SAME_BELT: f64 = 0.04;
/// Reserve at a test. Common practice, no source: a test to failure tells little more and costs more.
const TEST_RESERVE: f64 = 1.0;
/// Least reserve asked of a minor. Common practice, no source.
const MINOR_RESERVE: f64 = 2.0;

/// What the prescription stands on.
pub struct Ruling<'r> {
    /// The verdict, behind a weigh-in too.
    pub verdict: Verdict,
    /// What decided, before caps.
    pub decided: &'r Finding,
    /// Time away, or the first day after pain, takes a set away.
    pub eased: bool,
    /// What a back-off leaves of the work load.
    pub cut: f64,
    /// A mild pain at the rung's joints takes a set away.
    pub sore: bool,
    /// The load that a waiting side does not exceed: the other side's.
    pub not_above: Option<LoadToday>,
}

/// The rung that a verdict's work is for.
pub fn target<'a>(facts: &Facts<'_, 'a>, verdict: Verdict) -> &'a Rung {
    match verdict {
        Verdict::StepUp => facts.above.unwrap_or(facts.rung),
        Verdict::StepBack => facts.below.unwrap_or(facts.rung),
        _ => facts.rung,
    }
}

/// What to do today; none at pause.
pub fn prescribe(facts: &Facts<'_, '_>, ruling: &Ruling<'_>) -> Option<Prescription> {
    if ruling.verdict == Verdict::Pause {
        return None;
    }
    let rung = target(facts, ruling.verdict);
    let measure = if rung.id == facts.rung.id {
        facts.measure
    } else {
        Measure::plain(rung)
    };
    let (load, lacks_help) = load_today(facts, ruling, rung);
    Some(Prescription {
        rung: rung.id.clone(),
        movement: rung.movement.clone(),
        sets: sets(facts, ruling, measure, lacks_help || load.is_none()),
        asked: asked(facts, ruling, measure),
        reserve: reserve(facts, ruling, rung),
        rest_secs: rung.work.rest_secs,
        bodyweight: facts.timeline.bodyweight().filter(|_| measure.is_loaded()),
        load,
    })
}

fn sets(facts: &Facts<'_, '_>, ruling: &Ruling<'_>, measure: Measure<'_>, without_load: bool) -> u16 {
    if ruling.verdict == Verdict::Test {
        return 1;
    }
    let asked = measure.rung.work.sets;
    let backs_off = ruling.verdict == Verdict::BackOff && without_load;
    let fewer = if ruling.sore || ruling.eased || backs_off {
        asked.saturating_sub(1).max(1)
    } else {
        asked
    };
    if facts.timeline.phases.in_deload(facts.timeline.on) {
        fewer.div_ceil(2)
    } else {
        fewer
    }
}

fn asked(facts: &Facts<'_, '_>, ruling: &Ruling<'_>, measure: Measure<'_>) -> Asked {
    let (lo, hi) = (measure.lo(), measure.hi());
    let lowest = facts.latest().map_or(lo, Exposure::lowest);
    let (lo, hi) = match (ruling.verdict, ruling.decided) {
        (Verdict::Test, _) => (lo, None),
        (Verdict::AddReps, Finding::NoStepInBand { .. }) => (lowest + 1.0, Some(lowest + 2.0)),
        (Verdict::AddReps, _) => ((lowest + 1.0).min(hi), Some(hi)),
        _ => (lo, Some(hi)),
    };
    if measure.is_reps() {
        Asked::Reps(lo, hi)
    } else {
        Asked::Hold(lo, hi)
    }
}

fn reserve(facts: &Facts<'_, '_>, ruling: &Ruling<'_>, rung: &Rung) -> Option<Reserve> {
    if rung.work.range.is_hold() {
        return rung.work.reserve;
    }
    let asked = if ruling.verdict == Verdict::Test {
        Reserve::new(TEST_RESERVE).ok()
    } else {
        rung.work.reserve
    };
    reserve_asked(facts, asked)
}

/// The reserve that is asked: of a minor never less than 2.
fn reserve_asked(facts: &Facts<'_, '_>, asked: Option<Reserve>) -> Option<Reserve> {
    let least = Reserve::new(MINOR_RESERVE)
        .ok()
        .filter(|_| facts.timeline.is_minor());
    asked.map(|asked| least.map_or(asked, |least| asked.max(least)))
}

/// Today's load, and whether it lacks the help it needs because the athlete never logged any.
fn load_today(facts: &Facts<'_, '_>, ruling: &Ruling<'_>, rung: &Rung) -> (Option<LoadToday>, bool) {
    if !Measure::plain(rung).is_loaded() {
        return (None, false);
    }
    let same_form = Form::of(rung) == Form::of(facts.rung);
    let Some(loadable) = facts.loadable(true) else {
        return (None, false);
    };
    let load = match ruling.verdict {
        Verdict::Begin => begin_load(facts, loadable),
        Verdict::StepUp if !same_form => None,
        Verdict::AddLoad => match ruling.decided {
            Finding::TopOfRange { load_kg, .. } | Finding::CoarseStep { load_kg, .. } => {
                loadable.at_or_below(system(*load_kg))
            }
            _ => None,
        },
        Verdict::BackOff => {
            work(facts).and_then(|(work_kg, _)| loadable.at_or_below(system(work_kg * ruling.cut)))
        }
        Verdict::Repeat | Verdict::AddReps | Verdict::Test | Verdict::StepUp => again(facts, loadable),
        Verdict::StepBack | Verdict::Pause | Verdict::WeighInFirst => None,
    };
    let load = match (load, &ruling.not_above) {
        (Some(load), Some(bound)) if bound.system.kg() < load.system.kg() => Some(bound.clone()),
        (load, _) => load,
    };
    let lacks_help = load.as_ref().is_some_and(|load| load.added.kg() < 0.0) && !facts.ever_helped();
    if lacks_help {
        (loadable.bodyweight_alone(), true)
    } else {
        (load, false)
    }
}

/// The latest judged day's work load and belt. A day of singles and doubles is brought to the range by Epley.
pub(super) fn work(facts: &Facts<'_, '_>) -> Option<(f64, Added)> {
    let latest = facts.latest()?;
    let (load, set) = latest.work?;
    let few = |amount: f64| amount < facts.measure.lo() && amount <= ATTEMPT_REPS;
    let kg = if facts.measure.is_reps() && latest.sets.iter().all(|set| few(set.amount)) {
        let most = latest.sets.iter().map(|set| set.amount).fold(0.0, f64::max);
        let asked = reserve_asked(facts, facts.rung.work.reserve).map_or(0.0, Reserve::reps);
        load.kg() * (EPLEY_REPS + most) / (EPLEY_REPS + facts.measure.lo() + asked)
    } else {
        load.kg()
    };
    Some((kg, set.added))
}

/// The same belt again, if it can be hung and today's bodyweight does not carry it too far off; else the nearest load.
fn again(facts: &Facts<'_, '_>, loadable: Loadable<'_>) -> Option<LoadToday> {
    let (work_kg, belt) = work(facts)?;
    let near = |load: &LoadToday| (load.system.kg() - work_kg).abs() <= work_kg * SAME_BELT + super::GRACE_KG;
    loadable
        .exactly(belt)
        .filter(near)
        .or_else(|| loadable.nearest(system(work_kg)))
}

/// The load that a side waiting on the same rung does not exceed: what the other side hangs next, or its load again.
pub fn bound_by_other(own: &Facts<'_, '_>, other: &Facts<'_, '_>, others: &Ruling<'_>) -> Option<LoadToday> {
    if own.rung.id != other.rung.id || !own.is_loaded() {
        return None;
    }
    if others.verdict == Verdict::AddLoad {
        return load_today(other, others, other.rung).0;
    }
    again(other, own.loadable(true)?)
}

/// Where the rung below is loaded and of the same form, its standard's load is safe to begin with.
fn begin_load(facts: &Facts<'_, '_>, loadable: Loadable<'_>) -> Option<LoadToday> {
    let below = facts
        .below
        .filter(|below| Measure::plain(below).is_loaded() && Form::of(below) == Form::of(facts.rung))?;
    let ratio = below.standard.ratio?;
    loadable.at_or_below(system(ratio * facts.timeline.bodyweight()?.kg()))
}
