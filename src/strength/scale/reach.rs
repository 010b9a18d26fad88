//! A strength on a scale of demand, and how several of them are put together.

use crate::body::Band;
use crate::strength::normal::cdf;
use crate::strength::{Belief, Coverage};

use super::{Link, LinkKind};

/// A strength on a ladder's scale, 1.00 = the goal, normal on the log scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    log_mean: f64,
    log_sd: f64,
}

/// A body model's band is read as holding in 8 of 10 cases. A.
const MODEL_SDS: f64 = 2.0 * 1.281_55;
/// However much evidence there is, the scale itself is no better known. A.
const LEAST_SD: f64 = 0.02;

impl Reach {
    /// A strength of `centre` with a doubt of `log_sd`; none where the numbers are none.
    pub(super) fn new(centre: f64, log_sd: f64) -> Option<Reach> {
        let log_mean = libm::log(centre);
        (centre > 0.0 && log_mean.is_finite() && log_sd.is_finite()).then_some(Reach { log_mean, log_sd })
    }

    /// A one-rep max times a model's factor: its band's doubt adds to the belief's.
    pub(super) fn by(centre: f64, own_sd: f64, model: Band) -> Option<Reach> {
        let model_sd = model_sd(model);
        Reach::new(centre, (own_sd * own_sd + model_sd * model_sd).sqrt())
    }

    /// The middle of the belief.
    pub fn centre(self) -> f64 {
        libm::exp(self.log_mean)
    }

    /// Sd on the log scale.
    pub fn log_sd(self) -> f64 {
        self.log_sd
    }

    /// The demand so many standard deviations from the middle; what a band is drawn from.
    pub fn at(self, sds: f64) -> f64 {
        libm::exp(self.log_mean + sds * self.log_sd)
    }

    /// Low and high end of a band.
    pub fn band(self, coverage: Coverage) -> (f64, f64) {
        let reach = coverage.sds();
        (self.at(-reach), self.at(reach))
    }

    /// The chance that the strength is at least so much.
    pub fn chance(self, demand: f64) -> f64 {
        if demand <= 0.0 {
            return 1.0;
        }
        cdf((self.log_mean - libm::log(demand)) / self.log_sd.max(1e-9))
    }

    /// The same with more doubt: what a single day adds, sd on the log scale.
    pub fn with_noise(self, sd: f64) -> Reach {
        Reach {
            log_sd: (self.log_sd * self.log_sd + sd * sd).sqrt(),
            ..self
        }
    }

    /// Moved as a belief moves from one day to another, and as much wider.
    pub(super) fn moved(self, from: &Belief, to: &Belief) -> Reach {
        let log = |belief: &Belief| libm::log(belief.one_rep_max().kg());
        let wider = (to.log_sd() * to.log_sd() - from.log_sd() * from.log_sd()).max(0.0);
        Reach {
            log_mean: self.log_mean + log(to) - log(from),
            log_sd: (self.log_sd * self.log_sd + wider).sqrt(),
        }
    }
}

/// Sd on the log scale that a model's band stands for.
pub(super) fn model_sd(band: Band) -> f64 {
    (libm::log(band.high()) - libm::log(band.low())) / MODEL_SDS
}

/// Evidence put together by precision (inverse variance). Grip bounds a pull and is no measure of it; what shows only "at least"
/// counts where it lies above the rest, or stands alone.
pub(super) fn together<'l>(links: impl Iterator<Item = &'l Link>) -> Option<Reach> {
    let (loose, firm): (Vec<&Link>, Vec<&Link>) = links
        .filter(|link| link.kind != LinkKind::Hang)
        .partition(|link| link.at_least);
    let base = weighed(&firm);
    let mut all = firm;
    all.extend(
        loose
            .into_iter()
            .filter(|link| base.is_none_or(|base| link.reach.log_mean > base.log_mean)),
    );
    weighed(&all)
}

fn weighed(links: &[&Link]) -> Option<Reach> {
    let weights: f64 = links.iter().map(|link| weight(link.reach)).sum();
    let sum: f64 = links
        .iter()
        .map(|link| weight(link.reach) * link.reach.log_mean)
        .sum();
    (weights > 0.0).then(|| Reach {
        log_mean: sum / weights,
        log_sd: (1.0 / weights).sqrt().max(LEAST_SD),
    })
}

fn weight(reach: Reach) -> f64 {
    1.0 / (reach.log_sd * reach.log_sd).max(1e-6)
}
