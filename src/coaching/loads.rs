//! From a target to plates: what can be hung today, with the fewest plates.
//!
//! A belt hangs from one pin, so any single plate is a step and nothing is paired. Gear (carabiner, chain) counts only
//! with a plate on it. As a counterweight the same plates give help.

use std::collections::BTreeMap;

use crate::logbook::Settings;
use crate::units::{Added, Bodyweight, Mass, Share, SystemLoad, Typed, Unit};

use super::GRACE_KG;
use super::advice::LoadToday;

/// Heaviest belt that is worked out, kg. Above any weighted dip on record; it bounds the work, not the athlete.
const HEAVIEST_KG: f64 = 400.0;
/// A bar's lightest load and its steps, kg and lb: the lighter of the two bars of barbell sport (15 and 20 kg; 35 and 45 lb)
/// and a pair of its usual smallest discs (1.25 kg; 2.5 lb). Common practice, no source.
const BAR: [(f64, f64); 2] = [(15.0, 2.5), (35.0, 5.0)];
/// Heaviest bar that is worked out, in either unit. Above any squat on record in kg; it bounds the work, not the athlete.
const HEAVIEST_BAR: f64 = 1000.0;

/// Every total that the plates on hand give, each with its fewest plates.
#[derive(Debug, Clone, PartialEq)]
pub struct PlatesOnHand {
    /// Ascending by mass; the first is nothing at all.
    totals: Vec<Total>,
}

#[derive(Debug, Clone, PartialEq)]
struct Total {
    kg: f64,
    plates: Vec<Typed>,
}

impl PlatesOnHand {
    /// All totals of `plates` (each piece listed as often as it is there) and `gear`.
    pub fn new(plates: &[Typed], gear: Mass) -> Self {
        let mut pieces: Vec<Typed> = plates
            .iter()
            .copied()
            .filter(|plate| plate.mass().kg() > 0.0)
            .collect();
        pieces.sort_by(|a, b| b.mass().kg().total_cmp(&a.mass().kg()));
        // Totals by the gram, so that pounds and kilograms on one pin don't multiply without end.
        let mut sums: BTreeMap<u32, Total> = BTreeMap::from([(
            0,
            Total {
                kg: 0.0,
                plates: Vec::new(),
            },
        )]);
        for piece in pieces {
            let longer: Vec<Total> = sums
                .values()
                .map(|total| {
                    let mut plates = total.plates.clone();
                    plates.push(piece);
                    Total {
                        kg: total.kg + piece.mass().kg(),
                        plates,
                    }
                })
                .filter(|total| total.kg <= HEAVIEST_KG)
                .collect();
            for total in longer {
                let Some(grams) = grams(total.kg) else { continue };
                match sums.get(&grams) {
                    Some(known) if !total.is_better_than(known) => {}
                    _ => {
                        sums.insert(grams, total);
                    }
                }
            }
        }
        let mut totals: Vec<Total> = sums.into_values().collect();
        for total in totals.iter_mut().filter(|total| !total.plates.is_empty()) {
            total.kg += gear.kg();
        }
        Self { totals }
    }

    /// What a logbook's settings have on hand.
    pub fn of(settings: &Settings) -> Self {
        let gear = settings.gear.map_or(Mass::ZERO, Typed::mass);
        Self::new(&settings.plates, gear)
    }

    /// The loads of a bar and its discs, in the unit of these plates. Whose gym it is, and how many discs, nobody asks: only
    /// the belt's plates are on hand here, so no disc is named.
    pub fn on_a_bar(&self) -> Self {
        let unit = self.totals.last().and_then(|most| most.plates.first());
        let unit = unit.map_or(Unit::Kg, |plate| plate.unit());
        let (least, step) = BAR[usize::from(unit == Unit::Lb)];
        let loads = (0u16..).map(|nth| least + step * f64::from(nth));
        let bare = |kg| Total {
            kg,
            plates: Vec::new(),
        };
        let bars = loads
            .take_while(|load| *load <= HEAVIEST_BAR)
            .filter_map(|load| Typed::new(load, unit).ok())
            .map(|typed| bare(typed.mass().kg()));
        Self {
            totals: std::iter::once(bare(0.0)).chain(bars).collect(),
        }
    }

    /// What can be moved today by a body of `bodyweight` at `share`; with help only if the athlete uses any.
    pub fn loadable(&self, share: Share, bodyweight: Bodyweight, with_help: bool) -> Loadable<'_> {
        Loadable {
            totals: &self.totals,
            share,
            bodyweight,
            with_help,
        }
    }
}

