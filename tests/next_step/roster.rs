//! Who needs a coach most, where a boundary decides. Common practice, no source.

use rungwright::catalogue::Catalogue;
use rungwright::coaching::PlatesOnHand;
use rungwright::coaching::roster::{Need, roster};
use rungwright::logbook::Settings;
use rungwright::units::{Mass, Unit};

use super::support::{Ago, Athlete, Sets};
use super::{fair_sets, lifter, standard_sets};

fn need(athlete: &Athlete) -> Need {
    let plates = PlatesOnHand::new(&Settings::fresh(Unit::Kg).plates, Mass::ZERO);
    let today = 0.days_ago().date();
    roster(&[athlete.log()], Catalogue::shipped(), &plates, today)[0].need
}

/// That many sessions, three days apart, the last of them three days ago; two loads in turn, so that nothing stalls.
fn days_in_the_range(athlete: Athlete, count: i32) -> Athlete {
    (1..=count).rev().fold(athlete, |athlete, nth| {
        let sets: Sets = if nth % 2 == 0 {
            fair_sets()
        } else {
            fair_sets().with(12.5)
        };
        athlete.did((3 * nth).days_ago(), sets)
    })
}

#[test]
fn eight_judged_days_without_a_standard_day_are_stuck_and_seven_are_not() {
    assert_eq!(need(&days_in_the_range(lifter(), 7)), Need::GoingOn);
    assert_eq!(need(&days_in_the_range(lifter(), 8)), Need::Stuck);
}

#[test]
fn a_standard_day_within_the_last_eight_is_progress_and_one_before_them_is_not() {
    let after_a_standard_day = |count: i32| {
        let day = (3 * count + 3).days_ago();
        days_in_the_range(lifter().did(day, standard_sets()), count)
    };
    assert_eq!(need(&after_a_standard_day(7)), Need::GoingOn);
    assert_eq!(need(&after_a_standard_day(8)), Need::Stuck);
}
