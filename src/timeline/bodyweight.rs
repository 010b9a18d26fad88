//! Bodyweight over time: one value a day, odd weigh-ins marked, the trend of the last weeks.

use chrono::NaiveDate;

use crate::units::{Bodyweight, Mass, Typed};

use super::line::least_squares;

/// How far a weigh-in may lie off the last one before it counts as odd, percent. Common practice, no source.
const ODD_PERCENT: f64 = 5.0;
/// What time adds to that, percent a day (1 % a week). Common practice, no source.
const ODD_PERCENT_A_DAY: f64 = 1.0 / 7.0;
/// A next weigh-in within so many percent confirms an odd one. Common practice, no source.
const CONFIRM_PERCENT: f64 = 3.0;
/// A trend needs so many weigh-in days …
pub const TREND_DAYS: usize = 4;
/// … with at least so many days from the first to the last …
pub const TREND_SPAN: i64 = 14;
/// … of the last so many. All three: common practice, no source.
pub const TREND_WINDOW: i64 = 28;

/// A day with at least one weigh-in, by itself or with a set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeighDay {
    /// The day.
    pub date: NaiveDate,
    /// The mean of its weigh-ins.
    pub mean: Bodyweight,
    /// Looks like a slip of unit or finger; counts nowhere.
    pub odd: bool,
}

/// All weigh-in days, in order.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WeighIns {
    days: Vec<WeighDay>,
}

/// The straight line through recent weigh-ins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trend {
    /// Change a week as a percentage of the mean bodyweight; below zero is loss.
    pub percent_a_week: f64,
    /// Change a week, kg; below zero is loss.
    pub kg_a_week: f64,
    /// The line's value on the day that is asked about, kg.
    pub kg_today: f64,
    /// The first day that it goes through.
    pub since: NaiveDate,
    /// How many days it goes through.
    pub days: usize,
}

impl WeighIns {
    /// The days of `weighed`: dates in order, each with what the scale showed.
    pub(super) fn gather(weighed: impl IntoIterator<Item = (NaiveDate, Typed)>) -> Self {
        let mut days: Vec<WeighDay> = Vec::new();
        let mut count = 0.0;
        for (date, typed) in weighed {
            let mass = typed.mass();
            match days.last_mut() {
                Some(day) if day.date == date => {
                    count += 1.0;
                    let mean = day.mean.mass();
                    day.mean = Bodyweight::new(mean + (mass - mean) * (1.0 / count));
                }
                _ => {
                    count = 1.0;
                    days.push(WeighDay {
                        date,
                        mean: Bodyweight::new(mass),
                        odd: false,
                    });
                }
            }
        }
        mark_odd(&mut days);
        Self { days }
    }

    /// Every day with a weigh-in, in order, odd ones too.
    pub fn days(&self) -> &[WeighDay] {
        &self.days
    }

    /// The last day that counts.
    pub fn last(&self) -> Option<WeighDay> {
        self.days.iter().rev().find(|day| !day.odd).copied()
    }

    /// Whether that day's weigh-ins look like a slip.
    pub fn is_odd_on(&self, date: NaiveDate) -> bool {
        self.days
            .binary_search_by_key(&date, |day| day.date)
            .is_ok_and(|at| self.days.get(at).is_some_and(|d| d.odd))
    }

    /// The bodyweight of a day: its own mean, else the latest day before, else the first after.
    pub fn on(&self, date: NaiveDate) -> Option<Bodyweight> {
        let after = self.days.partition_point(|day| day.date <= date);
        let (before, later) = self.days.split_at_checked(after)?;
        let counting = before
            .iter()
            .rev()
            .find(|day| !day.odd)
            .or_else(|| later.iter().find(|day| !day.odd));
        counting.map(|day| day.mean)
    }

    /// The trend of the last four weeks, where enough days were weighed.
    pub fn trend(&self, on: NaiveDate) -> Option<Trend> {
        let days = self
            .days
            .iter()
            .filter(|day| !day.odd && (on - day.date).num_days() <= TREND_WINDOW);
        let since = days.clone().next()?.date;
        let recent: Vec<(f64, f64)> = days
            .map(|day| (days_as_f64((day.date - on).num_days()), day.mean.kg()))
            .collect();
        let (first, last) = (recent.first()?.0, recent.last()?.0);
        if recent.len() < TREND_DAYS || last - first < days_as_f64(TREND_SPAN) {
            return None;
        }
        let line = least_squares(&recent)?;
        let mean = recent.iter().map(|(_, kg)| kg).sum::<f64>() / recent.iter().map(|_| 1.0).sum::<f64>();
        Some(Trend {
            percent_a_week: line.slope * 7.0 / mean * 100.0,
            kg_a_week: line.slope * 7.0,
            kg_today: line.intercept,
            since,
            days: recent.len(),
        })
    }
}

