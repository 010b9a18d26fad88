//! How high rungs stand: spaced by demand, never closer than a label needs.
//!
//! One map from demand to height, straight between rungs, carries everything else that has a demand: bands, companions,
//! ghosts. Where no demand is known rungs stand evenly and the map knows nothing.

/// Least distance of two rungs with two-line labels, points.
pub const TWO_LINES: f32 = 38.0;
/// Least distance of two rungs with one-line labels, points.
pub const ONE_LINE: f32 = 26.0;

/// Distances between rungs, from the ground up.
#[derive(Debug, Clone, PartialEq)]
pub struct Heights {
    /// Height of each rung over the first.
    pub over_first: Vec<f32>,
    /// Whether the gap above each rung (but the last) is wider than its demand.
    pub stretched: Vec<bool>,
    /// Whether labels have one line.
    pub one_line: bool,
    /// Whether they don't fit the space: the ladder scrolls.
    pub scrolls: bool,
    /// Points for one unit of demand; none where rungs stand evenly.
    pub scale: Option<f64>,
}

impl Heights {
    /// Spaces rungs with these demands so that the first and the last are `space` points apart.
    pub fn of(demands: &[Option<f64>], space: f32) -> Self {
        let count = demands.len();
        let one_line = many(count) * TWO_LINES > space + TWO_LINES;
        let least = if one_line { ONE_LINE } else { TWO_LINES };
        let gaps = count.saturating_sub(1);
        let scrolls = least * many(gaps) > space;
        match differences(demands) {
            Some(steps) => Self::by_demand(&steps, space, least, one_line, scrolls),
            None => {
                let gap = if scrolls {
                    least
                } else {
                    space / many(gaps).max(1.0)
                };
                Self::from_gaps(vec![gap; gaps], vec![false; gaps], one_line, scrolls, None)
            }
        }
    }

    fn by_demand(steps: &[f64], space: f32, least: f32, one_line: bool, scrolls: bool) -> Self {
        let scale = if scrolls {
            f64::from(least) / median(steps)
        } else {
            filling(steps, space, least)
        };
        let natural = |step: &f64| narrow(step * scale);
        let gaps = steps.iter().map(|step| natural(step).max(least)).collect();
        let stretched = steps.iter().map(|step| natural(step) < least - 0.5).collect();
        Self::from_gaps(gaps, stretched, one_line, scrolls, Some(scale))
    }

    fn from_gaps(
        gaps: Vec<f32>,
        stretched: Vec<bool>,
        one_line: bool,
        scrolls: bool,
        scale: Option<f64>,
    ) -> Self {
        let mut over_first = vec![0.0];
        let mut height = 0.0;
        for gap in gaps {
            height += gap;
            over_first.push(height);
        }
        Self {
            over_first,
            stretched,
            one_line,
            scrolls,
            scale,
        }
    }

    /// Height of the last rung over the first.
    pub fn total(&self) -> f32 {
        self.over_first.last().copied().unwrap_or(0.0)
    }

    /// Height over the first rung of something with `demand`: straight between rungs, by the scale beyond them.
    pub fn of_demand(&self, demands: &[Option<f64>], demand: f64) -> Option<f32> {
        let scale = self.scale?;
        let knots: Vec<(f64, f32)> = demands
            .iter()
            .zip(&self.over_first)
            .filter_map(|(at, y)| Some(((*at)?, *y)))
            .collect();
        let (first, last) = (knots.first()?, knots.last()?);
        if demand <= first.0 {
            return Some(first.1 - narrow((first.0 - demand) * scale));
        }
        if demand >= last.0 {
            return Some(last.1 + narrow((demand - last.0) * scale));
        }
        let pair = knots.windows(2).find(|pair| demand <= pair[1].0)?;
        let (below, above) = (pair[0], pair[1]);
        let share = if above.0 > below.0 {
            (demand - below.0) / (above.0 - below.0)
        } else {
            0.0
        };
        Some(below.1 + narrow(share) * (above.1 - below.1))
    }
}