impl Total {
    /// Fewer plates, then heavier ones.
    fn is_better_than(&self, other: &Total) -> bool {
        let masses = |total: &Total| {
            total
                .plates
                .iter()
                .map(|plate| plate.mass().kg())
                .collect::<Vec<_>>()
        };
        match self.plates.len().cmp(&other.plates.len()) {
            std::cmp::Ordering::Equal => masses(self) > masses(other),
            order => order.is_lt(),
        }
    }
}

/// Whole grams, for 0 to [`HEAVIEST_KG`].
fn grams(kg: f64) -> Option<u32> {
    // A float that lies within u32 after rounding converts exactly; anything else has no place in the table.
    let rounded = (kg * 1000.0).round();
    if (0.0..=4.0e9).contains(&rounded) {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        Some(rounded as u32)
    } else {
        None
    }
}

/// The loads that today's body and plates can make.
#[derive(Debug, Clone, Copy)]
pub struct Loadable<'p> {
    totals: &'p [Total],
    share: Share,
    bodyweight: Bodyweight,
    with_help: bool,
}

impl<'p> Loadable<'p> {
    /// Every load, lightest first: counterweights from the heaviest down, the body alone, then belts.
    fn all(self) -> impl DoubleEndedIterator<Item = (f64, &'p Total)> {
        let helps = self
            .totals
            .iter()
            .skip(1)
            .rev()
            .filter(move |_| self.with_help)
            .map(|total| (-total.kg, total));
        let belts = self.totals.iter().map(|total| (total.kg, total));
        helps
            .chain(belts)
            .filter(move |(added, _)| self.system(*added).kg() > GRACE_KG)
    }

    fn system(self, added_kg: f64) -> SystemLoad {
        SystemLoad::of(self.share, self.bodyweight, Added::new(Mass::from_kg(added_kg)))
    }

    fn load(self, (added_kg, total): (f64, &Total)) -> LoadToday {
        LoadToday {
            system: self.system(added_kg),
            bodyweight: self.bodyweight,
            added: Added::new(Mass::from_kg(added_kg)),
            plates: total.plates.clone(),
        }
    }

    /// The body alone: no belt, no help.
    pub fn bodyweight_alone(self) -> Option<LoadToday> {
        self.totals.first().map(|nothing| self.load((0.0, nothing)))
    }

    /// The heaviest load at or below `target`; the lightest there is when all are above.
    pub fn at_or_below(self, target: SystemLoad) -> Option<LoadToday> {
        let fits = |(added, _): &(f64, &Total)| self.system(*added).kg() <= target.kg() + GRACE_KG;
        self.all()
            .rev()
            .find(fits)
            .or_else(|| self.all().next())
            .map(|found| self.load(found))
    }

    /// The lightest load from `low` to `high`, ends included.
    pub fn lowest_within(self, low: SystemLoad, high: SystemLoad) -> Option<LoadToday> {
        self.all()
            .find(|(added, _)| self.system(*added).kg() >= low.kg() - GRACE_KG)
            .filter(|(added, _)| self.system(*added).kg() <= high.kg() + GRACE_KG)
            .map(|found| self.load(found))
    }

    /// The lightest load above `bound`.
    pub fn next_above(self, bound: SystemLoad) -> Option<LoadToday> {
        self.all()
            .find(|(added, _)| self.system(*added).kg() > bound.kg() + GRACE_KG)
            .map(|found| self.load(found))
    }

    /// The load nearest to `target`; of two as near, the lighter.
    pub fn nearest(self, target: SystemLoad) -> Option<LoadToday> {
        let off = |(added, _): &(f64, &Total)| (self.system(*added).kg() - target.kg()).abs();
        self.all()
            .fold(None, |best: Option<(f64, &Total)>, next| match best {
                Some(best) if off(&best) <= off(&next) + GRACE_KG => Some(best),
                _ => Some(next),
            })
            .map(|found| self.load(found))
    }

    /// Just this belt (or help), if the plates make it.
    pub fn exactly(self, added: Added) -> Option<LoadToday> {
        self.all()
            .find(|(kg, _)| (kg - added.kg()).abs() <= GRACE_KG)
            .map(|found| self.load(found))
    }

