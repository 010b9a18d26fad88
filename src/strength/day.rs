//! One training day: the bodyweight, the sets in order, the day's noise, and the rescue.

use crate::units::{Outcome, Side};

use super::bodyweight::{Trend, Weighed};
use super::curve::Curve;
use super::filter::Filter;
use super::newest::Newest;
use super::rows::{self, Row, sign, slot};
use super::says::{self, Says};
use super::set::{LIKELY_TYPO, Observed, learn};
use super::state::{BIAS, ENDURANCE, LEVEL, READINESS, SHAPE, State};
use super::training::{Attempt, Start, TrainingDay};
use super::typos::{self, Likely};
use super::weights::bias_shown;

/// What the filter thought of a day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayRead {
    /// Whether the day's bodyweight can hardly be, so that the trend stood for it.
    pub bodyweight_doubted: bool,
    /// What it thought of each set in order; none where the set can't be and was not used at all.
    pub sets: Vec<Option<SetRead>>,
}

/// What the filter thought of a set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetRead {
    /// Probability that it is not what it says.
    pub outlier: f64,
    /// For a set that is more likely so than not: what would fit best.
    pub likely: Option<Likely>,
}

impl SetRead {
    /// Whether it looks like a typo: more likely not what it says than so.
    pub fn looks_like_a_typo(&self) -> bool {
        self.outlier >= LIKELY_TYPO
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
/// Variance of counts before any was seen: two repetitions either way. A.
const COUNTS_VAR: f64 = 4.0;
/// Sets that are remembered for how much counts differ. A.
const COUNTS_MEMORY: f64 = 15.0;
/// Mean outlier probability from which a day teaches nothing about how days differ. A.
const DOUBTFUL_DAY: f64 = 0.3;

/// A day as the filter takes it, loads settled.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Day {
    pub(super) number: i64,
    pub(super) rows: Vec<Row>,
    /// Change of the log bodyweight trend since the last day.
    pub(super) gained: f64,
    /// Variance of the log load that all sets share.
    pub(super) weighing_var: f64,
}

impl Filter {
    /// Takes one training day. Days come in time order; one before the last is read as if it were on the last's date.
    pub fn learn(&mut self, day: &TrainingDay) -> DayRead {
        let mut read = DayRead {
            bodyweight_doubted: false,
            sets: vec![None; day.attempts.len()],
        };
        let trend = self.trend.clone();
        let used: Vec<(usize, &Attempt)> = (0..)
            .zip(&day.attempts)
            .filter(|(_, attempt)| rows::can_be(attempt, trend.as_ref()))
            .collect();
        let Some((_, first)) = used.first() else {
            return read;
        };
        let number = super::day_number(day.date);
        let kg = median(
            used.iter()
                .filter_map(|(_, a)| a.bodyweight)
                .map(|b| b.kg())
                .collect(),
        );
        let Some((weighed, trend_kg)) = self.weigh(kg, number) else {
            return read;
        };
        read.bodyweight_doubted = weighed.doubted;
        let believed = |kg: Option<f64>| kg.filter(|_| !weighed.doubted).unwrap_or(trend_kg);
        let load = |attempt: &Attempt| {
            attempt.share.value() * believed(attempt.bodyweight.map(|b| b.kg())) + attempt.added.kg()
        };
        let body = first.share.value() * believed(kg);
        let weighing = self.tuning.weighing_sd * body / load(first).max(rows::LIGHTEST_KG);
        let rows: Vec<Row> = used.iter().map(|(nth, a)| rows::row(*nth, a, load(a))).collect();
        let day = Day {
            number,
            rows,
            gained: weighed.gained,
            weighing_var: weighing * weighing + weighed.extra_var,
        };
        let start = self.prior.start(believed(kg), &day.rows, &self.tuning);
        self.newest = None;
        let before = self.clone();
        self.take(&day, start, &mut read);
        for (nth, attempt) in used {
            self.explain(attempt, load(attempt), read.sets.get_mut(nth));
        }
        if self.tuning.keeps_sense {
            self.newest = Some(Newest::of(before, day, believed(kg)));
        }
        read
    }

    /// The day's bodyweight against the trend, and the trend after it, kg; none if nobody ever weighed.
    fn weigh(&mut self, kg: Option<f64>, number: i64) -> Option<(Weighed, f64)> {
        let weighed = match (&mut self.trend, kg) {
            (Some(trend), kg) => trend.weigh(kg, number),
            (none, Some(kg)) => {
                *none = Some(Trend::start(kg, number));
                Weighed::AT_FIRST
            }
            (None, None) => return None,
        };
        self.trend.as_ref().map(|trend| (weighed, trend.kg))
    }

