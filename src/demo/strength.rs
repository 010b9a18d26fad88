//! What an invented body can do: a one-rep max that grows, days that differ, sets that tire.
//!
//! Made up for the demo and for tests that live a year; not the belief of `strength`, and not a claim about people.

use crate::catalogue::{Help, Ladder, Range, Rung};
use crate::coaching::judge::EPLEY_REPS;

/// Strength lost from one set to the next, as a part. Made up.
const TIRING: f64 = 0.012;
/// How strongly a hold's seconds follow strength. Near the published endurance curves' slope at these intensities; made up.
const HOLD_POWER: f64 = 3.0;
/// Seconds to failure of a hold at just the one-rep max. Made up.
const HOLD_AT_MAX_SECS: f64 = 8.0;
/// Demands taken for a ladder that states none, from the first rung to the goal. Made up.
const EVEN_DEMANDS: (f64, f64) = (0.5, 1.0);

/// How a rung asks for strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Asks {
    /// System load as a part of the one-rep max, which is so many times the level on the ladder's scale.
    Load(f64),
    /// So much on the ladder's scale.
    Demand(f64),
}

/// What a rung asks of this body.
pub fn asks(ladder: &Ladder, rung: &Rung) -> Asks {
    if rung.help == Help::Added {
        // A stated demand says which level just meets the standard; the standard's load and reps say which one-rep max that is.
        let max = standard_max(rung);
        return Asks::Load(
            rung.demand
                .as_ref()
                .map_or(1.0, |given| max / given.demand.value()),
        );
    }
    if let Some(given) = &rung.demand {
        return Asks::Demand(given.demand.value());
    }
    let count = ladder.main_line().count().max(2);
    let place = ladder
        .main_line()
        .position(|main| main.id == rung.id)
        .unwrap_or(0);
    let part = whole(place) / whole(count - 1);
    Asks::Demand(EVEN_DEMANDS.0 + (EVEN_DEMANDS.1 - EVEN_DEMANDS.0) * part)
}

/// The strength that just meets the rung's standard: one-rep max ÷ bodyweight for loads, else a level on the ladder's scale.
pub fn meets(ladder: &Ladder, rung: &Rung) -> f64 {
    match (asks(ladder, rung), &rung.demand) {
        (Asks::Load(_), Some(given)) => given.demand.value(),
        (Asks::Load(_), None) => standard_max(rung),
        (Asks::Demand(demand), _) => demand,
    }
}

/// The one-rep max, as a ratio of bodyweight, that the standard's load, reps and reserve mean.
fn standard_max(rung: &Rung) -> f64 {
    let reserve = rung.work.reserve.map_or(0.0, crate::units::Reserve::reps);
    let reps = if rung.work.range.is_hold() {
        0.0
    } else {
        rung.standard.reach + reserve
    };
    rung.standard.ratio.unwrap_or(1.0) * (EPLEY_REPS + reps) / EPLEY_REPS
}

fn whole(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::MAX, f64::from)
}

/// Reps or seconds to failure in set number `set` (from 0) on a day of the given form.
///
/// `strength` is the one-rep max ÷ bodyweight for loads, or a level on the ladder's scale; `load` is system load ÷ bodyweight.
pub fn to_failure(asks: Asks, rung: &Rung, strength: f64, load: f64, set: usize) -> f64 {
    let fresh = strength * (1.0 - TIRING * whole(set));
    let reserve = rung.work.reserve.map_or(0.0, crate::units::Reserve::reps);
    match (asks, rung.work.range) {
        (Asks::Load(times), Range::Reps(..)) => EPLEY_REPS * (fresh * times / load - 1.0) + 1.0,
        (Asks::Load(times), Range::Hold(..)) => HOLD_AT_MAX_SECS * (fresh * times / load).powf(HOLD_POWER),
        (Asks::Demand(demand), Range::Reps(..)) => {
            (EPLEY_REPS + rung.standard.reach + reserve) * (fresh / demand) - EPLEY_REPS
        }
        (Asks::Demand(demand), Range::Hold(..)) => rung.standard.reach * (fresh / demand).powf(HOLD_POWER),
    }
}
