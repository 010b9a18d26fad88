//! Beliefs as they would have been on past dates, many at once.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::strength::Belief;
use crate::timeline::Timeline;
use crate::units::Side;

use super::Series;

/// What is asked: the belief of a movement and side as it was on the morning of `as_of`, for the day `on`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Point {
    /// The movement's id.
    pub movement: String,
    /// The side.
    pub side: Option<Side>,
    /// Only records of earlier days are used.
    pub as_of: NaiveDate,
    /// The day that is asked about; days from `as_of` to it count as trained. Not before `as_of`.
    pub on: NaiveDate,
}

/// Calls `answer` with the place of each point and its belief, none where there is no earlier record. The timeline must reach to
/// the latest `as_of`. The order of the calls is not that of the points: each set is read once for all of them.
pub fn beliefs_at(timeline: &Timeline<'_>, points: &[Point], mut answer: impl FnMut(usize, Option<Belief>)) {
    let mut by_movement: BTreeMap<&str, Vec<(usize, &Point)>> = BTreeMap::new();
    for (nth, point) in points.iter().enumerate() {
        by_movement.entry(&point.movement).or_default().push((nth, point));
    }
    for (movement, mut asked) in by_movement {
        let Some(series) = Series::of(timeline, movement) else {
            asked.iter().for_each(|(nth, _)| answer(*nth, None));
            continue;
        };
        asked.sort_by_key(|(_, point)| point.as_of);
        let dates: Vec<NaiveDate> = asked.iter().map(|(_, point)| point.as_of).collect();
        let mut of_day = asked.iter();
        series.on_each(&dates, |then| {
            if let Some((nth, point)) = of_day.next() {
                answer(*nth, then.belief(point.side).map(|belief| ahead(belief, point)));
            }
        });
    }
}

fn ahead(belief: Belief, point: &Point) -> Belief {
    match i32::try_from((point.on - point.as_of).num_days()) {
        Ok(days) if days > 0 => belief.after_training(f64::from(days)),
        _ => belief,
    }
}
