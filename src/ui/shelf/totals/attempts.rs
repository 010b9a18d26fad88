//! Attempts for a test of today, and the day's meet.

use crate::coaching::attempts::{self, NoAttempts, Plan};
use crate::coaching::meet::{LIFTS, Meet};
use crate::report::belief::{self, Loads};
use crate::report::numbers::about;
use crate::report::{advice, totals as words};
use crate::ui::views::{AttemptView, MeetLift, MeetView};
use crate::units::{Added, Side};

use super::Made;

impl Made<'_, '_> {
    pub(super) fn plan(&self, movement: &str, side: Option<Side>) -> Result<Plan, NoAttempts> {
        let movement = self
            .opened
            .catalogue
            .movement(movement)
            .ok_or(NoAttempts::NoBelief)?;
        let believed = self.believed(&movement.id, side);
        let belief = believed.map(|believed| &believed.belief);
        attempts::today(&self.timeline, movement, side, belief, &self.opened.plates)
    }

    pub(super) fn attempts(&self, plan: &Plan) -> Vec<AttemptView> {
        plan.attempts
            .iter()
            .map(|attempt| AttemptView {
                load: words::attempt(attempt, self.unit),
                plates: advice::hung(&attempt.load, self.unit),
                chance: attempt.chance,
                words: words::percent(attempt.chance),
            })
            .collect()
    }

    pub(super) fn attempts_note(&self, plan: &Result<Plan, NoAttempts>) -> String {
        let first = plan.as_ref().map(|plan| plan.attempts.first());
        match first {
            Ok(Some(first)) => format!("at {}", about(first.load.bodyweight.kg(), self.unit)),
            Ok(None) => words::no_attempts(NoAttempts::NoneSure),
            Err(why) => words::no_attempts(*why),
        }
    }

    /// The meet of today: lifts that were trained in the last year.
    pub(super) fn meet(&self) -> Option<MeetView> {
        let trained = |movement: &str| {
            let sets = self
                .timeline
                .evidence()
                .filter(|set| set.movement.is_some_and(|known| known.id == movement));
            sets.filter(|set| set.form.is_some_and(|form| form.help.is_none()))
                .map(|set| set.added.kg())
                .reduce(f64::max)
        };
        let mut lifts: Vec<(&str, f64)> = LIFTS
            .into_iter()
            .filter_map(|id| Some((id, trained(id)?)))
            .collect();
        // A pull-up or a chin-up: the one with the heavier set.
        let of =
            |lifts: &[(&str, f64)], id: &str| lifts.iter().find(|(lift, _)| *lift == id).map(|(_, kg)| *kg);
        if let (Some(pull), Some(chin)) = (of(&lifts, "pull-up"), of(&lifts, "chin-up")) {
            let lighter = if chin > pull { "pull-up" } else { "chin-up" };
            lifts.retain(|(lift, _)| *lift != lighter);
        }
        if lifts.len() < 2 {
            return None;
        }
        let planned = lifts
            .iter()
            .map(|(id, _)| ((*id).to_owned(), self.plan(id, None).ok()))
            .collect();
        let meet = Meet::new(&self.timeline, self.timeline.on, planned);
        let known = lifts.iter().filter_map(|(id, _)| {
            let from = belief::sets_behind(&self.believed(id, None)?.basis, Loads::Said(self.unit));
            Some(format!("{}: {from}.", self.title(id)))
        });
        let how = format!(
            "Done: added loads logged today. 1st, 2nd and 3rd: attempts with about 90, 70 and 35–50 % chance by the estimates. {}",
            known.collect::<Vec<_>>().join(" ")
        );
        let dash = || "–".to_owned();
        let line = |lift: &crate::coaching::meet::Lift| MeetLift {
            title: self.title(&lift.movement),
            made: lift
                .made
                .map_or_else(dash, |added| words::signed(added.kg(), self.unit)),
            attempts: [0, 1, 2].map(|nth| {
                let attempt = lift.plan.as_ref().and_then(|plan| plan.attempts.get(nth));
                attempt.map_or_else(dash, |attempt| words::attempt(attempt, self.unit))
            }),
        };
        Some(MeetView {
            lifts: meet.lifts.iter().map(line).collect(),
            total: meet
                .total()
                .map_or_else(dash, |total| words::signed(Added::new(total).kg(), self.unit)),
            planned: [0, 1, 2].map(|nth| {
                meet.planned(nth)
                    .map_or_else(dash, |total| words::total(total, self.unit))
            }),
            how,
        })
    }
}
