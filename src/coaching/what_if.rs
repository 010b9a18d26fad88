//! Strength, added load and ratio at another bodyweight: the belief of today, carried along by how strength went with
//! bodyweight.
//!
//! Two opinions of the exponent are weighed by how sure each is: the general one, and the athlete's own [`Fit`] where bodyweight
//! varied enough. Both say what went together; neither says what a cut will do. Nothing is said for minors, nor below the
//! healthy range of adults: nobody is talked into losing weight there.

use crate::bests::{Fit, NoFit, Point, Slope, Z80, size_adjusted};
use crate::catalogue::Movement;
use crate::strength::Believed;
use crate::timeline::{LOWEST_HEALTHY_BMI, Timeline};
use crate::units::{Added, Bodyweight, Height, Mass, Share, SystemLoad};

/// Percent of strength for one percent of bodyweight, in general: an assumption, between 0 (only fat changes) and 0.67 (the
/// body only changes its size; Jaric 2002, Sports Med 32:615–631). Chin-ups and squats alike.
pub const GENERAL_EXPONENT: f64 = 0.35;
/// Its standard deviation: an assumption, so that 0 and 0.67 lie about two away.
const GENERAL_SD: f64 = 0.18;
/// No athlete's own line is taken for surer than this: the next months need not go as the last. An assumption.
const LEAST_OWN_SD: f64 = 0.10;

/// Bodyweights nearer than this are the same on a scale that shows tenths. Our choice.
const ROUNDING_KG: f64 = 0.05;

/// What a question about another bodyweight stands on.
#[derive(Debug, Clone, PartialEq)]
pub struct WhatIf {
    /// One-rep max today, in the middle of the belief.
    pub today: SystemLoad,
    /// Spread of its logarithm.
    pub log_sd: f64,
    /// The bodyweight that it belongs to.
    pub bodyweight: Bodyweight,
    /// The part of bodyweight that the movement lifts.
    pub share: Share,
    /// The athlete's own line, or why there is none.
    pub fit: Result<Fit, NoFit>,
    /// The exponent that is used, with its interval.
    pub exponent: Slope,
    /// What is known of who must not be told to lose weight.
    pub care: Care,
}

/// What is known of who must not be told to lose weight.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Care {
    /// Whether the athlete is known to be under 18.
    pub minor: bool,
    /// Standing height, for the healthy range.
    pub height: Option<Height>,
}

/// The answer for one bodyweight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct There {
    /// The bodyweight asked about.
    pub bodyweight: Bodyweight,
    /// One-rep max in all.
    pub system: SystemLoad,
    /// Lower end of its 80 % interval.
    pub low80: SystemLoad,
    /// Upper end.
    pub high80: SystemLoad,
    /// On the belt (below zero: help) at the middle.
    pub added: Added,
    /// On the belt at both ends.
    pub added80: (Added, Added),
    /// In all ÷ bodyweight.
    pub ratio: f64,
    /// In all ÷ bodyweight^0.67.
    pub size_adjusted: f64,
    /// Whether the bodyweight lies outside those that were logged.
    pub beyond_log: bool,
    /// Whether nobody can say if the bodyweight is healthy: no height is logged.
    pub height_unknown: bool,
}

/// Why there is no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Refused {
    /// Under 18.
    Minor,
    /// Below the healthy range of adults.
    Underweight {
        /// The body mass index there, kg/m².
        bmi: f64,
        /// The lightest bodyweight within the range.
        healthy_from: Bodyweight,
    },
    /// Not a bodyweight.
    NoBodyweight,
}

/// Why nothing can be asked of a movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unknown {
    /// It has no system load.
    NoLoad,
    /// Nothing of the body is moved, as with a barbell.
    OutsideTheBody,
    /// No bodyweight is logged.
    NeverWeighed,
    /// No belief of its strength.
    NoBelief,
}

impl WhatIf {
    /// What is known for `movement`; `points` are the sets of one side of it.
    ///
    /// # Errors
    /// When the movement has no system load, no bodyweight is logged, or strength isn't believed yet.
    pub fn new(
        timeline: &Timeline<'_>,
        movement: &Movement,
        believed: Option<&Believed>,
        points: &[Point],
    ) -> Result<Self, Unknown> {
        let share = timeline.share(movement, None).ok_or(Unknown::NoLoad)?;
        if share.value() <= 0.0 {
            return Err(Unknown::OutsideTheBody);
        }
        let bodyweight = timeline.bodyweight().ok_or(Unknown::NeverWeighed)?;
        let belief = &believed.ok_or(Unknown::NoBelief)?.belief;
        let fit = Fit::of(points);
        Ok(Self {
            today: belief.one_rep_max(),
            log_sd: belief.log_sd(),
            bodyweight: belief.bodyweight().unwrap_or(bodyweight),
            share,
            exponent: weighed(fit.as_ref().ok()),
            fit,
            care: Care::of(timeline),
        })
    }

