//! What a session asks: the advice as the day began, so that the first set of an evening does not change what is asked of the
//! second.

use crate::catalogue::Catalogue;
use crate::logbook::Log;
use crate::timeline::Timeline;

use super::advice::NextStep;
use super::loads::PlatesOnHand;
use super::next_step::next_steps;

/// The next steps as the day of `timeline` began. `now` are those with the day's sets.
pub fn session_steps(
    log: &Log,
    timeline: &Timeline<'_>,
    catalogue: &Catalogue,
    plates: &PlatesOnHand,
    now: &[NextStep],
) -> Vec<NextStep> {
    let on = timeline.on;
    if timeline.sets.last().is_none_or(|set| set.date != on) {
        return now.to_vec();
    }
    let before = log.without_sets_of(on);
    let before = Timeline::new(&before, catalogue, on);
    let mut session = next_steps(&before, catalogue, plates);
    // A ladder that only today's sets are on has no advice from before them.
    let only_today: Vec<NextStep> = now
        .iter()
        .filter(|step| !session.iter().any(|known| known.ladder == step.ladder))
        .cloned()
        .collect();
    session.extend(only_today);
    session
}
