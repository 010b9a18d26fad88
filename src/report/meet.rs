//! The sheet of a meet: an athlete's lifts with three attempts each, ready to be printed and written on.
//!
//! Attempts stand on the days before, so that a sheet printed again after the first lift still says the same.

use chrono::NaiveDate;

use crate::body::Counted;
use crate::catalogue::Catalogue;
use crate::coaching::PlatesOnHand;
use crate::coaching::attempts::{Attempt, REST_SECS, is_on_a_bar};
use crate::coaching::meet::{Lift, Meet};
use crate::logbook::{Log, Logbook};
use crate::problem::visible;
use crate::strength::beliefs;
use crate::timeline::Timeline;
use crate::units::Unit;

use super::advice::{hung_mass, plates as plate_list, rest, warm_up};
use super::numbers::{about, ago, kg};
use super::sheet::gym;
use super::totals::{no_attempts, no_meet, percent, total};

/// The meet of one day.
#[derive(Debug, Clone, PartialEq)]
pub struct MeetSheet {
    /// The logbook's name.
    pub gym: String,
    /// The day.
    pub on: NaiveDate,
    /// The unit that people here think in.
    pub unit: Unit,
    /// The athletes, in the order that was asked.
    pub athletes: Vec<MeetOf>,
}

/// One athlete's part.
#[derive(Debug, Clone, PartialEq)]
pub struct MeetOf {
    /// Name on screen.
    pub name: String,
    /// "Planned at 79.5 kg, weighed 10 days ago"; none without a weigh-in.
    pub weighs: Option<String>,
    /// The lifts, in the order in which they are lifted.
    pub lifts: Vec<LiftOf>,
    /// The totals of added loads of all openers, seconds and thirds; none where a lift has no such attempt.
    pub totals: [Option<String>; 3],
}

/// One lift.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftOf {
    /// The movement's title.
    pub title: String,
    /// Lightest first: three, or fewer where the plates end, none where it is refused.
    pub tries: Vec<TryOf>,
    /// Why nothing is planned.
    pub refused: Option<String>,
    /// The steps before the first attempt.
    pub warm_up: Vec<String>,
}

/// One attempt.
#[derive(Debug, Clone, PartialEq)]
pub struct TryOf {
    /// "+82.5 kg", "bodyweight".
    pub hung: String,
    /// "20 + 20 + 20 + 20 + 2.5"; empty where nothing hangs, and on a bar.
    pub plates: String,
    /// "162 kg in all", or that a bar is loaded.
    pub in_all: String,
    /// "about 70 %": a chance, never a promise.
    pub chance: String,
}

/// What an attempt is called, first to last.
pub const NAMES: [&str; 3] = ["Opener", "Second", "Third"];

/// What a meet asks beside what every page asks. Common practice, no source.
pub const CARE: &str = "A chance is an estimate of a fresh try, no promise: weigh in first, and change an attempt as the day goes. \
                        Maximal attempts are for healthy adults; with illness, injury or pregnancy ask a licensed practitioner \
                        first. A squat needs a rack with safeties and people beside the bar. What counts as a good lift, the \
                        meet's own and local rules and its judges say.";

/// "Rest 5–10 min between attempts".
pub fn rest_words() -> String {
    format!("rest {} between attempts", rest(REST_SECS))
}

/// The meet of `folders` on `on`, in that order, over `chosen` lifts; over each one's usual ones where none is named.
///
/// # Errors
/// Whose meet is refused, and why, in a sentence.
pub fn meet(
    book: &Logbook,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    on: NaiveDate,
    folders: &[String],
    chosen: &[String],
) -> Result<MeetSheet, String> {
    let logs = folders
        .iter()
        .filter_map(|folder| book.logs.iter().find(|log| log.folder == *folder));
    let of = |log: &Log| {
        let timeline = Timeline::counting(log, catalogue, on, Counted::of(&book.settings));
        let planned = Meet::today(&timeline, catalogue, &beliefs(&timeline), plates, chosen);
        let planned = planned.and_then(|meet| meet.refused().map_or(Ok(meet), Err));
        planned
            .map(|meet| of_athlete(&meet, &timeline, catalogue, book.unit()))
            .map_err(|why| format!("No meet for {}. {}", visible(&log.name), no_meet(why)))
    };
    Ok(MeetSheet {
        gym: gym(book),
        on,
        unit: book.unit(),
        athletes: logs.map(of).collect::<Result<_, _>>()?,
    })
}

fn of_athlete(meet: &Meet, timeline: &Timeline<'_>, catalogue: &Catalogue, unit: Unit) -> MeetOf {
    MeetOf {
        name: timeline.name.to_owned(),
        weighs: timeline.weigh_ins.last().map(|day| {
            let when = ago(timeline.age(day.date));
            format!("Planned at {}, weighed {when}", about(day.mean.kg(), unit))
        }),
        lifts: meet
            .lifts
            .iter()
            .map(|lift| of_lift(lift, catalogue, unit))
            .collect(),
        totals: [0, 1, 2].map(|nth| meet.planned(nth).map(|mass| total(mass, unit))),
    }
}

fn of_lift(lift: &Lift, catalogue: &Catalogue, unit: Unit) -> LiftOf {
    let movement = catalogue.movement(&lift.movement);
    let on_a_bar = movement.is_some_and(is_on_a_bar);
    let plan = lift.plan.as_ref();
    let tries = plan.map_or_else(|_| Vec::new(), |plan| plan.attempts.iter().collect());
    LiftOf {
        title: movement.map_or_else(|| lift.movement.clone(), |known| known.title.clone()),
        tries: tries.into_iter().map(|one| of_try(one, on_a_bar, unit)).collect(),
        refused: plan.err().map(|why| no_attempts(*why)),
        warm_up: plan.map_or_else(
            |_| Vec::new(),
            |plan| plan.warm_up.iter().map(|step| warm_up(step, unit)).collect(),
        ),
    }
}

fn of_try(attempt: &Attempt, on_a_bar: bool, unit: Unit) -> TryOf {
    let load = &attempt.load;
    TryOf {
        hung: hung_mass(load, unit),
        plates: plate_list(load, unit),
        in_all: if on_a_bar {
            "bar and discs together".to_owned()
        } else {
            format!("{} in all", kg(load.system.kg(), unit))
        },
        chance: format!("about {}", percent(attempt.chance)),
    }
}
