//! Totals of invented people, built by hand: views as the adapter would make them, not what the rules would say.

use rungwright::bests::{Fit, Formula, Kind, Slope};
use rungwright::coaching::what_if::{Care, WhatIf};
use rungwright::ui::views::*;
use rungwright::units::{Bodyweight, Height, Mass, Share, SystemLoad, Unit};

fn body(kg: f64) -> Bodyweight {
    Bodyweight::new(Mass::from_kg(kg))
}

fn load(kg: f64) -> SystemLoad {
    SystemLoad::new(Mass::from_kg(kg))
}

/// A repeatable scatter in −1 to 1.
fn wobble(nth: usize) -> f64 {
    let turn = f64::from(u32::try_from(nth).unwrap() % 1009) * 0.618_034;
    2.0 * (turn * 7.3).fract() - 1.0
}

fn point(nth: usize, of: usize) -> PointView {
    let share = nth as f64 / of.max(2) as f64;
    let bodyweight_kg = 76.5 + 7.0 * (share * 9.5).sin() + 0.6 * wobble(nth * 3);
    let max = 158.0 * (bodyweight_kg / 76.0).powf(0.72) * (1.0 + 0.012 * wobble(nth + 5) + 0.02 * share);
    let reps = [1.0, 3.0, 5.0, 1.0, 8.0, 2.0][nth % 6];
    let system_kg = if reps == 1.0 {
        max
    } else {
        max / (1.0 + reps / 30.0)
    };
    let date = chrono::NaiveDate::from_ymd_opt(2024, 1, 8).unwrap()
        + chrono::Days::new(nth as u64 * 700 / of.max(1) as u64);
    let missed = nth % 23 == 22;
    PointView {
        date,
        bodyweight_kg,
        added_kg: system_kg - bodyweight_kg,
        system_kg: if missed { max * 1.02 } else { system_kg },
        one_rep_max_kg: (!missed).then_some(max),
        reps: if missed { 0.0 } else { reps },
        missed,
        doubted: of > 20 && nth == of / 2 + 1,
        words: format!(
            "{}: +{:.1} kg × {reps} reps at {bodyweight_kg:.1} kg: {system_kg:.1} kg in all; of {of} sets 12th by system load, 9th by added, 3rd by ratio and 4th size-adjusted",
            date.format("%a %-d %b %Y"),
            system_kg - bodyweight_kg
        ),
    }
}

fn best(kind: Kind, title: &'static str, at: (f64, f64)) -> BestView {
    let value = match kind {
        Kind::System => format!("{:.1} kg", at.1),
        Kind::Added => format!("+{:.1} kg", at.1 - at.0),
        Kind::Ratio => format!("{:.3} ×", at.1 / at.0),
        _ => format!("{:.3}", at.1 / at.0.powf(0.67)),
    };
    BestView {
        kind,
        reps: 1,
        title,
        value,
        weighed: format!("{:.1} kg", at.0),
        added: format!("+{:.1} kg", at.1 - at.0),
        date: "Wed 12 Mar 2025".into(),
        at: Some(at),
        doubted: false,
        place: Some("3rd of 36".into()),
    }
}