/// Steps of demand between neighbours; none where one isn't known or nothing differs.
fn differences(demands: &[Option<f64>]) -> Option<Vec<f64>> {
    let known: Vec<f64> = demands.iter().copied().collect::<Option<_>>()?;
    let steps: Vec<f64> = known
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).max(0.0))
        .collect();
    steps.iter().any(|step| *step > 0.0).then_some(steps)
}

/// Points for a unit of demand so that all gaps together fill `space`, by bisection.
fn filling(steps: &[f64], space: f32, least: f32) -> f64 {
    let sum = |scale: f64| -> f32 { steps.iter().map(|step| narrow(step * scale).max(least)).sum() };
    let smallest = steps
        .iter()
        .copied()
        .filter(|step| *step > 0.0)
        .fold(f64::INFINITY, f64::min);
    let (mut low, mut high) = (0.0, f64::from(space) / smallest);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if sum(middle) < space {
            low = middle
        } else {
            high = middle
        }
    }
    (low + high) / 2.0
}

/// The middle step of those that are steps at all.
fn median(steps: &[f64]) -> f64 {
    let mut sorted: Vec<f64> = steps.iter().copied().filter(|step| *step > 0.0).collect();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied().unwrap_or(1.0)
}

/// Pushes labels apart: any pair closer than `least` moves by half each, until still; their order stays and all lie within the area.
pub fn spread(wanted: &[f32], least: f32, area: std::ops::RangeInclusive<f32>) -> Vec<f32> {
    spread_high(wanted, &vec![least; wanted.len()], area)
}

/// The same for labels of these heights, none over another.
pub fn spread_high(wanted: &[f32], high: &[f32], area: std::ops::RangeInclusive<f32>) -> Vec<f32> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    let mut placed: Vec<f32> = order.iter().map(|nth| wanted[*nth]).collect();
    let high_of = |place: usize| {
        order
            .get(place)
            .and_then(|nth| high.get(*nth))
            .copied()
            .unwrap_or(0.0)
    };
    for _ in 0..60 {
        let mut moved = false;
        for nth in 1..placed.len() {
            let least = (high_of(nth) + high_of(nth - 1)) / 2.0;
            let lack = least - (placed[nth] - placed[nth - 1]);
            if lack > 0.01 {
                placed[nth - 1] -= lack / 2.0;
                placed[nth] += lack / 2.0;
                moved = true;
            }
        }
        for place in &mut placed {
            *place = place.clamp(*area.start(), area.end().max(*area.start()));
        }
        if !moved {
            break;
        }
    }
    let mut back = vec![0.0; wanted.len()];
    for (place, nth) in placed.into_iter().zip(order) {
        back[nth] = place;
    }
    back
}

/// Decimals that tell neighbours apart: two, or three where two are equal.
pub fn decimals(demands: &[Option<f64>]) -> usize {
    let same = |pair: &[Option<f64>]| match (pair[0], pair[1]) {
        (Some(a), Some(b)) => format!("{a:.2}") == format!("{b:.2}"),
        _ => false,
    };
    if demands.windows(2).any(same) { 3 } else { 2 }
}

#[allow(clippy::cast_possible_truncation, reason = "points on a screen")]
pub(crate) fn narrow(value: f64) -> f32 {
    value as f32
}

#[allow(clippy::cast_precision_loss, reason = "a count of rungs, 40 at most")]
pub(crate) fn many(count: usize) -> f32 {
    count as f32
}

#[cfg(test)]
mod tests {
    use super::*;

    fn known(demands: &[f64]) -> Vec<Option<f64>> {
        demands.iter().copied().map(Some).collect()
    }

