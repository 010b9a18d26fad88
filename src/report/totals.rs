//! Bests, fits, what-ifs and attempts as words.

use crate::bests::rank::Place;
use crate::bests::{Fit, Kind, NewBest, NoFit, Size};
use crate::coaching::attempts::{Attempt, NoAttempts, Plan};
use crate::coaching::meet::NoMeet;
use crate::coaching::what_if::{GENERAL_EXPONENT, Refused, There, Unknown, WhatIf};
use crate::timeline::LOWEST_HEALTHY_BMI;
use crate::units::{Added, Bodyweight, Mass, SystemLoad, Unit};

use super::advice::hung;
use super::numbers::{about, ago, apart, counted, day, kg, no_less, number, tenths};
use super::words::{on_side, ordinal_figures};

/// "best system load", "best added", "best ratio", "size-adjusted".
pub fn measure(kind: Kind) -> &'static str {
    match kind {
        Kind::System => "best system load",
        Kind::Added => "best added",
        Kind::Ratio => "best ratio",
        Kind::SizeAdjusted => "size-adjusted",
        Kind::OneRepMax => "e1RM",
        Kind::OneRepMaxAdded => "e1RM, added",
    }
}

/// A value of a measure: "173.1 kg", "+92.5 kg", "2.218 ×", "9.190".
pub fn value(kind: Kind, value: f64, unit: Unit) -> String {
    match kind {
        Kind::System | Kind::OneRepMax => about(value, unit),
        Kind::Added | Kind::OneRepMaxAdded => signed(value, unit),
        Kind::Ratio => format!("{value:.3} ×"),
        Kind::SizeAdjusted => format!("{value:.3}"),
    }
}

/// "+92.5 kg", "−12.5 kg", "0 kg".
pub fn signed(kilograms: f64, unit: Unit) -> String {
    let words = kg(kilograms, unit);
    if kilograms > 0.0 {
        format!("+{words}")
    } else {
        words
    }
}

/// "80 %: 155–163".
fn range(low: f64, high: f64, unit: Unit) -> String {
    let part = |kg: f64| number(Mass::from_kg(kg).in_unit(unit), 0);
    format!("80 %: {}–{}", part(low), part(high))
}

/// "158.9 kg in all, 80 %: 155–163", for one repetition.
pub fn system_there(there: &There, unit: Unit) -> (String, String) {
    (
        tenths(there.system.kg(), unit),
        format!("in all, {}", range(there.low80.kg(), there.high80.kg(), unit)),
    )
}

/// "+84.9 kg on the belt (80 %: 81–89)", or help.
pub fn belt_there(there: &There, unit: Unit) -> (String, String) {
    let (low, high) = (there.added80.0.kg(), there.added80.1.kg());
    match there.added.assistance() {
        Some(help) => (
            tenths(help.kg(), unit),
            format!("of help ({})", range(-high, -low, unit)),
        ),
        None => {
            let added = format!("+{}", tenths(there.added.kg(), unit));
            (added, format!("on the belt ({})", range(low, high, unit)))
        }
    }
}

/// "2.15 × you · size-adjusted 8.89".
pub fn measures_there(there: &There) -> String {
    format!(
        "{:.2} × you · size-adjusted {:.2}",
        there.ratio, there.size_adjusted
    )
}

/// What the athlete's own line says, or why there is none.
pub fn fit(fit: &Result<Fit, NoFit>, unit: Unit) -> String {
    let general =
        format!("the general {GENERAL_EXPONENT} % of strength for 1 % of bodyweight serves (0 to 0.67)");
    match fit {
        Ok(fit) => {
            let slope = fit.kg_per_kg();
            format!(
                "Your fit: {} {sign} of system load per {sign} of bodyweight (80 %: {}–{}), {} in {}. It shows what went together, not what a cut does.",
                number(slope.centre, 2),
                number(slope.low80, 1),
                number(slope.high80, 1),
                counted(fit.sets, "set"),
                counted(fit.weeks, "week"),
                sign = unit.sign(),
            )
        }
        Err(NoFit::TooFew { weeks, asked }) => format!(
            "No fit of your own yet: {} with a set that counts, {asked} are asked; {general}.",
            counted(*weeks, "week")
        ),
        Err(NoFit::HardlyVaried { from_kg, to_kg }) => format!(
            "No fit of your own: your bodyweight hardly varied ({} to {}); {general}.",
            about(*from_kg, unit),
            about(*to_kg, unit)
        ),
    }
}

