//! What can't be meant as it was typed: seen, explained, and kept from moving the belief.

use rungwright::strength::Filter;
use rungwright::units::{Bodyweight, Effort, KG_PER_LB, Mass, Outcome, Reps};

use crate::{attempt, date, done, read, two_months};

#[test]
fn a_plus_thirty_kg_typo_is_seen_explained_and_moves_little() {
    let clean = two_months();
    let mut typed = clean.clone();
    typed[15].attempts[1] = done(25.0 / KG_PER_LB, 5, 1.0);
    let (right, mut wrong) = (read(&clean), read(&typed[..15]));
    let seen = wrong.learn(&typed[15]);
    let set = seen.sets[1].unwrap();
    assert!(set.looks_like_a_typo(), "{set:?}");
    let likely = set.likely.unwrap();
    assert!((likely.added.kg() - 25.0).abs() < 1e-9, "{likely:?}");
    let of = |filter: &Filter| filter.belief(None, date(62)).unwrap().one_rep_max().kg();
    assert!((of(&wrong) / of(&right) - 1.0).abs() < 0.015);
}

#[test]
fn a_doubled_digit_is_explained_by_the_single_one() {
    let mut days = two_months();
    days[15].attempts[2] = done(25.0, 55, 1.0);
    let seen = read(&days[..15]).learn(&days[15]);
    let likely = seen.sets[2].unwrap().likely.unwrap();
    assert_eq!(likely.effort, Effort::Reps(Reps::try_from(5).unwrap()));
}

#[test]
fn an_honest_session_holds_no_typo() {
    let days = two_months();
    let seen = read(&days[..15]).learn(&days[15]);
    assert!(seen.sets.iter().all(|set| !set.unwrap().looks_like_a_typo()));
}

#[test]
fn a_bodyweight_in_pounds_is_doubted_once() {
    let mut days = two_months();
    for set in &mut days[10].attempts {
        set.bodyweight = Some(Bodyweight::new(Mass::from_kg(80.0 / KG_PER_LB)));
    }
    let mut filter = read(&days[..10]);
    assert!(filter.learn(&days[10]).bodyweight_doubted);
    assert!(!filter.learn(&days[11]).bodyweight_doubted);
}

#[test]
fn rows_that_cannot_be_are_left_out() {
    let mut days = two_months();
    let clean = read(&days);
    days[15]
        .attempts
        .push(attempt(80.0, -79.0, 5, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(15.0, 25.0, 5, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(80.0, 25.0, 61, None, Outcome::Done));
    days[15]
        .attempts
        .push(attempt(80.0, 25.0, 0, None, Outcome::Done));
    let mut filter = read(&days[..15]);
    let seen = filter.learn(&days[15]);
    assert!(seen.sets[3..].iter().all(Option::is_none));
    assert_eq!(filter.belief(None, date(61)), clean.belief(None, date(61)));
}
