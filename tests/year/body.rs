//! A made-up body: how often or how long it can, given its strength. Epley (Boyd Epley Workout, 1985) for loads and, around a
//! rung's standard, for shapes; a power law for holds. Not a claim about people.

use rungwright::catalogue::{Help, Ladder, Range, Rung};

/// Strength lost from one set to the next, as a part.
const TIRING: f64 = 0.012;
/// How strongly a hold's seconds follow strength.
const HOLD_POWER: f64 = 3.0;

/// How strong one must be to just meet the rung's standard: as stated, or evenly from half of the goal to the goal.
fn level(ladder: &Ladder, rung: &Rung) -> f64 {
    if let Some(given) = &rung.demand {
        return given.demand.value();
    }
    let number = |count: usize| f64::from(u32::try_from(count).unwrap());
    let place = ladder
        .main_line()
        .position(|main| main.id == rung.id)
        .unwrap_or(0);
    0.5 + 0.5 * number(place) / number(ladder.main_line().count() - 1)
}

/// Reps or seconds until the body gives out in set `nth` (from 0), at a system load of `load` × bodyweight.
///
/// `strength` is a one-rep max ÷ bodyweight on ladders that state no level for their loaded rungs, else a level.
pub fn limit(ladder: &Ladder, rung: &Rung, strength: f64, load: f64, nth: usize) -> f64 {
    let fresh = strength * (1.0 - TIRING * f64::from(u32::try_from(nth).unwrap()));
    let reach = rung.standard.reach;
    let reserve = rung.work.reserve.map_or(0.0, |reserve| reserve.reps());
    let ratio = rung.standard.ratio.unwrap_or(1.0);
    match (&rung.help, rung.work.range) {
        (Help::Added, Range::Reps(..)) => {
            let at_standard = ratio * (30.0 + reach + reserve) / 30.0;
            let max = match &rung.demand {
                Some(given) => fresh * at_standard / given.demand.value(),
                None => fresh,
            };
            30.0 * (max / load - 1.0)
        }
        (Help::Added, Range::Hold(..)) => {
            reach * (fresh / level(ladder, rung) * ratio / load).powf(HOLD_POWER)
        }
        (_, Range::Reps(..)) => (30.0 + reach + reserve) * fresh / level(ladder, rung) - 30.0,
        (_, Range::Hold(..)) => reach * (fresh / level(ladder, rung)).powf(HOLD_POWER),
    }
}
