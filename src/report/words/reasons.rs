//! What was found, as sentences: the reasons of a next step.

use crate::catalogue::Caution;
use crate::coaching::Finding;
use crate::coaching::finding::{Begins, SideState};
use crate::units::Rail;

use super::super::belief;
use super::super::numbers::{ago, day, days, kg, number, reps};
use super::{Words, ordinal_figures};

impl Words<'_> {
    /// A reason as a sentence. The one that decided also says what follows; the others only tell their facts, so that no two
    /// of them give different advice.
    pub fn reason(self, finding: &Finding, decided: bool) -> String {
        let (fact, so) = self.fact(finding);
        match so.filter(|_| decided) {
            Some(so) => format!("{fact}: {so}."),
            None => format!("{fact}."),
        }
    }

    /// What was found, and what follows from it where that isn't plain.
    fn fact(self, finding: &Finding) -> (String, Option<String>) {
        let amount = |value: f64| self.amount(value);
        let kg = |value: f64| kg(value, self.unit);
        let so = |words: &str| Some(words.to_owned());
        match finding {
            Finding::PainStop { site, score, days } => (
                format!("You reported {score} of 10 at the {} {}", site.word(), ago(*days)),
                so("no work here until it has settled"),
            ),
            Finding::WeighInStale { days: None } => (
                "There is no weigh-in yet".to_owned(),
                so("the load depends on it"),
            ),
            Finding::WeighInStale { days: Some(count) } => (
                format!("Your last weigh-in is {} old", days(*count)),
                so("the load depends on it"),
            ),
            Finding::Placed => (
                "You were placed on this rung and have not trained it yet".to_owned(),
                None,
            ),
            Finding::NoRecord {
                begins: Begins::First,
            } => (
                "Nothing is logged that says more".to_owned(),
                so("start at the first rung"),
            ),
            Finding::NoRecord {
                begins: Begins::Entered,
            } => (
                "This is the highest rung whose entry you have logged and whose standard you have not"
                    .to_owned(),
                None,
            ),
            Finding::NoRecord { begins: Begins::Met } => (
                "This is the highest rung whose entry you have logged; its standard you have met".to_owned(),
                None,
            ),
            Finding::NoRecord {
                begins: Begins::BesideOther,
            } => (
                "Your log says a higher rung, but this side begins no higher than the other".to_owned(),
                None,
            ),
            Finding::EntryUntested { movement, at_least } => (
                format!(
                    "The rung above asks {}, which you have not tried; do that today",
                    self.asked(movement, *at_least, None)
                ),
                None,
            ),
            Finding::LayoffShort { days: count }
            | Finding::LayoffLong { days: count }
            | Finding::LayoffStep { days: count } => (
                format!("Your last session on this rung was {} ago", days(*count)),
                so("some strength goes with time off"),
            ),
            Finding::AfterPain { site, score, date } => (
                format!(
                    "You reported {score} of 10 at the {} on {} and have not trained this rung since",
                    site.word(),
                    day(*date)
                ),
                so("make this session a trial"),
            ),
            Finding::Deload => (
                "You are in a deload week".to_owned(),
                so("same work, half the sets"),
            ),
            Finding::StandardMet { days, next } => {
                let ends: Vec<String> = [days.first(), days.last()]
                    .into_iter()
                    .flatten()
                    .map(|date| day(*date))
                    .collect();
                (
                    format!("You met the standard on {}", ends.join(" and ")),
                    Some(format!("on to {}", self.rung(next))),
                )
            }
            Finding::EntryMissing {
                next,
                movement,
                at_least,
                ratio,
            } => (
                format!(
                    "You have passed this rung, but the next ({}) asks {} first",
                    self.rung(next),
                    self.asked(movement, *at_least, *ratio)
                ),
                None,
            ),
            Finding::MissedTwice { first, second } => (
                format!("Sets failed on {} and {}", day(*first), day(*second)),
                so(self.backing_off()),
            ),
            Finding::MissedAgain { pairs, first, second } => (
                format!(
                    "Sets failed on {} and {}, the {} such pair on this rung",
                    day(*first),
                    day(*second),
                    ordinal(*pairs)
                ),
                None,
            ),
            Finding::LightOnly => (
                "Only light days so far on this rung".to_owned(),
                so("the same again"),
            ),
            Finding::MissedOnce { date, lowest, lo } => (
                format!(
                    "On {} a set failed at {}, under {}",
                    day(*date),
                    amount(*lowest),
                    amount(*lo)
                ),
                so("the same again"),
            ),
            Finding::FormMiss { date } => (
                format!(
                    "On {} the movement's standard was not kept in every set",
                    day(*date)
                ),
                so("the same again, clean"),
            ),
            Finding::SetsShort {
                date,
                done,
                asked,
                lowest,
                lo,
            } => {
                let short = if done < asked {
                    format!("you did {done} of {asked} sets")
                } else {
                    format!("a set stopped at {}, under {}", amount(*lowest), amount(*lo))
                };
                (
                    format!("On {} {short}", day(*date)),
                    so("the same again, in full"),
                )
            }
            Finding::ReserveShort { date, lowest, asked } => (
                format!(
                    "On {} you kept {} in reserve where {} is asked",
                    day(*date),
                    number(*lowest, 1),
                    number(*asked, 1)
                ),
                so("the same again"),
            ),
            Finding::OneMoreDay {
                date,
                days: count,
                asked,
                apart,
            } => (
                format!(
                    "You met the standard on {}, day {} of {asked}",
                    day(*date),
                    count.max(&1)
                ),
                Some(format!("once more, at least {} apart", days(i64::from(*apart)))),
            ),
            Finding::TopOfRange { work_kg, load_kg, hi } => (
                format!("All sets reached {} at {}", amount(*hi), kg(*work_kg)),
                Some(format!(
                    "the next step is {}, +{} %",
                    kg(*load_kg),
                    number((load_kg / work_kg - 1.0) * 100.0, 1)
                )),
            ),
            Finding::CoarseStep {
                work_kg,
                load_kg,
                lowest,
                ..
            } => (
                format!("Your plates step from {} to {}", kg(*work_kg), kg(*load_kg)),
                Some(format!("{} reps carry that", amount(*lowest))),
            ),
            Finding::NoStepInBand {
                next_kg: Some(next), ..
            } => (
                format!("Your next load would be {}, a step of over 10 %", kg(*next)),
                so("add reps first"),
            ),
            Finding::NoStepInBand { next_kg: None, .. } => (
                "The plates on hand make no next load".to_owned(),
                so("add reps first"),
            ),
            Finding::LastRung { hi } => (
                format!("All sets reached {}, and no rung is above", amount(*hi)),
                so("keep it"),
            ),
            Finding::ReserveUnlogged { hi } => (
                format!("All sets reached {}, but no reserve was logged", amount(*hi)),
                so("once more, and say how many more you could have done"),
            ),
            Finding::TestDue { judged } => (
                format!("Nothing was hard in six weeks over {judged} sessions"),
                so("one set shows where you are"),
            ),
            Finding::Stalled { days, work_kg } => (
                format!("{days} sessions at {} brought no more reps in all", kg(*work_kg)),
                so(self.backing_off()),
            ),
            Finding::InRange { lowest, lo, hi } => (
                format!(
                    "Your lowest set was {} of {}–{}",
                    amount(*lowest),
                    number(*lo, 0),
                    amount(*hi)
                ),
                so("add from there"),
            ),
            Finding::PainCap { site, score, days } => (
                format!("You reported {score} of 10 at the {} {}", site.word(), ago(*days)),
                so("train, but add nothing"),
            ),
            Finding::MinorNoMax { past: None } => ("Under 18".to_owned(), so("no maximal tests")),
            Finding::MinorNoMax { past: Some(rung) } => {
                (format!("Under 18, {} is left out", self.rung(rung)), None)
            }
            Finding::TendonTime {
                days: count,
                asked,
                caution,
            } => {
                let who = if *caution == Caution::Grip {
                    "fingers and their tendons"
                } else {
                    "tendons"
                };
                (
                    format!("{} on this rung; {who} get {asked} days to adapt", days(*count)),
                    None,
                )
            }
            Finding::SideWait { other } => (self.wait(other), so("this side waits")),
            Finding::SideGap { own, other, within } => (
                format!(
                    "Your sides do {} and {} in their lowest sets",
                    amount(*own),
                    amount(*other)
                ),
                Some(format!(
                    "bring them within {}",
                    if self.is_hold {
                        amount(*within)
                    } else {
                        reps(*within)
                    }
                )),
            ),
            Finding::LongShot {
                chance,
                reps: count,
                expected,
            } => {
                let reps = reps(*count);
                let chance = belief::probability(*chance);
                let expected =
                    expected.map_or_else(String::new, |reps| format!("; {}", belief::expected_reps(reps)));
                (
                    format!(
                        "The estimate gives {reps} with the asked reserve a chance of {chance}{expected}"
                    ),
                    None,
                )
            }
            Finding::HeldBack(held) => (belief::held_back(held, &self.movement(&held.companion)), None),
        }
    }

    fn wait(self, other: &SideState) -> String {
        let side = self.other_side();
        match other {
            SideState::Behind => format!("The {side} side is behind"),
            SideState::NotReady => format!("The {side} side pauses, begins or backs off"),
            SideState::NotThere => format!("The {side} side does not take this step yet"),
            SideState::Fewer { own, other } => {
                format!(
                    "This side does {}, the {side} {}",
                    self.amount(*own),
                    self.amount(*other)
                )
            }
        }
    }

    /// What a back-off takes away: load where the rung has one, else sets.
    fn backing_off(self) -> &'static str {
        if self.is_loaded {
            "lighter, then up again"
        } else {
            "fewer sets, then up again"
        }
    }

    fn other_side(self) -> &'static str {
        match self.rail {
            Rail::Left => "right",
            Rail::Right => "left",
            Rail::Both => "other",
        }
    }
}

/// "third", "21st": words up to four, then figures with their ending.
fn ordinal(count: usize) -> String {
    let words = ["first", "second", "third", "fourth"];
    match count.checked_sub(1).and_then(|at| words.get(at)) {
        Some(word) => (*word).to_owned(),
        None => ordinal_figures(count),
    }
}
