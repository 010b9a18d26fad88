//! The same lifter at two bodyweights: the best single near the lighter and near the heavier end of what was logged.

use crate::units::{Bodyweight, Mass};

use super::points::Point;

/// A set counts for a bodyweight within so many kg of it: a day's weighing scatters by about 1 %. Common practice, no source.
pub const WITHIN_KG: f64 = 1.5;
/// Two bodyweights are worth comparing when they lie so many kg apart: then no set counts for both, and weighing can't
/// explain the difference. An assumption.
const LEAST_APART_KG: f64 = 4.0;
/// Bodyweights are compared at multiples of so many kg.
const ROUND_KG: f64 = 1.0;

/// The best single at two bodyweights.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoWeights<'p> {
    /// The lighter one and its best.
    pub light: (Bodyweight, &'p Point),
    /// The heavier one and its best.
    pub heavy: (Bodyweight, &'p Point),
}

/// The heaviest single near the lightest and near the heaviest bodyweight that has one; none where they lie close together.
pub fn two_weights(points: &[Point]) -> Option<TwoWeights<'_>> {
    let singles: Vec<(f64, &Point)> = points
        .iter()
        .filter(|point| point.reps == 1.0 && !point.doubted)
        .filter_map(|point| Some((point.bodyweight?.kg(), point)))
        .collect();
    let ends = singles.iter().map(|(kg, _)| *kg);
    let (low, high) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), kg| {
        (low.min(kg), high.max(kg))
    });
    // Whole kilograms inside the ends, so that each has a set within reach.
    let light = ((low + WITHIN_KG / 2.0) / ROUND_KG).round() * ROUND_KG;
    let heavy = ((high - WITHIN_KG / 2.0) / ROUND_KG).round() * ROUND_KG;
    if heavy - light < LEAST_APART_KG {
        return None;
    }
    let best_near = |kg: f64| {
        let near = singles.iter().filter(|(at, _)| (at - kg).abs() <= WITHIN_KG);
        near.max_by(|a, b| a.1.system.kg().total_cmp(&b.1.system.kg()))
            .map(|(_, point)| *point)
    };
    let weight = |kg: f64| Bodyweight::new(Mass::from_kg(kg));
    Some(TwoWeights {
        light: (weight(light), best_near(light)?),
        heavy: (weight(heavy), best_near(heavy)?),
    })
}
