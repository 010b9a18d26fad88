//! A meet: the sum of the best added loads of a day over chosen lifts, and the attempts that are planned for them.

use chrono::NaiveDate;

use crate::catalogue::Catalogue;
use crate::strength::Believed;
use crate::timeline::{LoggedSet, Timeline};
use crate::units::{Added, Mass};

use super::attempts::{NoAttempts, Plan, today};
use super::loads::PlatesOnHand;

/// Lifts that a meet is made of by default, in the order in which they are lifted. Street lifting's usual four (common
/// practice, no source); a pull-up or a chin-up, whichever is planned. A squat counts its barbell.
pub const LIFTS: [&str; 5] = ["muscle-up", "pull-up", "chin-up", "dip", "back-squat"];

/// Fewest lifts that make a meet of themselves; somebody who names their lifts may name one.
const FEWEST: usize = 2;

/// One lift of a meet.
#[derive(Debug, Clone, PartialEq)]
pub struct Lift {
    /// The movement's id.
    pub movement: String,
    /// The heaviest that was done on the day.
    pub made: Option<Added>,
    /// What is planned, or why nothing is.
    pub plan: Result<Plan, NoAttempts>,
}

/// A meet of one athlete on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Meet {
    /// The day.
    pub date: NaiveDate,
    /// The lifts, in order.
    pub lifts: Vec<Lift>,
}

/// Why there is no meet to plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoMeet {
    /// Nobody named lifts, and fewer than two of them are on record in the last year.
    FewLifts,
    /// No lift has attempts; the first lift's reason.
    NoAttempts(NoAttempts),
}

/// The lifts of a meet that are on record in the last year without help, in order, each with its heaviest added load, kg.
fn on_record(timeline: &Timeline<'_>) -> Vec<(&'static str, f64)> {
    let heaviest = |id: &str| {
        let is_it = |set: &&LoggedSet<'_>| set.movement.is_some_and(|known| known.id == id);
        let sets = timeline.evidence().filter(is_it);
        sets.filter(|set| set.form.is_some_and(|form| form.help.is_none()))
            .map(|set| set.added.kg())
            .reduce(f64::max)
    };
    LIFTS
        .into_iter()
        .filter_map(|id| Some((id, heaviest(id)?)))
        .collect()
}

/// Every lift of a meet that is on record in the last year, in order.
pub fn trained(timeline: &Timeline<'_>) -> Vec<&'static str> {
    on_record(timeline).into_iter().map(|(id, _)| id).collect()
}

/// The lifts of a meet, where nobody named any: those on record, and of pull-up and chin-up the one with the heavier set.
pub fn usual(timeline: &Timeline<'_>) -> Vec<&'static str> {
    let record = on_record(timeline);
    let of = |id: &str| record.iter().find(|(lift, _)| *lift == id).map(|(_, kg)| *kg);
    let lighter = match (of("pull-up"), of("chin-up")) {
        (Some(pull), Some(chin)) if chin > pull => Some("pull-up"),
        (Some(_), Some(_)) => Some("chin-up"),
        _ => None,
    };
    let ids = record.iter().map(|(id, _)| *id);
    ids.filter(|id| Some(*id) != lighter).collect()
}

impl Meet {
    /// Today's meet over `chosen` lifts, in the order in which they are lifted; over the usual ones where none is named.
    ///
    /// # Errors
    /// When nobody named lifts and too few are on record.
    pub fn today(
        timeline: &Timeline<'_>,
        catalogue: &Catalogue,
        believed: &[Believed],
        plates: &PlatesOnHand,
        chosen: &[String],
    ) -> Result<Self, NoMeet> {
        let lifts: Vec<&str> = if chosen.is_empty() {
            usual(timeline)
        } else {
            let is_chosen = |id: &&str| chosen.iter().any(|lift| lift == id);
            LIFTS.into_iter().filter(is_chosen).collect()
        };
        if chosen.is_empty() && lifts.len() < FEWEST {
            return Err(NoMeet::FewLifts);
        }
        let plan = |id: &str| {
            let movement = catalogue.movement(id).ok_or(NoAttempts::NoBelief)?;
            let known = believed
                .iter()
                .find(|known| known.movement == id && known.side.is_none());
            today(timeline, movement, None, known.map(|known| &known.belief), plates)
        };
        let lifts = lifts.into_iter().map(|id| (id.to_owned(), plan(id)));
        Ok(Self::new(timeline, timeline.on, lifts.collect()))
    }

    /// What was done on `date` of these movements, with their plans.
    pub fn new(
        timeline: &Timeline<'_>,
        date: NaiveDate,
        lifts: Vec<(String, Result<Plan, NoAttempts>)>,
    ) -> Self {
        let of_day = |set: &&LoggedSet<'_>| set.date == date && counts(set);
        let made = |movement: &str| {
            let sets = timeline.sets.iter().filter(of_day);
            let sets = sets.filter(|set| set.movement.is_some_and(|known| known.id == movement));
            sets.map(|set| set.added).max_by(|a, b| a.kg().total_cmp(&b.kg()))
        };
        let lift = |(movement, plan): (String, Result<Plan, NoAttempts>)| Lift {
            made: made(&movement),
            movement,
            plan,
        };
        Self {
            date,
            lifts: lifts.into_iter().map(lift).collect(),
        }
    }

    /// Why nothing at all is planned; none where one lift has attempts.
    pub fn refused(&self) -> Option<NoMeet> {
        let reasons: Option<Vec<NoAttempts>> = self
            .lifts
            .iter()
            .map(|lift| lift.plan.as_ref().err().copied())
            .collect();
        reasons?.first().copied().map(NoMeet::NoAttempts)
    }

    /// The total: added loads that were done, over all lifts; none while a lift is missing.
    pub fn total(&self) -> Option<Mass> {
        sum(self.lifts.iter().map(|lift| lift.made.map(Added::mass)))
    }

    /// The total of all openers (0), seconds (1) or thirds (2); none where a lift has no such attempt.
    pub fn planned(&self, nth: usize) -> Option<Mass> {
        let added = |lift: &Lift| Some(lift.plan.as_ref().ok()?.attempts.get(nth)?.load.added.mass());
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
