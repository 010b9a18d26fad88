//! Every kind of evidence for one strict pull-up on one arm, on the one scale: one-arm one-rep max ÷ bodyweight.

use crate::body::hold::{Endurance, SHORTEST};
use crate::body::{Band, demand, one_arm};
use crate::catalogue::{Help, Ladder};
use crate::strength::Series;
use crate::timeline::LoggedSet;
use crate::units::{Added, Mass, Rail, Side};

use super::reach::model_sd;
use super::{Estimates, Found, Link, LinkKind, Reach, ReadFrom};

/// A hold older than this many days says nothing of today. Twelve weeks: common practice, no source.
const HOLD_DAYS: i64 = 84;
/// A strict repetition on one arm from a dead hang, with the way down, keeps the hand under load for so long, seconds. A.
const GRIPPED: f64 = 10.0;
/// How well a hang's length tells the grip, on the log scale: the order of people's spread in endurance. A.
const HANG_SD: f64 = 0.05;
/// The hang, the slow way down and the lock-off: movement ids.
const HANG: &str = "one-arm-hang";
const NEGATIVE: &str = "one-arm-negative";
const LOCK_OFF: &str = "one-arm-lock-off";

pub(super) fn links(estimates: &mut Estimates<'_, '_>, ladder: &Ladder, rail: Rail) -> Vec<Found> {
    let side = rail.side();
    let Some(goal) = demand::goal(ladder) else {
        return Vec::new();
    };
    let both = if goal.movement == "one-arm-chin-up" {
        "chin-up"
    } else {
        "pull-up"
    };
    let mut found = Vec::new();
    found.extend(from_belief(estimates, both, None, LinkKind::TwoArms, |ratio| {
        one_arm::two_hands(ratio)
    }));
    found.extend(from_belief(
        estimates,
        &goal.movement,
        side,
        LinkKind::OneArm,
        Band::exactly,
    ));
    found.extend(helped(estimates, &goal.movement, side, LinkKind::Fingers));
    found.extend(helped(estimates, &goal.movement, side, LinkKind::Band));
    for (movement, kind) in [
        (NEGATIVE, LinkKind::Negative),
        (LOCK_OFF, LinkKind::LockOff),
        (HANG, LinkKind::Hang),
    ] {
        found.extend(best_hold(estimates, ladder, movement, kind, side));
    }
    found
}

fn from_belief(
    estimates: &mut Estimates<'_, '_>,
    movement: &str,
    side: Option<Side>,
    kind: LinkKind,
    model: impl Fn(f64) -> Band,
) -> Option<Found> {
    let last = last_day(estimates, |set| {
        set.set.side == side && set.movement.is_some_and(|known| known.id == movement)
    })?;
    let believed = estimates.of(movement, side)?;
    let ratio = believed.belief.one_rep_max().ratio(believed.bodyweight?);
    let band = model(ratio);
    let reach = Reach::by(band.centre(), believed.belief.log_sd(), band)?;
    Some(Found {
        link: Link {
            kind,
            reach,
            at_least: false,
            last,
            from: ReadFrom::OneRepMax { ratio },
            basis: Some(believed.basis.clone()),
        },
        belief: Some(believed.belief.clone()),
    })
}

/// The one-arm one-rep max behind sets with fingers or a measured band: what the help leaves counts as the load.
fn helped(
    estimates: &mut Estimates<'_, '_>,
    movement: &str,
    side: Option<Side>,
    kind: LinkKind,
) -> Option<Found> {
    let timeline = estimates.timeline();
    let is_it = |set: &LoggedSet<'_>| {
        set.movement.is_some_and(|known| known.id == movement) && left(set, kind).is_some()
    };
    let last = last_day(estimates, |set| set.set.side == side && is_it(set))?;
    let series = Series::with_loads(timeline, is_it, |set| {
        let body = set.bodyweight.map_or(0.0, |body| body.kg());
        let taken = left(set, kind).map_or(0.0, |left| body * (1.0 - left.centre()));
        let hung = if kind == LinkKind::Band {
            0.0
        } else {
            set.added.kg()
        };
        Added::new(Mass::from_kg(hung - taken))
    })?;
    let (belief, basis) = series.belief(side, timeline.on, estimates.kept(), Some(kind))?;
    let ratio = belief.one_rep_max().ratio(timeline.bodyweight()?);
    let model = timeline.sets.iter().rev().find_map(|set| left(set, kind))?;
    let sd = belief.log_sd();
    let reach = Reach::new(ratio, (sd * sd + model_sd(model) * model_sd(model)).sqrt())?;
    Some(Found {
        link: Link {
            kind,
            reach,
            at_least: false,
            last,
            from: ReadFrom::OneRepMax { ratio },
            basis: Some(basis),
        },
        belief: Some(belief),
    })
}

