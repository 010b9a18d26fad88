//! What to mind: the rung's own cautions, days apart, doubtful entries, pain, minors, underweight, cuts.

use chrono::{Days, NaiveDate};

use crate::catalogue::{Caution, Rung};
use crate::timeline::{Form, Timeline};

use super::advice::Verdict;
use super::caps::MILD_PAIN;
use super::entry;
use super::facts::{Facts, Known};
use super::finding::CareNote;

/// Days between two sessions on a rung: 48 h (Magnusson et al. 2010) …
const APART: u64 = 2;
/// … 72 h where tendons are loaded near their limits. Common practice, no source.
const APART_LONG: u64 = 3;
/// A doubtful entry is pointed at for so many days. Common practice, no source.
const DOUBT_DAYS: i64 = 28;
/// Pain of 3 or more that was there so many days ago already belongs to a professional. Common practice, no source.
const LASTING_PAIN: std::ops::RangeInclusive<i64> = 14..=28;
/// Fastest loss that keeps strength, % a week (Garthe et al. 2011 aimed at 0.7 %).
pub(crate) const FASTEST_LOSS: f64 = 0.7;
/// A cut longer than so many days asks for a break: half a year. Common practice, no source.
const LONGEST_CUT: i64 = 182;

/// Kinds of work that load tendons near their limits.
const STRAINS: [Caution; 4] = [
    Caution::Eccentric,
    Caution::StraightArm,
    Caution::Elbow,
    Caution::Supinated,
];

/// Whether a rung loads tendons near their limits.
pub(super) fn strains(rung: &Rung) -> bool {
    STRAINS.iter().any(|caution| rung.cautions.contains(caution))
}

/// From one day of work to the next that is spaced enough: 2 days, or 3 where it strains.
pub(super) fn days_apart(strains: bool) -> u64 {
    if strains { APART_LONG } else { APART }
}

/// The first day on which the days between two sessions are kept, if that is after today.
pub fn not_before(facts: &Facts<'_, '_>) -> Option<NaiveDate> {
    let apart = days_apart(strains(facts.rung));
    let first = facts.last_exposure()?.checked_add_days(Days::new(apart))?;
    (first > facts.timeline.on).then_some(first)
}

/// Every caution for a rail. `target` is the rung that the prescription is for.
pub fn notes(facts: &Facts<'_, '_>, verdict: Verdict, behind: Verdict, target: &Rung) -> Vec<CareNote> {
    let mut notes: Vec<CareNote> = target.cautions.iter().copied().map(CareNote::Rung).collect();
    if let (Some(last), true) = (facts.last_exposure(), not_before(facts).is_some()) {
        notes.push(CareNote::Spacing {
            last,
            days: facts.age(last),
        });
    }
    notes.extend(doubtful_entries(facts));
    if facts.known != Known::No
        && let Some(entry) = entry::missing(facts.timeline, facts.rung, facts.rail)
    {
        let (movement, at_least, ratio) = (entry.movement.clone(), entry.at_least, entry.ratio);
        notes.push(CareNote::EntryNotMet {
            movement,
            at_least,
            ratio,
        });
    }
    if behind == Verdict::Test {
        notes.push(CareNote::TestSafety);
    }
    notes.extend(professional(
        facts,
        verdict == Verdict::Pause || behind == Verdict::Pause,
    ));
    notes.extend(of_the_person(facts.timeline));
    notes
}

/// The latest weigh-in, where it looks like a slip.
pub fn odd_weigh_in(timeline: &Timeline<'_>) -> Option<CareNote> {
    let odd = timeline.weigh_ins.days().last().filter(|day| day.odd)?;
    Some(CareNote::WeighInOdd {
        date: odd.date,
        kg: odd.mean.kg(),
    })
}

/// Whether a cut may be planned: not by minors, nor below the healthy range.
pub fn may_cut(timeline: &Timeline<'_>) -> bool {
    !timeline.is_minor() && !timeline.is_underweight()
}

fn doubtful_entries(facts: &Facts<'_, '_>) -> Vec<CareNote> {
    let timeline = facts.timeline;
    let form = Form::of(facts.rung);
    let recent = timeline
        .sets
        .iter()
        .rev()
        .take_while(|set| timeline.age(set.date) <= DOUBT_DAYS)
        .filter(|set| set.form == Some(form) && set.counts_for(facts.rail));
    let contradictory = recent.clone().filter(|set| !set.odd).find_map(|set| {
        let reserve = set.reserve.filter(|reserve| set.failed() && *reserve >= 1.0)?;
        Some(CareNote::ContradictoryLog {
            date: set.date,
            reserve,
        })
    });
    let check = recent.clone().filter(|set| set.odd).find_map(|set| {
        Some(CareNote::CheckEntry {
            date: set.date,
            system_kg: set.system?.kg(),
        })
    });
    let weigh_in = odd_weigh_in(timeline);
    [contradictory, check, weigh_in].into_iter().flatten().collect()
}

/// Pain that pauses, or that stays, belongs to a professional.
fn professional(facts: &Facts<'_, '_>, pauses: bool) -> Option<CareNote> {
    let pain = facts.pain?;
    let lasting = pain.score >= MILD_PAIN
        && facts.timeline.pains.iter().any(|before| {
            before.site == pain.site
                && before.score >= MILD_PAIN
                && before.touches(facts.movement, facts.rail)
                && LASTING_PAIN.contains(&facts.age(before.date))
        });
    (pauses || lasting).then_some(CareNote::PainProfessional { site: pain.site })
}

/// Cautions for the person, whatever the rung.
pub fn of_the_person(timeline: &Timeline<'_>) -> Vec<CareNote> {
    let mut notes = Vec::new();
    let minor = timeline.is_minor();
    if minor {
        notes.push(CareNote::Minor {
            years: timeline.years().unwrap_or(0),
        });
    }
    let underweight = timeline.bmi().filter(|_| timeline.is_underweight());
    if let Some(bmi) = underweight {
        notes.push(CareNote::Underweight { bmi });
    }
    let cut = timeline.phases.cut_since();
    if cut.is_some() && !may_cut(timeline) {
        notes.push(CareNote::CutRefused);
    }
    if let Some(trend) = timeline
        .weigh_ins
        .trend(timeline.on)
        .filter(|trend| trend.percent_a_week < -FASTEST_LOSS)
    {
        notes.push(CareNote::CutFast {
            percent_a_week: trend.percent_a_week,
        });
    }
    if let Some(days) = cut
        .map(|since| timeline.age(since))
        .filter(|days| *days > LONGEST_CUT)
    {
        notes.push(CareNote::CutLong { days });
    }
    notes
}
