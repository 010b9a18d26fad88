//! How strength went with bodyweight: a straight line through logarithms, robust against bad days.
//!
//! ln(one-rep max) against ln(bodyweight), one point a week: the best estimate of the week. The slope is the median of the
//! slopes of all pairs, with the interval of Sen 1968 (Theil 1950; Sen, J Am Stat Assoc 63:1379–1389); neighbouring weeks are
//! alike, so the interval is widened by what the residuals share from week to week (Yue & Wang 2004, Water Resour Manag
//! 18:201–218, from memory). It shows what went together: a year's training is in it as well as the bodyweight. Where
//! bodyweight only drifted one way, a steady gain by training would look the same, and the interval says so.

use std::collections::BTreeMap;

use chrono::{Datelike, NaiveDate};

use crate::timeline::least_squares;
use crate::units::{Bodyweight, Mass, SystemLoad};

use super::points::Point;

/// Fewest weeks with an estimate. Common practice, no source.
const FEWEST_WEEKS: usize = 6;
/// Least spread of bodyweight, as a part of it, between the 10th and the 90th of 100 weeks: three times what a day's weighing
/// scatters by (about 1 %). Common practice, no source.
const LEAST_SPREAD: f64 = 0.03;
/// Standard normal deviate of a two-sided 80 % interval: its quantile at 0.9.
pub const Z80: f64 = 1.281_551_565_544_600_4;
/// Median absolute deviation to standard deviation, for a normal distribution: 1 over its quantile at 0.75.
const MAD_TO_SD: f64 = 1.482_602_218_505_602;
/// How fast strength may have risen or fallen by training alone, a part of it a week: standard deviation, about 8 % a year. An
/// assumption.
const TRAINING_A_WEEK: f64 = 0.0015;
/// Most that neighbouring weeks may share; beyond it the widening has no end. An assumption.
const MOST_SHARED: f64 = 0.9;

/// A slope with its 80 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slope {
    /// The median of all pairs' slopes.
    pub centre: f64,
    /// Lower end.
    pub low80: f64,
    /// Upper end.
    pub high80: f64,
}

/// Strength against bodyweight.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// Percent of strength for one percent of bodyweight.
    pub exponent: Slope,
    /// Bodyweight in the middle of the weeks.
    pub middle: Bodyweight,
    /// The line's one-rep max there.
    pub one_rep_max: SystemLoad,
    /// How far a week lies off the line, as a part of it: standard deviation, robust.
    pub spread: f64,
    /// Lightest and heaviest of the weeks.
    pub bodyweights: (Bodyweight, Bodyweight),
    /// Weeks that it stands on.
    pub weeks: usize,
    /// Sets in those weeks that gave an estimate.
    pub sets: usize,
}

/// Why there is no line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoFit {
    /// Too few weeks with a set that gives an estimate.
    TooFew {
        /// Weeks there are.
        weeks: usize,
        /// Weeks that are asked.
        asked: usize,
    },
    /// Bodyweight stayed about the same.
    HardlyVaried {
        /// Lower end of the middle 80 of 100 weeks, kg.
        from_kg: f64,
        /// Upper end.
        to_kg: f64,
    },
}

impl Fit {
    /// The line through `points`; odd sets don't count.
    ///
    /// # Errors
    /// When there are fewer than 6 weeks, or bodyweight hardly varied.
    pub fn of(points: &[Point]) -> Result<Self, NoFit> {
        let mut weeks: BTreeMap<i32, (f64, f64)> = BTreeMap::new();
        let mut sets = 0;
        for point in points {
            let (Some(body), Some(max)) = (point.bodyweight, point.one_rep_max.filter(|_| !point.doubted))
            else {
                continue;
            };
            sets += 1;
            let here = (body.kg().ln(), max.kg().ln());
            let best = weeks.entry(week(point.date)).or_insert(here);
            if here.1 > best.1 {
                *best = here;
            }
        }
        let times: Vec<f64> = weeks.keys().copied().map(f64::from).collect();
        let logs: Vec<(f64, f64)> = weeks.into_values().collect();
        if logs.len() < FEWEST_WEEKS {
            return Err(NoFit::TooFew {
                weeks: logs.len(),
                asked: FEWEST_WEEKS,
            });
        }
        let mut bodies: Vec<f64> = logs.iter().map(|(body, _)| *body).collect();
        bodies.sort_by(f64::total_cmp);
        let (low, high) = (quantile(&bodies, 0.1), quantile(&bodies, 0.9));
        let hardly = NoFit::HardlyVaried {
            from_kg: low.exp(),
            to_kg: high.exp(),
        };
        if high - low < LEAST_SPREAD {
            return Err(hardly);
        }
        Self::through(&logs, &times, &bodies, sets).ok_or(hardly)
    }

