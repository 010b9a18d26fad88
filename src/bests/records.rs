//! The best set by each measure, for 1 to 12 repetitions and for holds.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::logbook::record::Id;
use crate::timeline::{LoggedSet, Timeline, believed_reps};
use crate::units::{Added, Bodyweight, Share, Side, SystemLoad};

use super::Formula;

/// Bodyweight's exponent in the size-adjusted measure: strength goes with the square of length, mass with its cube (2/3;
/// allometric scaling, Jaric 2002).
const SIZE_EXPONENT: f64 = 0.67;

/// System load ÷ bodyweight^0.67, kg^0.33: what is left of strength when the size of the body is taken out.
pub fn size_adjusted(load: SystemLoad, bodyweight: Bodyweight) -> f64 {
    // By libm, so that every machine gives the same last digit.
    load.kg() / libm::pow(bodyweight.kg(), SIZE_EXPONENT)
}

/// Bests are kept for sets of so many repetitions and fewer. No rep-max table goes on beyond; common practice, no source.
const MOST_REPS: u16 = 12;

/// A measure of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// System load, kg.
    System,
    /// Added load, kg; below zero it was help.
    Added,
    /// System load ÷ bodyweight.
    Ratio,
    /// System load ÷ bodyweight^0.67.
    SizeAdjusted,
    /// Estimated one-rep max on system load, kg.
    OneRepMax,
    /// What would hang from the belt at that estimate, kg.
    OneRepMaxAdded,
}

impl Kind {
    /// The id that answers use.
    pub fn id(self) -> &'static str {
        match self {
            Kind::System => "system",
            Kind::Added => "added",
            Kind::Ratio => "ratio",
            Kind::SizeAdjusted => "size-adjusted",
            Kind::OneRepMax => "e1rm",
            Kind::OneRepMaxAdded => "e1rm-added",
        }
    }
}

/// What a best is a best of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Size {
    /// At least so many repetitions.
    Reps(u16),
    /// A hold of so many seconds.
    Hold(f64),
    /// Any number of repetitions: an estimate.
    Estimate,
}

/// The best of one measure.
#[derive(Debug, Clone, PartialEq)]
pub struct Best<'a> {
    /// The movement's id.
    pub movement: &'a str,
    /// The side, for a movement whose sides are apart.
    pub side: Option<Side>,
    /// The measure.
    pub kind: Kind,
    /// Of what.
    pub size: Size,
    /// The set.
    pub id: Id,
    /// Its value, in the measure's unit.
    pub value: f64,
    /// The day.
    pub date: NaiveDate,
    /// Bodyweight then.
    pub bodyweight: Option<Bodyweight>,
    /// What hung from the belt.
    pub added: Added,
    /// All that was moved.
    pub system: Option<SystemLoad>,
    /// The set looks like a slip of the finger: it stands until somebody says.
    pub doubted: bool,
}

/// A set that can be a best, and whether it is doubted.
type Standing<'t, 'a> = (&'t LoggedSet<'a>, bool);

/// The four measures of a set.
const MEASURES: [Kind; 4] = [Kind::System, Kind::Added, Kind::Ratio, Kind::SizeAdjusted];

/// Every best of the log, by movement and side; within those by measure, then repetitions.
pub fn bests<'a>(timeline: &Timeline<'a>, formula: Formula) -> Vec<Best<'a>> {
    of_sets(timeline, formula, |_| true)
}

/// The same as if doubted sets were not there.
pub(super) fn undoubted<'a>(timeline: &Timeline<'a>, formula: Formula) -> Vec<Best<'a>> {
    of_sets(timeline, formula, |doubted| !doubted)
}

fn of_sets<'a>(timeline: &Timeline<'a>, formula: Formula, counts: impl Fn(bool) -> bool) -> Vec<Best<'a>> {
    let doubted = timeline.doubted();
    let mut rails: BTreeMap<(&'a str, Option<Side>), Vec<Standing<'_, 'a>>> = BTreeMap::new();
    for (set, doubted) in timeline
        .sets
        .iter()
        .zip(doubted)
        .filter(|(_, doubted)| counts(*doubted))
    {
        if can_be_a_best(set) && set.amount > 0.0 && !moves_nothing(set) {
            // Of a movement that the catalogue doesn't know, the belt alone can be a best.
            let movement = set.set.movement.as_str();
            rails
                .entry((movement, set.side()))
                .or_default()
                .push((set, doubted));
        }
    }
    rails
        .into_iter()
        .flat_map(|((movement, side), sets)| of_rail(movement, side, &sets, formula))
        .collect()
}

/// Help that nobody measured (fingers, bands, shapes, the way down only) makes no best; nor does a broken standard.
pub(super) fn can_be_a_best(set: &LoggedSet<'_>) -> bool {
    let plain = set.form.is_some_and(|form| form.help.is_none());
    let lone = set.is_sided() && set.side().is_none();
    plain && !lone && !set.broke_form()
}

