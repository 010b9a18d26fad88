//! What nobody's year may show: a dead end, a flip-flop, a load that sinks while strength rises.

use std::collections::BTreeMap;

use rungwright::coaching::Verdict;
use rungwright::units::Rail;

use crate::person::{Person, Session};

const WEEK: u64 = 7;

fn rails(person: &Person) -> Vec<Vec<&Session>> {
    [Rail::Both, Rail::Left, Rail::Right]
        .into_iter()
        .map(|rail| {
            person
                .sessions
                .iter()
                .filter(|session| session.rail == rail)
                .collect()
        })
        .filter(|sessions: &Vec<&Session>| !sessions.is_empty())
        .collect()
}

/// How far somebody has come: the rung, then what was moved or held there.
fn reached(session: &Session) -> (usize, f64) {
    let amount = match session.load {
        Some(load) => load * (30.0 + session.lowest),
        None => session.in_all,
    };
    (session.height, amount)
}

fn is_further(one: (usize, f64), other: (usize, f64)) -> bool {
    one.0 > other.0 || (one.0 == other.0 && one.1 > other.1 + 1e-9)
}

/// Twelve weeks without any progress on either side while strength rose by more than 6 %. A missed day is none. Who has come
/// to the last rung without load and its top has nothing left to do.
pub fn dead_ends(person: &Person) -> Vec<String> {
    let mut best: BTreeMap<Rail, (usize, f64)> = BTreeMap::new();
    let mut last: Option<&Session> = None;
    for session in person.sessions.iter().filter(|session| !session.missed) {
        let now = reached(session);
        if best.get(&session.rail).is_none_or(|best| is_further(now, *best)) {
            best.insert(session.rail, now);
            last = Some(session);
            continue;
        }
        let Some(last) = last else { continue };
        let weeks = (session.day - last.day) / WEEK;
        let stronger = session.strength / last.strength;
        if weeks >= 12 && stronger > 1.06 && session.rail == last.rail && session.rule != "last-rung" {
            return vec![format!(
                "no progress from day {} to {}, {:.1} % stronger, {} {}",
                last.day,
                session.day,
                100.0 * (stronger - 1.0),
                session.rung,
                session.rule
            )];
        }
    }
    Vec::new()
}

/// A step up and a step back within four weeks more than twice; or more than twice up to one rung and under it again, be it
/// only that the try gave no repetition.
pub fn flip_flops(person: &Person) -> Vec<String> {
    let mut found = Vec::new();
    for sessions in rails(person) {
        let mut told = 0;
        let mut times: BTreeMap<&str, usize> = BTreeMap::new();
        for (at, up) in sessions.iter().enumerate() {
            if up.verdict != Verdict::StepUp {
                continue;
            }
            let mut soon = sessions
                .iter()
                .skip(at + 1)
                .take_while(|next| next.day <= up.day + 4 * WEEK);
            told += usize::from(soon.clone().any(|next| next.verdict == Verdict::StepBack));
            if soon.any(|next| next.height < up.height) {
                *times.entry(&up.rung).or_default() += 1;
            }
        }
        if told > 2 {
            found.push(format!("told up and back {told} times"));
        }
        let often = times.into_iter().filter(|(_, times)| *times > 2);
        found.extend(often.map(|(rung, times)| format!("up to {rung} and back {times} times")));
    }
    found
}

/// Of eight weeks on one rung the heaviest load of the second four lies more than a step (2 %) under that of the first four:
/// a back-off within is a saw's tooth, but the saw must not slope down.
pub fn sinking_loads(person: &Person) -> Vec<String> {
    let mut found = Vec::new();
    for sessions in rails(person) {
        let heaviest = |from: u64, rung: &str| {
            let month = from..from + 4 * WEEK;
            let within = sessions
                .iter()
                .filter(|session| session.rung == rung && month.contains(&session.day));
            let loads: Vec<f64> = within.filter_map(|session| session.load).collect();
            (loads.len() >= 4).then(|| loads.iter().copied().fold(0.0, f64::max))
        };
        for session in &sessions {
            let (first, second) = (
                heaviest(session.day, &session.rung),
                heaviest(session.day + 4 * WEEK, &session.rung),
            );
            if let Some((before, since)) = first.zip(second)
                && since < before * 0.98
            {
                found.push(format!(
                    "{:?}: {} sank from {before:.3} to {since:.3} × bodyweight after day {}",
                    session.rail, session.rung, session.day
                ));
                break;
            }
        }
    }
    found
}

/// How hard the days were: what was left in the hardest set of each.
pub struct Hardness {
    /// The part of days with 0.5 to 4 left; of holds, 3 to 40 % of the time that was possible.
    pub fitting: f64,
    missed: f64,
    easy: f64,
    days: usize,
    up: usize,
    back: usize,
    last: String,
}

impl std::fmt::Display for Hardness {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "{:.0} % of {} days left 0.5 to 4, {:.0} % missed, {:.0} % were easier; {} up, {} back, ends on {}",
            100.0 * self.fitting,
            self.days,
            100.0 * self.missed,
            100.0 * self.easy,
            self.up,
            self.back,
            self.last
        )
    }
}

/// How hard a year was.
pub fn hardness(person: &Person) -> Hardness {
    let days = person.sessions.len();
    let part = |wanted: &dyn Fn(&&Session) -> bool| {
        let count = |n: usize| f64::from(u32::try_from(n).unwrap());
        count(person.sessions.iter().filter(wanted).count()) / count(days.max(1))
    };
    let of = |verdict: Verdict| {
        person
            .sessions
            .iter()
            .filter(|session| session.verdict == verdict)
            .count()
    };
    Hardness {
        fitting: part(&|session| !session.missed && (0.5..=4.0).contains(&session.left)),
        missed: part(&|session| session.missed),
        easy: part(&|session| !session.missed && session.left > 4.0),
        days,
        up: of(Verdict::StepUp),
        back: of(Verdict::StepBack),
        last: person.sessions.last().unwrap().rung.clone(),
    }
}
