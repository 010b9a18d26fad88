//! Totals of the open athlete: points, bests, another bodyweight, attempts, the day's meet.

mod attempts;

use std::collections::BTreeMap;

use crate::bests::rank::{Place, Ranking, place};
use crate::bests::{
    Best, Fit, Formula, Kind, Point, Size, WITHIN_KG, bests, points, size_adjusted, two_weights,
};
use crate::coaching::what_if::WhatIf;
use crate::report::numbers::{about, day, number};
use crate::report::{advice, totals as words};
use crate::strength::{Believed, beliefs_keeping};
use crate::timeline::Timeline;
use crate::ui::views::{BestView, LiftTab, LiftView, Phrase, PointView, TotalsView, TwoWeightsView};
use crate::units::{Bodyweight, Mass, Side, SystemLoad, Unit};

use super::opened::Opened;
use super::people::out_folder;
use super::{say, strength};

/// Everything that Totals shows is made from this.
struct Made<'o, 'a> {
    opened: &'o Opened,
    timeline: Timeline<'a>,
    believed: Vec<Believed>,
    formula: Formula,
    unit: Unit,
}

/// The open athlete's totals, the chosen or the most trained lift open.
pub(super) fn view(opened: &Opened) -> TotalsView {
    let unit = opened.book.unit();
    let Some(log) = opened.open_log() else {
        return TotalsView {
            unit,
            ..TotalsView::default()
        };
    };
    let timeline = opened.counting(log);
    let made = Made {
        believed: beliefs_keeping(&timeline, &opened.kept()),
        formula: opened.formula(),
        timeline,
        opened,
        unit,
    };
    let rails = points(&made.timeline, made.formula);
    let mut lifts: Vec<(usize, LiftTab, &[Point])> = rails
        .iter()
        .map(|((movement, side), points)| (points.len(), made.tab(movement, *side), points.as_slice()))
        .collect();
    lifts.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.title.cmp(&b.1.title)));
    let chosen = opened.lift.as_ref();
    let nth = chosen.and_then(|(movement, side)| {
        lifts
            .iter()
            .position(|(_, tab, _)| tab.movement == *movement && tab.side == *side)
    });
    let nth = nth.unwrap_or(0);
    let open = lifts.get(nth).map(|(_, tab, points)| made.lift(nth, tab, points));
    let meet = made.meet_view(log);
    let movement = lifts.get(nth).map_or("", |(_, tab, _)| tab.movement.as_str());
    let picture = out_folder().join(format!("totals-{}-{movement}-{}.png", log.folder, opened.on));
    TotalsView {
        open,
        bodyweight: made.bodyweight(),
        picture,
        tries: made.tries(),
        no_meet: meet.as_ref().err().cloned().unwrap_or_default(),
        meet: meet.ok(),
        unit,
        lifts: lifts.into_iter().map(|(_, tab, _)| tab).collect(),
    }
}

impl Made<'_, '_> {
    fn title(&self, movement: &str) -> String {
        let known = self.opened.catalogue.movement(movement);
        known.map_or_else(|| movement.to_owned(), |movement| movement.title.clone())
    }

    fn tab(&self, movement: &str, side: Option<Side>) -> LiftTab {
        let side_words = match side {
            None => "",
            Some(Side::Left) => ", left",
            Some(Side::Right) => ", right",
        };
        LiftTab {
            movement: movement.to_owned(),
            side,
            title: format!("{}{side_words}", self.title(movement)),
        }
    }

    fn bodyweight(&self) -> Phrase {
        match self.timeline.weigh_ins.last() {
            None => Phrase::plain("Not weighed yet"),
            Some(last) => Phrase::plain("Bodyweight ")
                .then_strong(about(last.mean.kg(), self.unit))
                .then(format!(" on {}", day(last.date))),
        }
    }

    fn believed(&self, movement: &str, side: Option<Side>) -> Option<&Believed> {
        self.believed
            .iter()
            .find(|known| known.movement == movement && known.side == side)
    }

