//! Beliefs as words: an estimate, a range, a chance; never a promise.

use chrono::{Days, NaiveDate};

use crate::coaching::held_back::{Evidence, HeldBack, Place};
use crate::strength::{
    Band, Basis, Believed, Coverage, Forecast, Heading, Likely, LinkKind, Suspect, Telling,
};
use crate::units::{Added, Effort, Reserve, Unit};

use super::numbers::{about, counted, day, kg, number};

/// What is believed of one movement and side, a line each: the 1RM and its range, where it is heading, what looks like a typo.
pub fn lines(believed: &Believed, unit: Unit) -> Vec<String> {
    let mut lines = vec![format!("about {}", one_rep_max(believed, unit))];
    lines.push(format!(
        "80 %: {}; 50 %: {}; 95 %: {}",
        range(believed.belief.band(Coverage::Eighty), unit),
        range(believed.belief.band(Coverage::Half), unit),
        range(believed.belief.band(Coverage::NinetyFive), unit),
    ));
    lines.push(format!("{}; {}", heading(believed), stands_on(believed)));
    lines.extend(
        believed
            .suspects
            .iter()
            .map(|suspect| format!("{}; amend {} if so", suspected(suspect, unit), suspect.id)),
    );
    lines
}

/// "118.4 kg in all for one repetition, +38.4 kg at 80 kg".
pub fn one_rep_max(believed: &Believed, unit: Unit) -> String {
    let in_all = format!(
        "{} in all for one repetition",
        about(believed.belief.one_rep_max().kg(), unit)
    );
    match (believed.added_one_rep_max(), believed.bodyweight) {
        (Some(added), Some(body)) if believed.share.value() > 0.0 => {
            format!("{in_all}, {} at {}", belt(added, unit), about(body.kg(), unit))
        }
        _ => in_all,
    }
}

/// "+38.4 kg", "12 kg of help".
pub fn belt(added: Added, unit: Unit) -> String {
    match added.assistance() {
        Some(help) => format!("{} of help", about(help.kg(), unit)),
        None => format!("+{}", about(added.kg(), unit)),
    }
}

/// "112.1–125 kg".
pub fn range(band: Band, unit: Unit) -> String {
    let low = number(band.low.mass().in_unit(unit), 1);
    format!("{low}–{}", about(band.high.kg(), unit))
}

/// "rising about 0.3 % a week", "no clear trend".
pub fn heading(believed: &Believed) -> String {
    let percent = number((believed.belief.trend().0 * 100.0).abs(), 1);
    match believed.heading() {
        Heading::Rising => format!("rising about {percent} % a week"),
        Heading::Falling => format!("falling about {percent} % a week"),
        Heading::Unclear => "no clear trend".to_owned(),
    }
}

/// "from 34 sessions", "from only 2 sessions".
fn stands_on(believed: &Believed) -> String {
    let only = if believed.is_thin() { "only " } else { "" };
    let sessions = counted(believed.belief.sessions(), "session");
    format!("from {only}{sessions} before today")
}

/// How an estimate came about: what it is, and the sets that it stands on.
///
/// "Estimated one-rep max: 118.4 kg in all for one repetition, +38.4 kg at 80 kg (80 %: 112.1–125 kg), from 276 sets …"
pub fn how(believed: &Believed, unit: Unit) -> String {
    format!(
        "Estimated one-rep max: {} (80 %: {}), from {}",
        one_rep_max(believed, unit),
        range(believed.belief.band(Coverage::Eighty), unit),
        sets_behind(&believed.basis, Loads::Said(unit)),
    )
}

/// Whether the loads of sets are said: not where help stands in their place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loads {
    /// In this unit.
    Said(Unit),
    /// Only repetitions.
    Left,
}