    /// Takes a day whose loads are settled; `start` is for a first one.
    pub(super) fn take(&mut self, day: &Day, start: Start, read: &mut DayRead) {
        let mut since = 0.0;
        let mut state = match (self.state.take(), self.last_day) {
            (Some(mut state), Some(last)) => {
                since = super::days_between(last, day.number);
                state.pass(since, day.gained, &self.tuning);
                state
            }
            _ => State::prior(start, &self.tuning),
        };
        self.last_day = self.last_day.max(Some(day.number));
        self.days += 1;
        for side in [None, Some(Side::Left), Some(Side::Right)] {
            self.days_of[slot(side)] += u32::from(day.rows.iter().any(|row| row.side == side));
        }
        state.wake(since, self.day_var, &self.tuning);
        state.cov[READINESS][READINESS] += day.weighing_var;
        let doubt = self.sets(&mut state, &day.rows, read);
        self.end(&mut state, day, doubt);
        self.state = Some(state);
    }

    /// Learns the sets in order; says how doubtful those were that say something.
    fn sets(&mut self, state: &mut State, rows: &[Row], read: &mut DayRead) -> f64 {
        let hardest = rows::hardest(state, rows);
        let mut hard_sets = [0.0f64; 3];
        let (mut doubt, mut informative) = (0.0, 0.0);
        for (index, row) in rows.iter().enumerate() {
            let said = says::says(rows, index, &hardest, &self.tuning);
            let done = &mut hard_sets[slot(row.side)];
            let observed = Observed {
                log_load: row.log_load,
                reps: row.reps,
                unit: row.unit,
                says: said,
                beside: match said {
                    Says::Reported(_) if self.tuning.exact_bias => {
                        says::without_report(rows, index, &hardest, &self.tuning)
                    }
                    _ => Says::AtLeast,
                },
                more_left: self.tuning.habit_silence * (self.silence - 0.7),
                hard_sets: *done,
                side: sign(row.side),
            };
            let bias = state.mean[BIAS];
            let wobbles = self.wobbles(row, said);
            let outlier = learn(state, &observed, wobbles, &self.tuning);
            if let Some(slot) = read.sets.get_mut(row.nth) {
                *slot = Some(SetRead {
                    outlier,
                    likely: None,
                });
            }
            if said != Says::AtLeast {
                doubt += outlier;
                informative += 1.0;
            }
            let reserve = match row.left {
                Some(left) => left + bias * bias_shown(left + bias / 2.0),
                None => {
                    let curve = Curve::new(state.mean[SHAPE], state.mean[ENDURANCE]);
                    ((curve.reps(observed.spare(state)) - row.reps) / row.unit - 0.5).max(0.0)
                }
            };
            *done = (*done + cost(row.outcome == Outcome::Missed, reserve)).min(MOST_HARD_SETS);
        }
        if informative > 0.0 {
            doubt / informative
        } else {
            0.0
        }
    }

    /// Whether counts differed before this one, so that sets say how repetitions fall off with load.
    fn wobbles(&mut self, row: &Row, said: Says) -> bool {
        let least = self.tuning.least_wobble * self.tuning.least_wobble;
        let wobbled = self.counts.is_none_or(|(_, var)| var >= least);
        if said != Says::AtLeast {
            let count = row.reps + row.left.unwrap_or(0.0);
            let (mean, var) = self.counts.unwrap_or((count, COUNTS_VAR));
            let off = count - mean;
            let now = (
                mean + off / COUNTS_MEMORY,
                var + (off * off - var) / COUNTS_MEMORY,
            );
            self.counts = Some(now);
        }
        wobbled
    }

    /// Learns how much days differ and how much is said, and opens the belief again when set after set is called a typo.
    fn end(&mut self, state: &mut State, day: &Day, doubt: f64) {
        let spoken = day
            .rows
            .iter()
            .any(|row| row.left.is_some() || row.outcome == Outcome::Missed);
        self.silence += (f64::from(u8::from(!spoken)) - self.silence) / self.tuning.silence_days;
        let tuning = &self.tuning;
        if doubt < DOUBTFUL_DAY {
            let known = state.cov[READINESS][READINESS];
            let seen = state.mean[READINESS] * state.mean[READINESS] + known - day.weighing_var;
            let told = (1.0 - known / (self.day_var + day.weighing_var)).clamp(0.0, 1.0);
            self.day_learnt = if tuning.day_sd_by_information {
                self.day_learnt + told * told
            } else {
                f64::from(self.days)
            }
            .min(tuning.day_sd_memory);
            self.day_var += (seen.max(0.0) - self.day_var) / (tuning.day_sd_weight + self.day_learnt);
            let (low, high) = (tuning.day_sd_low, tuning.day_sd_high);
            self.day_var = self.day_var.clamp(low * low, high * high);
        }
        self.alarm = 0.8 * self.alarm + doubt;
        if self.alarm > 1.2 {
            self.alarm = 0.6;
            state.cov[LEVEL][LEVEL] += 0.10 * 0.10;
            state.cov[ENDURANCE][ENDURANCE] += 0.2 * 0.2;
            state.cov[BIAS][BIAS] += 0.3 * 0.3;
        }
    }

    /// Says what a set that looks like a typo may have been.
    fn explain(&self, attempt: &Attempt, load_kg: f64, read: Option<&mut Option<SetRead>>) {
        if let (Some(Some(read)), Some(state)) = (read, &self.state)
            && read.looks_like_a_typo()
        {
            read.likely = typos::likely(state, attempt, load_kg, &self.tuning);
        }
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