/// Jonas, who dips, with so many sets.
pub fn dip(sets: usize) -> TotalsView {
    let exponent = Slope {
        centre: 0.7,
        low80: 0.45,
        high80: 0.93,
    };
    let fit = Fit {
        exponent,
        middle: body(76.5),
        one_rep_max: load(159.5),
        spread: 0.012,
        bodyweights: (body(69.4), body(83.6)),
        weeks: 84,
        sets: sets * 9 / 10,
    };
    let enough = sets >= 20;
    let top = |kg: f64, over: f64| (kg, 158.0 * (kg / 76.0f64).powf(0.72) * over);
    let bests = vec![
        best(Kind::System, "best system load", top(82.1, 1.022)),
        best(Kind::Added, "best added", top(81.0, 1.031)),
        best(Kind::Ratio, "best ratio", top(70.2, 1.032)),
        BestView {
            doubted: true,
            place: None,
            ..best(Kind::SizeAdjusted, "size-adjusted", top(74.8, 1.041))
        },
    ];
    let lift = LiftView {
        nth: 1,
        title: "Dip".into(),
        share: 1.0,
        points: (0..sets).map(|nth| point(nth, sets)).collect(),
        fit: enough.then(|| fit.clone()),
        formula: Formula::Epley,
        fit_words: if enough {
            "Your fit: 1.46 kg of system load per kg of bodyweight (80 %: 0.9–1.9), 63 sets in 84 weeks. It shows what went together, not what a cut does.".into()
        } else {
            "No fit of your own yet: 3 weeks with a set that counts, 6 are asked; the general 0.35 % of strength for 1 % of bodyweight serves (0 to 0.67).".into()
        },
        bests,
        what_if: Some(WhatIf {
            today: load(164.0),
            log_sd: 0.014,
            bodyweight: body(79.3),
            share: Share::WHOLE,
            fit: if enough {
                Ok(fit)
            } else {
                Err(rungwright::bests::NoFit::TooFew { weeks: 3, asked: 6 })
            },
            exponent,
            care: Care {
                minor: false,
                height: Height::from_cm(181.0).ok(),
            },
        }),
        no_what_if: None,
        belief_how: "From 63 sets on 21 days.".into(),
        attempts_how: "From 63 sets on 21 days.".into(),
        strength: None,
        today_kg: Some(79.3),
        two_weights: Some(TwoWeightsView {
            note: "best single within 1.5 kg".into(),
            heads: ["at 70 kg".into(), "at 82 kg".into()],
            rows: [
                ["System load", "154.2 kg", "171.5 kg", "+17.3 kg"],
                ["Added", "+84 kg", "+90 kg", "+6 kg"],
                ["Ratio", "2.197", "2.089", "−0.108"],
                ["Size-adjusted", "8.935", "8.942", "+0.007"],
            ]
            .map(|row| row.map(str::to_owned))
            .to_vec(),
        }),
        attempts: [
            ("+75 kg", "+75 kg (20 + 20 + 20 + 15)", 0.94),
            ("+82.5 kg", "+82.5 kg (20 + 20 + 20 + 20 + 2.5)", 0.69),
            ("+86.25 kg", "+86.25 kg (20 + 20 + 20 + 20 + 5 + 1.25)", 0.42),
        ]
        .map(|(load, plates, chance)| AttemptView {
            load: load.into(),
            plates: plates.into(),
            chance,
            words: format!("{:.0} %", chance * 100.0),
        })
        .to_vec(),
        hangs: "Plates: +75 kg (20 + 20 + 20 + 15) · +82.5 kg (20 + 20 + 20 + 20 + 2.5) · +86.25 kg (20 + 20 + 20 + 20 + 5 + 1.25)".into(),
        attempts_note: "at 79.3 kg".into(),
        warm_up: vec![
            "5–10 min easy until warm".into(),
            "8 × +2.5 kg (2.5)".into(),
            "3 × +35 kg (20 + 15)".into(),
            "1 × +60 kg (20 + 20 + 20)".into(),
        ],
    };
    let tab = |movement: &str, title: &str| LiftTab {
        movement: movement.into(),
        side: None,
        title: title.into(),
    };
    TotalsView {
        lifts: vec![
            tab("pull-up", "Pull-up"),
            tab("dip", "Dip"),
            tab("chin-up", "Chin-up"),
            tab("muscle-up", "Muscle-up"),
        ],
        open: Some(lift),
        bodyweight: Phrase::plain("Bodyweight ")
            .then_strong("79.3 kg")
            .then(" on Mon 13 Oct"),
        meet: Some(meet()),
        no_meet: String::new(),
        tries: [
            ("muscle-up", "Muscle-up", "12.5"),
            ("pull-up", "Pull-up", "55"),
            ("chin-up", "Chin-up", ""),
            ("dip", "Dip", "75"),
            ("back-squat", "Back squat", ""),
        ]
        .map(|(movement, title, next)| TryView {
            movement: movement.into(),
            title: title.into(),
            next: next.into(),
        })
        .to_vec(),
        picture: "/home/coach/totals-jonas-ekelov-dip-2026-11-26.png".into(),
        unit: Unit::Kg,
    }
}

/// Jonas's meet of today, its first two lifts done.
fn meet() -> MeetView {
    let choice = |movement: &str, title: &str, chosen| MeetChoice {
        movement: movement.into(),
        title: title.into(),
        chosen,
    };
    MeetView {
        how: "From 63 sets on 21 days.".into(),
        lifts: [
            ("Muscle-up", "+10", ["+7.5", "+10", "+12.5"]),
            ("Pull-up", "+52.5", ["+50", "+55", "+57.5"]),
            ("Dip", "–", ["+75", "+82.5", "+86.25"]),
        ]
        .map(|(title, made, attempts)| MeetLift {
            title: title.into(),
            made: made.into(),
            attempts: attempts.map(str::to_owned),
        })
        .to_vec(),
        total: "–".into(),
        planned: ["+132.5".into(), "+147.5".into(), "+156.25".into()],
        choices: vec![
            choice("muscle-up", "Muscle-up", true),
            choice("pull-up", "Pull-up", true),
            choice("chin-up", "Chin-up", false),
            choice("dip", "Dip", true),
        ],
        notes: vec![],
        refused: None,
        athlete: "jonas-ekelov".into(),
        name: "Jonas Ekelöv".into(),
        sheet: "/home/coach/meet-jonas-ekelov-2026-11-26.pdf".into(),
    }
}
