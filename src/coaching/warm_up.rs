//! The warm-up before a prescription.
//!
//! A general part, then steps of the day's system load: 50 % × 8, 70 % × 3, and 85 % × 1 before singles. Better one-rep max
//! after a general and a specific warm-up: Abad et al. 2011; no better sets: Ribeiro et al. 2014; the steps are common
//! practice, no source. A step that would need less than the body alone becomes easy work.

use crate::catalogue::{Class, Movement, Pattern};

use super::advice::{Asked, LoadToday, Prescription};
use super::facts::system;
use super::loads::PlatesOnHand;

/// One step before the work.
#[derive(Debug, Clone, PartialEq)]
pub enum WarmUpStep {
    /// Getting warm.
    General,
    /// Easy work below the body's own weight.
    Easy {
        /// What.
        easy: Easy,
        /// Repetitions, from and to.
        reps: (u16, u16),
    },
    /// A lighter load.
    Load {
        /// What to hang.
        load: LoadToday,
        /// Repetitions.
        reps: u16,
    },
    /// An easier shape, held.
    EasyHold {
        /// Seconds.
        seconds: f64,
    },
}

/// Easy work where a step lies under bodyweight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Easy {
    /// Rows.
    Rows,
    /// Shoulder-blade pulls in the hang.
    ShoulderBlades,
    /// A few easy repetitions of the movement.
    Movement,
}

/// Part of the day's system load, and reps at it. Common practice, no source.
const STEPS: [(f64, u16); 2] = [(0.50, 8), (0.70, 3)];
/// The last step, before singles only. Common practice, no source.
const BEFORE_SINGLES: (f64, u16) = (0.85, 1);
/// A prescription that asks so few reps is one of singles.
const SINGLES: f64 = 1.0;

/// The steps before `work`. `warm` says that a heavier set of the same pattern came within 20 minutes: then only the last
/// step is left.
pub fn warm_up(
    work: &Prescription,
    movement: Option<&Movement>,
    plates: &PlatesOnHand,
    warm: bool,
) -> Vec<WarmUpStep> {
    let mut steps = vec![WarmUpStep::General];
    match (&work.load, work.asked) {
        (Some(load), _) => steps.extend(loaded(load, work, movement, plates)),
        (None, Asked::Hold(lo, _)) => steps.push(WarmUpStep::EasyHold {
            seconds: (lo / 2.0).max(1.0).round(),
        }),
        (None, Asked::Reps(..)) => {
            if movement.is_none_or(|movement| movement.class != Class::Isolation) {
                steps.push(easy(movement, true));
            }
            steps.push(easy(movement, false));
        }
    }
    steps.dedup();
    if warm {
        steps.split_off(steps.len().saturating_sub(1))
    } else {
        steps
    }
}

fn loaded(
    load: &LoadToday,
    work: &Prescription,
    movement: Option<&Movement>,
    plates: &PlatesOnHand,
) -> Vec<WarmUpStep> {
    let singles = work.asked.lo() <= SINGLES;
    let share = movement.and_then(Movement::share);
    STEPS
        .into_iter()
        .chain(singles.then_some(BEFORE_SINGLES))
        .enumerate()
        .filter_map(|(at, (part, reps))| {
            let target = system(load.system.kg() * part);
            let loadable = plates.loadable(share?, load.bodyweight, false);
            Some(if loadable.needs_help(target) {
                easy(movement, at == 0)
            } else {
                WarmUpStep::Load {
                    load: loadable.at_or_below(target)?,
                    reps,
                }
            })
        })
        .collect()
}

/// Easy work: rows come in greater number, everything else is a few repetitions. Where no easier movement leads up to the
/// work, both steps are the same, and one is left.
fn easy(movement: Option<&Movement>, first: bool) -> WarmUpStep {
    let (easy, reps) = match movement.map(|movement| movement.pattern) {
        Some(Pattern::VerticalPull | Pattern::StraightArmPull) if first => (Easy::Rows, (5, 8)),
        Some(Pattern::VerticalPull | Pattern::StraightArmPull | Pattern::Grip) => {
            (Easy::ShoulderBlades, (3, 5))
        }
        _ => (Easy::Movement, (3, 5)),
    };
    WarmUpStep::Easy { easy, reps }
}