    fn through(logs: &[(f64, f64)], times: &[f64], bodies: &[f64], sets: usize) -> Option<Self> {
        let slope = theil_sen(logs, 1.0)?;
        let middle = quantile(bodies, 0.5);
        let level = |slope: f64| {
            let mut levels: Vec<f64> = logs.iter().map(|(x, y)| y - slope * (x - middle)).collect();
            levels.sort_by(f64::total_cmp);
            quantile(&levels, 0.5)
        };
        let at_middle = level(slope.centre);
        let residuals: Vec<f64> = logs
            .iter()
            .map(|(x, y)| y - at_middle - slope.centre * (x - middle))
            .collect();
        let exponent = theil_sen(logs, widening(&residuals))?.with_doubt(by_training(logs, times));
        let mut sizes: Vec<f64> = residuals.iter().map(|residual| residual.abs()).collect();
        sizes.sort_by(f64::total_cmp);
        let body = |log: f64| Bodyweight::new(Mass::from_kg(log.exp()));
        Some(Self {
            exponent,
            middle: body(middle),
            one_rep_max: SystemLoad::new(Mass::from_kg(at_middle.exp())),
            spread: MAD_TO_SD * quantile(&sizes, 0.5),
            bodyweights: (body(*bodies.first()?), body(*bodies.last()?)),
            weeks: logs.len(),
            sets,
        })
    }

    /// The line's one-rep max at a bodyweight.
    pub fn at(&self, bodyweight: Bodyweight) -> SystemLoad {
        let change = (bodyweight.kg() / self.middle.kg()).ln();
        self.one_rep_max.times((self.exponent.centre * change).exp())
    }

    /// Where a week may lie around the line at a bodyweight: standard deviation of the logarithm. It grows away from the middle
    /// with what the slope isn't sure of.
    pub fn log_sd_at(&self, bodyweight: Bodyweight) -> f64 {
        let change = (bodyweight.kg() / self.middle.kg()).ln();
        self.spread.hypot(self.exponent.sd() * change)
    }

    /// The slope in kg of one-rep max for one kg of bodyweight, in the middle of the weeks.
    pub fn kg_per_kg(&self) -> Slope {
        let there = self.one_rep_max.kg() / self.middle.kg();
        let Slope {
            centre,
            low80,
            high80,
        } = self.exponent;
        Slope {
            centre: centre * there,
            low80: low80 * there,
            high80: high80 * there,
        }
    }
}

impl Slope {
    /// The same slope, its interval widened by a further standard deviation: half-widths add as squares.
    fn with_doubt(self, sd: f64) -> Self {
        Self {
            low80: self.centre - (self.centre - self.low80).hypot(Z80 * sd),
            high80: self.centre + (self.high80 - self.centre).hypot(Z80 * sd),
            ..self
        }
    }

    /// A standard deviation that its interval would have, were it normal.
    pub fn sd(&self) -> f64 {
        (self.high80 - self.low80) / (2.0 * Z80)
    }
}

/// Weeks from Monday to Sunday, numbered through.
fn week(date: NaiveDate) -> i32 {
    (date.num_days_from_ce() - 1).div_euclid(7)
}

/// The value below which the part `of` of sorted values lies, straight between neighbours.
fn quantile(sorted: &[f64], of: f64) -> f64 {
    let last = sorted.len().saturating_sub(1);
    let place = of * count(last);
    let below = sorted.get(whole(place)).copied();
    let above = sorted.get((whole(place) + 1).min(last)).copied();
    match (below, above) {
        (Some(below), Some(above)) => below + (above - below) * place.fract(),
        _ => 0.0,
    }
}

/// The median slope of all pairs with its interval, whose width is multiplied by `widen`: Sen 1968, equation 2.6.
fn theil_sen(points: &[(f64, f64)], widen: f64) -> Option<Slope> {
    let mut slopes: Vec<f64> = Vec::new();
    for (at, one) in points.iter().enumerate() {
        for other in points.iter().skip(at + 1) {
            if one.0 != other.0 {
                slopes.push((other.1 - one.1) / (other.0 - one.0));
            }
        }
    }
    if slopes.is_empty() {
        return None;
    }
    slopes.sort_by(f64::total_cmp);
    let n = count(points.len());
    let part = |k: f64| k * (k - 1.0) * (2.0 * k + 5.0);
    let tied = |of: fn(&(f64, f64)) -> f64| -> f64 {
        let mut values: Vec<f64> = points.iter().map(of).collect();
        values.sort_by(f64::total_cmp);
        values
            .chunk_by(|a, b| a == b)
            .map(|alike| part(count(alike.len())))
            .sum()
    };
    let variance = (part(n) - tied(|point| point.0) - tied(|point| point.1)) / 18.0;
    let reach = widen * Z80 * variance.max(0.0).sqrt();
    let (pairs, last) = (count(slopes.len()), slopes.len() - 1);
    let low = whole(((pairs - reach) / 2.0).round_ties_even()).saturating_sub(1);
    let high = whole(((pairs + reach) / 2.0).round_ties_even()).min(last);
    Some(Slope {
        centre: quantile(&slopes, 0.5),
        low80: slopes.get(low).copied()?,
        high80: slopes.get(high).copied()?,
    })
}

