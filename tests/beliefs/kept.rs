//! What was read is kept from one question to the next, and that changes no bit of any answer.

use std::sync::Arc;

use rungwright::catalogue::Catalogue;
use rungwright::strength::{Estimates, Kept, beliefs, beliefs_keeping};
use rungwright::units::Rail;

use crate::support::{Ago, Athlete, Day, TODAY, athlete, one_set};

/// A session: so many days ago, load, repetitions, reserve, and whether it was done on one arm.
#[derive(Clone, Copy)]
struct Session {
    ago: i32,
    added: f64,
    count: u16,
    left: f64,
    one_arm: bool,
}

fn told(sessions: &[Session]) -> Athlete {
    let mut told = athlete()
        .weighing(80.0)
        .placed_on("one-arm-pull-up", "fingers-3", 200.days_ago());
    for session in sessions {
        let sets = one_set(session.count).leaving(session.left).at_bodyweight(80.0);
        let day: Day = session.ago.days_ago();
        told = if session.one_arm {
            told.did(day, sets.left())
        } else {
            told.did(day, sets.with(session.added).of("pull-up"))
        };
    }
    told
}

/// Numbers from chance that come out the same each time (xorshift, Marsaglia 2003).
fn chance(state: &mut u64, below: u64) -> u64 {
    *state ^= *state << 13;
    *state ^= *state >> 7;
    *state ^= *state << 17;
    *state % below
}

fn any(state: &mut u64) -> Session {
    Session {
        ago: i32::try_from(chance(state, 180)).unwrap(),
        added: 2.5 * f64::from(u32::try_from(chance(state, 24)).unwrap()),
        count: u16::try_from(1 + chance(state, 8)).unwrap(),
        left: f64::from(u32::try_from(chance(state, 4)).unwrap()),
        one_arm: chance(state, 5) == 0,
    }
}

#[test]
fn sets_added_changed_and_taken_back_give_what_reading_all_anew_gives() {
    let mut state = 7;
    for _ in 0..6 {
        let kept = Arc::new(Kept::default());
        let mut sessions: Vec<Session> = Vec::new();
        for step in 0..40 {
            match chance(&mut state, 6) {
                0 if !sessions.is_empty() => {
                    let at = usize::try_from(chance(&mut state, sessions.len() as u64)).unwrap();
                    sessions.remove(at);
                }
                1 if !sessions.is_empty() => {
                    let at = usize::try_from(chance(&mut state, sessions.len() as u64)).unwrap();
                    sessions[at] = any(&mut state);
                }
                2 => sessions.push(Session {
                    ago: 0,
                    ..any(&mut state)
                }),
                _ => sessions.push(any(&mut state)),
            }
            sessions.sort_by_key(|session| -session.ago);
            told(&sessions).timeline_on(TODAY, |timeline| {
                let anew = beliefs(timeline);
                assert_eq!(beliefs_keeping(timeline, &kept), anew, "step {step}");
                let ladder = Catalogue::shipped().ladder("one-arm-pull-up").unwrap();
                let mut keeping = Estimates::keeping(timeline, Catalogue::shipped(), Arc::clone(&kept));
                let mut fresh = Estimates::new(timeline, Catalogue::shipped());
                let rail = Rail::Left;
                assert_eq!(
                    keeping.on_ladder(ladder, rail),
                    fresh.on_ladder(ladder, rail),
                    "step {step}"
                );
            });
        }
    }
}

#[test]
fn the_sets_behind_a_belief_are_told() {
    let day = |ago| Session {
        ago,
        added: 20.0,
        count: 5,
        left: 1.0,
        one_arm: false,
    };
    let mut sessions = [30, 25, 20, 15, 10, 5].map(day).to_vec();
    sessions.insert(
        5,
        Session {
            added: 10.0,
            ..day(5)
        },
    );
    sessions.push(Session {
        added: 30.0,
        ..day(0)
    });
    let believed = told(&sessions).timeline_on(TODAY, |timeline| beliefs(timeline).remove(0));
    let basis = believed.basis;
    assert_eq!(
        (basis.sets, basis.days, basis.doubted, basis.of_other_side),
        (7, 6, 0, 0)
    );
    assert_eq!(
        (basis.first, basis.last),
        (30.days_ago().date(), 5.days_ago().date())
    );
    // Today's set counts from tomorrow on; of a day its hardest is told, the latest day first.
    let loads: Vec<f64> = basis.lately.iter().map(|told| told.added.kg()).collect();
    assert_eq!(loads, [20.0, 20.0]);
    assert_eq!(basis.lately[0].date, 5.days_ago().date());
}