    /// The answer at a bodyweight.
    ///
    /// # Errors
    /// For minors, below the healthy range of adults, and where it is no bodyweight.
    pub fn at(&self, bodyweight: Bodyweight) -> Result<There, Refused> {
        self.care.allows(bodyweight)?;
        let change = (bodyweight.kg() / self.bodyweight.kg()).ln();
        let log_sd = self.log_sd.hypot(self.exponent.sd() * change);
        let system = self.today.times((self.exponent.centre * change).exp());
        let reach = (Z80 * log_sd).exp();
        let (low80, high80) = (system.times(1.0 / reach), system.times(reach));
        let added = |load: SystemLoad| load.added_from(self.share, bodyweight);
        let logged = self.fit.as_ref().ok().map(|fit| fit.bodyweights);
        Ok(There {
            bodyweight,
            system,
            low80,
            high80,
            added: added(system),
            added80: (added(low80), added(high80)),
            ratio: system.ratio(bodyweight),
            size_adjusted: size_adjusted(system, bodyweight),
            beyond_log: logged.is_some_and(|(from, to)| {
                bodyweight.kg() < from.kg() - ROUNDING_KG || bodyweight.kg() > to.kg() + ROUNDING_KG
            }),
            height_unknown: self.care.height.is_none(),
        })
    }

    /// The lightest bodyweight that is answered, where height is known.
    pub fn healthy_from(&self) -> Option<Bodyweight> {
        self.care.healthy_from()
    }
}

impl Care {
    /// What the log says of this.
    pub fn of(timeline: &Timeline<'_>) -> Self {
        Self {
            minor: timeline.is_minor(),
            height: timeline.person.height,
        }
    }

    /// The lightest healthy bodyweight of an adult of this height.
    pub fn healthy_from(&self) -> Option<Bodyweight> {
        let metres = self.height?.metres();
        Some(Bodyweight::new(Mass::from_kg(
            LOWEST_HEALTHY_BMI * metres * metres,
        )))
    }

    /// Whether anything may be said about a bodyweight.
    ///
    /// # Errors
    /// For minors, below the healthy range of adults, and where it is no bodyweight.
    pub fn allows(&self, bodyweight: Bodyweight) -> Result<(), Refused> {
        if self.minor {
            return Err(Refused::Minor);
        }
        if !Bodyweight::BELIEVED_KG.contains(&bodyweight.kg()) {
            return Err(Refused::NoBodyweight);
        }
        let (Some(height), Some(healthy_from)) = (self.height, self.healthy_from()) else {
            return Ok(());
        };
        // Room for rounding: the lightest healthy bodyweight itself is answered.
        if bodyweight.kg() < healthy_from.kg() - super::GRACE_KG {
            let bmi = bodyweight.kg() / (height.metres() * height.metres());
            return Err(Refused::Underweight { bmi, healthy_from });
        }
        Ok(())
    }
}

/// By how much a strength in parts of bodyweight (a ladder's scale of demand) changes from one bodyweight to another: one general
/// exponent for every rail, so that left and right move alike.
pub fn relative_change(from: Bodyweight, to: Bodyweight) -> f64 {
    libm::pow(to.kg() / from.kg(), GENERAL_EXPONENT - 1.0)
}

/// Both opinions of the exponent, weighed by one over their variances (ordinary combination of independent estimates).
fn weighed(fit: Option<&Fit>) -> Slope {
    let general = (GENERAL_EXPONENT, GENERAL_SD);
    let own = fit.map(|fit| (fit.exponent.centre, fit.exponent.sd().max(LEAST_OWN_SD)));
    let opinions = [Some(general), own].into_iter().flatten();
    let (sum, weight) = opinions.fold((0.0, 0.0), |(sum, weight), (exponent, sd)| {
        (sum + exponent / (sd * sd), weight + 1.0 / (sd * sd))
    });
    let (centre, reach) = (sum / weight, Z80 / weight.sqrt());
    Slope {
        centre,
        low80: centre - reach,
        high80: centre + reach,
    }
}
