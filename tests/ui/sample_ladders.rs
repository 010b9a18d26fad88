//! Ladders of invented people, built by hand: views as the adapter would make them, not what the rules would say.

use rungwright::ui::views::*;
use rungwright::units::Rail;

fn rung(id: &str, title: &str, standard: &str, demand: f64, state: [RungState; 2]) -> RungView {
    RungView {
        id: id.into(),
        title: title.into(),
        standard: standard.into(),
        demand: Some(demand),
        is_goal: false,
        state,
        status: None,
        status_is_now: false,
        sheet: sheet(demand),
    }
}

fn sections(all: Vec<(&str, Vec<SheetLine>)>) -> Vec<SheetSection> {
    let section = |(name, lines): (&str, Vec<SheetLine>)| SheetSection {
        name: name.into(),
        lines,
        how: (name == "Chance").then(|| "From 36 sets on 12 days.".into()),
    };
    all.into_iter().map(section).collect()
}

fn sheet(demand: f64) -> SheetView {
    let words = |text: &str| SheetLine::words(text);
    SheetView {
        sections: sections(vec![
            (
                "Demand",
                vec![
                    SheetLine::words(Phrase::strong(format!("{demand:.2}")).then(format!(" of the goal ({:.2}–{:.2})", demand * 0.92, demand * 1.07))),
                    words("1 − 0.35 = 0.65 × bodyweight; with repetitions and reserve 0.65 × (30 + 4 + 1) ÷ the goal's (30 + 1) = 0.73; computed, with assumptions.").quiet(),
                ],
            ),
            ("Standard", vec![
                    SheetLine::words(
                        Phrase::strong("3 sets of 2, 1 in reserve")
                            .then(", on 2 separate days, hands within 1 rep"),
                    ),
                    SheetLine {
                        days: Some((0, 2)),
                        ..SheetLine::of(Rail::Left, "0 of 2 days")
                    },
                    SheetLine {
                        days: Some((1, 2)),
                        ..SheetLine::of(Rail::Right, "1 of 2 days, Fri 10 Oct")
                    },
                ],
            ),
            ("Entry", vec![
                    SheetLine::words(Phrase::strong("Holds for both hands.")),
                    words("Rung below passed."),
                ],
            ),
            ("Work", vec![words(
                    "4 sets of 2–3 reps, 1 in reserve; rest 3–5 min; 2 times a week",
                )],
            ),
            ("Chance", vec![
                    SheetLine::of(
                        Rail::Left,
                        Phrase::plain("2 reps ")
                            .then_strong("82 %")
                            .then(", 3 reps ")
                            .then_strong("53 %"),
                    ),
                    SheetLine::of(
                        Rail::Right,
                        Phrase::plain("2 reps ")
                            .then_strong("99 %")
                            .then(", 3 reps ")
                            .then_strong("96 %"),
                    ),
                ],
            ),
            ("Last work", vec![SheetLine::of(
                    Rail::Right,
                    "Fri 10 Oct: 2, 2, 2 reps, 1 in reserve",
                )],
            ),
            ("Fall back", vec![words("Two fingers, 0.73")]),
            ("Care", vec![words(
                    "Start straight, shoulder blade set; don’t drop into the hang. Stop on sharp pain.",
                )],
            ),
            ("Source", vec![words("common practice, no source")]),
        ]),
        demand_band: Some(if demand == 1.0 { (1.0, 1.0) } else { (demand * 0.92, demand * 1.07) }),
    }
}

/// A one-arm ladder with the left hand a rung behind the right.
pub fn one_arm() -> LadderView {
    use RungState::{Open, Passed};
    let mut rungs = vec![
        rung(
            "two-arm",
            "Pull-up, own weight",
            "3 × 6, 1 in reserve",
            0.64,
            [Passed; 2],
        ),
        rung(
            "fingers-3",
            "Three fingers help",
            "4 × 4, 1 in reserve",
            0.65,
            [Passed; 2],
        ),
        rung(
            "fingers-2",
            "Two fingers help",
            "4 × 4, 1 in reserve",
            0.73,
            [Passed; 2],
        ),
        rung(
            "fingers-1",
            "One finger helps",
            "4 × 3, 1 in reserve",
            0.87,
            [Open, RungState::WorkedOn { done: 1, of: 2 }],
        ),
        rung("one-arm", "One-arm pull-up", "3 × 1, each hand", 1.0, [Open; 2]),
        rung(
            "one-arm-plus",
            "One-arm pull-up +10 %",
            "3 × 2, 1 in reserve",
            1.17,
            [Open; 2],
        ),
    ];
    rungs[0].status = Some("passed Mar 2025".into());
    rungs[1].status = Some("passed L May, R Apr 2025".into());
    rungs[2].status = Some("passed L 10 Oct, R 19 Sep".into());
    rungs[3].status = Some("L next rung today · R day 1 of 2".into());
    rungs[3].status_is_now = true;
    rungs[4].is_goal = true;
    let branch = |id: &str, title: &str, line: &str, from, to, demand| BranchView {
        id: id.into(),
        title: title.into(),
        line: line.into(),
        from,
        to,
        demand: Some(demand),
        passed: false,
        sheet: sheet(demand),
    };
    LadderView {
        id: "one-arm-pull-up".into(),
        title: "One-arm pull-up".into(),
        subtitle: None,
        sided: true,
        rungs,
        branches: vec![
            branch("band", "Band helps", "branch, 4 × 3–5 · 0.75", 0, 3, 0.75),
            branch(
                "lock-offs",
                "One-arm lock-off",
                "branch, 3 × 2–5 s · 0.92",
                3,
                4,
                0.92,
            ),
        ],
        companions: vec![
            CompanionView {
                title: "One-arm hang".into(),
                line: "10 s · grip".into(),
                beside: 1,
                demand: None,
                met: true,
            },
            CompanionView {
                title: "One-arm negative".into(),
                line: "5 s, entry to the goal".into(),
                beside: 4,
                demand: None,
                met: false,
            },
        ],
        hands: vec![
            HandView {
                rail: Rail::Left,
                at: Spot::Rung(2),
                steps_up: true,
            },
            HandView {
                rail: Rail::Right,
                at: Spot::Rung(3),
                steps_up: false,
            },
        ],
        beliefs: vec![
            BeliefView {
                rail: Rail::Left,
                median: 0.86,
                log_sd: 0.035,
                interval80: (0.82, 0.90),
                is_stale: false,
            },
            BeliefView {
                rail: Rail::Right,
                median: 0.91,
                log_sd: 0.03,
                interval80: (0.87, 0.94),
                is_stale: false,
            },
        ],
        outlook: vec![
            Outlook {
                rail: Rail::Left,
                belief: Phrase::strong("0.86").then(" of the goal (80 %: 0.82–0.90)"),
                forecast: Some("one rep, 80 %: Apr – Nov 2026".into()),
                how: "From finger help and the two-arm max.".into(),
            },
            Outlook {
                rail: Rail::Right,
                belief: Phrase::strong("0.91").then(" of the goal (80 %: 0.87–0.94)"),
                forecast: Some("one rep, 80 %: Jan – Jun 2026".into()),
                how: "From finger help and the two-arm max.".into(),
            },
        ],
        set_aside: vec![],
        broken: None,
        what_if: Some(LadderWhatIf {
            today_kg: 74.6,
            asked_kg: None,
            ends_kg: [65.6, 83.6],
            from_kg: Some(60.0),
            ghosts: vec![],
            words: "Slide to see another bodyweight. Your healthy range starts at 60 kg.".into(),
            unit: rungwright::units::Unit::Kg,
        }),
    }
}

