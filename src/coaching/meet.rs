//! A meet: the sum of the best added loads of a day over chosen lifts, and the attempts that are planned for them.

use chrono::NaiveDate;

use crate::timeline::{LoggedSet, Timeline};
use crate::units::{Added, Mass};

use super::attempts::Plan;

/// Lifts that a meet is made of by default, in the order in which they are lifted. Street lifting's usual four (common
/// practice, no source); a pull-up or a chin-up, whichever is planned. A squat counts its barbell.
pub const LIFTS: [&str; 5] = ["muscle-up", "pull-up", "chin-up", "dip", "back-squat"];

/// One lift of a meet.
#[derive(Debug, Clone, PartialEq)]
pub struct Lift {
    /// The movement's id.
    pub movement: String,
    /// The heaviest that was done on the day.
    pub made: Option<Added>,
    /// What is planned, where strength is believed.
    pub plan: Option<Plan>,
}

/// A meet of one athlete on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Meet {
    /// The day.
    pub date: NaiveDate,
    /// The lifts, in order.
    pub lifts: Vec<Lift>,
}

impl Meet {
    /// What was done on `date` of these movements, with their plans.
    pub fn new(timeline: &Timeline<'_>, date: NaiveDate, lifts: Vec<(String, Option<Plan>)>) -> Self {
        let of_day = |set: &&LoggedSet<'_>| set.date == date && counts(set);
        let made = |movement: &str| {
            let sets = timeline.sets.iter().filter(of_day);
            let sets = sets.filter(|set| set.movement.is_some_and(|known| known.id == movement));
            sets.map(|set| set.added).max_by(|a, b| a.kg().total_cmp(&b.kg()))
        };
        let lift = |(movement, plan): (String, Option<Plan>)| Lift {
            made: made(&movement),
            movement,
            plan,
        };
        Self {
            date,
            lifts: lifts.into_iter().map(lift).collect(),
        }
    }

    /// The total: added loads that were done, over all lifts; none while a lift is missing.
    pub fn total(&self) -> Option<Mass> {
        sum(self.lifts.iter().map(|lift| lift.made.map(Added::mass)))
    }

    /// The total of all openers (0), seconds (1) or thirds (2); none where a lift has no such attempt.
    pub fn planned(&self, nth: usize) -> Option<Mass> {
        let added = |lift: &Lift| Some(lift.plan.as_ref()?.attempts.get(nth)?.load.added.mass());
        sum(self.lifts.iter().map(added))
    }
}

/// The sum of at least one; none where one is missing.
fn sum(parts: impl Iterator<Item = Option<Mass>>) -> Option<Mass> {
    let parts: Vec<Mass> = parts.collect::<Option<_>>()?;
    (!parts.is_empty()).then(|| parts.into_iter().sum())
}

/// A repetition done to the movement's standard, with help that was measured or none.
fn counts(set: &LoggedSet<'_>) -> bool {
    let plain = set.form.is_some_and(|form| form.help.is_none());
    plain && set.is_reps() && set.amount >= 1.0 && !set.broke_form()
}
