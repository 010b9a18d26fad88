//! What a set that looks like a typo may have been: the wrong unit, the wrong plate, a digit too many or a shifted decimal mark.

use crate::units::{Added, Effort, KG_PER_LB, Mass, Outcome, Reps};

use super::Tuning;
use super::rows::{self, LIGHTEST_KG};
use super::says::{Says, Standing};
use super::set::{Observed, likelihood_of};
use super::state::State;
use super::training::Attempt;

/// Load and repetitions that would fit what is believed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likely {
    /// What may have hung from the belt.
    pub added: Added,
    /// How many repetitions may have been done.
    pub effort: Effort,
}

/// Plates that are easily left out of a sum or counted twice, kg.
const PLATES_KG: [f64; 6] = [-20.0, -10.0, -5.0, 5.0, 10.0, 20.0];

/// The candidate that fits best; none where none fits better than the set as logged.
pub(super) fn likely(state: &State, attempt: &Attempt, load_kg: f64, tuning: &Tuning) -> Option<Likely> {
    let body_kg = load_kg - attempt.added.kg();
    let fit = |candidate: &Likely| {
        let load = body_kg + candidate.added.kg();
        if load <= LIGHTEST_KG {
            return 0.0;
        }
        let observed = Observed {
            log_load: libm::log(load),
            reps: candidate.effort.amount(),
            unit: 1.0,
            says: match attempt.left.map(rows::reserve) {
                _ if attempt.outcome == Outcome::Missed => Says::Missed,
                Some(left) => Says::Reported(left),
                None => Says::Habit(Standing::Any),
            },
            beside: Says::AtLeast,
            more_left: 0.0,
            hard_sets: 0.0,
            side: rows::sign(attempt.side),
        };
        likelihood_of(state, &observed, tuning)
    };
    let as_logged = Likely {
        added: attempt.added,
        effort: attempt.effort,
    };
    let mut best = (fit(&as_logged), None);
    for candidate in candidates(attempt) {
        let here = fit(&candidate);
        if here > best.0 {
            best = (here, Some(candidate));
        }
    }
    best.1
}

fn candidates(attempt: &Attempt) -> Vec<Likely> {
    let kg = attempt.added.kg();
    // The other unit; a nought or a decimal mark too many or too few; a plate left out or counted twice.
    let loads = [kg / KG_PER_LB, kg * KG_PER_LB, kg / 10.0, kg * 10.0]
        .into_iter()
        .chain(PLATES_KG.map(|plate| kg + plate));
    let mut all: Vec<Likely> = loads
        .filter(|load| *load != kg)
        .map(|load| Likely {
            added: Added::new(Mass::from_kg(load)),
            effort: attempt.effort,
        })
        .collect();
    if let Effort::Reps(reps) = attempt.effort
        && let Some(fewer) = without_last_digit(reps.count())
        && let Ok(fewer) = Reps::try_from(fewer)
    {
        all.push(Likely {
            added: attempt.added,
            effort: Effort::Reps(fewer),
        });
    }
    all
}

/// 5 for 55 or 50, 12 for 122: a digit struck twice, or a nought too many.
fn without_last_digit(count: u16) -> Option<u16> {
    let last = count % 10;
    (count >= 10 && (last == 0 || last == count / 10 % 10)).then_some(count / 10)
}
