//! Left against right: the stronger side waits, the weaker one is free.
//!
//! No threshold is proven (Bishop 2020); 1 rep or 2 s is common practice.

use super::advice::Verdict;
use super::caps::Capped;
use super::facts::Facts;
use super::finding::{Finding, SideState};

/// A load over so many times the other side's is ahead of it. Common practice, no source.
const AHEAD: f64 = 1.01;

/// How a rail stands against the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// On a higher rung, or with more load on the same one.
    Ahead,
    /// The reverse.
    Behind,
    /// Neither.
    Level,
}

/// How `own` stands against `other`.
pub fn against(own: &Facts<'_, '_>, other: &Facts<'_, '_>) -> Against {
    match own.height().cmp(&other.height()) {
        std::cmp::Ordering::Greater => return Against::Ahead,
        std::cmp::Ordering::Less => return Against::Behind,
        std::cmp::Ordering::Equal if own.rung.id != other.rung.id => return Against::Level,
        std::cmp::Ordering::Equal => {}
    }
    let heavier = |a: &Facts<'_, '_>, b: &Facts<'_, '_>| {
        a.work_kg()
            .zip(b.work_kg())
            .is_some_and(|(a, b)| a > b * AHEAD + super::GRACE_KG)
    };
    match (own.latest().is_some(), other.latest().is_some()) {
        (true, false) => Against::Ahead,
        (false, true) => Against::Behind,
        (false, false) => Against::Level,
        (true, true) if heavier(own, other) => Against::Ahead,
        (true, true) if heavier(other, own) => Against::Behind,
        (true, true) => Against::Level,
    }
}

/// Whether `own` waits for `other`. Both verdicts are those after the caps of one rail alone.
pub fn wait(
    (own, verdict): (&Facts<'_, '_>, Verdict),
    (other, others): (&Facts<'_, '_>, Verdict),
) -> Option<Capped> {
    if !verdict.is_forward() {
        return None;
    }
    let same_rung = own.rung.id == other.rung.id;
    let stands = if verdict == Verdict::StepUp && same_rung {
        Against::Level
    } else {
        against(own, other)
    };
    let waits = |other: SideState| Some(turned(Finding::SideWait { other }));
    match stands {
        Against::Behind => None,
        Against::Ahead => waits(SideState::Behind),
        Against::Level => {
            let not_ready = matches!(
                others,
                Verdict::Pause | Verdict::Begin | Verdict::BackOff | Verdict::StepBack
            );
            if not_ready {
                return waits(SideState::NotReady);
            }
            let (own_low, other_low) = lowest_pair(own, other)?;
            let gap = own.side_gap();
            match verdict {
                Verdict::StepUp if others != Verdict::StepUp => waits(SideState::NotThere),
                Verdict::StepUp if (own_low - other_low).abs() > gap => Some(turned(Finding::SideGap {
                    own: own_low,
                    other: other_low,
                    within: gap,
                })),
                Verdict::AddLoad if !matches!(others, Verdict::AddLoad | Verdict::StepUp) => {
                    waits(SideState::NotThere)
                }
                Verdict::AddReps if own_low > other_low + gap => waits(SideState::Fewer {
                    own: own_low,
                    other: other_low,
                }),
                _ => None,
            }
        }
    }
}

fn turned(finding: Finding) -> Capped {
    Capped {
        finding,
        turns_to: Some(Verdict::Repeat),
    }
}

/// Fewest reps or seconds of the latest judged days; without the other's there is nothing to compare.
fn lowest_pair(own: &Facts<'_, '_>, other: &Facts<'_, '_>) -> Option<(f64, f64)> {
    let own = own.latest()?.lowest();
    Some((own, other.latest().map_or(own, |latest| latest.lowest())))
}
