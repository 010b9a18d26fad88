//! A week of somebody invented: pulling, dips and levers on five days, the right elbow three days running.

use rungwright::ui::views::*;
use rungwright::units::Rail;

fn group(title: &'static str, direct: f64, indirect: f64, to_failure: bool, is_over: bool) -> GroupView {
    let range = if to_failure { (4.0, 10.0) } else { (8.0, 20.0) };
    let sets = direct + indirect;
    let (status, standing) = if sets == 0.0 {
        (String::new(), Standing::Unsaid)
    } else if sets < range.0 {
        let standing = if is_over { Standing::Below } else { Standing::SoFar };
        (format!("{} below", range.0 - sets), standing)
    } else if sets <= range.1 {
        ("within".to_owned(), Standing::Within)
    } else {
        (format!("{} above", sets - range.1), Standing::Above)
    };
    GroupView {
        title,
        direct,
        indirect,
        range,
        sets: sets.to_string(),
        how: format!(
            "{title}: {direct} direct + {} indirect × ½ = {sets} hard sets. From Pull-up (Mon 4).",
            indirect * 2.0
        ),
        status,
        standing,
    }
}

fn day(nth: u8, is: DayIs, sets: u8, what: &str) -> DayView {
    let weekday = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"][usize::from(nth)];
    let number = (13 + nth).to_string();
    DayView {
        weekday: weekday.into(),
        is,
        sets: (sets > 0).then(|| format!("{sets} sets")),
        what: what.into(),
        how: format!("{weekday} {number} Oct: {sets} hard sets. {what}"),
        number,
    }
}

fn joint(title: &str, rail: Rail, beads: [u32; 7], links: &[(i8, i8)], running: Option<&str>) -> JointView {
    let side = match rail {
        Rail::Both => "both sides",
        Rail::Left => "left",
        Rail::Right => "right",
    };
    JointView {
        title: title.into(),
        rail,
        beads: beads.into(),
        links: links.into(),
        running: running.map(str::to_owned),
        how: format!("{title} {side}: hard sets that load it, {beads:?}."),
    }
}

/// Friday of a week that goes on.
pub fn usual() -> WeekView {
    of(0, false)
}

/// The week before, which is over: some groups below, one above.
pub fn before() -> WeekView {
    of(1, true)
}

fn of(back: u32, is_over: bool) -> WeekView {
    let (today, ahead) = if is_over {
        (DayIs::Past, DayIs::Past)
    } else {
        (DayIs::Today, DayIs::Ahead)
    };
    let free = if is_over { "rest" } else { "open" };
    let more = if is_over { 9.0 } else { 0.0 };
    let group = |title, direct, indirect, to_failure| group(title, direct, indirect, to_failure, is_over);
    WeekView {
        back,
        is_empty: false,
        span: "Mon 13 – Sun 19 Oct 2025".into(),
        name: "2025-W42".into(),
        hard: "52 hard sets".into(),
        what_is_hard: "0–4 in reserve, or not logged, counts as hard".into(),
        days: vec![
            day(0, DayIs::Past, 14, "Pull + push"),
            day(1, DayIs::Past, 0, "rest"),
            day(2, DayIs::Past, 12, "Straight-arm + pull"),
            day(3, DayIs::Past, 9, "Legs"),
            day(4, today, 17, "Push + pull"),
            day(5, ahead, 0, free),
            day(6, ahead, 0, free),
        ],
        groups: vec![
            group("Lats", 13.0 + more, 0.0, false),
            group("Upper back", 8.0, 3.5, false),
            group("Biceps", 3.0, 6.5, false),
            group("Forearms", 2.0, 9.0, false),
            group("Chest", 6.0, 0.0, true),
            group("Triceps", 6.0, 0.0, false),
            group("Front shoulder", 2.0, 3.5, false),
            group("Side shoulder", 0.0, 0.0, false),
            group("Rear shoulder", 1.0, 6.0, false),
            group("Abs", 5.0, 2.0, false),
            group("Back extensors", 0.0, 0.0, false),
            group("Front thigh", 4.0, 0.0, true),
            group("Glutes", 0.0, 2.0, true),
            group("Hamstrings", 3.0, 0.0, true),
            group("Inner thigh", 0.0, 2.0, true),
            group("Calves", 0.0, 1.5, true),
        ],
        note: Phrase::strong(if is_over {
            "Above: lats 22. Furthest below: front shoulder 5.5, calves 1.5, triceps 6. "
        } else {
            "Furthest below so far: front shoulder 5.5, calves 1.5, triceps 6. "
        })
        .then("Ranges a week: 8–20 sets kept 1–3 in reserve, or 4–10 to failure; common practice, no source."),
        joints: vec![
            joint("Elbow", Rail::Left, [4, 0, 5, 0, 6, 0, 0], &[], None),
            joint("", Rail::Right, [4, 0, 6, 3, 4, 0, 0], &[(2, 3), (3, 4)], Some("3 days running")),
            joint("Shoulder", Rail::Both, [12, 0, 8, 0, 6, 0, 0], &[], None),
            joint("Wrist", Rail::Both, [3, 0, 0, 0, 4, 0, 0], &[(-1, 0)], Some("2 days running")),
            joint("Fingers", Rail::Left, [0, 0, 4, 0, 0, 0, 0], &[], None),
        ],
        close: vec![
            Phrase::strong("Right elbow: loaded Wed 15, Thu 16 and Fri 17 Oct, 3 days running.").then(
                " Pain 2 of 10 on Fri 17 Oct. Leave free until Mon 20 Oct: 72 h after lowering, straight-arm, one-arm and \
                 palms-up work.",
            ),
        ],
        resting: if is_over {
            vec![]
        } else {
            vec![
                ("Right elbow".into(), "Mon 20 Oct".into(), "Right elbow: last loaded Fri 17 Oct.".into()),
                ("Left elbow and shoulders".into(), "Sun 19 Oct".into(), "Last loaded Fri 17 Oct.".into()),
            ]
        },
        care: "Stop on sharp pain. Tendons adapt more slowly than muscle. Local rules and licensed practitioners come first.",
        session: session(),
    }
}

fn session() -> SessionView {
    SessionView {
        budget: 12,
        head: "All 12 sets are used.".into(),
        blocks: vec![
            SessionBlock {
                title: "Front lever: Tuck".into(),
                parts: vec![(Rail::Both, "4 × 10–30 s, rest 2–4 min".into())],
                why: vec![
                    "Lats: 0 of at least 8 hard sets this week.".into(),
                    "Straight arms and balance first, while you are fresh.".into(),
                ],
                warm_up: vec!["5–10 min easy until warm".into(), "5 s, easy shape".into()],
            },
            SessionBlock {
                title: "One-arm pull-up: Two fingers help".into(),
                parts: vec![
                    (Rail::Right, "4 × 2–4, 1 in reserve, rest 3–5 min".into()),
                    (Rail::Left, "4 × 3–4, 1 in reserve, rest 3–5 min".into()),
                ],
                why: vec!["Upper back: 0 of at least 8 hard sets this week.".into()],
                warm_up: vec![
                    "5–8 easy rows".into(),
                    "3–5 shoulder-blade pulls in the hang".into(),
                ],
            },
        ],
        left_out: vec!["Weighted dip: not before Sat 18 Oct.".into()],
    }
}
