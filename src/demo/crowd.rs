//! As many more people as are asked: names and lives made up from lists.

use crate::catalogue::Site;
use crate::logbook::record::Sex;
use crate::units::{Side, Unit};

use super::cast::{Act, Block, Climb, Member, Scale, Work, at, member, session};
use super::life::Habit;

const FIRST: [&str; 24] = [
    "Alba", "Bence", "Cato", "Dagny", "Eero", "Farah", "Gita", "Hugo", "Iris", "Jonas", "Kalia", "Ludo",
    "Mara", "Nils", "Oriel", "Petra", "Quinn", "Rasmus", "Sana", "Tycho", "Una", "Viggo", "Yara", "Zeno",
];
const LAST: [&str; 20] = [
    "Abara",
    "Bellweather",
    "Castellan",
    "Drăgan",
    "Ekholm",
    "Fontaine",
    "Grimsby",
    "Halloran",
    "Ivarsson",
    "Jankauskas",
    "Kestrel",
    "Lozano",
    "Mbeki",
    "Nowicki",
    "Okonjo",
    "Pellegrin",
    "Rautio",
    "Sørli",
    "Thistle",
    "Vasarely",
];
const CLIMBS: [Climb; 12] = [
    ("weighted-pull-up", (1.25, 1.25), 0.15),
    ("weighted-dip", (1.35, 1.35), 0.15),
    ("one-arm-pull-up", (0.75, 0.77), 0.12),
    ("front-lever", (0.60, 0.60), 0.15),
    ("first-pull-up", (0.70, 0.70), 0.25),
    ("pistol-squat", (0.70, 0.68), 0.20),
    ("handstand", (0.75, 0.75), 0.15),
    ("l-sit", (0.60, 0.60), 0.25),
    ("planche", (0.50, 0.50), 0.12),
    ("toes-to-bar", (0.60, 0.60), 0.25),
    ("one-arm-row", (0.60, 0.62), 0.25),
    ("muscle-up", (0.80, 0.80), 0.15),
];

/// Rungs that a coach gives for a block, with how strong left and right come to them: near the standard, not at it.
const WORK: [Work; 12] = [
    ("weighted-pull-up", "plus-25", (0.98, 0.98)),
    ("weighted-dip", "plus-50", (0.98, 0.98)),
    ("pistol-squat", "box-45", (0.97, 0.98)),
    ("front-lever", "tuck", (0.98, 0.98)),
    ("first-pull-up", "negative", (0.97, 0.97)),
    ("one-arm-chin-up", "fingers-3", (0.97, 0.98)),
    ("handstand", "toe-pulls", (0.98, 0.98)),
    ("l-sit", "one-leg", (0.97, 0.97)),
    ("one-arm-push-up", "hands-60", (0.98, 0.97)),
    ("toes-to-bar", "level", (0.97, 0.97)),
    ("first-dip", "negative", (0.97, 0.97)),
    ("weighted-pull-up", "bodyweight", (0.98, 0.98)),
];

/// What a coach sees in somebody made up: two of these in twelve are the same.
fn role(number: usize, mut member: Member) -> Member {
    let ready = matches!(number % 12, 6 | 9);
    // On a ladder that they climbed already, the old stay on a rung would only go on.
    let fresh: Vec<Work> = WORK
        .into_iter()
        .filter(|(ladder, ..)| !(ready && *ladder == "toes-to-bar"))
        .filter(|(ladder, ..)| member.climbs.iter().all(|(own, ..)| own != ladder))
        .collect();
    let work = |shift: usize| fresh.iter().cycle().nth(number * 5 + shift).copied();
    let loaded = || {
        fresh
            .iter()
            .find(|(ladder, ..)| ladder.starts_with("weighted"))
            .copied()
    };
    let given = match number % 12 {
        // Long on one rung: nobody changed the work.
        3 => None,
        1 => Some([loaded(), work(4)]),
        _ => Some([work(0), work(4)]),
    };
    member.block = given.map(|work| Block {
        days_ago: 12 + u64::try_from(number % 4).unwrap_or(0),
        work: work.into_iter().flatten().collect(),
    });
    if ready {
        let rung = ("toes-to-bar", "knees");
        member.script = vec![
            at(14, Act::Placed("toes-to-bar", "knees")),
            session(8, rung, None, &[12.0, 12.0, 12.0], Some(2.0), 0),
            session(4, rung, None, &[12.0, 12.0, 12.0], Some(2.0), 0),
        ];
    }
    match number % 12 {
        1 => member.scale = Scale::Lapsed,
        8 => member
            .script
            .push(at(2, Act::Hurts(Site::Shoulder, Some(Side::Right), 4))),
        10 => member.script.push(at(1, Act::Joins("one-arm-hang"))),
        _ => {}
    }
    member
}

/// Somebody made up from lists; `number` is 0 for the first beyond the twelve.
pub fn another(number: usize, chance: &mut oorandom::Rand64) -> Member {
    let pick = |list: &[&'static str], at: usize| list.get(at % list.len()).copied().unwrap_or("Someone");
    let round = number / (FIRST.len() * LAST.len());
    let suffix = if round == 0 {
        String::new()
    } else {
        format!(" {}", round + 1)
    };
    let name = format!(
        "{} {}{suffix}",
        pick(&FIRST, number),
        pick(&LAST, number / FIRST.len() + number * 7)
    );
    let female = chance.rand_float() < 0.5;
    let height = if female { 167.0 } else { 179.0 } + (chance.rand_float() * 16.0 - 8.0).round();
    let weight = (22.0 + 3.0 * chance.rand_float()) * (height / 100.0) * (height / 100.0);
    let drift = chance.rand_float() * 6.0 - 3.0;
    let first = usize::try_from(chance.rand_range(0..12)).unwrap_or(0);
    let climb = |at: usize| {
        let (ladder, (left, right), growth) = CLIMBS[at % CLIMBS.len()];
        (ladder, (left, right), growth)
    };
    let sex = if female { Sex::Female } else { Sex::Male };
    let age = 18 + u32::try_from(chance.rand_range(0..45)).unwrap_or(0);
    let member = Member {
        unit: if chance.rand_float() < 0.2 {
            Unit::Lb
        } else {
            Unit::Kg
        },
        habit: if chance.rand_float() < 0.3 {
            Habit::LogsNone
        } else {
            Habit::LogsReserve
        },
        climbs: vec![climb(first), climb(first + 5)],
        ..member(&name, age, sex, height, (weight, weight + drift))
    };
    role(number, member)
}