    fn lift(&self, nth: usize, tab: &LiftTab, points: &[Point]) -> LiftView {
        let movement = self.opened.catalogue.movement(&tab.movement);
        let share = movement.and_then(|movement| self.timeline.share(movement, None));
        let believed = self.believed(&tab.movement, tab.side);
        let known = movement.map(|movement| WhatIf::new(&self.timeline, movement, believed, points));
        let (what_if, no_what_if) = match known {
            Some(Ok(known)) => {
                // What the scale says; the belief's own bodyweight lags a little behind.
                let today = self.timeline.bodyweight().unwrap_or(known.bodyweight);
                match known.at(today) {
                    Ok(_) => (Some(known), None),
                    Err(why) => (
                        None,
                        Some(format!("{}.", upper(&words::refused(why, today, self.unit)))),
                    ),
                }
            }
            Some(Err(why)) => (
                None,
                Some(format!("Nothing is said yet: {}.", words::unknown(why))),
            ),
            None => (None, None),
        };
        let fit = Fit::of(points);
        let plan = self.plan(&tab.movement, tab.side);
        LiftView {
            nth,
            title: tab.title.clone(),
            share: share.map_or(1.0, crate::units::Share::value),
            points: self.points(points),
            formula: self.formula,
            fit_words: words::fit(&fit, self.unit),
            fit: fit.ok(),
            bests: self.bests(tab),
            what_if,
            no_what_if,
            today_kg: self.timeline.bodyweight().map(Bodyweight::kg),
            belief_how: believed.map_or_else(String::new, |known| self.how(known)),
            attempts_how: match (&plan, believed) {
                (Ok(_), Some(known)) => format!(
                    "{} Each is the heaviest load that can be hung with about that chance, for one repetition in a fresh try.",
                    self.how(known)
                ),
                _ => String::new(),
            },
            strength: strength::view(self.opened, &self.timeline, &tab.movement, tab.side),
            two_weights: two_weights(points).map(|two| self.two_weights(&two)),
            attempts: plan
                .as_ref()
                .map_or_else(|_| Vec::new(), |plan| self.attempts(plan)),
            hangs: plan
                .as_ref()
                .map_or_else(|_| String::new(), |plan| words::hangs(plan, self.unit)),
            attempts_note: self.attempts_note(&plan),
            warm_up: plan.map_or_else(
                |_| Vec::new(),
                |plan| {
                    plan.warm_up
                        .iter()
                        .map(|step| advice::warm_up(step, self.unit))
                        .collect()
                },
            ),
        }
    }

    /// Where the strength of a lift comes from.
    fn how(&self, known: &Believed) -> String {
        format!(
            "{}. {}",
            crate::report::belief::how(known, self.unit),
            super::beliefs::MEANING
        )
    }

    fn points(&self, points: &[Point]) -> Vec<PointView> {
        // How a set stands among all by each measure; what looks like a slip stands nowhere.
        let standing = MEASURES.map(|kind| {
            let sure = points.iter().filter(|point| !point.doubted);
            Ranking::of(sure.filter_map(|point| measured(point, kind)).collect())
        });
        let with_body = points.iter().filter_map(|point| Some((point, point.bodyweight?)));
        with_body
            .map(|(point, body)| PointView {
                date: point.date,
                bodyweight_kg: body.kg(),
                added_kg: point.added.kg(),
                system_kg: point.system.kg(),
                one_rep_max_kg: point.one_rep_max.map(SystemLoad::kg),
                reps: point.reps,
                missed: point.missed,
                doubted: point.doubted,
                words: self.point_words(point, body, &standing),
            })
            .collect()
    }

    fn point_words(&self, point: &Point, body: Bodyweight, standing: &[Ranking]) -> String {
        let reps = say::reps(point.reps);
        let missed = if point.missed { ", then missed" } else { "" };
        let doubted = if point.doubted {
            "; looks like a slip, check the entry"
        } else {
            ""
        };
        let places: Vec<(Kind, Place)> = MEASURES
            .into_iter()
            .zip(standing)
            .filter_map(|(kind, ranking)| Some((kind, ranking.place(measured(point, kind)?)?)))
            .filter(|(_, place)| !point.doubted && place.of > 1)
            .collect();
        let standing = if places.is_empty() {
            String::new()
        } else {
            format!("; {}", words::standing(&places))
        };
        format!(
            "{}: {} × {reps}{missed} at {}: {} in all, ratio {:.3}, size-adjusted {:.2}{standing}{doubted}",
            words::long_day(point.date),
            words::signed(point.added.kg(), self.unit),
            about(body.kg(), self.unit),
            about(point.system.kg(), self.unit),
            point.system.ratio(body),
            size_adjusted(point.system, body),
        )
    }

