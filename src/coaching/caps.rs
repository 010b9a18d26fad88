//! Caps: what turns a step forward into a repeat on one rail alone. Pain, a minor's tests, tendons that need their time.

use crate::catalogue::{Caution, Help, Rung};
use crate::units::Reserve;

use super::advice::Verdict;
use super::facts::{Facts, STRONG_PAIN};
use super::finding::Finding;

/// Pain from here on allows work but no progress (pain monitoring, Thomeé 1997: 2 to 5 acceptable; from memory).
pub(crate) const MILD_PAIN: u8 = 3;
/// Least time on a rung that loads elbow or grip tendons, days. Tendon stiffens over weeks (Bohm 2015); 3 is common practice.
const TENDON_DAYS: i64 = 21;
/// Least time on a straight-arm shape, days. Common practice, no source.
const STRAIGHT_ARM_DAYS: i64 = 28;

/// Whether a minor passes over this rung: nothing in reserve, lowering work, straight arms, elbows near their limits.
/// Our choice; Faigenbaum et al. 2009 ask for supervision and technique first.
pub fn is_passed_over(rung: &Rung) -> bool {
    let strains = [
        Caution::Eccentric,
        Caution::StraightArm,
        Caution::Elbow,
        Caution::Supinated,
    ];
    rung.work.reserve == Some(Reserve::NONE)
        || rung.help == Help::Negative
        || rung.cautions.iter().any(|caution| strains.contains(caution))
}

/// A cap's answer: what it found, and whether it turns the verdict.
#[derive(Debug, Clone, PartialEq)]
pub struct Capped {
    /// The numbers behind it.
    pub finding: Finding,
    /// What the verdict becomes; none where the cap only joins the reasons.
    pub turns_to: Option<Verdict>,
}

/// *Asks*: does one of the rung's joints hurt 3 to 5? *Why*: acceptable for work, not for more of it.
fn pain_cap(facts: &Facts<'_, '_>, verdict: Verdict) -> Option<Capped> {
    let pain = facts
        .pain
        .filter(|pain| (MILD_PAIN..STRONG_PAIN).contains(&pain.score))?;
    let finding = Finding::PainCap {
        site: pain.site,
        score: pain.score,
        days: facts.age(pain.date),
    };
    let turns_to = match verdict {
        Verdict::Begin => Some(Verdict::Pause),
        forward if forward.is_forward() => Some(Verdict::Repeat),
        _ => None,
    };
    Some(Capped { finding, turns_to })
}

/// *Asks*: is the athlete under 18 and a maximum asked, or does a passed rung lead past one that a minor leaves out?
fn minor_no_max(facts: &Facts<'_, '_>, verdict: Verdict) -> Option<Capped> {
    if !facts.timeline.is_minor() {
        return None;
    }
    let past = facts
        .ladder
        .above(facts.rung)
        .filter(|rung| facts.is_passed() && is_passed_over(rung))
        .map(|rung| rung.id.clone());
    let turns = verdict == Verdict::Test;
    (turns || past.is_some()).then_some(Capped {
        finding: Finding::MinorNoMax { past },
        turns_to: turns.then_some(Verdict::Repeat),
    })
}

/// *Asks*: was this rung first done too few weeks ago for the tendons it loads? *Why*: they adapt slower than muscle
/// (Kjær et al. 2009).
fn tendon_time(facts: &Facts<'_, '_>, verdict: Verdict) -> Option<Capped> {
    if verdict != Verdict::StepUp {
        return None;
    }
    let days = facts.age(facts.exposures.first()?.date);
    let slow = [
        (Caution::StraightArm, STRAIGHT_ARM_DAYS),
        (Caution::Elbow, TENDON_DAYS),
        (Caution::Supinated, TENDON_DAYS),
        (Caution::Eccentric, TENDON_DAYS),
        (Caution::Grip, TENDON_DAYS),
    ];
    let (caution, asked) = slow
        .into_iter()
        .find(|(caution, asked)| facts.has(*caution) && days < *asked)?;
    Some(Capped {
        finding: Finding::TendonTime { days, asked, caution },
        turns_to: Some(Verdict::Repeat),
    })
}

/// The caps of one rail, in order.
pub const ALONE: [fn(&Facts<'_, '_>, Verdict) -> Option<Capped>; 3] = [pain_cap, minor_no_max, tendon_time];
