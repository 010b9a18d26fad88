//! Odd sets: a load so far above all earlier evidence, and on no other day, that a slip of the finger is likelier.

use chrono::NaiveDate;

use crate::units::SystemLoad;

use super::LoggedSet;
use super::kin::Kin;

/// A load over so many times the best estimated one-rep max is odd. Common practice, no source.
const ODD_FACTOR: f64 = 1.15;
/// Another day's set at this part of it confirms it. Common practice, no source.
const CONFIRM_FACTOR: f64 = 0.97;
/// So many earlier days must give an estimate first. Common practice, no source.
const EARLIER_DAYS: usize = 3;
/// Most repetitions (done and in reserve) that a rep-max formula is believed for. NSCA tables end there; common practice.
const MOST_REPS: f64 = 12.0;
/// Most reserve that is added to the repetitions done (Hackett et al. 2017: errors exceed 2 reps beyond about 5 in reserve).
const MOST_RESERVE: f64 = 5.0;
/// Room for rounding, kg: far below any plate.
const GRACE_KG: f64 = 1e-6;

/// Repetitions that a rep-max formula is given: done + logged reserve, where both are few enough to be believed.
pub fn believed_reps(set: &LoggedSet<'_>) -> Option<f64> {
    let reserve = set.known_reserve().unwrap_or(0.0);
    let reps = set.amount + reserve;
    let believed = set.is_reps()
        && set.amount >= 1.0
        && !set.broke_form()
        && reserve <= MOST_RESERVE
        && reps <= MOST_REPS;
    believed.then_some(reps)
}

/// One-rep max by Epley's formula (Boyd Epley Workout, 1985): load × (1 + reps/30), a single as it is.
pub fn epley(load: SystemLoad, reps: f64) -> SystemLoad {
    if reps <= 1.0 {
        load
    } else {
        load.times(1.0 + reps / 30.0)
    }
}

/// The best estimated one-rep max among `sets`, by Epley.
pub fn best_e1rm<'s, 'a: 's>(sets: impl IntoIterator<Item = &'s LoggedSet<'a>>) -> Option<SystemLoad> {
    sets.into_iter()
        .filter_map(e1rm)
        .max_by(|a, b| a.kg().total_cmp(&b.kg()))
}

fn e1rm(set: &LoggedSet<'_>) -> Option<SystemLoad> {
    Some(epley(set.system?, believed_reps(set)?))
}

/// Marks odd sets from the one at `from` on; those of one form and side are judged by themselves. `sets` are in order of
/// time; odd ones give no evidence for later days.
pub(super) fn mark(sets: &mut [LoggedSet<'_>], kin: &Kin<'_>, from: usize) {
    for (_, _, places) in &kin.forms {
        let judged = |at: &usize| {
            let set = sets.get(*at).filter(|_| *at >= from);
            set.is_some_and(|set| !set.odd && set.is_reps() && !(set.is_sided() && set.side().is_none()))
        };
        let places: Vec<usize> = places.iter().copied().filter(judged).collect();
        mark_rail(sets, &places);
    }
}

fn mark_rail(sets: &mut [LoggedSet<'_>], places: &[usize]) {
    let mut best: Option<SystemLoad> = None;
    let mut days = 0;
    let mut today: Option<(NaiveDate, Option<SystemLoad>)> = None;
    for &at in places {
        let Some(set) = sets.get(at) else { continue };
        if let Some((date, max)) = today
            && date != set.date
        {
            days += usize::from(max.is_some());
            best = heavier(best, max);
            today = None;
        }
        let doubted = days >= EARLIER_DAYS
            && set.amount >= 1.0
            && set
                .system
                .zip(best)
                .is_some_and(|(load, best)| load.kg() > best.kg() * ODD_FACTOR + GRACE_KG)
            && !confirmed(sets, places, set);
        let max = if doubted { None } else { e1rm(set) };
        let so_far = today.and_then(|(_, max)| max);
        today = Some((set.date, heavier(so_far, max)));
        if doubted && let Some(set) = sets.get_mut(at) {
            set.odd = true;
        }
    }
}

fn heavier(a: Option<SystemLoad>, b: Option<SystemLoad>) -> Option<SystemLoad> {
    match (a, b) {
        (Some(a), Some(b)) => Some(if b.kg() > a.kg() { b } else { a }),
        (a, b) => a.or(b),
    }
}

/// Whether another day has a repetition at nearly this load.
fn confirmed(sets: &[LoggedSet<'_>], places: &[usize], doubted: &LoggedSet<'_>) -> bool {
    let Some(load) = doubted.system else { return true };
    places.iter().filter_map(|&at| sets.get(at)).any(|other| {
        other.date != doubted.date
            && other.amount >= 1.0
            && other
                .system
                .is_some_and(|near| near.kg() >= load.kg() * CONFIRM_FACTOR - GRACE_KG)
    })
}