/// A count of days as a number; day counts within two centuries are exact.
fn days_as_f64(days: i64) -> f64 {
    i32::try_from(days).map_or(f64::MAX, f64::from)
}

/// Marks days that lie too far off the last counting one, unless the very next weigh-in day confirms them.
fn mark_odd(days: &mut [WeighDay]) {
    let mut last: Option<WeighDay> = None;
    let mut confirmed = false;
    for at in 0..days.len() {
        let next = days.get(at + 1).map(|day| day.mean.kg());
        let Some(day) = days.get_mut(at) else { return };
        let counts = confirmed || last.is_none_or(|last| lies_near(last, *day));
        confirmed = false;
        if !counts {
            let near_next =
                next.is_some_and(|next| percent_off(day.mean.kg(), next) <= CONFIRM_PERCENT + EPSILON);
            if !near_next {
                day.odd = true;
                continue;
            }
            confirmed = true;
        }
        last = Some(*day);
    }
}

/// Room for rounding in percent comparisons: far below any scale's step.
const EPSILON: f64 = 1e-9;

fn lies_near(last: WeighDay, day: WeighDay) -> bool {
    let bound = ODD_PERCENT + ODD_PERCENT_A_DAY * days_as_f64((day.date - last.date).num_days());
    percent_off(last.mean.kg(), day.mean.kg()) <= bound + EPSILON
}

fn percent_off(base: f64, other: f64) -> f64 {
    Mass::from_kg((other - base).abs()).kg() / base * 100.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Unit;

    fn weighed(days: &[(u32, f64)]) -> WeighIns {
        WeighIns::gather(days.iter().map(|(day, kg)| {
            let date = NaiveDate::from_ymd_opt(2026, 3, *day).unwrap();
            (date, Typed::new(*kg, Unit::Kg).unwrap())
        }))
    }

    #[test]
    fn half_a_kilogram_a_week_is_read_off_a_straight_line_of_weigh_ins() {
        // Worked by hand: 80, 79.5, 79, 78.5 kg on Sundays: −0.5 kg a week; mean 79.25, so −0.5 / 79.25 = −0.6309 %;
        // three days after the last the line is at 78.5 − 3/7 · 0.5 = 78.2857.
        let on = NaiveDate::from_ymd_opt(2026, 3, 25).unwrap();
        let trend = weighed(&[(1, 80.0), (8, 79.5), (15, 79.0), (22, 78.5)])
            .trend(on)
            .unwrap();
        assert!((trend.kg_a_week - -0.5).abs() < 1e-9, "{trend:?}");
        assert!((trend.percent_a_week - -0.630_914_826).abs() < 1e-6, "{trend:?}");
        assert!((trend.kg_today - 78.285_714_286).abs() < 1e-6, "{trend:?}");
        assert_eq!(
            (trend.days, trend.since),
            (4, NaiveDate::from_ymd_opt(2026, 3, 1).unwrap())
        );
    }

    #[test]
    fn a_slip_of_the_scale_moves_no_trend() {
        let on = NaiveDate::from_ymd_opt(2026, 3, 25).unwrap();
        let sound = [(1, 80.0), (8, 79.5), (15, 79.0), (22, 78.5)];
        let slipped = [(1, 80.0), (8, 79.5), (11, 97.5), (15, 79.0), (22, 78.5)];
        assert_eq!(weighed(&slipped).trend(on), weighed(&sound).trend(on));
    }

    #[test]
    fn three_days_or_less_than_two_weeks_give_no_trend() {
        let on = NaiveDate::from_ymd_opt(2026, 3, 25).unwrap();
        assert_eq!(weighed(&[(8, 79.5), (15, 79.0), (22, 78.5)]).trend(on), None);
        let within_two_weeks = [(12, 80.0), (15, 79.9), (18, 79.8), (25, 79.7)];
        assert_eq!(weighed(&within_two_weeks).trend(on), None);
    }
}
