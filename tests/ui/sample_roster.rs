//! A roster of invented people.

use rungwright::ui::views::*;
use rungwright::units::Rail;

/// Name, need, ladder, verdicts.
const PEOPLE: [(&str, Need, &str, &[(Rail, Verdict)]); 14] = [
    (
        "Ximena Quispe",
        Need::Hurts,
        "One-arm pull-up",
        &[(Rail::Left, Verdict::Repeat), (Rail::Right, Verdict::Pause)],
    ),
    (
        "Duncan Aird",
        Need::Hurts,
        "Front lever",
        &[(Rail::Both, Verdict::Repeat)],
    ),
    (
        "Bảo Trịnh",
        Need::WeighIn,
        "One-arm pull-up",
        &[
            (Rail::Left, Verdict::WeighInFirst),
            (Rail::Right, Verdict::WeighInFirst),
        ],
    ),
    (
        "Hana Dvorská",
        Need::WeighIn,
        "First pull-up",
        &[(Rail::Both, Verdict::WeighInFirst)],
    ),
    (
        "Dele Akintola",
        Need::StepUp,
        "One-arm pull-up",
        &[(Rail::Left, Verdict::StepUp), (Rail::Right, Verdict::Repeat)],
    ),
    (
        "Zsófia Keleti",
        Need::StepUp,
        "First pull-up",
        &[(Rail::Both, Verdict::StepUp)],
    ),
    (
        "Eirik Tveitan",
        Need::Stuck,
        "Weighted dip",
        &[(Rail::Both, Verdict::BackOff)],
    ),
    (
        "Priya Raghunath",
        Need::Stuck,
        "Front lever",
        &[(Rail::Both, Verdict::StepBack)],
    ),
    (
        "Jonas Ekelöv",
        Need::Test,
        "Weighted dip",
        &[(Rail::Both, Verdict::Test)],
    ),
    (
        "Wen Jiahui",
        Need::Begin,
        "Front lever",
        &[(Rail::Both, Verdict::Begin)],
    ),
    (
        "Lucía Ferrándiz",
        Need::GoingOn,
        "One-arm pull-up",
        &[(Rail::Left, Verdict::AddReps), (Rail::Right, Verdict::AddReps)],
    ),
    (
        "Mehmet Yıldırak",
        Need::GoingOn,
        "Weighted pull-up",
        &[(Rail::Both, Verdict::AddLoad)],
    ),
    (
        "Ingrid Sætre",
        Need::GoingOn,
        "Weighted pull-up",
        &[(Rail::Both, Verdict::AddLoad)],
    ),
    ("Rosalind Peake", Need::GoingOn, "—", &[]),
];

pub fn gym() -> RosterView {
    let lines = PEOPLE
        .into_iter()
        .enumerate()
        .map(|(nth, (name, need, ladder, verdicts))| {
            let sided = verdicts.len() > 1;
            let share = |by: usize| 0.15 + 0.05 * ((nth * 3 + by) % 13) as f32;
            let hands = if sided {
                vec![(Rail::Left, share(0)), (Rail::Right, share(2))]
            } else {
                vec![(Rail::Both, share(0))]
            };
            RosterLine {
                athlete: name.to_lowercase(),
                name: name.into(),
                need,
                glyph: (!verdicts.is_empty()).then(|| LyingView {
                    hands,
                    ticks: vec![0.1, 0.3, 0.44, 0.62, 0.7],
                    goal: 0.88,
                }),
                ladder: ladder.into(),
                rung: if sided {
                    "L Two fingers, R One finger".into()
                } else {
                    "Tuck".into()
                },
                verdicts: verdicts.to_vec(),
                weighs: format!("{}.4 kg", 54 + 3 * nth),
                weighed_ago: if need == Need::WeighIn {
                    "19 d".into()
                } else {
                    "1 d".into()
                },
                weigh_in_is_old: need == Need::WeighIn,
                pain: (need == Need::Hurts).then(|| "elbow R 6".into()),
                pain_matters: need == Need::Hurts,
                last_set: "Mon 13".into(),
                why: vec![
                    (
                        Rail::Left,
                        "met Two fingers help, 4 × 4, on 30 Sep and 10 Oct.".into(),
                    ),
                    (Rail::Right, "is one rung ahead and waits.".into()),
                ],
            }
        })
        .collect();
    RosterView { lines }
}

/// So many people, an equal part of them with each need.
pub fn crowd(count: usize) -> RosterView {
    let people = gym().lines;
    let line = |nth: usize| RosterLine {
        athlete: format!("athlete-{nth}"),
        name: format!("Athlete {nth}"),
        need: Need::ALL[nth * Need::ALL.len() / count],
        ..people[nth % people.len()].clone()
    };
    RosterView {
        lines: (0..count).map(line).collect(),
    }
}

/// The class of two: one with two rails' work, one with holds.
pub fn class() -> ClassView {
    let row = |title: &str, rail, sets, prefill: &str, is_hold| ClassRow {
        ladder: "one-arm-pull-up".into(),
        rung: "fingers-2".into(),
        rail,
        title: title.into(),
        asked: format!("{sets} × {prefill}"),
        load: if is_hold { String::new() } else { "12.5".into() },
        is_help: false,
        sets,
        prefill: prefill.into(),
        is_hold,
        logged: 0,
    };
    let athlete = |name: &str, rows| ClassAthlete {
        athlete: name.to_lowercase(),
        name: name.into(),
        weighs: "58.4".into(),
        weigh_in_first: false,
        rows,
    };
    ClassView {
        day: "Thu 26 Nov".into(),
        unit: "kg",
        typed: TypedClass::default(),
        athletes: vec![
            athlete(
                "Ximena Quispe",
                vec![
                    row("Two fingers help", Rail::Left, 2, "5 1", false),
                    row("Three fingers help", Rail::Right, 1, "5 1", false),
                ],
            ),
            athlete(
                "Duncan Aird",
                vec![row("Advanced tuck", Rail::Both, 2, "10", true)],
            ),
        ],
    }
}
