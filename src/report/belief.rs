//! Beliefs as words: an estimate, a range, a chance; never a promise.

use crate::strength::{Band, Believed, Coverage, Heading, Suspect};
use crate::units::{Added, Effort, Unit};

use super::numbers::{about, counted, day, kg, number};

/// What is believed of one movement and side, a line each: the 1RM and its range, where it is heading, what looks like a typo.
pub fn lines(believed: &Believed, unit: Unit) -> Vec<String> {
    let mut lines = vec![format!("about {}", one_rep_max(believed, unit))];
    lines.push(format!(
        "8 in 10: {}; 5 in 10: {}; 95 in 100: {}",
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
pub fn stands_on(believed: &Believed) -> String {
    let only = if believed.is_thin() { "only " } else { "" };
    let sessions = counted(i64::from(believed.belief.sessions()), "session");
    format!("from {only}{sessions} before today")
}

/// "Thu 12 Mar: looks like a typo, probability 0.97; +25 kg × 5 would fit".
pub fn suspected(suspect: &Suspect, unit: Unit) -> String {
    let likely = suspect.likely.map_or_else(String::new, |likely| {
        let times = match likely.effort {
            Effort::Reps(reps) => reps.count().to_string(),
            Effort::Hold(seconds) => format!("{} s", number(seconds.value(), 1)),
        };
        let load = match likely.added.assistance() {
            Some(help) => format!("{} of help", kg(help.kg(), unit)),
            None => format!("+{}", kg(likely.added.kg(), unit)),
        };
        format!("; {load} × {times} would fit")
    });
    format!(
        "{}: looks like a typo, probability {}{likely}",
        day(suspect.date),
        probability(suspect.probability)
    )
}

/// A probability with two digits, never said as sure.
pub fn probability(value: f64) -> String {
    number(value.clamp(0.01, 0.99), 2)
}
