//! Attempts for a test of today, and the day's meet.

use crate::coaching::attempts::{self, NoAttempts, Plan};
use crate::coaching::meet::{LIFTS, Lift, Meet, NoMeet, trained};
use crate::logbook::Log;
use crate::report::belief::{self, Loads};
use crate::report::numbers::about;
use crate::report::{advice, totals as words};
use crate::ui::views::{AttemptView, MeetChoice, MeetLift, MeetView, TryView};
use crate::units::{Added, Side};

use super::super::people::out_folder;
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

    /// The meet of today over the lifts that were chosen.
    fn meet(&self) -> Result<Meet, NoMeet> {
        let opened = self.opened;
        let (timeline, chosen) = (&self.timeline, &opened.meet);
        Meet::today(
            timeline,
            &opened.catalogue,
            &self.believed,
            &opened.plates,
            chosen,
        )
    }

    /// How what is planned for a meet came about.
    fn meet_how(&self, meet: &Meet) -> String {
        let known = meet.lifts.iter().filter_map(|lift| {
            let from = belief::sets_behind(
                &self.believed(&lift.movement, None)?.basis,
                Loads::Said(self.unit),
            );
            Some(format!("{}: {from}.", self.title(&lift.movement)))
        });
        format!(
            "Done: added loads logged today. 1st, 2nd and 3rd: attempts with about 90, 70 and 35–50 % chance by the estimates. {}",
            known.collect::<Vec<_>>().join(" ")
        )
    }

    /// Today's meet, or why there is none.
    pub(super) fn meet_view(&self, log: &Log) -> Result<MeetView, String> {
        let meet = self.meet().map_err(words::no_meet)?;
        let timeline = &self.timeline;
        let dash = || "–".to_owned();
        // The head says the unit once: four loads of a row stand close.
        let bare = |words: String| {
            words
                .trim_end_matches(&format!(" {}", self.unit.sign()))
                .to_owned()
        };
        let line = |lift: &Lift| MeetLift {
            title: self.title(&lift.movement),
            made: lift
                .made
                .map_or_else(dash, |added| bare(words::signed(added.kg(), self.unit))),
            attempts: [0, 1, 2].map(|nth| {
                let attempt = lift.plan.as_ref().ok().and_then(|plan| plan.attempts.get(nth));
                attempt.map_or_else(dash, |attempt| bare(words::attempt(attempt, self.unit)))
            }),
        };
        let is_chosen = |id: &str| meet.lifts.iter().any(|lift| lift.movement == id);
        Ok(MeetView {
            lifts: meet.lifts.iter().map(line).collect(),
            total: meet
                .total()
                .map_or_else(dash, |total| bare(words::total(total, self.unit))),
            planned: [0, 1, 2].map(|nth| {
                meet.planned(nth)
                    .map_or_else(dash, |total| bare(words::total(total, self.unit)))
            }),
            how: self.meet_how(&meet),
            choices: trained(timeline)
                .into_iter()
                .map(|id| MeetChoice {
                    movement: id.to_owned(),
                    title: self.title(id),
                    chosen: is_chosen(id),
                })
                .collect(),
            notes: self.refusals(&meet),
            refused: meet.refused().map(words::no_meet),
            athlete: log.folder.clone(),
            name: log.name.clone(),
            sheet: out_folder().join(format!("meet-{}-{}.pdf", log.folder, timeline.on)),
        })
    }

    /// Every lift of a meet, each with the lightest planned load that is more than what was done.
    pub(super) fn tries(&self) -> Vec<TryView> {
        let all = LIFTS.map(str::to_owned);
        let (opened, timeline) = (self.opened, &self.timeline);
        let meet = Meet::today(timeline, &opened.catalogue, &self.believed, &opened.plates, &all);
        let next = |lift: &Lift| {
            let done = lift.made.map_or(f64::NEG_INFINITY, Added::kg);
            let plan = lift.plan.as_ref().ok()?;
            let loads = plan.attempts.iter().map(|attempt| attempt.load.added);
            let next = loads.into_iter().find(|load| load.kg() > done)?;
            Some(decimal(next.mass().in_unit(self.unit)))
        };
        let lifts = meet.map_or_else(|_| Vec::new(), |meet| meet.lifts);
        lifts
            .iter()
            .map(|lift| TryView {
                title: self.title(&lift.movement),
                next: next(lift).unwrap_or_default(),
                movement: lift.movement.clone(),
            })
            .collect()
    }

    /// Why a lift has no attempts, each reason once.
    fn refusals(&self, meet: &Meet) -> Vec<String> {
        let mut said: Vec<String> = Vec::new();
        for lift in &meet.lifts {
            let Some(why) = lift.plan.as_ref().err() else {
                continue;
            };
            let reason = match meet.refused() {
                Some(_) => words::no_attempts(*why),
                None => format!("{}: {}", self.title(&lift.movement), words::no_attempts(*why)),
            };
            if !said.contains(&reason) {
                said.push(reason);
            }
        }
        said
    }
}

/// A load as it is typed: a plain number to the hundredth.
fn decimal(value: f64) -> String {
    ((value * 100.0).round() / 100.0).to_string()
}
