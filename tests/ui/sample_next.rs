//! Next views of invented people, built by hand: what the adapter would make, not what the rules would say.

use rungwright::ui::views::*;
use rungwright::units::Rail;

use crate::sample_ladders;

fn reason(words: Phrase, rule: &str) -> Reason {
    Reason {
        words,
        rule: rule.into(),
        doc: "What the rule asks and why, in its own words.".into(),
        from: String::new(),
    }
}

fn plain(words: &str) -> Phrase {
    Phrase::plain(words)
}

/// The strip: four rungs around the hands.
pub fn strip() -> LadderView {
    let mut view = sample_ladders::one_arm();
    view.branches.clear();
    view.companions.clear();
    view.rungs.drain(0..1);
    view.rungs.truncate(4);
    view.hands[0].at = Spot::Rung(1);
    view.hands[1].at = Spot::Rung(2);
    view
}

fn one_arm_work(done: &[&str]) -> Prescription {
    Prescription {
        rung: "fingers-1".into(),
        title: "One finger helps".into(),
        sets: 3,
        measure: Amounts::Reps(2, 3),
        prefill: 2.0,
        reserve: Some(1.0),
        load: None,
        load_words: plain("One finger of the free hand helps"),
        belt: None,
        rest_secs: (180, 300),
        done: done.iter().map(|words| (*words).to_owned()).collect(),
        last_time: None,
    }
}

fn left() -> CardView {
    CardView {
        ladder: "one-arm-pull-up".into(),
        rail: Rail::Left,
        heading: "Left hand".into(),
        verdict: Verdict::StepUp,
        asked: Asked::Work(one_arm_work(&["2 reps, RIR 1"])),
        reasons: vec![
            reason(
                plain("You met ")
                    .then_strong("Two fingers help, 4 × 4")
                    .then(", on Tue 30 Sep and Fri 10 Oct: 2 days of 2."),
                "passed",
            ),
            reason(
                plain("The right hand met it on 19 Sep. The hands are within 1 rep."),
                "side-gap",
            ),
            reason(
                plain("Entry holds: 5 pull-ups at 1.25 × you, Tue 7 Oct."),
                "entry",
            ),
        ],
        cautions: vec![],
        chances: vec![("2 reps".into(), "82 %".into()), ("3 reps".into(), "53 %".into())],
        chances_how: "From 36 sets on 12 days.".into(),
        not_before: None,
    }
}

fn right() -> CardView {
    CardView {
        rail: Rail::Right,
        heading: "Right hand".into(),
        verdict: Verdict::Repeat,
        asked: Asked::Work(one_arm_work(&["2 reps, RIR 2"])),
        reasons: vec![
            reason(
                plain("The right hand is ")
                    .then_strong("one rung ahead")
                    .then(". It waits for the left."),
                "side-ahead",
            ),
            reason(
                plain("Same sets as left, no harder: stop at the left hand’s reps."),
                "side-cap",
            ),
        ],
        cautions: vec![reason(
            plain("Right elbow 1 of 10 today, 2 on Fri: 2 or less, go on. Stop on sharp pain."),
            "pain-low",
        )],
        chances: vec![],
        chances_how: String::new(),
        ..left()
    }
}

pub fn belt() -> BeltView {
    let plate = |kg: f64| PlateView {
        number: kg.to_string(),
        kg,
        is_kg: true,
    };
    BeltView {
        plates: [20.0, 10.0, 2.5].map(plate).to_vec(),
        words: Phrase::strong("20 + 10 + 2.5").then(" + chain 1.0 kg"),
    }
}

fn both() -> CardView {
    CardView {
        ladder: "weighted-pull-up".into(),
        rail: Rail::Both,
        heading: "Both hands, then".into(),
        verdict: Verdict::AddLoad,
        asked: Asked::Work(Prescription {
            rung: "plus-50".into(),
            title: "Weighted pull-up".into(),
            sets: 3,
            measure: Amounts::Reps(3, 5),
            prefill: 5.0,
            reserve: Some(1.0),
            load: Some("+33.5 kg".into()),
            load_words: Phrase::strong("System load 108.1 kg").then(" = 74.6 + 33.5"),
            belt: Some(belt()),
            rest_secs: (180, 300),
            done: vec![],
            last_time: None,
        }),
        reasons: vec![reason(
            plain(
                "Fri 10 Oct: 5, 5, 5 reps at +31.0 kg, RIR 1. Smallest step your plates make: 2.5 kg, 2.4 % of system load.",
            ),
            "all-at-top",
        )],
        cautions: vec![],
        chances: vec![],
        chances_how: String::new(),
        not_before: None,
    }
}

fn logged(id: &str, time: &str, rail: Option<Rail>, what: &str, result: &str) -> LoggedLine {
    LoggedLine {
        id: id.into(),
        time: time.into(),
        rail,
        what: what.into(),
        result: result.into(),
        best: None,
        doubt: None,
    }
}

