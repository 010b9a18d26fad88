//! One training day: which rows can be, the bodyweight, the sets in order, the day's noise, and the rescue.

use crate::units::{Effort, Outcome, Reserve};

use super::Tuning;
use super::bodyweight::{Trend, Weighed};
use super::curve::Curve;
use super::filter::Filter;
use super::set::{Observed, capacity, learn};
use super::state::{BIAS, ENDURANCE, LEVEL, READINESS, State};
use super::training::{Attempt, TrainingDay};
use super::weights::{Says, bias_shown};

/// What the filter thought of each set of a day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayRead {
    /// Whether the day's bodyweight can hardly be, so that the trend stood for it.
    pub bodyweight_doubted: bool,
    /// For each set in order: probability that it is not what it says; none where it was not used at all.
    pub outlier: Vec<Option<f64>>,
}

/// A row that can be.
#[derive(Debug, Clone, Copy)]
struct Row {
    nth: usize,
    bodyweight: Option<f64>,
    share: f64,
    added: f64,
    reps: f64,
    left: Option<f64>,
    outcome: Outcome,
}

impl Row {
    fn load(&self, bodyweight: f64) -> f64 {
        self.share * bodyweight + self.added
    }

    /// A row, unless it can't be: bodyweight to 20 kg, system load to 5 kg, over 60 repetitions, or 0 of them done.
    fn of(nth: usize, attempt: &Attempt, trend: Option<&Trend>) -> Option<Self> {
        let Effort::Reps(reps) = attempt.effort else {
            return None;
        };
        let row = Row {
            nth,
            bodyweight: attempt.bodyweight.map(|b| b.kg()),
            share: attempt.share.value(),
            added: attempt.added.kg(),
            reps: f64::from(reps.count()),
            left: attempt.left.map(|given| given.reserve()).map(Reserve::reps),
            outcome: attempt.outcome,
        };
        let missed = row.outcome == Outcome::Missed;
        let bodyweight = row.bodyweight.or(trend.map(|t| t.kg));
        let load = row.load(bodyweight.unwrap_or(f64::NAN));
        let can_be = bodyweight.is_some_and(|kg| kg > 20.0 && kg.is_finite())
            && load > 5.0
            && load.is_finite()
            && row.reps <= 60.0
            && (missed || row.reps > 0.0);
        can_be.then_some(row)
    }
}

fn median(mut values: Vec<f64>) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    let middle = values.len() / 2;
    match values.len() {
        0 => None,
        n if n % 2 == 1 => values.get(middle).copied(),
        _ => Some(0.5 * (values.get(middle - 1)? + values.get(middle)?)),
    }
}

/// Hard sets that a set counts for, by its reserve. A.
fn cost(missed: bool, reserve: f64) -> f64 {
    match reserve {
        _ if missed => 1.5,
        r if r < 0.5 => 1.5,
        r if r <= 2.5 => 1.0,
        r if r <= 8.0 => 0.6,
        _ => 0.1,
    }
}

/// Fatigue grows no further after so many hard sets. A.
const MOST_HARD_SETS: f64 = 6.0;

impl Filter {
    /// Takes one training day. Days come in time order; an earlier one than the last is read as if it were the same day.
    pub fn learn(&mut self, day: &TrainingDay) -> DayRead {
        let mut read = DayRead {
            bodyweight_doubted: false,
            outlier: vec![None; day.attempts.len()],
        };
        let rows: Vec<Row> = (0..)
            .zip(&day.attempts)
            .filter_map(|(nth, attempt)| Row::of(nth, attempt, self.trend.as_ref()))
            .collect();
        if rows.is_empty() {
            return read;
        }
        let number = super::day_number(day.date);
        let weighed_kg = median(rows.iter().filter_map(|row| row.bodyweight).collect());
        let weighed = match (&mut self.trend, weighed_kg) {
            (Some(trend), kg) => trend.weigh(kg, number),
            (none, Some(kg)) => {
                *none = Some(Trend::start(kg, number));
                Weighed {
                    gained: 0.0,
                    extra_var: 0.0,
                    doubted: false,
                }
            }
            (None, None) => return read,
        };
        read.bodyweight_doubted = weighed.doubted;
        let Some(trend_kg) = self.trend.as_ref().map(|t| t.kg) else {
            return read;
        };
        let load = |row: &Row| match row.bodyweight {
            Some(kg) if !weighed.doubted => row.load(kg),
            _ => row.load(trend_kg),
        };
        self.begin(
            number,
            weighed,
            weighed_kg.filter(|_| !weighed.doubted).unwrap_or(trend_kg),
            &rows,
            &load,
        );
        self.sets(&rows, &load, &mut read);
        read
    }