/// Both hands as one, belief known.
pub fn weighted_pull_up() -> LadderView {
    use RungState::{Open, Passed, WorkedOn};
    let mut rungs = vec![
        rung(
            "assisted",
            "Pull-up with help",
            "3 × 5, 2 in reserve",
            0.52,
            [Passed; 2],
        ),
        rung(
            "bodyweight",
            "Pull-up, own weight",
            "3 × 8, 2 in reserve",
            0.57,
            [Passed; 2],
        ),
        rung(
            "plus-25",
            "Pull-up +25 %",
            "3 × 5, 1 in reserve",
            0.67,
            [Passed; 2],
        ),
        rung(
            "plus-50",
            "Pull-up +50 %",
            "3 × 4, 1 in reserve",
            0.8,
            [WorkedOn { done: 1, of: 2 }; 2],
        ),
        rung("plus-75", "Pull-up +75 %", "3 × 3, 1 in reserve", 0.91, [Open; 2]),
        rung(
            "plus-100",
            "Pull-up +100 %",
            "3 × 1, 1 in reserve",
            1.0,
            [Open; 2],
        ),
    ];
    rungs[5].is_goal = true;
    LadderView {
        id: "weighted-pull-up".into(),
        title: "Weighted pull-up".into(),
        sided: false,
        rungs,
        hands: vec![HandView {
            rail: Rail::Both,
            at: Spot::Rung(3),
            steps_up: false,
        }],
        beliefs: vec![BeliefView {
            rail: Rail::Both,
            median: 0.79,
            log_sd: 0.03,
            interval80: (0.76, 0.82),
            is_stale: true,
        }],
        ..LadderView::default()
    }
}

/// The same without demand or belief: rungs stand evenly and no band is drawn.
pub fn without_demand() -> LadderView {
    let mut view = one_arm();
    for rung in &mut view.rungs {
        rung.demand = None;
    }
    for branch in &mut view.branches {
        branch.demand = None;
    }
    view.beliefs.clear();
    view.outlook.clear();
    view
}

/// An own ladder of `count` rungs in small steps.
pub fn long(count: u8) -> LadderView {
    let steps = [0.013, 0.022, 0.008, 0.02, 0.031, 0.006];
    let mut demand = 0.55;
    let rungs = (0..count)
        .map(|nth| {
            demand += steps[usize::from(nth) % steps.len()];
            let state = |at: u8| {
                if nth < at {
                    RungState::Passed
                } else {
                    RungState::Open
                }
            };
            let title = format!("Pulley −{} kg, 3 × {}", 50.0 - 1.25 * f32::from(nth), 2 + nth % 2);
            let mut rung = rung(
                &format!("r{nth}"),
                &title,
                "3 × 2, 1 in reserve",
                demand,
                [state(14), state(16)],
            );
            rung.is_goal = nth + 4 == count;
            rung
        })
        .collect();
    LadderView {
        id: "small-steps".into(),
        title: "One-arm pull-up in small steps".into(),
        subtitle: Some(format!("own ladder, {count} rungs")),
        sided: true,
        rungs,
        hands: vec![
            HandView {
                rail: Rail::Left,
                at: Spot::Rung(14.min(usize::from(count) - 1)),
                steps_up: false,
            },
            HandView {
                rail: Rail::Right,
                at: Spot::Rung(16.min(usize::from(count) - 1)),
                steps_up: false,
            },
        ],
        beliefs: vec![
            BeliefView {
                rail: Rail::Left,
                median: 0.80,
                log_sd: 0.035,
                interval80: (0.765, 0.836),
                is_stale: false,
            },
            BeliefView {
                rail: Rail::Right,
                median: 0.85,
                log_sd: 0.03,
                interval80: (0.818, 0.883),
                is_stale: false,
            },
        ],
        ..LadderView::default()
    }
}