/// Why there is no answer at a bodyweight.
pub fn refused(why: Refused, asked: Bodyweight, unit: Unit) -> String {
    match why {
        Refused::Minor => {
            "under 18 no other bodyweight is looked at: growing and learning come first".to_owned()
        }
        Refused::Underweight { bmi, healthy_from } => format!(
            "{} would be a body mass index of {}, under the healthy range from {}, which is {} at this height; nothing is said below it. Talk to a licensed professional",
            kg(asked.kg(), unit),
            apart(bmi, LOWEST_HEALTHY_BMI, 1),
            number(LOWEST_HEALTHY_BMI, 1),
            no_less(healthy_from.kg(), unit),
        ),
        Refused::NoBodyweight => "give a bodyweight of 20 to 400 kg, or the same in lb".to_owned(),
    }
}

/// Why nothing can be asked of a movement.
pub fn unknown(why: Unknown) -> &'static str {
    match why {
        Unknown::NoLoad => "it has no system load: a shape or a hold is no load",
        Unknown::OutsideTheBody => "bodyweight is no part of its load, which is a bar's or a handle's",
        Unknown::NeverWeighed => "no bodyweight is logged: weigh in first",
        Unknown::NoBelief => "no set of repetitions is logged yet on an earlier day, with its bodyweight",
    }
}

/// What to mind about an answer: a bodyweight that was never logged, a height that isn't known.
pub fn cautions_there(known: &WhatIf, there: &There, unit: Unit) -> Vec<String> {
    let asked = about(there.bodyweight.kg(), unit);
    let mut cautions = Vec::new();
    if let (true, Ok(fit)) = (there.beyond_log, &known.fit) {
        let (from, to) = fit.bodyweights;
        cautions.push(format!(
            "{asked} lies outside what you logged ({} to {}); take this as rough.",
            about(from.kg(), unit),
            about(to.kg(), unit)
        ));
    }
    if there.height_unknown {
        cautions.push(format!(
            "No height is logged, so nobody can say whether {asked} is a healthy bodyweight."
        ));
    }
    cautions
}

/// "New best for 5 reps: 105 kg in all, +25 kg at 80 kg (before: 102.5 kg). By system load, added and ratio."
pub fn new_best(best: &NewBest, title: &str, unit: Unit) -> String {
    let side = on_side(best.side);
    let size = match best.size {
        Size::Reps(1) => " for 1 rep".to_owned(),
        Size::Reps(reps) => format!(" for {reps} reps"),
        Size::Hold(seconds) => format!(" for {} s", number(seconds, 1)),
        Size::Estimate => String::new(),
    };
    let load = best.system.map_or(String::new(), |load: SystemLoad| {
        format!("{} in all, ", about(load.kg(), unit))
    });
    let body = best
        .bodyweight
        .map_or(String::new(), |body| format!(" at {}", about(body.kg(), unit)));
    let before = match (best.before, best.kinds.first()) {
        (Some(before), Some(kind)) => format!(" (before: {})", value(*kind, before, unit)),
        _ => String::new(),
    };
    format!(
        "New best{size}, {title}{side}: {load}{}{body}, by {}{before}",
        signed(best.added.kg(), unit),
        measures(best)
    )
}

/// "New best: system load and added", for a line under a set.
pub fn new_best_short(best: &NewBest, unit: Unit) -> String {
    let before = match (best.before, best.kinds.first()) {
        (Some(before), Some(kind)) => format!(", before {}", value(*kind, before, unit)),
        _ => String::new(),
    };
    format!("New best: {}{before}", measures(best))
}