/// "276 sets on 80 days, Sat 25 Apr 2025 – Mon 16 Mar 2026, lately: Mon 16 Mar +20 kg × 5, 1 in reserve; …": without its stop.
pub fn sets_behind(basis: &Basis, loads: Loads) -> String {
    let long = |date: NaiveDate| date.format("%-d %b %Y").to_string();
    let when = if basis.first == basis.last {
        long(basis.last)
    } else {
        format!("{} – {}", long(basis.first), long(basis.last))
    };
    let mut words = format!(
        "{} on {}, {when}",
        counted(basis.sets, "set"),
        counted(basis.days, "day")
    );
    let lately: Vec<String> = basis
        .lately
        .iter()
        .map(|told| format!("{} {}", day(told.date), telling(told, loads)))
        .collect();
    if !lately.is_empty() {
        words.push_str(&format!(". Lately: {}", lately.join("; ")));
    }
    if basis.of_other_side > 0 {
        words.push_str(&format!(
            ". {} of the other hand {} of it, too",
            counted(basis.of_other_side, "set"),
            if basis.of_other_side == 1 { "tells" } else { "tell" }
        ));
    }
    if basis.doubted > 0 {
        let (look, they) = if basis.doubted == 1 {
            ("looks", "it counts")
        } else {
            ("look", "they count")
        };
        words.push_str(&format!(
            ". {} {look} like a typo; {they} for little",
            counted(basis.doubted, "set")
        ));
    }
    words
}

/// "+20 kg × 5, 1 in reserve", "8 reps", "12 s, missed".
fn telling(told: &Telling, loads: Loads) -> String {
    let done = match loads {
        Loads::Said(unit) if told.added.kg() != 0.0 => load_times(told.added, told.effort, unit),
        _ => match told.effort {
            Effort::Reps(reps) => counted(reps.count(), "rep"),
            Effort::Hold(seconds) => format!("{} s", number(seconds.value(), 1)),
        },
    };
    format!("{done}{}", ending(told.left, told.missed))
}

/// ", 1 in reserve", ", then missed".
pub fn ending(left: Option<Reserve>, missed: bool) -> String {
    match left {
        _ if missed => ", then missed".to_owned(),
        Some(left) => format!(", {} in reserve", number(left.reps(), 1)),
        None => String::new(),
    }
}

/// "+25 kg × 5", "20 kg of help × 8": what a set may have been.
pub fn likely(likely: &Likely, unit: Unit) -> String {
    load_times(likely.added, likely.effort, unit)
}

/// "+25 kg × 5", "20 kg of help × 8".
pub fn load_times(added: Added, effort: Effort, unit: Unit) -> String {
    let times = match effort {
        Effort::Reps(reps) => reps.count().to_string(),
        Effort::Hold(seconds) => format!("{} s", number(seconds.value(), 1)),
    };
    let load = match added.assistance() {
        Some(help) => format!("{} of help", kg(help.kg(), unit)),
        None => format!("+{}", kg(added.kg(), unit)),
    };
    format!("{load} × {times}")
}

/// "Thu 12 Mar: looks like a typo, probability 0.97; +25 kg × 5 would fit".
pub fn suspected(suspect: &Suspect, unit: Unit) -> String {
    let likely = suspect
        .likely
        .map_or_else(String::new, |fits| format!("; {} would fit", likely(&fits, unit)));
    format!(
        "{}: looks like a typo, probability {}{likely}",
        day(suspect.date),
        probability(suspect.probability)
    )
}

/// "86 %", never said as sure.
pub fn percent(value: f64) -> String {
    format!("{} %", number((value * 100.0).clamp(1.0, 99.0), 0))
}

/// A probability with two digits, never said as sure.
pub fn probability(value: f64) -> String {
    number(value.clamp(0.01, 0.99), 2)
}

