//! A prescription in one line, and the warm-up before it, as words.

use crate::catalogue::{Help, Shape};
use crate::coaching::advice::{Asked, LoadToday, NextStep, Prescription};
use crate::coaching::warm_up::{Easy, WarmUpStep};
use crate::units::{Typed, Unit};

use super::belief::{expected_reps, probability};
use super::numbers::{about, kg, number, reps};

/// "3 × 4–6, 1 in reserve, +17.5 kg (10 + 5 + 2.5), rest 3–5 min".
pub fn prescription(work: &Prescription, unit: Unit) -> String {
    let mut parts = vec![format!("{} × {}", work.sets, asked(work.asked))];
    if let Some(reserve) = work.reserve {
        parts.push(format!("{} in reserve", number(reserve.reps(), 1)));
    }
    if let Some(load) = &work.load {
        parts.push(hung(load, unit));
    }
    parts.push(format!("rest {}", rest(work.rest_secs)));
    parts.join(", ")
}

/// "4–6", "6", "10–30 s", "4 or more".
pub fn asked(asked: Asked) -> String {
    let (lo, unit) = match asked {
        Asked::Reps(lo, _) => (lo, ""),
        Asked::Hold(lo, _) => (lo, " s"),
    };
    match asked.hi() {
        None => format!("{}{unit} or more", number(lo, 1)),
        Some(hi) if hi <= lo => format!("{}{unit}", number(lo, 1)),
        Some(hi) => format!("{}–{}{unit}", number(lo, 1), number(hi, 1)),
    }
}

/// What hangs: "+17.5 kg (10 + 5 + 2.5)", "10 kg of help (10)", "bodyweight".
pub fn hung(load: &LoadToday, unit: Unit) -> String {
    let plates = plates(load, unit);
    match (load.added.assistance(), plates.is_empty()) {
        (None, true) => hung_mass(load, unit),
        _ => format!("{} ({plates})", hung_mass(load, unit)),
    }
}

/// "chance 0.86 of 4 reps, 1 in reserve, in a fresh set; about 6.2 reps are expected of a fresh set to failure".
pub fn outlook(step: &NextStep) -> Option<String> {
    let (chance, work) = (step.chance?, step.prescription.as_ref()?);
    let reps = reps(work.asked.lo());
    let reserve = match work.reserve {
        Some(reserve) if reserve.reps() > 0.0 => format!(", {} in reserve,", number(reserve.reps(), 1)),
        _ => String::new(),
    };
    let expected = step
        .expected_reps
        .map_or_else(String::new, |reps| format!("; {}", expected_reps(reps)));
    let chance = probability(chance);
    Some(format!(
        "chance {chance} of {reps}{reserve} in a fresh set{expected}"
    ))
}

/// What hangs without its plates: "+17.5 kg", "10 kg of help", "bodyweight".
pub fn hung_mass(load: &LoadToday, unit: Unit) -> String {
    match load.added.assistance() {
        Some(help) => format!("{} of help", kg(help.kg(), unit)),
        // Plates are named on the belt only; a bar is loaded too.
        None if load.added.kg() == 0.0 => "bodyweight".to_owned(),
        None => format!("+{}", kg(load.added.kg(), unit)),
    }
}

/// The plates as their own numbers, heaviest first: "10 + 5 + 2.5". Where some are of another unit than `unit` each says its
/// own: "10 kg + 5 kg" hang from a belt that is reckoned in pounds.
pub fn plates(load: &LoadToday, unit: Unit) -> String {
    let is_foreign = load.plates.iter().any(|plate| plate.unit() != unit);
    let of = |plate: &Typed| match is_foreign {
        true => format!("{} {}", number(plate.value(), 2), plate.unit().sign()),
        false => number(plate.value(), 2),
    };
    let numbers: Vec<String> = load.plates.iter().map(of).collect();
    numbers.join(" + ")
}

/// "97.5 kg in all at 78 kg".
pub fn in_all(load: &LoadToday, unit: Unit) -> String {
    format!(
        "{} in all at {}",
        kg(load.system.kg(), unit),
        about(load.bodyweight.kg(), unit)
    )
}

/// "3–5 min", "90 s".
pub fn rest((lo, hi): (u16, u16)) -> String {
    if lo % 60 == 0 && hi % 60 == 0 {
        format!("{}–{} min", lo / 60, hi / 60)
    } else {
        format!("{lo}–{hi} s")
    }
}

/// One step of the warm-up.
pub fn warm_up(step: &WarmUpStep, unit: Unit) -> String {
    match step {
        WarmUpStep::General => "5–10 min easy until warm".to_owned(),
        WarmUpStep::Easy { easy, reps: (lo, hi) } => {
            let what = match easy {
                Easy::Rows => "easy rows",
                Easy::ShoulderBlades => "shoulder-blade pulls in the hang",
                Easy::Movement => "easy reps",
            };
            format!("{lo}–{hi} {what}")
        }
        WarmUpStep::Load { load, reps } => format!("{reps} × {}", hung(load, unit)),
        WarmUpStep::EasyHold { seconds } => format!("{} s, easy shape", number(*seconds, 0)),
    }
}

/// What makes a rung lighter or harder than the plain movement, in a few words; none where nothing does.
pub fn help(help: &Help) -> Option<String> {
    let shape = |shape: &Shape| match shape {
        Shape::Tuck => "Knees to the chest",
        Shape::AdvancedTuck => "Hips and knees at 90°, back flat",
        Shape::OneLeg => "One leg straight, the other tucked",
        Shape::Straddle => "Legs straight and apart",
        Shape::Level => "Legs straight and level",
    };
    Some(match help {
        Help::Added | Help::Plain => return None,
        Help::FingerHelp(1) => "One finger of the free hand helps".to_owned(),
        Help::FingerHelp(count) => format!("{count} fingers of the free hand help"),
        Help::Band => "A band helps".to_owned(),
        Help::Negative => "Only the way down".to_owned(),
        Help::Shape(of) => shape(of).to_owned(),
        Help::HandsRaised(cm) => format!("Hands on a box, {cm} cm"),
        Help::FeetRaised(cm) => format!("Feet on a box, {cm} cm"),
        Help::Box(cm) => format!("Down to a box, {cm} cm"),
        Help::Lean(degrees) => format!("Leaning back {degrees}° from upright"),
        Help::Wall => "A wall steadies you".to_owned(),
        Help::HalfRange => "Half the way only".to_owned(),
        Help::Variation(words) => words.clone(),
    })
}
