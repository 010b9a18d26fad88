//! What the filter says on a day: the 1RM with its bands, the trend, chances and expected repetitions.

use crate::units::{Bodyweight, Mass, SystemLoad};

use super::Tuning;
use super::curve::Curve;
use super::filter::Filter;
use super::normal::cdf;
use super::state::{ENDURANCE, LEVEL, SHAPE, State, TREND};

/// A belief of the 1RM at average readiness. A tested max lies about 1.7 % lower: plates step, and some tries miss.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    pub(super) state: State,
    pub(super) tuning: Tuning,
    day_var: f64,
    silence: f64,
    days: u32,
    bodyweight_kg: Option<f64>,
    side: f64,
}

/// A range of system loads, low to high.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Its lower end.
    pub low: SystemLoad,
    /// Its upper end.
    pub high: SystemLoad,
}

/// How likely a band holds the 1RM.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Coverage {
    /// In 50 of 100 cases.
    Half,
    /// In 80 of 100 cases.
    Eighty,
    /// In 95 of 100 cases.
    NinetyFive,
}

impl Coverage {
    /// Standard deviations to either side.
    pub(super) fn sds(self) -> f64 {
        match self {
            Coverage::Half => 0.674_49,
            Coverage::Eighty => 1.281_55,
            Coverage::NinetyFive => 1.959_96,
        }
    }
}

/// Misses by grip or technique although the strength is there. A.
const SLIPS: f64 = 0.02;
/// Sd of the log bodyweight of a day that is planned for. A.
const PLANNED_WEIGHING_SD: f64 = 0.0042;

impl Belief {
    /// The belief of a side (−1 left, 1 right, 0 both) that trained on so many days.
    pub(super) fn new(state: State, side: f64, days: u32, filter: &Filter) -> Self {
        Self {
            state,
            side,
            days,
            tuning: filter.tuning.clone(),
            day_var: filter.day_var,
            silence: filter.silence,
            bodyweight_kg: filter.trend.as_ref().map(|trend| trend.kg),
        }
    }

    /// The 1RM.
    pub fn one_rep_max(&self) -> SystemLoad {
        SystemLoad::new(Mass::from_kg(libm::exp(self.state.strength(self.side))))
    }

    /// Sd of the log 1RM.
    pub fn log_sd(&self) -> f64 {
        let silent = self.tuning.silence_sd * libm::pow(self.silence, self.tuning.silence_power);
        let widen = self.widen();
        (widen * widen * self.state.strength_var(self.side)
            + self.tuning.day_share * self.day_var
            + silent * silent)
            .sqrt()
    }

    /// Factor on the sd of the state, for what the model leaves out; more of it shows on the first days.
    fn widen(&self) -> f64 {
        let young = if self.days < 3 {
            self.tuning.first_days_widen
        } else {
            1.0
        };
        young * self.tuning.widen
    }

    /// The band that holds the 1RM as often as `coverage` says.
    pub fn band(&self, coverage: Coverage) -> Band {
        let (mean, reach) = (self.state.strength(self.side), coverage.sds() * self.log_sd());
        let load = |log: f64| SystemLoad::new(Mass::from_kg(libm::exp(log)));
        Band {
            low: load(mean - reach),
            high: load(mean + reach),
        }
    }

    /// Training days that it stands on; fewer than 3 are few.
    pub fn sessions(&self) -> u32 {
        self.days
    }

    /// Sd by which a day differs from the average one, as a part of the 1RM.
    pub fn day_sd(&self) -> f64 {
        self.day_var.sqrt()
    }

    /// Change per week as a part of the 1RM, and its sd.
    pub fn trend(&self) -> (f64, f64) {
        (
            self.state.mean[TREND],
            self.state.cov[TREND][TREND].max(0.0).sqrt(),
        )
    }

    /// Repetitions to failure at 80 % of the 1RM.
    pub fn reps_at_80(&self) -> f64 {
        1.0 + libm::exp(-self.state.mean[ENDURANCE])
    }

    /// The belief `days` of training later.
    pub fn after_training(&self, days: f64) -> Self {
        let mut later = self.clone();
        later.state.pass_training(days.max(0.0), &self.tuning);
        later
    }

    /// The bodyweight trend that it stands on.
    pub fn bodyweight(&self) -> Option<Bodyweight> {
        self.bodyweight_kg.map(|kg| Bodyweight::new(Mass::from_kg(kg)))
    }

    /// The belief at another bodyweight, the training being the same; unchanged where a bodyweight is not known.
    pub fn at_bodyweight(&self, other: Bodyweight) -> Self {
        let mut there = self.clone();
        if let (Some(kg), true) = (self.bodyweight_kg, other.kg() > 0.0) {
            let change = libm::log(other.kg() / kg);
            let sd = self.tuning.bodyweight_slope_sd * change / self.tuning.widen;
            there.state.mean[LEVEL] += self.tuning.bodyweight_slope * change;
            there.state.cov[LEVEL][LEVEL] += sd * sd;
            there.bodyweight_kg = Some(other.kg());
        }
        there
    }

    /// The chance that the 1RM at average readiness is at least `load`.
    pub fn chance_of_one_rep_max(&self, load: SystemLoad) -> f64 {
        if load.kg() <= 0.0 {
            return 1.0;
        }
        cdf((self.state.strength(self.side) - libm::log(load.kg())) / self.log_sd().max(1e-9))
    }

    /// The chance of one repetition at `load` on a day that nothing is known of.
    pub fn chance(&self, load: SystemLoad) -> f64 {
        self.chance_of_reps(load, 1.0)
    }

    /// The chance of at least `reps` in a fresh set to failure at `load`.
    pub fn chance_of_reps(&self, load: SystemLoad, reps: f64) -> f64 {
        if load.kg() <= 0.0 || reps < 1.0 {
            return 1.0 - SLIPS;
        }
        let curve = Curve::new(self.state.mean[SHAPE], self.state.mean[ENDURANCE]);
        let (ratio, slope) = curve.log_ratio(reps);
        let a = -slope * (reps - 1.0);
        let d = if self.tuning.curve_shape_sd > 0.0 {
            -curve.by_shape(reps, (ratio, slope))
        } else {
            0.0
        };
        let with = self.state.strength_cov(self.side);
        let p = &self.state.cov;
        let along = self.state.strength_var(self.side)
            + 2.0 * (a * with[ENDURANCE] + d * with[SHAPE] + a * d * p[ENDURANCE][SHAPE])
            + a * a * p[ENDURANCE][ENDURANCE]
            + d * d * p[SHAPE][SHAPE];
        let widen = self.widen();
        let var = widen * widen * along.max(0.0)
            + (self.tuning.reps_cv * a) * (self.tuning.reps_cv * a)
            + 2.0 * self.day_var
            + self.tuning.set_sd * self.tuning.set_sd
            + PLANNED_WEIGHING_SD * PLANNED_WEIGHING_SD;
        let spare = self.state.strength(self.side) - libm::log(load.kg()) - ratio;
        (1.0 - SLIPS) * cdf(spare / var.sqrt())
    }

    /// Repetitions to expect of a fresh set to failure at `load`, at most 60.
    pub fn expected_reps(&self, load: SystemLoad) -> f64 {
        (1..=60u8)
            .map(|reps| self.chance_of_reps(load, f64::from(reps)))
            .sum()
    }
}