    #[test]
    fn rungs_stand_by_demand_and_fill_the_space() {
        let demands = known(&[0.58, 0.62, 0.73, 0.78, 0.84, 0.88, 0.96, 1.0, 1.06, 1.1]);
        let heights = Heights::of(&demands, 600.0);
        assert!((heights.total() - 600.0).abs() < 0.1);
        assert!(heights.stretched.iter().all(|stretched| !stretched));
        let gap = |nth: usize| heights.over_first[nth + 1] - heights.over_first[nth];
        assert!(
            (gap(1) / gap(0) - 0.11 / 0.04).abs() < 0.01,
            "a gap is as wide as its demand"
        );
        assert!(!heights.one_line && !heights.scrolls);
    }

    #[test]
    fn no_two_rungs_come_closer_than_their_labels_and_the_gap_says_so() {
        let heights = Heights::of(&known(&[0.64, 0.65, 0.73, 0.87, 1.0, 1.17]), 500.0);
        assert!(
            heights
                .over_first
                .windows(2)
                .all(|pair| pair[1] - pair[0] >= TWO_LINES - 0.01)
        );
        assert_eq!(heights.stretched, [true, false, false, false, false]);
        assert!((heights.total() - 500.0).abs() < 0.1);
    }

    #[test]
    fn forty_rungs_get_one_line_each_and_scroll() {
        let demands: Vec<f64> = (0..40u8).map(|nth| 0.4 + 0.017 * f64::from(nth)).collect();
        let heights = Heights::of(&known(&demands), 760.0);
        assert!(heights.one_line && heights.scrolls);
        assert!(
            (heights.total() - 39.0 * ONE_LINE).abs() < 1.0,
            "equal steps stand at the least distance"
        );
    }

    #[test]
    fn without_demand_rungs_stand_evenly_and_nothing_else_has_a_height() {
        let heights = Heights::of(&[Some(0.5), None, Some(1.0)], 200.0);
        assert_eq!(heights.over_first, [0.0, 100.0, 200.0]);
        assert_eq!(heights.of_demand(&[Some(0.5), None, Some(1.0)], 0.7), None);
        let same = known(&[0.5, 0.5, 0.5]);
        assert_eq!(Heights::of(&same, 200.0).scale, None);
    }

    #[test]
    fn what_has_a_demand_stands_between_its_neighbours_and_beyond_the_ends() {
        let demands = known(&[0.5, 0.6, 1.0]);
        let heights = Heights::of(&demands, 500.0);
        let at = |demand| heights.of_demand(&demands, demand).unwrap();
        assert!((at(0.8) - (heights.over_first[1] + heights.over_first[2]) / 2.0).abs() < 0.01);
        assert!(at(0.4) < 0.0 && at(1.1) > 500.0);
        assert!((at(0.6) - heights.over_first[1]).abs() < 0.01);
    }

    #[test]
    fn one_rung_or_none_is_a_ladder_too() {
        assert_eq!(Heights::of(&known(&[1.0]), 300.0).over_first, [0.0]);
        assert_eq!(Heights::of(&[], 300.0).total(), 0.0);
    }

    #[test]
    fn labels_that_collide_part_by_half_each_and_stay_in_order() {
        let placed = spread(&[100.0, 110.0, 300.0], 38.0, 0.0..=400.0);
        assert_eq!(placed, [86.0, 124.0, 300.0]);
        let crowd = spread(&[10.0, 10.0, 10.0], 40.0, 0.0..=400.0);
        assert!(
            crowd[0] >= 0.0 && crowd[1] - crowd[0] >= 39.0 && crowd[2] - crowd[1] >= 39.0,
            "{crowd:?}"
        );
        let falling = spread(&[300.0, 100.0], 40.0, 0.0..=400.0);
        assert_eq!(falling, [300.0, 100.0], "the caller's order is kept");
    }

    #[test]
    fn equal_two_decimal_demands_show_three() {
        assert_eq!(decimals(&known(&[0.64, 0.65])), 2);
        assert_eq!(decimals(&known(&[0.641, 0.644])), 3);
        assert_eq!(decimals(&[None, Some(0.6)]), 2);
    }
}
