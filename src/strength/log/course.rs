//! Strength over time: what was believed on each day of a span, and what each set showed.

use chrono::{Days, NaiveDate};

use crate::logbook::record::Id;
use crate::strength::{Belief, Coverage};
use crate::timeline::Timeline;
use crate::units::{Added, Effort, Outcome, Reserve, Side, SystemLoad};

use super::{Believed, Kept, Series};

/// What was believed on one day, from earlier sets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CourseDay {
    /// The day.
    pub date: NaiveDate,
    /// The 1RM.
    pub one_rep_max: SystemLoad,
    /// The bands of 50, 80 and 95 %, low and high.
    pub bands: [(SystemLoad, SystemLoad); 3],
}

/// What a set showed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CourseSet {
    /// Its record.
    pub id: Id,
    /// Its day.
    pub date: NaiveDate,
    /// The 1RM that its repetitions and reported reserve stand for by today's belief of endurance; a single's own load.
    pub shows: SystemLoad,
    /// What hung from the belt.
    pub added: Added,
    /// Completed repetitions.
    pub reps: u16,
    /// The reserve, where it was given.
    pub left: Option<Reserve>,
    /// Whether one more was tried and failed.
    pub missed: bool,
    /// The probability that it is not what it says, where that is more likely than not.
    pub suspect: Option<f64>,
}

/// One movement and side over time.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Once a week and on the last day.
    pub days: Vec<CourseDay>,
    /// Sets of the span in order.
    pub sets: Vec<CourseSet>,
    /// Spans without training that count as a layoff, first and last day.
    pub layoffs: Vec<(NaiveDate, NaiveDate)>,
    /// What is believed on the last day.
    pub believed: Believed,
}

/// Days between two points of the course.
const STEP_DAYS: u64 = 7;
/// Days after a session from which a gap counts as a layoff, as the filter takes it: little is lost in two weeks (McMaster 2013).
const GRACE_DAYS: u64 = 14;

/// The course of a movement and side from `from` to the timeline's day; none where nothing is believed today.
pub fn course(
    timeline: &Timeline<'_>,
    movement: &str,
    side: Option<Side>,
    from: NaiveDate,
    kept: &Kept,
) -> Option<Course> {
    let series = Series::of(timeline, movement)?;
    let believed = series
        .believed(timeline, kept)
        .into_iter()
        .find(|known| known.side == side)?;
    let trained: Vec<NaiveDate> = series
        .days()
        .filter(|(_, sets)| sets.iter().any(|set| set.side == side))
        .map(|(day, _)| day.date)
        .collect();
    let first = trained.first().copied()?.max(from);
    let mut dates: Vec<NaiveDate> =
        std::iter::successors(Some(first), |date| date.checked_add_days(Days::new(STEP_DAYS)))
            .take_while(|date| *date < timeline.on)
            .collect();
    dates.push(timeline.on);
    let mut days = Vec::with_capacity(dates.len());
    let mut at = dates.iter();
    series.on_each(&dates, |then| {
        if let (Some(date), Some(belief)) = (at.next(), then.belief(side)) {
            days.push(day(*date, &belief));
        }
    });
    let mut sets = Vec::new();
    for (day, records) in series.days().filter(|(day, _)| day.date >= from) {
        for (attempt, record) in day
            .attempts
            .iter()
            .zip(records)
            .filter(|(_, record)| record.side == side)
        {
            let (Effort::Reps(reps), Some(body)) = (attempt.effort, record.bodyweight.or(attempt.bodyweight))
            else {
                continue;
            };
            let load = SystemLoad::of(attempt.share, body, attempt.added);
            let left = attempt.left.map(|left| left.reserve());
            let suspect = believed.suspects.iter().find(|suspect| suspect.id == record.id);
            sets.push(CourseSet {
                id: record.id,
                date: day.date,
                shows: believed
                    .belief
                    .one_rep_max_for(load, f64::from(reps.count()) + left.map_or(0.0, Reserve::reps)),
                added: attempt.added,
                reps: reps.count(),
                left,
                missed: attempt.outcome == Outcome::Missed,
                suspect: suspect.map(|suspect| suspect.probability),
            });
        }
    }
    Some(Course {
        days,
        sets,
        layoffs: layoffs(&trained, timeline.on, from),
        believed,
    })
}

fn day(date: NaiveDate, belief: &Belief) -> CourseDay {
    let bands = [Coverage::Half, Coverage::Eighty, Coverage::NinetyFive].map(|coverage| {
        let band = belief.band(coverage);
        (band.low, band.high)
    });
    CourseDay {
        date,
        one_rep_max: belief.one_rep_max(),
        bands,
    }
}

fn layoffs(trained: &[NaiveDate], on: NaiveDate, from: NaiveDate) -> Vec<(NaiveDate, NaiveDate)> {
    let ends = trained.iter().skip(1).copied().chain([on]);
    trained
        .iter()
        .zip(ends)
        .filter_map(|(last, next)| {
            let begin = last.checked_add_days(Days::new(GRACE_DAYS))?.max(from);
            (begin < next).then_some((begin, next))
        })
        .collect()
}