    /// Whether moving `target` at most asks for help: the body alone is heavier.
    pub fn needs_help(self, target: SystemLoad) -> bool {
        self.system(0.0).kg() > target.kg() + GRACE_KG
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn kg(value: f64) -> Typed {
        Typed::new(value, Unit::Kg).unwrap()
    }

    fn belt(plates: &[f64], target_kg: f64, body_kg: f64) -> (f64, Vec<f64>) {
        let plates: Vec<Typed> = plates.iter().copied().map(kg).collect();
        let rack = PlatesOnHand::new(&plates, Mass::ZERO);
        let load = rack
            .loadable(Share::WHOLE, Bodyweight::new(Mass::from_kg(body_kg)), true)
            .at_or_below(SystemLoad::new(Mass::from_kg(target_kg)))
            .unwrap();
        (
            load.added.kg(),
            load.plates.iter().map(|plate| plate.value()).collect(),
        )
    }

    // Oracle: discs of 20, 15, 10, 5, 2.5 and 1.25 kg (IPF technical rules' small set), one of each on a single pin; plain arithmetic.
    const ONE_OF_EACH: [f64; 6] = [20.0, 15.0, 10.0, 5.0, 2.5, 1.25];

    #[test]
    fn a_belt_takes_the_fewest_plates() {
        assert_eq!(
            belt(&ONE_OF_EACH, 36.25 + 80.0, 80.0),
            (36.25, vec![20.0, 15.0, 1.25])
        );
        assert_eq!(
            belt(&ONE_OF_EACH, 33.75 + 80.0, 80.0),
            (33.75, vec![20.0, 10.0, 2.5, 1.25])
        );
        assert_eq!(
            belt(&[25.0, 15.0, 15.0, 2.5, 2.5], 30.0 + 80.0, 80.0),
            (30.0, vec![15.0, 15.0])
        );
    }

    #[test]
    fn one_of_each_reaches_fifty_three_and_three_quarters_and_never_half_a_kilo() {
        assert_eq!(belt(&ONE_OF_EACH, 500.0, 80.0).0, 53.75);
        assert_eq!(belt(&ONE_OF_EACH, 80.5, 80.0).0, 0.0);
        assert_eq!(belt(&ONE_OF_EACH, 81.25, 80.0).0, 1.25);
    }

    #[test]
    fn of_equal_counts_the_heavier_plates_hang() {
        assert_eq!(belt(&[15.0, 15.0, 20.0, 10.0], 110.0, 80.0).1, vec![20.0, 10.0]);
    }

    #[test]
    fn competition_discs_hang_in_half_kilo_steps() {
        // International Weightlifting Federation discs: 25 20 15 10 5 2.5 2 1.5 1 0.5 kg.
        let discs = [25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 2.0, 1.5, 1.0, 0.5];
        for half in 0..165 {
            let target = f64::from(half) / 2.0;
            assert_eq!(belt(&discs, 80.0 + target, 80.0).0, target);
        }
    }

    #[test]
    fn gear_weighs_only_with_a_plate_on_it() {
        let rack = PlatesOnHand::new(&[kg(10.0)], Mass::from_kg(1.2));
        let loadable = rack.loadable(Share::WHOLE, Bodyweight::new(Mass::from_kg(80.0)), false);
        let at = |target: f64| {
            loadable
                .at_or_below(SystemLoad::new(Mass::from_kg(target)))
                .unwrap()
                .added
                .kg()
        };
        assert_eq!((at(91.0), at(91.2)), (0.0, 11.2));
    }

    #[test]
    fn a_bar_is_loaded_by_pairs_whatever_hangs_from_the_belt() {
        // Barbell sport: bars of 15 and 20 kg, a pair of 1.25 kg discs is the usual smallest step (common practice, no source).
        let at = |plates: &[Typed], target: f64| {
            let bar = PlatesOnHand::new(plates, Mass::ZERO).on_a_bar();
            let loadable = bar.loadable(Share::OUTSIDE, Bodyweight::new(Mass::from_kg(80.0)), false);
            let load = loadable
                .at_or_below(SystemLoad::new(Mass::from_kg(target)))
                .unwrap();
            assert!(load.plates.is_empty(), "no disc is named");
            load.added.mass()
        };
        assert_eq!(at(&[kg(20.0)], 151.0).kg(), 150.0);
        assert_eq!(at(&[kg(20.0)], 9.0).kg(), 15.0, "nothing is lighter than the bar");
        let pounds = [Typed::new(45.0, Unit::Lb).unwrap()];
        assert!(
            (at(&pounds, 151.0).in_unit(Unit::Lb) - 330.0).abs() < 1e-9,
            "333 lb"
        );
    }

    #[test]
    fn a_pound_plate_and_a_kilo_plate_hang_together() {
        let rack = PlatesOnHand::new(&[kg(20.0), Typed::new(45.0, Unit::Lb).unwrap()], Mass::ZERO);
        let loadable = rack.loadable(Share::WHOLE, Bodyweight::new(Mass::from_kg(80.0)), false);
        let both = loadable
            .at_or_below(SystemLoad::new(Mass::from_kg(1000.0)))
            .unwrap();
        assert_eq!(both.added.kg(), 45.0 * crate::units::KG_PER_LB + 20.0);
    }
}
