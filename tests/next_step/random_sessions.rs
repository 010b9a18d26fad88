//! Sessions at random: good, fair, missed, a single, or anything.

use proptest::prelude::*;
use proptest::sample::select;
use rungwright::catalogue::{Catalogue, Rung};
use rungwright::logbook::record::{Fact, Load, Set};
use rungwright::units::{Effort, Given, Outcome, Reps, Seconds, Side};

use crate::random_logs::kg;

/// How a session went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mood {
    Standard,
    Top,
    Middle,
    Easy,
    Missed,
    Max,
    Any,
}

/// Every mood.
pub const MOODS: [Mood; 7] = [
    Mood::Standard,
    Mood::Top,
    Mood::Middle,
    Mood::Easy,
    Mood::Missed,
    Mood::Max,
    Mood::Any,
];

/// How long ago: mostly the last weeks, at times beyond a year.
pub fn age() -> impl Strategy<Value = i32> {
    prop_oneof![12 => 0..30_i32, 4 => 30..130_i32, 1 => 130..420_i32]
}

/// The same session on a few days, so that something can be passed, missed or stalled.
pub fn session(
    id: &'static str,
    rungs: Vec<&'static Rung>,
    moods: Vec<Mood>,
    body: f64,
) -> BoxedStrategy<Vec<(i32, Fact)>> {
    let about = (
        select(rungs),
        select(moods),
        select(vec![0.0, 0.0, 1.0, 3.0, 9.0]),
    );
    let when = (age(), 1..7_i32, 1..5_i32);
    let sides = select(vec![0, 1, 2, 2, 2, 2_u8]);
    (
        about,
        when,
        sides,
        prop::option::of(select(vec![0.0, 1.0, 1.0, 2.0, 3.0, 4.0])),
        any::<u64>(),
        any::<bool>(),
    )
        .prop_map(
            move |((rung, mood, off), (age, times, apart), sides, left, salt, tagged)| {
                let movement = Catalogue::shipped().movement(&rung.movement).unwrap();
                let sides: Vec<Option<Side>> = match (movement.is_sided(), sides) {
                    (false, _) => vec![None],
                    (true, 0) => vec![Some(Side::Left)],
                    (true, 1) => vec![Some(Side::Right)],
                    (true, _) => vec![Some(Side::Left), Some(Side::Right)],
                };
                let days = (0..times).map(|nth| age - nth * apart).filter(|days| *days >= 0);
                days.flat_map(|days| {
                    sides.iter().flat_map(move |side| {
                        sets(id, rung, mood, body, off, left, salt, tagged, *side)
                            .into_iter()
                            .map(move |set| (days, Fact::Set(set)))
                    })
                })
                .collect()
            },
        )
        .boxed()
}

#[allow(clippy::too_many_arguments)]
fn sets(
    id: &str,
    rung: &Rung,
    mood: Mood,
    body: f64,
    off: f64,
    left: Option<f64>,
    salt: u64,
    tagged: bool,
    side: Option<Side>,
) -> Vec<Set> {
    let (lo, hi) = (rung.work.range.lo(), rung.work.range.hi());
    let belt = rung
        .standard
        .ratio
        .map(|ratio| ((ratio - 1.0) * body / 1.25).ceil() * 1.25 - off * 1.25);
    (0..rung.work.sets)
        .map(|nth| {
            let chance = f64::from(u8::try_from((salt >> (8 * nth.min(7))) & 0xff).unwrap_or(0)) / 256.0;
            let (amount, outcome) = match mood {
                Mood::Standard => (rung.standard.reach, Outcome::Done),
                // At times well over the range, where the plates leave no small step.
                Mood::Top => (hi + if salt % 4 == 1 { 3.0 } else { 0.0 }, Outcome::Done),
                Mood::Middle => (lo + ((hi - lo) * chance).floor(), Outcome::Done),
                Mood::Easy => ((hi - 1.0).max(lo), Outcome::Done),
                Mood::Missed if nth > 0 => ((lo - 1.0).max(0.0), Outcome::Missed),
                Mood::Missed => (lo, Outcome::Done),
                Mood::Max => (1.0 + (chance * 2.0).floor(), Outcome::Done),
                Mood::Any => ((chance * (hi + 3.0)).floor(), select_outcome(salt >> (3 * nth))),
            };
            // At times the right does two more than the left.
            let right = side == Some(Side::Right) && salt.is_multiple_of(3);
            let amount = if right && matches!(mood, Mood::Standard | Mood::Top) {
                amount + 2.0
            } else {
                amount
            };
            let belt = if matches!(mood, Mood::Max) {
                belt.map(|belt| belt + 15.0)
            } else {
                belt
            };
            Set {
                movement: rung.movement.as_str().into(),
                side,
                load: belt.filter(|belt| *belt != 0.0).map(|belt| {
                    let typed = kg(belt.abs());
                    if belt < 0.0 {
                        Load::Assistance(typed)
                    } else {
                        Load::Added(typed)
                    }
                }),
                effort: effort(rung, amount),
                left: left
                    .map(|left| if mood == Mood::Easy { 4.0 } else { left })
                    .filter(|_| outcome != Outcome::Missed || salt.is_multiple_of(16))
                    .map(|left| Given::rir(left).unwrap()),
                outcome: outcome_of(rung, amount, outcome),
                bodyweight: None,
                ladder: tagged.then(|| id.into()),
                rung: tagged.then(|| rung.id.as_str().into()),
                note: None,
            }
        })
        .collect()
}

fn effort(rung: &Rung, amount: f64) -> Effort {
    if rung.work.range.is_hold() {
        Effort::Hold(Seconds::try_from(amount.max(1.0)).unwrap())
    } else {
        let count = (0..=1000_u16).find(|count| f64::from(*count) >= amount).unwrap();
        Effort::Reps(Reps::try_from(count).unwrap())
    }
}

/// A set without one repetition can only have failed.
fn outcome_of(rung: &Rung, amount: f64, outcome: Outcome) -> Outcome {
    if amount < 1.0 && !rung.work.range.is_hold() {
        Outcome::Missed
    } else {
        outcome
    }
}

fn select_outcome(salt: u64) -> Outcome {
    match salt % 8 {
        0 => Outcome::Missed,
        1 => Outcome::Form,
        _ => Outcome::Done,
    }
}
