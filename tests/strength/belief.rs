//! What is believed of whom, and from when on.

use rungwright::strength::{Attempt, History, Hold, HoldJoint, Holds, Prior, TrainingDay, Tuning};
use rungwright::units::{Demand, Outcome, Seconds, Share, Side};

use crate::{attempt, date, done, kg, on, pull_up, read, two_months};

#[test]
fn nobody_is_judged_without_a_record() {
    assert!(pull_up().belief(None, date(0)).is_none());
}

#[test]
fn an_amended_set_replays_to_the_same_bits_as_a_fresh_reading() {
    let mut days = two_months();
    let mut history = History::new(Prior::of("pull-up", Share::WHOLE), Tuning::default());
    assert_eq!(history.update(&days), 16);
    assert_eq!(history.update(&days), 0);
    days.push(on(64, vec![done(25.0, 6, 1.0)]));
    assert_eq!(history.update(&days), 1, "today's set costs one day's work");
    days[16].attempts.push(done(25.0, 5, 1.0));
    assert_eq!(
        history.update(&days),
        1,
        "one more set today costs that day's work, too"
    );
    days[12].attempts[0] = done(25.0, 8, 0.0);
    let replayed = history.update(&days);
    assert!(
        (5..17).contains(&replayed),
        "from the month's snapshot, not from the start: {replayed}"
    );
    let fresh = read(&days);
    assert_eq!(history.belief(None, date(65)), fresh.belief(None, date(65)));
    assert_eq!(
        history.belief(None, date(30)),
        read(&days[..8]).belief(None, date(30))
    );
    assert_eq!(history.reads().len(), days.len());
    days.truncate(9);
    history.update(&days);
    assert_eq!(history.belief(None, date(65)), read(&days).belief(None, date(65)));
}

#[test]
fn who_starts_far_from_the_average_is_believed_from_the_first_day() {
    // Sets of five at 85 % of a known 1RM: five with about two left by the reps curve that the belief assumes (R80 8.5).
    for (ratio, left) in [
        (0.6, Some(2.0)),
        (0.8, None),
        (1.0, None),
        (2.6, None),
        (2.3, Some(2.0)),
    ] {
        let sets = |_| attempt(60.0, 60.0 * (0.85 * ratio - 1.0), 5, left, Outcome::Done);
        let mut filter = pull_up();
        let seen = filter.learn(&on(0, (0..3).map(sets).collect()));
        assert!(
            seen.sets.iter().flatten().all(|set| !set.looks_like_a_typo()),
            "{ratio}"
        );
        let believed = filter.belief(None, date(1)).unwrap().one_rep_max().kg() / 60.0;
        assert!(
            (believed / ratio - 1.0).abs() < 0.2,
            "{ratio} × bodyweight, believed {believed}"
        );
    }
}

#[test]
fn each_side_has_its_own_belief_and_lends_to_the_other() {
    let one_arm = |side: Side, reps: u16| Attempt {
        side: Some(side),
        ..done(-20.0, reps, 1.0)
    };
    let days: Vec<TrainingDay> = (0..10)
        .map(|n| on(4 * n, vec![one_arm(Side::Left, 4), one_arm(Side::Right, 5)]))
        .collect();
    let filter = read(&days);
    let left = filter.belief(Some(Side::Left), date(40)).unwrap();
    let right = filter.belief(Some(Side::Right), date(40)).unwrap();
    assert!(right.one_rep_max() > left.one_rep_max());
    let only: Vec<TrainingDay> = days
        .iter()
        .map(|day| TrainingDay {
            date: day.date,
            attempts: day.attempts[..1].to_vec(),
        })
        .collect();
    let alone = read(&only).belief(Some(Side::Left), date(40)).unwrap();
    assert!(left.log_sd() < alone.log_sd());
    assert!(read(&only).belief(Some(Side::Right), date(40)).is_none());
}

#[test]
fn six_weeks_off_cost_strength_and_certainty() {
    let filter = read(&two_months());
    let (then, later) = (
        filter.belief(None, date(61)).unwrap(),
        filter.belief(None, date(102)).unwrap(),
    );
    assert!(later.one_rep_max() < then.one_rep_max());
    assert!(later.log_sd() > then.log_sd());
}

#[test]
fn a_heavier_load_is_never_likelier() {
    let belief = read(&two_months()).belief(None, date(61)).unwrap();
    let chances: Vec<f64> = (60..200).map(|load| belief.chance(kg(f64::from(load)))).collect();
    assert!(chances.windows(2).all(|pair| pair[1] <= pair[0]));
    assert!(chances[0] <= 0.98 && chances[139] >= 0.0);
}

#[test]
fn a_longer_lever_is_held_shorter() {
    let hold = |demand: f64, seconds: f64| Hold {
        side: None,
        demand: Demand::new(demand).unwrap(),
        seconds: Seconds::try_from(seconds).unwrap(),
        left: None,
        outcome: Outcome::Missed,
    };
    let mut holds = Holds::new(HoldJoint::Shoulder);
    for day in 0..6 {
        holds.learn(date(4 * day), &[hold(0.76, 12.0), hold(0.76, 10.0)]);
    }
    let belief = holds.belief(None, date(25)).unwrap();
    let [low, middle, high] = belief.seconds(Demand::new(0.76).unwrap());
    assert!(
        low <= middle && middle <= high && (8.0..16.0).contains(&middle),
        "{low} {middle} {high}"
    );
    let full = belief.seconds(Demand::new(1.0).unwrap());
    assert!(full[1] < middle);
    assert!(belief.chance(Demand::new(0.76).unwrap()) > belief.chance(Demand::new(1.0).unwrap()));
}
