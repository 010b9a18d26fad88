//! When a rung comes within reach, if the training goes on: a range of weeks, never a date alone.

use crate::catalogue::{Help, Ladder, Rung};
use crate::strength::Belief;
use crate::strength::goal::{first_week, weekly};
use crate::units::{Mass, Rail, SystemLoad};

use super::Estimates;

/// What can be said of a rung that lies ahead.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Forecast {
    /// Weeks until its standard is within reach with a chance of one in ten; none: not in sight within two years.
    pub soonest: Option<u16>,
    /// With an even chance.
    pub median: Option<u16>,
    /// With a chance of nine in ten: from the soonest to here lie 80 % of the chances.
    pub latest: Option<u16>,
    /// The chance that it is within reach a year from now.
    pub in_a_year: f64,
    /// The chance that it is within reach today.
    pub now: f64,
}

/// Days of a year.
const YEAR: f64 = 365.0;

impl Forecast {
    fn by(chance_after: impl Fn(f64) -> f64) -> Self {
        let chances = weekly(&chance_after);
        Self {
            soonest: first_week(&chances, 0.1),
            median: first_week(&chances, 0.5),
            latest: first_week(&chances, 0.9),
            in_a_year: chance_after(YEAR),
            now: chance_after(0.0),
        }
    }
}

impl Estimates<'_, '_> {
    /// When the standard of `rung` comes within reach of a rail, one fresh set of it; none without evidence, and for holds, of
    /// whose future nothing is known.
    ///
    /// A rung of plain repetitions is asked of its own movement's belief at today's bodyweight; another by the ladder's scale.
    pub fn forecast(&mut self, ladder: &Ladder, rung: &Rung, rail: Rail) -> Option<Forecast> {
        if let Some((belief, load)) = self.own_movement(rung, rail) {
            return Some(Forecast::by(|days| {
                belief.after_training(days).chance_of_one_rep_max(load)
            }));
        }
        let demands = self.demands(ladder);
        let asked = demands
            .iter()
            .find(|demand| demand.rung == rung.id)?
            .demand?
            .centre();
        let believed = self
            .on_ladder(ladder, rail)
            .filter(|believed| believed.has_forecast())?;
        Some(Forecast::by(|days| believed.after_training(days).chance(asked)))
    }

    /// The belief of the rung's own movement, and the one-rep max that its standard asks.
    fn own_movement(&mut self, rung: &Rung, rail: Rail) -> Option<(Belief, SystemLoad)> {
        let plain = matches!(rung.help, Help::Added | Help::Plain) && !rung.work.range.is_hold();
        let movement = self.catalogue().movement(&rung.movement).filter(|_| plain)?;
        let believed = self.of(&movement.id, rail.side().filter(|_| movement.is_sided()))?;
        let reserve = rung.work.reserve.map_or(0.0, |reserve| reserve.reps());
        let ratio = rung.standard.ratio.unwrap_or(believed.share.value());
        let load = SystemLoad::new(Mass::from_kg(ratio * believed.bodyweight?.kg()));
        let belief = believed.belief.clone();
        let asked = belief.one_rep_max_for(load, rung.standard.reach + reserve);
        (load.kg() > 0.0).then_some((belief, asked))
    }
}