/// The part of bodyweight that the help of a set leaves.
fn left(set: &LoggedSet<'_>, kind: LinkKind) -> Option<Band> {
    match (set.form?.help?, kind) {
        (Help::FingerHelp(fingers), LinkKind::Fingers) => one_arm::with_fingers(*fingers),
        (Help::Band, LinkKind::Band) => {
            let part = set.added.assistance()?.kg() / set.bodyweight?.kg();
            (part < 1.0).then(|| one_arm::with_band(part))
        }
        _ => None,
    }
}

/// The hold of the last weeks that shows most.
fn best_hold(
    estimates: &Estimates<'_, '_>,
    ladder: &Ladder,
    movement: &str,
    kind: LinkKind,
    side: Option<Side>,
) -> Option<Found> {
    let timeline = estimates.timeline();
    let shows = |set: &LoggedSet<'_>| -> Option<(Reach, bool)> {
        let plain = set.movement.is_some_and(|known| known.id == movement)
            && set.form.is_some_and(|form| form.help.is_none());
        if !plain
            || set.is_reps()
            || set.odd
            || set.broke_form()
            || set.set.side != side
            || set.amount < SHORTEST
        {
            return None;
        }
        let load = set.system?.ratio(set.bodyweight?);
        let reach = match kind {
            LinkKind::Negative => Reach::by(
                one_arm::negative(set.amount).centre() * load,
                0.0,
                one_arm::negative(set.amount),
            ),
            LinkKind::LockOff => Reach::by(
                one_arm::lock_off(set.amount).centre() * load,
                0.0,
                one_arm::lock_off(set.amount),
            ),
            _ => Reach::new(
                load * Endurance::GRIP.intensity(GRIPPED) / Endurance::GRIP.intensity(set.amount),
                HANG_SD,
            ),
        }?;
        Some((reach, was_all(set, top(estimates, ladder, set))))
    };
    let recent = timeline
        .sets
        .iter()
        .filter(|set| timeline.age(set.date) <= HOLD_DAYS);
    let best = recent
        .filter(|set| set.date < timeline.on)
        .filter_map(|set| shows(set).map(|(reach, all)| (set, reach, all)))
        .max_by(|(_, a, _), (_, b, _)| a.centre().total_cmp(&b.centre()))?;
    let (set, reach, all) = best;
    Some(Found {
        link: Link {
            kind,
            reach,
            at_least: !all,
            last: set.date,
            from: ReadFrom::Hold {
                seconds: set.amount,
                date: set.date,
            },
            basis: None,
        },
        belief: None,
    })
}

/// Whether a hold was the most that could be done: it failed, little was left, or it ended under the top of what was asked with
/// nothing said of more. Common practice, no source.
fn was_all(set: &LoggedSet<'_>, top: f64) -> bool {
    match set.known_reserve() {
        Some(reserve) => reserve <= 1.0,
        None => set.amount < top,
    }
}

/// The most seconds that are asked of this movement: by the rung it was logged for, else by this ladder, else by any.
fn top(estimates: &Estimates<'_, '_>, ladder: &Ladder, set: &LoggedSet<'_>) -> f64 {
    let asks = |ladder: &Ladder| {
        let rung = ladder
            .rungs
            .iter()
            .find(|rung| rung.movement == set.set.movement)?;
        Some(rung.work.range.hi())
    };
    set.tag
        .map(|tag| tag.rung.work.range.hi())
        .or_else(|| asks(ladder))
        .or_else(|| estimates.catalogue().ladders().find_map(asks))
        .unwrap_or(f64::INFINITY)
}

/// The latest day of the last year, today aside, with such a set.
fn last_day(
    estimates: &Estimates<'_, '_>,
    is_it: impl Fn(&LoggedSet<'_>) -> bool,
) -> Option<chrono::NaiveDate> {
    let timeline = estimates.timeline();
    let earlier = timeline.evidence().rev().filter(|set| set.date < timeline.on);
    earlier.filter(|set| is_it(set)).map(|set| set.date).next()
}