/// "80 %: Apr – Nov 2026; even chance by Jul 2026; chance within a year 0.83, if training goes on as now".
pub fn forecast(forecast: &Forecast, on: NaiveDate) -> String {
    let year = probability(forecast.in_a_year);
    let even = match forecast.median {
        Some(0) | None => String::new(),
        Some(weeks) => format!("; even chance by {}", month(on, weeks)),
    };
    format!(
        "{}{even}; chance within a year {year}, if training goes on as now",
        span(forecast, on)
    )
}

/// "80 %: Apr – Nov 2026", "80 %: from Nov 2026 to more than two years away", "within reach today, by the estimate".
pub fn span(forecast: &Forecast, on: NaiveDate) -> String {
    match (forecast.soonest, forecast.latest) {
        (_, Some(0)) => "within reach today, by the estimate".to_owned(),
        (None, _) => "not in sight within two years".to_owned(),
        (Some(from), None) => format!("80 %: from {} to more than two years away", begins(on, from)),
        (Some(from), Some(to)) => {
            let (begin, end) = (begins(on, from), month(on, to));
            if begin == end {
                format!("80 %: {begin}")
            } else {
                format!("80 %: {begin} – {end}")
            }
        }
    }
}

fn begins(on: NaiveDate, weeks: u16) -> String {
    if weeks == 0 {
        "now".to_owned()
    } else {
        month(on, weeks)
    }
}

/// "Apr 2026".
fn month(on: NaiveDate, weeks: u16) -> String {
    let date = on.checked_add_days(Days::new(7 * u64::from(weeks)));
    date.map_or_else(String::new, |date| date.format("%b %Y").to_string())
}

/// "about 5.4 reps are expected of a fresh set to failure".
pub fn expected_reps(reps: f64) -> String {
    if reps < 1.0 {
        return "less than one rep is expected of a fresh set to failure".to_owned();
    }
    format!(
        "about {} reps are expected of a fresh set to failure",
        number(reps, 1)
    )
}

/// What holds a rail back, with its numbers, and what trains it: a sentence without its stop.
pub fn held_back(held: &HeldBack, companion: &str) -> String {
    match held.by {
        Evidence::Link { kind, own, others } => {
            let rest = match kind {
                LinkKind::Hang => "Your pull",
                _ => "The rest of your log",
            };
            format!(
                "{rest} says {} of the goal, {} only {}: {} holds you back, and {companion} trains it",
                between(others),
                link(kind),
                between(own),
                weak(kind)
            )
        }
        Evidence::Notes { place, sets, last } => {
            let place = match place {
                Place::Bottom => "at the bottom",
                Place::Middle => "in the middle",
                Place::Top => "at the top",
                Place::Grip => "by the grip",
            };
            let missed = counted(sets, "missed set");
            format!(
                "Your notes say that {missed} failed {place}, last on {}; {companion} trains it",
                day(last)
            )
        }
    }
}

/// "0.97–1.05": a band on a ladder's scale.
pub fn between((low, high): (f64, f64)) -> String {
    format!("{low:.2}–{high:.2}")
}

/// A kind of evidence within a sentence.
pub fn link(kind: LinkKind) -> &'static str {
    match kind {
        LinkKind::TwoArms => "both arms",
        LinkKind::OneArm => "one arm alone",
        LinkKind::Fingers => "one arm with fingers helping",
        LinkKind::Band => "one arm with a band",
        LinkKind::Negative => "the slow way down",
        LinkKind::LockOff => "the lock-off",
        LinkKind::Hang => "the hang",
        LinkKind::Movement => "the sets",
        LinkKind::Shapes => "the holds",
    }
}

/// What is weak when such evidence lies below the others.
fn weak(kind: LinkKind) -> &'static str {
    match kind {
        LinkKind::Hang => "grip",
        LinkKind::LockOff => "the top",
        LinkKind::Negative => "the way through",
        LinkKind::TwoArms | LinkKind::Movement | LinkKind::Shapes => "pulling strength",
        LinkKind::OneArm | LinkKind::Fingers | LinkKind::Band => "what is special to one arm",
    }
}
