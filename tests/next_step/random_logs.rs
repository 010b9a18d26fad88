//! Logs of people who train, rest, hurt, slip and change their minds, at random.

use chrono::NaiveDate;
use proptest::prelude::*;
use proptest::sample::select;
use rungwright::catalogue::{Catalogue, Ladder, Rung, Site};
use rungwright::logbook::record::{Fact, Load, PhaseKind, Placed};
use rungwright::logbook::{Id, Log, Record, Written};
use rungwright::units::{Side, Typed, Unit};

use crate::random_sessions::{MOODS, Mood, age, session};
use crate::support::Ago;

/// A log, told without ids: the day's age, then what happened, in order.
#[derive(Debug, Clone)]
pub struct Told {
    /// So many days ago, and what.
    pub facts: Vec<(i32, Fact)>,
    /// Plates on hand, kg.
    pub plates: Vec<f64>,
    /// Belt, chain and carabiner, kg.
    pub gear: f64,
}

/// The ladders that random athletes climb: with load, with sides, with holds, without load.
const LADDERS: [&str; 9] = [
    "weighted-pull-up",
    "weighted-dip",
    "pistol-squat",
    "one-arm-pull-up",
    "one-arm-hang",
    "toes-to-bar",
    "front-lever",
    "nordic-curl",
    "handstand-push-up",
];

fn ladder(id: &str) -> &'static Ladder {
    Catalogue::shipped().ladder(id).unwrap()
}

pub fn kg(value: f64) -> Typed {
    Typed::new(value, Unit::Kg).unwrap()
}

/// A random log: most sessions are on one rung.
pub fn told() -> impl Strategy<Value = Told> {
    let plates = prop_oneof![
        2 => Just(vec![20.0, 15.0, 10.0, 5.0, 5.0, 2.5, 2.5, 1.25, 1.25]),
        1 => prop::collection::vec(select(vec![1.25, 2.5, 5.0, 10.0, 20.0, 25.0]), 0..5),
    ];
    let moods =
        prop_oneof![2 => Just(MOODS.to_vec()), 1 => select(MOODS.to_vec()).prop_map(|mood| vec![mood])];
    let home = (select(LADDERS.to_vec()), any::<prop::sample::Index>(), moods);
    (home, 45..110_i32, plates, select(vec![0.0, 0.0, 1.5])).prop_flat_map(
        |((id, at, moods), bodyweight, plates, gear)| {
            let body = f64::from(bodyweight);
            let home = at.get(&ladder(id).rungs);
            // Some only join.
            let first = if bodyweight % 6 == 0 {
                Placed::Joined
            } else {
                Placed::On(home.id.clone())
            };
            let first = vec![(200, placement(id, None, first))];
            let events = prop::collection::vec(event(id, home, moods, body), 3..30);
            (events, fresh(body)).prop_map(move |(mut facts, fresh)| {
                facts.insert(0, first.clone());
                facts.push(fresh);
                let mut facts: Vec<(i32, Fact)> = facts.into_iter().flatten().collect();
                facts.sort_by_key(|(days, _)| -days);
                Told {
                    facts,
                    plates: plates.clone(),
                    gear,
                }
            })
        },
    )
}

/// A weigh-in today, mostly.
fn fresh(body: f64) -> impl Strategy<Value = Vec<(i32, Fact)>> {
    prop_oneof![4 => Just(vec![(0, weigh_in(body))]), 1 => Just(Vec::new())]
}

fn weigh_in(body: f64) -> Fact {
    Fact::WeighIn {
        bodyweight: kg(body),
        note: None,
    }
}

fn placement(ladder: &str, side: Option<Side>, rung: Placed) -> Fact {
    Fact::Placement {
        ladder: ladder.to_owned(),
        side,
        rung,
        why: None,
    }
}

fn side() -> impl Strategy<Value = Option<Side>> {
    select(vec![None, Some(Side::Left), Some(Side::Right)])
}

fn event(
    id: &'static str,
    home: &'static Rung,
    moods: Vec<Mood>,
    body: f64,
) -> BoxedStrategy<Vec<(i32, Fact)>> {
    let rungs: Vec<&'static Rung> = ladder(id).rungs.iter().collect();
    let placed = prop_oneof![
        4 => select(rungs.clone()).prop_map(|rung| Placed::On(rung.id.clone())),
        1 => Just(Placed::Joined),
        1 => Just(Placed::SetAside),
    ];
    let phase = select(vec![PhaseKind::Deload, PhaseKind::Cut, PhaseKind::Hold]);
    let born = select(vec!["1990-05-05", "2008-03-21", "2011-01-01"]);
    let one = |fact: BoxedStrategy<Fact>| (age(), fact).prop_map(|at| vec![at]).boxed();
    prop_oneof![
        14 => session(id, vec![home], moods, body),
        6 => session(id, rungs, MOODS.to_vec(), body),
        2 => one((-60..60_i32).prop_map(move |off| weigh_in(body + f64::from(off) / 20.0)).boxed()),
        1 => one(Just(weigh_in(body * 2.2)).boxed()),
        1 => one((side(), placed).prop_map(move |(side, rung)| placement(id, side, rung)).boxed()),
        1 => one(
            (select(Site::ALL.to_vec()), side(), 0..9_u8)
                .prop_map(|(site, side, score)| Fact::Pain { site, side, score, note: None })
                .boxed(),
        ),
        1 => one(phase.prop_map(|kind| Fact::Phase { kind, note: None }).boxed()),
        1 => (0..3_i32, born).prop_map(|(chance, born)| {
            let born = (chance == 0).then(|| Written::parse(born).unwrap());
            vec![(0, Fact::Profile { name: None, born, sex: None, height_cm: Some(175.0) })]
        }),
    ]
    .boxed()
}

impl Told {
    /// The log with ids by `salt`; a record's place in its day is as told.
    pub fn log(&self, salt: u64, typed: impl Fn(Typed) -> Typed) -> Log {
        let records = self.facts.iter().zip(0_u32..).map(|((days, fact), nth)| Record {
            id: Id::from_parts(
                0,
                u128::from(u64::from(nth).wrapping_add(1).wrapping_mul(salt | 1)),
            ),
            rev: 0,
            dev: "test".to_owned(),
            at: Written::day(day(*days)),
            nth,
            what: retyped(fact.clone(), &typed),
        });
        let mut log = Log {
            name: "Ana".to_owned(),
            folder: "ana".to_owned(),
            records: records.collect(),
        };
        if salt > 1 {
            log.records.reverse();
        }
        log.records.sort_by(Log::order);
        log
    }
}

fn day(days: i32) -> NaiveDate {
    days.days_ago().date()
}

fn retyped(fact: Fact, typed: impl Fn(Typed) -> Typed) -> Fact {
    match fact {
        Fact::Set(mut set) => {
            set.load = set.load.map(|load| match load {
                Load::Added(mass) => Load::Added(typed(mass)),
                Load::Assistance(mass) => Load::Assistance(typed(mass)),
            });
            set.bodyweight = set.bodyweight.map(typed);
            Fact::Set(set)
        }
        Fact::WeighIn { bodyweight, note } => Fact::WeighIn {
            bodyweight: typed(bodyweight),
            note,
        },
        other => other,
    }
}