/// The measures that a new best is one of: "system load and added".
fn measures(best: &NewBest) -> String {
    let kinds = best.kinds.iter();
    let words: Vec<&str> = kinds
        .map(|kind| measure(*kind).trim_start_matches("best "))
        .collect();
    listed(&words)
}

/// "system load, added and ratio".
pub(super) fn listed(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [some @ .., last] => format!("{} and {last}", some.join(", ")),
    }
}

/// "+82.5 kg": what an attempt hangs; help with its sign.
pub fn attempt(attempt: &Attempt, unit: Unit) -> String {
    signed(attempt.load.added.kg(), unit)
}

/// Why there are no attempts: "You reported 7 of 10 at the elbow yesterday: no maximal attempts until it has settled."
pub fn no_attempts(why: NoAttempts) -> String {
    match why {
        NoAttempts::Minor => "Under 18: no maximal tests.".to_owned(),
        NoAttempts::Hurts { site, score, days } => format!(
            "You reported {score} of 10 at the {} {}: no maximal attempts until it has settled.",
            site.word(),
            ago(days)
        ),
        NoAttempts::NoWeighIn => "Weigh in first: a belt load depends on it.".to_owned(),
        NoAttempts::NoBelief => {
            "No strength is believed yet: log sets of repetitions; they count from the next day on."
                .to_owned()
        }
        NoAttempts::NoneSure => "No load that can be hung has a chance of 90 % today.".to_owned(),
    }
}

/// What makes the loads of a plan: "+60 kg (20 + 20 + 20) · +62.5 kg (20 + 20 + 20 + 2.5)", or that a bar is loaded.
pub fn hangs(plan: &Plan, unit: Unit) -> String {
    let loads = plan.attempts.iter().map(|attempt| &attempt.load);
    if loads
        .clone()
        .all(|load| load.plates.is_empty() && load.added.kg() > 0.0)
    {
        return "Bar and discs together, in the bar's usual steps.".to_owned();
    }
    let hung: Vec<String> = loads.map(|load| hung(load, unit)).collect();
    format!("Plates: {}", hung.join(" · "))
}

/// Why there is no meet.
pub fn no_meet(why: NoMeet) -> String {
    match why {
        NoMeet::FewLifts => "A meet takes at least two lifts that were logged in the last year.".to_owned(),
        NoMeet::NoAttempts(why) => no_attempts(why),
    }
}

/// "95 %".
pub fn percent(chance: f64) -> String {
    format!("{} %", number(chance * 100.0, 0))
}

/// "3rd of 36".
pub fn place(place: Place) -> String {
    format!("{} of {}", ordinal_figures(place.place), place.of)
}

/// How a set stands by each measure: "of 68 sets 12th by system load, 10th by added, 3rd by ratio and 4th size-adjusted",
/// "1st of 68 sets by every measure".
pub fn standing(places: &[(Kind, Place)]) -> String {
    let Some((_, first)) = places.first() else {
        return String::new();
    };
    if places.iter().all(|(_, place)| place == first) {
        return format!("{} sets by every measure", self::place(*first));
    }
    let by = |kind: Kind| match kind {
        Kind::SizeAdjusted => "size-adjusted".to_owned(),
        _ => format!("by {}", measure(kind).trim_start_matches("best ")),
    };
    let each: Vec<String> = places
        .iter()
        .map(|(kind, place)| format!("{} {}", super::words::ordinal_figures(place.place), by(*kind)))
        .collect();
    let each: Vec<&str> = each.iter().map(String::as_str).collect();
    format!("of {} sets {}", first.of, listed(&each))
}

/// A day's total of added loads: "+217.5 kg".
pub fn total(mass: Mass, unit: Unit) -> String {
    signed(Added::new(mass).kg(), unit)
}

/// "Sat 6 Sep 2025".
pub fn long_day(date: chrono::NaiveDate) -> String {
    format!("{} {}", day(date), date.format("%Y"))
}