    /// Time passes to the day; readiness starts anew.
    fn begin(&mut self, number: i64, weighed: Weighed, kg: f64, rows: &[Row], load: &impl Fn(&Row) -> f64) {
        let tuning = &self.tuning;
        match (&mut self.state, self.last_day) {
            (Some(state), Some(last)) => {
                #[allow(clippy::cast_precision_loss)] // days of a logbook are far below 2^52
                let days = (number - last).max(0) as f64;
                state.pass(days, weighed.gained, tuning);
            }
            (none, _) => {
                let level = libm::log(kg * self.prior.ratio);
                let endurance = -libm::log(self.prior.reps_at_80 - 1.0);
                *none = Some(State::prior(level, endurance, tuning));
            }
        }
        self.last_day = Some(number);
        self.days += 1;
        let first = rows.first().map_or(1.0, load).max(5.0);
        let share = rows.first().map_or(1.0, |row| row.share);
        let weighing = tuning.weighing_sd * share * kg / first;
        self.weighing_var = weighing * weighing + weighed.extra_var;
        if let Some(state) = &mut self.state {
            state.wake(self.day_var, tuning);
            state.cov[READINESS][READINESS] += self.weighing_var;
        }
    }

    fn sets(&mut self, rows: &[Row], load: &impl Fn(&Row) -> f64, read: &mut DayRead) {
        let Some(mut state) = self.state.take() else {
            return;
        };
        let hardest = hardest(&state, rows, load, &self.tuning);
        let mut hard_sets: f64 = 0.0;
        let (mut doubt, mut informative) = (0.0, 0.0);
        for (index, row) in rows.iter().enumerate() {
            let missed = row.outcome == Outcome::Missed;
            let says = match row.left {
                _ if missed => Says::Missed,
                Some(left) => Says::Reported(left),
                None if hardest == Some(index) => Says::Habit,
                None => Says::AtLeast,
            };
            let observed = Observed {
                log_load: libm::log(load(row).max(5.0)),
                reps: row.reps,
                says,
                hard_sets,
            };
            let bias = state.mean[BIAS];
            let moved = learn(&mut state, &observed, &self.tuning);
            if let Some(slot) = read.outlier.get_mut(row.nth) {
                *slot = Some(moved.outlier);
            }
            if says != Says::AtLeast {
                doubt += moved.outlier;
                informative += 1.0;
            }
            let reserve = match row.left {
                Some(left) => left + bias * bias_shown(left + bias / 2.0),
                None => {
                    let spare = capacity(&state, hard_sets) - observed.log_load;
                    let curve = Curve::new(self.tuning.curve_shape, state.mean[ENDURANCE]);
                    (curve.reps(spare) - 0.5 - row.reps).max(0.0)
                }
            };
            hard_sets = (hard_sets + cost(missed, reserve)).min(MOST_HARD_SETS);
        }
        let doubt = if informative > 0.0 {
            doubt / informative
        } else {
            0.0
        };
        self.end(&mut state, doubt);
        self.state = Some(state);
    }

    /// Learns how much days differ, and opens the belief again when it calls set after set a typo.
    fn end(&mut self, state: &mut State, doubt: f64) {
        let tuning = &self.tuning;
        if doubt < 0.3 {
            let seen = state.mean[READINESS] * state.mean[READINESS] + state.cov[READINESS][READINESS]
                - self.weighing_var;
            let weight = tuning.day_sd_weight + f64::from(self.days.min(60));
            self.day_var += (seen.max(0.0) - self.day_var) / weight;
            self.day_var = self.day_var.clamp(
                tuning.day_sd_low * tuning.day_sd_low,
                tuning.day_sd_high * tuning.day_sd_high,
            );
        }
        self.alarm = 0.8 * self.alarm + doubt;
        if self.alarm > 1.2 {
            self.alarm = 0.6;
            state.cov[LEVEL][LEVEL] += 0.10 * 0.10;
            state.cov[ENDURANCE][ENDURANCE] += 0.2 * 0.2;
            state.cov[BIAS][BIAS] += 0.3 * 0.3;
        }
    }
}

/// The set that asks most, a later one of equals; each set before counts 0.8 % of fatigue. A.
fn hardest(state: &State, rows: &[Row], load: &impl Fn(&Row) -> f64, tuning: &Tuning) -> Option<usize> {
    let curve = Curve::new(tuning.curve_shape, state.mean[ENDURANCE]);
    let mut best: Option<(usize, f64)> = None;
    let mut before = 0.0;
    for (index, row) in rows.iter().enumerate() {
        let asks = libm::log(load(row).max(5.0)) + curve.log_ratio(row.reps).0 + before;
        if best.is_none_or(|(_, most)| asks >= most) {
            best = Some((index, asks));
        }
        before += 0.008;
    }
    best.map(|(index, _)| index)
}