/// A load at or below zero: the set is kept and counts in no best.
pub(super) fn moves_nothing(set: &LoggedSet<'_>) -> bool {
    let bodyweight_matters = set.share != Some(Share::OUTSIDE);
    let known = set.share.is_some() && (set.bodyweight.is_some() || !bodyweight_matters);
    known && set.system.is_none()
}

fn of_rail<'a>(
    movement: &'a str,
    side: Option<Side>,
    sets: &[Standing<'_, 'a>],
    formula: Formula,
) -> Vec<Best<'a>> {
    let best = |(set, doubted): &Standing<'_, 'a>, kind: Kind, size: Size, value: f64| Best {
        movement,
        side,
        kind,
        size,
        id: set.id,
        value,
        date: set.date,
        bodyweight: set.bodyweight,
        added: set.added,
        system: set.system,
        doubted: *doubted,
    };
    let mut bests = Vec::new();
    for kind in MEASURES {
        let mut for_reps = [None; MOST_REPS as usize];
        let mut longest = None;
        for row in sets {
            let Some(value) = measure(row.0, kind) else {
                continue;
            };
            if row.0.is_reps() {
                for (reps, held) in (1..=MOST_REPS).zip(&mut for_reps) {
                    if row.0.amount >= f64::from(reps) {
                        hold(held, (row, value, 0.0));
                    }
                }
            } else {
                hold(&mut longest, (row, value, row.0.amount));
            }
        }
        let of_reps = (1..=MOST_REPS)
            .zip(for_reps)
            .filter_map(|(reps, held)| Some((reps, held?)));
        bests.extend(of_reps.map(|(reps, (row, value, _))| best(row, kind, Size::Reps(reps), value)));
        bests.extend(longest.map(|(row, value, seconds)| best(row, kind, Size::Hold(seconds), value)));
    }
    for kind in [Kind::OneRepMax, Kind::OneRepMaxAdded] {
        let mut highest = None;
        for row in sets {
            if let Some(value) = estimate(row.0, kind, formula) {
                hold(&mut highest, (row, value, 0.0));
            }
        }
        bests.extend(highest.map(|(row, value, _)| best(row, kind, Size::Estimate, value)));
    }
    bests
}

/// A set, its value, and what goes before the value: seconds held.
type Held<'r, 'a> = (&'r Standing<'r, 'a>, f64, f64);

/// Puts `new` in the place of a best that it beats. Sets come in order, so of equals the earliest stays.
fn hold<'r, 'a>(held: &mut Option<Held<'r, 'a>>, new: Held<'r, 'a>) {
    let stays = held.is_some_and(|held| (new.2, new.1) <= (held.2, held.1 + ROUNDING * held.1.abs()));
    if !stays {
        *held = Some(new);
    }
}

/// Values as near as this are ties: pounds and kilograms differ by less in conversion.
const ROUNDING: f64 = 1e-12;

fn measure(set: &LoggedSet<'_>, kind: Kind) -> Option<f64> {
    match kind {
        Kind::System => set.system.filter(|_| knows_body(set)).map(SystemLoad::kg),
        Kind::Added => Some(set.added.kg()),
        Kind::Ratio => Some(set.system?.ratio(set.bodyweight?)),
        Kind::SizeAdjusted => Some(size_adjusted(set.system?, set.bodyweight?)),
        Kind::OneRepMax | Kind::OneRepMaxAdded => None,
    }
}

/// Without any bodyweight only the belt is known, whatever the share.
fn knows_body(set: &LoggedSet<'_>) -> bool {
    set.bodyweight.is_some()
}

fn estimate(set: &LoggedSet<'_>, kind: Kind, formula: Formula) -> Option<f64> {
    let max = formula.one_rep_max(set.system.filter(|_| knows_body(set))?, believed_reps(set)?);
    match kind {
        Kind::OneRepMaxAdded => Some(max.added_from(set.share?, set.bodyweight?).kg()),
        _ => Some(max.kg()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Mass;

    fn adjusted(system: f64, bodyweight: f64) -> f64 {
        size_adjusted(
            SystemLoad::new(Mass::from_kg(system)),
            Bodyweight::new(Mass::from_kg(bodyweight)),
        )
    }

    #[test]
    fn size_is_taken_out_as_the_allometric_examples_do() {
        // Plain arithmetic with 0.67, six decimals: 130 kg at 80 kg, 115 kg at 65 kg.
        assert!((adjusted(130.0, 80.0) - 6.900_381).abs() < 5e-7);
        assert!((adjusted(115.0, 65.0) - 7.015_294).abs() < 5e-7);
    }

    #[test]
    fn a_hundred_and_thirty_at_eighty_is_worth_a_hundred_and_thirteen_at_sixty_five() {
        // Two thirds (Lietzke 1956) make it 113.1946 kg at 65 kg, plain arithmetic; 0.67 differs from it by 0.08 kg.
        assert!((adjusted(113.1946, 65.0) / adjusted(130.0, 80.0) - 1.0).abs() < 0.001);
    }
}