/// Left one rung behind right, then both hands on the belt.
pub fn usual() -> NextView {
    let step = |what: &str, with: Option<&str>, count: &str| WarmUpStep {
        what: what.into(),
        with: with.map(Into::into),
        count: count.into(),
    };
    NextView {
        day: "Tue 14 Oct 2025".into(),
        bodyweight: plain("Bodyweight ")
            .then_strong("74.6 kg")
            .then(" today · trend ")
            .then_strong("74.8 kg")
            .then(", −0.2 kg a week"),
        bodyweight_short: plain("Bodyweight ").then_strong("74.6 kg").then(" today"),
        phase: Some("hold".into()),
        pain: Some("elbow R 1 of 10".into()),
        last_bodyweight: Some(74.6),
        unit: "kg",
        ladders: vec![
            LadderCards {
                cards: vec![left(), right()],
                strip: Some(strip()),
            },
            LadderCards {
                cards: vec![both()],
                strip: None,
            },
        ],
        warm_up: vec![
            step("Shoulder-blade pull", None, "× 8"),
            step("Pull-up, own weight", None, "× 5"),
            step("Three fingers help, each hand", None, "× 2"),
            step("Weighted pull-up +21.0 kg", Some("20 + chain 1.0"), "× 2"),
            step("Weighted pull-up +28.5 kg", Some("20 + 5 + 2.5 + chain"), "× 1"),
        ],
        warm_up_note: Some("Lighter steps left out: the one-arm sets warm you for these.".into()),
        logged: vec![
            logged(
                "4",
                "18:41",
                Some(Rail::Right),
                "One finger helps",
                "2 reps, RIR 2",
            ),
            logged(
                "3",
                "18:40",
                Some(Rail::Left),
                "One finger helps",
                "2 reps, RIR 1",
            ),
            logged("2", "18:20", None, "Elbow, right", "pain 1 of 10"),
            logged("1", "07:10", None, "Weigh-in", "74.6 kg"),
        ],
        after: vec![("One-arm lock-off, 5 s".into(), "2 × 1 each hand".into())],
        after_note: Some("Tonight 16 hard sets of a budget of 18. Done by about 19:35.".into()),
        sites: vec![
            "elbow", "shoulder", "wrist", "fingers", "knee", "hip", "ankle", "back",
        ],
    }
}

/// The right hand hurts: words instead of numbers.
pub fn pause() -> NextView {
    let mut view = usual();
    let card = &mut view.ladders[0].cards[1];
    card.verdict = Verdict::Pause;
    card.asked = Asked::Pause(vec![
        Phrase::strong("No set with the right hand."),
        plain(
            "Right elbow 6 of 10 today. Rest it, report again in 48 hours; 2 or less for two days, and it goes on.",
        ),
        plain("Sharp or lasting pain: see a doctor or physiotherapist."),
    ]);
    card.reasons.truncate(0);
    card.reasons.push(reason(
        plain("Pain 5 or more in a joint that the movement loads."),
        "hurts",
    ));
    view.pain = Some("elbow R 6 of 10".into());
    view
}

/// Nothing weighed for 19 days.
pub fn weigh_in_first() -> NextView {
    let mut view = usual();
    for ladder in &mut view.ladders {
        for card in &mut ladder.cards {
            card.verdict = Verdict::WeighInFirst;
            let work = card.asked.prescription().cloned();
            card.asked = Asked::WeighInFirst(work.map(|work| Prescription {
                done: vec![],
                belt: None,
                ..work
            }));
            card.reasons = vec![reason(
                plain("Your last weigh-in is 19 days old; 14 are the most."),
                "weigh-in-old",
            )];
        }
    }
    view.bodyweight = plain("Bodyweight ").then_strong("75.1 kg").then(" 19 days ago");
    view.bodyweight_short = view.bodyweight.clone();
    view.logged.clear();
    view
}

/// A lever: seconds, both hands, days apart.
pub fn hold() -> NextView {
    let mut view = usual();
    let mut ladder = sample_ladders::weighted_pull_up();
    for (rung, title) in ladder.rungs.iter_mut().zip([
        "Tuck",
        "Advanced tuck",
        "One leg out",
        "Straddle",
        "Full lever",
        "Full lever, 10 s",
    ]) {
        rung.title = title.into();
    }
    ladder.rungs.truncate(5);
    ladder.rungs[4].is_goal = true;
    view.ladders = vec![LadderCards {
        strip: Some(ladder),
        cards: vec![CardView {
            ladder: "front-lever".into(),
            rail: Rail::Both,
            heading: "Front lever".into(),
            verdict: Verdict::AddReps,
            asked: Asked::Work(Prescription {
                rung: "advanced-tuck".into(),
                title: "Advanced tuck".into(),
                sets: 4,
                measure: Amounts::Hold(5, 15),
                prefill: 12.0,
                reserve: None,
                load: None,
                load_words: plain("Hips and knees at 90°, back flat"),
                belt: None,
                rest_secs: (120, 240),
                done: vec!["11 s".into()],
                last_time: Some(plain("Sat 11 Oct: 11, 10, 10, 9 s.")),
            }),
            reasons: vec![reason(
                plain("Sets are within the range; one second more where it goes well."),
                "within-range",
            )],
            cautions: vec![reason(
                plain("Straight-arm work: tendons answer slower than muscle. Stop at a pull in the elbow."),
                "straight-arm",
            )],
            chances: vec![],
            chances_how: String::new(),
            not_before: Some("Thu 16 Oct".into()),
        }],
    }];
    view.after.clear();
    view.after_note = None;
    view
}

/// Nobody on a ladder yet.
pub fn empty() -> NextView {
    NextView {
        ladders: vec![],
        warm_up: vec![],
        logged: vec![],
        after: vec![],
        after_note: None,
        pain: None,
        ..usual()
    }
}