    fn bests(&self, tab: &LiftTab) -> Vec<BestView> {
        let mine = bests(&self.timeline, self.formula);
        let gym = self.gym(tab);
        let is_it = |best: &&Best<'_>| best.movement == tab.movement && best.side == tab.side;
        let shown = mine
            .iter()
            .filter(is_it)
            .filter_map(|best| match (best.size, best.kind) {
                (Size::Reps(reps), Kind::System | Kind::Added | Kind::Ratio | Kind::SizeAdjusted) => {
                    Some((reps, best))
                }
                _ => None,
            });
        shown
            .map(|(reps, best)| BestView {
                kind: best.kind,
                reps,
                title: words::measure(best.kind),
                value: words::value(best.kind, best.value, self.unit),
                weighed: best
                    .bodyweight
                    .map_or_else(String::new, |body| about(body.kg(), self.unit)),
                added: words::signed(best.added.kg(), self.unit),
                date: words::long_day(best.date),
                at: best
                    .bodyweight
                    .zip(best.system)
                    .map(|(body, load)| (body.kg(), load.kg())),
                doubted: best.doubted,
                place: gym
                    .get(&(best.kind, reps))
                    .filter(|all| all.len() > 1 && !best.doubted)
                    .and_then(|all| place(best.value, all))
                    .map(words::place),
            })
            .collect()
    }

    /// Everyone's bests of this lift, by measure and repetitions; doubted ones don't count.
    fn gym(&self, tab: &LiftTab) -> BTreeMap<(Kind, u16), Vec<f64>> {
        let mut all: BTreeMap<(Kind, u16), Vec<f64>> = BTreeMap::new();
        for (kind, reps, value) in self.opened.gym_bests(&tab.movement, tab.side) {
            all.entry((kind, reps)).or_default().push(value);
        }
        all
    }

    fn two_weights(&self, two: &crate::bests::TwoWeights<'_>) -> TwoWeightsView {
        let ends = [two.light, two.heavy];
        let unit = self.unit;
        let measured = |measure: &dyn Fn(&Point, Bodyweight) -> f64| {
            ends.map(|(_, point)| measure(point, point.bodyweight.unwrap_or(two.light.0)))
        };
        let row =
            |name: &str, values: [f64; 2], say: &dyn Fn(f64) -> String, change: &dyn Fn(f64) -> String| {
                [
                    name.to_owned(),
                    say(values[0]),
                    say(values[1]),
                    change(values[1] - values[0]),
                ]
            };
        let kg = |value: f64| about(value, unit);
        // Rounded as the reader's unit says it: 30 lb more are not 13.6 kg, so 29.98 lb.
        let more = |value: f64| {
            let is_more = Mass::from_kg(value).in_unit(unit) >= 0.05;
            format!("{}{}", if is_more { "+" } else { "" }, kg(value))
        };
        let plain = |value: f64| format!("{value:.3}");
        let change = |value: f64| {
            if value > 0.0 {
                format!("+{value:.3}")
            } else {
                number(value, 3)
            }
        };
        TwoWeightsView {
            note: format!("best single within {}", kg(WITHIN_KG)),
            heads: ends.map(|(body, _)| format!("at {}", about(body.kg(), unit))),
            rows: vec![
                row("System load", measured(&|point, _| point.system.kg()), &kg, &more),
                row(
                    "Added",
                    measured(&|point, _| point.added.kg()),
                    &|value| words::signed(value, unit),
                    &more,
                ),
                row(
                    "Ratio",
                    measured(&|point, body| point.system.ratio(body)),
                    &plain,
                    &change,
                ),
                row(
                    "Size-adjusted",
                    measured(&|point, body| size_adjusted(point.system, body)),
                    &plain,
                    &change,
                ),
            ],
        }
    }
}

/// The measures that a set stands by.
const MEASURES: [Kind; 4] = [Kind::System, Kind::Added, Kind::Ratio, Kind::SizeAdjusted];

/// A set by a measure; none where its bodyweight isn't known.
fn measured(point: &Point, kind: Kind) -> Option<f64> {
    let body = point.bodyweight?;
    Some(match kind {
        Kind::Added => point.added.kg(),
        Kind::Ratio => point.system.ratio(body),
        Kind::SizeAdjusted => size_adjusted(point.system, body),
        _ => point.system.kg(),
    })
}

fn upper(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
