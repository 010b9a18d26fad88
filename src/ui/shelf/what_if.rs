//! Another bodyweight on Ladders: demands for that body, and where both hands would stand by one exponent.

use crate::coaching::what_if::{Care, GENERAL_EXPONENT, relative_change};
use crate::report::numbers::about;
use crate::timeline::Timeline;
use crate::ui::views::{BeliefView, LadderWhatIf};
use crate::units::{Bodyweight, Mass, Rail};

use super::opened::Opened;

/// How far the slider goes to each side of today's bodyweight, as a part of it: about what a long cut or gain changes.
/// Common practice, no source.
const REACH: f64 = 0.12;

/// The bodyweight that is asked about, if anything may be said of it.
pub(super) fn asked(opened: &Opened, timeline: &Timeline<'_>) -> Option<Bodyweight> {
    let bodyweight = Bodyweight::new(Mass::from_kg(opened.asked_kg?));
    Care::of(timeline).allows(bodyweight).ok().map(|()| bodyweight)
}

/// The slider and what it moves; none for minors, below the healthy range, and before the first weigh-in.
pub(super) fn view(opened: &Opened, timeline: &Timeline<'_>, beliefs: &[BeliefView]) -> Option<LadderWhatIf> {
    let today = timeline.bodyweight()?;
    let care = Care::of(timeline);
    care.allows(today).ok()?;
    let asked = asked(opened, timeline);
    let unit = opened.book.unit();
    let ghost = |to: Bodyweight| -> Vec<(Rail, (f64, f64))> {
        let change = relative_change(today, to);
        let moved = |belief: &BeliefView| {
            let (low, high) = belief.interval80;
            (belief.rail, (low * change, high * change))
        };
        beliefs.iter().map(moved).collect()
    };
    let from = care.healthy_from();
    let words = match asked {
        Some(to) if beliefs.is_empty() => format!("Demands are shown for {}.", about(to.kg(), unit)),
        Some(to) => format!(
            "At {} each hand would stand at {:.2} of where it stands, by one exponent for both ({GENERAL_EXPONENT}). It shows what went together, not what a cut does.",
            about(to.kg(), unit),
            relative_change(today, to)
        ),
        None => from.map_or_else(
            || {
                "Slide to see another bodyweight. No height is logged, so your healthy range isn't known."
                    .to_owned()
            },
            |from| {
                format!(
                    "Slide to see another bodyweight. Your healthy range starts at {}.",
                    about(from.kg(), unit)
                )
            },
        ),
    };
    Some(LadderWhatIf {
        today_kg: today.kg(),
        asked_kg: asked.map(Bodyweight::kg),
        ends_kg: [today.kg() * (1.0 - REACH), today.kg() * (1.0 + REACH)],
        from_kg: from.map(Bodyweight::kg),
        ghosts: asked.map(ghost).unwrap_or_default(),
        words,
        unit,
    })
}