/// How far a steady change by training alone could have tilted the line: as far as bodyweight ran along with time.
fn by_training(logs: &[(f64, f64)], times: &[f64]) -> f64 {
    let along: Vec<(f64, f64)> = logs
        .iter()
        .map(|(body, _)| *body)
        .zip(times.iter().copied())
        .collect();
    least_squares(&along).map_or(0.0, |line| TRAINING_A_WEEK * line.slope.abs())
}

/// How much wider an interval is when residuals in time order share so much with their neighbour: √((1 + r) ÷ (1 − r)).
fn widening(residuals: &[f64]) -> f64 {
    let all: f64 = residuals.iter().map(|residual| residual * residual).sum();
    let together: f64 = residuals
        .windows(2)
        .map(|pair| pair.iter().product::<f64>())
        .sum();
    let shared = if all > 0.0 {
        (together / all).clamp(0.0, MOST_SHARED)
    } else {
        0.0
    };
    ((1.0 + shared) / (1.0 - shared)).sqrt()
}

#[allow(
    clippy::cast_precision_loss,
    reason = "pairs of weeks of a lifetime are far below 2^52"
)]
fn count(of: usize) -> f64 {
    of as f64
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a place in a list; a float below it converts to 0"
)]
fn whole(place: f64) -> usize {
    place.max(0.0) as usize
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::timeline::LINNERUD;

    fn is(slope: Slope, expected: [f64; 3]) {
        for (value, expected) in [slope.centre, slope.low80, slope.high80]
            .into_iter()
            .zip(expected)
        {
            assert!(
                (value - expected).abs() < 1e-9,
                "{slope:?}: {value} is not {expected}"
            );
        }
    }

    #[test]
    fn the_median_of_all_slopes_and_its_interval_are_those_of_scipy() {
        // python3 -c "
        // import numpy as np, scipy.stats as st
        // from sklearn.datasets import load_linnerud
        // d = load_linnerud(); x = d.target[:, 0]; y = d.data[:, 0]
        // print(st.theilslopes(y, x, 0.8)); print(st.theilslopes(np.log(y), np.log(x), 0.8))"   (SciPy 1.17.1)
        let chin_ups = theil_sen(&LINNERUD, 1.0).unwrap();
        is(
            chin_ups,
            [
                -0.098_379_629_629_629_62,
                -0.176_470_588_235_294_13,
                -0.009_174_311_926_605_505,
            ],
        );
        let logs: Vec<(f64, f64)> = LINNERUD.iter().map(|(x, y)| (x.ln(), y.ln())).collect();
        let exponent = theil_sen(&logs, 1.0).unwrap();
        is(
            exponent,
            [
                -1.980_398_620_336_420_1,
                -4.305_185_965_654_445,
                -0.361_865_205_189_055_74,
            ],
        );
    }

    #[test]
    fn one_wild_week_moves_the_line_hardly() {
        let calm: Vec<(f64, f64)> = (0..30u8).map(|at| (f64::from(at), 2.0 * f64::from(at))).collect();
        let mut wild = calm.clone();
        wild[29].1 = 500.0;
        assert_eq!(theil_sen(&calm, 1.0).unwrap().centre, 2.0);
        assert!((theil_sen(&wild, 1.0).unwrap().centre - 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_drift_of_bodyweight_cannot_be_told_from_training_and_says_so() {
        // 1 % of bodyweight in 20 weeks, one way: 0.15 % a week by training would tilt the slope by 3. There and back: by nothing.
        let times: Vec<f64> = (0..40u8).map(f64::from).collect();
        let one_way: Vec<(f64, f64)> = times.iter().map(|week| (0.01 * week / 20.0, 0.0)).collect();
        assert!((by_training(&one_way, &times) - 3.0).abs() < 1e-9);
        let back: Vec<(f64, f64)> = times
            .iter()
            .map(|week| (0.01 * (week - 19.5).abs() / 20.0, 0.0))
            .collect();
        assert!(by_training(&back, &times) < 1e-9);
    }

    #[test]
    fn weeks_that_hang_together_widen_the_interval() {
        // Yue & Wang 2004: an autoregressive part of 0.5 triples the variance.
        assert!((widening(&[1.0, -1.0, 1.0, -1.0]) - 1.0).abs() < 1e-12);
        let slow: Vec<f64> = (0..200u8).map(|at| (f64::from(at) / 20.0).sin()).collect();
        assert!(widening(&slow) > 4.0);
    }
}
